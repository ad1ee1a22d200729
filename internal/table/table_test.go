package table_test

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"example.org/collinear/internal/check"
	"example.org/collinear/internal/table"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// known takes lengths and widths in millimetres, and notes without a unit.
func known(c table.Column) error {
	switch {
	case c.Whole && c.Unit == "" && c.Name == "note",
		c.Whole && c.Unit == "mm" && (c.Name == "length" || c.Name == "width"):
		return nil
	}
	return c.Refuse(units.Unknown, "length (mm), width (mm) or note")
}

// read returns the cells that are handed out, each with its path, and the faults.
func read(text string) (cells []string, head table.Header, err error) {
	records, err := table.Read(strings.NewReader(text), 200, "a list")
	if err != nil {
		return nil, head, err
	}
	var faults check.Faults
	var root check.Path
	head = table.ReadHeader(&faults, root.Field("columns"), records, known, "length (mm)", "note")
	if !head.Blank() {
		head.Cells(&faults, root.Field("rows"), records[1:], func(at check.Path, row int, c table.Column, cell string) {
			cells = append(cells, fmt.Sprintf("%s %d %s|%s=%s", at.String(), row, c.Name, c.Unit, cell))
		})
	}
	return cells, head, faults.Err()
}

func Example() {
	cells, _, err := read("note, length (mm) ,colour\nlid, 12,red\nbox,30\n")
	fmt.Println(strings.Join(cells, "\n"))
	fmt.Println(err)
	// Output:
	// /rows/0/note 0 note|=lid
	// /rows/0/length 0 length|mm=12
	// /columns/2: want length (mm), width (mm) or note, got "colour" (unknown)
	// /rows/1: want 3 cells, as many as there are columns, got 2 cells (malformed)
}

func TestRead(t *testing.T) {
	const sound = "note,length (mm)\na,1\n"
	want := []string{"/rows/0/note 0 note|=a", "/rows/0/length 0 length|mm=1"}
	for _, row := range []struct {
		name, text string
		cells      []string
		faults     string
	}{
		{"as written", sound, want, ""},
		{"byte order mark", "\ufeff" + sound, want, ""},
		{"ends of lines, and none at the last", "note,length (mm)\r\n\r\na,1", want, ""},
		{"spaces", " note ,\tlength  (mm) \n a , 1\n", want, ""},
		{"no space before the bracket", "note,length(mm)\na,1\n", want, ""},
		{"quotes", "\"note\",\"length (mm)\"\n\"a\",\"1\"\n", want, ""},
		{"a comma in a cell", "note,length (mm)\n\"a, b\",\n", []string{"/rows/0/note 0 note|=a, b", "/rows/0/length 0 length|mm="}, ""},
		{"just the length", sound + strings.Repeat("\n", 200-len(sound)), want, ""},

		{"a byte longer", sound + strings.Repeat("\n", 201-len(sound)), nil, "out_of_range "},
		{"not UTF-8", sound + "\xff,1\n", nil, "malformed "},
		{"a quote within a cell", sound + "a\"b,1\n", nil, "malformed "},
		{"a quote left open", sound + "\"b,1\n", nil, "malformed "},
		{"nothing", "", nil, "missing /columns"},
		{"nothing but empty lines", "\n\n", nil, "missing /columns"},
		{"two byte order marks", "\ufeff\ufeff" + sound, want[1:], "unknown /columns/0"},

		{"no column known, rows of any length", "colour\na,1\n", nil, "unknown /columns/0"},
		{"a column of no name", "note,length (mm),\na,1,\n", want, "unknown /columns/2"},
		{"two columns that are not known are no double", "note,length (mm),x,x\na,1,,\n", want, "unknown /columns/2 unknown /columns/3"},
		{"a column twice: the first counts", "note,length (mm),length (mm)\na,1,2\n", want, "duplicate /columns/2"},
		{"a column missing", "note\na\n", want[:1], "missing /columns"},
		{"both missing", "width (mm)\n2\n", []string{"/rows/0/width 0 width|mm=2"}, "missing /columns missing /columns"},
		{"one missing, another twice", "note,note\na,b\n", want[:1], "duplicate /columns/1 missing /columns"},
		{"one that may be the one not known", "note,Length (mm)\na,1\n", want[:1], "unknown /columns/1"},
		{"a row too short, one too long", "note,length (mm)\na,1\na\na,1,\n", want, "malformed /rows/1 malformed /rows/2"},
	} {
		cells, _, err := read(row.text)
		if diff := cmp.Diff(row.cells, cells); diff != "" {
			t.Errorf("%s: cells (-want +got):\n%s", row.name, diff)
		}
		var faults []string
		for _, f := range units.Faults(err) {
			faults = append(faults, string(f.Code)+" "+f.Path)
		}
		if got := strings.Join(faults, " "); got != row.faults {
			t.Errorf("%s: got faults %q, want %q (%v)", row.name, got, row.faults, err)
		}
	}
}

