package softfoot

import (
	"cmp"
	"math"
	"math/bits"
	"slices"

	"example.org/collinear/units"
)

// advise lists the ways to cure what explains the lifts as parallel or angular.
func (j *judgement) advise() {
	options := j.options()
	if len(options) == 0 && len(j.angular) > 0 {
		options = []option{{left: j.rest()}} // stepped shims alone
	}
	for _, o := range options {
		j.Advice = append(j.Advice, j.advice(o))
	}
}

// option is one choice of flat shims, zero where none goes.
type option struct {
	shims column
	feet  int     // how many get one
	left  float64 // largest lift to expect afterwards
}

// options returns the flat shims that take the lifts away, the best first.
func (j *judgement) options() []option {
	switch {
	case j.flat:
		return j.choose(j.cures())
	case j.shortFoot():
		o := option{feet: 1, left: j.rest(j.soft[0])}
		o.shims[j.soft[0]] = j.excess[j.soft[0]]
		return []option{o}
	}
	return nil
}

// rest is the largest excess lift of all feet but some.
func (j *judgement) rest(but ...int) (left float64) {
	for i := range j.plan.n {
		if !slices.Contains(but, i) {
			left = max(left, j.excess[i])
		}
	}
	return left
}

// cures returns what shims can do under each set of feet. More feet than pads
// can be out of plane, n - 3, are never needed, but with four feet half the lift
// under both of a diagonal disturbs the shaft less.
func (j *judgement) cures() []option {
	var list []option
	for set := range uint(1) << j.plan.n {
		if size := bits.OnesCount(set); size < 1 || size > max(2, j.plan.n-3) || set&^j.lifted() != 0 {
			continue
		}
		if o, ok := j.cure(set); ok {
			list = append(list, o)
		}
	}
	return list
}

// thickest is how many times the largest lift a shim may be. Where feet stand nearly
// in one row, or a frame bends more than it twists, small lifts could be answered
// with a lever of thick shims that no crew should try. Our own figure: in simulation
// it has no other effect.
const thickest = 5

// sensible tells whether a shim is worth its handling, and in proportion.
func (j *judgement) sensible(shim float64) bool {
	return !j.limits.Least.Above(fromMM(shim)) && shim <= thickest*mm(j.Worst)
}

// lifted is the set of feet that lift by more than shows nothing.
func (j *judgement) lifted() (set uint) {
	for i := range j.plan.n {
		if j.excess[i] > mm(min(j.limits.Margin, j.limits.Act)) {
			set |= 1 << i
		}
	}
	return set
}

// cure finds the shims s under one set of feet that leave least of the lifts of
// h + s, and tells whether each of them is worth its handling.
func (j *judgement) cure(set uint) (option, bool) {
	p := &j.plan
	outside := func(i int) bool { return set&(1<<i) == 0 }
	force := p.hold(&j.pads)
	e := newEquations(p.n)
	for i := range p.n {
		row := p.force[i]
		for k := range p.n {
			if outside(k) {
				row[k] = 0
			}
		}
		if p.counts(i) {
			e.add(row, -force[i], 1/p.force[i][i])
		}
	}
	o := option{shims: e.solve(), feet: bits.OnesCount(set)}
	after := j.pads
	for i := range p.n {
		if outside(i) {
			o.shims[i] = 0 // it is, but for rounding
		} else if !j.sensible(o.shims[i]) {
			return o, false
		}
		after[i] += o.shims[i]
	}
	lifts := p.lifts(&after)
	o.left = max(0, slices.Max(lifts[:p.n]))
	return o, true
}

// alike is by how much what is left, in millimetres, may differ and still be told
// apart by no dial.
const alike = 0.01

// choose keeps the cures with the fewest feet that leave no more than half of what
// would be soft, with four feet those under both of a diagonal as well; the one that
// leaves least first, and among those that leave alike the feet that lifted most.
// If none leaves so little, the one that leaves least.
func (j *judgement) choose(list []option) []option {
	enough := mm(j.limits.Act) / 2
	tooMuch := func(o option) float64 { return math.Round(max(0, o.left-enough) / alike) }
	slices.SortStableFunc(list, func(a, b option) int {
		return cmp.Or(
			cmp.Compare(tooMuch(a), tooMuch(b)),
			cmp.Compare(a.feet, b.feet),
			cmp.Compare(math.Round(a.left/alike), math.Round(b.left/alike)),
			cmp.Compare(j.shown(b), j.shown(a)))
	})
	n := min(1, len(list))
	for n < len(list) && tooMuch(list[n]) == 0 && (list[n].feet == list[0].feet || j.plan.n == 4) {
		n++
	}
	return list[:n]
}

// shown is how much the feet that an option shims lifted.
func (j *judgement) shown(o option) (sum float64) {
	for i := range j.plan.n {
		if o.shims[i] != 0 {
			sum += j.excess[i]
		}
	}
	return sum
}

func (j *judgement) advice(o option) Advice {
	a := Advice{Left: fromMM(o.left + j.missed).Round(units.Nanometre)}
	var flats column // as they are told, rounded
	for i, f := range j.survey.Feet {
		shim := Shim{Foot: f.Name, Flat: fromMM(o.shims[i]).Round(units.Nanometre)}
		if taper := j.Feet[i].Taper; taper != nil {
			shim.Stepped = new(*taper)
		}
		flats[i] = mm(shim.Flat)
		if shim.Flat != 0 || shim.Stepped != nil {
			a.Shims = append(a.Shims, shim)
		}
	}
	a.Shift = j.survey.follow(flats)
	return a
}
