package softfoot_test

import (
	"testing"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// Either foot of a diagonal takes the twist out; the one that lifted more is likelier
// the short one, and comes first.
func TestFootThatLiftedMoreComesFirst(t *testing.T) {
	for _, row := range []struct {
		lifts []float64
		first string
	}{
		{[]float64{120, 0, 0, 90}, "near 3"},
		{[]float64{90, 0, 0, 120}, "far 9"},
		{[]float64{0, 120, 90, 0}, "near 9"},
		{[]float64{20, 110, 140, 20}, "far 3"},
	} {
		found := judge(t, rectangle(um, row.lifts...), softfoot.Limits{})
		if len(found.Advice) != 3 || found.Advice[0].Shims[0].Foot != row.first {
			t.Errorf("%v: got %+v, want %s first", row.lifts, found.Advice, row.first)
		}
	}
}

// The fewest feet come first, and of as many feet what leaves least, as far as a
// dial of 0.01 mm tells.
func TestOrderOfAdvice(t *testing.T) {
	several := 0
	rapid.Check(t, func(t *rapid.T) {
		s := drawSurvey(t)
		if rapid.Bool().Draw(t, "diagonal") {
			lift := rapid.Float64Range(60, 300)
			s = rectangle(um, lift.Draw(t, "near 3"), 0, 0, lift.Draw(t, "far 9"))
		}
		advice := judge(t, s, softfoot.Limits{}).Advice
		for k := 1; k < len(advice); k++ {
			several++
			before, way := advice[k-1], advice[k]
			if flatFeet(before) > flatFeet(way) {
				t.Errorf("%+v: way %d is under fewer feet than the one before", s, k)
			}
			if flatFeet(before) == flatFeet(way) && way.Left < before.Left-10*um {
				t.Errorf("%+v: way %d leaves %v, the one before %v", s, k, way.Left, before.Left)
			}
		}
	})
	if several == 0 {
		t.Error("never more than one way")
	}
}

// flatFeet is how many feet get a flat shim.
func flatFeet(way softfoot.Advice) (n int) {
	for _, shim := range way.Shims {
		if shim.Flat != 0 {
			n++
		}
	}
	return n
}

// Shims go under feet that lift: raising the foot across from the neighbour of the
// corner that lifts would do as well in a flat frame, and is not advised.
func TestShimsGoUnderFeetThatLift(t *testing.T) {
	s := onFeet([]spot{{0, 20}, {0, -20}, {300, 20}, {300, -20}, {600, 20}}, []units.Length{60 * um, 0, 0, 0, 0})
	advice := judge(t, s, softfoot.Limits{}).Advice
	if len(advice) != 1 || len(advice[0].Shims) != 1 || advice[0].Shims[0].Foot != "0" {
		t.Errorf("got %+v", advice)
	}
}
