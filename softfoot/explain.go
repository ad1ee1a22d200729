package softfoot

// share is how much of the largest lift a frame may stray from the pattern of a
// rigid one, on top of the margin: its own weight holds down what the pads would
// lift. Our own figure, chosen in simulation.
const share = 0.25

// explain names every cause that fits what was seen, and what tells them apart.
func (j *judgement) explain() {
	j.Fits = []Explanation{}
	if above(j.Common, j.limits.Common) {
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
	switch {
	case len(j.soft) == 1:
		j.explainOne(j.soft[0])
	case len(j.soft) > 1 && !j.flat:
		j.fit(Induced, j.soft)
		j.next(PartLoads, j.soft)
		j.fit(Springing, j.soft)
		j.next(RenewPacking, j.soft)
	}
}

// explainByPads looks for heights of the pads that explain the lifts. Three feet
// always find their plane, so that pads explain nothing there.
func (j *judgement) explainByPads() {
	if len(j.soft) == 0 || j.plan.n == 3 {
		return
	}
	margin := mm(j.limits.Margin)
	pads, miss := j.plan.pads(&j.excess, margin)
	if miss <= margin+float64(share*mm(j.Worst)) {
		j.pads, j.flat = pads, true
		j.fit(Parallel, j.soft)
	}
}

// explainOne: a foot that is soft alone is short in a frame that yields, or
// touches its pad with one edge only. With three feet it can only be the latter,
// or packing that gives.
func (j *judgement) explainOne(i int) {
	alone := []int{i}
	if j.alone() && !j.flat {
		j.fit(Parallel, alone)
	}
	if len(j.survey.Feet[i].Gaps) == 0 {
		j.fit(Angular, alone)
		j.next(FeelCorners, alone)
	}
	if j.plan.n == 3 {
		j.fit(Springing, alone)
		j.next(RenewPacking, alone)
	}
}

// alone tells whether one foot is soft and its own excess goes under it: with four
// feet (US Bureau of Reclamation, Maintenance Scheduling for Mechanical Equipment,
// FIST 4-1A, p. 17, read), and with more where pads do not explain that no other
// foot lifts.
func (j *judgement) alone() bool {
	return len(j.soft) == 1 && (j.plan.n == 4 || j.plan.n > 4 && !j.flat)
}

func (j *judgement) fit(k Kind, feet []int) {
	j.Fits = append(j.Fits, Explanation{k, j.survey.names(feet)})
}

func (j *judgement) next(c Check, feet []int) {
	j.Next = append(j.Next, Reading{c, j.survey.names(feet)})
}

func (j *judgement) all() []int {
	list := make([]int, j.plan.n)
	for i := range list {
		list[i] = i
	}
	return list
}
