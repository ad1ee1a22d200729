package sheet_test

import (
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/sheet"
	"example.org/collinear/softfoot"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// printed is a number as a work prints it, in the sign of this module.
type printed struct {
	id   string
	text string
	cut  bool // not rounded by its author, but cut off
}

// example is a calculation by hand that a work has printed.
type example struct {
	source string
	worked
	lines []printed
}

// blochGeitner has the vertical plane only; readings at 3 and 9 are ours, by the validity
// rule.
func blochGeitner() sheet.Job {
	return sheet.Job{
		Reverse: &dial.Reverse{
			CarriedByStationary: dial.Rim{Station: 7 * units.Inch, Readings: dial.Quarters(units.Mil, 0, -7, -14, -7)},
			CarriedByMovable:    dial.Rim{Station: -7 * units.Inch, Readings: dial.Quarters(units.Mil, 0, 12, 24, 12)},
		},
		Feet: []align.Foot{{Name: "inboard", X: (7 + 12) * units.Inch}, {Name: "outboard", X: (7 + 12 + 26) * units.Inch}},
	}
}

// mcMillan counts from the rim dial's stem, which stands 4 in from the coupling centre:
// that and the readings at 3 and 9, by the validity rule, are ours. Vertical plane only.
func mcMillan(carrier align.Shaft, far bool) sheet.Job {
	const stem = 4 * units.Inch
	return sheet.Job{
		RimFace: &dial.RimFace{
			Carrier: carrier,
			Rim:     dial.Rim{Station: stem, Readings: dial.Quarters(units.Mil, 0, -2, -4, -2)},
			Face:    dial.Face{Diameter: 12 * units.Inch, Far: far, Readings: dial.Quarters(units.Mil, 0, 1.5, 3, 1.5)},
		},
		Feet: []align.Foot{{Name: "inboard", X: stem + 16*units.Inch}, {Name: "outboard", X: stem + 36*units.Inch}},
	}
}

// mcMillanWarm adds the growth of the legs, told by the temperatures that are printed.
func mcMillanWarm() sheet.Job {
	j := mcMillan(align.Stationary, false)
	coefficient := thermal.Material{Name: "as printed", Expansion: units.MustParseExpansion("0.0063 mil/in/°F")}
	for i, leg := range []thermal.Piece{{Height: 17 * units.Inch}, {Height: 22 * units.Inch}} {
		leg.Material, leg.Cold = coefficient, units.Fahrenheit(78)
		leg.Profile = []thermal.Spot{{Running: units.Fahrenheit([]float64{106, 138}[i])}}
		j.Movable = append(j.Movable, thermal.Support{Name: j.Feet[i].Name, X: j.Feet[i].X, Pieces: []thermal.Piece{leg}})
	}
	return j
}

// piotrowski's east is our 3 o'clock.
func piotrowski(top, east, bottom, west float64) sheet.Sweep {
	return sheet.Sweep{
		Carrier: align.Stationary, Zero: units.Three, Rim: dial.Rim{Readings: dial.Quarters(units.Mil, top, east, bottom, west)},
	}
}

// hanging is a sweep with a bracket that hangs down by 3 mils, seen on a mandrel.
func hanging(carrier align.Shaft) sheet.Sweep {
	return sheet.Sweep{
		Carrier: carrier, Mandrel: &sheet.Sag{At12: 0, At6: -6 * units.Mil},
		Rim: dial.Rim{Readings: dial.Quarters(units.Mil, 0, 5, 10, 5)},
	}
}

func fourFeet(lifts ...float64) sheet.SoftFoot {
	s := sheet.SoftFoot{Height: 11 * units.Inch}
	for i, name := range []string{"A", "B", "C", "D"} {
		s.Feet = append(s.Feet, softfoot.Foot{
			Name: name, X: 24 * units.Inch * units.Length(i/2), Y: 8 * units.Inch * units.Length(1-2*(i%2)), Lift: units.Length(lifts[i]) * units.Mil,
		})
	}
	return s
}

var published = []example{
	{"H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair, ch. 5, p. 203 (read)", blochGeitner(), []printed{
		{id: "vertical.carried_by_movable.offset", text: "0.012 in"},
		{id: "vertical.carried_by_stationary.offset", text: "0.007 in"},
		{id: "vertical.foot.inboard.correction", text: "-0.0027 in"},
		{id: "vertical.foot.inboard.correction", text: "-3 mil"}, // lower 3 mils
		{id: "vertical.foot.outboard.correction", text: "0.0066 in"},
		{id: "vertical.foot.outboard.correction", text: "7 mil"}, // raise 7 mils
	}},
	{"R. B. McMillan, Rotating Machinery, 2004, p. 161, points of the graph: S/2 and -A/2 of the readings at the bottom (read)", blochGeitner(), []printed{
		{id: "vertical.carried_by_movable.offset", text: "12 mil"},   // S = +24
		{id: "vertical.carried_by_stationary.offset", text: "7 mil"}, // A = -14
	}},
	{"R. B. McMillan, Rotating Machinery, 2004, example 8-3, pp. 137-141 (read): a near face on the stationary shaft", mcMillan(align.Stationary, false), []printed{
		{id: "vertical.foot.inboard.position", text: "-2 mil"}, {id: "vertical.foot.outboard.position", text: "-7 mil"},
	}},
	{"the same by eq. 8.3 and 8.4 with its other signs: a far face on the stationary shaft", mcMillan(align.Stationary, true), []printed{
		{id: "vertical.foot.inboard.position", text: "6 mil"}, {id: "vertical.foot.outboard.position", text: "11 mil"},
	}},
	{"the same: a near face on the movable shaft", mcMillan(align.Movable, false), []printed{
		{id: "vertical.foot.inboard.position", text: "-6 mil"}, {id: "vertical.foot.outboard.position", text: "-11 mil"},
	}},
	{"the same: a far face on the movable shaft", mcMillan(align.Movable, true), []printed{
		{id: "vertical.foot.inboard.position", text: "2 mil"}, {id: "vertical.foot.outboard.position", text: "7 mil"},
	}},
	{"R. B. McMillan, Rotating Machinery, 2004, example 8-3, pp. 137-141 (read): with growth, whose sums with the positions are printed as +1", mcMillanWarm(), []printed{
		{id: "movable.inboard.growth", text: "2.99 mil", cut: true},
		{id: "movable.outboard.growth", text: "8.3 mil"},
		{id: "vertical.foot.inboard.correction", text: "-1 mil"},
		{id: "vertical.foot.outboard.correction", text: "-1 mil"},
	}},
	{"a compressor builder's start-up manual, p. 213 (read): (30/5) * 0.012 in, here from a foot at the coupling centre", sheet.Job{
		RimGap: &dial.RimGap{
			Carrier: align.Stationary, Rim: dial.Rim{Readings: dial.Quarters(units.Mil, 0, 0, 0, 0)},
			Gap: dial.Gap{Diameter: 5 * units.Inch, Readings: dial.Quarters(units.Mil, 12, 6, 0, 6)},
		},
		Feet: []align.Foot{{Name: "front"}, {Name: "rear", X: 30 * units.Inch}},
	}, []printed{{id: "vertical.foot.front.correction", text: "0.000 in"}, {id: "vertical.foot.rear.correction", text: "0.072 in"}}},
	{"the same, whose slope is -0.012/5", sheet.SlopeFromGap{Opening: 12 * units.Mil, At: units.Twelve, Diameter: 5 * units.Inch}, []printed{
		{id: "vertical.slope", text: "-2.4 mil/in"}, {id: "horizontal.slope", text: "0.0 mil/in"},
	}},
	{"J. Piotrowski, Shaft Alignment Handbook, 3rd ed., ch. 8, fig. 8.10 (second-hand): set 1, zero moved to the east", piotrowski(0, -50, -40, 10), []printed{
		{id: "rim.12", text: "50 mil"}, {id: "rim.3", text: "0 mil"}, {id: "rim.6", text: "10 mil"}, {id: "rim.9", text: "60 mil"}, {id: "rim.miss", text: "0 mil"},
	}},
	{"J. Piotrowski, Shaft Alignment Handbook, 3rd ed., ch. 8, fig. 8.10 (second-hand): set 2, zero moved to the east", piotrowski(0, 30, 20, -10), []printed{
		{id: "rim.12", text: "-30 mil"}, {id: "rim.3", text: "0 mil"}, {id: "rim.6", text: "-10 mil"}, {id: "rim.9", text: "-40 mil"}, {id: "rim.miss", text: "0 mil"},
	}},
	{"a pump handbook, fig. 19A-D (second-hand): carried by the movable shaft", hanging(align.Movable), []printed{
		{id: "sag", text: "3 mil"}, {id: "rim.6", text: "16 mil"}, {id: "rim.3", text: "8 mil"}, {id: "rim.9", text: "8 mil"}, {id: "vertical.rim.offset", text: "8 mil"},
	}},
	{"a pump handbook, fig. 19A-D (second-hand): carried by the stationary shaft", hanging(align.Stationary), []printed{
		{id: "rim.6", text: "16 mil"}, {id: "vertical.rim.offset", text: "-8 mil"},
	}},
	{"US Bureau of Reclamation, FIST 4-1A, p. 17 (read): from top to bottom a bar shows twice its sag", sheet.Sag{At6: -6 * units.Mil}, []printed{
		{id: "sag", text: "3 mil"},
	}},
	{"US Bureau of Reclamation, FIST 4-1A, p. 17 (read): 5 mils at one foot, 2 at the others", fourFeet(2, 2, 5, 2), []printed{
		{id: "common", text: "0.002 in"}, {id: "foot.C.excess", text: "0.003 in"}, {id: "foot.A.excess", text: "0.000 in"},
	}},
}

// What hands have printed is what the lines come to, at the precision in which it is
// printed.
func TestPublishedExamples(t *testing.T) {
	for _, e := range published {
		t.Run(e.source, func(t *testing.T) {
			w := work(t, e)
			for _, p := range e.lines {
				if got := valueText(t, w, p); got != p.text && !p.cut {
					t.Errorf("%s comes to %s, printed %s", p.id, got, p.text)
				}
				m, err := w.Check(map[string]string{p.id: p.text})
				if err != nil || !m.Right() {
					t.Errorf("%s: %s on a sheet is called wrong: %+v, %v", p.id, p.text, m, err)
				}
			}
		})
	}
}

// valueText is the exact answer in the unit and to the digits of what is printed.
func valueText(t *testing.T, w sheet.Working, p printed) string {
	t.Helper()
	number, unit, _ := strings.Cut(p.text, " ")
	_, after, _ := strings.Cut(number, ".")
	if unit == "mil/in" {
		x, err := sheet.Value[units.Slope](w, p.id)
		if err != nil {
			t.Fatal(err)
		}
		return x.Text(units.InMilsPerInch, len(after))
	}
	x, err := sheet.Value[units.Length](w, p.id)
	if err != nil {
		t.Fatal(err)
	}
	if unit == "in" {
		return x.Text(units.InInches, len(after))
	}
	return x.Text(units.InMils, len(after))
}

// A whole sheet of printed numbers is right as well, each judged by those above it:
// McMillan's 2.99 too, which he cut off in the middle of his way.
func TestPublishedSheets(t *testing.T) {
	for _, e := range published {
		answers := map[string]string{}
		for _, p := range e.lines {
			answers[p.id] = p.text
		}
		m, err := work(t, e).Check(answers)
		if err != nil || !m.Right() || len(m.Explanations) != 0 {
			t.Errorf("%s: %+v, %v", e.source, m, err)
		}
	}
}

// The exact numbers behind Bloch and Geitner's, worked out here as fractions: 12 - 5/14 *
// 26 mils and 12 - 5/14 * 52 mils above the stationary shaft, which is to be matched.
func TestBlochGeitnerExactly(t *testing.T) {
	w := work(t, blochGeitner())
	for id, want := range map[string]units.Length{
		"vertical.foot.inboard.correction":  -(12 - 5.0*26/14) * units.Mil,
		"vertical.foot.outboard.correction": -(12 - 5.0*52/14) * units.Mil,
	} {
		got, err := sheet.Value[units.Length](w, id)
		if off := got - want; err != nil || max(off, -off) > units.Nanometre*1e-6 {
			t.Errorf("%s: %v, want %v (%v)", id, got, want, err)
		}
	}
}
