package pumpset

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
	if p.Len() > 0 {
		p.WriteByte('\n')
	}
	p.wrap("", "", strings.ToUpper(heading))
}

// para prints a paragraph.
func (p *page) para(text string) { p.wrap("  ", "  ", text) }

// item prints a text behind its label, and hangs what goes on below the text.
func (p *page) item(label, text string) {
	const indent = 16
	first := "  " + label + " "
	if n := utf8.RuneCountInString(first); n < indent {
		first += strings.Repeat(" ", indent-n)
	}
	if text != "" {
		p.wrap(first, strings.Repeat(" ", indent), text)
	}
}

// point prints one entry of a list.
func (p *page) point(text string) { p.wrap("  - ", "    ", text) }

// row prints the cells of a table, the columns so wide as the widths tell.
func (p *page) row(widths []int, cells ...string) {
	var line strings.Builder
	for i, cell := range cells {
		line.WriteString(cell)
		if i < len(cells)-1 {
			line.WriteString(strings.Repeat(" ", max(2, widths[i]-utf8.RuneCountInString(cell))))
		}
	}
	if text := strings.TrimRight(line.String(), " "); 4+utf8.RuneCountInString(text) <= columns {
		p.WriteString("    " + text + "\n")
	} else {
		p.wrap("    ", "        ", text)
	}
}

// blank leaves a line free.
func (p *page) blank() { p.WriteByte('\n') }

// amount is a number and the unit that must not be parted from it.
var amount = regexp.MustCompile(`(\d) (mm|mil|in|um|rpm|K|°[CF])\b`)

// unbroken holds numbers and their units together.
func unbroken(text string) string {
	return strings.ReplaceAll(amount.ReplaceAllString(text, "$1"+noBreak+"$2"), " %", noBreak+"%")
}

// tied holds words together on one line, like the space that does not break.
func tied(text string) string { return strings.ReplaceAll(text, " ", noBreak) }

const noBreak = "\u00a0"

// wrap prints words behind first, and on the lines that follow behind next. A
// word longer than a line is broken where the line ends.
func (p *page) wrap(first, next, text string) {
	line, empty := first, true
	flush := func() {
		p.WriteString(strings.TrimRight(strings.ReplaceAll(line, noBreak, " "), " ") + "\n")
		line, empty = next, true
	}
	text = unbroken(text)
	for word := range strings.SplitSeq(text, " ") {
		if word == "" {
			continue
		}
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
