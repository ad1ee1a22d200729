package strict

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/collinear/units"
)

// Words are a line of a person's own text.
type Words string

// UnmarshalText takes a line that can be printed, of at most 300 characters.
func (w *Words) UnmarshalText(text []byte) error {
	const most = 300
	s := string(text)
	notGraphic := func(r rune) bool { return !unicode.IsGraphic(r) }
	switch n := utf8.RuneCountInString(s); {
	case strings.TrimSpace(s) == "":
		return &units.Fault{Code: units.Missing, Want: "some text; a field that is not needed can be left out"}
	case n > most:
		return &units.Fault{Code: units.OutOfRange, Value: strconv.Itoa(n), Want: "at most " + strconv.Itoa(most) + " characters"}
	case strings.ContainsFunc(s, notGraphic):
		return &units.Fault{Code: units.Malformed, Value: Short(strconv.Quote(s)), Want: "one line of characters that can be printed"}
	}
	*w = Words(s)
	return nil
}
