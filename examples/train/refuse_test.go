package main

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const (
	motor, gearbox, pump = "/machines/0", "/machines/1", "/machines/2"
	low, high            = "/couplings/0", "/couplings/1"
	dials                = low + "/found/carried_by_earlier"
)

// Each row is one edit of the job that is built in, which has to pass without it.
var refusals = []struct {
	name string
	edit edit
	want []string
}{
	// The document.
	{"empty", whole(""), []string{"malformed "}},
	{"a list", whole("[]"), []string{"malformed "}},
	{"two documents", whole(string(builtIn) + "{}"), []string{"malformed "}},
	{"too long", whole(strings.Repeat(" ", bounds.Size) + string(builtIn)), []string{"out_of_range "}},
	{"member doubled", whole(strings.Replace(string(builtIn), `"title"`, `"title": "x", "title"`, 1)), []string{"duplicate /title"}},
	{"member unknown", with("/colour", `"red"`), []string{"unknown /colour"}},
	{"member unknown, deep", with(motor+"/feet/0/vertical", `{"dowm_by": "1 mm"}`), []string{"unknown " + motor + "/feet/0/vertical/dowm_by"}},
	{"another format", with("/format", `"pumpset job 1"`), []string{"unknown /format"}},
	{"text of two lines", with("/people", `"a\nb"`), []string{"malformed /people"}},
	{"text too long", with("/notes/0", `"`+strings.Repeat("x", 301)+`"`), []string{"out_of_range /notes/0"}},
	{"units unknown", with("/units", `"yards"`), []string{"unknown /units"}},
	{"work unknown", with("/work", `"least"`), []string{"unknown /work"}},
	{"number for a length", with(low+"/at", `1800`), []string{"malformed " + low + "/at"}},
	{"length without a unit", with(low+"/at", `"1800"`), []string{"missing " + low + "/at"}},
	{"slope for a length", with(dials+"/at_3", `"1 mm/m"`), []string{"unknown " + dials + "/at_3"}},
	{"no number", with(dials+"/at_3", `"NaN mm"`), []string{"not_finite " + dials + "/at_3"}},

	// The machines.
	{"reference unknown", with("/reference", `"gearbox G-5"`), []string{"unknown /reference"}},
	{"no machines", with("/machines", `[]`), []string{"missing /machines", "unknown /reference"}},
	{"a machine too many", with("/couplings", `[]`), []string{"conflict /couplings"}},
	{"a name twice", with(pump+"/name", `"motor M-4"`), []string{"duplicate " + pump + "/name"}},
	{"a height below zero", with(pump+"/height", `"-1 mm"`), []string{"out_of_range " + pump + "/height"}},
	{"one station", with(motor+"/feet", `[{"name": "inboard", "at": "1400 mm"}]`), []string{"missing " + motor + "/feet"}},
	{"a foot twice", with(motor+"/feet/1/name", `"outboard"`), []string{"duplicate " + motor + "/feet/1/name"}},
	{"two feet at one place", with(motor+"/feet/1/at", `"300 mm"`), []string{"duplicate " + motor + "/feet/1/at"}},
	{"a foot beyond the coupling", with(motor+"/feet/1/at", `"1850 mm"`), []string{"conflict " + motor + "/feet/1/at"}},
	{"fixed, and how far", with(pump+"/feet/0/vertical/fixed", `true`), []string{"conflict " + pump + "/feet/0/vertical/down_by"}},
	{"down below zero", with(pump+"/feet/0/vertical/down_by", `"-0.1 mm"`), []string{"out_of_range " + pump + "/feet/0/vertical/down_by"}},
	{"up below zero", with(gearbox+"/feet/0/vertical/up_by", `"-0.1 mm"`), []string{"out_of_range " + gearbox + "/feet/0/vertical/up_by"}},
	{"towards nine below zero", with(motor+"/feet/1/horizontal/nine_by", `"-2 mm"`), []string{"out_of_range " + motor + "/feet/1/horizontal/nine_by"}},
	{"towards three below zero", with(motor+"/feet/1/horizontal/three_by", `"-0.1 mm"`), []string{"out_of_range " + motor + "/feet/1/horizontal/three_by"}},

	// The growth.
	{"one support", with(motor+"/growth", `[{"name": "a", "at": "300 mm", "height": "1 mm", "material": "steel", "rise": "1 K"}]`), []string{"missing " + motor + "/growth"}},
	{"material unknown", with(motor+"/growth/1/material", `"cheese"`), []string{"unknown " + motor + "/growth/1/material"}},
	{"no height of what warms", with(motor+"/growth/1/height", `"0 mm"`), []string{"missing " + motor + "/growth/1/height"}},
	{"warmer than can be", with(motor+"/growth/0/rise", `"3000 K"`), []string{"out_of_range " + motor + "/growth/0/rise"}},
	{"an uncertainty below zero", with(motor+"/growth/0/u", `"-1 K"`), []string{"out_of_range " + motor + "/growth/0/u"}},
	{"two supports at one place", with(motor+"/growth/1/at", `"300 mm"`), []string{"conflict " + motor + "/growth/1/at"}},
	{"a support twice", with(motor+"/growth/1/name", `"outboard feet"`), []string{"duplicate " + motor + "/growth/1/name"}},

	// The couplings.
	{"a name twice", with(high+"/name", `"low-speed coupling"`), []string{"duplicate " + high + "/name"}},
	{"a coupling before the one before it", with(high+"/at", `"1800 mm"`), []string{
		"conflict " + high + "/at", "conflict " + gearbox + "/feet/0/at", "conflict " + gearbox + "/feet/1/at",
	}},
	{"a span below zero", with(low+"/span", `"-1 mm"`), []string{"out_of_range " + low + "/span"}},
	{"a spacer of no length", without(low + "/span"), []string{"missing " + low + "/span"}},
	{"no limit of the tilt", all(without(low+"/limits/tilt"), with(low+"/limits/offset", `"1 mm"`)), []string{"missing " + low + "/limits/tilt"}},
	{"no limits", all(without(high+"/limits/offset"), without(high+"/limits/slope")), []string{"missing " + high + "/limits"}},
	{"a limit of nothing to speak of", with(low+"/limits/tilt", `"-1 mm/m"`), []string{"out_of_range " + low + "/limits/tilt"}},
	{"an offset below zero", with(high+"/limits/offset", `"-1 mm"`), []string{"out_of_range " + high + "/limits/offset"}},
	{"a slope below zero", with(high+"/limits/slope", `"-1 mm/m"`), []string{"out_of_range " + high + "/limits/slope"}},
	{"a target beside a growth", with(low+"/target", `{"source": "maker"}`), []string{"conflict " + low + "/target"}},

	// The readings.
	{"seen from the side", with(low+"/found/seen_from", `"side"`), []string{"unknown " + low + "/found/seen_from"}},
	{"a sag below zero", with(dials+"/sag", `"-0.06 mm"`), []string{"out_of_range " + dials + "/sag"}},
	{"a sag below zero, seen from the last", with(high+"/found/carried_by_later/sag", `"-0.06 mm"`), []string{"out_of_range " + high + "/found/carried_by_later/sag"}},
	{"an uncertainty below zero", with(dials+"/u", `"-1 mm"`), []string{"out_of_range " + dials + "/u"}},
	{"both dials on one rim", with(dials+"/at", `"1700 mm"`), []string{"conflict " + dials + "/at"}},
	{"dials the wrong way round", with(dials+"/at", `"1600 mm"`), []string{"conflict " + dials + "/at"}},
	{"a reading that cannot be", with(dials+"/at_3", `"1e302 mm"`), []string{"out_of_range " + dials + "/at_3"}},
	{"many at once", all(with(motor+"/feet/1/horizontal/three_by", `"-1 mm"`), with(dials+"/sag", `"-1 mm"`), with(motor+"/growth/1/material", `"cheese"`), with("/reference", `"x"`)), []string{
		"out_of_range " + motor + "/feet/1/horizontal/three_by", "unknown " + motor + "/growth/1/material", "out_of_range " + dials + "/sag", "unknown /reference",
	}},
}

