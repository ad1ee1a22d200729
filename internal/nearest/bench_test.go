package nearest_test

import (
	"fmt"
	"testing"

	"example.org/collinear/internal/nearest"
)

// limits are m rows |q.y + c| <= limit, as two inequalities each.
func limits(n, m int) instance {
	c := chanceOf(uint64(n))
	p := instance{n: n, want: nearest.Found}
	point := c.vector(n)
	for range m {
		p.between(c.vector(n), point, 0.2*c.Float64(), 0.2*c.Float64())
	}
	return p
}

func BenchmarkSolve(b *testing.B) {
	for _, size := range []struct{ n, m int }{{3, 8}, {20, 75}, {40, 150}, {60, 150}} {
		p := limits(size.n, size.m)
		b.Run(fmt.Sprintf("%dx%d", size.n, len(p.rows)), func(b *testing.B) {
			b.ReportAllocs()
			steps := 0
			for b.Loop() {
				steps = p.solve().Steps
			}
			b.ReportMetric(float64(steps), "steps")
		})
	}
}

// BenchmarkCut adds one row that is broken and goes on.
func BenchmarkCut(b *testing.B) {
	for _, n := range []int{20, 40} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			p := limits(n, 75)
			last := len(p.rows) - 2
			for b.Loop() {
				b.StopTimer()
				s := nearest.New(n)
				s.Add(p.rows[:last]...)
				s.Solve()
				b.StartTimer()
				s.Add(p.rows[last:]...)
				s.Solve()
			}
		})
	}
}
