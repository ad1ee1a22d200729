package main

import (
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// published lists the files of worked examples, each with the answers that its
// source prints, in the source's own rounding.
func published(t *testing.T) map[string][]byte {
	t.Helper()
	names, err := filepath.Glob(filepath.Join("testdata", "published", "*.json"))
	if err != nil || len(names) == 0 {
		t.Fatal("no files", err)
	}
	files := map[string][]byte{}
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		files[strings.TrimSuffix(filepath.Base(name), ".json")] = data
	}
	return files
}

// mark says how a source was seen.
var mark = regexp.MustCompile(`\((read|second-hand)\)|^Derived here`)

// What the sources print is right, and tells its source, how that was seen, and
// what is ours.
func TestPublishedAnswersAreRight(t *testing.T) {
	for name, data := range published(t) {
		t.Run(name, func(t *testing.T) {
			got := play(string(data), "-check", "-")
			if got.code != right || !strings.Contains(got.stdout, "Every line on the sheet follows.") {
				t.Errorf("ends with %d\n%s%s", got.code, got.stdout, got.stderr)
			}
			d := mustRead(t, data)
			if !mark.MatchString(d.Source) || len(d.Notes) == 0 {
				t.Errorf("source %q, notes %q", d.Source, d.Notes)
			}
			if ours := strings.Contains(strings.Join(d.Notes, "\n"), "Ours: "); ours == strings.HasPrefix(d.Source, "Derived here") {
				t.Errorf("what is ours? %q", d.Notes)
			}
		})
	}
}

// Each answer by itself, and then doubled and five more in its last place, which is
// wrong: no file passes because nothing is asked of it.
func TestPublishedAnswersSpoiled(t *testing.T) {
	for name, data := range published(t) {
		for _, j := range mustRead(t, data).marking.Lines {
			for answer, want := range map[string]int{j.Written: right, off(t, j.Written): wrong} {
				if got := check(answered(j.Step, answer)(t, data)); got.code != want {
					t.Errorf("%s: %s: %q ends with %d, want %d\n%s", name, j.Step, answer, got.code, want, got.stderr)
				}
			}
		}
	}
}

var number = regexp.MustCompile(`\d+(\.(\d+))?`)

// off changes the number of an answer.
func off(t *testing.T, answer string) string {
	if answer == "leave" {
		return "-0.5 mm"
	}
	place := number.FindStringSubmatchIndex(answer)
	text, digits := answer[place[0]:place[1]], max(0, place[5]-place[4])
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	x = 2*x + 5*math.Pow10(-digits)
	return answer[:place[0]] + strconv.FormatFloat(x, 'f', digits, 64) + answer[place[1]:]
}

