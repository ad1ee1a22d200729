package rigid_test

import (
	"math"
	"testing"

	"example.org/collinear/internal/rigid"
	"github.com/google/go-cmp/cmp"
)

func TestNoiseIsDeterministic(t *testing.T) {
	readings := []float64{1, 2, 3}
	first := rigid.Noise(7, 0.01, readings)
	if diff := cmp.Diff(first, rigid.Noise(7, 0.01, readings)); diff != "" {
		t.Errorf("same seed, other noise:\n%s", diff)
	}
	if cmp.Equal(first, rigid.Noise(8, 0.01, readings)) {
		t.Error("another seed gives the same noise")
	}
	if diff := cmp.Diff(readings, []float64{1, 2, 3}); diff != "" {
		t.Errorf("the readings were changed:\n%s", diff)
	}
	if diff := cmp.Diff(readings, rigid.Noise(7, 0, readings)); diff != "" {
		t.Errorf("no sigma, but noise:\n%s", diff)
	}
}

// The mean of n normal numbers deviates by sigma/sqrt n, their standard
// deviation by sigma/sqrt(2n) and their kurtosis by sqrt(24/n): five times that
// is allowed. A rectangular distribution would have a kurtosis of 1.8.
func TestNoiseIsNormal(t *testing.T) {
	const n, sigma = 100_000, 0.005
	noise := rigid.Noise(1, sigma, make([]float64, n))
	var sum, squares, fourths float64
	for _, e := range noise {
		sum += e / sigma
		squares += math.Pow(e/sigma, 2)
		fourths += math.Pow(e/sigma, 4)
	}
	checkNear(t, "mean", sum/n, 0, 5/math.Sqrt(n))
	checkNear(t, "standard deviation", math.Sqrt(squares/n), 1, 5/math.Sqrt(2*n))
	checkNear(t, "kurtosis", (fourths/n)/math.Pow(squares/n, 2), 3, 5*math.Sqrt(24.0/n))
}
