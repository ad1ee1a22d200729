package align_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// A line told from another station, or from the other end, is the same line: it
// passes through the same points of space, with the same uncertainty.

func TestToldFromAnotherStation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := mustFit(t, drawScene(t, everyKind).sets...).Estimate
		to := length(rapid.Float64Range(-3000, 3000).Draw(t, "to"))
		x := length(rapid.Float64Range(-3000, 3000).Draw(t, "x"))
		moved := e.About(to)
		samePlace(t, moved, x-to, e, x, 1)
		samePlace(t, moved.About(-to), x, e, x, 1)
		if moved.Value.Tilt() != e.Value.Tilt() {
			t.Error("the slopes changed")
		}
	})
}

func TestToldFromTheOtherEnd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := mustFit(t, drawScene(t, everyKind).sets...).Estimate
		x := length(rapid.Float64Range(-3000, 3000).Draw(t, "x"))
		samePlace(t, e.Exchanged(), -x, e, x, -1)
		back := e.Exchanged().Exchanged()
		samePlace(t, back, x, e, x, 1)
		sameMatrix(t, back.Cov.Correlation(), e.Cov.Correlation())
	})
}

// A horizontal slope and a vertical offset change sign from the other end, and so
// do their correlations with the other two numbers.
func TestCorrelationsFromTheOtherEnd(t *testing.T) {
	r := [4][4]float64{{1, .1, .2, .3}, {.1, 1, .4, .5}, {.2, .4, 1, .6}, {.3, .5, .6, 1}}
	want := [4][4]float64{{1, -.1, -.2, .3}, {-.1, 1, .4, -.5}, {-.2, .4, 1, -.6}, {.3, -.5, -.6, 1}}
	cov, err := align.NewCovariance(align.Stated, line(0.01, 1e-5, 0.02, 2e-5), r)
	if err != nil {
		t.Fatal(err)
	}
	sameMatrix(t, align.Estimate{Cov: cov}.Exchanged().Cov.Correlation(), want)
}

// samePlace holds got at station at against want at station x. The vertical place
// has this sign: seen from the other end it is told from the other machine.
func samePlace(t fataler, got align.Estimate, at units.Length, want align.Estimate, x units.Length, sign units.Length) {
	t.Helper()
	w, u := got.At(at)
	ww, wu := want.At(x)
	const tolerance = 1e-3 // a thousandth of a nanometre; lengths are up to metres
	near(t, "horizontal", w.Horizontal, ww.Horizontal, tolerance)
	near(t, "vertical", w.Vertical, sign*ww.Vertical, tolerance)
	if want.Cov.Basis == align.Unknown {
		return // NaN has no distance
	}
	near(t, "u horizontal", u.Horizontal, wu.Horizontal, 1e-6*wu.Horizontal+tolerance)
	near(t, "u vertical", u.Vertical, wu.Vertical, 1e-6*wu.Vertical+tolerance)
}

func sameMatrix(t fataler, got, want [4][4]float64) {
	t.Helper()
	for i := range want {
		for j := range want[i] {
			near(t, "correlation", got[i][j], want[i][j], 1e-9)
		}
	}
}
