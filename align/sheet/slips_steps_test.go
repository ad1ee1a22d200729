package sheet_test

import (
	"slices"
	"testing"

	"example.org/collinear/align/sheet"
	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// slipsSlide is slipsFlange where the shaft lies 3 mil high and 1 mil to the right at the
// coupling, and with the face at 10 in 3 + 0.5*10 = 8 high and 1 + 0.25*10 = 3.5 to the right.
func slipsSlide() sheet.Problem {
	p := slipsFlange()
	p.FlangeShims.Off.Vertical.Offset, p.FlangeShims.Off.Horizontal.Offset = 3*units.Mil, units.Mil
	return p
}

// slipsOpening opens 8 mil at 4 o'clock on 8 in, 1 mil/in: 0.5 of that down, 0.866 to the right.
func slipsOpening() sheet.Problem {
	return sheet.Problem{SlopeFromGap: &sheet.SlopeFromGap{Opening: 8 * units.Mil, At: 4 * units.Hour, Diameter: 8 * units.Inch}}
}

// slipsSweepFrom is slipsSweep from another zero: 0 at 12 less -28 at 6 is 28, and 20 without
// the sag of 4 mil, which counts twice.
func slipsSweepFrom(zero units.Clock) func() sheet.Problem {
	return func() sheet.Problem {
		p := slipsSweep()
		p.Sweep.Zero = zero
		return p
	}
}

// slipsStack wants 10 + 4 + 3 = 17 mil under a foot.
func slipsStack() sheet.Problem {
	mils := func(thick units.Length, count int) []shims.Piece {
		return []shims.Piece{{Marked: thick * units.Mil, Count: count}}
	}
	return sheet.Problem{ShimStacks: &sheet.ShimStacks{
		Stock: mils(1, 9), Rule: shims.Rule{Error: units.Nanometre},
		Orders: []shims.Order{{Foot: "a", Correction: 4 * units.Mil, SoftFoot: 3 * units.Mil, Now: mils(10, 1)}},
	}}
}

// TestSlipsOfOneStep: slips at all lines alike of one step.
func TestSlipsOfOneStep(t *testing.T) {
	for _, row := range []struct {
		name    string
		problem func() sheet.Problem
		sheet   string
		want    string
	}{
		{"twice the radius of the bolts: 8, 4, -8 and -4 for 4, 2, -4 and -2", slipsFlange, `
			bolt.A.wedge 8.00 mil
			bolt.B.wedge 4.00 mil
			bolt.C.wedge -8.00 mil
			bolt.D.wedge -4.00 mil`,
			"radius_and_diameter at bolt.A.wedge, bolt.B.wedge, bolt.C.wedge, bolt.D.wedge"},
		{"the slide by the offset at the coupling", slipsSlide, `
			vertical.slide   lower 3.0 mil
			horizontal.slide push 1.0 mil towards 9`,
			"left_at_dial at vertical.slide, horizontal.slide"},
		{"over the radius: 1 and 1.732 for 0.5 and 0.866", slipsOpening, `
			vertical.slope   1.000 mil/in
			horizontal.slope -1.732 mil/in`,
			"radius_and_diameter at vertical.slope, horizontal.slope"},
		{"sag once from 12 to 6, by the zero at 12: -28 + 4", slipsSweepFrom(units.Twelve), `
			rim.6 -24.0 mil`,
			"sag_once at rim.6"},
		{"sag once from 6 to 12, by the zero at 6: 28 - 4", slipsSweepFrom(units.Six), `
			rim.12 24.0 mil`,
			"sag_once at rim.12"},
		{"twice the offset: 0.323 for 0.162", slipsSliding, `
			offset 0.323 mm`,
			"total_not_halved at offset"},
		{"a correction down for one up, the soft foot right: 10 - 4 + 3", slipsStack, `
			foot.a.wanted 9.00 mil`,
			"position_for_correction at foot.a.wanted"},
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := namedBy(mark(t, row.problem(), onSheet(row.sheet))); !slices.Equal(got, []string{row.want}) {
				t.Errorf("named is %q, want %q", got, row.want)
			}
		})
	}
}
