package units_test

import (
	"math"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/collinear/units"
)

// TestWire pins how the wire form looks; that it loses nothing is tested
// elsewhere.
func TestWire(t *testing.T) {
	rows := []struct{ name, got, want string }{
		{"fractions of a millimetre", units.Length(363_764).String(), "0.363764 mm"},
		{"whole", (40 * units.Millimetre).String(), "40 mm"},
		{"below zero", (-units.Mil).String(), "-0.0254 mm"},
		{"zeros in front of the point", (12_000 * units.Metre).String(), "12000000 mm"},
		{"point at the end of the digits", units.Length(123_000_000).String(), "123 mm"},
		{"point one digit further on", units.Length(123_400_000).String(), "123.4 mm"},
		{"less than a nanometre", units.Length(0.25).String(), "0.00000025 mm"},
		{"the least without an exponent", units.Length(0.1).String(), "0.0000001 mm"},
		{"below it", units.Length(0.099).String(), "9.9e-8 mm"},
		{"the greatest without an exponent", units.LinearSpeed(9e20).String(), "900000000000000000000 mm/s"},
		{"above it", units.LinearSpeed(1.5e21).String(), "1.5e21 mm/s"},
		{"below zero with an exponent", units.LinearSpeed(-1.5e21).String(), "-1.5e21 mm/s"},
		{"the least of all", units.Length(5e-324).String(), "5e-330 mm"},
		{"slope", units.Slope(0.0004).String(), "0.4 mm/m"},
		{"expansion", units.Expansion(1.13e-05).String(), "11.3 um/m/K"},
		{"angle", units.Angle(0.0005).String(), "0.0005 rad"},
		{"clock", units.Clock(315).String(), "10:30"},
		{"clock in the first hour", units.Clock(15).String(), "12:30"},
		{"clock, last minute", units.Clock(359.5).String(), "11:59"},
		{"clock, full turn", units.Clock(360).String(), "360 deg"},
		{"clock between minutes", units.Clock(37.25).String(), "37.25 deg"},
		{"clock below zero", units.Clock(-30).String(), "-30 deg"},
		{"clock, not a number", units.Clock(math.NaN()).String(), "NaN deg"},
		{"endless", units.Temperature{}.Plus(units.TemperatureDifference(math.Inf(1))).String(), "+Inf °C"},
	}
	for _, row := range rows {
		if row.got != row.want {
			t.Errorf("%s: got %q, want %q", row.name, row.got, row.want)
		}
	}
}

// TestDegreesNearTies reads angles in degrees that stand as near to the middle
// between two float64s as a text can, on either side of it: they come out right
// only with pi to more digits than a text has.
func TestDegreesNearTies(t *testing.T) {
	k := kindNamed(t, "Angle")
	degree := refUnits["Angle"][3]
	factor := new(big.Rat).SetFrac(count(degree.num), count(degree.den))
	t.Run("random", rapid.MakeCheck(func(t *rapid.T) {
		x := rapid.Float64Range(0.02, 0.1).Draw(t, "radians") // 1.1 to 5.7 degrees
		next := math.Nextafter(x, 1)
		middle := new(big.Rat).Add(new(big.Rat).SetFloat64(x), new(big.Rat).SetFloat64(next))
		middle.Quo(middle, big.NewRat(2, 1)).Quo(middle, factor)
		const digits = 58 // with the figure in front, the point and the unit 63 bytes
		last := new(big.Rat).SetFrac(big.NewInt(1), count("1"+strings.Repeat("0", digits)))
		for _, side := range []int64{-1, 1} {
			text := new(big.Rat).Add(middle, new(big.Rat).Mul(last, big.NewRat(side, 1))).FloatString(digits) + " °"
			got, err := k.parse(text)
			want := x
			if side > 0 {
				want = next
			}
			if err != nil || got != want {
				t.Errorf("%s: got %v, %v, want %v", text, got, err, want)
			}
		}
	}))
}