func TestBuiltInIsSound(t *testing.T) { mustSolve(t, builtIn) }

func TestRefusals(t *testing.T) {
	for _, row := range refusals {
		t.Run(row.name, func(t *testing.T) {
			_, err := outcome(row.edit(t, builtIn))
			if diff := cmp.Diff(row.want, faults(t, err)); diff != "" {
				t.Errorf("(-want +got):\n%s\n%v", diff, err)
			}
		})
	}
}

// optional holds the names of what may be left out.
var optional = strings.Fields(`place people notes units three nine reference work height vertical horizontal growth u span
	down_by up_by nine_by three_by offset slope tilt per_plane target fixed`)

// A member that is left out is one that may be, or one fault at its place; a value
// of a wrong type, wherever it stands, is one fault at its place.
func TestEveryMember(t *testing.T) {
	for _, p := range everyMember(t) {
		name := p[strings.LastIndex(p, "/")+1:]
		mayBeOut := slices.Contains(optional, name) && !strings.Contains(p, "/growth/") || strings.Contains(p, "/growth/") && name == "u"
		if name[0] >= 'a' && !mayBeOut { // not a place in a list
			_, err := outcome(without(p)(t, builtIn))
			if diff := cmp.Diff([]string{"missing " + p}, faults(t, err)); diff != "" {
				t.Errorf("without %s (-want +got):\n%s", p, diff)
			}
		}
		_, err := outcome(with(p, `7`)(t, builtIn))
		if diff := cmp.Diff([]string{"malformed " + p}, faults(t, err)); diff != "" {
			t.Errorf("a number at %s (-want +got):\n%s", p, diff)
		}
	}
}
