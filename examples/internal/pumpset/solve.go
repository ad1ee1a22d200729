package pumpset

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/softfoot"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// Record is all that there is to say about a job. The job stands in the crew's
// own words and view; everything computed from it in the library's signs: x
// from the coupling centre towards the movable machine, horizontal positive
// towards 3 o'clock for an observer behind the movable machine.
type Record struct {
	Format       string             `json:"format"`
	Job          Job                `json:"job"`
	Stations     stations           `json:"stations"`
	Checks       *checked           `json:"checks,omitempty"`
	SoftFoot     *softfoot.Finding  `json:"soft_foot,omitempty"` // the way that the job chooses, or else the first, is in the moves and in the packs
	Growth       *grown             `json:"growth,omitempty"`
	Target       align.Centreline   `json:"target"`
	Limits       *tolerance.Limits  `json:"limits,omitempty"`
	Found        state              `json:"found"`
	Packs        *packs             `json:"packs,omitempty"`
	Expected     [2][]align.Reading `json:"expected"` // what the found sets' dials will show on the target, sag included, zeroed at the first position; positions in the crew's view
	Left         *state             `json:"left,omitempty"`
	SoftFootLeft *softfoot.Finding  `json:"soft_foot_left,omitempty"`
}

// state is how the shafts lie at one time.
type state struct {
	Result  dial.Result        `json:"result"`
	Off     align.Estimate     `json:"off"`               // less the target
	Gap     opening            `json:"gap"`               // of the coupling's faces
	Flex    *flex              `json:"flex,omitempty"`    // with a spacer
	Verdict *tolerance.Verdict `json:"verdict,omitempty"` // on what is off
	Running *align.Estimate    `json:"running,omitempty"` // how they will lie at temperature
	Moves   []align.Move       `json:"moves"`             // that take the shaft to the target, beside the shims of soft foot
	Within  []align.Vector     `json:"within,omitempty"`  // half the width of the interval of 95 % of each move; absent where nothing tells
	Budget  *budget            `json:"budget,omitempty"`  // what their uncertainty rests on
}

// opening is a gap between the coupling's faces that is wider on one side.
type opening struct {
	Wider units.Length `json:"wider"` // than opposite, across the coupling's diameter
	At    units.Clock  `json:"at"`    // in the library's view, to a minute of the clock
}

// flex is what the two ends of a spacer coupling have to bend.
type flex struct {
	Stationary align.Tilt `json:"stationary"`
	Movable    align.Tilt `json:"movable"`
}

// Solve answers a job, or refuses it with every fault of what it says.
func Solve(j Job) (Record, error) {
	var f strict.Faults
	j.Tape.check(&f)
	r := Record{Format: recordFormat, Job: j, Stations: j.Tape.stations()}
	r.prepare(&f)
	limits := r.limits(&f)
	found := j.measure(&f, "/found", &r.Job.Found)
	var left *measured
	if j.Left != nil {
		left = j.measure(&f, "/left", r.Job.Left)
	}
	checkMethods(&f, found, left)
	j.Tape.checkRims(&f, found, left)
	r.Found = r.state(&f, found, limits, r.shift())
	if left != nil {
		s := r.state(&f, left, limits, align.Centreline{}) // the shims are in
		r.Left = &s
	}
	r.Packs = r.packs(&f, limits)
	if err := f.Err(); err != nil {
		return Record{}, err
	}
	r.Expected = r.expected(&f, found)
	return r, f.Err()
}

// prepare answers what comes before the alignment: the checks, soft foot, and
// where the shaft is wanted.
func (r *Record) prepare(f *strict.Faults) {
	j := &r.Job
	r.Checks = j.checked(f)
	j.SingleFeet.check(f, &j.Tape)
	j.Shims.check(f)
	r.SoftFoot = r.softFoot(f, false)
	r.SoftFootLeft = r.softFoot(f, true)
	r.Growth = j.grown(f)
	r.Target = r.target(f)
	if r.Growth != nil {
		r.Target = r.Growth.Target.Value
	}
}

func (r *Record) limits(f *strict.Faults) *judge {
	limits := r.Job.judge(f)
	if limits != nil {
		r.Limits = &limits.Limits
	}
	return limits
}

func (r *Record) target(f *strict.Faults) align.Centreline {
	t := r.Job.Target
	if t != nil {
		notNegative(f, "/target/at", t.At, "a reading off the tape")
		if t.Opening.given() && !t.OpenAt.given() {
			f.Add(units.Missing, "/target/open_at", "", "where the gap is to be open")
		}
	}
	c, err := r.Job.dialTarget().Centreline()
	f.Adopt(err, r.renameTarget)
	return c
}

