package units_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/collinear/units"
)

// TestRefused reads texts that are not sound, each beside a twin that is: what
// differs between the two is what is refused.
func TestRefused(t *testing.T) {
	const (
		missing, notFinite, outOfRange = units.Missing, units.NotFinite, units.OutOfRange
		malformed, unknown             = units.Malformed, units.Unknown
	)
	rows := []struct {
		kind, text string
		code       units.Code
		at         int
		want       string // a part of what was wanted
		twin       string
	}{
		// Any decimal number with a unit.
		{"Length", "", missing, 0, "a number and a unit", "0 mm"},
		{"Length", " ", malformed, 0, "a digit", "0 mm"},
		{"Length", "mm", malformed, 0, "a digit", "1mm"},
		{"Length", "5", missing, 1, "a unit", "5 m"},
		{"Length", "5 ", missing, 2, "a unit after the space", "5 m"},
		{"Length", "5.25", missing, 4, "a unit", "5.25 mm"},
		{"Length", "5 furlong", unknown, 2, "one of mm, um, nm, cm, m, mil, in, ft", "5 ft"},
		{"Length", "5 MM", unknown, 2, "one of mm", "5 mm"},
		{"Length", "5 mms", unknown, 2, "one of mm", "5 mm"},
		{"Length", "5 \u00b5", unknown, 2, "one of mm", "5 \u00b5m"},
		{"Length", "4,5 mil", malformed, 1, "a decimal point, not a comma", "4.5 mil"},
		{"Length", "1,000 mm", malformed, 1, "a decimal point, not a comma", "1000 mm"},
		{"Length", "5. mm", malformed, 2, "a digit after the point", "5.0 mm"},
		{"Length", ". mm", malformed, 1, "a digit after the point", ".5 mm"},
		{"Length", "1.2.3 mm", malformed, 3, "a unit, not a second number", "1.23 mm"},
		{"Length", "--5 mm", malformed, 1, "a digit", "-5 mm"},
		{"Length", "- 5 mm", malformed, 1, "a digit", "-5 mm"},
		{"Length", "\u22125 mm", malformed, 0, "a digit", "-5 mm"},
		{"Length", "5e mm", malformed, 2, "the digits of an exponent", "5e0 mm"},
		{"Length", "5e+-1 mm", malformed, 3, "the digits of an exponent", "5e+1 mm"},
		{"Length", "5e0001 mm", outOfRange, 2, "at most 3 digits", "5e001 mm"},
		{"Length", "1e-9999 mm", outOfRange, 3, "at most 3 digits", "1e-300 mm"},
		{"Length", "1e303 mm", outOfRange, 0, "the greatest that a float64 holds", "1e302 mm"},
		{"Length", "-1e303 mm", outOfRange, 0, "the greatest that a float64 holds", "-1e302 mm"},
		{"Length", "1e-331 mm", outOfRange, 0, "the least", "3e-330 mm"},
		{"Length", "NaN mm", notFinite, 0, "a finite number", "0 mm"},
		{"Length", "nan", notFinite, 0, "a finite number", "0 mm"},
		{"Length", "+Inf mm", notFinite, 1, "a finite number", "+1 in"},
		{"Length", "-infinity in", notFinite, 1, "a finite number", "-1 in"},
		{"Length", "nanA mm", malformed, 0, "a digit", "0 mm"},
		{"Length", "infZ mm", malformed, 0, "a digit", "0 mm"},
		{"Length", "infinityz mm", malformed, 0, "a digit", "0 mm"},
		{"Length", " 5 mm", malformed, 0, "a digit", "5 mm"},
		{"Length", "5 mm ", malformed, 4, "not a space", "5 mm"},
		{"Length", "5  mm", malformed, 2, "a single space", "5 mm"},
		{"Length", "5\u00a0mm", unknown, 1, "a unit", "5 mm"},
		{"Length", "5\tmm", unknown, 1, "a unit", "5mm"},
		{"Length", "5 mm\n", unknown, 2, "a unit", "5 mm"},
		{"Length", "\uff15 mm", malformed, 0, "a digit", "5 mm"},
		{"Length", "\u0665 mm", malformed, 0, "a digit", "5 mm"},
		{"Length", "1\u0665 mm", unknown, 1, "a unit", "15 mm"},
		{"Length", "0x10 mm", unknown, 1, "a unit", "010 mm"},
		{"Length", "1_000 mm", unknown, 1, "a unit", "1000 mm"},
		{"Length", strings.Repeat("0", 62) + "5 m", malformed, 64, "at most 64 bytes", strings.Repeat("0", 61) + "5 m"},

		// Tape rules.
		{"Length", "5 6 mm", malformed, 3, "not a second number", "56 mm"},
		{"Length", "5.5 6 mm", malformed, 4, "not a second number", "5.56 mm"},
		{"Length", "1/0 in", outOfRange, 2, "a denominator above zero", "0/1 in"},
		{"Length", "5 1/0 in", outOfRange, 4, "a denominator above zero", "5 0/1 in"},
		{"Length", "1/ in", malformed, 2, "the digits of a denominator", "1/2 in"},
		{"Length", "/2 in", malformed, 0, "a digit", "1/2 in"},
		{"Length", "1/2", missing, 3, "a unit", `1/2"`},
		{"Length", "1/2 mm", malformed, 4, "a decimal number before this unit", "0.5 mm"},
		{"Length", "1/2 mil", malformed, 4, "a decimal number before this unit", "1/2 in"},
		{"Length", "5 -7/16 in", malformed, 2, "not a second sign", "5 7/16 in"},
		{"Length", "5--7/16 in", malformed, 1, "not a second sign", "5-7/16 in"},
		{"Length", "7/-16 in", malformed, 2, "the digits of a denominator", "7/16 in"},
		{"Length", "5 17/16 in", outOfRange, 2, "less than 1", "17/16 in"},
		{"Length", "5.5 7/16 in", malformed, 4, "not a second number", "5 7/16 in"},
		{"Length", "5.5 0/16 in", malformed, 4, "not a second number", "5 0/16 in"},
		{"Length", "5.5 9/16 in", malformed, 4, "not a second number", "5 9/16 in"},
		{"Length", "1.5/2 in", unknown, 3, "a unit", "1.5 in"},
		{"Length", "5 7/16.5 in", malformed, 6, "a unit, not a second number", "5 7/16 in"},
		{"Length", "5  7/16 in", malformed, 2, "a single space", "5 7/16 in"},
		{"Length", "1/2/3 in", unknown, 3, "a unit", "2/3 in"},
		{"Length", "5 in 3 ft", unknown, 2, "a unit", "3 ft 5 in"},
		{"Length", "3 ft 12 in", outOfRange, 5, "less than 12 inches", "3 ft 11.999 in"},
		{"Length", "3 ft 5 mm", malformed, 7, "inches after feet", "3 ft 5 in"},
		{"Length", "3 ft 5", missing, 6, "inches after feet", "3 ft 5 in"},
		{"Length", "3 ft -5 in", malformed, 5, "a digit", "3 ft-5 in"},
		{"Length", "3.5 ft 2 in", unknown, 4, "a unit", "3 ft 2 in"},
		{"Length", "3 ft 2 ft", malformed, 7, "inches after feet", "5 ft"},
		{"Length", "3''", malformed, 2, "a digit", `3"`},

		// What another quantity could read.
		{"Slope", "1 mrad", unknown, 2, "one of mm/m", "1 mm/m"},
		{"Slope", "0.1 %", unknown, 4, "one of mm/m", "1 mm/m"},
		{"Slope", "1/16 in/ft", unknown, 1, "a unit", "0.0625 in/ft"},
		{"Slope", "0.05 mm", unknown, 5, "one of mm/m", "0.05 mm/100mm"},
		{"Slope", "0.05 mm/100  mm", unknown, 5, "one of mm/m", "0.05 mm/100 mm"},
		{"Angle", "1 mm/m", unknown, 2, "one of rad", "1 mrad"},
		{"Angle", "3:00", unknown, 1, "one of rad", "90 deg"},
		{"Temperature", "68", missing, 2, "one of °C, °F, K", "68 °F"},
		{"Temperature", "68 ° F", unknown, 3, "one of °C", "68 °F"},
		{"Temperature", "20 °K", unknown, 3, "one of °C", "20 K"},
		{"Temperature", "20 \u2103", unknown, 3, "one of °C", "20 °C"},
		{"TemperatureDifference", "18 °f", unknown, 3, "one of K", "18 °F"},
		{"RotationalSpeed", "1780 Rpm", unknown, 5, "one of rpm, Hz", "1780 RPM"},
		{"RotationalSpeed", "30 hz", unknown, 3, "one of rpm, Hz", "30 Hz"},
		{"LinearSpeed", "1 in", unknown, 2, "one of mm/s", "1 in/s"},
		{"Expansion", "6.3e-6", missing, 6, "a unit", "6.3e-6 1/°F"},
		{"Expansion", "51/K", unknown, 2, "a unit", "5 1/K"},
		{"Expansion", "11e-6/K", unknown, 5, "a unit", "11e-6 1/K"},
		{"Expansion", "6.3 mil/in", unknown, 4, "a unit", "6.3 mil/in/F"},

		// Positions.
		{"Clock", "0:30", outOfRange, 0, "half past twelve is 12:30", "12:30"},
		{"Clock", "13:00", outOfRange, 0, "an hour from 1 to 12", "1:00"},
		{"Clock", "100:00", outOfRange, 0, "an hour from 1 to 12", "10:00"},
		{"Clock", "3:60", outOfRange, 2, "minutes from 00 to 59", "3:59"},
		{"Clock", "3:5", malformed, 2, "two digits of minutes", "3:05"},
		{"Clock", "3:050", malformed, 2, "two digits of minutes", "3:05"},
		{"Clock", "3:05:00", malformed, 2, "two digits of minutes", "3:05"},
		{"Clock", "3:05 ", malformed, 2, "the end of the text", "3:05"},
		{"Clock", "03:00", malformed, 0, "without a sign or a leading zero", "3:00"},
		{"Clock", "-3:00", malformed, 0, "without a sign or a leading zero", "-90 deg"},
		{"Clock", ":30", malformed, 0, "an hour", "12:30"},
		{"Clock", "3 :00", malformed, 1, "a colon after the hour", "3:00"},
		{"Clock", "3.5:00", malformed, 1, "a colon after the hour", "3:30"},
		{"Clock", "3", missing, 1, "a unit", "3:00"},
		{"Clock", "3 h", unknown, 2, "a unit", "3:00"},
		{"Clock", "NaN deg", notFinite, 0, "a finite number", "0 deg"},
		{"Clock", strings.Repeat("1", 61) + ":00", outOfRange, 0, "an hour from 1 to 12", "11:00"},
		{"Clock", strings.Repeat("1", 64) + ":", malformed, 64, "at most 64 bytes", "1:00"},
	}
	for _, row := range rows {
		t.Run(row.kind+" "+row.text, func(t *testing.T) {
			k := kindNamed(t, row.kind)
			got, err := k.parse(row.text)
			faults := units.Faults(err)
			if len(faults) != 1 {
				t.Fatalf("got %v, %v, want one fault", got, err)
			}
			want := fmt.Sprintf("units.Parse%s: at byte %d: ", row.kind, row.at)
			f := faults[0]
			if f.Code != row.code || !strings.HasPrefix(f.Want, want) || !strings.Contains(f.Want, row.want) {
				t.Errorf("got %v\nwant %s ... %s ... (%s)", f, want, row.want, row.code)
			}
			if f.Path != "" {
				t.Errorf("the path is %q, want none", f.Path)
			}
			if k.print(got) != k.zero {
				t.Errorf("the value beside the fault is %s, want the zero value", k.print(got))
			}
			if _, err := k.parse(row.twin); err != nil {
				t.Errorf("the twin: %v", err)
			}
		})
	}
}

