package main

import (
	"encoding/json"
	"strings"
	"testing"
)

// TestVerifyShims tests answers to one small order, worked out by hand: wanted
// are 1.00 mm under A, where 0.7 mm lie now, and 0.52 mm under B.
func TestVerifyShims(t *testing.T) {
	v := smallOrder()
	rows := []struct {
		name, answer string
		good         bool
	}{
		{"the best", `{"stacks":[{"foot":"A","pieces":[{"thickness":"0.7 mm","count":1},{"thickness":"0.31 mm","count":1}]},{"foot":"B","pieces":[{"thickness":"0.5 mm","count":1}]}]}`, true},
		{"in another order and unit", `{"stacks":[{"foot":"B","pieces":[{"thickness":"500 um","count":1}]},{"foot":"A","pieces":[{"thickness":"0.31 mm","count":1},{"thickness":"0.7 mm","count":1}]}]}`, true},
		{"more handling", `{"stacks":[{"foot":"A","pieces":[{"thickness":"0.5 mm","count":2}]},{"foot":"B","pieces":[{"thickness":"0.5 mm","count":1}]}]}`, false},
		{"a foot left out", `{"stacks":[{"foot":"A","pieces":[{"thickness":"0.7 mm","count":1},{"thickness":"0.31 mm","count":1}]}]}`, false},
		{"pieces that are not there", `{"stacks":[{"foot":"A","pieces":[{"thickness":"1 mm","count":1}]},{"foot":"B","pieces":[{"thickness":"0.52 mm","count":1}]}]}`, false},
		{"the mark believed", `{"stacks":[{"foot":"A","pieces":[{"thickness":"0.7 mm","count":1},{"thickness":"0.3 mm","count":1}]},{"foot":"B","pieces":[{"thickness":"0.5 mm","count":1}]}]}`, false},
		{"one piece under two feet", `{"stacks":[{"foot":"A","pieces":[{"thickness":"0.7 mm","count":1},{"thickness":"0.31 mm","count":1}]},{"foot":"B","pieces":[{"thickness":"0.31 mm","count":1}]}]}`, false},
		{"too many pieces", `{"stacks":[{"foot":"A","pieces":[{"thickness":"0.7 mm","count":1},{"thickness":"0.31 mm","count":1},{"thickness":"0.5 mm","count":1}]},{"foot":"B","pieces":[{"thickness":"0.5 mm","count":1}]}]}`, false},
		{"a debt", `{"stacks":[{"foot":"A","pieces":[{"thickness":"0.7 mm","count":2},{"thickness":"0.5 mm","count":-1}]},{"foot":"B","pieces":[{"thickness":"0.5 mm","count":1}]}]}`, false},
		{"nothing", `{"stacks":[]}`, false},
		{"no stacks", `{}`, false},
		{"no length", `{"stacks":[{"foot":"A","pieces":[{"thickness":"thin","count":1}]},{"foot":"B","pieces":[]}]}`, false},
		{"no thickness", `{"stacks":[{"foot":"A","pieces":[{"count":1}]},{"foot":"B","pieces":[]}]}`, false},
		{"a word for a list", `{"stacks":"none"}`, false},
	}
	for _, row := range rows {
		if d := v.differences(json.RawMessage(row.answer)); (len(d) == 0) != row.good {
			t.Errorf("%s: %v", row.name, d)
		}
	}
}

