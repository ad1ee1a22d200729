package sheet

import (
	"math"

	"example.org/collinear/units"
)

// teaches tells whether a working is fit for an exercise: its last lines do not depend on
// how a hand rounds, some line tells of more than nothing, and every slip shows.
func (w Working) teaches(s System) bool {
	return w.settled(s) && w.amounts(s) && w.steady(s) && w.showsSlips(s)
}

// last are the lines that no other line goes on from.
func (w Working) last() []int {
	used := make([]bool, len(w.lines))
	for i := range w.lines {
		for _, in := range w.lines[i].inputs {
			if in.from != given {
				used[in.from] = true
			}
		}
	}
	var list []int
	for i := range used {
		if !used[i] {
			list = append(list, i)
		}
	}
	return list
}

// spare is how far the last lines stay away from where a rounding turns over, as a share
// of the last place. No whole number of divisions and marks comes to just that. Ours.
const spare = 1.0 / 30

// settled tells whether each of the last lines comes out the same, as it is shown, however
// a hand rounds the lines above: all of them to the place that is shown, some, or none.
// Where a line may be off by the sheet's own choice, by more than a nanometre, it is not.
func (w Working) settled(s System) bool {
	reach := make([]span, len(w.lines))
	for i := range w.lines {
		l := &w.lines[i]
		if l.allow > float64(units.Nanometre) {
			return false
		}
		reach[i] = l.kind.place(s).roundedOrNot(l.rule.through(l.spans(reach)))
	}
	for _, i := range w.last() {
		l := &w.lines[i]
		if !l.kind.place(s).alike(l.rule.through(l.spans(reach))) {
			return false
		}
	}
	return true
}

// place is one of the last place that is shown of a kind, as its numbers count.
type place float64

// places are those of all kinds in both systems; zero for a kind that a line cannot be.
var places = [...][len(natures)]place{Metric: placesIn(Metric), Inch: placesIn(Inch)}

func placesIn(s System) (list [len(natures)]place) {
	for k, n := range natures {
		if n.parse == nil {
			continue
		}
		one, _, _ := lastPlace(n.text(0, s, n.digits[s.index()]))
		x, _ := n.parse(one) // a text of the kind's own
		list[k] = place(x)
	}
	return list
}

func (k kind) place(s System) place { return places[s][k] }

// round rounds halves away from zero, as the workings do.
func (p place) round(x float64) float64 { return float64(math.Round(x/float64(p)) * float64(p)) }

// roundedOrNot is where a number may lie that is rounded to the place or kept as it is. On
// the edge between two it may go to either.
func (p place) roundedOrNot(s span) span {
	edge := float64(rounding * float64(p))
	return span{s.at, min(s.low, p.round(s.low-edge)), max(s.high, p.round(s.high+edge))}
}

// alike tells whether all of a span rounds to the same, and would if it were a little
// wider.
func (p place) alike(s span) bool {
	aside := float64(spare * float64(p))
	return p.round(s.low-aside) == p.round(s.high+aside)
}

// amounts tells whether a line comes to twenty of its last place or more.
func (w Working) amounts(s System) bool {
	const much = 20
	for i := range w.lines {
		l := &w.lines[i]
		if math.Abs(l.exact) >= much*float64(l.kind.place(s)) {
			return true
		}
	}
	return false
}

// steady tells whether the moves come out the same on a sheet that has every line above
// to one of its last place, either way: rounded or cut off. Other last lines are shown to
// the same place as those that they follow from, so that a hand that cuts off may end one
// place beside.
func (w Working) steady(s System) bool {
	sheet := answers{}
	for i := range w.lines {
		l := &w.lines[i]
		sheet[i] = written{span: exactlyAt(l.exact).wider(float64(l.kind.place(s)))}
	}
	for i, expected := range w.follow(sheet).expected {
		if k := w.lines[i].kind; (k == raise || k == push) && !k.place(s).alike(expected) {
			return false
		}
	}
	return true
}

// showsSlips tells whether each slip, made wherever a hand can make it, changes a line
// by a few of its last place.
func (w Working) showsSlips(s System) bool {
	for _, f := range w.forms() {
		slip := w.suspect(f, func(int, way) bool { return true })
		if !w.shows(w.compute(slip.chosen, asGiven), s) {
			return false
		}
	}
	return true
}

// shows tells whether any of the numbers is a few places off the right one. What is no
// number shows nothing.
func (w Working) shows(all values, s System) bool {
	const few = 3
	for i := range w.lines {
		l := &w.lines[i]
		if off := math.Abs(all[i] - l.exact); off >= few*float64(l.kind.place(s)) && !math.IsInf(off, 0) {
			return true
		}
	}
	return false
}
