package tolerance_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// The words of every quantity and plane, in every unit with the digits that show
// a hundredth of a millimetre (per metre).
func TestItemText(t *testing.T) {
	length := tolerance.Item{Of: tolerance.Offset, Plane: tolerance.Both, Found: tolerance.Amount{Length: 40 * um}, Limit: tolerance.Amount{Length: 100 * um}}
	slope := tolerance.Item{Of: tolerance.Slope, Plane: tolerance.Vertical, Found: tolerance.Amount{Slope: 0.4 * mmm}, Limit: tolerance.Amount{Slope: 0.5 * mmm}}
	stationary, movable := slope, slope
	stationary.Of, stationary.Plane = tolerance.FlexStationary, tolerance.Horizontal
	movable.Of, movable.Plane = tolerance.FlexMovable, tolerance.Both
	for _, row := range []struct {
		item  tolerance.Item
		style tolerance.Style
		want  string
	}{
		{length, tolerance.Style{}, "offset 0.04 mm of 0.10 mm"},
		{length, tolerance.Style{Length: units.InMicrometres}, "offset 40 um of 100 um"},
		{length, tolerance.Style{Length: units.InNanometres}, "offset 40000 nm of 100000 nm"},
		{length, tolerance.Style{Length: units.InCentimetres}, "offset 0.004 cm of 0.010 cm"},
		{length, tolerance.Style{Length: units.InMetres}, "offset 0.00004 m of 0.00010 m"},
		{length, tolerance.Style{Length: units.InMils}, "offset 1.6 mil of 3.9 mil"},
		{length, tolerance.Style{Length: units.InInches}, "offset 0.0016 in of 0.0039 in"},
		{length, tolerance.Style{Length: units.InFeet}, "offset 0.00013 ft of 0.00033 ft"},
		{length, tolerance.Style{LengthDigits: 3, SlopeDigits: 1}, "offset 0.040 mm of 0.100 mm"},
		{length, tolerance.Style{Length: units.InMils, LengthDigits: -1}, "offset 2 mil of 4 mil"},
		{slope, tolerance.Style{}, "vertical slope 0.40 mm/m of 0.50 mm/m"},
		{slope, tolerance.Style{Slope: units.InMilsPerInch, LengthDigits: 9}, "vertical slope 0.40 mil/in of 0.50 mil/in"},
		{slope, tolerance.Style{Slope: units.InMillimetresPer100Millimetres}, "vertical slope 0.040 mm/100mm of 0.050 mm/100mm"},
		{slope, tolerance.Style{Slope: units.InMicrometresPerMetre}, "vertical slope 400 um/m of 500 um/m"},
		{slope, tolerance.Style{Slope: units.InMilsPerFoot}, "vertical slope 4.8 mil/ft of 6.0 mil/ft"},
		{slope, tolerance.Style{Slope: units.InInchesPerFoot}, "vertical slope 0.0048 in/ft of 0.0060 in/ft"},
		{slope, tolerance.Style{Slope: units.InInchesPerInch}, "vertical slope 0.00040 in/in of 0.00050 in/in"},
		{slope, tolerance.Style{SlopeDigits: -2}, "vertical slope 0 mm/m of 1 mm/m"},
		{stationary, tolerance.Style{}, "horizontal tilt at the stationary flex plane 0.40 mm/m of 0.50 mm/m"},
		{movable, tolerance.Style{}, "tilt at the movable flex plane 0.40 mm/m of 0.50 mm/m"},
	} {
		if got := row.item.Text(row.style); got != row.want {
			t.Errorf("got %q, want %q", got, row.want)
		}
	}
}

// What is outside never looks as if it were on its limit, and what is on it never
// as if it were outside, in any unit.
func TestTextAgreesWithTheOutcome(t *testing.T) {
	styles := []tolerance.Style{
		{}, {Length: units.InMils, Slope: units.InMilsPerInch}, {Length: units.InInches, Slope: units.InInchesPerFoot},
		{Length: units.InMetres, Slope: units.InInchesPerInch}, {Length: units.InMicrometres, Slope: units.InMilsPerFoot, LengthDigits: -1, SlopeDigits: -1},
	}
	halves := func(found, limit tolerance.Amount, of tolerance.Quantity) (same int) {
		for _, s := range styles {
			item := tolerance.Item{Of: of, Plane: tolerance.Both, Found: found, Limit: limit}
			on := tolerance.Item{Of: of, Plane: tolerance.Both, Found: limit, Limit: limit}
			text, limitText := item.Text(s), on.Text(s)
			if (text == limitText) != item.Within() && !item.Within() {
				t.Errorf("%q is outside", text)
			}
			if text == limitText {
				same++
			}
		}
		return same
	}
	for n := 1; n < 400; n++ {
		limit := tolerance.Amount{Slope: units.Slope(float64(5*n) * 1e-6)} // half a hundredth: ties when shown
		hair := tolerance.Amount{Slope: limit.Slope * (1 + 4*eps)}
		if same := halves(hair, limit, tolerance.FlexMovable); same != len(styles) {
			t.Errorf("%v against %v looks larger in %d styles", hair.Slope, limit.Slope, len(styles)-same)
		}
		if same := halves(tolerance.Amount{Slope: limit.Slope + 1e-9}, limit, tolerance.FlexMovable); same != 0 {
			t.Errorf("%v and 1 nm/m look the same in %d styles", limit.Slope, same)
		}
		long := tolerance.Amount{Length: units.Length(5000 * n)}
		if same := halves(tolerance.Amount{Length: long.Length + 1}, long, tolerance.Offset); same != 0 {
			t.Errorf("%v and 1 nm look the same in %d styles", long.Length, same)
		}
	}
}

// Verdicts are put into words by their governing item.
func TestVerdictText(t *testing.T) {
	v := judged(t, tolerance.Limits{Offset: 250 * um, Slope: 0.5 * mmm, PerPlane: true}, align.Exact(caseA), align.Coupling{})
	if got := v.String(); got != "outside, vertical slope 0.70 mm/m of 0.50 mm/m" {
		t.Errorf("%q", got)
	}
}
