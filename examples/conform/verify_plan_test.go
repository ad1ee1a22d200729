package main

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
)

// flat is what nothing is off in its plane.
const flat = `{"offset":"0 mm","slope":"0 mm/m"}`

// stopped is a motor whose moves m and n at 0 and 1 m take it up by 2n - m at the
// coupling. With m fixed and n stopped at 0.1 mm that is 0.2 of 1 mm, which leaves
// four times the limit. To leave 0.2 mm it takes 0.3 mm more at n, or 0.6 mm less
// at m; of the pump, whose line at the coupling is 1.5m - 0.5n, 0.4 mm less or 1.2 mm more.
func stopped() vector {
	return vector{
		Op: "plan",
		Input: json.RawMessage(`{"machines":[{"name":"M","feet":[{"name":"A","x":"0 m","vertical":{"at_least":"0 mm","at_most":"0 mm"}},{"name":"B","x":"1 m","vertical":{"at_most":"0.1 mm"}}]},
			{"name":"P","feet":[{"name":"A","x":"3 m"},{"name":"B","x":"5 m"}]}],
			"joints":[{"at":"2 m","found":{"horizontal":` + flat + `,"vertical":{"offset":"1 mm","slope":"0 mm/m"}},"limits":{"offset":"0.2 mm","per_plane":true}}],"reference":"P"}`),
		Result: json.RawMessage(`{}`), // the word is found out from the moves
		Verify: json.RawMessage(`{"ratio":"4","work":{"horizontal":"0 mm","vertical":"0.1 mm"},"squares":{"horizontal":"0","vertical":"0.01"},"in_the_way":[
			{"machine":"M","foot":"A","plane":"vertical","side":"low","alone":"0.6 mm"},{"machine":"M","foot":"B","plane":"vertical","side":"high","alone":"0.3 mm"},
			{"machine":"P","foot":"A","plane":"vertical","side":"low","alone":"0.4 mm"},{"machine":"P","foot":"B","plane":"vertical","side":"high","alone":"1.2 mm"},
			{"machine":"M","foot":"A","plane":"vertical","side":"high"}]}`),
	}
}

const (
	moveA = `{"machine":"M","foot":"A","horizontal":"0 mm","vertical":"0 mm"}`
	moveB = `{"machine":"M","foot":"B","horizontal":"0 mm","vertical":"0.1 mm"}`
	openA = `{"machine":"M","foot":"A","plane":"vertical","side":"low","alone":"0.6 mm"}`
	openB = `{"machine":"M","foot":"B","plane":"vertical","side":"high","alone":"0.3 mm"}`
	openP = `{"machine":"P","foot":"A","plane":"vertical","side":"low","alone":"0.4 mm"},{"machine":"P","foot":"B","plane":"vertical","side":"high","alone":"1.2 mm"}`

	stoppedBest = `{"reach":"out_of_reach","ratio":4,"moves":[` + moveA + `,` + moveB + `],"machines":[{"machine":"M"},{"machine":"P"}],"in_the_way":[` + openA + `,` + openB + `,` + openP + `]}`
)

// planRow is an answer that differs from the best in one place, and the place that
// is found fault with; what is none at all is a bad answer.
type planRow struct{ name, what, with, at, kind string }

// test tests it; good rows are those without a kind.
func (row planRow) test(t *testing.T, v vector, best string) {
	t.Helper()
	if !strings.Contains(best, row.what) {
		t.Fatalf("%s: nothing changes", row.name)
	}
	d := v.differences(json.RawMessage(strings.Replace(best, row.what, row.with, 1)))
	var o outcome
	o.differ(d)
	switch {
	case row.kind == "" && len(d) > 0:
		t.Errorf("%s: %+v", row.name, d)
	case row.kind != "" && (len(d) == 0 || d[0].At != row.at || o.Kind != row.kind):
		t.Errorf("%s: %s %+v, want %s at %s", row.name, o.Kind, d, row.kind, row.at)
	}
}

