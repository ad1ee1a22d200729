package units_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.org/collinear/units"
)

var codes = []units.Code{
	units.Missing, units.NotFinite, units.OutOfRange, units.Malformed, units.Unknown,
	units.Duplicate, units.Conflict, units.Unseen, units.Unreachable, units.Suspect,
}

// TestCodes tests that each code is found under its own name and no other,
// directly, wrapped and joined.
func TestCodes(t *testing.T) {
	for _, code := range codes {
		fault := &units.Fault{Code: code, Want: "something else"}
		for name, err := range map[string]error{
			"itself":  fault,
			"wrapped": fmt.Errorf("reading the job: %w", fault),
			"joined":  errors.Join(errors.New("no fault"), fault),
		} {
			for _, other := range codes {
				if got, want := errors.Is(err, other), code == other; got != want {
					t.Errorf("%s, %s: errors.Is %s is %v", code, name, other, got)
				}
			}
		}
	}
}

// TestCodesOnTheWire pins the words, which stand in other people's records.
func TestCodesOnTheWire(t *testing.T) {
	got, err := json.Marshal(codes)
	want := `["missing","not_finite","out_of_range","malformed","unknown","duplicate","conflict","unseen","unreachable","suspect"]`
	if err != nil || string(got) != want {
		t.Errorf("got %s, %v, want %s", got, err, want)
	}
	if units.Unseen.Error() != "unseen" {
		t.Errorf("a code as an error says %q", units.Unseen.Error())
	}
}

func TestFaults(t *testing.T) {
	a := &units.Fault{Code: units.Missing, Path: "/a", Want: "a length"}
	b := &units.Fault{Code: units.Unseen, Path: "/b", Want: "readings on a wider arc"}
	c := &units.Fault{Code: units.Suspect, Path: "/c", Want: "a second look"}
	plain := errors.New("no fault")
	var none *units.Fault
	rows := []struct {
		name string
		err  error
		want []*units.Fault
	}{
		{"nil", nil, nil},
		{"no fault", plain, nil},
		{"a code alone is no fault", units.Missing, nil},
		{"a nil fault", none, nil},
		{"one", a, []*units.Fault{a}},
		{"wrapped", fmt.Errorf("job 7: %w", a), []*units.Fault{a}},
		{"joined, in order", errors.Join(b, a, plain, c), []*units.Fault{b, a, c}},
		{"joined and wrapped and joined", errors.Join(a, fmt.Errorf("x: %w", errors.Join(b, c))), []*units.Fault{a, b, c}},
		{"wrapped two at a time", fmt.Errorf("%w and %w", c, a), []*units.Fault{c, a}},
		{"the same twice", errors.Join(a, a), []*units.Fault{a, a}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			if diff := cmp.Diff(row.want, units.Faults(row.err)); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

func TestFaultText(t *testing.T) {
	rows := []struct {
		name  string
		fault units.Fault
		text  string
		json  string
	}{
		{"zero", units.Fault{}, "want  ()", `{"code":"","path":"","want":""}`},
		{"a field left out", units.Fault{Code: units.Missing, Path: "/feet/0/x", Want: "a station"},
			"/feet/0/x: want a station (missing)",
			`{"code":"missing","path":"/feet/0/x","want":"a station"}`},
		{"a value", units.Fault{Code: units.OutOfRange, Path: "/span", Value: "-3 mm", Want: "a length above zero"},
			"/span: want a length above zero, got -3 mm (out_of_range)",
			`{"code":"out_of_range","path":"/span","value":"-3 mm","want":"a length above zero"}`},
		{"the input itself", units.Fault{Code: units.Malformed, Value: `"x"`, Want: "a number"},
			`want a number, got "x" (malformed)`,
			`{"code":"malformed","path":"","value":"\"x\"","want":"a number"}`},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			if got := row.fault.Error(); got != row.text {
				t.Errorf("got %q, want %q", got, row.text)
			}
			got, err := json.Marshal(row.fault)
			if err != nil || string(got) != row.json {
				t.Errorf("got %s, %v, want %s", got, err, row.json)
			}
			var back units.Fault
			if err := json.Unmarshal(got, &back); err != nil || back != row.fault {
				t.Errorf("read back as %+v, %v", back, err)
			}
		})
	}
}
