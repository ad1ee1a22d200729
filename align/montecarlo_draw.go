package align

import (
	"math"
	"math/rand/v2"

	"example.org/collinear/internal/check"
)

// trials draws the inputs of a job and works out what follows, one trial after
// another.
type trials struct {
	random  *rand.Rand
	scatter spread // of a reading of weight one; one, exactly, where readings state their own
	sweeps  []sweep
	drawn   []drawnSet // of this trial, one for each sweep
	target  drawnTarget
	system  system // of this trial
	gain    *gain  // how what is drawn becomes the answer; nil where each trial has to be solved
}

// drawnSet is what a trial draws for one set.
type drawnSet struct {
	law      law
	droop    float64    // in millimetres
	sin, cos float64    // of the common error of its clock positions, in the library's view
	noise    [2]float64 // of its two equations: what the errors of its readings come to
	angles   []float64  // errors of its single clock positions, in radians and that view; none: exact
}

func newTrials(m *MonteCarlo, f *Fitted, s *solution, random *rand.Rand) *trials {
	t := &trials{random: random, target: newDrawnTarget(&m.Target), scatter: spread{deviation: 1}}
	sets := cloneSets(m.Sets)
	if !s.stated {
		t.scatter = spread{deviation: math.Sqrt(s.residualVariance()), dof: float64(f.DegreesOfFreedom)}
		for i := range sets {
			s.smooth(&sets[i])
			sets[i].U.Angle = 0 // is in the scatter already
		}
	}
	bent := false
	for i := range sets {
		t.sweeps = append(t.sweeps, newSweep(sets, i))
		t.drawn = append(t.drawn, sets[i].asStated())
		bent = bent || sets[i].bends()
	}
	t.system = make(system, 2*len(sets))
	if !bent {
		t.gain = t.newGain()
	}
	return t
}

// asStated is what is drawn where nothing of a set is uncertain but its readings.
func (s *Set) asStated() drawnSet {
	d := drawnSet{law: s.Probe.law(), droop: s.droop(), sin: 0, cos: 1}
	if s.U.Angle != 0 {
		d.angles = make([]float64, len(s.Readings))
	}
	return d
}

// smooth puts every reading of a set on its fit.
func (s *solution) smooth(set *Set) {
	l, zero := set.Probe.law(), set.zero(s.beta)
	for i := range set.Readings {
		sin, cos := set.sinCos(i)
		set.Readings[i].Value -= fromMM(set.corrected(i, cos) - l.at(s.beta, sin, cos) - zero)
	}
}

// next runs one trial: found minus target, in millimetres and ratios, and whether
// there is such an answer.
func (t *trials) next() (off [four]float64, ok bool) {
	deviation := t.scatter.draw(t.random)
	ok = true
	for i := range t.sweeps {
		ok = t.drawShared(i) && ok
		t.drawReadings(i, deviation)
	}
	target := t.target.draw(t.random)
	if !ok {
		return off, false
	}
	off, ok = t.answer()
	for i := range off {
		off[i] -= target[i]
		ok = ok && check.Sound(off[i])
	}
	return off, ok
}

// drawShared draws what the sets of one mounting have in common, once. It tells
// whether it is a probe that can be.
func (t *trials) drawShared(i int) (ok bool) {
	s, d := &t.sweeps[i], &t.drawn[i]
	if s.first != i {
		one := &t.drawn[s.first]
		d.law, d.droop, d.sin, d.cos = one.law, one.droop, one.sin, one.cos
		return true // or the first is none
	}
	set := &s.set
	if set.U.Station != 0 || set.U.Radius != 0 {
		probe := set.Probe
		probe.Station = about(t.random, probe.Station, set.U.Station)
		probe.Radius = about(t.random, probe.Radius, set.U.Radius)
		if !(probe.Radius > 0) && usesOf[probe.Kind].radius {
			return false
		}
		d.law = probe.law()
	}
	if set.U.Sag != 0 {
		d.droop = set.Probe.Kind.sagSign() * mm(about(t.random, set.Sag, set.U.Sag))
	}
	if set.U.Clock != 0 {
		d.sin, d.cos = math.Sincos(about(t.random, 0, float64(set.U.Clock)))
	}
	return true
}

// drawReadings draws what the errors of the readings of a set come to in its two
// equations, and the errors of their angles.
func (t *trials) drawReadings(i int, deviation float64) {
	d := &t.drawn[i]
	for r := range d.noise {
		d.noise[r] = deviation * t.random.NormFloat64()
	}
	u := float64(t.sweeps[i].set.U.Angle)
	for j := range d.angles {
		d.angles[j] = u * t.random.NormFloat64()
	}
}

// about draws from the normal distribution with the mean and the standard
// uncertainty given; what is exact uses up no random number.
func about[Q ~float64](random *rand.Rand, mean, u Q) Q {
	if u == 0 {
		return mean
	}
	return mean + Q(float64(u)*random.NormFloat64())
}
