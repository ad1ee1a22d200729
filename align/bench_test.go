package align_test

import (
	"fmt"
	"testing"

	"example.org/collinear/align"
	"gonum.org/v1/gonum/mat"
)

// BenchmarkFit measures value, covariance and scatter of two probes, beside the
// same joint problem in gonum's QR with its results reused as far as its API
// allows. The peer gets its rows ready made; Fit checks its input, takes sines
// and gives the condition besides.
func BenchmarkFit(b *testing.B) {
	for _, readings := range []int{3, 9, 60, 1000} {
		for _, stated := range []bool{false, true} {
			sets := sweeps(b, 2, readings, stated)
			b.Run(fmt.Sprintf("align/stated=%v/%d", stated, readings), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := align.Fit(sets...); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
		j := stack(sweeps(b, 2, readings, true))
		b.Run(fmt.Sprintf("gonumQR/%d", readings), func(b *testing.B) { benchQR(b, j) })
	}
}

func benchQR(b *testing.B, j joint) {
	b.ReportAllocs()
	var qr mat.QR
	var x, fitted mat.VecDense
	var r, inverse, cov mat.Dense
	n := len(j.lengths)
	for b.Loop() {
		qr.Factorize(j.a)
		if err := qr.SolveVecTo(&x, false, j.b); err != nil {
			b.Fatal(err)
		}
		fitted.MulVec(j.a, &x)
		fitted.SubVec(j.b, &fitted)
		_ = mat.Dot(&fitted, &fitted)
		r.Reset()
		qr.RTo(&r)
		if err := inverse.Inverse(r.Slice(0, n, 0, n)); err != nil {
			b.Fatal(err)
		}
		cov.Mul(&inverse, inverse.T())
	}
}

func BenchmarkResiduals(b *testing.B) {
	for _, readings := range []int{9, 60, 1000} {
		sets := sweeps(b, 2, readings, true)
		f := mustFit(b, sets...)
		dst := make([]align.Residual, 0, 2*readings)
		b.Run(fmt.Sprint(readings), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := align.Residuals(dst, sets, f); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// kept outlives the call, as moves do in use: what does not may stay on the stack.
var kept []align.Move

func BenchmarkCorrections(b *testing.B) {
	e := mustFit(b, sweeps(b, 2, 9, true)...).Estimate
	feet := []align.Foot{{Name: "inboard", X: 300 * mm, U: mm}, {Name: "outboard", X: 900 * mm}}
	dst := make([]align.Move, 0, len(feet))
	b.Run("append", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := e.AppendCorrections(dst, feet...); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("new", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			moves, err := e.Corrections(feet...)
			if err != nil {
				b.Fatal(err)
			}
			kept = moves
		}
	})
}
