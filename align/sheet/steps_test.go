package sheet_test

import (
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/sheet"
	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

// worked is what comes to a working, or is refused.
type worked interface {
	Working() (sheet.Working, error)
}

// work works what is sound.
func work(tb testing.TB, w worked) sheet.Working {
	tb.Helper()
	got, err := w.Working()
	if err != nil {
		tb.Fatal(err)
	}
	return got
}

// stepOf returns the line of an ID.
func stepOf(tb testing.TB, w sheet.Working, s sheet.System, id string) sheet.Step {
	tb.Helper()
	steps := w.Steps(s)
	i := slices.IndexFunc(steps, func(step sheet.Step) bool { return step.ID == id })
	if i < 0 {
		tb.Fatalf("%q is no line of %q", id, w.Title())
	}
	return steps[i]
}

// answersOf are the answers of all lines, as they are shown.
func answersOf(w sheet.Working, s sheet.System) map[string]string {
	all := map[string]string{}
	for _, step := range w.Steps(s) {
		all[step.ID] = step.Answer
	}
	return all
}

// asideJob is one in which the movable shaft lies to one side and climbs to neither, seen
// from either end. The same crew walks round: the readings are its own.
func asideJob(v align.View) sheet.Job {
	return sheet.Job{
		Reverse: &dial.Reverse{
			CarriedByStationary: dial.Rim{Station: 100 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 0, 8, 0, -8)},
			CarriedByMovable:    dial.Rim{Station: -100 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 0, -4, 0, 4)},
			View:                v,
		},
		Feet: []align.Foot{{Name: "near", X: 300 * units.Millimetre}},
	}
}

// The crew reads the same hours on its dials from both ends, and is told the same hours
// back: that is what words are for. The signs are the library's, and change.
func TestWordsAreThoseOfTheCrew(t *testing.T) {
	rows := []struct{ id, words, behindMovable, behindStationary string }{
		{"horizontal.carried_by_stationary.offset", "0.080 mm towards 3 o'clock", "0.080000000 mm", "-0.080000000 mm"},
		{"horizontal.offset", "0.060 mm towards 3 o'clock", "0.060000000 mm", "-0.060000000 mm"},
		{"horizontal.slope", "0.200 mm/m open at 9 o'clock", "0.200000000 mm/m", "-0.200000000 mm/m"},
		{"horizontal.foot.near.correction", "push 0.12 mm towards 9 o'clock", "-0.12000000 mm", "0.12000000 mm"},
		{"vertical.foot.near.correction", "leave", "0.00000000 mm", "0.00000000 mm"},
		{"vertical.slope", "0.000 mm/m", "0.000000000 mm/m", "0.000000000 mm/m"},
	}
	for _, row := range rows {
		movable := stepOf(t, work(t, asideJob(align.FromMovable)), sheet.Metric, row.id)
		stationary := stepOf(t, work(t, asideJob(align.FromStationary)), sheet.Metric, row.id)
		if movable.Answer != row.words || stationary.Answer != row.words {
			t.Errorf("%s: %q behind the movable machine, %q behind the stationary one, want %q", row.id, movable.Answer, stationary.Answer, row.words)
		}
		if movable.Exact != row.behindMovable || stationary.Exact != row.behindStationary {
			t.Errorf("%s: exactly %q and %q, want %q and %q", row.id, movable.Exact, stationary.Exact, row.behindMovable, row.behindStationary)
		}
	}
}

