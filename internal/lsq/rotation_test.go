package lsq

import (
	"math"
	"testing"
)

func TestRotation(t *testing.T) {
	for _, c := range []struct{ a, b, r float64 }{
		{3, 4, 5}, {3, -4, 5}, {0, 2, 2}, {0, -2, 2}, {1, 1e-20, 1}, {1e-20, 1, 1},
		{3e200, 4e200, 5e200}, {3e-200, -4e-200, 5e-200},
		{1e300, 1e-300, 1e300}, {1e-300, 1e300, 1e300},
		{3e-310, 4e-310, 5e-310}, {30 * 5e-324, 41 * 5e-324, 51 * 5e-324}, {0, 5e-324, 5e-324}, // subnormal
	} {
		s, tau, r := rotation(c.a, c.b)
		if math.Abs(r-c.r) > 4*unit*c.r+5e-324 {
			t.Errorf("rotation(%g, %g): length %g, want %g", c.a, c.b, r, c.r)
		}
		if cos := 1 - s*tau; math.Abs(cos*cos+s*s-1) > 8*unit {
			t.Errorf("rotation(%g, %g) stretches by %g", c.a, c.b, cos*cos+s*s-1)
		}
		checkTurn(t, c.a, c.b, s, tau)
	}
}

// checkTurn asks that the rotation takes (a, b), made large enough to have all
// its digits, to a pair with no second part.
func checkTurn(t *testing.T, a, b, s, tau float64) {
	t.Helper()
	_, exponent := math.Frexp(max(a, math.Abs(b)))
	x, y := []float64{math.Ldexp(a, -exponent)}, []float64{math.Ldexp(b, -exponent)}
	want := math.Hypot(x[0], y[0])
	turn(x, y, s, tau)
	if math.Abs(x[0]-want) > 8*unit || math.Abs(y[0]) > 8*unit {
		t.Errorf("(%g, %g) is turned to (%g, %g), want (%g, 0)", a, b, x[0], y[0], want)
	}
}
