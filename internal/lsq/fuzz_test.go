package lsq_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/internal/lsq"
)

// fuzzedSystem reads small whole numbers, and at times one of any size between 1e-100
// and 1e100, so that rows are dependent, and of unlike sizes.
func fuzzedSystem(data []byte) system {
	tape := fuzzed.Tape(data)
	number := func() float64 {
		switch b := int8(tape.Byte()); b {
		case 127:
			if x := tape.Float64(); math.Abs(x) > 1e-100 && math.Abs(x) < 1e100 {
				return x
			}
			return 0
		case 126:
			return 1e-9 * float64(int8(tape.Byte()))
		default:
			return float64(b % 16)
		}
	}
	n := 1 + int(tape.Byte()%4)
	s := system{}
	for rows := tape.Byte() % 12; len(s.a) < int(rows)+1; {
		row := make([]float64, n)
		for j := range row {
			row[j] = number()
		}
		s.add(number(), row...)
	}
	return s
}

// FuzzTriangle: whatever the equations, the triangle has the sum of squares that stands
// in them (orthogonal steps change no length), its singular values are finite, in order
// and not below zero; and equations that are well conditioned are solved with residuals
// across from every column.
func FuzzTriangle(f *testing.F) {
	f.Add([]byte{1, 2, 1, 0, 3, 0, 1, 4, 1, 1, 8})
	f.Add([]byte{3, 5, 1, 2, 3, 4, 5, 2, 4, 6, 8, 10, 0, 0, 0, 0, 1, 126, 3, 1, 1, 1, 7})
	f.Add([]byte{0, 0, 0, 5})
	f.Fuzz(func(t *testing.T, data []byte) {
		s := fuzzedSystem(data)
		n := s.unknowns()
		tri := triangle(s)
		if tri.Rows() != len(s.b) || tri.SumSquares() < 0 || math.IsNaN(tri.SumSquares()) {
			t.Fatalf("%d rows, sum %v", tri.Rows(), tri.SumSquares())
		}
		checkLength(t, s, &tri, n)
		ones := slices.Repeat([]float64{1}, n)
		singular, v, work := make([]float64, n), make([]float64, n*n), dirty(n*n)
		tri.SVD(ones, singular, v, work)
		for i, x := range singular {
			if !(x >= 0) || math.IsInf(x, 0) || i > 0 && x > singular[i-1] {
				t.Fatalf("singular values %v", singular)
			}
		}
		if !(singular[n-1] > 1e-6*singular[0]) {
			return
		}
		x := dirty(n)
		tri.Solve(x)
		checkAcross(t, s, x, singular[0])
	})
}

// checkLength compares the length of the right sides before and after.
func checkLength(t *testing.T, s system, tri *lsq.Triangle, n int) {
	t.Helper()
	before, after := norm(s.b), 0.0
	row := dirty(n)
	for i := range n {
		q := tri.Row(row, i)
		after = math.Hypot(after, q)
	}
	after = math.Hypot(after, math.Sqrt(tri.SumSquares()))
	if !(math.Abs(before-after) <= 1e-12*before) {
		t.Fatalf("the right sides are %v long, and then %v", before, after)
	}
}

// checkAcross asks that the residuals are at right angles to every column.
func checkAcross(t *testing.T, s system, x []float64, largest float64) {
	t.Helper()
	residuals := make([]float64, len(s.b))
	size := norm(s.b)
	for i, row := range s.a {
		residuals[i] = s.b[i]
		for j, a := range row {
			residuals[i] -= a * x[j]
		}
		size = math.Hypot(size, norm(row)*norm(x))
	}
	for j := range x {
		sum := 0.0
		for i, row := range s.a {
			sum += row[j] * residuals[i]
		}
		if !(math.Abs(sum) <= 1e-12*largest*size) {
			t.Fatalf("column %d sees %v of the residuals %v", j, sum, residuals)
		}
	}
}