// What each source prints, beside what follows from its numbers: so many digits as
// tell a rounding from a cut.
func TestPublishedNumbers(t *testing.T) {
	files := published(t)
	for _, row := range []struct {
		file, line string
		exact      float64 // of the unit
		unit       units.LengthUnit
		printed    string
		reason     string
	}{
		{"bloch-geitner-p203", "vertical.foot.inboard.correction", -19.0 / 7, units.InMils, "lower 3 mil", "7 - (12-7)/14 * 12 high, rounded"},
		{"bloch-geitner-p203", "vertical.foot.outboard.correction", 46.0 / 7, units.InMils, "raise 7 mil", "rounded"},
		{"bloch-geitner-p203-inches", "vertical.foot.inboard.correction", -19.0 / 7e3, units.InInches, "-0.0027 in", "rounded"},
		{"bloch-geitner-p203-inches", "vertical.foot.outboard.correction", 46.0 / 7e3, units.InInches, "+0.0066 in", "rounded"},
		{"mcmillan-8-3", "vertical.foot.inboard.position", -2, units.InMils, "-2 mil", "-4/2 + 3/12 * 16 with the sign of the arrangement"},
		{"mcmillan-8-3", "vertical.foot.outboard.position", -7, units.InMils, "-7 mil", "exact"},
		{"mcmillan-8-3-growth", "movable.inboard.growth", 17 * 0.0063 * 28, units.InMils, "2.99 mil", "2.9988, cut off"},
		{"mcmillan-8-3-growth", "movable.outboard.growth", 22 * 0.0063 * 60, units.InMils, "8.3 mil", "8.316"},
		{"mcmillan-8-3-growth", "vertical.foot.inboard.correction", 2 - 2.9988, units.InMils, "lower 1 mil", "the printed +1 is 0.9988"},
		{"mcmillan-8-3-growth", "vertical.foot.outboard.correction", 7 - 8.316, units.InMils, "lower 1 mil", "the printed +1 is 1.316"},
		{"mcmillan-8-3-legs", "movable.inboard.growth", 17 * 0.0063 * 28, units.InMils, "2.99 mil", "2.9988, cut off"},
		{"mcmillan-eq-8-3", "vertical.foot.inboard.position", -(-4*10.0/8 + 6.0/2), units.InMils, "2 mil high", "-(F*B/A + R/2), as printed but for the sign"},
		{"mcmillan-eq-8-3", "vertical.foot.outboard.position", -(-4*24.0/8 + 6.0/2), units.InMils, "9 mil high", "the same"},
		{"compressor-step-shim", "vertical.foot.rear.correction", 30.0 / 5 * 0.012, units.InInches, "raise 0.072 in", "exact"},
		{"piotrowski-8-10-set-1", "rim.9", 10 + 50, units.InMils, "+60 mil", "exact"},
		{"piotrowski-8-10-set-2", "rim.9", -10 - 30, units.InMils, "-40 mil", "exact"},
		{"bracket-sag-movable", "rim.6", 10 + 2*3, units.InMils, "+16 mil", "exact"},
		{"bracket-sag-movable", "vertical.rim.offset", 8, units.InMils, "8 mil high", "exact"},
		{"bracket-sag-stationary", "vertical.rim.offset", -8, units.InMils, "8 mil low", "exact"},
		{"fist-4-1a-sag", "sag", 6.0 / 2, units.InMils, "3 mil", "exact"},
		{"fist-4-1a-soft-foot", "foot.A.excess", 0.005 - 0.002, units.InInches, "0.003 in", "exact"},
		{"sliding-speed", "offset", 12 * 60 / (2 * math.Pi * 1500), units.InMillimetres, "0.0764 mm", "derived here"},
		{"flange", "bolt.3.shim", 0.4, units.InMillimetres, "0.4 mm", "derived here"},
		{"flange", "horizontal.slide", -0.4, units.InMillimetres, "push 0.4 mm towards 9 o'clock", "derived here"},
		{"target-rim-both", "reading.3", 0.364, units.InMillimetres, "+0.364 mm", "0.12 + 0.4 * 0.04 + 0.2 + 0.7 * 0.04; with the rim's curve 0.363764"},
		{"target-rim-both-movable", "reading.9", -0.065, units.InMillimetres, "-0.065 mm", "the same, 0.065127"},
	} {
		t.Run(row.file+" "+row.line, func(t *testing.T) {
			d := mustRead(t, files[row.file])
			if d.numbers[row.line] == 0 {
				t.Fatal("no such line")
			}
			l, err := sheet.Value[units.Length](d.working, row.line)
			if err != nil {
				t.Fatal(err)
			}
			if got := l.In(row.unit); math.Abs(got-row.exact) > 1e-9*math.Max(1, math.Abs(row.exact)) {
				t.Errorf("is %v, want %v (%s)", got, row.exact, row.reason)
			}
			for _, j := range d.marking.Lines {
				if j.Step == row.line && j.Written != row.printed {
					t.Errorf("the file has %q, want %q", j.Written, row.printed)
				}
			}
		})
	}
}

// McMillan's first growth was not rounded: its file says so, and at its two
// decimals the rounded one is another.
func TestWhatDoesNotRoundIsSaid(t *testing.T) {
	for _, name := range []string{"mcmillan-8-3-growth", "mcmillan-8-3-legs"} {
		d := mustRead(t, published(t)[name])
		step := d.steps[d.numbers["movable.inboard.growth"]-1]
		if rounded := d.working.Steps(sheet.Inch)[d.numbers[step.ID]-1].Answer; rounded != "3.00 mil high" {
			t.Errorf("%s: rounded %q", name, rounded)
		}
		if notes := strings.Join(d.Notes, "\n"); !strings.Contains(notes, "cut off after two decimals, not rounded") {
			t.Errorf("%s: %q", name, notes)
		}
	}
}

// Both planes of the check values: the tilts at the flex planes and the readings.
func TestDerivedTilts(t *testing.T) {
	d := mustRead(t, published(t)["flex-planes"])
	got := map[string]float64{}
	for _, id := range []string{"vertical.tilt.stationary", "vertical.tilt.movable", "horizontal.tilt.stationary", "horizontal.tilt.movable"} {
		s, err := sheet.Value[units.Slope](d.working, id)
		if err != nil {
			t.Fatal(err)
		}
		got[id] = math.Round(s.In(units.InMillimetresPerMetre)*1e9) / 1e9
	}
	want := map[string]float64{
		"vertical.tilt.stationary": -0.60, "vertical.tilt.movable": -0.10,
		"horizontal.tilt.stationary": 0.35, "horizontal.tilt.movable": 0.05,
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}
