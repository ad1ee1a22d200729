package flange_test

import (
	"fmt"
	"testing"

	"example.org/collinear/align"
)

// BenchmarkCorrect plans the shims of flanges of few and of very many bolts.
func BenchmarkCorrect(b *testing.B) {
	off := known(b, align.Stated, line(0.1, 0.6e-3, -0.2, 0.3e-3), um, 1e-5, 0.2)
	for _, bolts := range []int{4, 12, 48, 200} {
		f := worked()
		f.Bolts = ring(bolts)
		b.Run(fmt.Sprint(bolts), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := f.Correct(off); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
