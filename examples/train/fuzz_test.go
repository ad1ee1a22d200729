package main

import (
	"bytes"
	"testing"
	"unicode"
)

// FuzzJob: whatever the bytes are, they are refused with faults, or planned into a
// report in either system and a record, the same each time; and nothing that is printed
// steers the terminal.
func FuzzJob(f *testing.F) {
	f.Add(builtIn)
	for _, row := range refusals {
		if doc := row.edit(f, builtIn); len(doc) < 10_000 {
			f.Add(doc)
		}
	}
	f.Fuzz(func(t *testing.T, doc []byte) {
		r, err := outcome(doc)
		if err != nil {
			if len(faults(t, err)) == 0 {
				t.Errorf("%v holds no fault", err)
			}
			return
		}
		for _, s := range []system{metric, inch, asTheJob} {
			var first, second bytes.Buffer
			if err := writeReport(&first, r, s); err != nil {
				t.Fatal(err)
			}
			if err := writeReport(&second, r, s); err != nil || !bytes.Equal(first.Bytes(), second.Bytes()) {
				t.Errorf("two reports of one record: %v", err)
			}
			odd := func(r rune) bool { return r != '\n' && !unicode.IsGraphic(r) }
			if bytes.ContainsFunc(first.Bytes(), odd) {
				t.Errorf("prints %q", first.String())
			}
		}
		var record bytes.Buffer
		if err := writeRecord(&record, r); err != nil {
			t.Errorf("the record cannot be written: %v", err)
		}
	})
}
