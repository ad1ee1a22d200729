package nearest_test

import (
	"math/rand/v2"

	"example.org/collinear/internal/nearest"
)

// instance is a set of rows, and what is known of it from how it was made.
type instance struct {
	n    int
	rows []nearest.Row
	want nearest.Status // zero if either may come out
}

func (p *instance) least(b float64, a ...float64) { p.add(nearest.Row{Coefficients: a, Least: b}) }
func (p *instance) equal(b float64, a ...float64) {
	p.add(nearest.Row{Coefficients: a, Least: b, Equal: true})
}
func (p *instance) add(r nearest.Row) { p.rows = append(p.rows, r) }

func (p *instance) solve() nearest.Point {
	s := nearest.New(p.n)
	s.Add(p.rows...)
	return s.Solve()
}

// chance makes rows at random; the seed is the number of the instance.
type chance struct{ *rand.Rand }

func chanceOf(seed uint64) chance { return chance{rand.New(rand.NewPCG(seed, 7))} }

func (c chance) vector(n int) []float64 {
	v := make([]float64, n)
	for i := range v {
		v[i] = c.NormFloat64()
	}
	return v
}

// grid is a vector of few distinct numbers, so that rows are often equal,
// opposite or dependent.
func (c chance) grid(n int) []float64 {
	v := make([]float64, n)
	for i := range v {
		v[i] = float64(c.IntN(3) - 1)
	}
	return v
}

func product(a, x []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += float64(a[i] * x[i])
	}
	return sum
}

func times(f float64, a []float64) []float64 {
	scaled := make([]float64, len(a))
	for i, v := range a {
		scaled[i] = float64(f * v)
	}
	return scaled
}

// combination returns a sum of the rows so far, with factors that are not
// negative, and the least value that follows from it.
func (c chance) combination(p instance) (a []float64, b float64) {
	a = make([]float64, p.n)
	for _, row := range p.rows {
		if c.IntN(2) == 0 {
			continue
		}
		f := c.Float64()
		b += float64(f * row.Least)
		for j, v := range row.Coefficients {
			a[j] += float64(f * v)
		}
	}
	return a, b
}

// kinds are the ways to make a set. Each gets a point to plant in the set, by
// which "at" means that the row passes through it.
var kinds = []struct {
	name string
	fill func(p *instance, c chance, point []float64)
}{
	{"anything", func(p *instance, c chance, _ []float64) {
		for range 1 + c.IntN(2*p.n) {
			p.least(c.NormFloat64(), c.vector(p.n)...)
		}
	}},
	{"around a point", func(p *instance, c chance, point []float64) {
		p.want = nearest.Found
		p.around(c, point, 3*p.n)
	}},
	{"few distinct coefficients", func(p *instance, c chance, _ []float64) {
		for range 1 + c.IntN(3*p.n) {
			p.least(float64(c.IntN(5)-2), c.grid(p.n)...)
		}
	}},
	{"all through one point", func(p *instance, c chance, point []float64) {
		p.want = nearest.Found
		for range 3 * p.n {
			a := c.vector(p.n)
			p.least(product(a, point), a...)
		}
	}},
	{"pairs without width", func(p *instance, c chance, point []float64) { p.pairs(c, point, 0) }},
	{"pairs 1e-9 wide", func(p *instance, c chance, point []float64) { p.pairs(c, point, 1e-9) }},
	{"duplicates", func(p *instance, c chance, point []float64) {
		p.want = nearest.Found
		p.around(c, point, p.n)
		for _, row := range p.rows {
			f := []float64{1, 1, 3, 1.0 / 3}[c.IntN(4)]
			p.least(float64(f*row.Least), times(f, row.Coefficients)...)
		}
	}},
	{"implied rows", func(p *instance, c chance, point []float64) {
		p.want = nearest.Found
		p.around(c, point, p.n)
		for range p.n {
			a, b := c.combination(*p)
			p.least(b, a...)
		}
	}},
	{"equalities, some of them implied", func(p *instance, c chance, point []float64) {
		p.want = nearest.Found
		p.equalities(c, point)
		p.around(c, point, p.n)
	}},
	{"equalities that contradict", func(p *instance, c chance, point []float64) {
		p.want = nearest.Empty
		p.equalities(c, point)
		a, b := c.combination(*p)
		if product(a, a) == 0 {
			a, b = p.rows[0].Coefficients, p.rows[0].Least
		}
		p.equal(b+0.1*norm(a), a...)
		p.around(c, point, p.n)
	}},
	{"inequalities that contradict", func(p *instance, c chance, point []float64) {
		p.want = nearest.Empty
		p.around(c, point, p.n)
		a, b := c.combination(*p)
		if product(a, a) == 0 { // a row of zeros has no length by which to tell how far it is missed
			a, b = p.rows[0].Coefficients, p.rows[0].Least
		}
		p.least(-b+0.1, times(-1, a)...)
	}},
	{"bounds on absolute values", func(p *instance, c chance, point []float64) {
		p.want = nearest.Found
		for range 2 * p.n {
			p.between(c.vector(p.n), point, c.Float64()*0.1, c.Float64())
		}
	}},
}

// around adds up to m rows that the point keeps, half of them with equality.
func (p *instance) around(c chance, point []float64, m int) {
	for range 1 + c.IntN(m) {
		a := c.vector(p.n)
		p.least(product(a, point)-float64(c.IntN(2))*c.Float64(), a...)
	}
}

// between bounds a.x from both sides of its value at the point.
func (p *instance) between(a, point []float64, below, above float64) {
	b := product(a, point)
	p.least(b-below, a...)
	p.least(-b-above, times(-1, a)...)
}

func (p *instance) pairs(c chance, point []float64, width float64) {
	p.want = nearest.Found
	for range p.n + 1 {
		p.between(c.vector(p.n), point, 0, width)
	}
	p.around(c, point, p.n)
}

// equalities adds equalities through the point, as many as there are variables
// at most, and such as follow from them.
func (p *instance) equalities(c chance, point []float64) {
	from := len(p.rows)
	for range 1 + c.IntN(p.n) {
		a := c.vector(p.n)
		p.equal(product(a, point), a...)
	}
	for range c.IntN(p.n + 1) {
		a, _ := c.combination(instance{n: p.n, rows: p.rows[from:]})
		p.equal(product(a, point), a...)
	}
}

// makeInstance returns instance number i of a kind with n variables. All numbers of
// every third are a thousandth, of every third a thousand times as large.
func makeInstance(kind, n int, i uint64) instance {
	c := chanceOf(i)
	p := instance{n: n}
	kinds[kind].fill(&p, c, c.vector(n))
	c.Shuffle(len(p.rows), func(i, j int) { p.rows[i], p.rows[j] = p.rows[j], p.rows[i] })
	for k := range p.rows {
		row, scale := &p.rows[k], []float64{1, 1e-3, 1e3}[i%3]
		row.Coefficients, row.Least = times(scale, row.Coefficients), float64(scale*row.Least)
	}
	return p
}
