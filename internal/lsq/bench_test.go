package lsq_test

import (
	"fmt"
	"math"
	"testing"

	"example.org/collinear/internal/lsq"
	"gonum.org/v1/gonum/mat"
)

// sine returns m readings of a constant and one sine over a half turn: the
// three-unknown fit that the library lives on.
func sine(m int) system {
	var s system
	for k := range m {
		angle := math.Pi * float64(k) / float64(m)
		sin, cos := math.Sincos(angle)
		s.add(0.3+0.2*sin-0.4*cos+1e-3*math.Sin(7*angle), 1, sin, cos)
	}
	return s
}

// BenchmarkSine measures solution, sum of squares and covariance from given
// rows, beside gonum's QR and Cholesky with their results reused as far as its
// API allows.
func BenchmarkSine(b *testing.B) {
	for _, m := range []int{3, 9, 60, 1000} {
		s := sine(m)
		b.Run(fmt.Sprintf("readings=%d/by=lsq", m), func(b *testing.B) { benchTriangle(b, s) })
		b.Run(fmt.Sprintf("readings=%d/by=gonum_QR", m), func(b *testing.B) { benchQR(b, s) })
		b.Run(fmt.Sprintf("readings=%d/by=gonum_Cholesky", m), func(b *testing.B) { benchCholesky(b, s) })
	}
}

func benchTriangle(b *testing.B, s system) {
	b.ReportAllocs()
	var work [12]float64
	var row, x [3]float64
	var cov [9]float64
	for b.Loop() {
		t := lsq.In(work[:], 3)
		for i := range s.a {
			copy(row[:], s.a[i])
			t.Add(row[:], s.b[i])
		}
		t.Solve(x[:])
		t.Covariance(cov[:])
	}
}

func benchQR(b *testing.B, s system) {
	a, rhs := s.matrices()
	b.ReportAllocs()
	var qr mat.QR
	var x, fitted mat.VecDense
	var r, inverse, cov mat.Dense
	for b.Loop() {
		qr.Factorize(a)
		if err := qr.SolveVecTo(&x, false, rhs); err != nil {
			b.Fatal(err)
		}
		fitted.MulVec(a, &x)
		fitted.SubVec(rhs, &fitted)
		_ = mat.Dot(&fitted, &fitted)
		r.Reset()
		qr.RTo(&r)
		if err := inverse.Inverse(r.Slice(0, 3, 0, 3)); err != nil {
			b.Fatal(err)
		}
		cov.Mul(&inverse, inverse.T())
	}
}

func benchCholesky(b *testing.B, s system) {
	a, rhs := s.matrices()
	b.ReportAllocs()
	var cholesky mat.Cholesky
	var normal, cov mat.SymDense
	var right, x, fitted mat.VecDense
	for b.Loop() {
		normal.SymOuterK(1, a.T())
		right.MulVec(a.T(), rhs)
		if !cholesky.Factorize(&normal) {
			b.Fatal("not positive definite")
		}
		if err := cholesky.SolveVecTo(&x, &right); err != nil {
			b.Fatal(err)
		}
		fitted.MulVec(a, &x)
		fitted.SubVec(rhs, &fitted)
		_ = mat.Dot(&fitted, &fitted)
		if err := cholesky.InverseTo(&cov); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSVD measures the condition check of four unknowns.
func BenchmarkSVD(b *testing.B) {
	t := triangle(fourUnknowns())
	scale := []float64{1, 1, 1, 1}
	var s [4]float64
	var v, work [16]float64
	b.ReportAllocs()
	for b.Loop() {
		t.SVD(scale, s[:], v[:], work[:])
	}
}

// fourUnknowns is a rim at 40 and one at -50 with readings at the quarters.
func fourUnknowns() system {
	var s system
	for _, x := range []float64{0.040, -0.050} {
		s.add(0.1, 1, x, 0, 0)
		s.add(0.2, 0, 0, 1, x)
		s.add(0.1, 1, x, 1, x)
	}
	return s
}
