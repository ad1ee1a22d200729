package softfoot_test

import (
	"math"
	"math/big"
	"slices"
	"testing"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// nullVector solves sum n_i = sum n_i x_i = sum n_i y_i = 0 with n_3 = 1 for four
// feet, in rationals; false: the first three stand in one line.
func nullVector(plan []spot) ([]*big.Rat, bool) {
	var a [][]*big.Rat
	for _, of := range []func(spot) float64{func(spot) float64 { return 1 }, func(p spot) float64 { return p.x }, func(p spot) float64 { return p.y }} {
		a = append(a, []*big.Rat{rat(of(plan[0])), rat(of(plan[1])), rat(of(plan[2]))})
	}
	b := []*big.Rat{rat(-1), rat(-plan[3].x), rat(-plan[3].y)}
	n, ok := solve(a, b)
	return append(n, rat(1)), ok
}

// twistOf is sum n_i h_i.
func twistOf(n []*big.Rat, heights []units.Length) *big.Rat {
	sum := new(big.Rat)
	for i := range n {
		sum.Add(sum, times(n[i], exact(heights[i])))
	}
	return sum
}

// twistLifts is how far each of four feet lifts, loosened alone, on pads of the
// given twist: lift_i = max(0, -T/n_i). With the three others tight on their pads
// the plane through these passes foot i at -T/n_i above its own pad, for the null
// vector annuls every plane.
func twistLifts(n []*big.Rat, twist *big.Rat) []float64 {
	lifts := make([]float64, len(n))
	for i := range n {
		lift, _ := new(big.Rat).Quo(twist, n[i]).Float64()
		lifts[i] = max(0, -lift)
	}
	return lifts
}

// drawPlan draws four feet anywhere on at least some hundred millimetres, none of
// them nearly in line with two others, and their null vector.
func drawPlan(t *rapid.T) ([]spot, []*big.Rat) {
	for {
		plan := make([]spot, 4)
		for i := range plan {
			plan[i] = spot{float64(rapid.IntRange(-900, 900).Draw(t, "x")), float64(rapid.IntRange(-400, 400).Draw(t, "y"))}
		}
		if n, ok := nullVector(plan); ok && evenly(n) && roomy(plan) {
			return plan, n
		}
	}
}

// evenly tells whether no foot has less than a fifth of the largest weight.
func evenly(n []*big.Rat) bool {
	var sizes []float64
	for _, v := range n {
		f, _ := new(big.Rat).Abs(v).Float64()
		sizes = append(sizes, f)
	}
	return slices.Min(sizes) >= slices.Max(sizes)/5
}

// roomy tells whether some three feet span a triangle of 200 cm2 and of at least
// a tenth of the square over the longest distance.
func roomy(plan []spot) bool {
	area, longest := 0.0, 0.0
	for i, a := range plan {
		for j, b := range plan[:i] {
			longest = max(longest, math.Hypot(a.x-b.x, a.y-b.y))
			for _, c := range plan[:j] {
				area = max(area, math.Abs((b.x-a.x)*(c.y-a.y)-(c.x-a.x)*(b.y-a.y))/2)
			}
		}
	}
	return area >= 20_000 && area >= longest*longest/10
}

// Pads of any twist under four feet anywhere in plan: what is advised takes the
// twist out, whichever feet it chooses and whatever all feet move by besides.
func TestAdviceTakesTwistOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan, n := drawPlan(t)
		common := units.Length(rapid.IntRange(0, 80).Draw(t, "common")) * um
		s, twist := twisted(t, plan, n, common)
		found := judge(t, s, softfoot.Limits{})
		if found.Common != common {
			t.Fatalf("common %v, want %v", found.Common, common)
		}
		if len(found.Fits) == 0 || found.Fits[0].Kind != softfoot.Parallel {
			t.Fatalf("%v: got %v, want parallel first", s.Feet, found.Fits)
		}
		if len(found.Advice) == 0 {
			t.Fatal("no advice")
		}
		for k, way := range found.Advice {
			if k > 0 && len(way.Shims) < len(found.Advice[k-1].Shims) {
				t.Errorf("advice %d asks for fewer feet than the one before", k)
			}
			after := new(big.Rat).Add(twist, twistOf(n, flats(s, way)))
			if left := slices.Max(twistLifts(n, after)); left > 1e-4 {
				t.Errorf("%v: advice %d, %+v, leaves a lift of %v mm", s.Feet, k, way.Shims, left)
			}
			if way.Left > 100*nm {
				t.Errorf("advice %d expects a lift of %v afterwards", k, way.Left)
			}
		}
	})
}

