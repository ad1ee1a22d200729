package linprog

import "math"

const (
	// noise is the size below which a tableau entry cannot become a pivot.
	noise = 1e-11
	// smallestPivot is the least pivot taken without building the tableau anew.
	smallestPivot = 1e-7
	// near is by how much a reduced cost may pass zero so that a larger pivot can be
	// chosen; it is set to zero then.
	near = 1e-11
)

// ratio is the memory of one ratio test.
type ratio struct {
	options []option
	passed  []option // of options: those to be set to their other bounds
}

// option is a nonbasic variable that can help: its column, the size of its tableau
// entry and of its reduced cost, and how far it can go.
type option struct {
	column          int
	size, cost, far float64
}

// entering returns the column whose variable becomes basic in row p, whose value has
// to change by gap, to within slack; -1 if the row cannot be met.
//
// The dual step grows until the first reduced cost reaches zero. If all that the
// variables there can do does not close the gap they are passed: they go to their
// other bounds, and the step grows on ("bound flipping"). Among variables that
// reach zero nearly together (Harris) the largest entry wins. A pivot that is too
// small gives way to the last good one that was passed.
func (s *Solver) entering(p int, gap, slack float64) (q int) {
	s.gather(p, gap)
	r := &s.ratio
	r.passed = r.options[:0]
	if s.run.careful() {
		return s.first()
	}
	rest := math.Abs(gap) - slack
	q = -1
	for done := 0; done < len(r.options); {
		open := r.options[done:]
		tied := partition(open)
		if tied == 0 { // no numbers
			break
		}
		best, help := steepest(open[:tied])
		rest -= help
		if q < 0 || best.size >= smallestPivot {
			q, r.passed = best.column, r.options[:done]
		}
		if rest <= 0 {
			return q
		}
		done += tied
	}
	return -1
}

// gather lists the nonbasic variables that can move the value of row p towards gap.
func (s *Solver) gather(p int, gap float64) {
	s.ratio.options = s.ratio.options[:0]
	d := s.reduced()
	for j, a := range s.line(p) {
		size := math.Abs(a)
		if size <= noise {
			continue
		}
		v := s.nonbasic[j]
		far := s.upper[v] - s.value[v]
		if (a > 0) != (gap > 0) {
			far = s.value[v] - s.lower[v]
		}
		if far > 0 {
			s.ratio.options = append(s.ratio.options, option{j, size, math.Abs(d[j]), far})
		}
	}
}

// partition moves the options that reach zero first, or nearly so, to the front and
// returns how many there are.
func partition(open []option) (tied int) {
	limit := math.Inf(1)
	for _, o := range open {
		limit = min(limit, (o.cost+near)/o.size)
	}
	for k, o := range open {
		if o.cost/o.size <= limit {
			open[k], open[tied] = open[tied], o
			tied++
		}
	}
	return tied
}

// steepest returns the option with the largest entry, and what all of them can do
// together.
func steepest(tied []option) (best option, help float64) {
	for _, o := range tied {
		if o.size > best.size {
			best = o
		}
		help += float64(o.size * o.far)
	}
	return best, help
}

// first is the ratio test for a stall: the least step, and of several variables the
// one counted first (Bland's rule for the dual). A variable between its bounds goes
// before all others; it never comes back there.
func (s *Solver) first() (q int) {
	q = -1
	least, between := math.Inf(1), false
	for _, o := range s.ratio.options {
		v := s.nonbasic[o.column]
		free := s.value[v] > s.lower[v] && s.value[v] < s.upper[v]
		step := o.cost / o.size
		switch {
		case q < 0, free && !between:
		case between && !free, step > least:
			continue
		case step == least && v > s.nonbasic[q]:
			continue
		}
		q, least, between = o.column, step, free
	}
	return q
}
