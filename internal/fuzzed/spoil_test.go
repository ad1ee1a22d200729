package fuzzed_test

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/units"
)

// part has a place of every kind.
type part struct {
	Length units.Length `json:"length"`
	Kind   uint8        `json:"kind"`
	Count  int          `json:"count"`
	Given  bool         `json:"given"`
	Name   string       `json:"name"`
	List   []float64    `json:"list"`
	Map    map[string]float64
	Next   *part
	Cold   units.Temperature
	hidden float64
}

func sound() part {
	return part{Length: 7, Kind: 1, Name: "a", List: []float64{1, 2}, Map: map[string]float64{"x": 1}, Next: &part{}, hidden: 3}
}

func text(p part) string {
	b, err := json.Marshal(p)
	if err != nil {
		return err.Error() // of NaN, which is a change as well
	}
	return string(b)
}

// An end of the tape changes nothing; every place can be changed; and what is not
// exported stays.
func TestSpoil(t *testing.T) {
	empty, same := fuzzed.Tape(nil), sound()
	empty.Spoil(&same)
	if text(same) != text(sound()) {
		t.Errorf("changed by nothing: %s", text(same))
	}
	changed := map[string]bool{}
	for at := range 20 {
		for how := range 64 {
			p, tape := sound(), fuzzed.Tape{1, byte(at), 0, byte(how / 8), byte(how % 8), byte(how % 4), byte(how % 3)}
			tape.Spoil(&p)
			changed[text(p)] = true
			if p.hidden != 3 {
				t.Fatal("a hidden field is changed")
			}
		}
	}
	for _, want := range []string{`"length":"0 mm"`, `"kind":2`, `"count":3`, `"given":true`, `"name":""`, `"list":null`, `"list":[2]`, `"x":-1`, `"Map":{}`, `"Next":null`, `"Cold":"0 °C"`} {
		found := false
		for s := range changed {
			found = found || strings.Contains(s, want)
		}
		if !found {
			t.Errorf("nothing has %s", want)
		}
	}
}

// What a function does wrong is told: each of these does one thing that Try is there
// to see.
func TestTryComplains(t *testing.T) {
	calls := 0
	fault := &units.Fault{Code: units.Missing, Path: "/a", Want: "it"}
	for _, row := range []struct {
		name string
		of   any
		want string // "" for one that does nothing wrong
	}{
		{"NaN", func(x float64) (float64, error) { return math.NaN(), nil }, "answers NaN"},
		{"infinity inside", func(x float64) ([]part, error) { return []part{{hidden: math.Inf(1)}}, nil }, `at "[0].hidden"`},
		{"NaN of plain arguments", func(x float64) float64 { return math.Log(-1 - x*x) }, "answers NaN"},
		{"another answer each time", func(x float64) (int, error) { calls++; return calls, nil }, "answers differently"},
		{"another error each time", func(x float64) error { calls++; return &units.Fault{Value: strings.Repeat("x", calls)} }, "and then"},
		{"an error without a fault", func(x float64) error { return errors.New("no") }, "without a fault"},
		{"a fault without a code", func(x float64) error { return &units.Fault{Path: "/a", Want: "it"} }, "says too little"},
		{"a fault without what is wanted", func(x float64) error { return &units.Fault{Code: units.Missing} }, "says too little"},
		{"a path that is none", func(x float64) error { return &units.Fault{Code: units.Missing, Want: "it", Path: "a"} }, "says too little"},
		{"an answer beside an error", func(x float64) (int, error) { return 1, fault }, "and answers 1"},

		{"an answer", func(x float64) (float64, error) { return x, nil }, ""},
		{"a refusal", func(x float64) (part, error) { return part{}, fault }, ""},
		{"no answer", func(x float64) {}, ""},
	} {
		err := fuzzed.Calls{{Name: "f", Of: row.of, With: []any{1.5}}}.Try(0, nil)
		if (err == nil) != (row.want == "") || err != nil && !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: got %v, want %q", row.name, err, row.want)
		}
	}
	list := fuzzed.Calls{{Name: "f", Of: func(x ...float64) { x[0]++ }, With: []any{[]float64{1}}}}
	if err := list.Try(7, nil); err == nil || !strings.Contains(err.Error(), "changes its arguments") {
		t.Errorf("a changed argument: got %v", err)
	}
	if err := (fuzzed.Calls{{Name: "f", Of: func() error { return fault }}}).Sound(true); err == nil {
		t.Error("a function that refuses its own arguments is sound")
	}
}

// loose loses a digit on the way out, and is read whatever stands there.
type loose struct{ X float64 }

func (l loose) MarshalText() ([]byte, error) { return []byte("1"), nil }

func (l *loose) UnmarshalText(b []byte) error { l.X = float64(len(b)); return nil }

// rude refuses without a fault.
type rude struct{}

func (r *rude) UnmarshalText([]byte) error { return errors.New("no") }

func TestWireComplains(t *testing.T) {
	for _, row := range []struct {
		name  string
		value any
		text  string
		want  string
	}{
		{"comes back changed", loose{}, `"abc"`, "comes back changed"},
		{"refused without a fault", rude{}, `"abc"`, "without a fault"},

		{"comes back", part{}, `{"length": "3 mil", "list": [1]}`, ""},
		{"refused", part{}, `{"length": "3"}`, ""},
		{"no JSON", part{}, `{`, ""},
	} {
		err := fuzzed.Wire{Values: []any{row.value}}.Try(0, []byte(row.text))
		if (err == nil) != (row.want == "") || err != nil && !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: got %v, want %q", row.name, err, row.want)
		}
	}
	if err := (fuzzed.Wire{Values: []any{part{hidden: 1}}}).Sound(); err == nil {
		t.Error("a value that loses a field is sound")
	}
}
