package main

import (
	"encoding/json"
	"fmt"
	"math"
)

// coarse is a position in float64, for comparing answers of a program with one
// another: horizontal offset in mm and slope in mm/m, vertical offset and slope.
// It serves for bounds as well.
type coarse struct {
	numbers [4]float64
	isBound bool
}

// spare is how many times the tolerance of a vector two answers may be apart:
// each may be off, and a change of the input may cost as much again.
const spare = 4

// position is what stands on the wire.
type position struct {
	Horizontal, Vertical struct{ Offset, Slope string }
}

func (p position) texts() [4]string {
	return [4]string{p.Horizontal.Offset, p.Horizontal.Slope, p.Vertical.Offset, p.Vertical.Slope}
}

// readCoarse reads an answer.
func readCoarse(result json.RawMessage) (coarse, error) {
	var p position
	var c coarse
	if err := json.Unmarshal(result, &p); err != nil {
		return c, err
	}
	for i, text := range p.texts() {
		q, err := readQuantity(text)
		if err != nil {
			return c, err
		}
		if want := [2]string{"length", "slope"}[i%2]; q.of != want {
			return c, fmt.Errorf("%q is no %s", text, want)
		}
		c.numbers[i], _ = q.value.Float64()
	}
	return c, nil
}

// bound returns how far answers to a vector may be apart.
func (v vector) bound() coarse {
	b := coarse{isBound: true}
	for i, at := range [4]string{"/horizontal/offset", "/horizontal/slope", "/vertical/offset", "/vertical/slope"} {
		if q, err := readQuantity(v.Tolerance[at].Within); err == nil {
			x, _ := q.value.Float64()
			b.numbers[i] = spare * x
		}
	}
	return b
}

// differences compares.
func (c coarse) differences(got, bound coarse) []difference {
	var all []difference
	for i, at := range [4]string{"/horizontal/offset", "/horizontal/slope", "/vertical/offset", "/vertical/slope"} {
		if d := math.Abs(got.numbers[i] - c.numbers[i]); !(d <= bound.numbers[i]) {
			unit := [2]string{" mm", " mm/m"}[i%2]
			show := func(x float64) string { return fmt.Sprint(x, unit) }
			all = append(all, difference{At: at, Got: show(got.numbers[i]), Want: show(c.numbers[i]), Within: show(bound.numbers[i])})
		}
	}
	return all
}

// turn turns a position by turnBy clockwise. A bound becomes that of both planes
// together.
func (c *coarse) turn() {
	sin, cos := math.Sincos(turnBy * math.Pi / 180)
	for i := range 2 {
		y, z := c.numbers[i], c.numbers[i+2]
		if c.isBound {
			c.numbers[i], c.numbers[i+2] = y+z, y+z
		} else {
			c.numbers[i], c.numbers[i+2] = y*cos+z*sin, z*cos-y*sin
		}
	}
}

// moveOrigin counts stations from a place moveBy on the stationary side, so that
// the old origin lies at +moveBy.
func (c *coarse) moveOrigin() {
	for i := 0; i < 4; i += 2 {
		shift := -moveBy / 1000 * c.numbers[i+1]
		if c.isBound {
			shift = -shift
		}
		c.numbers[i] += shift
	}
}

// scale enlarges all lengths by scaleBy; slopes stay.
func (c *coarse) scale() {
	for i := 0; i < 4; i += 2 {
		c.numbers[i] *= scaleBy
	}
}

// exchange exchanges the roles of the machines and the end from which one looks.
func (c *coarse) exchange() {
	if !c.isBound {
		c.numbers[1], c.numbers[2] = -c.numbers[1], -c.numbers[2]
	}
}

// plus returns the sum of two positions or bounds.
func (c coarse) plus(d coarse) coarse {
	for i := range c.numbers {
		c.numbers[i] += d.numbers[i]
	}
	return c
}

// afterMoves returns where the machine lies once it has made the moves of an
// answer at the first and the last of its feet, and by how much more that may be off.
func (v vector) afterMoves(feet []fitFoot, result json.RawMessage, base coarse) (after, bound coarse, ok bool) {
	var out struct {
		Moves []struct{ Horizontal, Vertical string }
	}
	last := len(feet) - 1
	if json.Unmarshal(result, &out) != nil || last < 1 || len(out.Moves) != len(feet) {
		return after, bound, false
	}
	var l lengths
	x := func(i int) float64 { return l.float(feet[i].X) }
	way, reach := x(last)-x(0), math.Abs(x(last))+math.Abs(x(0))
	after = base
	for plane, texts := range [2][3]string{
		{out.Moves[0].Horizontal, out.Moves[last].Horizontal, v.Tolerance["/moves/*/horizontal"].Within},
		{out.Moves[0].Vertical, out.Moves[last].Vertical, v.Tolerance["/moves/*/vertical"].Within},
	} {
		near, far, off := l.float(texts[0]), l.float(texts[1]), spare*l.float(texts[2])
		slope := (far - near) / way
		after.numbers[2*plane] += near - slope*x(0)
		after.numbers[2*plane+1] += 1000 * slope
		bound.numbers[2*plane] = off * reach / math.Abs(way)
		bound.numbers[2*plane+1] = 1000 * 2 * off / math.Abs(way)
	}
	return after, bound, l.err == nil && way != 0
}
