package graph

import (
	"math"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

func sweep(off units.Length) Turn {
	const mm = units.Millimetre
	t := Turn{
		Title: "Rim dial", Above: "inwards", Below: "outwards", Unit: units.InMillimetres,
		Show: func(l units.Length) string { return l.Text(units.InMillimetres, 3) },
		Name: func(c units.Clock) string { return c.Normal().String() },
	}
	value := func(at units.Clock) units.Length {
		sin, cos := at.SinCos()
		return mm * units.Length(0.3*sin-0.4*cos+0.4)
	}
	for at := units.Clock(0); at <= 12*units.Hour; at += units.Hour / 4 {
		t.Sine = append(t.Sine, align.Reading{At: at, Value: value(at)})
	}
	for i, at := range []units.Clock{units.Twelve, units.Three, units.Six, units.Nine} {
		d := off * units.Length(1-2*(i%2))
		t.Readings = append(t.Readings, Reading{At: at, Value: value(at) + d, Off: d})
	}
	return t
}

// The readings lie off the sine by what they do, and below by so many times more as
// the words tell.
func TestReadingsLieOffTheSine(t *testing.T) {
	f := sweep(units.Millimetre / 100).Draw()
	list := read(t, f)
	line := having(list, "polyline", "stroke-width", firm.width)[0].points(t)
	perMillimetre := swing // for the sine goes from 0.1 mm below its start to 0.9 mm above it
	for i, e := range having(list, "circle", "fill", "white") {
		want := 0.01 * perMillimetre * float64(1-2*(i%2))
		if got := line[i*12].y - e.points(t)[0].y; math.Abs(got-want) > 0.05*math.Abs(want)+0.01 {
			t.Errorf("reading %d lies %v mm above the sine, want %v", i, got, want)
		}
	}
	bars := having(list, "polyline", "stroke-width", bold.width)
	if len(bars) != 4 {
		t.Fatalf("%d bars", len(bars))
	}
	for i, b := range bars {
		p := b.points(t)
		if up := p[0].y > p[1].y; up != (i%2 == 0) {
			t.Errorf("bar %d points the wrong way", i)
		}
	}
	const words = "Bars: left over, 15 times larger than above; at most 0.010 mm"
	if !strings.Contains(f.SVG(), words) {
		t.Errorf("no %q in\n%s", words, f.SVG())
	}
	ratio := (bars[0].points(t)[0].y - bars[0].points(t)[1].y) / (0.01 * perMillimetre)
	if math.Abs(ratio-15) > 0.5 {
		t.Errorf("bars are %v times larger", ratio)
	}
}

func TestNothingLeftOver(t *testing.T) {
	f := sweep(0).Draw()
	if bars := having(read(t, f), "polyline", "stroke-width", bold.width); len(bars) != 0 || !strings.Contains(f.SVG(), "Nothing is left over") {
		t.Errorf("%d bars", len(bars))
	}
}

// Of three readings nothing can be left over, and that tells nothing.
func TestThreeReadingsTellNothing(t *testing.T) {
	turn := sweep(0)
	turn.Readings = turn.Readings[:3]
	if svg := turn.Draw().SVG(); !strings.Contains(svg, "Three readings leave nothing over") {
		t.Error(svg)
	}
}

func TestAgainst(t *testing.T) {
	for _, row := range []struct {
		ratio, half float64
		dots, heads int
		bar         bool
	}{
		{0.5, 0.2, 1, 0, true}, {0.5, 0, 1, 0, false}, {0.5, math.NaN(), 1, 0, false}, {2.5, 0.1, 0, 1, true}, {1e9, 1e9, 0, 1, true},
	} {
		list := read(t, Against(row.ratio, row.half, "so many times the limit"))
		dots, heads := having(list, "circle", "r", "1"), having(list, "polygon", "fill", "black")
		if bars := having(list, "polyline", "stroke-width", bold.width); len(dots) != row.dots || len(heads) != row.heads || (len(bars) == 1) != row.bar {
			t.Errorf("%v: %d dots, %d heads, %d bars", row, len(dots), len(heads), len(bars))
		}
	}
	limit := having(read(t, Against(1, 0, "")), "circle", "r", "1")[0].points(t)[0].x
	near(t, "a value on its limit", limit, 18)
}

func TestLegendIsOnItsPaper(t *testing.T) {
	words := 0
	for _, f := range Legend() {
		for _, e := range read(t, f) {
			if e.name == "text" {
				words++
			}
		}
	}
	if words != len(signs) {
		t.Errorf("%d words for %d signs", words, len(signs))
	}
}

// What stands in a name cannot end the element that it stands in.
func TestNamesAreEscaped(t *testing.T) {
	p := plain()
	p.Title = `</svg><script>"&`
	p.Feet[0].Words = `<b onclick="x">`
	svg := Together(p.Title, Row{Figures: []Figure{p.Draw(Fit(p)), p.Draw(Fit(p))}, Words: `<i>`}).SVG()
	if strings.Contains(svg, "<script") || strings.Contains(svg, "<b") || strings.Contains(svg, "<i>") {
		t.Error(svg)
	}
	read(t, p.Draw(Fit(p)))
}
