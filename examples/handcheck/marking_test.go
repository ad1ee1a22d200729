package main

import (
	"strings"
	"testing"

	"example.org/collinear/align/sheet"
)

// Each row is the example with other answers; its marking has to hold the texts in
// their order. What is right and wrong was worked by hand from example.json: the dials
// stand at -60 and 60 mm, where the shaft lies 0.21 and 0.15 mm high, 0.14 and 0.10 mm
// towards 9 o'clock; the feet 260 and 760 mm on.
func TestMarking(t *testing.T) {
	for _, row := range []struct {
		name string
		edit edit
		code int
		want []string
		not  string
	}{
		{
			"all is right", answered("vertical.slope", "0.5 mm/m open at 12 o'clock", "vertical.offset", "0.18 mm high"), right,
			[]string{"7. vertical slope", "written 0.5 mm/m open at 12 o'clock", "expected 0.500 mm/m open at 12 o'clock", "follows, within", "36 lines of the working not on the sheet.", "Every line on the sheet follows."},
			"What explains it",
		},
		{
			"in the other system", answered("vertical.offset", "7.09 mil high"), right,
			[]string{"written 7.09 mil high", "expected 7.09 mil high", "follows, within"}, "DOES NOT FOLLOW",
		},
		{
			"a total not halved", answered("vertical.carried_by_stationary.total", "0.30 mm", "vertical.carried_by_stationary.offset", "0.30 mm",
				"vertical.carried_by_movable.offset", "0.21 mm", "vertical.slope", "0.75 mm/m"), wrong,
			[]string{
				"4. vertical offset", "written 0.30 mm", "expected 0.150 mm high", "DOES NOT FOLLOW", "7. vertical slope", "follows, within", "What explains it", "This accounts for what is wrong:",
				"- a total indicator reading is twice the offset: one was taken for the other, in line 4",
			}, "Each of these",
		},
		{
			"sag forgotten", answered("vertical.carried_by_stationary.total", "0.38 mm"), wrong,
			[]string{"written 0.38 mm", "expected 0.300 mm", "DOES NOT FOLLOW", "the sag of the bracket was left in, in line 3"}, "",
		},
		{
			// From the offsets as they are, the position at the feet inboard is 0.05 mm high, outboard 0.20 mm low.
			"feet exchanged", answered("vertical.foot.inboard.position", "-0.20 mm", "vertical.foot.outboard.position", "0.05 mm"), wrong,
			[]string{"What explains it", "- inboard and outboard were taken for one another, in lines 29"}, "",
		},
		{
			"several slips give these numbers", answered("vertical.slope", "1 mm/m"), wrong, // to one digit: 0.75 mm/m is one that it may stand for
			[]string{
				"Each of these accounts for what is wrong, and this sheet does not tell which it was:",
				"- a total indicator reading is twice the offset: one was taken for the other, in line 4", "To tell them apart, ask also for:", "4. vertical offset",
			}, "This accounts",
		},
		{
			"nothing explains it", answered("vertical.offset", "5 mm"), wrong,
			[]string{"expected 0.180 mm high", "DOES NOT FOLLOW", "No slip that is known here accounts for these lines: go through them together.", "8. vertical offset at the coupling centre [vertical.offset]"}, "This accounts",
		},
		{
			"a part of it is explained", answered("vertical.carried_by_stationary.total", "0.30 mm", "vertical.carried_by_stationary.offset", "0.30 mm", "horizontal.offset", "7 mm"), wrong,
			[]string{
				"No slip that is known here accounts for all of it. Each of these accounts for a part of what is wrong, and this sheet does not tell which it was:",
				"- a total indicator reading is twice the offset: one was taken for the other, in line 4", "which leaves line 14 unexplained",
			}, "No slip that is known here accounts for these",
		},
		{
			"two slips at once", answered("vertical.carried_by_stationary.total", "0.30 mm", "vertical.carried_by_stationary.offset", "0.30 mm", "vertical.carried_by_movable.total", "-0.42 mm",
				"vertical.carried_by_movable.offset", "0.21 mm", "vertical.slope", "0.75 mm/m", "vertical.offset", "0.255 mm", "horizontal.carried_by_movable.total", "0.28 mm",
				"horizontal.carried_by_movable.offset", "-0.14 mm", "horizontal.carried_by_stationary.total", "-0.20 mm", "horizontal.carried_by_stationary.offset", "-0.10 mm",
				"horizontal.slope", "0.333 mm/m", "horizontal.offset", "-0.10 mm"), wrong, // left at the dial, 60 mm off
			[]string{"This accounts for what is wrong:", "- a total indicator reading is twice the offset: one was taken for the other, in line 4", "and the offset was left where the dial stands, not carried to the coupling centre, in line 14"}, "which leaves",
		},
		{
			"a problem of one line", all(with("/problem", `{"sag": {"at12": "0 mm", "at6": "-0.08 mm"}}`), answered("sag", "0.08 mm")), wrong,
			[]string{"expected 0.040 mm", "This accounts for what is wrong:", "- a total indicator reading"}, "ask also",
		},
		{
			"only one answer is missing", all(without("/problem/job/feet"), without("/problem/job/movable"), without("/problem/job/stationary"), answered(
				"carried_by_stationary.miss", "0 mm", "carried_by_movable.miss", "0 mm",
				"vertical.carried_by_stationary.total", "0.30 mm", "vertical.carried_by_stationary.offset", "0.15 mm",
				"vertical.carried_by_movable.total", "-0.42 mm", "vertical.carried_by_movable.offset", "0.21 mm", "vertical.slope", "-0.5 mm/m", "vertical.offset", "0.18 mm",
				"horizontal.carried_by_stationary.total", "-0.20 mm", "horizontal.carried_by_stationary.offset", "-0.10 mm",
				"horizontal.carried_by_movable.total", "0.28 mm", "horizontal.carried_by_movable.offset", "-0.14 mm", "horizontal.slope", "0.33 mm/m")), right,
			[]string{"1 line of the working not on the sheet."}, "lines of the working not",
		},
		{
			"read off a drawing", all(answered("vertical.foot.outboard.correction", "raise 0.57 mm"), with("/drawn", `{"vertical.foot.outboard.correction": "0.062 mm"}`)), right,
			[]string{"written raise 0.57 mm", "expected raise 0.53 mm", "follows, within"}, "",
		},
		{
			"the same not off a drawing", answered("vertical.foot.outboard.correction", "raise 0.57 mm"), wrong, []string{"DOES NOT FOLLOW"}, "",
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := check(row.edit(t, builtIn))
			if got.code != row.code {
				t.Errorf("ends with %d, want %d: %s", got.code, row.code, got.stderr)
			}
			inOrder(t, got.stdout, row.want)
			if row.not != "" && strings.Contains(got.stdout, row.not) {
				t.Errorf("says %q:\n%s", row.not, got.stdout)
			}
		})
	}
}

