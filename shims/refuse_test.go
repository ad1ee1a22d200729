package shims_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"example.org/collinear/shims"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

const (
	mm = units.Millimetre
	um = units.Micrometre
	nm = units.Nanometre
)

var (
	nan = units.Length(math.NaN())
	inf = units.Length(math.Inf(1))
)

// input is all that Choose takes.
type input struct {
	Stock  shims.Stock
	Rule   shims.Rule
	Orders []shims.Order
}

func (in input) choose() (shims.Choice, error) {
	return shims.Choose(in.Stock, in.Rule, in.Orders...)
}

// soundInput is one that is answered without a warning.
func soundInput() input {
	return input{
		Stock: shims.Stock{{Marked: 50 * um, Measured: 52 * um, Count: 10}, {Marked: mm, Count: 4}},
		Rule:  shims.Rule{Error: 50 * um, Pieces: 5, Keep: 100 * um, Nodes: 10_000},
		Orders: []shims.Order{
			{Foot: "left", Correction: 60 * um, SoftFoot: 50 * um, Now: []shims.Piece{{Marked: mm, Count: 1}}},
			{Foot: "right", Correction: mm},
		},
	}
}

// faultsOf lists code and path of every fault.
func faultsOf(err error) []string {
	var list []string
	for _, f := range units.Faults(err) {
		list = append(list, string(f.Code)+" "+f.Path)
	}
	return list
}

