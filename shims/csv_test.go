package shims_test

import (
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"example.org/collinear/shims"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

func TestReadStock(t *testing.T) {
	rows := []struct {
		name, text string
		want       shims.Stock
	}{
		{"all columns", "marked (mm),measured (mm),count\n0.05,0.052,10\n0.1,,8\n", shims.Stock{{50 * um, 52 * um, 10}, {100 * um, 0, 8}}},
		{"no measured", "marked (mil),count\n2.5,3\n", shims.Stock{{63_500, 0, 3}}},
		{"another order, other units", "count,measured (um),marked (in)\n2,1590,1/16\n", shims.Stock{{1_587_500, 1590 * um, 2}}},
		{"run out", "marked (mm),count\n2,0\n", shims.Stock{{2 * mm, 0, 0}}},
		{"no mark, but measured", "marked (mm),measured (mm),count\n0,0.3,1\n", shims.Stock{{0, 300 * um, 1}}},
		{"spaces, empty lines, ends of lines", " marked (mm) , count\r\n\r\n 0.05 , 1 \r\n", shims.Stock{{50 * um, 0, 1}}},
		{"quotes", "\"marked (mm)\",\"count\"\n\"0.05\",\"1\"", shims.Stock{{50 * um, 0, 1}}},
		{"byte order mark", "\ufeffmarked (mm),count\n0.05,1\n", shims.Stock{{50 * um, 0, 1}}},
		{"spaces within a heading", "marked(mm),count\n0.05,1\n", shims.Stock{{50 * um, 0, 1}}},
		{"same kind twice", "marked (mm),count\n1,1\n1,2\n", shims.Stock{{mm, 0, 1}, {mm, 0, 2}}},
	}
	for _, row := range rows {
		got, err := shims.ReadStock(strings.NewReader(row.text))
		if err != nil {
			t.Errorf("%s: %v", row.name, err)
		}
		if diff := cmp.Diff(row.want, got); diff != "" {
			t.Errorf("%s: %s", row.name, diff)
		}
	}
}

func TestReadStockRefuses(t *testing.T) {
	const head = "marked (mm),measured (mm),count\n"
	rows := []struct{ name, text, want string }{
		{"nothing", "", "missing /columns"},
		{"only a header", head, "missing /rows"},
		{"no header", "0.05,0.05,10\n0.1,0.1,8\n", "unknown /columns/0 unknown /columns/1 unknown /columns/2"},
		{"column of no name", "marked (mm),count,\n1,1,1\n", "unknown /columns/2"},
		{"column not known", "marked (mm),count,colour\n1,1,red\n", "unknown /columns/2"},
		{"count with a unit", "marked (mm),count (mm)\n1,1\n", "unknown /columns/1"},
		{"length without a unit", "marked,count\n1,1\n", "unknown /columns/0"},
		{"unit not known", "marked (furlong),count\n1,1\n", "unknown /columns/0"},
		{"bracket not closed", "marked (mm,count\n1,1\n", "unknown /columns/0"},
		{"column twice", "marked (mm),marked (in),count\n1,1,1\n", "duplicate /columns/1"},
		{"no marked", "measured (mm),count\n1,1\n", "missing /columns"},
		{"no count", "marked (mm)\n1\n", "missing /columns"},
		{"neither marked nor count", "measured (mm)\n1\n", "missing /columns missing /columns"},
		{"one of them known, another twice", "count,count\n1,1\n", "duplicate /columns/1 missing /columns"},
		{"count with an empty bracket", "marked (mm),count ()\n1,1\n", "unknown /columns/1"},
		{"something after the unit", "marked (mm)!,count\n1,1\n", "unknown /columns/0"},
		{"not UTF-8", head + "1,1,\xff\n", "malformed "},
		{"bad counts beside a column not known", "marked (mm),count,colour\n1,x,red\n1,-1,red\n1,1,red\n", "unknown /columns/2 malformed /rows/0/count out_of_range /rows/1/count"},
		{"mark not known, measure and count bad", "marked (ell),measured (mm),count\n1,0,1\n1,,-1\n", "unknown /columns/0 out_of_range /rows/0/measured out_of_range /rows/1/count"},
		{"measure not known, so that a mark of zero may do", "marked (mm),measured,count\n0,1,1\n-1,1,1\n", "unknown /columns/1 out_of_range /rows/1/marked"},
		{"a mark in two columns is the first", "marked (mm),marked (in),count\n1,x,1\nx,1,1\n", "duplicate /columns/1 malformed /rows/1/marked"},
		{"a row too short beside a column not known", "marked (mm),count,colour\n1,1\n", "unknown /columns/2 malformed /rows/0"},
		{"only a header, with a mistake", "marked (mm),count,colour\n", "unknown /columns/2 missing /rows"},
		{"a title above the header", "a box of shims\nmarked (mm),count\n1,1\n", "unknown /columns/0"},
		{"semicolons", "marked (mm);count\n1;1\n", "unknown /columns/0"},
		{"a cell too few", head + "1,1,1\n1,1\n", "malformed /rows/1"},
		{"a cell too many", head + "1,1,1,1\n", "malformed /rows/0"},
		{"quote not closed", head + "\"1,1,1\n", "malformed "},
		{"quote in the middle", head + "1\"2,1,1\n", "malformed "},
		{"mark missing", head + ",1,1\n", "missing /rows/0/marked"},
		{"mark and measure missing", head + ",,1\n", "missing /rows/0/marked"},
		{"mark of zero, not measured", head + "0,,1\n", "missing /rows/0/marked"},
		{"mark no number", head + "1,1,1\n1,1,1\n1,1,1\nthin,1,1\n", "malformed /rows/3/marked"},
		{"decimal comma", head + "\"0,05\",,1\n", "malformed /rows/0/marked"},
		{"unit in the cell", head + "1 mm,1,1\n", "unknown /rows/0/marked"},
		{"mark below zero", head + "-1,,1\n", "out_of_range /rows/0/marked"},
		{"mark not whole", head + "0.0000005,,1\n", "out_of_range /rows/0/marked"},
		{"mark infinite", head + "inf,,1\n", "not_finite /rows/0/marked"},
		{"measure of zero", head + "1,0,1\n", "out_of_range /rows/0/measured"},
		{"measure below zero", head + "1,-1,1\n", "out_of_range /rows/0/measured"},
		{"measure no number", head + "1,?,1\n", "malformed /rows/0/measured"},
		{"count missing", head + "1,1,\n", "missing /rows/0/count"},
		{"count below zero", head + "1,1,-1\n", "out_of_range /rows/0/count"},
		{"count not whole", head + "1,1,1.5\n", "malformed /rows/0/count"},
		{"count too large for a number", head + "1,1,99999999999999999999\n", "out_of_range /rows/0/count"},
		{"counts too large together", head + "1,1,600000\n1,1,600000\n", "out_of_range /rows/1/count"},
		{"a bad mark hides no bad count", head + "x,1,-1\n", "malformed /rows/0/marked out_of_range /rows/0/count"},
		{"a count too large for a number is blamed once", head + "1,1,-99999999999999999999\n", "out_of_range /rows/0/count"},
		{"several", head + "1,1,1\nx,,1\n1,y,z\n", "malformed /rows/1/marked malformed /rows/2/measured malformed /rows/2/count"},
		{"too long", head + strings.Repeat("1,1,1\n", shims.MostText/6), "out_of_range "},
	}
	for _, row := range rows {
		stock, err := shims.ReadStock(strings.NewReader(row.text))
		if got := strings.Join(faultsOf(err), " "); got != row.want || stock != nil {
			t.Errorf("%s: %q, want %q (%v)", row.name, got, row.want, err)
		}
		for _, f := range units.Faults(err) {
			if f.Want == "" || !errors.Is(err, f.Code) {
				t.Errorf("%s: %+v does not say what was wanted", row.name, f)
			}
		}
	}
}

// What the reader says goes to the caller, who knows where it comes from.
func TestReadStockHandsOnErrors(t *testing.T) {
	_, err := shims.ReadStock(iotest.ErrReader(io.ErrUnexpectedEOF))
	if !errors.Is(err, io.ErrUnexpectedEOF) || len(units.Faults(err)) != 0 {
		t.Error(err)
	}
}

// A text of just the length and with just the rows that are allowed is read.
func TestReadStockLongest(t *testing.T) {
	text := "marked (mm),count\n" + strings.Repeat("1,1\n", shims.MostRows)
	long := text + strings.Repeat("\n", shims.MostText-len(text))
	if stock, err := shims.ReadStock(strings.NewReader(long)); err != nil || len(stock) != shims.MostRows {
		t.Errorf("%d rows, %v", len(stock), err)
	}
	for _, more := range []string{long + "\n", text + "1,1\n"} {
		if _, err := shims.ReadStock(strings.NewReader(more)); !errors.Is(err, units.OutOfRange) {
			t.Error(err)
		}
	}
}
