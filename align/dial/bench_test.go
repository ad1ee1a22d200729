package dial_test

import (
	"testing"

	"example.org/collinear/align/dial"
)

var sink dial.Result

// BenchmarkSolve measures each method on two sweeps of four readings, with all that
// the answer tells: closed form, covariance, condition and checks.
func BenchmarkSolve(b *testing.B) {
	for _, m := range methods {
		job := m.with(soundJobs[m.name], fair(), fair())
		b.Run(m.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				var err error
				if sink, err = job.Solve(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
