package train

import (
	"sync"

	"example.org/collinear/internal/linprog"
	"example.org/collinear/internal/nearest"
)

// workspace is the memory of a plan, which the next plan takes over. Nothing in it
// has a part in an answer: each user sets what it reads.
type workspace struct {
	kept    room    // for vectors that last as long as the plan
	rows    room    // for those that last until the solver of squares has them
	program program // the one at hand
	linear  linprog.Solver
	squares nearest.Solver
}

var workspaces = sync.Pool{New: func() any { return new(workspace) }}

// room is memory for vectors, in few pieces.
type room struct {
	piece []float64
	used  int
}

// vector returns so many zeros.
func (r *room) vector(n int) []float64 {
	if n > len(r.piece)-r.used {
		r.piece, r.used = make([]float64, max(n, 2*len(r.piece), 256)), 0
	}
	v := r.piece[r.used : r.used+n : r.used+n]
	r.used += n
	clear(v)
	return v
}

// empty gives back all vectors.
func (r *room) empty() { r.used = 0 }
