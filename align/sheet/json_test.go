package sheet_test

import (
	"encoding/json"
	"errors"
	"reflect"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/sheet"
	"example.org/collinear/shims"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// throughJSON writes a value and reads it back into a new one.
func throughJSON[V any](t *testing.T, v V) V {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatalf("%T: %v", v, err)
	}
	var back V
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatalf("%T: %v\n%s", v, err, text)
	}
	return back
}

// problems has one of each, with all that a form can hold and numbers that no few digits
// hold.
func problems() map[string]sheet.Problem {
	const third = units.Inch / 3
	job := soundJob()
	job.Stationary = []thermal.Support{
		{Name: "near", X: -third, Measured: &thermal.Measured{By: align.Vector{Horizontal: 1, Vertical: third / 1000}}},
		{Name: "far", X: -units.Metre, Measured: &thermal.Measured{}},
	}
	line := align.Centreline{Vertical: align.Line{Offset: third / 7, Slope: 1e-3 / 3}, Horizontal: align.Line{Slope: -1e-3 / 7}}
	flangeShims := soundFlange()
	flangeShims.Off, flangeShims.Flange.View = line, align.FromStationary
	stacks := soundStacks()
	stacks.Rule.Pieces, stacks.Orders[0].Now = 3, []shims.Piece{{Measured: 512_345, Count: 2}}
	sweep := soundSweep()
	sweep.Rim.Sag, sweep.Mandrel, sweep.Zero, sweep.View = 0, &sheet.Sag{At12: 1, At6: -third / 1000}, units.Nine, align.FromStationary
	return map[string]sheet.Problem{
		"job":             {Job: &job},
		"sweep":           {Sweep: &sweep},
		"sag":             {Sag: &sheet.Sag{At12: third, At6: -third}},
		"gap_from_slope":  {GapFromSlope: &sheet.GapFromSlope{Diameter: third, Centreline: line}},
		"slope_from_gap":  {SlopeFromGap: &sheet.SlopeFromGap{Opening: third, At: 37.3, Diameter: units.Metre}},
		"flex_tilts":      {FlexTilts: &sheet.FlexTilts{Span: third, Centreline: line}},
		"cold_target":     {ColdTarget: &sheet.ColdTarget{Stationary: job.Stationary, Movable: job.Movable, Feet: job.Feet}},
		"target_readings": {TargetReadings: &sheet.TargetReadings{Probe: align.Probe{Kind: align.FarFace, Carrier: align.Movable, Radius: third}, Sag: -third / 1000, View: align.FromStationary, Centreline: line}},
		"soft_foot":       {SoftFoot: &sheet.SoftFoot{Feet: fourFeet(1.0/3, 0, 2, 0).Feet, Height: third}},
		"sliding_limit":   {SlidingLimit: &sheet.SlidingLimit{Sliding: 12.7, Speed: 2960, Coupling: align.Coupling{Name: "grid", Diameter: units.Foot, Span: third}}},
		"flange_shims":    {FlangeShims: &flangeShims},
		"shim_stacks":     {ShimStacks: &stacks},
	}
}

// Every problem comes back as it was written, under its own name, and is worked alike.
func TestProblemsThroughJSON(t *testing.T) {
	all := problems()
	if fields := reflect.TypeFor[sheet.Problem]().NumField(); len(all) != fields {
		t.Errorf("%d problems for %d fields", len(all), fields)
	}
	for name, p := range all {
		text, err := json.Marshal(p)
		if err != nil || !strings.HasPrefix(string(text), `{"`+name+`":{`) {
			t.Errorf("%s: %v, %s", name, err, text)
		}
		back := throughJSON(t, p)
		if diff := cmp.Diff(p, back, hidden); diff != "" {
			t.Errorf("%s (-written +read):\n%s", name, diff)
		}
		if got, want := work(t, back).Steps(sheet.Metric), work(t, p).Steps(sheet.Metric); !reflect.DeepEqual(got, want) {
			t.Errorf("%s is worked otherwise:\n%s", name, cmp.Diff(want, got))
		}
	}
}

// hidden lets values be compared that have no fields to show.
var hidden = cmp.Options{
	cmp.Comparer(func(a, b align.Covariance) bool { return reflect.DeepEqual(a, b) }),
	cmp.Comparer(func(a, b units.Temperature) bool { return a == b }),
}

// Each method of a job, too, and a job as it stands in a file.
func TestJobsThroughJSON(t *testing.T) {
	rim := dial.Rim{Station: units.Inch / 3, Bore: true, Sag: 1, Readings: dial.Quarters(units.Mil, 0, 1, 2, 1)}
	face := dial.Face{Diameter: units.Inch / 7, Far: true, Sag: -1, Readings: dial.Quarters(units.Mil, 0, 1, 2, 1)}
	gap := dial.Gap{Diameter: units.Inch, Readings: dial.Quarters(units.Mil, 10, 11, 12, 11)}
	edge := dial.Straightedge{On: align.Movable, Station: -1, Readings: gap.Readings}
	for name, j := range map[string]sheet.Job{
		"rim_face":         {RimFace: &dial.RimFace{Carrier: align.Movable, Rim: rim, Face: face, View: align.FromStationary}},
		"reverse":          {Reverse: soundReverse()},
		"face_face":        {FaceFace: &dial.FaceFace{Span: units.Foot, AtStationary: face, AtMovable: face}},
		"rim_gap":          {RimGap: &dial.RimGap{Carrier: align.Stationary, Rim: rim, Gap: gap}},
		"straightedge_gap": {StraightedgeGap: &dial.StraightedgeGap{Straightedge: edge, Gap: gap}},
	} {
		text, err := json.Marshal(j)
		if err != nil || !strings.HasPrefix(string(text), `{"`+name+`":{`) {
			t.Errorf("%s: %v, %s", name, err, text)
		}
		if diff := cmp.Diff(j, throughJSON(t, j)); diff != "" {
			t.Errorf("%s (-written +read):\n%s", name, diff)
		}
	}
	if text, err := json.Marshal(sheet.Job{}); string(text) != "{}" || err != nil {
		t.Errorf("no job is %s (%v)", text, err)
	}
	if text, err := json.Marshal(sheet.Problem{}); string(text) != "{}" || err != nil {
		t.Errorf("no problem is %s (%v)", text, err)
	}
}

