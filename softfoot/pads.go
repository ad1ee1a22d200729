package softfoot

import (
	"math"

	"example.org/collinear/internal/lsq"
)

// pads returns the heights of the pads, the smallest that will do, which explain
// the lifts best, and by how much they miss. A foot that lifts by no more than
// margin says only that its pad is not lower: how much higher it is the bolt hides.
// So such a foot counts where it would lift, and only there.
func (p *plan) pads(lifts *column, margin float64) (h column, miss float64) {
	var told [most]bool
	for i := range p.n {
		told[i] = lifts[i] > margin
	}
	for range 2 * most { // settles after two or three
		h = p.explain(lifts, &told)
		before := told
		miss = 0
		for i, l := range p.lifts(&h) {
			over := l - lifts[i]
			if lifts[i] > margin {
				over = math.Abs(over)
			} else {
				told[i] = i < p.n && over > 0
			}
			miss = max(miss, over)
		}
		if told == before {
			break
		}
	}
	return h, miss
}

// explain returns the smallest heights whose lifts at the feet that tell are the
// given ones, by least squares.
func (p *plan) explain(lifts *column, told *[most]bool) column {
	e := newEquations(p.n)
	for i := range p.n {
		if told[i] && p.counts(i) {
			e.add(p.force[i], -p.force[i][i]*lifts[i], 1/p.force[i][i])
		}
	}
	return e.solve()
}

// equations for one unknown a foot, solved by least squares.
type equations struct {
	n        int
	triangle lsq.Triangle
}

func newEquations(n int) equations {
	return equations{n, lsq.In(make([]float64, lsq.Size(n)), n)}
}

func (e *equations) add(row column, rhs, weight float64) {
	for j := range e.n {
		row[j] *= weight
	}
	e.triangle.Add(row[:e.n], rhs*weight)
}

// slight is the weight of the wish that unknowns be small: enough to choose among
// those that do alike, and too little to matter otherwise.
const slight = 1e-4

func (e *equations) solve() (x column) {
	for i := range e.n {
		var row column
		row[i] = 1
		e.add(row, 0, slight)
	}
	e.triangle.Solve(x[:e.n])
	return x
}
