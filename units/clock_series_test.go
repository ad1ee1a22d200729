package units_test

import (
	"math"
	"math/big"
	"testing"

	"example.org/collinear/units"
)

// TestSinCosWithinAnEighth compares with the power series in big numbers, at the
// float64 in radians that is nearest to the position. Sines are good to 0.8 units in
// the last place and cosines to 1.2; those of math.Sincos are to 0.8 and 1.3 (all
// measured here).
func TestSinCosWithinAnEighth(t *testing.T) {
	exact := func(x float64, first int) *big.Float { // of sine (1) or cosine (0)
		z, term, sum := big.NewFloat(x).SetPrec(200), big.NewFloat(1).SetPrec(200), new(big.Float).SetPrec(200)
		for k := range 30 {
			switch {
			case k%4 == first:
				sum.Add(sum, term)
			case k%4 == first+2:
				sum.Sub(sum, term)
			}
			term.Mul(term, z).Quo(term, big.NewFloat(float64(k+1)))
		}
		return sum
	}
	check := func(what string, c units.Clock, got float64, want *big.Float, most float64) {
		off, _ := new(big.Float).Sub(big.NewFloat(got), want).Float64()
		last := math.Nextafter(math.Abs(got), 2) - math.Abs(got)
		if math.Abs(off) > most*last {
			t.Errorf("%s of %v: got %v, off by %.3f of the last place", what, float64(c), got, off/last)
		}
	}
	for c := units.Clock(-45); c <= 45; c += 1. / 64 {
		sin, cos := c.SinCos()
		x := float64(c) * (math.Pi / 180)
		check("sine", c, sin, exact(x, 1), 0.8)
		check("cosine", c, cos, exact(x, 0), 1.2)
	}
}

// TestSinCosWithoutTurns asks that a position a whole turn back, if it is a number
// of its own, is the same place.
func TestSinCosWithoutTurns(t *testing.T) {
	for c := units.Clock(0); c <= 360; c += 0.25 {
		sin, cos := c.SinCos()
		for _, turns := range []units.Clock{-1, -2, 1, 5, 1 << 20} {
			s, k := (c + 360*turns).SinCos()
			if math.Abs(s-sin) > 0x1p-52 || math.Abs(k-cos) > 0x1p-52 {
				t.Errorf("%v and %v turns: got %v, %v, want %v, %v", float64(c), float64(turns), s, k, sin, cos)
			}
		}
	}
}
