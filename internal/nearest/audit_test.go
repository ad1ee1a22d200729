package nearest_test

import (
	"fmt"
	"math"
	"math/big"

	"example.org/collinear/internal/nearest"
)

// The audit knows nothing of how an answer came about. Sums and products are
// rational numbers, without rounding; only tolerances are floating-point.

func rat(f float64) *big.Rat { return new(big.Rat).SetFloat64(f) }

func float(r *big.Rat) float64 {
	f, _ := r.Float64()
	return f
}

func rats(v []float64) []*big.Rat {
	exact := make([]*big.Rat, len(v))
	for i, f := range v {
		exact[i] = rat(f)
	}
	return exact
}

func ratDot(a, b []*big.Rat) *big.Rat {
	sum, term := new(big.Rat), new(big.Rat)
	for i := range a {
		if a[i].Sign() != 0 && b[i].Sign() != 0 {
			sum.Add(sum, term.Mul(a[i], b[i]))
		}
	}
	return sum
}

// norm returns the length of a row, which only scales tolerances.
func norm(a []float64) float64 {
	sum := 0.0
	for _, v := range a {
		sum = math.Hypot(sum, v)
	}
	return sum
}

// allowed is the tolerance that the package promises for a row, times its length,
// with a thousandth added for rounding in the package's own check.
func allowed(r nearest.Row) float64 {
	if norm(r.Coefficients) == 0 {
		return 1.001e-10 * (1 + math.Abs(r.Least))
	}
	return 1.001e-10 * (norm(r.Coefficients) + math.Abs(r.Least))
}

// slack returns a.x - b.
func slack(r nearest.Row, x []*big.Rat) float64 {
	value := ratDot(rats(r.Coefficients), x)
	return float(value.Sub(value, rat(r.Least)))
}

// keeps asks that x keeps all rows to the tolerance, and the rounding of its check.
func keeps(rows []nearest.Row, x []*big.Rat) error {
	rounding := float64(len(x)+2) * 0x1p-53 * math.Sqrt(float(ratDot(x, x)))
	for i, r := range rows {
		room := allowed(r) + rounding*norm(r.Coefficients)
		if s := slack(r, x); s < -room || r.Equal && s > room {
			return fmt.Errorf("row %d is missed by %g, allowed is %g", i, s, room)
		}
	}
	return nil
}

// sum returns the rows times multipliers added up: coefficients and least value.
func sum(n int, rows []nearest.Row, duals []float64) (a []*big.Rat, b *big.Rat) {
	a, b = rats(make([]float64, n)), new(big.Rat)
	for i, y := range duals {
		if y == 0 {
			continue
		}
		f := rat(y)
		for j, v := range rows[i].Coefficients {
			a[j].Add(a[j], new(big.Rat).Mul(f, rat(v)))
		}
		b.Add(b, new(big.Rat).Mul(f, rat(rows[i].Least)))
	}
	return a, b
}

func signs(rows []nearest.Row, duals []float64) error {
	if len(duals) != len(rows) {
		return fmt.Errorf("%d multipliers for %d rows", len(duals), len(rows))
	}
	for i, y := range duals {
		if !rows[i].Equal && !(y >= 0) {
			return fmt.Errorf("multiplier %d of an inequality is %g", i, y)
		}
	}
	return nil
}

// audit holds an answer against what the package promises.
func audit(p instance, got nearest.Point) error {
	if p.want != 0 && got.Status != p.want {
		return fmt.Errorf("%v, want %v", got.Status, p.want)
	}
	switch got.Status {
	case nearest.Found:
		return auditFound(p, got)
	case nearest.Empty:
		return auditEmpty(p, got)
	default:
		return fmt.Errorf("%v after %d steps", got.Status, got.Steps)
	}
}

// auditFound asks for the conditions of Karush, Kuhn and Tucker, and for a small
// gap to the lower bound that any multipliers y with the right signs give:
// |x|^2/2 >= y.b - |A'y|^2/2 for every x that keeps all rows.
func auditFound(p instance, got nearest.Point) error {
	x := rats(got.X)
	if err := signs(p.rows, got.Duals); err != nil {
		return err
	}
	if err := keeps(p.rows, x); err != nil {
		return err
	}
	g, yb := sum(p.n, p.rows, got.Duals)
	gap := new(big.Rat).Add(ratDot(x, x), ratDot(g, g))
	gap.Sub(gap.Quo(gap, rat(2)), yb)
	room, size := 0.0, norm(got.X)
	rounding := float64(p.n+2) * 0x1p-53 * size
	for i, y := range got.Duals {
		missed := allowed(p.rows[i]) + rounding*norm(p.rows[i].Coefficients)
		room += math.Abs(y) * missed
		size += math.Abs(y) * norm(p.rows[i].Coefficients)
		if y != 0 && math.Abs(slack(p.rows[i], x)) > missed {
			return fmt.Errorf("row %d has a multiplier, but is slack by %g", i, slack(p.rows[i], x))
		}
	}
	if math.Abs(float(gap)) > room+0.5e-26*size*size {
		return fmt.Errorf("gap of %g to the lower bound, room is %g", float(gap), room)
	}
	for j := range g {
		g[j].Sub(g[j], x[j])
	}
	if off := math.Sqrt(float(ratDot(g, g))); off > 1.001e-13*size {
		return fmt.Errorf("x is off the sum of the rows by %g, of %g", off, size)
	}
	return nil
}

