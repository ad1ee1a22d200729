package train

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/internal/words"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// Reach is how far the limits let a train come. The zero value is none.
type Reach uint8

// How far a train comes.
const (
	OnTarget     Reach = iota + 1 // every coupling comes to its target
	WithinLimits                  // not that, but every coupling within its limits
	OutOfReach                    // some coupling stays outside its limits
)

var reachNames = words.List{"", "on_target", "within_limits", "out_of_reach"}

// String returns the wire form, for one "within_limits".
func (r Reach) String() string { return reachNames.Word(uint8(r)) }

// MarshalText gives the wire form.
func (r Reach) MarshalText() ([]byte, error) { return reachNames.Marshal(uint8(r)) }

// UnmarshalText reads the wire form.
func (r *Reach) UnmarshalText(text []byte) error { return words.Unmarshal(r, reachNames, text) }

// Plan is what can be done with a train, and where that leads.
type Plan struct {
	Reach Reach `json:"reach"`

	// Ratio is the worst ratio of what is left at a coupling to its limit, and Bound
	// what no plan can better. Both are zero on target. They differ by rounding
	// alone where each plane is judged by itself, and by less than a thousandth of
	// the Ratio, or than 2e-5, where the planes are judged together.
	Ratio float64 `json:"ratio"`
	Bound float64 `json:"bound"`

	Work    Work         `json:"work"`    // what was made least
	Travel  units.Length `json:"travel"`  // the sum of all steps
	Largest units.Length `json:"largest"` // the largest of them
	Moves   int          `json:"moves"`   // how many there are
	Proven  bool         `json:"proven"`  // that no other plan of this Ratio has less work; false for FewestFeet of more than four machines, and where no solver told

	Steps    []Step        `json:"steps,omitempty"`      // what to do, in order
	Machines []Standing    `json:"machines"`             // in the order of the train
	Joints   []JointAfter  `json:"joints"`               // in the order of the train
	InTheWay []Block       `json:"in_the_way,omitempty"` // limits that keep the train out of its tolerance
	Warnings []units.Fault `json:"warnings,omitempty"`
}

// Standing is where a machine stands, before and after the plan, relative to the
// axis and along the x of the train.
type Standing struct {
	Machine string         `json:"machine"`
	Before  align.Estimate `json:"before"`
	After   align.Estimate `json:"after"`
	Feet    []align.Move   `json:"feet,omitempty"` // of every station, to 1 nm; a decision, so without uncertainty

	// Shift is how far the shaft goes along x because the machine tilts about its
	// feet, -Height times the change of the vertical slope; away from the first
	// machine is positive. Zero where no Height was given.
	Shift units.Length `json:"shift,omitzero"`
}

// JointAfter is what is left at a coupling, in the order of the joints of the train,
// where its limits are for a verdict at a confidence ([tolerance.Limits.JudgeBy]).
type JointAfter struct {
	Coupling string            `json:"coupling,omitempty"` // its name, if it has one
	Before   align.Estimate    `json:"before"`             // found less target, in the coupling's own x
	After    align.Estimate    `json:"after"`
	Verdict  tolerance.Verdict `json:"verdict"`        // on After, by simple acceptance
	Opens    units.Length      `json:"opens,omitzero"` // by how much the shafts go apart because machines tilt; negative: together; zero unless each of both has its Height or stays
}

// Plan returns the moves that bring the train as near to its targets as the limits
// of its feet allow, by this order:
//
//  1. every coupling on its target, if the limits allow that;
//  2. otherwise the least worst ratio of what is left at a coupling, found less
//     target, to its limit. What a coupling has no limit for does not count;
//  3. among plans that are equal in this, the least work by the measure w;
//  4. among those, the least sum of the squares of all moves.
//
// The last makes it unique, but for ties of FewestFeet, of which the first found is
// taken. A correct plan made elsewhere has the same moves, to 10 nm where each plane
// is judged by itself. Where the planes are judged together it has them to 5 um: near
// the best of a round limit, plans that differ by the root of a rounding are equally
// good to rounding (2 um were the most seen, with the machine's order, origin, planes
// and scale exchanged).
//
// Where every coupling is judged plane by plane ([tolerance.Limits].PerPlane), each
// plane is planned by itself. Otherwise the planes hang together in 2: the ratio is
// that of a vector's length, and once the worst ratio is as small as it can be in
// one plane, the least work leaves the other only as good as that ratio asks for.
//
// On target nothing joins the planes, and each is planned by itself: its work is the
// least in that plane, also by LargestMove.
//
// On Reach OutOfReach the worst ratio is the least that can be had, and InTheWay names
// the limits to work on. That one ratio decides: a coupling that could come within its
// limits may be left as far outside as the worst, where that saves work. So this is no
// plan to carry out, but what to hold the openings against. It is arithmetic and no
// leave to run: see the package comment.
//
// The moves are linear in what was found, exact for rigid machines and small slopes.
// It refuses what [Train.Validate] does, and a w that is none (Unknown, at /work).
// Should a solver come to no answer it says so (Unreachable, at /machines); that was
// seen only with numbers far from any machine, such as feet a million kilometres apart.
// Ten machines take less than a millisecond and some hundredths of a second where planes
// are judged together, the fewest feet of the largest train twenty seconds.
func (t Train) Plan(w Work) (Plan, error) {
	var faults check.Faults
	if t.checkWork(&faults, w); faults.Len() > 0 {
		return Plan{}, faults.Err()
	}
	p, ok := t.solved(w)
	if !ok {
		return Plan{}, t.noAnswer()
	}
	return p.plan()
}

