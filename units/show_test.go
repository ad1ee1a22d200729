package units_test

import (
	"fmt"
	"math"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/collinear/units"
)

// TestUnits shows one value in every unit, and pins which constant is which
// unit. The values are worked out by hand from the definitions of the units.
func TestUnits(t *testing.T) {
	length := units.Foot
	slope := units.Slope(0.25)
	angle := units.Angle(math.Pi / 4)
	temperature := units.Celsius(25)
	difference := 10 * units.Kelvin
	rotation := units.RotationalSpeed(1800)
	speed := units.InchPerSecond
	expansion := units.Expansion(18e-6)
	rows := []struct {
		text string
		in   float64
		want string
		num  float64
	}{
		{length.Text(units.InMillimetres, 1), length.In(units.InMillimetres), "304.8 mm", 304.8},
		{length.Text(units.InMicrometres, 0), length.In(units.InMicrometres), "304800 um", 304800},
		{length.Text(units.InNanometres, 0), length.In(units.InNanometres), "304800000 nm", 304.8e6},
		{length.Text(units.InCentimetres, 2), length.In(units.InCentimetres), "30.48 cm", 30.48},
		{length.Text(units.InMetres, 4), length.In(units.InMetres), "0.3048 m", 0.3048},
		{length.Text(units.InMils, 0), length.In(units.InMils), "12000 mil", 12000},
		{length.Text(units.InInches, 3), length.In(units.InInches), "12.000 in", 12},
		{length.Text(units.InFeet, 0), length.In(units.InFeet), "1 ft", 1},

		{slope.Text(units.InMillimetresPerMetre, 0), slope.In(units.InMillimetresPerMetre), "250 mm/m", 250},
		{slope.Text(units.InMilsPerInch, 1), slope.In(units.InMilsPerInch), "250.0 mil/in", 250},
		{slope.Text(units.InMillimetresPer100Millimetres, 0), slope.In(units.InMillimetresPer100Millimetres), "25 mm/100mm", 25},
		{slope.Text(units.InMicrometresPerMetre, 0), slope.In(units.InMicrometresPerMetre), "250000 um/m", 250000},
		{slope.Text(units.InMilsPerFoot, 0), slope.In(units.InMilsPerFoot), "3000 mil/ft", 3000},
		{slope.Text(units.InInchesPerFoot, 0), slope.In(units.InInchesPerFoot), "3 in/ft", 3},
		{slope.Text(units.InInchesPerInch, 2), slope.In(units.InInchesPerInch), "0.25 in/in", 0.25},
		{slope.Text(units.InMillimetresPerMillimetre, 2), slope.In(units.InMillimetresPerMillimetre), "0.25 mm/mm", 0.25},

		{angle.Text(units.InRadians, 4), angle.In(units.InRadians), "0.7854 rad", math.Pi / 4},
		{angle.Text(units.InMilliradians, 1), angle.In(units.InMilliradians), "785.4 mrad", 250 * math.Pi},
		{angle.Text(units.InMicroradians, 0), angle.In(units.InMicroradians), "785398 urad", 250e3 * math.Pi},
		{angle.Text(units.InDegrees, 1), angle.In(units.InDegrees), "45.0 deg", 45},

		{temperature.Text(units.InCelsius, 1), temperature.In(units.InCelsius), "25.0 °C", 25},
		{temperature.Text(units.InFahrenheit, 0), temperature.In(units.InFahrenheit), "77 °F", 77},
		{temperature.Text(units.InKelvin, 2), temperature.In(units.InKelvin), "298.15 K", 298.15},

		{difference.Text(units.InKelvins, 0), difference.In(units.InKelvins), "10 K", 10},
		{difference.Text(units.InCelsiusDegrees, 0), difference.In(units.InCelsiusDegrees), "10 °C", 10},
		{difference.Text(units.InFahrenheitDegrees, 0), difference.In(units.InFahrenheitDegrees), "18 °F", 18},

		{rotation.Text(units.InRevolutionsPerMinute, 0), rotation.In(units.InRevolutionsPerMinute), "1800 rpm", 1800},
		{rotation.Text(units.InHertz, 1), rotation.In(units.InHertz), "30.0 Hz", 30},

		{speed.Text(units.InMillimetresPerSecond, 1), speed.In(units.InMillimetresPerSecond), "25.4 mm/s", 25.4},
		{speed.Text(units.InMetresPerSecond, 4), speed.In(units.InMetresPerSecond), "0.0254 m/s", 0.0254},
		{speed.Text(units.InInchesPerSecond, 0), speed.In(units.InInchesPerSecond), "1 in/s", 1},

		{expansion.Text(units.InMicrometresPerMetreKelvin, 1), expansion.In(units.InMicrometresPerMetreKelvin), "18.0 um/m/K", 18},
		{expansion.Text(units.InMicrometresPerMetreFahrenheitDegree, 1), expansion.In(units.InMicrometresPerMetreFahrenheitDegree), "10.0 um/m/°F", 10},
		{expansion.Text(units.InMilsPerInchFahrenheitDegree, 3), expansion.In(units.InMilsPerInchFahrenheitDegree), "0.010 mil/in/°F", 0.01},
		{expansion.Text(units.InPerKelvin, 6), expansion.In(units.InPerKelvin), "0.000018 1/K", 18e-6},
		{expansion.Text(units.InPerFahrenheitDegree, 6), expansion.In(units.InPerFahrenheitDegree), "0.000010 1/°F", 10e-6},
	}
	for _, row := range rows {
		if row.text != row.want {
			t.Errorf("got %q, want %q", row.text, row.want)
		}
		if math.Abs(row.in-row.num) > 2*0x1p-53*row.num { // two roundings
			t.Errorf("%s: got %v, want %v", row.want, row.in, row.num)
		}
	}
}

