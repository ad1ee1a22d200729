package lsq

// Triangle holds what is left of the equations taken in: the upper triangle
// [R | q] of n rows, with R'R = A'A and R'q = A'b for the equations A x = b.
// The diagonal of R is not negative, and a zero on it stands in a row of zeros.
//
// Make one with [In]; the zero value has no unknowns and no memory. A copy of a
// Triangle shares the memory of the first and must not be used beside it.
type Triangle struct {
	n    int
	rows int
	sum  float64   // squared residuals of all equations taken in
	rq   []float64 // n rows of [R | q], each n+1 long, zero left of the diagonal
}

// Size returns how many floats a Triangle of n unknowns needs.
func Size(n int) int { return n * (n + 1) }

// In makes an empty Triangle of n unknowns in the first Size(n) floats of work,
// which it clears and keeps. It panics if work is shorter.
func In(work []float64, n int) Triangle {
	rq := work[:Size(n):Size(n)]
	clear(rq)
	return Triangle{n: n, rq: rq}
}

// Add takes in the equation row·x = rhs, both sides already multiplied by the
// root of the equation's weight. The row, n long, is used up: its content
// afterwards means nothing. All numbers must be finite, and small enough that
// their squared sum is too (about 1e154); otherwise Inf or NaN spread.
func (t *Triangle) Add(row []float64, rhs float64) {
	t.rows++
	row = row[:t.n]
	for i, below := range row {
		if below == 0 {
			continue
		}
		upper := t.rq[i*(t.n+1):][:t.n+1]
		if upper[i] == 0 { // an empty row, since a used one has a pivot: settle there
			settle(upper[i:], row[i:], rhs)
			return
		}
		rhs = eliminate(upper[i:], row[i:], rhs)
	}
	t.sum += float64(rhs * rhs)
}

// settle writes an equation into an empty row of the triangle, with the sign
// that makes its first entry positive.
func settle(upper, row []float64, rhs float64) {
	last := len(row)
	if row[0] > 0 {
		copy(upper, row)
		upper[last] = rhs
		return
	}
	for j, w := range row {
		upper[j] = -w
	}
	upper[last] = -rhs
}

// eliminate turns the equation (row, rhs) against the triangle's row upper,
// whose last entry is its right-hand side, so that row[0] would become zero. It
// returns the new right-hand side of row; row[0] itself is not written.
func eliminate(upper, row []float64, rhs float64) float64 {
	s, tau, r := rotation(upper[0], row[0])
	upper[0] = r
	last := len(row)
	turn(upper[1:last], row[1:], s, tau)
	q := upper[last]
	upper[last] = q + float64(s*(rhs-float64(tau*q)))
	return rhs - float64(s*(q+float64(tau*rhs)))
}

// Row copies row i of R into dst, n long, with zeros left of the diagonal, and
// returns its right-hand side. The n rows are equations worth the same as all
// those taken in, apart from the sum of squares, ready for another Triangle.
func (t *Triangle) Row(dst []float64, i int) (rhs float64) {
	row := t.row(i)
	copy(dst[:t.n], row)
	return row[t.n]
}

// row returns row i of [R | q] itself.
func (t *Triangle) row(i int) []float64 {
	return t.rq[i*(t.n+1):][:t.n+1]
}

// SumSquares returns the sum of squared residuals at the solution, in squared
// units of the weighted right-hand sides. It is zero, or nearly so, up to n
// equations. Equations that come from another Triangle bring their own
// residuals only; the other's SumSquares is to be added.
func (t *Triangle) SumSquares() float64 { return t.sum }

// Rows returns how many equations were taken in, those without content too.
func (t *Triangle) Rows() int { return t.rows }

// Solve writes the n unknowns into x by back substitution. The caller has made
// sure that the equations determine them: a zero on the diagonal gives Inf or
// NaN.
func (t *Triangle) Solve(x []float64) {
	x = x[:t.n]
	for i := t.n - 1; i >= 0; i-- {
		row := t.row(i)
		rest := row[t.n]
		for j := i + 1; j < t.n; j++ {
			rest -= float64(row[j] * x[j])
		}
		x[i] = rest / row[i]
	}
}

// Covariance writes (R'R)^-1, n by n and exactly symmetric, into c row by row.
// It is the covariance of the solution if the weighted right-hand sides have
// unit variance; otherwise multiply it by theirs. A zero on the diagonal of R
// gives Inf or NaN.
func (t *Triangle) Covariance(c []float64) {
	n := t.n
	c = c[:n*n]
	t.invert(c)
	for i := range n { // R^-1 R^-T in place: c[i][j] needs only what stands at and after it
		for j := i; j < n; j++ {
			sum := 0.0
			for k := j; k < n; k++ {
				sum += float64(c[i*n+k] * c[j*n+k])
			}
			c[i*n+j], c[j*n+i] = sum, sum
		}
	}
}

// invert writes the upper triangle R^-1 into u, n by n; what stands below the
// diagonal is left as it was.
func (t *Triangle) invert(u []float64) {
	n := t.n
	for j := range n {
		u[j*n+j] = 1 / t.row(j)[j]
		for i := j - 1; i >= 0; i-- {
			row, sum := t.row(i), 0.0
			for k := i + 1; k <= j; k++ {
				sum += float64(row[k] * u[k*n+j])
			}
			u[i*n+j] = -sum / row[i]
		}
	}
}