// TestVerifyFeet tests answers for four feet of which A and D, on a diagonal,
// lift 0.4 mm: that under either or half of it under both takes the twist out.
func TestVerifyFeet(t *testing.T) {
	v := fourFeet()
	rows := []struct {
		name, answer string
		good         bool
	}{
		{"under one", `{"kinds":["parallel"],"advice":[{"shims":[{"foot":"A","flat":"0.4 mm"}]}]}`, true},
		{"under the other", `{"kinds":["induced","parallel"],"advice":[{"shims":[{"foot":"D","flat":"0.4 mm"}]}]}`, true},
		{"half under both", `{"kinds":["parallel"],"advice":[{"shims":[{"foot":"A","flat":"0.2 mm"},{"foot":"D","flat":"0.2 mm"}]}]}`, true},
		{"just enough", `{"kinds":["parallel"],"advice":[{"shims":[{"foot":"A","flat":"0.35 mm"}]}]}`, true},
		{"not enough", `{"kinds":["parallel"],"advice":[{"shims":[{"foot":"A","flat":"0.34 mm"}]}]}`, false},
		{"all under both", `{"kinds":["parallel"],"advice":[{"shims":[{"foot":"A","flat":"0.4 mm"},{"foot":"D","flat":"0.4 mm"}]}]}`, false},
		{"under a foot that stands", `{"kinds":["parallel"],"advice":[{"shims":[{"foot":"B","flat":"0.4 mm"}]}]}`, false},
		{"one good and one bad", `{"kinds":["parallel"],"advice":[{"shims":[{"foot":"A","flat":"0.4 mm"}]},{"shims":[]}]}`, false},
		{"another kind", `{"kinds":["induced"],"advice":[{"shims":[{"foot":"A","flat":"0.4 mm"}]}]}`, false},
		{"no advice", `{"kinds":["parallel"],"advice":[]}`, false},
		{"no length", `{"kinds":["parallel"],"advice":[{"shims":[{"foot":"A","flat":"much"}]}]}`, false},
		{"nothing", `{}`, false},
	}
	for _, row := range rows {
		if d := v.differences(json.RawMessage(row.answer)); (len(d) == 0) != row.good {
			t.Errorf("%s: %v", row.name, d)
		}
	}
}

// TestJunkIsNoAnswer tests that what is no answer to an order at all is called
// that, and not a bad choice: it must not look like a mistake in the mathematics.
func TestJunkIsNoAnswer(t *testing.T) {
	rows := []struct {
		name   string
		v      vector
		answer string
		kind   string
	}{
		{"a bad choice", smallOrder(), `{"stacks":[{"foot":"A","pieces":[]},{"foot":"B","pieces":[]}]}`, off},
		{"empty pieces", smallOrder(), `{"stacks":[{"foot":"A","pieces":[{}]},{"foot":"B","pieces":[{}]}]}`, badAnswer},
		{"the mark for the thickness", smallOrder(), `{"stacks":[{"foot":"A","pieces":[{"marked":"0.7 mm","count":1}]},{"foot":"B","pieces":[]}]}`, badAnswer},
		{"no length", smallOrder(), `{"stacks":[{"foot":"A","pieces":[{"thickness":"thin","count":1}]},{"foot":"B","pieces":[]}]}`, badAnswer},
		{"a debt", smallOrder(), `{"stacks":[{"foot":"A","pieces":[{"thickness":"0.7 mm","count":-1}]},{"foot":"B","pieces":[]}]}`, badAnswer},
		{"counts whose sum overflows", smallOrder(), `{"stacks":[{"foot":"A","pieces":[{"thickness":"0.5 mm","count":9223372036854775807},{"thickness":"0.5 mm","count":9223372036854775807},{"thickness":"0.5 mm","count":3}]},{"foot":"B","pieces":[]}]}`, badAnswer},
		{"a part of a piece", smallOrder(), `{"stacks":[{"foot":"A","pieces":[{"thickness":"0.7 mm","count":0.5}]},{"foot":"B","pieces":[]}]}`, badAnswer},
		{"a foot that was not ordered", smallOrder(), `{"stacks":[{"foot":"A","pieces":[]},{"foot":"B","pieces":[]},{"foot":"C","pieces":[]}]}`, badAnswer},
		{"a foot twice", smallOrder(), `{"stacks":[{"foot":"A","pieces":[]},{"foot":"B","pieces":[]},{"foot":"A","pieces":[]}]}`, badAnswer},
		{"a word for stacks", smallOrder(), `{"stacks":"none"}`, badAnswer},
		{"bad advice", fourFeet(), `{"kinds":["parallel"],"advice":[{"shims":[]}]}`, off},
		{"advice for no foot of these", fourFeet(), `{"kinds":["parallel"],"advice":[{"shims":[{"foot":"A","flat":"0.4 mm"},{"foot":"E","flat":"1 mm"}]}]}`, badAnswer},
		{"a foot twice in one advice", fourFeet(), `{"kinds":["parallel"],"advice":[{"shims":[{"foot":"A","flat":"1 mm"},{"foot":"A","flat":"0.4 mm"}]}]}`, badAnswer},
		{"advice that is no length", fourFeet(), `{"kinds":["parallel"],"advice":[{"shims":[{"foot":"A","flat":"much"}]}]}`, badAnswer},
		{"a word for kinds", fourFeet(), `{"kinds":"parallel","advice":[]}`, badAnswer},
	}
	for _, row := range rows {
		var o outcome
		if o.differ(row.v.differences(json.RawMessage(row.answer))); o.Kind != row.kind {
			t.Errorf("%s: %+v, want %s", row.name, o, row.kind)
		}
	}
}

