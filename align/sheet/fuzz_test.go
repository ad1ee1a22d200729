package sheet_test

import (
	"encoding/json"
	"testing"

	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
)

// Whatever stands in a file, a problem is worked or refused with faults; what is worked
// has lines of different names, and its own answers are right.
func FuzzProblem(f *testing.F) {
	f.Add([]byte("{}"))
	for _, p := range problems() {
		text, err := json.Marshal(p)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		var p sheet.Problem
		if json.Unmarshal(text, &p) != nil {
			return
		}
		w, err := p.Working()
		if err != nil {
			if faults := units.Faults(err); len(faults) == 0 || w.Title() != "" {
				t.Fatalf("refused with %v and %q", err, w.Title())
			}
			return
		}
		seen := map[string]bool{}
		for _, step := range w.Steps(sheet.Inch) {
			if step.ID == "" || seen[step.ID] || step.Answer == "" || step.Filled == "" {
				t.Fatalf("%+v", step)
			}
			seen[step.ID] = true
		}
		if w.Text(sheet.Metric) == "" || w.Markdown(sheet.Metric) == "" || len(seen) == 0 {
			t.Fatal("nothing to show")
		}
		for _, s := range []sheet.System{sheet.Metric, sheet.Inch} {
			if m, err := w.Check(answersOf(w, s)); err == nil && !m.Right() {
				t.Fatalf("its own answers are called wrong: %+v", m)
			}
		}
	})
}

// Whatever stands on a sheet, it is marked or refused with faults, and nothing is marked
// that does not stand there.
func FuzzCheck(f *testing.F) {
	ids := []string{"vertical.foot.inboard.correction", "horizontal.foot.outboard.correction", "vertical.slope", "horizontal.offset", "movable.near.rise"}
	for i, answer := range []string{
		"lower 2.7 mil", "push 4.0 mil towards 3 o'clock", "0.357 mil/in open at 12", "0.06 mm, towards 9 o'clock", "28 °F",
		"leave", "5 7/16 in", `3'5"`, "-lower 3 mil", "NaN mm", "1e300 mm", "-0.0 mil", "1/0 in", "", "é",
	} {
		f.Add(uint8(i), answer, answer)
	}
	w, err := soundJob().Working()
	if err != nil {
		f.Fatal(err)
	}
	f.Fuzz(func(t *testing.T, which uint8, first, second string) {
		at := int(which) % len(ids)
		answers := map[string]string{ids[at]: first, ids[(at+1)%len(ids)]: second}
		m, err := w.Check(answers)
		if err != nil {
			if len(units.Faults(err)) == 0 || m.Lines != nil {
				t.Fatalf("refused with %v and %+v", err, m)
			}
			return
		}
		if len(m.Lines) != len(answers) || m.Right() != (len(m.Explanations) == 0 && len(m.Unexplained()) == 0) {
			t.Fatalf("%+v", m)
		}
		for _, line := range m.Lines {
			if line.Written != answers[line.Step] || line.Expected == "" {
				t.Fatalf("%+v of %q", line, answers)
			}
		}
		if len(m.Explanations) == 0 && len(m.Ask) > 0 {
			t.Fatalf("it asks for %v to tell nothing apart", m.Ask)
		}
	})
}
