package main

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
)

// planAnswer is an answer to the operation plan.
type planAnswer struct {
	Reach    string        `json:"reach"`
	Ratio    *float64      `json:"ratio"`
	Moves    []trainMove   `json:"moves"`
	Machines []machineGoes `json:"machines"`
	InTheWay []openedEnd   `json:"in_the_way"`
}

type trainMove struct {
	Machine    string `json:"machine"`
	Foot       string `json:"foot"`
	Horizontal string `json:"horizontal"`
	Vertical   string `json:"vertical"`
}

type machineGoes struct {
	Machine string `json:"machine"`
	Shift   string `json:"shift"`
}

// openedEnd is an end of a limit, and how far it has to open where that suffices.
type openedEnd struct {
	Machine string `json:"machine"`
	Foot    string `json:"foot"`
	Plane   string `json:"plane"`
	Side    string `json:"side"`
	Alone   string `json:"alone"`
}

func (e openedEnd) String() string {
	return fmt.Sprintf("machine %q, foot %q, %s, %s", e.Machine, e.Foot, e.Plane, e.Side)
}

// same tells whether two are one end.
func (e openedEnd) same(as openedEnd) bool {
	e.Alone, as.Alone = "", ""
	return e == as
}

// planBest is what the vector knows of the best plan. Work and squares are given for
// what is planned by itself: both planes, or each.
type planBest struct {
	Ratio    string            `json:"ratio"`
	Work     map[string]string `json:"work"`
	Squares  map[string]string `json:"squares"`
	InTheWay []openedEnd       `json:"in_the_way"`
}

// planJudge holds what a plan is verified with.
type planJudge struct {
	in     trainInput
	out    planAnswer
	best   planBest
	moves  [][]planePair // of each foot of each machine; none of the reference
	places [][]int       // where each stands in the answer
	l      lengths
}

// verifyPlan asks that a plan keeps the limits and leaves the machines straight, is
// as good as the best, and says of itself what its moves say.
func verifyPlan(v vector, result json.RawMessage) []difference {
	var p planJudge
	if err := decodeAll(v.Input, &p.in, result, &p.out, v.Verify, &p.best); err != nil {
		return junk("", misread(err), "a plan as the protocol has it")
	}
	if d := slices.Concat(p.readMoves(), p.readWords(), p.readEnds()); d != nil {
		return d
	}
	w, onTarget := p.in.after(p.moves, &p.l)
	d := slices.Concat(p.limitsKept(), p.straight(), p.ratio(w), p.reach(w, onTarget), p.work(), p.shifts(), p.inTheWay())
	return append(d, p.l.differences("")...)
}

// readMoves reads the moves of the answer: once for each foot of each machine but
// the reference.
func (p *planJudge) readMoves() (d []difference) {
	for i, m := range p.out.Moves {
		_, foot := p.in.find(m.Machine, m.Foot)
		switch at := fmt.Sprintf("/moves/%d", i); {
		case foot < 0:
			d = append(d, junk(at, fmt.Sprintf("machine %q, foot %q", m.Machine, m.Foot), "a foot of the train")...)
		case m.Horizontal == "" || m.Vertical == "":
			d = append(d, junk(at, "a move without horizontal or vertical", "both of them")...)
		case m.Machine == p.in.Reference:
			d = append(d, wrong(at, fmt.Sprintf("machine %q, foot %q", m.Machine, m.Foot), "no move of the reference: it stays")...)
		}
	}
	p.moves, p.places = make([][]planePair, len(p.in.Machines)), make([][]int, len(p.in.Machines))
	for i, m := range p.in.Machines {
		for k := range m.Feet {
			if m.Name != p.in.Reference {
				d = append(d, p.readMove(i, k)...)
			}
		}
	}
	return append(d, p.l.differences("/moves")...)
}

// readMove reads the move of one foot.
func (p *planJudge) readMove(machine, foot int) []difference {
	name, footName := p.in.Machines[machine].Name, p.in.Machines[machine].Feet[foot].Name
	var places []int
	for i, m := range p.out.Moves {
		if m.Machine == name && m.Foot == footName {
			places = append(places, i)
		}
	}
	this := fmt.Sprintf("machine %q, foot %q", name, footName)
	switch len(places) {
	case 0:
		return wrong("/moves", "nothing of "+this, "a move, be it zero")
	case 1:
		move := p.out.Moves[places[0]]
		p.moves[machine] = append(p.moves[machine], planePair{p.l.float(move.Horizontal), p.l.float(move.Vertical)})
		p.places[machine] = append(p.places[machine], places[0])
		return nil
	}
	return junk("/moves", fmt.Sprintf("%s %d times", this, len(places)), "each foot once")
}

// find returns where a foot stands in the input; foot is -1 where there is none.
func (in trainInput) find(machine, foot string) (m, f int) {
	for i := range in.Machines {
		if in.Machines[i].Name == machine {
			return i, slices.IndexFunc(in.Machines[i].Feet, func(f trainFoot) bool { return f.Name == foot })
		}
	}
	return -1, -1
}

