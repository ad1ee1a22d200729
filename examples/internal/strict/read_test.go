package strict_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// tape has a field of every kind.
type tape struct {
	Name   string         `json:"name"`
	At     units.Length   `json:"at"`
	Count  int            `json:"count"`
	Gain   float64        `json:"gain"`
	Far    bool           `json:"far,omitzero"`
	Sag    *units.Length  `json:"sag,omitzero"`
	Pieces *int           `json:"pieces,omitzero"`
	Marks  []units.Length `json:"marks,omitempty"`
	Rows   [][]float64    `json:"rows,omitzero"`
	Inside *mark          `json:"inside,omitzero"`
	Others []mark         `json:"others,omitzero"`
}

type mark struct {
	At units.Clock `json:"at"`
}

var bounds = strict.Bounds{Size: 1000, Depth: 8}

const sound = `{"name":"A","at":"5 7/16 in","count":4,"gain":-2.5e-1`

func TestRead(t *testing.T) {
	var got tape
	doc := sound + `,"far":true,"sag":"0 mm","pieces":0,"marks":["1 mm","2 mm"],"rows":[[1,2],[]],"inside":{"at":"3:00"},"others":[{"at":"6:00"}]}`
	if err := strict.Read([]byte(doc), bounds, "a tape", &got); err != nil {
		t.Fatal(err)
	}
	want := tape{
		Name: "A", At: units.MustParseLength("5 7/16 in"), Count: 4, Gain: -0.25, Far: true,
		Sag: new(units.Length), Pieces: new(int), Marks: []units.Length{units.Millimetre, 2 * units.Millimetre},
		Rows: [][]float64{{1, 2}, {}}, Inside: &mark{units.Three}, Others: []mark{{units.Six}},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// What is left out stays nil, and so is told from zero.
func TestLeftOut(t *testing.T) {
	var got tape
	if err := strict.Decode([]byte(sound+`}`), "a tape", &got); err != nil {
		t.Fatal(err)
	}
	if got.Sag != nil || got.Pieces != nil || got.Marks != nil || got.Rows != nil || got.Inside != nil {
		t.Errorf("got %+v", got)
	}
}

func TestWholeNumbers(t *testing.T) {
	largest := strconv.Itoa(min(math.MaxInt, 1<<53)) // an int may have 32 bits
	for _, text := range []string{"4", "4.0", "4e0", "0.4e1", "-4", largest} {
		var got tape
		if err := strict.Decode([]byte(strings.Replace(sound, `"count":4`, `"count":`+text, 1)+`}`), "a tape", &got); err != nil {
			t.Errorf("%s: %v", text, err)
		}
	}
}

// Each row is put behind a sound beginning, or instead of part of it.
func TestRefused(t *testing.T) {
	for _, row := range []struct{ name, doc, want string }{
		{"unknown", sound + `,"nome":1}`, "unknown /nome"},
		{"in another case", sound + `,"Far":true}`, "unknown /Far"},
		{"doubled", sound + `,"at":"1 mm"}`, "duplicate /at"},
		{"doubled by an escape", sound + `,"\u0061t":"1 mm"}`, "duplicate /at"},
		{"missing", `{"name":"A","at":"1 mm","gain":1}`, "missing /count"},
		{"empty", `{}`, "missing /name, missing /at, missing /count, missing /gain"},
		{"missing deep down", sound + `,"others":[{"at":"3:00"},{}]}`, "missing /others/1/at"},
		{"null for text", sound + `,"sag":null}`, "malformed /sag"},
		{"null for an object", sound + `,"inside":null}`, "malformed /inside"},
		{"null for a list", sound + `,"marks":null}`, "malformed /marks"},
		{"null for a number", sound + `,"pieces":null}`, "malformed /pieces"},
		{"a number for a name", strings.Replace(sound, `"A"`, "1", 1) + `}`, "malformed /name"},
		{"a number for a quantity", sound + `,"sag":1}`, "malformed /sag"},
		{"text for a number", strings.Replace(sound, `-2.5e-1`, `"1"`, 1) + `}`, "malformed /gain"},
		{"text for a whole number", strings.Replace(sound, `4`, `"4"`, 1) + `}`, "malformed /count"},
		{"a fraction of a whole number", strings.Replace(sound, `4`, `4.5`, 1) + `}`, "malformed /count"},
		{"a whole number that others would round", strings.Replace(sound, `4`, `9007199254740994`, 1) + `}`, "out_of_range /count"},
		{"a whole number too large", strings.Replace(sound, `4`, `1e300`, 1) + `}`, "out_of_range /count"},
		{"a number too large", strings.Replace(sound, `-2.5e-1`, `-1e999`, 1) + `}`, "out_of_range /gain"},
		{"text for true", sound + `,"far":"true"}`, "malformed /far"},
		{"an object for a list", sound + `,"marks":{}}`, "malformed /marks"},
		{"a list for an object", sound + `,"inside":[]}`, "malformed /inside"},
		{"no quantity", sound + `,"marks":["1 mm","x"]}`, "malformed /marks/1"},
		{"a list in a list", sound + `,"rows":[1]}`, "malformed /rows/0"},
		{"a name that has to be escaped", sound + `,"a/b~c":1}`, "unknown /a~1b~0c"},
		{"all of it at once", `{"name":1,"at":"1","count":"4","far":0,"others":[{"at":1},{"to":1}]}`,
			"malformed /name, missing /at, malformed /count, malformed /far, malformed /others/0/at, unknown /others/1/to, missing /others/1/at, missing /gain"},
		{"no object", `[]`, "malformed "},
		{"nothing", ``, "malformed "},
		{"cut off", sound, "malformed "},
		{"cut off inside", sound + `,"marks":["1 mm"`, "malformed /marks"},
		{"trailing", sound + `} x`, "malformed "},
		{"two documents", sound + `}{}`, "malformed "},
		{"no UTF-8", sound + ",\"a\xff\":1}", "malformed "},
		{"too long", sound + strings.Repeat(" ", bounds.Size) + `}`, "out_of_range "},
		{"too deep", sound + `,"x":` + strings.Repeat("[", bounds.Depth), "out_of_range /x" + strings.Repeat("/0", bounds.Depth-1)},
	} {
		t.Run(row.name, func(t *testing.T) {
			var dst tape
			err := strict.Read([]byte(row.doc), bounds, "a tape", &dst)
			if got := listed(err); got != row.want {
				t.Errorf("got  %s\nwant %s", got, row.want)
			}
		})
	}
}

// listed names the faults of an error.
func listed(err error) string {
	var all []string
	for _, f := range units.Faults(err) {
		all = append(all, string(f.Code)+" "+f.Path)
	}
	return strings.Join(all, ", ")
}
