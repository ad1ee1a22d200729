package flange_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// known is an estimate with the given standard uncertainties of offset and slope,
// the same in both planes, and the correlation of the two slopes.
func known(tb fataler, basis align.Basis, c align.Centreline, offset units.Length, slope units.Slope, r float64) align.Estimate {
	tb.Helper()
	return unevenly(tb, basis, c, offset, slope, slope, r)
}

// unevenly is known with a standard uncertainty of its own for the slope in each
// plane.
func unevenly(tb fataler, basis align.Basis, c align.Centreline, offset units.Length, slopeY, slopeZ units.Slope, r float64) align.Estimate {
	tb.Helper()
	cov, err := align.NewCovariance(basis, align.Centreline{Horizontal: align.Line{Offset: offset, Slope: slopeY}, Vertical: align.Line{Offset: offset, Slope: slopeZ}},
		[4][4]float64{{1, 0, 0, 0}, {0, 1, 0, r}, {0, 0, 1, 0}, {0, r, 0, 1}})
	if err != nil {
		tb.Fatalf("%v", err)
	}
	return align.Estimate{Value: c, Cov: cov}
}

// By hand, for slopes of 0.05 mm/m and bolts at 200 mm of which that at 9 is the
// thinnest: 20 um across, 10 sqrt 2 um to the neighbours where the planes are
// independent, and nothing or twice as much where they err alike.
func TestUncertaintyOfShims(t *testing.T) {
	rows := []struct {
		name           string
		correlation    float64
		at12, at3, at6 units.Length // in um
	}{
		{"independent planes", 0, 10 * math.Sqrt2, 20, 10 * math.Sqrt2},
		{"planes that err alike", 1, 20, 20, 0},
		{"planes that err contrary", -1, 0, 20, 20},
		{"half alike", 0.5, 10 * units.Length(math.Sqrt(3)), 20, 10},
	}
	for _, row := range rows {
		c := mustCorrect(t, worked(), known(t, align.Stated, line(0, 1e-3, 0, 0), um, 0.05e-3, row.correlation))
		const tolerance = 1e-3 // nm: the root of what rounding leaves of zero
		for i, want := range []units.Length{row.at12, row.at3, row.at6, 0} {
			near(t, row.name+" at "+c.Shims[i].Bolt.Name, c.Shims[i].U, want*um, tolerance)
			if c.Shims[i].Basis != align.Stated || c.Shims[i].DoF != 0 {
				t.Errorf("%s: basis %v, %v degrees of freedom", row.name, c.Shims[i].Basis, c.Shims[i].DoF)
			}
		}
	}
}

// The variance of a shim is the sum of the squares of what each independent part of
// the slopes' error does to it, found here by correcting a machine that has just
// that error: the columns of the lower triangle L of their covariance L L'.
func TestUncertaintyAgainstErrorsPutIn(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, off := drawFlange(t), drawCentreline(t, 5e-3)
		uy, uz := rapid.Float64Range(1e-6, 1e-4).Draw(t, "u y"), rapid.Float64Range(1e-6, 1e-4).Draw(t, "u z")
		r := rapid.Float64Range(-1, 1).Draw(t, "correlation")
		c := mustCorrect(t, f, unevenly(t, align.Stated, off, um, units.Slope(uy), units.Slope(uz), r))
		thinnest := slices.IndexFunc(c.Shims, func(s flange.Shim) bool { return s.Thickness < units.Nanometre/2 })
		more := func(slopeY, slopeZ float64) []units.Length { // than the thinnest
			shims := thicknesses(mustCorrect(t, f, align.Exact(line(0, slopeY, 0, slopeZ))))
			zero := shims[thinnest]
			for i := range shims {
				shims[i] -= zero
			}
			return shims
		}
		first, second := more(uy, r*uz), more(0, uz*math.Sqrt(1-r*r))
		for i, s := range c.Shims {
			near(t, "u", s.U, units.Length(math.Hypot(float64(first[i]), float64(second[i]))), 0.1) // nm: near a correlation of one a root of a small difference
		}
	})
}

// Of bolts that tie for the thinnest the first counts, not the one that rounding
// favours: the cosines of both differ in no digit or in the last.
func TestTiesGoToTheFirst(t *testing.T) {
	f := worked()
	for _, at := range [][2]units.Clock{{120, 240}, {240, 120}, {150, 210}, {210, 150}, {100, 260}, {260, 100}, {191, 169}, {169, 191}} {
		f.Bolts = []flange.Bolt{{"top", 200 * mm, 0}, {"first", 200 * mm, at[0]}, {"second", 200 * mm, at[1]}}
		for _, slope := range []float64{1e-3, 0.7e-3, 1e-6} {
			c := mustCorrect(t, f, known(t, align.Stated, line(0, 0, 0, slope), um, 1e-5, 0))
			if c.Shims[1].U != 0 || c.Shims[2].U == 0 {
				t.Errorf("at %v: u %v and %v", at, c.Shims[1].U, c.Shims[2].U)
			}
		}
	}
}

