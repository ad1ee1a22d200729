package train

import (
	"math/rand/v2"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// crooked is a crowded train whose machines are off sideways as well.
func crooked(seed uint64) Train {
	const um = units.Micrometre
	r := rand.New(rand.NewPCG(seed, 77))
	t, _ := crowded(r, 2+int(seed%3))
	for j := range t.Joints {
		joint := &t.Joints[j]
		joint.Found.Value.Horizontal = align.Line{Offset: units.Length(r.IntN(800)-400) * um, Slope: units.Slope(r.IntN(1000)-500) * 1e-6}
		if r.IntN(4) == 0 {
			joint.Coupling.Span, joint.Limits.Flex = 10*units.Millimetre, 3e-4
		}
	}
	limits := []Limit{{}, {}, Between(-300*um, 400*um), AtMost(250 * um), Fixed()}
	for i := range t.Machines {
		for k := range t.Machines[i].Feet {
			t.Machines[i].Feet[k].Horizontal = limits[r.IntN(len(limits))]
		}
	}
	return t
}

// Where limits have to open, none has to by less than a move that counts: what solvers
// leave of an opening that does not help is not told.
func TestNoOpeningIsDust(t *testing.T) {
	for _, seed := range []uint64{1033, 1578, 1684, 1771, 1888, 2124, 2317} {
		p, err := crooked(seed).Plan(TotalTravel)
		if err != nil || len(p.InTheWay) == 0 {
			t.Errorf("seed %d: %d limits in the way, %v", seed, len(p.InTheWay), err)
		}
		for _, b := range p.InTheWay {
			if b.Together > 0 && b.Together < LeastStep {
				t.Errorf("seed %d: %s %s opens by %v", seed, b.Machine, b.Foot, b.Together)
			}
		}
	}
}
