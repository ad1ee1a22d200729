package pumpset

import (
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// sweep is the path to one set of the job that is built in.
const sweep = "/found/reverse/carried_by_movable"

// Each row is one edit of a sound job. The job without the edit is its twin and
// has to pass, so that a program which always refuses fails every row.
var refusals = []struct {
	name, file string
	edit       edit
	want       []string
}{
	// The document.
	{"field unknown", "job.json", with("/colour", `"red"`), []string{"unknown /colour"}},
	{"field unknown, deep", "job.json", with(sweep+"/readings/1/when", `"now"`), []string{"unknown " + sweep + "/readings/1/when"}},
	{"field unknown, with a value of its own", "job.json", with("/tape/spare", `{"a":[{"b":"c"}]}`), []string{"unknown /tape/spare"}},
	{"field of another part", "job.json", with(sweep+"/diameter", `"90 mm"`), []string{"unknown " + sweep + "/diameter"}},
	{"name in capitals", "job.json", both(without("/title"), with("/Title", `"x"`)), []string{"unknown /Title", "missing /title"}},
	{"name that breaks the line", "job.json", with("/a\nb", `"x"`), []string{"unknown /a\nb"}},
	{"name with a stroke", "job.json", with("/a~1b", `"x"`), []string{"unknown /a~01b"}},
	{"field doubled", "job.json", swap(`"view"`, `"view": "from_movable", "view"`), []string{"duplicate /view"}},
	{"field doubled, deep", "job.json", swap(`"at_12"`, `"at_12": "9 mm", "at_12"`), []string{"duplicate /found/reverse/carried_by_stationary/mandrel/at_12"}},
	{"field doubled, spelt with an escape", "job.json", swap(`"view"`, `"\u0076iew": "from_movable", "view"`), []string{"duplicate /view"}},
	{"trailing word", "job.json", trailing("x"), []string{"malformed "}},
	{"trailing brace", "job.json", trailing("}"), []string{"malformed "}},
	{"trailing document", "job.json", trailing("{}"), []string{"malformed "}},
	{"trailing string", "job.json", trailing(`"x"`), []string{"malformed "}},
	{"trailing number", "job.json", trailing(" 1"), []string{"malformed "}},
	{"comment", "job.json", swap(`"view"`, "// from here\n\"view\""), []string{"malformed "}},
	{"comma too many", "job.json", swap(`"miss": "0.02 mm",`, `"miss": "0.02 mm",,`), []string{"malformed /limits"}},
	{"byte order mark", "job.json", leading("\ufeff"), []string{"malformed "}},
	{"invalid UTF-8", "job.json", swap("K-12", "K\xff12"), []string{"malformed /title"}},
	{"half of a pair", "job.json", swap("K-12", `K\ud80012`), []string{"malformed /title"}},
	{"empty", "job.json", whole(""), []string{"malformed "}},
	{"white space", "job.json", whole(" \n"), []string{"malformed "}},
	{"null", "job.json", whole("null"), []string{"malformed "}},
	{"list", "job.json", whole("[]"), []string{"malformed "}},
	{"NaN without quotes", "job.json", swap(`"+0.55 mm"`, `NaN`), []string{"malformed /found/reverse/carried_by_stationary/readings/1/value"}},
	{"too long", "job.json", leading(strings.Repeat(" ", MaxSize)), []string{"out_of_range "}},
	{"too deep", "job.json", with("/notes", strings.Repeat("[", maxDepth)+strings.Repeat("]", maxDepth)), []string{"out_of_range /notes" + strings.Repeat("/0", maxDepth-1)}},
	{"very deep", "job.json", with("/x", strings.Repeat("[", 9000)+strings.Repeat("]", 9000)), []string{"out_of_range /x" + strings.Repeat("/0", maxDepth-1)}},
	{"deep and never closed", "job.json", whole(strings.Repeat(`{"a":`, 100_000)), []string{"out_of_range " + strings.Repeat("/a", maxDepth)}},

	// Values.
	{"number for a quantity", "job.json", with("/tape/centre", `190`), []string{"malformed /tape/centre"}},
	{"huge number", "job.json", with("/tape/centre", `1e400`), []string{"malformed /tape/centre"}},
	{"number of 400 digits", "job.json", with("/tape/centre", strings.Repeat("9", 400)), []string{"malformed /tape/centre"}},
	{"huge quantity", "job.json", with("/tape/centre", `"1e400 mm"`), []string{"out_of_range /tape/centre"}},
	{"quantity of 400 digits", "job.json", with("/tape/centre", `"`+strings.Repeat("9", 400)+` mm"`), []string{"malformed /tape/centre"}},
	{"readings too large to add up", "job.json", both(with(sweep+"/readings/0/value", `"-1e302 mm"`), with(sweep+"/readings/2/value", `"1e302 mm"`)), []string{"out_of_range " + sweep + "/readings/0/value", "out_of_range " + sweep + "/readings/2/value"}},
	{"NaN", "job.json", with(sweep+"/readings/1/value", `"NaN mm"`), []string{"not_finite " + sweep + "/readings/1/value"}},
	{"infinity", "job.json", with("/coupling/diameter", `"Inf"`), []string{"not_finite /coupling/diameter"}},
	{"unit missing", "job.json", with("/tape/centre", `"190"`), []string{"missing /tape/centre"}},
	{"unit unknown", "job.json", with("/tape/centre", `"190 furlong"`), []string{"unknown /tape/centre"}},
	{"comma for a point", "job.json", with(sweep+"/readings/1/value", `"-0,44 mm"`), []string{"malformed " + sweep + "/readings/1/value"}},
	{"slope for a length", "job.json", with(sweep+"/readings/1/value", `"0.4 mm/m"`), []string{"unknown " + sweep + "/readings/1/value"}},
	{"hour past twelve", "job.json", with(sweep+"/readings/1/at", `"13:00"`), []string{"out_of_range " + sweep + "/readings/1/at"}},
	{"null for optional", "job.json", with("/left", `null`), []string{"malformed /left"}},
	{"null for text", "job.json", with("/title", `null`), []string{"malformed /title"}},
	{"text empty", "job.json", with("/title", `""`), []string{"missing /title"}},
	{"text of two lines", "job.json", with("/by", `"a\nb"`), []string{"malformed /by"}},
	{"text that steers a terminal", "job.json", with("/by", `"\u001b[2J"`), []string{"malformed /by"}},
	{"text too long", "job.json", with("/by", `"`+strings.Repeat("x", 301)+`"`), []string{"out_of_range /by"}},
	{"format of another time", "job.json", with("/format", `"pumpset job 2"`), []string{"unknown /format"}},
	{"record for a job", "job.json", with("/format", `"pumpset record 1"`), []string{"unknown /format"}},
	{"view unknown", "job.json", with("/view", `"from_above"`), []string{"unknown /view"}},
	{"view missing", "job.json", without("/view"), []string{"missing /view"}},
	{"units unknown", "job.json", with("/units", `"yards"`), []string{"unknown /units"}},
	{"carrier unknown", "testdata/rim-gap.json", with("/found/rim_gap/carrier", `"pump"`), []string{"unknown /found/rim_gap/carrier"}},
	{"carrier missing", "testdata/rim-gap.json", without("/found/rim_gap/carrier"), []string{"missing /found/rim_gap/carrier"}},
	{"reading without a position", "job.json", without(sweep + "/readings/0/at"), []string{"missing " + sweep + "/readings/0/at"}},
	{"reading without a value", "job.json", without(sweep + "/readings/0/value"), []string{"missing " + sweep + "/readings/0/value"}},
	{"many at once", "job.json", both(
		with("/tape/centre", `"190"`), with("/title", `3`), with("/colour", `"red"`), with("/coupling/diameter", `"NaN mm"`),
		without("/view"), with(sweep+"/readings", `{}`), with("/left/reverse/carried_by_movable/readings/4/value", `""`),
	), []string{
		"not_finite /coupling/diameter", "malformed " + sweep + "/readings", "missing /left/reverse/carried_by_movable/readings/4/value",
		"missing /tape/centre", "malformed /title", "unknown /colour", "missing /view",
	}},

	// The tape.
	{"feet on the stationary side", "job.json", with("/tape/feet/0/at", `"100 mm"`), []string{"out_of_range /tape/feet/0/at"}},
	{"feet at the centre", "job.json", with("/tape/feet/0/at", `"7 1/2 in"`), []string{"out_of_range /tape/feet/0/at"}},
	{"tape from the wrong end", "testdata/alignment-alone.json", both(with("/tape/stationary_rim", `"1025 mm"`), with("/tape/centre", `"920 mm"`), with("/tape/movable_rim", `"815 mm"`), with("/tape/feet/1/at", `"0 mm"`)),
		[]string{"out_of_range /tape/stationary_rim", "out_of_range /tape/movable_rim", "out_of_range /tape/feet/0/at", "out_of_range /tape/feet/1/at"}},
	{"both rims at one place", "job.json", both(with("/tape/stationary_rim", `"7 1/2 in"`), with("/tape/movable_rim", `"7 1/2 in"`)), []string{"conflict /tape/stationary_rim"}},
	{"rim missing", "job.json", without("/tape/movable_rim"), []string{"missing /tape/movable_rim"}},
	{"both rims missing", "job.json", both(without("/tape/movable_rim"), without("/tape/stationary_rim")), []string{"missing /tape/stationary_rim", "missing /tape/movable_rim"}},
	{"rim without a use", "testdata/spacer.json", with("/tape/movable_rim", `"1000 mm"`), []string{"conflict /tape/movable_rim"}},
	{"rim of the other carrier", "testdata/mcmillan-8-3.json", with("/found/rim_face/carrier", `"movable"`), []string{"missing /tape/stationary_rim", "conflict /tape/movable_rim"}},
	{"rim of the other straightedge", "testdata/gauges.json", with("/found/straightedge_gap/straightedge/on", `"movable"`), []string{"missing /tape/stationary_rim", "conflict /tape/movable_rim"}},
	{"place far below zero", "job.json", with("/tape/movable_rim", `"-1e302 mm"`), []string{"out_of_range /tape/movable_rim"}},
	{"target beyond reckoning", "testdata/alignment-alone.json", with("/target/high", `"1e9 mm"`), []string{"out_of_range /target"}},
	{"readings beyond reckoning", "testdata/spacer.json", with("/found/face_face/at_movable/readings/0/value", `"1e9 mm"`), []string{"out_of_range /found/face_face"}},
	{"place below zero", "job.json", with("/tape/stationary_rim", `"-85 mm"`), []string{"out_of_range /tape/stationary_rim"}},
	{"one station of feet", "testdata/alignment-alone.json", with("/tape/feet", `[{"name": "only", "at": "500 mm"}]`), []string{"missing /tape/feet"}},
	{"no feet", "testdata/alignment-alone.json", with("/tape/feet", `[]`), []string{"missing /tape/feet"}},
	{"two stations of one name", "testdata/alignment-alone.json", with("/tape/feet/1/name", `"inboard"`), []string{"duplicate /tape/feet/1/name"}},
	{"two stations at one place", "job.json", with("/tape/feet/1/at", `"22 1/16 in"`), []string{"duplicate /tape/feet/1/at"}},
	{"doubt below zero", "job.json", with("/tape/u", `"-1 mm"`), []string{"out_of_range /tape/u"}},
	{"doubt of a foot below zero", "job.json", with("/tape/feet/1/u", `"-1 mm"`), []string{"out_of_range /tape/feet/1/u"}},

	// The coupling, limits and target.
	{"coupling without a diameter", "job.json", without("/coupling/diameter"), []string{"missing /coupling/diameter"}},
	{"diameter zero", "job.json", with("/coupling/diameter", `"0 mm"`), []string{"missing /coupling/diameter"}},
	{"diameter below zero", "job.json", with("/coupling/diameter", `"-150 mm"`), []string{"out_of_range /coupling/diameter"}},
	{"span below zero", "job.json", with("/coupling/span", `"-1 mm"`), []string{"out_of_range /coupling/span"}},
	{"span needed", "testdata/spacer.json", without("/coupling/span"), []string{"missing /coupling/span"}},
	{"limit below zero", "job.json", with("/limits/miss", `"-1 mm"`), []string{"out_of_range /limits/miss"}},
	{"target open nowhere", "testdata/alignment-alone.json", with("/target/opening", `"0.1 mm"`), []string{"missing /target/open_at"}},
	{"target's diameter", "testdata/alignment-alone.json", with("/target/diameter", `"-1 mm"`), []string{"out_of_range /target/diameter"}},

	// The checks before the alignment.
	{"runout of no shaft", "job.json", with("/checks/runout/0/shaft", `"pump"`), []string{"unknown /checks/runout/0/shaft"}},
	{"runout below zero", "job.json", with("/checks/runout/0/reading", `"-0.02 mm"`), []string{"out_of_range /checks/runout/0/reading"}},
	{"diameter beyond the table of runout", "job.json", with("/checks/runout/1/diameter", `"631 mm"`), []string{"out_of_range /checks/runout/1/diameter"}},
	{"runout of a shaft without a diameter", "job.json", with("/checks/runout/1/diameter", `"0 mm"`), []string{"missing /checks/runout/1/diameter"}},
	{"limit of runout zero", "testdata/trouble.json", with("/checks/runout/1/limit", `"0 mil"`), []string{"out_of_range /checks/runout/1/limit"}},
	{"source of no limit of runout", "testdata/trouble.json", without("/checks/runout/1/limit"), []string{"missing /checks/runout/1/limit"}},
	{"own limit of runout, no diameter", "testdata/trouble.json", with("/checks/runout/1/diameter", `"0 in"`), []string{"out_of_range /checks/runout/1/diameter"}},
	{"nothing released", "job.json", with("/checks/strain/released", `[]`), []string{"missing /checks/strain/released"}},
	{"released twice", "job.json", with("/checks/strain/released/1/what", `"suction flange"`), []string{"duplicate /checks/strain/released/1/what"}},
	{"released without a plane", "job.json", without("/checks/strain/released/1/up"), []string{"missing /checks/strain/released/1/up"}},
	{"strain far beyond a machine", "job.json", both(with("/checks/strain/released/0/up", `"1e302 mm"`), with("/checks/strain/released/0/to_three", `"1e302 mm"`)), []string{"out_of_range /checks/strain/released/0/up", "out_of_range /checks/strain/released/0/to_three"}},
	{"limit of strain zero", "job.json", with("/checks/strain/limit", `"0 mm"`), []string{"out_of_range /checks/strain/limit"}},
	{"source of no limit", "job.json", with("/checks/strain/source", `"maker"`), []string{"missing /checks/strain/limit"}},
	{"spacing of nothing", "job.json", both(with("/checks/spacing/wanted", `"0 mm"`), with("/checks/spacing/measured", `"-1 mm"`), with("/checks/spacing/allowed", `"-1 mm"`)),
		[]string{"out_of_range /checks/spacing/wanted", "out_of_range /checks/spacing/measured", "out_of_range /checks/spacing/allowed"}},

	// The single feet.
	{"foot of no station", "job.json", with("/single_feet/feet/2/station", `"middle"`), []string{"unknown /single_feet/feet/2/station"}},
	{"foot of no side", "job.json", with("/single_feet/feet/2/side", `"left"`), []string{"unknown /single_feet/feet/2/side"}},
	{"foot on the wrong side by its sign", "job.json", with("/single_feet/feet/2/across", `"-100 mm"`), []string{"out_of_range /single_feet/feet/2/across"}},
	{"two feet of one name", "job.json", with("/single_feet/feet/2/name", `"inboard wall"`), []string{"duplicate /single_feet/feet/2/name"}},
	{"two feet at one place", "job.json", with("/single_feet/feet/1/side", `"three"`), []string{"duplicate /single_feet/feet/1"}},
	{"two feet below the shaft", "job.json", both(with("/single_feet/feet/0/across", `"0 mm"`), with("/single_feet/feet/1/across", `"0 mm"`)), []string{"duplicate /single_feet/feet/1"}},
	{"station without feet", "job.json", both(with("/single_feet/feet/2/station", `"inboard"`), with("/single_feet/feet/3/station", `"inboard"`), with("/single_feet/feet/2/across", `"100 mm"`), with("/single_feet/feet/3/across", `"100 mm"`)),
		[]string{"missing /single_feet/feet"}},
	{"no single feet", "job.json", with("/single_feet/feet", `[]`), []string{"missing /single_feet/feet"}},
	{"two feet looked at", "job.json", with("/single_feet/feet", `[{"name": "a", "station": "inboard", "side": "three", "across": "1 mm", "lift": "0 mm"}, {"name": "b", "station": "outboard", "side": "three", "across": "1 mm", "lift": "0 mm"}]`), []string{"missing /single_feet/feet"}},
	{"foot that was left out", "job.json", without("/single_feet/feet/1/lift"), []string{"missing /single_feet/feet/1/lift"}},
	{"foot that was left out afterwards", "job.json", both(without("/single_feet/feet/1/lift_left"), without("/single_feet/feet/3/lift_left")), []string{"missing /single_feet/feet/1/lift_left", "missing /single_feet/feet/3/lift_left"}},
	{"lift of no size", "job.json", both(with("/single_feet/feet/1/lift", `"1e302 mm"`), with("/single_feet/feet/1/lift_left", `"-1e302 mm"`)), []string{"out_of_range /single_feet/feet/1/lift", "out_of_range /single_feet/feet/1/lift_left"}},
	{"lift and gaps", "testdata/trouble.json", with("/single_feet/feet/2/lift", `"1 mil"`), []string{"conflict /single_feet/feet/2/lift"}},
	{"no gaps", "testdata/trouble.json", with("/single_feet/feet/2/gaps", `[]`), []string{"missing /single_feet/feet/2/gaps"}},
	{"gap below zero", "testdata/trouble.json", with("/single_feet/feet/2/gaps/1/gap", `"-1 mil"`), []string{"out_of_range /single_feet/feet/2/gaps/1/gap"}},
	{"corner far away", "testdata/trouble.json", both(with("/single_feet/feet/2/gaps/1/away", `"1e302 mm"`), with("/single_feet/feet/2/gaps/2/to_three", `"1e302 mm"`)), []string{"out_of_range /single_feet/feet/2/gaps/1/away", "out_of_range /single_feet/feet/2/gaps/2/to_three"}},
	{"height forgotten", "job.json", without("/single_feet/height"), []string{"missing /single_feet/height"}},
	{"height below zero", "job.json", with("/single_feet/height", `"-1 mm"`), []string{"out_of_range /single_feet/height"}},
	{"limit of soft foot zero", "job.json", with("/single_feet/limit", `"0 mm"`), []string{"out_of_range /single_feet/limit"}},

	{"way before the first", "job.json", with("/single_feet/way", `"0"`), []string{"out_of_range /single_feet/way"}},
	{"way after the last", "job.json", with("/single_feet/way", `"4"`), []string{"out_of_range /single_feet/way"}},
	{"way that is no number", "job.json", with("/single_feet/way", `"first"`), []string{"malformed /single_feet/way"}},
	{"way where none is advised", "testdata/trouble.json", with("/single_feet/way", `"1"`), []string{"out_of_range /single_feet/way"}},
	{"way for feet that were not looked at", "job.json", with("/single_feet", `{"way": "1", "feet": [{"name": "a", "station": "inboard", "side": "three", "across": "0 mm"}, {"name": "b", "station": "outboard", "side": "nine", "across": "9 mm"}]}`), []string{"out_of_range /single_feet/way"}},
	{"single foot without a name", "job.json", without("/single_feet/feet/2/name"), []string{"missing /single_feet/feet/2/name"}},

	// The growth.
	{"growth and target", "job.json", with("/target", `{"high": "0.1 mm"}`), []string{"conflict /growth"}},
	{"growth of nothing", "job.json", both(without("/growth/stationary"), without("/growth/movable")), []string{"missing /growth"}},
	{"one support", "job.json", with("/growth/movable", `[{"name": "only", "at": "900 mm", "measured": {"up": "0.1 mm", "to_three": "0 mm"}}]`), []string{"missing /growth/movable"}},
	{"no supports", "job.json", with("/growth/movable", `[]`), []string{"missing /growth/movable"}},
	{"support nowhere", "job.json", without("/growth/stationary/0/from_centre"), []string{"missing /growth/stationary/0/at"}},
	{"support at two places", "job.json", with("/growth/stationary/0/at", `"20 mm"`), []string{"conflict /growth/stationary/0/from_centre"}},
	{"support on the other side", "job.json", with("/growth/stationary/0/from_centre", `"260 mm"`), []string{"out_of_range /growth/stationary/0/from_centre"}},
	{"support on the other side, on the tape", "job.json", with("/growth/movable/0/at", `"20 mm"`), []string{"out_of_range /growth/movable/0/at"}},
	{"two supports at one place", "job.json", with("/growth/stationary/1/from_centre", `"-260 mm"`), []string{"conflict /growth/stationary/1/from_centre"}},
	{"two supports of one name", "job.json", with("/growth/movable/1/name", `"motor, inboard feet"`), []string{"duplicate /growth/movable/1/name"}},
	{"growth told twice", "job.json", with("/growth/movable/1/measured", `{"up": "0.1 mm", "to_three": "0 mm"}`), []string{"conflict /growth/movable/1"}},
	{"growth not told", "job.json", without("/growth/movable/1/pieces"), []string{"missing /growth/movable/1"}},
	{"leg of no height", "job.json", with("/growth/movable/1/pieces/0/height", `"0 mm"`), []string{"missing /growth/movable/1/pieces/0/height"}},
	{"material unknown", "job.json", with("/growth/movable/1/pieces/0/material", `"oak"`), []string{"unknown /growth/movable/1/pieces/0/material"}},
	{"coefficient without a source", "job.json", with("/growth/movable/1/pieces/0/expansion", `"11 um/m/K"`), []string{"missing /growth/movable/1/pieces/0/source"}},
	{"source without a coefficient", "job.json", with("/growth/movable/1/pieces/0/source", `"maker"`), []string{"conflict /growth/movable/1/pieces/0/source"}},
	{"coefficient with its power forgotten", "job.json", both(with("/growth/movable/1/pieces/0/expansion", `"11 1/K"`), with("/growth/movable/1/pieces/0/source", `"maker"`)), []string{"out_of_range /growth/movable/1/pieces/0/expansion"}},
	{"doubt of a coefficient below zero", "job.json", with("/growth/movable/1/pieces/0/u/expansion", `"-1 um/m/K"`), []string{"out_of_range /growth/movable/1/pieces/0/u/expansion"}},
	{"doubt of a rise below zero", "job.json", with("/growth/movable/1/pieces/0/u/temperature", `"-1 K"`), []string{"out_of_range /growth/movable/1/pieces/0/u/temperature"}},
	{"rise forgotten", "job.json", without("/growth/movable/1/pieces/0/rise"), []string{"missing /growth/movable/1/pieces/0/rise"}},
	{"temperature for a rise", "job.json", with("/growth/movable/1/pieces/0/rise", `"19"`), []string{"missing /growth/movable/1/pieces/0/rise"}},
	{"rise and profile", "job.json", with("/growth/stationary/1/pieces/0/rise", `"0 K"`), []string{"conflict /growth/stationary/1/pieces/0/rise"}},
	{"profile without cold", "job.json", without("/growth/stationary/1/pieces/0/cold"), []string{"missing /growth/stationary/1/pieces/0/cold"}},
	{"cold without profile", "job.json", with("/growth/movable/1/pieces/0/cold", `"20 °C"`), []string{"conflict /growth/movable/1/pieces/0/cold"}},
	{"profile of nothing", "job.json", with("/growth/stationary/1/pieces/0/profile", `[]`), []string{"missing /growth/stationary/1/pieces/0/profile", "conflict /growth/stationary/1/pieces/0/cold"}},
	{"spot above its piece", "job.json", with("/growth/stationary/1/pieces/0/profile/1/up", `"311 mm"`), []string{"out_of_range /growth/stationary/1/pieces/0/profile/1/up"}},
	{"colder than can be", "job.json", with("/growth/stationary/1/pieces/0/profile/1/running", `"-300 °C"`), []string{"out_of_range /growth/stationary/1/pieces/0/profile/1/running"}},
	{"growth beyond reckoning", "testdata/trouble.json", with("/growth/stationary/1/measured/up", `"1e302 mm"`), []string{"out_of_range /growth/stationary/1/measured/up"}},
	{"legs apart without a track", "testdata/trouble.json", without("/growth/movable/0/track"), []string{"missing /growth/movable/0/track"}},
	{"leg on the crew's three missing", "testdata/trouble.json", without("/growth/movable/0/three"), []string{"missing /growth/movable/0/three"}},
	{"leg on the crew's nine without a height", "testdata/trouble.json", with("/growth/movable/0/nine/0/height", `"-1 in"`), []string{"out_of_range /growth/movable/0/nine/0/height"}},

	// What it is judged by.
	{"speed below zero", "job.json", with("/speed", `"-1480 rpm"`), []string{"out_of_range /speed"}},
	{"judged by nothing", "job.json", without("/acceptance/own"), []string{"missing /acceptance"}},
	{"sure by half", "job.json", with("/acceptance/confidence", `"50 %"`), []string{"out_of_range /acceptance/confidence"}},
	{"quite sure", "job.json", with("/acceptance/confidence", `"100 %"`), []string{"out_of_range /acceptance/confidence"}},
	{"sure in no hundredths", "job.json", with("/acceptance/confidence", `"0.9"`), []string{"malformed /acceptance/confidence"}},
	{"sure by nothing", "job.json", with("/acceptance/confidence", `""`), []string{"missing /acceptance/confidence"}},
	{"judged by two", "job.json", with("/acceptance/rule", `"API RP 686"`), []string{"conflict /acceptance"}},
	{"rule unknown", "job.json", with("/acceptance/rule", `"thumb"`), []string{"unknown /acceptance/rule"}},
	{"rule about spacers, coupling short", "testdata/trouble.json", with("/acceptance", `{"rule": "API RP 686"}`), []string{"conflict /acceptance/rule"}},
	{"sliding without a speed", "job.json", both(with("/acceptance", `{"sliding": "12 mm/s"}`), without("/speed")), []string{"missing /speed"}},
	{"sliding backwards", "job.json", with("/acceptance", `{"sliding": "-12 mm/s"}`), []string{"out_of_range /acceptance/sliding"}},
	{"own limits without a source", "job.json", without("/acceptance/own/source"), []string{"missing /acceptance/own/source"}},
	{"own limit needed", "job.json", without("/acceptance/own/flex"), []string{"missing /acceptance/own/flex"}},
	{"own limit of the other sort", "job.json", both(without("/acceptance/own/flex"), with("/acceptance/own/slope", `"0.5 mm/m"`)), []string{"missing /acceptance/own/flex"}},
	{"own limit zero", "job.json", both(with("/acceptance/own/flex", `"0 mm/m"`), with("/acceptance/own/offset", `"0 mm"`)), []string{"out_of_range /acceptance/own/flex", "out_of_range /acceptance/own/offset"}},
	{"table without a speed", "testdata/trouble.json", without("/speed"), []string{"missing /speed"}},
	{"speed beyond the table", "testdata/trouble.json", with("/speed", `"3001 rpm"`), []string{"out_of_range /speed"}},
	{"table without rows", "testdata/trouble.json", with("/acceptance/table/rows", `[]`), []string{"missing /acceptance/table/rows"}},
	{"two rows of one speed", "testdata/trouble.json", with("/acceptance/table/rows/0/speed", `"3000 rpm"`), []string{"duplicate /acceptance/table/rows/1/speed"}},
	{"table that widens with speed", "testdata/trouble.json", with("/acceptance/table/rows/1/offset", `"4 mil"`), []string{"conflict /acceptance/table/rows/1/offset"}},
	{"limit of a row zero", "testdata/trouble.json", with("/acceptance/table/rows/1/flex", `"0 mil/in"`), []string{"out_of_range /acceptance/table/rows/1/flex"}},
	{"table of the other sort", "testdata/trouble.json", with("/acceptance/table/rows", `[{"speed": "3000 rpm", "flex": "0.5 mil/in"}]`), []string{"missing /acceptance/table/rows"}},

	// The shims.
	{"shims without feet", "job.json", without("/single_feet"), []string{"missing /single_feet"}},
	{"empty box", "job.json", with("/shims/stock", `[]`), []string{"missing /shims/stock"}},
	{"shim of no thickness", "job.json", both(without("/shims/stock/0/marked"), with("/shims/stock/1/measured", `"0 mm"`)), []string{"missing /shims/stock/0/marked", "out_of_range /shims/stock/1/measured"}},
	{"shim of part of a nanometre", "job.json", with("/shims/stock/0/marked", `"0.0500001 mm"`), []string{"out_of_range /shims/stock/0/marked"}},
	{"count with a unit", "job.json", with("/shims/stock/0/count", `"8 pieces"`), []string{"malformed /shims/stock/0/count"}},
	{"count below zero", "job.json", with("/shims/stock/0/count", `"-1"`), []string{"malformed /shims/stock/0/count"}},
	{"more shims than there are", "job.json", with("/shims/stock/0/count", `"999999999"`), []string{"out_of_range /shims/stock/0/count"}},
	{"none in a pack", "job.json", with("/single_feet/feet/0/pack/1/count", `"0"`), []string{"missing /single_feet/feet/0/pack/1/count"}},
	{"pack too high", "job.json", with("/single_feet/feet/0/pack/1/count", `"9999"`), []string{"out_of_range /single_feet/feet/0/pack"}},
	{"shim in a pack below zero, no box", "job.json", both(without("/shims"), with("/single_feet/feet/0/pack/1/marked", `"-1 mm"`)), []string{"out_of_range /single_feet/feet/0/pack/1/marked"}},
	{"no pieces allowed", "job.json", with("/shims/pieces", `"0"`), []string{"out_of_range /shims/pieces"}},
	{"seventeen pieces allowed", "job.json", with("/shims/pieces", `"17"`), []string{"out_of_range /shims/pieces"}},
	{"error of zero", "job.json", with("/shims/error", `"0 mm"`), []string{"out_of_range /shims/error"}},
	{"keep below zero", "job.json", with("/shims/keep", `"-1 mm"`), []string{"out_of_range /shims/keep"}},

	// The readings.
	{"no method", "job.json", without("/found/reverse"), []string{"missing /found"}},
	{"no method left", "job.json", without("/left/reverse"), []string{"missing /left"}},
	{"two methods", "job.json", with("/found/face_face", `{"at_stationary": {"diameter": "1 mm", "readings": []}, "at_movable": {"diameter": "1 mm", "readings": []}}`), []string{"conflict /found"}},
	{"another method left", "testdata/spacer.json", both(with("/left", `{}`), with("/left/rim_gap", `{"carrier": "movable", "rim": {"sag": "0 mm", "readings": []}, "gap": {"diameter": "9 mm", "readings": []}}`)),
		[]string{"missing /tape/stationary_rim", "missing /left/rim_gap/rim/readings", "missing /left/rim_gap/gap/readings", "conflict /left/rim_gap"}},
	{"sag below zero", "job.json", both(without(sweep+"/mandrel"), with(sweep+"/sag", `"-0.04 mm"`)), []string{"out_of_range " + sweep + "/sag"}},
	{"mandrel upside down", "job.json", with(sweep+"/mandrel/at_6", `"0.08 mm"`), []string{"out_of_range " + sweep + "/mandrel"}},
	{"sag forgotten", "job.json", without(sweep + "/mandrel"), []string{"missing " + sweep + "/sag"}},
	{"sag told twice", "job.json", with(sweep+"/sag", `"0.04 mm"`), []string{"conflict " + sweep + "/mandrel"}},
	{"no readings", "job.json", with(sweep+"/readings", `[]`), []string{"missing " + sweep + "/readings"}},
	{"one reading", "job.json", with(sweep+"/readings", `[{"at": "12:00", "value": "0 mm"}]`), []string{"missing " + sweep + "/readings"}},
	{"two readings", "job.json", with(sweep+"/readings", `[{"at": "12:00", "value": "0 mm"}, {"at": "3:00", "value": "0 mm"}]`), []string{"missing " + sweep + "/readings"}},
	{"position doubled", "job.json", with(sweep+"/readings/1/at", `"9:00"`), []string{"duplicate " + sweep + "/readings/3/at"}},
	{"position between", "job.json", with(sweep+"/readings/1/at", `"4:00"`), []string{"out_of_range " + sweep + "/readings/1/at"}},
	{"readings in part with a doubt", "job.json", without(sweep + "/u/reading"), []string{"conflict /found/reverse"}},
	{"doubt that is not used", "job.json", with(sweep+"/u/diameter", `"1 mm"`), []string{"conflict " + sweep + "/u/diameter"}},
	{"swept circle zero", "testdata/spacer.json", with("/found/face_face/at_movable/diameter", `"0 mm"`), []string{"missing /found/face_face/at_movable/diameter"}},
	{"many of what it says", "testdata/alignment-alone.json", both(
		with("/tape/feet/0/at", `"100 mm"`), with("/coupling/diameter", `"-1 mm"`), with("/target/opening", `"1 mm"`),
		with(sweep+"/mandrel/at_6", `"1 mm"`), with("/left/reverse/carried_by_stationary/readings/2/at", `"5:00"`), with("/limits/return", `"-1 mm"`),
	), []string{
		"out_of_range /tape/feet/0/at", "missing /target/open_at", "out_of_range /coupling/diameter", "out_of_range " + sweep + "/mandrel",
		"out_of_range /limits/return", "out_of_range /left/reverse/carried_by_stationary/readings/2/at",
	}},
}

func trailing(text string) edit {
	return func(_ rapid.TB, doc []byte) []byte { return append(doc, text...) }
}

func leading(text string) edit {
	return func(_ rapid.TB, doc []byte) []byte { return append([]byte(text), doc...) }
}

func whole(text string) edit {
	return func(rapid.TB, []byte) []byte { return []byte(text) }
}

func TestRefusals(t *testing.T) {
	t.Parallel()
	for _, row := range refusals {
		t.Run(row.name, func(t *testing.T) {
			mustSolve(t, load(t, row.file)) // the twin
			_, err := outcome(row.edit(t, load(t, row.file)))
			if doc := row.edit(t, load(t, row.file)); json.Valid(doc) {
				checkPlaces(t, doc, err)
			}
			got := found(t, err)
			slices.Sort(got)
			want := slices.Sorted(slices.Values(row.want))
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("-want +got:\n%s", diff)
			}
		})
	}
}

