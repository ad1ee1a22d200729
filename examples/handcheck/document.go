package main

import (
	"example.org/collinear/align/sheet"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// head is a file but for its lists of answers. SHEET.md describes the file. A
// field marked omitzero or omitempty may be left out.
type head struct {
	Title   string        `json:"title,omitzero"`
	Source  string        `json:"source,omitzero"`
	Notes   []string      `json:"notes,omitempty"`
	Units   sheet.System  `json:"units,omitzero"`
	Problem sheet.Problem `json:"problem"`
	Answers takenOut      `json:"answers,omitzero"`
	Drawn   takenOut      `json:"drawn,omitzero"`
}

// document is a file that was read, or an exercise that was drawn.
type document struct {
	head
	working sheet.Working
	steps   []sheet.Step
	numbers map[string]int // where each step stands in the working, from 1
	task    string         // of an exercise, as a trainee is handed it
	marking sheet.Marking  // of the answers, where there are any
	marks   bool           // whether there are
}

// read reads a file, works its problem and marks its answers. The error holds all
// faults.
func read(data []byte) (*document, error) {
	var d document
	var faults strict.Faults
	rest, lists := takeOut(data, "answers", "drawn")
	err := strict.Read(rest, bounds, "a sheet", &d.head)
	faults.Adopt(err, func(path string) string { return path })
	answers := texts(&faults, "/answers", lists["answers"])
	drawn := lengths(&faults, "/drawn", lists["drawn"])
	if err == nil && d.workOut(&faults) {
		d.mark(&faults, answers, drawn)
	}
	return &d, faults.Err()
}

// workOut has the library work the lines, and tells whether the problem is sound.
func (d *document) workOut(faults *strict.Faults) bool {
	var err error
	d.working, err = d.Problem.Working()
	d.steps = d.working.Steps(d.Units)
	d.numbers = map[string]int{}
	for i, s := range d.steps {
		d.numbers[s.ID] = i + 1
	}
	faults.Adopt(err, func(path string) string { return "/problem" + path })
	return err == nil
}

// mark has the answers marked that are filled in.
func (d *document) mark(faults *strict.Faults, answers map[string]string, drawn map[string]units.Length) {
	filled := map[string]string{}
	for id, text := range answers {
		if text != "" || d.numbers[id] == 0 { // an empty one of a line that there is not is refused with the rest
			filled[id] = text
		}
	}
	if d.marks = len(filled) > 0; d.marks {
		var err error
		d.marking, err = d.working.CheckDrawn(filled, drawn)
		faults.Adopt(err, func(path string) string { return path })
	}
}
