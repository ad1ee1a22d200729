package sheet_test

import (
	"fmt"
	"math"
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

const (
	millimetre = units.Millimetre
	micrometre = units.Micrometre
)

// drawing is all that a graph is drawn from.
type drawing struct {
	paper   sheet.Paper
	line    align.Line
	through [2]sheet.Station
	feet    []align.Foot
}

// onSquares is a drawing of round numbers: on paper the points stand 40 mm apart,
// the line climbs at 45 degrees, and the rear foot is 90 mm from the farther point.
func onSquares() drawing {
	return drawing{
		paper:   sheet.Paper{Reduction: 10, Exaggeration: 100},
		line:    align.Line{Offset: -200 * micrometre, Slope: units.MillimetrePerMetre},
		through: [2]sheet.Station{{Name: "stationary dial"}, {Name: "movable dial", X: 400 * millimetre}},
		feet:    []align.Foot{{Name: "front", X: 300 * millimetre}, {Name: "rear", X: 900 * millimetre}},
	}
}

func (d drawing) draw() (sheet.Graph, error) { return d.paper.Draw(d.line, d.through, d.feet...) }

func (d drawing) suggest(width, height units.Length) (sheet.Paper, error) {
	return sheet.SuggestPaper(width, height, d.line, d.through, d.feet...)
}

// tester is what testing.TB and rapid.T have in common.
type tester interface {
	Helper()
	Errorf(string, ...any)
	Fatalf(string, ...any)
}

func (d drawing) mustDraw(tb tester) sheet.Graph {
	tb.Helper()
	g, err := d.draw()
	if err != nil {
		tb.Fatalf("%+v: %v", d, err)
	}
	return g
}

// same fails unless got is want, but for the last digits of a float64.
func same(tb tester, what string, got, want units.Length) {
	tb.Helper()
	within(tb, what, got, want, 1e-9*units.Length(math.Abs(float64(want)))+1e-6)
}

// within fails unless got lies within tolerance of want; NaN never does.
func within(tb tester, what string, got, want, tolerance units.Length) {
	tb.Helper()
	if !(math.Abs(float64(got-want)) <= float64(tolerance)) {
		tb.Errorf("%s: got %v, want %v within %v", what, got, want, tolerance)
	}
}

// codesAt lists the faults of an error as "code path", sorted.
func codesAt(err error) []string {
	var list []string
	for _, f := range units.Faults(err) {
		list = append(list, string(f.Code)+" "+f.Path)
	}
	slices.Sort(list)
	return list
}

// randomDrawing has points from 50 mm to 1 m apart, either way round, and feet
// before, between and beyond them.
func randomDrawing(t *rapid.T) drawing {
	number := func(name string, from, to float64) float64 { return rapid.Float64Range(from, to).Draw(t, name) }
	length := func(name string, from, to float64) units.Length {
		return units.Length(number(name, from, to)) * millimetre
	}
	first, apart := length("first point", -600, 600), length("apart", 50, 1000)
	if rapid.Bool().Draw(t, "second on the left") {
		apart = -apart
	}
	d := drawing{
		paper:   sheet.Paper{Reduction: number("reduction", 1, 20), Exaggeration: number("exaggeration", 20, 1000)},
		line:    align.Line{Offset: length("offset", -1, 1), Slope: units.Slope(number("slope", -2e-3, 2e-3))},
		through: [2]sheet.Station{{Name: "one", X: first}, {Name: "two", X: first + apart}},
	}
	if rapid.Bool().Draw(t, "pencil stated") {
		d.paper.Pencil = length("pencil", 0.05, 1)
	}
	for i := range rapid.IntRange(1, 2).Draw(t, "feet") {
		d.feet = append(d.feet, align.Foot{Name: fmt.Sprint("foot ", i), X: length("foot", -1500, 1500)})
	}
	// A foot where a plotted point stands, and one as near as the pencil confuses.
	d.feet = append(d.feet, align.Foot{Name: "at one", X: first},
		align.Foot{Name: "by two", X: first + apart + length("beside", -3, 3)})
	return d
}

// pencilOf is what a drawing's pencil may be off by.
func (d drawing) pencilOf() units.Length {
	if d.paper.Pencil == 0 {
		return sheet.DefaultPencil
	}
	return d.paper.Pencil
}
