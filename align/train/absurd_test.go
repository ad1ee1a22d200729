package train_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/units"
)

// Numbers that are each sound can add up to what no verdict is made of. That is a
// fault, not a panic.
func TestSumsBeyondAnyNumber(t *testing.T) {
	for _, slope := range []units.Slope{1e3, 1e9, 9e14} {
		for _, offset := range []units.Length{0, 9e14} {
			tr := four(true)
			for i := range tr.Joints {
				tr.Joints[i].Found = align.Exact(align.Centreline{Vertical: align.Line{Offset: offset, Slope: slope}})
				tr.Joints[i].Target = align.Exact(align.Centreline{Vertical: align.Line{Offset: -offset, Slope: -slope}})
			}
			p, err := tr.Plan(train.TotalTravel)
			if err == nil && p.Reach == 0 {
				t.Errorf("slope %v, offset %v: neither a plan nor a fault", slope, offset)
			}
			if err != nil && len(units.Faults(err)) == 0 {
				t.Errorf("slope %v, offset %v: %v is no fault", slope, offset, err)
			}
		}
	}
}
