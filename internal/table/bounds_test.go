package table_test

import (
	"errors"
	"io"
	"strings"
	"testing"

	"example.org/collinear/internal/check"
	"example.org/collinear/internal/table"
	"example.org/collinear/units"
)

// counted is a text that goes on, and counts what was read of it.
type counted struct {
	text string
	read int
}

func (e *counted) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = e.text[(e.read+i)%len(e.text)]
	}
	e.read += len(p)
	return len(p), nil
}

// Of a text without an end no more is read than shows that it is too long.
func TestNoMoreIsReadThanBounds(t *testing.T) {
	const most = 1 << 16
	for _, text := range []string{"a,b\n", `"`, ",", "\n", "\x00", "\xff"} {
		r := &counted{text: text}
		records, err := table.Read(r, most, "a list")
		if !isFault(err, units.OutOfRange, "") || records != nil {
			t.Errorf("%q: got %d records, %v", text, len(records), err)
		}
		if r.read > most+1 {
			t.Errorf("%q: %d bytes were read", text, r.read)
		}
	}
}

// An error of the reader far in is no fault of the text.
func TestErrorBeyondTheEnd(t *testing.T) {
	broken := errors.New("broken")
	_, err := table.Read(io.MultiReader(strings.NewReader("a,b\n"), failing{broken}), 100, "a list")
	if !errors.Is(err, broken) || len(units.Faults(err)) != 0 {
		t.Errorf("got %v", err)
	}
}

type failing struct{ err error }

func (f failing) Read([]byte) (int, error) { return 0, f.err }

// Too many lines are one fault, not one for each.
func TestMostLines(t *testing.T) {
	const most = 10_000
	for _, row := range []struct {
		name  string
		lines int
		sound bool
	}{{"as many as there may be", most, true}, {"one more", most + 1, false}} {
		records, err := table.Read(strings.NewReader(strings.Repeat("a\n", row.lines)), 1<<20, "a list")
		if row.sound && (err != nil || len(records) != row.lines) || !row.sound && !isFault(err, units.OutOfRange, "") {
			t.Errorf("%s: got %d records, %v", row.name, len(records), err)
		}
	}
}

// Too many columns are one fault, and none of them is known.
func TestMostColumns(t *testing.T) {
	const most = 100
	for _, row := range []struct {
		name    string
		columns int
		faults  int
	}{{"as many as there may be, all but one doubled", most, most - 1}, {"one more", most + 1, 1}} {
		records := [][]string{strings.Split(strings.Repeat("note,", row.columns-1)+"note", ",")}
		var faults check.Faults
		var root check.Path
		head := table.ReadHeader(&faults, root.Field("columns"), records, known, "note")
		if faults.Len() != row.faults || head.Blank() != (row.faults == 1) {
			t.Errorf("%s: %d faults, blank %v", row.name, faults.Len(), head.Blank())
		}
		if row.faults == 1 && !isFault(faults.Err(), units.OutOfRange, "/columns") {
			t.Errorf("%s: got %v", row.name, faults.Err())
		}
	}
}

// isFault tells whether an error is one fault, of this code and path.
func isFault(err error, code units.Code, path string) bool {
	all := units.Faults(err)
	return len(all) == 1 && all[0].Code == code && all[0].Path == path
}
