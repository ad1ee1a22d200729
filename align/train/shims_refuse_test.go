package train_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"example.org/collinear/align/train"
	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// shimJob is what PlanShims is given.
type shimJob struct {
	t     train.Train
	w     train.Work
	stock shims.Stock
	rule  shims.Rule
}

// soundShims is a pump 0.5 mm too low beside a motor that stays, with a box.
func soundShims() *shimJob {
	t := pair()
	for k := range t.Machines[1].Feet {
		t.Machines[1].Feet[k].Under = []train.Pack{
			{Name: "left", Now: []shims.Piece{{Marked: 2 * mm, Count: 1}}},
			{Name: "right", Now: []shims.Piece{{Marked: 2 * mm, Count: 1}}},
		}
	}
	return &shimJob{t: t, stock: shims.CommonMetric(8)}
}

func (j *shimJob) foot(k int) *train.Foot { return &j.t.Machines[1].Feet[k] }

func (j *shimJob) withoutPieces() {
	j.stock = nil
	for k := range 2 {
		for i := range j.foot(k).Under {
			j.foot(k).Under[i].Now = nil
		}
	}
}

func (j *shimJob) plan() (train.ShimPlan, error) { return j.t.PlanShims(j.w, j.stock, j.rule) }

// One thing wrong in a job that is sound otherwise: the fault, and a twin that is
// nearly the same and passes.
func TestPlanShimsRefuses(t *testing.T) {
	const under = "/machines/1/feet/0/under"
	nan := units.Length(math.NaN())
	many := func(n int) func(*shimJob) {
		return func(j *shimJob) {
			j.foot(0).Under = nil
			for i := range n {
				j.foot(0).Under = append(j.foot(0).Under, train.Pack{Name: fmt.Sprint(i)})
			}
			j.rule.Nodes = 3000 // so many feet need pieces enough, or nothing is done
		}
	}
	lift := func(by, least units.Length) func(*shimJob) { // a pump on packs of 900 mm
		return func(j *shimJob) {
			j.t.Joints[0].Found = height(-by, 0)
			j.stock = shims.Stock{{Marked: by, Count: 4}}
			for k := range 2 {
				j.foot(k).Vertical = train.AtLeast(least)
				for i := range j.foot(k).Under {
					j.foot(k).Under[i].Now = []shims.Piece{{Marked: 900 * mm, Count: 1}}
				}
			}
		}
	}
	rows := []struct {
		name      string
		bad, twin func(*shimJob)
		want      string
	}{
		{"no packs", func(j *shimJob) { j.foot(0).Under = nil }, func(j *shimJob) { j.foot(0).Under, j.foot(0).Vertical = nil, train.Fixed() }, "missing " + under},
		{"no packs under one with limits", func(j *shimJob) { j.foot(0).Under, j.foot(0).Vertical = nil, train.AtLeast(0) }, func(j *shimJob) { j.foot(0).Vertical = train.AtLeast(0) }, "missing " + under},
		{"a pack without a name", func(j *shimJob) { j.foot(0).Under[1].Name = "" }, func(j *shimJob) { j.foot(0).Under[1].Name = "r" }, "missing " + under + "/1/name"},
		{"two of one name", func(j *shimJob) { j.foot(0).Under[1].Name = "left" }, func(j *shimJob) { j.foot(0).Under[1].Name = "Left" }, "duplicate " + under + "/1/name"},
		{"no count", func(j *shimJob) { j.foot(0).Under[0].Now[0].Count = 0 }, func(j *shimJob) { j.foot(0).Under[0].Now[0].Count = 2 }, "missing " + under + "/0/now/0/count"},
		{"a count below zero", func(j *shimJob) { j.foot(1).Under[1].Now[0].Count = -1 }, func(j *shimJob) { j.foot(1).Under[1].Now[0].Count = 1 }, "out_of_range /machines/1/feet/1/under/1/now/0/count"},
		{"no thickness", func(j *shimJob) { j.foot(0).Under[0].Now[0].Marked = 0 }, func(j *shimJob) { j.foot(0).Under[0].Now[0] = shims.Piece{Measured: mm, Count: 1} }, "missing " + under + "/0/now/0/marked"},
		{"a fixed station's pack", func(j *shimJob) { j.foot(0).Vertical = train.Fixed(); j.foot(0).Under[0].Now[0].Marked = nan }, func(j *shimJob) { j.foot(0).Vertical = train.Fixed() }, "not_finite " + under + "/0/now/0/marked"},
		{"too thick a pack", func(j *shimJob) { j.foot(0).Under[0].Now[0].Count = 501 }, func(j *shimJob) { j.foot(0).Under[0].Now[0].Count = 5 }, "out_of_range " + under + "/0/now"},
		{"too many packs", many(63), many(62), "out_of_range /machines"},
		{"stock: no number", func(j *shimJob) { j.stock[3].Marked = nan }, func(j *shimJob) { j.stock[3].Marked = 250 * um }, "not_finite /stock/3/marked"},
		{"stock: half a nanometre", func(j *shimJob) { j.stock[3].Marked = 0.5 }, func(j *shimJob) { j.stock[3].Marked = 1 }, "out_of_range /stock/3/marked"},
		{"stock: a count below zero", func(j *shimJob) { j.stock[3].Count = -1 }, func(j *shimJob) { j.stock[3].Count = 0 }, "out_of_range /stock/3/count"},
		{"rule: too many pieces", func(j *shimJob) { j.rule.Pieces = 17 }, func(j *shimJob) { j.rule.Pieces = 2 }, "out_of_range /rule/pieces"},
		{"rule: an error below zero", func(j *shimJob) { j.rule.Error = -1 }, func(j *shimJob) { j.rule.Error = 1 }, "out_of_range /rule/error"},
		{"rule: no number to keep", func(j *shimJob) { j.rule.Keep = nan }, func(j *shimJob) { j.rule.Keep = mm }, "not_finite /rule/keep"},
		{"rule: nodes below zero", func(j *shimJob) { j.rule.Nodes = -1 }, func(j *shimJob) { j.rule.Nodes = 1 }, "out_of_range /rule/nodes"},
		{"no such work", func(j *shimJob) { j.w = 9 }, func(j *shimJob) { j.w = train.FewestFeet }, "unknown /work"},
		{"a train that is none", func(j *shimJob) { j.t.Reference = "fan" }, func(j *shimJob) { j.t.Reference = "motor" }, "unknown /reference"},
		{"a height that no pieces come to", func(j *shimJob) { j.foot(0).Vertical = train.Between(31*um, 49*um) }, func(j *shimJob) { j.foot(0).Vertical = train.Between(31*um, 50*um) }, "unreachable /stock"},
		{"more to keep than any pack has", func(j *shimJob) { j.rule.Keep = 13 * mm }, func(j *shimJob) { j.rule.Keep = 5 * mm }, "unreachable /stock"},
		{"a pack of more than a metre", lift(200*mm, 101*mm), lift(100*mm, 100*mm), "unreachable /stock"},
		{"a limit beyond any pack", func(j *shimJob) { j.foot(0).Vertical = train.AtLeast(1001 * mm) }, func(j *shimJob) { j.foot(0).Vertical = train.AtLeast(0) }, "unreachable /stock"},
		{"nothing to keep anything with", func(j *shimJob) { j.withoutPieces(); j.rule.Keep = 1 }, func(j *shimJob) { j.withoutPieces() }, "unreachable /stock"},
		{"a search that ends before it found any", func(j *shimJob) { j.foot(0).Vertical = train.AtLeast(um); j.rule.Nodes = 1 }, func(j *shimJob) { j.foot(0).Vertical = train.AtLeast(um) }, "unreachable /rule/nodes"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			bad, twin := soundShims(), soundShims()
			row.bad(bad)
			got, err := bad.plan()
			if list := faultList(err); !slices.Equal(list, []string{row.want}) {
				t.Errorf("got %q, want %q", list, row.want)
			}
			if got.Stacks != nil || got.Plan.Machines != nil {
				t.Errorf("a plan beside a fault: %+v", got)
			}
			row.twin(twin)
			if _, err := twin.plan(); err != nil {
				t.Errorf("the twin: %v", err)
			}
		})
	}
}

