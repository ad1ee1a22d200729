package units_test

import (
	"math"
	"testing"

	"example.org/collinear/units"
)

// Constant arithmetic is exact in Go, so the identities are tested on variables.
var (
	nanometre, mil, inch = units.Nanometre, units.Mil, units.Inch
	foot                 = units.Foot
	tenth                = 0.1
	small                = 9.5e-6
)

// TestIdentities asserts what the doc of each type says holds to the last bit,
// and what it says does not.
func TestIdentities(t *testing.T) {
	hour, minute := units.Hour, units.Minute
	degree, milliradian := units.Degree, units.Milliradian
	milPerInch, mmPerMetre := units.MilPerInch, units.MillimetrePerMetre
	fahrenheit, kelvin := units.FahrenheitDegree, units.Kelvin
	inchPerSecond := units.InchPerSecond
	rows := []struct {
		name string
		got  bool
		want bool
	}{
		{"length: 1 mil is 25400 nm", mil == 25_400*nanometre, true},
		{"length: 0.01 mm is 10000 nm", units.MustParseLength("0.01 mm") == 10_000, true},
		{"length: 1/64 in is 396875 nm", inch/64 == 396_875, true},
		{"length: 2.5 mil is 63500 nm", 2.5*mil == 63_500, true},
		{"length: 1 + 2 mil is 3 mil", mil+2*mil == 3*mil, true},
		{"length: 1000 mil is an inch", 1000*mil == inch, true},
		{"length: 12 in is a foot", 12*inch == foot, true},
		{"length: a third of an inch taken three times", inch/3*3 == inch, true},
		{"length: a 41st of an inch taken 41 times", inch/41*41 == inch, false},
		{"length: 1.1 mil", 1.1*mil == 27_940, false},
		{"length: 1.1 mil, as a constant", 1.1*units.Mil == 27_940, false},
		{"length: 1.1 mil, rounded", (1.1 * mil).Round(nanometre) == 27_940, true},
		{"length: 11 tenths of a mil", 11*mil/10 == 27_940, true},
		{"length: 1.1 mil as text", units.MustParseLength("1.1 mil") == 27_940, true},
		{"length: nanometres up to 2^53", units.Length(1<<53)-1+nanometre == 1<<53, true},
		{"length: nanometres beyond 2^53", units.Length(1<<53)+nanometre == 1<<53, true}, // one is lost

		{"slope: 1 mm/m is 1 mil/in", mmPerMetre == milPerInch, true},
		{"slope: 1 mm/m is read from 1 mil/in", units.MustParseSlope("1 mil/in") == mmPerMetre, true},
		{"slope: 10 mm/m is 1 mm/100mm", 10*mmPerMetre == units.MillimetrePer100Millimetres, true},
		{"slope: a mil over an inch", mil.Per(inch) == milPerInch, true},
		{"slope: ten of a thousandth added up", sum(10, milPerInch) == units.MillimetrePer100Millimetres, false},
		{"slope: over a run and back", units.Slope(tenth).Over(3*nanometre).Per(3*nanometre) == units.Slope(tenth), false},

		{"angle: 1000 mrad is a radian", 1000*milliradian == units.Radian, true},
		{"angle: 180 degrees is pi, to the nearest", 180*degree == math.Pi, true},
		{"angle: degrees added up to 18", sum(18, degree) == 18*degree, false},
		{"angle: an angle and its slope", float64(milliradian.Slope()) == float64(milliradian), false},

		{"clock: 60 minutes are an hour", 60*minute == hour, true},
		{"clock: 3 hours are 3 o'clock", 3*hour == units.Three, true},
		{"clock: 12 hours are a full turn", 12*hour == 360, true},
		{"clock: the place is the same, the value is not", 12*hour == units.Twelve, false},
		{"clock: sine of an hour", sine(hour) == 0.5, false},

		{"temperature: 68 F is 20 C", units.Fahrenheit(68) == units.Celsius(20), true},
		{"temperature: 20 C is the zero value", units.Celsius(20) == units.Temperature{}, true},
		{"temperature: 68 °F is read as the zero value", units.MustParseTemperature("68 °F") == units.Temperature{}, true},
		{"temperature: 293.15 K is read as the zero value", units.MustParseTemperature("293.15 K") == units.Temperature{}, true},
		{"temperature: 32 F is 0 C", units.Fahrenheit(32) == units.Celsius(0), true},
		{"temperature: 212 F is 100 C", units.Fahrenheit(212) == units.Celsius(100), true},
		{"temperature: to C and back to F", units.Fahrenheit(0.3).Fahrenheit() == 0.3, false},
		{"temperature: constructed and read", units.Fahrenheit(19.4) == units.MustParseTemperature("19.4 °F"), false},

		{"difference: 9 F are 5 K", 9*fahrenheit == 5*kelvin, true},
		{"difference: 18 °F is read as 10 K", units.MustParseTemperatureDifference("18 °F") == 10*kelvin, true},
		{"difference: put on and taken off", units.Celsius(25).Plus(7).Minus(units.Celsius(25)) == 7, true},
		{"difference: degrees F added up to 9", sum(9, fahrenheit) == 5*kelvin, false},

		{"rotation: a hertz is 60 rpm", units.Hertz == 60*units.RevolutionPerMinute, true},
		{"rotation: to hertz and back", units.RotationalSpeed(units.RotationalSpeed(1000).In(units.InHertz))*units.Hertz == 1000, false},

		{"speed: a metre per second", units.MetrePerSecond == 1000*units.MillimetrePerSecond, true},
		{"speed: tenths of an inch per second added up", sum(10, units.LinearSpeed(tenth)*inchPerSecond) == inchPerSecond, false},

		{"expansion: 1.8 per kelvin", units.PerFahrenheitDegree == 1.8*units.PerKelvin, true},
		{"expansion: steel, as read in either system", units.MustParseExpansion("6.3e-6 1/°F") == units.MustParseExpansion("11.34 um/m/K"), true},
		{"expansion: as multiplied and as read", units.Expansion(small)*units.PerFahrenheitDegree == units.MustParseExpansion("9.5e-6 1/°F"), false},
	}
	for _, row := range rows {
		if row.got != row.want {
			t.Errorf("%s: %v, want %v", row.name, row.got, row.want)
		}
	}
}

// sum adds q up so many times.
func sum[Q ~float64](times int, q Q) (total Q) {
	for range times {
		total += q
	}
	return total
}

func sine(c units.Clock) float64 {
	s, _ := c.SinCos()
	return s
}