// What is found of a sheet comes back as well, and so does a step.
func TestFindingsThroughJSON(t *testing.T) {
	w := work(t, blochGeitner())
	m, err := w.Check(map[string]string{"vertical.foot.outboard.correction": "lower 6.6 mil", "vertical.slope": "-0.357 mil/in"})
	if err != nil || m.Right() || len(m.Explanations) == 0 {
		t.Fatalf("%+v, %v", m, err)
	}
	if diff := cmp.Diff(m, throughJSON(t, m)); diff != "" {
		t.Errorf("marking (-written +read):\n%s", diff)
	}
	text, err := json.Marshal(m)
	if err != nil {
		t.Fatal(err)
	}
	for _, part := range []string{`"lines":[{"step":"vertical.slope","written":"-0.357 mil/in","expected":`, `"right":true,"true":true}`, `"explanations":[{"slips":[{"kind":"`, `"steps":["vertical.foot.outboard.correction"]`} {
		if !strings.Contains(string(text), part) {
			t.Errorf("no %s in %s", part, text)
		}
	}
	left := sheet.Explanation{Slips: []sheet.Slip{{Kind: sheet.SagOnce, Steps: []string{"a", "b"}}}, Left: []string{"c"}}
	if diff := cmp.Diff(left, throughJSON(t, left)); diff != "" {
		t.Errorf("explanation (-written +read):\n%s", diff)
	}
	for _, step := range w.Steps(sheet.Inch) {
		if back := throughJSON(t, step); back != step {
			t.Errorf("%+v came back as %+v", step, back)
		}
	}
}

// A kind of slip and a system are words on the wire, each of its own, and no other word
// is read.
func TestWordsThroughJSON(t *testing.T) {
	seen := map[string]bool{}
	for k := sheet.TotalNotHalved; k <= sheet.CommonNotTakenOff; k++ {
		text, err := k.MarshalText()
		if err != nil || len(text) == 0 || string(text) != k.String() || seen[string(text)] {
			t.Errorf("slip %d is %q (%v)", k, text, err)
		}
		seen[string(text)] = true
		if back := throughJSON(t, k); back != k {
			t.Errorf("%v came back as %v", k, back)
		}
		says := sheet.Slip{Kind: k, Steps: []string{"here"}}.String()
		if !strings.HasSuffix(says, " (at here)") || len(says) < 30 || seen[says] {
			t.Errorf("%v says %q", k, says)
		}
		seen[says] = true
	}
	for _, s := range []sheet.System{sheet.Metric, sheet.Inch} {
		if back := throughJSON(t, s); back != s {
			t.Errorf("%v came back as %v", s, back)
		}
	}
	kind, system := sheet.SagOnce, sheet.Inch
	for _, word := range []string{`"sag"`, `"SAG_ONCE"`, `3`, `"metric "`, `"imperial"`} {
		if err := json.Unmarshal([]byte(word), &kind); err == nil || kind != sheet.SagOnce {
			t.Errorf("%s is a slip: %v", word, kind)
		}
		if err := json.Unmarshal([]byte(word), &system); err == nil || system != sheet.Inch {
			t.Errorf("%s is a system: %v", word, system)
		}
	}
	beyond := sheet.CommonNotTakenOff + 1
	if _, err := beyond.MarshalText(); !errors.Is(err, units.Unknown) {
		t.Errorf("slip %d is written: %v", beyond, err)
	}
	if _, err := sheet.System(2).MarshalText(); !errors.Is(err, units.Unknown) {
		t.Errorf("a system that does not exist is written: %v", err)
	}
}

// A misspelt field, or a number without its unit, is not passed over in silence by the
// reader that asks for that.
func TestFilesAreReadStrictly(t *testing.T) {
	for text, good := range map[string]bool{
		`{"sag":{"at12":"0 mil","at6":"-6 mil"}}`:    true,
		`{"sag":{"at12":"0 mil","at_six":"-6 mil"}}`: false,
		`{"sag":{"at12":"0 mil","at6":-6}}`:          false,
		`{"sag":{"at12":"0 mil","at6":"-6"}}`:        false,
		`{"saggy":{}}`:                               false,
	} {
		var p sheet.Problem
		reader := json.NewDecoder(strings.NewReader(text))
		reader.DisallowUnknownFields()
		if err := reader.Decode(&p); (err == nil) != good {
			t.Errorf("%s: %v", text, err)
		}
	}
}
