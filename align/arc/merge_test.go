package arc_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/internal/rigid"
	"example.org/collinear/units"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

func mustMerge(tb fataler, a, b align.Estimate) align.Estimate {
	tb.Helper()
	m, c, err := arc.Merge(a, b)
	if err != nil {
		tb.Fatalf("Merge: %v", err)
	}
	if want := mustCompare(tb, a, b); c.Chi2 != want.Chi2 || c.P != want.P {
		tb.Errorf("agreement %v, Compare has %v", c, want)
	}
	return m
}

// Two halves of the readings, each fitted by itself and merged, are all readings
// fitted together: where uncertainties are stated and nothing is shared.
func TestMergeIsTheFitOfAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		half := func(name string, middle units.Clock) []align.Set {
			u := units.Length(rapid.Float64Range(1000, 9000).Draw(t, name))
			sets := sensorPair(u, within(5, middle, 200)...)
			sets[0].U.Reading *= 2
			sets = filled(t, caseA, sets)
			for i := range sets {
				for j := range sets[i].Readings {
					sets[i].Readings[j].Value += units.Length(rapid.Float64Range(-9000, 9000).Draw(t, "error"))
				}
			}
			return sets
		}
		first, second := half("first", 30), half("second", 170)
		a, b := mustFit(t, first...), mustFit(t, second...)
		all := mustFit(t, append(first, second...)...)
		m := mustMerge(t, a.Estimate, b.Estimate)
		nearLine(t, "merged", m.Value, all.Value, 1e-4)
		nearCov(t, "merged", m.Cov, all.Cov, 1e-9)
	})
}

// The mean against an inverse without rounding: a - V_a (V_a + V_b)^-1 d.
func TestMergeAgainstRationals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawEstimate(t, "a"), drawEstimate(t, "b")
		_, x := rational(a, b)
		u, r, want := plain(a.Cov.Standard()), a.Cov.Correlation(), plain(a.Value)
		for i := range want {
			for j := range x {
				f, _ := x[j].Float64()
				want[i] -= u[i] * u[j] * r[i][j] * f
			}
		}
		nearLine(t, "mean", mustMerge(t, a, b).Value, line(want[0], want[1], want[2], want[3]), 1e-6)
	})
}

// By hand, numbers that are independent: weights 1/u^2, and an exact number wins.
func TestMergeByHand(t *testing.T) {
	a := stated(t, line(0.10, 0.1e-3, 0.2, 0), line(0.03, 1e-5, 0, 1e-5))
	b := stated(t, line(0.20, 0.3e-3, 0.3, 0), line(0.04, 1e-5, 0.01, 0))
	m := mustMerge(t, a, b)
	nearLine(t, "mean", m.Value, line(0.10+0.1*9/25, 0.2e-3, 0.2, 0), 1e-6)
	nearLine(t, "uncertainty", m.Cov.Standard(), line(0.024, 1e-5/math.Sqrt2, 0, 0), 1e-6)
}

// Symmetric; of two alike it is the same, known better by the root of two; never
// known worse than either; the same at any scale and from the other end; no bias.
func TestMergeProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := drawEstimate(t, "a"), drawEstimate(t, "b")
		m, back := mustMerge(t, a, b), mustMerge(t, b, a)
		nearLine(t, "exchanged", back.Value, m.Value, 1e-6)
		nearCov(t, "exchanged", back.Cov, m.Cov, 1e-9)

		same := mustMerge(t, a, a)
		nearLine(t, "alike", same.Value, a.Value, 0)
		nearCov(t, "alike", same.Cov, a.Times(math.Sqrt(0.5)).Cov, 1e-9*lost(t, a))

		for _, x := range []units.Length{-300 * mm, 0, 500 * mm} {
			got, ofA, ofB := m.Cov.At(x), a.Cov.At(x), b.Cov.At(x)
			if least := min(ofA.Vertical, ofB.Vertical); got.Vertical > least*(1+1e-9) {
				t.Errorf("at %v known to %v, one alone to %v", x, got.Vertical, least)
			}
		}
		k := rapid.SampledFrom([]float64{1e-3, -1, 1e4}).Draw(t, "k")
		scaled := mustMerge(t, a.Times(k), b.Times(k))
		nearLine(t, "scaled", scaled.Value, m.Value.Times(k), 1e-6*max(1, math.Abs(k)))
		nearCov(t, "scaled", scaled.Cov, m.Times(k).Cov, 1e-9)
	})
}