// A total reading is the crew's own 3 less its 9; seen from the stationary end it turns its
// sign where the offset is told.
func TestFormulasNameTheCrewsHours(t *testing.T) {
	for _, v := range []align.View{align.FromMovable, align.FromStationary} {
		w := work(t, asideJob(v))
		total := stepOf(t, w, sheet.Metric, "horizontal.carried_by_stationary.total")
		if total.Formula != "T = R3 - R9" || total.Filled != "0.08 mm - (-0.08 mm)" {
			t.Errorf("%v: %s, %s", v, total.Formula, total.Filled)
		}
		want := "w = T/2"
		if v == align.FromStationary {
			want = "w = -T/2"
		}
		if offset := stepOf(t, w, sheet.Metric, "horizontal.carried_by_stationary.offset"); offset.Formula != want {
			t.Errorf("%v: %s, want %s", v, offset.Formula, want)
		}
	}
}

// A sheet in the crew's words is right at the end at which it was written, and wrong at
// the other.
func TestWordsAreJudgedFromTheCrewsEnd(t *testing.T) {
	line := "horizontal.foot.near.correction"
	for _, v := range []align.View{align.FromMovable, align.FromStationary} {
		w := work(t, asideJob(v))
		for answer, right := range map[string]bool{
			"push 0.12 mm towards 9 o'clock": true, "0.12 mm towards 9": true, "push 0.12 mm towards 3 o'clock": false, "leave": false,
		} {
			m, err := w.Check(map[string]string{line: answer})
			if err != nil {
				t.Fatal(err)
			}
			if m.Right() != right || m.Lines[0].Expected != "push 0.12 mm towards 9 o'clock" {
				t.Errorf("%v: %q is right: %v, expected %q", v, answer, m.Right(), m.Lines[0].Expected)
			}
		}
	}
}

// One line, in both systems, as text.
func TestText(t *testing.T) {
	w := work(t, sheet.Sag{At12: 0, At6: -127 * units.Micrometre})
	rows := []struct {
		s          sheet.System
		paragraphs string
	}{
		{sheet.Metric, "   s = (M12 - M6)/2\n   = (0 mm - (-0.127 mm))/2\n   = 0.064 mm   (exactly 0.063500000 mm)\n"},
		{sheet.Inch, "   s = (M12 - M6)/2\n   = (0 mil - (-5 mil))/2\n   = 2.50 mil   (exactly 2.50000000 mil)\n"},
		{sheet.System(7), "   s = (M12 - M6)/2\n   = (0 mm - (-0.127 mm))/2\n   = 0.064 mm   (exactly 0.063500000 mm)\n"}, // one that does not exist
	}
	for _, row := range rows {
		text := w.Text(row.s)
		if !strings.HasPrefix(text, w.Title()+"\n\n1. sag of the bracket  [sag]\n"+row.paragraphs+"   ") {
			t.Errorf("%v:\n%s", row.s, text)
		}
		checkCaution(t, text)
	}
}

// checkCaution asks that what is handed out does not end at the numbers.
func checkCaution(t *testing.T, text string) {
	t.Helper()
	for _, word := range []string{"no permission to start or to run", "lock out", "makers' instructions", "local codes"} {
		if !strings.Contains(text, word) {
			t.Errorf("no %q in:\n%s", word, text)
		}
	}
}

// Every step is in the text and in the table, whole.
func TestTextAndMarkdownShowEveryStep(t *testing.T) {
	w := brinePump()
	for _, s := range []sheet.System{sheet.Metric, sheet.Inch} {
		text, table := w.Text(s), w.Markdown(s)
		plain := strings.NewReplacer(`\_`, "_", `\*`, "*").Replace(table)
		for _, step := range w.Steps(s) {
			for _, part := range []string{step.ID, step.Sought, step.Formula, step.Filled, step.Answer, step.Exact, step.Source} {
				if !strings.Contains(text, part) {
					t.Errorf("%v: no %q in the text", s, part)
				}
				if !strings.Contains(plain, " "+part+" |") {
					t.Errorf("%v: no cell %q in the table", s, part)
				}
			}
		}
		checkCaution(t, table)
	}
}

