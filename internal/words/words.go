// Package words holds the text family of a small set of choices: what a uint8
// constant is called on the wire and in print.
package words

import (
	"strconv"
	"strings"

	"example.org/collinear/units"
)

// List are the words of a set of choices. The index is the value; an empty word
// stands for a choice not made.
type List []string

// Word returns the word of i, or its number where it has none.
func (l List) Word(i uint8) string {
	if l.Known(i) {
		return l[i]
	}
	return strconv.Itoa(int(i))
}

// Known tells whether i is a choice that was made.
func (l List) Known(i uint8) bool { return int(i) < len(l) && l[i] != "" }

// Marshal gives the word of i, and refuses a value that has none.
func (l List) Marshal(i uint8) ([]byte, error) {
	if !l.Known(i) {
		return nil, l.fault(units.Unknown, strconv.Itoa(int(i)))
	}
	return []byte(l[i]), nil
}

// Unmarshal finds the value of a word, and leaves e alone where there is none.
func Unmarshal[E ~uint8](e *E, l List, text []byte) error {
	if len(text) == 0 {
		return l.fault(units.Missing, "")
	}
	for i, word := range l {
		if word == string(text) {
			*e = E(i)
			return nil
		}
	}
	return l.fault(units.Unknown, strconv.Quote(string(text[:min(len(text), 40)])))
}

func (l List) fault(code units.Code, value string) error {
	known := make([]string, 0, len(l))
	for _, word := range l {
		if word != "" {
			known = append(known, word)
		}
	}
	return &units.Fault{Code: code, Value: value, Want: "one of " + strings.Join(known, ", ")}
}
