package linprog

import (
	"math"
	"testing"

	"example.org/collinear/internal/fuzzed"
)

// fuzzedProgram reads numbers of any size, or small ones in quarters: those meet each
// other more often.
func fuzzedProgram(data []byte) Program {
	tape := fuzzed.Tape(data)
	wild := tape.Byte()%4 == 0
	number := func() float64 {
		b := tape.Byte()
		switch {
		case b == 128:
			return math.Inf(-1)
		case b == 127:
			return inf
		case wild:
			return tape.Float64()
		}
		return float64(int8(b)) / 4
	}
	p := empty(int(tape.Byte() % 6))
	for j := range p.Cost {
		p.Cost[j], p.Lower[j], p.Upper[j] = number(), number(), number()
	}
	for range tape.Byte() % 8 {
		row := Row{Coefficients: make([]float64, len(p.Cost))}
		for j := range row.Coefficients {
			row.Coefficients[j] = number()
		}
		row.Lower, row.Upper = number(), number()
		p.Rows = append(p.Rows, row)
	}
	return p
}

func FuzzSolve(f *testing.F) {
	f.Add([]byte{1, 2, 4, 0, 127, 8, 0, 12, 1, 4, 4, 16, 127})
	f.Add([]byte{1, 2, 0, 128, 127, 4, 0, 127, 3, 4, 4, 4, 127, 252, 4, 252, 127, 4, 0, 128, 8})
	f.Add([]byte{1, 1, 4, 0, 4, 2, 4, 4, 8, 4, 0, 2})
	f.Add([]byte{0, 1, 1, 0, 0, 0, 0, 0, 0, 0, 240, 63})
	f.Fuzz(func(t *testing.T, data []byte) {
		p := fuzzedProgram(data)
		s, err := New(p)
		if err != nil {
			return
		}
		got := s.Solve()
		for _, r := range p.Rows {
			if err := s.Add(r); err != nil {
				t.Fatalf("New took a row that Add refuses: %v", err)
			}
		}
		again := s.Solve()
		if len(data) == 0 || data[0]%4 == 0 {
			return // sizes without measure may end in Stopped, or in a hair's breadth
		}
		if got.Status == Stopped || again.Status != got.Status || math.Abs(again.Objective-got.Objective) > 1e-6*(1+math.Abs(got.Objective)) {
			t.Errorf("%v %v, with all rows doubled %v %v", got.Status, got.Objective, again.Status, again.Objective)
		}
		var seen tally
		seen.judge(t, 0, p)
	})
}
