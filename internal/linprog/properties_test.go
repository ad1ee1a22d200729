package linprog

import (
	"math"
	"math/rand/v2"
	"reflect"
	"testing"

	"pgregory.net/rapid"
)

// drawn draws a program of any of the kinds.
func drawn(t *rapid.T) (Program, *rand.Rand) {
	m := rapid.SampledFrom(makers).Draw(t, "kind")
	r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 0))
	t.Log(m.name)
	return m.make(r), r
}

// same reports whether two results answer alike: the status, and the cost to what the
// tolerance lets it differ.
func same(a, b Solution, factor, size float64) bool {
	return a.Status == b.Status && math.Abs(a.Objective*factor-b.Objective) <= 1e-6*(size+math.Abs(b.Objective))
}

func TestLengthsScale(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, _ := drawn(t)
		by := rapid.SampledFrom([]float64{1e-6, 1e-3, 0.0254, 25.4, 1e3, 1e6}).Draw(t, "by")
		if a, b := solver(t, p).Solve(), solver(t, stretched(p, by)).Solve(); !same(a, b, by, by) {
			t.Errorf("%v %v, times %v: %v %v", a.Status, a.Objective, by, b.Status, b.Objective)
		}
	})
}

// Powers of two change no bit but the exponents. (A row without coefficients has no
// scale of its own.)
func TestPowersOfTwoScaleExactly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, r := drawn(t)
		q := stretched(p, 1024)
		for i := range q.Rows {
			if largestOf(q.Rows[i].Coefficients) == 0 {
				continue
			}
			q.Rows[i] = scaledRow(q.Rows[i], math.Ldexp(1, r.IntN(20)-10))
		}
		a, b := solver(t, p).Solve(), solver(t, q).Solve()
		if a.Status != b.Status || a.Objective*1024 != b.Objective || a.Bound*1024 != b.Bound || a.Pivots != b.Pivots {
			t.Errorf("%v %v (bound %v, %d pivots)\n%v %v (bound %v, %d pivots)", a.Status, a.Objective,
				a.Bound, a.Pivots, b.Status, b.Objective, b.Bound, b.Pivots)
		}
	})
}

func TestOrderOfRows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, r := drawn(t)
		a := solver(t, p).Solve()
		r.Shuffle(len(p.Rows), func(i, k int) { p.Rows[i], p.Rows[k] = p.Rows[k], p.Rows[i] })
		if b := solver(t, p).Solve(); !same(a, b, 1, 1) {
			t.Errorf("%v %v, reordered: %v %v", a.Status, a.Objective, b.Status, b.Objective)
		}
	})
}

// Rows that come one by one, with or without a Solve in between, lead to what they
// lead to together.
func TestCuts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, r := drawn(t)
		whole := solver(t, p).Solve()
		first := r.IntN(len(p.Rows) + 1)
		step := solver(t, Program{Cost: p.Cost, Lower: p.Lower, Upper: p.Upper, Rows: p.Rows[:first]})
		before := math.Inf(-1)
		for _, row := range p.Rows[first:] {
			if r.IntN(2) == 0 {
				if got := step.Solve(); got.Status == Optimal && got.Objective < before-1e-6*(1+math.Abs(before)) {
					t.Errorf("one more row made it cheaper: %v after %v", got.Objective, before)
				} else if got.Status == Optimal {
					before = got.Objective
				}
			}
			if err := step.Add(row); err != nil {
				t.Fatal(err)
			}
		}
		if got := step.Solve(); !same(whole, got, 1, 1) {
			t.Errorf("together %v %v, one by one %v %v", whole.Status, whole.Objective, got.Status, got.Objective)
		}
		if again := step.Solve(); !same(whole, again, 1, 1) || again.Pivots != 0 {
			t.Errorf("again: %v %v after %d pivots", again.Status, again.Objective, again.Pivots)
		}
	})
}

// No point that meets all conditions costs less than Bound (weak duality), and a
// program with such a point is not infeasible.
func TestWeakDuality(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, r := drawn(t)
		x := make([]float64, len(p.Cost))
		for j := range x {
			x[j] = max(p.Lower[j], min(p.Upper[j], normal(r)))
		}
		for i, row := range p.Rows { // rows that x does not meet give way
			at := dot(row.Coefficients, x)
			p.Rows[i].Lower, p.Rows[i].Upper = min(row.Lower, at), max(row.Upper, at)
		}
		got := solver(t, p).Solve()
		cost := dot(p.Cost, x)
		if got.Status != Optimal || got.Bound > cost+1e-8*(1+math.Abs(cost)) {
			t.Errorf("%v with bound %v, but %v costs %v", got.Status, got.Bound, x, cost)
		}
	})
}

// Bound and ColumnDuals follow from RowDuals and the program alone.
func TestBoundFollowsFromRowDuals(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, _ := drawn(t)
		got := solver(t, p).Solve()
		if got.Status != Optimal {
			return
		}
		sum, size := 0.0, 1.0
		take := func(m, lower, upper float64) {
			if m == 0 {
				return
			}
			bound := lower
			if m < 0 {
				bound = upper
			}
			if math.IsInf(bound, 0) && math.Abs(m) < 1e-8 {
				return
			}
			sum, size = sum+m*bound, size+math.Abs(m*bound)
		}
		rest := append([]float64(nil), p.Cost...)
		for i, row := range p.Rows {
			take(got.RowDuals[i], row.Lower, row.Upper)
			addTo(rest, -got.RowDuals[i], row.Coefficients)
		}
		for j, d := range got.ColumnDuals {
			if math.Abs(d-rest[j]) > 1e-7 {
				t.Errorf("reduced cost %d is %v, from the rows %v", j, d, rest[j])
			}
			take(d, p.Lower[j], p.Upper[j])
		}
		if !(math.Abs(sum-got.Bound) <= 1e-9*size) {
			t.Errorf("bound %v, from the multipliers %v", got.Bound, sum)
		}
	})
}

// RowDuals are what a row costs: with the bounds of a row moved by a little, the cost
// rises at least by that much times the multiplier.
func TestRowDualsAreSlopes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, r := drawn(t)
		got := solver(t, p).Solve()
		if got.Status != Optimal || len(p.Rows) == 0 {
			return
		}
		i, by := r.IntN(len(p.Rows)), normal(r)/8
		p.Rows[i].Lower += by
		p.Rows[i].Upper += by
		moved := solver(t, p).Solve()
		least := got.Objective + by*got.RowDuals[i]
		if moved.Status == Optimal && moved.Objective < least-1e-6*(1+math.Abs(least)) {
			t.Errorf("%v moved to %v, but its multiplier says at least %v", got.Objective, moved.Objective, least)
		}
	})
}

func TestSameBitsAgain(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, _ := drawn(t)
		if a, b := solver(t, p).Solve(), solver(t, p).Solve(); !reflect.DeepEqual(a, b) {
			t.Errorf("%+v\n%+v", a, b)
		}
	})
}
