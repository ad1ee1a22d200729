package train

import (
	"math"
	"slices"

	"example.org/collinear/internal/nearest"
	"example.org/collinear/internal/words"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// Side is one end of a limit. The zero value is none.
type Side uint8

// The ends of a limit.
const (
	Low  Side = iota + 1 // downwards, or towards 9 o'clock
	High                 // upwards, or towards 3 o'clock
)

var sideNames = words.List{"", "low", "high"}

// String returns the wire form, "low" or "high".
func (s Side) String() string { return sideNames.Word(uint8(s)) }

// MarshalText gives the wire form.
func (s Side) MarshalText() ([]byte, error) { return sideNames.Marshal(uint8(s)) }

// UnmarshalText reads the wire form.
func (s *Side) UnmarshalText(text []byte) error { return words.Unmarshal(s, sideNames, text) }

// Block is a limit that keeps a train out of its tolerance, or that could be opened
// to let it in. The feet of the reference count as fixed: to open their limit is to
// move the machine that was to stay.
//
// Openings are some nanometres more than what is needed, or a few thousandths of a
// percent where a limit is that of a vector, and each was checked by planning once more
// with the limit opened by so much. Where each plane is planned by itself they speak of
// its plane alone. Both are zero where the limit holds the worst ratio up, is not
// enough alone, and others are opened with less.
//
// To open one foot of the reference, plan without a Reference and with its other feet
// Fixed.
type Block struct {
	Machine string          `json:"machine"`
	Foot    string          `json:"foot"`
	Plane   tolerance.Plane `json:"plane"` // vertical or horizontal
	Side    Side            `json:"side"`

	// Alone is how far this end has to open for every coupling to come within its
	// limits while all other limits stay as they are; zero where that is not enough.
	Alone units.Length `json:"alone,omitzero"`

	// Together is its part where several limits are opened at once, the reference
	// staying, with the least sum of openings (among equals, the least squares of
	// openings and moves); zero where it takes no part in that. What all machines can
	// do where none has to stay, a plan without a Reference tells.
	Together units.Length `json:"together,omitzero"`
}

// end is one end of a stop, by index.
type end struct {
	stop int
	side Side
}

// findBlocks finds the limits in the way of the given planes; false where a solver
// came to no answer.
func (p *planner) findBlocks(m *model) bool {
	holding, ok := m.holding()
	if !ok {
		return false
	}
	var blocks []Block
	all := m.allEnds()
	movable := slices.DeleteFunc(slices.Clone(all), func(e end) bool { return m.stops[e.stop].machine == m.train.reference() })
	together, ok := m.leastOpening(movable)
	if !ok {
		return false
	}
	for _, e := range all {
		b := m.block(e)
		if i := slices.Index(movable, e); i >= 0 {
			b.Together = together[i]
		}
		held := slices.Contains(holding, e)
		if held {
			if alone, ok := m.leastOpening([]end{e}); ok {
				b.Alone = alone[0]
			}
		}
		if held || b.Together > 0 {
			blocks = append(blocks, b)
		}
	}
	p.blocks = append(p.blocks, blocks...)
	return true
}

// holding lists the ends that hold the worst ratio up: those with a multiplier in
// the program of the best ratio. One without it could be opened and change nothing.
func (m *model) holding() ([]end, bool) {
	b, ok := m.bestRatio()
	if !ok {
		return nil, false
	}
	var list []end
	row := 0
	for i := range m.stops {
		if !m.stops[i].bounded() {
			continue
		}
		switch dual := b.duals[row]; {
		case dual > 0:
			list = append(list, end{i, Low})
		case dual < 0:
			list = append(list, end{i, High})
		}
		row++
	}
	return list, true
}

// allEnds lists every end of every stop.
func (m *model) allEnds() []end {
	var list []end
	for i := range m.stops {
		if !math.IsInf(m.stops[i].low, -1) {
			list = append(list, end{i, Low})
		}
		if !math.IsInf(m.stops[i].high, 1) {
			list = append(list, end{i, High})
		}
	}
	return list
}

func (m *model) block(e end) Block {
	s := &m.stops[e.stop]
	machine := &m.train.Machines[s.machine]
	return Block{Machine: machine.Name, Foot: machine.Feet[s.foot].Name, Plane: planes[s.plane], Side: e.side}
}

// leastOpening returns how far each of the ends opens where they let every coupling
// in with the least sum of openings; false where they cannot. What it returns was
// checked by opening it.
func (m *model) leastOpening(ends []end) ([]units.Length, bool) {
	opened := m.opened(ends)
	r := region{m: opened, level: opened.inside(), cuts: opened.newCuts()}
	sum, ok := r.leastSum(m.n)
	if !ok {
		return nil, false
	}
	y := r.leastSquares(opened.openingRows(m.n, sum+float64(m.ease*(1+sum)))...)
	if y == nil {
		return nil, false
	}
	by := make([]units.Length, len(ends))
	large := slices.Clone(by)
	for i := range by {
		by[i] = roundedUp(fromMM(m.scale * (y[m.n+i] + float64(m.ease*(1+y[m.n+i])))))
		if y[m.n+i] > unmoved && by[i] >= LeastStep {
			large[i] = by[i]
		}
	}
	if m.admits(ends, large) {
		return large, true
	}
	return by, m.admits(ends, by)
}

// roundedUp returns the length to the Resolution, no less than it is.
func roundedUp(l units.Length) units.Length {
	return units.Length(math.Ceil(float64(l/Resolution))) * Resolution
}

// inside is the level that openings aim at. Cuts may leave round items a little above
// it, but not above one.
func (m *model) inside() float64 {
	if m.round() {
		return 1 - 2*enough
	}
	return 1
}

// opened returns a model with one coordinate more for each of the ends, by which it
// opens.
func (m *model) opened(ends []end) *model {
	o := *m
	o.n = m.n + len(ends)
	extended := func(f affine) affine { return affine{append(slices.Clip(f.of), make([]float64, len(ends))...), f.c} }
	o.items = make([]item, len(m.items))
	for k := range m.items {
		for _, part := range m.items[k].parts {
			o.items[k].parts = append(o.items[k].parts, extended(part))
		}
	}
	o.stops = nil
	for i := range m.stops {
		low, high := m.stops[i], m.stops[i]
		low.move, high.move = extended(low.move), extended(high.move)
		low.high, high.low = math.Inf(1), math.Inf(-1)
		for k, e := range ends {
			switch {
			case e == end{i, Low}:
				low.move.of[m.n+k] = +1 // move + opening >= low
			case e == end{i, High}:
				high.move.of[m.n+k] = -1
			}
		}
		o.stops = append(o.stops, low, high)
	}
	return &o
}

// openingRows holds the openings, which are the coordinates from first on, at zero
// or more and their sum to at most so much.
func (m *model) openingRows(first int, most float64) []nearest.Row {
	sum := nearest.Row{Coefficients: make([]float64, m.n), Least: -most}
	rows := []nearest.Row{sum}
	for i := first; i < m.n; i++ {
		sum.Coefficients[i] = -1
		one := make([]float64, m.n)
		one[i] = 1
		rows = append(rows, nearest.Row{Coefficients: one})
	}
	return rows
}

// leastSum solves: minimise the sum of the coordinates from first on, none of them
// below zero, in the region.
func (r *region) leastSum(first int) (float64, bool) {
	program := r.m.program(0, nil)
	for i := first; i < r.m.n; i++ {
		program.Cost[i], program.Lower[i] = 1, 0
	}
	s, ok := r.minimise(program)
	return s.Objective, ok
}

// admits tells whether every coupling comes within its limits once the ends are
// opened by so much.
func (m *model) admits(ends []end, by []units.Length) bool {
	o := *m
	o.stops = slices.Clone(m.stops)
	for i, e := range ends {
		open := mm(by[i]) / m.scale
		if e.side == Low {
			o.stops[e.stop].low -= open
		} else {
			o.stops[e.stop].high += open
		}
	}
	b, ok := o.bestRatio()
	return ok && b.ratio <= 1+m.ease
}
