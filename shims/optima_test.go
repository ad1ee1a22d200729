package shims_test

import (
	"encoding/json"
	"os"
	"slices"
	"testing"

	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// optima are problems with the least of each objective as GLPK and CBC found it,
// each on its own; see testdata/optima.py.
type optima struct {
	Solvers []string `json:"solvers"`
	Cases   []struct {
		Name   string        `json:"name"`
		Reason string        `json:"reason"`
		Stock  shims.Stock   `json:"stock"`
		Rule   shims.Rule    `json:"rule"`
		Orders []shims.Order `json:"orders"`
		Best   struct {
			Short   units.Length `json:"short"`
			Excess  units.Length `json:"excess"`
			Pieces  int64        `json:"pieces"`
			Error   units.Length `json:"error"`
			Handled int64        `json:"handled"`
		} `json:"best"`
	} `json:"cases"`
}

func readOptima(tb testing.TB) optima {
	tb.Helper()
	text, err := os.ReadFile("testdata/optima.json")
	if err != nil {
		tb.Fatal(err)
	}
	var o optima
	if err := json.Unmarshal(text, &o); err != nil {
		tb.Fatal(err)
	}
	return o
}

// beyond are the cases that need more than the default budget. There the answer
// may cost more than the best, but has to say that it is not proven.
var beyond = []string{"eight feet, inch and metric mixed 2"}

// Choose is as good as GLPK 5.0 and CBC 2.10.8 say that a choice can be, on
// problems far beyond trying everything.
func TestChooseEqualsIntegerPrograms(t *testing.T) {
	o := readOptima(t)
	most := 0
	for _, c := range o.Cases {
		got, err := shims.Choose(c.Stock, c.Rule, c.Orders...)
		if err != nil {
			t.Errorf("%s: %v", c.Name, err)
			continue
		}
		want := [5]int64{int64(c.Best.Short), int64(c.Best.Excess), c.Best.Pieces, int64(c.Best.Error), c.Best.Handled}
		cost := costOf(c.Rule, c.Orders, got)
		if expected := !slices.Contains(beyond, c.Name); got.Proven != expected {
			t.Errorf("%s (%s): proven %v after %d nodes", c.Name, c.Reason, got.Proven, got.Nodes)
		}
		if cost != want && (got.Proven || slices.Compare(cost[:], want[:]) < 0) {
			t.Errorf("%s (%s): costs %v, %v has %v", c.Name, c.Reason, cost, o.Solvers, want)
		}
		checkChoice(t, c.Stock, c.Rule, c.Orders, got)
		most = max(most, got.Nodes)
		t.Logf("%s: %d nodes", c.Name, got.Nodes)
	}
	if len(o.Cases) < 40 {
		t.Errorf("only %d cases", len(o.Cases))
	}
	t.Logf("%d cases, %d nodes at most", len(o.Cases), most)
}
