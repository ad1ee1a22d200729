package train

import (
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/shims"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// crowded is a made-up train of so many machines, on two stations or three, with a
// few pieces under each foot and in the box.
func crowded(r *rand.Rand, machines int) (Train, shims.Stock) {
	const mm, um = units.Millimetre, units.Micrometre
	sizes := []units.Length{50 * um, 100 * um, 200 * um, 500 * um}
	limits := []Limit{{}, {}, Between(-300*um, 400*um), AtLeast(-100 * um), AtMost(250 * um), Fixed()}
	t := Train{Reference: "0"}
	for i := range machines {
		m := Machine{Name: string(rune('0' + i))}
		for k := range 2 + r.IntN(2) {
			f := Foot{Name: string(rune('a' + k)), X: units.Length(1000*i+300*k+r.IntN(90)) * mm, Vertical: limits[r.IntN(len(limits))]}
			for p := range 1 + r.IntN(2) {
				pack := Pack{Name: string(rune('l' + p))}
				for range 1 + r.IntN(2) {
					pack.Now = append(pack.Now, shims.Piece{Marked: sizes[r.IntN(4)], Count: 1})
				}
				f.Under = append(f.Under, pack)
			}
			m.Feet = append(m.Feet, f)
		}
		t.Machines = append(t.Machines, m)
		if i > 0 {
			off := align.Line{Offset: units.Length(r.IntN(800)-400) * um, Slope: units.Slope(r.IntN(1000)-500) * 1e-6}
			t.Joints = append(t.Joints, Joint{
				At: units.Length(1000*i-100) * mm, Found: align.Exact(align.Centreline{Vertical: off}),
				Limits: tolerance.Limits{Offset: units.Length(20+r.IntN(80)) * um, Slope: units.Slope(100+r.IntN(400)) * 1e-6, PerPlane: r.IntN(2) == 0},
			})
		}
	}
	var stock shims.Stock
	for _, s := range sizes {
		stock = append(stock, shims.Piece{Marked: s, Count: r.IntN(6)})
	}
	return t, stock
}

// What the search for stacks costs in nodes, and what it comes to with them, also
// where it is cut off. A bound that bounds less, or a part of the budget that is
// another, changes no proven answer and would not be seen elsewhere. Where these
// numbers change on purpose, look at the times before the new ones are written here.
func TestNodesOfShims(t *testing.T) {
	for _, row := range []struct {
		machines, nodes int
		want            []int // nodes, and pieces handled or -1
	}{
		{2, 200_000, []int{441, 4, 432, 3, 1154, 0, 258, 3, 199, 4, 255, 3, 362, 5, 707, 5, 541, 3, 246, 2, 80, 0, 1160, 8, 103, 2, 490, 2, 206, 8, 254, 2}},
		{2, 2000, []int{232, 4, 260, 3, 1142, 0, 215, 3, 199, 4, 223, 3, 322, 5, 485, 5, 307, 3, 217, 2, 80, 0, 371, 8, 103, 2, 315, 2, 172, 8, 244, 2}},
		{3, 3000, []int{349, 12, 763, 9, 942, 10, 583, 7, 1431, 9, 338, 8, 620, 4, 1130, 13, 618, 4, 482, 9, 393, 5, 4135, 11, 329, 6, 1098, 9, 404, 11, 350, 2}},
		{3, 20_000, []int{709, 12, 1471, 9, 1456, 10, 1253, 7, 2135, 9, 402, 8, 1006, 4, 1773, 13, 1076, 4, 1035, 9, 472, 5, 13259, 11, 420, 6, 2004, 9, 555, 11, 441, 2}},
	} {
		var got []int
		for seed := range uint64(16) {
			tr, stock := crowded(rand.New(rand.NewPCG(seed, 29)), row.machines)
			p, ok := tr.solved(TotalTravel)
			if !ok {
				t.Fatal(seed)
			}
			s := newShimSearch(p, stock, withDefaults(shims.Rule{Pieces: 3, Nodes: row.nodes}))
			s.run()
			handled := -1
			if s.best != nil {
				handled = s.best.handled
			}
			got = append(got, s.nodes, handled)
		}
		if !slices.Equal(got, row.want) {
			t.Errorf("%d machines, %d nodes: got %d", row.machines, row.nodes, got)
		}
	}
}

// The same where there are so many kinds of pieces that walks keep only the best of what
// they come to.
func TestNodesOfWideWalks(t *testing.T) {
	for _, row := range []struct {
		seed           uint64
		wide           float64 // limits
		nodes, handled int
	}{
		{0, 1, 4022, 5},
		{10, 6, 3220, 1},
	} {
		tr, _ := crowded(rand.New(rand.NewPCG(row.seed, 43)), 3)
		for i := range tr.Joints {
			limits := &tr.Joints[i].Limits
			limits.Offset, limits.Slope = limits.Offset*units.Length(row.wide), limits.Slope*units.Slope(row.wide)
		}
		p, ok := tr.solved(TotalTravel)
		if !ok {
			t.Fatal(row.seed)
		}
		s := newShimSearch(p, shims.CommonMetric(8), withDefaults(shims.Rule{Pieces: 3, Nodes: 40_000}))
		if s.run(); s.nodes != row.nodes || s.best.handled != row.handled {
			t.Errorf("seed %d: %d nodes, %d handled", row.seed, s.nodes, s.best.handled)
		}
	}
}

// The same of the search for the fewest feet.
func TestNodesOfFewestFeet(t *testing.T) {
	want := []int{ // nodes, of sixty at most, and feet that move
		26, 4, 20, 3, 28, 4, 3, 2, 11, 2, 59, 7, 14, 2, 35, 3, 29, 6, 8, 2, 1, 0, 1, 0,
		9, 3, 11, 1, 52, 5, 1, 0, 7, 1, 7, 1, 4, 1, 47, 5, 45, 3, 14, 4, 10, 2, 50, 2,
		14, 2, 13, 2, 60, 6, 9, 1, 41, 3, 60, 7, 1, 0, 19, 2, 60, 4, 4, 1, 8, 3, 38, 4,
		9, 2, 17, 6, 60, 3, 14, 2,
	}
	var got []int
	for seed := range uint64(40) {
		tr, _ := crowded(rand.New(rand.NewPCG(seed, 37)), 3+int(seed%3))
		p := &planner{train: &tr, space: new(workspace), scale: tr.scale(), work: FewestFeet}
		m := p.newModel(false, vertical)
		b, ok := m.bestRatio()
		if !ok {
			continue
		}
		r := &region{m: m, level: b.ratio + 1, cuts: b.cuts}
		n := len(m.stops)
		f := fewest{r: r, left: make([]bool, n), moved: make([]bool, n), bestCount: n + 1, limit: 60}
		f.search(nil)
		got = append(got, f.nodes, f.bestCount)
	}
	if !slices.Equal(got, want) {
		t.Errorf("got %d", got)
	}
}
