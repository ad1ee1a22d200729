package main

import (
	"encoding/json"
	"fmt"
	"math"
)

// trainInput is the input of the operation plan.
type trainInput struct {
	Machines  []trainMachine `json:"machines"`
	Joints    []trainJoint   `json:"joints"`
	Reference string         `json:"reference"`
	Work      string         `json:"work"`
}

type trainMachine struct {
	Name   string      `json:"name"`
	Height string      `json:"height"`
	Feet   []trainFoot `json:"feet"`
}

type trainFoot struct {
	Name       string    `json:"name"`
	X          string    `json:"x"`
	Horizontal trainEnds `json:"horizontal"`
	Vertical   trainEnds `json:"vertical"`
}

// trainEnds is a limit of moves; an end that is not there is empty.
type trainEnds struct {
	AtLeast string `json:"at_least"`
	AtMost  string `json:"at_most"`
}

type trainJoint struct {
	At       string          `json:"at"`
	SeenFrom string          `json:"seen_from"`
	Found    json.RawMessage `json:"found"`
	Target   json.RawMessage `json:"target"`
	Coupling struct {
		Span string `json:"span"`
	} `json:"coupling"`
	Limits struct {
		Offset   string `json:"offset"`
		Slope    string `json:"slope"`
		Flex     string `json:"flex"`
		PerPlane bool   `json:"per_plane"`
	} `json:"limits"`
}

// planePair is a number for the horizontal plane and one for the vertical.
type planePair [2]float64

var planePairNames = [2]string{"horizontal", "vertical"}

func (f trainFoot) ends(plane int) trainEnds { return [2]trainEnds{f.Horizontal, f.Vertical}[plane] }

// off returns what was found less the target, as the last machine sees it, in mm
// and mm/m.
func (j trainJoint) off() (coarse, error) {
	off, err := readCoarse(j.Found)
	if err == nil && j.Target != nil {
		var target coarse
		target, err = readCoarse(j.Target)
		for i, x := range target.numbers {
			off.numbers[i] -= x
		}
	}
	if j.SeenFrom == "first" {
		off.exchange()
	}
	return off, err
}

// nanometre is what a move may be rounded to, in mm.
const nanometre = 1e-6

// lineAt says how a line of least squares through numbers at stations x depends on
// them: its value at a station is the sum of value times number, its slope, per
// thousand, that of slope times number.
func lineAt(x []float64, at float64) (value, slope []float64) {
	mean, squares := 0.0, 0.0
	n := float64(len(x))
	for _, x := range x {
		mean += x / n
	}
	for _, x := range x {
		squares += (x - mean) * (x - mean)
	}
	for _, x := range x {
		k := (x - mean) / squares
		value = append(value, 1/n+k*(at-mean))
		slope = append(slope, 1000*k)
	}
	return value, slope
}

// moved returns by how much the line of a machine moves, as told from a station,
// and how much of that may be owed to moves that are rounded to a nanometre.
func (m trainMachine) moved(moves []planePair, at float64, l *lengths) (by, rounding coarse) {
	var x []float64
	for _, f := range m.Feet {
		x = append(x, l.float(f.X))
	}
	value, slope := lineAt(x, at)
	for i, move := range moves { // the reference has none
		for plane := range move {
			by.numbers[2*plane] += value[i] * move[plane]
			by.numbers[2*plane+1] += slope[i] * move[plane]
			rounding.numbers[2*plane] += math.Abs(value[i]) * nanometre
			rounding.numbers[2*plane+1] += math.Abs(slope[i]) * nanometre
		}
	}
	return by, rounding
}

// left returns what moves leave at a joint, and how much of it may be rounding.
func (in trainInput) left(j int, moves [][]planePair, l *lengths) (left, rounding coarse) {
	joint := in.Joints[j]
	at := l.float(joint.At)
	left, err := joint.off()
	if err != nil {
		l.err = err
	}
	earlier, r := in.Machines[j].moved(moves[j], at, l)
	later, s := in.Machines[j+1].moved(moves[j+1], at, l)
	for i := range left.numbers {
		left.numbers[i] += later.numbers[i] - earlier.numbers[i]
	}
	return left, r.plus(s)
}

// worstItem is the largest ratio of all items, with how much of any may be rounding.
type worstItem struct {
	ratio, rounding float64
	of              string
}

// item takes a quantity in both planes into account.
func (w *worstItem) item(of string, value, rounding planePair, limit float64, perPlane bool) {
	if perPlane {
		for plane, name := range planePairNames {
			w.size(of+", "+name, math.Abs(value[plane])/limit)
		}
	} else {
		w.size(of+", both planes", math.Hypot(value[0], value[1])/limit)
	}
	// A limit is held against what is rounded, in every program that follows judge.
	w.rounding = max(w.rounding, (nanometre+math.Hypot(rounding[0], rounding[1]))/limit)
}

func (w *worstItem) size(of string, ratio float64) {
	if w.of == "" || !(ratio <= w.ratio) {
		w.ratio, w.of = ratio, of
	}
}

// judged takes into account what is left at a joint.
func (w *worstItem) judged(name string, j trainJoint, left, rounding coarse, l *lengths) {
	n, r := left.numbers, rounding.numbers
	offset, offsetR := planePair{n[0], n[2]}, planePair{r[0], r[2]}
	slope, slopeR := planePair{n[1], n[3]}, planePair{r[1], r[3]}
	if j.Coupling.Span != "" {
		// The spacer runs from the one shaft to the other: it tilts by the offset
		// over its length and half the slope against either.
		per := 1000 / l.float(j.Coupling.Span)
		limit := l.slope(j.Limits.Flex)
		var stationary, movable, tiltR planePair
		for p := range tiltR {
			stationary[p], movable[p] = slope[p]/2+per*offset[p], slope[p]/2-per*offset[p]
			tiltR[p] = slopeR[p]/2 + per*offsetR[p]
		}
		w.item(name+", flex_stationary", stationary, tiltR, limit, j.Limits.PerPlane)
		w.item(name+", flex_movable", movable, tiltR, limit, j.Limits.PerPlane)
		return
	}
	if j.Limits.Offset != "" {
		w.item(name+", offset", offset, offsetR, l.float(j.Limits.Offset), j.Limits.PerPlane)
	}
	if j.Limits.Slope != "" {
		w.item(name+", slope", slope, slopeR, l.slope(j.Limits.Slope), j.Limits.PerPlane)
	}
}

// slope reads a slope into mm/m.
func (l *lengths) slope(text string) float64 {
	q, err := readQuantity(text)
	if err == nil && q.of != "slope" {
		err = fmt.Errorf("%q is no slope", text)
	}
	if err != nil {
		l.err = err
		return math.NaN()
	}
	x, _ := q.value.Float64()
	return x
}

// after judges what moves leave at all joints, and tells whether all are on their
// target.
func (in trainInput) after(moves [][]planePair, l *lengths) (w worstItem, onTarget bool) {
	onTarget = true
	for i, j := range in.Joints {
		left, rounding := in.left(i, moves, l)
		w.judged(fmt.Sprintf("joint %d", i), j, left, rounding, l)
		for k, x := range left.numbers {
			onTarget = onTarget && math.Abs(x) <= nanometre+rounding.numbers[k]
		}
	}
	return w, onTarget
}
