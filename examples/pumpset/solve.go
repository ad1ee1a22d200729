package main

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

// record is all that there is to say about a job. The job stands in the crew's
// own words and view; everything computed from it in the library's signs: x
// from the coupling centre towards the movable machine, horizontal positive
// towards 3 o'clock for an observer behind the movable machine.
type record struct {
	Format   string             `json:"format"`
	Job      job                `json:"job"`
	Stations stations           `json:"stations"`
	Target   align.Centreline   `json:"target"`
	Found    state              `json:"found"`
	Expected [2][]align.Reading `json:"expected"` // what the found sets' dials will show on the target, sag included, zeroed at the first position; positions in the crew's view
	Left     *state             `json:"left,omitempty"`
}

// state is how the shafts lie at one time.
type state struct {
	Result dial.Result    `json:"result"`
	Off    align.Estimate `json:"off"`            // less the target
	Gap    opening        `json:"gap"`            // of the coupling's faces
	Flex   *flex          `json:"flex,omitempty"` // with a spacer
	Moves  []align.Move   `json:"moves"`          // that take the shaft to the target
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

// solve answers a job, or refuses it with every fault of what it says.
func solve(j job) (record, error) {
	var f faults
	j.Tape.check(&f)
	r := record{Format: recordFormat, Job: j, Stations: j.Tape.stations()}
	r.Target = r.target(&f)
	found := j.measure(&f, "/found", &r.Job.Found)
	var left *measured
	if j.Left != nil {
		left = j.measure(&f, "/left", r.Job.Left)
	}
	checkMethods(&f, found, left)
	j.Tape.checkRims(&f, found, left)
	r.Found = r.state(&f, found)
	if left != nil {
		s := r.state(&f, left)
		r.Left = &s
	}
	if err := f.err(); err != nil {
		return record{}, err
	}
	r.Expected = r.expected(&f, found)
	return r, f.err()
}

func (r *record) target(f *faults) align.Centreline {
	t := r.Job.Target
	if t != nil {
		notNegative(f, "/target/at", t.At, "a reading off the tape")
		if t.Opening.given() && !t.OpenAt.given() {
			f.add(units.Missing, "/target/open_at", "", "where the gap is to be open")
		}
	}
	c, err := r.Job.dialTarget().Centreline()
	f.adopt(err, r.renameTarget)
	return c
}

func (r *record) renameTarget(path string) string {
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
// looked at all the same, also where there is no survey.
func (r *record) state(f *faults, m *measured) state {
	var out state
	var err error
	path := "/found"
	if m != nil {
		path = m.path
		out.Result, err = m.Solve()
		f.adopt(err, m.rename)
	}
	for i := range out.Result.Warnings {
		w := &out.Result.Warnings[i]
		w.Path = m.rename(w.Path)
	}
	r.couple(f, path, &out)
	out.Off = out.Result.Minus(align.Exact(r.Target))
	if _, err = out.Result.Corrections(r.Stations.Feet...); err == nil {
		path = "/target" // if the moves are too large now, it is to blame
	}
	out.Moves, err = out.Off.Corrections(r.Stations.Feet...)
	f.adopt(err, r.renameFoot(path))
	return out
}

// couple tells what the coupling has to take of a misalignment that was measured
// at path.
func (r *record) couple(f *faults, path string, s *state) {
	k := align.Coupling{Diameter: r.Job.Coupling.Diameter.Value, Span: r.Job.Coupling.Span.Value}
	rename := func(of string) string {
		if strings.HasPrefix(of, "/centreline") {
			return path
		}
		return "/coupling" + of
	}
	wider, at, err := k.Gap(s.Result.Value)
	f.adopt(err, rename)
	s.Gap = opening{wider, at.Round(units.Minute)}
	if r.Job.Coupling.Span.given() {
		stationary, movable, err := k.FlexTilts(s.Result.Value)
		f.adopt(err, rename)
		s.Flex = &flex{stationary, movable}
	}
}

// renameFoot returns where in the job a fault of corrections stands, for an
// estimate that came from what stands at path.
func (r *record) renameFoot(path string) func(string) string {
	return func(of string) string {
		for i, foot := range r.Job.Tape.Feet {
			switch of {
			case step("/feet", i) + "/x":
				return step("/tape/feet", i) + "/at"
			case step("/feet", i) + "/u":
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
func (r *record) expected(f *faults, m *measured) [2][]align.Reading {
	var out [2][]align.Reading
	for i, set := range m.Sets() {
		at := make([]units.Clock, len(m.parts[i].readings))
		for k, reading := range m.parts[i].readings {
			at[k] = reading.At.Value
		}
		var err error
		out[i], err = set.Predict(r.Target, at...)
		f.adopt(err, func(path string) string { return m.rename("/" + m.parts[i].field + path) })
	}
	return out
}

// checkMethods asks that what was left was measured as what was found was, so
// that the two can be laid side by side.
func checkMethods(f *faults, found, left *measured) {
	if found == nil || left == nil {
		return
	}
	if name := strings.TrimPrefix(found.path, "/found/"); left.path != "/left/"+name {
		f.add(units.Conflict, left.path, "", "the method of what was found, "+name)
	}
}
