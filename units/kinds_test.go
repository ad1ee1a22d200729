package units_test

import (
	"encoding"
	"fmt"
	"reflect"
	"testing"

	"example.org/collinear/units"
)

// kind is one quantity, seen by the tests that run over all of them: its values
// are float64s as the type counts.
type kind struct {
	name   string
	zero   string // the text of the zero value
	other  string // a text of some other value
	parse  func(string) (float64, error)
	print  func(float64) string
	lost   func(float64) error // what MarshalText says
	family func(t *testing.T)  // tests the whole text family of the type
}

// textual is what a value with a text form can do.
type textual interface {
	comparable
	fmt.Stringer
	encoding.TextMarshaler
}

// readable is a pointer to such a value.
type readable[Q any] interface {
	*Q
	encoding.TextUnmarshaler
}

// kindOf returns the kind of type Q, whose values from and to turn into
// float64s.
func kindOf[Q textual, P readable[Q]](zero, other string, parse func(string) (Q, error), must func(string) Q,
	from func(float64) Q, to func(Q) float64) kind {
	return kind{
		name:  reflect.TypeFor[Q]().Name(),
		zero:  zero,
		other: other,
		parse: func(s string) (float64, error) {
			q, err := parse(s)
			return to(q), err
		},
		print: func(x float64) string { return from(x).String() },
		lost: func(x float64) error {
			_, err := from(x).MarshalText()
			return err
		},
		family: func(t *testing.T) {
			checkZero(t, zero, parse)
			checkMust(t, other, parse, must)
			checkFamily[Q, P](t, other, parse)
		},
	}
}

// numeric is a quantity that is a float64.
type numeric interface {
	~float64
	textual
}

func numericKind[Q numeric, P readable[Q]](zero, other string, parse func(string) (Q, error), must func(string) Q) kind {
	return kindOf[Q, P](zero, other, parse, must,
		func(x float64) Q { return Q(x) },
		func(q Q) float64 { return float64(q) })
}

// kinds are all quantities.
var kinds = []kind{
	numericKind("0 mm", "0.363764 mm", units.ParseLength, units.MustParseLength),
	numericKind("0 mm/m", "0.4 mm/m", units.ParseSlope, units.MustParseSlope),
	numericKind("0 rad", "0.0005 rad", units.ParseAngle, units.MustParseAngle),
	numericKind("12:00", "10:30", units.ParseClock, units.MustParseClock),
	numericKind("0 K", "10 K", units.ParseTemperatureDifference, units.MustParseTemperatureDifference),
	numericKind("0 rpm", "1780 rpm", units.ParseRotationalSpeed, units.MustParseRotationalSpeed),
	numericKind("0 mm/s", "12.7 mm/s", units.ParseLinearSpeed, units.MustParseLinearSpeed),
	numericKind("0 um/m/K", "11.34 um/m/K", units.ParseExpansion, units.MustParseExpansion),
	kindOf("20 °C", "25.3 °C", units.ParseTemperature, units.MustParseTemperature,
		units.Celsius, units.Temperature.Celsius),
}

func kindNamed(t testing.TB, name string) kind {
	for _, k := range kinds {
		if k.name == name {
			return k
		}
	}
	t.Fatalf("no quantity is named %s", name)
	return kind{}
}
