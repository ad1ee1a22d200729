package tolerance_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"example.org/collinear/tolerance"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// drawRows draws rows whose limits fall with speed, in any order.
func drawRows(t *rapid.T) []tolerance.Row {
	n := rapid.IntRange(1, 8).Draw(t, "rows")
	has := [3]bool{rapid.Bool().Draw(t, "offset"), rapid.Bool().Draw(t, "slope"), rapid.Bool().Draw(t, "flex")}
	if has == ([3]bool{}) {
		has[0] = true
	}
	rows := make([]tolerance.Row, n)
	speed, least := 0.0, [3]float64{2e6, 2e-3, 2e-3}
	for i := range rows {
		speed += rapid.Float64Range(0.5, 1000).Draw(t, "step")
		rows[i].Speed = units.RotationalSpeed(speed)
		for j := range least {
			least[j] *= rapid.Float64Range(0.3, 1).Draw(t, "narrower")
		}
		if has[0] {
			rows[i].Offset = units.Length(least[0])
		}
		if has[1] {
			rows[i].Slope = units.Slope(least[1])
		}
		if has[2] {
			rows[i].Flex = units.Slope(least[2])
		}
	}
	return rapid.Permutation(rows).Draw(t, "order")
}

// scan is what a person does: of all rows that are fast enough take the slowest.
func scan(rows []tolerance.Row, speed units.RotationalSpeed) (best tolerance.Row, found bool) {
	for _, r := range rows {
		if r.Speed >= speed && (!found || r.Speed < best.Speed) {
			best, found = r, true
		}
	}
	return best, found
}

func TestAtIsAScan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rows := drawRows(t)
		given := slices.Clone(rows)
		table, err := tolerance.NewTable("a source", "", rows...)
		if err != nil {
			t.Fatal(err)
		}
		var speeds []units.RotationalSpeed
		for _, r := range rows {
			s := float64(r.Speed)
			for _, s := range []float64{s, math.Nextafter(s, 0), math.Nextafter(s, inf), rapid.Float64Range(0.1, 9000).Draw(t, "speed")} {
				speeds = append(speeds, units.RotationalSpeed(s))
			}
		}
		for _, s := range speeds {
			want, found := scan(rows, s)
			got, err := table.At(s)
			if found != (err == nil) || got.Offset != want.Offset || got.Slope != want.Slope || got.Flex != want.Flex {
				t.Errorf("at %v: got %+v, %v, want %+v", s, got, err, want)
			}
		}
		if !cmp.Equal(rows, given) {
			t.Error("the caller's rows were changed")
		}
	})
}

// Which row counted, in words, and the work.
func TestRuleAndSource(t *testing.T) {
	table := mustTable(t,
		tolerance.Row{Speed: 3000, Offset: 40 * um}, tolerance.Row{Speed: 1000, Offset: 120 * um}, tolerance.Row{Speed: 1500, Offset: 80 * um})
	for speed, want := range map[units.RotationalSpeed]string{
		1:                "row for speeds up to 1000 rpm",
		1000:             "row for speeds up to 1000 rpm",
		1000.5:           "row for speeds above 1000 rpm up to 1500 rpm",
		25 * units.Hertz: "row for speeds above 1000 rpm up to 1500 rpm",
		1501:             "row for speeds above 1500 rpm up to 3000 rpm",
		50 * units.Hertz: "row for speeds above 1500 rpm up to 3000 rpm",
	} {
		l, err := table.At(speed)
		if err != nil || l.Rule != want || l.Source != "Works standard 4-12, 2024" || l.PerPlane {
			t.Errorf("%v: %+v, %v", speed, l, err)
		}
	}
	bare, err := tolerance.NewTable("a source", "", tolerance.Row{Speed: 1, Slope: mmm})
	if l, _ := bare.At(1); err != nil || l.Source != "a source" {
		t.Errorf("%+v, %v", l, err)
	}
}

// A table is its own: rows handed in or out may be changed.
func TestTableDoesNotChange(t *testing.T) {
	rows := []tolerance.Row{{Speed: 1000, Offset: 2 * um}, {Speed: 2000, Offset: um}}
	table := mustTable(t, rows...)
	rows[0].Speed = 5
	out := table.Rows()
	out[1].Offset = mm
	want := []tolerance.Row{{Speed: 1000, Offset: 2 * um}, {Speed: 2000, Offset: um}}
	if got := table.Rows(); !cmp.Equal(got, want) {
		t.Errorf("got %+v", got)
	}
	if l, err := table.At(2000); err != nil || l.Offset != um {
		t.Errorf("%+v, %v", l, err)
	}
}

