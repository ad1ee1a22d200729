package main

import (
	"fmt"
	"strconv"
	"strings"

	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
)

// caution ends every marking.
const caution = "A sheet on which every line follows may still rest on readings that were wrongly taken, and is no " +
	"permission to start or to run a machine. Isolate and lock out the driver before a coupling or a bolt is " +
	"loosened; the makers' instructions, local codes and licensed practice come first."

// marked prints what is found of the sheet, and tells whether all is right.
func (d *document) marked() (string, int, error) {
	if !d.marks {
		return "", refused, &units.Fault{Code: units.Missing, Path: "/answers", Want: "the answer of at least one line"}
	}
	var p page
	d.top(&p)
	p.para("Expected is what follows from the lines above as they stand on the sheet, so that one slip counts once.")
	for _, j := range d.marking.Lines {
		d.judged(&p, j)
	}
	if n := len(d.steps) - len(d.marking.Lines); n > 0 {
		p.para(count(n, "line") + " of the working not on the sheet.")
	}
	code := right
	if d.marking.Right() {
		p.para("Every line on the sheet follows.")
	} else {
		code = wrong
		d.explained(&p)
	}
	p.para(caution)
	return p.text(), code, nil
}

// judged prints one line of the sheet.
func (d *document) judged(p *page, j sheet.Judgement) {
	p.item(fmt.Sprintf("%2d. ", d.numbers[j.Step]), d.called(j.Step))
	p.item("    written   ", j.Written)
	p.item("    expected  ", j.Expected)
	p.item("    ", verdict(j))
	p.WriteByte('\n')
}

// verdict puts a judgement into words.
func verdict(j sheet.Judgement) string {
	switch {
	case j.Right:
		return "follows, within the " + j.Within + " that rounding explains"
	case j.True:
		return "DOES NOT FOLLOW from the lines above as they stand, though it is the right answer"
	}
	return "DOES NOT FOLLOW: rounding explains no more than " + j.Within
}

// called is what a line is for, and the name under which it is answered.
func (d *document) called(id string) string {
	return d.steps[d.numbers[id]-1].Sought + "  [" + id + "]"
}

// explained prints which slips account for what is wrong.
func (d *document) explained(p *page) {
	m := d.marking
	p.heading("What explains it")
	p.para(leadIn(m))
	for _, e := range m.Explanations {
		d.explanation(p, e)
	}
	if wrongLines(m) == 1 && len(m.Explanations) > 0 {
		p.para("One line is all that tells of it: plain arithmetic gone wrong there would look the same.")
	}
	switch n := len(m.Explanations); {
	case n == 0:
		d.list(p, m.Unexplained())
	case n > 1 && len(m.Ask) == 0:
		p.para("No other line of the working would tell them apart.")
	case n > 1:
		p.para("To tell them apart, ask also for:")
		d.list(p, m.Ask)
	}
}

func wrongLines(m sheet.Marking) int {
	n := 0
	for _, j := range m.Lines {
		if !j.Right {
			n++
		}
	}
	return n
}

// leadIn says how far the explanations go.
func leadIn(m sheet.Marking) string {
	which, what := "This accounts for", "what is wrong:"
	if len(m.Explanations) > 1 {
		which, what = "Each of these accounts for", "what is wrong, and this sheet does not tell which it was:"
	}
	switch {
	case len(m.Explanations) == 0:
		return "No slip that is known here accounts for these lines: go through them together."
	case len(m.Explanations[0].Left) > 0:
		return "No slip that is known here accounts for all of it. " + which + " a part of " + what
	}
	return which + " " + what
}

// explanation prints one slip, or two that were made together.
func (d *document) explanation(p *page, e sheet.Explanation) {
	label := "  - "
	for i, slip := range e.Slips {
		text := slip.Kind.Words() + ", in " + d.where(slip.Steps)
		if i > 0 {
			label, text = "    ", "and "+text
		}
		p.item(label, text)
	}
	if len(e.Left) > 0 {
		p.item("    ", "which leaves "+d.where(e.Left)+" unexplained")
	}
	p.WriteByte('\n')
}

// where names lines by their numbers.
func (d *document) where(ids []string) string {
	numbers := make([]string, len(ids))
	for i, id := range ids {
		numbers[i] = strconv.Itoa(d.numbers[id])
	}
	last := len(numbers) - 1
	if last < 1 {
		return "line " + strings.Join(numbers, "")
	}
	return "lines " + strings.Join(numbers[:last], ", ") + " and " + numbers[last]
}

// list prints lines by their numbers and what they are for.
func (d *document) list(p *page, ids []string) {
	for _, id := range ids {
		p.item(fmt.Sprintf("%2d. ", d.numbers[id]), d.called(id))
	}
	p.WriteByte('\n')
}

func count(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}
