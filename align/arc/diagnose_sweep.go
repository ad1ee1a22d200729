package arc

import (
	"math"
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"gonum.org/v1/gonum/stat/distuv"
)

// sweep examines one set.
func (e *examination) sweep(i int) (Sweep, error) {
	set := e.sets[i]
	covered, hole, middle := arcOf(set.Readings, set.View)
	s := Sweep{
		Arc:      Arc{covered, hole, set.View.Clock(middle).Normal()},
		Gap:      gap(set),
		Reversed: reversed(set.Readings),
		Scatter:  e.agreeing(e.first[i], len(set.Readings), e.redundancy(i)),
	}
	if s.Returned = returned(set.Readings); s.Returned {
		s.Return = e.miss(i)
	}
	var err error
	s.Drift, err = e.drift(i)
	return s, err
}

// gap is the largest step between neighbours but for the hole around which the arc
// lies.
func gap(set align.Set) units.Angle {
	var at, steps []units.Clock
	for _, r := range set.Readings {
		at = append(at, set.View.Clock(r.At).Normal())
	}
	slices.Sort(at)
	for i, t := range at[1:] {
		steps = append(steps, t-at[i])
	}
	steps = append(steps, at[0]+fullTurn-at[len(at)-1])
	slices.Sort(steps)
	return angle(steps[len(steps)-2])
}

// step is the shorter way from one position to another: from -180 to 180 degrees.
func step(from, to units.Clock) units.Clock {
	if d := (to - from).Normal(); d <= fullTurn/2 {
		return d
	}
	return -(from - to).Normal()
}

// way is the direction of a step: 1 clockwise, -1 back, 0 where it has none.
func way(from, to units.Clock) int {
	d := step(from, to)
	if d == 0 || d == fullTurn/2 {
		return 0
	}
	if d > 0 {
		return 1
	}
	return -1
}

// reversed returns the readings that were taken after a step back.
func reversed(readings []align.Reading) (back []int) {
	ways := make([]int, len(readings))
	sum, first := 0, 0
	for i := range readings[1:] {
		ways[i+1] = way(readings[i].At, readings[i+1].At)
		sum += ways[i+1]
		if first == 0 {
			first = ways[i+1]
		}
	}
	if sum == 0 {
		sum = first
	}
	for i, w := range ways {
		if w*sum < 0 {
			back = append(back, i)
		}
	}
	return back
}

// returned tells whether the last reading was taken where the first was.
func returned(readings []align.Reading) bool {
	last := len(readings) - 1
	return last >= 2 && math.Abs(float64(step(readings[0].At, readings[last].At))) <= float64(samePlace)
}

// miss is by how much the last reading misses the first, free of what their
// positions differ by.
func (e *examination) miss(i int) Effect {
	set := e.sets[i]
	first, last := set.Readings[0], set.Readings[len(set.Readings)-1]
	due := predicted(set, e.fit.Value, first.At, last.At)
	n := e.first[i]
	a, b := float64(e.dev[n]), float64(e.dev[n+len(set.Readings)-1])
	u := units.Length(math.Sqrt(float64(a*a) + float64(b*b)))
	return e.effect(last.Value-first.Value-due[1].Value, u)
}

// redundancy is how many degrees of freedom the residuals of a set have.
func (e *examination) redundancy(i int) float64 {
	sum := 0.0
	for _, r := range e.residuals[e.first[i]:][:len(e.sets[i].Readings)] {
		sum += 1 - r.Leverage
	}
	return sum
}

// agreeing compares count residuals from the first on with what is stated.
func (e *examination) agreeing(first, count int, dof float64) Agreeing {
	const least = 1e-6 // of a degree of freedom: rounding
	if !e.stated || dof < least {
		return Agreeing{P: 1, DegreesOfFreedom: max(0, dof)}
	}
	squares := 0.0
	for n := first; n < first+count; n++ {
		off := float64(e.residuals[n].Value / e.dev[n])
		squares += float64(off * off)
	}
	p := distuv.ChiSquared{K: dof}.Survival(squares)
	return Agreeing{Ratio: squares / dof, DegreesOfFreedom: dof, P: p, Known: true}
}

// drift is the slope of the readings of a set against their order, beside all that
// is fitted: the residuals r on the residuals o of the order itself, which is what
// the order says that no centreline and no zero does.
//
//	drift = sum(o r/u^2)/sum(o^2/u^2)
func (e *examination) drift(i int) (Effect, error) {
	order, err := e.order(i)
	if err != nil {
		return Effect{}, err
	}
	var up, down, variance, size float64
	for n, o := range order {
		set, j := o.Set, o.Reading
		u := 1.0
		if stated := statedAt(e.sets[set], j); stated != 0 {
			u = float64(stated)
		}
		steps, w := float64(o.Value/units.Millimetre), 1/u
		weighted := float64(steps * w * w)
		up += float64(weighted * float64(e.residuals[n].Value))
		down += float64(weighted * steps)
		variance += float64(weighted * float64(e.dev[n]) * weighted * float64(e.dev[n]))
		size = max(size, math.Abs(steps))
	}
	if size < 1e-6 { // the order is no more than what is fitted makes of it
		return Effect{Basis: align.Unknown, P: 1}, nil
	}
	return e.effect(units.Length(up/down), units.Length(math.Sqrt(variance)/down)), nil
}

// order returns the residuals of the order of set i, a millimetre for each reading,
// fitted as readings are.
func (e *examination) order(i int) ([]align.Residual, error) {
	sets := clone(e.sets)
	for k := range sets {
		sets[k].Sag = 0
		for j := range sets[k].Readings {
			sets[k].Readings[j].Value = 0
			if k == i {
				sets[k].Readings[j].Value = units.Length(j) * units.Millimetre
			}
		}
	}
	f, err := align.Fit(sets...)
	if err != nil {
		return nil, err
	}
	return align.Residuals(nil, sets, f)
}