// readWords asks for the words and the number that a plan has.
func (p *planJudge) readWords() (d []difference) {
	if !slices.Contains([]string{"on_target", "within_limits", "out_of_reach"}, p.out.Reach) {
		d = junk("/reach", fmt.Sprintf("%q", p.out.Reach), "on_target, within_limits or out_of_reach")
	}
	if p.out.Ratio == nil {
		d = append(d, junk("/ratio", "nothing", "a number")...)
	}
	for i, m := range p.out.Machines {
		isSame := func(n machineGoes) bool { return n.Machine == m.Machine }
		if at := fmt.Sprintf("/machines/%d", i); slices.IndexFunc(p.out.Machines, isSame) < i {
			d = append(d, junk(at, fmt.Sprintf("machine %q again", m.Machine), "each machine once")...)
		} else if !slices.ContainsFunc(p.in.Machines, func(n trainMachine) bool { return n.Name == m.Machine }) {
			d = append(d, junk(at, fmt.Sprintf("machine %q", m.Machine), "a machine of the train")...)
		}
	}
	return d
}

// readEnds asks that what is in the way is an end that there can be, each once.
func (p *planJudge) readEnds() (d []difference) {
	for i, e := range p.out.InTheWay {
		at := fmt.Sprintf("/in_the_way/%d", i)
		_, foot := p.in.find(e.Machine, e.Foot)
		switch {
		case foot < 0 || !slices.Contains(planePairNames[:], e.Plane) || e.Side != "low" && e.Side != "high":
			d = append(d, junk(at, e.String(), "a foot of the train, vertical or horizontal, low or high")...)
		case slices.IndexFunc(p.out.InTheWay, e.same) < i:
			d = append(d, junk(at, e.String()+" again", "each end once")...)
		}
		p.l.float(e.Alone)
	}
	return append(d, p.l.differences("/in_the_way")...)
}

// limitsKept asks that no foot goes beyond its limit.
func (p *planJudge) limitsKept() (d []difference) {
	for i, machine := range p.moves {
		for k, move := range machine {
			for plane, by := range move {
				ends := p.in.Machines[i].Feet[k].ends(plane)
				at := fmt.Sprintf("/moves/%d/%s", p.places[i][k], planePairNames[plane])
				if ends.AtLeast != "" && !(by >= p.l.float(ends.AtLeast)-nanometre) {
					d = append(d, wrong(at, inMM(by), ends.AtLeast+" at least")...)
				}
				if ends.AtMost != "" && !(by <= p.l.float(ends.AtMost)+nanometre) {
					d = append(d, wrong(at, inMM(by), ends.AtMost+" at most")...)
				}
			}
		}
	}
	return d
}

// straight asks that the feet of a machine move on one line.
func (p *planJudge) straight() (d []difference) {
	for i, m := range p.in.Machines {
		for plane, name := range planePairNames {
			if off := p.offLine(m.Feet, p.moves[i], plane); !(off <= nanometre*(1+1e-6)) {
				d = append(d, wrong("/moves", fmt.Sprintf("%s moves of machine %q %s off one line", name, m.Name, inMM(off)), "a rigid machine, to 1 nm")...)
			}
		}
	}
	return d
}

// offLine returns how far moves stand off the line that fits them best. Of three
// feet that is half of how far the middle one stands off the chord of the others;
// of more, the three where it is worst decide (Helly's theorem, from memory).
func (p *planJudge) offLine(feet []trainFoot, moves []planePair, plane int) (worst float64) {
	n := len(moves)
	for three := range n * n * n {
		a, b, c := three/n/n, three/n%n, three%n
		first, middle, last := p.l.float(feet[a].X), p.l.float(feet[b].X), p.l.float(feet[c].X)
		if !(first < middle && middle < last) {
			continue
		}
		chord := moves[a][plane] + (middle-first)/(last-first)*(moves[c][plane]-moves[a][plane])
		worst = max(worst, math.Abs(moves[b][plane]-chord)/2)
	}
	return worst
}

// ratio asks that no coupling is left worse than need be, and that the answer
// knows it.
func (p *planJudge) ratio(w worstItem) (d []difference) {
	best := p.number(p.best.Ratio)
	left := fmt.Sprintf("the worst ratio is %.9g (%s)", w.ratio, w.of)
	if !(w.ratio <= best*(1+thousandth)+1e-9+w.rounding) {
		d = wrong("/moves", left, fmt.Sprintf("%.9g at most", best))
	}
	if w.ratio < best*(1-thousandth)-1e-9-w.rounding {
		d = wrong("/moves", left, fmt.Sprintf("%.9g at least: nothing better keeps the limits", best))
	}
	if got := *p.out.Ratio; !(math.Abs(got-w.ratio) <= 1e-6*(1+w.ratio)+w.rounding) {
		d = append(d, wrong("/ratio", fmt.Sprint(got), fmt.Sprintf("%.9g, as the moves leave it (%s)", w.ratio, w.of))...)
	}
	return d
}

