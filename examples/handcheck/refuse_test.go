package main

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const (
	reverse = "/problem/job/reverse"
	dials   = reverse + "/carried_by_movable"
)

// others are sound files of other problems, for edits of what a job does not have.
var others = map[string]string{
	"sweep": `{"problem": {"sweep": {"carrier": "stationary", "rim": {"station": "0 mm", "readings": [
		{"at": "12:00", "value": "0 mm"}, {"at": "3:00", "value": "0.1 mm"}, {"at": "6:00", "value": "0.2 mm"}, {"at": "9:00", "value": "0.1 mm"}]},
		"view": "from_movable", "zero": "12:00", "mandrel": {"at12": "0 mm", "at6": "-0.06 mm"}}}, "answers": {"sag": "0.03 mm"}}`,
	"flange": `{"problem": {"flange_shims": {"flange": {"face": "400 mm", "push": "away_from_stationary", "view": "from_movable", "bolts": [
		{"name": "a", "radius": "200 mm", "at": "12:00"}, {"name": "b", "radius": "200 mm", "at": "4:00"}, {"name": "c", "radius": "200 mm", "at": "8:00"}]},
		"off": {"horizontal": {"offset": "0 mm", "slope": "1 mm/m"}, "vertical": {"offset": "0 mm", "slope": "0 mm/m"}}}},
		"answers": {"vertical.slide": "leave"}}`,
	"sag": `{"problem": {"sag": {"at12": "0 mm", "at6": "-0.06 mm"}}, "answers": {"sag": "0.03 mm"}}`,
}

// Each row is one edit of a file that has to pass without it: of the example, or
// of one of the others.
var refusals = []struct {
	name, of string
	edit     edit
	want     []string
}{
	// The document.
	{"empty", "", whole(""), []string{"malformed "}},
	{"a list", "", whole("[]"), []string{"malformed "}},
	{"null", "", whole("null"), []string{"malformed "}},
	{"broken off", "", whole(strings.Join(strings.SplitAfter(string(builtIn), `"at": "9:00"`)[:2], "")), []string{"malformed " + dials + "/readings/3"}},
	{"two documents", "", whole(string(builtIn) + "{}"), []string{"malformed "}},
	{"too long", "", whole(strings.Repeat(" ", bounds.Size) + string(builtIn)), []string{"out_of_range "}},
	{"too deep", "", with("/notes", strings.Repeat("[", 20)+strings.Repeat("]", 20)), []string{"out_of_range /notes" + strings.Repeat("/0", 15)}},
	{"no UTF-8", "", whole("{\"title\": \"\xff\"}"), []string{"malformed /title"}},
	{"nothing in it", "", whole("{}"), []string{"missing /problem"}},
	{"member unknown", "", with("/colour", `"red"`), []string{"unknown /colour"}},
	{"member unknown, deep", "", with(dials+"/colour", `"red"`), []string{"unknown " + dials + "/colour"}},
	{"member doubled", "", whole(strings.Replace(string(builtIn), `"units"`, `"units": "inch", "units"`, 1)), []string{"duplicate /units"}},
	{"answers doubled", "", whole(strings.Replace(string(builtIn), `"answers"`, `"answers": {}, "answers"`, 1)), []string{"duplicate /answers"}},
	{"a sag doubled", "", whole(strings.Replace(string(builtIn), `"sag"`, `"sag": "0 mm", "sag"`, 1)), []string{"duplicate " + reverse + "/carried_by_stationary/sag"}},
	{"units unknown", "", with("/units", `"yards"`), []string{"unknown /units"}},
	{"notes that are no list", "", with("/notes", `"note"`), []string{"malformed /notes"}},
	{"all at once", "", all(with("/colour", `1`), with("/units", `"yards"`), without(reverse+"/view"), with("/answers/vertical.slope", `7`)),
		[]string{"malformed /answers/vertical.slope", "missing " + reverse + "/view", "unknown /colour", "unknown /units"}},

	// The problem.
	{"no problem in it", "", all(with("/problem", `{}`), without("/answers")), []string{"missing /problem"}},
	{"two problems", "", with("/problem/sag", `{"at12": "0 mm", "at6": "0 mm"}`), []string{"conflict /problem/sag"}},
	{"an unknown one", "", with("/problem/sags", `{}`), []string{"unknown /problem/sags"}},
	{"no method", "", without("/problem/job/reverse"), []string{"missing /problem/job/reverse"}},
	{"number for a length", "", with(dials+"/station", `-60`), []string{"malformed " + dials + "/station"}},
	{"length without a unit", "", with(dials+"/station", `"-60"`), []string{"missing " + dials + "/station"}},
	{"slope for a length", "", with(dials+"/readings/1/value", `"1 mm/m"`), []string{"unknown " + dials + "/readings/1/value"}},
	{"no number", "", with(dials+"/readings/1/value", `"NaN mm"`), []string{"not_finite " + dials + "/readings/1/value"}},
	{"a sag below zero", "", with(dials+"/sag", `"-0.05 mm"`), []string{"out_of_range " + dials + "/sag"}},
	{"a view that is none", "", with(reverse+"/view", `"from_above"`), []string{"unknown " + reverse + "/view"}},
	{"dials at one station", "", with(dials+"/station", `"60 mm"`), []string{"conflict " + dials + "/station"}},
	{"a foot without a name", "", all(with("/problem/job/feet/0/name", `""`), without("/answers")), []string{"missing /problem/job/feet/0/name"}},
	{"a problem and an answer", "", all(with(dials+"/sag", `"-0.05 mm"`), with("/answers/vertical.slope", `{}`)), []string{"malformed /answers/vertical.slope", "out_of_range " + dials + "/sag"}},
	{"one reading of a mandrel", "sweep", with("/problem/sweep/mandrel", `{"at12": "0 mm"}`), []string{"missing /problem/sweep/mandrel/at6"}},
	{"a mandrel and a sag", "sweep", with("/problem/sweep/rim/sag", `"0.03 mm"`), []string{"conflict /problem/sweep/mandrel"}},
	{"an uncertainty", "flange", with("/problem/flange_shims/off/cov", `{"basis": "stated"}`), []string{"unknown /problem/flange_shims/off/cov"}},
	{"no radius", "flange", with("/problem/flange_shims/flange/bolts/1/radius", `"0 mm"`), []string{"missing /problem/flange_shims/flange/bolts/1/radius"}},

	// The answers.
	{"answers that are a list", "", with("/answers", `["0.1 mm"]`), []string{"malformed /answers"}},
	{"answers that are text", "", with("/answers", `"0.1 mm"`), []string{"malformed /answers"}},
	{"answers that are null", "", with("/answers", `null`), []string{"malformed /answers"}},
	{"an answer that is a number", "", with("/answers/vertical.slope", `0.75`), []string{"malformed /answers/vertical.slope"}},
	{"an answer without a unit", "", with("/answers/vertical.slope", `"0.75"`), []string{"missing /answers/vertical.slope"}},
	{"an answer in another quantity", "", with("/answers/vertical.slope", `"0.75 mm"`), []string{"unknown /answers/vertical.slope"}},
	{"a sign and words", "", with("/answers/vertical.offset", `"+0.255 mm high"`), []string{"conflict /answers/vertical.offset"}},
	{"a line that there is not", "sag", with("/answers/sog", `"0.03 mm"`), []string{"unknown /answers/sog"}},
	{"the same without an answer", "sag", with("/answers/sog", `""`), []string{"unknown /answers/sog"}},
	{"an answer twice", "sag", whole(strings.Replace(others["sag"], `"sag": "0.03`, `"sag": "0.02 mm", "sag": "0.03`, 1)), []string{"duplicate /answers/sag"}},
	{"an odd name", "sag", with("/answers", `{"a/b~c": 1}`), []string{"malformed /answers/a~1b~0c"}},

	// What was drawn.
	{"drawn that is a list", "sag", with("/drawn", `[]`), []string{"malformed /drawn"}},
	{"drawn that is no length", "sag", with("/drawn", `{"sag": "1 mm/m"}`), []string{"unknown /drawn/sag"}},
	{"drawn below zero", "sag", with("/drawn", `{"sag": "-1 mm"}`), []string{"out_of_range /drawn/sag"}},
	{"drawn twice", "sag", with("/drawn", `{"sag": "1 mm", "sag": "1 mm"}`), []string{"duplicate /drawn/sag"}},
	{"drawn and not answered", "sag", with("/drawn", `{"sog": "1 mm"}`), []string{"unknown /drawn/sog"}},
}

