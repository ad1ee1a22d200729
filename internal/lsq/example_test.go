package lsq_test

import (
	"fmt"
	"math"

	"example.org/collinear/internal/lsq"
)

// A dial reads a constant and one sine over the turn. Nine readings, fitted one
// after the other in memory of fixed size.
func Example() {
	var work [12]float64
	fit := lsq.In(work[:], 3)
	readings := []float64{0.02, 0.15, 0.31, 0.40, 0.38, 0.25, 0.08, -0.03, -0.06}
	for i, reading := range readings {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / 9)
		fit.Add([]float64{1, sin, cos}, reading)
	}
	var x [3]float64
	var cov [9]float64
	fit.Solve(x[:])
	fit.Covariance(cov[:])
	s := math.Sqrt(fit.SumSquares() / float64(fit.Rows()-3))
	fmt.Printf("constant %.4f ± %.4f\n", x[0], s*math.Sqrt(cov[0]))
	fmt.Printf("sine     %.4f ± %.4f\n", x[1], s*math.Sqrt(cov[4]))
	fmt.Printf("cosine   %.4f ± %.4f\n", x[2], s*math.Sqrt(cov[8]))
	// Output:
	// constant 0.1667 ± 0.0029
	// sine     0.1759 ± 0.0041
	// cosine   -0.1543 ± 0.0041
}

// Two gauges measure the same slope, each from its own unknown zero. The zeros
// are dropped gauge by gauge with the first row of each.
func ExampleTriangle_Row() {
	slope := lsq.In(make([]float64, lsq.Size(1)), 1)
	for _, gauge := range [][]float64{{5, 7, 9}, {-1, 1.2}} {
		own := lsq.In(make([]float64, lsq.Size(2)), 2)
		for x, reading := range gauge {
			own.Add([]float64{1, float64(x)}, reading)
		}
		var row [2]float64
		rhs := own.Row(row[:], 1)
		slope.Add(row[1:], rhs)
	}
	var x [1]float64
	slope.Solve(x[:])
	fmt.Printf("%.2f\n", x[0])
	// Output:
	// 2.04
}

// Readings at 12 and 6 o'clock see a constant and a cosine, but no sine.
func ExampleTriangle_SVD() {
	fit := lsq.In(make([]float64, lsq.Size(3)), 3)
	fit.Add([]float64{1, 0, 1}, 0.10)
	fit.Add([]float64{1, 0, -1}, 0.30)
	var s [3]float64
	var v, work [9]float64
	fit.SVD([]float64{1, 1, 1}, s[:], v[:], work[:])
	fmt.Printf("values %.3f\n", s)
	fmt.Printf("unseen direction: constant %.0f, sine %.0f, cosine %.0f\n", v[2], v[5], v[8])
	// Output:
	// values [1.414 1.414 0.000]
	// unseen direction: constant 0, sine 1, cosine 0
}
