package dial_test

import (
	"encoding/json"
	"math"
	"reflect"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// throughJSON writes v out and reads it back into a new value of its type.
func throughJSON(t *testing.T, v any) any {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	back := reflect.New(reflect.TypeOf(v))
	if err := json.Unmarshal(text, back.Interface()); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	return back.Elem().Interface()
}

// Every input comes back bit by bit, the full ones and the zero ones with a
// carrier.
func TestInputsThroughJSON(t *testing.T) {
	inputs := []any{
		dial.Limits{}, dial.Target{}, dial.Face{}, dial.Gap{}, dial.Rim{}, fullFace(), fullGap(), fullRim(units.Inch / 3), fullStraightedge(),
		dial.Target{High: units.Inch / 3, ToThree: -units.Mil, Opening: 1, OpenAt: 37.3, Diameter: units.Inch, Station: -1, View: align.FromStationary},
		dial.Rim{Bore: true}, dial.Face{Far: true},
	}
	for _, e := range entries[:5] {
		inputs = append(inputs, reflect.ValueOf(e.full()).Elem().Interface())
	}
	for _, input := range inputs {
		if diff := cmp.Diff(input, throughJSON(t, input)); diff != "" {
			t.Errorf("%T (-written +read):\n%s", input, diff)
		}
	}
}

// sameCovariance compares what is written of a covariance. The variances come
// back to rounding.
var sameCovariance = cmp.Comparer(func(a, b align.Covariance) bool {
	u, v := a.Standard(), b.Standard()
	r, s := a.Correlation(), b.Correlation()
	near := func(x, y float64) bool {
		return math.Abs(x-y) <= 1e-12*math.Max(math.Abs(x), math.Abs(y)) || math.IsNaN(x) && math.IsNaN(y)
	}
	same := a.Basis == b.Basis && a.DoF == b.DoF &&
		near(float64(u.Horizontal.Offset), float64(v.Horizontal.Offset)) && near(float64(u.Horizontal.Slope), float64(v.Horizontal.Slope)) &&
		near(float64(u.Vertical.Offset), float64(v.Vertical.Offset)) && near(float64(u.Vertical.Slope), float64(v.Vertical.Slope))
	for i := range r {
		for j := range r[i] {
			same = same && math.Abs(r[i][j]-s[i][j]) <= 1e-12
		}
	}
	return same
})

// Every kind of result comes back: stated, from scatter and unknown uncertainty,
// with warnings, completed and returned.
func TestResultsThroughJSON(t *testing.T) {
	three := dial.Quarters(units.Mil, 1, 2, 4, 0)[1:]
	bases := map[align.Basis]bool{}
	for _, m := range methods {
		bare := soundJobs[m.name]
		for _, job := range []solver{
			m.with(bare, fair(), fair()), m.with(bare, three, three), m.with(bare, fullSweep(), fullSweep()),
			m.with(bare, missing(units.Millimetre), returning(units.Mil)),
		} {
			want := solved(t, job)
			bases[want.Cov.Basis] = true
			if diff := cmp.Diff(want, throughJSON(t, want), sameCovariance); diff != "" {
				t.Errorf("%s (-written +read):\n%s", m.name, diff)
			}
		}
	}
	if len(bases) != 3 {
		t.Errorf("only the bases %v were tried", bases)
	}
}

// The names that integrators rely on, and units in the text.
func TestWireForm(t *testing.T) {
	for _, row := range []struct {
		name string
		v    any
		want string
	}{
		{
			"check", dial.Check{Miss: units.Mil, Completed: true, Supplied: units.Nine},
			`{"quarters":["0 mm","0 mm","0 mm","0 mm"],"miss":"0.0254 mm","completed":true,"supplied":"9:00","return":"0 mm"}`,
		},
		{"limits", dial.Limits{Miss: units.Mil}, `{"miss":"0.0254 mm"}`},
		{"rim", dial.Rim{Station: units.Inch}, `{"station":"25.4 mm","readings":null}`},
		{
			"reverse", dial.Reverse{},
			`{"carried_by_stationary":{"station":"0 mm","readings":null},"carried_by_movable":{"station":"0 mm","readings":null},"view":"from_movable"}`,
		},
		{
			"target", dial.Target{High: -50 * units.Micrometre},
			`{"high":"-0.05 mm","open_at":"12:00","view":"from_movable"}`,
		},
	} {
		text, err := json.Marshal(row.v)
		if err != nil {
			t.Errorf("%s: %v", row.name, err)
		}
		if diff := cmp.Diff(row.want, string(text)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", row.name, diff)
		}
	}
}
