package nearest_test

import (
	"fmt"
	"math"
	"math/big"
	"testing"

	"example.org/collinear/internal/nearest"
)

// bruteForce tries every set of rows as the active ones, in rational numbers. A
// set whose equations have a point that keeps all rows, with multipliers of the
// right signs, gives the nearest point; if none does, no point keeps all rows,
// for a nearest point always has such a set, made of independent rows.
func bruteForce(p instance) (x []*big.Rat) {
	for set := range 1 << len(p.rows) {
		var rows []nearest.Row
		for i, r := range p.rows {
			if set>>i&1 == 1 {
				rows = append(rows, r)
			}
		}
		if len(rows) > p.n {
			continue
		}
		x, duals, ok := equations(p.n, rows)
		if ok && rightSigns(rows, duals) && keepsExactly(p.rows, x) {
			return x
		}
	}
	return nil
}

func rightSigns(rows []nearest.Row, duals []*big.Rat) bool {
	for i, y := range duals {
		if !rows[i].Equal && y.Sign() < 0 {
			return false
		}
	}
	return true
}

func keepsExactly(rows []nearest.Row, x []*big.Rat) bool {
	for _, r := range rows {
		value := ratDot(rats(r.Coefficients), x)
		if sign := value.Cmp(rat(r.Least)); sign < 0 || r.Equal && sign > 0 {
			return false
		}
	}
	return true
}

// Whole numbers, so that a set that is empty is so by much.
func TestAgainstBruteForce(t *testing.T) {
	count := 1200
	if testing.Short() {
		count = 200
	}
	statuses := map[nearest.Status]int{}
	for i := range count {
		c := chanceOf(uint64(i))
		p := instance{n: 1 + i%3}
		for range 1 + c.IntN(6) {
			p.add(nearest.Row{Coefficients: c.grid(p.n), Least: float64(c.IntN(7) - 4), Equal: c.IntN(5) == 0})
		}
		got := p.solve()
		statuses[got.Status]++
		if err := agree(got, bruteForce(p)); err != nil {
			t.Errorf("instance %d: %v\n%v", i, err, p.rows)
		}
	}
	if statuses[nearest.Found] < count/5 || statuses[nearest.Empty] < count/5 {
		t.Errorf("one-sided: %v", statuses)
	}
}

// agree compares an answer with the exact nearest point, nil if the set is empty.
func agree(got nearest.Point, want []*big.Rat) error {
	if (want == nil) != (got.Status == nearest.Empty) || (want != nil) != (got.Status == nearest.Found) {
		return fmt.Errorf("%v, want %v", got.Status, want)
	}
	for j := range want {
		if off := got.X[j] - float(want[j]); math.Abs(off) > 1e-13 {
			return fmt.Errorf("x[%d] is off by %g", j, off)
		}
	}
	return nil
}