// The slide is as uncertain as the centreline at the face, and as the face's own
// station times the slope.
func TestUncertaintyOfTheSlide(t *testing.T) {
	f := worked()
	f.UFace = 5 * mm
	c := mustCorrect(t, f, known(t, align.Stated, line(0, 1e-3, 0, 0), 3*um, 0.01e-3, 0))
	near(t, "vertical", c.Slide.U.Vertical, 5*um, 1e-6)                                    // sqrt(3^2 + 4^2)
	near(t, "horizontal", c.Slide.U.Horizontal, units.Length(math.Sqrt(9+16+25))*um, 1e-6) // and 5 mm times 1 mm/m
	if c.Slide.Basis != align.Stated || c.Slide.Foot.X != f.Face || c.Slide.Foot.U != f.UFace {
		t.Errorf("%+v", c.Slide)
	}
}

// Unknown is not zero, and declared is.
func TestUncertaintyByBasis(t *testing.T) {
	off := align.Exact(line(0.1, 1e-3, 0, 0))
	for _, s := range mustCorrect(t, worked(), off).Shims {
		if s.U != 0 || s.Basis != align.Declared {
			t.Errorf("declared: %v %v", s.U, s.Basis)
		}
	}
	off.Cov.Basis = align.Unknown
	c := mustCorrect(t, worked(), off)
	for _, s := range c.Shims {
		if !math.IsNaN(float64(s.U)) || s.Basis != align.Unknown || s.DoF != 0 {
			t.Errorf("unknown: %v %v %v", s.U, s.Basis, s.DoF)
		}
	}
	if !math.IsNaN(float64(c.Slide.U.Vertical)) {
		t.Errorf("the slide's uncertainty is %v", c.Slide.U)
	}
}

// Where all comes from one scatter, its degrees of freedom are those of every shim;
// that of the thinnest is zero by choice and has none to count.
func TestDegreesOfFreedomOfShims(t *testing.T) {
	off := known(t, align.Scatter, line(0, 1e-3, 0, 0.3e-3), um, 0.01e-3, 0.2)
	off.Cov.DoF = 7
	for i, want := range []float64{7, 7, 7, 0} {
		s := mustCorrect(t, worked(), off).Shims[i]
		near(t, "at "+s.Bolt.Name, s.DoF, want, 1e-9)
		if s.Basis != align.Scatter {
			t.Errorf("basis %v", s.Basis)
		}
	}
}

// Beside what was stated, a scatter of 5 degrees of freedom and of the same size
// makes 20: by Welch and Satterthwaite (JCGM 100:2008, G.4.1) 5 times the square of
// the whole variance over its own. The offsets, stated ten times as uncertain, have
// no say in it.
func TestDegreesOfFreedomBesideWhatIsStated(t *testing.T) {
	scatter := known(t, align.Scatter, line(0, 1e-3, 0, 0), um, 1e-5, 0)
	scatter.Cov.DoF = 5
	off := scatter.Plus(known(t, align.Stated, align.Centreline{}, 10*um, 1e-5, 0))
	for i, want := range []float64{20, 20, 20, 0} {
		s := mustCorrect(t, worked(), off).Shims[i]
		near(t, "at "+s.Bolt.Name, s.DoF, want, 1e-9)
	}
}

// Errors that cancel leave nothing, and never the root of a negative rest, which
// rounding makes of about one of five: two bolts across the shaft, in the direction
// in which slopes that err alike keep the face.
func TestUncertaintyThatCancels(t *testing.T) {
	for i := range 100 {
		y, z := 1+float64(i)/7, 1+float64(i)/3
		across := units.Clock(math.Atan2(-z, y) * 180 / math.Pi)
		f := worked()
		f.Bolts = []flange.Bolt{{"first", 173 * mm, across}, {"other", 173 * mm, across + 180}, {"third", 60 * mm, across + 90}}
		c := mustCorrect(t, f, unevenly(t, align.Stated, align.Centreline{}, um, units.Slope(y*1e-6), units.Slope(z*1e-6), 1))
		near(t, "u", c.Shims[1].U, 0, 1e-3) // nm: the root of what rounding leaves of zero
	}
}
