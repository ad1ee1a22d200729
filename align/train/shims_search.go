package train

import (
	"math"
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/shims"
)

// shimStation is a station of a machine that is not the reference.
type shimStation struct {
	machine, foot int
	x             float64     // nm
	feet          []int       // single feet that change with it; none where it is fixed
	levels        []shimLevel // what it can change by, least handling first
	reach         reach       // of its changes, at the level of the search
	by            int64       // as chosen
}

// shimLevel lists changes that take the same handling, lowest first.
type shimLevel struct {
	handled int
	changes []float64
}

// shimSearch looks for the best choice: depth first over the stations, machine after
// machine from one on, and over the changes of each from the least handling on. What
// the couplings to machines that are placed already allow are ranges; what handling
// is left to the others at least is a bound.
type shimSearch struct {
	shimBox
	planner  *planner
	rule     shims.Rule
	machines []ends
	stations []shimStation // in the order of the train
	joints   []shimJoint
	places   []place
	least    []int // handling of the places from each on
	all      []int // feet
	scarce   bool  // some size may run out

	bounds
	lines  []align.Centreline // of the machines as far as they are placed
	placed []int              // feet
	totals []int64            // under the feet, as far as they are placed
	enough bool               // what was looked for was found
	best   *shimChoice        // so far

	truncated bool // not all packs were listed
	closed    bool // the search came to its end
}

// place is a station in the order in which stations are placed.
type place struct {
	station int
	end     int // 0 or 1: the first or last of its machine; 2: one between them
	joint   int // the coupling to the machine that is placed already; -1: none
	side    int // of this machine at that coupling
	beside  int // the machine on the other side
}

// proven tells whether no choice is better than the best.
func (s *shimSearch) proven() bool { return s.closed && !s.truncated }

// bounds say what a search looks for.
type bounds struct {
	level   float64 // the largest ratio that is wanted
	handled int     // the most handling that is wanted
	byRatio bool    // the ratio comes before the handling
	any     bool    // one such choice is enough
}

// largest is a ratio that no coupling comes to.
const largest = 1e18

// run looks for the best choice within all limits, and where there is none, for the
// nearest.
func (s *shimSearch) run() {
	s.walk(s.share(s.rule.Nodes, 8))
	none := s.descend(s.share(s.rule.Nodes, 4))
	if s.closed = none; none && s.best == nil {
		return
	}
	if !none {
		s.closed = s.byHandling(s.rule.Nodes)
		if s.within() {
			return
		}
	}
	end := s.nodes + s.rule.Nodes
	if !s.closed {
		s.descend(s.share(end, 2))
	}
	s.closed = s.explore(bounds{level: s.ratio(), handled: math.MaxInt, byRatio: true}, end) && !s.within()
}

// explore searches within bounds and up to so many nodes, and tells whether it came
// to its end.
func (s *shimSearch) explore(b bounds, most int) (whole bool) {
	s.bounds, s.most, s.cut, s.enough = b, most, false, false
	if s.narrow() {
		s.place(0, shimKey{ratio: s.floor()})
	}
	return !s.cut
}

// descend lowers the ratio of the best choice in large steps, until it is within all
// limits, or a step more is not found. It tells whether there is no choice within.
func (s *shimSearch) descend(most int) (none bool) {
	const step, steps = 0.7, 128 // so many lead from any ratio to one
	for range steps {
		if s.within() {
			break
		}
		level := max(1, step*s.ratio())
		whole := s.explore(bounds{level: level, handled: math.MaxInt, byRatio: true, any: true}, most)
		if s.best == nil || s.best.ratio > level {
			return whole
		}
	}
	return false
}