// faultList lists code and path of every fault.
func faultList(err error) []string {
	var list []string
	for _, f := range units.Faults(err) {
		list = append(list, string(f.Code)+" "+f.Path)
	}
	return list
}

func TestPlanShimsTellsAllFaultsAtOnce(t *testing.T) {
	j := soundShims()
	j.w = 9
	j.t.Machines[0].Name = ""
	j.t.Reference = ""
	j.foot(0).Under = nil
	j.foot(1).Under[0].Now[0].Count = 0
	j.stock[0].Count = -1
	j.rule.Pieces = -1
	_, err := j.plan()
	want := []string{
		"unknown /work", "missing /machines/0/name",
		"missing /machines/0/feet/0/under", "missing /machines/0/feet/1/under", "missing /machines/1/feet/0/under",
		"out_of_range /stock/0/count", "out_of_range /rule/pieces", "missing /machines/1/feet/1/under/0/now/0/count",
	}
	if got := faultList(err); !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// Zero values are refused, and do not panic.
func TestPlanShimsOfNothing(t *testing.T) {
	if _, err := (train.Train{}).PlanShims(0, nil, shims.Rule{}); err == nil {
		t.Error("the zero train was planned")
	}
	j := soundShims()
	j.stock = nil
	p, err := j.plan()
	if err != nil || p.Plan.Reach != train.OutOfReach || !p.Proven {
		t.Errorf("an empty box: %v, reach %v, proven %v, want out of reach and proven", err, p.Plan.Reach, p.Proven)
	}
}
