package align_test

import (
	"testing"

	"example.org/collinear/align"
)

// BenchmarkParallel measures a fit and its moves in as many goroutines as there are
// processors: with -cpu 1,2 the time per operation halves, for what they share, the
// input, is only read.
func BenchmarkParallel(b *testing.B) {
	sets := sweeps(b, 2, 9, true)
	feet := []align.Foot{{Name: "inboard", X: 300 * mm}, {Name: "outboard", X: 900 * mm}}
	b.ReportAllocs()
	b.RunParallel(func(pb *testing.PB) {
		moves := make([]align.Move, 0, len(feet))
		for pb.Next() {
			f, err := align.Fit(sets...)
			if err == nil {
				_, err = f.Estimate.AppendCorrections(moves, feet...)
			}
			if err != nil {
				b.Error(err)
				return
			}
		}
	})
}
