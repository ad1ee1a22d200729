package sheet_test

import (
	"math"
	"testing"

	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
)

// runs is how many sheets of each sort the evidence takes.
func runs(full int) int {
	if testing.Short() {
		return min(full, 100)
	}
	return full
}

// drawn is a problem, worked by the package and by the hand of these tests.
type drawn struct {
	problem sheet.Problem
	working sheet.Working
	page    *handPage
}

// drawnProblem draws until the package accepts the problem.
func drawnProblem(t *testing.T, d draw) drawn {
	t.Helper()
	for range 20 {
		problem := d.problem()
		if working, err := problem.Working(); err == nil {
			return drawn{problem, working, workProblem(problem)}
		}
	}
	t.Fatal("twenty problems were refused one after the other")
	return drawn{}
}

// TestHandAgrees: the hand has the same lines as the package, in the same order, and
// comes to the same numbers.
func TestHandAgrees(t *testing.T) {
	t.Parallel()
	for seed := range uint64(runs(1000)) {
		one := drawnProblem(t, newDraw(seed))
		steps := one.working.Steps(sheet.Metric)
		if len(steps) != len(one.page.lines) {
			t.Fatalf("seed %d: %q has %d lines, the hand has %d", seed, one.working.Title(), len(steps), len(one.page.lines))
		}
		s := one.page.write(habit{exact: true}, make([]bool, len(steps)), nil)
		for i, step := range steps {
			l := &one.page.lines[i]
			if step.ID != l.id {
				t.Fatalf("seed %d: line %d of %q is %q, the hand has %q", seed, i, one.working.Title(), step.ID, l.id)
			}
			if l.free {
				continue
			}
			got, err := valueOf(one.working, l)
			if err != nil {
				t.Fatal(err)
			}
			if want := s.kept[i]; !(math.Abs(got-want) <= 1e-9*(1+math.Abs(want))) {
				t.Errorf("seed %d: %q: %s is %v, by hand %v", seed, one.working.Title(), l.id, got, want)
			}
		}
	}
}

func valueOf(w sheet.Working, l *handLine) (float64, error) {
	switch l.sort {
	case aClimb, aSwing, aRising, aDrift, aSteep:
		x, err := sheet.Value[units.Slope](w, l.id)
		return float64(x), err
	case aRise:
		x, err := sheet.Value[units.TemperatureDifference](w, l.id)
		return float64(x), err
	}
	x, err := sheet.Value[units.Length](w, l.id)
	return inMM(x), err
}

// TestRightSheetsAreNeverAccused: 5000 sheets without a slip, by all habits of writing.
func TestRightSheetsAreNeverAccused(t *testing.T) {
	t.Parallel()
	for seed := range uint64(runs(5000)) {
		d := newDraw(1_000_000 + seed)
		one := drawnProblem(t, d)
		h, which := d.habit(), d.which(one.page)
		s := one.page.write(h, which, nil)
		if worst, _ := one.page.shows(s, nil); worst > hair {
			t.Fatalf("seed %d: the intervals of these tests do not hold a right hand: %v", seed, worst)
		}
		m, err := one.working.Check(s.answers)
		if err != nil {
			t.Fatalf("seed %d: %v of %v", seed, err, s.answers)
		}
		if !m.Right() || m.Explanations != nil || m.Ask != nil || m.Unexplained() != nil {
			t.Errorf("seed %d: %q, %+v: a right sheet is accused: %+v", seed, one.working.Title(), h, m)
		}
	}
}
