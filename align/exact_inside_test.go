package align

import (
	"errors"
	"math"
	"testing"

	"example.org/collinear/units"
)

// How the movable shaft turns as its slopes grow, against posing it at slopes a little
// more and a little less: at slopes so large that the one has a part in the other.
func TestTurnedByDifferences(t *testing.T) {
	const h = 1e-5
	at := [four]float64{slopeY: 0.3, slopeZ: -0.4}
	s := posed(at)
	directions := map[string]func(f *frame) vector{
		"axis":   func(f *frame) vector { return f.axis },
		"three":  func(f *frame) vector { return f.three },
		"twelve": func(f *frame) vector { return f.twelve },
	}
	for name, of := range directions {
		for _, j := range []int{slopeY, slopeZ} {
			more, less := at, at
			more[j] += h
			less[j] -= h
			a, b := posed(more), posed(less)
			want := of(&a.moved).minus(of(&b.moved)).times(1 / (2 * h))
			if got := s.turned(j, of(&s.moved)); size(got.minus(want)) > 1e-9 {
				t.Errorf("%s with number %d: %v, want %v", name, j, got, want)
			}
			if moved := size(want); moved < 0.01 && !(name == "three" && j == slopeZ) {
				t.Errorf("%s does not turn with number %d: %v", name, j, moved)
			}
		}
	}
	if got := size(s.turned(slopeZ, s.moved.three)); math.Abs(got) > 1e-15 {
		t.Errorf("3 o'clock stays level and moves by %v", got)
	}
}

// Where the exact equations see less than the linear ones do, the search says so.
func TestRefineRefusesWhatItDoesNotSee(t *testing.T) {
	m := twoSweeps(5000)
	var s solution
	if err := s.refine(m.Sets[:1]); !errors.Is(err, units.Unseen) {
		t.Errorf("one rim alone: %v", err)
	}
	s = solution{}
	if err := s.refine(m.Sets); err != nil {
		t.Errorf("two rims: %v", err)
	}
}
