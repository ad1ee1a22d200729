package align_test

import (
	"fmt"
	"testing"

	"example.org/collinear/align"
	"gonum.org/v1/gonum/mat"
)

// BenchmarkFit measures value, covariance and scatter of two probes, by what the
// readings are told to be good for: their scatter, with the second dial at the places
// of the first and 7 degrees on (apart), an uncertainty of the readings (stated), and
// those of stations, sag and clock besides (shared). Fit checks its input, takes sines
// and gives the condition as well.
//
// The peers get their rows ready made, and reuse their results as far as gonum's QR
// lets them: the same problem of two probes, six unknowns (joint), and each probe by
// itself, a constant, a sine and a cosine, one after the other (each). To compare by
// the probe, halve Fit and each.
func BenchmarkFit(b *testing.B) {
	for _, readings := range []int{3, 9, 60, 1000} {
		scatter, shared := sweeps(b, 2, readings, false), sweeps(b, 2, readings, true)
		apart := read(b, caseA, scatter[1:], even(readings, 27, 300)...)
		for _, row := range []struct {
			name string
			sets []align.Set
		}{
			{"scatter", scatter},
			{"apart", []align.Set{scatter[0], apart[0]}},
			{"stated", state(scatter, 5*um)},
			{"shared", shared},
		} {
			b.Run(fmt.Sprintf("readings=%d/by=align_%s", readings, row.name), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, err := align.Fit(row.sets...); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
		b.Run(fmt.Sprintf("readings=%d/by=gonum_QR_joint", readings), func(b *testing.B) { benchQR(b, stack(scatter)) })
		b.Run(fmt.Sprintf("readings=%d/by=gonum_QR_each", readings), func(b *testing.B) { benchQR(b, sine(scatter[0]), sine(scatter[1])) })
	}
}

// sine is the problem of one probe by itself: its zero and its two amplitudes.
func sine(s align.Set) joint {
	n := len(s.Readings)
	j := joint{a: mat.NewDense(n, 3, nil), b: mat.NewVecDense(n, nil), lengths: make([]float64, 3)}
	for i, r := range s.Readings {
		sin, cos := direction(s.View, r.At)
		j.a.SetRow(i, []float64{1, sin, cos})
		j.b.SetVec(i, inMM(r.Value))
	}
	return j
}

func benchQR(b *testing.B, problems ...joint) {
	b.ReportAllocs()
	peers := make([]peer, len(problems))
	for b.Loop() {
		for i := range peers {
			if err := peers[i].fit(problems[i]); err != nil {
				b.Fatal(err)
			}
		}
	}
}

// peer is a least-squares fit by gonum's QR, with the memory of the one before.
type peer struct {
	qr              mat.QR
	x, fitted       mat.VecDense
	r, inverse, cov mat.Dense
}

func (p *peer) fit(j joint) error {
	p.qr.Factorize(j.a)
	if err := p.qr.SolveVecTo(&p.x, false, j.b); err != nil {
		return err
	}
	p.fitted.MulVec(j.a, &p.x)
	p.fitted.SubVec(j.b, &p.fitted)
	_ = mat.Dot(&p.fitted, &p.fitted)
	p.r.Reset()
	p.qr.RTo(&p.r)
	n := len(j.lengths)
	if err := p.inverse.Inverse(p.r.Slice(0, n, 0, n)); err != nil {
		return err
	}
	p.cov.Mul(&p.inverse, p.inverse.T())
	return nil
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
