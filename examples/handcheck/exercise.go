package main

import (
	"strings"

	"example.org/collinear/align/sheet"
	"example.org/collinear/examples/internal/strict"
	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
)

// exercise draws the exercise of the seed.
func (o *options) exercise() (*document, error) {
	system := sheet.Metric
	if o.units != nil {
		system = *o.units
	}
	e, err := sheet.NewExercise(*o.seed, o.difficulty, system)
	if err != nil {
		return nil, err
	}
	d := document{task: e.Text(), head: head{Title: e.Title, Notes: []string{e.Story}, Units: system, Problem: e.Problem}}
	var faults strict.Faults
	d.workOut(&faults)
	return &d, faults.Err()
}

// sheetFile is a file as it is written.
type sheetFile struct {
	Title   string         `json:"title,omitzero"`
	Source  string         `json:"source,omitzero"`
	Notes   []string       `json:"notes,omitempty"`
	Units   sheet.System   `json:"units"`
	Problem sheet.Problem  `json:"problem"`
	Answers jsontext.Value `json:"answers"`
}

// blank is the file with an empty answer for each line, in the order of the working.
func (d *document) blank(s sheet.System) (string, error) {
	answers := make([]string, len(d.steps))
	for i, step := range d.steps {
		answers[i] = string(quoted(step.ID)) + `:""`
	}
	data, err := json.Marshal(sheetFile{
		Title: d.Title, Source: d.Source, Notes: d.Notes, Units: s, Problem: d.Problem,
		Answers: jsontext.Value("{" + strings.Join(answers, ",") + "}"),
	}, json.Deterministic(true), jsontext.WithIndent("  "))
	return string(data) + "\n", err
}
