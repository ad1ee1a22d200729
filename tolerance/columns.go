package tolerance

import (
	"math"

	"example.org/collinear/internal/check"
	"example.org/collinear/internal/table"
	"example.org/collinear/units"
)

// column is a kind of column of the CSV form.
type column struct {
	name, wire string // wire is the unit that is written
	of         func(*Row) *float64
	text       func(*Row) string
	parse      func(string) (float64, error)
	known      func(unit string) error
}

var columns = [...]column{
	{
		"speed", "rpm", func(r *Row) *float64 { return (*float64)(&r.Speed) },
		func(r *Row) string { return r.Speed.String() },
		number(units.ParseRotationalSpeed), named(units.ParseRotationalSpeedUnit),
	},
	{
		"offset", "mm", func(r *Row) *float64 { return (*float64)(&r.Offset) },
		func(r *Row) string { return r.Offset.String() },
		number(units.ParseLength), named(units.ParseLengthUnit),
	},
	{
		"slope", "mm/m", func(r *Row) *float64 { return (*float64)(&r.Slope) },
		func(r *Row) string { return r.Slope.String() },
		number(units.ParseSlope), named(units.ParseSlopeUnit),
	},
	{
		"flex", "mm/m", func(r *Row) *float64 { return (*float64)(&r.Flex) },
		func(r *Row) string { return r.Flex.String() },
		number(units.ParseSlope), named(units.ParseSlopeUnit),
	},
}

func number[Q ~float64](parse func(string) (Q, error)) func(string) (float64, error) {
	return func(s string) (float64, error) {
		q, err := parse(s)
		return float64(q), err
	}
}

func named[U any](parse func(string) (U, error)) func(string) error {
	return func(s string) error {
		_, err := parse(s)
		return err
	}
}

// find returns the column of this name, and nil if there is none.
func find(name string) *column {
	for i := range columns {
		if columns[i].name == name {
			return &columns[i]
		}
	}
	return nil
}

// known says what is wrong with a column of a header.
func known(c table.Column) error {
	kind := find(c.Name)
	if kind == nil {
		return c.Refuse(units.Unknown, "one of speed, offset, slope and flex, with the unit in brackets")
	}
	if c.Unit == "" {
		return c.Refuse(units.Missing, "a unit in brackets after the name, as in \""+kind.name+" ("+kind.wire+")\"")
	}
	if !c.Whole {
		return c.Refuse(units.Malformed, "a name and a unit in brackets, and nothing after them")
	}
	return kind.known(c.Unit)
}

// cells reads the rows, and asks of them what NewTable asks. A cell that cannot
// be read becomes NaN, so that it is not blamed again for what it lacks.
func cells(faults *check.Faults, at check.Path, head table.Header, records [][]string) []Row {
	rows := make([]Row, len(records))
	for _, c := range columns {
		for i := range rows {
			if head.MayHave(c.name) {
				*c.of(&rows[i]) = math.NaN()
			}
		}
	}
	head.Cells(faults, at, records, func(at check.Path, row int, c table.Column, cell string) {
		find(c.Name).read(faults, at, cell, c.Unit, &rows[row])
	})
	var further check.Faults
	checkRows(&further, at, rows)
	table.Further(faults, further.Err())
	return rows
}

// read reads one cell. None may be empty or zero, which in a Row is a limit not
// given.
func (c *column) read(faults *check.Faults, at check.Path, cell, unit string, r *Row) {
	if cell == "" {
		faults.Add(units.Missing, at, nil, "a number, in "+unit)
		return
	}
	x, err := c.parse(cell + " " + unit)
	if err != nil {
		faults.Adopt(at, err)
	} else if x == 0 {
		faults.Add(units.OutOfRange, at, cell+" "+unit, "a number above zero")
	} else {
		*c.of(r) = x
	}
}
