package softfoot

import (
	"math"

	"example.org/collinear/internal/lsq"
)

// most is how many feet a survey, and how many corners a foot may have.
const most = 8

// column holds one number for each foot or corner; lengths are in millimetres.
type column [most]float64

// plan is what the places of the feet say about a frame that is flat when free and
// bends like a plate: the forces that hold its feet down on pads of heights h are
// K h. Pads in one plane need no force. With feet at the corners of a rectangle
// only a twist does, K h = n (n.h) with n = (1, -1, -1, 1) up to a factor, which
// drops out of everything here.
type plan struct {
	n     int
	force [most]column // K, n by n
}

// give is how far a foot gives under a force beside how far the frame bends, in the
// measure of newPlan: bolts and pads yield, and no frame is one even plate. Our own
// figure, the best for the frames of the tests; from 0.1 to 0.6 does nearly as
// well. With four feet it has no effect.
const give = 0.3

// newPlan returns the plan of feet at these places, which must not stand in one
// line. The heights h follow from the forces f, which balance, by the thin plate
// of least bending through points, up to a plane:
//
//	h_i = a + b x_i + c y_i + sum_j f_j r_ij^2 ln r_ij + give f_i
//	sum f_j = sum f_j x_j = sum f_j y_j = 0
//
// (R. L. Harder, R. N. Desmarais, Interpolation using surface splines, Journal of
// Aircraft 9, 1972, from memory), distances in the farthest foot's along or across.
func newPlan(n int, x, y column) plan {
	p := plan{n: n}
	x, y = p.scaled(x, y)
	for k := range n {
		p.force[k] = p.forces(&x, &y, k)
	}
	return p
}

// scaled returns the places from the middle of the feet, the farthest at distance
// one along or across.
func (p *plan) scaled(x, y column) (column, column) {
	middleX, middleY, size := mean(p.n, x), mean(p.n, y), 0.0
	for i := range p.n {
		x[i], y[i] = x[i]-middleX, y[i]-middleY
		size = max(size, math.Abs(x[i]), math.Abs(y[i]))
	}
	for i := range p.n {
		x[i], y[i] = x[i]/size, y[i]/size
	}
	return x, y
}

// forces returns the forces at the feet when pad k alone is high by one.
func (p *plan) forces(x, y *column, k int) (f column) {
	const planar = 3
	unknowns := p.n + planar
	t := lsq.In(make([]float64, lsq.Size(unknowns)), unknowns)
	row := make([]float64, unknowns)
	for i := range p.n {
		for j := range p.n {
			row[j] = bending(x[i]-x[j], y[i]-y[j])
		}
		row[i] = give
		row[p.n], row[p.n+1], row[p.n+2] = 1, x[i], y[i]
		height := 0.0
		if i == k {
			height = 1
		}
		t.Add(row, height)
	}
	for _, arm := range []*column{{1, 1, 1, 1, 1, 1, 1, 1}, x, y} {
		clear(row)
		copy(row[:p.n], arm[:])
		t.Add(row, 0)
	}
	solution := make([]float64, unknowns)
	t.Solve(solution)
	copy(f[:p.n], solution)
	return f
}

// bending is r^2 ln r.
func bending(dx, dy float64) float64 {
	square := float64(dx*dx) + float64(dy*dy)
	if square == 0 {
		return 0
	}
	return square * math.Log(square) / 2
}

// counts tells whether pads can lift foot i at all. They cannot where all others
// stand in one line, for then it always finds its pad.
func (p *plan) counts(i int) bool { return p.force[i][i] > 1e-6 }

// hold returns the forces K h.
func (p *plan) hold(h *column) (f column) {
	for i := range p.n {
		for j := range p.n {
			f[i] += float64(p.force[i][j] * h[j])
		}
	}
	return f
}

// lifts returns how far each foot stands above its pad when its bolt alone is
// loosened: until the force that held it there has gone,
//
//	lift_i = -(K h)_i / K_ii
//
// negative where its pad holds the foot up. With four feet that is -T/n_i for the
// twist T = sum n_i h_i.
func (p *plan) lifts(h *column) column {
	l := p.hold(h)
	for i := range p.n {
		if p.counts(i) {
			l[i] /= -p.force[i][i]
		} else {
			l[i] = 0
		}
	}
	return l
}
