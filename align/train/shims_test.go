package train_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/shims"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

var everyShimSort = []sort{
	{"two machines", 2, 2, 2, false, 0},
	{"three machines", 3, 2, 2, false, 0},
	{"three stations", 2, 3, 2, true, 0},
}

// drawShims draws a job and its plan; jobs that have none are passed over.
func drawShims(t *rapid.T) (shimCase, train.ShimPlan) {
	seed := rapid.Uint64().Draw(t, "seed")
	of := rapid.SampledFrom(everyShimSort).Draw(t, "of")
	c := randomShimCase(rand.New(rand.NewPCG(seed, 1)), of)
	c.rule.Nodes = 50_000
	p, err := c.t.PlanShims(train.TotalTravel, c.stock, c.rule)
	if err != nil {
		t.Skip("no choice keeps the limits")
	}
	return c, p
}

// The stacks come to the steps, no size is used more often than it is there, and
// what goes in and out is what makes the new pack of the old.
func TestStacksComeToTheSteps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, p := drawShims(t)
		left := map[shims.Piece]int{}
		count := func(pieces []shims.Piece, by int) {
			for _, piece := range pieces {
				kind := piece
				kind.Count = 0
				left[kind] += by * piece.Count
			}
		}
		count(c.stock, 1)
		next, handled := 0, 0
		for i, m := range c.t.Machines {
			for k, f := range m.Feet {
				by := p.Plan.Machines[i].Feet[k].By.Vertical
				low, hasLow := f.Vertical.Low()
				high, hasHigh := f.Vertical.High()
				switch fixed := hasLow && hasHigh && low == 0 && high == 0; {
				case m.Name == c.t.Reference:
					continue
				case fixed && by != 0, hasLow && by < low, hasHigh && by > high:
					t.Fatalf("%s %s changes by %v against its limit", m.Name, f.Name, by)
				case fixed:
					continue
				}
				for _, pack := range f.Under {
					st := p.Stacks[next]
					next++
					if want := m.Name + " " + f.Name + " " + pack.Name; st.Foot != want {
						t.Fatalf("foot %q, want %q", st.Foot, want)
					}
					total := pieceTotal(st.Pieces)
					if total != st.Total || total != st.Wanted || st.Error != 0 || !st.Reached || total-pieceTotal(pack.Now) != by {
						t.Fatalf("%s: %+v after %v, want a change of %v", st.Foot, st, pack.Now, by)
					}
					if len(st.Pieces) > c.rule.Pieces || total < c.rule.Keep {
						t.Fatalf("%s: %v breaks the rule %+v", st.Foot, st.Pieces, c.rule)
					}
					count(pack.Now, 1)
					count(st.Pieces, -1)
					handled += checkSwap(t, pack.Now, st)
				}
			}
		}
		for kind, n := range left {
			if n < 0 {
				t.Fatalf("%d pieces of %v more than there are", -n, kind)
			}
		}
		if next != len(p.Stacks) || handled != p.Handled {
			t.Fatalf("%d stacks of %d, %d handled, told %d", next, len(p.Stacks), handled, p.Handled)
		}
	})
}

// What stays lies as package shims lays the same pieces where all have to be used.
func TestStacksAreLaidAsOfShims(t *testing.T) {
	exactly := shims.Rule{Error: units.Nanometre / 2, Pieces: shims.MostPieces}
	rapid.Check(t, func(t *rapid.T) {
		j := soundShims()
		j.t.Joints[0].Found = height(0, 0)
		j.rule.Pieces = shims.MostPieces
		var now []shims.Piece
		for range rapid.IntRange(0, 8).Draw(t, "kinds") {
			thickness := units.Length(rapid.IntRange(1, 40).Draw(t, "thickness")) * 50 * um
			marked := thickness + units.Length(rapid.IntRange(0, 1).Draw(t, "more marked"))*um
			now = append(now, shims.Piece{Marked: marked, Measured: thickness, Count: rapid.IntRange(1, 2).Draw(t, "count")})
		}
		for k := range 2 {
			for i := range j.foot(k).Under {
				j.foot(k).Under[i].Now = now
			}
		}
		j.stock = nil
		p, err := j.plan()
		if err != nil {
			t.Fatal(err)
		}
		for _, got := range p.Stacks {
			want, err := shims.Choose(now, exactly, shims.Order{Foot: got.Foot, Correction: got.Total})
			if err != nil {
				t.Fatal(err)
			}
			want.Stacks[0].In = nil
			if diff := cmp.Diff(want.Stacks[0], got); diff != "" {
				t.Fatalf("(-shims +train)\n%s", diff)
			}
		}
	})
}

