package lsq

import "math"

// Between these bounds a²+b² neither overflows nor loses a part that counts.
const (
	smallSquare = 0x1p-900
	largeSquare = 0x1p+1000
)

// rotation returns the sine s, the tangent tau of half the angle, and the
// length r > 0 of the plane rotation that takes (a, b), with a >= 0 and b != 0,
// to (r, 0):
//
//	c·a + s·b = r    c·b - s·a = 0    c = 1 - s·tau
//
// (Golub and Van Loan, Matrix Computations, 4th ed., section 5.1.8, from
// memory, with tau for c.)
//
// If the squares would overflow or vanish, all is computed from scaled numbers
// and only r is scaled back: a subnormal r has lost digits, which s and tau
// must not inherit.
func rotation(a, b float64) (s, tau, r float64) {
	square := float64(a*a) + float64(b*b)
	if square > smallSquare && square < largeSquare {
		r = math.Sqrt(square)
		return b / r, b / (a + r), r
	}
	scale := max(a, math.Abs(b))
	a, b = a/scale, b/scale
	r = math.Sqrt(float64(a*a) + float64(b*b))
	return b / r, b / (a + r), r * scale
}

// turn replaces the pair (x, y) of each place by (c·x + s·y, c·y - s·x), both
// written as a correction to what they were. Once a triangle holds many rows,
// the next turns it by little, and an error in s or tau then costs little too
// (H. Rutishauser, The Jacobi method for real symmetric matrices, Numerische
// Mathematik 9, 1966, from memory).
func turn(x, y []float64, s, tau float64) {
	y = y[:len(x)]
	for j, xj := range x {
		yj := y[j]
		x[j] = xj + float64(s*(yj-float64(tau*xj)))
		y[j] = yj - float64(s*(xj+float64(tau*yj)))
	}
}
