package softfoot_test

import (
	"testing"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

// rectangle is a survey of four feet at 0 and 600 mm along the shaft and 200 mm to
// either side of it, the shaft 280 mm above them, in the order near 3, near 9, far
// 3, far 9 o'clock.
func rectangle(unit units.Length, lifts ...float64) softfoot.Survey {
	s := softfoot.Survey{Height: 280 * units.Millimetre}
	for i, name := range []string{"near 3", "near 9", "far 3", "far 9"} {
		s.Feet = append(s.Feet, softfoot.Foot{
			Name: name,
			X:    600 * units.Millimetre * units.Length(i/2),
			Y:    200 * units.Millimetre * units.Length(1-2*(i%2)),
			Lift: units.Length(lifts[i]) * unit,
		})
	}
	return s
}

// US Bureau of Reclamation, Maintenance Scheduling for Mechanical Equipment (FIST
// 4-1A), p. 17 (read): one foot moves 0.005 in, the other three 0.002 in each; add
// 0.003 in under the one.
func TestFIST(t *testing.T) {
	found, err := rectangle(units.Mil, 5, 2, 2, 2).Judge(softfoot.Limits{})
	if err != nil {
		t.Fatal(err)
	}
	if found.Common != 2*units.Mil || found.Worst != 3*units.Mil {
		t.Errorf("common %v, worst %v", found.Common, found.Worst)
	}
	first := found.Advice[0].Shims
	if len(first) != 1 || first[0] != (softfoot.Shim{Foot: "near 3", Flat: 3 * units.Mil}) {
		t.Errorf("got %+v, want 3 mil under the one", first)
	}
	if found.Fits[0].Kind != softfoot.Parallel || found.Fits[1].Kind != softfoot.Angular {
		t.Errorf("got %v: lifts alone cannot tell a short foot from one on its edge", found.Fits)
	}
	if len(found.Next) != 1 || found.Next[0].Check != softfoot.FeelCorners {
		t.Errorf("got %v, want a feeler under the corners", found.Next)
	}
}

// McMillan, Rotating Machinery, 2004, p. 112 (read): act when feet differ by more
// than 2 mils; so on 2 mils there is nothing to do.
func TestMcMillan(t *testing.T) {
	act := softfoot.Limits{Act: 2 * units.Mil}
	for _, row := range []struct {
		lift float64
		soft bool
	}{{2, false}, {2.1, true}} {
		found, err := rectangle(units.Mil, row.lift, 0, 0, row.lift).Judge(act)
		if err != nil {
			t.Fatal(err)
		}
		if soft := len(found.Fits) > 0; soft != row.soft {
			t.Errorf("%v mil: got %v", row.lift, found.Fits)
		}
	}
}
