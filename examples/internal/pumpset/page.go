package pumpset

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
	if text := strings.TrimRight(line.String(), " "); 4+utf8.RuneCountInString(text) <= lines.Columns {
		p.WriteString("    " + text + "\n")
	} else {
		p.wrap("    ", "        ", text)
	}
}

// blank leaves a line free.
func (p *page) blank() { p.WriteByte('\n') }

// wrap prints words behind first, and on the lines that follow behind next.
func (p *page) wrap(first, next, text string) { lines.Wrap(&p.Builder, first, next, text) }
