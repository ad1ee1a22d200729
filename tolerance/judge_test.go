package tolerance_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// item is what a worked example expects of one item, in millimetres or
// millimetres per metre.
type item struct {
	of    tolerance.Quantity
	plane tolerance.Plane
	found float64
	ratio float64
}

// Worked by hand. Case A on a spacer of 800 mm: alpha_s = offset/L + slope/2 is
// +0.35 and -0.60 mm/m, alpha_m = slope/2 - offset/L is +0.05 and -0.10 mm/m.
// Lengths of vectors are roots of sums of squares: 0.12 and 0.20 give
// sqrt(0.0544), 0.4 and 0.7 sqrt(0.65), 0.35 and 0.60 sqrt(0.4825), 0.05 and 0.10
// sqrt(0.0125).
func TestWorkedExamples(t *testing.T) {
	short, spacer := align.Coupling{Diameter: 150 * mm}, align.Coupling{Span: 800 * mm}
	full := tolerance.Limits{Offset: 250 * um, Slope: 0.5 * mmm, Flex: 0.5 * mmm}
	perPlane := full
	perPlane.PerPlane = true
	rows := []struct {
		name    string
		limits  tolerance.Limits
		off     align.Centreline
		k       align.Coupling
		outcome tolerance.Outcome
		governs int
		items   []item
	}{
		{"case A, short, as vectors", full, caseA, short, tolerance.Outside, 1, []item{
			{tolerance.Offset, tolerance.Both, math.Sqrt(0.0544), math.Sqrt(0.0544) / 0.25},
			{tolerance.Slope, tolerance.Both, math.Sqrt(0.65), math.Sqrt(0.65) / 0.5}}},
		{"case A, short, per plane", perPlane, caseA, short, tolerance.Outside, 3, []item{
			{tolerance.Offset, tolerance.Horizontal, 0.12, 0.48},
			{tolerance.Offset, tolerance.Vertical, 0.20, 0.8},
			{tolerance.Slope, tolerance.Horizontal, 0.4, 0.8},
			{tolerance.Slope, tolerance.Vertical, 0.7, 1.4}}},
		{"case A, spacer, as vectors", full, caseA, spacer, tolerance.Outside, 0, []item{
			{tolerance.FlexStationary, tolerance.Both, math.Sqrt(0.4825), math.Sqrt(0.4825) / 0.5},
			{tolerance.FlexMovable, tolerance.Both, math.Sqrt(0.0125), math.Sqrt(0.0125) / 0.5}}},
		{"case A, spacer, per plane", perPlane, caseA, spacer, tolerance.Outside, 1, []item{
			{tolerance.FlexStationary, tolerance.Horizontal, 0.35, 0.7},
			{tolerance.FlexStationary, tolerance.Vertical, 0.60, 1.2},
			{tolerance.FlexMovable, tolerance.Horizontal, 0.05, 0.1},
			{tolerance.FlexMovable, tolerance.Vertical, 0.10, 0.2}}},
		{"3-4-5, each plane within and both together outside", tolerance.Limits{Offset: 49 * um}, line(0.03, 9, -0.04, 9), short, tolerance.Outside, 0, []item{
			{tolerance.Offset, tolerance.Both, 0.05, 50.0 / 49}}},
		{"the same per plane", tolerance.Limits{Offset: 49 * um, PerPlane: true}, line(0.03, 9, -0.04, 9), short, tolerance.Within, 1, []item{
			{tolerance.Offset, tolerance.Horizontal, 0.03, 30.0 / 49},
			{tolerance.Offset, tolerance.Vertical, 0.04, 40.0 / 49}}},
		{"slope alone", tolerance.Limits{Slope: 0.5 * mmm}, line(5, 0.3, 5, 0.4), short, tolerance.Within, 0, []item{
			{tolerance.Slope, tolerance.Both, 0.5, 1}}},
		{"parallel offset bends both flex planes alike", tolerance.Limits{Flex: 0.5 * mmm}, line(0, 0, 0.4, 0), spacer, tolerance.Within, 0, []item{
			{tolerance.FlexStationary, tolerance.Both, 0.5, 1},
			{tolerance.FlexMovable, tolerance.Both, 0.5, 1}}},
		{"in line", full, align.Centreline{}, short, tolerance.Within, 0, []item{
			{tolerance.Offset, tolerance.Both, 0, 0},
			{tolerance.Slope, tolerance.Both, 0, 0}}},
	}
	for _, row := range rows {
		v := judged(t, row.limits, align.Exact(row.off), row.k)
		if v.Outcome != row.outcome || v.Governs != row.governs || v.Used != len(row.items) || v.Basis != align.Declared {
			t.Errorf("%s: got %v, item %d of %d, %v; want %v, item %d of %d, declared", row.name,
				v.Outcome, v.Governs, v.Used, v.Basis, row.outcome, row.governs, len(row.items))
		}
		for i, got := range v.All() {
			want, scale := row.items[i], 1e-3
			limit := row.limits.Flex
			if want.of == tolerance.Offset {
				scale = 1e6
			} else if want.of == tolerance.Slope {
				limit = row.limits.Slope
			}
			found, u, against := numbers(got)
			if got.Of != want.of || got.Plane != want.plane {
				t.Errorf("%s: item %d is %v %v, want %v %v", row.name, i, got.Of, got.Plane, want.of, want.plane)
			}
			near(t, row.name+": found", found, want.found*scale, 4*eps*want.found*scale)
			near(t, row.name+": ratio", got.Ratio, want.ratio, 1e-5) // 1 nm of the least limit, 49 um, is 2e-5; half of it
			if u != 0 {
				t.Errorf("%s: u %v, want none: the estimate is exact", row.name, u)
			}
			if want.of == tolerance.Offset && against != float64(row.limits.Offset) || want.of != tolerance.Offset && against != float64(limit) {
				t.Errorf("%s: item %d against %v", row.name, i, against)
			}
		}
		if got := v.Governing(); got != v.Items[row.governs] {
			t.Errorf("%s: governing %v", row.name, got)
		}
		for _, unused := range v.Items[v.Used:] {
			if unused != (tolerance.Item{}) {
				t.Errorf("%s: an item that is not used holds %v", row.name, unused)
			}
		}
	}
}