func TestTableRefuses(t *testing.T) {
	row := func(speed, offset, slope, flex float64) tolerance.Row {
		return tolerance.Row{
			Speed: units.RotationalSpeed(speed), Offset: units.Length(offset * 1e6),
			Slope: units.Slope(slope * 1e-3), Flex: units.Slope(flex * 1e-3),
		}
	}
	rows := func(rows ...tolerance.Row) []tolerance.Row { return rows }
	for _, r := range []struct {
		name            string
		source, edition string
		bad, twin       []tolerance.Row
		want            []string
	}{
		{"no rows", "s", "", nil, rows(row(1, 1, 0, 0)), []string{"missing /rows"}},
		{"rows without a limit", "s", "", rows(row(1, 0, 0, 0), row(2, 0, 0, 0)), rows(row(1, 1, 0, 0), row(2, 1, 0, 0)), []string{"missing /rows"}},
		{"no speed", "s", "", rows(row(0, 1, 0, 0)), rows(row(1, 1, 0, 0)), []string{"missing /rows/0/speed"}},
		{"no speed twice", "s", "", rows(row(0, 1, 0, 0), row(0, 1, 0, 0)), rows(row(1, 1, 0, 0), row(2, 1, 0, 0)), []string{"missing /rows/0/speed", "missing /rows/1/speed"}},
		{"speed below zero", "s", "", rows(row(1, 1, 0, 0), row(-2, 1, 0, 0)), rows(row(1, 1, 0, 0), row(2, 1, 0, 0)), []string{"out_of_range /rows/1/speed"}},
		{"speed without end", "s", "", rows(row(inf, 1, 0, 0)), rows(row(1e6, 1, 0, 0)), []string{"not_finite /rows/0/speed"}},
		{"speed without end, and wider", "s", "", rows(row(1, 1, 0, 0), row(inf, 2, 0, 0)), rows(row(1, 1, 0, 0), row(2, 1, 0, 0)), []string{"not_finite /rows/1/speed"}},
		{"limit without end", "s", "", rows(row(1, 1, 1, 0), row(2, inf, 1e300, 0)), rows(row(1, 1, 1, 0), row(2, 1, 1, 0)), []string{"not_finite /rows/1/offset", "out_of_range /rows/1/slope"}},
		{"limit below zero", "s", "", rows(row(1, -1, 0, 0)), rows(row(1, 1, 0, 0)), []string{"out_of_range /rows/0/offset"}},
		{"limit no number", "s", "", rows(row(1, 1, nan, 0), row(2, 1, 1, 0)), rows(row(1, 1, 1, 0), row(2, 1, 1, 0)), []string{"not_finite /rows/0/slope"}},
		{"limit too small", "s", "", rows(row(1, 0, 0, 1e-7)), rows(row(1, 0, 0, 1e-6)), []string{"out_of_range /rows/0/flex"}},
		{"given in one row", "s", "", rows(row(1, 1, 0, 1), row(2, 1, 1, 1), row(3, 1, 0, 1)), rows(row(1, 1, 1, 1), row(2, 1, 1, 1), row(3, 1, 1, 1)), []string{"missing /rows/0/slope", "missing /rows/2/slope"}},
		{"one speed twice", "s", "", rows(row(5, 1, 0, 0), row(2, 1, 0, 0), row(5, 2, 0, 0)), rows(row(5, 1, 0, 0), row(2, 1, 0, 0), row(6, 1, 0, 0)), []string{"duplicate /rows/2/speed"}},
		{"wider when faster", "s", "", rows(row(3000, 0.4, 0, 0.5), row(1500, 0.08, 0, 0.6)), rows(row(3000, 0.04, 0, 0.5), row(1500, 0.08, 0, 0.6)), []string{"conflict /rows/0/offset"}},
		{"wider by a nanometre over a metre", "s", "", rows(row(1, 0, 0.5, 0), row(2, 0, 0.500001, 0)), rows(row(1, 0, 0.5, 0), row(2, 0, 0.5000001, 0)), []string{"conflict /rows/1/slope"}},
		{"all at once", " ", "a\nb", rows(row(1, 1, 1, 0), row(0, 1, 0, -1), row(1, 1, 1, 1), row(7, 2, 2, 2)), nil, []string{
			"missing /source", "malformed /edition", "missing /rows/1/speed", "out_of_range /rows/1/flex", "missing /rows/1/slope",
			"missing /rows/0/flex", "duplicate /rows/2/speed", "conflict /rows/3/offset", "conflict /rows/3/slope", "conflict /rows/3/flex"}},
	} {
		_, err := tolerance.NewTable(r.source, r.edition, r.bad...)
		wantFaults(t, r.name, err, r.want...)
		if r.twin != nil {
			if _, err := tolerance.NewTable(r.source, r.edition, r.twin...); err != nil {
				t.Errorf("%s: the twin is refused: %v", r.name, err)
			}
		}
	}
	for source, want := range map[string][]string{
		"": {"missing /source"}, "\t": {"missing /source"}, "a\x00b": {"malformed /source"}, "a\xffb": {"malformed /source"},
		" a, \"b\" ": nil, "Größe": nil,
	} {
		_, err := tolerance.NewTable(source, "", row(1, 1, 0, 0))
		wantFaults(t, fmt.Sprintf("source %q", source), err, want...)
	}
}
