package align

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/collinear/internal/lsq"
)

// Mean and variance of the gamma distribution of scale one are its shape. Of n draws
// the mean is off by sqrt(a/n), and the variance by about sqrt((2 a^2 + 6 a)/n).
func TestGammaHasItsMoments(t *testing.T) {
	const n = 50_000
	random := rand.New(rand.NewPCG(1, 41))
	for _, a := range []float64{0.5, 1, 1.5, 4, 30} {
		sum, squares := 0.0, 0.0
		for range n {
			x := gamma(random, a)
			sum += x
			squares += x * x
		}
		mean := sum / n
		variance := squares/n - mean*mean
		if off := math.Abs(mean - a); off > 4.5*math.Sqrt(a/n) {
			t.Errorf("shape %v: mean %v", a, mean)
		}
		if off := math.Abs(variance - a); off > 4.5*math.Sqrt((2*a*a+6*a)/n) {
			t.Errorf("shape %v: variance %v", a, variance)
		}
	}
}

// Three trials, 1, 2 and 6 more than the nominal 10, in two blocks: the mean is 3 more,
// and the variance (4 + 1 + 9)/2.
func TestMomentsOfFewTrials(t *testing.T) {
	c := gathered{trials: 3, blocks: []Block{
		{nominal: []float64{10}, sums: []float64{3}, squares: []float64{5}},
		{nominal: []float64{10}, sums: []float64{6}, squares: []float64{36}},
	}}
	if mean, variance := c.moments(0); mean != 13 || variance != 7 {
		t.Errorf("mean %v, variance %v", mean, variance)
	}
}

// The same seed gives the same numbers, from one version to the next.
func TestGammaKeepsItsStream(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 43))
	for i, want := range []float64{0.65257812933768533, 5.0932686140620627, 27.180141188600146, 0.65439527847546242, 3.387525618818731, 29.719930497588201} {
		shape := []float64{0.5, 4, 30}[i%3]
		if got := gamma(random, shape); math.Abs(got-want) > 1e-12*want {
			t.Errorf("draw %d, shape %v: %.17g, want %.17g", i, shape, got, want)
		}
	}
}

// The same of the covariance, in millimetres.
func TestCovarianceOfFewTrials(t *testing.T) {
	b := Block{job: &MonteCarlo{}, fitted: Fitted{}, sums: []float64{9, 0, 9, 0}}
	b.cross[offsetY][offsetY], b.cross[offsetY][offsetZ], b.cross[offsetZ][offsetY] = 41, 41, 41
	c := gathered{trials: 3, blocks: []Block{b}}
	got := c.covariance().v
	if want := mm(1) * mm(1) * 7; math.Abs(got[offsetY][offsetY]-want) > 1e-12*want || math.Abs(got[offsetY][offsetZ]-want) > 1e-12*want {
		t.Errorf("got %v, want %v", got, want)
	}
}

// Whether a trial sees is judged as a fit does it: two sensors of full turns 100 m from the
// coupling, closer and closer to each other, and a third one far away that sees heights alone.
func TestTrialsSeeWhatFitSees(t *testing.T) {
	saw := map[bool]int{}
	for _, apart := range []float64{1, 1e-2, 1e-4, 1e-6, 3e-7, 1e-8, 1e-10} {
		var trial system
		var seen law
		var work [four * (four + 1)]float64
		common := lsq.In(work[:], four)
		for _, at := range []struct{ x, sideways float64 }{{1e5, 1}, {1e5 + apart, 1}, {-1e5, 0}} {
			l := law{100, 100 * at.x}
			seen.addFullTurn(l, 2)
			for _, row := range [][four]float64{l.row(at.sideways, 0), l.row(0, 1)} {
				trial = append(trial, [...]float64{row[0], row[1], row[2], row[3], 0})
				common.Add(row[:], 0)
			}
		}
		var s solution
		want := s.see(&common, seen.fullTurn()) == nil
		r := trial.triangle()
		if got := r.sees(&seen); got != want {
			t.Errorf("%v mm apart, condition %.3g: %t", apart, s.condition, got)
		}
		saw[want]++
	}
	if saw[true] < 2 || saw[false] < 2 {
		t.Errorf("%v", saw)
	}
}

// Each of the four numbers by itself, so little seen that a fit refuses, and a little more.
func TestTrialsSeeEachNumber(t *testing.T) {
	var seen law
	seen.addFullTurn(law{1, 1}, 2)
	for k := range four {
		for _, least := range []float64{0.1, 10} {
			var r triangle
			for i := range r.rows {
				r.rows[i][0], r.pivot[i] = 1, 1
			}
			r.pivot[k] = math.Pow(least/limitCondition, 2)
			if got, want := r.sees(&seen), least > 1; got != want {
				t.Errorf("number %d, condition %.3g: %t", k, limitCondition/least, got)
			}
		}
	}
}
