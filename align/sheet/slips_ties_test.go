package sheet_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/flange"
	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
)

// TestTies: slips that give the same numbers on a sheet are named together, with the line
// that tells them apart; with that line on the sheet one is left.
func TestTies(t *testing.T) {
	t.Parallel()
	for _, row := range []struct {
		name    string // what ties, and why
		problem func() sheet.Problem
		sheet   string
		named   []string
		ask     []string // nil: some line or other, where more than one is named
		more    string   // the lines asked for, as the first of the slips has them
		left    []string // what is named then
	}{
		{
			// w = -5 either way, w0 = -5 - 2 = -7, feet 3 and 23.
			"12 for 6, or the dial of the other shaft, where only the corrections are written",
			slipsRimFace, `
			vertical.foot.inboard.correction  lower 3.0 mil
			vertical.foot.outboard.correction lower 23.0 mil`,
			[]string{"top_and_bottom_exchanged at vertical.rim.total", "machines_exchanged at vertical.rim.offset"},
			[]string{"vertical.rim.total"},
			"vertical.rim.total -10.0 mil",
			[]string{"top_and_bottom_exchanged at vertical.rim.total"},
		},
		{
			"the same with the total as it should be",
			slipsRimFace, `
			vertical.rim.total                10.0 mil
			vertical.foot.inboard.correction  lower 3.0 mil
			vertical.foot.outboard.correction lower 23.0 mil`,
			[]string{"machines_exchanged at vertical.rim.offset"}, nil, "", nil,
		},
		{
			// Once: Tm = 24, wm = 12, a = (12 - 6)/8. Forgotten: Ts = 0 - 8, ws = 4,
			// a = (10 - 4)/8. Both 0.75.
			"sag counted once on one dial, or forgotten on the other that has half as much",
			slipsReverse, `
			vertical.slope 0.750 mil/in open at 6`,
			[]string{"sag_once at vertical.carried_by_stationary.total", "sag_forgotten at vertical.carried_by_movable.total"},
			nil, "vertical.carried_by_stationary.total 24.0 mil",
			[]string{"sag_once at vertical.carried_by_stationary.total"},
		},
		{
			// Both dials: wm = -10, ws = -6, a = -0.5, w0 = -8, feet -13 and -25.
			"the correction given for the position, or the dials taken for one another",
			slipsReverse, `
			vertical.foot.inboard.correction  raise 13.0 mil
			vertical.foot.outboard.correction raise 25.0 mil`,
			[]string{
				"position_for_correction at vertical.foot.inboard.correction, vertical.foot.outboard.correction",
				"machines_exchanged at vertical.carried_by_stationary.offset, vertical.carried_by_movable.offset",
			},
			nil, "vertical.foot.outboard.position 25.0 mil high",
			[]string{"position_for_correction at vertical.foot.inboard.correction, vertical.foot.outboard.correction"},
		},
		{
			// e = 60*25.4/(2 pi 1500) = 0.16170 mm, a = 0.16170/50 = 3.234 mm/m; half of that.
			"over the diameter, or half of the offset",
			slipsSliding, `
			slope 1.617 mm/m`,
			[]string{"radius_and_diameter at slope", "total_not_halved at offset"},
			[]string{"offset"},
			"offset 0.162 mm",
			[]string{"radius_and_diameter at slope"},
		},
		{
			// 8 + 0.5*34 = 25 at the inboard feet by either; the correction has the sign.
			"the other feet's distance, or the other feet's correction: one kind at two lines",
			slipsReverse, `
			vertical.offset                  8.0 mil high
			vertical.slope                   0.500 mil/in open at 6
			vertical.foot.inboard.correction lower 25.0 mil`,
			[]string{"feet_exchanged at vertical.foot.inboard.position", "feet_exchanged at vertical.foot.inboard.correction"},
			[]string{"vertical.foot.inboard.position"},
			"vertical.foot.inboard.position 25.0 mil high",
			[]string{"feet_exchanged at vertical.foot.inboard.position"},
		},
		{
			// From zero at 3: R12 - s, R6 + s. T = (0 - 4) - (-28 + 4) = 20, with one of
			// them forgotten 24.
			"the sag left in at 12, or at 6, where only the total is written",
			slipsSweep, `
			vertical.rim.total 24.0 mil`,
			[]string{"sag_forgotten at rim.12", "sag_forgotten at rim.6"},
			nil,
			"rim.12 11.0 mil\nrim.6 -13.0 mil",
			[]string{"sag_forgotten at rim.12"},
		},
		{
			// 8 in * (0.5*1 + 0.25*0) = 4 at A, on top, where what is on the right does not count.
			"12 for 6, or the shim for the place where it is not needed, at a bolt on top",
			slipsFlange, `
			bolt.A.wedge -4.00 mil`,
			[]string{"top_and_bottom_exchanged at bolt.A.wedge", "position_for_correction at bolt.A.wedge"},
			[]string{"bolt.B.wedge", "bolt.C.wedge"}, // where those differ that did it at every bolt
			"bolt.B.wedge 2.00 mil\nbolt.C.wedge 4.00 mil\nbolt.D.wedge -2.00 mil",
			[]string{"top_and_bottom_exchanged at bolt.A.wedge, bolt.B.wedge, bolt.C.wedge, bolt.D.wedge"},
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			m := mark(t, row.problem(), onSheet(row.sheet))
			got := namedBy(m)
			for _, want := range row.named {
				if !slices.Contains(got, want) {
					t.Errorf("%q is not among %q", want, got)
				}
			}
			if len(row.named) == 1 && len(got) != 1 {
				t.Errorf("named is %q", got)
			}
			if row.ask != nil && !slices.Equal(m.Ask, row.ask) {
				t.Errorf("asked for is %q, want %q", m.Ask, row.ask)
			}
			if len(row.named) > 1 && row.ask == nil && m.Ask == nil {
				t.Error("nothing is asked for")
			}
			if row.more == "" {
				return
			}
			if got := namedBy(mark(t, row.problem(), onSheet(row.sheet, row.more))); !slices.Equal(got, row.left) {
				t.Errorf("with %q named is %q, want %q", strings.TrimSpace(row.more), got, row.left)
			}
		})
	}
}