// byHandling finds the best choice within all limits, if there is one, by halving the
// range of what it may take, and then looking at all that takes as little. It tells
// whether it came to its end.
func (s *shimSearch) byHandling(most int) (whole bool) {
	whole = s.within() || s.explore(bounds{level: 1, handled: math.MaxInt, any: true}, s.share(most, 2))
	if !s.within() {
		return whole
	}
	low := 0
	for range s.best.handled { // more often than it can be halved
		if !whole || low >= s.best.handled {
			break
		}
		middle := (low + s.best.handled) / 2
		whole = s.explore(bounds{level: 1, handled: middle, any: true}, s.share(most, 2))
		if s.best.handled > middle {
			low = middle + 1
		}
	}
	return s.explore(bounds{level: 1, handled: s.best.handled}, most) && whole
}

// walk looks for a good choice, where there is none within all limits, from machine to
// machine, and goes on from the best of each: so it may miss all there are.
func (s *shimSearch) walk(most int) {
	s.enough = false
	for _, level := range []float64{1, 2, 4} {
		if s.ratio() <= level {
			return
		}
		s.bounds = bounds{level: level, handled: math.MaxInt, byRatio: level > 1}
		if s.narrow() {
			s.walkAt(s.share(most, 2))
		}
	}
}

// breadth is how many choices a walk goes on from.
const breadth = 200

// walkAt walks once; every place has an equal part of the nodes.
func (s *shimSearch) walkAt(most int) {
	at := []shimChoice{{shimKey: shimKey{ratio: s.floor()}, changes: make([]int64, len(s.stations))}}
	end := 0
	for k := 0; k < len(s.places); k = end {
		machine := s.stations[s.places[k].station].machine
		for end = k + 1; end < len(s.places) && s.stations[s.places[end].station].machine == machine; {
			end++
		}
		s.most, s.cut = s.nodes+(most-s.nodes)*(end-k)/(len(s.places)-k+1), false // one part is for the pieces
		w := step{shimSearch: s, end: end, most: math.MaxInt}
		for i := range at {
			s.stand(at[i].changes)
			w.from(k, at[i].shimKey)
		}
		at = w.best()
	}
	s.most, s.cut = most, false
	for i := range at {
		s.stand(at[i].changes)
		s.leaf(at[i].shimKey)
	}
}

// stand sets the heights.
func (s *shimSearch) stand(changes []int64) {
	for i := range s.stations {
		st := &s.stations[i]
		st.by = changes[i]
		for _, f := range st.feet {
			s.totals[f] = s.feet[f].total + st.by
		}
	}
	for i := range s.machines {
		s.lines[i].Vertical = s.machines[i].line(s.heights(i))
	}
}

// step is that of a walk to one machine.
type step struct {
	*shimSearch
	end  int // of its places
	next []shimChoice
	most int // handling that is still among the best
}

// best returns the best, in order.
func (w *step) best() []shimChoice {
	slices.SortStableFunc(w.next, func(a, b shimChoice) int { return a.compare(b.shimKey, false) })
	w.next = w.next[:min(len(w.next), breadth)]
	if len(w.next) == breadth {
		w.most = w.next[breadth-1].handled
	}
	return w.next
}

// from fills the places from the k-th on.
func (w *step) from(k int, sofar shimKey) {
	if k == w.end {
		c := shimChoice{shimKey: sofar}
		for i := range w.stations {
			c.changes = append(c.changes, w.stations[i].by)
		}
		if w.next = append(w.next, c); len(w.next) == 4*breadth {
			w.best()
		}
		return
	}
	p := &w.places[k]
	st := &w.stations[p.station]
	r := w.window(p, w.level)
	for i := range st.levels {
		level := &st.levels[i]
		if sofar.handled+level.handled > w.most {
			return
		}
		first, _ := slices.BinarySearch(level.changes, math.Ceil(r.low))
		for _, by := range level.changes[first:] {
			if by > r.high || !w.spend() {
				break
			}
			st.by = int64(by)
			next := sofar
			next.handled += level.handled
			if next = w.after(p, next); next.ratio <= w.level {
				w.from(k+1, next)
			}
		}
	}
}
