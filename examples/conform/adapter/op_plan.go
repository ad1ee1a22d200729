package adapter

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

type centrelinesInput struct {
	Machines  []trainMachine `json:"machines"`
	Joints    []trainJoint   `json:"joints"`
	Reference *string        `json:"reference,omitzero"`
}

type planInput struct {
	Machines  []trainMachine `json:"machines"`
	Joints    []trainJoint   `json:"joints"`
	Reference *string        `json:"reference,omitzero"`
	Work      train.Work     `json:"work,omitzero"`
}

type trainMachine struct {
	Name   string        `json:"name"`
	Height *units.Length `json:"height,omitzero"`
	Feet   []trainFoot   `json:"feet,omitzero"`
}

type trainFoot struct {
	Name       string       `json:"name"`
	X          units.Length `json:"x"`
	Vertical   moveLimit    `json:"vertical,omitzero"`
	Horizontal moveLimit    `json:"horizontal,omitzero"`
}

// moveLimit is how far a foot goes in one plane; without an end it is free there.
type moveLimit struct {
	AtLeast *units.Length `json:"at_least,omitzero"`
	AtMost  *units.Length `json:"at_most,omitzero"`
}

type trainJoint struct {
	At       units.Length `json:"at"`
	SeenFrom seenFrom     `json:"seen_from,omitzero"`
	Found    position     `json:"found"`
	Target   *position    `json:"target,omitzero"`
	Coupling coupling     `json:"coupling,omitzero"`
	Limits   limits       `json:"limits"`
}

// seenFrom is the machine behind which the crew stood, the first or else the last.
type seenFrom struct{ first bool }

func (s *seenFrom) UnmarshalText(text []byte) error {
	const want = "first or last"
	switch s.first = string(text) == "first"; {
	case len(text) == 0:
		return &units.Fault{Code: units.Missing, Want: want}
	case !s.first && string(text) != "last":
		return &units.Fault{Code: units.Unknown, Value: strict.Short(string(text)), Want: want}
	}
	return nil
}

type centrelinesResult struct {
	Machines []lying `json:"machines"`
}

type lying struct {
	Machine string   `json:"machine"`
	At      position `json:"at"`
}

type planResult struct {
	Reach    string      `json:"reach"`
	Ratio    float64     `json:"ratio"`
	Moves    []trainMove `json:"moves"`
	Machines []shifted   `json:"machines"`
	InTheWay []block     `json:"in_the_way"`
}

type trainMove struct {
	Machine    string       `json:"machine"`
	Foot       string       `json:"foot"`
	Horizontal units.Length `json:"horizontal"`
	Vertical   units.Length `json:"vertical"`
}

type shifted struct {
	Machine string        `json:"machine"`
	Shift   *units.Length `json:"shift,omitzero"` // where a height is given
}

type block struct {
	Machine string       `json:"machine"`
	Foot    string       `json:"foot"`
	Plane   string       `json:"plane"`
	Side    string       `json:"side"`
	Alone   units.Length `json:"alone,omitzero"`
}

func centrelines(in *centrelinesInput, f *strict.Faults) (out centrelinesResult) {
	t := trainOf(f, in.Machines, in.Joints, in.Reference)
	stated := false
	for i := range t.Joints {
		stated = stated || t.Joints[i].Found.Cov.Basis == align.Stated
	}
	lines, err := t.Centrelines()
	f.Adopt(err, ofTrain)
	for i, e := range lines {
		at := told(e)
		if u := e.Cov.Standard(); stated { // the axis itself has u as well: none
			at.Horizontal.U, at.Vertical.U = &u.Horizontal, &u.Vertical
		}
		out.Machines = append(out.Machines, lying{t.Machines[i].Name, at})
	}
	return out
}

func plan(in *planInput, f *strict.Faults) planResult {
	t := trainOf(f, in.Machines, in.Joints, in.Reference)
	if len(*f) > 0 { // no search for what does not count; its other faults come all the same
		f.Adopt(t.Validate(), ofTrain)
		return planResult{}
	}
	p, err := t.Plan(in.Work)
	f.Adopt(err, ofTrain)
	return in.told(p)
}

