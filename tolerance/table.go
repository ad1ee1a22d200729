package tolerance

import (
	"cmp"
	"slices"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Row is a line of a table: the limits up to and with a speed. A zero limit is
// one that the table does not give.
type Row struct {
	Speed  units.RotationalSpeed `json:"speed"`
	Offset units.Length          `json:"offset,omitzero"` // short coupling: offset at the coupling centre
	Slope  units.Slope           `json:"slope,omitzero"`  // short coupling: slope between the shafts
	Flex   units.Slope           `json:"flex,omitzero"`   // spacer coupling: tilt at each flex plane
}

func (r Row) limits() Limits { return Limits{Offset: r.Offset, Slope: r.Slope, Flex: r.Flex} }

// Table holds limits by speed, with the work that they come from. It is made by
// [NewTable] or [ReadCSV] and does not change; the zero value holds no rows and
// answers nothing. Its text form, also in JSON, is the CSV that ReadCSV reads.
type Table struct {
	source, edition string
	rows            []Row    // by rising speed
	limits          []Limits // of each row, ready to hand out
}

// NewTable makes a table of rows in any order, with the work that they were
// taken from, which is required, and its edition, which may be empty.
//
// It refuses a source that is missing, source and edition that are not one line
// of plain text (Malformed), no rows or no limit in any (Missing, at /rows),
// speeds that are not above zero (/rows/3/speed), limits that Limits.Validate
// refuses (/rows/3/offset), a limit that other rows give and one does not
// (Missing), two rows of one speed (Duplicate), and a limit wider than that of the
// next slower row (Conflict): what grows with speed is a typing error. Row
// numbers are those of the order given.
func NewTable(source, edition string, rows ...Row) (Table, error) {
	var faults check.Faults
	var root check.Path
	checkWork(&faults, root, source, edition)
	checkRows(&faults, root.Field("rows"), rows)
	if err := faults.Err(); err != nil {
		return Table{}, err
	}
	return newTable(source, edition, rows), nil
}

// newTable sorts rows that were checked.
func newTable(source, edition string, rows []Row) Table {
	t := Table{source: source, edition: edition, rows: slices.Clone(rows)}
	slices.SortFunc(t.rows, func(a, b Row) int { return cmp.Compare(a.Speed, b.Speed) })
	work := source
	if edition != "" {
		work += ", " + edition
	}
	above := ""
	for _, r := range t.rows {
		l := r.limits()
		l.Rule, l.Source = "row for speeds "+above+"up to "+r.Speed.String(), work
		t.limits = append(t.limits, l)
		above = "above " + r.Speed.String() + " "
	}
	return t
}

// At returns the limits at a speed: those of the row of that speed or else of the
// next faster one, so below the first row those of the first. Both planes are
// taken together; set PerPlane where the work says otherwise. Rule tells in words
// which row counted, Source which work. It allocates nothing.
//
// It refuses a speed that is not above zero, one beyond the last row (OutOfRange),
// each at /speed, and a table without rows (Missing, at /rows).
func (t Table) At(speed units.RotationalSpeed) (Limits, error) {
	var faults check.Faults
	var root check.Path
	if len(t.rows) == 0 {
		faults.Add(units.Missing, root.Field("rows"), nil, "a table with rows")
	}
	check.Positive(&faults, root.Field("speed"), speed, "a speed")
	if err := faults.Err(); err != nil {
		return Limits{}, err
	}
	i, _ := slices.BinarySearchFunc(t.rows, speed, func(r Row, s units.RotationalSpeed) int { return cmp.Compare(r.Speed, s) })
	if i == len(t.rows) {
		faults.Add(units.OutOfRange, root.Field("speed"), speed, "a speed up to "+t.rows[i-1].Speed.String()+", where the table ends")
		return Limits{}, faults.Err()
	}
	return t.limits[i], nil
}

// Source returns the work that the table was taken from.
func (t Table) Source() string { return t.source }

// Edition returns the edition of the work, or nothing where none was given.
func (t Table) Edition() string { return t.edition }

// Rows returns the rows by rising speed; they are the caller's to change.
func (t Table) Rows() []Row { return slices.Clone(t.rows) }
