// Package markup writes HTML and SVG in which every text and every attribute is
// escaped. It does what a page with numbers in it needs and no more: html/template
// would double the size of a program for the browser.
package markup

import (
	"html"
	"strings"
)

// Writer holds what was written so far. Its String is the document.
type Writer struct {
	strings.Builder
	open []string
}

// Open begins an element that End closes. Attributes are names, each followed by its
// value; one whose value is empty is left out.
func (w *Writer) Open(tag string, attributes ...string) {
	w.tag(tag, attributes)
	w.WriteByte('>')
	w.open = append(w.open, tag)
}

// End closes the element that was opened last.
func (w *Writer) End() {
	last := len(w.open) - 1
	w.WriteString("</" + w.open[last] + ">")
	w.open = w.open[:last]
}

// Text writes text as it is to be read.
func (w *Writer) Text(text string) { w.WriteString(html.EscapeString(text)) }

// Leaf writes an element that holds text alone.
func (w *Writer) Leaf(tag, text string, attributes ...string) {
	w.Open(tag, attributes...)
	w.Text(text)
	w.End()
}

// Void writes an element of SVG that holds nothing.
func (w *Writer) Void(tag string, attributes ...string) {
	w.tag(tag, attributes)
	w.WriteString("/>")
}

func (w *Writer) tag(tag string, attributes []string) {
	w.WriteString("<" + tag)
	for i := 1; i < len(attributes); i += 2 {
		if attributes[i] != "" {
			w.WriteString(" " + attributes[i-1] + `="` + html.EscapeString(attributes[i]) + `"`)
		}
	}
}
