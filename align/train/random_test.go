package train_test

import (
	"fmt"
	"math"
	"math/rand/v2"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

const (
	nm = units.Nanometre
	um = units.Micrometre
	mm = units.Millimetre
)

// job is how a random train is drawn. Everything comes out in whole nanometres, so
// that the oracle can read it without rounding.
type job struct {
	machines int
	perPlane bool
	alike    bool    // equal distances and equal limits: everything ties
	crowded  bool    // three or four feet a machine, with limits of every sort
	away     bool    // some limits leave out "stay where it is"
	scale    float64 // of all lengths
}

func (j job) String() string {
	type fields job // without this method
	return fmt.Sprintf("%+v", fields(j))
}

// draw makes the train. The limits always leave each machine a place: they lie about
// a line that the machine could take.
func (j job) draw(r *rand.Rand) train.Train {
	var t train.Train
	x := 0
	for i := range j.machines {
		m := train.Machine{Name: fmt.Sprint("machine ", i), Height: j.length(500000)}
		x += j.gap(r)
		for k := range j.stations(r) {
			m.Feet = append(m.Feet, train.Foot{Name: fmt.Sprint("foot ", k), X: j.length(1000 * x)})
			x += j.gap(r)
		}
		j.limit(r, &m)
		t.Machines = append(t.Machines, m)
		if i+1 < j.machines {
			t.Joints = append(t.Joints, j.joint(r, x))
		}
	}
	if i := r.IntN(j.machines + 1); i < j.machines {
		t.Reference = t.Machines[i].Name
	}
	return t
}

// length takes micrometres.
func (j job) length(micrometres int) units.Length {
	return (units.Length(micrometres) * um * units.Length(j.scale)).Round(nm)
}

func (j job) gap(r *rand.Rand) int {
	if j.alike {
		return 400
	}
	return 200 + 100*r.IntN(9)
}

func (j job) stations(r *rand.Rand) int {
	if j.crowded {
		return 2 + r.IntN(3)
	}
	return 2
}

// limit gives every foot a limit in each plane, about a line.
func (j job) limit(r *rand.Rand, m *train.Machine) {
	for _, side := range []bool{true, false} {
		first, each := 0, 0
		if j.away {
			first, each = r.IntN(2001)-1000, r.IntN(41)-20
		}
		for k := range m.Feet {
			hundreds := (m.Feet[k].X - m.Feet[0].X) / j.length(100000)
			l := j.about(r, first+each*int(math.Round(float64(hundreds))))
			if side {
				m.Feet[k].Horizontal = l
			} else {
				m.Feet[k].Vertical = l
			}
		}
	}
}

func (j job) about(r *rand.Rand, middle int) train.Limit {
	below, above := 1+r.IntN(1200), 1+r.IntN(1200)
	if j.alike {
		below, above = 300, 300
	}
	low, high := j.length(middle-below), j.length(middle+above)
	switch r.IntN(6) {
	case 0:
		return train.Limit{}
	case 1:
		return train.AtLeast(low)
	case 2:
		return train.AtMost(high)
	case 3:
		return train.Between(j.length(middle), j.length(middle)) // no width
	}
	return train.Between(low, high)
}

func (j job) joint(r *rand.Rand, x int) train.Joint {
	line := func() align.Line {
		return align.Line{Offset: j.length(r.IntN(2001) - 1000), Slope: units.Slope(float64(r.IntN(4001)-2000) / 1e6)}
	}
	joint := train.Joint{
		At:     j.length(1000 * x),
		Found:  align.Exact(align.Centreline{Horizontal: line(), Vertical: line()}),
		Limits: tolerance.Limits{Offset: j.length(50), Slope: 0.5 * units.MillimetrePerMetre, PerPlane: j.perPlane},
	}
	if r.IntN(3) == 0 {
		joint.Target = align.Exact(align.Centreline{Horizontal: line(), Vertical: line()})
	}
	if j.alike {
		return joint
	}
	switch r.IntN(4) {
	case 0:
		joint.Coupling.Span = j.length(200000)
		joint.Limits.Flex = 0.5 * units.MillimetrePerMetre
	case 1:
		joint.Limits.Slope = 0
	case 2:
		joint.Limits.Offset = j.length(20 + r.IntN(100))
	}
	return joint
}
