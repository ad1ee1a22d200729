package graph

import (
	"math"
	"testing"

	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// straight is a line with a band of the same width everywhere.
func straight(offset units.Length, slope units.Slope, half units.Length) Line {
	return func(x units.Length) (units.Length, units.Length) {
		return offset + units.Length(slope)*x, half
	}
}

func plain() Plane {
	const mm = units.Millimetre
	return Plane{
		Title: "Side view", Says: "in words", Above: "high", Below: "low",
		From: -200 * mm, To: 1000 * mm, Rims: []units.Length{-100 * mm, 100 * mm},
		Joint:   [2]units.Length{-90 * mm, 90 * mm},
		Movable: straight(-mm/2, units.Slope(0.0002), mm/20), Target: straight(mm/10, 0, 0),
		Feet: []Foot{
			{X: 300 * mm, Words: "inboard: raise", Then: mm / 2},
			{X: 800 * mm, Words: "outboard: raise", First: mm / 10, Then: mm / 4},
		},
		Unit: units.InMillimetres,
	}
}

// What is drawn has the slope and the lengths that the scale tells. The scale and the
// places on paper are read back from the drawing.
func TestDrawnToScale(t *testing.T) {
	p := plain()
	s := Scale{Along: 20, Across: 20}
	list := read(t, p.Draw(s))
	shafts := having(list, "polyline", "stroke-width", bold.width)
	if len(shafts) != 2 {
		t.Fatalf("%d bold lines, want both shafts", len(shafts))
	}
	stationary, movable := shafts[0].points(t), shafts[1].points(t)
	first, last := movable[0], movable[len(movable)-1]
	near(t, "length of the movable shaft", last.x-first.x, 910.0/20)
	near(t, "rise of the movable shaft", first.y-last.y, 0.0002*910*20)
	near(t, "how low it lies at the joint", first.y-stationary[1].y, (0.5-0.0002*90)*20)
	heads := having(list, "polygon", "fill", "black")
	if len(heads) != 3 {
		t.Fatalf("%d arrows, want 3", len(heads))
	}
	moves := having(list, "polyline", "stroke-width", firm.width)
	var long []float64
	for i, e := range moves {
		if points := e.points(t); len(points) == 2 && points[0].x == points[1].x && points[0].y-points[1].y > 3 {
			long = append(long, points[0].y-heads[min(i, 2)].points(t)[0].y)
		}
	}
	tip := heads[0].points(t)[0]
	near(t, "tip of the first move", stationary[0].y-tip.y, (-0.5+0.0002*300+0.5)*20)
	tip = heads[1].points(t)[0]
	near(t, "tip of what comes before the second", stationary[0].y-tip.y, (-0.5+0.0002*800+0.1)*20)
	tip = heads[2].points(t)[0]
	near(t, "tip of the second move", stationary[0].y-tip.y, (-0.5+0.0002*800+0.1+0.25)*20)
	if len(long) != 2 {
		t.Errorf("%d moves are drawn, want 2", len(long))
	}
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 0.011 {
		t.Errorf("%s: %v mm of paper, want %v", what, got, want)
	}
}

// A band has an upper and a lower edge, half its width from the line, and one that is
// unknown is not drawn.
func TestBand(t *testing.T) {
	p := plain()
	s := Scale{Along: 20, Across: 20}
	grey := having(read(t, p.Draw(s)), "polygon", "fill", "#d8d8d8")
	if len(grey) != 1 {
		t.Fatalf("%d bands", len(grey))
	}
	points := grey[0].points(t)
	near(t, "width of the band", points[0].y-points[len(points)-1].y, 2*0.05*20)
	p.Movable = straight(0, 0, units.Length(math.NaN()))
	if grey := having(read(t, p.Draw(s)), "polygon", "fill", "#d8d8d8"); len(grey) != 0 {
		t.Error("a band is drawn, of which nothing is known")
	}
}

// Whatever the machine, at the scale that Fit chooses all is on the paper, no label
// runs into another, and the plot is not lost in it.
func TestFitsAnyMachine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := units.Millimetre
		length := func(name string, low, high float64) units.Length {
			return units.Length(rapid.Float64Range(low, high).Draw(t, name)) * mm
		}
		size := math.Pow(10, rapid.Float64Range(-4, 2).Draw(t, "size"))
		p := Plane{
			Title: "Side view as found", Above: "towards the wall", Below: "towards the aisle", Unit: units.InMillimetres,
			From: -length("from", 1, 2000), To: length("to", 300, 9000),
			Movable: straight(length("offset", -size, size), units.Slope(rapid.Float64Range(-size, size).Draw(t, "slope")/1000), length("half", 0, size)),
			Target:  straight(length("target", -size, size), 0, 0),
		}
		p.Joint = [2]units.Length{-length("span", 0, 200), 0}
		p.Joint[0] = max(p.Joint[0], p.From)
		for range rapid.IntRange(2, 8).Draw(t, "feet") {
			p.Feet = append(p.Feet, Foot{
				X: units.Length(rapid.Float64Range(0.05, 1).Draw(t, "at")) * p.To, Words: "inboard: push 12.34 mm towards the aisle",
				First: length("first", -size, size), Then: length("then", -size, size),
			})
		}
		s := Fit(p)
		low, high := p.extent()
		if paper := (high - low) * s.Across; paper > tallest*(1+1e-9) || high-low > 0.05 && paper < tallest/2 {
			t.Errorf("the plot takes %v of %v mm", paper, tallest)
		}
		checkLabels(t, read(t, p.Draw(s)))
	})
}

// checkLabels asks that no two texts lie on one another, by the room that each is
// taken to need.
func checkLabels(t rapid.TB, list []element) {
	t.Helper()
	var texts []element
	for _, e := range list {
		if e.name == "text" && e.attrs["text-anchor"] == right {
			texts = append(texts, e)
		}
	}
	for i, a := range texts {
		for _, b := range texts[:i] {
			p, q := a.points(t), b.points(t)
			if p[0].x < q[1].x && q[0].x < p[1].x && p[1].y < q[0].y && q[1].y < p[0].y {
				t.Errorf("%q lies on %q", a.text, b.text)
			}
		}
	}
}

// Two planes share the scale that fits the larger.
func TestOneScaleForBoth(t *testing.T) {
	small, large := plain(), plain()
	large.Movable = straight(5*units.Millimetre, 0, 0)
	if both := Fit(small, large); both != Fit(large, small) || both.Across != Fit(large).Across || both.Across >= Fit(small).Across {
		t.Errorf("%v for both, %v and %v for each", both, Fit(small), Fit(large))
	}
}