// trainOf returns the train for the library.
func trainOf(f *strict.Faults, machines []trainMachine, joints []trainJoint, reference *string) train.Train {
	t := train.Train{Reference: value(reference)}
	if reference != nil && *reference == "" {
		f.Add(units.Missing, "/reference", "", "the name of a machine, or no such member")
	}
	for i := range machines {
		t.Machines = append(t.Machines, machines[i].machine())
	}
	for i := range joints {
		t.Joints = append(t.Joints, joints[i].joint(f, strict.Step("/joints", i)))
	}
	return t
}

func (m *trainMachine) machine() train.Machine {
	machine := train.Machine{Name: m.Name, Height: value(m.Height)}
	for _, foot := range m.Feet {
		machine.Feet = append(machine.Feet, train.Foot{
			Name: foot.Name, X: foot.X, Vertical: foot.Vertical.limit(), Horizontal: foot.Horizontal.limit(),
		})
	}
	return machine
}

func (l moveLimit) limit() train.Limit {
	switch {
	case l.AtLeast != nil && l.AtMost != nil:
		return train.Between(*l.AtLeast, *l.AtMost)
	case l.AtLeast != nil:
		return train.AtLeast(*l.AtLeast)
	case l.AtMost != nil:
		return train.AtMost(*l.AtMost)
	}
	return train.Limit{}
}

func (j *trainJoint) joint(f *strict.Faults, path string) train.Joint {
	joint := train.Joint{
		Coupling: align.Coupling{Diameter: value(j.Coupling.Diameter), Span: value(j.Coupling.Span)},
		At:       j.At,
		Found:    j.Found.estimate(f, path+"/found"),
		Limits:   j.limitsOf(f, path),
	}
	if j.Target != nil {
		joint.Target = j.Target.estimate(f, path+"/target")
	}
	if j.SeenFrom.first {
		joint.Found, joint.Target = joint.Found.Exchanged(), joint.Target.Exchanged()
	}
	return joint
}

// limitsOf returns the limits of the joint. Where one of them, or the span, is
// given as zero, that is the fault; to the library it would be left out, and others
// missing beside it.
func (j *trainJoint) limitsOf(f *strict.Faults, path string) tolerance.Limits {
	before := len(*f)
	above(f, path+"/coupling/diameter", j.Coupling.Diameter)
	above(f, path+"/coupling/span", j.Coupling.Span)
	l := j.Limits.limits(f, path+"/limits")
	if len(*f) > before {
		return tolerance.Limits{Offset: units.Millimetre, Flex: units.MillimetrePerMetre}
	}
	return l
}

func (in *planInput) told(p train.Plan) planResult {
	result := planResult{Reach: p.Reach.String(), Ratio: p.Ratio, Moves: []trainMove{}, Machines: []shifted{}, InTheWay: []block{}}
	for i, m := range p.Machines {
		told := shifted{Machine: m.Machine}
		if in.Machines[i].Height != nil {
			told.Shift = &m.Shift
		}
		result.Machines = append(result.Machines, told)
		if m.Machine == value(in.Reference) {
			continue
		}
		line := m.After.Value.Minus(m.Before.Value) // with all digits: the library rounds moves to a nanometre
		for _, move := range m.Feet {
			by := line.At(move.Foot.X)
			result.Moves = append(result.Moves, trainMove{m.Machine, move.Foot.Name, by.Horizontal, by.Vertical})
		}
	}
	for _, b := range p.InTheWay {
		result.InTheWay = append(result.InTheWay, block{b.Machine, b.Foot, b.Plane.String(), b.Side.String(), b.Alone})
	}
	return result
}

// ofTrain turns paths of the library into those of the wire: of an estimate only the
// value is left to find fault with.
func ofTrain(path string) string { return strings.Replace(path, "/value/", "/", 1) }