func (r *Record) renameTarget(path string) string {
	switch {
	case path == "/view":
		return path
	case path == "/station":
		return "/target/at"
	case path == "/diameter" && !r.Job.Target.Diameter.given():
		return "/coupling/diameter"
	}
	return "/target" + path
}

// state solves one survey. Where it cannot it notes why; feet and coupling are
// looked at all the same, also where there is no survey. The moves allow for a
// shift that comes on top of them.
func (r *Record) state(f *strict.Faults, m *measured, limits *judge, shift align.Centreline) state {
	var out state
	path := "/found"
	if m != nil {
		path = m.path
		out.Result = m.solve(f)
	}
	r.couple(f, path, &out)
	out.Off = out.Result.Minus(r.aim())
	out.Verdict = limits.verdict(f, path, out.Off, r.Job.coupling())
	out.Running = r.running(&out)
	r.move(f, path, &out, shift)
	out.Within = within(f, out.Moves)
	out.Budget = r.budget(f, m, &out)
	return out
}

// usual is the probability of the intervals on the sheet.
const usual = 0.95

// within returns half the width of the interval of each move.
func within(f *strict.Faults, moves []align.Move) []align.Vector {
	var list []align.Vector
	for _, m := range moves {
		if m.Basis == align.Unknown {
			return nil
		}
		half, err := m.Expanded(usual)
		f.Adopt(err, func(string) string { return "/tape/feet" })
		list = append(list, half)
	}
	return list
}

// solve answers the method, with warnings that tell their place in the job.
func (m *measured) solve(f *strict.Faults) dial.Result {
	result, err := m.Solve()
	f.Adopt(err, m.rename)
	for i := range result.Warnings {
		w := &result.Warnings[i]
		w.Path = m.rename(w.Path)
	}
	return result
}

// move finds the moves for what was measured at path.
func (r *Record) move(f *strict.Faults, path string, s *state, shift align.Centreline) {
	if _, err := s.Result.Corrections(r.Stations.Feet...); err == nil {
		path = r.blame() // if the moves are too large now, it is to blame
	}
	var err error
	s.Moves, err = s.Off.Plus(align.Exact(shift)).Corrections(r.Stations.Feet...)
	f.Adopt(err, r.renameFoot(path))
}

// blame is what the job tells a target by.
func (r *Record) blame() string {
	switch {
	case r.Growth != nil:
		return "/growth"
	case r.Job.Target == nil && r.SoftFoot != nil:
		return "/single_feet"
	}
	return "/target"
}

// couple tells what the coupling has to take of a misalignment that was measured
// at path.
func (r *Record) couple(f *strict.Faults, path string, s *state) {
	k := r.Job.coupling()
	rename := func(of string) string {
		if strings.HasPrefix(of, "/centreline") {
			return path
		}
		return "/coupling" + of
	}
	wider, at, err := k.Gap(s.Result.Value)
	f.Adopt(err, rename)
	s.Gap = opening{wider, at.Round(units.Minute)}
	if r.Job.Coupling.Span.given() {
		stationary, movable, err := k.FlexTilts(s.Result.Value)
		f.Adopt(err, rename)
		s.Flex = &flex{stationary, movable}
	}
}

// renameFoot returns where in the job a fault of corrections stands, for an
// estimate that came from what stands at path.
func (r *Record) renameFoot(path string) func(string) string {
	return func(of string) string {
		for i, foot := range r.Job.Tape.Feet {
			switch of {
			case strict.Step("/feet", i) + "/x":
				return strict.Step("/tape/feet", i) + "/at"
			case strict.Step("/feet", i) + "/u":
				if !foot.U.given() {
					return "/tape/u"
				}
			}
		}
		if strings.HasPrefix(of, "/value") {
			return path
		}
		return "/tape" + of
	}
}

// expected predicts the readings on the target, at the positions of the sweeps
// as they were found, the return to the start among them.
func (r *Record) expected(f *strict.Faults, m *measured) [2][]align.Reading {
	var out [2][]align.Reading
	for i, set := range m.Sets() {
		at := make([]units.Clock, len(m.parts[i].readings))
		for k, reading := range m.parts[i].readings {
			at[k] = reading.At.Value
		}
		var err error
		out[i], err = set.Predict(r.Target, at...)
		f.Adopt(err, func(path string) string { return m.rename("/" + m.parts[i].field + path) })
	}
	return out
}

// checkMethods asks that what was left was measured as what was found was, so
// that the two can be laid side by side.
func checkMethods(f *strict.Faults, found, left *measured) {
	if found == nil || left == nil {
		return
	}
	if name := strings.TrimPrefix(found.path, "/found/"); left.path != "/left/"+name {
		f.Add(units.Conflict, left.path, "", "the method of what was found, "+name)
	}
}
