package lsq_test

import (
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// exact is a least-squares answer in rational numbers: no rounding anywhere.
type exact struct {
	x   []*big.Rat
	cov [][]*big.Rat // (A'A)^-1
	sum *big.Rat     // squared residuals
}

// exactFit solves the normal equations in rational numbers by Gauss and Jordan;
// ok is false if they are singular.
func exactFit(a [][]*big.Rat, b []*big.Rat) (fit exact, ok bool) {
	n := len(a[0])
	m := make([][]*big.Rat, n) // [A'A | 1 | A'b]
	for i := range m {
		m[i] = make([]*big.Rat, 2*n+1)
		for j := range n {
			m[i][j], m[i][n+j] = ratDot(a, i, func(k int) *big.Rat { return a[k][j] }), new(big.Rat)
		}
		m[i][n+i].SetInt64(1)
		m[i][2*n] = ratDot(a, i, func(k int) *big.Rat { return b[k] })
	}
	if !gaussJordan(m) {
		return exact{}, false
	}
	for _, row := range m {
		fit.cov = append(fit.cov, row[n:2*n])
		fit.x = append(fit.x, row[2*n])
	}
	fit.sum = residualSum(a, b, fit.x)
	return fit, true
}

// ratDot returns the product of column i of a with another column.
func ratDot(a [][]*big.Rat, i int, other func(k int) *big.Rat) *big.Rat {
	sum, term := new(big.Rat), new(big.Rat)
	for k := range a {
		sum.Add(sum, term.Mul(a[k][i], other(k)))
	}
	return sum
}

// gaussJordan turns the left square part of m into the identity.
func gaussJordan(m [][]*big.Rat) (ok bool) {
	for i := range m {
		p := i
		for p < len(m) && m[p][i].Sign() == 0 {
			p++
		}
		if p == len(m) {
			return false
		}
		m[i], m[p] = m[p], m[i]
		inverse := new(big.Rat).Inv(m[i][i])
		for j := range m[i] {
			m[i][j].Mul(m[i][j], inverse)
		}
		for k := range m {
			if k != i {
				subtract(m[k], m[i], new(big.Rat).Set(m[k][i]))
			}
		}
	}
	return true
}

// subtract takes factor times other from row.
func subtract(row, other []*big.Rat, factor *big.Rat) {
	for j := range row {
		row[j].Sub(row[j], new(big.Rat).Mul(factor, other[j]))
	}
}

func residualSum(a [][]*big.Rat, b, x []*big.Rat) *big.Rat {
	sum := new(big.Rat)
	for k, row := range a {
		r := new(big.Rat).Set(b[k])
		for j := range row {
			r.Sub(r, new(big.Rat).Mul(row[j], x[j]))
		}
		sum.Add(sum, r.Mul(r, r))
	}
	return sum
}

// answer rounds the exact answer.
func (e exact) answer() answer {
	var a answer
	for i := range e.x {
		a.x = append(a.x, float(e.x[i]))
		for _, c := range e.cov[i] {
			a.cov = append(a.cov, float(c))
		}
	}
	a.sum = float(e.sum)
	return a
}

func float(r *big.Rat) float64 {
	f, _ := r.Float64()
	return f
}

// Small whole numbers are exact in both arithmetics, so only rounding inside
// the package can differ.
func TestAgainstExactRationals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 4).Draw(t, "unknowns")
		m := rapid.IntRange(n, n+6).Draw(t, "equations")
		entry := rapid.IntRange(-9, 9)
		var s system
		var a [][]*big.Rat
		var b []*big.Rat
		for range m {
			row, exactRow := make([]float64, n), make([]*big.Rat, n)
			for j := range row {
				v := entry.Draw(t, "entry")
				row[j], exactRow[j] = float64(v), big.NewRat(int64(v), 1)
			}
			rhs := entry.Draw(t, "rhs")
			s.add(float64(rhs), row...)
			a, b = append(a, exactRow), append(b, big.NewRat(int64(rhs), 1))
		}
		fit, ok := exactFit(a, b)
		if !ok {
			t.Skip("singular, exactly")
		}
		tri := triangle(s)
		same(t, answerOf(&tri, n), fit.answer(), s.condition(), s)
	})
}
