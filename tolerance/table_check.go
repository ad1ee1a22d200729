package tolerance

import (
	"cmp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.org/collinear/internal/check"
	"example.org/collinear/internal/table"
	"example.org/collinear/units"
)

// limit is one kind of limit of a row: its name, and its size in nanometres or
// over a metre.
type limit struct {
	name string
	of   func(*Row) (given float64, nanometres units.Length)
}

var limits = [...]limit{
	{"offset", func(r *Row) (float64, units.Length) { return float64(r.Offset), r.Offset }},
	{"slope", func(r *Row) (float64, units.Length) { return float64(r.Slope), rise(r.Slope) }},
	{"flex", func(r *Row) (float64, units.Length) { return float64(r.Flex), rise(r.Flex) }},
}

func checkWork(faults *check.Faults, at check.Path, source, edition string) {
	if strings.TrimSpace(source) != "" {
		checkPlain(faults, at.Field("source"), source)
	} else if !faults.Has("/source") {
		faults.Add(units.Missing, at.Field("source"), nil, "the work that the limits were taken from")
	}
	checkPlain(faults, at.Field("edition"), edition)
}

// checkPlain asks for what comes back the same from CSV and from JSON.
func checkPlain(faults *check.Faults, at check.Path, text string) {
	if !utf8.ValidString(text) || strings.ContainsFunc(text, unicode.IsControl) {
		faults.Add(units.Malformed, at, table.Quoted(text), "one line of plain text (UTF-8)")
	}
}

func checkRows(faults *check.Faults, at check.Path, rows []Row) {
	if len(rows) == 0 {
		faults.Add(units.Missing, at, nil, "at least one row")
		return
	}
	for i := range rows {
		row, r := at.Index(i), &rows[i]
		check.Positive(faults, row.Field("speed"), r.Speed, "a speed")
		l := r.limits()
		l.check(faults, row)
	}
	checkGiven(faults, at, rows)
	checkOrder(faults, at, rows)
}

// checkGiven asks that a limit is given in every row or in none.
func checkGiven(faults *check.Faults, at check.Path, rows []Row) {
	some := false
	for _, l := range limits {
		given := slices.ContainsFunc(rows, func(r Row) bool { x, _ := l.of(&r); return x != 0 })
		some = some || given
		for i := range rows {
			if x, _ := l.of(&rows[i]); given && x == 0 {
				row := at.Index(i)
				faults.Add(units.Missing, row.Field(l.name), nil, "a limit, which other rows have")
			}
		}
	}
	if !some {
		faults.Add(units.Missing, at, nil, "at least one kind of limit: offset, slope or flex")
	}
}

// checkOrder goes through the rows by rising speed. What is a fault already is
// passed over.
func checkOrder(faults *check.Faults, at check.Path, rows []Row) {
	order := make([]int, 0, len(rows))
	for i := range rows {
		if check.Sound(rows[i].Speed) && rows[i].Speed > 0 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(rows[i].Speed, rows[j].Speed) })
	for n := 1; n < len(order); n++ {
		slower, this := &rows[order[n-1]], &rows[order[n]]
		row := at.Index(order[n])
		if slower.Speed == this.Speed {
			faults.Add(units.Duplicate, row.Field("speed"), this.Speed, "a speed that no other row has")
			continue
		}
		for _, l := range limits {
			given, size := l.of(this)
			_, before := l.of(slower)
			size, before = size.Round(Resolution), before.Round(Resolution)
			if before > 0 && size > before && check.Sound(given) {
				faults.Add(units.Conflict, row.Field(l.name), nil, "a limit no wider than at the next slower speed")
			}
		}
	}
}