// One thing wrong in an input that is sound otherwise: the fault, and a twin
// that is nearly the same and passes.
func TestChooseRefuses(t *testing.T) {
	stock0 := func(f func(*shims.Piece)) func(*input) { return func(in *input) { f(&in.Stock[0]) } }
	now0 := func(f func(*shims.Piece)) func(*input) { return func(in *input) { f(&in.Orders[0].Now[0]) } }
	order1 := func(f func(*shims.Order)) func(*input) { return func(in *input) { f(&in.Orders[1]) } }
	rule := func(f func(*shims.Rule)) func(*input) { return func(in *input) { f(&in.Rule) } }
	rows := []struct {
		name      string
		bad, twin func(*input)
		want      string
	}{
		{"no thickness at all", stock0(func(p *shims.Piece) { *p = shims.Piece{Count: 1} }), stock0(func(p *shims.Piece) { p.Marked = 0 }), "missing /stock/0/marked"},
		{"mark below zero", stock0(func(p *shims.Piece) { *p = shims.Piece{Marked: -nm, Count: 1} }), stock0(func(p *shims.Piece) { *p = shims.Piece{Marked: nm, Count: 1} }), "out_of_range /stock/0/marked"},
		{"mark below zero beside a measure", stock0(func(p *shims.Piece) { p.Marked = -nm }), stock0(func(p *shims.Piece) { p.Marked = nm }), "out_of_range /stock/0/marked"},
		{"measure below zero", stock0(func(p *shims.Piece) { p.Measured = -nm }), stock0(func(p *shims.Piece) { p.Measured = nm }), "out_of_range /stock/0/measured"},
		{"mark not whole", stock0(func(p *shims.Piece) { *p = shims.Piece{Marked: 1.5, Count: 1} }), stock0(func(p *shims.Piece) { *p = shims.Piece{Marked: 1.5, Measured: 2, Count: 1} }), "out_of_range /stock/0/marked"},
		{"1.1 mil, which misses a whole number of nanometres by the last bit", stock0(func(p *shims.Piece) { p.Measured = 1.1 * units.Mil }), stock0(func(p *shims.Piece) { p.Measured = (1.1 * units.Mil).Round(nm) }), "out_of_range /stock/0/measured"},
		{"mark not a number", stock0(func(p *shims.Piece) { p.Marked = nan }), nil, "not_finite /stock/0/marked"},
		{"measure infinite", stock0(func(p *shims.Piece) { p.Measured = inf }), nil, "not_finite /stock/0/measured"},
		{"piece too thick", stock0(func(p *shims.Piece) { p.Measured = shims.Thickest + 1 }), stock0(func(p *shims.Piece) { p.Measured = shims.Thickest }), "out_of_range /stock/0/measured"},
		{"mark too thick", stock0(func(p *shims.Piece) { p.Marked = shims.Thickest + 1 }), stock0(func(p *shims.Piece) { p.Marked = shims.Thickest }), "out_of_range /stock/0/marked"},
		{"count below zero", stock0(func(p *shims.Piece) { p.Count = -1 }), stock0(func(p *shims.Piece) { p.Count = 0 }), "out_of_range /stock/0/count"},
		{"too many pieces", stock0(func(p *shims.Piece) { p.Count = shims.MostCount - 4 }), stock0(func(p *shims.Piece) { p.Count = shims.MostCount - 5 }), "out_of_range /orders/0/now/0/count"},
		{"far too many pieces", stock0(func(p *shims.Piece) { p.Count = math.MaxInt }), nil, "out_of_range /stock/0/count"},

		{"too many rows", func(in *input) { in.Stock = slices.Repeat(in.Stock[:1], shims.MostRows+1) }, func(in *input) { in.Stock = slices.Repeat(in.Stock, shims.MostRows/2)[1:] }, "out_of_range /stock"},
		{"too many rows in a pack", func(in *input) { in.Orders[1].Now = slices.Repeat(in.Orders[0].Now, shims.MostRows-2) }, func(in *input) {
			in.Orders[1].Now, in.Orders[1].Correction = slices.Repeat(in.Orders[0].Now, shims.MostRows-3), -990*mm
		}, "out_of_range /orders/1/now"},

		{"error below zero", rule(func(r *shims.Rule) { r.Error = -nm }), rule(func(r *shims.Rule) { r.Error = 0 }), "out_of_range /rule/error"},
		{"error not a number", rule(func(r *shims.Rule) { r.Error = nan }), nil, "not_finite /rule/error"},
		{"error too large", rule(func(r *shims.Rule) { r.Error = shims.Thickest + 1 }), rule(func(r *shims.Rule) { r.Error = shims.Thickest }), "out_of_range /rule/error"},
		{"pieces below zero", rule(func(r *shims.Rule) { r.Pieces = -1 }), rule(func(r *shims.Rule) { r.Pieces = 0 }), "out_of_range /rule/pieces"},
		{"too many pieces a foot", rule(func(r *shims.Rule) { r.Pieces = shims.MostPieces + 1 }), rule(func(r *shims.Rule) { r.Pieces = shims.MostPieces }), "out_of_range /rule/pieces"},
		{"keep below zero", rule(func(r *shims.Rule) { r.Keep = -nm }), rule(func(r *shims.Rule) { r.Keep = 0 }), "out_of_range /rule/keep"},
		{"keep infinite", rule(func(r *shims.Rule) { r.Keep = inf }), nil, "not_finite /rule/keep"},
		{"keep too much", rule(func(r *shims.Rule) { r.Keep = shims.Thickest + 1 }), rule(func(r *shims.Rule) { r.Keep = shims.Thickest }), "out_of_range /rule/keep"},
		{"nodes below zero", rule(func(r *shims.Rule) { r.Nodes = -1 }), rule(func(r *shims.Rule) { r.Nodes = 1 }), "out_of_range /rule/nodes"},

		{"no orders", func(in *input) { in.Orders = nil }, func(in *input) { in.Orders = in.Orders[:1] }, "missing /orders"},
		{"too many orders", func(in *input) { in.Orders = many(shims.MostFeet + 1) }, func(in *input) { in.Orders = many(shims.MostFeet) }, "out_of_range /orders"},
		{"no name", order1(func(o *shims.Order) { o.Foot = "" }), nil, "missing /orders/1/foot"},
		{"name of another", order1(func(o *shims.Order) { o.Foot = "left" }), order1(func(o *shims.Order) { o.Foot = "left " }), "duplicate /orders/1/foot"},
		{"correction not a number", order1(func(o *shims.Order) { o.Correction = nan }), nil, "not_finite /orders/1/correction"},
		{"correction too large", order1(func(o *shims.Order) { o.Correction = shims.Thickest + 1 }), order1(func(o *shims.Order) { o.Correction = shims.Thickest }), "out_of_range /orders/1/correction"},
		{"correction too large downwards", order1(func(o *shims.Order) { o.Correction = -shims.Thickest - 1 }), order1(func(o *shims.Order) { o.Correction = -shims.Thickest }), "out_of_range /orders/1/correction"},
		{"correction beyond reckoning", order1(func(o *shims.Order) { o.Correction = 1e16 }), nil, "out_of_range /orders/1/correction"},
		{"soft foot infinite", order1(func(o *shims.Order) { o.SoftFoot = -inf }), order1(func(o *shims.Order) { o.SoftFoot = -mm }), "not_finite /orders/1/soft_foot"},
		{"sum too large", order1(func(o *shims.Order) { o.Correction, o.SoftFoot = 600*mm, 600*mm }), order1(func(o *shims.Order) { o.Correction, o.SoftFoot = 600*mm, -600*mm }), "out_of_range /orders/1/correction"},
		{"present pack too thick", now0(func(p *shims.Piece) { p.Count = 1001 }), func(in *input) { in.Orders[0].Now[0].Count, in.Orders[0].Correction = 1000, -100*um }, "out_of_range /orders/0/now"},
		{"present piece without a count", now0(func(p *shims.Piece) { p.Count = 0 }), now0(func(p *shims.Piece) { p.Count = 9 }), "missing /orders/0/now/0/count"},
		{"present piece with a count below zero", now0(func(p *shims.Piece) { p.Count = -1 }), nil, "out_of_range /orders/0/now/0/count"},
		{"present piece without thickness", now0(func(p *shims.Piece) { p.Marked = 0 }), now0(func(p *shims.Piece) { p.Marked, p.Measured = 0, mm }), "missing /orders/0/now/0/marked"},
		{"present piece not whole", now0(func(p *shims.Piece) { p.Marked = 0.5 }), nil, "out_of_range /orders/0/now/0/marked"},
	}
	for _, row := range rows {
		in := soundInput()
		row.bad(&in)
		got, err := in.choose()
		if diff := cmp.Diff([]string{row.want}, faultsOf(err)); diff != "" {
			t.Errorf("%s: %v: %s", row.name, err, diff)
		}
		if !cmp.Equal(got, shims.Choice{}) {
			t.Errorf("%s: refused with an answer, %+v", row.name, got)
		}
		for _, f := range units.Faults(err) {
			if f.Want == "" || !errors.Is(err, f.Code) {
				t.Errorf("%s: %+v does not say what was wanted", row.name, f)
			}
		}
		in = soundInput()
		if row.twin != nil {
			row.twin(&in)
		}
		c, err := in.choose()
		if err != nil {
			t.Errorf("%s, twin: %v", row.name, err)
			continue
		}
		checkChoice(t, in.Stock, in.Rule, in.Orders, c)
	}
}

