package align_test

import (
	"errors"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// What the zero values are: in line, exactly; nowhere, nothing, not chosen.
func TestZeroValues(t *testing.T) {
	t.Run("Line is the axis", func(t *testing.T) {
		if w := (align.Line{}).At(5 * mm); w != 0 {
			t.Errorf("w %v", w)
		}
	})
	t.Run("Centreline is in line", func(t *testing.T) {
		var c align.Centreline
		if c.At(mm) != (align.Vector{}) || c.Tilt() != (align.Tilt{}) || c.Exchanged().Plus(caseA) != caseA {
			t.Errorf("at %v, tilt %v", c.At(mm), c.Tilt())
		}
	})
	t.Run("Vector and Tilt have no size and point to 12", func(t *testing.T) {
		var v align.Vector
		var k align.Tilt
		if v.Size() != 0 || k.Size() != 0 || v.Direction() != units.Twelve || k.Direction() != units.Twelve {
			t.Errorf("%v %v %v %v", v.Size(), k.Size(), v.Direction(), k.Direction())
		}
	})
	t.Run("Estimate is in line, exactly", func(t *testing.T) {
		var e align.Estimate
		w, u := e.At(mm)
		if w != (align.Vector{}) || u != (align.Vector{}) || e != align.Exact(align.Centreline{}) {
			t.Errorf("w %v, u %v", w, u)
		}
		moves, err := e.Corrections(align.Foot{Name: "a", X: 300 * mm})
		if err != nil || moves[0].String() != "a: leave" || moves[0].Basis != align.Declared || moves[0].U != (align.Vector{}) {
			t.Errorf("moves %+v, %v", moves, err)
		}
	})
	t.Run("Covariance is exact by declaration", func(t *testing.T) {
		var c align.Covariance
		if c.Basis != align.Declared || c.Standard() != (align.Centreline{}) || c.Correlation() != uncorrelated {
			t.Errorf("%v, %v, %v", c.Basis, c.Standard(), c.Correlation())
		}
	})
	t.Run("Unknown has no number", func(t *testing.T) {
		c := align.Covariance{Basis: align.Unknown}
		for _, u := range plain(c.Standard()) {
			if u == u {
				t.Errorf("standard uncertainty %v, want NaN", u)
			}
		}
		if c.Correlation() != uncorrelated {
			t.Errorf("correlation %v", c.Correlation())
		}
	})
	t.Run("Shaft and Kind are not chosen", func(t *testing.T) {
		for _, v := range []word{align.Shaft(0), align.Kind(0)} {
			if _, err := v.MarshalText(); !errors.Is(err, units.Unknown) || v.String() != "0" {
				t.Errorf("%T is %q, %v", v, v, err)
			}
		}
	})
	t.Run("View is the library's own", func(t *testing.T) {
		if v := align.View(0); v != align.FromMovable || v.Clock(units.Three) != units.Three {
			t.Errorf("%v turns 3 into %v", v, v.Clock(units.Three))
		}
		if align.FromStationary.Clock(align.FromStationary.Clock(37)) != 37 {
			t.Error("converting twice does not give the position back")
		}
	})
	t.Run("Set, Probe, Reading and Uncertainty are refused or nothing", func(t *testing.T) {
		_, err := align.Fit(align.Set{})
		for _, want := range []string{"/sets/0/probe/kind", "/sets/0/readings"} {
			checkFault(t, err, units.Missing, want)
		}
		_, err = align.Set{}.Predict(caseA, 0)
		checkFault(t, err, units.Missing, "/probe/kind")
		sets := read(t, caseA, reverse(), quarters...)
		with := each(sets, func(s *align.Set) { s.U = align.Uncertainty{} })
		if a, b := mustFit(t, sets...), mustFit(t, with...); a.Value != b.Value {
			t.Error("the zero uncertainty changes a fit")
		}
		zeros := []align.Set{rim(align.Stationary, 1), rim(align.Movable, -1)}
		for i := range zeros { // the zero reading is one of nothing at 12
			zeros[i].Readings = []align.Reading{{}, {At: 90}, {At: 180}}
		}
		if f := mustFit(t, zeros...); f.Value != (align.Centreline{}) {
			t.Errorf("readings of nothing give %v", f.Value)
		}
	})
	t.Run("Fitted and Residual are of nothing", func(t *testing.T) {
		var f align.Fitted
		if f.Estimate != (align.Estimate{}) || f.DegreesOfFreedom != 0 || f.Warnings != nil || (align.Residual{}) != (align.Residual{Set: 0}) {
			t.Errorf("%+v", f)
		}
	})
	t.Run("Foot is at the coupling, without a name", func(t *testing.T) {
		moves, err := align.Exact(caseA).Corrections(align.Foot{})
		if err != nil || moves[0].By != (align.Vector{Horizontal: -120 * um, Vertical: 200 * um}) {
			t.Errorf("%+v, %v", moves, err)
		}
	})
	t.Run("Move leaves", func(t *testing.T) {
		if text := (align.Move{}).String(); text != "leave" {
			t.Errorf("%q", text)
		}
	})
	t.Run("Style is hundredths of a millimetre, from behind the movable machine", func(t *testing.T) {
		if text := move("", 123*um, -456*um).Text(align.Style{}); text != "lower 0.46 mm, push 0.12 mm towards 3 o'clock" {
			t.Errorf("%q", text)
		}
	})
	t.Run("Coupling has neither diameter nor span", func(t *testing.T) {
		var k align.Coupling
		_, _, err := k.Gap(caseA)
		checkFault(t, err, units.Missing, "/diameter")
		_, _, err = k.FlexTilts(caseA)
		checkFault(t, err, units.Missing, "/span")
	})
	t.Run("Point is the origin", func(t *testing.T) {
		l, err := align.Through(align.Point{}, align.Point{X: mm, W: um})
		if err != nil || l != (align.Line{Slope: 1e-3}) {
			t.Errorf("%v, %v", l, err)
		}
	})
}

// Nothing that is left alone prints or moves with a minus sign.
func TestNoNegativeZero(t *testing.T) {
	moves, err := align.Estimate{}.Corrections(align.Foot{X: -300 * mm}, align.Foot{X: 300 * mm})
	if err != nil {
		t.Fatal(err)
	}
	for _, m := range moves {
		for _, v := range []units.Length{m.By.Horizontal, m.By.Vertical} {
			if v != 0 || 1/v < 0 {
				t.Errorf("a move of %v with its sign", v)
			}
		}
	}
	tilt, err := align.SlopeFromGap(0, units.Nine, 150*mm)
	if err != nil || 1/tilt.Vertical < 0 || 1/tilt.Horizontal < 0 {
		t.Errorf("tilt %v, %v", tilt, err)
	}
}
