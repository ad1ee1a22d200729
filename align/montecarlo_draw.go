package align

import (
	"math"
	"math/rand/v2"
	"slices"

	"example.org/collinear/units"
)

// trials draws the inputs of a job and works out what follows, one trial after
// another.
type trials struct {
	random  *rand.Rand
	job     *MonteCarlo
	scatter spread        // of the readings, in millimetres; none where they state their own
	mean    []Set         // about what is drawn
	drawn   []Set         // the sets of this trial
	clock   []units.Clock // of this trial: the common error of the clock positions of each set
	target  drawnTarget
	gain    *gain     // how readings become the answer; nil where each trial has to be fitted
	outcome []float64 // of this trial; see MonteCarlo.appendOutcome
}

func newTrials(m *MonteCarlo, f *Fitted, s *solution, random *rand.Rand) *trials {
	t := &trials{
		random: random, job: m, target: newDrawnTarget(&m.Target),
		mean: cloneSets(m.Sets), drawn: cloneSets(m.Sets), clock: make([]units.Clock, len(m.Sets)),
	}
	if !s.stated {
		t.scatter = spread{deviation: math.Sqrt(s.residualVariance()), dof: float64(f.DegreesOfFreedom)}
		for i := range t.mean {
			s.smooth(&t.mean[i])
			t.mean[i].U.Angle = 0 // is in the scatter already
		}
	}
	if !slices.ContainsFunc(t.mean, func(s Set) bool { return s.bends() }) {
		t.gain = s.gain(t.mean)
	}
	return t
}

// smooth puts every reading of a set on its fit.
func (s *solution) smooth(set *Set) {
	l, zero := set.Probe.law(), set.zero(s.beta)
	for i := range set.Readings {
		sin, cos := set.sinCos(i)
		set.Readings[i].Value -= fromMM(set.corrected(i, cos) - l.at(s.beta, sin, cos) - zero)
	}
}

// next runs one trial, and tells whether it gave an outcome.
func (t *trials) next() bool {
	deviation := fromMM(t.scatter.draw(t.random))
	for i := range t.drawn {
		t.drawShared(i)
		for j := range t.drawn[i].Readings {
			t.drawReading(i, j, deviation)
		}
	}
	beta, ok := t.answer()
	off := centreline(beta).Minus(t.target.draw(t.random))
	t.outcome = t.outcome[:0]
	t.outcome = t.job.appendOutcome(t.outcome, off, func(f Foot) units.Length { return about(t.random, f.X, f.U) })
	return ok && !slices.ContainsFunc(t.outcome, func(x float64) bool { return math.IsInf(x, 0) || math.IsNaN(x) })
}

// drawShared draws what the sets of one mounting have in common, once.
func (t *trials) drawShared(i int) {
	from, to := &t.mean[i], &t.drawn[i]
	if first := mountedAt(t.mean, i); first != i {
		to.Probe, to.Sag, t.clock[i] = t.drawn[first].Probe, t.drawn[first].Sag, t.clock[first]
		return
	}
	to.Probe.Station = about(t.random, from.Probe.Station, from.U.Station)
	to.Probe.Radius = about(t.random, from.Probe.Radius, from.U.Radius)
	to.Sag = about(t.random, from.Sag, from.U.Sag)
	t.clock[i] = about(t.random, 0, degrees(from.U.Clock))
}

// drawReading draws one reading and its angle; deviation counts where the reading
// states no uncertainty of its own.
func (t *trials) drawReading(i, j int, deviation units.Length) {
	set := &t.mean[i]
	if u := set.uncertainty(j); u != 0 {
		deviation = u
	}
	from, to := &set.Readings[j], &t.drawn[i].Readings[j]
	to.Value = about(t.random, from.Value, deviation)
	to.At = about(t.random, from.At+t.clock[i], degrees(set.U.Angle))
}

func degrees(a units.Angle) units.Clock { return units.Clock(float64(a) * (180 / math.Pi)) }

// about draws from the normal distribution with the mean and the standard
// uncertainty given; what is exact uses up no random number.
func about[Q ~float64](random *rand.Rand, mean, u Q) Q {
	if u == 0 {
		return mean
	}
	return mean + Q(float64(u)*random.NormFloat64())
}

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
	for {
		x := random.NormFloat64()
		v := 1 + float64(c*x)
		v *= v * v
		if v > 0 && math.Log(uniform()) < float64(x*x/2)+float64(d*(1-v+math.Log(v))) {
			return d * v
		}
	}
}

// drawnTarget is a target ready to be drawn.
type drawnTarget struct {
	value            [four]float64
	exact            bool
	known, scattered matrix // L with LL' the covariance
	scatter          spread
}

func newDrawnTarget(e *Estimate) drawnTarget {
	c := &e.Cov
	return drawnTarget{
		value: e.Value.numbers(), exact: c.Basis == Declared,
		known:     c.v.plus(c.scattered.times(-1)).root(&c.v),
		scattered: c.scattered.root(&c.v),
		scatter:   spread{deviation: 1, dof: c.DoF},
	}
}

func (d *drawnTarget) draw(random *rand.Rand) Centreline {
	b := d.value
	if d.exact {
		return centreline(b)
	}
	add := func(root *matrix, scale float64) {
		var z [four]float64
		for i := range z {
			z[i] = scale * random.NormFloat64()
		}
		for i, e := range root.of(z) {
			b[i] += e
		}
	}
	add(&d.known, 1)
	if d.scattered != (matrix{}) {
		add(&d.scattered, d.scatter.draw(random))
	}
	return centreline(b)
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
