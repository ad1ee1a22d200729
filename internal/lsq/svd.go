package lsq

import "math"

const (
	unit      = 0x1p-53 // rounding unit of float64
	maxSweeps = 40      // 4 to 8 are usual; the most in 20 000 hostile draws was 22
)

// SVD writes the singular values of R·diag(1/scale), largest first, into s and
// its right singular vectors into v, n by n row by row: column j of v belongs
// to s[j]. With scale[j] = 0 column j is taken as it is; so a caller who scales
// by the norm of each column need not treat a column that no equation sees.
// The work, at least n*n long, is used up.
//
// The equations tell little about the directions of v whose singular values
// are small beside s[0], and nothing about those that are zero. The vectors are
// orthonormal whatever the rank.
//
// Accuracy: a few rounding units of s[0] for the values, and of s[0] over the
// distance to the next value for the vectors; a column below 1e-162 of the
// largest entry counts as zero. The method is one-sided Jacobi
// (Golub and Van Loan, Matrix Computations, 4th ed., section 8.6.3, from
// memory), with a bounded number of sweeps.
func (t *Triangle) SVD(scale, s, v, work []float64) {
	n := t.n
	s, v, work = s[:n], v[:n*n], work[:n*n]
	size := t.columns(work, scale)
	identity(v, n)
	for range maxSweeps {
		if !rotateColumns(work, v, n) {
			break
		}
	}
	for j := range s {
		column := work[j*n:][:n]
		s[j] = math.Sqrt(dot(column, column)) * size
	}
	sortDescending(s, v)
	transpose(v, n)
}

// columns writes the columns of R·diag(1/scale), one after the other, into a,
// divided by the size of the largest entry, which it returns: squares are then
// safe. If all are zero the size is 1.
func (t *Triangle) columns(a, scale []float64) (size float64) {
	n := t.n
	for j := range n {
		by := scale[j]
		if by == 0 {
			by = 1
		}
		for i := range n {
			entry := t.row(i)[j] / by
			a[j*n+i] = entry
			size = max(size, math.Abs(entry))
		}
	}
	if size == 0 {
		return 1
	}
	for i := range a {
		a[i] /= size
	}
	return size
}

// rotateColumns makes each pair of columns of a orthogonal once, in turn, and
// does the same to the columns of v. It reports whether any pair needed it.
func rotateColumns(a, v []float64, n int) (turned bool) {
	for p := range n {
		for q := p + 1; q < n; q++ {
			ap, aq := a[p*n:][:n], a[q*n:][:n]
			pp, qq, pq := dot(ap, ap), dot(aq, aq), dot(ap, aq)
			if pp == 0 || qq == 0 || math.Abs(pq) <= float64(n)*unit*math.Sqrt(pp)*math.Sqrt(qq) {
				continue // orthogonal to rounding
			}
			turned = true
			s, tau := jacobi(pp, qq, pq)
			turn(ap, aq, s, tau)
			turn(v[p*n:][:n], v[q*n:][:n], s, tau)
		}
	}
	return turned
}

// jacobi returns the rotation by the smaller angle, at most an eighth of a turn,
// that makes two columns orthogonal, from their squared lengths pp, qq and their
// product pq != 0. With t the tangent of the angle it solves
// t² + 2·zeta·t - 1 = 0, zeta = (pp - qq)/(2·pq).
func jacobi(pp, qq, pq float64) (s, tau float64) {
	zeta := (pp - qq) / (2 * pq)
	_, _, root := rotation(math.Abs(zeta), 1)
	t := math.Copysign(1/(math.Abs(zeta)+root), zeta)
	s, tau, _ = rotation(1, t)
	return s, tau
}

func dot(x, y []float64) float64 {
	sum := 0.0
	for i, xi := range x {
		sum += float64(xi * y[i])
	}
	return sum
}

func identity(v []float64, n int) {
	clear(v)
	for i := range n {
		v[i*n+i] = 1
	}
}

// sortDescending sorts s by falling value and the rows of v, one for each
// value, with it. Equal values keep their order.
func sortDescending(s, v []float64) {
	n := len(s)
	for i := range s {
		for j := i; j > 0 && s[j] > s[j-1]; j-- {
			s[j], s[j-1] = s[j-1], s[j]
			for k := range n {
				v[j*n+k], v[(j-1)*n+k] = v[(j-1)*n+k], v[j*n+k]
			}
		}
	}
}

func transpose(v []float64, n int) {
	for i := range n {
		for j := range i {
			v[i*n+j], v[j*n+i] = v[j*n+i], v[i*n+j]
		}
	}
}
