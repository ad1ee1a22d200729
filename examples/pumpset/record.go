package main

import (
	"io"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"
)

// writeRecord prints the record, the same bytes for the same job.
func writeRecord(w io.Writer, r record) error {
	data, err := json.Marshal(r, json.Deterministic(true), jsontext.WithIndent("  "))
	if err != nil {
		return err
	}
	_, err = w.Write(append(data, '\n'))
	return err
}
