package pumpset

import (
	"regexp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.org/collinear/examples/internal/lines"
)

// signed is a number with a sign in front of it, and directions are the words
// that tell what a sign means.
var (
	signed     = regexp.MustCompile(`(^|[\s(])[-+]\.?\d`)
	directions = regexp.MustCompile(`\b(inwards|outwards|high|low|climbs|falls|towards|raise|lower|push|wider|narrower|side|no change|off by|start|suspect|zero)\b`)
	heading    = regexp.MustCompile(`^[A-Z][A-Z ,']+$`)
	amounts    = regexp.MustCompile(`\d (mm|mil|mm/m|mil/in)\b`)
)

// sections cuts a report at its headings.
func sections(report string) map[string][]string {
	all := map[string][]string{}
	at := ""
	for line := range strings.Lines(report) {
		line = strings.TrimSuffix(line, "\n")
		if heading.MatchString(line) {
			at = line
			continue
		}
		all[at] = append(all[at], line)
	}
	return all
}

// checkPage asks that no line is too long, and that no number with a sign stands
// without its word. What the crew wrote themselves (the job) is theirs.
func checkPage(t rapid.TB, report string) {
	t.Helper()
	checkWidth(t, report)
	for name, lines := range sections(report) {
		for _, line := range lines {
			if name != "JOB" && name != "" && signed.MatchString(line) && !directions.MatchString(line) {
				t.Errorf("%s: a sign without its word: %q", name, line)
			}
		}
	}
}

func checkWidth(t rapid.TB, report string) {
	t.Helper()
	for line := range strings.Lines(report) {
		line = strings.TrimSuffix(line, "\n")
		if n := utf8.RuneCountInString(line); n > lines.Columns {
			t.Errorf("%d columns: %q", n, line)
		}
		if strings.TrimRight(line, " ") != line {
			t.Errorf("space at the end of %q", line)
		}
	}
}

func TestPage(t *testing.T) {
	for _, name := range jobs {
		r := mustSolve(t, load(t, name))
		for _, s := range []System{Metric, Inch} {
			report := text(t, r, s)
			checkPage(t, report)
			all := sections(report)
			for _, section := range []string{"JOB", "DIMENSIONS", "READINGS AS FOUND", "MISALIGNMENT AS FOUND", "TARGET",
				"BEFORE A BOLT OR THE COUPLING IS TOUCHED", "MOVES AT THE FEET", "WHAT THE DIALS SHOULD SHOW AFTER THE MOVES",
				"WARNINGS", "WHAT THIS SHEET DOES NOT SAY"} {
				if len(all[section]) < 2 {
					t.Errorf("%s in %s: section %q is missing or empty", name, s, section)
				}
			}
			for _, line := range all["MOVES AT THE FEET"] {
				checkAmount(t, line, `raise|lower|push|\(u |right to|leave`)
			}
			for _, line := range all["WHAT THE DIALS SHOULD SHOW AFTER THE MOVES"] {
				checkAmount(t, line, `\b(inwards|outwards|wider|narrower)$`)
			}
		}
	}
}

// The sections of the whole job come in the order of the work.
func TestOrderOfTheSections(t *testing.T) {
	rows := []struct {
		file string
		want string
	}{
		{"job.json", `JOB; DIMENSIONS; BEFORE A BOLT OR THE COUPLING IS TOUCHED; CHECKS BEFORE THE ALIGNMENT; SOFT FOOT; READINGS AS FOUND;
			MISALIGNMENT AS FOUND; TARGET; ACCEPTANCE AS FOUND; MOVES AT THE FEET; WHAT THE UNCERTAINTY RESTS ON; SHIMS, FOOT BY FOOT; WHAT THE DIALS SHOULD SHOW AFTER THE MOVES;
			SOFT FOOT AS LEFT; READINGS AS LEFT; MISALIGNMENT AS LEFT; ACCEPTANCE AS LEFT; RUNNING, AS IT IS TO BE EXPECTED;
			MOVES THAT WOULD TAKE THE REST OUT; WARNINGS; WHAT THIS SHEET DOES NOT SAY`},
		{"testdata/alignment-alone.json", `JOB; DIMENSIONS; READINGS AS FOUND; MISALIGNMENT AS FOUND; TARGET; BEFORE A BOLT OR THE COUPLING IS TOUCHED;
			MOVES AT THE FEET; WHAT THE UNCERTAINTY RESTS ON; WHAT THE DIALS SHOULD SHOW AFTER THE MOVES; READINGS AS LEFT; MISALIGNMENT AS LEFT;
			MOVES THAT WOULD TAKE THE REST OUT; WARNINGS; WHAT THIS SHEET DOES NOT SAY`},
	}
	for _, row := range rows {
		var got []string
		for line := range strings.Lines(text(t, mustSolve(t, load(t, row.file)), Metric)) {
			if line = strings.TrimSpace(line); heading.MatchString(line) {
				got = append(got, line)
			}
		}
		if diff := cmp.Diff(strings.Join(strings.Fields(row.want), " "), strings.Join(got, "; ")); diff != "" {
			t.Errorf("%s (-want +got):\n%s", row.file, diff)
		}
	}
}

// checkAmount asks that a line with an amount says which way it goes.
func checkAmount(t rapid.TB, line, words string) {
	t.Helper()
	if amounts.MatchString(line) && !regexp.MustCompile(words).MatchString(line) {
		t.Errorf("an amount without a way: %q", line)
	}
}

// The rule itself has to see a sign that stands alone.
func TestSignsAreSeen(t *testing.T) {
	for line, want := range map[string]bool{
		"3:00  -0.12 mm": true, "3:00  -0.12 mm  0.12 mm outwards": false, "feet at (+3 mil)": true,
		"pump K-12": false, "x = -105.0 mm": true, "lower by -2 mil": false,
	} {
		if got := signed.MatchString(line) && !directions.MatchString(line); got != want {
			t.Errorf("%q: sign without a word: %t, want %t", line, got, want)
		}
	}
}

func TestWrapKeepsEveryCharacter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := strings.Join(rapid.SliceOf(rapid.OneOf(
			rapid.StringMatching(`[a-zü]{0,9}`), rapid.StringMatching(`[a-zü]{70,200}`), rapid.StringMatching(`\d{1,3} mm`),
		)).Draw(t, "words"), " ")
		var p page
		p.wrap("  - ", "    ", in)
		out := p.String()
		for line := range strings.Lines(out) {
			if utf8.RuneCountInString(strings.TrimSuffix(line, "\n")) > lines.Columns {
				t.Fatalf("too long: %q", line)
			}
		}
		squeeze := func(s string) string { return strings.Join(strings.Fields(s), "") }
		if got, want := squeeze(out), "-"+squeeze(in); got != want {
			t.Fatalf("got %q, want %q", got, want)
		}
	})
}

func TestUnitStaysWithItsNumber(t *testing.T) {
	for n := range lines.Columns {
		var p page
		p.wrap("", "", strings.Repeat("x", n)+" 0.25 mm/m high")
		if out := p.String(); !strings.Contains(out, "0.25 mm/m") {
			t.Errorf("after %d characters: %q", n, out)
		}
	}
}