// TestQuotesLongText tests that a fault stays short, whatever it was given.
func TestQuotesLongText(t *testing.T) {
	rows := []struct{ name, text, want string }{
		{"as it is", "x\n", `"x\n"`},
		{"of the longest that is read", strings.Repeat("x", 64), `"` + strings.Repeat("x", 64) + `"`},
		{"cut", strings.Repeat("x", 1<<20), `"` + strings.Repeat("x", 64) + `"...`},
		{"cut between characters", strings.Repeat("x", 63) + "°°", `"` + strings.Repeat("x", 63) + `"...`},
		{"cut where there are no characters", strings.Repeat("\x80", 70), `"` + strings.Repeat(`\x80`, 60) + `"...`},
	}
	for _, row := range rows {
		for name, err := range map[string]error{
			"quantity": second(units.ParseSlope(row.text)),
			"unit":     second(units.ParseSlopeUnit(row.text)),
		} {
			faults := units.Faults(err)
			if len(faults) != 1 {
				t.Fatalf("%s, %s: got %v, want one fault", row.name, name, err)
			}
			if diff := cmp.Diff(row.want, faults[0].Value); diff != "" {
				t.Errorf("%s, %s (-want +got):\n%s", row.name, name, diff)
			}
		}
	}
}

func second[T any](_ T, err error) error { return err }
