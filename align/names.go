package align

import (
	"strconv"
	"strings"

	"example.org/collinear/units"
)

// names are the words of a small set of choices, on the wire and in print. The
// index is the value; an empty word stands for a choice not made.
type names []string

// word returns the word of i, or its number where it has none.
func (n names) word(i uint8) string {
	if int(i) < len(n) && n[i] != "" {
		return n[i]
	}
	return strconv.Itoa(int(i))
}

// known tells whether i is a choice that was made.
func (n names) known(i uint8) bool { return int(i) < len(n) && n[i] != "" }

func (n names) marshal(i uint8) ([]byte, error) {
	if !n.known(i) {
		return nil, n.fault(units.Unknown, strconv.Itoa(int(i)))
	}
	return []byte(n[i]), nil
}

func (n names) unmarshal(text []byte) (uint8, error) {
	if len(text) == 0 {
		return 0, n.fault(units.Missing, "")
	}
	for i, word := range n {
		if word == string(text) {
			return uint8(i), nil
		}
	}
	return 0, n.fault(units.Unknown, strconv.Quote(string(text[:min(len(text), 40)])))
}

func (n names) fault(code units.Code, value string) error {
	words := make([]string, 0, len(n))
	for _, word := range n {
		if word != "" {
			words = append(words, word)
		}
	}
	return &units.Fault{Code: code, Value: value, Want: "one of " + strings.Join(words, ", ")}
}
