package train

import (
	"strconv"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// shimPlan puts together where the best choice leads.
func (s *shimSearch) shimPlan() (ShimPlan, error) {
	p := s.planner
	for i := range s.stations {
		s.stations[i].by = s.best.changes[i]
	}
	for i := range s.machines {
		p.lines[i].Vertical = s.machines[i].line(s.heights(i))
	}
	plan := ShimPlan{
		Plan: Plan{
			Work: p.work, Ratio: s.best.ratio, Bound: min(p.bound, s.best.ratio), Proven: p.proven,
			Machines: p.standings(), InTheWay: p.blocks,
		},
		Stacks: s.stacks(s.best.packs), Handled: s.best.handled, Proven: s.proven(),
	}
	for i := range s.stations { // exact, also between the ends
		st := &s.stations[i]
		plan.Plan.Machines[st.machine].Feet[st.foot].By.Vertical = units.Length(st.by)
	}
	p.missed = true // until it is known what is left
	if !plan.Plan.finish(p) {
		return ShimPlan{}, p.train.noAnswer()
	}
	if onTarget(plan.Plan.Joints) {
		plan.Plan.Reach = OnTarget
	}
	if plan.Plan.Reach == OutOfReach {
		want := "a worst ratio of at most 1: no stacks come nearer that can be laid within the limits"
		if !plan.Proven {
			want = "a worst ratio of at most 1: the search was cut off before it found stacks that come nearer, if there are any"
		}
		plan.warn("/joints", units.Unreachable, number(s.best.ratio), want)
	}
	if !plan.Proven {
		plan.warn("/rule/nodes", units.Suspect, strconv.Itoa(s.rule.Nodes), "a choice that is proven the best: this one is not, because the search ended before; give it more nodes")
	}
	return plan, nil
}

func (s *ShimPlan) warn(path string, code units.Code, value, want string) {
	s.Plan.Warnings = append(s.Plan.Warnings, units.Fault{Code: code, Path: path, Value: value, Want: want})
}

// onTarget tells whether nothing is left at any coupling, to 1 nm and 1 nm over a
// metre.
func onTarget(joints []JointAfter) bool {
	for i := range joints {
		left := joints[i].After.Value
		for _, l := range [...]align.Line{left.Horizontal, left.Vertical} {
			if l.Offset.Round(tolerance.Resolution) != 0 || l.Slope.Over(units.Metre).Round(tolerance.Resolution) != 0 {
				return false
			}
		}
	}
	return true
}
