package train

import (
	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// Foot is a station at which a machine stands on its feet, both feet of one end,
// with what holds it. Its moves are those of the shaft centreline above it.
type Foot struct {
	Name       string       `json:"name"` // no other foot of the machine has it
	X          units.Length `json:"x"`    // station along the train
	Vertical   Limit        `json:"vertical,omitzero"`
	Horizontal Limit        `json:"horizontal,omitzero"`
	Under      []Pack       `json:"under,omitempty"` // what lies under its single feet now: for PlanShims alone
}

// Machine is a driver, a gearbox, a driven machine: a rigid body on two stations
// or more.
type Machine struct {
	Name   string       `json:"name"`            // no other machine has it
	Feet   []Foot       `json:"feet,omitempty"`  // two or more; the reference may have none
	Height units.Length `json:"height,omitzero"` // of the centreline above the feet; zero: at their height, or not known, and no axial shift is told
}

// Joint is the coupling between a machine and the next one in line. What was found
// there is the later machine's centreline relative to the earlier one's, in the
// coupling's own x, which is zero at At. Where the crew took the later machine as
// the stationary one and stood behind the earlier, give [align.Estimate.Exchanged]
// of what was found.
//
// With the growth of each machine told along the x of the train, the target of
// coupling j is the cold target of package thermal, with growth[j].About(At) as that
// of the stationary machine and growth[j+1].About(At) as that of the movable one. A
// machine between two couplings is in both targets, which then count as independent.
type Joint struct {
	Coupling align.Coupling   `json:"coupling"`
	At       units.Length     `json:"at"`              // station of the coupling centre along the train
	Found    align.Estimate   `json:"found"`           // as it stands
	Target   align.Estimate   `json:"target,omitzero"` // as it is to stand; zero: in line
	Limits   tolerance.Limits `json:"limits"`          // of what is found less the target
}

// Off returns what was found less the target.
func (j Joint) Off() align.Estimate { return j.Found.Minus(j.Target) }

// offValue is the value of Off, without its covariance.
func (j *Joint) offValue() align.Centreline { return j.Found.Value.Minus(j.Target.Value) }

// Train is machines in one line. x runs from the first to the last along the whole
// train, with its zero where the caller likes, and the observer stands behind the
// last machine and looks at the first.
type Train struct {
	Machines []Machine `json:"machines"` // two or more, in order
	Joints   []Joint   `json:"joints"`   // one between each two neighbours, in order

	// Reference is the machine that stays where it is and whose centreline is the
	// axis; the limits of its feet do not count then. Without one every machine may
	// move, and the axis is the centreline of the first machine as it stands before
	// anything moves.
	Reference string `json:"reference,omitempty"`
}

// The largest train. It is beyond what machines need, and bounds the time of a
// plan.
const (
	MostMachines = 24
	MostFeet     = 8 // of one machine
)

// reference returns the index of the reference, or -1.
func (t *Train) reference() int {
	for i := range t.Machines {
		if t.Reference != "" && t.Machines[i].Name == t.Reference {
			return i
		}
	}
	return -1
}

// feet returns how many stations with feet there are.
func (t *Train) feet() int {
	n := 0
	for i := range t.Machines {
		n += len(t.Machines[i].Feet)
	}
	return n
}

// axis returns the index of the machine whose centreline, before anything moves,
// is the axis.
func (t *Train) axis() int { return max(0, t.reference()) }

// Centrelines returns where every machine stands now, relative to the axis, told
// along the x of the train, with its covariance: the couplings between it and the
// axis add up, each independent of the others. In each plane
//
//	w_(i+1)(x) = w_i(x) + offset_j + slope_j (x - X_j)
//
// It refuses what [Train.Plan] refuses.
func (t Train) Centrelines() ([]align.Estimate, error) {
	if err := t.Validate(); err != nil {
		return nil, err
	}
	return t.centrelines(), nil
}

func (t *Train) centrelines() []align.Estimate {
	lines := make([]align.Estimate, len(t.Machines))
	from := t.axis()
	for i := from; i < len(t.Joints); i++ {
		lines[i+1] = lines[i].Plus(t.Joints[i].told())
	}
	for i := from - 1; i >= 0; i-- {
		lines[i] = lines[i+1].Minus(t.Joints[i].told())
	}
	return lines
}

// told returns what was found at the joint along the x of the train.
func (j *Joint) told() align.Estimate { return j.Found.About(-j.At) }
