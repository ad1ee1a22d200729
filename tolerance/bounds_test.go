package tolerance_test

import (
	"strings"
	"testing"

	"example.org/collinear/tolerance"
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

// Of a text without an end one byte more than 1 MiB is read, and one fault told.
func TestReadCSVIsBounded(t *testing.T) {
	for _, text := range []string{"1,2\n", `"`, ",", "\n", "source\n", "\xff"} {
		r := &counted{text: text}
		_, err := tolerance.ReadCSV(r)
		if f := units.Faults(err); len(f) != 1 || f[0].Code != units.OutOfRange || f[0].Path != "" {
			t.Errorf("%q: got %.200v", text, err)
		}
		if r.read > 1<<20+1 {
			t.Errorf("%q: %d bytes were read", text, r.read)
		}
	}
}

// A table of nothing but columns, or lines, is one fault and not one for each.
func TestReadCSVOfManyFaults(t *testing.T) {
	for _, row := range []struct{ name, text, path string }{
		{"columns", strings.Repeat(",", 1_000_000), "/columns"},
		{"columns of one name behind others", strings.Repeat("x,", 200_000) + strings.Repeat("speed (rpm),", 40_000), "/columns"},
		{"lines", "speed (rpm),offset (mm)\n" + strings.Repeat("x\n", 500_000), ""},
		{"cells", "speed (rpm),offset (mm)\n" + strings.Repeat(",\n", 500_000), ""},
	} {
		_, err := tolerance.ReadCSV(strings.NewReader("source,a work\n" + row.text))
		if f := units.Faults(err); len(f) != 1 || f[0].Code != units.OutOfRange || f[0].Path != row.path {
			t.Errorf("%s: %d faults, %.200v", row.name, len(f), err)
		}
	}
}

// A number of a million digits is the fault of its cell.
func TestReadCSVOfLongNumbers(t *testing.T) {
	digits := strings.Repeat("9", 500_000)
	for _, cell := range []string{digits, "1/" + digits, "1e" + digits, "1e999999999"} {
		_, err := tolerance.ReadCSV(strings.NewReader("source,a work\nspeed (rpm),offset (in)\n1000," + cell + "\n"))
		if f := units.Faults(err); len(f) != 1 || f[0].Path != "/rows/0/offset" || len(err.Error()) > 400 {
			t.Errorf("%.20s: %.300v", cell, err)
		}
	}
}