func TestTextRounds(t *testing.T) {
	rows := []struct {
		name   string
		l      units.Length
		unit   units.LengthUnit
		digits int
		want   string
	}{
		{"down", 27 * units.Mil / 11, units.InMils, 1, "2.5 mil"},
		{"half goes away from zero", 2.25 * units.Mil, units.InMils, 1, "2.3 mil"},
		{"half below zero as well", -2.25 * units.Mil, units.InMils, 1, "-2.3 mil"},
		{"half of one", 0.5 * units.Mil, units.InMils, 0, "1 mil"},
		{"a nanometre below half", 0.5*units.Mil - 1, units.InMils, 0, "0 mil"},
		{"zero has no sign", -1, units.InMillimetres, 3, "0.000 mm"},
		{"zero has no sign without digits", -1, units.InMillimetres, 0, "0 mm"},
		{"negative zero", units.Length(math.Copysign(0, -1)), units.InMils, 1, "0.0 mil"},
		{"ten keeps its zeros", -10 * units.Millimetre, units.InMillimetres, 0, "-10 mm"},
		{"fewer digits than none", 1.4 * units.Millimetre, units.InMillimetres, -5, "1 mm"},
		{"more digits than there are", units.Millimetre, units.InMillimetres, 1000, "1." + strings.Repeat("0", units.MaxDigits) + " mm"},
		{"a third in exact digits", 1, units.InFeet, 12, "0.000000003281 ft"},
		{"huge", 1e300, units.InMetres, 0, new(big.Int).Div(bigOf(1e300), big.NewInt(1e9)).String() + " m"},
		{"unknown unit", units.Millimetre, 99, 1, "1.0 mm"},
		{"not a number", units.Length(math.NaN()), units.InMils, 1, "NaN mil"},
		{"endless", units.Length(math.Inf(-1)), units.InInches, 1, "-Inf in"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			if got := row.l.Text(row.unit, row.digits); got != row.want {
				t.Errorf("got %q, want %q", got, row.want)
			}
		})
	}
	// 0.35 mm/m is held as a float64 a hair below, and that is what is rounded.
	if got := units.MustParseSlope("0.35 mm/m").Text(units.InMillimetresPerMetre, 1); got != "0.3 mm/m" {
		t.Errorf("0.35 mm/m is shown as %q", got)
	}
}

// bigOf returns a whole float64 as an integer.
func bigOf(x float64) *big.Int {
	n, _ := new(big.Float).SetFloat64(x).Int(nil)
	return n
}

// TestTextIsRead reads what was shown, which is within half of the last digit.
func TestTextIsRead(t *testing.T) {
	t.Run("length", rapid.MakeCheck(func(t *rapid.T) {
		l := units.Length(rapid.Float64Range(-1e12, 1e12).Draw(t, "length"))
		u := units.LengthUnit(rapid.IntRange(0, int(units.InFeet)).Draw(t, "unit"))
		digits := rapid.IntRange(0, 8).Draw(t, "digits")
		got, err := units.ParseLength(l.Text(u, digits))
		if err != nil {
			t.Fatal(err)
		}
		one := units.MustParseLength("1 " + u.String())
		half := float64(one) / 2 * math.Pow10(-digits)
		if off := math.Abs(float64(got - l)); off > half*(1+1e-12)+math.Abs(float64(l))*0x1p-52 {
			t.Errorf("%v in %v to %d digits is off by %v, want at most %v", l, u, digits, off, half)
		}
	}))
}

// TestInIsRoundedOnce compares In with the exact ratio, for every unit of length.
func TestInIsRoundedOnce(t *testing.T) {
	nanometres := map[units.LengthUnit]float64{
		units.InMillimetres: 1e6, units.InMicrometres: 1e3, units.InNanometres: 1, units.InCentimetres: 1e7,
		units.InMetres: 1e9, units.InMils: 25400, units.InInches: 25.4e6, units.InFeet: 304.8e6,
	}
	for u, one := range nanometres {
		t.Run(u.String(), rapid.MakeCheck(func(t *rapid.T) {
			l := rapid.Float64().Draw(t, "nanometres")
			exact := new(big.Rat).SetFloat64(l)
			want, _ := exact.Quo(exact, new(big.Rat).SetFloat64(one)).Float64()
			if got := units.Length(l).In(u); got != want {
				t.Errorf("%v nm: got %v, want %v", l, got, want)
			}
		}))
	}
}

