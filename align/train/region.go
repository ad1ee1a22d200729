package train

import (
	"math"
	"slices"

	"example.org/collinear/internal/linprog"
	"example.org/collinear/internal/nearest"
)

const (
	// mostRounds is how often cuts are added. They come near enough in ten
	// rounds as a rule; where they are slow, enough will do.
	mostRounds = 60
	enough     = 1e-5
)

// An ease is by how much more than the least ratio and the least work a later stage
// may take, as a share: rounding would leave it no room otherwise. The less it is, the
// less a later stage can stray, and the harder it is to find room in. The first that
// leads to an answer counts. Tangents of a circle need more of it: they come within a
// tenth of it to their level, and are hardly to be told from one another then.
var (
	flatEases  = [...]float64{2e-9, 1e-8, 1e-7}
	roundEases = [...]float64{1e-7, 3e-7, 1e-6, 1e-5}
)

// eased tries with one ease after the other.
func (m *model) eased(try func() bool) bool {
	eases := flatEases[:]
	if m.round() {
		eases = roundEases[:]
	}
	return slices.ContainsFunc(eases, func(ease float64) bool {
		m.ease = ease
		return try()
	})
}

// above returns x and a share more of it and of one, for what is next to nothing.
func above(x, share float64) float64 { return x + float64(share*(1+x)) }

// worst returns the largest ratio to a limit at y.
func (m *model) worst(y []float64) float64 {
	worst := 0.0
	for k := range m.items {
		size, _ := m.items[k].at(y)
		worst = max(worst, size)
	}
	return worst
}

// round tells whether an item is the length of a vector.
func (m *model) round() bool {
	return slices.ContainsFunc(m.items, func(it item) bool { return it.round() })
}

// worstRound returns the largest ratio of an item that cuts only come near to.
func (m *model) worstRound(y []float64) float64 {
	worst := 0.0
	for k := range m.items {
		if m.items[k].round() {
			size, _ := m.items[k].at(y)
			worst = max(worst, size)
		}
	}
	return worst
}

// region is where a plan may end: the stops are kept, and every item is within a level.
// A model on target has no items.
type region struct {
	m     *model
	level float64
	cuts  *cuts // of the items
}

// minimise solves a linear program over the region.
func (r *region) minimise(p *program) (linprog.Solution, bool) {
	below := func(f *affine) linprog.Row { return p.row(f, math.Inf(-1), r.level) }
	return r.cuts.minimise(p, below, func(*linprog.Solution) float64 { return r.level })
}

// points returns the rows of the region for its point of least squares.
func (r *region) points() []nearest.Row {
	rows := make([]nearest.Row, 0, 2*len(r.m.stops)+len(r.cuts.list))
	for i := range r.m.stops {
		s := &r.m.stops[i]
		rows = r.m.appendWithin(rows, &s.move, s.low, s.high)
	}
	return r.appendCuts(rows, r.cuts.list)
}

// appendCuts adds the rows of cuts. They leave as much room beyond the level as a
// linear program may have taken: else a tangent that is new could shut out the very
// answer of the program.
func (r *region) appendCuts(rows []nearest.Row, list []affine) []nearest.Row {
	for i := range list {
		rows = r.m.appendWithin(rows, &list[i], math.Inf(-1), r.m.beyond(r.level))
	}
	return rows
}

// appendWithin adds the rows that hold f between two values.
func (m *model) appendWithin(rows []nearest.Row, f *affine, low, high float64) []nearest.Row {
	of := f.of
	if len(of) != m.n {
		of = m.space.rows.vector(m.n)
		copy(of, f.of)
	}
	if low == high {
		return append(rows, nearest.Row{Coefficients: of, Least: low - f.c, Equal: true})
	}
	if !math.IsInf(low, -1) {
		rows = append(rows, nearest.Row{Coefficients: of, Least: low - f.c})
	}
	if !math.IsInf(high, 1) {
		turned := m.space.rows.vector(m.n)
		for i, a := range of {
			turned[i] = -a
		}
		rows = append(rows, nearest.Row{Coefficients: turned, Least: f.c - high})
	}
	return rows
}

// leastSquares returns the point of the region where the moves of all feet have the
// least sum of squares, under more rows; nil where there is none.
func (r *region) leastSquares(more ...nearest.Row) []float64 {
	return r.leastSquaresUnder(more, func([]float64) []nearest.Row { return nil })
}

// leastSquaresUnder is leastSquares under rows of which more come to light as they are
// broken. Cuts of items that it needs are kept, for they hold in the whole region.
func (r *region) leastSquaresUnder(more []nearest.Row, broken func(y []float64) []nearest.Row) []float64 {
	solver := &r.m.space.squares
	solver.Reset(r.m.n)
	defer r.m.space.rows.empty() // the solver has copies
	solver.Add(r.points()...)
	solver.Add(more...)
	var last []float64
	for range mostRounds {
		point := solver.Solve()
		if point.Status != nearest.Found {
			return nil
		}
		last = point.X
		rows := r.appendCuts(broken(last), r.cuts.deepen(last, r.m.beyond(r.level)))
		if len(rows) == 0 {
			return last
		}
		solver.Add(rows...)
	}
	return within(last, len(broken(last)) == 0 && r.m.nearEnough(last, r.level))
}

// nearEnough tells whether no round item is farther above the level than one may stay
// where cuts are slow.
func (m *model) nearEnough(y []float64, level float64) bool {
	return m.worstRound(y) <= above(level, enough)
}

// within returns y, or nothing.
func within(y []float64, ok bool) []float64 {
	if ok {
		return y
	}
	return nil
}