func TestVerifyPlan(t *testing.T) {
	for _, row := range []planRow{
		{"the best", "", "", "", ""},
		{"in another order and unit", moveA + "," + moveB, strings.Replace(moveB, "0.1 mm", "100 um", 1) + "," + moveA, "", ""},
		{"rounded to a nanometre", `"0.1 mm"`, `"0.1000009 mm"`, "", ""},
		{"openings to a micrometre", `"0.3 mm"`, `"0.301 mm"`, "", ""},
		{"an end that does not suffice", openP, openP + `,{"machine":"M","foot":"A","plane":"vertical","side":"high"}`, "", ""},
		{"an opening of nothing", openP, openP + `,{"machine":"M","foot":"A","plane":"vertical","side":"high","alone":""}`, "", ""},

		{"a limit broken by two nanometres", `"0.1 mm"`, `"0.100002 mm"`, "/moves/1/vertical", off},
		{"a fixed foot moved", `"vertical":"0 mm"`, `"vertical":"-0.000002 mm"`, "/moves/0/vertical", off},
		{"too little", `"0.1 mm"`, `"0.09 mm"`, "/moves", off},
		{"work for nothing", `"horizontal":"0 mm"`, `"horizontal":"0.01 mm"`, "/moves", off},
		{"more praise than due", `"ratio":4`, `"ratio":3.99`, "/ratio", off},
		{"less praise than due", `"ratio":4`, `"ratio":4.01`, "/ratio", off},
		{"the wrong word", `"out_of_reach"`, `"within_limits"`, "/reach", off},
		{"not on target", `"out_of_reach"`, `"on_target"`, "/reach", off},
		{"a way out unseen", openA + ",", ``, "/in_the_way", off},
		{"a way out without its opening", `,"alone":"0.6 mm"`, ``, "/in_the_way", off},
		{"too wide an opening", `"0.3 mm"`, `"0.302 mm"`, "/in_the_way/1/alone", off},
		{"too narrow an opening", `"0.3 mm"`, `"0.298 mm"`, "/in_the_way/1/alone", off},
		{"the other side", `"low"`, `"high"`, "/in_the_way", off},
		{"an end that does not suffice, opened", openP, openP + `,{"machine":"M","foot":"A","plane":"vertical","side":"high","alone":"1 mm"}`, "/in_the_way/4/alone", off},
		{"no way out", openP, openP + `,{"machine":"M","foot":"A","plane":"horizontal","side":"low","alone":"1 mm"}`, "/in_the_way/4/alone", off},

		{"a foot left out", moveA + ",", ``, "/moves", off},
		{"a foot twice", moveA, moveA + "," + moveA, "/moves", badAnswer},
		{"the reference moved", moveA, moveA + `,{"machine":"P","foot":"A","horizontal":"0 mm","vertical":"0 mm"}`, "/moves/1", off},
		{"no such machine", moveA, moveA + `,{"machine":"Q","foot":"A","horizontal":"0 mm","vertical":"0 mm"}`, "/moves/1", badAnswer},
		{"half a move", `,"vertical":"0.1 mm"`, ``, "/moves/1", badAnswer},
		{"a move that is no length", `"0.1 mm"`, `"up"`, "/moves", badAnswer},
		{"a move that is a slope", `"0.1 mm"`, `"0.1 mm/m"`, "/moves", badAnswer},
		{"no ratio", `"ratio":4,`, ``, "/ratio", badAnswer},
		{"a ratio in words", `"ratio":4`, `"ratio":"4"`, "", badAnswer},
		{"another word", `"out_of_reach"`, `"far"`, "/reach", badAnswer},
		{"an end twice", openA, openA + "," + openA, "/in_the_way/1", badAnswer},
		{"an end of both planes", `"plane":"vertical"`, `"plane":"both"`, "/in_the_way/0", badAnswer},
		{"an end of no side", `"low"`, `"up"`, "/in_the_way/0", badAnswer},
		{"an end of no foot", `"foot":"A","plane"`, `"foot":"C","plane"`, "/in_the_way/0", badAnswer},
		{"an opening that is no length", `"0.6 mm"`, `"wide"`, "/in_the_way", badAnswer},
		{"a machine twice", `{"machine":"P"}`, `{"machine":"M"}`, "/machines/1", badAnswer},
		{"a machine of another train", `{"machine":"P"}`, `{"machine":"Q"}`, "/machines/1", badAnswer},
	} {
		row.test(t, stopped(), stoppedBest)
	}
}

