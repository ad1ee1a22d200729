package softfoot_test

import (
	"testing"

	"example.org/collinear/softfoot"
)

// BenchmarkJudge goes round four and eight feet: with nothing to find, with a
// diagonal or its like to explain, and with an end that lifts, which no pads of four
// feet explain.
func BenchmarkJudge(b *testing.B) {
	for _, row := range []struct {
		name   string
		survey softfoot.Survey
	}{
		{"4/none", rectangle(um, 20, 10, 30, 0)},
		{"4/parallel", rectangle(um, 120, 20, 20, 120)},
		{"4/end", rectangle(um, 120, 120, 0, 0)},
		{"8/none", rows(20, 10, 0, 30, 10, 0, 0, 20)},
		{"8/parallel", rows(120, 0, 0, 100, 0, 0, 0, 80)},
		{"8/end", rows(120, 120, 0, 0, 0, 0, 0, 0)},
	} {
		b.Run(row.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := row.survey.Judge(softfoot.Limits{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
