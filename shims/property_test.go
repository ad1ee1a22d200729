package shims_test

import (
	"slices"
	"testing"

	"example.org/collinear/shims"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// drawn lets rapid throw the dice.
type drawn struct{ *rapid.T }

func (d drawn) IntN(n int) int { return rapid.IntRange(0, n-1).Draw(d.T, "dice") }

// mustCost chooses and returns what that costs.
func mustCost(t *rapid.T, stock shims.Stock, rule shims.Rule, orders []shims.Order) [5]int64 {
	c, err := shims.Choose(stock, rule, orders...)
	if err != nil || !c.Proven {
		t.Fatalf("proven %v, %v", c.Proven, err)
	}
	return costOf(rule, orders, c)
}

// In which order the rows of the stock and the orders stand does not matter to
// what the choice costs.
func TestOrderDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stock, rule, orders := small(drawn{t})
		before := mustCost(t, stock, rule, orders)
		stock = rapid.Permutation(stock).Draw(t, "stock")
		orders = rapid.Permutation(orders).Draw(t, "orders")
		if after := mustCost(t, stock, rule, orders); after != before {
			t.Errorf("%v, and %v before", after, before)
		}
	})
}

// With all lengths so many times as large the same packs are chosen: the unit in
// which lengths are counted has no part in it.
func TestScaling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stock, rule, orders := small(drawn{t})
		if rule.Error == 0 {
			rule.Error = shims.DefaultError
		}
		before, err := shims.Choose(stock, rule, orders...)
		if err != nil {
			t.Fatal(err)
		}
		times := units.Length(rapid.IntRange(2, 50).Draw(t, "times"))
		scaled := func(pieces []shims.Piece) []shims.Piece {
			pieces = slices.Clone(pieces)
			for i := range pieces {
				pieces[i].Marked *= times
				pieces[i].Measured *= times
			}
			return pieces
		}
		rule.Error *= times
		rule.Keep *= times
		for i := range orders {
			orders[i].Correction *= times
			orders[i].SoftFoot *= times
			orders[i].Now = scaled(orders[i].Now)
		}
		after, err := shims.Choose(scaled(stock), rule, orders...)
		if err != nil {
			t.Fatal(err)
		}
		for i := range before.Stacks {
			if !slices.Equal(scaled(before.Stacks[i].Pieces), after.Stacks[i].Pieces) {
				t.Errorf("foot %d: %v, times %v it is %v", i, before.Stacks[i].Pieces, times, after.Stacks[i].Pieces)
			}
		}
	})
}

// When the packs have been laid as chosen, choosing again changes nothing.
func TestChoosingAgainChangesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stock, rule, orders := small(drawn{t})
		c, err := shims.Choose(stock, rule, orders...)
		if err != nil {
			t.Fatal(err)
		}
		box := slices.Clone(stock)
		for i, s := range c.Stacks {
			for _, p := range s.In {
				box = without(box, p)
			}
			box = append(box, s.Out...)
			orders[i] = shims.Order{Foot: s.Foot, Correction: -s.Error, Now: s.Pieces}
		}
		again, err := shims.Choose(positive(box), rule, orders...)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range again.Stacks {
			if len(s.In) != 0 || len(s.Out) != 0 {
				t.Errorf("%s: out %v, in %v", s.Foot, s.Out, s.In)
			}
		}
	})
}

// without takes pieces out of the box; what the box lacks comes out of a foot
// later, and stands with a count below zero until then.
func without(box shims.Stock, p shims.Piece) shims.Stock {
	p.Count = -p.Count
	return append(box, p)
}

// positive adds up what there is of each kind.
func positive(box shims.Stock) shims.Stock {
	var sums shims.Stock
	for _, p := range box {
		i := slices.IndexFunc(sums, func(q shims.Piece) bool { return p.Marked == q.Marked && p.Measured == q.Measured })
		if i < 0 {
			sums = append(sums, p)
		} else {
			sums[i].Count += p.Count
		}
	}
	return sums
}
