package sheet_test

import (
	"math"
	"strconv"
	"strings"

	"example.org/collinear/align"
)

// habit is how somebody writes a sheet.
type habit struct {
	inch   bool
	finer  int  // digits after the point more than usual, or fewer
	cuts   bool // cuts off instead of rounding
	exact  bool // goes on with what the calculator keeps, not with what was written
	rough  bool // what is not written is kept to 1 um, 1 um/m, 0.1 K, and not exactly
	worded bool // words in place of signs
}

func (d draw) habit() habit {
	return habit{
		inch:   d.yes(0.5),
		finer:  pickOne(d, 0, 0, 0, -1, 1),
		cuts:   d.yes(0.25),
		exact:  d.yes(0.5),
		rough:  d.yes(0.5),
		worded: d.yes(0.5),
	}
}

// which lines of a page are written down.
func (d draw) which(p *handPage) []bool {
	n := len(p.lines)
	w := make([]bool, n)
	mode := d.IntN(4)
	share, last, plane := d.between(0.2, 0.9), d.IntN(n), handPlanes[d.IntN(2)].name
	any := false
	for i := range w {
		switch mode {
		case 0:
			w[i] = true
		case 1:
			w[i] = d.yes(share)
		case 2:
			w[i] = i >= last
		case 3:
			w[i] = strings.HasPrefix(p.lines[i].id, plane)
		}
		any = any || w[i]
	}
	if !any {
		w[n-1] = true
	}
	return w
}

// interval is all that a number may have been.
type interval struct{ low, high float64 }

func (i interval) wider(by float64) interval { return interval{i.low - by, i.high + by} }

// apart is how much lies between two intervals; below zero where they share that much.
func (i interval) apart(j interval) float64 { return max(i.low-j.high, j.low-i.high) }

// handSheet is what somebody wrote.
type handSheet struct {
	answers map[string]string
	written []bool
	stands  []interval // what may stand behind a number that is written
	place   []float64  // its last place
	kept    []float64  // what the hand goes on with
}

// write works a page by a habit, with the mistakes that were made at its lines.
func (p *handPage) write(h habit, which []bool, made map[int]mistake) *handSheet {
	n := len(p.lines)
	s := &handSheet{
		answers: make(map[string]string, n), written: which,
		stands: make([]interval, n), place: make([]float64, n), kept: make([]float64, n),
	}
	var v []float64
	for i := range p.lines {
		l := &p.lines[i]
		v = v[:0]
		for _, j := range l.from {
			v = append(v, s.kept[j])
		}
		x := l.work(v, made[i])
		s.kept[i] = x
		switch {
		case which[i]:
			text, rounded, place := l.sort.text(x, h, p.view)
			s.answers[l.id] = text
			s.place[i] = place
			s.stands[i] = behind(rounded, place)
			if !h.exact {
				s.kept[i] = rounded
			}
		case h.rough:
			s.kept[i] = math.Round(x/l.sort.keeps) * l.sort.keeps
		}
	}
	return s
}

// behind is what may stand behind a number that was rounded to a place, halves away from
// zero, or cut off after it.
func behind(x, place float64) interval {
	i := interval{x - place/2, x + place/2}
	if x >= 0 {
		i.high = x + place
	}
	if x <= 0 {
		i.low = x - place
	}
	return i
}

// text writes a number, and tells what was written and to which place.
func (s *handSort) text(x float64, h habit, view align.View) (text string, rounded, place float64) {
	u := s.metric
	if h.inch {
		u = s.inch
	}
	digits := max(0, u.digits+h.finer)
	tens := math.Pow(10, float64(digits))
	count := x / u.size * tens
	if h.cuts {
		count = math.Trunc(count + math.Copysign(1e-7, count)) // a calculator shows 3 for 2.999999999
	} else {
		count = math.Round(count)
	}
	rounded, place = count/tens*u.size, u.size/tens
	number := strconv.FormatFloat(count/tens, 'f', digits, 64)
	if count == 0 {
		number = strconv.FormatFloat(0, 'f', digits, 64)
	}
	if !h.worded || s.plus == "" {
		return number + " " + u.name, rounded, place
	}
	if count == 0 {
		if s.move && h.finer == 0 {
			return "leave", 0, 0.01 // to the last place of a move, in mm
		}
		return number + " " + u.name, rounded, place
	}
	words := s.plus
	if (count < 0) != (s.mirrored && view == align.FromStationary) {
		words = s.minus
	}
	return strings.Replace(words, "%", strings.TrimPrefix(number, "-")+" "+u.name, 1), rounded, place
}

// shows tells by how much the numbers on a sheet miss what a right hand could have
// written there, in last places of the worst line: every line is worked at all corners of
// what may stand behind the lines above it. Below zero: it could have been a right hand.
// It also tells which lines do not follow.
func (p *handPage) shows(s *handSheet, made map[int]mistake) (worst float64, wrong []int) {
	worst = math.Inf(-1)
	for i, due := range p.dues(s, made) {
		if !s.written[i] {
			continue
		}
		miss := due.apart(s.stands[i]) / s.place[i]
		worst = max(worst, miss)
		if miss > hair {
			wrong = append(wrong, i)
		}
	}
	return worst, wrong
}

// dues are what every line may come to, by what stands above it on the sheet.
func (p *handPage) dues(s *handSheet, made map[int]mistake) []interval {
	dues := make([]interval, len(p.lines))
	carried := make([]interval, len(p.lines))
	for i := range p.lines {
		l := &p.lines[i]
		dues[i] = p.due(l, carried, made[i])
		carried[i] = dues[i].wider(l.sort.keeps / 2)
		if s.written[i] {
			carried[i] = s.stands[i]
		}
	}
	return dues
}

// hair is a share of a last place that floating point may be off by.
const hair = 1e-5

// due is what a line may come to.
func (p *handPage) due(l *handLine, carried []interval, m mistake) interval {
	if l.allow > 0 { // the writer's choice, about the first that it goes on with
		return carried[l.from[0]].wider(l.allow)
	}
	v := make([]float64, len(l.from))
	due := interval{math.Inf(1), math.Inf(-1)}
	for corner := range 1 << len(l.from) {
		for k, j := range l.from {
			v[k] = carried[j].low
			if corner>>k&1 == 1 {
				v[k] = carried[j].high
			}
		}
		x := l.work(v, m)
		due = interval{min(due.low, x), max(due.high, x)}
	}
	if l.id == "opening" { // a root of squares is least where both are nearest to zero
		for k, j := range l.from {
			v[k] = max(carried[j].low, min(0, carried[j].high))
		}
		due.low = min(due.low, l.work(v, m))
	}
	return due
}
