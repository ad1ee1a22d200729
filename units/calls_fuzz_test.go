package units_test

import (
	"errors"
	"testing"

	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/units"
)

// calls are the functions that reckon with quantities, or put them into words.
var calls = fuzzed.Calls{
	{Name: "Angle.In", Of: units.Angle.In, With: []any{units.Degree, units.InDegrees}, Open: "NaN in a unit that is none"},
	{Name: "Angle.Slope", Of: units.Angle.Slope, With: []any{units.Degree}},
	{Name: "Angle.Text", Of: units.Angle.Text, With: []any{units.Degree, units.InDegrees, 2}},
	{Name: "Celsius", Of: units.Celsius, With: []any{40.0}},
	{Name: "Clock.Normal", Of: units.Clock.Normal, With: []any{units.Nine}},
	{Name: "Clock.Opposite", Of: units.Clock.Opposite, With: []any{units.Nine}},
	{Name: "Clock.Round", Of: units.Clock.Round, With: []any{units.Nine, units.Clock(15)}},
	{Name: "Clock.SinCos", Of: units.Clock.SinCos, With: []any{units.Nine}},
	{Name: "Clock.String", Of: units.Clock.String, With: []any{units.Nine}},
	{Name: "Expansion.In", Of: units.Expansion.In, With: []any{11e-6 * units.PerKelvin, units.InMicrometresPerMetreKelvin}, Open: "NaN in a unit that is none"},
	{Name: "Expansion.Text", Of: units.Expansion.Text, With: []any{11e-6 * units.PerKelvin, units.InMicrometresPerMetreKelvin, 2}},
	{Name: "Fahrenheit", Of: units.Fahrenheit, With: []any{68.0}},
	{Name: "Fault.Error", Of: told, With: []any{units.Fault{Code: units.Missing, Path: "/a", Want: "it"}}},
	{Name: "Faults", Of: faultsOf, With: []any{units.Fault{Code: units.Missing, Path: "/a", Want: "it"}, "other"}},
	{Name: "Length.Above", Of: units.Length.Above, With: []any{units.Mil, 20 * units.Micrometre}},
	{Name: "Length.In", Of: units.Length.In, With: []any{units.Mil, units.InInches}, Open: "NaN in a unit that is none"},
	{Name: "Length.Per", Of: units.Length.Per, With: []any{units.Mil, units.Inch}, Open: "over no length"},
	{Name: "Length.Round", Of: units.Length.Round, With: []any{units.Mil, 10 * units.Micrometre}},
	{Name: "Length.Text", Of: units.Length.Text, With: []any{units.Mil, units.InInches, 4}},
	{Name: "LinearSpeed.In", Of: units.LinearSpeed.In, With: []any{12.7 * units.MillimetrePerSecond, units.InMillimetresPerSecond}, Open: "NaN in a unit that is none"},
	{Name: "LinearSpeed.Text", Of: units.LinearSpeed.Text, With: []any{12.7 * units.MillimetrePerSecond, units.InMillimetresPerSecond, 1}},
	{Name: "RotationalSpeed.In", Of: units.RotationalSpeed.In, With: []any{1480 * units.RevolutionPerMinute, units.InRevolutionsPerMinute}, Open: "NaN in a unit that is none"},
	{Name: "RotationalSpeed.Text", Of: units.RotationalSpeed.Text, With: []any{1480 * units.RevolutionPerMinute, units.InRevolutionsPerMinute, 0}},
	{Name: "Slope.Angle", Of: units.Slope.Angle, With: []any{units.MillimetrePerMetre}},
	{Name: "Slope.In", Of: units.Slope.In, With: []any{units.MillimetrePerMetre, units.InMilsPerInch}, Open: "NaN in a unit that is none"},
	{Name: "Slope.Over", Of: units.Slope.Over, With: []any{units.MillimetrePerMetre, units.Inch}},
	{Name: "Slope.Text", Of: units.Slope.Text, With: []any{units.MillimetrePerMetre, units.InMilsPerInch, 3}},
	{Name: "Temperature.Celsius", Of: units.Temperature.Celsius, With: []any{units.Celsius(40)}},
	{Name: "Temperature.Fahrenheit", Of: units.Temperature.Fahrenheit, With: []any{units.Celsius(40)}},
	{Name: "Temperature.In", Of: units.Temperature.In, With: []any{units.Celsius(40), units.InCelsius}, Open: "NaN in a unit that is none"},
	{Name: "Temperature.Minus", Of: units.Temperature.Minus, With: []any{units.Celsius(40), units.Celsius(15)}},
	{Name: "Temperature.Plus", Of: units.Temperature.Plus, With: []any{units.Celsius(40), 3 * units.Kelvin}},
	{Name: "Temperature.Text", Of: units.Temperature.Text, With: []any{units.Celsius(40), units.InCelsius, 1}},
	{Name: "TemperatureDifference.In", Of: units.TemperatureDifference.In, With: []any{3 * units.Kelvin, units.InKelvins}, Open: "NaN in a unit that is none"},
	{Name: "TemperatureDifference.Text", Of: units.TemperatureDifference.Text, With: []any{3 * units.Kelvin, units.InKelvins, 1}},
}

