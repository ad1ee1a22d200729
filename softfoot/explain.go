package softfoot

import "example.org/collinear/units"

// share is how much of the largest lift a pattern may miss, on top of the margin: a
// frame that sags hides of one foot what it shows of another. With half of it two
// feet across from each other on four pads are always explained, however unlike
// their lifts, and two of one end or side that lift alike never; from a quarter on a
// load on the machine explains them as well. More feet have more ways to be
// explained, so there a quarter is the end. Our own figures.
func (j *judgement) share() float64 {
	if j.plan.n == 4 {
		return 0.5
	}
	return loose
}

const loose = 0.25

// explain names every cause that fits what was seen, and what tells them apart.
func (j *judgement) explain() {
	j.Fits = []Explanation{}
	if j.Common.Above(j.limits.Common) {
		j.fit(Springing, j.all())
		j.next(RenewPacking, j.all())
	}
	j.explainByPads()
	if len(j.angular) > 0 {
		j.fit(Angular, j.angular)
	}
	if len(j.sunk) > 0 {
		j.fit(Induced, j.sunk)
		j.next(PartLoads, j.sunk)
	}
	if len(j.soft) == 1 {
		j.explainOne(j.soft[0])
	} else if len(j.soft) > 1 && !j.flat {
		j.unexplained(j.soft)
	}
}

// unexplained: what no pads explain is a load on the machine, or packing that gives.
func (j *judgement) unexplained(feet []int) {
	j.fit(Induced, feet)
	j.next(PartLoads, feet)
	j.fit(Springing, feet)
	j.next(RenewPacking, feet)
}

// explainByPads looks for heights of the pads that explain the lifts. Three feet
// always find their plane, so that pads explain nothing there.
func (j *judgement) explainByPads() {
	if len(j.soft) == 0 || j.plan.n == 3 {
		return
	}
	margin := mm(min(j.limits.Margin, j.limits.Act))
	pads := j.plan.pads(&j.excess, margin)
	miss := j.plan.miss(&pads, &j.excess, margin)
	if j.beyond(miss, j.share()) {
		return
	}
	j.flat = true
	j.pads = j.plan.unhidden(pads, mm(j.Worst))
	j.missed = j.plan.miss(&j.pads, &j.excess, margin)
	j.fit(Parallel, j.soft)
	if len(j.soft) > 1 && j.beyond(miss, loose) {
		j.fit(Induced, j.soft)
		j.next(PartLoads, j.soft)
	}
}

// beyond tells whether a pattern misses the lifts by more than the margin and a share
// of the largest excess.
func (j *judgement) beyond(miss, share float64) bool {
	return fromMM(miss).Above(j.limits.Margin + units.Length(share*float64(j.Worst)))
}

// explainOne: a foot that is soft alone may touch its pad with one edge only. With
// three feet it can only be that, a load or packing that gives; with more it may be
// short in a frame that yields, where pads do not explain it.
func (j *judgement) explainOne(i int) {
	alone := []int{i}
	if j.shortFoot() {
		j.fit(Parallel, alone)
	}
	if len(j.survey.Feet[i].Gaps) == 0 {
		j.fit(Angular, alone)
		j.next(FeelCorners, alone)
	}
	if j.plan.n == 3 {
		j.unexplained(alone)
	}
}

// shortFoot tells whether one foot is soft that pads do not explain: then its own
// excess goes under it.
func (j *judgement) shortFoot() bool { return len(j.soft) == 1 && j.plan.n > 3 && !j.flat }

func (j *judgement) fit(k Kind, feet []int) {
	j.Fits = append(j.Fits, Explanation{k, j.survey.names(feet)})
}

func (j *judgement) next(c Check, feet []int) {
	j.Next = append(j.Next, FollowUp{c, j.survey.names(feet)})
}

func (j *judgement) all() []int {
	list := make([]int, j.plan.n)
	for i := range list {
		list[i] = i
	}
	return list
}
