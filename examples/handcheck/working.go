package main

import (
	"strings"

	"example.org/collinear/align/sheet"
)

// top prints what the file says of itself.
func (d *document) top(p *page) {
	if d.Title != "" {
		p.heading(d.Title)
		p.WriteByte('\n')
	}
	if d.Source != "" {
		p.para("Source: " + d.Source)
	}
	for _, note := range d.Notes {
		p.para(note)
	}
}

// worked prints the working, behind what the file says of itself or the task.
func (d *document) worked(s sheet.System, markdown bool) string {
	if markdown {
		return printableLines(d.markdownTop() + d.working.Markdown(s))
	}
	var p page
	d.top(&p)
	if d.task != "" {
		p.Reset()
		p.WriteString(d.task + "\n")
	}
	return p.String() + printableLines(d.working.Text(s))
}

// markdownTop is the same as top, for Markdown.
func (d *document) markdownTop() string {
	var b strings.Builder
	if d.Title != "" {
		b.WriteString("# " + plain.Replace(d.Title) + "\n\n")
	}
	if d.Source != "" {
		b.WriteString("Source: " + plain.Replace(d.Source) + "\n\n")
	}
	for _, note := range d.Notes {
		b.WriteString(plain.Replace(note) + "\n\n")
	}
	return b.String()
}

// plain keeps what Markdown would take for its own.
var plain = strings.NewReplacer(`\`, `\\`, "*", `\*`, "_", `\_`, "`", "\\`", "<", `\<`, "[", `\[`, "#", `\#`, "|", `\|`, "\n", " ")
