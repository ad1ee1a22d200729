package train

import (
	"math"
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// floor is the ratio that the horizontal leaves.
func (s *shimSearch) floor() float64 {
	floor := 0.0
	for i := range s.joints {
		floor = max(floor, s.joints[i].floor)
	}
	return floor
}

// hopeless tells whether choices that rank no better than the key are not wanted.
func (s *shimSearch) hopeless(key shimKey) bool {
	if key.ratio > s.level || key.handled > s.handled {
		return true
	}
	key.squares *= 1 - 1e-12 // they were not summed in the order of the train
	return s.best != nil && (s.byRatio || s.within()) && key.compare(s.best.shimKey, s.byRatio) > 0
}

// wanted is the largest ratio that is wanted with so much handling at least.
func (s *shimSearch) wanted(handled int) float64 {
	if s.best != nil && (s.byRatio || s.within() && handled == s.best.handled) {
		return min(s.level, s.best.ratio)
	}
	return s.level
}

// place places the stations from the k-th place on; those before it rank so.
func (s *shimSearch) place(k int, sofar shimKey) {
	atLeast := sofar
	atLeast.handled += s.least[k]
	if s.hopeless(atLeast) {
		return
	}
	if k == len(s.places) {
		s.leaf(sofar)
		return
	}
	p := &s.places[k]
	st := &s.stations[p.station]
	for i := range st.levels {
		level := &st.levels[i]
		atLeast.handled = sofar.handled + level.handled + s.least[k+1]
		if s.hopeless(atLeast) {
			return // and so it is with more handling
		}
		r := s.window(p, s.wanted(atLeast.handled))
		first, _ := slices.BinarySearch(level.changes, math.Ceil(r.low))
		for _, by := range level.changes[first:] {
			if by > r.high {
				break
			}
			if !s.spend() {
				return
			}
			st.by = int64(by)
			next := sofar
			next.handled += level.handled
			s.settle(k, next)
			if s.cut || s.enough {
				return
			}
		}
	}
}

// settle goes on from a place that was filled, unless that leaves too much at the
// coupling, or there are too few pieces for the feet so far.
func (s *shimSearch) settle(k int, next shimKey) {
	p := &s.places[k]
	if next = s.after(p, next); next.ratio > s.level {
		return
	}
	st := &s.stations[p.station]
	before := len(s.placed)
	s.placed = append(s.placed, st.feet...)
	for _, f := range st.feet {
		s.totals[f] = s.feet[f].total + st.by
	}
	enough := true
	if s.scarce {
		_, next.handled, enough = s.lay(s.placed, s.totals, s.mostHandled(next.ratio))
	}
	if enough {
		s.place(k+1, next)
	}
	s.placed = s.placed[:before]
}

// mostHandled is what a choice of such a ratio may take and be wanted.
func (s *shimSearch) mostHandled(ratio float64) int {
	if s.within() && !s.byRatio || ratio == s.ratio() {
		return s.best.handled
	}
	return math.MaxInt
}

// after ranks a choice once a place is filled. With the second end of a machine its
// line is known.
func (s *shimSearch) after(p *place, key shimKey) shimKey {
	st := &s.stations[p.station]
	key.squares += float64(float64(st.by) * float64(st.by))
	switch p.end {
	case 1:
		s.lines[st.machine].Vertical = s.machines[st.machine].line(s.heights(st.machine))
		if p.joint >= 0 {
			key.ratio = max(key.ratio, s.joints[p.joint].worst([2]align.Centreline(s.lines[p.joint:p.joint+2])))
		}
	case 2:
		if !s.straight(st) {
			key.ratio = math.Inf(1)
		}
	}
	return key
}

// straight tells whether a station between the ends is near enough to their line.
func (s *shimSearch) straight(st *shimStation) bool {
	off := units.Length(float64(st.by) - s.machines[st.machine].chord(s.heights(st.machine), st.x))
	return !max(off, -off).Above(s.rule.Error)
}

// heights are the changes of the two ends of a machine.
func (s *shimSearch) heights(machine int) (by [2]int64) {
	if e := &s.machines[machine]; e.moving {
		by = [2]int64{s.stations[e.station[0]].by, s.stations[e.station[1]].by}
	}
	return by
}

// window is where the change at a place can be, the machine beside it and what was
// placed of its own standing already.
func (s *shimSearch) window(p *place, level float64) reach {
	st := &s.stations[p.station]
	r := st.reach
	if p.end == 2 {
		at := s.machines[st.machine].chord(s.heights(st.machine), st.x)
		slack := float64(s.rule.Error) + 1
		return r.and(reach{at - slack, at + slack})
	}
	if p.joint < 0 {
		return r
	}
	var around [2][2]reach
	for i, by := range s.heights(p.beside) {
		around[1-p.side][i] = reach{float64(by), float64(by)}
	}
	around[p.side] = s.reaches(st.machine)
	if p.end == 1 {
		by := float64(s.heights(st.machine)[0])
		around[p.side][0] = reach{by, by}
	}
	return s.joints[p.joint].window(&around, p.side, p.end, level)
}

// reaches are those of the two ends of a machine.
func (s *shimSearch) reaches(machine int) (r [2]reach) {
	if e := &s.machines[machine]; e.moving {
		r = [2]reach{s.stations[e.station[0]].reach, s.stations[e.station[1]].reach}
	}
	return r
}

// narrow finds the range of every station from the couplings, for ratios up to the
// level, and the least handling in it; false where nothing is left of one.
func (s *shimSearch) narrow() bool {
	if !s.reachable() {
		return false
	}
	s.least = make([]int, len(s.places)+1)
	for k, p := range slices.Backward(s.places) {
		least, ok := s.stations[p.station].least()
		if !ok {
			return false
		}
		s.least[k] = s.least[k+1] + least
	}
	return true
}

// reachable finds the ranges, and tells whether something is left of each.
func (s *shimSearch) reachable() bool {
	if s.floor() > s.level {
		return false
	}
	for i := range s.stations {
		st := &s.stations[i]
		if st.reach = st.whole(); st.reach.empty() {
			return false
		}
	}
	for range 2 * len(s.joints) {
		for j := range s.joints {
			around := [2][2]reach{s.reaches(j), s.reaches(j + 1)}
			for side := range around {
				for end := range around[side] {
					around[side][end] = s.joints[j].window(&around, side, end, s.level)
					if around[side][end].empty() {
						return false
					}
				}
				if e := &s.machines[j+side]; e.moving {
					s.stations[e.station[0]].reach, s.stations[e.station[1]].reach = around[side][0], around[side][1]
				}
			}
		}
	}
	return true
}

// whole is the range of all changes.
func (st *shimStation) whole() reach {
	r := nowhere
	for i := range st.levels {
		changes := st.levels[i].changes
		r = reach{min(r.low, changes[0]), max(r.high, changes[len(changes)-1])}
	}
	return r
}

// least is the least handling in the range.
func (st *shimStation) least() (int, bool) {
	for i := range st.levels {
		changes := st.levels[i].changes
		if k, _ := slices.BinarySearch(changes, math.Ceil(st.reach.low)); k < len(changes) && changes[k] <= st.reach.high {
			return st.levels[i].handled, true
		}
	}
	return 0, false
}

// leaf lays the heights, and keeps the choice if it is better than the best.
func (s *shimSearch) leaf(key shimKey) {
	c := shimChoice{shimKey: key}
	c.squares = 0
	for i := range s.stations {
		st := &s.stations[i]
		c.changes = append(c.changes, st.by)
		c.squares += float64(float64(st.by) * float64(st.by))
	}
	var ok bool
	if c.packs, c.handled, ok = s.lay(s.all, s.totals, s.mostHandled(key.ratio)); ok && s.better(&c) {
		s.best = &c
		s.enough = s.any && c.handled <= s.handled
	}
}
