package main

import (
	"regexp"
	"strings"
	"unicode/utf8"
)

// page lays out a report of at most so many columns. Nothing is cut off: what is
// too long goes on in the next line.
type page struct{ strings.Builder }

const columns = 80

// section starts a section under its heading.
func (p *page) section(heading string) {
	p.WriteByte('\n')
	p.wrap("", "", heading)
	p.WriteString(strings.Repeat("-", min(columns, utf8.RuneCountInString(heading))) + "\n")
}

// para prints a paragraph.
func (p *page) para(text string) { p.wrap("", "", text) }

// item prints a text behind its label, and hangs what goes on below the text.
func (p *page) item(label, text string) {
	const indent = 14
	label += strings.Repeat(" ", max(1, indent-utf8.RuneCountInString(label)))
	if text != "" {
		p.wrap(label, strings.Repeat(" ", indent), text)
	}
}

// point prints one entry of a list behind its mark.
func (p *page) point(mark, text string) {
	p.wrap("  "+mark+" ", strings.Repeat(" ", 3+utf8.RuneCountInString(mark)), text)
}

// amount is a number and the unit that must not be parted from it.
var amount = regexp.MustCompile(`(\d) (mm|mil|in|K)\b`)

const noBreak = "\u00a0"

// wrap prints words behind first, and on the lines that follow behind next. A word
// longer than a line is broken where the line ends.
func (p *page) wrap(first, next, text string) {
	line, empty := first, true
	flush := func() {
		p.WriteString(strings.TrimRight(strings.ReplaceAll(line, noBreak, " "), " ") + "\n")
		line, empty = next, true
	}
	for word := range strings.SplitSeq(amount.ReplaceAllString(text, "$1"+noBreak+"$2"), " ") {
		if !empty && utf8.RuneCountInString(line)+1+utf8.RuneCountInString(word) > columns {
			flush()
		}
		if !empty {
			line += " "
		}
		for _, r := range word {
			if utf8.RuneCountInString(line) == columns {
				flush()
			}
			line += string(r)
			empty = false
		}
	}
	flush()
}
