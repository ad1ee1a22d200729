package softfoot_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

// No crew puts a shim of centimetres under a foot that lifts by hundredths. Feet
// that stand nearly in one row, but not quite, tempt to that: pads that rise along
// the row explain what a slight bend of it would. One foot of the row lifts, or two.
func TestShimsAreInProportionToLifts(t *testing.T) {
	const lift, most = 60 * um, 5
	rng := rand.New(rand.NewPCG(9, 3))
	bad, ways := 0, 0
	for i := range 3000 {
		n := 4 + i%5
		plan := randomFeet(rng, n, 200+700*rng.Float64(), 150+350*rng.Float64())
		lifts := make([]units.Length, n)
		lifts[rng.IntN(n)], lifts[rng.IntN(n)] = lift, lift
		s := onFeet(plan, lifts)
		for k, way := range judge(t, s, softfoot.Limits{}).Advice {
			ways++
			if largest := slices.Max(flats(s, way)); largest > most*lift {
				if bad++; bad <= 3 {
					t.Errorf("feet at %v lift %v: way %d is %v", plan, lifts, k, flats(s, way))
				}
			}
		}
	}
	if bad > 0 {
		t.Errorf("%d of %d ways have a shim of more than %d times the largest lift", bad, ways, most)
	}
}

// The same by hand: five feet, one row 0.1 mm off straight, 40 mm across.
func TestShimsOfNearlyStraightRow(t *testing.T) {
	plan := []spot{{0, 20}, {0, -20}, {300, 20.1}, {300, -20}, {600, 20}}
	for lifted := range plan {
		lifts := make([]units.Length, 5)
		lifts[lifted] = 60 * um
		s := onFeet(plan, lifts)
		for k, way := range judge(t, s, softfoot.Limits{}).Advice {
			if largest := slices.Max(flats(s, way)); largest > 5*60*um {
				t.Errorf("foot %d lifts 0.06 mm: way %d is %v", lifted, k, flats(s, way))
			}
		}
	}
}

// What is left afterwards counts the feet that nothing is done about.
func TestLeftCountsWhatNobodyCures(t *testing.T) {
	for _, row := range []struct {
		name   string
		survey softfoot.Survey
		least  units.Length
	}{
		{"an end lifts, which no shim cures; one foot of it gets a stepped shim", felt(rectangle(um, 0, 120, 0, 0), 0, 100, 100, 200, 200), 120 * um},
		{"three feet, one on its edge, another lifts flat", felt(three(0, 90, 0), 0, 0, 0, 80, 80), 90 * um},
		{"a foot alone gets its shim, two others lift by the limit", rectangle(um, 300, 50, 50, 0), 50 * um},
	} {
		for k, way := range judge(t, row.survey, softfoot.Limits{}).Advice {
			if way.Left < row.least {
				t.Errorf("%s: way %d, %+v, leaves %v, want %v or more", row.name, k, way.Shims, way.Left, row.least)
			}
		}
	}
}