// TestVerifyThreeFeet tests a motor on three feet that the crew saw from the other end:
// found less target stands 0.1 mm high at 3 m for the last machine, rising by 0.2 mm/m, to which
// the motor comes by -0.5, -0.3 and -0.1 mm. Its shaft is 0.5 m above its feet.
func TestVerifyThreeFeet(t *testing.T) {
	v := vector{
		Op: "plan",
		Input: json.RawMessage(`{"machines":[{"name":"M","height":"500 mm","feet":[{"name":"A","x":"0 m"},{"name":"C","x":"2 m"},{"name":"B","x":"1 m"}]},{"name":"P"}],
			"joints":[{"at":"3 m","seen_from":"first","found":{"horizontal":{"offset":"0.1 mm","slope":"0.1 mm/m"},"vertical":{"offset":"-0.3 mm","slope":"0.2 mm/m"}},
			"target":{"horizontal":{"offset":"0.1 mm","slope":"0.1 mm/m"},"vertical":{"offset":"-0.2 mm","slope":"0 mm/m"}},"limits":{"slope":"0.1 mm/m"}}],"reference":"P"}`),
		Result: json.RawMessage(`{}`),
		Verify: json.RawMessage(`{"ratio":"0","work":{"horizontal":"0 mm","vertical":"0.9 mm"},"squares":{"horizontal":"0","vertical":"0.35"}}`),
	}
	const best = `{"reach":"on_target","ratio":0,"moves":[{"machine":"M","foot":"A","horizontal":"0 mm","vertical":"-0.5 mm"},{"machine":"M","foot":"B","horizontal":"0 mm","vertical":"-0.3 mm"},
		{"machine":"M","foot":"C","horizontal":"0 mm","vertical":"-0.1 mm"}],"machines":[{"machine":"M","shift":"-0.1 mm"}]}`
	for _, row := range []planRow{
		{"the best", "", "", "", ""},
		{"rounded", `"-0.3 mm"`, `"-0.3000009 mm"`, "", ""},
		{"within a nanometre of a line", `"-0.3 mm"`, `"-0.3000018 mm"`, "", ""},
		{"bent", `"-0.3 mm"`, `"-0.300003 mm"`, "/moves", off},
		{"bent by much", `"-0.3 mm"`, `"-0.2 mm"`, "/moves", off},
		{"another slope", `"-0.5 mm"`, `"-0.7 mm"`, "/moves", off},
		{"called by another word", `"on_target"`, `"out_of_reach"`, "/reach", off},
		{"the shaft goes the other way", `"-0.1 mm"}]}`, `"0.1 mm"}]}`, "/machines/0/shift", off},
		{"no shift", `,"shift":"-0.1 mm"`, ``, "/machines", badAnswer},
		{"no machines", `,"machines":[{"machine":"M","shift":"-0.1 mm"}]`, ``, "/machines", badAnswer},
	} {
		row.test(t, v, best)
	}
}

// TestVerifySpacer tests a train that nothing can move, 0.03 and 0.04 mm off at a
// spacer of 0.5 m: the tilts are 0.11 and 0.08 mm/m at the one flex plane, 0.01 and 0.08 at the other.
func TestVerifySpacer(t *testing.T) {
	v := vector{
		Op: "plan",
		Input: json.RawMessage(strings.ReplaceAll(`{"machines":[{"name":"M"},{"name":"P","feet":[{"name":"A","x":"3 m","horizontal":FIXED,"vertical":FIXED},{"name":"B","x":"5 m","horizontal":FIXED,"vertical":FIXED}]}],
			"joints":[{"at":"2 m","found":{"horizontal":{"offset":"0.03 mm","slope":"0.1 mm/m"},"vertical":{"offset":"0.04 mm","slope":"0 mm/m"}},
			"coupling":{"span":"0.5 m"},"limits":{"flex":"0.2 mm/m","offset":"0.001 mm"}}],"reference":"M"}`, "FIXED", `{"at_least":"0 mm","at_most":"0 mm"}`)),
		Result: json.RawMessage(`{}`),
		Verify: json.RawMessage(`{"ratio":"0.6800735","work":{"both":"0 mm"},"squares":{"both":"0"}}`),
	}
	const best = `{"reach":"within_limits","ratio":0.6800735,"moves":[{"machine":"P","foot":"A","horizontal":"0 mm","vertical":"0 mm"},{"machine":"P","foot":"B","horizontal":"0 mm","vertical":"0 mm"}]}`
	for _, row := range []planRow{
		{"the best", "", "", "", ""},
		{"plane by plane", `0.6800735`, `0.55`, "/ratio", off},
		{"the other flex plane", `0.6800735`, `0.4031129`, "/ratio", off},
		{"on target", `"within_limits"`, `"on_target"`, "/reach", off},
		{"out of reach", `"within_limits"`, `"out_of_reach"`, "/reach", off},
		{"in the way of nothing", `"ratio"`, `"in_the_way":[{"machine":"P","foot":"A","plane":"vertical","side":"low","alone":"1 mm"}],"ratio"`, "/in_the_way/0/alone", off},
	} {
		row.test(t, v, best)
	}
	v.Verify = json.RawMessage(strings.Replace(string(v.Verify), "0.68", "0.7", 1))
	planRow{"better than the best", "", "", "/moves", off}.test(t, v, best)
}