func pieceTotal(pieces []shims.Piece) (total units.Length) {
	for _, p := range pieces {
		total += p.Thickness() * units.Length(p.Count)
	}
	return total
}

// checkSwap asks that what was there, less Out, with In, is what is there, and that
// nothing goes out and comes in again.
func checkSwap(t *rapid.T, now []shims.Piece, st shims.Stack) (handled int) {
	is := map[shims.Piece]int{}
	add := func(pieces []shims.Piece, by int) (n int) {
		for _, p := range pieces {
			kind := p
			kind.Count = 0
			is[kind] += by * p.Count
			n += p.Count
		}
		return n
	}
	add(now, 1)
	out := add(st.Out, -1)
	in := add(st.In, 1)
	add(st.Pieces, -1)
	for kind, n := range is {
		if n != 0 {
			t.Fatalf("%s: %d of %v too many: %v is not %v less %v with %v", st.Foot, n, kind, st.Pieces, now, st.Out, st.In)
		}
	}
	for _, o := range st.Out {
		if slices.ContainsFunc(st.In, func(i shims.Piece) bool { return i.Thickness() == o.Thickness() }) {
			t.Fatalf("%s: %v goes out and comes in", st.Foot, o)
		}
	}
	return out + in
}

// Every number of the plan is what the stacks lead to.
func TestShimPlanIsWhereTheStacksLead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, p := drawShims(t)
		plan, err := c.t.Plan(train.TotalTravel)
		if err != nil {
			t.Fatal(err)
		}
		worst, within := 0.0, true
		for j, joint := range p.Plan.Joints {
			if joint.After.Value.Horizontal != plan.Joints[j].After.Value.Horizontal {
				t.Fatalf("coupling %d: the horizontal went from %v to %v", j, plan.Joints[j].After.Value, joint.After.Value)
			}
			for _, item := range joint.Verdict.All() {
				worst = max(worst, item.Ratio)
				within = within && item.Within()
			}
		}
		if p.Plan.Ratio != worst || (worst <= 1) != within || (p.Plan.Reach == train.OutOfReach) == within {
			t.Fatalf("ratio %v, reach %v: the verdicts have %v", p.Plan.Ratio, p.Plan.Reach, worst)
		}
		const rounding = 1e-3 // of found and limit to 1 nm, both a few micrometres at least
		if onTwo := len(c.t.Machines[0].Feet) == 2; onTwo && p.Plan.Ratio < plan.Bound-rounding || p.Plan.Bound > p.Plan.Ratio {
			t.Fatalf("ratio %v, bound %v: it is below what any plan can reach, %v", p.Plan.Ratio, p.Plan.Bound, plan.Bound)
		}
		var travel, most units.Length
		for _, s := range p.Plan.Steps {
			travel += max(s.By, -s.By)
			most = max(most, s.By, -s.By)
		}
		if travel != p.Plan.Travel || most != p.Plan.Largest || len(p.Plan.Steps) != p.Plan.Moves {
			t.Fatalf("travel %v, largest %v, moves %d do not sum the steps %v", p.Plan.Travel, p.Plan.Largest, p.Plan.Moves, p.Plan.Steps)
		}
		if warned := len(p.Plan.Warnings) > 0; warned != (!within || !p.Proven) {
			t.Fatalf("warnings %v: within %v, proven %v", p.Plan.Warnings, within, p.Proven)
		}
	})
}

