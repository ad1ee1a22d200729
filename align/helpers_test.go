package align_test

import (
	"errors"
	"math"
	"reflect"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

const (
	mm  = units.Millimetre
	um  = units.Micrometre
	mil = units.Mil
	eps = 0x1p-52
)

// caseA is the misalignment that geometry checks share: offsets +0.12 and -0.20
// mm, slopes +0.4 and -0.7 mm/m.
var caseA = line(0.12, 0.4e-3, -0.20, -0.7e-3)

// line makes a centreline of four plain numbers, in millimetres and ratios, in
// the order horizontal offset and slope, vertical offset and slope.
func line(offsetY, slopeY, offsetZ, slopeZ float64) align.Centreline {
	return align.Centreline{
		Horizontal: align.Line{Offset: length(offsetY), Slope: units.Slope(slopeY)},
		Vertical:   align.Line{Offset: length(offsetZ), Slope: units.Slope(slopeZ)},
	}
}

// plain is the inverse of line.
func plain(c align.Centreline) [4]float64 {
	return [4]float64{
		inMM(c.Horizontal.Offset), float64(c.Horizontal.Slope),
		inMM(c.Vertical.Offset), float64(c.Vertical.Slope),
	}
}

func length(millimetres float64) units.Length { return units.Length(millimetres * 1e6) }

func inMM(l units.Length) float64 { return float64(l) / 1e6 }

// matrix is the 4x4 covariance in millimetres and ratios.
func matrix(c align.Covariance) (v [4][4]float64) {
	u, r := plain(c.Standard()), c.Correlation()
	for i := range v {
		for j := range v {
			v[i][j] = u[i] * u[j] * r[i][j]
		}
	}
	return v
}

// at makes readings of a dial at the quarters or elsewhere, in the given unit.
func at(unit units.Length, clocks []units.Clock, values ...float64) []align.Reading {
	readings := make([]align.Reading, len(values))
	for i, v := range values {
		readings[i] = align.Reading{At: clocks[i], Value: units.Length(v * float64(unit))}
	}
	return readings
}

var quarters = []units.Clock{units.Twelve, units.Three, units.Six, units.Nine}

// even returns n clock positions over an arc about a middle, each in the middle
// of its share.
func even(n int, middle, width units.Clock) []units.Clock {
	clocks := make([]units.Clock, n)
	for i := range clocks {
		clocks[i] = middle + width*units.Clock((float64(i)+0.5)/float64(n)-0.5)
	}
	return clocks
}

// rim, reverse and rimFace are the sets that most checks use, without readings.
func rim(carrier align.Shaft, x float64) align.Set {
	return align.Set{Probe: align.Probe{Kind: align.Rim, Carrier: carrier, Station: length(x)}}
}

func face(carrier align.Shaft, radius float64) align.Set {
	return align.Set{Probe: align.Probe{Kind: align.NearFace, Carrier: carrier, Radius: length(radius)}}
}

func reverse() []align.Set { return []align.Set{rim(align.Stationary, 40), rim(align.Movable, -50)} }

func rimFace() []align.Set {
	return []align.Set{rim(align.Stationary, 40), face(align.Stationary, 75)}
}

// read fills the sets with what their dials show for a misalignment.
func read(tb fataler, c align.Centreline, sets []align.Set, clocks ...units.Clock) []align.Set {
	tb.Helper()
	sets = slices.Clone(sets)
	for i := range sets {
		readings, err := sets[i].Predict(c, clocks...)
		if err != nil {
			tb.Fatalf("Predict: %v", err)
		}
		sets[i].Readings = readings
	}
	return sets
}

// state gives every reading of the sets the same standard uncertainty.
func state(sets []align.Set, u units.Length) []align.Set {
	sets = slices.Clone(sets)
	for i := range sets {
		sets[i].U.Reading = u
	}
	return sets
}

func mustFit(tb fataler, sets ...align.Set) align.Fitted {
	tb.Helper()
	f, err := align.Fit(sets...)
	if err != nil {
		tb.Fatalf("Fit: %v", err)
	}
	return f
}

// fataler is what testing.TB and rapid.T have in common.
type fataler interface {
	Helper()
	Errorf(string, ...any)
	Fatalf(string, ...any)
}

// near fails unless got lies within tolerance of want; NaN never does.
func near[Q ~float64](tb fataler, what string, got, want, tolerance Q) {
	tb.Helper()
	if !(math.Abs(float64(got-want)) <= float64(tolerance)) {
		tb.Errorf("%s: got %.12g, want %.12g within %.3g, off by %.3g", what,
			float64(got), float64(want), float64(tolerance), float64(got-want))
	}
}

// nearLine compares two centrelines number by number, each within its own
// tolerance, in millimetres and ratios.
func nearLine(tb fataler, what string, got, want align.Centreline, tolerance [4]float64) {
	tb.Helper()
	g, w := plain(got), plain(want)
	for i, name := range fourNames {
		near(tb, what+": "+name, g[i], w[i], tolerance[i])
	}
}

var fourNames = [4]string{"horizontal offset", "horizontal slope", "vertical offset", "vertical slope"}

// uniform is a tolerance of nanometres on offsets and of the same over a metre
// on slopes.
func uniform(nanometres float64) [4]float64 {
	return [4]float64{nanometres * 1e-6, nanometres * 1e-9, nanometres * 1e-6, nanometres * 1e-9}
}

// nearMatrix compares covariances, each entry against the standard
// uncertainties that it belongs to.
func nearMatrix(tb fataler, what string, got, want [4][4]float64, relative float64) {
	tb.Helper()
	for i := range want {
		for j := range want {
			scale := math.Sqrt(math.Abs(want[i][i] * want[j][j]))
			near(tb, what+": "+fourNames[i]+" with "+fourNames[j], got[i][j], want[i][j], relative*scale)
		}
	}
}

// closely lets cmp take any two numbers of a type made from float64 for equal
// that differ by no more than a share of the larger, or by an absolute amount.
// Two NaN are equal. It is here because cmpopts.EquateApprox passes named types
// by.
func closely(relative, absolute float64) cmp.Option {
	number := func(p cmp.Path) bool { return p.Last().Type() != nil && p.Last().Type().Kind() == reflect.Float64 }
	return cmp.FilterPath(number, cmp.Comparer(func(x, y any) bool {
		a, b := reflect.ValueOf(x).Float(), reflect.ValueOf(y).Float()
		if a == b || math.IsNaN(a) && math.IsNaN(b) {
			return true
		}
		return math.Abs(a-b) <= max(absolute, relative*max(math.Abs(a), math.Abs(b)))
	}))
}

// openly lets cmp see a covariance as its users do.
var openly = cmp.Transformer("open", func(c align.Covariance) any {
	return struct {
		Basis       align.Basis
		DoF         float64
		U           align.Centreline
		Correlation [4][4]float64
	}{c.Basis, c.DoF, c.Standard(), c.Correlation()}
})

func TestCloselySeesNamedTypes(t *testing.T) {
	type pair struct {
		L units.Length
		K float64
	}
	rows := []struct {
		name string
		a, b pair
		want bool
	}{
		{"same", pair{1, 2}, pair{1, 2}, true},
		{"within the share", pair{1e9, 1}, pair{1e9 + 0.5, 1}, true},
		{"a named type outside it", pair{1e9, 1}, pair{1e9 + 2, 1}, false},
		{"a plain number outside it", pair{1, 1}, pair{1, 1.1}, false},
		{"not a number, both", pair{units.Length(math.NaN()), 1}, pair{units.Length(math.NaN()), 1}, true},
		{"not a number, one", pair{units.Length(math.NaN()), 1}, pair{1, 1}, false},
	}
	for _, row := range rows {
		if got := cmp.Equal(row.a, row.b, closely(1e-9, 0)); got != row.want {
			t.Errorf("%s: got %v, want %v", row.name, got, row.want)
		}
	}
}

// codesAndPaths lists the faults of an error as "code path", sorted.
func codesAndPaths(err error) []string {
	var list []string
	for _, f := range units.Faults(err) {
		list = append(list, string(f.Code)+" "+f.Path)
	}
	slices.Sort(list)
	return list
}

// checkFault asks for an error that is of a code and holds a fault at a path.
func checkFault(tb fataler, err error, code units.Code, path string) {
	tb.Helper()
	if !errors.Is(err, code) || !slices.Contains(codesAndPaths(err), string(code)+" "+path) {
		tb.Errorf("got %v, want a fault %s at %s", err, code, path)
	}
}
