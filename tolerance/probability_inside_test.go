package tolerance

import (
	"math"
	"testing"
)

// A bound on the work ends the cutting where it is reached, and what was added up
// till then is not thrown away.
func TestCutsAreBounded(t *testing.T) {
	d := disc{m: [2]float64{-0.67, 1.035}, s: [2]float64{1.0 / 3, 1.0 / 9}} // takes more than twenty
	a := arc{&d, 0, math.Pi / 2}
	whole, left := a.gauss(-math.Pi/2, 0), mostCuts
	want := a.refined(-math.Pi/2, 0, whole, &left)
	if left > mostCuts-10 {
		t.Fatalf("%d cuts are too few to stop between them", mostCuts-left)
	}
	few := 3
	if got := a.refined(-math.Pi/2, 0, whole, &few); few != 0 || math.Abs(got-want) > 1e-3 {
		t.Errorf("%d cuts left, %g instead of %g", few, got, want)
	}
}
