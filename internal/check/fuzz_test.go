package check_test

import (
	"math"
	"strings"
	"testing"

	"example.org/collinear/internal/check"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/units"
)

// FuzzQuestions: whatever the number, each question says no with one fault at its path,
// or yes with none, and it says yes to nothing that is not finite.
func FuzzQuestions(f *testing.F) {
	for _, x := range []float64{
		0, math.Copysign(0, -1), 1, -1, math.NaN(), math.Inf(1), math.Inf(-1), check.Largest, 2 * check.Largest, check.Least, check.Least / 2,
		check.Finest, check.Finest / 2, math.SmallestNonzeroFloat64, -math.SmallestNonzeroFloat64, math.MaxFloat64,
	} {
		f.Add(math.Float64bits(x))
	}
	f.Fuzz(func(t *testing.T, bits uint64) {
		x := math.Float64frombits(bits)
		var root check.Path
		at := root.Field("x")
		sound := math.Abs(x) <= check.Largest
		for _, q := range []struct {
			name string
			ask  func(*check.Faults) bool
			want bool
		}{
			{"finite", func(f *check.Faults) bool { return check.Finite(f, at, x) }, sound},
			{"positive", func(f *check.Faults) bool { return check.Positive(f, at, x, "it") }, sound && x >= check.Least},
			{"not negative", func(f *check.Faults) bool { return check.NotNegative(f, at, x, "it") }, sound && x >= 0},
			{"uncertainty", func(f *check.Faults) bool { return check.Uncertainty(f, at, x) }, sound && x >= 0},
			{"weight", func(f *check.Faults) bool { return check.Weight(f, at, x) }, x == 0 || sound && x >= check.Finest},
			{"unused", func(f *check.Faults) bool { return check.Unused(f, at, x, "it") }, x == 0},
		} {
			var faults check.Faults
			yes := q.ask(&faults)
			if yes != q.want || yes != (faults.Len() == 0) || faults.Len() > 1 || yes == faults.Has("/x") {
				t.Errorf("%s of %v: %v, want %v; %v", q.name, x, yes, q.want, faults.Err())
			}
			if err := faults.Err(); err != nil && fuzzed.Refusal(err) != nil {
				t.Errorf("%s of %v: %v", q.name, x, fuzzed.Refusal(err))
			}
		}
		if check.Sound(x) != sound || check.Weighty(x) != (x == 0 || sound && x >= check.Finest) {
			t.Errorf("%v: sound %v, weighty %v", x, check.Sound(x), check.Weighty(x))
		}
	})
}

// FuzzPath: whatever the names of fields, a path is a JSON Pointer that leads back to
// them (RFC 6901, section 4), and what is adopted keeps what was below it.
func FuzzPath(f *testing.F) {
	f.Add("a", "b", 3)
	f.Add("a/b", "~", 0)
	f.Add("~1", "", 12345)
	f.Fuzz(func(t *testing.T, first, second string, index int) {
		if index < 0 {
			index = -(index + 1) // lists have no place below zero
		}
		var root check.Path
		a := root.Field(first)
		i := a.Index(index)
		b := i.Field(second)
		steps := strings.Split(b.String(), "/")
		back := strings.NewReplacer("~1", "/", "~0", "~")
		if len(steps) != 4 || steps[0] != "" || back.Replace(steps[1]) != first || back.Replace(steps[3]) != second {
			t.Fatalf("%q leads to %q", []string{first, second}, steps)
		}
		var faults, outer check.Faults
		faults.Add(units.Missing, b, nil, "it")
		outer.Adopt(a, faults.Err())
		if want := a.String() + b.String(); !outer.Has(want) || outer.Len() != 1 {
			t.Errorf("%v is not at %q", outer.Err(), want)
		}
	})
}
