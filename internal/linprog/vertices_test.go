package linprog

import (
	"math"
	"math/rand/v2"
	"testing"
)

// An independent reference for programs in small whole numbers: the definition, as
// far as it can be. It goes through all points where as many sides as there are
// variables hold with equality, keeps those that meet all sides, and takes the
// cheapest; in whole numbers (Cramer's rule), so that nothing is rounded.

// box stands in for infinite bounds of variables. Corners of programs this small are
// far nearer: by Cramer's rule at most 4 * 6 * 2^3 * 20 for four variables.
const box = 5000

// side is a . x >= b.
type side struct {
	a []int64
	b int64
}

func sides(p Program) (all []side) {
	put := func(a []float64, lower, upper float64) {
		plus, minus := make([]int64, len(a)), make([]int64, len(a))
		for j, x := range a {
			plus[j], minus[j] = int64(x), -int64(x)
		}
		if !math.IsInf(lower, 0) {
			all = append(all, side{plus, int64(lower)})
		}
		if !math.IsInf(upper, 0) {
			all = append(all, side{minus, -int64(upper)})
		}
	}
	for _, r := range p.Rows {
		put(r.Coefficients, r.Lower, r.Upper)
	}
	for j := range p.Cost {
		unit := make([]float64, len(p.Cost))
		unit[j] = 1
		put(unit, max(p.Lower[j], -box), min(p.Upper[j], box))
	}
	return all
}

// cheapestCorner returns the cost of the best corner; false if there is none.
func cheapestCorner(p Program) (cost float64, found bool) {
	all, chosen := sides(p), make([]side, 0, len(p.Cost))
	cost = inf
	var choose func(from int)
	choose = func(from int) {
		if len(chosen) == len(p.Cost) {
			if x, d := meet(chosen); d > 0 && allHold(all, x, d) {
				cost, found = min(cost, costAt(p.Cost, x, d)), true
			}
			return
		}
		for k := from; k < len(all); k++ {
			chosen = append(chosen, all[k])
			choose(k + 1)
			chosen = chosen[:len(chosen)-1]
		}
	}
	choose(0)
	return cost, found
}

// meet returns where the sides hold with equality, as x/d with d > 0; d = 0 if that
// is no point.
func meet(chosen []side) (x []int64, d int64) {
	m := make([][]int64, len(chosen))
	for i, s := range chosen {
		m[i] = s.a
	}
	if d = determinant(m); d == 0 {
		return nil, 0
	}
	sign := int64(1)
	if d < 0 {
		sign = -1
	}
	x = make([]int64, len(chosen))
	for j := range x {
		for i, s := range chosen {
			m[i] = append([]int64(nil), s.a...)
			m[i][j] = s.b
		}
		x[j] = sign * determinant(m)
	}
	return x, sign * d
}

func determinant(m [][]int64) int64 {
	if len(m) == 0 {
		return 1
	}
	sum, sign := int64(0), int64(1)
	for i, row := range m {
		if row[0] != 0 {
			var minor [][]int64
			for k, other := range m {
				if k != i {
					minor = append(minor, other[1:])
				}
			}
			sum += sign * row[0] * determinant(minor)
		}
		sign = -sign
	}
	return sum
}

func allHold(all []side, x []int64, d int64) bool {
	for _, s := range all {
		sum := int64(0)
		for j, a := range s.a {
			sum += a * x[j]
		}
		if sum < s.b*d {
			return false
		}
	}
	return true
}

func costAt(cost []float64, x []int64, d int64) float64 {
	sum := int64(0)
	for j, c := range cost {
		sum += int64(c) * x[j]
	}
	return float64(sum) / float64(d)
}

func TestAllCorners(t *testing.T) {
	count := 3000
	if testing.Short() {
		count = 300
	}
	var optima, none int
	for k := range count {
		r := rand.New(rand.NewPCG(uint64(k), 21))
		p := draw(r, []func(*rand.Rand) float64{signs, wholes(2)}[k%2], 4, 4)
		s := solver(t, p)
		if k%3 == 0 {
			s.patience = -1 // least index from the start
		}
		got := s.Solve()
		want, found := cheapestCorner(p)
		switch {
		case found && (got.Status != Optimal || math.Abs(got.Objective-want) > 1e-9*(1+math.Abs(want))):
			t.Errorf("%d: %v %v, but the best corner costs %v", k, got.Status, got.Objective, want)
		case !found && got.Status != Infeasible:
			t.Errorf("%d: %v, but there is no corner", k, got.Status)
		case found:
			optima++
		default:
			none++
		}
	}
	if optima < count/2 || none < count/10 {
		t.Errorf("%d with optimum, %d without: too few of one kind", optima, none)
	}
}

// fataler is a test, or one case of a property.
type fataler interface {
	Helper()
	Fatal(...any)
}

func solver(t fataler, p Program) *Solver {
	t.Helper()
	s, err := New(p)
	if err != nil {
		t.Fatal(err)
	}
	return s
}
