package dial_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

// Readings near the end of the range of a float64 are nonsense, but finite: they
// are refused as the general fit refuses what it cannot hold, or answered with
// finite numbers, never with an infinity that cannot even be written out.
func TestOverflow(t *testing.T) {
	huge := units.Length(math.MaxFloat64)
	for _, row := range []struct {
		name  string
		sweep sweep
	}{
		{"the difference of opposites, three readings", dial.Quarters(huge/1.5, 1, 0, -1, 0)[:3]},
		{"the difference of opposites, four readings", dial.Quarters(huge/1.5, 1, 0, -1, 0)},
		{"the sum of opposites", dial.Quarters(huge/1.5, 1, 1, 1, 1)},
		{"the fourth reading", dial.Quarters(huge/1.5, 1, -1, 1, 0)[:3]},
		{"the return", append(dial.Quarters(huge/1.5, 1, 1, 1, 1)[:3], align.Reading{Value: -huge})},
	} {
		for _, m := range methods {
			t.Run(row.name+", "+m.name, func(t *testing.T) {
				checkAnswer(t, m.with(soundJobs[m.name], row.sweep, fair()))
			})
		}
	}
}
