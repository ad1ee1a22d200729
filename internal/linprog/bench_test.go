package linprog

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/optimize/convex/lp"
)

// train returns the program of a train of machines: moves of two feet each in two
// planes, and the least r that holds all offsets left over at both faces of every
// coupling. Every foot has limits for what it can move: rows for those of the first
// plane, bounds of the variable for the second.
//
// It has 4 machines + 1 variables and 10 machines - 8 rows, one more if it stands
// on a first machine that must not move.
func train(machines int) Program {
	r := rand.New(rand.NewPCG(uint64(machines), 1))
	n := 4*machines + 1
	p := empty(n)
	p.Cost[n-1], p.Upper[n-1] = 1, inf
	for plane := range 2 {
		for m := range machines {
			footLimits(r, &p, plane, 4*m+2*plane)
		}
		for m := range machines - 1 {
			for _, past := range []float64{0.2, 0.35} {
				a := make([]float64, n)
				left, right := 4*m+2*plane, 4*m+4+2*plane
				a[left], a[left+1] = -past, 1+past // the line through two feet, carried on
				a[right], a[right+1] = -1.5+past, 0.5-past
				p.Rows = append(p.Rows, within(a, n-1, n, fraction(r))...)
			}
		}
	}
	return p
}

func footLimits(r *rand.Rand, p *Program, plane, at int) {
	for j := at; j < at+2; j++ {
		low, high := -0.5-2*r.Float64(), 0.5+2*r.Float64()
		if plane == 1 {
			p.Lower[j], p.Upper[j] = low, high
			continue
		}
		p.Lower[j], p.Upper[j] = -inf, inf
		a := make([]float64, len(p.Cost))
		a[j] = 1
		p.Rows = append(p.Rows, Row{a, low, high})
	}
}

var trains = []int{2, 4, 6, 10}

// BenchmarkTrain times the least worst ratio of a train, both planes in one program,
// beside the simplex of gonum on the same. That has no limit of its own, so that a
// first run with a watch-dog decides whether there is something to time.
func BenchmarkTrain(b *testing.B) {
	for _, machines := range trains {
		p := train(machines)
		b.Run(fmt.Sprintf("machines=%d/by=linprog", machines), func(b *testing.B) { benchOurs(b, p) })
		b.Run(fmt.Sprintf("machines=%d/by=gonum_simplex", machines), func(b *testing.B) { benchGonum(b, p) })
	}
}

func benchOurs(b *testing.B, p Program) {
	b.ReportAllocs()
	var got Solution
	for b.Loop() {
		s, err := New(p)
		if err != nil {
			b.Fatal(err)
		}
		got = s.Solve()
	}
	if got.Status != Optimal {
		b.Fatal(got.Status)
	}
	b.ReportMetric(float64(got.Pivots), "pivots")
}

func benchGonum(b *testing.B, p Program) {
	c, a, side := standard(p)
	if !ends(func() { lp.Simplex(c, a, side, 1e-10, nil) }, 10*time.Second) {
		b.Skip("does not end")
	}
	b.ReportAllocs()
	var cost float64
	var err error
	for b.Loop() {
		cost, _, err = lp.Simplex(c, a, side, 1e-10, nil)
	}
	s, _ := New(p)
	if want := s.Solve().Objective; err != nil || math.Abs(cost-want) > 1e-6 {
		b.Skipf("%v, %v where the optimum is %v", err, cost, want)
	}
}

func ends(f func(), within time.Duration) bool {
	done := make(chan struct{})
	go func() {
		f()
		close(done)
	}()
	select {
	case <-done:
		return true
	case <-time.After(within):
		return false
	}
}

// standard returns the program as: minimise c . z under A z = b, z >= 0. Variables
// are halved into two signs, each finite side becomes an equation with a slack.
func standard(p Program) (c []float64, a *mat.Dense, b []float64) {
	n := len(p.Cost)
	var sides [][]float64 // a . x <= the last number
	side := func(a []float64, factor, bound float64) {
		if !math.IsInf(bound, 0) {
			sides = append(sides, append(times(a, factor), bound))
		}
	}
	for _, r := range p.Rows {
		side(r.Coefficients, 1, r.Upper)
		side(r.Coefficients, -1, -r.Lower)
	}
	for j := range n {
		unit := make([]float64, n)
		unit[j] = 1
		side(unit, 1, p.Upper[j])
		side(unit, -1, -p.Lower[j])
	}
	m := len(sides)
	c, b = make([]float64, 2*n+m), make([]float64, m)
	a = mat.NewDense(m, 2*n+m, nil)
	for j := range n {
		c[j], c[n+j] = p.Cost[j], -p.Cost[j]
	}
	for i, s := range sides {
		for j, x := range s[:n] {
			a.Set(i, j, x)
			a.Set(i, n+j, -x)
		}
		a.Set(i, 2*n+i, 1)
		b[i] = s[n]
	}
	return c, a, b
}
