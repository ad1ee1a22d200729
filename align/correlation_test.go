package align_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// mixed is the correlation of four mixtures of so many independent numbers.
func mixed(t *rapid.T, numbers int) (r [4][4]float64) {
	var mix [4][]float64
	for i := range mix {
		sum := 0.0
		for range numbers {
			x := rapid.Float64Range(-1, 1).Draw(t, "share")
			mix[i] = append(mix[i], x)
			sum += x * x
		}
		if sum < 1e-3 {
			t.Skip("a mixture of nothing")
		}
	}
	dot := func(a, b []float64) (sum float64) {
		for k := range a {
			sum += a[k] * b[k]
		}
		return sum
	}
	for i := range r {
		for j := range r {
			r[i][j] = dot(mix[i], mix[j]) / math.Sqrt(dot(mix[i], mix[i])*dot(mix[j], mix[j]))
		}
		r[i][i] = 1
	}
	return r
}

// Numbers that are mixtures of others are possible together, however nearly the one
// follows from the rest, and with correlations written in nine digits. Of fewer than four
// others one does follow: a little more correlation is not possible.
func TestCorrelationsOfMixturesArePossible(t *testing.T) {
	u := line(0.01, 1e-5, 0.01, 1e-5)
	rapid.Check(t, func(t *rapid.T) {
		numbers := rapid.IntRange(1, 4).Draw(t, "numbers")
		r := mixed(t, numbers)
		if _, err := align.NewCovariance(align.Stated, u, r); err != nil {
			t.Errorf("%v: %v", r, err)
		}
		short, more := r, r
		for i := range r {
			for j := range r {
				short[i][j] = math.Round(r[i][j]*1e9) / 1e9
				if i != j {
					more[i][j] /= 1 - 1e-6
				}
			}
		}
		if _, err := align.NewCovariance(align.Stated, u, short); err != nil {
			t.Errorf("in nine digits, %v: %v", short, err)
		}
		if _, err := align.NewCovariance(align.Stated, u, more); numbers < 4 {
			checkFault(t, err, units.Conflict, "/correlation")
		}
	})
}

// As it came out of a mean of two estimates: two numbers that all but exclude one
// another, and a fourth that follows from three. Its least eigenvalue is -5e-17.
func TestCorrelationThatIsAllButSingular(t *testing.T) {
	r := [4][4]float64{
		{1, 0.24861536517641253, -0.24624877532131215, 0.5186305136342941},
		{0.24861536517641253, 1, -0.9999970042684027, 0.08636327523442182},
		{-0.24624877532131215, -0.9999970042684027, 1, -0.08524561376585515},
		{0.5186305136342941, 0.08636327523442182, -0.08524561376585515, 1},
	}
	if _, err := align.NewCovariance(align.Stated, line(0.01, 1e-5, 0.01, 1e-5), r); err != nil {
		t.Error(err)
	}
}
