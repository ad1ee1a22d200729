package linprog

import (
	"math"
	"math/big"
	"testing"
)

// In exact rationals: what the basis and the multipliers of a result prove. The
// numbers are those of the program as it was handed over; of the solver only the
// choice of the basis is used.

func rat(x float64) *big.Rat { return new(big.Rat).SetFloat64(x) }

func float(x *big.Rat) float64 {
	f, _ := x.Float64()
	return f
}

func mul(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }

// exactSolve solves the square system m z = b by elimination; false if singular.
func exactSolve(m [][]*big.Rat, b []*big.Rat) bool {
	for k := range m {
		p := k
		for p < len(m) && m[p][k].Sign() == 0 {
			p++
		}
		if p == len(m) {
			return false
		}
		m[k], m[p], b[k], b[p] = m[p], m[k], b[p], b[k]
		for i := range m {
			if i == k || m[i][k].Sign() == 0 {
				continue
			}
			f := new(big.Rat).Quo(m[i][k], m[k][k])
			for j := k; j < len(m); j++ {
				if m[k][j].Sign() != 0 {
					m[i][j] = new(big.Rat).Sub(m[i][j], mul(f, m[k][j]))
				}
			}
			b[i] = new(big.Rat).Sub(b[i], mul(f, b[k]))
		}
	}
	for k := range m {
		b[k] = new(big.Rat).Quo(b[k], m[k][k])
	}
	return true
}

// judge is a program with the basis that a solver chose for it.
type judge struct {
	t      testing.TB
	p      Program
	s      *Solver
	rows   []int // nonbasic rows
	column []int // basic variables
	basic  []bool
}

func newJudge(t testing.TB, p Program, s *Solver) *judge {
	g := &judge{t: t, p: p, s: s, basic: make([]bool, len(s.value))}
	for _, v := range s.basic {
		g.basic[v] = true
		if v < s.n {
			g.column = append(g.column, v)
		}
	}
	for _, v := range s.nonbasic {
		if v >= s.n {
			g.rows = append(g.rows, v-s.n)
		}
	}
	if len(g.rows) != len(g.column) {
		t.Fatalf("%d rows nonbasic, but %d variables basic", len(g.rows), len(g.column))
	}
	return g
}

func (g *judge) core(transposed bool) [][]*big.Rat {
	m := make([][]*big.Rat, len(g.rows))
	for k := range m {
		m[k] = make([]*big.Rat, len(g.rows))
		for l := range m[k] {
			i, j := k, l
			if transposed {
				i, j = l, k
			}
			m[k][l] = rat(g.p.Rows[g.rows[i]].Coefficients[g.column[j]])
		}
	}
	return m
}

func (g *judge) bounds(v int) (lower, upper float64) {
	if v < g.s.n {
		return g.p.Lower[v], g.p.Upper[v]
	}
	r := &g.p.Rows[v-g.s.n]
	return r.Lower, r.Upper
}

// seat is the exact value of a nonbasic variable.
func (g *judge) seat(v int) *big.Rat {
	lower, upper := g.bounds(v)
	switch g.s.value[v] {
	case g.s.lower[v]:
		return rat(lower)
	case g.s.upper[v]:
		return rat(upper)
	}
	if v >= g.s.n || g.s.value[v] != 0 {
		g.t.Fatalf("nonbasic variable %d sits at no bound", v)
	}
	return new(big.Rat)
}

// point is the exact values of all variables, logical ones behind.
func (g *judge) point() []*big.Rat {
	x := make([]*big.Rat, len(g.s.value))
	for v := range x {
		if x[v] = new(big.Rat); !g.basic[v] {
			x[v] = g.seat(v)
		}
	}
	b := make([]*big.Rat, len(g.rows))
	for k, i := range g.rows {
		b[k] = new(big.Rat).Sub(x[g.s.n+i], exactDot(g.p.Rows[i].Coefficients, x))
	}
	if !exactSolve(g.core(false), b) {
		g.t.Fatal("the basis is singular")
	}
	for k, j := range g.column {
		x[j] = b[k]
	}
	for i, r := range g.p.Rows {
		x[g.s.n+i] = exactDot(r.Coefficients, x)
	}
	return x
}

func exactDot(a []float64, x []*big.Rat) *big.Rat {
	sum := new(big.Rat)
	for j, c := range a {
		if c != 0 {
			sum.Add(sum, mul(rat(c), x[j]))
		}
	}
	return sum
}

// multipliers solves y M = side exactly and returns y for all rows.
func (g *judge) multipliers(side func(j int) *big.Rat) []*big.Rat {
	b := make([]*big.Rat, len(g.column))
	for k, j := range g.column {
		b[k] = side(j)
	}
	if !exactSolve(g.core(true), b) {
		g.t.Fatal("the basis is singular")
	}
	y := make([]*big.Rat, len(g.p.Rows))
	for i := range y {
		y[i] = new(big.Rat)
	}
	for k, i := range g.rows {
		y[i] = b[k]
	}
	return y
}

