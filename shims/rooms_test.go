package shims

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"example.org/collinear/units"
)

// How long the lists of packs are at first makes no difference to the choice, not
// even between choices that cost the same: what was cut off is looked at before
// anything is called proven. Lists of two and three are nearly always cut off.
func TestListsAreLongEnough(t *testing.T) {
	r := rand.New(rand.NewPCG(16, 17))
	scarce := 0
	for n := range 3000 {
		stock, rule, orders := crowded(r)
		choose := func(room int) *search {
			s := new(search)
			s.begin(stock, rule, orders)
			s.room = room
			s.run()
			return s
		}
		want := choose(firstRoom)
		if want.total != want.bound {
			scarce++
		}
		for _, room := range []int{2, 3, 5} {
			got := choose(room)
			same := func(a, b pack) bool { return a.cost == b.cost && slices.Equal(a.pieces(), b.pieces()) }
			if !got.proven || !want.proven || !slices.EqualFunc(got.chosen, want.chosen, same) {
				t.Fatalf("case %d, lists of %d: proven %v, %v, want %v\n%+v", n, room, got.proven, got.chosen, want.chosen, stock)
			}
		}
	}
	if scarce < 1000 {
		t.Errorf("the feet are in each other's way in %d cases only", scarce)
	}
}

// A search that was used before begins as a new one does: all that it keeps is
// memory.
func TestSearchesBeginAnew(t *testing.T) {
	r := rand.New(rand.NewPCG(18, 19))
	used := new(search)
	for n := range 300 {
		stock, rule, orders := crowded(r)
		for i := range stock {
			stock[i].Marked *= units.Length(1 + n%7) // so that their steps differ
		}
		fresh := new(search)
		for _, s := range []*search{used, fresh} {
			s.begin(stock, rule, orders)
			s.taken = nil // made when packs are laid
		}
		if !reflect.DeepEqual(used, fresh) {
			t.Fatalf("case %d: got %+v, want %+v", n, used, fresh)
		}
		used.run()
		used.lay(orders)
	}
}

// crowded makes a problem of few pieces with many ways to lay them.
func crowded(r *rand.Rand) (Stock, Rule, []Order) {
	stock := make(Stock, 2+r.IntN(5))
	for i := range stock {
		stock[i] = Piece{Marked: units.Length(1 + r.IntN(8)), Count: 1 + r.IntN(2)}
	}
	orders := make([]Order, 2+r.IntN(3))
	for i := range orders {
		orders[i] = Order{Foot: string(rune('a' + i)), Correction: units.Length(r.IntN(20))}
	}
	return stock, Rule{Error: units.Length(1 + r.IntN(3)), Pieces: 1 + r.IntN(4), Nodes: 1_000_000}, orders
}