// What stands on its limit is within, one nanometre more is outside; and so for
// every hundredth of a millimetre and every mil, as a length and as a slope, in
// one plane, as the 3-4-5 vector, and in a sum of two shims.
func TestOnTheLimit(t *testing.T) {
	short := align.Coupling{}
	check := func(name string, l tolerance.Limits, c align.Centreline, want tolerance.Outcome) {
		t.Helper()
		if v := judged(t, l, align.Exact(c), short); v.Outcome != want || (v.Governing().Ratio <= 1) != (want == tolerance.Within) {
			t.Errorf("%s: %v (%v), want %v", name, v.Outcome, v.Governing(), want)
		}
	}
	for n := 1; n <= 400; n++ {
		for _, unit := range []units.Length{10 * um, units.Mil, units.Inch / 64} {
			limit := units.Length(n) * unit
			for _, perPlane := range []bool{false, true} {
				l := tolerance.Limits{Offset: limit, PerPlane: perPlane}
				at := align.Centreline{Vertical: align.Line{Offset: -limit}}
				above := align.Centreline{Vertical: align.Line{Offset: -limit - units.Nanometre}}
				check(limit.String(), l, at, tolerance.Within)
				check(limit.String()+" and 1 nm", l, above, tolerance.Outside)
			}
			vector := align.Centreline{Horizontal: align.Line{Offset: 3 * limit}, Vertical: align.Line{Offset: 4 * limit}}
			check("3-4-5 of "+limit.String(), tolerance.Limits{Offset: 5 * limit}, vector, tolerance.Within)
			check("3-4-5 under "+limit.String(), tolerance.Limits{Offset: 5*limit - units.Nanometre}, vector, tolerance.Outside)
			third := align.Centreline{Horizontal: align.Line{Offset: limit/3 + limit/3 + limit/3}}
			check("three thirds of "+limit.String(), tolerance.Limits{Offset: limit}, third, tolerance.Within)
		}
		// 0.01 mm/m is no float64: each of these is a hair off, one way or the other
		typed := units.MustParseSlope(hundredths(n) + " mm/m")
		for name, same := range map[string]units.Slope{
			"counted":  units.Slope(n) * 0.01 * mmm,
			"measured": (units.Length(n) * um).Per(100 * mm),
			"added":    added(n, 0.01*mmm),
		} {
			for _, perPlane := range []bool{false, true} {
				l := tolerance.Limits{Slope: typed, PerPlane: perPlane}
				check(name+" "+typed.String(), l, align.Centreline{Horizontal: align.Line{Slope: same}}, tolerance.Within)
				check(name+" above "+typed.String(), l, align.Centreline{Horizontal: align.Line{Slope: same + 1e-9}}, tolerance.Outside)
			}
		}
	}
}

