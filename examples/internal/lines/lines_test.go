package lines

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"
)

func wrapped(first, next, text string) []string {
	var w strings.Builder
	Wrap(&w, first, next, text)
	return strings.Split(strings.TrimSuffix(w.String(), "\n"), "\n")
}

// No line is too long, and no letter is lost, whatever the words.
func TestNothingIsCutOff(t *testing.T) {
	word := rapid.StringMatching(`[a-zä°0-9%]{1,120}`)
	rapid.Check(t, func(t *rapid.T) {
		words := rapid.SliceOfN(word, 1, 30).Draw(t, "words")
		list := wrapped("- ", "  ", strings.Join(words, " "))
		var letters strings.Builder
		for i, line := range list {
			if n := utf8.RuneCountInString(line); n > Columns {
				t.Errorf("%d columns: %q", n, line)
			}
			if want := []string{"- ", "  "}[min(i, 1)]; !strings.HasPrefix(line, want) {
				t.Errorf("line %d is %q", i, line)
			}
			letters.WriteString(strings.ReplaceAll(line[2:], " ", ""))
		}
		if got := letters.String(); got != strings.Join(words, "") {
			t.Errorf("%q became %q", words, got)
		}
	})
}

// A number goes to the next line with its unit.
func TestNumbersKeepTheirUnits(t *testing.T) {
	for _, unit := range []string{"mm", "mm/m", "mil", "in", "um", "rpm", "K", "%", "°C", "°F", "o'clock"} {
		for _, end := range []string{"", ".", ", then", ")"} {
			text := strings.Repeat("x", Columns-3) + " 12 " + unit + end
			if list := wrapped("", "", text); !strings.HasPrefix(list[1], "12 "+unit) {
				t.Errorf("%q became %q", text, list)
			}
		}
	}
	text := strings.Repeat("x", Columns-3) + " 12 inboard"
	if list := wrapped("", "", text); !strings.HasSuffix(list[0], " 12") {
		t.Errorf("%q became %q", text, list)
	}
}

func TestTied(t *testing.T) {
	if list := wrapped("", "", strings.Repeat("x", Columns-3)+" "+Tied("a b c")); list[1] != "a b c" {
		t.Errorf("%q", list)
	}
}