// Taking pieces out of the box never betters the plan.
func TestFewerPiecesAreNeverBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, p := drawShims(t)
		less := slices.Clone(c.stock)
		for i := range less {
			less[i].Count = rapid.IntRange(0, less[i].Count).Draw(t, "count")
		}
		q, err := c.t.PlanShims(train.TotalTravel, less, c.rule)
		if err != nil || !p.Proven {
			t.Skip("none there, or not known to be the best")
		}
		rank := func(p train.ShimPlan) bruteRank {
			r := bruteRank{within: p.Plan.Reach != train.OutOfReach, handled: p.Handled, ratio: p.Plan.Ratio, squares: squaresOf(c.t, p)}
			for _, st := range p.Stacks {
				r.stacks = append(r.stacks, thicknesses(st.Pieces))
			}
			return r
		}
		if before, after := rank(p), rank(q); after.before(&before) {
			t.Fatalf("%+v with fewer pieces, %+v with more", after, before)
		}
	})
}

// The same job gives the same plan, however the rows of the stock are split.
func TestShimPlanIsTheSameEveryTime(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, p := drawShims(t)
		var split shims.Stock
		for _, piece := range c.stock {
			one := piece
			one.Count = min(1, piece.Count)
			piece.Count -= one.Count
			split = append(split, one, piece)
		}
		q, err := c.t.PlanShims(train.TotalTravel, split, c.rule)
		if err != nil {
			t.Fatal(err)
		}
		was, err := json.Marshal(p)
		if err != nil {
			t.Fatal(err)
		}
		is, err := json.Marshal(q)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(was), string(is)); diff != "" {
			t.Fatalf("(-first +second)\n%s", diff)
		}
	})
}

// What little a search is given, it answers with a choice that keeps the rule, and
// says that it is not proven; more never ends with a worse choice than none.
func TestShimsCutOff(t *testing.T) {
	tr := shimmedTrain(3, "")
	whole, err := tr.PlanShims(train.TotalTravel, shims.CommonMetric(4), shims.Rule{})
	if err != nil || !whole.Proven {
		t.Fatalf("the whole search: proven %v, %v", whole.Proven, err)
	}
	stay := math.Inf(1)
	for _, nodes := range []int{1, 2, 10, 100, 1000, 3000} {
		p, err := tr.PlanShims(train.TotalTravel, shims.CommonMetric(4), shims.Rule{Nodes: nodes})
		if err != nil {
			t.Fatal(err)
		}
		if nodes == 1 {
			stay = p.Plan.Ratio
		}
		last := p.Plan.Warnings[len(p.Plan.Warnings)-1]
		if p.Proven || last.Code != units.Suspect || last.Path != "/rule/nodes" {
			t.Errorf("%d nodes: proven %v, warnings %v", nodes, p.Proven, p.Plan.Warnings)
		}
		if p.Plan.Ratio > stay {
			t.Errorf("%d nodes: ratio %v, and %v with everything left as it is", nodes, p.Plan.Ratio, stay)
		}
	}
}

// A residual that stands exactly on its limit is within, and a nanometre more is not.
func TestShimsOnTheLimit(t *testing.T) {
	for _, row := range []struct {
		name    string
		low     units.Length
		reach   train.Reach
		handled int
	}{
		{"on the limit", 50 * um, train.WithinLimits, 0},
		{"a third of a nanometre above", 50*um + units.Nanometre/3, train.WithinLimits, 0},
		{"a nanometre above", 50*um + 1, train.WithinLimits, 2},
	} {
		t.Run(row.name, func(t *testing.T) {
			j := soundShims()
			j.t.Joints[0].Found = height(-row.low, 0)
			p, err := j.plan()
			if err != nil || p.Plan.Reach != row.reach || p.Handled != row.handled {
				t.Errorf("reach %v, %d handled, %v; want %v, %d", p.Plan.Reach, p.Handled, err, row.reach, row.handled)
			}
		})
	}
}

// What comes out from under one foot goes under another, when the box is empty.
func TestShimsGoFromFootToFoot(t *testing.T) {
	j := soundShims()
	j.stock = nil
	for k, thick := range []units.Length{2 * mm, 3 * mm} {
		for p := range j.foot(k).Under {
			j.foot(k).Under[p].Now[0].Marked = thick
		}
	}
	// The inboard foot 1 mm too low, the outboard 1 mm too high: 2 mm/m over 400 mm
	// would be 5, so the slope is twice as much.
	j.t.Joints[0].Found = height(-2*mm, 5*units.MillimetrePerMetre)
	p, err := j.plan()
	if err != nil || p.Plan.Reach != train.OnTarget || p.Handled != 8 || p.Plan.Ratio != 0 {
		t.Fatalf("%+v, %v: want all four pieces exchanged", p, err)
	}
	for i, want := range []units.Length{3 * mm, 3 * mm, 2 * mm, 2 * mm} {
		if got := p.Stacks[i].Total; got != want {
			t.Errorf("%s: %v, want %v", p.Stacks[i].Foot, got, want)
		}
	}
}