// TestInIsRoundedAtEachStep does the same for units whose factor is no whole
// number or whose zero is elsewhere. Each step costs half of the last bit of
// what it gives.
func TestInIsRoundedAtEachStep(t *testing.T) {
	rows := []struct {
		in        func(x float64) float64
		kind      string
		reference int // index in refUnits
		steps     float64
	}{
		{func(x float64) float64 { return units.Slope(x).In(units.InMillimetresPerMetre) }, "Slope", 0, 1},
		{func(x float64) float64 { return units.Slope(x).In(units.InMilsPerFoot) }, "Slope", 4, 1},
		{func(x float64) float64 { return units.Angle(x).In(units.InMicroradians) }, "Angle", 2, 1},
		{func(x float64) float64 { return units.Angle(x).In(units.InDegrees) }, "Angle", 3, 3}, // pi is rounded too
		{func(x float64) float64 { return units.Celsius(x).In(units.InFahrenheit) }, "Temperature", 1, 3},
		{func(x float64) float64 { return units.Celsius(x).Fahrenheit() }, "Temperature", 1, 3},
		{func(x float64) float64 { return units.Celsius(x).In(units.InKelvin) }, "Temperature", 2, 2}, // and 273.15
		{func(x float64) float64 { return units.TemperatureDifference(x).In(units.InFahrenheitDegrees) },
			"TemperatureDifference", 1, 2},
		{func(x float64) float64 { return units.RotationalSpeed(x).In(units.InHertz) }, "RotationalSpeed", 1, 1},
		{func(x float64) float64 { return units.LinearSpeed(x).In(units.InInchesPerSecond) }, "LinearSpeed", 2, 2},
		{func(x float64) float64 { return units.Expansion(x).In(units.InMilsPerInchFahrenheitDegree) }, "Expansion", 2, 2},
		{func(x float64) float64 { return units.Expansion(x).In(units.InPerFahrenheitDegree) }, "Expansion", 4, 2},
	}
	for i, row := range rows {
		u := refUnits[row.kind][row.reference]
		t.Run(fmt.Sprint(i, " ", row.kind), rapid.MakeCheck(func(t *rapid.T) {
			x := rapid.Float64Range(-1e6, 1e6).Draw(t, "value")
			exact := new(big.Rat).SetFloat64(x)
			exact.Quo(exact, new(big.Rat).SetFrac(count(u.num), count(u.den)))
			scaled, _ := exact.Float64()
			zero := 0.0
			if u.zeroNum != "" {
				start := new(big.Rat).SetFrac(count(u.zeroNum), count(u.zeroDen))
				zero, _ = start.Float64()
				exact.Add(exact, start)
			}
			got := row.in(x)
			off := new(big.Rat).SetFloat64(got)
			miss, _ := off.Sub(off, exact).Float64()
			if bound := row.steps * 0x1p-53 * (math.Abs(scaled) + zero); math.Abs(miss) > bound*(1+1e-9)+5e-324 {
				t.Errorf("%v: got %v, off by %g, want at most %g", x, got, miss, bound)
			}
		}))
	}
}

func TestInOfUnknownUnit(t *testing.T) {
	rows := map[string]float64{
		"length":           units.Metre.In(99),
		"slope":            units.MilPerInch.In(99),
		"angle":            units.Degree.In(99),
		"temperature":      units.Celsius(20).In(99),
		"difference":       units.Kelvin.In(255),
		"rotational speed": units.Hertz.In(2),
		"linear speed":     units.InchPerSecond.In(3),
		"expansion":        units.PerKelvin.In(99),
	}
	for name, got := range rows {
		if !math.IsNaN(got) {
			t.Errorf("%s: got %v, want NaN", name, got)
		}
	}
}

// TestInDoesNotAllocate keeps the promise that solvers may convert in a loop.
func TestInDoesNotAllocate(t *testing.T) {
	var total float64
	allocs := testing.AllocsPerRun(100, func() {
		total += units.Metre.In(units.InMils) + units.Celsius(25).In(units.InFahrenheit)
		sin, cos := units.Hour.SinCos()
		total += sin + cos + float64(units.Metre.Round(units.Mil))
	})
	if allocs != 0 {
		t.Errorf("%v allocations, want none", allocs)
	}
}

// TestVerbs prints quantities as reports do.
func TestVerbs(t *testing.T) {
	got := fmt.Sprintf("%v %s %v %v", units.Mil, units.Three, units.Temperature{}, units.InMils)
	if want := "0.0254 mm 3:00 20 °C mil"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// A unit that does not exist is shown as the first.
func TestTextInNoUnit(t *testing.T) {
	for u := units.LengthUnit(0); u < 100; u++ {
		text := units.Millimetre.Text(u, 0)
		if _, unit, _ := strings.Cut(text, " "); unit != u.String() && text != "1 mm" {
			t.Errorf("unit %d: got %q", u, text)
		}
	}
}
