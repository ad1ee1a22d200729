// Package table reads tables of numbers from comma-separated values, as RFC 4180
// has them. A header names the columns, each with its unit in brackets, as in
// "offset (mm)", in any order; below it stand the rows. What the columns mean is
// for the caller to say, and so are the bounds of what stands in them.
//
// All faults are gathered: those of the header lie at /columns/2, those of a row
// at /rows/3, those of a cell at /rows/3/offset, if the caller names the lists
// so. A cell is read where its column is known, whatever is wrong elsewhere.
package table

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// A text has at most so many lines, and a header so many columns: far more than any
// table of ours, and few enough that the faults of one in which nothing is right do
// not take a hundred times its room.
const (
	mostLines   = 10_000
	mostColumns = 100
)

// Read returns the records of a text in UTF-8 of at most so many bytes, and of at
// most 10 000 lines; a byte order mark, which spreadsheets write, does not count as
// text. What names the text in errors. An error of r is returned wrapped and is no
// fault of the text.
func Read(r io.Reader, most int, what string) ([][]string, error) {
	text, err := io.ReadAll(io.LimitReader(r, int64(most)+1))
	if err != nil {
		return nil, fmt.Errorf("reading %s: %w", what, err)
	}
	if len(text) > most {
		return nil, &units.Fault{Code: units.OutOfRange, Want: what + " of at most " + strconv.Itoa(most) + " bytes"}
	}
	if !utf8.Valid(text) {
		return nil, &units.Fault{Code: units.Malformed, Want: "text in UTF-8"}
	}
	reader := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(text, []byte("\ufeff"))))
	reader.FieldsPerRecord = -1 // counted row by row, so that each can be blamed
	return records(reader, what)
}

// records reads the lines one by one, and no more than there may be.
func records(reader *csv.Reader, what string) ([][]string, error) {
	var all [][]string
	for {
		record, err := reader.Read()
		if err == io.EOF {
			return all, nil
		}
		if err != nil {
			return nil, &units.Fault{Code: units.Malformed, Value: err.Error(), Want: "CSV as in RFC 4180"}
		}
		if len(all) == mostLines {
			return nil, &units.Fault{Code: units.OutOfRange, Want: what + " of at most " + strconv.Itoa(mostLines) + " lines"}
		}
		all = append(all, record)
	}
}

// Column is a cell of a header, cut into a name and, in brackets, a unit.
type Column struct {
	Name, Unit string
	Whole      bool // no bracket, or one that holds a unit and ends the cell
	cell       string
}

func cut(cell string) Column {
	name, rest, bracket := strings.Cut(strings.TrimSpace(cell), "(")
	unit, after, closed := strings.Cut(rest, ")")
	return Column{
		Name: strings.TrimSpace(name), Unit: unit,
		Whole: !bracket || closed && unit != "" && after == "",
		cell:  cell,
	}
}

// Refuse is a fault of the column.
func (c Column) Refuse(code units.Code, want string) error {
	return &units.Fault{Code: code, Value: Quoted(c.cell), Want: want}
}

// Quoted is a text for a message, shortened.
func Quoted(text string) string { return strconv.Quote(text[:min(len(text), 40)]) }

// Header is what is known of the columns.
type Header struct {
	columns []Column // one for each cell; that of a cell not known is zero
	sound   bool
}

// ReadHeader reads the first of the records. Known says what is wrong with a
// column; each of the examples, such as "offset (mm)", stands for one that must
// be there. Of more than 100 columns none is looked at.
func ReadHeader(faults *check.Faults, at check.Path, records [][]string, known func(Column) error, examples ...string) Header {
	if len(records) == 0 {
		faults.Add(units.Missing, at, nil, "a header with the names of the columns")
		return Header{}
	}
	if n := len(records[0]); n > mostColumns {
		faults.Add(units.OutOfRange, at, n, "at most "+strconv.Itoa(mostColumns)+" columns")
		return Header{}
	}
	before, all := faults.Len(), true
	h := Header{columns: make([]Column, len(records[0]))}
	for i, cell := range records[0] {
		c := cut(cell)
		if err := known(c); err != nil {
			faults.Adopt(at.Index(i), err)
			all = false
		} else if h.has(c.Name) {
			faults.Add(units.Duplicate, at.Index(i), Quoted(cell), "each column once")
		} else {
			h.columns[i] = c
		}
	}
	for _, example := range examples {
		if all && !h.has(cut(example).Name) { // else it may be one that was not known
			faults.Add(units.Missing, at, nil, "a column such as "+example)
		}
	}
	h.sound = faults.Len() == before
	return h
}

func (h Header) has(name string) bool {
	return slices.ContainsFunc(h.columns, func(c Column) bool { return c.Name == name })
}

// Blank tells whether no column is known. It is then hardly a header, and the
// rows below it say nothing.
func (h Header) Blank() bool {
	return !slices.ContainsFunc(h.columns, func(c Column) bool { return c != Column{} })
}

// MayHave tells whether there is a column of this name, as far as can be told: a
// header with faults may have any.
func (h Header) MayHave(name string) bool { return !h.sound || h.has(name) }

// Cells hands every cell of a known column, without the spaces around it, to
// read, and passes over rows that are not as long as the header. The records are
// those below the header; the first of them is row 0.
func (h Header) Cells(faults *check.Faults, at check.Path, records [][]string, read func(at check.Path, row int, c Column, cell string)) {
	for i, record := range records {
		row := at.Index(i)
		if len(record) != len(h.columns) {
			faults.Add(units.Malformed, row, strconv.Itoa(len(record))+" cells", strconv.Itoa(len(h.columns))+" cells, as many as there are columns")
			continue
		}
		for j, c := range h.columns {
			if (c != Column{}) {
				read(row.Field(c.Name), i, c, strings.TrimSpace(record[j]))
			}
		}
	}
}

// Further notes what a check found wrong with rows in which NaN stands for what
// could not be read, which is not blamed again.
func Further(faults *check.Faults, err error) {
	for _, fault := range units.Faults(err) {
		if fault.Code != units.NotFinite {
			faults.Append(fault)
		}
	}
}