// lost is by how much the mean of an estimate with itself is worse than usual: as the
// inverse of its covariance is, where that is close to singular.
func lost(tb fataler, e align.Estimate) float64 {
	tb.Helper()
	correlation := mat.NewSymDense(4, nil)
	for i, row := range e.Cov.Correlation() {
		for j := range i + 1 {
			correlation.SetSym(i, j, row[j])
		}
	}
	var eigen mat.EigenSym
	if !eigen.Factorize(correlation, false) {
		tb.Fatalf("no eigenvalues of %v", mat.Formatted(correlation))
	}
	return max(1, 1e-4/max(eigen.Values(nil)[0], 1e-14))
}

func TestMergeExact(t *testing.T) {
	known := stated(t, caseA, line(0.01, 1e-5, 0.01, 1e-5))
	target := line(0.3, 0, 0, 0)
	for _, row := range []struct {
		name string
		a, b align.Estimate
	}{
		{"the first", align.Exact(target), known},
		{"the second", known, align.Exact(target)},
		{"both", align.Exact(target), align.Exact(target)},
		{"stated as zero", stated(t, target, align.Centreline{}), known},
	} {
		m := mustMerge(t, row.a, row.b)
		if m.Value != target || m.Cov.Standard() != (align.Centreline{}) {
			t.Errorf("%s: %v, %v", row.name, m.Value, m.Cov.Standard())
		}
	}
	if m := mustMerge(t, align.Estimate{}, align.Estimate{}); m.Value != (align.Centreline{}) || m.Cov.Basis != align.Declared {
		t.Errorf("zero values: %v", m)
	}
	_, _, err := arc.Merge(align.Exact(target), align.Exact(caseA))
	checkFault(t, err, units.Conflict, "/b/value")
}

func TestMergeRefusesUnknown(t *testing.T) {
	unknown := align.Estimate{Cov: align.Covariance{Basis: align.Unknown}}
	known := stated(t, caseA, line(0.01, 1e-5, 0.01, 1e-5))
	_, _, err := arc.Merge(unknown, known)
	checkFault(t, err, units.Unseen, "/a/cov/basis")
	_, _, err = arc.Merge(align.Exact(caseA), unknown)
	checkFault(t, err, units.Unseen, "/b/cov/basis")
	mustMerge(t, known, known)
}

// An offset known to nothing at all that differs by a kilometre, and a slope that
// goes with it: the mean is beyond all numbers. With offsets that are the same it is
// not.
func TestMergeRefusesWhatCannotBeReckonedWith(t *testing.T) {
	apart := func(offset, rho float64) align.Estimate {
		r := alone
		r[0][1], r[1][0] = rho, rho
		c, err := align.NewCovariance(align.Stated, line(1e-100, 1, 1, 1), r)
		if err != nil {
			t.Fatal(err)
		}
		return align.Estimate{Value: line(offset, 0, 0, 0), Cov: c}
	}
	_, _, err := arc.Merge(apart(9e8, 0.5), apart(-9e8, -0.5))
	checkFault(t, err, units.OutOfRange, "/b")
	mustMerge(t, apart(9e8, 0.5), apart(9e8, -0.5))
}