// How a cell of a header is cut, in the words of the caller that is shown it.
func TestColumns(t *testing.T) {
	for _, row := range []struct {
		cell, name, unit string
		whole            bool
	}{
		{"gap", "gap", "", true},
		{"", "", "", true},
		{" gap\t(mm) ", "gap", "mm", true},
		{"gap(mil/in)", "gap", "mil/in", true},
		{"long gap (mm)", "long gap", "mm", true},
		{"gap ( mm )", "gap", " mm ", true}, // what a unit is, is not for a table to say
		{"(mm)", "", "mm", true},
		{"gap ()", "gap", "", false},
		{"gap (", "gap", "", false},
		{"gap (mm", "gap", "mm", false},
		{"gap (mm)!", "gap", "mm", false},
		{"gap (mm)(in)", "gap", "mm", false},
		{"gap ((mm))", "gap", "(mm", false},
		{"gap mm)", "gap mm)", "", true},
	} {
		var got table.Column
		var faults check.Faults
		table.ReadHeader(&faults, check.Path{}, [][]string{{row.cell}}, func(c table.Column) error {
			got = c
			return nil
		})
		if got.Name != row.name || got.Unit != row.unit || got.Whole != row.whole {
			t.Errorf("%q: got %+v", row.cell, got)
		}
	}
}

// A sound header has the columns it has; one with faults may have any.
func TestMayHave(t *testing.T) {
	for text, want := range map[string]string{
		"note,length (mm)":          "note length",
		"width (mm),note,length(mm": "note length width",
		"note":                      "note length width",
		"note,length (mm),note":     "note length width",
	} {
		_, head, _ := read(text)
		var got []string
		for _, name := range []string{"note", "length", "width"} {
			if head.MayHave(name) {
				got = append(got, name)
			}
		}
		if strings.Join(got, " ") != want {
			t.Errorf("%s: may have %v, want %s", text, got, want)
		}
	}
}

// Faults that were there before make no header unsound.
func TestEarlierFaults(t *testing.T) {
	var faults check.Faults
	var root check.Path
	faults.Add(units.Missing, root.Field("source"), nil, "a source")
	head := table.ReadHeader(&faults, root.Field("columns"), [][]string{{"note"}}, known, "note")
	if head.MayHave("length") || !head.MayHave("note") || faults.Len() != 1 {
		t.Errorf("%+v, %v", head, faults.Err())
	}
}

// What is wrong with the reader is no fault of the text.
func TestReaderFails(t *testing.T) {
	broken := errors.New("the line is dead")
	_, err := table.Read(iotest.ErrReader(broken), 200, "a list")
	if !errors.Is(err, broken) || units.Faults(err) != nil || err.Error() != "reading a list: the line is dead" {
		t.Errorf("got %v", err)
	}
}

func TestQuotedIsShort(t *testing.T) {
	if got, want := table.Quoted(strings.Repeat("a", 41)), `"`+strings.Repeat("a", 40)+`"`; got != want {
		t.Errorf("got %s", got)
	}
	if got := table.Quoted("a\"\n"); got != `"a\"\n"` {
		t.Errorf("got %s", got)
	}
}

// What could not be read is blamed once; all else is passed on in its order.
func TestFurther(t *testing.T) {
	var faults, found check.Faults
	var root check.Path
	found.Add(units.Conflict, root.Field("a"), nil, "less")
	found.Add(units.NotFinite, root.Field("b"), nil, "a number")
	found.Add(units.Missing, root.Field("c"), nil, "more")
	table.Further(&faults, found.Err())
	table.Further(&faults, nil)
	var got []string
	for _, f := range units.Faults(faults.Err()) {
		got = append(got, f.Path)
	}
	if !slices.Equal(got, []string{"/a", "/c"}) {
		t.Errorf("got %v", got)
	}
}

// FuzzRead: every text is refused with faults, or every row has a cell for every
// column, in order. It never panics.
func FuzzRead(f *testing.F) {
	f.Add("note,length (mm)\na,1\n")
	f.Add("\ufefflength (mm),\"note\"\r\n1,\"a\n,b\"\r\n")
	f.Add("(,)\n\"")
	f.Fuzz(func(t *testing.T, text string) {
		cells, head, err := read(text)
		if err != nil {
			if units.Faults(err) == nil {
				t.Errorf("%v is no fault", err)
			}
			return
		}
		columns := 2
		if head.MayHave("width") {
			columns = 3
		}
		if len(cells)%columns != 0 {
			t.Errorf("%d cells in %d columns", len(cells), columns)
		}
		for i, cell := range cells {
			if !strings.HasPrefix(cell, fmt.Sprintf("/rows/%d/", i/columns)) {
				t.Errorf("cell %d is %s", i, cell)
			}
		}
	})
}
