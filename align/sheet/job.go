package sheet

import (
	"slices"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/internal/check"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// Job is an alignment by hand: what was measured, by one of the methods, how both
// machines grow, if they do, and the feet of the movable machine. The zero value
// measures nothing and is refused.
type Job struct {
	RimFace         *dial.RimFace         `json:"rim_face,omitempty"`
	Reverse         *dial.Reverse         `json:"reverse,omitempty"`
	FaceFace        *dial.FaceFace        `json:"face_face,omitempty"`
	RimGap          *dial.RimGap          `json:"rim_gap,omitempty"`
	StraightedgeGap *dial.StraightedgeGap `json:"straightedge_gap,omitempty"`

	// Growth from cold to running, two supports a machine, or none for a machine that
	// does not grow. A support tells its growth by Pieces, each with one mean rise, or
	// by Measured.
	Stationary []thermal.Support `json:"stationary,omitempty"`
	Movable    []thermal.Support `json:"movable,omitempty"`

	Feet []align.Foot `json:"feet,omitempty"` // each with a name; none: the working ends at the coupling
}

// RimFace works a rim dial and a face dial, and the corrections that bring the shafts
// in line as they are. It refuses what [Job.Working] refuses.
func RimFace(d dial.RimFace, feet ...align.Foot) (Working, error) {
	return Job{RimFace: &d, Feet: feet}.Working()
}

// Reverse works two rim dials, each carried by one shaft, as [RimFace] does.
func Reverse(d dial.Reverse, feet ...align.Foot) (Working, error) {
	return Job{Reverse: &d, Feet: feet}.Working()
}

// FaceFace works a face dial at each end of a spacer, as [RimFace] does.
func FaceFace(d dial.FaceFace, feet ...align.Foot) (Working, error) {
	return Job{FaceFace: &d, Feet: feet}.Working()
}

// RimGap works a rim dial and a gap gauge, as [RimFace] does.
func RimGap(d dial.RimGap, feet ...align.Foot) (Working, error) {
	return Job{RimGap: &d, Feet: feet}.Working()
}

// StraightedgeGap works a straightedge and a gap gauge, as [RimFace] does.
func StraightedgeGap(d dial.StraightedgeGap, feet ...align.Foot) (Working, error) {
	return Job{StraightedgeGap: &d, Feet: feet}.Working()
}

// Working works the job line by line: the checks of the readings, the offset and the
// slope at the coupling in both planes, the growth and the cold target, and at every
// foot where the shaft lies and how far it has to go. The last lines are what
// align.Estimate.Corrections answers, to the last bit.
//
// It refuses a job without a method or with more than one (Missing, Conflict), what
// the method's Solve, thermal.Growth and Corrections refuse, with paths from the job
// (/reverse/carried_by_movable/sag), feet and supports without a name (Missing), names that make the ids
// of two lines the same (Duplicate), and growth that
// is not worked line by line: legs that differ from side to side, profiles of
// temperature, more than two supports.
func (j Job) Working() (Working, error) {
	var faults check.Faults
	m := j.method(&faults)
	growth := j.growth(&faults)
	checkNames(&faults, j.Feet)
	found := solve(&faults, m)
	moves := corrections(&faults, found.Estimate.Minus(growth.target), j.Feet)
	if err := faults.Err(); err != nil {
		return Working{}, err
	}
	var p page
	laid := p.measured(m, &found)
	for _, in := range planes {
		p.feet(in, laid[in], growth.put(&p, in), j.Feet, moves)
	}
	return p.working(m.title, m.view)
}

// method is the one that the job was measured by; nil where that is not one.
func (j Job) method(faults *check.Faults) *method {
	var given []method
	if j.RimFace != nil {
		given = append(given, ofRimFace(*j.RimFace))
	}
	if j.Reverse != nil {
		given = append(given, ofReverse(*j.Reverse))
	}
	if j.FaceFace != nil {
		given = append(given, ofFaceFace(*j.FaceFace))
	}
	if j.RimGap != nil {
		given = append(given, ofRimGap(*j.RimGap))
	}
	if j.StraightedgeGap != nil {
		given = append(given, ofStraightedgeGap(*j.StraightedgeGap))
	}
	var root check.Path
	switch len(given) {
	case 0:
		faults.Add(units.Missing, root.Field("reverse"), nil, "a method: one of rim_face, reverse, face_face, rim_gap and straightedge_gap")
		return nil
	case 1:
		return &given[0]
	}
	for _, extra := range given[1:] {
		faults.Add(units.Conflict, root.Field(extra.field), nil, "one method: "+given[0].field+" is there already")
	}
	return nil
}

// solve has package dial answer.
func solve(faults *check.Faults, m *method) dial.Result {
	if m == nil {
		return dial.Result{}
	}
	found, err := m.Solve()
	var root check.Path
	faults.Adopt(root.Field(m.field), err)
	return found
}

// corrections has package align answer, where the job goes as far as the feet.
func corrections(faults *check.Faults, off align.Estimate, feet []align.Foot) []align.Move {
	if len(feet) == 0 {
		return nil
	}
	moves, err := off.Corrections(feet...)
	var root check.Path
	faults.Adopt(root, err)
	return moves
}

func checkNames(faults *check.Faults, feet []align.Foot) {
	var root check.Path
	list := root.Field("feet")
	for i, f := range feet {
		checkName(faults, list.Index(i), f.Name)
	}
}

func checkName(faults *check.Faults, at check.Path, name string) {
	if strings.TrimSpace(name) == "" {
		faults.Add(units.Missing, at.Field("name"), nil, "a name, by which its lines are called")
	}
}

// growths is the growth of both machines and the target that follows.
type growths struct {
	machines []machine // none, or the stationary one and the movable one
	target   align.Estimate
}

func (j Job) growth(faults *check.Faults) growths {
	if j.Stationary == nil && j.Movable == nil {
		return growths{}
	}
	stationary := newMachine(faults, "stationary", j.Stationary)
	movable := newMachine(faults, "movable", j.Movable)
	return growths{
		machines: []machine{stationary, movable},
		target:   thermal.ColdTarget(stationary.line, movable.line),
	}
}

// put puts the growth and the target of one plane on the page.
func (g growths) put(p *page, in plane) goal {
	if g.machines == nil || in == horizontal && !slices.ContainsFunc(g.machines, machine.goesSideways) {
		return goal{}
	}
	stationary, movable := p.growth(g.machines[0], in), p.growth(g.machines[1], in)
	return p.coldTarget(in, stationary, movable, in.line(g.target.Value))
}
