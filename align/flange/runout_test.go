package flange_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align/flange"
	"example.org/collinear/units"
)

// EASA AR100-2020, table 2-11, IEC flange-mounted machines (read), as it stands
// there: spigot diameter from, to, and the limit of eccentricity and face runout, all
// in mm.
const easaTable211 = `
40   100  0.080
100  230  0.100
230  450  0.125
450  800  0.160
800  1250 0.200
1250 2000 0.250
2000 2240 0.315`

func millimetres(s string) units.Length { return units.MustParseLength(s + " mm") }

// Every class at both edges, a nanometre beyond each, and in the middle. The lower
// edge belongs to the class below, whose limit is the smaller, but for the first.
func TestRunoutClasses(t *testing.T) {
	lines := strings.Split(strings.TrimSpace(easaTable211), "\n")
	if len(lines) != 7 {
		t.Fatalf("%d classes", len(lines))
	}
	for i, text := range lines {
		f := strings.Fields(text)
		from, upTo := millimetres(f[0]), millimetres(f[1])
		want := flange.RunoutLimit{From: from, UpTo: upTo, Limit: millimetres(f[2])}
		for _, d := range []units.Length{from + 1, from + 0.6, (from + upTo) / 2, upTo - 1, upTo, upTo + 0.4} {
			got, err := flange.Runout(d)
			want.Source = got.Source
			if err != nil || got != want || !strings.Contains(got.Source, "EASA AR100-2020, table 2-11") {
				t.Errorf("%v: got %+v, %v, want %+v", d, got, err, want)
			}
		}
		got, err := flange.Runout(from)
		if i == 0 && (err != nil || got.From != from) {
			t.Errorf("%v, the first, got %+v, %v", from, got, err)
		}
		if i > 0 && (err != nil || got.UpTo != from || got.Limit >= want.Limit) {
			t.Errorf("%v, in two classes, got %+v, %v: want the smaller limit", from, got, err)
		}
	}
}

func TestRunoutRefuses(t *testing.T) {
	rows := []struct {
		name   string
		spigot units.Length
		want   []string
	}{
		{"none", 0, []string{"missing /spigot"}},
		{"below zero", -mm, []string{"out_of_range /spigot"}},
		{"not a number", units.Length(math.NaN()), []string{"not_finite /spigot"}},
		{"below the table", 40*mm - 1, []string{"out_of_range /spigot"}},
		{"the first in the table", 40 * mm, nil},
		{"rounds into the table", 40*mm - 0.4, nil},
		{"the last in the table", 2240 * mm, nil},
		{"beyond the table", 2240*mm + 1, []string{"out_of_range /spigot"}},
	}
	for _, row := range rows {
		l, err := flange.Runout(row.spigot)
		if got := faults(err); !slices.Equal(got, row.want) {
			t.Errorf("%s: got %v, want %v", row.name, got, row.want)
		}
		if err != nil && l != (flange.RunoutLimit{}) {
			t.Errorf("%s: refused, and yet %+v", row.name, l)
		}
	}
}

func TestWithin(t *testing.T) {
	limit, err := flange.Runout(100 * mm) // 0.080 mm
	if err != nil {
		t.Fatal(err)
	}
	rows := []struct {
		name  string
		limit flange.RunoutLimit
		found units.Length
		want  bool
		fault []string
	}{
		{"none found", limit, 0, true, nil},
		{"on the limit", limit, 80 * um, true, nil},
		{"on the limit but for rounding", limit, 80*um + 0.4, true, nil},
		{"a nanometre beyond", limit, 80*um + 1, false, nil},
		{"on the limit in mils", limit, units.MustParseLength("3.1 mil"), true, nil},
		{"beyond in mils", limit, units.MustParseLength("3.2 mil"), false, nil},
		{"below zero", limit, -1, false, []string{"out_of_range /found"}},
		{"not a number", limit, units.Length(math.NaN()), false, []string{"not_finite /found"}},
		{"no limit", flange.RunoutLimit{}, 1, false, []string{"missing /limit"}},
		{"neither", flange.RunoutLimit{}, -1, false, []string{"missing /limit", "out_of_range /found"}},
	}
	for _, row := range rows {
		got, err := row.limit.Within(row.found)
		if got != row.want || !slices.Equal(faults(err), row.fault) {
			t.Errorf("%s: got %v, %v; want %v, %v", row.name, got, err, row.want, row.fault)
		}
	}
}
