package train_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// A reference without feet cannot be a way out, and is no obstacle to the others.
func TestReferenceWithoutFeet(t *testing.T) {
	found := align.Exact(align.Centreline{Vertical: align.Line{Offset: -210 * units.Micrometre, Slope: 0.25 * units.MillimetrePerMetre}})
	tr := train.Train{
		Machines: []train.Machine{
			{Name: "motor", Feet: []train.Foot{
				{Name: "outboard", X: -1240 * units.Millimetre, Vertical: train.AtLeast(0)},
				{Name: "inboard", X: -385 * units.Millimetre, Vertical: train.AtLeast(0)},
			}},
			{Name: "line shaft"},
		},
		Joints: []train.Joint{{
			At: -160 * units.Millimetre, Found: found,
			Limits: tolerance.Limits{Offset: 50 * units.Micrometre, Slope: 0.5 * units.MillimetrePerMetre, PerPlane: true},
		}},
		Reference: "line shaft",
	}
	p, err := tr.Plan(train.TotalTravel)
	if err != nil {
		t.Fatal(err)
	}
	if p.Reach != train.OutOfReach || len(p.InTheWay) != 1 || p.InTheWay[0].Foot != "inboard" || p.InTheWay[0].Alone == 0 {
		t.Errorf("%v, in the way: %+v; want the inboard foot alone", p.Reach, p.InTheWay)
	}
}