// A foot keeps its own piece of a thickness, takes those of the stock before those
// of another, and what is measured counts.
func TestShimsOfOneThickness(t *testing.T) {
	j := soundShims()
	worn := shims.Piece{Marked: 505 * um, Measured: 500 * um}
	j.stock = shims.Stock{{Marked: 500 * um, Count: 3}}
	for k := range 2 {
		own := worn
		own.Count = 1
		for p := range j.foot(k).Under {
			j.foot(k).Under[p].Now = append(j.foot(k).Under[p].Now, own)
		}
	}
	p, err := j.plan() // 0.5 mm up at every foot, with three pieces for four feet
	if err != nil || p.Plan.Reach == train.OnTarget {
		t.Fatalf("%+v, %v: want one piece to be lacking", p.Plan.Reach, err)
	}
	j.stock[0].Count = 4
	if p, err = j.plan(); err != nil || p.Plan.Reach != train.OnTarget || p.Handled != 4 {
		t.Fatalf("reach %v, %d handled, %v: want a piece more under every foot", p.Plan.Reach, p.Handled, err)
	}
	for _, st := range p.Stacks {
		if len(st.Out) != 0 || len(st.In) != 1 || st.In[0] != (shims.Piece{Marked: 500 * um, Count: 1}) || len(st.Pieces) != 3 {
			t.Errorf("%+v: want one of the box added to its own", st)
		}
	}
}

// A train with packs, and a plan, go into JSON and back.
func TestShimPlanJSON(t *testing.T) {
	j := soundShims()
	data, err := json.Marshal(j.t)
	if err != nil {
		t.Fatal(err)
	}
	var back train.Train
	if err := json.Unmarshal(data, &back); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(j.t, back, cmp.AllowUnexported(train.Limit{}), cmp.AllowUnexported(align.Covariance{})); diff != "" {
		t.Errorf("the train (-was +is)\n%s", diff)
	}
	p, err := j.plan()
	if err != nil {
		t.Fatal(err)
	}
	if data, err = json.Marshal(p); err != nil {
		t.Fatal(err)
	}
	var is train.ShimPlan
	if err := json.Unmarshal(data, &is); err != nil {
		t.Fatal(err)
	}
	again, err := json.Marshal(is)
	if err != nil || string(again) != string(data) {
		t.Errorf("there and back: %v\n%s\n%s", err, data, again)
	}
}

// A station between the ends may miss their line by the error of the rule, and by no
// nanometre more, up or down.
func TestShimsBetweenTheEnds(t *testing.T) {
	for _, row := range []struct {
		name  string
		thick units.Length // of the one piece for the middle, where the line is 500 um up
		ok    bool
	}{
		{"as low as may be", 400 * um, true},
		{"a nanometre lower", 400*um - 1, false},
		{"as high as may be", 600 * um, true},
		{"a nanometre higher", 600*um + 1, false},
	} {
		t.Run(row.name, func(t *testing.T) {
			tr := pair()
			m := &tr.Machines[1]
			for k := range m.Feet {
				m.Feet[k].Vertical = train.Between(500*um, 500*um)
			}
			m.Feet = append(m.Feet, train.Foot{Name: "middle", X: 1200 * mm})
			for k := range m.Feet {
				m.Feet[k].Under = []train.Pack{{Name: "only"}}
			}
			stock := shims.Stock{{Marked: 500 * um, Count: 2}, {Marked: row.thick, Count: 1}}
			p, err := tr.PlanShims(train.TotalTravel, stock, shims.Rule{Error: 100 * um})
			if (err == nil) != row.ok {
				t.Fatalf("%v, want a plan: %v", err, row.ok)
			}
			if row.ok && p.Plan.Machines[1].Feet[2].By.Vertical != row.thick {
				t.Errorf("the middle goes up %v, want what its piece comes to, %v", p.Plan.Machines[1].Feet[2].By.Vertical, row.thick)
			}
		})
	}
}
