package strict_test

import (
	"strings"
	"testing"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

func TestWords(t *testing.T) {
	for text, want := range map[string]units.Code{
		"pump K-12, 5 °C":        "",
		strings.Repeat("ä", 300): "",
		"":                       units.Missing,
		"  ":                     units.Missing,
		strings.Repeat("ä", 301): units.OutOfRange,
		"two\nlines":             units.Malformed,
		"bell \a":                units.Malformed,
	} {
		w := strict.Words("as before")
		err := w.UnmarshalText([]byte(text))
		switch faults := units.Faults(err); {
		case want == "" && (err != nil || string(w) != text):
			t.Errorf("%q: %q, %v", text, w, err)
		case want != "" && (len(faults) != 1 || faults[0].Code != want || w != "as before"):
			t.Errorf("%q: %q, %v, want %s", text, w, err, want)
		}
	}
}

// Whatever the text, it is taken as it is or refused with one fault.
func FuzzWords(f *testing.F) {
	for _, text := range []string{"pump", "", "a\nb", "\xff", strings.Repeat("x", 301)} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		var w strict.Words
		if err := w.UnmarshalText([]byte(text)); err == nil && string(w) != text || err != nil && len(units.Faults(err)) != 1 {
			t.Errorf("%q: %q, %v", text, w, err)
		}
	})
}
