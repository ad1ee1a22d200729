package train

import (
	"testing"

	"example.org/collinear/internal/nearest"
)

// What is next to nothing is a share of the value and of one, so that there is some
// beside zero as well.
func TestNextToNothing(t *testing.T) {
	if got := above(3, 0.25); got != 4 {
		t.Errorf("a quarter of 3 and 1 above 3 is %v", got)
	}
	if got := above(0, 0.25); got != 0.25 {
		t.Errorf("a quarter of 0 and 1 above 0 is %v", got)
	}
}

// An answer for which more rows come to light than there are rounds for is taken where
// the last of them is kept, and no other.
func TestRoundsComeToAnEnd(t *testing.T) {
	m := threeInLine().newModel(false, vertical)
	b, ok := m.bestRatio()
	if !ok {
		t.Fatal("no ratio")
	}
	kept := nearest.Row{Coefficients: make([]float64, m.n), Least: -1e6}
	kept.Coefficients[0] = 1
	for rounds, want := range map[int]bool{0: true, 1: true, mostRounds: true, mostRounds + 1: false} {
		r := region{m: m, level: 1 + b.ratio, cuts: b.cuts}
		left := rounds
		y := r.leastSquaresUnder(nil, func([]float64) []nearest.Row {
			if left == 0 {
				return nil
			}
			left--
			return []nearest.Row{kept}
		})
		if (y != nil) != want {
			t.Errorf("after %d rounds there is an answer: %v", rounds, !want)
		}
	}
}
