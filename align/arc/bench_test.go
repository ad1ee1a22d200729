package arc_test

import (
	"fmt"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
)

// BenchmarkBufferFit fits two sensors of so many readings each.
func BenchmarkBufferFit(b *testing.B) {
	for _, n := range []int{3, 9, 60, 1000} {
		buffer := roomy(b, n, 0)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := buffer.Fit(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

// BenchmarkBufferTurn drops the oldest reading of a sensor and adds a new one.
func BenchmarkBufferTurn(b *testing.B) {
	for _, n := range []int{9, 1000} {
		buffer := roomy(b, n, 1)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if err := buffer.Drop(0, 0); err != nil {
					b.Fatal(err)
				}
				if err := buffer.Add(0, align.Reading{At: 30}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkForecast(b *testing.B) {
	feet := []align.Foot{{Name: "inboard", X: 300 * mm}, {Name: "outboard", X: 900 * mm}}
	for _, n := range []int{3, 60} {
		sets := sensorPair(5*um, within(n, 30, 80)...)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := arc.Forecast(caseA, feet, sets...); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkSensorSets(b *testing.B) {
	s := fullSensor()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := s.Sets(); err != nil {
			b.Fatal(err)
		}
	}
}
