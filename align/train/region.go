package train

import (
	"math"

	"example.org/collinear/internal/linprog"
	"example.org/collinear/internal/nearest"
)

// How near to their level the cuts bring the items, as a share of it, which has to
// be more than the solvers miss a row by; and how often they are tried. A plan whose
// bound is farther than that from it is told as such.
const (
	closeness  = 1e-8
	mostRounds = 200
)

// aims are the directions in which an item is held from the start: both ways in one
// plane, and all around where both planes count together.
var (
	bothWays  = [][2]float64{{1, 0}, {-1, 0}}
	allAround = compass(8)
)

func compass(n int) [][2]float64 {
	list := make([][2]float64, n)
	for i := range list {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		list[i] = [2]float64{sin, cos}
	}
	return list
}

func (it *item) aims() [][2]float64 {
	if len(it.parts) == 1 {
		return bothWays
	}
	return allAround
}

// worst returns the largest ratio to a limit at y.
func (m *model) worst(y []float64) float64 {
	worst := 0.0
	for k := range m.items {
		size, _ := m.items[k].at(y)
		worst = max(worst, size)
	}
	return worst
}

// cuts are items held in directions. An item in both planes has a round limit; each
// direction cuts off what lies beyond a tangent of it. A cut is right whatever the
// level is: its constant and the level are put beside it where it is used.
type cuts struct {
	m    *model
	list []affine
}

func (m *model) newCuts() *cuts {
	c := &cuts{m: m}
	for k := range m.items {
		for _, aim := range m.items[k].aims() {
			c.list = append(c.list, m.items[k].along(aim))
		}
	}
	return c
}

// deepen adds a cut at every item that is above the level at y, and tells whether
// there was one.
func (c *cuts) deepen(y []float64, level float64) bool {
	before := len(c.list)
	for k := range c.m.items {
		it := &c.m.items[k]
		if size, direction := it.at(y); len(it.parts) > 1 && size > level+float64(closeness*(1+level)) {
			c.list = append(c.list, it.along(direction))
		}
	}
	return len(c.list) > before
}

// region is where a plan may end: the stops are kept, and either the targets are
// reached or every item is within a level.
type region struct {
	m        *model
	onTarget bool
	level    float64
	cuts     *cuts // of the items; nil on target
}

// programRows returns the rows of the region for a linear program whose first
// variables are the coordinates and which has more beside them.
func (r *region) programRows(more int) []linprog.Row {
	rows := r.m.stopRows(more)
	if r.onTarget {
		for i := range r.m.targets {
			rows = append(rows, between(&r.m.targets[i], 0, 0, more))
		}
		return rows
	}
	for i := range r.cuts.list {
		rows = append(rows, between(&r.cuts.list[i], math.Inf(-1), r.level, more))
	}
	return rows
}

// stopRows holds every stop that has an end.
func (m *model) stopRows(more int) []linprog.Row {
	rows := make([]linprog.Row, 0, len(m.stops)+len(m.targets)+8*len(m.items)+4*more)
	for i := range m.stops {
		if s := &m.stops[i]; s.ends() {
			rows = append(rows, between(&s.move, s.low, s.high, more))
		}
	}
	return rows
}

func (s *stop) ends() bool { return !math.IsInf(s.low, -1) || !math.IsInf(s.high, 1) }

// between holds f between two values.
func between(f *affine, low, high float64, more int) linprog.Row {
	of := make([]float64, len(f.of)+more)
	copy(of, f.of)
	return linprog.Row{Coefficients: of, Lower: low - f.c, Upper: high - f.c}
}

// points returns the rows of the region for its point of least squares.
func (r *region) points() []nearest.Row {
	var rows []nearest.Row
	for i := range r.m.stops {
		s := &r.m.stops[i]
		rows = appendWithin(rows, &s.move, s.low, s.high)
	}
	if r.onTarget {
		for i := range r.m.targets {
			rows = appendWithin(rows, &r.m.targets[i], 0, 0)
		}
		return rows
	}
	for i := range r.cuts.list {
		rows = appendWithin(rows, &r.cuts.list[i], math.Inf(-1), r.level)
	}
	return rows
}

// appendWithin adds the rows that hold f between two values.
func appendWithin(rows []nearest.Row, f *affine, low, high float64) []nearest.Row {
	if low == high {
		return append(rows, nearest.Row{Coefficients: f.of, Least: low - f.c, Equal: true})
	}
	if !math.IsInf(low, -1) {
		rows = append(rows, nearest.Row{Coefficients: f.of, Least: low - f.c})
	}
	if !math.IsInf(high, 1) {
		rows = append(rows, nearest.Row{Coefficients: combined(-1, *f, 0, *f).of, Least: f.c - high})
	}
	return rows
}

// leastSquares returns the point of the region where the moves of all feet have the
// least sum of squares, under more rows; nil where there is none. Cuts that it needs
// are kept, for they hold in the whole region.
func (r *region) leastSquares(more ...nearest.Row) []float64 {
	solver := nearest.New(r.m.n)
	solver.Add(r.points()...)
	solver.Add(more...)
	for range mostRounds {
		point := solver.Solve()
		if point.Status != nearest.Found {
			return nil
		}
		if r.onTarget {
			return point.X
		}
		held := len(r.cuts.list)
		if !r.cuts.deepen(point.X, r.level) {
			return point.X
		}
		for i := held; i < len(r.cuts.list); i++ {
			solver.Add(appendWithin(nil, &r.cuts.list[i], math.Inf(-1), r.level)...)
		}
	}
	return nil
}
