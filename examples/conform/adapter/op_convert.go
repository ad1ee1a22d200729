package adapter

import (
	"strconv"
	"strings"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type convertInput struct {
	Quantity string `json:"quantity"`
	Text     string `json:"text"`
	To       string `json:"to"`
}

type convertResult struct {
	Value string `json:"value"`
}

func convert(in *convertInput, f *strict.Faults) convertResult {
	into, known := conversions[in.Quantity]
	if !known {
		f.Add(units.Unknown, "/quantity", strict.Short(in.Quantity), "a quantity")
		return convertResult{}
	}
	return convertResult{into(in, f)}
}

var conversions = map[string]func(*convertInput, *strict.Faults) string{
	"length":                 through(units.ParseLength, units.ParseLengthUnit, units.Length.Text),
	"slope":                  through(units.ParseSlope, units.ParseSlopeUnit, units.Slope.Text),
	"angle":                  through(units.ParseAngle, units.ParseAngleUnit, units.Angle.Text),
	"clock":                  through(units.ParseClock, parseClockUnit, degrees),
	"temperature":            through(units.ParseTemperature, units.ParseTemperatureUnit, units.Temperature.Text),
	"temperature_difference": through(units.ParseTemperatureDifference, units.ParseTemperatureDifferenceUnit, units.TemperatureDifference.Text),
	"rotational_speed":       through(units.ParseRotationalSpeed, units.ParseRotationalSpeedUnit, units.RotationalSpeed.Text),
	"linear_speed":           through(units.ParseLinearSpeed, units.ParseLinearSpeedUnit, units.LinearSpeed.Text),
	"expansion":              through(units.ParseExpansion, units.ParseExpansionUnit, units.Expansion.Text),
}

// through converts by way of the quantity: text to it, and it to text in another
// unit with all digits.
func through[Q, U any](
	parse func(string) (Q, error), unit func(string) (U, error), text func(Q, U, int) string,
) func(*convertInput, *strict.Faults) string {
	return func(in *convertInput, f *strict.Faults) string {
		q, err := parse(in.Text)
		f.Adopt(err, below("/text"))
		u, err := unit(in.To)
		f.Adopt(err, below("/to"))
		if len(*f) > 0 {
			return ""
		}
		return trimmed(text(q, u, units.MaxDigits))
	}
}

// trimmed takes the zeros off the end of a number with a point.
func trimmed(text string) string {
	number, unit, _ := strings.Cut(text, " ")
	if strings.Contains(number, ".") {
		number = strings.TrimSuffix(strings.TrimRight(number, "0"), ".")
	}
	return number + " " + unit
}

// parseClockUnit reads the one unit that a position is wanted in.
func parseClockUnit(s string) (struct{}, error) {
	if s != "deg" {
		return struct{}{}, &units.Fault{Code: units.Unknown, Value: strict.Short(s), Want: "deg"}
	}
	return struct{}{}, nil
}

func degrees(c units.Clock, _ struct{}, _ int) string {
	return strconv.FormatFloat(float64(c.Normal()), 'f', -1, 64) + " deg"
}
