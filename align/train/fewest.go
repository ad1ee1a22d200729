package train

import (
	"math"

	"example.org/collinear/internal/nearest"
)

const (
	// exactMachines is up to how many machines the fewest feet are found whatever it
	// takes.
	exactMachines = 4
	// mostNodes ends the search beyond that.
	mostNodes = 400
	// unmoved is the size up to which a move is none, in the unit of the model.
	unmoved = 1e-8
)

// fewest is the search for a plan with the fewest moves: which feet can be left
// where they are. It branches on one foot at a time, left or moved. As fewer feet
// may move, the least squares can only grow, so that a branch ends where it has
// more moves than a plan that is known, or as many and no less squares.
type fewest struct {
	r     *region
	left  []bool // feet that stay, and
	moved []bool // feet that may move; the others are still open
	count int    // of those that may move

	nodes, limit int
	best         []float64
	bestCount    int
	bestSquares  float64
}

func (r *region) fewestFeet() (y []float64, proven bool) {
	n := len(r.m.stops)
	f := fewest{r: r, left: make([]bool, n), moved: make([]bool, n), bestCount: n + 1, limit: mostNodes}
	if len(r.m.train.Machines) <= exactMachines {
		f.limit = math.MaxInt
	}
	f.search(nil)
	return f.best, f.nodes < f.limit
}

// search goes on from a plan of this branch, or makes one.
func (f *fewest) search(y []float64) {
	if f.nodes >= f.limit {
		return
	}
	if y == nil {
		f.nodes++
		if y = f.plan(); y == nil {
			return
		}
		f.note(y)
	}
	open, some := f.smallest(y)
	if !some || !f.promising(y) {
		return
	}
	f.left[open] = true
	f.search(nil)
	f.left[open] = false
	f.moved[open] = true
	f.count++
	f.search(y)
	f.count--
	f.moved[open] = false
}

// plan is the least squares of the region with the feet that stay.
func (f *fewest) plan() []float64 {
	var rows []nearest.Row
	for i, left := range f.left {
		if left {
			rows = f.r.m.appendWithin(rows, &f.r.m.stops[i].move, 0, 0)
		}
	}
	return f.r.leastSquares(rows...)
}

// note keeps a plan that is better than the best so far.
func (f *fewest) note(y []float64) {
	count := 0
	for i := range f.r.m.stops {
		if math.Abs(f.r.m.stops[i].move.at(y)) > unmoved {
			count++
		}
	}
	if s := squares(y); count < f.bestCount || count == f.bestCount && s < f.bestSquares {
		f.best, f.bestCount, f.bestSquares = y, count, s
	}
}

// promising tells whether this branch may hold a plan that is better than the best.
func (f *fewest) promising(y []float64) bool {
	return f.count < f.bestCount || f.count == f.bestCount && squares(y) < f.bestSquares
}

// smallest returns the open foot that moves least at y, of those that move, if there
// is one.
func (f *fewest) smallest(y []float64) (foot int, ok bool) {
	least := math.Inf(1)
	for i := range f.r.m.stops {
		size := math.Abs(f.r.m.stops[i].move.at(y))
		if !f.left[i] && !f.moved[i] && size > unmoved && size < least {
			foot, ok, least = i, true, size
		}
	}
	return foot, ok
}

// squares is the sum of squares of all moves.
func squares(y []float64) float64 {
	sum := 0.0
	for _, a := range y {
		sum += float64(a * a)
	}
	return sum
}
