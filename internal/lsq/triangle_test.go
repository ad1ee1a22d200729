package lsq_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/internal/lsq"
	"pgregory.net/rapid"
)

func TestAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, kappa := drawSound(t)
		tri := triangle(s)
		same(t, answerOf(&tri, s.unknowns()), byGonum(t, s), kappa, s)
	})
}

func TestOrderOfRowsIsRounding(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, kappa := drawSound(t)
		index := make([]int, len(s.a))
		for i := range index {
			index[i] = i
		}
		tri, other := triangle(s), triangle(s.order(rapid.Permutation(index).Draw(t, "order")))
		n := s.unknowns()
		same(t, answerOf(&other, n), answerOf(&tri, n), kappa, s)
	})
}

// Two triangles over parts of the equations, either of which may be singular,
// merge to the triangle over all.
func TestSplitAndMerge(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, kappa := drawSound(t)
		n := s.unknowns()
		cut := rapid.IntRange(0, len(s.a)).Draw(t, "cut")
		first, second := empty(n), empty(n)
		addAll(&first, system{s.a[:cut], s.b[:cut]})
		addAll(&second, system{s.a[cut:], s.b[cut:]})
		rows := first.Rows() + second.Rows()
		merge(&first, &second, n)
		got := answerOf(&first, n)
		got.sum += second.SumSquares()
		want := triangle(s)
		same(t, got, answerOf(&want, n), kappa, s)
		if rows != len(s.a) {
			t.Errorf("%d rows, want %d", rows, len(s.a))
		}
	})
}

// What a triangle keeps is R'R = A'A, R'q = A'b and q'q + sum = b'b, whether or
// not the equations determine the unknowns.
func TestKeepsNormalEquations(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSystem(t, 3)
		few := rapid.IntRange(1, len(s.a)).Draw(t, "equations")
		s = system{s.a[:few], s.b[:few]}
		n := s.unknowns()
		tri := triangle(s)
		kept := rest(&tri, n)
		tol := 100 * eps * (norm(flat(s.a)) + norm(s.b)) * (norm(flat(s.a)) + norm(s.b))
		near(t, "R'R", gram(kept), gram(s), tol)
		near(t, "R'q", gramRHS(kept), gramRHS(s), tol)
		squares := norm(kept.b)*norm(kept.b) + tri.SumSquares()
		near(t, "b'b", []float64{squares}, []float64{norm(s.b) * norm(s.b)}, tol)
	})
}

// rest returns the equations that a triangle holds.
func rest(t *lsq.Triangle, n int) system {
	var s system
	for i := range n {
		row := dirty(n)
		s.add(t.Row(row, i), row...)
	}
	return s
}

func gram(s system) []float64 {
	n := s.unknowns()
	g := make([]float64, n*n)
	for _, row := range s.a {
		for i := range n {
			for j := range n {
				g[i*n+j] += row[i] * row[j]
			}
		}
	}
	return g
}

func gramRHS(s system) []float64 {
	g := make([]float64, s.unknowns())
	for k, row := range s.a {
		for i := range row {
			g[i] += row[i] * s.b[k]
		}
	}
	return g
}

func TestRowShape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSystem(t, 5)
		tri := triangle(s)
		for i, row := range rest(&tri, s.unknowns()).a {
			for j := range i {
				if row[j] != 0 || math.Signbit(row[j]) {
					t.Errorf("row %d column %d is %g, want 0", i, j, row[j])
				}
			}
			if !(row[i] >= 0) {
				t.Errorf("diagonal %d is %g", i, row[i])
			}
			if row[i] == 0 && norm(row) != 0 {
				t.Errorf("row %d has no diagonal but content %g", i, row)
			}
		}
	})
}

// Powers of two change no digit: scaled equations give the same bits.
func TestScaledEquations(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, _ := drawSound(t)
		coarse(s)
		n := s.unknowns()
		tri := triangle(s)
		want := answerOf(&tri, n)
		for _, exponent := range []int{-300, -20, 20, 300} {
			var scaled system
			for k, row := range s.a {
				r := slices.Clone(row)
				for j := range r {
					r[j] = math.Ldexp(r[j], exponent)
				}
				scaled.add(math.Ldexp(s.b[k], exponent), r...)
			}
			other := triangle(scaled)
			got := answerOf(&other, n)
			if !slices.Equal(got.x, want.x) || got.sum != math.Ldexp(want.sum, 2*exponent) {
				t.Errorf("by 2^%d: %v, want %v", exponent, got, want)
			}
		}
	})
}

