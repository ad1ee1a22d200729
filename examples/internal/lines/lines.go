// Package lines breaks text into lines for a page of so many columns, which the
// examples print on.
package lines

import (
	"regexp"
	"strings"
	"unicode/utf8"
)

// Columns is how wide a page is.
const Columns = 80

// noBreak is a space at which no line is broken.
const noBreak = "\u00a0"

// amount is a number and the unit that must not be parted from it.
var amount = regexp.MustCompile(`(\d) (mm|mil|in|um|rpm|K|%|°[CF]|o'clock)(\W|$)`)

// Unbroken holds numbers and their units together, by spaces that do not break.
func Unbroken(text string) string { return amount.ReplaceAllString(text, "$1"+noBreak+"$2$3") }

// Tied holds all words of a text together.
func Tied(text string) string { return strings.ReplaceAll(text, " ", noBreak) }

// Plain has the space of a typewriter for those that do not break.
func Plain(text string) string { return strings.ReplaceAll(text, noBreak, " ") }

// Wrap writes words behind first, and on the lines that follow behind next. No number
// is parted from its unit, and nothing is cut off: a word longer than a line is broken
// where the line ends.
func Wrap(w *strings.Builder, first, next, text string) {
	line, empty := first, true
	flush := func() {
		w.WriteString(strings.TrimRight(Plain(line), " ") + "\n")
		line, empty = next, true
	}
	for word := range strings.SplitSeq(Unbroken(text), " ") {
		if word == "" {
			continue
		}
		if !empty && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > Columns {
			flush()
		}
		if !empty {
			line += " "
		}
		for _, r := range word {
			if utf8.RuneCountInString(line) == Columns {
				flush()
			}
			line += string(r)
			empty = false
		}
	}
	flush()
}
