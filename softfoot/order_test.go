package softfoot_test

import (
	"slices"
	"strings"
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

// inTwoRows is a survey of feet at 400 mm from one another, three and nine in turn.
func inTwoRows(lifts ...units.Length) softfoot.Survey {
	var plan []spot
	for i := range lifts {
		plan = append(plan, spot{float64(400 * (i / 2)), float64(600*(i%2) - 300)})
	}
	return onFeet(plan, lifts)
}

// With more than four feet the ways that are as good as the first are those under as
// many feet, which leave no more than half of what would be soft; what leaves least
// comes first, as far as a dial tells, and then the feet that lifted most.
func TestWaysThatAreAsGood(t *testing.T) {
	for _, row := range []struct {
		name   string
		survey softfoot.Survey
		want   []string // feet with a flat shim
	}{
		{"one leaves too much", inTwoRows(0, 80*um, 0, 0, 40*um, 0), []string{"1"}},
		{"one leaves less", inTwoRows(60*um, 0, 0, 60*um, 0), []string{"0", "3"}},
		{"alike, and one pair lifted more", inTwoRows(40*um, 80*um, 0, 0, 80*um, 120*um), []string{"4 5", "0 1"}},
		{"two under two feet", inTwoRows(100*um, 0, 0, 120*um, 140*um), []string{"3 4", "0 4"}},
	} {
		var got []string
		for _, way := range judge(t, row.survey, softfoot.Limits{}).Advice {
			var feet []string
			for _, shim := range way.Shims {
				feet = append(feet, shim.Foot)
			}
			got = append(got, strings.Join(feet, " "))
		}
		if !slices.Equal(got, row.want) {
			t.Errorf("%s: got %q, want %q", row.name, got, row.want)
		}
	}
}

// As many feet as pads can be out of plane, at the most.
func TestNoMoreShimsThanPadsOutOfPlane(t *testing.T) {
	const mil = units.Mil
	advice := judge(t, inTwoRows(3*mil, 2*mil, mil, 2*mil, 6*mil, -mil, 6*mil, 2*mil), softfoot.Limits{}).Advice
	if len(advice) == 0 || flatFeet(advice[0]) > 5 {
		t.Errorf("got %+v", advice)
	}
}

// A lift of exactly the margin counts as one that is a little less.
func TestLiftOfTheMargin(t *testing.T) {
	const mil = units.Mil
	for _, lifts := range [][]units.Length{
		{mil, 6 * mil, 0, 0},
		{10 * mil, 0, 0, 0, mil, 0, -mil},
		{10 * mil, mil, 0, -mil, 0, 0, 6 * mil, 0},
	} {
		less := slices.Clone(lifts)
		for i := range less {
			if less[i] == mil {
				less[i] -= nm
			}
		}
		at, below := judge(t, inTwoRows(lifts...), softfoot.Limits{}).Advice, judge(t, inTwoRows(less...), softfoot.Limits{}).Advice
		if len(at) == 0 || len(at) != len(below) || max(at[0].Left-below[0].Left, below[0].Left-at[0].Left) > 100*nm {
			t.Errorf("%v: got %+v, a little less: %+v", lifts, at, below)
		}
	}
}

// Exactly the margin shows nothing: such a foot gets no shim.
func TestLiftOfTheMarginShowsNothing(t *testing.T) {
	for _, way := range judge(t, rectangle(um, 25.4, 0, 0, 200), softfoot.Limits{}).Advice {
		for _, shim := range way.Shims {
			if shim.Foot == "near 3" {
				t.Errorf("got %+v", way)
			}
		}
	}
}

// Where the machine stands does not count.
func TestFeetMovedAcross(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSurvey(t)
		moved := mapped(s, func(f *softfoot.Foot) { f.X += 50 * units.Metre; f.Y += 80 * units.Metre }, func(*softfoot.Gap) {})
		want, got := judge(t, s, softfoot.Limits{}), judge(t, moved, softfoot.Limits{})
		if len(want.Advice) != len(got.Advice) {
			t.Fatalf("%+v: %d ways, moved %d", s, len(want.Advice), len(got.Advice))
		}
		for k := range want.Advice {
			if by := want.Advice[k].Left - got.Advice[k].Left; max(by, -by) > 10*nm {
				t.Fatalf("%+v: way %d leaves %v, moved %v", s, k, want.Advice[k].Left, got.Advice[k].Left)
			}
		}
	})
}
