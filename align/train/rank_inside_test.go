package train

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/shims"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// A ratio of exactly one is within the limits, so that the handling counts before it,
// and no choice is better than one that is as good.
func TestRatioOfOneIsWithin(t *testing.T) {
	choice := func(ratio float64, handled int) *shimChoice {
		return &shimChoice{shimKey: shimKey{ratio: ratio, handled: handled}}
	}
	for _, row := range []struct {
		name    string
		best, c *shimChoice
		want    bool
	}{
		{"nearer, with more handling", choice(1, 2), choice(0.9, 5), false},
		{"on the limit, with less handling", choice(0.9, 5), choice(1, 2), true},
		{"on the limit, where the best is outside", choice(1.1, 2), choice(1, 5), true},
		{"outside, where the best is on the limit", choice(1, 5), choice(1.1, 2), false},
		{"nearer, both outside", choice(1.2, 2), choice(1.1, 5), true},
		{"as good", choice(1, 2), choice(1, 2), false},
	} {
		s := &shimSearch{best: row.best}
		if got := s.better(row.c); got != row.want {
			t.Errorf("%s: better is %v", row.name, got)
		}
		if s.within() != (row.best.ratio <= 1) {
			t.Errorf("%s: the best is within is %v", row.name, s.within())
		}
	}
}

// onTheLimit is the search for a pump that is 65 um too low where 50 are allowed. All that
// can be done is to lift its inboard feet by a shim of 10 um, which is 15 at the coupling.
func onTheLimit(t *testing.T) *shimSearch {
	t.Helper()
	const mm, um = units.Millimetre, units.Micrometre
	tr := Train{
		Machines:  []Machine{{Name: "motor"}, {Name: "pump"}},
		Joints:    []Joint{{At: 800 * mm, Found: align.Exact(align.Centreline{Vertical: align.Line{Offset: -65 * um}}), Limits: tolerance.Limits{Offset: 50 * um, PerPlane: true}}},
		Reference: "motor",
	}
	tr.Machines[1].Feet = []Foot{
		{Name: "inboard", X: 1000 * mm, Vertical: Between(0, 10*um), Under: []Pack{{Name: "left"}, {Name: "right"}}},
		{Name: "outboard", X: 1400 * mm, Vertical: Fixed()},
	}
	p, ok := tr.solved(TotalTravel)
	if !ok {
		t.Fatal("no plan")
	}
	return newShimSearch(p, shims.Stock{{Marked: 10 * um, Count: 2}}, withDefaults(shims.Rule{}))
}

// What comes to exactly the limit is within: a search from worse down finds it, one choice
// of it is enough, and a walk has nothing left to gain.
func TestSearchesEndOnTheLimit(t *testing.T) {
	s := onTheLimit(t)
	s.best = &shimChoice{shimKey: shimKey{ratio: 1.3}, changes: []int64{0, 0}, packs: s.best.packs}
	if none := s.descend(s.nodes + 1000); none || s.ratio() != 1 || s.best.handled != 2 {
		t.Errorf("no choice within is %v, the best leaves %v with %d handled", none, s.ratio(), s.best.handled)
	}
	before := s.nodes
	if s.walk(s.nodes + 1000); s.nodes != before {
		t.Errorf("%d nodes more for a level that is reached", s.nodes-before)
	}
	s.best = nil
	if s.explore(bounds{level: 1, handled: 2, any: true}, s.nodes+1000); !s.enough {
		t.Error("the one choice of two pieces is not enough where two may be handled")
	}
}

// Sideways may come to the limit, and not beyond it.
func TestHeightsAreInReachUpToTheLimitSideways(t *testing.T) {
	s := onTheLimit(t)
	s.level = 1
	if s.joints[0].floor = 1; !s.reachable() {
		t.Error("nothing is in reach where sideways comes to the limit")
	}
	if s.joints[0].floor = 1.01; s.reachable() {
		t.Error("something is in reach where sideways goes beyond the limit")
	}
}

// A walk keeps what takes as much handling as the last of the best.
func TestWalksKeepWhatTakesAsMuch(t *testing.T) {
	for most, want := range map[int]int{1: 0, 2: 1, 3: 1} {
		s := onTheLimit(t)
		s.bounds, s.most = bounds{level: 1, handled: math.MaxInt}, s.nodes+1000
		if !s.narrow() {
			t.Fatal("nothing is in reach")
		}
		w := step{shimSearch: s, end: len(s.places), most: most}
		if w.from(0, shimKey{}); len(w.next) != want {
			t.Errorf("%d choices take %d pieces at most, want %d", len(w.next), most, want)
		}
	}
}

// Where a limit is that of a vector, the horizontal leaves the vertical the other side of
// a right triangle; in its own plane it leaves all. Half a nanometre and a little are
// more, for rounding.
func TestRoomBesideTheHorizontal(t *testing.T) {
	for perPlane, want := range map[bool]float64{false: 4, true: 5} {
		it := shimItem{limit: 4.49, aside: 3, perPlane: perPlane}
		if got := it.within(1).room; math.Abs(got-want) > 1e-9 {
			t.Errorf("plane by plane %v: the room is %v, want %v", perPlane, got, want)
		}
	}
}

// The ends of a range are in it.
func TestRangesHaveTheirEnds(t *testing.T) {
	r := reach{-2, 3}
	for x, want := range map[float64]bool{-2.5: false, -2: true, 0: true, 3: true, 3.5: false} {
		if r.has(x) != want {
			t.Errorf("%v is in %v: %v", x, r, !want)
		}
	}
	if (reach{3, 3}).empty() || !(reach{3, 2}).empty() {
		t.Error("one height is a range, and none is not")
	}
	if got := r.times(-2); got != (reach{-6, 4}) {
		t.Errorf("turned round and doubled it is %v", got)
	}
}