func TestRefusals(t *testing.T) {
	for _, row := range refusals {
		t.Run(row.name, func(t *testing.T) {
			sound := builtIn
			if row.of != "" {
				sound = []byte(others[row.of])
			}
			mustRead(t, sound)
			doc := row.edit(t, sound)
			_, err := read(doc)
			got := faults(t, err)
			slices.Sort(got)
			if diff := cmp.Diff(row.want, got); diff != "" {
				t.Errorf("(-want +got):\n%s\n%v", diff, err)
			}
			for _, args := range [][]string{{"-check", "-"}, {"-job", "-"}, {"-job", "-", "-json"}} {
				if ran := play(string(doc), args...); ran.code != refused || ran.stdout != "" || strings.Count(ran.stderr, "\n") != len(got) {
					t.Errorf("%q: ends with %d, prints %q and says %q", args, ran.code, ran.stdout, ran.stderr)
				}
			}
		})
	}
}

// The sound twins of the table are marked, not only read.
func TestOthersAreMarked(t *testing.T) {
	for name, doc := range others {
		if got := check([]byte(doc)); got.code != right {
			t.Errorf("%s: ends with %d: %s%s", name, got.code, got.stdout, got.stderr)
		}
	}
}

// What may be left out is left out, and an empty answer is none.
func TestWhatMayBeLeftOut(t *testing.T) {
	for _, row := range []struct {
		name string
		edit edit
	}{
		{"all that is no problem", all(without("/title"), without("/notes"), without("/units"), without("/answers"))},
		{"no answers in it", answered()},
		{"an empty answer", answered("vertical.slope", "")},
		{"blanks for an answer", answered("vertical.slope", " \t")},
		{"an empty tolerance", with("/drawn", `{"vertical.slope": ""}`)},
		{"no growth", all(without("/problem/job/movable"), without("/problem/job/stationary"), without("/answers"))},
		{"no feet", all(without("/problem/job/feet"), without("/answers"))},
	} {
		if got := play(string(row.edit(t, builtIn)), "-job", "-"); got.code != right || got.stderr != "" {
			t.Errorf("%s: ends with %d: %s", row.name, got.code, got.stderr)
		}
	}
}