// Bases and degrees of freedom: the weaker of both, the fewer.
func TestMergeBasis(t *testing.T) {
	u := line(0.01, 1e-5, 0.01, 1e-5)
	scatter := func(dof float64) align.Estimate {
		e := stated(t, caseA, u)
		c, err := align.NewCovariance(align.Scatter, u, e.Cov.Correlation())
		if err != nil {
			t.Fatal(err)
		}
		c.DoF = dof
		e.Cov = c
		return e
	}
	first := [4]float64{1, 0, 0, 0}
	for _, row := range []struct {
		name           string
		a, b           align.Estimate
		basis          align.Basis
		dof, effective float64
	}{
		{"both stated", stated(t, caseA, u), stated(t, caseA, u), align.Stated, 0, 0},
		{"both scatter", scatter(3), scatter(8), align.Scatter, 3, 3},
		{"one of them", stated(t, caseA, u), scatter(8), align.Scatter, 8, 32},
		{"the other", scatter(3), stated(t, caseA, u), align.Scatter, 3, 12},
	} {
		m := mustMerge(t, row.a, row.b)
		if m.Cov.Basis != row.basis || m.Cov.DoF != row.dof {
			t.Errorf("%s: %v with %v", row.name, m.Cov.Basis, m.Cov.DoF)
		}
		near(t, row.name, m.Cov.EffectiveDoF(first), row.effective, 1e-9*row.effective)
	}
}

// scattered fits the readings of two sensors at n clock positions, with noise and no
// stated uncertainty.
func scattered(t *testing.T, seed uint64, n int, sigma float64, statedU units.Length) align.Estimate {
	t.Helper()
	sets := filled(t, caseA, sensorPair(statedU, within(n, 0, 360-360/units.Clock(n))...))
	for i := range sets {
		noise := rigid.Noise(2*seed+uint64(i), sigma, make([]float64, n))
		for j := range noise {
			sets[i].Readings[j].Value += length(noise[j])
		}
	}
	return mustFit(t, sets...).Estimate
}

// measured draws a measurement of case A from a seed.
type measured func(t *testing.T, seed uint64) align.Estimate

// fits returns fits of n readings of each of two sensors: 2n - 6 degrees of freedom.
func fits(n int, sigma float64) measured {
	return func(t *testing.T, seed uint64) align.Estimate { return scattered(t, seed, n, sigma, 0) }
}

// knowing returns the same with the uncertainty stated as it is.
func knowing(n int, sigma float64) measured {
	return func(t *testing.T, seed uint64) align.Estimate { return scattered(t, seed, n, sigma, length(sigma)) }
}

func exactly(*testing.T, uint64) align.Estimate { return align.Exact(caseA) }

// How honest the probabilities are at few degrees of freedom, over 2000 simulated
// pairs of measurements of one centreline with fixed seeds: how often P falls below
// 0.05, and how often the interval of 95 % of the merged offset misses the true one.
// Of one scatter against what is exact P is exact: 5 %. The rest is approximate, and
// these are its figures as measured over 4000 pairs, per cent; a share of 5 % of 2000
// has a standard deviation of 0.5 %, and three times that is left.
func TestHonestyOfSmallNumbers(t *testing.T) {
	const pairs, left = 2000, 1.5
	for _, row := range []struct {
		name           string
		a, b           measured
		alarms, misses float64
	}{
		{"exact, and a scatter of 4", exactly, fits(5, 2e-3), 5, 0},
		{"stated, and a scatter of 2", knowing(5, 2e-3), fits(4, 2e-3), 8, 9.2},
		{"scatters of 2", fits(4, 2e-3), fits(4, 2e-3), 3.4, 8.7},
		{"scatters of 2 and 14", fits(4, 2e-3), fits(10, 2e-3), 9.2, 4.2},
		{"scatters of 14", fits(10, 2e-3), fits(10, 2e-3), 4.8, 6.3},
	} {
		alarms, misses := 0, 0
		for s := range uint64(pairs) {
			a, b := row.a(t, 2*s), row.b(t, 2*s+1)
			m, c, err := arc.Merge(a, b)
			if err != nil {
				t.Fatal(err)
			}
			if c.P < 0.05 {
				alarms++
			}
			half, err := m.Expanded(0.95)
			if err != nil {
				t.Fatal(err)
			}
			if off := m.Value.Vertical.Offset - caseA.Vertical.Offset; max(off, -off) > half.Vertical.Offset {
				misses++
			}
		}
		near(t, row.name+": alarms", 100*float64(alarms)/pairs, row.alarms, left)
		near(t, row.name+": misses", 100*float64(misses)/pairs, row.misses, left)
	}
}

