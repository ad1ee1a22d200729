package train

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// A share of the budget is one of what is left of it.
func TestShareOfTheBudget(t *testing.T) {
	b := budget{nodes: 10}
	if got := b.share(50, 4); got != 20 {
		t.Errorf("a quarter of the way from 10 to 50 is %d", got)
	}
}

// However many packs there are to list, half of the nodes are left for the choice, and a
// choice takes the nodes once more at the most.
func TestListsLeaveHalfOfTheNodes(t *testing.T) {
	cut := 0
	for seed := range uint64(8) {
		tr, _ := crowded(rand.New(rand.NewPCG(seed, 43)), 3)
		p, ok := tr.solved(TotalTravel)
		if !ok {
			t.Fatal(seed)
		}
		const nodes = 3000
		s := newShimSearch(p, shims.CommonMetric(8), withDefaults(shims.Rule{Pieces: 5, Nodes: nodes}))
		if s.nodes > nodes/2 {
			t.Errorf("seed %d: %d of %d nodes for the lists", seed, s.nodes, nodes)
		}
		if s.truncated {
			cut++
		}
		if s.run(); s.nodes > 2*nodes {
			t.Errorf("seed %d: %d nodes of %d", seed, s.nodes, nodes)
		}
	}
	if cut == 0 {
		t.Error("no list was cut off")
	}
}

// twoFeet is the search for two single feet, one piece of a millimetre under each, with so
// many in the box.
func twoFeet(t *testing.T, box, pieces int) *shimSearch {
	t.Helper()
	p := threeInLine()
	machine := &p.train.Machines[1]
	p.train.Reference = p.train.Machines[0].Name
	machine.Feet[0].Under = []Pack{
		{Name: "left", Now: []shims.Piece{{Marked: units.Millimetre, Count: 1}}},
		{Name: "right", Now: []shims.Piece{{Marked: units.Millimetre, Count: 1}}},
	}
	for i, m := range p.train.Machines {
		for k := range m.Feet {
			if i != 1 || k != 0 {
				m.Feet[k].Vertical = Fixed()
			}
		}
	}
	planned, ok := p.train.solved(TotalTravel)
	if !ok {
		t.Fatal("no plan")
	}
	return newShimSearch(planned, shims.Stock{{Marked: units.Millimetre, Count: box}}, withDefaults(shims.Rule{Pieces: pieces}))
}

// Pieces run short where there are fewer than all feet may have, those under them
// counted.
func TestPiecesRunShort(t *testing.T) {
	for box, want := range map[int]bool{3: true, 4: false, 5: false} {
		if s := twoFeet(t, box, 3); s.scarce != want {
			t.Errorf("with two under the feet and %d beside them, for two feet of three, it is %v that they run short", box, s.scarce)
		}
	}
}

// What lies under the feet is listed also where no nodes are left and no pack may have
// more pieces.
func TestFullPacksAreListedFirst(t *testing.T) {
	s := twoFeet(t, 2, 1)
	s.packs, s.most = nil, s.nodes
	s.listWanted(wantedPacks{most: 1, totals: []reach{{1, 1e9}, {1, 1e9}}, handled: math.MaxInt})
	if len(s.packs) != 1 || s.packs[0].compare(s.feet[0].now()) != 0 {
		t.Errorf("%v are listed, want the pack of one piece", s.packs)
	}
}
