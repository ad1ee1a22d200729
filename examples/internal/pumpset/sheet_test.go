package pumpset

import (
	"strings"
	"testing"
)

// What the sheet says of everything beside the alignment, in the crew's own words
// for the sides, with the reason why it has to be so.
func TestWordsOfTheSheet(t *testing.T) {
	rows := []struct {
		name, file string
		edit       edit
		say, not   []string
	}{
		{"runout on its limit is within: 0.060 mm over 50 up to 80 mm", "job.json", with("/checks/runout/0/reading", `"0.06 mm"`),
			[]string{"55 mm across: 0.06 mm over a full turn, within the limit of 0.060 mm (EASA AR100-2015"}, []string{"right first", "Settle"}},
		{"runout a nanometre over", "job.json", with("/checks/runout/0/reading", `"0.060001 mm"`),
			[]string{"OVER the limit of 0.060 mm", "right first", "Settle this before anything is moved, and read again: the stationary shaft runs out by more than its limit."}, nil},
		{"runout by the crew's limit, on it", "testdata/trouble.json", with("/checks/runout/1/reading", `"2 mil"`),
			[]string{"movable shaft, 2 in across: 2.0 mil over a full turn, within the limit of 2.00 mil (pump maker's manual)."}, []string{"movable shaft runs out"}},
		{"runout over the crew's limit, within the table's", "testdata/trouble.json", with("/checks/runout/1/reading", `"2.1 mil"`),
			[]string{"OVER the limit of 2.00 mil (pump maker's manual). Put the shaft", "the stationary shaft runs out by more than its limit; the movable shaft runs out by more than its limit;"}, nil},
		{"runout by a limit without a source", "testdata/trouble.json", without("/checks/runout/1/source"), []string{"within the limit of 2.00 mil (the job's own)."}, nil},
		{"strain on the published limit of 3 mil", "job.json", with("/checks/strain/released/0/up", `"-3 mil"`),
			[]string{"0.08 mm down, 0.01 mm towards the wall; within the limit of 0.076 mm", "Bloch and Geitner", "p. 173"}, []string{"Settle"}},
		{"strain over it sideways", "job.json", with("/checks/strain/released/0/to_three", `"-3.1 mil"`),
			[]string{"0.02 mm down, 0.08 mm towards the aisle; OVER", "Cure it at the pipe", "again: the piping strains the machine."}, nil},
		{"strain seen from the other end, the crew's limit", "testdata/trouble.json", both(),
			[]string{"3.5 mil up, 1.0 mil towards the boiler; OVER the limit of 2.00 mil", "that of pump maker's manual"}, []string{"Bloch"}},
		{"spacing on its limit", "job.json", with("/checks/spacing/measured", `"140.5 mm"`),
			[]string{"0.50 mm too wide; within the limit of 0.500 mm"}, []string{"Move the movable machine"}},
		{"spacing too wide", "job.json", with("/checks/spacing/measured", `"140.51 mm"`),
			[]string{"0.51 mm too wide; OVER", "along the shafts towards the stationary one, by 0.51 mm, before the alignment", "the spacing along the shafts is wrong"}, nil},
		{"spacing too narrow", "job.json", with("/checks/spacing/measured", `"139 mm"`),
			[]string{"1.00 mm too narrow; OVER", "along the shafts away from the stationary one, by 1.00 mm"}, nil},

		{"soft foot that shims cure", "job.json", both(),
			[]string{"outboard aisle 0.26 mm up 0.24 mm more, soft", "(parallel)", "Way 1, planned below: 0.24 mm flat under outboard aisle.", "one of inboard wall and outboard aisle stands on a low pad, or is short; their lifts do not tell which: flat shims (parallel)", "The shims of soft foot come on top"},
			[]string{"WAIT", "Look for soft foot"}},
		{"soft foot that they do not", "testdata/trouble.json", both(),
			[]string{"(induced)", "(springing)", "part piping, conduit and coupling", "No shims are advised. WAIT WITH THE ALIGNMENT", "again: the stationary shaft runs out by more than its limit; the piping strains the machine; the spacing along the shafts is wrong; feet are soft, and shims do not cure it."},
			[]string{"planned", "come on top"}},
		{"soft foot on its limit", "job.json", both(with("/single_feet/feet/0/lift", `"0.0708 mm"`), with("/single_feet/feet/3/lift", `"0.0708 mm"`)),
			[]string{"more than 0.05 mm (common practice", "0.05 mm more", "No foot is soft."}, []string{"planned"}},
		{"soft foot a nanometre over", "job.json", both(with("/single_feet/feet/0/lift", `"0.070801 mm"`), with("/single_feet/feet/3/lift", `"0.070801 mm"`)),
			[]string{"0.05 mm more, soft", "planned"}, nil},
		{"the second way", "job.json", with("/single_feet/way", `"2"`),
			[]string{"Way 1: 0.24 mm flat under outboard aisle.", "Way 2, planned below: 0.24 mm flat under inboard wall.", "0.12 mm up at inboard, neither up nor down at outboard", "put its number into the job"}, []string{"Way 1, planned"}},
		{"the third way", "job.json", with("/single_feet/way", `"3"`), []string{"Way 3, planned below: 0.12 mm flat under inboard wall, and 0.12 mm flat under outboard aisle."}, []string{"Way 1, planned"}},
		{"a foot that is soft alone", "job.json", with("/single_feet/feet/0/lift", `"0.03 mm"`), []string{"outboard aisle stands on a low pad, or is short: flat shims (parallel)"}, []string{"one of", "put its number"}},
		{"soft foot by the crew's own limit", "job.json", with("/single_feet/limit", `"0.24 mm"`), []string{"more than 0.24 mm above", "No foot is soft."}, []string{"planned"}},
		{"a stepped shim, thickest away from the coupling and at the wall", "job.json", both(without("/single_feet/feet/0/lift"), with("/single_feet/feet/0/gaps", `[
			{"away": "-40 mm", "to_three": "-30 mm", "gap": "0.02 mm"}, {"away": "-40 mm", "to_three": "30 mm", "gap": "0.08 mm"},
			{"away": "40 mm", "to_three": "-30 mm", "gap": "0.10 mm"}, {"away": "40 mm", "to_three": "30 mm", "gap": "0.16 mm"}]`)),
			[]string{"(angular)", "gap wider on one side by 0.14 mm", "steps from nothing to 0.14 mm under inboard wall, thickest at the end away from the coupling and on the side of the wall", "on top the stepped shim"}, nil},
		{"a stepped shim seen from the other end", "testdata/trouble.json", both(with("/single_feet/feet/2/gaps/1/gap", `"9 mil"`), with("/single_feet/feet/2/gaps/3/gap", `"9 mil"`)),
			[]string{"under C, thickest on the side of the boiler"}, nil},
		{"soft foot that shims cure in part", "testdata/trouble.json", both(with("/single_feet/feet/2/gaps/1/gap", `"9 mil"`), with("/single_feet/feet/2/gaps/3/gap", `"9 mil"`)),
			[]string{"(induced)", "Look at that first: these shims do not cure", "feet are soft in part from what shims do not cure."}, []string{"WAIT"}},
		{"feet still soft", "job.json", both(with("/single_feet/feet/0/lift_left", `"0.2 mm"`), with("/single_feet/feet/3/lift_left", `"0.2 mm"`)), []string{"again: feet are still soft."}, nil},
		{"feet not looked at", "job.json", both(without("/single_feet"), without("/shims")),
			[]string{"Look for soft foot, and take it out before the moves: it is not looked at here.", "Soft foot, growth along the shafts, and the tightness"}, []string{"SHIMS, FOOT"}},

		{"shims that are reached", "job.json", both(),
			[]string{"outboard aisle (outboard, on the side of the aisle): 1.02 mm more of which alignment 0.78 mm more, soft foot 0.24 mm more", "comes to 2.050 mm, 0.016 mm too low", "comes to 2.000 mm, 0.023 mm too high", "No choice from this stock and these packs is better."}, []string{"NOT REACHED", "FIT NONE", "ONLY ON THE TARGET", "to be cut"}},
		{"shims that are not", "testdata/trouble.json", both(), []string{"NOT REACHED", "FIT NONE OF THESE PACKS until this is settled: the stock does not reach what is wanted under A, B, C, D. What is wanted", "THESE HOLD ONLY ON THE TARGET, which the packs under A, B, C, D do not reach: do not look for them until that is settled. On the target", "is the nearest", "Add to the stock: 0.020 in; to be cut or made up: 88.92 mil, 84.96 mil, 50.00 mil.", "D: 15.04 mil less than no shims is wanted", "raise the stationary machine"}, nil},
		{"what the packs leave", "job.json", both(), []string{
			"As these packs leave it, if the feet are slid as told: off target up and down, 0.03 mm low at the coupling centre, climbs 0.04 mm/m; sideways, 0.01 mm towards the aisle, as the machine rolls",
			"0.41 times the limit", "0.52 times the limit; probability of being within it: 97 %; this one governs All would be within.", "go round the feet when the packs are in"}, nil},
		{"what the packs leave is too much", "job.json", both(with("/acceptance/own/flex", `"0.2 mm/m"`), without("/acceptance/confidence")), []string{"0.82 times the limit", "1.03 times the limit; probability of being within it: 47 %; this one governs NOT ALL WOULD BE WITHIN"}, nil},
		{"what the packs leave, without limits", "job.json", without("/acceptance"), []string{"As these packs leave it"}, []string{"would be within"}},
		{"what packs under two feet leave", "job.json", with("/single_feet", `{"height": "1 mm", "feet": [
			{"name": "a", "station": "inboard", "side": "three", "across": "0 mm"}, {"name": "b", "station": "outboard", "side": "nine", "across": "9 mm"}]}`),
			[]string{"is not forecast: that takes the height of the shaft, and three to eight single feet that do not stand in one line."}, []string{"As these packs leave it"}},
		{"no box", "job.json", without("/shims"), []string{"outboard aisle (outboard, on the side of the aisle): 1.02 mm more", "lies there 1.00 mm, 0.20 mm (measures 0.19 mm) in all 1.190 mm"}, []string{"put in", "As these packs leave it", "not forecast"}},

		{"growth that lets down", "job.json", with("/growth/movable/0/pieces/0/rise", `"-24 K"`), []string{"grows 0.08 mm down", "colder by 24 K"}, nil},
		{"growth of one machine", "job.json", without("/growth/stationary"), []string{"taken to stay as it is", "movable shaft has to lie"}, nil},
		{"growth measured, from the other end", "testdata/trouble.json", both(), []string{"grows 4.0 mil up, 1.0 mil towards the door", "Measured from cold to running."}, nil},
		{"growth of which nothing is stated", "testdata/mcmillan-8-3-growth.json", both(), []string{"Unknown is not zero"}, []string{"(u 0.0"}},
		{"growth of which one machine's is not stated", "job.json", both(without("/growth/movable/0/pieces/0/u"), without("/growth/movable/1/pieces/0/u")),
			[]string{"u is unknown: no uncertainty is stated for the supports of the movable machine. Unknown is not zero"}, []string{"supports of the stationary"}},
		{"growth of which the other's is not", "job.json", both(without("/growth/stationary/0/pieces/0/u"), without("/growth/stationary/1/pieces/0/u")),
			[]string{"stated for the supports of the stationary machine. Unknown"}, []string{"supports of the movable", "nor for"}},
		{"growth of which neither is", "job.json", both(without("/growth/movable/0/pieces/0/u"), without("/growth/movable/1/pieces/0/u"), without("/growth/stationary/0/pieces/0/u"), without("/growth/stationary/1/pieces/0/u")),
			[]string{"the supports of the stationary machine, nor for those of the movable machine. Unknown"}, nil},
		{"growth stated for one support of each", "job.json", both(without("/growth/movable/0/pieces/0/u"), without("/growth/stationary/1/pieces/0/u")),
			[]string{"what it does not state counts as exact"}, []string{"no uncertainty is stated"}},

		{"the inch sheet of a metric job", "job.json", with("/units", `"inch"`), []string{
			"across a diameter of 5.906 in. It has a spacer, 7.087 in from", "off the tape: 1/32 in.", "beside the hub, 2.165 in across", "5.5236 in measured, 5.5118 in wanted",
			"more than 2.0 mil (common practice", "across the coupling's 5.906 in", "12.205 in of grey cast iron, 18 °C cold", "grey cast iron: 10.44 um/m/K", "11.024 in of cast-iron frame, warmer by 24 K",
			"lies there 1.00 mm, 0.50 mm in all 59.06 mil", "comes to 80.71 mil"}, []string{"150 mm", "310 mm", "mil/in/°F", "1.97 mil"}},
		{"the metric sheet of an inch job", "testdata/trouble.json", with("/units", `"metric"`), []string{
			"across a diameter of 152.4 mm.", "63.5 mm across", "2.38 mm measured, 3.18 mm wanted", "more than 0.076 mm above", "279.4 mm of casing steel, warmer by 90 °F", "casing steel: 6.4e-6 1/°F, from"}, []string{"6 in"}},
		{"the inch sheet of an inch job", "testdata/trouble.json", both(), []string{"a diameter of 6 in.", "2 1/2 in across", "3/32 in measured, 1/8 in wanted", "more than 3 mil above", "11 in of steel, warmer by 70 °F", "steel: 11.34 um/m/K"}, nil},

		{"no limits", "testdata/alignment-alone.json", both(), []string{"No tolerance is judged", "Nothing here is permission to run."}, []string{"ACCEPTANCE"}},
		{"limits", "job.json", without("/acceptance/confidence"), []string{"All are within. Decided by simple acceptance; all limits are kept with a probability of at least 91 %.", "u and the probability stand beside it and decide nothing", "It is not permission to run.", "Nothing here is permission to run, within a limit or not", "Lindmoor works standard 12"}, []string{"No tolerance is judged"}},
		{"how sure it has to be", "job.json", both(), []string{"All are within. Decided by a probability of 90 %; all limits are kept with a probability of at least 91 %."}, []string{"simple acceptance", "NOT DECIDED"}},
		{"surer than was measured", "job.json", with("/acceptance/confidence", `"99 %"`), []string{
			"NOT DECIDED: what was measured is not sure enough", "Decided by a probability of 99 %; all limits are kept with a probability of at least 91 %.",
			"NOT SURE ENOUGH THAT ALL WOULD BE WITHIN", "It is not sure enough that the alignment as left is within its limits: see ACCEPTANCE AS LEFT."}, []string{"All are within."}},
		{"how sure it has to be, where nothing tells", "testdata/spacer.json", with("/acceptance", `{"rule": "API RP 686", "confidence": "90 %"}`), []string{"by simple acceptance, for the uncertainty is unknown; how probable it is that all limits are kept is not known"}, nil},
		{"the rule", "job.json", with("/acceptance", `{"rule": "API RP 686"}`), []string{"0.5 mm/m at each flex plane", "cl. 5.4.6.2 (second-hand)", "of 0.50 mm/m"}, []string{"sliding"}},
		{"sliding at 12 mm/s, 75 mm from the axis at 1480 rpm: 12/(75 * 154.985) = 1.0324 mm/m", "job.json", with("/acceptance", `{"sliding": "12 mm/s"}`),
			[]string{"of 1.03 mm/m", "sliding at 12 mm/s on a circle of 150 mm at 1480 rpm", "(derived)", "At its limit each flex plane by itself reaches 12 mm/s."}, []string{"up to the sum"}},
		// 8.77 mil off and 0.26 mil/in between the shafts rub at 68.8 and 6.3 mm/s, 76.2 mm from the axis at 308.9/s.
		{"sliding, each within and the sum over", "testdata/trouble.json", with("/acceptance", `{"sliding": "70 mm/s"}`),
			[]string{"0.98 times the limit", "0.09 times the limit", "At its limit each of the two by itself reaches 70 mm/s; both at once reach up to the sum.", "HERE THE SUM IS 1.07 TIMES THE LIMIT: each is within, but both at once may reach more than 70 mm/s. All are within."}, nil},
		{"sliding, the sum within", "testdata/trouble.json", with("/acceptance", `{"sliding": "80 mm/s"}`),
			[]string{"both at once reach up to the sum. All are within."}, []string{"HERE THE SUM"}},
		{"sliding, one of both over", "testdata/trouble.json", with("/acceptance", `{"sliding": "60 mm/s"}`),
			[]string{"both at once reach up to the sum. Not all are within."}, []string{"HERE THE SUM"}},
		{"the row of the next faster speed, each plane by itself", "testdata/trouble.json", both(),
			[]string{"vertical offset 8.3 mil of 2.0 mil, OVER (u 0.74 mil); 4.16 times the limit; probability of being within it: under 0.1 %; this one governs", "vertical slope 0.20 mil/in of 0.50 mil/in, within", "each plane by itself", "Lindmoor works standard 12 (invented), 3rd issue", "Not all are within."}, nil},
		{"own limits, each plane by itself", "job.json", with("/acceptance/own/per_plane", `true`),
			[]string{"horizontal tilt at the stationary flex plane", "vertical tilt at the movable flex plane", "each plane by itself"}, []string{"both planes together"}},
		{"the row of the very speed", "testdata/trouble.json", with("/speed", `"1500 rpm"`), []string{"vertical offset 8.3 mil of 3.0 mil"}, nil},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			got := strings.Join(strings.Fields(text(t, mustSolve(t, row.edit(t, load(t, row.file))), AsTheJob)), " ")
			for _, want := range row.say {
				if !strings.Contains(got, want) {
					t.Errorf("does not say %q:\n%s", want, got)
				}
			}
			for _, bad := range row.not {
				if strings.Contains(got, bad) {
					t.Errorf("says %q:\n%s", bad, got)
				}
			}
		})
	}
}
