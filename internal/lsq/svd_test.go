package lsq_test

import (
	"cmp"
	"math"
	"slices"
	"testing"

	"example.org/collinear/internal/lsq"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

type decomposition struct{ s, v []float64 }

func svd(t *lsq.Triangle, n int, scale []float64) decomposition {
	d := decomposition{dirty(n), dirty(n * n)}
	t.SVD(scale, d.s, d.v, dirty(n*n))
	return d
}

func ones(n int) []float64 { return slices.Repeat([]float64{1}, n) }

// checkSVD asks of d what defines a decomposition of a: values in order, like
// gonum's; orthonormal v; columns of a·v orthogonal and as long as the values.
func checkSVD(t fataler, a system, d decomposition) {
	t.Helper()
	n := a.unknowns()
	dense, _ := a.matrices()
	var peer mat.SVD
	if !peer.Factorize(dense, mat.SVDNone) {
		t.Fatalf("gonum: no decomposition")
	}
	want := append(peer.Values(nil), make([]float64, n)...)[:n] // fewer equations: zeros
	tol := 50 * eps * want[0]
	near(t, "singular value", d.s, want, tol)
	if !slices.IsSortedFunc(d.s, func(a, b float64) int { return cmp.Compare(b, a) }) {
		t.Errorf("not in falling order: %v", d.s)
	}
	v := mat.NewDense(n, n, d.v)
	var unit, av, lengths mat.Dense
	unit.Mul(v.T(), v)
	av.Mul(dense, v)
	lengths.Mul(av.T(), &av)
	for i := range n {
		for j := range n {
			one, square := 0.0, 0.0
			if i == j {
				one, square = 1, d.s[i]*d.s[i]
			}
			near(t, "V'V", []float64{unit.At(i, j)}, []float64{one}, 50*eps)
			near(t, "(AV)'AV", []float64{lengths.At(i, j)}, []float64{square}, tol*want[0]+smallest)
		}
	}
}

// Any rank: rows are drawn, some columns made zero or multiples of the first.
func TestSVDAgainstGonum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSystem(t, 6)
		few := rapid.IntRange(1, len(s.a)).Draw(t, "equations")
		s = system{s.a[:few], s.b[:few]}
		for j := 1; j < s.unknowns(); j++ {
			kind := rapid.IntRange(0, 4).Draw(t, "column")
			for _, row := range s.a {
				switch kind {
				case 0:
					row[j] = 0
				case 1:
					row[j] = 3 * row[0]
				}
			}
		}
		tri := triangle(s)
		checkSVD(t, s, svd(&tri, s.unknowns(), ones(s.unknowns())))
	})
}

func TestSVDScales(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSystem(t, 6)
		scale := rapid.SliceOfN(rapid.SampledFrom([]float64{0, 1e-6, 0.5, 3, 1e6}), s.unknowns(), s.unknowns()).Draw(t, "scale")
		tri := triangle(s)
		got := svd(&tri, s.unknowns(), scale)
		var scaled system
		for k, row := range s.a {
			r := slices.Clone(row)
			for j := range r {
				if scale[j] != 0 {
					r[j] /= scale[j]
				}
			}
			scaled.add(s.b[k], r...)
		}
		checkSVD(t, scaled, got)
	})
}

func TestSVDByHand(t *testing.T) {
	for _, c := range []struct {
		name string
		rows [][]float64
		want []float64
		tol  float64
	}{
		{"nothing taken in", [][]float64{{0, 0, 0}}, []float64{0, 0, 0}, 0},
		{"one column unseen", [][]float64{{3, 0, 0}, {0, 0, 4}}, []float64{4, 3, 0}, 0},
		{"order turned", [][]float64{{1, 0, 0}, {0, 2, 0}, {0, 0, 3}}, []float64{3, 2, 1}, 0},
		{"twins", [][]float64{{1, 1, 0}, {1, 1, 0}, {0, 0, 1}}, []float64{2, 1, 0}, 4 * eps},
		{"one row", [][]float64{{2, 3, 6}}, []float64{7, 0, 0}, 8 * eps},
		{"huge", [][]float64{{3e152, 0, 0}, {0, 4e152, 0}}, []float64{4e152, 3e152, 0}, 4e137},
		{"tiny", [][]float64{{3e-300, 0, 0}, {0, 4e-300, 0}}, []float64{4e-300, 3e-300, 0}, 4e-315},
		{"one far below the other", [][]float64{{1, 1e-310, 0}, {0, 1e-310, 0}}, []float64{1, 0, 0}, 1e-162},
		{"Laeuchli", [][]float64{{1, 1, 1}, {1e-9, 0, 0}, {0, 1e-9, 0}, {0, 0, 1e-9}}, []float64{math.Sqrt(3 + 1e-18), 1e-9, 1e-9}, 8 * eps},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := system{c.rows, make([]float64, len(c.rows))}
			tri := triangle(s)
			d := svd(&tri, 3, ones(3))
			near(t, "singular value", d.s, c.want, c.tol)
			checkSVD(t, s, d)
		})
	}
}

// Hilbert's matrix of 12: the smallest values drown in rounding, and the
// sweeps must still end with orthonormal vectors.
func TestSVDHilbert(t *testing.T) {
	var s system
	for i := range 12 {
		row := make([]float64, 12)
		for j := range row {
			row[j] = 1 / float64(i+j+1)
		}
		s.add(1, row...)
	}
	tri := triangle(s)
	checkSVD(t, s, svd(&tri, 12, ones(12)))
}
