package train

import (
	"math/rand/v2"
	"testing"
)

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