// combine returns y times the coefficients.
func (g *judge) combine(y []*big.Rat) []*big.Rat {
	sum := make([]*big.Rat, g.s.n)
	for j := range sum {
		sum[j] = new(big.Rat)
	}
	for i, r := range g.p.Rows {
		if y[i].Sign() == 0 {
			continue
		}
		for j, a := range r.Coefficients {
			if a != 0 {
				sum[j].Add(sum[j], mul(y[i], rat(a)))
			}
		}
	}
	return sum
}

// optimum judges the basis. It returns the exact cost, and by how much the basis
// misses being optimal: values beyond bounds in units of the tolerance, multipliers
// of the wrong sign likewise. Both are zero for an exact optimum.
func (g *judge) optimum() (cost, primal, dual float64) {
	x := g.point()
	for v := range x {
		lower, upper := g.bounds(v)
		primal = max(primal, g.beyond(v, lower, x[v], 1), g.beyond(v, upper, x[v], -1))
	}
	y := g.multipliers(func(j int) *big.Rat { return rat(g.p.Cost[j]) })
	d := g.combine(y)
	for j := range d {
		d[j].Sub(rat(g.p.Cost[j]), d[j])
		dual = max(dual, g.wrong(j, d[j])*g.s.column[j])
	}
	for i := range y {
		dual = max(dual, g.wrong(g.s.n+i, y[i])/g.s.row[i])
	}
	return float(exactDot(g.p.Cost, x)), primal, dual * g.s.money / Optimality
}

// beyond returns by how many tolerances x is below the bound (side 1) or above it.
func (g *judge) beyond(v int, bound float64, x *big.Rat, side float64) float64 {
	if math.IsInf(bound, 0) {
		return 0
	}
	scale := 1.0
	if v < g.s.n {
		scale /= g.s.column[v]
	} else {
		scale = g.s.row[v-g.s.n]
	}
	miss := side * float(new(big.Rat).Sub(rat(bound), x)) * scale
	return max(0, miss/g.s.tolerance(bound*scale))
}

// wrong returns the size of a multiplier if its sign is not the one that the place
// of the variable asks for.
func (g *judge) wrong(v int, m *big.Rat) float64 {
	at := g.s.value[v]
	low, high := at == g.s.lower[v], at == g.s.upper[v]
	if m.Sign() > 0 && !low || m.Sign() < 0 && !high || g.basic[v] && m.Sign() != 0 && !low && !high {
		return math.Abs(float(m))
	}
	return 0
}

// ray judges the proof of infeasibility that the basis gives for tableau row p: it
// returns the exact gap between the two ranges, in units of the scaled row, and -1
// if there is none.
func (g *judge) ray(p int) float64 {
	v := g.s.basic[p]
	y := g.multipliers(func(j int) *big.Rat {
		switch {
		case v >= g.s.n:
			return rat(-g.p.Rows[v-g.s.n].Coefficients[j])
		case v == j:
			return rat(1)
		}
		return new(big.Rat)
	})
	scale := 0.0
	if v >= g.s.n {
		y[v-g.s.n] = rat(1)
		scale = g.s.row[v-g.s.n]
	} else {
		scale = 1 / g.s.column[v]
	}
	return g.apart(y) * scale
}

// apart returns the gap between the range of y times the rows' bounds and that of
// y A times the variables' bounds, -1 if they meet.
func (g *judge) apart(y []*big.Rat) float64 {
	rows, columns := newRange(), newRange()
	for i, m := range y {
		rows.add(m, g.p.Rows[i].Lower, g.p.Rows[i].Upper)
	}
	for j, m := range g.combine(y) {
		columns.add(m, g.p.Lower[j], g.p.Upper[j])
	}
	return max(-1, rows.above(columns), columns.above(rows))
}

// exactRange is the range of a sum of products; a missing side is infinite.
type exactRange struct{ low, high *big.Rat }

func newRange() *exactRange { return &exactRange{new(big.Rat), new(big.Rat)} }

func (r *exactRange) add(m *big.Rat, lower, upper float64) {
	if m.Sign() < 0 {
		lower, upper = upper, lower
	}
	if m.Sign() != 0 {
		r.low, r.high = plus(r.low, m, lower), plus(r.high, m, upper)
	}
}

func plus(sum, m *big.Rat, bound float64) *big.Rat {
	if sum == nil || math.IsInf(bound, 0) {
		return nil
	}
	return new(big.Rat).Add(sum, mul(m, rat(bound)))
}

// above returns the gap by which r lies above o, -1 if it does not.
func (r *exactRange) above(o *exactRange) float64 {
	if r.low == nil || o.high == nil || r.low.Cmp(o.high) <= 0 {
		return -1
	}
	return float(new(big.Rat).Sub(r.low, o.high))
}
