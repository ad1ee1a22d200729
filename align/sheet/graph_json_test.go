package sheet_test

import (
	"encoding/json"
	"testing"

	"example.org/collinear/align/sheet"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// comesBack writes a value as JSON and asks that it comes back to the last bit.
func comesBack[V any](tb tester, v V) {
	tb.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		tb.Fatalf("%+v: %v", v, err)
	}
	var back V
	if err := json.Unmarshal(text, &back); err != nil {
		tb.Fatalf("%s: %v", text, err)
	}
	if diff := cmp.Diff(v, back); diff != "" {
		tb.Errorf("%s comes back changed (-was +is):\n%s", text, diff)
	}
}

func TestGraphsComeBack(t *testing.T) {
	comesBack(t, sheet.Graph{})
	rapid.Check(t, func(t *rapid.T) {
		d := randomDrawing(t)
		comesBack(t, d.paper)
		comesBack(t, d.through)
		g, err := d.draw()
		if err != nil {
			t.Skip("points too close")
		}
		comesBack(t, g)
		answer, err := g.Check(readings{"foot 0": millimetre, "at one": 0})
		if err != nil {
			t.Fatal(err)
		}
		comesBack(t, answer)
	})
}

func TestGraphWireForms(t *testing.T) {
	d := onSquares()
	d.feet = d.feet[:1]
	g := d.mustDraw(t)
	answer, err := g.Check(readings{"front": 110 * micrometre})
	if err != nil {
		t.Fatal(err)
	}
	rows := []struct {
		name  string
		value any
		want  string
	}{
		{"paper", d.paper, `{"reduction":10,"exaggeration":100}`},
		{"paper of a graph", g.Paper, `{"reduction":10,"exaggeration":100,"pencil":"0.5 mm"}`},
		{"station", d.through, `[{"name":"stationary dial","x":"0 mm"},{"name":"movable dial","x":"400 mm"}]`},
		{"foot", g.Feet[0], `{"foot":{"name":"front","x":"300 mm"},"w":"0.1 mm","tolerance":"0.02 mm","mark":{"name":"front","x":"30 mm","y":"10 mm"}}`},
		{"line", g.Movable, `[{"x":"0 mm","y":"-20 mm"},{"x":"40 mm","y":"20 mm"}]`},
		{"read", answer, `[{"foot":"front","value":"0.11 mm","difference":"0.01 mm","tolerance":"0.02 mm","within":true}]`},
		{"nothing", sheet.Graph{}, `{"paper":{"reduction":0,"exaggeration":0},"stationary":[{"x":"0 mm","y":"0 mm"},{"x":"0 mm","y":"0 mm"}],` +
			`"movable":[{"x":"0 mm","y":"0 mm"},{"x":"0 mm","y":"0 mm"}],"points":[{"x":"0 mm","y":"0 mm"},{"x":"0 mm","y":"0 mm"}]}`},
	}
	for _, row := range rows {
		got, err := json.Marshal(row.value)
		if err != nil || string(got) != row.want {
			t.Errorf("%s:\ngot  %s, %v\nwant %s", row.name, got, err, row.want)
		}
	}
}
