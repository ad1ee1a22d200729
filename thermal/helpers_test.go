package thermal_test

import (
	"encoding/json"
	"math"
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

const (
	mm  = units.Millimetre
	um  = units.Micrometre
	eps = 0x1p-52
)

// steel and bronze are coefficients of round numbers, so that expected values
// can be worked out in the head.
var (
	steel  = thermal.Material{Name: "steel", Expansion: 11e-6}
	bronze = thermal.Material{Name: "bronze", Expansion: 18e-6}
)

func piece(height units.Length, m thermal.Material, rise units.TemperatureDifference) thermal.Piece {
	return thermal.Piece{Height: height, Material: m, Rise: rise}
}

func on(x units.Length, pieces ...thermal.Piece) thermal.Support {
	return thermal.Support{X: x, Pieces: pieces}
}

func sides(x, track units.Length, three, nine thermal.Piece) thermal.Support {
	return thermal.Support{X: x, Three: []thermal.Piece{three}, Nine: []thermal.Piece{nine}, Track: track}
}

func measured(x, horizontal, vertical units.Length) thermal.Support {
	by := align.Vector{Horizontal: horizontal, Vertical: vertical}
	return thermal.Support{X: x, Measured: &thermal.Measured{By: by}}
}

// fataler is what testing.TB and rapid.T have in common.
type fataler interface {
	Helper()
	Errorf(string, ...any)
	Fatalf(string, ...any)
}

func grow(tb fataler, supports ...thermal.Support) align.Estimate {
	tb.Helper()
	return growWithin(tb, thermal.DefaultStandOff, supports...)
}

func growWithin(tb fataler, limit units.Length, supports ...thermal.Support) align.Estimate {
	tb.Helper()
	e, err := thermal.GrowthWithin(limit, supports...)
	if err != nil {
		tb.Fatalf("GrowthWithin: %v", err)
	}
	return e
}

func alone(tb fataler, s thermal.Support) (by, u align.Vector) {
	tb.Helper()
	by, u, err := s.Growth()
	if err != nil {
		tb.Fatalf("Support.Growth: %v", err)
	}
	return by, u
}

// plain is the four numbers in millimetres and ratios.
func plain(c align.Centreline) [4]float64 {
	return [4]float64{
		float64(c.Horizontal.Offset) / 1e6, float64(c.Horizontal.Slope),
		float64(c.Vertical.Offset) / 1e6, float64(c.Vertical.Slope),
	}
}

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

var fourNames = [4]string{"horizontal offset", "horizontal slope", "vertical offset", "vertical slope"}

// near fails unless got lies within tolerance of want; NaN never does.
func near[Q ~float64](tb fataler, what string, got, want, tolerance Q) {
	tb.Helper()
	if !(math.Abs(float64(got-want)) <= float64(tolerance)) {
		tb.Errorf("%s: got %.15g, want %.15g within %.3g, off by %.3g", what,
			float64(got), float64(want), float64(tolerance), float64(got-want))
	}
}

func nearVector(tb fataler, what string, got, want align.Vector, tolerance units.Length) {
	tb.Helper()
	near(tb, what+", horizontal", got.Horizontal, want.Horizontal, tolerance)
	near(tb, what+", vertical", got.Vertical, want.Vertical, tolerance)
}

// nearLine compares offsets within so much, and slopes within the same over a
// metre.
func nearLine(tb fataler, what string, got, want align.Centreline, tolerance units.Length) {
	tb.Helper()
	g, w := plain(got), plain(want)
	for i, name := range fourNames {
		scale := float64(tolerance) / 1e6
		if i%2 == 1 {
			scale = float64(tolerance) / 1e9
		}
		near(tb, what+": "+name, g[i], w[i], scale)
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

// clone copies a machine by way of its wire form, so that a test can spoil one
// field of it.
func clone(tb fataler, supports []thermal.Support) (copied []thermal.Support) {
	tb.Helper()
	text, err := json.Marshal(supports)
	if err != nil {
		tb.Fatalf("%v", err)
	}
	if err := json.Unmarshal(text, &copied); err != nil {
		tb.Fatalf("%s: %v", text, err)
	}
	if diff := cmp.Diff(supports, copied, openly); diff != "" {
		tb.Fatalf("comes back changed:\n%s", diff)
	}
	return copied
}

// openly lets cmp see a temperature as its users do.
var openly = cmp.Transformer("open", func(t units.Temperature) float64 { return t.Celsius() })

func equal(a, b []thermal.Support) bool { return cmp.Equal(a, b, openly) }
