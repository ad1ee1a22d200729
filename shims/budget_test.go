package shims_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// Whatever the budget, the answer can be laid, says of itself whether it is
// proven, never costs less than the best, and keeps to the budget. A budget that
// was enough gives the same answer as a larger one.
func TestBudget(t *testing.T) {
	r := rand.New(rand.NewPCG(10, 11))
	unproven := 0
	for n := range 300 {
		stock, rule, orders := small(r)
		best, err := shims.Choose(stock, rule, orders...)
		if err != nil || !best.Proven {
			t.Fatal(best.Proven, err)
		}
		want := costOf(rule, orders, best)
		for _, nodes := range []int{1, 2, 3, 5, 10, 20, 50, 100, 1000} {
			rule.Nodes = nodes
			c, err := shims.Choose(stock, rule, orders...)
			if err != nil {
				t.Fatal(err)
			}
			checkChoice(t, stock, rule, orders, c)
			cost := costOf(rule, orders, c)
			if c.Nodes > nodes || slices.Compare(cost[:], want[:]) < 0 || c.Proven && cost != want {
				t.Errorf("case %d, %d nodes: proven %v, %d nodes, costs %v, best %v", n, nodes, c.Proven, c.Nodes, cost, want)
			}
			warned := slices.ContainsFunc(c.Warnings, func(f units.Fault) bool { return f.Code == units.Suspect })
			if warned == c.Proven {
				t.Errorf("case %d, %d nodes: proven %v, warned %v", n, nodes, c.Proven, warned)
			}
			if !c.Proven {
				unproven++
			}
		}
	}
	if unproven < 100 {
		t.Errorf("only %d answers are not proven", unproven)
	}
}

// The largest of everything comes to an end as well: sixteen pieces under each of
// sixty-four feet, from a stock of odd thicknesses that does not do.
func TestLargestInput(t *testing.T) {
	r := rand.New(rand.NewPCG(12, 13))
	var stock shims.Stock
	for range 60 {
		stock = append(stock, shims.Piece{Marked: units.Length(50_000 + r.IntN(3_000_000)), Count: r.IntN(4)})
	}
	orders := many(shims.MostFeet)
	for i := range orders {
		orders[i].Correction = units.Length(r.IntN(8_000_000))
	}
	rule := shims.Rule{Pieces: shims.MostPieces, Error: nm, Nodes: 200_000}
	c, err := shims.Choose(stock, rule, orders...)
	if err != nil || c.Proven || c.Nodes > rule.Nodes {
		t.Errorf("proven %v after %d nodes, %v", c.Proven, c.Nodes, err)
	}
	checkChoice(t, stock, rule, orders, c)
}

// Two feet want the only thick piece. The one that comes first gets it, as the
// package comment has it, and the other one makes do.
func TestFirstComesFirst(t *testing.T) {
	stock := shims.Stock{{Marked: 2 * mm, Count: 1}, {Marked: mm, Count: 2}}
	for _, names := range [][]string{{"left", "right"}, {"right", "left"}} {
		c, err := shims.Choose(stock, shims.Rule{},
			shims.Order{Foot: names[0], Correction: 2 * mm}, shims.Order{Foot: names[1], Correction: 2 * mm})
		if err != nil {
			t.Fatal(err)
		}
		if got := fmt.Sprint(len(c.Stacks[0].Pieces), len(c.Stacks[1].Pieces)); got != "1 2" {
			t.Errorf("%v: %s pieces", names, got)
		}
	}
}

// Of equally thick pieces a foot keeps its own, and takes others in the order of
// the stock; what one foot gives up another may have.
func TestEquallyThick(t *testing.T) {
	marked, measured := shims.Piece{Marked: mm}, shims.Piece{Marked: 1100 * um, Measured: mm}
	of := func(p shims.Piece, n int) shims.Piece { p.Count = n; return p }
	rows := []struct {
		name  string
		stock shims.Stock
		now   []shims.Piece
		up    units.Length
		in    []shims.Piece
		out   []shims.Piece
	}{
		{"order of the stock", shims.Stock{of(measured, 1), of(marked, 1)}, nil, mm, []shims.Piece{of(measured, 1)}, nil},
		{"the other order", shims.Stock{of(marked, 1), of(measured, 1)}, nil, mm, []shims.Piece{of(marked, 1)}, nil},
		{"its own stays", shims.Stock{of(marked, 5)}, []shims.Piece{of(measured, 1)}, mm, []shims.Piece{of(marked, 1)}, nil},
		{"of its own the first in the stock stays", shims.Stock{of(marked, 0), of(measured, 0)}, []shims.Piece{of(measured, 1), of(marked, 1)}, -mm, nil, []shims.Piece{of(measured, 1)}},
		{"one that has run out is none", shims.Stock{of(marked, 0), of(measured, 2)}, nil, mm, []shims.Piece{of(measured, 1)}, nil},
	}
	for _, row := range rows {
		c, err := shims.Choose(row.stock, shims.Rule{}, shims.Order{Foot: "a", Correction: row.up, Now: row.now})
		if err != nil {
			t.Fatal(err)
		}
		if s := c.Stacks[0]; !slices.Equal(s.In, row.in) || !slices.Equal(s.Out, row.out) {
			t.Errorf("%s: %+v", row.name, s)
		}
	}
	c, err := shims.Choose(nil, shims.Rule{},
		shims.Order{Foot: "a", Correction: -mm, Now: []shims.Piece{of(marked, 1)}}, shims.Order{Foot: "b", Correction: mm})
	if err != nil || !slices.Equal(c.Stacks[0].Out, []shims.Piece{of(marked, 1)}) || !slices.Equal(c.Stacks[1].In, []shims.Piece{of(marked, 1)}) {
		t.Errorf("%+v, %v", c, err)
	}
}

// The wanted total is rounded to the nanometre, halves away from zero; the error
// is judged against the rule in whole nanometres, with the edge allowed.
func TestRoundingAndEdges(t *testing.T) {
	stock := shims.Stock{{Marked: 100, Count: 1}}
	rows := []struct {
		name              string
		correction, error units.Length
		wanted            units.Length
		reached           bool
	}{
		{"a half", 90.5, 9, 91, true},
		{"less than a half", 90.4, 9, 90, false},
		{"on the edge", 90, 10, 90, true},
		{"a fraction of a nanometre allowed", 90, 9.9, 90, false},
		{"the edge from above", 110, 10, 110, true},
		{"a nanometre beyond", 111, 10, 111, false},
		{"a half below zero", -0.5, 0.5, -1, false},
	}
	for _, row := range rows {
		c, err := shims.Choose(stock, shims.Rule{Error: row.error}, shims.Order{Foot: "a", Correction: row.correction})
		if err != nil {
			t.Fatal(err)
		}
		if s := c.Stacks[0]; s.Wanted != row.wanted || s.Reached != row.reached {
			t.Errorf("%s: %+v", row.name, s)
		}
	}
	keep := shims.Rule{Keep: 99.5, Error: 1000}
	c, err := shims.Choose(shims.Stock{{Marked: 99, Count: 1}, {Marked: 100, Count: 1}}, keep, shims.Order{Foot: "a"})
	if err != nil || c.Stacks[0].Total != 100 {
		t.Errorf("%+v, %v", c, err)
	}
}