// TestVerifyWork tests each measure of work on two machines 0.2 mm apart. The line that
// passes 0, 0, 0.2 and 0.2 mm at 0, 1, 2 and 3 m with the least largest distance does so by
// 0.05 mm on alternate sides (Chebyshev's theorem). That of the least sum goes from the first to the
// last, which are also as few as can be; two others would do, but with larger squares.
func TestVerifyWork(t *testing.T) {
	answers := map[string]string{
		"largest_move": answerUp("-0.05", "0.05", "-0.05", "0.05"),
		"total_travel": answerUp("0", "0.0666666666666667", "-0.0666666666666667", "0"),
		"neither":      answerUp("0", "0", "-0.2", "-0.2"),
	}
	best := map[string]string{
		"largest_move": `{"ratio":"0","work":{"horizontal":"0 mm","vertical":"0.05 mm"},"squares":{"vertical":"0.01"}}`,
		"total_travel": `{"ratio":"0","work":{"horizontal":"0 mm","vertical":"0.133333333333333 mm"},"squares":{"vertical":"0.00888888888889"}}`,
		"fewest_feet":  `{"ratio":"0","work":{"horizontal":"0","vertical":"2"},"squares":{"vertical":"0.00888888888889"}}`,
	}
	least := map[string]string{"largest_move": "largest_move", "total_travel": "total_travel", "fewest_feet": "total_travel"}
	for work, verify := range best {
		v := vector{
			Op: "plan",
			Input: json.RawMessage(`{"machines":[{"name":"M","feet":[{"name":"A","x":"0 m"},{"name":"B","x":"1 m"}]},{"name":"P","feet":[{"name":"A","x":"2 m"},{"name":"B","x":"3 m"}]}],
				"joints":[{"at":"1.5 m","found":{"horizontal":` + flat + `,"vertical":{"offset":"0.2 mm","slope":"0 mm/m"}},"limits":{"offset":"0.05 mm"}}],"work":"` + work + `"}`),
			Result: json.RawMessage(`{}`), Verify: json.RawMessage(verify),
		}
		for of, answer := range answers {
			if d := v.differences(json.RawMessage(answer)); (len(d) == 0) != (of == least[work]) {
				t.Errorf("%s for %s: %+v", of, work, d)
			}
		}
		v.Verify = json.RawMessage(strings.Replace(verify, `"squares":{"vertical":"0.`, `"squares":{"vertical":"0.00`, 1))
		planRow{work + ", squares", "", "", "/moves", off}.test(t, v, answers[least[work]])
	}
}

// TestVerifyFewestFeet tests that moves are counted, of whatever size they are.
func TestVerifyFewestFeet(t *testing.T) {
	v := vector{
		Op: "plan",
		Input: json.RawMessage(`{"machines":[{"name":"M","feet":[{"name":"A","x":"0 m"},{"name":"B","x":"1 m"}]},{"name":"P"}],
			"joints":[{"at":"2 m","found":{"horizontal":` + flat + `,"vertical":{"offset":"0.4 mm","slope":"0 mm/m"}},"limits":{"offset":"0.2 mm","per_plane":true}}],"reference":"P","work":"fewest_feet"}`),
		Result: json.RawMessage(`{}`),
	}
	answer := `{"reach":"on_target","ratio":0,"moves":[` + moveA + `,` + moveB + `]}`
	answer = strings.NewReplacer(`"vertical":"0 mm"`, `"vertical":"0.4 mm"`, "0.1 mm", "0.4 mm").Replace(answer)
	for least, kind := range map[string]string{"2": "", "1": off} {
		v.Verify = json.RawMessage(`{"ratio":"0","work":{"horizontal":"0","vertical":"` + least + `"}}`)
		planRow{least, "", "", "/moves", kind}.test(t, v, answer)
	}
	// A nanometre at either foot is more than one at the coupling, and than one in a metre.
	v.Verify = json.RawMessage(`{"ratio":"0"}`)
	planRow{"rounded", `"0.4 mm"},`, `"0.3999991 mm"},`, "", ""}.test(t, v, strings.Replace(answer, `"0.4 mm"}]`, `"0.4000009 mm"}]`, 1))
}

