package train_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/shims"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// shimCase is a made-up train with a few pieces.
type shimCase struct {
	t     train.Train
	stock shims.Stock
	rule  shims.Rule
}

// sort is a sort of made-up trains.
type sort struct {
	name                      string
	machines, stations, packs int // most packs of a station
	reference                 bool
	cases                     int
}

func randomShimCase(r *rand.Rand, of sort) shimCase {
	pick := func(list ...units.Length) units.Length { return list[r.IntN(len(list))] }
	sizes := []units.Length{100 * um, 200 * um, 500 * um, 50 * um}[:2+r.IntN(2)]
	c := shimCase{rule: shims.Rule{Pieces: 1 + r.IntN(3), Keep: pick(0, 0, 0, 100*um, 150*um), Error: pick(0, 1, 60*um)}}
	for _, nm := range sizes {
		c.stock = append(c.stock, shims.Piece{Marked: nm, Count: r.IntN(5)})
	}
	limit := func() train.Limit {
		switch r.IntN(8) {
		case 0:
			return train.Fixed()
		case 1:
			return train.AtLeast(pick(-200*um, 0, 100*um))
		case 2:
			return train.Between(pick(-300*um, -50*um, 50*um), pick(50*um, 300*um))
		case 3:
			return train.AtMost(pick(-100*um, 200*um))
		}
		return train.Limit{}
	}
	pack := func(name string) train.Pack {
		p := train.Pack{Name: name}
		for range r.IntN(3) {
			p.Now = append(p.Now, shims.Piece{Marked: sizes[r.IntN(len(sizes))], Count: 1})
		}
		return p
	}
	x := 0.0
	station := func(name string) train.Foot {
		x += 211.7 + 700*r.Float64()
		f := train.Foot{Name: name, X: units.Length(math.Round(x*1e3)) * um, Vertical: limit(), Horizontal: limit()}
		f.Under = append(f.Under, pack("left"))
		if r.IntN(2) < of.packs-1 {
			f.Under = append(f.Under, pack("right"))
		}
		return f
	}
	for i := range of.machines {
		m := train.Machine{Name: fmt.Sprint("m", i)}
		for k := range of.stations {
			m.Feet = append(m.Feet, station(fmt.Sprint("f", k)))
		}
		if r.IntN(4) == 0 {
			slices.Reverse(m.Feet)
		}
		c.t.Machines = append(c.t.Machines, m)
		x += 250.3
		if i < of.machines-1 {
			c.t.Joints = append(c.t.Joints, randomShimJoint(r, x))
			x += 150.1
		}
	}
	if n := r.IntN(of.machines + 1); of.reference || n < of.machines {
		c.t.Reference = c.t.Machines[n%of.machines].Name
	}
	return c
}

func randomShimJoint(r *rand.Rand, x float64) train.Joint {
	line := func() align.Line {
		return align.Line{Offset: units.Length(r.NormFloat64()*0.3) * units.Millimetre, Slope: units.Slope(r.NormFloat64() * 0.5e-3)}
	}
	loose := units.Length(1 + r.IntN(4))
	j := train.Joint{At: units.Length(x) * units.Millimetre, Found: align.Exact(align.Centreline{Horizontal: line(), Vertical: line()})}
	if r.IntN(3) == 0 {
		j.Target = align.Exact(align.Centreline{Horizontal: line(), Vertical: line()})
	}
	switch r.IntN(4) {
	case 0:
		j.Coupling.Span = 163 * units.Millimetre
		j.Limits = tolerance.Limits{Flex: units.Slope(loose) * 0.4e-3}
	case 1:
		j.Limits = tolerance.Limits{Slope: units.Slope(loose) * 0.2e-3}
	case 2:
		j.Limits = tolerance.Limits{Offset: loose * 60 * um}
	default:
		j.Limits = tolerance.Limits{Offset: loose * 60 * um, Slope: units.Slope(loose) * 0.2e-3}
	}
	j.Limits.PerPlane = r.IntN(2) == 0
	return j
}

// thicknesses lists the pieces of a stack, thickest first.
func thicknesses(pieces []shims.Piece) []int64 {
	var list []int64
	for _, p := range pieces {
		list = append(list, slices.Repeat([]int64{int64(p.Thickness())}, p.Count)...)
	}
	slices.Sort(list)
	slices.Reverse(list)
	return list
}

