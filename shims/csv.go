package shims

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strconv"
	"strings"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// MostText is how many bytes [ReadStock] reads at most.
const MostText = 1 << 20

// ReadStock reads a stock from comma-separated values (RFC 4180, second-hand), in
// a format of our own. The first row names the columns, with their units; any
// order will do, and measured may be left out, as may a cell of it:
//
//	marked (mm),measured (mm),count
//	0.05,0.052,10
//	0.10,,8
//
// Lengths are what [units.ParseLength] reads before the unit, in inches also
// fractions. Spaces around a cell do not matter. A row of the result is a row of
// the table, in the same order.
//
// A fault has a path to the cell, /rows/3/marked, the first row after the header
// being /rows/0, or to the header, /header. Faults are those of lengths, columns
// that are Unknown, Missing or Duplicate, counts that are no whole numbers
// (Malformed), text that is no such table (Malformed), a table without rows
// (Missing), more than MostText bytes or MostRows rows (OutOfRange), and what
// [Choose] refuses in a stock. An error of the reader is returned as it is, wrapped.
func ReadStock(r io.Reader) (Stock, error) {
	text, err := io.ReadAll(io.LimitReader(r, MostText+1))
	if err != nil {
		return nil, fmt.Errorf("reading a stock of shims: %w", err)
	}
	if len(text) > MostText {
		return nil, &units.Fault{Code: units.OutOfRange, Want: "a stock of at most " + strconv.Itoa(MostText) + " bytes"}
	}
	records, err := splitRows(text)
	if err != nil {
		return nil, err
	}
	columns, err := readHeader(records[0])
	if err != nil {
		return nil, err
	}
	return readRows(columns, records[1:])
}

// splitRows returns the cells of the header and of at least one row.
func splitRows(text []byte) ([][]string, error) {
	reader := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(text, []byte("\ufeff")))) // spreadsheets write a byte order mark
	reader.FieldsPerRecord = -1                                                        // counted below, with a path
	records, err := reader.ReadAll()
	var wrong *csv.ParseError
	switch {
	case errors.As(err, &wrong):
		return nil, &units.Fault{
			Code: units.Malformed, Value: wrong.Err.Error(),
			Want: "comma-separated values at line " + strconv.Itoa(wrong.Line) + ", column " + strconv.Itoa(wrong.Column),
		}
	case len(records) == 0:
		return nil, &units.Fault{Code: units.Missing, Path: "/header", Want: "a header such as marked (mm),count"}
	case len(records) == 1:
		return nil, &units.Fault{Code: units.Missing, Path: "/rows", Want: "at least one row"}
	}
	return records, nil
}

// column is what stands in a column: its name and, for a length, its unit.
type column struct{ name, unit string }

// readHeader reads the names of the columns.
func readHeader(cells []string) ([]column, error) {
	var faults check.Faults
	var root check.Path
	at := root.Field("header")
	columns := make([]column, len(cells))
	seen := map[string]bool{}
	for i, cell := range cells {
		c, known := readColumn(cell)
		switch {
		case !known:
			faults.Add(units.Unknown, at.Index(i), strconv.Quote(clip(cell)), "marked or measured with a unit of length, as in marked (mm), or count")
		case seen[c.name]:
			faults.Add(units.Duplicate, at.Index(i), strconv.Quote(cell), "a column that does not stand there yet")
		}
		columns[i], seen[c.name] = c, true
	}
	for _, needed := range []string{"marked", "count"} {
		if faults.Len() == 0 && !seen[needed] {
			faults.Add(units.Missing, at, nil, "a column "+needed)
		}
	}
	return columns, faults.Err()
}

func readColumn(cell string) (c column, known bool) {
	name, unit, hasUnit := strings.Cut(strings.TrimSpace(cell), " (")
	if !hasUnit {
		return column{name: name}, name == "count"
	}
	unit, closed := strings.CutSuffix(unit, ")")
	_, err := units.ParseLengthUnit(unit)
	return column{name, unit}, closed && err == nil && (name == "marked" || name == "measured")
}

// clip cuts a cell short for a message.
func clip(cell string) string { return cell[:min(len(cell), 40)] }

// readRows reads the rows after the header.
func readRows(columns []column, rows [][]string) (Stock, error) {
	var faults check.Faults
	var root check.Path
	list := root.Field("rows")
	stock := make(Stock, len(rows))
	if len(rows) > MostRows {
		faults.Add(units.OutOfRange, list, len(rows), "at most "+strconv.Itoa(MostRows)+" rows")
		return nil, faults.Err()
	}
	room := wholeRoom
	for i, cells := range rows {
		at, before := list.Index(i), faults.Len()
		if len(cells) != len(columns) {
			faults.Add(units.Malformed, at, len(cells), "as many cells as the header has, "+strconv.Itoa(len(columns)))
			continue
		}
		for j, cell := range cells {
			readCell(&faults, at.Field(columns[j].name), columns[j], strings.TrimSpace(cell), &stock[i])
		}
		if faults.Len() == before {
			checkPiece(&faults, at, &stock[i], 0, &room)
		}
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return stock, nil
}

// readCell reads one cell into its place in the piece.
func readCell(faults *check.Faults, at check.Path, c column, cell string, p *Piece) {
	switch c.name {
	case "count":
		n, err := strconv.Atoi(cell)
		if err != nil {
			faults.Add(countCode(cell, err), at, strconv.Quote(clip(cell)), "a whole number")
		}
		p.Count = n
	case "marked":
		p.Marked, _ = readLength(faults, at, cell, c.unit)
	case "measured":
		if cell == "" {
			return
		}
		l, read := readLength(faults, at, cell, c.unit)
		if read && l == 0 {
			faults.Add(units.OutOfRange, at, strconv.Quote(cell), "a thickness above zero, or an empty cell")
		}
		p.Measured = l
	}
}

func countCode(cell string, err error) units.Code {
	switch {
	case cell == "":
		return units.Missing
	case errors.Is(err, strconv.ErrRange):
		return units.OutOfRange
	}
	return units.Malformed
}

// readLength reads a cell in the unit of its column, and tells whether it could.
func readLength(faults *check.Faults, at check.Path, cell, unit string) (l units.Length, read bool) {
	if cell == "" {
		faults.Add(units.Missing, at, nil, "a thickness")
		return 0, false
	}
	l, err := units.ParseLength(cell + " " + unit)
	for _, fault := range units.Faults(err) {
		fault.Path = at.String()
		faults.Append(fault)
	}
	return l, err == nil
}
