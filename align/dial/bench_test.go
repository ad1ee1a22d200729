package dial_test

import (
	"testing"

	"example.org/collinear/align/dial"
)

var sink dial.Result

func BenchmarkReverseSolve(b *testing.B) { benchmark(b, methods[0]) }

func BenchmarkRimFaceSolve(b *testing.B) { benchmark(b, methods[1]) }

func benchmark(b *testing.B, m method) {
	job := m.with(soundJobs[m.name], fair(), fair())
	b.ReportAllocs()
	for b.Loop() {
		var err error
		if sink, err = job.Solve(); err != nil {
			b.Fatal(err)
		}
	}
}