// squaresOf sums the squares of all changes of height, those of the reference not
// among them.
func squaresOf(t train.Train, p train.ShimPlan) (squares float64) {
	for _, m := range p.Plan.Machines {
		for _, f := range m.Feet {
			if m.Machine == t.Reference {
				continue
			}
			by := float64(f.By.Vertical)
			squares += by * by
		}
	}
	return squares
}

func TestShimsAreTheBestOfAllStacks(t *testing.T) {
	for _, of := range []sort{
		{"two machines on two stations", 2, 2, 2, false, 800},
		{"three machines", 3, 2, 1, true, 200},
		{"three stations", 2, 3, 1, true, 400},
	} {
		t.Run(of.name, func(t *testing.T) {
			if testing.Short() {
				of.cases /= 5
			}
			seen := map[string]int{}
			for seed := range of.cases {
				c := randomShimCase(rand.New(rand.NewPCG(uint64(seed), 7)), of)
				for _, outcome := range c.compare(t, seed) {
					seen[outcome]++
				}
			}
			for _, outcome := range []string{"none", "within true", "within false", "handled"} {
				if seen[outcome] < of.cases/20 {
					t.Errorf("%d cases of %q: the test has to see more", seen[outcome], outcome)
				}
			}
			t.Log(seen)
		})
	}
}

// compare compares the choice with the best of all, and tells what sort of case it
// was.
func (c *shimCase) compare(t *testing.T, seed int) []string {
	t.Helper()
	plan, err := c.t.Plan(train.TotalTravel)
	if err != nil {
		return []string{"refused"} // limits of three stations that allow no line
	}
	rule := c.rule
	if rule.Error == 0 {
		rule.Error = shims.DefaultError
	}
	b := newBruteSearch(c.t, plan, c.stock, rule)
	b.run(0, 0, 0)
	got, err := c.t.PlanShims(train.TotalTravel, c.stock, c.rule)
	if b.best == nil {
		if !errors.Is(err, units.Unreachable) {
			t.Fatalf("seed %d: there is no choice, got %v, %v", seed, got, err)
		}
		return []string{"none"}
	}
	if err != nil {
		t.Fatalf("seed %d: %v, want %+v", seed, err, b.best)
	}
	have := bruteRank{within: got.Plan.Reach != train.OutOfReach, handled: got.Handled, ratio: got.Plan.Ratio, squares: squaresOf(c.t, got)}
	for _, st := range got.Stacks {
		have.stacks = append(have.stacks, thicknesses(st.Pieces))
	}
	if diff := cmp.Diff(*b.best, have, cmp.AllowUnexported(bruteRank{}), cmpopts.EquateEmpty()); diff != "" || !got.Proven {
		t.Fatalf("seed %d: proven %v, (-want +got)\n%s", seed, got.Proven, diff)
	}
	outcomes := []string{fmt.Sprint("within ", have.within)}
	if have.handled > 0 {
		outcomes = append(outcomes, "handled")
	}
	return outcomes
}

// What lies under the feet is a choice also where it is as many pieces as a pack may
// have, and there are hardly any nodes to look for another.
func TestFullPacksMayStay(t *testing.T) {
	j := soundShims()
	j.t.Joints[0].Found = height(0, 0)
	j.rule.Pieces, j.rule.Nodes = 1, 1
	p, err := j.plan()
	if err != nil || p.Plan.Reach != train.OnTarget || p.Handled != 0 {
		t.Errorf("%d handled, %v; want that nothing changes", p.Handled, err)
	}
}

// Sideways the pump has to stay where all of its limit is used up. Heights are laid within
// the limits all the same: half a millimetre under each foot.
func TestShimsBesideASidewaysRatioOfOne(t *testing.T) {
	j := soundShims()
	j.t.Joints[0].Found.Value.Horizontal.Offset = 50 * um
	for k := range 2 {
		j.foot(k).Horizontal = train.Fixed()
	}
	p, err := j.plan()
	if err != nil || p.Plan.Ratio != 1 || p.Plan.Reach != train.WithinLimits || p.Handled != 4 || !p.Proven {
		t.Errorf("ratio %v, %v, %d handled, proven %v, %v; want four pieces for a ratio of one", p.Plan.Ratio, p.Plan.Reach, p.Handled, p.Proven, err)
	}
}
