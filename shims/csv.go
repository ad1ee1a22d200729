package shims

import (
	"errors"
	"io"
	"math"
	"strconv"

	"example.org/collinear/internal/check"
	"example.org/collinear/internal/table"
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
// fractions. Spaces around the name of a column and around a cell do not matter. A
// row of the result is a row of the table, in the same order.
//
// A fault has a path to the cell, /rows/3/marked, the first row after the header
// being /rows/0, or to the column, /columns/2, or, where one is missing, to
// /columns. Faults are those of lengths, columns that are Unknown, Missing or
// Duplicate, counts that are no whole numbers (Malformed), text that is no such
// table (Malformed), a table without rows (Missing), more than MostText bytes,
// MostRows rows, 10 000 lines or 100 columns (OutOfRange), and what [Choose]
// refuses in a stock. They come all at once: cells of columns that are sound are
// read also beside others that are not. An error of the reader is returned as it
// is, wrapped.
func ReadStock(r io.Reader) (Stock, error) {
	records, err := table.Read(r, MostText, "a stock of shims")
	if err != nil {
		return nil, err
	}
	var faults check.Faults
	var root check.Path
	head := table.ReadHeader(&faults, root.Field("columns"), records, known, "marked (mm)", "count")
	if head.Blank() {
		return nil, faults.Err()
	}
	stock := readRows(&faults, root.Field("rows"), head, records[1:])
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return stock, nil
}

// known says what is wrong with a column of the header.
func known(c table.Column) error {
	sound := c.Name == "count" && c.Unit == ""
	if c.Name == "marked" || c.Name == "measured" {
		_, err := units.ParseLengthUnit(c.Unit)
		sound = err == nil
	}
	if !sound || !c.Whole {
		return c.Refuse(units.Unknown, "marked or measured with a unit of length, as in marked (mm), or count")
	}
	return nil
}

// readRows reads the rows, and asks of them what Choose asks. A length that
// cannot be read becomes NaN, so that it is not blamed again for what it lacks.
func readRows(faults *check.Faults, at check.Path, head table.Header, records [][]string) Stock {
	if len(records) == 0 {
		faults.Add(units.Missing, at, nil, "at least one row")
	}
	stock := make(Stock, len(records))
	for i := range stock {
		stock[i].Marked = units.Length(math.NaN())
		if head.MayHave("measured") {
			stock[i].Measured = units.Length(math.NaN())
		}
	}
	head.Cells(faults, at, records, func(at check.Path, row int, c table.Column, cell string) {
		readCell(faults, at, c, cell, &stock[row])
	})
	var further check.Faults
	room := wholeRoom
	checkPieces(&further, at, stock, 0, &room)
	table.Further(faults, further.Err())
	return stock
}

// readCell reads one cell into its place in the piece.
func readCell(faults *check.Faults, at check.Path, c table.Column, cell string, p *Piece) {
	switch c.Name {
	case "count":
		p.Count = readCount(faults, at, cell)
	case "marked":
		p.Marked = readLength(faults, at, cell, c.Unit)
	case "measured":
		if cell == "" {
			p.Measured = 0
			return
		}
		p.Measured = readLength(faults, at, cell, c.Unit)
		if p.Measured == 0 {
			faults.Add(units.OutOfRange, at, table.Quoted(cell), "a thickness above zero, or an empty cell")
		}
	}
}

// readCount reads a number of pieces, none where there is no such number.
func readCount(faults *check.Faults, at check.Path, cell string) int {
	n, err := strconv.Atoi(cell)
	if err != nil {
		faults.Add(countCode(cell, err), at, table.Quoted(cell), "a whole number")
		return 0
	}
	return n
}

func countCode(cell string, err error) units.Code {
	if cell == "" {
		return units.Missing
	}
	if errors.Is(err, strconv.ErrRange) {
		return units.OutOfRange
	}
	return units.Malformed
}

// readLength reads a cell in the unit of its column.
func readLength(faults *check.Faults, at check.Path, cell, unit string) units.Length {
	if cell == "" {
		faults.Add(units.Missing, at, nil, "a thickness")
		return units.Length(math.NaN())
	}
	l, err := units.ParseLength(cell + " " + unit)
	if err != nil {
		faults.Adopt(at, err)
		return units.Length(math.NaN())
	}
	return l
}
