package train

import (
	"cmp"
	"math"
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// newShimSearch lays out the search for the heights of a train whose horizontal
// moves are planned.
func newShimSearch(p *planner, stock shims.Stock, rule shims.Rule) *shimSearch {
	t := p.train
	s := &shimSearch{planner: p, rule: rule, machines: make([]ends, len(t.Machines)), lines: slices.Clone(p.lines)}
	var packs [][]shims.Piece
	for i := range t.Machines {
		s.lines[i].Vertical = align.Line{}
		if i != t.reference() {
			packs = s.addMachine(packs, i)
		}
	}
	s.fill(stock, packs)
	s.totals = make([]int64, len(s.feet))
	for i := range s.feet {
		s.all = append(s.all, i)
	}
	for _, n := range s.left {
		s.scarce = s.scarce || n < rule.Pieces*len(s.feet)
	}
	for j := range t.Joints {
		lines := [2]align.Centreline(s.lines[j : j+2])
		s.joints = append(s.joints, newShimJoint(&t.Joints[j], &s.machines[j], &s.machines[j+1], lines))
	}
	s.begin()
	s.truncated, s.cut = false, false
	s.listAll()
	return s
}

// listAll lists the packs and the changes from which the search chooses: all that can be
// as good as the best known.
func (s *shimSearch) listAll() {
	known := s.keep()
	s.most = s.rule.Nodes / 2 * 3 / 4 // the rest is for the changes, and for the search
	s.listPacks()
	s.most = s.rule.Nodes / 2
	s.listStations()
	s.find(known)
}

// listStations lists the changes of all stations, with an equal part of the nodes for
// each, and what the ones before left over.
func (s *shimSearch) listStations() {
	end := s.most
	s.places = nil
	for i := range s.stations {
		s.truncated, s.cut = s.truncated || s.cut, false
		s.most = s.share(end, len(s.stations)-i)
		s.listChanges(&s.stations[i])
	}
	s.truncated, s.cut = s.truncated || s.cut, false
	s.arrange()
}

// keep adds the packs of the best choice to an empty list, and returns them.
func (s *shimSearch) keep() (known []shimPack) {
	if s.best != nil {
		for _, k := range s.best.packs {
			known = append(known, s.packs[k])
		}
	}
	s.packs = slices.Clone(known)
	return known
}

// find sets the packs of the best choice, as they are listed now.
func (s *shimSearch) find(known []shimPack) {
	for i := range known {
		s.best.packs[i], _ = slices.BinarySearchFunc(s.packs, known[i], shimPack.compare)
	}
}

// begin looks for a good choice to begin with: nothing changes, or every foot of a
// station gives the same piece or none, and gets the same few.
func (s *shimSearch) begin() {
	s.most = s.rule.Nodes / 16
	for i := range s.stations {
		s.stations[i].reach = anywhere
	}
	s.listAdded()
	s.index()
	s.listStations()
	s.stay()
	s.walk(s.rule.Nodes / 12)
	if s.within() {
		s.byHandling(s.nodes + s.rule.Nodes/32)
	}
}

// listAdded lists what lies under the feet, and what comes of it where every foot of a
// station gives the same piece or none and gets the same, first what takes the least.
func (s *shimSearch) listAdded() {
	const most = 3 // pieces that are added
	for i := range s.feet {
		if f := &s.feet[i]; f.pieces <= s.rule.Pieces {
			s.packs = append(s.packs, f.now())
		}
	}
	for more := range most + 1 {
		for i := range s.stations {
			feet := s.stations[i].feet
			if s.stations[i].fixed() {
				continue
			}
			if more < most {
				s.exchange(feet, -1, nil, more+1, 0)
			}
			for out := range s.sizes {
				if !slices.ContainsFunc(feet, func(f int) bool { return s.feet[f].bySize[out] == 0 }) {
					s.exchange(feet, out, nil, more, 0)
				}
			}
		}
	}
}

// addMachine adds the stations of a machine and its single feet, and their packs to
// the list.
func (s *shimSearch) addMachine(packs [][]shims.Piece, i int) [][]shims.Piece {
	t := s.planner.train
	m := &t.Machines[i]
	e := &s.machines[i]
	e.moving = true
	var x []float64
	first := len(s.stations)
	for k := range m.Feet {
		f := &m.Feet[k]
		st := shimStation{machine: i, foot: k, x: float64(f.X)}
		if t.shimmed(i, k) {
			for _, pack := range f.Under {
				st.feet = append(st.feet, len(s.feet))
				s.feet = append(s.feet, shimFoot{name: m.Name + " " + f.Name + " " + pack.Name})
				packs = append(packs, pack.Now)
			}
		}
		s.stations = append(s.stations, st)
		x = append(x, st.x)
	}
	for end, k := range outermost(x) {
		e.x[end], e.station[end] = x[k], first+k
	}
	return packs
}

// exchange lists the packs in which each of the feet gives a piece, or none for -1, and
// gets these and so many more, none of them thicker than the size from.
func (s *shimSearch) exchange(feet []int, out int, in []int32, more, from int) {
	if more == 0 {
		for _, f := range feet {
			pack := s.feet[f].now()
			if i := slices.Index(pack.sizes, int32(out)); i >= 0 {
				pack.sizes = slices.Delete(pack.sizes, i, i+1)
				pack.total -= s.sizes[out].nm
			}
			for _, size := range in {
				pack.total += s.sizes[size].nm
			}
			pack.sizes = append(pack.sizes, in...)
			slices.Sort(pack.sizes)
			if len(pack.sizes) <= s.rule.Pieces {
				s.packs = append(s.packs, pack)
			}
		}
		return
	}
	for size := from; size < len(s.sizes); size++ {
		if size == out || s.left[size] < len(feet) {
			continue
		}
		if !s.spend() {
			return
		}
		s.left[size] -= len(feet)
		s.exchange(feet, out, append(in, int32(size)), more-1, size)
		s.left[size] += len(feet)
	}
}

// listPacks lists the packs that some foot can have in a choice as good as the best
// known.
func (s *shimSearch) listPacks() {
	for i := range s.stations {
		st := &s.stations[i]
		st.levels = []shimLevel{{changes: []float64{0}}}
		if !st.fixed() {
			st.levels[0].changes = s.span(st)
		}
	}
	s.level = max(1, s.ratio())
	if !s.reachable() {
		for i := range s.stations {
			s.stations[i].reach = nowhere
		}
		s.index()
		return
	}
	w := wantedPacks{most: s.rule.Pieces, handled: s.mostOfOne()}
	for i := range s.stations {
		st := &s.stations[i]
		for _, f := range st.feet {
			total := float64(s.feet[f].total)
			w.totals = append(w.totals, st.reach.plus(reach{total, total}).and(reach{float64(s.rule.Keep), float64(shims.Thickest)}))
		}
	}
	s.listWanted(w)
}

// mostOfOne is what one foot, or one station, may take in a choice as good as the best
// known.
func (s *shimSearch) mostOfOne() int {
	if s.within() {
		return s.best.handled
	}
	return math.MaxInt
}

// span is between what a station can change by at the most.
func (s *shimSearch) span(st *shimStation) []float64 {
	down, up := s.limit(st).ends()
	return []float64{
		max(float64(fromMM(down)), -float64(shims.Thickest)) - 1, // limits are exact where they are asked for
		min(float64(fromMM(up)), float64(shims.Thickest)) + 1,
	}
}

func (s *shimSearch) limit(st *shimStation) Limit {
	return s.planner.train.Machines[st.machine].Feet[st.foot].Vertical
}

// allows tells whether the change keeps the limit of the station, and what lies
// under its feet then is enough, and no more than a pack can have.
func (s *shimSearch) allows(st *shimStation, by int64) bool {
	l, change := s.limit(st), units.Length(by)
	if l.hasLow && change < l.low || l.hasHigh && change > l.high {
		return false
	}
	for _, f := range st.feet {
		if total := units.Length(s.feet[f].total + by); total < s.rule.Keep || total > shims.Thickest {
			return false
		}
	}
	return true
}

// listChanges lists what a station can change by, and with what handling at least:
// as if there were no other stations.
func (s *shimSearch) listChanges(st *shimStation) {
	if st.fixed() {
		st.levels = []shimLevel{{changes: []float64{0}}}
		return
	}
	st.levels = nil
	by := make(map[int][]float64)
	var handlings []int
	for _, change := range s.changes(st) {
		for _, f := range st.feet {
			s.totals[f] = s.feet[f].total + change
		}
		if _, handled, ok := s.lay(st.feet, s.totals, s.mostOfOne()); ok {
			if by[handled] == nil {
				handlings = append(handlings, handled)
			}
			by[handled] = append(by[handled], float64(change))
		}
	}
	slices.Sort(handlings)
	for _, handled := range handlings {
		slices.Sort(by[handled])
		st.levels = append(st.levels, shimLevel{handled, by[handled]})
	}
}

// changes are those for which every foot of the station has a pack, first those near
// to what the plan without shims has.
func (s *shimSearch) changes(st *shimStation) (list []int64) {
	for i := range s.packs {
		change := s.packs[i].total - s.feet[st.feet[0]].total
		if i > 0 && s.packs[i].total == s.packs[i-1].total || !s.allows(st, change) || !st.reach.has(float64(change)) {
			continue
		}
		if !slices.ContainsFunc(st.feet, func(f int) bool { return !s.listed(s.feet[f].total + change) }) {
			list = append(list, change)
		}
	}
	line := s.planner.lines[st.machine].Vertical
	planned := float64(line.At(units.Length(st.x)))
	slices.SortStableFunc(list, func(a, b int64) int {
		return cmp.Compare(math.Abs(float64(a)-planned), math.Abs(float64(b)-planned))
	})
	return list
}

// arrange puts the stations in the order in which they are placed: from the machine
// that stays, or has the fewest heights to choose from, outward.
func (s *shimSearch) arrange() {
	start := s.planner.train.reference()
	if s.planner.train.Reference == "" {
		start = leastOf(len(s.machines), s.choices)
	}
	for _, i := range outward(start, len(s.machines)) {
		if !s.machines[i].moving {
			continue
		}
		beside := place{joint: -1}
		if i != start {
			beside.beside = towards(i, start)
			beside.joint = min(i, beside.beside)
			beside.side = i - beside.joint
		}
		s.arrangeMachine(i, beside)
	}
}

// fixed tells whether nothing under the station can change.
func (st *shimStation) fixed() bool { return len(st.feet) == 0 }

// choices counts the pairs of heights of the two ends of a machine.
func (s *shimSearch) choices(machine int) float64 {
	n := 1.0
	for _, end := range s.machines[machine].station {
		count := 0
		for _, level := range s.stations[end].levels {
			count += len(level.changes)
		}
		n *= float64(count)
	}
	return n
}

// arrangeMachine puts first the ends of a machine, then what is between them.
func (s *shimSearch) arrangeMachine(machine int, p place) {
	for p.end, p.station = range s.machines[machine].station {
		s.places = append(s.places, p)
	}
	p.end = 2
	for i := range s.stations {
		if st := &s.stations[i]; st.machine == machine && !slices.Contains(s.machines[machine].station[:], i) {
			p.station = i
			s.places = append(s.places, p)
		}
	}
}

// stay makes the choice in which nothing changes the best, if the limits and the
// rule allow it. So there is one also where the search is cut off.
func (s *shimSearch) stay() {
	c := shimChoice{changes: make([]int64, len(s.stations))}
	for i := range s.stations {
		st := &s.stations[i]
		if !s.allows(st, 0) {
			return
		}
	}
	for i := range s.feet {
		k, found := slices.BinarySearchFunc(s.packs, s.feet[i].now(), shimPack.compare)
		if !found {
			return
		}
		c.packs = append(c.packs, k)
	}
	for j := range s.joints {
		c.ratio = max(c.ratio, s.joints[j].worst([2]align.Centreline(s.lines[j:j+2])))
	}
	s.best = &c
}
