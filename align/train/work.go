package train

import (
	"math"

	"example.org/collinear/internal/linprog"
	"example.org/collinear/internal/nearest"
	"example.org/collinear/internal/words"
)

// Work is what counts as least work among plans that are equally good. Each foot
// counts in each plane by itself.
type Work uint8

// The measures of work.
const (
	TotalTravel Work = iota // the sum of all moves
	LargestMove             // the largest single move
	FewestFeet              // how many moves there are
)

var workNames = words.List{"total_travel", "largest_move", "fewest_feet"}

// String returns the wire form, for one "total_travel".
func (w Work) String() string { return workNames.Word(uint8(w)) }

// MarshalText gives the wire form.
func (w Work) MarshalText() ([]byte, error) { return workNames.Marshal(uint8(w)) }

// UnmarshalText reads the wire form.
func (w *Work) UnmarshalText(text []byte) error { return words.Unmarshal(w, workNames, text) }

// least returns the plan of least squares among those of least work in the region.
// proven is false where a search for the fewest feet was cut off; y is nil where a
// solver came to no answer.
func (r *region) least(w Work) (y []float64, proven bool) {
	if r.m.n == 0 { // on target beside a machine that stays: nothing is left to choose
		return r.leastSquares(), true
	}
	switch w {
	case TotalTravel:
		return r.leastTravel(), true
	case LargestMove:
		return r.leastLargest(), true
	}
	return r.fewestFeet()
}

// leastTravel solves: minimise the sum of all moves up and all moves down, and then the
// least squares within that sum.
func (r *region) leastTravel() []float64 {
	m := r.m
	p := m.inMoves(0, m.split)
	s, ok := r.minimise(p)
	if !ok {
		return nil
	}
	most, y := above(s.Objective, m.ease), p.coordinates(s.X)
	// The sum of sizes is at most so much: a plane for every way in which the signs
	// can stand, of which few are ever needed.
	return r.leastSquaresUnder([]nearest.Row{m.travelRow(y, most)}, func(y []float64) []nearest.Row {
		if m.travel(y) <= above(most, m.ease) {
			return nil
		}
		return []nearest.Row{m.travelRow(y, most)}
	})
}

// travel is the sum of all moves.
func (m *model) travel(y []float64) float64 {
	sum := 0.0
	for i := range m.stops {
		sum += math.Abs(m.stops[i].move.at(y))
	}
	return sum
}

// travelRow holds the sum of all moves, each with the sign that it has at y, to at
// most so much. No plan whose travel is at most that breaks it.
func (m *model) travelRow(y []float64, most float64) nearest.Row {
	row := nearest.Row{Coefficients: m.space.rows.vector(m.n), Least: -most}
	for i := range m.stops {
		move := &m.stops[i].move
		sign := math.Copysign(1, move.at(y))
		for k, a := range move.of {
			row.Coefficients[k] -= sign * a
		}
		row.Least += sign * move.c
	}
	return row
}

// leastLargest solves: minimise t with t >= move and t >= -move for every foot, and
// then the least squares within that size.
func (r *region) leastLargest() []float64 {
	m := r.m
	p := m.inMoves(1, m.undivided)
	for i := range m.stops {
		for _, sign := range [...]float64{+1, -1} { // sign move - t <= 0
			row := linprog.Row{Coefficients: p.vector(len(p.Cost)), Lower: math.Inf(-1)}
			p.add(row, i, sign)
			row.Coefficients[p.more()] = -1
			p.Rows = append(p.Rows, row)
		}
	}
	s, ok := r.minimise(p)
	if !ok {
		return nil
	}
	most := above(s.Objective, m.ease)
	var within []nearest.Row
	for i := range m.stops {
		within = m.appendWithin(within, &m.stops[i].move, -most, most)
	}
	return r.leastSquares(within...)
}
