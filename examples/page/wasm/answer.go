//go:build js && wasm

package main

import (
	"strings"

	"example.org/collinear/examples/internal/pumpset"
	"example.org/collinear/units"
)

var badCall = &units.Fault{Code: units.Malformed, Want: "two texts: a job, and the units of its sheet"}

// answer is the page's whole question. Nothing here depends on the browser.
func answer(job []byte, system string) (sheet, record string, err error) {
	show := pumpset.AsTheJob
	if system != "" {
		if err := show.UnmarshalText([]byte(system)); err != nil {
			return "", "", err
		}
	}
	j, err := pumpset.Read(job)
	if err != nil {
		return "", "", err
	}
	solved, err := pumpset.Solve(j)
	if err != nil {
		return "", "", err
	}
	return written(solved, show)
}

// written puts what was solved into text.
func written(solved pumpset.Record, show pumpset.System) (sheet, record string, err error) {
	var html, data strings.Builder
	if err := pumpset.WriteSheet(&html, solved, show); err != nil {
		return "", "", err
	}
	if err := pumpset.WriteRecord(&data, solved); err != nil {
		return "", "", err
	}
	return html.String(), data.String(), nil
}

// faults lists what is wrong. An error that is no fault is one of the whole job, so
// that it is shown as well.
func faults(err error) []*units.Fault {
	if all := units.Faults(err); len(all) > 0 {
		return all
	}
	return []*units.Fault{{Code: units.Unreachable, Want: "an answer that can be written down: " + err.Error()}}
}