// Whatever comes in, nothing panics, faults say where they are, and what is answered
// can be reckoned with and written down.
func FuzzMerge(f *testing.F) {
	f.Add(uint8(1), uint8(1), 1e5, 2e5, 1e4, 2e4, 1e-5, 0.5, -0.5)
	f.Add(uint8(2), uint8(2), 1e5, 1e5, 1e4, 0.0, 1e-5, 1.0, 1.0)
	f.Add(uint8(2), uint8(2), 1e5, 1e5, 9945.0, 56.0, 1e-5, 1.0, 1.0/27)            // of a number that is hardly uncertain next to others
	f.Add(uint8(1), uint8(1), 9.99e14, -9.99e14, 1e-150, 1.25e14, 23.0, 0.25, -6.0) // of a mean beyond all numbers
	f.Add(uint8(0), uint8(3), 1e15, -1e15, 1e-150, 1e15, 1e-160, 0.999999999, -1.0)
	f.Fuzz(func(t *testing.T, basisA, basisB uint8, va, vb, ua, ub, slope, ra, rb float64) {
		estimate := func(basis uint8, v, u, r float64) align.Estimate {
			size := align.Centreline{
				Horizontal: align.Line{Offset: units.Length(u), Slope: units.Slope(slope)},
				Vertical:   align.Line{Offset: units.Length(slope), Slope: units.Slope(u)},
			}
			correlation := alone
			correlation[0][1], correlation[1][0] = r, r
			c, err := align.NewCovariance(align.Basis(basis), size, correlation)
			if err != nil {
				c = align.Covariance{Basis: align.Basis(basis)}
			}
			if c.Basis == align.Scatter {
				c.DoF = max(0, v)
			}
			return align.Estimate{Value: line(v*1e-6, v*1e-9, -v*1e-6, slope), Cov: c}
		}
		a, b := estimate(basisA, va, ua, ra), estimate(basisB, vb, ub, rb)
		m, c, err := arc.Merge(a, b)
		below(t, err, "/a", "/b")
		if err != nil {
			return
		}
		if err := m.Validate(); err != nil {
			t.Errorf("merged: %v", err)
		}
		if !(c.P >= 0 && c.P <= 1) || !(c.Chi2 >= 0) {
			t.Errorf("chi-square %v, probability %v", c.Chi2, c.P)
		}
		sameAfterJSON(t, c.P, 0)
		sameAfterJSON(t, c.Chi2, 0)
	})
}

func BenchmarkMerge(b *testing.B) {
	one := stated(b, caseA, line(0.01, 1e-5, 0.02, 2e-5))
	for b.Loop() {
		if _, _, err := arc.Merge(one, one); err != nil {
			b.Fatal(err)
		}
	}
}

// An uncertainty that is small beyond measuring, but sound, wins.
func TestMergeOfLeastUncertainties(t *testing.T) {
	r := alone
	r[2][3], r[3][2] = 1, 1
	u := align.Centreline{Vertical: align.Line{Offset: 1e-100, Slope: 3e-106}}
	c, err := align.NewCovariance(align.Stated, u, r)
	if err != nil {
		t.Fatal(err)
	}
	other := stated(t, line(0.12, 0.4e-3, 0, 0), line(0, 0, 0.001, 1e-6))
	if m, _, err := arc.Merge(other, align.Estimate{Value: caseA, Cov: c}); err != nil || m.Value != caseA {
		t.Errorf("%+v, %v", m, err)
	}
}
