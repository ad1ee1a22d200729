package graph

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A round number is the nearest on its side that the list of figures has.
func TestRoundNumbers(t *testing.T) {
	for _, row := range []struct{ x, most, least float64 }{
		{1, 1, 1}, {0.999, 0.8, 1}, {1.4999, 1, 1.5}, {2.2, 2, 2.5}, {7, 6, 8}, {9.5, 8, 10}, {1000, 1000, 1000}, {0.003, 0.003, 0.003}, {12, 10, 15},
	} {
		if most, least := atMost(row.x, round), atLeast(row.x, round); math.Abs(most/row.most-1) > 1e-12 || math.Abs(least/row.least-1) > 1e-12 {
			t.Errorf("%v: at most %v and at least %v, want %v and %v", row.x, most, least, row.most, row.least)
		}
	}
}

func TestRoundNumbersEncloseAny(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := math.Pow(10, rapid.Float64Range(-12, 12).Draw(t, "power"))
		for _, figures := range [][]float64{round, ticking} {
			most, least := atMost(x, figures), atLeast(x, figures)
			if !(most <= x*(1+1e-9) && x <= least*(1+1e-9) && least/most < 2.6) {
				t.Fatalf("%v lies between %v and %v", x, most, least)
			}
		}
	})
}

func TestNumbersInWords(t *testing.T) {
	for x, want := range map[float64]string{20: "20", 0.25: "0.25", 1e-7: "0.0000001", 0.1 + 0.2: "0.3", 1234567: "1234570", 0: "0"} {
		if got := number(x); got != want {
			t.Errorf("%v is written %q, want %q", x, got, want)
		}
	}
	s := Scale{Along: 20, Across: 25}
	if want := "Along the shafts 20 times smaller than the machine, across them 25 times larger than it: slopes are drawn 500 times steeper."; s.String() != want {
		t.Errorf("the scale is told as %q", s)
	}
	s = Scale{Along: 20, Across: 1}
	if want := "Along the shafts 20 times smaller than the machine, across them as large as it: slopes are drawn 20 times steeper."; s.String() != want {
		t.Errorf("the scale is told as %q", s)
	}
}
