package main

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
			[]string{"OVER the limit of 0.060 mm", "right first", "Settle this before anything is moved, and read again: a shaft runs out by more than its limit."}, nil},
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
			[]string{"outboard aisle 0.26 mm up 0.24 mm more, soft", "(parallel)", "This way is planned below: 0.24 mm flat under outboard aisle.", "The shims of soft foot come on top"},
			[]string{"WAIT", "Look for soft foot"}},
		{"soft foot that they do not", "testdata/trouble.json", both(),
			[]string{"(induced)", "(springing)", "part piping, conduit and coupling", "No shims are advised. WAIT WITH THE ALIGNMENT", "again: a shaft runs out by more than its limit; the piping strains the machine; the spacing along the shafts is wrong; feet are soft, and shims do not cure it."},
			[]string{"planned", "come on top"}},
		{"soft foot on its limit", "job.json", both(with("/single_feet/feet/0/lift", `"0.07 mm"`), with("/single_feet/feet/3/lift", `"0.07 mm"`)),
			[]string{"0.05 mm more", "No foot is soft."}, []string{"planned"}},
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
			[]string{"outboard aisle (outboard, on the side of the aisle): 1.01 mm more of which alignment 0.78 mm more, soft foot 0.24 mm more", "comes to 2.050 mm, 0.016 mm too low", "comes to 2.000 mm, 0.021 mm too high", "No choice from this stock and these packs is better."}, []string{"NOT REACHED"}},
		{"shims that are not", "testdata/trouble.json", both(), []string{"NOT REACHED", "is the nearest", "Add to the stock: ", "D: 15.04 mil less than no shims is wanted", "raise the stationary machine"}, nil},
		{"no box", "job.json", without("/shims"), []string{"outboard aisle (outboard, on the side of the aisle): 1.01 mm more", "lies there 1.00 mm, 0.20 mm (measures 0.19 mm)"}, []string{"put in"}},

		{"growth that lets down", "job.json", with("/growth/movable/0/pieces/0/rise", `"-24 K"`), []string{"grows 0.08 mm down", "colder by 24 K"}, nil},
		{"growth of one machine", "job.json", without("/growth/stationary"), []string{"taken to stay as it is", "movable shaft has to lie"}, nil},
		{"growth measured, from the other end", "testdata/trouble.json", both(), []string{"grows 4.0 mil up, 1.0 mil towards the door", "Measured from cold to running."}, nil},
		{"growth of which nothing is stated", "testdata/mcmillan-8-3-growth.json", both(), []string{"Unknown is not zero"}, []string{"(u 0.0"}},

		{"no limits", "testdata/alignment-alone.json", both(), []string{"No tolerance is judged", "Nothing here is permission to run."}, []string{"ACCEPTANCE"}},
		{"limits", "job.json", both(), []string{"This is simple acceptance", "u stands beside it and decides nothing", "It is not permission to run.", "Nothing here is permission to run, within a limit or not", "Lindmoor works standard 12"}, []string{"No tolerance is judged"}},
		{"the rule", "job.json", with("/acceptance", `{"rule": "API RP 686"}`), []string{"0.5 mm/m at each flex plane", "cl. 5.4.6.2 (second-hand)", "of 0.50 mm/m"}, []string{"sliding"}},
		{"sliding at 12 mm/s, 75 mm from the axis at 1480 rpm: 12/(75 * 154.985) = 1.0324 mm/m", "job.json", with("/acceptance", `{"sliding": "12 mm/s"}`),
			[]string{"of 1.03 mm/m", "sliding at 12 mm/s on a circle of 150 mm at 1480 rpm", "(derived)"}, nil},
		{"the row of the next faster speed, each plane by itself", "testdata/trouble.json", both(),
			[]string{"vertical offset 8.3 mil of 2.0 mil, OVER (u 0.74 mil); 4.16 times the limit; this one governs", "vertical slope 0.20 mil/in of 0.50 mil/in, within", "each plane by itself", "Lindmoor works standard 12 (invented), 3rd issue", "Not all are within."}, nil},
		{"own limits, each plane by itself", "job.json", with("/acceptance/own/per_plane", `true`),
			[]string{"horizontal tilt at the stationary flex plane", "vertical tilt at the movable flex plane", "each plane by itself"}, []string{"both planes together"}},
		{"the row of the very speed", "testdata/trouble.json", with("/speed", `"1500 rpm"`), []string{"vertical offset 8.3 mil of 3.0 mil"}, nil},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			got := strings.Join(strings.Fields(text(t, mustSolve(t, row.edit(t, load(t, row.file))), asTheJob)), " ")
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
