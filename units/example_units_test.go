package units_test

import (
	"fmt"

	"example.org/collinear/units"
)

// An inclination of 0.5 mm/m as an angle is not quite 0.5 mrad.
func ExampleSlope() {
	s := units.MustParseSlope("0.5 mm/m")
	fmt.Println(s.Text(units.InMilsPerInch, 2))
	fmt.Println(s.Angle().Text(units.InMilliradians, 9))
	// Output:
	// 0.50 mil/in
	// 0.499999958 mrad
}

func ExampleAngle() {
	a := 2 * units.Degree
	fmt.Println(a.Text(units.InMilliradians, 2))
	fmt.Println(a.Slope().Text(units.InMillimetresPerMetre, 2))
	// Output:
	// 34.91 mrad
	// 34.92 mm/m
}

func ExampleTemperature() {
	cold, hot := units.Celsius(15), units.MustParseTemperature("150 °F")
	rise := hot.Minus(cold)
	fmt.Println(rise.Text(units.InKelvins, 1))
	fmt.Println(cold.Plus(rise/2).Text(units.InCelsius, 1))
	// Output:
	// 50.6 K
	// 40.3 °C
}

func ExampleTemperatureDifference() {
	rise := 45 * units.Kelvin
	fmt.Println(rise.Text(units.InFahrenheitDegrees, 0))
	// Output: 81 °F
}

func ExampleRotationalSpeed() {
	fmt.Println(units.RotationalSpeed(1485).Text(units.InHertz, 2))
	// Output: 24.75 Hz
}

func ExampleLinearSpeed() {
	fmt.Println((25 * units.MillimetrePerSecond).Text(units.InInchesPerSecond, 2))
	// Output: 0.98 in/s
}

// A coefficient is stated as its source prints it and used per kelvin.
func ExampleExpansion() {
	e := units.MustParseExpansion("6.3e-6 1/°F")
	fmt.Println(e)
	fmt.Println(e.Text(units.InMilsPerInchFahrenheitDegree, 4))
	// Output:
	// 11.34 um/m/K
	// 0.0063 mil/in/°F
}

func ExampleCelsius() {
	fmt.Println(units.Celsius(65).Fahrenheit())
	fmt.Println(units.Celsius(20) == units.Temperature{})
	// Output:
	// 149
	// true
}

func ExampleFahrenheit() {
	fmt.Println(units.Fahrenheit(149))
	// Output: 65 °C
}

func ExampleParseLengthUnit() {
	u, err := units.ParseLengthUnit("thou")
	fmt.Println(u, u == units.InMils, err)

	_, err = units.ParseLengthUnit("furlong")
	fmt.Println(err)
	// Output:
	// mil true <nil>
	// want units.ParseLengthUnit: at byte 0: one of mm, um, nm, cm, m, mil, in, ft, got "furlong" (unknown)
}

func ExampleParseSlopeUnit() {
	u, err := units.ParseSlopeUnit("mm/100 mm")
	fmt.Println(units.Slope(0.0005).Text(u, 2), err)
	// Output: 0.05 mm/100mm <nil>
}

func ExampleParseAngleUnit() {
	u, err := units.ParseAngleUnit("°")
	fmt.Println(units.Radian.Text(u, 2), err)
	// Output: 57.30 deg <nil>
}

func ExampleParseTemperatureUnit() {
	u, err := units.ParseTemperatureUnit("degF")
	fmt.Println(units.Celsius(25).Text(u, 0), err)
	// Output: 77 °F <nil>
}

func ExampleParseTemperatureDifferenceUnit() {
	u, err := units.ParseTemperatureDifferenceUnit("degF")
	fmt.Println((25*units.Kelvin).Text(u, 0), err)
	// Output: 45 °F <nil>
}

func ExampleParseRotationalSpeedUnit() {
	u, err := units.ParseRotationalSpeedUnit("Hz")
	fmt.Println(units.RotationalSpeed(3000).Text(u, 0), err)
	// Output: 50 Hz <nil>
}

func ExampleParseLinearSpeedUnit() {
	u, err := units.ParseLinearSpeedUnit("in/s")
	fmt.Println((127*units.MillimetrePerSecond).Text(u, 0), err)
	// Output: 5 in/s <nil>
}

func ExampleParseExpansionUnit() {
	u, err := units.ParseExpansionUnit("um/m/degF")
	fmt.Println(units.Expansion(18e-6).Text(u, 1), err)
	// Output: 10.0 um/m/°F <nil>
}
