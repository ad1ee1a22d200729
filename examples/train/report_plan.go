package main

import (
	"fmt"
	"math"
	"slices"

	"example.org/collinear/align/train"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// plan shows one plan: in full, or, where another one takes its place, only how far
// it comes and what stands in its way.
func (p *report) plan(i int) {
	plan, stays := &p.Plans[i], ""
	if i == 0 {
		stays = string(p.Job.Reference)
	}
	heading := "every machine may move"
	if stays != "" {
		heading = stays + " stays"
	}
	p.section(fmt.Sprintf("Plan %d: %s", i+1, heading))
	p.reached(plan)
	p.inTheWay(plan, stays)
	if i == len(p.Plans)-1 {
		p.steps(plan)
		p.tied(stays)
		p.standings(plan, p.axis(stays))
	} else {
		p.para("So this is not the plan to carry out. The best that it could do:")
	}
	p.left(plan)
}

// reached says how far the plan comes.
func (p *report) reached(plan *train.Plan) {
	switch plan.Reach {
	case train.OnTarget:
		p.para("Every coupling comes to its target.")
	case train.WithinLimits:
		p.para(fmt.Sprintf("Not every coupling comes to its target, but every one within its limits: the worst to %s. No moves at these feet do better than %s.",
			times(plan.Ratio), times(plan.Bound)))
	default:
		p.para(fmt.Sprintf("OUT OF REACH. The best that these feet allow leaves the worst at %s; no moves at them do better than %s.",
			times(plan.Ratio), times(plan.Bound)))
	}
}

// unseen is too small a part of an opening to have a line of its own.
const unseen = units.Micrometre / 5

// inTheWay lists the limits to work on.
func (p *report) inTheWay(plan *train.Plan, stays string) {
	if plan.InTheWay == nil {
		return
	}
	p.para("What stands in the way, and how far it would have to open for every coupling to come within its limits" + p.inPlane() + ":")
	for _, b := range plan.InTheWay {
		whose := ""
		if b.Machine == stays {
			whose = " (which moves the machine that is to stay)"
		}
		p.point("-", fmt.Sprintf("%s %s, %s%s: %s; %s", b.Machine, b.Foot, p.side(b), whose,
			p.opening(b.Alone, "by %s alone", "not enough alone"),
			p.opening(b.Together.Round(unseen), "by %s if several are opened", "it need not where several do")))
	}
}

// inPlane says that openings speak of one plane, where each is planned by itself.
func (p *report) inPlane() string {
	for i := range p.Joints {
		if !p.Joints[i].Limits.PerPlane {
			return ""
		}
	}
	return " in its plane"
}

func (p *report) side(b train.Block) string {
	switch {
	case b.Plane == tolerance.Vertical && b.Side == train.High:
		return "upwards"
	case b.Plane == tolerance.Vertical:
		return "downwards"
	case b.Side == train.High:
		return "towards " + p.three
	}
	return "towards " + p.nine
}

// opening is a length that has to be there, and so rounded up to what is shown.
func (p *report) opening(l units.Length, words, none string) string {
	if l == 0 {
		return none
	}
	step := math.Pow10(p.digits)
	unit := units.Length(1) / units.Length(units.Length(1).In(p.length))
	return fmt.Sprintf(words, p.size(units.Length(math.Ceil(l.In(p.length)*step)/step)*unit))
}

// steps lists what to do, in order, but for moves that round to nothing.
func (p *report) steps(plan *train.Plan) {
	shown := slices.DeleteFunc(slices.Clone(plan.Steps), func(s train.Step) bool { return p.size(s.By) == p.size(0) })
	p.para(fmt.Sprintf("%d moves, %s in all, the largest %s. Made least: %s.", len(shown), p.size(plan.Travel), p.size(plan.Largest), workWords[plan.Work]))
	if !plan.Proven {
		p.para("That it is the least is not proven: the search was cut off.")
	}
	for i, s := range shown {
		p.point(fmt.Sprintf("%2d.", i+1), s.Text(p.style())+" ("+s.Because()+")")
	}
	if plan.Reach == train.OutOfReach {
		p.para("THIS DOES NOT BRING THE TRAIN WITHIN ITS LIMITS. Open what stands in the way, and plan anew.")
	}
}

// tied warns of what hangs on machines that were to stay.
func (p *report) tied(stays string) {
	if stays != "" || p.Job.Reference == "" {
		return
	}
	p.point("!", fmt.Sprintf("Moving %s loads what is tied to it: let go its pipes and conduits, pull its dowels, and make up new ones afterwards. Watch the pipes with dials as they are made up again.", p.Job.Reference))
	p.point("!", "Of a gearbox look at the contact of the teeth before it runs: a casing that is twisted by its feet shifts it. Raise both feet of a station alike.")
}

// standings shows where every foot is above the axis, before and after, and how far
// shafts go along the train.
func (p *report) standings(plan *train.Plan, axis string) {
	p.para("Centrelines against " + axis + ":")
	for i, s := range plan.Machines {
		for _, f := range p.Job.Machines[i].Feet {
			p.point("-", fmt.Sprintf("%s %s: before %s; after %s", s.Machine, f.Name, p.lies(s.Before, f), p.lies(s.After, f)))
		}
	}
	for _, s := range plan.Machines {
		if words := p.way(s.Shift, "on along the tape", "back along the tape", ""); words != "" {
			p.point("-", s.Machine+" tilts about its feet, and its shaft goes "+words)
		}
	}
}

// left shows what remains at each coupling.
func (p *report) left(plan *train.Plan) {
	for i, j := range plan.Joints {
		opens := p.way(j.Opens, "wider apart; check the spacing of the hubs", "closer together; check the spacing of the hubs", "as far apart as before")
		p.para("Left at the " + j.Coupling + ", less what is wanted there; its shafts " + opens + ":")
		p.lie("off by", j.After)
		p.verdict(i, j.Verdict)
	}
}
