package linprog

import "math"

// core is the part of the basis that has to be inverted: the rows whose logical
// variable is nonbasic by the structural variables that are basic, as many as those.
// It is factorised from the coefficients, P M = L U with partial pivoting, and so
// owes nothing to the tableau.
type core struct {
	rows, columns []int
	lu            []float64
	order         []int // of the rows, by pivot
	side, right   []float64
}

// factorise reports whether the core of the present basis could be inverted.
func (s *Solver) factorise() bool {
	c := &s.core
	c.rows, c.columns = c.rows[:0], c.columns[:0]
	for _, v := range s.nonbasic {
		if v >= s.n {
			c.rows = append(c.rows, v-s.n)
		}
	}
	for _, v := range s.basic {
		if v < s.n {
			c.columns = append(c.columns, v)
		}
	}
	c.lu, c.order, c.side = c.lu[:0], c.order[:0], c.side[:0]
	c.right = resized(c.right, len(c.rows))
	for k, i := range c.rows {
		from := s.coefficients(i)
		for _, j := range c.columns {
			c.lu = append(c.lu, from[j])
		}
		c.order = append(c.order, k)
		c.side = append(c.side, 0)
	}
	return c.decompose()
}

func (c *core) line(i int) []float64 {
	n := len(c.columns)
	return c.lu[i*n : (i+1)*n]
}

func (c *core) decompose() bool {
	for k := range c.rows {
		if !c.exchange(k) {
			return false
		}
		main := c.line(k)
		for i := k + 1; i < len(c.rows); i++ {
			row := c.line(i)
			if row[k] == 0 {
				continue
			}
			row[k] /= main[k]
			addTo(row[k+1:], -row[k], main[k+1:])
		}
	}
	return true
}

// exchange brings the row with the largest entry in column k to the place k.
func (c *core) exchange(k int) bool {
	best := k
	for i := k + 1; i < len(c.rows); i++ {
		if math.Abs(c.line(i)[k]) > math.Abs(c.line(best)[k]) {
			best = i
		}
	}
	if !(math.Abs(c.line(best)[k]) > noise) {
		return false
	}
	if best != k {
		a, b := c.line(k), c.line(best)
		for j := range a {
			a[j], b[j] = b[j], a[j]
		}
		c.order[k], c.order[best] = c.order[best], c.order[k]
	}
	return true
}

// solve finds z with M z = side, where side has an entry for each of the rows; z
// takes its place, with an entry for each of the columns.
func (c *core) solve(side []float64) {
	z := c.side
	for k, i := range c.order {
		z[k] = side[i] - dot(c.line(k)[:k], z[:k])
	}
	for k := len(z) - 1; k >= 0; k-- {
		row := c.line(k)
		z[k] = (z[k] - dot(row[k+1:], z[k+1:])) / row[k]
	}
	copy(side, z)
}

// solveTransposed finds y with M' y = side, where side has an entry for each of the
// columns; y takes its place, with an entry for each of the rows.
func (c *core) solveTransposed(side []float64) {
	z := c.side
	copy(z, side)
	for k := range z {
		row := c.line(k)
		z[k] /= row[k]
		addTo(z[k+1:], -z[k], row[k+1:])
	}
	for k := len(z) - 1; k >= 0; k-- {
		addTo(z[:k], -z[k], c.line(k)[:k])
	}
	for k, i := range c.order {
		side[i] = z[k]
	}
}
