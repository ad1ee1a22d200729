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
	best, ok := m.bestRatio()
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
		held := slices.Contains(best.holding, e)
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

// allEnds lists every end of every stop.
func (m *model) allEnds() []end {
	var list []end
	for i := range m.stops {
		if !math.IsInf(m.stops[i].low, 0) {
			list = append(list, end{i, Low})
		}
		if !math.IsInf(m.stops[i].high, 0) {
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
	r := region{m: m, level: m.inside(), cuts: m.newCuts()}
	sum, needed, ok := r.leastSum(ends)
	if !ok {
		return nil, false
	}
	openings := r.spread(needed, above(sum, m.ease))
	if openings == nil {
		return nil, false
	}
	by := make([]units.Length, len(ends))
	large := slices.Clone(by)
	for k, e := range needed {
		i := slices.Index(ends, e)
		by[i] = roundedUp(fromMM(m.scale * above(openings[k], m.ease)))
		if openings[k] > unmoved && by[i] >= LeastStep {
			large[i] = by[i]
		}
	}
	if m.admits(ends, large) {
		return large, true
	}
	return by, m.admits(ends, by)
}

// leastSum solves: minimise the sum of the openings of the ends in the region. needed are
// the ends that take part in it: one whose multiplier says that it would cost more to
// open than it helps is closed in every plan of the least sum.
func (r *region) leastSum(ends []end) (sum float64, needed []end, ok bool) {
	m := r.m
	opening := make([]int, len(ends)) // the piece of each
	p := m.inMoves(0, func(list []piece, i int) []piece {
		list = m.undivided(list, i)
		for k, e := range ends {
			if e.stop == i {
				opening[k] = len(list)
				list = append(list, piece{e.side.sign(), 0, math.Inf(1), 1})
			}
		}
		return list
	})
	s, ok := r.minimise(p)
	if !ok {
		return 0, nil, false
	}
	for i, e := range ends {
		if s.ColumnDuals[opening[i]] < priced {
			needed = append(needed, e)
		}
	}
	return s.Objective, needed, true
}

// priced is from which multiplier on an end stays closed: with an ease more than the
// least sum it could open by an ease over this at most.
const priced = 1e-2

// sign is the direction in which the side opens.
func (s Side) sign() float64 {
	if s == Low {
		return -1
	}
	return 1
}

// spread returns the openings of least squares, of moves and openings, with at most so
// large a sum; nil where there are none. One alone has it all.
func (r *region) spread(ends []end, most float64) []float64 {
	if len(ends) == 1 {
		return []float64{most}
	}
	opened := region{m: r.m.opened(ends), level: r.level, cuts: r.cuts}
	y := opened.leastSquares(opened.m.openingRows(r.m.n, most)...)
	if y == nil {
		return nil
	}
	return y[r.m.n:]
}

// roundedUp returns the length to the nanometre, which is its unit, no less than it is.
func roundedUp(l units.Length) units.Length { return units.Length(math.Ceil(float64(l))) }

// inside is the level that openings aim at. Cuts may leave round items a little above
// it, but not above one.
func (m *model) inside() float64 {
	if m.round() {
		return 1 - 2*enough
	}
	return 1
}

// opened returns a model with one coordinate more for each of the ends, by which it
// opens. What does not know of them has no share in them.
func (m *model) opened(ends []end) *model {
	o := *m
	o.n = m.n + len(ends)
	o.stops = nil
	for i := range m.stops {
		low, high := m.stops[i], m.stops[i]
		for k, e := range ends {
			switch {
			case e == end{i, Low}:
				low.move = o.widened(&low.move, m.n+k, +1) // move + opening >= low
			case e == end{i, High}:
				high.move = o.widened(&high.move, m.n+k, -1)
			}
		}
		low.high, high.low = math.Inf(1), math.Inf(-1)
		o.stops = append(o.stops, low, high)
	}
	return &o
}

// widened returns a function with a share of one more coordinate.
func (m *model) widened(f *affine, coordinate int, share float64) affine {
	of := m.vector(m.n)
	copy(of, f.of)
	of[coordinate] = share
	return affine{of, f.c}
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