const thousandth = 1e-3

// reach asks that the word is that of the moves.
func (p *planJudge) reach(w worstItem, onTarget bool) []difference {
	is := map[string]bool{
		"on_target":     onTarget,
		"within_limits": w.ratio <= 1+1e-9+w.rounding,
		"out_of_reach":  w.ratio >= 1-1e-9-w.rounding,
	}
	if is[p.out.Reach] {
		return nil
	}
	return wrong("/reach", p.out.Reach, fmt.Sprintf("the word for moves that leave a worst ratio of %.9g (%s)", w.ratio, w.of))
}

// work asks that there is no more to do than need be, and that of plans with the
// same work it is the one of least squares.
func (p *planJudge) work() (d []difference) {
	for _, planes := range []string{"both", "horizontal", "vertical"} {
		want, given := p.best.Work[planes]
		if !given {
			continue
		}
		moves := p.sizes(planes)
		sum, squares := 0.0, 0.0
		for _, size := range moves {
			sum, squares = sum+size, squares+size*size
		}
		done, rounding, unit := sum, float64(len(moves))*nanometre, " mm"
		switch p.in.Work {
		case "largest_move":
			done, rounding = slices.Max(moves), nanometre
		case "fewest_feet":
			done, rounding, unit = float64(countAbove(moves, 1000*nanometre)), 0, " moves"
		}
		if !(done <= p.number(want)*(1+thousandth)+rounding) {
			d = append(d, wrong("/moves", fmt.Sprintf("work in %s: %.9g%s", planes, done, unit), want+" at most")...)
			continue
		}
		if most, given := p.best.Squares[planes]; given && !(squares <= p.number(most)*(1+10*thousandth)+1e-9+2*nanometre*sum) {
			d = append(d, wrong("/moves", fmt.Sprintf("sum of squares in %s: %.9g mm2", planes, squares), most+" at most")...)
		}
	}
	return d
}

// sizes lists how far each foot goes in the planes.
func (p *planJudge) sizes(planes string) []float64 {
	list := []float64{0}
	for _, machine := range p.moves {
		for _, move := range machine {
			for plane, by := range move {
				if planes == "both" || planes == planePairNames[plane] {
					list = append(list, math.Abs(by))
				}
			}
		}
	}
	return list
}

func countAbove(list []float64, least float64) (n int) {
	for _, x := range list {
		if x > least {
			n++
		}
	}
	return n
}

// number reads what the vector knows, a length in mm or a plain number.
func (p *planJudge) number(text string) float64 {
	q, err := readQuantity(text)
	if err != nil {
		p.l.err = err
		return math.NaN()
	}
	x, _ := q.value.Float64()
	return x
}

// shifts asks how far machines with a height go along x.
func (p *planJudge) shifts() (d []difference) {
	for i, m := range p.in.Machines {
		if m.Height == "" {
			continue
		}
		k := slices.IndexFunc(p.out.Machines, func(n machineGoes) bool { return n.Machine == m.Name })
		if k < 0 || p.out.Machines[k].Shift == "" {
			d = append(d, junk("/machines", fmt.Sprintf("no shift of machine %q", m.Name), "one for each machine that has a height")...)
			continue
		}
		by, rounding := m.moved(p.moves[i], 0, &p.l)
		height := p.l.float(m.Height) / 1000
		want, got := -height*by.numbers[3], p.l.float(p.out.Machines[k].Shift)
		if !(math.Abs(got-want) <= nanometre+height*rounding.numbers[3]) {
			d = append(d, wrong(fmt.Sprintf("/machines/%d/shift", k), inMM(got), inMM(want))...)
		}
	}
	return d
}

// inTheWay asks for the ends that suffice alone, and how far they have to open.
func (p *planJudge) inTheWay() (d []difference) {
	for _, want := range p.best.InTheWay {
		if want.Alone == "" {
			continue
		}
		i := slices.IndexFunc(p.out.InTheWay, want.same)
		switch open := p.l.float(want.Alone); {
		case i < 0 || p.out.InTheWay[i].Alone == "":
			d = append(d, wrong("/in_the_way", "nothing of "+want.String(), "it opens by "+inMM(open)+" alone")...)
		case !(math.Abs(p.l.float(p.out.InTheWay[i].Alone)-open) <= thousandth*open+1000*nanometre):
			d = append(d, wrong(fmt.Sprintf("/in_the_way/%d/alone", i), p.out.InTheWay[i].Alone, inMM(open)+" ("+want.String()+")")...)
		}
	}
	for i, got := range p.out.InTheWay {
		suffices := func(e openedEnd) bool { return e.same(got) && e.Alone != "" }
		if got.Alone != "" && !slices.ContainsFunc(p.best.InTheWay, suffices) {
			d = append(d, wrong(fmt.Sprintf("/in_the_way/%d/alone", i), got.Alone+" ("+got.String()+")", "nothing: it does not bring the train in alone")...)
		}
	}
	return d
}

func inMM(x float64) string { return fmt.Sprintf("%.9g mm", x) }
