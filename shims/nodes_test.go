package shims_test

import (
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// What the search costs in nodes, also where it is cut off, and how many pieces it asks
// to be added. A bound that bounds less, or a part of the budget that is another,
// changes no proven answer and would not be seen elsewhere. Where these numbers change
// on purpose, look at the times before the new ones are written here.
func TestNodes(t *testing.T) {
	for _, row := range []struct {
		name  string
		nodes int // of the rule
		draw  func(*rand.Rand) (shims.Stock, shims.Rule, []shims.Order)
		want  []int // nodes, and pieces to add
	}{
		{"small", 0, drawSmall, []int{
			6, 1, 1, 1, 2, 0, 4, 1, 1, 1, 34, 2, 1, 1, 6, 1, 24, 2, 3, 1, 0, 1, 6, 2,
			3, 1, 0, 0, 6, 2, 3, 2, 3, 3, 6, 2, 3, 1, 117, 2, 0, 1, 0, 3, 19, 2, 0, 0,
		}},
		{"small, cut off", 25, drawSmall, []int{
			6, 1, 1, 1, 2, 0, 4, 1, 1, 1, 25, 2, 1, 1, 6, 1, 24, 2, 3, 1, 0, 1, 6, 2,
			3, 1, 0, 0, 6, 2, 3, 2, 3, 3, 6, 2, 3, 1, 25, 2, 0, 1, 0, 3, 19, 2, 0, 0,
		}},
		{"scarce", 0, drawScarce, []int{
			251, 3, 24, 3, 84, 1, 238, 3, 864, 5, 29, 0, 19, 1, 3, 0, 27, 2, 3065, 4, 369, 3, 599, 5,
			26, 3, 2126, 5, 31, 1, 426, 3, 971, 2, 81, 1, 95, 0, 21, 4, 80, 3, 2312, 1, 6, 3, 640, 3,
		}},
		{"scarce, cut off", 300, drawScarce, []int{
			251, 3, 24, 3, 84, 1, 192, 3, 300, 5, 29, 0, 19, 1, 3, 0, 27, 2, 300, 4, 223, 3, 197, 5,
			26, 3, 300, 4, 31, 1, 300, 3, 300, 2, 81, 1, 95, 0, 21, 4, 80, 3, 213, 4, 6, 3, 203, 3,
		}},
	} {
		var got []int
		for seed := range uint64(24) {
			stock, rule, orders := row.draw(rand.New(rand.NewPCG(seed, 31)))
			rule.Nodes = row.nodes
			c, err := shims.Choose(stock, rule, orders...)
			if err != nil {
				t.Fatal(err)
			}
			add := 0
			for _, p := range c.Add {
				add += p.Count
			}
			got = append(got, c.Nodes, add)
		}
		if !slices.Equal(got, row.want) {
			t.Errorf("%s: got %d", row.name, got)
		}
	}
}

func drawSmall(r *rand.Rand) (shims.Stock, shims.Rule, []shims.Order) { return small(r) }

// drawScarce draws feet that want about the same, from a box that has a few pieces of
// odd thicknesses, and sometimes what lies there already or more to keep than wanted.
func drawScarce(r *rand.Rand) (stock shims.Stock, rule shims.Rule, orders []shims.Order) {
	const um = units.Micrometre
	for range 9 {
		stock = append(stock, shims.Piece{Marked: units.Length(50+r.IntN(2000)) * um, Count: 1 + r.IntN(2)})
	}
	orders = many(3 + r.IntN(3))
	for i := range orders {
		orders[i].Correction = units.Length(r.IntN(3000)-200) * um
		if r.IntN(3) == 0 {
			orders[i].Now = []shims.Piece{{Marked: stock[r.IntN(9)].Marked, Count: 1 + r.IntN(2)}}
		}
		if i > 0 && r.IntN(4) == 0 {
			orders[i].Correction, orders[i].Now = orders[i-1].Correction, slices.Clone(orders[i-1].Now)
		}
	}
	rule.Pieces = 2 + r.IntN(4)
	if r.IntN(3) == 0 {
		rule.Keep = units.Length(r.IntN(900)) * um
	}
	return stock, rule, orders
}