// Whatever a foot is called, a row of the table has nine bars that are not its own, and
// stays on one line.
func TestMarkdownKeepsItsCells(t *testing.T) {
	for _, name := range []string{
		"A", "a|b", `a\`, `a\|b`, "*a*", "_a_", "`a`", "<b>a</b>", "[a](http://x.example)", "# a", "a\nb", "a\r\nb", "a || b", "é 3 o'clock",
	} {
		feet := []softfoot.Foot{
			{Name: name, X: 0, Y: 200 * units.Millimetre, Lift: units.Mil}, {Name: "B", Y: -200 * units.Millimetre},
			{Name: "C", X: 600 * units.Millimetre, Y: 200 * units.Millimetre},
		}
		w := work(t, sheet.SoftFoot{Feet: feet, Height: 280 * units.Millimetre})
		table := w.Markdown(sheet.Metric)
		lines := strings.Split(table, "\n")
		if len(lines) != len(w.Steps(sheet.Metric))+9 { // title, blank, two of the head, blank, notes, blank, caution, the end
			t.Errorf("%q: %d lines", name, len(lines))
		}
		for _, row := range lines[2 : 4+len(w.Steps(sheet.Metric))] {
			if n := bars(row); n != 9 {
				t.Errorf("%q: %d bars in %s", name, n, row)
			}
		}
		for _, bare := range []string{"*a*", "_a_", "`a`", "<b>", "[a]", "# a"} {
			if n := strings.Index(table, bare); n > 0 && table[n-1] != '\\' {
				t.Errorf("%q is not escaped: %s", name, table)
			}
		}
	}
}

// bars counts the bars of a row that no backslash takes away.
func bars(row string) int {
	n, escaped := 0, false
	for _, r := range row {
		if r == '|' && !escaped {
			n++
		}
		escaped = r == '\\' && !escaped
	}
	return n
}

// A line that rounds to nothing says nothing of a direction.
func TestNothingHasNoDirection(t *testing.T) {
	j := asideJob(align.FromMovable)
	for i := range j.Reverse.CarriedByStationary.Readings {
		j.Reverse.CarriedByStationary.Readings[i].Value /= 1000
		j.Reverse.CarriedByMovable.Readings[i].Value /= 1000
	}
	for id, want := range map[string]string{
		"horizontal.foot.near.correction": "leave", "horizontal.offset": "0.000 mm", "horizontal.slope": "0.000 mm/m",
		"horizontal.carried_by_movable.total": "0.000 mm",
	} {
		if got := stepOf(t, work(t, j), sheet.Metric, id).Answer; got != want {
			t.Errorf("%s: %q, want %q", id, got, want)
		}
	}
}

// Names of feet stand in the ids as they are, and no two lines have the same.
func TestNamesMakeIDs(t *testing.T) {
	names := []string{"a", "a.position", "a.correction", "foot.a", "~/", "/", " a", "a ", "vertical", "ä|*"}
	j := asideJob(align.FromMovable)
	j.Feet = nil
	for i, name := range names {
		j.Feet = append(j.Feet, align.Foot{Name: name, X: units.Length(300+100*i) * units.Millimetre})
	}
	w := work(t, j)
	seen := map[string]bool{}
	for _, step := range w.Steps(sheet.Metric) {
		if seen[step.ID] {
			t.Errorf("%q is there twice", step.ID)
		}
		seen[step.ID] = true
	}
	for _, name := range names {
		if !seen["vertical.foot."+name+".position"] || !seen["horizontal.foot."+name+".correction"] {
			t.Errorf("no line of %q", name)
		}
	}
	m, err := w.Check(answersOf(w, sheet.Metric))
	if err != nil || !m.Right() {
		t.Errorf("its own answers: %+v, %v", m, err)
	}
}

// A working hands out copies.
func TestStepsAreCopies(t *testing.T) {
	w := brinePump()
	w.Steps(sheet.Metric)[0].ID = "changed"
	if w.Steps(sheet.Metric)[0].ID == "changed" {
		t.Error("the working was changed from outside")
	}
}