// What is said depends on how far the explanations go and whether a line would tell
// them apart.
func TestLeadIn(t *testing.T) {
	halved := sheet.Explanation{Slips: []sheet.Slip{{Kind: sheet.TotalNotHalved, Steps: []string{"vertical.slope"}}}}
	partly := halved
	partly.Left = []string{"vertical.offset", "horizontal.offset"}
	wrong := []sheet.Judgement{{Step: "vertical.offset"}}
	for _, row := range []struct {
		name string
		m    sheet.Marking
		want string
	}{
		{"none", sheet.Marking{Lines: wrong}, "No slip that is known here accounts for these lines: go through them together. 8. vertical offset at the coupling centre [vertical.offset]"},
		{"one", sheet.Marking{Explanations: []sheet.Explanation{halved}, Ask: []string{"vertical.offset"}}, "This accounts for what is wrong: - a total indicator reading is twice the offset: one was taken for the other, in line 7"},
		{"a part", sheet.Marking{Explanations: []sheet.Explanation{partly}}, "No slip that is known here accounts for all of it. This accounts for a part of what is wrong: - a total indicator reading is twice the offset: one was taken for the other, in line 7 which leaves lines 8 and 14 unexplained"},
		{"a tie that no line parts", sheet.Marking{Explanations: []sheet.Explanation{halved, halved}}, "Each of these accounts for what is wrong, and this sheet does not tell which it was: - a total indicator reading is twice the offset: one was taken for the other, in line 7 - a total indicator reading is twice the offset: one was taken for the other, in line 7 No other line of the working would tell them apart."},
	} {
		d := mustRead(t, builtIn)
		d.marking = row.m
		var p page
		d.explained(&p)
		if got := flat(p.String()); got != "What explains it ---------------- "+row.want {
			t.Errorf("%s:\n%s", row.name, got)
		}
	}
}