// checkWork checks the train and the measure of work.
func (t *Train) checkWork(faults *check.Faults, w Work) {
	var root check.Path
	if !workNames.Known(uint8(w)) {
		faults.Add(units.Unknown, root.Field("work"), w, "one of the measures of work")
	}
	faults.Adopt(root, t.Validate())
}

// solved plans a train that was checked; false where a solver came to no answer.
func (t *Train) solved(w Work) (*planner, bool) {
	space := workspaces.Get().(*workspace)
	defer workspaces.Put(space) // no plan holds what it made there
	space.kept.empty()
	p := &planner{train: t, space: space, scale: t.scale(), work: w, proven: true, lines: make([]align.Centreline, len(t.Machines))}
	for _, in := range t.together() {
		if !p.solve(in) {
			return nil, false
		}
	}
	return p, true
}

func (t *Train) noAnswer() error {
	var faults check.Faults
	var root check.Path
	faults.Add(units.Unreachable, root.Field("machines"), nil, "a plan: the search came to no answer")
	return faults.Err()
}

// together returns the planes that have to be planned at once: both where a coupling
// is judged by a vector, each by itself otherwise.
func (t *Train) together() [][]int {
	for i := range t.Joints {
		if !t.Joints[i].Limits.PerPlane {
			return [][]int{{horizontal, vertical}}
		}
	}
	return [][]int{{horizontal}, {vertical}}
}

// planner gathers what the planes come to.
type planner struct {
	train        *Train
	space        *workspace
	scale        float64 // of models, mm
	work         Work
	lines        []align.Centreline // the move of each machine along the x of the train
	missed       bool               // some target was not reached
	ratio, bound float64
	proven       bool
	blocks       []Block

	blocksMissing bool // what stands in the way was not found
}

// solve plans the given planes; false where a solver came to no answer. Targets are
// reached plane by plane, for nothing joins the planes then.
func (p *planner) solve(in []int) bool {
	if p.reachTargets(in) {
		return true
	}
	p.missed = true
	m, outside := p.newModel(false, in...), false
	if !m.eased(func() (ok bool) { outside, ok = p.comeNear(m, in); return ok }) {
		return false
	}
	if !outside {
		return true
	}
	m = p.newModel(true, in...)
	p.blocksMissing = !m.eased(func() bool { return p.findBlocks(m) }) || p.blocksMissing
	return true
}

// comeNear plans for the least worst ratio, and tells whether that is outside the
// limits; ok is false where a solver came to no answer.
func (p *planner) comeNear(m *model, in []int) (outside, ok bool) {
	b, ok := m.bestRatio()
	if !ok {
		return false, false
	}
	r := region{m: m, level: b.ratio + float64(m.ease*b.ratio), cuts: b.cuts}
	y, proven := r.least(p.work)
	if y == nil {
		return false, false
	}
	p.take(m, in, y, proven)
	ratio := m.worst(y)
	p.ratio, p.bound = max(p.ratio, ratio), max(p.bound, b.bound)
	return ratio > 1, true
}

// reachTargets plans the planes on target, each by itself, if the limits allow that
// in all of them.
func (p *planner) reachTargets(in []int) bool {
	var regions [2]region
	var answers [2][]float64
	for i, plane := range in {
		m, ok := p.newTargetModel(plane)
		if !ok {
			return false
		}
		regions[i] = region{m: m, cuts: &cuts{m: m}}
		if answers[i] = regions[i].leastSquares(); answers[i] == nil {
			return false
		}
	}
	for i := range in {
		r, y, proven := &regions[i], []float64(nil), false
		ok := r.m.eased(func() bool {
			y, proven = r.least(p.work)
			return y != nil
		})
		if !ok { // the least work was not found; the targets come first
			y = answers[i]
		}
		p.take(r.m, in[i:i+1], y, ok && proven)
	}
	return true
}

// take notes the moves of a model of the planes as lines of the machines.
func (p *planner) take(m *model, in []int, y []float64, proven bool) {
	p.proven = p.proven && proven
	for i := range p.lines {
		line := &p.lines[i]
		of := [...]*align.Line{horizontal: &line.Horizontal, vertical: &line.Vertical}
		for _, plane := range in {
			by := m.ray(y, i, plane)
			of[plane].Offset, of[plane].Slope = fromMM(by.offset), units.Slope(by.slope)
		}
	}
}

