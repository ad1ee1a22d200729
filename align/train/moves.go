package train

import (
	"math"
	"slices"

	"example.org/collinear/internal/linprog"
)

// The variables of a linear program are the moves of the feet, in pieces: a move may be
// one number between its ends, or what goes up less what goes down, each at its cost.
// So the limits of feet are bounds of variables, which cost a program next to nothing,
// and its rows are the couplings. The line of a machine is that of its two outer feet;
// a foot between them has a row that ties it to the line.

// piece is a part of the move of a foot: sign times a variable.
type piece struct{ sign, low, high, cost float64 }

// carrier is a pair of coordinates, by the feet whose moves stand for it.
type carrier struct {
	stops   [2]int        // of the first foot and the last
	inverse [2][2]float64 // of the shares of the coordinates in the moves of those
}

// outermost returns the indexes of the first and the last of some stations.
func outermost(x []float64) [2]int {
	return [2]int{slices.Index(x, slices.Min(x)), slices.Index(x, slices.Max(x))}
}

// newCarrier returns the carrier of the two coordinates from first on, by the outer
// ones of the stops.
func newCarrier(stops []stop, offset, first int) carrier {
	x := make([]float64, len(stops))
	for i := range stops {
		x[i] = stops[i].x
	}
	outer := outermost(x)
	a, b := stops[outer[0]].move.of[first:], stops[outer[1]].move.of[first:]
	det := float64(a[0]*b[1]) - float64(a[1]*b[0])
	return carrier{
		stops:   [2]int{offset + outer[0], offset + outer[1]},
		inverse: [2][2]float64{{b[1] / det, -a[1] / det}, {-b[0] / det, a[0] / det}},
	}
}

// program is a linear program over the pieces of all moves, and more variables.
type program struct {
	m      *model
	first  []int   // of each stop: its first piece, and at the end that of what follows
	pieces []piece // and the variables after them
	linprog.Program
	room room // for its vectors
}

// inMoves returns the program with the given pieces of each stop, so many more
// variables that cost one each and are not below zero, and the rows that tie feet to
// the lines of their machines.
func (m *model) inMoves(more int, pieces func(list []piece, i int) []piece) *program {
	p := &m.space.program // one at a time
	p.m, p.first, p.pieces, p.Rows = m, append(p.first[:0], 0), p.pieces[:0], p.Rows[:0]
	p.room.empty()
	for i := range m.stops {
		p.pieces = pieces(p.pieces, i)
		p.first = append(p.first, len(p.pieces))
	}
	for range more {
		p.pieces = append(p.pieces, piece{1, 0, math.Inf(1), 1})
	}
	n := len(p.pieces)
	p.Cost, p.Lower, p.Upper = p.vector(n), p.vector(n), p.vector(n)
	for k, c := range p.pieces {
		p.Cost[k], p.Lower[k], p.Upper[k] = c.cost, c.low, c.high
	}
	for i := range m.stops {
		if !m.stops[i].outer {
			row := p.row(&m.stops[i].move, 0, 0)
			p.add(row, i, -1)
			p.Rows = append(p.Rows, row)
		}
	}
	return p
}

// vector returns so many zeros, which last as long as the program.
func (p *program) vector(n int) []float64 { return p.room.vector(n) }

// undivided is the move in one piece, which costs nothing.
func (m *model) undivided(list []piece, i int) []piece {
	return append(list, piece{1, m.stops[i].low, m.stops[i].high, 0})
}

// split is the move up less the move down, each of which costs what it is.
func (m *model) split(list []piece, i int) []piece {
	s := &m.stops[i]
	if s.high > 0 {
		list = append(list, piece{+1, max(0, s.low), s.high, 1})
	}
	if s.low < 0 || s.high <= 0 {
		list = append(list, piece{-1, max(0, -s.high), max(0, -s.low), 1})
	}
	return list
}

// row holds f between two values.
func (p *program) row(f *affine, low, high float64) linprog.Row {
	row := linprog.Row{Coefficients: p.vector(len(p.Cost)), Lower: low - f.c, Upper: high - f.c}
	for k := range p.m.carriers {
		c := &p.m.carriers[k]
		a, b := f.of[2*k], f.of[2*k+1]
		if a == 0 && b == 0 {
			continue
		}
		for side, stop := range c.stops {
			share := float64(a*c.inverse[0][side]) + float64(b*c.inverse[1][side])
			p.add(row, stop, share)
			// The move of a foot is that of its pieces, less the constant of its function.
			by := float64(share * p.m.stops[stop].move.c)
			row.Lower, row.Upper = row.Lower+by, row.Upper+by
		}
	}
	return row
}

// add adds a multiple of the move of a stop to a row.
func (p *program) add(row linprog.Row, stop int, share float64) {
	for k := p.first[stop]; k < p.first[stop+1]; k++ {
		row.Coefficients[k] += p.pieces[k].sign * share
	}
}

// more is the first variable after the pieces.
func (p *program) more() int { return p.first[len(p.first)-1] }

// move returns the move of a stop.
func (p *program) move(x []float64, stop int) float64 {
	sum := 0.0
	for k := p.first[stop]; k < p.first[stop+1]; k++ {
		sum += p.pieces[k].sign * x[k]
	}
	return sum
}

// coordinates returns those of the model.
func (p *program) coordinates(x []float64) []float64 {
	y := p.m.vector(p.m.n)
	for k := range p.m.carriers {
		c := &p.m.carriers[k]
		var by [2]float64
		for side, stop := range c.stops {
			by[side] = p.move(x, stop) - p.m.stops[stop].move.c
		}
		for i, share := range c.inverse {
			y[2*k+i] = float64(share[0]*by[0]) + float64(share[1]*by[1])
		}
	}
	return y
}
