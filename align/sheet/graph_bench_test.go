package sheet_test

import "testing"

// BenchmarkDraw draws a graph with two feet.
func BenchmarkDraw(b *testing.B) {
	d := onSquares()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := d.draw(); err != nil {
			b.Fatal(err)
		}
	}
}
