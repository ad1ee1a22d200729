package train

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// What is left at a coupling in the vertical is linear in four heights, those of the
// two outermost stations of the machine before it and of the machine after it. All
// is counted in nanometres, a slope in those that it rises over a metre, as verdicts
// compare them.

// form is a linear function of the four heights.
type form struct {
	c      float64
	shares [2][2]float64 // machine before and after, its first and last station
	room   float64       // how large it may be
}

// shimItem is what a coupling is judged by.
type shimItem struct {
	offset, slope float64 // the shares of both, as in a verdict
	unit          float64 // what that is counted in, nm
	limit         float64 // nm, rounded
	perPlane      bool
	aside         float64 // nm in the horizontal
	form
}

// shimJoint is a coupling.
type shimJoint struct {
	off   align.Centreline // found less target
	at    units.Length
	items []shimItem
	floor float64 // the ratio is at least that, from the horizontal
}

// ends are the stations of a machine through which its line goes, the outermost.
type ends struct {
	x       [2]float64 // nm
	station [2]int     // of the search
	moving  bool       // false for the reference
}

// at returns the shares of the two heights in that of the line at x, and in its
// slope.
func (e *ends) at(x float64) (offset, slope [2]float64) {
	if !e.moving {
		return offset, slope
	}
	run := e.x[1] - e.x[0]
	return [2]float64{(e.x[1] - x) / run, (x - e.x[0]) / run}, [2]float64{-1 / run, 1 / run}
}

// line is that through two heights.
func (e *ends) line(heights [2]int64) align.Line {
	if !e.moving {
		return align.Line{}
	}
	first, last := units.Length(heights[0]), units.Length(heights[1])
	slope := (last - first).Per(units.Length(e.x[1] - e.x[0]))
	return align.Line{Offset: first - slope.Over(units.Length(e.x[0])), Slope: slope}
}

// chord is the height of the line at x.
func (e *ends) chord(heights [2]int64, x float64) float64 {
	return (float64(float64(heights[0])*(e.x[1]-x)) + float64(float64(heights[1])*(x-e.x[0]))) / (e.x[1] - e.x[0])
}

const perMetre = float64(units.Metre)

// newShimJoint lays out coupling j, with the horizontal as the lines have it.
func newShimJoint(j *Joint, before, after *ends, lines [2]align.Centreline) shimJoint {
	s := shimJoint{off: j.Off().Value, at: j.At}
	if span := j.Coupling.Span; span != 0 {
		perSpan := 1 / float64(span)
		s.add(j, perSpan, 0.5, perMetre, j.Limits.Flex.Over(units.Metre))
		s.add(j, -perSpan, 0.5, perMetre, j.Limits.Flex.Over(units.Metre))
	} else {
		if j.Limits.Offset != 0 {
			s.add(j, 1, 0, 1, j.Limits.Offset)
		}
		if j.Limits.Slope != 0 {
			s.add(j, 0, 1, perMetre, j.Limits.Slope.Over(units.Metre))
		}
	}
	left := s.left(lines)
	for i := range s.items {
		it := &s.items[i]
		it.aside = it.unit * it.of(left.Horizontal)
		s.floor = max(s.floor, it.ratio(it.of(left.Horizontal), 0))
		it.lay(s.off.Vertical, float64(j.At), before, after)
	}
	return s
}

func (s *shimJoint) add(j *Joint, offset, slope, unit float64, limit units.Length) {
	s.items = append(s.items, shimItem{
		offset: offset, slope: slope, unit: unit,
		limit: float64(limit.Round(tolerance.Resolution)), perPlane: j.Limits.PerPlane,
	})
}

// lay sets the form of the item.
func (it *shimItem) lay(off align.Line, at float64, before, after *ends) {
	it.c = it.unit * it.of(off)
	signs := [...]float64{-it.unit, it.unit}
	for side, e := range [...]*ends{before, after} {
		offset, slope := e.at(at)
		for end := range offset {
			it.shares[side][end] = signs[side] * (float64(it.offset*offset[end]) + float64(it.slope*slope[end]))
		}
	}
}