// answerUp is an answer on target with these vertical moves in mm.
func answerUp(moves ...string) string {
	var list []string
	for i, foot := range []string{`"M","foot":"A"`, `"M","foot":"B"`, `"P","foot":"A"`, `"P","foot":"B"`} {
		list = append(list, `{"machine":`+foot+`,"horizontal":"0 mm","vertical":"`+moves[i]+` mm"}`)
	}
	return `{"reach":"on_target","ratio":0,"moves":[` + strings.Join(list, ",") + `]}`
}

// TestPlansOfTheAdapter tests on random trains that what the adapter says of its plans is
// what the moves, reckoned here by other means, say: limits kept, machines straight, the
// ratio, the word and the shifts. How good the plans are is for the vectors to tell.
func TestPlansOfTheAdapter(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 7))
	reached := map[string]int{}
	for range 60 {
		in := randomTrain(r)
		result, answered := honest(object{"seq": 1, "op": "plan", "input": in})["result"].(object)
		if !answered {
			t.Fatalf("refused: %v", in)
		}
		input, _ := json.Marshal(in)
		answer, _ := json.Marshal(result)
		v := vector{Op: "plan", Input: input, Result: json.RawMessage(`{}`), Verify: json.RawMessage(fmt.Sprintf(`{"ratio":"%v"}`, result["ratio"]))}
		for _, d := range v.differences(answer) {
			if !strings.HasPrefix(d.At, "/in_the_way") {
				t.Fatalf("%+v\n%s\n%s", d, input, answer)
			}
		}
		reached[result["reach"].(string)]++
	}
	if len(reached) != 3 {
		t.Errorf("only %v", reached)
	}
}

// randomTrain is an input of two to four machines with up to three feet each.
func randomTrain(r *rand.Rand) object {
	mm := func(x float64) string { return text(math.Round(x*1e6)/1e6, " mm") }
	line := func() object { return object{"offset": mm(r.NormFloat64() / 5), "slope": mm(r.NormFloat64()/5) + "/m"} }
	position := func() object { return object{"horizontal": line(), "vertical": line()} }
	limit := func() object {
		low, high := mm(-r.Float64()/2), mm(r.Float64()/2)
		return []object{{}, {"at_least": low}, {"at_most": high}, {"at_least": low, "at_most": high}, {"at_least": "0 mm", "at_most": "0 mm"}}[r.IntN(5)]
	}
	var machines, joints []any
	perPlane, x := r.IntN(2) == 0, 0.0
	for i := range 2 + r.IntN(3) {
		if i > 0 {
			joint := object{"at": mm(x), "seen_from": []string{"first", "last"}[r.IntN(2)], "found": position(), "target": position()}
			joint["limits"] = object{"offset": "0.1 mm", "slope": "0.2 mm/m", "per_plane": perPlane}
			if r.IntN(2) == 0 {
				joint["coupling"], joint["limits"] = object{"span": "200 mm"}, object{"flex": "0.3 mm/m", "per_plane": perPlane}
			}
			joints = append(joints, joint)
		}
		var feet []any
		for k := range 2 + r.IntN(2) {
			x += 150 + 500*r.Float64()
			feet = append(feet, object{"name": fmt.Sprint("F", k), "x": mm(x), "vertical": limit(), "horizontal": limit()})
		}
		x += 150
		machines = append(machines, object{"name": fmt.Sprint("M", i), "height": "300 mm", "feet": feet})
	}
	in := object{"machines": machines, "joints": joints, "work": []string{"total_travel", "largest_move"}[r.IntN(2)]}
	if r.IntN(3) > 0 {
		in["reference"] = fmt.Sprint("M", r.IntN(len(machines)))
	}
	return in
}
