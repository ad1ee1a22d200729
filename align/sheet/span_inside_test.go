package sheet

import (
	"math"
	"testing"

	"example.org/collinear/units"
)

// Spans meet where their ends do, to a share of the numbers; what has no end or is no
// number meets nothing.
func TestSpansMeet(t *testing.T) {
	const far = 1e6
	a := exactlyAt(far)
	for _, row := range []struct {
		name string
		t    span
		want bool
	}{
		{"the same", exactlyAt(far), true},
		{"off by rounding", exactlyAt(far + 1.9*far*rounding), true},
		{"off by more", exactlyAt(far + 2.1*far*rounding), false},
		{"below, off by rounding", exactlyAt(far - 1.9*far*rounding), true},
		{"below, off by more", exactlyAt(far - 2.1*far*rounding), false},
		{"one that holds it", span{0, -far, 2 * far}, true},
		{"no end", span{0, 0, math.Inf(1)}, false},
		{"no beginning", span{0, math.Inf(-1), 2 * far}, false},
		{"beyond all numbers", exactlyAt(math.Inf(1)), false},
		{"below all numbers", exactlyAt(math.Inf(-1)), false},
		{"no number", exactlyAt(math.NaN()), false},
	} {
		if a.meets(row.t) != row.want || row.t.meets(a) != row.want {
			t.Errorf("%s: %v, %v", row.name, a.meets(row.t), row.t.meets(a))
		}
	}
}

func TestSpansApart(t *testing.T) {
	s := span{10, 9, 11}
	if got := s.apart(span{16, 15, 17}); got != 3 {
		t.Errorf("%v widths apart", got)
	}
	if got := (span{10, 7, 11}).reach(); got != 3 {
		t.Errorf("reaches %v", got)
	}
}

// A judgement allows for what was written and for what was expected, each as far as it
// may be off.
func TestJudgementAllowsForBoth(t *testing.T) {
	w, err := Problem{Sag: &Sag{At12: 0, At6: -4 * units.Mil}}.Working()
	if err != nil {
		t.Fatal(err)
	}
	own := written{text: "as written", system: Inch, span: span{1000, 800, 1100}}
	got := w.judge(0, own, span{1500, 1450, 1600})
	if want := "0.012 mil"; got.Within != want || got.Right { // 300 nm, to a digit more than a sag has
		t.Errorf("got %+v, want within %v", got, want)
	}
}
