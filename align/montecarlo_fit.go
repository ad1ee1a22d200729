package align

import (
	"math"

	"example.org/collinear/internal/lsq"
)

// bends tells whether an error of a set changes the law that its readings
// follow, so that the answer is no longer linear in what is drawn. Errors of
// readings and of sag do not.
func (s *Set) bends() bool {
	return s.U.Station != 0 || s.U.Clock != 0 || s.U.Angle != 0 || s.U.Radius != 0 && usesOf[s.Probe.Kind].radius
}

// system holds equations in the four numbers, [A | b] row by row: two of each set.
type system [][four + 1]float64

// answer fits the sets as drawn.
func (t *trials) answer() (beta [four]float64, ok bool) {
	if t.gain != nil {
		return t.gain.apply(t.drawn), true
	}
	seen := t.write()
	r := t.system.triangle()
	return r.solve(), r.sees(&seen)
}

// write fills the system with the equations of all sets as drawn. It returns what
// the columns would be on a full turn, see [solution.see].
func (t *trials) write() (seen law) {
	for i := range t.sweeps {
		l := t.drawn[i].law
		e := t.equations(i)
		for j := range e.rows {
			row := l.row(e.rows[j][0], e.rows[j][1])
			t.system[2*i+j] = [...]float64{row[0], row[1], row[2], row[3], e.rhs[j]}
		}
		seen.addFullTurn(l, t.sweeps[i].weight)
	}
	return seen
}

// equations returns those of set i as drawn, its errors and its droop in the
// right-hand sides.
func (t *trials) equations(i int) (e equations) {
	d, s := &t.drawn[i], &t.sweeps[i]
	e = s.own
	if d.angles != nil {
		e = s.reduce(d.angles)
	}
	e.turn(d.sin, d.cos)
	for j := range e.rhs {
		e.rhs[j] += d.noise[j] - float64(d.droop*e.rows[j][1])
	}
	return e
}

// triangle is [R | q] of a system, each row divided by its diagonal and begun with
// it: row i holds what stands in columns i, i+1, ... of R, and then of q.
type triangle struct {
	rows  [four][four + 1]float64
	pivot [four]float64 // squares of the diagonal
}

// triangle reduces a system, which it uses up, by Gram and Schmidt's method in its
// modified form: the first column is taken out of all others, and these move up.
// With the right-hand side as one more column it is as good for least squares as plane
// rotations are (A. Bjorck, Solving linear least squares problems by Gram-Schmidt
// orthogonalization, BIT 7 (1967), pp. 1-21, from memory).
func (s system) triangle() (r triangle) {
	for i := range r.rows {
		var square, b, c, d, e float64 // products of the first column with itself and the others
		for k := range s {
			x := &s[k]
			square += float64(x[0] * x[0])
			b += float64(x[0] * x[1])
			c += float64(x[0] * x[2])
			d += float64(x[0] * x[3])
			e += float64(x[0] * x[4])
		}
		b, c, d, e = b/square, c/square, d/square, e/square
		for k := range s {
			x := &s[k]
			first := x[0]
			x[0] = x[1] - float64(first*b)
			x[1] = x[2] - float64(first*c)
			x[2] = x[3] - float64(first*d)
			x[3] = x[4] - float64(first*e)
			x[4] = 0
		}
		r.pivot[i], r.rows[i] = square, [...]float64{1, b, c, d, e}
	}
	return r
}

// solve returns the four numbers, by back substitution.
func (r *triangle) solve() (beta [four]float64) {
	one, two, three, last := &r.rows[0], &r.rows[1], &r.rows[2], &r.rows[3]
	beta[3] = last[1]
	beta[2] = three[2] - float64(three[1]*beta[3])
	beta[1] = two[3] - float64(two[1]*beta[2]) - float64(two[2]*beta[3])
	beta[0] = one[4] - float64(one[1]*beta[1]) - float64(one[2]*beta[2]) - float64(one[3]*beta[3])
	return beta
}

// sees tells whether the condition is below its limit, as [solution.see] does. With
// columns scaled as a full turn would leave them the squares of the singular values
// sum to four at most, so that the product of the three greatest is (4/3)^(3/2) = 1.54
// at most (the mean of their squares is no less than the root of the product), and the
// least is no less than the product of all four, the determinant, over that. Derived
// here. Where this does not tell, they are computed.
func (r *triangle) sees(seen *law) bool {
	const enough = 1.54 / limitCondition
	square := r.pivot[0] * r.pivot[1] * r.pivot[2] * r.pivot[3]
	if math.Sqrt(square) > enough*seen.onOffset*seen.onSlope {
		return true
	}
	var work [four * (four + 1)]float64
	common := lsq.In(work[:], four)
	for i := range r.rows {
		var row [four]float64
		for k := i; k < four; k++ {
			row[k] = r.rows[i][k-i] * math.Sqrt(r.pivot[i])
		}
		common.Add(row[:], 0)
	}
	var s solution
	return s.see(&common, seen.fullTurn()) == nil
}

// gain is how the answer follows where laws and angles stay: it is linear in what
// is drawn then.
type gain struct {
	nominal [four]float64
	sets    []setGain
}

// setGain is by how much the answer moves with the errors of one set and with its
// droop, which is so much as stated.
type setGain struct {
	noise   [2][four]float64
	onDroop [four]float64
	droop   float64
}

// newGain solves the system for each right-hand side alone.
func (t *trials) newGain() *gain {
	g := &gain{sets: make([]setGain, len(t.sweeps))}
	for i := range g.sets {
		set, e := &g.sets[i], t.equations(i)
		set.droop = t.drawn[i].droop
		for j := range e.rhs {
			t.write()
			for k := range t.system {
				t.system[k][four] = 0
			}
			t.system[2*i+j][four] = 1
			r := t.system.triangle()
			set.noise[j] = r.solve()
			addTimes(&set.onDroop, -e.rows[j][1], &set.noise[j])
			addTimes(&g.nominal, e.rhs[j], &set.noise[j])
		}
	}
	return g
}

// apply returns the answer for the errors and the droop of this trial.
func (g *gain) apply(drawn []drawnSet) (beta [four]float64) {
	beta = g.nominal
	for i := range g.sets {
		set, d := &g.sets[i], &drawn[i]
		addTimes(&beta, d.noise[0], &set.noise[0])
		addTimes(&beta, d.noise[1], &set.noise[1])
		if more := d.droop - set.droop; more != 0 {
			addTimes(&beta, more, &set.onDroop)
		}
	}
	return beta
}

// addTimes adds k*a to sum.
func addTimes(sum *[four]float64, k float64, a *[four]float64) {
	for i := range sum {
		sum[i] += float64(k * a[i])
	}
}