// The edits that must not be refused, each near one that is.
func TestAccepted(t *testing.T) {
	rows := []struct {
		name, file string
		edit       edit
	}{
		{"white space behind", "job.json", trailing(" \n\t")},
		{"just not too long", "job.json", func(t rapid.TB, doc []byte) []byte {
			return append(doc, bytesOf(' ', MaxSize-len(doc))...)
		}},
		{"sag of nothing", "job.json", both(without(sweep+"/mandrel"), with(sweep+"/sag", `"0 mm"`))},
		{"mandrel of nothing", "job.json", with(sweep+"/mandrel/at_6", `"0 mm"`)},
		{"mandrel from another zero", "job.json", both(with(sweep+"/mandrel/at_12", `"1.08 mm"`), with(sweep+"/mandrel/at_6", `"1 mm"`))},
		{"three readings", "job.json", with(sweep+"/readings", `[{"at": "3:00", "value": "1 mm"}, {"at": "6:00", "value": "0.84 mm"}, {"at": "9:00", "value": "1.29 mm"}]`)},
		{"positions in degrees", "job.json", with(sweep+"/readings/1/at", `"90 deg"`)},
		{"fractions of an inch", "job.json", with("/tape/feet/1/at", `"3'-7 11/16\""`)},
		{"rim at the centre", "job.json", with("/tape/stationary_rim", `"7 1/2 in"`)},
		{"no notes", "job.json", without("/notes")},
		{"no target", "testdata/alignment-alone.json", without("/target")},
		{"nothing left", "job.json", without("/left")},
		{"no doubts", "job.json", both(without(sweep+"/u"), without("/found/reverse/carried_by_stationary/u"))},
		{"300 characters", "job.json", with("/by", `"`+strings.Repeat("ü", 300)+`"`)},
		{"target open at 12", "testdata/alignment-alone.json", both(with("/target/opening", `"0.1 mm"`), with("/target/open_at", `"12:00"`))},
		{"the rule about flex planes", "job.json", with("/acceptance", `{"rule": "API RP 686"}`)},
		{"a sliding speed", "job.json", with("/acceptance", `{"sliding": "12 mm/s"}`)},
		{"a sliding speed, coupling short", "testdata/trouble.json", with("/acceptance", `{"sliding": "0.5 in/s"}`)},
		{"a table", "job.json", with("/acceptance", `{"table": {"source": "s", "rows": [{"speed": "1500 rpm", "flex": "0.5 mm/m"}]}}`)},
		{"limits as the planes are", "job.json", with("/acceptance/own/per_plane", `true`)},
		{"no shims", "job.json", without("/shims")},
		{"no single feet", "job.json", both(without("/single_feet"), without("/shims"))},
		{"feet that were not looked at", "job.json", with("/single_feet", `{"feet": [
			{"name": "a", "station": "inboard", "side": "three", "across": "0 mm"},
			{"name": "b", "station": "outboard", "side": "nine", "across": "9 mm"}]}`)},
		{"only the checks", "job.json", both(without("/single_feet"), without("/shims"), without("/growth"), without("/acceptance"), without("/speed"))},
		{"one check", "job.json", with("/checks", `{"spacing": {"wanted": "3 mm", "measured": "3 mm", "allowed": "0 mm"}}`)},
		{"no checks", "job.json", with("/checks", `{}`)},
		{"growth of one machine", "job.json", without("/growth/stationary")},
		{"a stepped shim", "job.json", both(without("/single_feet/feet/0/lift"), with("/single_feet/feet/0/gaps", `[
			{"away": "-40 mm", "to_three": "-30 mm", "gap": "0.02 mm"}, {"away": "-40 mm", "to_three": "30 mm", "gap": "0.02 mm"},
			{"away": "40 mm", "to_three": "-30 mm", "gap": "0.20 mm"}, {"away": "40 mm", "to_three": "30 mm", "gap": "0.20 mm"}]`))},
		{"packing that gives", "job.json", both(with("/single_feet/feet/0/lift", `"0.2 mm"`), with("/single_feet/feet/1/lift", `"0.2 mm"`), with("/single_feet/feet/2/lift", `"0.2 mm"`), with("/single_feet/feet/3/lift", `"0.2 mm"`))},
		{"a foot that goes down", "job.json", with("/single_feet/feet/1/lift", `"-0.2 mm"`)},
		{"the last way", "job.json", with("/single_feet/way", `"3"`)},
		{"runout beyond the table by a limit of one's own", "testdata/trouble.json", with("/checks/runout/1/diameter", `"700 mm"`)},
		{"limit of runout without a source", "job.json", with("/checks/runout/0/limit", `"0.01 mm"`)},
		{"negative droop of a face", "testdata/spacer.json", with("/found/face_face/at_stationary/sag", `"-0.02 mm"`)},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			r := mustSolve(t, row.edit(t, load(t, row.file)))
			for _, s := range []System{Metric, Inch} {
				checkPage(t, text(t, r, s))
			}
		})
	}
}

func bytesOf(b byte, n int) []byte { return []byte(strings.Repeat(string(b), n)) }
