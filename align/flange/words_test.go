package flange_test

import (
	"math"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
	"example.org/collinear/units"
)

func TestShimInWords(t *testing.T) {
	shim := func(name string, thick units.Length) flange.Shim {
		return flange.Shim{Bolt: flange.Bolt{Name: name}, Thickness: thick}
	}
	standing := align.Style{Twelve: "mark", Six: "ladder"}
	rows := []struct {
		name  string
		shim  flange.Shim
		style align.Style
		want  string
	}{
		{"hundredths unless told", shim("bolt 1", 204*um), align.Style{}, "bolt 1: add 0.20 mm"},
		{"without a name", shim("", 204*um), align.Style{}, "add 0.20 mm"},
		{"nothing", shim("bolt 4", 0), align.Style{}, "bolt 4: leave"},
		{"rounds to nothing", shim("bolt 4", 4.9*um), align.Style{}, "bolt 4: leave"},
		{"half of the last digit does not", shim("bolt 4", 5*um), align.Style{}, "bolt 4: add 0.01 mm"},
		{"mils", shim("bolt 1", 8*units.Mil), align.Style{Unit: units.InMils}, "bolt 1: add 8.0 mil"},
		{"digits", shim("bolt 1", 204*um), align.Style{Digits: 3}, "bolt 1: add 0.204 mm"},
		{"the words of a standing machine do not touch it", shim("bolt 1", 204*um), standing, "bolt 1: add 0.20 mm"},
		{"not a number", shim("bolt 1", units.Length(math.NaN())), align.Style{}, "bolt 1: unknown, the shim is not a number"},
	}
	for _, row := range rows {
		if got := row.shim.Text(row.style); got != row.want {
			t.Errorf("%s: got %q, want %q", row.name, got, row.want)
		}
		if row.style == (align.Style{}) && row.shim.String() != row.want {
			t.Errorf("%s: String gives %q", row.name, row.shim)
		}
	}
}

func TestCorrectionInWords(t *testing.T) {
	standing := align.Style{Twelve: "mark", Six: "ladder", Three: "east", Nine: "west", View: align.FromStationary}
	rows := []struct {
		name   string
		change func(*flange.Flange)
		off    align.Centreline
		style  align.Style
		want   []string
	}{
		{"worked example", func(*flange.Flange) {}, line(0, 1e-3, 0, 0), align.Style{}, []string{
			"12: add 0.20 mm", "3: add 0.40 mm", "6: add 0.20 mm", "9: leave",
			"flange: leave the height, push 0.40 mm towards 9 o'clock", "machine: goes 0.20 mm away from the stationary one",
		}},
		{"pushed the other way", func(f *flange.Flange) { f.Push = flange.TowardsStationary }, line(0, 1e-3, 0, 0), align.Style{}, []string{
			"12: add 0.20 mm", "3: leave", "6: add 0.20 mm", "9: add 0.40 mm",
			"flange: leave the height, push 0.40 mm towards 9 o'clock", "machine: goes 0.20 mm towards the stationary one",
		}},
		{"standing machine, seen from below", func(*flange.Flange) {}, line(0, 1e-3, 0, 0), standing, []string{
			"12: add 0.20 mm", "3: add 0.40 mm", "6: add 0.20 mm", "9: leave",
			"flange: push 0.40 mm towards east", "machine: goes 0.20 mm away from the stationary one",
		}},
		{"offset alone, ample rabbet", func(f *flange.Flange) { f.Clearance = mm }, line(0.1, 0, 0.2, 0), align.Style{}, []string{
			"12: leave", "3: leave", "6: leave", "9: leave", "flange: lower 0.20 mm, push 0.10 mm towards 9 o'clock",
		}},
		{"the rabbet in the way", func(f *flange.Flange) { f.Clearance = 200 * um }, line(0.25, 0, 0, 0), align.Style{}, []string{
			"12: leave", "3: leave", "6: leave", "9: leave",
			"flange: leave the height, push 0.25 mm towards 9 o'clock", "rabbet: in the way by 0.15 mm",
		}},
		{"in the way by less than is told", func(f *flange.Flange) { f.Clearance = 200 * um }, line(0.104, 0, 0, 0), align.Style{}, []string{
			"12: leave", "3: leave", "6: leave", "9: leave",
			"flange: leave the height, push 0.10 mm towards 9 o'clock", "rabbet: in the way",
		}},
	}
	for _, row := range rows {
		f := worked()
		row.change(&f)
		c := mustCorrect(t, f, align.Exact(row.off))
		if got, want := c.Text(row.style), strings.Join(row.want, "\n"); got != want {
			t.Errorf("%s: got\n%s\nwant\n%s", row.name, got, want)
		}
		if row.style == (align.Style{}) && c.String() != c.Text(row.style) {
			t.Errorf("%s: String gives\n%s", row.name, c)
		}
	}
}
