package pumpset

import (
	"regexp"
	"strings"
	"testing"

	"example.org/collinear/softfoot"
	"example.org/collinear/tolerance"
	"github.com/google/go-cmp/cmp"
)

var pointer = regexp.MustCompile(`see ([A-Z, ]+)\.`)

// All that is not as it should be is among the warnings, once, with the section
// that tells more of it.
func TestWarnings(t *testing.T) {
	const checks, packs = ": see CHECKS BEFORE THE ALIGNMENT.", ": see SHIMS, FOOT BY FOOT."
	asItIs := func(*Record) {}
	rows := []struct {
		name, file string
		edit       edit
		spoil      func(*Record)
		want       []string
	}{
		{"all is well", "job.json", both(), asItIs, nil},
		{"no more than an alignment", "testdata/alignment-alone.json", both(), asItIs, nil},
		{"runout", "job.json", with("/checks/runout/1/reading", `"0.07 mm"`), asItIs, []string{"The movable shaft runs out by more than its limit" + checks}},
		{"strain", "job.json", with("/checks/strain/released/1/up", `"3.1 mil"`), asItIs, []string{"The piping strains the machine" + checks}},
		{"spacing", "job.json", with("/checks/spacing/measured", `"139 mm"`), asItIs, []string{"The spacing along the shafts is wrong" + checks}},
		{"soft foot that shims do not cure", "job.json", both(), func(r *Record) {
			r.SoftFoot.Fits[0].Kind, r.SoftFoot.Advice = softfoot.Induced, nil
		}, []string{"Feet are soft, and shims do not cure it: see SOFT FOOT."}},
		{"soft foot that they cure in part", "job.json", both(), func(r *Record) {
			r.SoftFoot.Fits = append(r.SoftFoot.Fits, softfoot.Explanation{Kind: softfoot.Springing, Feet: []string{"inboard wall"}})
		}, []string{"Feet are soft in part from what shims do not cure: see SOFT FOOT."}},
		{"one pack not reached", "job.json", both(), func(r *Record) { r.Packs.Choice.Stacks[2].Reached = false },
			[]string{"Fit none of the packs: what is wanted is not reached under outboard wall" + packs}},
		{"search not at its end", "job.json", both(), func(r *Record) { r.Packs.Choice.Proven = false },
			[]string{"The search for packs ended early, and there may be better ones" + packs}},
		{"packs that leave too much", "job.json", both(), func(r *Record) { r.Packs.Leave.Verdict.Outcome = tolerance.Outside },
			[]string{"The packs would leave the alignment outside its limits" + packs}},
		{"packs that leave what slides in two ways; what was left slides in one too many", "job.json",
			both(without("/coupling/span"), with("/acceptance", `{"sliding": "5.3 mm/s"}`)), asItIs, []string{
				"Offset and slope are each within, but both at once may be over the sliding speed" + packs,
				"The alignment as left is outside its limits: see ACCEPTANCE AS LEFT."}},
		{"what was left slides in two ways", "job.json", both(without("/coupling/span"), with("/acceptance", `{"sliding": "6.6 mm/s"}`)), asItIs,
			[]string{"Offset and slope are each within, but both at once may be over the sliding speed: see ACCEPTANCE AS LEFT."}},
		{"soft foot as left", "job.json", both(with("/single_feet/feet/0/lift_left", `"0.2 mm"`), with("/single_feet/feet/3/lift_left", `"0.2 mm"`)), asItIs,
			[]string{"Feet are still soft: see SOFT FOOT AS LEFT."}},
		{"outside as left", "job.json", both(), func(r *Record) { r.Left.Verdict.Outcome = tolerance.Outside },
			[]string{"The alignment as left is outside its limits: see ACCEPTANCE AS LEFT."}},
		{"readings", "job.json", with("/left/reverse/carried_by_movable/readings/4/value", `"0.05 mm"`), asItIs,
			[]string{"/left/reverse/carried_by_movable"}},
		{"much at once", "testdata/trouble.json", both(), asItIs, []string{
			"The stationary shaft runs out by more than its limit" + checks, "The piping strains the machine" + checks, "The spacing along the shafts is wrong" + checks,
			"Feet are soft, and shims do not cure it: see SOFT FOOT.", "Fit none of the packs: what is wanted is not reached under A, B, C, D" + packs,
			"The packs would leave the alignment outside its limits" + packs}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			r := mustSolve(t, row.edit(t, load(t, row.file)))
			row.spoil(&r)
			all := sections(text(t, r, AsTheJob))
			got := points(all["WARNINGS"])
			for i, line := range got {
				if i < len(row.want) && strings.HasPrefix(row.want[i], "/") {
					got[i] = line[:min(len(line), len(row.want[i]))] // the rest is the library's
				}
				if see := pointer.FindStringSubmatch(line); see != nil && len(all[see[1]]) == 0 {
					t.Errorf("there is no section %q", see[1])
				}
			}
			if diff := cmp.Diff(row.want, got); diff != "" {
				t.Errorf("-want +got:\n%s", diff)
			}
			if none := strings.Contains(strings.Join(all["WARNINGS"], " "), "None."); none != (row.want == nil) {
				t.Errorf("says that there are none: %t", none)
			}
		})
	}
}

// points joins the lines of each entry of a list.
func points(lines []string) []string {
	var all []string
	for _, line := range lines {
		if first, is := strings.CutPrefix(line, "  - "); is {
			all = append(all, first)
		} else if len(all) > 0 && strings.HasPrefix(line, "    ") {
			all[len(all)-1] += " " + strings.TrimSpace(line)
		}
	}
	return all
}