// slipsSliding are 25.4 mm/s at 1500 rpm on 100 mm.
func slipsSliding() sheet.Problem {
	return sheet.Problem{SlidingLimit: &sheet.SlidingLimit{
		Sliding: 25.4 * units.MillimetrePerSecond, Speed: 1500 * units.RevolutionPerMinute,
		Coupling: align.Coupling{Diameter: 100 * units.Millimetre},
	}}
}

// slipsSweep is the rim that the stationary shaft carries in slipsReverse, from zero at 3.
func slipsSweep() sheet.Problem {
	return sheet.Problem{Sweep: &sheet.Sweep{
		Carrier: align.Stationary, Zero: units.Three,
		Rim: dial.Rim{Station: 4 * units.Inch, Sag: 4 * units.Mil, Readings: dial.Quarters(units.Mil, 0, -11, -28, -17)},
	}}
}

// slipsFlange are four bolts on a radius of 8 in, at 0.5 mil/in up and 0.25 mil/in to the
// right: 4, 2, -4, -2 mil at 12, 3, 6 and 9.
func slipsFlange() sheet.Problem {
	f := flange.Flange{Face: 10 * units.Inch, Push: flange.AwayFromStationary}
	for i, name := range []string{"A", "B", "C", "D"} {
		f.Bolts = append(f.Bolts, flange.Bolt{Name: name, Radius: 8 * units.Inch, At: units.Clock(90 * i)})
	}
	return sheet.Problem{FlangeShims: &sheet.FlangeShims{Flange: f, Off: align.Centreline{
		Vertical: align.Line{Slope: units.MilPerInch / 2}, Horizontal: align.Line{Slope: units.MilPerInch / 4},
	}}}
}