// auditEmpty asks for the contradiction, with the margin that the package states.
func auditEmpty(p instance, got nearest.Point) error {
	if got.X != nil {
		return fmt.Errorf("a point of an empty set: %v", got.X)
	}
	if err := signs(p.rows, got.Duals); err != nil {
		return err
	}
	g, b := sum(p.n, p.rows, got.Duals)
	largest := 0.0
	for i, y := range got.Duals {
		if length := norm(p.rows[i].Coefficients); y != 0 && length > 0 {
			largest = max(largest, math.Abs(p.rows[i].Least)/length)
		}
	}
	rest := math.Sqrt(float(ratDot(g, g)))
	if b.Sign() <= 0 || float(b) < 99.9*(1+largest)*rest {
		return fmt.Errorf("no proof: coefficients add up to %g, least values to %g", rest, float(b))
	}
	return nil
}

// auditActive solves the rows with a multiplier as equations, without rounding,
// and asks that this point keeps all rows, that its multipliers have the right
// signs, and that the answer is near it.
func auditActive(p instance, got nearest.Point) error {
	var rows []nearest.Row
	for i, y := range got.Duals {
		if y != 0 {
			rows = append(rows, p.rows[i])
		}
	}
	x, duals, ok := equations(p.n, rows)
	if !ok {
		return fmt.Errorf("the %d active rows are dependent", len(rows))
	}
	largest := 0.0
	for i := range rows {
		largest = max(largest, math.Abs(float(duals[i]))*norm(rows[i].Coefficients))
	}
	for i, r := range rows {
		if y := float(duals[i]) * norm(r.Coefficients); !r.Equal && y < -1e-10*(1+largest) {
			return fmt.Errorf("exact multiplier %d is %g", i, y)
		}
	}
	for j := range x {
		off := new(big.Rat).Sub(x[j], rat(got.X[j]))
		if math.Abs(float(off)) > 1e-9*(1+norm(got.X)) {
			return fmt.Errorf("x[%d] is off by %g", j, float(off))
		}
	}
	return keeps(p.rows, x)
}

// equations returns the shortest x that meets all rows with equality, and the
// multipliers y of x = A'y from A A' y = b; ok is false if rows are dependent.
func equations(n int, rows []nearest.Row) (x, y []*big.Rat, ok bool) {
	a, m := make([][]*big.Rat, len(rows)), make([][]*big.Rat, len(rows))
	for i, r := range rows {
		a[i] = rats(r.Coefficients)
	}
	for i, r := range rows {
		m[i] = make([]*big.Rat, len(rows)+1)
		for k := range rows {
			m[i][k] = ratDot(a[i], a[k])
		}
		m[i][len(rows)] = rat(r.Least)
	}
	if !eliminate(m) {
		return nil, nil, false
	}
	x, y = rats(make([]float64, n)), make([]*big.Rat, len(rows))
	for i := range rows {
		y[i] = m[i][len(rows)]
		for j := range x {
			x[j].Add(x[j], new(big.Rat).Mul(y[i], a[i][j]))
		}
	}
	return x, y, true
}

// eliminate turns the left part of m, positive semidefinite, into the identity.
func eliminate(m [][]*big.Rat) (ok bool) {
	for i := range m {
		if m[i][i].Sign() == 0 {
			return false
		}
		pivot := new(big.Rat).Inv(m[i][i])
		for j := i; j < len(m[i]); j++ {
			m[i][j].Mul(m[i][j], pivot)
		}
		for k := range m {
			if k == i || m[k][i].Sign() == 0 {
				continue
			}
			f := new(big.Rat).Set(m[k][i])
			for j := i; j < len(m[k]); j++ {
				m[k][j].Sub(m[k][j], new(big.Rat).Mul(f, m[i][j]))
			}
		}
	}
	return true
}
