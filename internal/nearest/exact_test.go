package nearest_test

import (
	"testing"
)

// Ten thousand sets of all kinds, each answer verified in rational numbers.
func TestTenThousandSetsExactly(t *testing.T) {
	count := 10_000
	if testing.Short() {
		count = 600
	}
	for i := range count {
		kind, n := i%len(kinds), 1+i/len(kinds)%5
		p := makeInstance(kind, n, uint64(i))
		got := p.solve()
		err := audit(p, got)
		if err == nil && got.X != nil {
			err = auditActive(p, got)
		}
		if err != nil {
			t.Errorf("%s, instance %d: %v", kinds[kind].name, i, err)
		}
	}
}

// A few steps for each variable do, where the row broken most goes in first.
func TestStepsAreFew(t *testing.T) {
	for _, n := range []int{20, 40} {
		p := limits(n, 75)
		if got := p.solve(); got.Steps > 4*n {
			t.Errorf("%d variables: %d steps", n, got.Steps)
		}
	}
}

// Larger sets, where the exact solution of the active rows would take too long.
func TestLargeSets(t *testing.T) {
	for i := range 4 * len(kinds) {
		kind, n := i%len(kinds), []int{20, 30, 40, 60}[i/len(kinds)]
		if testing.Short() && n > 20 {
			break
		}
		p := makeInstance(kind, n, uint64(i))
		if err := audit(p, p.solve()); err != nil {
			t.Errorf("%s, %d variables: %v", kinds[kind].name, n, err)
		}
	}
}
