package check_test

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// record has a member of every shape.
type record struct {
	Name  string        `json:"name"`
	At    units.Length  `json:"at"`
	U     *units.Length `json:"u,omitempty"`
	Gain  float64       `json:"gain"`
	Count int           `json:"count"`
	Full  bool          `json:"full"`
	Rows  [2][2]float64 `json:"rows"`
	Marks []mark        `json:"marks"`
	End   mark          `json:"end"`
	Own   reader        `json:"own"`
}

type mark struct {
	X units.Length `json:"x"`
}

// reader reads itself.
type reader struct{ at units.Length }

func (r *reader) UnmarshalJSON(data []byte) error {
	wire, err := check.Read[mark](data, "x")
	r.at = wire.X
	return err
}

const written = `{"name":"a/b","at":"1 mm","u":null,"gain":2.5,"count":3,"full":true,"rows":[[1,2],[3,4]],"marks":[{"x":"1 mm"},{"x":"2 mm"}],"end":{"x":"3 mm"},"own":{"x":"4 mm"}}`

func TestRead(t *testing.T) {
	got, err := check.Read[record]([]byte(" "+written+"\n"), "name", "own")
	if err != nil {
		t.Fatal(err)
	}
	const mm = units.Millimetre
	want := record{"a/b", mm, nil, 2.5, 3, true, [2][2]float64{{1, 2}, {3, 4}}, []mark{{mm}, {2 * mm}}, mark{3 * mm}, reader{4 * mm}}
	if diff := cmp.Diff(want, got, cmp.AllowUnexported(reader{})); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func found(err error) []string {
	var all []string
	for _, f := range units.Faults(err) {
		all = append(all, fmt.Sprint(f.Code, " ", f.Path))
	}
	return all
}

// Each row spoils what is sound, and is told with the path to where that is.
func TestReadRefuses(t *testing.T) {
	for _, row := range []struct{ name, from, to, want string }{
		{"a number for a text", `"a/b"`, `5`, "malformed /name"},
		{"a text for a number", `2.5`, `"2.5"`, "malformed /gain"},
		{"a number that nothing holds", `2.5`, `-1e999`, "out_of_range /gain"},
		{"half of a whole number", `3,`, `3.5,`, "malformed /count"},
		{"a word for a yes", `true`, `"yes"`, "malformed /full"},
		{"a length without a unit", `"at":"1 mm"`, `"at":"1"`, "missing /at"},
		{"a length as a number", `"at":"1 mm"`, `"at":1`, "malformed /at"},
		{"a length behind a pointer", `null`, `"much"`, "malformed /u"},
		{"a text in a list of lists", `[3,4]`, `[3,"4"]`, "malformed /rows/1/1"},
		{"a list that is an object", `[3,4]`, `{"3":4}`, "malformed /rows/1"},
		{"an object that is a list", `{"x":"3 mm"}`, `["3 mm"]`, "malformed /end"},
		{"no object in a list", `{"x":"2 mm"}`, `7`, "malformed /marks/1"},
		{"a member of an object in a list", `"2 mm"`, `"2 stone"`, "unknown /marks/1/x"},
		{"a name that is misspelt", `"gain"`, `"gian"`, "unknown /gian"},
		{"a name that needs an escape", `"gain"`, `"ga/in"`, "unknown /ga~1in"},
		{"a name with a quote", `"gain"`, `"\"\u00e9"`, `unknown /"é`},
		{"an unknown object", `"gain":2.5`, `"more":{"x":{"y":1}}`, "unknown /more"},
		{"a name further in", `{"x":"3 mm"}`, `{"y":"3 mm"}`, "unknown /end/y"},
		{"in what reads itself", `"4 mm"`, `"4"`, "missing /own/x"},
		{"a name in what reads itself", `{"x":"4 mm"}`, `{"x":"4 mm","z":1}`, "unknown /own/z"},
		{"what it needs", `{"x":"4 mm"}`, `{}`, "missing /own/x"},
		{"what reads itself from something else", `{"x":"4 mm"}`, `[1]`, "malformed /own"},
		{"what is needed left out", `"name":"a/b",`, ``, "missing /name"},
		{"what is needed is nothing", `"a/b"`, `null`, "missing /name"},
	} {
		text := strings.Replace(written, row.from, row.to, 1)
		if text == written || !json.Valid([]byte(text)) {
			t.Fatalf("%s: %s", row.name, text)
		}
		_, err := check.Read[record]([]byte(text), "name")
		if got := found(err); !slices.Equal(got, []string{row.want}) {
			t.Errorf("%s: got %v (%v), want just %s", row.name, got, err, row.want)
		}
	}
}

func TestReadRefusesAsAWhole(t *testing.T) {
	for _, row := range []struct{ name, text string }{
		{"nothing", ""}, {"no JSON", `{"name":`}, {"more than one", `{}{}`}, {"no UTF-8 and no JSON", "\xff\x00"},
		{"a list", `[]`}, {"a text", `"a"`}, {"a number", `5`},
	} {
		_, err := check.Read[record]([]byte(row.text), "name")
		if got := found(err); !slices.Equal(got, []string{"malformed "}) || strings.ContainsAny(err.Error(), "\n\x00") || !utf8.ValidString(err.Error()) {
			t.Errorf("%s: got %v (%q)", row.name, got, err)
		}
	}
	if _, err := check.Read[record]([]byte(`null`), "name", "own"); !slices.Equal(found(err), []string{"missing /name", "missing /own"}) {
		t.Errorf("null: got %v", err)
	}
}

// What is wrong comes at once, in the order of the text.
func TestReadTellsAll(t *testing.T) {
	text := `{"at":"1","gain":"x","marks":[{"x":1},{"x":"1 mm"},{"y":0}],"own":{}}`
	_, err := check.Read[record]([]byte(text), "name")
	want := []string{"missing /at", "malformed /gain", "malformed /marks/0/x", "unknown /marks/2/y", "missing /own/x", "missing /name"}
	if got := found(err); !slices.Equal(got, want) {
		t.Errorf("got %v, want %v", got, want)
	}
}

// What would fit is said by its shape.
func TestReadSaysWhatWouldFit(t *testing.T) {
	_, err := check.Read[record]([]byte(`{"name":[],"at":{},"gain":[],"count":0.25,"full":0,"rows":0,"end":0}`))
	var got []string
	for _, f := range units.Faults(err) {
		got = append(got, f.Want)
	}
	const text = "text: a word, or a quantity with its unit"
	if want := []string{text, text, "a number", "a whole number", "true or false", "a list", "an object"}; !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// A document as long as it may be is told in short, and in so many faults.
func TestReadIsShort(t *testing.T) {
	const much = 100_000
	for name, text := range map[string]string{
		"a long text":           `{"gain":"` + strings.Repeat("é", much) + `"}`,
		"lines":                 "{\"gain\":[\n1,\n" + strings.Repeat(" ", much) + "2]}",
		"a long list of faults": `{"marks":[` + strings.Repeat(`7,`, much) + `7]}`,
	} {
		_, err := check.Read[record]([]byte(text))
		all := units.Faults(err)
		if len(all) == 0 || len(all) > 200 {
			t.Errorf("%s: %d faults", name, len(all))
		}
		for _, f := range all {
			if len(f.Value) > 40 || strings.ContainsAny(f.Value, "\n\ufffd") {
				t.Errorf("%s: %q", name, f.Value)
			}
		}
	}
}

// Whatever the text, it is read or refused with faults.
func FuzzRead(f *testing.F) {
	f.Add([]byte(written))
	f.Add([]byte(`{"marks":[{"x":{}},[[1]],null],"own":{"x":null},"":{"":""}}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		_, err := check.Read[record](text, "name")
		if err != nil && len(units.Faults(err)) == 0 {
			t.Errorf("%q: %v holds no fault", text, err)
		}
		if err == nil && json.Unmarshal(text, new(record)) != nil {
			t.Errorf("%q is read, and not by encoding/json", text)
		}
	})
}
