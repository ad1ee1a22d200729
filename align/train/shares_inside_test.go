package train

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.org/collinear/internal/nearest"
	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// What is next to nothing is a share of the value and of one, so that there is some
// beside zero as well.
func TestNextToNothing(t *testing.T) {
	if got := above(3, 0.25); got != 4 {
		t.Errorf("a quarter of 3 and 1 above 3 is %v", got)
	}
	if got := above(0, 0.25); got != 0.25 {
		t.Errorf("a quarter of 0 and 1 above 0 is %v", got)
	}
}

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

// Of moves and plans that are equal the first counts, so that the answer is the same
// every time.
func TestFirstOfEqualsCounts(t *testing.T) {
	m := threeInLine().newModel(false, vertical)
	n := len(m.stops)
	f := fewest{r: &region{m: m}, left: make([]bool, n), moved: make([]bool, n), bestCount: n + 1}
	up, down := make([]float64, m.n), make([]float64, m.n)
	up[0], down[0] = 1, -1 // both feet of the first machine by the same
	if foot, ok := f.smallest(up); !ok || foot != 0 {
		t.Errorf("foot %d moves least, %v; want the first", foot, ok)
	}
	f.note(up)
	f.note(down)
	if f.best[0] != 1 || f.bestCount != 2 {
		t.Errorf("%d moves, the first %v", f.bestCount, f.best[0])
	}
}

// The fewest feet of four machines are proven whatever it takes, and the search of more
// is cut off, which is said.
func TestFewestFeetOfFourMachinesAreProven(t *testing.T) {
	for machines, want := range map[int]bool{4: true, 5: false} {
		tr, _ := crowded(rand.New(rand.NewPCG(6, 47)), machines)
		tr.Reference = ""
		for j := range tr.Joints {
			tr.Joints[j].Limits.PerPlane = true
			tr.Joints[j].Found.Value.Horizontal = tr.Joints[j].Found.Value.Vertical
		}
		p := &planner{train: &tr, space: new(workspace), scale: tr.scale(), work: FewestFeet}
		m := p.newModel(false, horizontal, vertical)
		b, ok := m.bestRatio()
		if !ok {
			t.Fatal("no ratio")
		}
		r := &region{m: m, level: b.ratio + 1, cuts: b.cuts}
		n := len(m.stops)
		all := fewest{r: r, left: make([]bool, n), moved: make([]bool, n), bestCount: n + 1, limit: mostNodes + 1}
		if all.search(nil); all.nodes <= mostNodes {
			t.Fatalf("%d machines take %d nodes, too few to tell", machines, all.nodes)
		}
		if _, proven := r.fewestFeet(); proven != want {
			t.Errorf("%d machines: proven is %v", machines, proven)
		}
	}
}

// An answer for which more rows come to light than there are rounds for is taken where
// the last of them is kept, and no other.
func TestRoundsComeToAnEnd(t *testing.T) {
	m := threeInLine().newModel(false, vertical)
	b, ok := m.bestRatio()
	if !ok {
		t.Fatal("no ratio")
	}
	kept := nearest.Row{Coefficients: make([]float64, m.n), Least: -1e6}
	kept.Coefficients[0] = 1
	for rounds, want := range map[int]bool{0: true, 1: true, mostRounds: true, mostRounds + 1: false} {
		r := region{m: m, level: 1 + b.ratio, cuts: b.cuts}
		left := rounds
		y := r.leastSquaresUnder(nil, func([]float64) []nearest.Row {
			if left == 0 {
				return nil
			}
			left--
			return []nearest.Row{kept}
		})
		if (y != nil) != want {
			t.Errorf("after %d rounds there is an answer: %v", rounds, !want)
		}
	}
}

// A vector that just fits is made in the room that there is.
func TestRoomIsUsedToItsEnd(t *testing.T) {
	var r room
	first := r.vector(1)
	r.empty()
	if all := r.vector(len(r.piece)); &all[0] != &first[0] {
		t.Error("memory anew for what fits")
	}
}
