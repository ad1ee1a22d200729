package arc_test

import (
	"testing"

	"example.org/collinear/align/arc"
)

// Two probes with nine readings each: sound ones, and one that is bad.
func BenchmarkFitRobust(b *testing.B) {
	sound := wiggled(filled(b, caseA, sensorPair(4*um, nine(120)...)))
	bad := spoilt(sound, 0, 0, 80*um)
	b.Run("sound", func(b *testing.B) {
		for b.Loop() {
			mustRobust(b, sound...)
		}
	})
	b.Run("one bad", func(b *testing.B) {
		for b.Loop() {
			mustRobust(b, bad...)
		}
	})
}

func BenchmarkDiagnose(b *testing.B) {
	sets := wiggled(filled(b, caseA, sensorPair(4*um, nine(120)...)))
	f := mustFit(b, sets...)
	for b.Loop() {
		if _, err := arc.Diagnose(f, sets...); err != nil {
			b.Fatal(err)
		}
	}
}
