package train

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// Pack is what lies under one single foot of a station now, for one the left or the
// right.
type Pack struct {
	Name string        `json:"name"`          // no other pack of the station has it
	Now  []shims.Piece `json:"now,omitempty"` // none: the foot stands on its base
}

// ShimPlan is a plan whose heights are laid from shims that are there.
type ShimPlan struct {
	// Plan is where the stacks lead. Its vertical moves are what the stacks come to,
	// and its Ratio is the largest of its verdicts. InTheWay and Bound are those of the
	// plan that knows no shims (Bound at most the Ratio: a station between the ends of
	// its machine has more room here), and its Proven is that of the horizontal moves,
	// which are from there.
	Plan    Plan          `json:"plan"`
	Stacks  []shims.Stack `json:"stacks,omitempty"` // of every single foot that can go up or down, in the order of the train; Foot is "pump inboard left"
	Handled int           `json:"handled"`          // pieces that are taken out and put in, all together
	Proven  bool          `json:"proven"`           // nothing is better by the order of [Train.PlanShims]: the search came to its end
}

// PlanShims plans as [Train.Plan] does, and then chooses the heights anew from
// pieces that are there, for shims come in steps. Horizontal moves stay as planned,
// with w as their measure; that of the heights is the handling.
// Under every single foot of a station that can go up or down there is one of its
// packs ([Foot].Under), and all of them change by the same. A pack that lies there
// afterwards, changed or not, keeps to [shims.Rule].Pieces and Keep, and is
// [shims.Thickest] at most; pieces come from the stock and from all that lies under
// such feet now, for what comes out of one foot may go under another. Limits of
// stations are kept. A station that is fixed and the reference stay as they are, and
// so do their packs.
//
// A machine with more than two stations turns as its two outermost do; the heights
// of the others come within [shims.Rule].Error of the line through these. For a
// machine on two stations the error does not count: what is left at the couplings
// does. The choice is the best by this order:
//
//  1. every coupling within its limits, both rounded to 1 nm as in a verdict;
//  2. the fewest pieces taken out and put in, over all feet;
//  3. the least worst ratio of what is left at a coupling to its limit;
//  4. the least sum of the squares of the changes of height at the stations;
//  5. the thickest piece of the first foot, then its next, then the next foot.
//
// Where no choice comes within all limits the third comes before the second, so that
// the nearest is told, with Reach OutOfReach and a warning. Pieces of the same
// thickness count as one: a foot keeps its own, and takes the others in the order of
// the stock, then of the packs.
//
// All heights are whole nanometres and exact. The search is exhaustive, within
// [shims.Rule].Nodes and, where nothing is found within the limits, as many again;
// [ShimPlan].Proven and a warning say where it was cut off.
//
// It refuses what [Train.Plan] does; a station that can go up or down and has no
// Under (Missing, at /machines/1/feet/0/under); packs without a name or with that of
// another of the station; what [shims.Choose] refuses in pieces, a stock and a rule,
// with paths like /machines/1/feet/0/under/0/now/0/count, /stock/3/marked and
// /rule/pieces; more than [shims.MostFeet] packs (OutOfRange, at /machines). Where
// no choice keeps the limits and the rule, whatever it leaves at the couplings, that
// is Unreachable, at /stock, and where a search that was cut off found none, at
// /rule/nodes.
func (t Train) PlanShims(w Work, stock shims.Stock, rule shims.Rule) (ShimPlan, error) {
	var faults check.Faults
	t.checkWork(&faults, w)
	t.checkShims(&faults, stock, rule)
	if err := faults.Err(); err != nil {
		return ShimPlan{}, err
	}
	p, ok := t.solved(w)
	if !ok {
		return ShimPlan{}, t.noAnswer()
	}
	s := newShimSearch(p, stock, withDefaults(rule))
	s.run()
	if s.best == nil {
		s.noChoice(&faults)
		return ShimPlan{}, faults.Err()
	}
	return s.shimPlan()
}

// withDefaults fills in what the rule leaves open.
func withDefaults(r shims.Rule) shims.Rule {
	if r.Error == 0 {
		r.Error = shims.DefaultError
	}
	if r.Pieces == 0 {
		r.Pieces = shims.DefaultPieces
	}
	if r.Nodes == 0 {
		r.Nodes = shims.DefaultNodes
	}
	return r
}

// noChoice says why there is no plan.
func (s *shimSearch) noChoice(faults *check.Faults) {
	var root check.Path
	if s.proven() {
		faults.Add(units.Unreachable, root.Field("stock"), nil, "pieces from which every foot can be laid: no choice keeps the limits of the stations and the rule")
		return
	}
	rule := root.Field("rule")
	faults.Add(units.Unreachable, rule.Field("nodes"), s.rule.Nodes, "a choice that keeps the limits of the stations and the rule: the search ended before it found one")
}