// of is the item of a line.
func (it *shimItem) of(l align.Line) float64 {
	return float64(it.offset*float64(l.Offset)) + float64(it.slope*float64(l.Slope))
}

// left is what is left at the coupling.
func (s *shimJoint) left(lines [2]align.Centreline) align.Centreline {
	return s.off.Plus(lines[1].Minus(lines[0]).About(s.at))
}

// worst is the worst ratio at the coupling.
func (s *shimJoint) worst(lines [2]align.Centreline) float64 {
	left, worst := s.left(lines), 0.0
	for i := range s.items {
		it := &s.items[i]
		aside, up := it.of(left.Horizontal), it.of(left.Vertical)
		if it.perPlane {
			worst = max(worst, it.ratio(aside, 0), it.ratio(0, up))
		} else {
			worst = max(worst, it.ratio(aside, up))
		}
	}
	return worst
}

// ratio is that of a verdict to the last bit: both rounded to 1 nm.
func (it *shimItem) ratio(aside, up float64) float64 {
	size := math.Sqrt(float64(aside*aside) + float64(up*up))
	return float64(units.Length(size*it.unit).Round(tolerance.Resolution)) / it.limit
}

// within sets the room of the item for ratios up to a level, which the horizontal alone
// does not exceed, with half a nanometre for the rounding of a verdict, and a little more
// for that of numbers.
func (it *shimItem) within(level float64) form {
	const more = 0.5 + 0.01
	f := it.form
	f.room = float64(level*it.limit) + more
	if !it.perPlane {
		f.room = math.Sqrt(float64(f.room*f.room) - float64(it.aside*it.aside))
	}
	return f
}

// reach is a range of heights, both ends included.
type reach struct{ low, high float64 }

func (r reach) empty() bool { return r.low > r.high }

func (r reach) has(x float64) bool { return r.low <= x && x <= r.high }

func (r reach) and(q reach) reach { return reach{max(r.low, q.low), min(r.high, q.high)} }

// times returns k times the range.
func (r reach) times(k float64) reach {
	a, b := k*r.low, k*r.high
	return reach{min(a, b), max(a, b)}
}

func (r reach) plus(q reach) reach { return reach{r.low + q.low, r.high + q.high} }

var (
	nowhere  = reach{math.Inf(1), math.Inf(-1)}
	anywhere = reach{math.Inf(-1), math.Inf(1)}
)

// window returns where one of the four heights can be while the others are in their
// ranges, so that the form stays within its room.
func (f *form) window(heights *[2][2]reach, side, end int) reach {
	rest := reach{f.c, f.c}
	for s := range f.shares {
		for e, k := range f.shares[s] {
			if k != 0 && (s != side || e != end) {
				rest = rest.plus(heights[s][e].times(k))
			}
		}
	}
	allowed := reach{-f.room - rest.high, f.room - rest.low}
	if k := f.shares[side][end]; k != 0 {
		return allowed.times(1 / k)
	}
	if allowed.low > 0 || allowed.high < 0 {
		return nowhere
	}
	return anywhere
}

// without returns the combination of two forms in which one of the heights does not
// count.
func (f *form) without(g *form, side, end int) form {
	a, b := g.shares[side][end], -f.shares[side][end]
	sum := form{
		c:    float64(a*f.c) + float64(b*g.c),
		room: float64(math.Abs(a)*f.room) + float64(math.Abs(b)*g.room),
	}
	for s := range sum.shares {
		for e := range sum.shares[s] {
			sum.shares[s][e] = float64(a*f.shares[s][e]) + float64(b*g.shares[s][e])
		}
	}
	sum.shares[side][end] = 0
	return sum
}

// window returns where one of the heights next to the coupling can be for a ratio up
// to the level.
func (s *shimJoint) window(heights *[2][2]reach, side, end int, level float64) reach {
	w := heights[side][end]
	var forms [2]form
	for i := range s.items {
		forms[i] = s.items[i].within(level)
		w = w.and(forms[i].window(heights, side, end))
	}
	if len(s.items) < 2 {
		return w
	}
	other := forms[0].without(&forms[1], side, 1-end)
	return w.and(other.window(heights, side, end))
}
