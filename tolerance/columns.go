package tolerance

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"example.org/collinear/internal/check"
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

// place is a column as it stands in a header.
type place struct {
	column
	unit string
}

// header reads the names and units of the columns.
func header(faults *check.Faults, at check.Path, record []string) []place {
	layout := make([]place, 0, len(record))
	for i, cell := range record {
		if p, ok := heading(faults, at.Index(i), cell); ok {
			if slices.ContainsFunc(layout, func(other place) bool { return other.name == p.name }) {
				faults.Add(units.Duplicate, at.Index(i), strconv.Quote(cell), "each column once")
			}
			layout = append(layout, p)
		}
	}
	if len(layout) == len(record) && !slices.ContainsFunc(layout, func(p place) bool { return p.name == "speed" }) {
		faults.Add(units.Missing, at, nil, "a column speed, for one \"speed (rpm)\"")
	}
	return layout
}

// heading reads one cell of the header: "offset (mm)".
func heading(faults *check.Faults, at check.Path, cell string) (place, bool) {
	name, rest, bracket := strings.Cut(strings.TrimSpace(cell), "(")
	unit, after, closed := strings.Cut(rest, ")")
	name = strings.TrimSpace(name)
	i := slices.IndexFunc(columns[:], func(c column) bool { return c.name == name })
	switch {
	case i < 0:
		faults.Add(units.Unknown, at, quoted(cell), "one of speed, offset, slope and flex, with the unit in brackets")
		return place{}, false
	case !bracket:
		faults.Add(units.Missing, at, quoted(cell), "a unit in brackets after the name, as in \""+name+" ("+columns[i].wire+")\"")
		return place{}, false
	case !closed || after != "":
		faults.Add(units.Malformed, at, quoted(cell), "a name and a unit in brackets, and nothing after them")
		return place{}, false
	}
	if err := columns[i].known(unit); err != nil {
		passOn(faults, at, err)
		return place{}, false
	}
	return place{columns[i], unit}, true
}

// cells reads the rows, and asks of them what NewTable asks. A cell that cannot
// be read becomes NaN, so that it is not blamed again for what it lacks.
func cells(faults *check.Faults, at check.Path, layout []place, records [][]string) []Row {
	rows := make([]Row, len(records))
	for i, record := range records {
		row := at.Index(i)
		if len(record) != len(layout) {
			faults.Add(units.Malformed, row, strconv.Itoa(len(record))+" cells", strconv.Itoa(len(layout))+" cells, as many as there are columns")
		}
		for j, p := range layout {
			*p.of(&rows[i]) = math.NaN()
			if len(record) == len(layout) {
				p.read(faults, row.Field(p.name), record[j], &rows[i])
			}
		}
	}
	var further check.Faults
	checkRows(&further, at, rows)
	for _, f := range units.Faults(further.Err()) {
		if f.Code != units.NotFinite {
			faults.Append(f)
		}
	}
	return rows
}

// read reads one cell. None may be empty or zero, which in a Row is a limit not
// given.
func (p place) read(faults *check.Faults, at check.Path, cell string, r *Row) {
	trimmed := strings.TrimSpace(cell)
	if trimmed == "" {
		faults.Add(units.Missing, at, nil, "a number, in "+p.unit)
		return
	}
	x, err := p.parse(trimmed + " " + p.unit)
	switch {
	case err != nil:
		passOn(faults, at, err)
	case x == 0:
		faults.Add(units.OutOfRange, at, trimmed+" "+p.unit, "a number above zero")
	default:
		*p.of(r) = x
	}
}

// passOn notes faults of a text at the place where the text stands.
func passOn(faults *check.Faults, at check.Path, err error) {
	for _, f := range units.Faults(err) {
		faults.Append(&units.Fault{Code: f.Code, Path: at.String(), Value: f.Value, Want: f.Want})
	}
}

// quoted is a text for a message, shortened.
func quoted(text string) string { return strconv.Quote(text[:min(len(text), 40)]) }