// TestThicknessIsMatchedToTheNanometre tests that a program which counts in
// binary may say what lies there as it has it.
func TestThicknessIsMatchedToTheNanometre(t *testing.T) {
	for answer, good := range map[string]bool{"0.70000000000000007 mm": true, "0.6999999 mm": true, "0.70001 mm": false} {
		stacks := `{"stacks":[{"foot":"A","pieces":[{"thickness":"` + answer + `","count":1},{"thickness":"0.31 mm","count":1}]},{"foot":"B","pieces":[{"thickness":"0.5 mm","count":1}]}]}`
		if d := smallOrder().differences(json.RawMessage(stacks)); (len(d) == 0) != good {
			t.Errorf("%s: %v", answer, d)
		}
	}
}

// TestNoNamesOfThisProgram tests that a fault in an answer is told in words of
// the protocol.
func TestNoNamesOfThisProgram(t *testing.T) {
	for _, d := range [][]difference{
		smallOrder().differences(json.RawMessage(`{"stacks":[{"foot":"A","pieces":[{"thickness":"1 mm","count":"two"}]}]}`)),
		fourFeet().differences(json.RawMessage(`{"kinds":[1],"advice":[]}`)),
	} {
		if len(d) != 1 || strings.Contains(d[0].Got, "Go ") || strings.Contains(d[0].Got, "json:") {
			t.Errorf("%+v", d)
		}
	}
}

// smallOrder and fourFeet are one vector each of those in which there is a choice.
func smallOrder() vector {
	return vector{
		Op: "shims",
		Input: json.RawMessage(`{"stock":[{"marked":"0.5 mm","count":2},{"marked":"0.3 mm","measured":"0.31 mm","count":1}],
			"rule":{"error":"0.02 mm","pieces":2},
			"orders":[{"foot":"A","correction":"0.3 mm","now":[{"marked":"0.7 mm","count":1}]},{"foot":"B","correction":"0.52 mm"}]}`),
		Result: json.RawMessage(`{}`),
		Verify: json.RawMessage(`{"short":"0 mm","excess":"0 mm","pieces":3,"error":"0.03 mm","handling":2}`),
	}
}

func fourFeet() vector {
	return vector{
		Op: "soft_foot",
		Input: json.RawMessage(`{"height":"200 mm","feet":[{"name":"A","x":"0 mm","y":"150 mm","lift":"0.4 mm"},{"name":"B","x":"0 mm","y":"-150 mm","lift":"0 mm"},
			{"name":"C","x":"500 mm","y":"150 mm","lift":"0 mm"},{"name":"D","x":"500 mm","y":"-150 mm","lift":"0.4 mm"}]}`),
		Result: json.RawMessage(`{}`),
		Verify: json.RawMessage(`{"kinds":["parallel"],"left":"0.05 mm"}`),
	}
}
