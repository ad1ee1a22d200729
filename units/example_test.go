package units_test

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"

	"example.org/collinear/units"
)

func ExampleParseLength() {
	for _, s := range []string{"5 7/16 in", `5-7/16"`, "3 ft 5 7/16 in", "4.5 mil", "0.05 mm", "50 µm", "4,5 mil"} {
		l, err := units.ParseLength(s)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(l)
	}
	// Output:
	// 138.1125 mm
	// 138.1125 mm
	// 1052.5125 mm
	// 0.1143 mm
	// 0.05 mm
	// 0.05 mm
	// want units.ParseLength: at byte 1: a decimal point, not a comma, got "4,5 mil" (malformed)
}

func ExampleParseSlope() {
	for _, s := range []string{"0.05 mm/100mm", "0.5 mil/in", "0.5 mm/m"} {
		slope, err := units.ParseSlope(s)
		fmt.Println(slope, err)
	}
	// Output:
	// 0.5 mm/m <nil>
	// 0.5 mm/m <nil>
	// 0.5 mm/m <nil>
}

func ExampleParseAngle() {
	a, err := units.ParseAngle("22.5°")
	fmt.Println(a.Text(units.InMilliradians, 3), err)
	// Output: 392.699 mrad <nil>
}

func ExampleParseClock() {
	for _, s := range []string{"10:30", "37.5 deg", "37.3°", "-30 deg", "0:30"} {
		c, err := units.ParseClock(s)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(c)
	}
	// Output:
	// 10:30
	// 1:15
	// 37.3 deg
	// -30 deg
	// want units.ParseClock: at byte 0: an hour from 1 to 12: half past twelve is 12:30, got "0:30" (out_of_range)
}

func ExampleParseTemperature() {
	for _, s := range []string{"68 °F", "140 degF", "293.15 K"} {
		t, err := units.ParseTemperature(s)
		fmt.Println(t, err)
	}
	// Output:
	// 20 °C <nil>
	// 60 °C <nil>
	// 20 °C <nil>
}

// A rise of 18 degrees F is 10 K; the offset of 32 belongs to points alone.
func ExampleParseTemperatureDifference() {
	d, err := units.ParseTemperatureDifference("18 °F")
	fmt.Println(d, err)
	// Output: 10 K <nil>
}

func ExampleParseRotationalSpeed() {
	s, err := units.ParseRotationalSpeed("29.75 Hz")
	fmt.Println(s, err)
	// Output: 1785 rpm <nil>
}

func ExampleParseLinearSpeed() {
	s, err := units.ParseLinearSpeed("1.5 in/s")
	fmt.Println(s, err)
	// Output: 38.1 mm/s <nil>
}

func ExampleParseExpansion() {
	for _, s := range []string{"6.3e-6 1/°F", "0.0063 mil/in/F", "11.34 µm/m/K"} {
		e, err := units.ParseExpansion(s)
		fmt.Println(e, err)
	}
	// Output:
	// 11.34 um/m/K <nil>
	// 11.34 um/m/K <nil>
	// 11.34 um/m/K <nil>
}

func ExampleLength_Text() {
	l := units.MustParseLength("0.0686 mm")
	fmt.Println(l.Text(units.InMils, 1))
	fmt.Println(l.Text(units.InMillimetres, 2))
	fmt.Println((-10 * units.Nanometre).Text(units.InMils, 1))
	// Output:
	// 2.7 mil
	// 0.07 mm
	// 0.0 mil
}

func ExampleLength_In() {
	fmt.Println((7 * units.Inch).In(units.InMillimetres))
	// Output: 177.8
}

// What a dial shows is compared with a limit to a stated resolution.
func ExampleLength_Round() {
	third := units.Mil / 3
	fmt.Println(third.Round(units.Micrometre))
	fmt.Println(third.Round(units.Mil/10).Text(units.InMils, 1))
	// Output:
	// 0.008 mm
	// 0.3 mil
}

// An inch cut into 43 and put together again is above an inch by its last bit, and
// still stands exactly on a limit of one.
func ExampleLength_Above() {
	pieces := units.Length(43)
	sum := units.Inch / pieces * pieces
	fmt.Println(sum > units.Inch, sum.Above(units.Inch), (sum + units.Nanometre).Above(units.Inch))
	// Output:
	// true false true
}

// A face gap of 4 mil across 5 in is a slope, which opens 16 mil at a foot 20 in
// away.
func ExampleLength_Per() {
	slope := (4 * units.Mil).Per(5 * units.Inch)
	fmt.Println(slope.Text(units.InMilsPerInch, 2))
	fmt.Println(slope.Over(20*units.Inch).Text(units.InMils, 1))
	// Output:
	// 0.80 mil/in
	// 16.0 mil
}

func ExampleClock_SinCos() {
	for _, c := range []units.Clock{units.Twelve, units.Three, units.MustParseClock("7:30")} {
		right, up := c.SinCos()
		fmt.Printf("%v: %.3f to 3 o'clock, %.3f up\n", c, right, up)
	}
	// Output:
	// 12:00: 0.000 to 3 o'clock, 1.000 up
	// 3:00: 1.000 to 3 o'clock, 0.000 up
	// 7:30: -0.707 to 3 o'clock, -0.707 up
}

func ExampleClock_Round() {
	fmt.Println(units.Clock(314.87).Round(units.Minute))
	// Output: 10:30
}

// Mark every field of a form that has a fault.
func ExampleFaults() {
	err := errors.Join(
		&units.Fault{Code: units.Missing, Path: "/feet/0/x", Want: "the foot's station"},
		&units.Fault{Code: units.OutOfRange, Path: "/face/diameter", Value: "-4 mm", Want: "a diameter above zero"})
	for _, f := range units.Faults(fmt.Errorf("job 12: %w", err)) {
		fmt.Printf("%s: %s\n", f.Path, f.Want)
	}
	fmt.Println(errors.Is(err, units.Missing), errors.Is(err, units.Unseen))
	// Output:
	// /feet/0/x: the foot's station
	// /face/diameter: a diameter above zero
	// true false
}

func Example_json() {
	type reading struct {
		At    units.Clock  `json:"at"`
		Value units.Length `json:"value"`
	}
	var r reading
	err := json.Unmarshal([]byte(`{"at":"4:30","value":"-7.5 mil"}`), &r)
	fmt.Println(r.At, r.Value.Text(units.InMils, 1), err)

	b, err := json.Marshal(r)
	fmt.Println(string(b), err)

	err = json.Unmarshal([]byte(`{"at":"16:30","value":"-7.5 mil"}`), &r)
	fmt.Println(units.Faults(err)[0].Value, errors.Is(err, units.OutOfRange))
	// Output:
	// 4:30 -7.5 mil <nil>
	// {"at":"4:30","value":"-0.1905 mm"} <nil>
	// "16:30" true
}

func Example_flag() {
	var (
		span units.Length
		unit units.LengthUnit
	)
	flags := flag.NewFlagSet("front end", flag.ContinueOnError)
	flags.TextVar(&span, "span", 100*units.Millimetre, "length of the spacer")
	flags.TextVar(&unit, "unit", units.InMillimetres, "unit to show lengths in")
	err := flags.Parse([]string{"-span", `5-7/16"`, "-unit", "in"})
	fmt.Println(span, err)
	fmt.Println(span.Text(unit, 4))
	// Output:
	// 138.1125 mm <nil>
	// 5.4375 in
}
