package units_test

import (
	"strings"
	"testing"

	"example.org/collinear/units"
)

// A text that goes on is refused at its 65th byte, whatever it is made of, with a
// message that fits on a few lines.
func TestTextWithoutAnEnd(t *testing.T) {
	const million = 1_000_000
	texts := map[string]string{
		"digits":                      strings.Repeat("9", million) + " mm",
		"digits behind the point":     "0." + strings.Repeat("0", million) + "1 mm",
		"digits of an exponent":       "1e" + strings.Repeat("9", million) + " mm",
		"digits of a denominator":     "1/" + strings.Repeat("9", million) + " in",
		"digits of a fraction":        "5 " + strings.Repeat("9", million) + "/" + strings.Repeat("9", million) + " in",
		"digits of an hour":           strings.Repeat("1", million) + ":00",
		"digits of minutes":           "3:" + strings.Repeat("0", million),
		"colons":                      strings.Repeat(":", million),
		"spaces":                      strings.Repeat(" ", million),
		"spaces behind a number":      "1" + strings.Repeat(" ", million) + "mm",
		"signs":                       strings.Repeat("-", million),
		"letters":                     strings.Repeat("inf", million),
		"characters of several bytes": strings.Repeat("µ", million),
		"no characters":               strings.Repeat("\xff", million),
	}
	for _, k := range kinds {
		for name, text := range texts {
			_, err := k.parse(text)
			faults := units.Faults(err)
			if len(faults) != 1 || faults[0].Code != units.Malformed || !strings.Contains(faults[0].Want, "at byte 64") {
				t.Errorf("%s of %s: %.200v", k.name, name, err)
			}
			if err != nil && len(err.Error()) > 600 {
				t.Errorf("%s of %s: a message of %d bytes", k.name, name, len(err.Error()))
			}
		}
	}
}

// What fits into 64 bytes cannot ask for a number of gigabytes: an exponent of four
// digits is refused before anything is made of it, one of three is worked out.
func TestExponentsAreBounded(t *testing.T) {
	for _, row := range []struct {
		text string
		code units.Code // none: it is a number
	}{
		{"1e999999999 mm", units.OutOfRange},
		{"1e-999999999 mm", units.OutOfRange},
		{"0e999999999 mm", units.OutOfRange},
		{"1e" + strings.Repeat("9", 58) + " mm", units.OutOfRange},
		{"1e999 mm", units.OutOfRange},
		{"1e-999 mm", units.OutOfRange},
		{"0e999 mm", ""},
		{"." + strings.Repeat("0", 50) + "1e-300 mm", units.OutOfRange},
		{strings.Repeat("9", 50) + "e-300 mm", ""},
	} {
		l, err := units.ParseLength(row.text)
		switch faults := units.Faults(err); {
		case row.code == "" && err != nil:
			t.Errorf("%s: %v", row.text, err)
		case row.code != "" && (len(faults) != 1 || faults[0].Code != row.code || l != 0):
			t.Errorf("%s: got %v, %v, want %s", row.text, l, err, row.code)
		}
	}
}
