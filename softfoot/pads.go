package softfoot

import (
	"math"
	"slices"

	"example.org/collinear/internal/lsq"
)

// pads returns the heights of the pads, the smallest that will do, which explain
// the lifts best. A foot that lifts by no more than margin says only that its pad
// is not lower: how much higher it is the bolt hides. So such a foot counts where
// it would lift, and only there.
func (p *plan) pads(lifts *column, margin float64) (h column) {
	var told [most]bool
	for i := range p.n {
		told[i] = lifts[i] > margin
	}
	for range 2 * most { // settles after two or three
		h = p.explain(lifts, &told)
		before := told
		for i, l := range p.lifts(&h) {
			if i < p.n && lifts[i] <= margin {
				told[i] = l > lifts[i]
			}
		}
		if told == before {
			break
		}
	}
	return h
}

// miss is the most by which the lifts that heights explain miss what was seen.
func (p *plan) miss(h, lifts *column, margin float64) (most float64) {
	explained := p.lifts(h)
	for i := range p.n {
		over := explained[i] - lifts[i]
		if lifts[i] > margin {
			over = math.Abs(over)
		}
		most = max(most, over)
	}
	return most
}

// unhidden returns the heights, all larger by one factor up to two, that show the
// largest lift as it was seen: the weight of a frame takes away from lifts and adds
// to none. So the one foot that is soft on four gets its own excess (US Bureau of
// Reclamation, Maintenance Scheduling for Mechanical Equipment, FIST 4-1A, p. 17,
// read).
func (p *plan) unhidden(h column, largest float64) column {
	lifts := p.lifts(&h)
	factor := min(2, max(1, largest/slices.Max(lifts[:p.n])))
	for i := range p.n {
		h[i] *= factor
	}
	return h
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