// ray returns what a machine moves by, told at zero.
func (m *model) ray(y []float64, machine, plane int) ray {
	if m.rays != nil && m.n > 0 {
		return m.rays[machine].plus(m.scale, m.whole.ray([2]float64{y[0], y[1]}, 0))
	}
	if m.rays != nil {
		return m.rays[machine].plus(0, ray{})
	}
	first := m.first[machine][plane]
	if first < 0 {
		return ray{}
	}
	b := newBody(m.train.Machines[machine : machine+1])
	return ray{}.plus(m.scale, b.ray([2]float64{y[first], y[first+1]}, 0))
}

// plan puts together what was found out.
func (p *planner) plan() (Plan, error) {
	plan := Plan{
		Work: p.work, Ratio: p.ratio, Bound: p.bound, Proven: p.proven,
		Machines: p.standings(), InTheWay: p.blocks,
	}
	if !plan.finish(p) {
		return Plan{}, p.train.noAnswer()
	}
	if plan.Reach == WithinLimits { // also what rounding has left a hair outside
		plan.Ratio, plan.Bound, plan.InTheWay = min(plan.Ratio, 1), min(plan.Bound, 1), nil
	}
	plan.warn(p.blocksMissing)
	return plan, nil
}

// finish adds what follows from where the machines stand; false where that is no
// number that can be judged.
func (p *Plan) finish(from *planner) (ok bool) {
	if p.Joints, ok = from.joints(p.Machines); !ok {
		return false
	}
	p.Reach = from.reach(p.Joints)
	p.Steps = from.train.steps(p.Machines)
	p.Moves = len(p.Steps)
	for i := range p.Steps {
		size := max(p.Steps[i].By, -p.Steps[i].By)
		p.Travel += size
		p.Largest = max(p.Largest, size)
	}
	return true
}

func (p *planner) reach(joints []JointAfter) Reach {
	if !p.missed {
		return OnTarget
	}
	for i := range joints {
		if joints[i].Verdict.Outcome != tolerance.Within {
			return OutOfReach
		}
	}
	return WithinLimits
}

func (p *planner) standings() []Standing {
	list := make([]Standing, len(p.lines))
	for i, before := range p.train.centrelines() {
		machine, move := &p.train.Machines[i], p.lines[i]
		list[i] = Standing{
			Machine: machine.Name,
			Before:  before,
			After:   before.Plus(align.Exact(move)),
			Feet:    machine.moves(move, i == p.train.reference()),
			Shift:   -move.Vertical.Slope.Over(machine.Height) + 0, // no negative zero
		}
	}
	return list
}

// Resolution is what a move is rounded to.
const Resolution = units.Nanometre

// moves returns the moves of all feet of the machine, none beyond its limit unless
// the machine stays, whose limits do not count.
func (m *Machine) moves(move align.Centreline, stays bool) []align.Move {
	list := make([]align.Move, len(m.Feet))
	for i := range m.Feet {
		f := &m.Feet[i]
		list[i].Foot = align.Foot{Name: f.Name, X: f.X}
		if !stays {
			w := move.At(f.X)
			list[i].By = align.Vector{Horizontal: f.Horizontal.rounded(w.Horizontal), Vertical: f.Vertical.rounded(w.Vertical)}
		}
	}
	return list
}

// rounded returns the move to the Resolution, and at most to the end of the limit.
func (l Limit) rounded(by units.Length) units.Length {
	by = by.Round(Resolution)
	if l.hasLow {
		by = max(by, l.low)
	}
	if l.hasHigh {
		by = min(by, l.high)
	}
	return by
}

// shiftKnown tells whether the axial shift of machine i is known.
func (p *planner) shiftKnown(i int) bool {
	return p.train.Machines[i].Height != 0 || i == p.train.reference()
}

// joints tells what is left at the couplings; false where it cannot be judged, which
// sound trains with absurd numbers can lead to.
func (p *planner) joints(standings []Standing) (list []JointAfter, ok bool) {
	list = make([]JointAfter, len(p.train.Joints))
	for i := range list {
		j := &p.train.Joints[i]
		off := j.Off()
		after := off.Plus(align.Exact(p.lines[i+1].Minus(p.lines[i]).About(j.At)))
		verdict, err := j.Limits.Judge(after, j.Coupling)
		if err != nil {
			return nil, false
		}
		list[i] = JointAfter{
			Coupling: j.Coupling.Name, Before: off, After: after, Verdict: verdict,
		}
		if p.shiftKnown(i) && p.shiftKnown(i+1) {
			list[i].Opens = standings[i+1].Shift - standings[i].Shift
		}
	}
	return list, true
}
