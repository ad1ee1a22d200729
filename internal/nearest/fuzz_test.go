package nearest_test

import (
	"math"
	"testing"

	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/internal/nearest"
)

// entry is a number that the fuzzer chose: mostly a small one, so that rows are
// dependent, sometimes any.
func entry(tape *fuzzed.Tape) float64 {
	switch b := int8(tape.Byte()); {
	case b == 127:
		return tape.Float64()
	case b == 126:
		return 1e-9 * float64(int8(tape.Byte()))
	default:
		return float64(b % 8)
	}
}

// Whatever the rows, there is an answer that can be verified, or none.
func FuzzSolve(f *testing.F) {
	f.Add([]byte{2, 1, 1, 0, 2, 1, 1, 0, 3})
	f.Add([]byte{1, 1, 1, 1, 255, 255, 0})
	f.Add([]byte{3, 1, 126, 1, 0, 1, 1, 0, 126, 3, 2, 0, 0, 0, 0})
	f.Fuzz(func(t *testing.T, data []byte) {
		tape := fuzzed.Tape(data)
		p := instance{n: int(tape.Byte() % 5)}
		for len(tape) > 0 && len(p.rows) < 20 {
			r := nearest.Row{Coefficients: make([]float64, p.n), Equal: tape.Byte()%4 == 0}
			for j := range r.Coefficients {
				r.Coefficients[j] = entry(&tape)
			}
			r.Least = entry(&tape)
			p.add(r)
		}
		got := p.solve()
		if got.Status == nearest.Stopped {
			if got.X != nil || got.Duals != nil {
				t.Fatalf("stopped with %+v", got)
			}
			return
		}
		if !moderate(p, got) {
			return // the audit's own tolerances overflow
		}
		if err := audit(p, got); err != nil {
			t.Fatalf("%v\n%v\n%+v", err, p.rows, got)
		}
	})
}

// moderate tells whether no number is so large or small that lengths and
// products leave the range of floating-point numbers.
func moderate(p instance, got nearest.Point) bool {
	for _, y := range got.Duals {
		if outOfRange(y) {
			return false
		}
	}
	for _, r := range p.rows {
		for _, v := range append(r.Coefficients, r.Least) {
			if outOfRange(v) {
				return false
			}
		}
	}
	return true
}

func outOfRange(v float64) bool {
	v = math.Abs(v)
	return v != 0 && (v < 1e-100 || !(v < 1e100))
}
