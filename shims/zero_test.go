package shims_test

import (
	"encoding/json"
	"math/rand/v2"
	"reflect"
	"testing"

	"example.org/collinear/shims"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// What the zero values are: nothing there, nothing wanted, the default.
func TestZeroValues(t *testing.T) {
	if l := (shims.Piece{}).Thickness(); l != 0 {
		t.Errorf("the zero piece is %v thick", l)
	}
	_, err := shims.Choose(shims.Stock{{}}, shims.Rule{}, shims.Order{Foot: "a"})
	if diff := cmp.Diff([]string{"missing /stock/0/marked"}, faultsOf(err)); diff != "" {
		t.Error("the zero piece in a stock:", diff)
	}
	_, err = shims.Choose(nil, shims.Rule{}, shims.Order{})
	if diff := cmp.Diff([]string{"missing /orders/0/foot"}, faultsOf(err)); diff != "" {
		t.Error("the zero order:", diff)
	}
	// an empty box, the default rule, nothing wanted
	c, err := shims.Choose(nil, shims.Rule{}, shims.Order{Foot: "a"})
	want := shims.Choice{Stacks: []shims.Stack{{Foot: "a", Reached: true}}, Proven: true}
	if diff := cmp.Diff(want, c); diff != "" || err != nil {
		t.Error(err, diff)
	}
	// the zero rule is the default spelt out
	r := rand.New(rand.NewPCG(14, 15))
	spelt := shims.Rule{Error: shims.DefaultError, Pieces: shims.DefaultPieces, Nodes: shims.DefaultNodes}
	for range 100 {
		stock, _, orders := small(r)
		a, _ := shims.Choose(stock, shims.Rule{}, orders...)
		b, _ := shims.Choose(stock, spelt, orders...)
		if diff := cmp.Diff(a, b); diff != "" {
			t.Error(diff)
		}
	}
}

// An empty box with something wanted: nothing can be done, and the exact piece is
// named.
func TestEmptyBox(t *testing.T) {
	c, err := shims.Choose(nil, shims.Rule{Keep: mm}, shims.Order{Foot: "a", Correction: 1234 * um})
	if err != nil || !cmp.Equal(c.Add, []shims.Piece{{Marked: 1234 * um, Count: 1}}) {
		t.Errorf("%+v, %v", c, err)
	}
}

func roundTrip[T any](t *testing.T, value T) {
	t.Helper()
	text, err := json.Marshal(value)
	if err != nil {
		t.Fatal(err)
	}
	var back T
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(value, back); diff != "" {
		t.Errorf("%T: %s\n%s", value, diff, text)
	}
}

// filled has every field of every exported type.
func filled() (shims.Order, shims.Rule, shims.Choice) {
	pieces := []shims.Piece{{Marked: mm, Measured: 996 * um, Count: 2}}
	order := shims.Order{Foot: "a", Correction: -3 * um, SoftFoot: 5 * um, Now: pieces}
	rule := shims.Rule{Error: um, Pieces: 3, Keep: mm, Nodes: 7}
	stack := shims.Stack{Foot: "a", Wanted: mm, Total: 996 * um, Error: -4 * um, Pieces: pieces, Out: pieces, In: pieces, Reached: true, TooLow: true}
	return order, rule, shims.Choice{
		Stacks: []shims.Stack{stack}, Proven: true, Nodes: 9, Add: pieces,
		Warnings: []units.Fault{{Code: units.Suspect, Path: "/orders/0", Value: "1 mm", Want: "more"}},
	}
}

func TestRoundTrips(t *testing.T) {
	order, rule, choice := filled()
	for _, v := range []any{order, rule, choice, choice.Stacks[0], order.Now[0]} {
		s := reflect.ValueOf(v)
		for i := range s.NumField() {
			if s.Field(i).IsZero() {
				t.Errorf("%T: %s is not filled", v, s.Type().Field(i).Name)
			}
		}
	}
	roundTrip(t, order)
	roundTrip(t, rule)
	roundTrip(t, choice)
	roundTrip(t, choice.Stacks[0])
	roundTrip(t, shims.Stock(order.Now))
	roundTrip(t, shims.CommonInch(3))
	roundTrip(t, shims.Order{})
	roundTrip(t, shims.Rule{})
	roundTrip(t, shims.Choice{})
	roundTrip(t, shims.Stack{})
	roundTrip(t, shims.Piece{})
}

// What is written says what it is, with units, and leaves out what was not given.
func TestWireForms(t *testing.T) {
	order, _, choice := filled()
	rows := []struct {
		name  string
		value any
		want  string
	}{
		{"order", order, `{"foot":"a","correction":"-0.003 mm","soft_foot":"0.005 mm","now":[{"marked":"1 mm","measured":"0.996 mm","count":2}]}`},
		{"zero order", shims.Order{}, `{"foot":"","correction":"0 mm"}`},
		{"zero rule", shims.Rule{}, `{}`},
		{"piece as marked", shims.Piece{Marked: mm}, `{"marked":"1 mm","count":0}`},
		{"stack", shims.Stack{Foot: "a", Total: mm, Error: mm}, `{"foot":"a","wanted":"0 mm","total":"1 mm","error":"1 mm","reached":false}`},
		{"warning", choice.Warnings, `[{"code":"suspect","path":"/orders/0","value":"1 mm","want":"more"}]`},
	}
	for _, row := range rows {
		if got, err := json.Marshal(row.value); err != nil || string(got) != row.want {
			t.Errorf("%s:\ngot  %s, %v\nwant %s", row.name, got, err, row.want)
		}
	}
}

// The lists are those of the comment: ascending, distinct, whole nanometres, and
// with the count that was asked for.
func TestCommonLists(t *testing.T) {
	for _, stock := range []shims.Stock{shims.CommonInch(7), shims.CommonMetric(7)} {
		for i, p := range stock {
			if p.Count != 7 || p.Measured != 0 || i > 0 && p.Marked <= stock[i-1].Marked {
				t.Errorf("row %d: %+v", i, p)
			}
		}
		if _, err := shims.Choose(stock, shims.Rule{}, many(1)...); err != nil {
			t.Error(err)
		}
	}
	if inch := shims.CommonInch(1); len(inch) != 15 || inch[0].Marked != units.Mil || inch[9].Marked != 31*units.Mil || inch[14].Marked != 125*units.Mil {
		t.Errorf("%+v", inch)
	}
	if metric := shims.CommonMetric(1); len(metric) != 10 || metric[0].Marked != 50*um || metric[3].Marked != 250*um || metric[9].Marked != 3*mm {
		t.Errorf("%+v", metric)
	}
	_, err := shims.Choose(shims.CommonInch(-1), shims.Rule{}, many(1)...)
	if len(units.Faults(err)) != 15 {
		t.Error(err)
	}
}
