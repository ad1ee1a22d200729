package align_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

func mustResiduals(tb fataler, sets []align.Set, f align.Fitted) []align.Residual {
	tb.Helper()
	list, err := align.Residuals(nil, sets, f)
	if err != nil {
		tb.Fatalf("Residuals: %v", err)
	}
	return list
}

// drawScattered draws sets with readings that scatter, weighted or not.
func drawScattered(t *rapid.T) []align.Set {
	sets := noisy(t, everyKind)
	if !rapid.Bool().Draw(t, "stated") {
		return sets
	}
	return each(sets, func(s *align.Set) {
		for i := range s.Readings {
			s.Readings[i].U = length(rapid.Float64Range(0.002, 0.02).Draw(t, "u"))
		}
	})
}

// Value, and order: the reading less a, b and the zero of the set fitted, where
// the zero is the weighted mean of what is left. So within each set the
// weighted residuals sum to nothing.
func TestResidualsAreReadingLessFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := drawScattered(t)
		f := mustFit(t, sets...)
		list := mustResiduals(t, sets, f)
		i, squares := 0, 0.0
		for n, s := range sets {
			left, mean, weight := make([]float64, len(s.Readings)), 0.0, 0.0
			for k, r := range s.Readings {
				left[k] = inMM(r.Value) - lawOf(s, f.Value, r.At)
				w := weightOf(s, r)
				mean, weight = mean+w*left[k], weight+w
			}
			for k, r := range s.Readings {
				got := list[i]
				if got.Set != n || got.Reading != k {
					t.Fatalf("residual %d is of set %d, reading %d, want %d and %d", i, got.Set, got.Reading, n, k)
				}
				near(t, "value", inMM(got.Value), left[k]-mean/weight, 1e-13)
				squares += weightOf(s, r) * inMM(got.Value) * inMM(got.Value)
				i++
			}
		}
		if i != len(list) {
			t.Errorf("%d residuals for %d readings", len(list), i)
		}
		if f.DegreesOfFreedom > 0 && f.Cov.Basis == align.Scatter {
			near(t, "scatter", inMM(f.Scatter), math.Sqrt(squares/float64(f.DegreesOfFreedom)), 1e-9*inMM(f.Scatter))
		}
	})
}

// lawOf is what the dial would show of c, up to its zero, in millimetres.
func lawOf(s align.Set, c align.Centreline, at units.Clock) float64 {
	sin, cos := direction(s.View, at)
	a, b := coefficients(s.Probe)
	p := plain(c)
	return (a*p[0]+b*p[1])*sin + (a*p[2]+b*p[3])*cos + droopSign(s.Probe.Kind)*inMM(s.Sag)*cos
}

func weightOf(s align.Set, r align.Reading) float64 {
	if u := stated(s, r); u != 0 {
		return 1 / (inMM(u) * inMM(u))
	}
	return 1
}

// Leverage by brute force: one reading is moved by a tenth of a millimetre, all
// is fitted again, and its residual says how far its fitted value went with it.
// The fit is linear, so the size of the step does not matter.
func TestLeverageByRefit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := drawScattered(t)
		f := mustFit(t, sets...)
		list := mustResiduals(t, sets, f)
		which := rapid.IntRange(0, len(list)-1).Draw(t, "reading")
		const step = 0.1
		before := list[which]
		moved := each(sets, func(*align.Set) {})
		moved[before.Set].Readings[before.Reading].Value += length(step)
		after := mustResiduals(t, moved, mustFit(t, moved...))[which]
		share := 1 - inMM(after.Value-before.Value)/step
		near(t, "leverage", before.Leverage, share, 1e-12*f.Condition*f.Condition)
	})
}

// The leverages sum to the number of unknowns: four, and one zero for each set.
func TestLeveragesSumToTheUnknowns(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := drawScattered(t)
		f := mustFit(t, sets...)
		sum := 0.0
		for _, r := range mustResiduals(t, sets, f) {
			if r.Leverage < 0 || r.Leverage > 1+1e-9 {
				t.Errorf("leverage %v, want 0 to 1", r.Leverage)
			}
			sum += r.Leverage
		}
		near(t, "sum", sum, float64(4+len(sets)), 1e-12*f.Condition*f.Condition)
	})
}

// Standardised: over the reading's own deviation times sqrt(1 - leverage), with
// the uncertainty stated or else the scatter.
func TestResidualsStandardised(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := drawScattered(t)
		f := mustFit(t, sets...)
		for _, r := range mustResiduals(t, sets, f) {
			if r.Leverage > 1-1e-6 {
				continue // the reading alone decides: what is left is rounding
			}
			deviation := inMM(f.Scatter)
			if u := stated(sets[r.Set], sets[r.Set].Readings[r.Reading]); u != 0 {
				deviation = inMM(u)
			}
			want := 0.0
			if deviation != 0 {
				want = inMM(r.Value) / (deviation * math.Sqrt(1-r.Leverage))
			}
			near(t, "standardised", r.Standardised, want, 1e-9*(1+math.Abs(want)))
		}
	})
}

// Four readings at the quarters: each leverage is 3/4, and the miss of the
// validity rule shows as a quarter of it with alternate signs.
func TestResidualsAtTheQuarters(t *testing.T) {
	sets := []align.Set{
		{Probe: reverse()[0].Probe, Readings: at(mm, quarters, 0, 0.10, 0.30, 0.24)}, // 12 + 6 - 3 - 9 = -0.04
		{Probe: reverse()[1].Probe, Readings: at(mm, quarters, 0, -0.2, -0.3, -0.12)},
	}
	f := mustFit(t, sets...)
	for i, r := range mustResiduals(t, sets, f)[:4] {
		near(t, "value", inMM(r.Value), -0.01*float64(1-2*(i%2)), 1e-15)
		near(t, "leverage", r.Leverage, 0.75, 1e-14)
		near(t, "standardised", r.Standardised, inMM(r.Value)/inMM(f.Scatter)*2, 1e-12)
	}
}

// Three readings on three unknowns decide alone, each for itself.
func TestResidualsWithoutAnyLeftOver(t *testing.T) {
	sets := read(t, caseA, reverse(), 0, 90, 180)
	for _, stated := range []units.Length{0, 5 * um} {
		sets := state(sets, stated)
		for _, r := range mustResiduals(t, sets, mustFit(t, sets...)) {
			near(t, "value", inMM(r.Value), 0, 1e-15)
			near(t, "leverage", r.Leverage, 1, 1e-14)
			if r.Standardised != 0 {
				t.Errorf("standardised %v, want zero where the reading alone decides", r.Standardised)
			}
		}
	}
}

// What stands in dst stays, and a refusal leaves it as it was.
func TestResidualsAppend(t *testing.T) {
	first := align.Residual{Set: 7, Reading: 8, Value: 9}
	sets := read(t, caseA, reverse(), quarters...)
	list, err := align.Residuals([]align.Residual{first}, sets, mustFit(t, sets...))
	if err != nil || len(list) != 9 || list[0] != first {
		t.Errorf("got %d residuals, the first %+v, %v; want the one given and eight", len(list), list[0], err)
	}
	for _, bad := range [][]align.Set{nil, sets[:1]} {
		list, err = align.Residuals([]align.Residual{first}, bad, align.Fitted{})
		if err == nil || !slices.Equal(list, []align.Residual{first}) {
			t.Errorf("got %v, %v; want what was given and a refusal", list, err)
		}
	}
}
