package shims_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// counted is a text that goes on, and counts what was read of it.
type counted struct {
	text string
	read int
}

func (e *counted) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = e.text[(e.read+i)%len(e.text)]
	}
	e.read += len(p)
	return len(p), nil
}

// Of a text without an end one byte more than MostText is read, and one fault told.
func TestReadStockIsBounded(t *testing.T) {
	for _, text := range []string{"1,2\n", `"`, ",", "\n", "\xff"} {
		r := &counted{text: text}
		_, err := shims.ReadStock(r)
		if f := units.Faults(err); len(f) != 1 || f[0].Code != units.OutOfRange || f[0].Path != "" {
			t.Errorf("%q: got %.200v", text, err)
		}
		if r.read > shims.MostText+1 {
			t.Errorf("%q: %d bytes were read", text, r.read)
		}
	}
}

// A stock of nothing but columns, or lines, is one fault and not one for each.
func TestReadStockOfManyFaults(t *testing.T) {
	for _, row := range []struct{ name, text, path string }{
		{"columns", strings.Repeat(",", 1_000_000), "/columns"},
		{"columns of one name behind others", strings.Repeat("x,", 200_000) + strings.Repeat("count,", 80_000), "/columns"},
		{"lines", "marked (mm),count\n" + strings.Repeat("x\n", 500_000), ""},
		{"cells", "marked (mm),count\n" + strings.Repeat(",\n", 500_000), ""},
	} {
		_, err := shims.ReadStock(strings.NewReader(row.text))
		if f := units.Faults(err); len(f) != 1 || f[0].Code != units.OutOfRange || f[0].Path != row.path {
			t.Errorf("%s: %d faults, %.200v", row.name, len(f), err)
		}
	}
}

// Numbers of pieces that no box holds are refused, also where their sum would turn
// negative in an int.
func TestCountsBeyondAnyBox(t *testing.T) {
	for _, row := range []struct {
		name  string
		stock shims.Stock
		path  string
	}{
		{"the largest count", shims.Stock{{Marked: 1e6, Count: math.MaxInt}}, "/stock/0/count"},
		{"the least count", shims.Stock{{Marked: 1e6, Count: math.MinInt}}, "/stock/0/count"},
		{"together too many", shims.Stock{{Marked: 1e6, Count: shims.MostCount}, {Marked: 2e6, Count: 1}}, "/stock/1/count"},
		{"rows", make(shims.Stock, shims.MostRows+1), "/stock"},
		{"a million rows", make(shims.Stock, 1_000_000), "/stock"},
	} {
		_, err := shims.Choose(row.stock, shims.Rule{}, shims.Order{Foot: "a", Correction: 1e6})
		if f := units.Faults(err); len(f) != 1 || f[0].Code != units.OutOfRange || f[0].Path != row.path {
			t.Errorf("%s: %.200v", row.name, err)
		}
	}
}

// Too many orders are one fault: they are not looked at one by one.
func TestOrdersBeyondAnyMachine(t *testing.T) {
	orders := make([]shims.Order, 1_000_000)
	_, err := shims.Choose(shims.CommonMetric(10), shims.Rule{}, orders...)
	if f := units.Faults(err); len(f) != 1 || f[0].Code != units.OutOfRange || f[0].Path != "/orders" || f[0].Value != strconv.Itoa(len(orders)) {
		t.Errorf("got %.200v", err)
	}
}