func told(f units.Fault) string { return f.Error() }

// faultsOf hides a fault among other errors.
func faultsOf(f units.Fault, other string) int {
	return len(units.Faults(errors.Join(errors.New(other), &f, nil)))
}

func TestCallsAreSound(t *testing.T) {
	if err := calls.Sound(testing.Short()); err != nil {
		t.Error(err)
	}
}

// FuzzCalls: whatever is asked of a function, it answers with finite numbers, the same
// again, or refuses with faults; it leaves its arguments alone and never panics.
func FuzzCalls(f *testing.F) {
	calls.Fuzz(f)
}

// wire holds every type that is written to JSON and read from it.
var wire = fuzzed.Wire{Values: []any{
	units.Degree, units.Nine, 11e-6 * units.PerKelvin, units.Mil, 12.7 * units.MillimetrePerSecond, 1480 * units.RevolutionPerMinute,
	units.MillimetrePerMetre, units.Celsius(40), 3 * units.Kelvin, units.Fault{Code: units.Missing, Path: "/a", Value: "b", Want: "c"},
	units.AngleUnit(1), units.ExpansionUnit(1), units.LengthUnit(2), units.LinearSpeedUnit(1), units.RotationalSpeedUnit(1),
	units.SlopeUnit(1), units.TemperatureUnit(1), units.TemperatureDifferenceUnit(1),
}}

func TestWireIsSound(t *testing.T) {
	if err := wire.Sound(); err != nil {
		t.Error(err)
	}
}

// FuzzWire: whatever text a value is read from, it is refused with faults or as JSON,
// or what is read comes back when it is written.
func FuzzWire(f *testing.F) {
	wire.Fuzz(f)
}

// FuzzParseUnit: whatever the text, a unit is read that has this text or another
// spelling of it, or the text is refused with a fault.
func FuzzParseUnit(f *testing.F) {
	for _, text := range []string{"", "mm", "um", "µm", "in", "mil", "thou", "deg", "mrad", "°", "K", "°F", "1/K", "um/(m K)", "rpm", "Hz", "mm/s", "mm/m", "MM", " mm", "\xff"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		again(t, text, units.ParseAngleUnit)
		again(t, text, units.ParseExpansionUnit)
		again(t, text, units.ParseLengthUnit)
		again(t, text, units.ParseLinearSpeedUnit)
		again(t, text, units.ParseRotationalSpeedUnit)
		again(t, text, units.ParseSlopeUnit)
		again(t, text, units.ParseTemperatureUnit)
		again(t, text, units.ParseTemperatureDifferenceUnit)
	})
}

// again asks that what a unit prints is read as that unit.
func again[U interface {
	comparable
	String() string
}](t *testing.T, text string, parse func(string) (U, error)) {
	t.Helper()
	u, err := parse(text)
	if err != nil {
		if err := fuzzed.Refusal(err); err != nil || u != *new(U) {
			t.Errorf("%T of %q: %v, %v", u, text, u, err)
		}
		return
	}
	if back, err := parse(u.String()); err != nil || back != u {
		t.Errorf("%q is %v, and that is read as %v, %v", text, u, back, err)
	}
}
