package linprog

import (
	"math"
	"testing"
)

// What is just on a limit is within it; of equals the first is taken. Either would be
// right, but the way to an answer is to be the same everywhere.

// line is x within [0, 9], and a row of it within [0, 9].
func line(t *testing.T) *Solver {
	t.Helper()
	s := solver(t, Program{Cost: []float64{1}, Lower: []float64{0}, Upper: []float64{9}, Rows: []Row{{[]float64{1}, 0, 9}}})
	s.begin()
	s.size = 1
	return s
}

func TestOneToleranceIsWithin(t *testing.T) {
	s := line(t)
	s.lower[1], s.value[1] = 0, -Feasibility
	if p, _ := s.leaving(); p != -1 {
		t.Errorf("row %d leaves for one tolerance", p)
	}
	s.value[1] *= 1.001
	if p, _ := s.leaving(); p != 0 {
		t.Errorf("row %d leaves for a little more", p)
	}
}

func TestFirstOfRowsThatAreAsFarOut(t *testing.T) {
	s := solver(t, Program{Cost: []float64{1}, Lower: []float64{0}, Upper: []float64{9}, Rows: []Row{{[]float64{1}, 1, 9}, {[]float64{1}, 1, 9}}})
	s.begin()
	if p, _ := s.leaving(); p != 0 {
		t.Errorf("row %d leaves", p)
	}
}

func TestRatioTestOnItsLimits(t *testing.T) {
	open := []option{{0, 1, 0, 1}, {1, 1, near, 1}}
	if tied := partition(open); tied != 2 {
		t.Errorf("%d tied, want both", tied)
	}
	if best, _ := steepest(open); best.column != 0 {
		t.Errorf("column %d of two alike", best.column)
	}
	s := line(t)
	if s.line(0)[0] = noise; s.entering(0, 1, 0) != -1 {
		t.Error("noise enters")
	}
	if s.line(0)[0] = 2 * noise; s.entering(0, 9*2*noise, 0) != 0 {
		t.Error("a variable that can just close the gap does not enter")
	}
}

// A small pivot is taken where there is no other, and the last good one before it
// where there is one.
func TestSmallPivots(t *testing.T) {
	s := line(t)
	if s.line(0)[0] = smallestPivot / 2; s.entering(0, smallestPivot, 0) != 0 {
		t.Error("the only variable does not enter")
	}
	s = solver(t, Program{Cost: []float64{1, 2}, Lower: []float64{0, 0}, Upper: []float64{1, 1}, Rows: []Row{{[]float64{1, 1}, 0, 9}}})
	s.begin()
	copy(s.line(0), []float64{1, smallestPivot})
	if q := s.entering(0, 1+smallestPivot/2, 0); q != 1 {
		t.Errorf("column %d enters, with a second pivot that is just large enough", q)
	}
	copy(s.line(0), []float64{1, smallestPivot / 2})
	if q := s.entering(0, 1+smallestPivot/4, 0); q != 0 {
		t.Errorf("column %d enters, with a second pivot that is too small", q)
	}
}

// Reduced costs that are no numbers end the ratio test.
func TestRatioTestOfNoNumbers(t *testing.T) {
	s := line(t)
	if s.reduced()[0] = math.NaN(); s.entering(0, 1, 0) != -1 {
		t.Error("a variable without a ratio enters")
	}
}

func TestLengthCountsWhatIsNoNoise(t *testing.T) {
	s := line(t)
	s.lower, s.upper = []float64{0, 0}, []float64{1, noiseLength}
	with := s.length()
	s.upper[1] = noiseLength / 2
	if without := s.length(); with != 0x1p-16 || without != 2 {
		t.Errorf("length %v with the bound, %v without", with, without)
	}
}

func TestPatienceAndPivotsAreSpent(t *testing.T) {
	r := run{patience: 3, stalled: 3}
	if r.careful() {
		t.Error("careful before patience has ended")
	}
	if r.stalled++; !r.careful() {
		t.Error("not careful after patience has ended")
	}
	p := boxes(2.5)
	p.Upper = []float64{inf, inf, inf}
	p.Rows = append(p.Rows, Row{[]float64{1, 0, 0}, math.Inf(-1), 1}, Row{[]float64{0, 1, 0}, math.Inf(-1), 1})
	needed := solver(t, p).Solve().Pivots
	if needed < 2 {
		t.Fatalf("%d pivots tell nothing", needed)
	}
	for limit, want := range map[int]Status{needed - 1: Stopped, needed: Optimal} {
		s := solver(t, p)
		if s.limit = limit; s.Solve().Status != want {
			t.Errorf("of %d pivots %d may be made: want %v", needed, limit, want)
		}
	}
}

func TestTableauOnItsLimits(t *testing.T) {
	s := line(t)
	row := []float64{dropped}
	if s.eliminate(row, []float64{3}, 0); row[0] != 0 {
		t.Errorf("what counts as zero left %v", row[0])
	}
	row[0] = 2 * dropped
	if s.eliminate(row, []float64{3}, 0); row[0] != 6*dropped {
		t.Errorf("what is left is %v", row[0])
	}
	s.reduced()[0], s.run.stalled = near, 5
	if s.note(0); s.run.stalled != 6 {
		t.Errorf("%d in a stall after a step that is next to nothing", s.run.stalled)
	}
	s = solver(t, Program{Cost: []float64{1, 2}, Lower: []float64{0, 0}, Upper: []float64{1, 1}, Rows: []Row{{[]float64{1, 1}, 0, 9}}})
	if p, q := s.largest([]bool{true, true, true}); p != 0 || q != 0 {
		t.Errorf("row %d, column %d of entries that are alike", p, q)
	}
}

func TestProofOnItsLimits(t *testing.T) {
	if clean(Optimality, Optimality) != 0 || least(Optimality, math.Inf(-1), 0, Optimality) != 0 {
		t.Error("a multiplier of just the tolerance counts")
	}
	s := line(t)
	if s.value[0] = 4; !s.complementary([]float64{Optimality}, 0) || !s.complementary([]float64{-Optimality}, 0) {
		t.Error("a multiplier of just the tolerance asks for a move")
	}
	s.value[0] = 0
	if m := s.signed(Optimality/2, 0); m != Optimality/2 {
		t.Errorf("%v of a multiplier that holds a variable at its lower bound", m)
	}
	s.value[0] = 9
	if m := s.signed(-Optimality/2, 0); m != -Optimality/2 {
		t.Errorf("%v of a multiplier that holds a variable at its upper bound", m)
	}
	s.value[0], s.value[1] = 4, 77
	if !s.rowsHold() || s.value[1] != 4 {
		t.Errorf("the row has %v", s.value[1])
	}
	s.value[0], s.upper[1] = Feasibility, 0
	if !s.rowsHold() {
		t.Error("a row that is out by one tolerance does not hold")
	}
}
