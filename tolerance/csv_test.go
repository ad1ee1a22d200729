package tolerance_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"example.org/collinear/tolerance"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// same asks that two tables hold the same.
func same(tb fataler, what string, got, want tolerance.Table) {
	tb.Helper()
	if got.Source() != want.Source() || got.Edition() != want.Edition() || !cmp.Equal(got.Rows(), want.Rows()) {
		tb.Errorf("%s: got %q, %q, %v, want %q, %q, %v", what,
			got.Source(), got.Edition(), got.Rows(), want.Source(), want.Edition(), want.Rows())
	}
}

func written(tb fataler, table tolerance.Table) string {
	tb.Helper()
	var b bytes.Buffer
	if err := table.WriteCSV(&b); err != nil {
		tb.Fatalf("WriteCSV: %v", err)
	}
	return b.String()
}

// What is written is read as the same, to the last bit, also as a text in JSON.
func TestCSVThereAndBack(t *testing.T) {
	plain := rapid.StringMatching(`[ -~\x{a0}-\x{2fff}]{0,30}x[ -~\x{a0}-\x{2fff}]{0,30}`)
	rapid.Check(t, func(t *rapid.T) {
		table, err := tolerance.NewTable(plain.Draw(t, "source"), plain.Draw(t, "edition"), drawRows(t)...)
		if err != nil {
			t.Fatal(err)
		}
		text := written(t, table)
		back, err := tolerance.ReadCSV(strings.NewReader(text))
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		same(t, text, back, table)
		data, err := json.Marshal(table)
		if err != nil {
			t.Fatal(err)
		}
		var again tolerance.Table
		if err := json.Unmarshal(data, &again); err != nil {
			t.Fatal(err)
		}
		same(t, string(data), again, table)
	})
}

// Forms that say the same: other orders, units, line ends, spaces, a byte order
// mark, and no edition.
func TestCSVForms(t *testing.T) {
	want := mustTable(t,
		tolerance.Row{Speed: 1500, Offset: units.Inch / 64, Flex: mmm}, tolerance.Row{Speed: 3000, Offset: 5 * units.Mil, Flex: 0.5 * mmm})
	for name, text := range map[string]string{
		"as written":        written(t, want),
		"edition first":     "edition,2024\nsource,Works standard 4-12\nspeed (rpm),offset (mm),flex (mm/m)\n1500,0.396875,1\n3000,0.127,0.5\n",
		"columns and rows":  "source,Works standard 4-12\nedition,2024\nflex (mm/m),offset (mm),speed (rpm)\n0.5,0.127,3000\n1,0.396875,1500\n",
		"units":             "source,Works standard 4-12\nedition,2024\nspeed (Hz),offset (in),flex (mil/in)\n25,1/64,1\n50,0.005,.5\n",
		"further units":     "source,Works standard 4-12\nedition,2024\nspeed (r/min),offset (thou),flex (mm/100mm)\n1500,15.625,0.1\n3000,5,0.05\n",
		"line ends":         "source,Works standard 4-12\r\nedition,2024\r\nspeed (rpm),offset (um),flex (um/m)\r\n1500,396.875,1000\r\n3000,127,500\r\n",
		"no last line end":  "source,Works standard 4-12\nedition,2024\nspeed (rpm),offset (mil),flex (mm/m)\n1500,15.625,1\n3000,5,0.5",
		"spaces and blanks": " source,Works standard 4-12\n\nedition ,2024\n\n speed (rpm) , offset (mm), flex  (mm/m)\n\n 1500 ,\t0.396875, 1\n3000,0.127, 0.5 \n\n",
		"quotes":            "source,\"Works standard 4-12\"\n\"edition\",\"2024\"\n\"speed (rpm)\",\"offset (in)\",\"flex (mm/m)\"\n\"1500\",\"1/64\",1\n3000,0.005,0.5\n",
		"byte order mark":   "\ufeffsource,Works standard 4-12\nedition,2024\nspeed (rpm),offset (mm),flex (mm/m)\n1500,0.396875,1\n3000,0.127,0.5\n",
	} {
		got, err := tolerance.ReadCSV(strings.NewReader(text))
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		same(t, name, got, want)
	}
	bare, err := tolerance.ReadCSV(strings.NewReader("source,a, \nspeed (rpm),flex (mm/m)\n1,1\n"))
	wantFaults(t, "three cells", err, "malformed /source")
	same(t, "refused", bare, tolerance.Table{})
	spaced, err := tolerance.ReadCSV(strings.NewReader("source, a \nspeed (rpm),flex (mm/m)\n1,1\n"))
	if err != nil || spaced.Source() != " a " || spaced.Edition() != "" {
		t.Errorf("source and edition are taken as they stand: %q %q %v", spaced.Source(), spaced.Edition(), err)
	}
}

