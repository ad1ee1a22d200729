package sheet_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
)

// The zero value of every calculation says what it lacks, but for a bracket that showed
// nothing on its mandrel.
func TestZeroCalculations(t *testing.T) {
	rows := []struct {
		zero worked
		want []string
	}{
		{sheet.Job{}, []string{"missing /reverse"}},
		{sheet.Sweep{}, []string{"missing /carrier", "missing /rim/readings"}},
		{sheet.GapFromSlope{}, []string{"missing /diameter"}},
		{sheet.SlopeFromGap{}, []string{"missing /diameter"}},
		{sheet.FlexTilts{}, []string{"missing /span"}},
		{sheet.ColdTarget{}, []string{"missing /movable"}},
		{sheet.TargetReadings{}, []string{"missing /probe/kind"}},
		{sheet.SoftFoot{}, []string{"missing /feet", "missing /height"}},
		{sheet.SlidingLimit{}, []string{"missing /coupling/diameter", "missing /sliding", "missing /speed"}},
		{sheet.FlangeShims{}, []string{"missing /flange/bolts", "missing /flange/push"}},
		{sheet.ShimStacks{}, []string{"missing /orders"}},
		{sheet.Problem{}, []string{"missing "}},
	}
	for _, row := range rows {
		_, err := row.zero.Working()
		if got := codesAt(err); !slices.Equal(got, row.want) {
			t.Errorf("%T: got %q, want %q", row.zero, got, row.want)
		}
	}
	if got := stepOf(t, work(t, sheet.Sag{}), sheet.Metric, "sag").Answer; got != "0.000 mm" {
		t.Errorf("a bracket that shows nothing sags by %s", got)
	}
}

// The zero working has no line, and no line is right on it.
func TestZeroWorking(t *testing.T) {
	var w sheet.Working
	if w.Title() != "" || len(w.Steps(sheet.Metric)) != 0 || len(w.Steps(sheet.Inch)) != 0 {
		t.Errorf("%q with %v", w.Title(), w.Steps(sheet.Metric))
	}
	for _, s := range []sheet.System{sheet.Metric, sheet.Inch} {
		if !strings.Contains(w.Text(s), "no permission") || !strings.Contains(w.Markdown(s), "no permission") {
			t.Error("no caution")
		}
	}
	if _, err := w.Check(nil); !slices.Equal(codesAt(err), []string{"missing /answers"}) {
		t.Errorf("an empty sheet: %v", err)
	}
	if _, err := w.Check(map[string]string{"sag": "0 mil"}); !slices.Equal(codesAt(err), []string{"unknown /answers/sag"}) {
		t.Errorf("a sheet: %v", err)
	}
	if _, err := w.CheckDrawn(nil, map[string]units.Length{"sag": 1}); !slices.Equal(codesAt(err), []string{"missing /answers", "unknown /drawn/sag"}) {
		t.Errorf("a drawing: %v", err)
	}
	if _, err := sheet.Value[units.Length](w, "sag"); !slices.Equal(codesAt(err), []string{"unknown /id"}) {
		t.Errorf("a value: %v", err)
	}
}

// A marking of nothing has nothing wrong on it.
func TestZeroFindings(t *testing.T) {
	var m sheet.Marking
	if !m.Right() || m.Unexplained() != nil {
		t.Errorf("right: %v, unexplained: %v", m.Right(), m.Unexplained())
	}
	if got := (sheet.Explanation{}).String(); got != "" {
		t.Errorf("no explanation is %q", got)
	}
	for _, kind := range []sheet.SlipKind{0, sheet.CommonNotTakenOff + 1, 255} {
		slip := sheet.Slip{Kind: kind}
		if slip.String() != kind.String() || kind.String() == "" {
			t.Errorf("slip %d is %q, its kind %q", kind, slip, kind)
		}
	}
	if sheet.System(0) != sheet.Metric || sheet.System(0).String() != "metric" {
		t.Error("the zero system is not metric")
	}
	if got := sheet.System(9).String(); got == "" || got == "metric" || got == "inch" {
		t.Errorf("a system that does not exist is %q", got)
	}
	var step sheet.Step
	var judgement sheet.Judgement
	if step.ID+step.Answer+judgement.Step+judgement.Written != "" || judgement.Right {
		t.Error("the zero step and judgement say something")
	}
}

// An unexplained sheet names its wrong lines, an explained one what is left.
func TestUnexplained(t *testing.T) {
	m := sheet.Marking{Lines: []sheet.Judgement{{Step: "a", Right: true}, {Step: "b"}, {Step: "c"}}}
	if got := m.Unexplained(); m.Right() || !slices.Equal(got, []string{"b", "c"}) {
		t.Errorf("got %v", got)
	}
	m.Explanations = []sheet.Explanation{{Left: []string{"c"}}, {Left: []string{"b"}}}
	if got := m.Unexplained(); got != nil {
		t.Errorf("each is accounted for by one of them: got %v", got)
	}
	m.Explanations = []sheet.Explanation{{Left: []string{"c"}}, {Left: []string{"b", "c"}}}
	if got := m.Unexplained(); !slices.Equal(got, []string{"c"}) {
		t.Errorf("got %v", got)
	}
}