// twisted draws pads of some twist, of which the largest lift is 0.06 to 0.5 mm.
func twisted(t *rapid.T, plan []spot, n []*big.Rat, common units.Length) (softfoot.Survey, *big.Rat) {
	twist := rat(1)
	if rapid.Bool().Draw(t, "sign") {
		twist = rat(-1)
	}
	largest := float64(rapid.IntRange(60, 500).Draw(t, "um")) / 1000
	twist = times(twist, rat(largest/slices.Max(twistLifts(n, twist))))
	var lifts []units.Length
	for _, lift := range twistLifts(n, twist) {
		lifts = append(lifts, (units.Length(lift)*mm).Round(nm)+common)
	}
	return onFeet(plan, lifts), twist
}

// On a rectangle g under either foot of the diagonal that lifts, or half of g under
// each, takes the twist out; all three ways are advised, and never g under both.
func TestEitherFootOfDiagonal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := float64(rapid.IntRange(200, 2000).Draw(t, "length"))
		width := float64(rapid.IntRange(150, 900).Draw(t, "width"))
		g := units.Length(rapid.IntRange(60, 500).Draw(t, "g")) * um
		plan := []spot{{0, width / 2}, {0, -width / 2}, {length, width / 2}, {length, -width / 2}}
		lifts := []units.Length{g, 0, 0, g}
		if rapid.Bool().Draw(t, "other diagonal") {
			lifts = []units.Length{0, g, g, 0}
		}
		s := onFeet(plan, lifts)
		found := judge(t, s, softfoot.Limits{})
		var ways [][]units.Length
		for _, way := range found.Advice {
			ways = append(ways, flats(s, way))
		}
		a, b := slices.Index(lifts, g), 3-slices.Index(lifts, g)
		want := make([][]units.Length, 3)
		for i, under := range [3][2]units.Length{{g, 0}, {0, g}, {g / 2, g / 2}} {
			want[i] = make([]units.Length, 4)
			want[i][a], want[i][b] = under[0], under[1]
		}
		if !slices.EqualFunc(ways, want, slices.Equal) {
			t.Errorf("got %v, want %v", ways, want)
		}
	})
}

// Three feet stand on any pads without a gap, so no pads explain a lift of theirs.
func TestThreeFeetAreNeverParallel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		plan := []spot{{0, 200}, {0, -200}, {float64(rapid.IntRange(100, 900).Draw(t, "x")), float64(rapid.IntRange(-300, 300).Draw(t, "y"))}}
		var lifts []units.Length
		for range plan {
			lifts = append(lifts, units.Length(rapid.IntRange(-50, 300).Draw(t, "lift"))*um)
		}
		found := judge(t, onFeet(plan, lifts), softfoot.Limits{})
		for _, e := range found.Fits {
			if e.Kind == softfoot.Parallel {
				t.Errorf("lifts %v: got %v", lifts, found.Fits)
			}
		}
		for _, way := range found.Advice {
			for _, shim := range way.Shims {
				if shim.Flat != 0 {
					t.Errorf("lifts %v: a flat shim, %+v", lifts, shim)
				}
			}
		}
	})
}

// Three of four feet in one row, the middle one halfway: n = (1, 1, -2, 0). No pads
// lift the fourth, which finds its own always; what it lifts must not spoil the
// cure of the others, s_0 + s_1 - 2 s_2 = -T, here 200 um.
func TestThreeOfFourInOneRow(t *testing.T) {
	plan := []spot{{0, -200}, {0, 200}, {0, 0}, {600, 30}}
	for _, fourth := range []units.Length{0, 20 * um, 60 * um} {
		s := onFeet(plan, []units.Length{200 * um, 200 * um, 0, fourth})
		found := judge(t, s, softfoot.Limits{})
		if len(found.Advice) == 0 || found.Fits[0].Kind != softfoot.Parallel {
			t.Errorf("fourth %v: %v, %v", fourth, found.Fits, found.Advice)
		}
		for _, way := range found.Advice {
			under := flats(s, way)
			if cure := under[0] + under[1] - 2*under[2]; math.Abs(float64(cure-200*um)) > 10 || under[3] != 0 {
				t.Errorf("fourth %v: %v", fourth, under)
			}
		}
	}
}