// One line changed each, in a text that is read.
func TestCSVRefuses(t *testing.T) {
	sound := []string{"source,a", "edition,b", "speed (rpm),offset (mm),flex (mm/m)", "1000,0.1,1", "2000,0.05,0.5", "3000,0.02,0.4"}
	if _, err := tolerance.ReadCSV(strings.NewReader(strings.Join(sound, "\n"))); err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		name string
		line int // from 0
		text string
		want []string
	}{
		{"no source", 0, "", []string{"missing /source"}},
		{"source without text", 0, "source,", []string{"missing /source"}},
		{"source alone", 0, "source", []string{"malformed /source"}},
		{"source over two lines", 0, "source,\"a\nb\"", []string{"malformed /source"}},
		{"source twice", 1, "source,b", []string{"duplicate /source"}},
		{"edition in two cells", 1, "edition,2024,2025", []string{"malformed /edition"}},
		{"a record that is neither", 1, "author,b", []string{"unknown /columns/0", "unknown /columns/1"}},
		{"no header", 2, "", []string{"unknown /columns/0", "unknown /columns/1", "unknown /columns/2"}},
		{"no speed", 2, "slope (mm/m),offset (mm),flex (mm/m)", []string{"missing /columns"}},
		{"a column twice", 2, "speed (rpm),flex (mm/m),flex (mil/in)", []string{"duplicate /columns/2"}},
		{"a column unknown", 2, "speed (rpm),offset (mm),gap (mm)", []string{"unknown /columns/2"}},
		{"a column in capitals", 2, "Speed (rpm),offset (mm),flex (mm/m)", []string{"unknown /columns/0"}},
		{"no unit", 2, "speed,offset (mm),flex (mm/m)", []string{"missing /columns/0"}},
		{"an empty unit", 2, "speed (),offset (mm),flex (mm/m)", []string{"missing /columns/0"}},
		{"a unit unknown", 2, "speed (rpm),offset (ell),flex (mm/m)", []string{"unknown /columns/1"}},
		{"a unit of something else", 2, "speed (rpm),offset (mm/m),flex (mm)", []string{"unknown /columns/1", "unknown /columns/2"}},
		{"a unit with a number", 2, "speed (rpm),offset (0 mm),flex (mm/m)", []string{"unknown /columns/1"}},
		{"an open bracket", 2, "speed (rpm),offset (mm,flex (mm/m)", []string{"malformed /columns/1"}},
		{"something after the unit", 2, "speed (rpm),offset (mm)!,flex (mm/m)", []string{"malformed /columns/1"}},
		{"a bad cell beside a column unknown", 2, "speed (rpm),gap (mm),flex (mm/m)\n500,?,x\n0,?,1", []string{"unknown /columns/1", "malformed /rows/0/flex", "out_of_range /rows/1/speed"}},
		{"wider than slower beside a column unknown", 2, "speed (rpm),gap (mm),flex (mm/m)\n500,?,0.2", []string{"unknown /columns/1", "conflict /rows/1/flex"}},
		{"a bad cell where no speed is", 2, "slope (mm/m),offset (mm),flex (mm/m)\n500,-1,1", []string{"missing /columns", "out_of_range /rows/0/offset"}},
		{"one column twice, another not there", 2, "offset (mm),flex (mm/m),flex (mil/in)", []string{"duplicate /columns/2", "missing /columns"}},
		{"a limit in two columns is the first", 2, "speed (rpm),flex (mm/m),flex (mil/in)\n500,2,?", []string{"duplicate /columns/2"}},
		{"a cell too few", 4, "2000,0.05", []string{"malformed /rows/1"}},
		{"a cell too many", 4, "2000,0.05,0.5,", []string{"malformed /rows/1"}},
		{"an empty cell", 4, "2000,,0.5", []string{"missing /rows/1/offset"}},
		{"a blank cell", 4, "2000, ,0.5", []string{"missing /rows/1/offset"}},
		{"a word", 4, "2000,small,0.5", []string{"malformed /rows/1/offset"}},
		{"a comma for a point", 4, `2000,"0,05",0.5`, []string{"malformed /rows/1/offset"}},
		{"a cell with its own unit", 4, "2000,0.05 mm,0.5", []string{"unknown /rows/1/offset"}},
		{"zero is not a limit", 4, "2000,0,0.5", []string{"out_of_range /rows/1/offset"}},
		{"nor below", 4, "2000,0.05,-0.5", []string{"out_of_range /rows/1/flex"}},
		{"too small", 4, "2000,1e-7,0.5", []string{"out_of_range /rows/1/offset"}},
		{"NaN", 4, "2000,NaN,0.5", []string{"not_finite /rows/1/offset"}},
		{"too large", 4, "2000,0.05,1e400", []string{"out_of_range /rows/1/flex"}},
		{"no speed in a row", 4, ",0.05,0.5", []string{"missing /rows/1/speed"}},
		{"speed zero", 4, "0,0.05,0.5", []string{"out_of_range /rows/1/speed"}},
		{"the same speed", 4, "1000,0.05,0.5", []string{"duplicate /rows/1/speed"}},
		{"wider than slower", 4, "2000,0.5,0.5", []string{"conflict /rows/1/offset"}},
		{"two mistakes in a row and one in another", 4, "2000,x,-1\n2500,,0.4", []string{"malformed /rows/1/offset", "out_of_range /rows/1/flex", "missing /rows/2/offset"}},
		{"a stray quote", 4, `2000,0"05,0.5`, []string{"malformed "}},
		{"a quote left open", 4, `2000,"0.05,0.5`, []string{"malformed "}},
		{"not UTF-8", 0, "source,\xff", []string{"malformed "}},
	} {
		lines := append([]string{}, sound...)
		lines[row.line] = row.text
		table, err := tolerance.ReadCSV(strings.NewReader(strings.Join(lines, "\n")))
		wantFaults(t, row.name, err, row.want...)
		same(t, row.name, table, tolerance.Table{})
	}
	for text, want := range map[string][]string{
		"":                                  {"missing /source", "missing /columns"},
		"source,a":                          {"missing /columns"},
		"source,a\nspeed (rpm)\n1":          {"missing /rows"},
		"source,a\nspeed (rpm),flex (mm/m)": {"missing /rows"},
		"source,a\nspeed (rpm),flex (mm)":   {"unknown /columns/1", "missing /rows"},
		"speed (rpm),flex (mm)\n1,1":        {"missing /source", "unknown /columns/1"},
	} {
		_, err := tolerance.ReadCSV(strings.NewReader(text))
		wantFaults(t, text, err, want...)
	}
}

