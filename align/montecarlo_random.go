package align

import (
	"math"
	"math/rand/v2"
)

// spread is a standard deviation that was found with some degrees of freedom;
// with none to count it is known.
type spread struct{ deviation, dof float64 }

// draw returns deviation * sqrt(dof/chi2): times a normal number, that is one
// with a scaled t distribution (JCGM 101:2008, 6.4.9.5).
func (s spread) draw(random *rand.Rand) float64 {
	if s.deviation == 0 || s.dof == 0 {
		return s.deviation
	}
	return s.deviation * math.Sqrt(s.dof/(2*gamma(random, s.dof/2)))
}

// gamma draws from the gamma distribution of shape a and scale one, after G.
// Marsaglia and W. W. Tsang, A simple method for generating gamma variables, ACM
// Transactions on Mathematical Software 26 (2000), pp. 363-372 (from memory).
func gamma(random *rand.Rand, a float64) float64 {
	uniform := func() float64 { return 1 - random.Float64() } // never zero
	if a < 1 {
		return gamma(random, a+1) * math.Pow(uniform(), 1/a)
	}
	d := a - 1.0/3
	c := 1 / math.Sqrt(9*d)
	x := random.NormFloat64()
	v := 1 + float64(c*x)
	v = float64(v * v * v)
	if v > 0 && math.Log(uniform()) < float64(x*x/2)+float64(d*(1-v+math.Log(v))) {
		return d * v
	}
	return gamma(random, a) // refused, as at most one of twenty is
}

// drawnTarget is a target ready to be drawn.
type drawnTarget struct {
	value            [four]float64
	known, scattered *matrix // L with LL' the covariance; nil where there is none
	scatter          spread
}

func newDrawnTarget(e *Estimate) drawnTarget {
	c := &e.Cov
	d := drawnTarget{value: e.Value.numbers(), scatter: spread{deviation: 1, dof: c.DoF}}
	d.known = c.v.plus(c.scattered.times(-1)).rootOf(&c.v)
	d.scattered = c.scattered.rootOf(&c.v)
	return d
}

// rootOf returns the root of a part of whole; nil where it is zero.
func (m matrix) rootOf(whole *matrix) *matrix {
	if l := m.root(whole); l != (matrix{}) {
		return &l
	}
	return nil
}

func (d *drawnTarget) draw(random *rand.Rand) [four]float64 {
	b := d.value
	if d.known != nil {
		d.known.addDrawn(&b, random, 1)
	}
	if d.scattered != nil {
		d.scattered.addDrawn(&b, random, d.scatter.draw(random))
	}
	return b
}

// addDrawn adds L z to b, with z normal numbers of this deviation and L a lower
// triangle.
func (m *matrix) addDrawn(b *[four]float64, random *rand.Rand, deviation float64) {
	for j := range m {
		z := deviation * random.NormFloat64()
		for i := j; i < four; i++ {
			b[i] += float64(m[i][j] * z)
		}
	}
}

// root returns the lower triangle L with LL' = m (Cholesky). A pivot that is no
// more than rounding beside the variance in whole counts as zero.
func (m matrix) root(whole *matrix) (l matrix) {
	const rounding = 1e-12
	for j := range m {
		pivot := m[j][j]
		for k := range j {
			pivot -= float64(l[j][k] * l[j][k])
		}
		if !(pivot > rounding*whole[j][j]) {
			continue
		}
		l[j][j] = math.Sqrt(pivot)
		for i := j + 1; i < four; i++ {
			rest := m[i][j]
			for k := range j {
				rest -= float64(l[i][k] * l[j][k])
			}
			l[i][j] = rest / l[j][j]
		}
	}
	return l
}
