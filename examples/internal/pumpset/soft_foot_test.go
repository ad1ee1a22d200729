package pumpset

import (
	"testing"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

// What a cure leaves is told from 0.005 mm on, what a dial shows.
func TestWhatACureLeaves(t *testing.T) {
	var j Job
	p := report{display: j.display(Metric)}
	for left, want := range map[units.Length]string{
		0:                              "no foot should lift above the others",
		4999 * units.Nanometre:         "no foot should lift above the others",
		5 * units.Micrometre:           "a foot may still lift by up to 0.005 mm above the others",
		0.12 * units.Millimetre:        "a foot may still lift by up to 0.120 mm above the others",
		4999.9999999 * units.Nanometre: "a foot may still lift by up to 0.005 mm above the others",
	} {
		if got := p.still(left); got != want {
			t.Errorf("%v: %q, want %q", left, got, want)
		}
	}
}

// Which pad is low four feet do not tell; on more, several may be.
func TestWhosePadIsLow(t *testing.T) {
	rows := []struct {
		feet     []string
		surveyed int
		want     string
	}{
		{[]string{"A"}, 4, "A stands on a low pad, or is short"},
		{[]string{"A", "B"}, 4, "one of A and B stands on a low pad, or is short; their lifts do not tell which"},
		{[]string{"A", "B"}, 6, "one or more of A, B stand on a low pad, or are short; their lifts do not tell which"},
		{[]string{"A", "B", "C"}, 6, "one or more of A, B, C stand on a low pad, or are short; their lifts do not tell which"},
	}
	for _, row := range rows {
		e := softfoot.Explanation{Kind: softfoot.Parallel, Feet: row.feet}
		if got := explain(e, row.surveyed); got != row.want+": flat shims (parallel)" {
			t.Errorf("%v of %d: %q", row.feet, row.surveyed, got)
		}
	}
}
