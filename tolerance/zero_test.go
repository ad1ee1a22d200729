package tolerance_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
)

// What the zero values are: nothing, and never within.
func TestZeroValues(t *testing.T) {
	t.Run("Verdict is none", func(t *testing.T) {
		var v tolerance.Verdict
		if v.Outcome == tolerance.Within || v.Governing() != (tolerance.Item{}) || v.String() != "no verdict" {
			t.Errorf("%v, governed by %v", v, v.Governing())
		}
		for range v.All() {
			t.Error("it has an item")
		}
	})
	t.Run("Outcome, Quantity and Plane are not chosen", func(t *testing.T) {
		if tolerance.Outcome(0).String() != "0" || tolerance.Quantity(0).String() != "0" || tolerance.Plane(0).String() != "0" {
			t.Error("zero has a word")
		}
	})
	t.Run("Item is of nothing and not within", func(t *testing.T) {
		var i tolerance.Item
		if i.Within() || i.String() != "nothing" {
			t.Errorf("%v, within %v", i, i.Within())
		}
		if i.Of = tolerance.Offset; i.Within() {
			t.Error("within no limit")
		}
		if i.Limit.Length = tolerance.Resolution; !i.Within() {
			t.Error("nothing is not within the least limit there can be")
		}
	})
	t.Run("Amount is neither", func(t *testing.T) {
		if a := (tolerance.Amount{}); a.Length != 0 || a.Slope != 0 {
			t.Error(a)
		}
	})
	t.Run("Acceptance and DecisionRule are simple", func(t *testing.T) {
		if err := (tolerance.Acceptance{}).Validate(); err != nil || tolerance.DecisionRule(0) != tolerance.Simple {
			t.Error(err)
		}
		l, off := tolerance.Limits{Offset: 100 * um}, spread{y: 0.9, uy: 0.5, uz: 0.5}.estimate(t).Times(1e-4)
		if a, b := judged(t, l, off, align.Coupling{}), judgedBy(t, l, off, align.Coupling{}, tolerance.Acceptance{}); a != b || a.Outcome != tolerance.Within {
			t.Errorf("%+v, %+v", a, b)
		}
	})
	t.Run("nothing has no chance", func(t *testing.T) {
		if v, i := (tolerance.Verdict{}).Chance(), (tolerance.Item{}).Chance(); v != "no verdict" || i != "unknown" {
			t.Errorf("%q, %q", v, i)
		}
	})
	t.Run("Limits are no limit, and sound", func(t *testing.T) {
		var l tolerance.Limits
		if err := l.Validate(); err != nil {
			t.Error(err)
		}
		_, err := l.Judge(align.Estimate{}, align.Coupling{})
		wantFaults(t, "short", err, "missing /offset")
		_, err = l.Judge(align.Estimate{}, align.Coupling{Span: mm})
		wantFaults(t, "spacer", err, "missing /flex")
	})
	t.Run("Row and Table are refused", func(t *testing.T) {
		_, err := tolerance.NewTable("s", "", tolerance.Row{})
		wantFaults(t, "row", err, "missing /rows", "missing /rows/0/speed")
		var table tolerance.Table
		_, err = table.At(1)
		wantFaults(t, "table", err, "missing /rows")
		if table.Source() != "" || table.Edition() != "" || len(table.Rows()) != 0 {
			t.Errorf("%q %q %v", table.Source(), table.Edition(), table.Rows())
		}
	})
	t.Run("RunoutLimit is none", func(t *testing.T) {
		if l := (tolerance.RunoutLimit{}); l.Limit != 0 || l.Source != "" {
			t.Error(l)
		}
	})
	t.Run("Style is hundredths of a millimetre", func(t *testing.T) {
		v := judged(t, tolerance.Limits{Offset: 100 * um}, align.Exact(line(0, 0, 0.04, 0)), align.Coupling{})
		if text := v.Text(tolerance.Style{}); text != "within, offset 0.04 mm of 0.10 mm" || text != v.String() {
			t.Errorf("%q", text)
		}
	})
}

// A verdict that was filled by hand, and badly, is walked over without panic.
func TestVerdictsByHand(t *testing.T) {
	v := judged(t, tolerance.Limits{Offset: mm, Slope: mmm}, align.Exact(caseA), align.Coupling{})
	for _, row := range []struct{ used, governs, items int }{{-1, 0, 0}, {9, 1, 4}, {2, -1, 2}, {2, 2, 2}, {0, 0, 0}} {
		v.Used, v.Governs = row.used, row.governs
		n := 0
		for i, item := range v.All() {
			if n++; item != v.Items[i] {
				t.Errorf("item %d is %v", i, item)
			}
		}
		if n != row.items {
			t.Errorf("%+v: %d items", row, n)
		}
		if governing := v.Governing(); row.governs != 1 && governing != (tolerance.Item{}) {
			t.Errorf("%+v: governed by %v", row, governing)
		}
	}
	v.Used = 2
	for i := range v.All() {
		if i > 0 {
			t.Error("walked on after a break")
		}
		break
	}
}
