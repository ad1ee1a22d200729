package linprog

import (
	"fmt"
	"math/rand/v2"
	"testing"
)

// A solver that has solved other programs, and taken in rows, answers as a new one does,
// to the bit: nothing of them is left.
func TestLoadedLikeNew(t *testing.T) {
	var used Solver
	for k := range 600 {
		r := rand.New(rand.NewPCG(uint64(k), 31))
		p := makers[k%len(makers)].make(r)
		if err := used.Load(p); err != nil {
			t.Fatal(err)
		}
		fresh := solver(t, p)
		row := Row{coefficients(r, normal, len(p.Cost)), -1, 1}
		for range 2 {
			got, want := used.Solve(), fresh.Solve()
			if fmt.Sprint(got) != fmt.Sprint(want) {
				t.Errorf("%d: %+v, a new solver %+v", k, got, want)
			}
			if used.Add(row) != nil || fresh.Add(row) != nil {
				t.Fatalf("%d: the row was refused", k)
			}
		}
		checkTableau(t, k, &used)
	}
}

// A program that is refused leaves the one before it.
func TestRefusedLoad(t *testing.T) {
	s := solver(t, boxes(2.5))
	if err := s.Load(Program{Cost: []float64{1}}); err == nil {
		t.Error("a program without bounds was loaded")
	}
	if got := s.Solve(); got.Status != Optimal || got.Objective != 1+2+1.5 {
		t.Errorf("%v %v", got.Status, got.Objective)
	}
}

// Loading again and solving allocates the answer alone.
func TestLoadAllocates(t *testing.T) {
	p := train(4)
	s := solver(t, p)
	s.Solve()
	if n := testing.AllocsPerRun(10, func() {
		if s.Load(p) != nil || s.Solve().Status != Optimal {
			t.Error("no answer")
		}
	}); n > 2 {
		t.Errorf("%v allocations", n)
	}
}

// Noise is no multiplier of a variable either: one that could be left out has zero. With
// small whole numbers some cancel to nothing but rounding.
func TestColumnDualsWithoutNoise(t *testing.T) {
	for k := range 400 {
		s := solver(t, makers[0].make(rand.New(rand.NewPCG(uint64(k), 32))))
		for j, d := range s.Solve().ColumnDuals {
			if scaled := d * s.column[j] * s.money; scaled != 0 && scaled > -noise && scaled < noise {
				t.Errorf("%d: variable %d has multiplier %g", k, j, d)
			}
		}
	}
}
