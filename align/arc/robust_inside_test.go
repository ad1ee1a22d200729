package arc

import (
	"errors"
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// Weights and costs by hand: untouched to 2.5, a pull of 2.5 to 3.5, and from there in a
// straight line to nothing at 8.5. The cost is the area under the pull t times the weight:
// 2.5^2/2 and 2.5 for the part that is level make 5.625, the triangle of 5 by 2.5 the rest.
func TestHampelsPartsByHand(t *testing.T) {
	for _, row := range []struct{ t, huber, hampel, cost float64 }{
		{0, 1, 1, 0},
		{2, 1, 1, 2},
		{2.5, 1, 1, 3.125},
		{3, 2.5 / 3, 2.5 / 3, 4.375},
		{3.5, 2.5 / 3.5, 2.5 / 3.5, 5.625},
		{6, 2.5 / 6, 1.25 / 6, 11.875 - 2.5*1.25/2},
		{8.5, 2.5 / 8.5, 0, 11.875},
		{20, 0.125, 0, 11.875},
		{math.MaxFloat64, 0, 0, 11.875},
	} {
		for _, t0 := range []float64{row.t, -row.t} {
			got := [3]float64{huber(t0), hampel(t0), cost(t0)}
			for i, want := range []float64{row.huber, row.hampel, row.cost} {
				if math.Abs(got[i]-want) > 1e-14*max(1, want) {
					t.Errorf("%v off: weights and cost %v, want %+v", t0, got, row)
				}
			}
		}
	}
}

// A reading whose angle makes it twice as uncertain as it is weighted: 4 times the cost
// of one deviation, and 4.375 for one that is 3 off.
func TestCostsByHand(t *testing.T) {
	s := search{
		u: []units.Length{1000, 1000}, dev: []units.Length{2000, 1000},
		left: []align.Residual{{Value: 2000}, {Value: -3000}},
	}
	if got := s.costs(); math.Abs(got-6.375) > 1e-14 {
		t.Errorf("%v, want 4/2 + 4.375", got)
	}
}

// Less by more than rounding, which grows with the numbers.
func TestLess(t *testing.T) {
	inf := math.Inf(1)
	for _, row := range []struct {
		a, b float64
		want bool
	}{
		{1, 1, false}, {1, 1 + 1e-12, false}, {1, 1 + 1e-6, true}, {2, 1, false},
		{0, 1e-12, false}, {0, 1e-6, true}, {1e6, 1e6 + 1e-5, false}, {1e6, 1e6 + 1, true},
		{1, inf, true}, {inf, inf, false}, {inf, 1, false},
	} {
		if got := less(row.a, row.b); got != row.want {
			t.Errorf("%v less than %v: %t", row.a, row.b, got)
		}
	}
}

// twoSensors are two displacement sensors with n readings each over 150 degrees that show a
// misalignment and errors of a few micrometres.
func twoSensors(n int, u units.Length) []align.Set {
	var sets []align.Set
	for i, x := range []units.Length{-80e6, 120e6} {
		s := align.Set{Probe: align.Probe{Kind: align.Displacement, Station: x, Gain: 1}, U: align.Uncertainty{Reading: u}}
		for j := range n {
			at := units.Clock(150 * float64(j) / float64(n-1))
			sin, cos := at.SinCos()
			s.Readings = append(s.Readings, align.Reading{At: at, Value: units.Length(120e3*sin - 200e3*cos + float64(500*((7*i+5*j*j)%11)))})
		}
		sets = append(sets, s)
	}
	return sets
}

func newTestSearch(t *testing.T, sets []align.Set) *search {
	t.Helper()
	plain, err := align.Fit(sets...)
	if err != nil {
		t.Fatal(err)
	}
	return newSearch(plain, sets)
}

// Of few degrees of freedom the median of residuals is made by the fit itself: five make
// the scale twice that of very many (Rousseeuw and Leroy's factor by hand), which is
// 1.4826 times the least of the medians.
func TestScaleByHand(t *testing.T) {
	s := newTestSearch(t, twoSensors(9, 0))
	least := s.median(ones(18))
	for n := range 18 {
		weights := ones(18)
		weights[n] = faint
		least = min(least, s.median(weights))
	}
	for dof, factor := range map[int]float64{5: 2 * 1.4826, 10: 1.5 * 1.4826, 1e9: 1.4826} {
		if got, want := float64(s.scale(dof)), factor*least; math.Abs(got-want) > 1e-8*want || least < 100 {
			t.Errorf("%d degrees of freedom: %v, want %v", dof, got, want)
		}
	}
}

// Readings that agree but for rounding are taken to be good to a millionth of the largest,
// whichever sign they have.
func TestScaleOfRoundNumbers(t *testing.T) {
	for _, value := range []units.Length{400e3, -400e3} {
		sets := twoSensors(9, 0)
		for i := range sets {
			for j := range sets[i].Readings {
				sets[i].Readings[j].Value = value
			}
		}
		if got := newTestSearch(t, sets).scale(12); math.Abs(float64(got)-0.4) > 1e-12 {
			t.Errorf("all at %v: %v", value, got)
		}
	}
}

// Of more readings than are tried, those are that stick out most for their uncertainty,
// wherever they stand.
func TestStickingOut(t *testing.T) {
	sets := twoSensors(50, 5000)
	for j := 45; j < 50; j++ {
		sets[1].Readings[j].Value += 40e3
	}
	for j := range 20 {
		sets[0].Readings[j].U = 20e3
	}
	s := newTestSearch(t, sets)
	list := s.sticking(ones(100))
	if len(list) != mostTried || !slices.IsSorted(list) || !slices.Contains(list, 95) || !slices.Contains(list, 99) {
		t.Errorf("%v", list)
	}
	off := func(n int) float64 { return math.Abs(float64(s.left[n].Value / s.dev[n])) }
	least := math.Inf(1)
	for _, n := range list {
		least = min(least, off(n))
	}
	for n := range 100 {
		if !slices.Contains(list, n) && off(n) > least {
			t.Errorf("reading %d is %v off and left out, one of %v is not", n, off(n), least)
		}
	}
}

// Readings that see no slope settle on nothing, have no scale, and none can be judged.
func TestSearchOfReadingsThatSeeTooLittle(t *testing.T) {
	s := newTestSearch(t, twoSensors(9, 0))
	s.sets[1].Probe.Station = s.sets[0].Probe.Station
	if got := s.settle(ones(18), hampel); !math.IsInf(got.sum, 1) || got.settled {
		t.Errorf("settles on %+v", got)
	}
	if got := s.scale(12); got != 0 {
		t.Errorf("scale %v", got)
	}
	s.tellable()
	if slices.Contains(s.judge, true) {
		t.Errorf("judged: %v", s.judge)
	}
}

// What is left has to see all four numbers, and its scatter has to be one.
func TestWeightedRefuses(t *testing.T) {
	sets := twoSensors(9, 1000)
	s := newTestSearch(t, sets)
	var f align.Fitted
	gone := ones(18)
	clear(gone[:9])
	if err := s.weighted(&f, sets, gone); !errors.Is(err, units.Unseen) {
		t.Errorf("one sensor alone: %v", err)
	}
	if _, err := rebased(sets, 1e30, 5); !errors.Is(err, units.OutOfRange) {
		t.Errorf("a scatter of 1e27 um: %v", err)
	}
	f.Scatter = -1
	var r Robust
	r.Fitted = f
	if err := s.report(&r, sets, ones(18)); !errors.Is(err, units.OutOfRange) {
		t.Errorf("a scatter below zero: %v", err)
	}
}

// Weights that come to less than one reading more than there are unknowns say nothing of
// a scatter: 18 times 0.38 is 6.84, and six unknowns leave 0.84.
func TestScatterOfTooLittleWeight(t *testing.T) {
	s := newTestSearch(t, twoSensors(9, 0))
	weights := make([]float64, 18)
	for unknown, weight := range map[bool]float64{true: 0.38, false: 0.4} {
		for n := range weights {
			weights[n] = weight
		}
		kept := s.kept(s.sets, weights, true)
		f, err := align.Fit(kept...)
		if err != nil {
			t.Fatal(err)
		}
		if err := scattered(&f, kept, weights); err != nil {
			t.Fatal(err)
		}
		if (f.Cov.Basis == align.Unknown) != unknown || (f.Scatter == 0) != unknown {
			t.Errorf("weights of %v: %+v", weight, f)
		}
	}
}

// Two readings at the ends of an arc that err alike hold the fit between them: it takes both
// to see it, and they are found.
func TestBothEndsAreFound(t *testing.T) {
	sets := twoSensors(9, 5000)
	for _, j := range []int{0, 8} {
		sets[0].Readings[j].Value += 100e3
	}
	best := newTestSearch(t, sets).best()
	for n, w := range best.weights {
		if gone := n == 0 || n == 8; gone != (w == 0) {
			t.Errorf("reading %d: weight %v", n, w)
		}
	}
}
