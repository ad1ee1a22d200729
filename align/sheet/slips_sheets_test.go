package sheet_test

import (
	"fmt"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/sheet"
	"example.org/collinear/softfoot"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// Sheets that were made by hand. All numbers here are worked in the comments, in mils and
// inches, by the formulas that a trainer writes on the board; derived here.

// slipsReverse are two rim dials at +4 in and -4 in, the sags of their brackets 4 mil
// and 2 mil, the feet at 10 in and 34 in:
//
//	Tm = (0 - 4) - (-28 + 4) = 20    wm = 10
//	Ts = (0 - 2) - (8 + 2) = -12     ws = 6
//	a = (10 - 6)/8 = 0.5    w0 = 10 - 0.5*4 = 8
//	inboard 8 + 0.5*10 = 13    outboard 8 + 0.5*34 = 25
//
// and sideways, where no sag counts:
//
//	Tm = -11 + 17 = 6    wm = 3    Ts = 2 - 6 = -4    ws = 2
//	a = (3 - 2)/8 = 0.125    w0 = 3 - 0.125*4 = 2.5
//	inboard 2.5 + 0.125*10 = 3.75    outboard 2.5 + 0.125*34 = 6.75
func slipsReverse() sheet.Problem {
	return sheet.Problem{Job: &sheet.Job{
		Reverse: &dial.Reverse{
			CarriedByStationary: dial.Rim{Station: 4 * units.Inch, Sag: 4 * units.Mil, Readings: dial.Quarters(units.Mil, 0, -11, -28, -17)},
			CarriedByMovable:    dial.Rim{Station: -4 * units.Inch, Sag: 2 * units.Mil, Readings: dial.Quarters(units.Mil, 0, 2, 8, 6)},
		},
		Feet: []align.Foot{{Name: "inboard", X: 10 * units.Inch}, {Name: "outboard", X: 34 * units.Inch}},
	}}
}

// slipsReverseAside has both dials 2 in further out: w0 = 10 - 3 = 7, feet 7 + 5 and 7 + 17.
func slipsReverseAside() sheet.Problem {
	p := slipsReverse()
	p.Job.Reverse.CarriedByStationary.Station += 2 * units.Inch
	p.Job.Reverse.CarriedByMovable.Station += 2 * units.Inch
	return p
}

const slipsReverseAsideSheet = `
	vertical.carried_by_stationary.offset   10.0 mil high
	vertical.carried_by_movable.offset      6.0 mil high
	vertical.slope                          0.500 mil/in open at 6
	vertical.offset                         7.0 mil high
	vertical.foot.inboard.position          12.0 mil high
	vertical.foot.outboard.position         24.0 mil high
	vertical.foot.inboard.correction        lower 12.0 mil
	vertical.foot.outboard.correction       lower 24.0 mil`

// slipsReverseSheet has the numbers above.
const slipsReverseSheet = `
	vertical.carried_by_stationary.total    20.0 mil
	vertical.carried_by_stationary.offset   10.0 mil high
	vertical.carried_by_movable.total       -12.0 mil
	vertical.carried_by_movable.offset      6.0 mil high
	vertical.slope                          0.500 mil/in open at 6
	vertical.offset                         8.0 mil high
	vertical.foot.inboard.position          13.0 mil high
	vertical.foot.outboard.position         25.0 mil high
	vertical.foot.inboard.correction        lower 13.0 mil
	vertical.foot.outboard.correction       lower 25.0 mil
	horizontal.carried_by_stationary.total  6.0 mil
	horizontal.carried_by_stationary.offset 3.0 mil towards 3
	horizontal.carried_by_movable.total     -4.0 mil
	horizontal.carried_by_movable.offset    2.0 mil towards 3
	horizontal.slope                        0.125 mil/in open at 9
	horizontal.offset                       2.5 mil towards 3
	horizontal.foot.inboard.position        3.75 mil towards 3
	horizontal.foot.outboard.position       6.75 mil towards 3
	horizontal.foot.inboard.correction      push 3.75 mil towards 9
	horizontal.foot.outboard.correction     push 6.75 mil towards 9
`

// slipsRimFace are a rim dial at +2 in and a face dial that sweeps 5 in, no sag:
//
//	T = 10    w = 5    TF = 5    a = 5/5 = 1    w0 = 5 - 1*2 = 3
//	inboard 3 + 10 = 13    outboard 3 + 30 = 33
func slipsRimFace() sheet.Problem {
	return sheet.Problem{Job: &sheet.Job{
		RimFace: &dial.RimFace{
			Carrier: align.Stationary,
			Rim:     dial.Rim{Station: 2 * units.Inch, Readings: dial.Quarters(units.Mil, 0, -2, -10, -8)},
			Face:    dial.Face{Diameter: 5 * units.Inch, Readings: dial.Quarters(units.Mil, 0, -2, -5, -3)},
		},
		Feet: []align.Foot{{Name: "inboard", X: 10 * units.Inch}, {Name: "outboard", X: 30 * units.Inch}},
	}}
}

const slipsRimFaceSheet = `
	vertical.rim.total                10.0 mil
	vertical.rim.offset               5.0 mil high
	vertical.face.total               5.0 mil
	vertical.face.slope               1.000 mil/in open at 6
	vertical.offset                   3.0 mil high
	vertical.foot.inboard.position    13.0 mil high
	vertical.foot.outboard.position   33.0 mil high
	vertical.foot.inboard.correction  lower 13.0 mil
	vertical.foot.outboard.correction lower 33.0 mil
`

// slipsGrowth is a machine on legs of steel of 20 in, 6.3e-6 per degree F, that get 90 F
// and 50 F warmer:
//
//	20 in * 6.3e-6 * 90 = 11.34 mil    20 in * 6.3e-6 * 50 = 6.3 mil
func slipsGrowth() sheet.Problem {
	leg := func(name string, x units.Length, rise units.TemperatureDifference) thermal.Support {
		return thermal.Support{Name: name, X: x, Pieces: []thermal.Piece{{
			Height: 20 * units.Inch, Rise: rise,
			Material: thermal.Material{Name: "steel", Expansion: 6.3e-6 * units.PerFahrenheitDegree},
		}}}
	}
	return sheet.Problem{ColdTarget: &sheet.ColdTarget{Movable: []thermal.Support{
		leg("inboard", 10*units.Inch, 90*units.FahrenheitDegree), leg("outboard", 30*units.Inch, 50*units.FahrenheitDegree),
	}}}
}

const slipsGrowthSheet = `
	movable.inboard.rise     90 degF
	movable.inboard.growth   11.34 mil high
	movable.outboard.rise    50 degF
	movable.outboard.growth  6.3 mil high
`

// slipsSoftFoot is the example on the page of the common movement: 0.12, 0.02, 0.02, 0.12
// have 0.02 in common.
func slipsSoftFoot() sheet.Problem {
	foot := func(name string, x, y, lift units.Length) softfoot.Foot {
		return softfoot.Foot{Name: name, X: x * units.Millimetre, Y: y * units.Millimetre, Lift: lift * 10 * units.Micrometre}
	}
	return sheet.Problem{SoftFoot: &sheet.SoftFoot{Height: 200 * units.Millimetre, Feet: []softfoot.Foot{
		foot("A", 0, 200, 12), foot("B", 0, -200, 2), foot("C", 500, 200, 2), foot("D", 500, -200, 12),
	}}}
}

const slipsSoftFootSheet = `
	common         0.02 mm
	foot.A.excess  0.10 mm
	foot.B.excess  0.00 mm
	foot.C.excess  0.00 mm
	foot.D.excess  0.10 mm
`

// slipsTilts is a spacer of 20 in at an offset of 10 mil and a slope of 1 mil/in, up:
//
//	0.5 + 10/20 = 1.0    0.5 - 10/20 = 0
func slipsTilts() sheet.Problem {
	return sheet.Problem{FlexTilts: &sheet.FlexTilts{
		Span:       20 * units.Inch,
		Centreline: align.Centreline{Vertical: align.Line{Offset: 10 * units.Mil, Slope: units.MilPerInch}},
	}}
}

const slipsTiltsSheet = `
	vertical.tilt.stationary   1.000 mil/in open at 6
	vertical.tilt.movable      0.000 mil/in
	horizontal.tilt.stationary 0.000 mil/in
	horizontal.tilt.movable    0.000 mil/in
`

// onSheet reads lines of an id and an answer, and then those that another hand changed.
func onSheet(texts ...string) map[string]string {
	answers := map[string]string{}
	for _, text := range texts {
		for l := range strings.Lines(text) {
			if id, answer, ok := strings.Cut(strings.TrimSpace(l), " "); ok {
				answers[strings.TrimSuffix(id, ":")] = strings.TrimSpace(answer)
			}
		}
	}
	return answers
}

func mark(t *testing.T, p sheet.Problem, answers map[string]string) sheet.Marking {
	t.Helper()
	w, err := p.Working()
	if err != nil {
		t.Fatal(err)
	}
	m, err := w.Check(answers)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// namedBy lists the explanations as "kind at line, line".
func namedBy(m sheet.Marking) []string {
	var list []string
	for _, e := range m.Explanations {
		var parts []string
		for _, s := range e.Slips {
			parts = append(parts, fmt.Sprintf("%v at %s", s.Kind, strings.Join(s.Steps, ", ")))
		}
		text := strings.Join(parts, " and ")
		if e.Left != nil {
			text += " leaves " + strings.Join(e.Left, ", ")
		}
		list = append(list, text)
	}
	return list
}