// The same at the flex planes: an offset of n hundredths on a spacer of 800 mm
// tilts both by n/80 mm/m, and the limit is typed in.
func TestOnTheLimitAtFlexPlanes(t *testing.T) {
	k := align.Coupling{Span: 800 * mm}
	for n := 1; n <= 400; n++ {
		limit := units.Slope(float64(125*n) * 1e-7) // n/80 mm/m
		c := align.Centreline{Vertical: align.Line{Offset: units.Length(n) * 10 * um}}
		if v := judged(t, tolerance.Limits{Flex: limit}, align.Exact(c), k); v.Outcome != tolerance.Within {
			t.Errorf("n = %d: %v", n, v)
		}
		if v := judged(t, tolerance.Limits{Flex: limit - 1e-9}, align.Exact(c), k); v.Outcome != tolerance.Outside {
			t.Errorf("n = %d, limit 1 nm/m less: %v", n, v)
		}
	}
}

func hundredths(n int) string { return fmt.Sprintf("%d.%02d", n/100, n%100) }

func added(n int, s units.Slope) (sum units.Slope) {
	for range n {
		sum += s
	}
	return sum
}

// Tilts are those that the coupling itself gives, at any span.
func TestTiltsAreTheCouplings(t *testing.T) {
	for _, span := range []units.Length{1 * mm, 127 * mm, 800 * mm, 7 * units.Metre} {
		k := align.Coupling{Span: span}
		stationary, movable, err := k.FlexTilts(caseA)
		if err != nil {
			t.Fatal(err)
		}
		v := judged(t, tolerance.Limits{Flex: mmm, PerPlane: true}, align.Exact(caseA), k)
		for i, want := range []units.Slope{stationary.Horizontal, stationary.Vertical, movable.Horizontal, movable.Vertical} {
			want = max(want, -want)
			near(t, span.String(), v.Items[i].Found.Slope, want, 4*eps*(want+0.7*mmm))
		}
	}
}

// Limits of the other sort of coupling are not used; a short coupling is judged
// at x = 0 whatever its diameter.
func TestOnlyTheSortOfCouplingCounts(t *testing.T) {
	tight := tolerance.Limits{Offset: um, Slope: 0.001 * mmm, Flex: 9 * mmm}
	if v := judged(t, tight, align.Exact(caseA), align.Coupling{Span: 800 * mm}); v.Outcome != tolerance.Within {
		t.Errorf("a spacer is judged as short: %v", v)
	}
	wide := tolerance.Limits{Offset: 9 * mm, Slope: 9 * mmm, Flex: 0.001 * mmm}
	if v := judged(t, wide, align.Exact(caseA), align.Coupling{Diameter: 1}); v.Outcome != tolerance.Within {
		t.Errorf("a short coupling is judged as a spacer: %v", v)
	}
}
