package align

import (
	"math"

	"example.org/collinear/internal/lsq"
	"example.org/collinear/units"
)

// atOnce is how many readings a block holds at most.
const atOnce = 64

// A block is some readings of one set in a basis of their own. About the clock
// position of one of them, p = t - t0, what a probe reads is
//
//	r = c + a sin p + b (1 - cos p)    a = S cos t0 - C sin t0    b = -S sin t0 - C cos t0
//
// with S and C the amplitudes of sin t and cos t. Where t0 lies on the arc these
// columns stay well apart however short it is, once each has its own length, and
// normal equations lose nothing that counts; in sin t and cos t they would. Derived
// here.
type block struct {
	points   [atOnce]point
	view     View
	turned   []Reading // where the points stand
	sin, cos float64   // of t0
	weight   float64   // sum of the weights
	mean     point     // weighted, of the readings

	r11, r12, r22 float64 // R'R are the normal equations of a and b, free of c
	z1, z2        float64 // R (a, b)
	spread        float64 // weighted squares of the values about their mean
	sum           float64 // weighted squares of the residuals
}

// point is one reading: its sine and one less its cosine from t0, its value in
// millimetres, and its weight 1/u^2.
type point struct{ x, v, y, weight float64 }

// take fits the block to readings of the set, their values counted from zero, and
// tells whether they are fit for it: three places well apart, with weights alike.
func (b *block) take(set *Set, readings []Reading, zero units.Length) bool {
	points := b.points[:len(readings)]
	b.turn(set.View, points, readings)
	b.read(set, points, readings, zero)
	if !b.factor(points) {
		return false
	}
	b.solve(points)
	return true
}

// turn notes the directions of the points. They are known where the block before
// stood at the same places, as the dials of one sweep do.
func (b *block) turn(view View, points []point, readings []Reading) {
	if b.stands(view, readings) {
		return
	}
	b.view, b.turned = view, readings
	t0 := view.Clock(readings[len(readings)/2].At).Normal()
	b.sin, b.cos = t0.SinCos()
	for i := range points {
		sin, cos := (view.Clock(readings[i].At).Normal() - t0).SinCos()
		points[i].x, points[i].v = sin, 1-cos
	}
}

// stands tells whether the points stand where these readings do.
func (b *block) stands(view View, readings []Reading) bool {
	if view != b.view || len(readings) != len(b.turned) {
		return false
	}
	for i := range readings {
		if readings[i].At != b.turned[i].At {
			return false
		}
	}
	return true
}

// read notes the values and weights of the points, and their mean.
func (b *block) read(set *Set, points []point, readings []Reading, zero units.Length) {
	common := weightOf(set.U.Reading)
	weight, mean := 0.0, point{}
	for i := range points {
		r, p := &readings[i], &points[i]
		w := common
		if r.U != 0 {
			w = weightOf(r.U)
		}
		p.y, p.weight = mm(r.Value-zero), float64(w*w)
		weight += p.weight
		mean.x += float64(p.weight * p.x)
		mean.v += float64(p.weight * p.v)
		mean.y += float64(p.weight * p.y)
	}
	b.weight, b.mean = weight, point{mean.x / weight, mean.v / weight, mean.y / weight, 1}
}

// less returns a point with the mean taken off.
func (p *point) less(mean *point) (x, v, y float64) { return p.x - mean.x, p.v - mean.v, p.y - mean.y }

// factor factors the normal equations about the mean (Cholesky).
func (b *block) factor(points []point) bool {
	mean := &b.mean
	var xx, xv, vv, xy, vy, yy float64
	for i := range points {
		p := &points[i]
		px, pv, py := p.less(mean)
		x, v := p.weight*px, p.weight*pv
		xx += float64(x * px)
		xv += float64(x * pv)
		vv += float64(v * pv)
		xy += float64(x * py)
		vy += float64(v * py)
		yy += float64(p.weight * py * py)
	}
	b.spread = yy
	const least = 1e-2 // of what cancels
	rest := vv - float64(xv*(xv/xx))
	if !(xx > least*b.weight*mean.x*mean.x && vv > least*b.weight*mean.v*mean.v && rest > least*vv) {
		return false
	}
	b.r11, b.r22 = math.Sqrt(xx), math.Sqrt(rest)
	b.r12 = xv / b.r11
	b.z1, b.z2 = b.forward(xy, vy)
	return true
}

// forward solves R'z = g.
func (b *block) forward(g1, g2 float64) (z1, z2 float64) {
	z1 = g1 / b.r11
	return z1, (g2 - float64(b.r12*z1)) / b.r22
}

// solve takes the residuals, and refines the answer by what they leave.
func (b *block) solve(points []point) {
	v := b.z2 / b.r22
	x := (b.z1 - float64(b.r12*v)) / b.r11
	mean := &b.mean
	var sum, g1, g2 float64
	for i := range points {
		p := &points[i]
		px, pv, py := p.less(mean)
		left := py - float64(x*px) - float64(v*pv)
		weighted := p.weight * left
		sum += float64(weighted * left)
		g1 += float64(weighted * px)
		g2 += float64(weighted * pv)
	}
	dz1, dz2 := b.forward(g1, g2)
	b.z1, b.z2, b.sum = b.z1+dz1, b.z2+dz2, sum
}

// rows are the equations in S and C that are worth as much as the block, beside
// that of its mean.
func (b *block) rows() (rows [2][2]float64, rhs [2]float64) {
	rows[0][0] = float64(b.r11*b.cos) - float64(b.r12*b.sin)
	rows[0][1] = -float64(b.r11*b.sin) - float64(b.r12*b.cos)
	rows[1][0] = -float64(b.r22 * b.sin)
	rows[1][1] = -float64(b.r22 * b.cos)
	return rows, [2]float64{b.z1, b.z2}
}

// addTo adds all that the block tells to a triangle in (zero, sine, cosine).
func (b *block) addTo(own *lsq.Triangle) {
	w := math.Sqrt(b.weight)
	x, v := b.mean.x, 1-b.mean.v
	row := [3]float64{w, w * (float64(b.sin*v) + float64(b.cos*x)), w * (float64(b.cos*v) - float64(b.sin*x))}
	own.Add(row[:], w*b.mean.y)
	rows, rhs := b.rows()
	for i := range rows {
		row = [3]float64{0, rows[i][0], rows[i][1]}
		own.Add(row[:], rhs[i])
	}
}
