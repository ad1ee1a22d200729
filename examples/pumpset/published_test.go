package main

import (
	"strings"
	"testing"
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
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			got := text(t, mustSolve(t, load(t, row.file)), asTheJob)
			for _, want := range row.want {
				if !strings.Contains(got, want) {
					t.Errorf("%s: the report does not say %q:\n%s", row.source, want, got)
				}
			}
		})
	}
}
