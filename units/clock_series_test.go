package units_test

import (
	"math"
	"math/big"
	"testing"

	"example.org/collinear/units"
)

// TestSinCosWithinAnEighth compares with the power series in rational numbers, at
// the float64 in radians that is nearest to the position: both are good to 1.2
// units in the last place, those of math.Sincos to 1.25 (measured here).
func TestSinCosWithinAnEighth(t *testing.T) {
	exact := func(x float64, first int) float64 { // of sine (1) or cosine (0)
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
		f, _ := sum.Float64()
		return f
	}
	for c := units.Clock(-45); c <= 45; c += 0.0625 + 1./4096 {
		sin, cos := c.SinCos()
		x := float64(c) * (math.Pi / 180)
		for _, pair := range [][2]float64{{sin, exact(x, 1)}, {cos, exact(x, 0)}} {
			last := math.Nextafter(math.Abs(pair[1]), 2) - math.Abs(pair[1])
			if math.Abs(pair[0]-pair[1]) > last {
				t.Errorf("%v: got %v, want %v", float64(c), pair[0], pair[1])
			}
		}
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
