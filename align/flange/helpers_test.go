package flange_test

import (
	"fmt"
	"math"
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

const (
	mm = units.Millimetre
	um = units.Micrometre
)

// fataler is what testing.TB and rapid.T have in common.
type fataler interface {
	Helper()
	Errorf(string, ...any)
	Fatalf(string, ...any)
}

// quarters are four bolts at 12, 3, 6 and 9.
func quarters(radius units.Length) []flange.Bolt {
	return []flange.Bolt{
		{Name: "12", Radius: radius, At: units.Twelve}, {Name: "3", Radius: radius, At: units.Three},
		{Name: "6", Radius: radius, At: units.Six}, {Name: "9", Radius: radius, At: units.Nine},
	}
}

// worked is the flange of the worked example: r = 200 mm, x_f = 400 mm.
func worked() flange.Flange {
	return flange.Flange{Face: 400 * mm, Push: flange.AwayFromStationary, Bolts: quarters(200 * mm)}
}

// line makes a centreline of four plain numbers, in millimetres and ratios.
func line(offsetY, slopeY, offsetZ, slopeZ float64) align.Centreline {
	return align.Centreline{
		Horizontal: align.Line{Offset: units.Length(offsetY * 1e6), Slope: units.Slope(slopeY)},
		Vertical:   align.Line{Offset: units.Length(offsetZ * 1e6), Slope: units.Slope(slopeZ)},
	}
}

func mustCorrect(tb fataler, f flange.Flange, off align.Estimate) flange.Correction {
	tb.Helper()
	c, err := f.Correct(off)
	if err != nil {
		tb.Fatalf("%+v: %v", f, err)
	}
	return c
}

// thicknesses lists the shims in nanometres.
func thicknesses(c flange.Correction) []units.Length {
	var list []units.Length
	for _, s := range c.Shims {
		list = append(list, s.Thickness)
	}
	return list
}

// near fails unless got lies within tolerance of want; NaN never does.
func near[Q ~float64](tb fataler, what string, got, want, tolerance Q) {
	tb.Helper()
	if !(math.Abs(float64(got-want)) <= float64(tolerance)) {
		tb.Errorf("%s: got %.12g, want %.12g within %.3g", what, float64(got), float64(want), float64(tolerance))
	}
}

// nearAll compares lists of lengths.
func nearAll(tb fataler, what string, got, want []units.Length, tolerance units.Length) {
	tb.Helper()
	if len(got) != len(want) {
		tb.Fatalf("%s: got %v, want %v", what, got, want)
	}
	for i := range want {
		near(tb, fmt.Sprintf("%s %d", what, i), got[i], want[i], tolerance)
	}
}

// faults lists the faults of an error as "code path", sorted.
func faults(err error) []string {
	var list []string
	for _, f := range units.Faults(err) {
		list = append(list, string(f.Code)+" "+f.Path)
	}
	slices.Sort(list)
	return list
}

// codes lists warnings as "code path".
func codes(warnings []units.Fault) []string {
	var list []string
	for _, f := range warnings {
		list = append(list, string(f.Code)+" "+f.Path)
	}
	return list
}

// drawFlange draws a flange with bolts anywhere that do not stand in one line:
// the first three stand about a third of a turn apart.
func drawFlange(t *rapid.T) flange.Flange {
	f := flange.Flange{
		Face: drawLength(t, "face", -1000, 1000),
		Push: rapid.SampledFrom([]flange.Push{flange.AwayFromStationary, flange.TowardsStationary}).Draw(t, "push"),
		View: rapid.SampledFrom([]align.View{align.FromMovable, align.FromStationary}).Draw(t, "view"),
	}
	turn := rapid.Float64Range(0, 360).Draw(t, "turn")
	for i := range rapid.IntRange(3, 9).Draw(t, "bolts") {
		f.Bolts = append(f.Bolts, flange.Bolt{
			Name:   fmt.Sprint("bolt ", i+1),
			Radius: drawLength(t, "radius", 50, 500),
			At:     units.Clock(turn + 120*float64(i%3) + 12*float64(i/3) + rapid.Float64Range(0, 10).Draw(t, "at")),
		})
	}
	return f
}

func drawLength(t *rapid.T, name string, from, to float64) units.Length {
	return units.Length(rapid.Float64Range(from, to).Draw(t, name)) * mm
}

// drawCentreline draws slopes of up to steepest and offsets of up to 5 mm.
func drawCentreline(t *rapid.T, steepest float64) align.Centreline {
	slope := rapid.Float64Range(-steepest, steepest)
	offset := rapid.Float64Range(-5, 5)
	return line(offset.Draw(t, "offset y"), slope.Draw(t, "slope y"), offset.Draw(t, "offset z"), slope.Draw(t, "slope z"))
}
