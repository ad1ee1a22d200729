package nearest_test

import (
	"fmt"

	"example.org/collinear/internal/nearest"
)

// A cut is added after an answer, and the search goes on from there.
func ExampleSolver() {
	s := nearest.New(2)
	s.Add(nearest.Row{Coefficients: []float64{1, 1}, Least: 2}) // x + y >= 2
	p := s.Solve()
	fmt.Printf("%v: %.3f, multipliers %.3f\n", p.Status, p.X, p.Duals)

	s.Add(nearest.Row{Coefficients: []float64{1, 0}, Least: 1.5}) // x >= 1.5
	p = s.Solve()
	fmt.Printf("%v: %.3f, multipliers %.3f\n", p.Status, p.X, p.Duals)

	s.Add(nearest.Row{Coefficients: []float64{-1, 0}, Least: -1}) // x <= 1
	p = s.Solve()
	fmt.Printf("%v: rows times %.3f add up to 0 >= 0.5\n", p.Status, p.Duals)
	// Output:
	// found: [1.000 1.000], multipliers [1.000]
	// found: [1.500 0.500], multipliers [0.500 1.000]
	// empty: rows times [0.000 1.000 1.000] add up to 0 >= 0.5
}
