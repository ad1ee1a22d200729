package pumpset

import (
	"io"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
)

// WriteRecord prints the record, the same bytes for the same job.
func WriteRecord(w io.Writer, r Record) error {
	data, err := json.Marshal(r, json.Deterministic(true), jsontext.WithIndent("  "))
	if err != nil {
		return err
	}
	_, err = w.Write(append(data, '\n'))
	return err
}
