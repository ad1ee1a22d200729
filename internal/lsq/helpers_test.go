package lsq_test

import (
	"math"
	"slices"
	"strconv"
	"testing"

	"example.org/collinear/internal/lsq"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

const (
	eps      = 0x1p-52
	smallest = 0x1p-1022 // below it squares lose digits
)

// system is a set of equations a x = b, one row of a for each.
type system struct {
	a [][]float64
	b []float64
}

func (s *system) add(rhs float64, row ...float64) {
	s.a = append(s.a, row)
	s.b = append(s.b, rhs)
}

func (s system) unknowns() int { return len(s.a[0]) }

// order returns the equations in another order.
func (s system) order(of []int) system {
	var o system
	for _, i := range of {
		o.add(s.b[i], s.a[i]...)
	}
	return o
}

// matrices returns the equations in gonum's form.
func (s system) matrices() (*mat.Dense, *mat.VecDense) {
	a := mat.NewDense(len(s.a), s.unknowns(), nil)
	for i, row := range s.a {
		a.SetRow(i, row)
	}
	return a, mat.NewVecDense(len(s.b), slices.Clone(s.b))
}

// condition returns gonum's condition number, or +Inf for fewer equations than
// unknowns.
func (s system) condition() float64 {
	if len(s.a) < s.unknowns() {
		return math.Inf(1)
	}
	a, _ := s.matrices()
	var svd mat.SVD
	if !svd.Factorize(a, mat.SVDNone) {
		return math.Inf(1)
	}
	return svd.Cond()
}

// triangle takes in all equations of s.
func triangle(s system) lsq.Triangle {
	t := empty(s.unknowns())
	addAll(&t, s)
	return t
}

func empty(n int) lsq.Triangle { return lsq.In(dirty(lsq.Size(n)), n) }

func addAll(t *lsq.Triangle, s system) {
	for i, row := range s.a {
		t.Add(slices.Clone(row), s.b[i])
	}
}

// merge adds what remains of from to t.
func merge(t, from *lsq.Triangle, n int) {
	row := make([]float64, n)
	for i := range n {
		rhs := from.Row(row, i)
		t.Add(row, rhs)
	}
}

// answer is all that a fit gives.
type answer struct {
	x, cov []float64
	sum    float64
}

// answerOf asks t for its answer, in memory that is not clean.
func answerOf(t *lsq.Triangle, n int) answer {
	a := answer{x: dirty(n), cov: dirty(n * n), sum: t.SumSquares()}
	t.Solve(a.x)
	t.Covariance(a.cov)
	return a
}

func dirty(n int) []float64 { return slices.Repeat([]float64{math.NaN()}, n) }

// byGonum solves s by gonum's Householder QR.
func byGonum(tb fataler, s system) answer {
	a, b := s.matrices()
	var qr mat.QR
	qr.Factorize(a)
	var x, residual mat.VecDense
	if err := qr.SolveVecTo(&x, false, b); err != nil {
		tb.Fatalf("gonum: %v", err)
	}
	residual.MulVec(a, &x)
	residual.SubVec(b, &residual)
	n := s.unknowns()
	var r, inverse, cov mat.Dense
	qr.RTo(&r)
	if err := inverse.Inverse(r.Slice(0, n, 0, n)); err != nil {
		tb.Fatalf("gonum: %v", err)
	}
	cov.Mul(&inverse, inverse.T())
	return answer{x.RawVector().Data, cov.RawMatrix().Data, mat.Dot(&residual, &residual)}
}

// fataler is what testing.TB and rapid.T have in common.
type fataler interface {
	Helper()
	Errorf(string, ...any)
	Fatalf(string, ...any)
}

// same asks that two answers to s agree as well as the condition number lets
// two backward stable methods agree: solution and sum of squares to kappa² for
// a residual of any size, covariance to kappa² too.
func same(tb fataler, got, want answer, kappa float64, s system) {
	tb.Helper()
	tol := 100 * eps * kappa * kappa
	near(tb, "solution", got.x, want.x, tol*(norm(want.x)+norm(s.b)/norm(flat(s.a))))
	near(tb, "covariance", got.cov, want.cov, tol*norm(want.cov))
	near(tb, "sum of squares", []float64{got.sum}, []float64{want.sum}, 100*eps*(1+kappa)*norm(s.b)*norm(s.b)+smallest)
}

func near(tb fataler, what string, got, want []float64, tol float64) {
	tb.Helper()
	for i := range want {
		if !(math.Abs(got[i]-want[i]) <= tol) {
			tb.Errorf("%s[%d] = %.17g, want %.17g, off by %.3g, tolerance %.3g",
				what, i, got[i], want[i], got[i]-want[i], tol)
		}
	}
}

func norm(x []float64) float64 {
	length := 0.0
	for _, v := range x {
		length = math.Hypot(length, v) // no square overflows or vanishes
	}
	return length
}

func flat(a [][]float64) []float64 { return slices.Concat(a...) }

func number(tb testing.TB, decimal string) float64 {
	tb.Helper()
	v, err := strconv.ParseFloat(decimal, 64)
	if err != nil {
		tb.Fatal(err)
	}
	return v
}

// drawSystem draws equations in up to 12 unknowns, at most surplus more than
// unknowns; rapid likes zeros and repeats, so rank is not assured.
func drawSystem(t *rapid.T, surplus int) system {
	n := rapid.IntRange(1, 12).Draw(t, "unknowns")
	m := n + rapid.IntRange(0, surplus).Draw(t, "surplus")
	entry := rapid.Float64Range(-10, 10)
	var s system
	for range m {
		row := rapid.SliceOfN(entry, n, n).Draw(t, "row")
		s.add(entry.Draw(t, "rhs"), row...)
	}
	return s
}

// drawSound draws a system whose condition number is at most 1e5, where results
// can be compared, and returns that number.
func drawSound(t *rapid.T) (system, float64) {
	s := drawSystem(t, 20)
	for i := range s.a { // a sound part on the diagonal keeps most draws usable
		s.a[i][i%s.unknowns()] += 10
	}
	kappa := s.condition()
	if !(kappa <= 1e5) {
		t.Skip("nearly singular")
	}
	return s, kappa
}