// An unknown in another unit, by a power of two, has the same bits at another
// exponent, and the others have the same bits.
func TestScaledUnknown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, _ := drawSound(t)
		coarse(s)
		n := s.unknowns()
		tri := triangle(s)
		want := answerOf(&tri, n)
		column := rapid.IntRange(0, n-1).Draw(t, "column")
		exponent := rapid.IntRange(-40, 40).Draw(t, "exponent")
		for _, row := range s.a {
			row[column] = math.Ldexp(row[column], exponent)
		}
		other := triangle(s)
		got := answerOf(&other, n)
		got.x[column] = math.Ldexp(got.x[column], exponent)
		if !slices.Equal(got.x, want.x) || got.sum != want.sum {
			t.Errorf("column by 2^%d: %v, want %v", exponent, got, want)
		}
	})
}

// coarse rounds all numbers to multiples of 2^-20, so that scaling by 2^-300
// underflows nowhere.
func coarse(s system) {
	for _, numbers := range append(s.a, s.b) {
		for i, v := range numbers {
			numbers[i] = math.Round(v*0x1p20) * 0x1p-20
		}
	}
}

// Entries whose squares overflow or vanish, where scaling is not exact.
func TestExtremeSizes(t *testing.T) {
	for _, size := range []float64{1e-300, 1e-200, 1e-160, 1, 1e150} {
		var s system
		s.add(5*size, 1*size, 0) // 1x = 5
		s.add(14*size, 1*size, 3*size)
		s.add(23*size, 1*size, 6*size)
		tri := triangle(s)
		x := make([]float64, 2)
		tri.Solve(x)
		near(t, "x", x, []float64{5, 3}, 1e-14)
	}
}

func TestZeroPivotIsSeen(t *testing.T) {
	tri := empty(2)
	tri.Add([]float64{1, 0}, 1)
	tri.Add([]float64{2, 0}, 5)
	got := answerOf(&tri, 2)
	if !math.IsNaN(got.x[1]) && !math.IsInf(got.x[1], 0) {
		t.Errorf("unknown that no equation sees: %g", got.x[1])
	}
	if v := got.cov[3]; !math.IsNaN(v) && !math.IsInf(v, 0) {
		t.Errorf("its variance: %g", v)
	}
	near(t, "sum of squares", []float64{got.sum}, []float64{1.8}, 1e-15) // x = 2.2, by hand
}

// By hand: an equation without content only leaves its residual.
func TestEmptyEquation(t *testing.T) {
	tri := empty(2)
	tri.Add([]float64{0, 0}, 3)
	tri.Add([]float64{0, 4}, 8)
	tri.Add([]float64{2, 0}, 2)
	got := answerOf(&tri, 2)
	if got.sum != 9 || tri.Rows() != 3 || !slices.Equal(got.x, []float64{1, 2}) ||
		!slices.Equal(got.cov, []float64{0.25, 0, 0, 0.0625}) {
		t.Errorf("%+v, %d rows", got, tri.Rows())
	}
}

func TestZeroEquations(t *testing.T) {
	work := dirty(lsq.Size(3) + 1)
	tri := lsq.In(work, 3)
	row := make([]float64, 3)
	for i := range 3 {
		if rhs := tri.Row(row, i); rhs != 0 || norm(row) != 0 {
			t.Errorf("row %d of an empty triangle: %v, %g", i, row, rhs)
		}
	}
	if tri.SumSquares() != 0 || tri.Rows() != 0 || !math.IsNaN(work[lsq.Size(3)]) {
		t.Error("an empty triangle holds something, or took memory that is not its own")
	}
}

func TestCovarianceExactlySymmetric(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s, _ := drawSound(t)
		n := s.unknowns()
		tri := triangle(s)
		c := answerOf(&tri, n).cov
		for i := range n {
			for j := range i {
				if c[i*n+j] != c[j*n+i] {
					t.Errorf("%g beside %g", c[i*n+j], c[j*n+i])
				}
			}
		}
	})
}

func TestNoAllocation(t *testing.T) {
	s := sine(9)
	var row, x, sv, scale [3]float64
	var cov, v, svdWork [9]float64
	var work [12]float64
	allocs := testing.AllocsPerRun(100, func() {
		tri := lsq.In(work[:], 3)
		for i := range s.a {
			copy(row[:], s.a[i])
			tri.Add(row[:], s.b[i])
		}
		tri.Solve(x[:])
		tri.Covariance(cov[:])
		tri.SVD(scale[:], sv[:], v[:], svdWork[:])
		tri.Row(row[:], 1)
	})
	if allocs != 0 {
		t.Errorf("%g allocations", allocs)
	}
}
