package main

import (
	"regexp"
	"strings"
	"unicode/utf8"

	"example.org/collinear/examples/internal/strict"
)

// page lays out a text of at most so many columns. Nothing is cut off: what is too
// long goes on in the next line.
type page struct{ strings.Builder }

const columns = 80

// heading prints a line with a rule below.
func (p *page) heading(text string) {
	p.wrap("", "", text)
	p.WriteString(strings.Repeat("-", min(columns, utf8.RuneCountInString(text))) + "\n")
}

// text is the page without the empty line at its end.
func (p *page) text() string { return strings.TrimSuffix(p.String(), "\n") }

// para prints a paragraph and a line that is empty.
func (p *page) para(text string) {
	p.wrap("", "", text)
	p.WriteByte('\n')
}

// item prints a text behind a label, and hangs what goes on below the text.
func (p *page) item(label, text string) {
	p.wrap(label, strings.Repeat(" ", utf8.RuneCountInString(label)), text)
}

// amount is a number and the unit that must not be parted from it.
var amount = regexp.MustCompile(`(\d) (mm|mil|in|K|o'clock)\b`)

const noBreak = "\u00a0"

// wrap prints words behind first, and on the lines that follow behind next. A word
// longer than a line goes over its end.
func (p *page) wrap(first, next, text string) {
	line, empty := first, true
	for word := range strings.SplitSeq(amount.ReplaceAllString(strict.Printable(text), "$1"+noBreak+"$2"), " ") {
		if !empty && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > columns {
			p.line(line)
			line, empty = next, true
		}
		if !empty {
			line += " "
		}
		line, empty = line+word, false
	}
	p.line(line)
}

func (p *page) line(text string) {
	p.WriteString(strings.TrimRight(strings.ReplaceAll(text, noBreak, " "), " ") + "\n")
}

// printableLines spells out, line by line, what would steer the terminal.
func printableLines(text string) string {
	lines := strings.Split(text, "\n")
	for i := range lines {
		lines[i] = strict.Printable(lines[i])
	}
	return strings.Join(lines, "\n")
}
