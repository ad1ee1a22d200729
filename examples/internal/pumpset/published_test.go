package pumpset

import (
	"strings"
	"testing"

	"example.org/collinear/units"
)

// The answers that the books print, in the words of the report.
func TestPublishedExamples(t *testing.T) {
	rows := []struct {
		name, source, file string
		want               []string
	}{
		{
			"reverse dial", "Bloch & Geitner, Machinery Component Maintenance and Repair, ch. 5, p. 203 (read): 0.0093 - 0.012 = -0.0027 and +0.0066 in",
			"testdata/bloch-geitner-p203.json",
			[]string{
				"From rim to rim: 14.000 in.", "to the feet inboard: 12.000 in.", "to the feet outboard: 38.000 in.",
				"inboard: lower 2.7 mil, leave sideways", "outboard: raise 6.6 mil, leave sideways",
			},
		},
		{
			"rim and face", "McMillan, Rotating Machinery, Fairmont, 2004, example 8-3, pp. 137-141 (read): positions -2 and -7 mils",
			"testdata/mcmillan-8-3.json",
			[]string{
				"to the feet inboard: 16.000 in.", "to the feet outboard: 36.000 in.",
				"inboard: raise 2.0 mil, leave sideways", "outboard: raise 7.0 mil, leave sideways",
			},
		},
		{
			"growth", "the same example, legs of 17 in and 22 in, 78 °F to 106 °F and 138 °F: 2.9988 and 8.316 mils, printed 2.99 and 8.3; sums +1 and +1",
			"testdata/mcmillan-8-3-growth.json",
			[]string{
				"grows 3.0 mil up", "grows 8.3 mil up",
				"inboard: lower 1.0 mil, leave sideways", "outboard: lower 1.3 mil, leave sideways",
			},
		},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			got := strings.Join(strings.Fields(text(t, mustSolve(t, load(t, row.file)), AsTheJob)), " ")
			for _, want := range row.want {
				if !strings.Contains(got, want) {
					t.Errorf("%s: the report does not say %q:\n%s", row.source, want, got)
				}
			}
		})
	}
}

// The growths of the example to all its digits, and the moves that follow.
func TestPublishedGrowth(t *testing.T) {
	r := mustSolve(t, load(t, "testdata/mcmillan-8-3-growth.json"))
	for i, want := range []struct{ grows, raise float64 }{{2.9988, 2 - 2.9988}, {8.316, 7 - 8.316}} {
		near(t, "growth, mil", r.Growth.Movable.Supports[i].By.Vertical.In(units.InMils), want.grows)
		near(t, "raise, mil", r.Found.Moves[i].By.Vertical.In(units.InMils), want.raise)
	}
}
