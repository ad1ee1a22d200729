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

// system holds equations in the four numbers, [a | b] row by row.
type system [][four + 1]float64

// answer fits the sets as drawn.
func (t *trials) answer() (beta [four]float64, ok bool) {
	if t.gain != nil {
		return t.gain.apply(t), true
	}
	seen := t.write()
	r := t.system.triangle()
	return r.solve(), r.sees(&seen)
}

// write fills the system with the equations of all sets as drawn. It returns what
// the columns would be on a full turn, see [solution.see].
func (t *trials) write() (seen law) {
	for i := range t.sweeps {
		d, e := &t.drawn[i], t.equations(i)
		for j, r := range e.rows {
			row := d.law.row(r[0], r[1])
			to := &t.system[2*i+j]
			copy(to[:], row[:])
			to[four] = e.rhs[j]
		}
		seen.addFullTurn(d.law, t.sweeps[i].weight)
	}
	return seen
}

// equations returns those of set i as drawn, its errors and its droop in the
// right-hand sides.
func (t *trials) equations(i int) equations {
	d, e := &t.drawn[i], t.sweeps[i].own
	if d.angles != nil {
		e = t.sweeps[i].reduce(d.angles)
	}
	if d.sin != 0 {
		e = e.turned(d.sin, d.cos)
	}
	for j := range e.rhs {
		e.rhs[j] += d.noise[j] - float64(d.droop*e.rows[j][1])
	}
	return e
}

// triangle is [R | q] of a system, its rows divided by their diagonal.
type triangle struct {
	rows  [four][four + 1]float64
	pivot [four]float64 // squares of the diagonal
}

// triangle reduces a system, which it uses up, by Gram and Schmidt's method in its
// modified form. With the right-hand side as one more column it is as good for
// least squares as plane rotations are (A. Bjorck, Solving linear least squares
// problems by Gram-Schmidt orthogonalization, BIT 7 (1967), pp. 1-21, from memory),
// and takes a third of their time here.
func (s system) triangle() (r triangle) {
	for j := range four {
		var along [four + 1]float64 // products of column j with itself and with those after it
		for i := range s {
			for k := j; k <= four; k++ {
				along[k] += float64(s[i][j] * s[i][k])
			}
		}
		r.pivot[j] = along[j]
		for k := j + 1; k <= four; k++ {
			along[k] /= along[j]
		}
		for i := range s {
			for k := j + 1; k <= four; k++ {
				s[i][k] -= float64(s[i][j] * along[k])
			}
		}
		along[j] = 1
		r.rows[j] = along
	}
	return r
}

// solve returns the four numbers, by back substitution.
func (r *triangle) solve() (beta [four]float64) {
	for i := four - 1; i >= 0; i-- {
		beta[i] = r.rows[i][four]
		for k := i + 1; k < four; k++ {
			beta[i] -= float64(r.rows[i][k] * beta[k])
		}
	}
	return beta
}

// sees tells whether the condition is below its limit, as [solution.see] does. The
// singular values of the scaled columns have squares that sum to four at most, so
// that the least of them is no smaller than their product over (4/3)^(3/2): by the
// inequality of the means of the other three, derived here. Only where that does not tell are they
// computed.
func (r *triangle) sees(seen *law) bool {
	const enough = 1.54 / limitCondition
	square := r.pivot[0] * r.pivot[1] * r.pivot[2] * r.pivot[3]
	if math.Sqrt(square) > enough*seen.onOffset*seen.onSlope {
		return true
	}
	var work [four * (four + 1)]float64
	common := lsq.In(work[:], four)
	for i := range r.rows {
		row := r.rows[i]
		for k := range row {
			row[k] *= math.Sqrt(r.pivot[i])
		}
		common.Add(row[:four], row[four])
	}
	var s solution
	return s.see(&common, seen) == nil
}

// gain is by how much each number of the answer moves with the right-hand side of
// each equation, where the laws and angles stay.
type gain [][four]float64

func (t *trials) newGain() gain {
	g := make(gain, len(t.system))
	for j := range g {
		t.write()
		for i := range t.system {
			t.system[i][four] = 0
		}
		t.system[j][four] = 1
		r := t.system.triangle()
		g[j] = r.solve()
	}
	return g
}

// apply returns the answer for the errors and the droop of this trial.
func (g gain) apply(t *trials) (beta [four]float64) {
	for i := range t.sweeps {
		e := t.equations(i)
		for j, rhs := range e.rhs {
			for n, x := range g[2*i+j] {
				beta[n] += float64(x * rhs)
			}
		}
	}
	return beta
}
