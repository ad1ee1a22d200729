package sheet_test

import (
	"testing"

	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
)

// A reverse job with the growth of one machine, worked from its readings.
func BenchmarkWorking(b *testing.B) {
	j := soundJob()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := j.Working(); err != nil {
			b.Fatal(err)
		}
	}
}

// The same as text of all its lines.
func BenchmarkSteps(b *testing.B) {
	w := work(b, soundJob())
	b.ReportAllocs()
	for b.Loop() {
		w.Steps(sheet.Inch)
	}
}

// A full sheet of it, with no, one or two slips at the end, so that all else follows.
func BenchmarkCheck(b *testing.B) {
	w := work(b, soundJob())
	corrected := func(foot string, times units.Length) (id, answer string) {
		id = "vertical.foot." + foot + ".correction"
		move, err := sheet.Value[units.Length](w, id)
		if err != nil {
			b.Fatal(err)
		}
		return id, (move * times).Text(units.InMils, 1)
	}
	for slips, name := range []string{"right", "one slip", "two slips"} {
		b.Run(name, func(b *testing.B) {
			answers := answersOf(w, sheet.Inch)
			if slips > 0 {
				id, answer := corrected("outboard", -1) // the position
				answers[id] = answer
			}
			if slips > 1 {
				id, answer := corrected("inboard", 2.54) // hundredths of a millimetre
				answers[id] = answer
			}
			m, err := w.Check(answers)
			if err != nil || len(m.Explanations) > 0 != (slips > 0) || slips > 0 && len(m.Explanations[0].Slips) != slips {
				b.Fatalf("%+v, %v", m.Explanations, err)
			}
			b.ReportAllocs()
			for b.Loop() {
				if _, err := w.Check(answers); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