// endless is a reader that never ends.
type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = '1'
	}
	return len(p), nil
}

// What is wrong with the reader or the writer is told as it is, and is no fault.
func TestCSVInAndOut(t *testing.T) {
	broken := errors.New("the line is dead")
	_, err := tolerance.ReadCSV(iotest.ErrReader(broken))
	if !errors.Is(err, broken) || units.Faults(err) != nil {
		t.Errorf("got %v", err)
	}
	table := mustTable(t, tolerance.Row{Speed: 1, Offset: um})
	if err := table.WriteCSV(brokenWriter{broken}); !errors.Is(err, broken) {
		t.Errorf("got %v", err)
	}
	_, err = tolerance.ReadCSV(endless{})
	wantFaults(t, "endless", err, "out_of_range ")
	wantFaults(t, "write nothing", tolerance.Table{}.WriteCSV(io.Discard), "missing /rows")
	text := written(t, table)
	if back, err := tolerance.ReadCSV(iotest.OneByteReader(strings.NewReader(text))); err != nil {
		t.Error(err)
	} else {
		same(t, "byte by byte", back, table)
	}
	most := text + strings.Repeat("\n", 1<<20-len(text))
	if _, err := tolerance.ReadCSV(strings.NewReader(most)); err != nil {
		t.Errorf("1 MiB is refused: %v", err)
	}
	_, err = tolerance.ReadCSV(strings.NewReader(most + "\n"))
	wantFaults(t, "a byte more", err, "out_of_range ")
}

type brokenWriter struct{ error }

func (w brokenWriter) Write([]byte) (int, error) { return 0, w.error }

// A table on the wire that is refused leaves what was there.
func TestTableStaysOnRefusal(t *testing.T) {
	table := mustTable(t, tolerance.Row{Speed: 1, Offset: um})
	before := table
	if err := table.UnmarshalText([]byte("nothing")); err == nil {
		t.Error("nothing is read as a table")
	}
	same(t, "after", table, before)
	if _, err := json.Marshal(tolerance.Table{}); err == nil {
		t.Error("a table of nothing has a wire form")
	}
}

// FuzzReadCSV: whatever comes is a table, which is then written and read as the
// same, and answers at every speed of its own, or it is refused with faults. It
// never panics.
func FuzzReadCSV(f *testing.F) {
	for _, seed := range []string{
		"", "source,a\nspeed (rpm),offset (mm)\n1000,0.1\n",
		"\ufeffsource,\"a, b\"\r\nedition,2\r\nflex (mil/in),speed (Hz),offset (in)\r\n1,25,5 7/16\r\n.5,50,1/64\r\n",
		"source,a\nspeed (rpm),slope (um/m)\n1,1e3\n2,\"1,5\"\n", "source\nedition,,\n(,)\n",
	} {
		f.Add([]byte(seed))
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		table, err := tolerance.ReadCSV(bytes.NewReader(text))
		if err != nil {
			if units.Faults(err) == nil {
				t.Errorf("%v is no fault", err)
			}
			return
		}
		back, err := tolerance.ReadCSV(strings.NewReader(written(t, table)))
		if err != nil {
			t.Fatal(err)
		}
		same(t, "back", back, table)
		for _, row := range table.Rows() {
			l, err := table.At(row.Speed)
			if err != nil || l.Validate() != nil || l.Offset != row.Offset || l.Slope != row.Slope || l.Flex != row.Flex {
				t.Errorf("at %v: %+v, %v", row.Speed, l, err)
			}
		}
	})
}
