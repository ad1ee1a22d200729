package main

import (
	"strings"
	"unicode/utf8"

	"example.org/collinear/examples/internal/lines"
)

// page lays out a report of at most so many columns. Nothing is cut off: what is
// too long goes on in the next line.
type page struct{ strings.Builder }

// section starts a section under its heading.
func (p *page) section(heading string) {
	p.WriteByte('\n')
	p.wrap("", "", heading)
	p.WriteString(strings.Repeat("-", min(lines.Columns, utf8.RuneCountInString(heading))) + "\n")
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

// wrap prints words behind first, and on the lines that follow behind next.
func (p *page) wrap(first, next, text string) { lines.Wrap(&p.Builder, first, next, text) }
