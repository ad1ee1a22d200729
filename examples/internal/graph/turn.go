package graph

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// Turn is what the drawing of one sweep shows: readings against the clock, the sine
// of the misalignment that was found, and below it what is left over at each, enlarged.
type Turn struct {
	Title        string
	Says         string          // the same in words
	Above, Below string          // what a reading above zero means, and one below: "inwards", "outwards"
	Sine         []align.Reading // what the misalignment makes of a full turn
	Readings     []Reading
	Unit         units.LengthUnit          // of the ticks
	Show         func(units.Length) string // what is left over
	Name         func(units.Clock) string  // of a quarter of the clock, as the crew names it
}

// Reading is what was read at one position, in the order of the clock's hand, and how
// far off the sine it lies.
type Reading struct {
	At    units.Clock
	Value units.Length
	Off   units.Length
}

// paper of one turn.
const (
	swing = 13.0 // height of the readings
	rest  = 5.0  // and of what is left over
)

// turning is a turn at its scale on paper.
type turning struct {
	ink
	*Turn
	low, high float64 // of what is drawn, in millimetres of the machine
	scale     float64
}

// Draw draws the readings.
func (t Turn) Draw() Figure {
	g := turning{Turn: &t}
	g.fit()
	g.title(t.Title)
	g.frame()
	g.sine()
	g.readings()
	end := g.leftOver()
	return Figure{Width: width, Height: end, title: t.Title, says: t.Says, marks: g.String()}
}

// fit chooses the scale, by the sine and the readings.
func (g *turning) fit() {
	for _, r := range g.Sine {
		g.include(r.Value)
	}
	for _, r := range g.Readings {
		g.include(r.Value)
	}
	const smallest = 0.02 // mm: less than this is not drawn over the whole height
	g.scale = swing / max(g.high-g.low, smallest)
}

func (g *turning) include(l units.Length) {
	g.low, g.high = min(g.low, millimetres(l)), max(g.high, millimetres(l))
}

// at is a place on paper.
func (g *turning) at(clock units.Clock, value units.Length) point {
	return point{margin + across*float64(clock)/float64(12*units.Hour), head + (g.high-millimetres(value))*g.scale}
}

func (g *turning) frame() {
	zero := g.at(0, 0)
	bottom := head + swing
	g.line(fine, point{margin, head}, point{margin, bottom})
	g.line(axial, zero, g.at(12*units.Hour, 0))
	g.ticks(g.Unit, zero.y, head, bottom, g.scale)
	g.ends(g.Above, g.Below, head, bottom)
	for quarter := range 5 {
		at := units.Three * units.Clock(quarter)
		x := g.at(at, 0).x
		g.line(dotted, point{x, head}, point{x, bottom + 1 + 2*row + rest})
	}
}

func (g *turning) sine() {
	var points []point
	for _, r := range g.Sine {
		points = append(points, g.at(r.At, r.Value))
	}
	g.line(firm, points...)
}

func (g *turning) readings() {
	for _, r := range g.Readings {
		g.hollow(g.at(r.At, r.Value))
	}
}

// leftOver draws what is left over at each reading, and the names of the quarters
// above it. It returns where the drawing ends.
func (g *turning) leftOver() float64 {
	names := head + swing + 2*row + 0.5
	for quarter := range 5 {
		at := units.Three * units.Clock(quarter)
		g.text(point{g.at(at, 0).x, names}, middle, g.Name(at))
	}
	largest := 0.0
	for _, r := range g.Readings {
		largest = max(largest, math.Abs(millimetres(r.Off)))
	}
	zero := names + 1 + rest/2
	g.line(fine, point{margin, zero}, point{margin + across, zero})
	words := "Nothing is left over"
	if len(g.Readings) == 3 {
		words = "Three readings leave nothing over, whatever they are"
	}
	const nothing = 1e-5 // mm: rounding
	if largest > nothing {
		more := atMost(rest/2/largest/g.scale, round)
		for _, r := range g.Readings {
			x := g.at(r.At, 0).x
			g.line(bold, point{x, zero}, point{x, zero - millimetres(r.Off)*g.scale*more})
		}
		words = "Bars: left over, " + number(more) + " times larger than above; at most " + g.Show(units.Length(largest)*units.Millimetre)
	}
	g.text(point{0, zero + rest/2 + row}, right, words)
	return zero + rest/2 + row + 1
}
