package graph

import (
	"strconv"
	"strings"

	"example.org/collinear/examples/internal/markup"
)

// point is a place on paper, in millimetres to the right and down.
type point struct{ x, y float64 }

// pen is how a line is drawn.
type pen struct{ width, dash string }

var (
	fine   = pen{width: "0.12"}
	dotted = pen{width: "0.2", dash: "0.2 0.6"}
	dashed = pen{width: "0.3", dash: "2 0.8"}
	axial  = pen{width: "0.15", dash: "4 0.8 0.6 0.8"}
	firm   = pen{width: "0.3"}
	bold   = pen{width: "0.7"}
)

// Where a text stands beside its place.
const (
	right  = "start"
	left   = "end"
	middle = "middle"
)

// size of letters, in millimetres.
const letters = 2.5

// wide is how much room a text takes along the line, or less: letters differ from one
// machine to another.
func wide(text string) float64 { return 0.6 * letters * float64(len([]rune(text))) }

// ink draws on a figure.
type ink struct{ markup.Writer }

func (k *ink) line(p pen, points ...point) {
	k.Void("polyline", "points", list(points), "fill", "none", "stroke", "black", "stroke-width", p.width, "stroke-dasharray", p.dash)
}

// area fills a polygon with a grey that a printer in black and white can show.
func (k *ink) area(points ...point) {
	k.Void("polygon", "points", list(points), "fill", "#d8d8d8")
}

func (k *ink) solid(points ...point) { k.Void("polygon", "points", list(points), "fill", "black") }

func (k *ink) dot(at point) {
	k.Void("circle", "cx", coordinate(at.x), "cy", coordinate(at.y), "r", "1")
}

// hollow draws a small circle with nothing in it.
func (k *ink) hollow(at point) {
	k.Void("circle", "cx", coordinate(at.x), "cy", coordinate(at.y), "r", "0.7", "fill", "white", "stroke", "black", "stroke-width", firm.width)
}

// text writes on a white edge, so that it can be read across a line.
func (k *ink) text(at point, anchor, text string) {
	k.Leaf("text", text, "x", coordinate(at.x), "y", coordinate(at.y), "text-anchor", anchor,
		"stroke", "white", "stroke-width", "0.5", "paint-order", "stroke")
}

// cut shortens a text to the room that there is for it.
func cut(text string, room float64) string {
	runes := []rune(text)
	for wide(string(runes)) > room {
		runes = append(runes[:len(runes)-2], '…')
	}
	return string(runes)
}

// title writes the title of a figure.
func (k *ink) title(text string) {
	k.Leaf("text", cut(text, 0.9*width), "y", coordinate(letters), "font-weight", "bold")
}

// arrow draws an upright arrow; one too short for its head is the head alone.
func (k *ink) arrow(p pen, from, to point) {
	const length, half = 1.6, 0.7
	way := 1.0
	if to.y < from.y {
		way = -1
	}
	neck := min(length, way*(to.y-from.y))
	k.line(p, from, point{to.x, to.y - way*neck/2})
	k.solid(to, point{to.x - half, to.y - way*neck}, point{to.x + half, to.y - way*neck})
}

func list(points []point) string {
	words := make([]string, len(points))
	for i, p := range points {
		words[i] = coordinate(p.x) + "," + coordinate(p.y)
	}
	return strings.Join(words, " ")
}

// coordinate writes a coordinate to a hundredth of a millimetre.
func coordinate(x float64) string {
	text := strings.TrimRight(strings.TrimRight(strconv.FormatFloat(x, 'f', 2, 64), "0"), ".")
	if text == "-0" {
		return "0"
	}
	return text
}
