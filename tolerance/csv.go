package tolerance

import (
	"bytes"
	"encoding/csv"
	"io"
	"slices"
	"strconv"
	"strings"

	"example.org/collinear/internal/check"
	"example.org/collinear/internal/table"
	"example.org/collinear/units"
)

// maxCSV bounds what ReadCSV takes in, far above any table of limits.
const maxCSV = 1 << 20

// ReadCSV reads a table from the CSV form of this package (RFC 4180, in UTF-8, a
// byte order mark allowed):
//
//	source,Works standard 4-12
//	edition,2024
//	speed (rpm),offset (mm),slope (mm/m),flex (mm/m)
//	1000,0.12,0.8,1.0
//	1500,0.08,0.5,0.7
//
// First the record source and, if there is one, edition; then a header that
// names the columns with their units, in any order: speed, which is required, and
// one or more of offset, slope and flex, in any unit that package units reads for
// them; then the rows in any order. A cell is read as its text with the unit
// behind it, so offset (in) takes 1/64. Spaces around the name of a column, and
// around a cell below it, do not count; source and edition are taken as they
// stand. Empty lines are skipped.
//
// What is wrong comes all at once, as far as it can be told apart: source and
// edition (/source), the columns (/columns/2, from 0), the cells and what
// [NewTable] refuses (/rows/3/offset; rows count from 0 in the order of the text),
// rows with a cell too few or too many (/rows/3). Cells of columns that are sound
// are read also beside others that are not. Text that is no CSV, or is longer than
// 1 MiB or 10 000 lines, is refused as a whole, and more than 100 columns are one
// fault at /columns. An error of r is returned wrapped, as it is no
// fault of the text.
func ReadCSV(r io.Reader) (Table, error) {
	records, err := table.Read(r, maxCSV, "a table of limits")
	if err != nil {
		return Table{}, err
	}
	return parse(records)
}

// parse makes a table of records.
func parse(records [][]string) (Table, error) {
	var faults check.Faults
	var root check.Path
	var work [2]string
	records = front(&faults, root, &work, records)
	source, edition := work[0], work[1]
	checkWork(&faults, root, source, edition)
	head := table.ReadHeader(&faults, root.Field("columns"), records, known, "speed (rpm)")
	if head.Blank() {
		return Table{}, faults.Err()
	}
	rows := cells(&faults, root.Field("rows"), head, records[1:])
	if err := faults.Err(); err != nil {
		return Table{}, err
	}
	return newTable(source, edition, rows), nil
}

var workNames = [2]string{"source", "edition"}

// front takes the records of the source and the edition, and returns those from
// the header on.
func front(faults *check.Faults, at check.Path, work *[2]string, records [][]string) [][]string {
	var seen [2]bool
	for len(records) > 0 {
		record := records[0]
		i := slices.Index(workNames[:], strings.TrimSpace(record[0]))
		if i < 0 {
			break
		}
		switch n := len(record); {
		case seen[i]:
			faults.Add(units.Duplicate, at.Field(workNames[i]), nil, "one record "+workNames[i])
		case n != 2:
			faults.Add(units.Malformed, at.Field(workNames[i]), strconv.Itoa(n)+" cells", "two cells, "+workNames[i]+" and its text (in double quotes if it has a comma)")
		default:
			work[i] = record[1]
		}
		seen[i] = true
		records = records[1:]
	}
	return records
}

// WriteCSV writes the table as ReadCSV reads it, in rpm, mm and mm/m, without
// loss. Limits that no row gives have no column. It refuses a table without rows
// (Missing, at /rows), and returns an error of w as it is.
func (t Table) WriteCSV(w io.Writer) error {
	if len(t.rows) == 0 {
		return &units.Fault{Code: units.Missing, Path: "/rows", Want: "a table with rows"}
	}
	out := csv.NewWriter(w)
	records := [][]string{{"source", t.source}}
	if t.edition != "" {
		records = append(records, []string{"edition", t.edition})
	}
	var used []column
	var names []string
	for _, c := range columns {
		if *c.of(&t.rows[0]) != 0 {
			used, names = append(used, c), append(names, c.name+" ("+c.wire+")")
		}
	}
	records = append(records, names)
	for i := range t.rows {
		var cells []string
		for _, c := range used {
			cells = append(cells, strings.TrimSuffix(c.text(&t.rows[i]), " "+c.wire))
		}
		records = append(records, cells)
	}
	return out.WriteAll(records)
}

// MarshalText gives the CSV form.
func (t Table) MarshalText() ([]byte, error) {
	var b bytes.Buffer
	err := t.WriteCSV(&b)
	return b.Bytes(), err
}

// UnmarshalText reads the CSV form.
func (t *Table) UnmarshalText(text []byte) error {
	read, err := ReadCSV(bytes.NewReader(text))
	if err == nil {
		*t = read
	}
	return err
}
