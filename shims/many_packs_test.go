package shims_test

import (
	"slices"
	"testing"

	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// Two feet want the only piece of 30 mm. Five of 51 thinner sizes do as well, in
// more ways of exactly 30 mm than a list can have; four come to no more than 24.2
// mm. So one foot has the one piece and the other five, which is the best; but with
// packs left out of the lists that cost no more than those on them the search must
// not call it proven, however many nodes were left.
func TestMorePacksThanListsHold(t *testing.T) {
	stock := shims.Stock{{Marked: 30 * mm, Count: 1}}
	const sizes, middle = 51, 25
	for i := range sizes {
		stock = append(stock, shims.Piece{Marked: 6*mm + units.Length(i-middle)*2*um, Count: 5})
	}
	if ways := fives(sizes, 5*middle); ways <= 32_768 {
		t.Fatalf("only %d ways", ways)
	}
	rule := shims.Rule{Error: 10 * um, Pieces: 5, Nodes: 20_000_000}
	orders := []shims.Order{{Foot: "a", Correction: 30 * mm}, {Foot: "b", Correction: 30 * mm}}
	c, err := shims.Choose(stock, rule, orders...)
	if err != nil {
		t.Fatal(err)
	}
	checkChoice(t, stock, rule, orders, c)
	if cost, want := costOf(rule, orders, c), [5]int64{0, 0, 6, 0, 6}; cost != want {
		t.Errorf("costs %v, want %v", cost, want)
	}
	if c.Proven || c.Nodes >= rule.Nodes {
		t.Errorf("proven %v after %d of %d nodes", c.Proven, c.Nodes, rule.Nodes)
	}
	if !slices.ContainsFunc(c.Warnings, func(f units.Fault) bool { return f.Code == units.Suspect }) {
		t.Error("no warning that the choice is not proven")
	}
}

// fives counts in how many ways five numbers below n, equal ones among them, come
// to a sum.
func fives(n, sum int) int {
	ways := make([][6]int, sum+1) // of each sum, by how many numbers
	ways[0][0] = 1
	for number := range n {
		for s := number; s <= sum; s++ {
			for count := range 5 {
				ways[s][count+1] += ways[s-number][count]
			}
		}
	}
	return ways[sum][5]
}