// many makes orders that want nothing.
func many(n int) []shims.Order {
	orders := make([]shims.Order, n)
	for i := range orders {
		orders[i].Foot = fmt.Sprint("foot ", i+1)
	}
	return orders
}

// The sound input really is, or the table above would show nothing.
func TestSoundInput(t *testing.T) {
	in := soundInput()
	c, err := in.choose()
	if err != nil || len(c.Warnings) != 0 || !c.Proven {
		t.Errorf("%+v, %v", c, err)
	}
}

// All that is wrong comes at once.
func TestAllFaultsAtOnce(t *testing.T) {
	in := soundInput()
	in.Stock[0].Count = -1
	in.Stock[1].Marked = 0
	in.Rule.Pieces, in.Rule.Keep = -1, nan
	in.Orders[0].Now[0].Count = 0
	in.Orders[1].Foot = "left"
	in.Orders[1].Correction = inf
	_, err := in.choose()
	want := []string{
		"duplicate /orders/1/foot", "missing /orders/0/now/0/count", "missing /stock/1/marked", "not_finite /orders/1/correction",
		"not_finite /rule/keep", "out_of_range /rule/pieces", "out_of_range /stock/0/count",
	}
	got := faultsOf(err)
	slices.Sort(got)
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// The warnings say what is wanted, what is there, and where no stock could help.
func TestWarnings(t *testing.T) {
	rows := []struct {
		name string
		in   func(*input)
		want []units.Fault
	}{
		{"none", func(*input) {}, nil},
		{"out of stock", func(in *input) { in.Stock[1].Count = 0 }, []units.Fault{{
			Code: units.Unreachable, Path: "/orders/1", Value: "0.26 mm", Want: "a total of 1 mm within 0.05 mm, and at least 0.1 mm",
		}}},
		{"less than nothing", func(in *input) { in.Orders[1].Correction, in.Rule.Keep = -mm, 0 }, []units.Fault{{
			Code: units.Unreachable, Path: "/orders/1", Value: "0 mm", Want: "a total of -1 mm within 0.05 mm; no stock can do that: it is less than nothing",
		}}},
		{"less than has to stay", func(in *input) { in.Orders[1].Correction, in.Rule.Keep = 10*um, 104*um }, []units.Fault{{
			Code: units.Unreachable, Path: "/orders/1", Value: "0.104 mm", Want: "a total of 0.01 mm within 0.05 mm, and at least 0.104 mm; no stock can do both",
		}}},
		{"nothing, where something has to stay", func(in *input) { in.Orders[1].Correction, in.Rule.Keep = 0, 104*um }, []units.Fault{{
			Code: units.Unreachable, Path: "/orders/1", Value: "0.104 mm", Want: "a total of 0 mm within 0.05 mm, and at least 0.104 mm; no stock can do both",
		}}},
		{"less than has to stay, within the error", func(in *input) { in.Orders[1].Correction, in.Rule.Keep = 54*um, 104*um }, nil},
		{"budget at its end", func(in *input) { in.Rule.Nodes = 1 }, []units.Fault{
			{Code: units.Unreachable, Path: "/orders/0", Value: "0 mm", Want: "a total of 1.11 mm within 0.05 mm, and at least 0.1 mm"},
			{Code: units.Unreachable, Path: "/orders/1", Value: "0 mm", Want: "a total of 1 mm within 0.05 mm, and at least 0.1 mm"},
			{Code: units.Suspect, Value: "0 nodes", Want: "a choice that is proven the best: this one is not, because the search ended before; give it more nodes"},
		}},
	}
	for _, row := range rows {
		in := soundInput()
		row.in(&in)
		c, err := in.choose()
		if err != nil {
			t.Errorf("%s: %v", row.name, err)
		}
		if diff := cmp.Diff(row.want, c.Warnings); diff != "" {
			t.Errorf("%s: %s", row.name, diff)
		}
		checkChoice(t, in.Stock, in.Rule, in.Orders, c)
	}
}
