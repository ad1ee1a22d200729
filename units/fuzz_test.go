package units_test

import (
	"errors"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.org/collinear/units"
)

// Texts that are tried on every quantity.
var seeds = []string{
	"", " ", "0", "-0 mm", "5 7/16 in", `5-7/16"`, `3'-5 7/16"`, "3 ft 5.5 in", "1/0 in", "7/7 ft", "1 7/7 in", "-.5e-3 µm",
	"3' 11.999999999999999999999999999999″", "9007199254740993 nm", "1.7976931348623158079e302 mm", "2.5e-330 mm", "2e-330 mm",
	"0.05 mm/100mm", "0.05 mm/100 mm", "0.5 thou/in", "1 mrad", "57.29577951308232 deg", "10:30", "0:30", "01:30", "13:00", "3:60", "3:5",
	"-30 °", "68 °F", "293.15 K", "-459.67 degF", "18 F", "1780 rpm", "29.5 Hz", "1 in/s", "6.3e-6 1/°F", "12e-61/K", "5 1/K", "0.0063 mil/in/F",
	"1e1000 mm", "1e999 mm", "1e-999 mm", "4,5 mil", "NaN mm", "-Inf K", "5. mm", "010 mm", "1e5 mm", "1E+05 mm", "5 mm ", "5  mm", "٣ mm", "\xff mm",
}

func FuzzParseLength(f *testing.F)                { fuzzParse(f, "Length") }
func FuzzParseSlope(f *testing.F)                 { fuzzParse(f, "Slope") }
func FuzzParseAngle(f *testing.F)                 { fuzzParse(f, "Angle") }
func FuzzParseClock(f *testing.F)                 { fuzzParse(f, "Clock") }
func FuzzParseTemperature(f *testing.F)           { fuzzParse(f, "Temperature") }
func FuzzParseTemperatureDifference(f *testing.F) { fuzzParse(f, "TemperatureDifference") }
func FuzzParseRotationalSpeed(f *testing.F)       { fuzzParse(f, "RotationalSpeed") }
func FuzzParseLinearSpeed(f *testing.F)           { fuzzParse(f, "LinearSpeed") }
func FuzzParseExpansion(f *testing.F)             { fuzzParse(f, "Expansion") }

func fuzzParse(f *testing.F, name string) {
	k := kindNamed(f, name)
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) { agrees(t, k, s) })
}

// TestParseAgreesWithReference puts together texts from the pieces of the
// grammar, so that most are nearly sound.
func TestParseAgreesWithReference(t *testing.T) {
	for _, k := range kinds {
		pieces := append(strings.FieldsFunc(unitsOf(k.name), func(r rune) bool { return r == '|' }),
			"", "", " ", " ", "-", "+", ".", ",", "/", ":", "'", `"`, "0", "00", "1", "7/16", "5 7/16", "5-7/16", "3/0",
			"3 ft ", "11", "12", "13", "30", "59", "60", "100", "e", "E", "e-6", "e300", "e-330", "e1000",
			"9007199254740993", "0.1", ".5", "5.", "17976931348623157")
		t.Run(k.name, rapid.MakeCheck(func(t *rapid.T) {
			s := rapid.SliceOfN(rapid.SampledFrom(pieces), 1, 7).Draw(t, "pieces")
			agrees(t, k, strings.Join(s, ""))
		}))
		t.Run(k.name+" sound", rapid.MakeCheck(func(t *rapid.T) {
			number := rapid.StringMatching(`[+-]?[0-9]{0,12}(\.[0-9]{1,12}|[0-9])(e-?[0-9]{1,2})?`).Draw(t, "number")
			unit := rapid.SampledFrom(strings.Split(strings.Trim(unitsOf(k.name), "|"), "|")).Draw(t, "unit")
			if !agrees(t, k, number+" "+unit) {
				t.Errorf("%q is refused", number+" "+unit)
			}
		}))
	}
}

// TestTapeAgreesWithReference tries tape-rule texts, nearly all of them sound.
func TestTapeAgreesWithReference(t *testing.T) {
	length := kindNamed(t, "Length")
	t.Run("tape", rapid.MakeCheck(func(t *rapid.T) {
		s := rapid.StringMatching(`[+-]?([0-9]{1,2}( ?ft|'|′)[ -]?)?([0-9]|1[012])([ -][0-9]{1,2}/(8|16|32|64|3))?( ?in|"|″)`).Draw(t, "text")
		agrees(t, length, s)
	}))
}

var at = regexp.MustCompile(`^units\.Parse([A-Za-z]+): at byte ([0-9]+): `)

// agrees tests one text against the reference, and returns whether it is
// accepted. A fault has to name the function and a place in the text.
func agrees(t interface{ Errorf(string, ...any) }, k kind, s string) bool {
	got, err := k.parse(s)
	want, ok := refParse(k.name, s)
	if ok != (err == nil) || ok && math.Float64bits(got) != math.Float64bits(want) {
		t.Errorf("%s %q: got %v, %v; the reference has %v, %v", k.name, s, got, err, want, ok)
	}
	if err == nil {
		checkRoundTrip(t, k, got)
		return true
	}
	var fault *units.Fault
	if !errors.As(err, &fault) {
		t.Errorf("%s %q: %v is not a fault", k.name, s, err)
		return false
	}
	m := at.FindStringSubmatch(fault.Want)
	if m == nil || m[1] != k.name {
		t.Errorf("%s %q: %q does not name the function and the place", k.name, s, fault.Want)
	} else if place, _ := strconv.Atoi(m[2]); place > len(s) {
		t.Errorf("%s %q: byte %d is beyond the text", k.name, s, place)
	}
	if len(s) <= 64 && fault.Value != strconv.Quote(s) {
		t.Errorf("%s: %q is quoted as %s", k.name, s, fault.Value)
	}
	return false
}
