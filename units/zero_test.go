package units_test

import (
	"fmt"
	"reflect"
	"testing"

	"example.org/collinear/units"
)

// TestZeroValues states the zero value of every exported type.
func TestZeroValues(t *testing.T) {
	rows := []struct {
		zero fmt.Stringer
		want string
	}{
		{units.Length(0), "0 mm"},
		{units.Slope(0), "0 mm/m"},
		{units.Angle(0), "0 rad"},
		{units.Clock(0), "12:00"},
		{units.Temperature{}, "20 °C"},
		{units.TemperatureDifference(0), "0 K"},
		{units.RotationalSpeed(0), "0 rpm"},
		{units.LinearSpeed(0), "0 mm/s"},
		{units.Expansion(0), "0 um/m/K"},
		{units.LengthUnit(0), "mm"},
		{units.SlopeUnit(0), "mm/m"},
		{units.AngleUnit(0), "rad"},
		{units.TemperatureUnit(0), "°C"},
		{units.TemperatureDifferenceUnit(0), "K"},
		{units.RotationalSpeedUnit(0), "rpm"},
		{units.LinearSpeedUnit(0), "mm/s"},
		{units.ExpansionUnit(0), "um/m/K"},
	}
	for _, row := range rows {
		if got := row.zero.String(); got != row.want || !reflect.ValueOf(row.zero).IsZero() {
			t.Errorf("%T: got %q, want %q", row.zero, got, row.want)
		}
	}
	if fault := (units.Fault{}); fault.Unwrap() != units.Code("") || units.Code("").Error() != "" {
		t.Error("a zero fault has a code")
	}
}

// TestTemperaturesAreNotAdded holds Temperature to a kind of type that Go has no
// operator + for: the sum of two points on the scale means nothing.
func TestTemperaturesAreNotAdded(t *testing.T) {
	if kind := reflect.TypeFor[units.Temperature]().Kind(); kind != reflect.Struct {
		t.Errorf("a temperature is a %v: two of them could be added", kind)
	}
}

// TestTemperatureIsComparable tests that equal temperatures are one map key,
// whichever way they came about.
func TestTemperatureIsComparable(t *testing.T) {
	rooms := map[units.Temperature]int{}
	for _, room := range []units.Temperature{
		{}, units.Celsius(20), units.Fahrenheit(68), units.Celsius(15).Plus(5), units.MustParseTemperature("293.15 K"),
	} {
		rooms[room]++
	}
	if rooms[units.Temperature{}] != 5 {
		t.Errorf("got %v, want one key", rooms)
	}
	if units.Celsius(0) == (units.Temperature{}) || units.Celsius(0).Celsius() != 0 {
		t.Error("0 degrees C is taken for the zero value")
	}
	if got := units.Celsius(65).Minus(units.Celsius(20)); got != 45*units.Kelvin {
		t.Errorf("from 20 to 65 degrees C: got %v, want 45 K", got)
	}
}
