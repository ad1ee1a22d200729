package train

import (
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
	s.most = rule.Nodes / 2 // the rest is for the search
	s.listPacks()
	for i := range s.stations {
		s.listChanges(&s.stations[i])
	}
	s.truncated, s.cut = s.cut, false
	for j := range t.Joints {
		lines := [2]align.Centreline(s.lines[j : j+2])
		s.joints = append(s.joints, newShimJoint(&t.Joints[j], &s.machines[j], &s.machines[j+1], lines))
	}
	s.arrange()
	return s
}

// addMachine adds the stations of a machine and its single feet, and their packs to
// the list.
func (s *shimSearch) addMachine(packs [][]shims.Piece, i int) [][]shims.Piece {
	t := s.planner.train
	m := &t.Machines[i]
	e := &s.machines[i]
	e.moving = true
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
		here := len(s.stations)
		if k == 0 || st.x < e.x[0] {
			e.x[0], e.station[0] = st.x, here
		}
		if k == 0 || st.x > e.x[1] {
			e.x[1], e.station[1] = st.x, here
		}
		s.stations = append(s.stations, st)
	}
	return packs
}

// listPacks lists the packs that the limits of some foot let lie under it.
func (s *shimSearch) listPacks() {
	low, high := math.Inf(1), math.Inf(-1)
	for i := range s.stations {
		st := &s.stations[i]
		down, up := s.limit(st).ends()
		for _, f := range st.feet {
			low = min(low, float64(s.feet[f].total)+float64(fromMM(down)))
			high = max(high, float64(s.feet[f].total)+float64(fromMM(up)))
		}
	}
	low, high = max(low, float64(s.rule.Keep), 0), min(high, float64(shims.Thickest))
	if low <= high {
		s.list(s.rule.Pieces, int64(math.Floor(low)), int64(math.Ceil(high)))
	}
}

func (s *shimSearch) limit(st *shimStation) Limit {
	return s.planner.train.Machines[st.machine].Feet[st.foot].Vertical
}

// allows tells whether the change keeps the limit of the station, and what lies
// under its feet then is enough.
func (s *shimSearch) allows(st *shimStation, by int64) bool {
	l, change := s.limit(st), units.Length(by)
	if l.hasLow && change < l.low || l.hasHigh && change > l.high {
		return false
	}
	for _, f := range st.feet {
		if units.Length(s.feet[f].total+by) < s.rule.Keep {
			return false
		}
	}
	return true
}

// listChanges lists what a station can change by, and with what handling at least:
// as if there were no other stations.
func (s *shimSearch) listChanges(st *shimStation) {
	if len(st.feet) == 0 {
		st.levels = []shimLevel{{changes: []float64{0}}}
		return
	}
	by := make(map[int][]float64)
	var handlings []int
	for i := range s.packs {
		change := s.packs[i].total - s.feet[st.feet[0]].total
		if i > 0 && s.packs[i].total == s.packs[i-1].total || !s.allows(st, change) {
			continue
		}
		for _, f := range st.feet {
			s.totals[f] = s.feet[f].total + change
		}
		if _, handled, ok := s.lay(st.feet, s.totals, math.MaxInt); ok {
			if by[handled] == nil {
				handlings = append(handlings, handled)
			}
			by[handled] = append(by[handled], float64(change))
		}
	}
	slices.Sort(handlings)
	for _, handled := range handlings {
		st.levels = append(st.levels, shimLevel{handled, by[handled]})
	}
}

// arrange puts the stations in the order in which they are placed: from the machine
// that stays, or has the fewest heights to choose from, outward.
func (s *shimSearch) arrange() {
	start := max(0, s.planner.train.reference())
	if s.planner.train.reference() < 0 {
		for i := range s.machines {
			if s.choices(i) < s.choices(start) {
				start = i
			}
		}
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
