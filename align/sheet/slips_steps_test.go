package sheet_test

import (
	"slices"
	"testing"

	"example.org/collinear/align/sheet"
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
	} {
		t.Run(row.name, func(t *testing.T) {
			if got := namedBy(mark(t, row.problem(), onSheet(row.sheet))); !slices.Equal(got, []string{row.want}) {
				t.Errorf("named is %q, want %q", got, row.want)
			}
		})
	}
}
