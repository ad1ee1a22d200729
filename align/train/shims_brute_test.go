package train_test

import (
	"cmp"
	"math"
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// The obvious way to choose: every stack under every foot with every stack under the
// others, by the words of PlanShims and nothing else. It knows no windows, no bounds
// and no kinds, counts thicknesses in a map, and reckons what is left at a coupling
// from the heights by the two-point rule, in another way than the code does.

type bruteStation struct {
	machine, foot int
	x             float64 // mm
	low, high     float64 // nm
	feet          []bruteFoot
}

type bruteFoot struct {
	now    []int64 // thickest first
	packs  [][]int64
	chosen []int64
}

type bruteRank struct {
	within         bool
	handled        int
	ratio, squares float64
	stacks         [][]int64
}

type bruteSearch struct {
	t        train.Train
	aside    []align.Line // what the plan leaves at the couplings in the horizontal
	rule     shims.Rule
	pool     map[int64]int
	stations []bruteStation
	by       map[[2]int]int64 // change of machine and foot
	best     *bruteRank
	leaves   int
}

func newBruteSearch(t train.Train, plan train.Plan, stock shims.Stock, rule shims.Rule) *bruteSearch {
	b := &bruteSearch{t: t, rule: rule, pool: map[int64]int{}, by: map[[2]int]int64{}}
	for _, j := range plan.Joints {
		b.aside = append(b.aside, j.After.Value.Horizontal)
	}
	for _, p := range stock {
		b.pool[int64(p.Thickness())] += p.Count
	}
	for i, m := range t.Machines {
		for k, f := range m.Feet {
			low, hasLow := f.Vertical.Low()
			high, hasHigh := f.Vertical.High()
			st := bruteStation{machine: i, foot: k, x: mmOf(f.X), low: math.Inf(-1), high: math.Inf(1)}
			if hasLow {
				st.low = float64(low)
			}
			if hasHigh {
				st.high = float64(high)
			}
			if m.Name == t.Reference || st.low == 0 && st.high == 0 {
				continue
			}
			for _, pack := range f.Under {
				var foot bruteFoot
				for _, p := range pack.Now {
					b.pool[int64(p.Thickness())] += p.Count
					foot.now = append(foot.now, slices.Repeat([]int64{int64(p.Thickness())}, p.Count)...)
				}
				st.feet = append(st.feet, foot)
			}
			b.stations = append(b.stations, st)
		}
	}
	for i := range b.stations {
		for k := range b.stations[i].feet {
			b.stations[i].feet[k].packs = b.packs()
		}
	}
	return b
}

func mmOf(l units.Length) float64 { return float64(l) / 1e6 }

// packs lists every pack that the rule allows.
func (b *bruteSearch) packs() [][]int64 {
	var sizes []int64
	for nm := range b.pool {
		sizes = append(sizes, nm)
	}
	slices.Sort(sizes)
	slices.Reverse(sizes)
	var all [][]int64
	var fill func(pack []int64, from int)
	fill = func(pack []int64, from int) {
		if float64(sum(pack)) >= float64(b.rule.Keep) {
			all = append(all, slices.Clone(pack))
		}
		if len(pack) == b.rule.Pieces {
			return
		}
		for s := from; s < len(sizes); s++ {
			fill(append(pack, sizes[s]), s)
		}
	}
	fill(nil, 0)
	return all
}

func sum(pack []int64) (total int64) {
	for _, nm := range pack {
		total += nm
	}
	return total
}

// run tries every pack under foot k of station i, and so on.
func (b *bruteSearch) run(i, k, handled int) {
	if i == len(b.stations) {
		b.leaf(handled)
		return
	}
	st := &b.stations[i]
	if k == len(st.feet) {
		b.run(i+1, 0, handled)
		return
	}
	f := &st.feet[k]
	for _, pack := range f.packs {
		by := sum(pack) - sum(f.now)
		at := [2]int{st.machine, st.foot}
		if k > 0 && by != b.by[at] || float64(by) < st.low || float64(by) > st.high || !b.take(pack) {
			continue
		}
		b.by[at] = by
		f.chosen = pack
		b.run(i, k+1, handled+swaps(f.now, pack))
		for _, nm := range pack {
			b.pool[nm]++
		}
	}
}

func (b *bruteSearch) take(pack []int64) bool {
	for i, nm := range pack {
		if b.pool[nm] == 0 {
			for _, back := range pack[:i] {
				b.pool[back]++
			}
			return false
		}
		b.pool[nm]--
	}
	return true
}

// swaps counts what has to be taken out and put in.
func swaps(now, pack []int64) int {
	left := slices.Clone(now)
	n := 0
	for _, nm := range pack {
		if i := slices.Index(left, nm); i >= 0 {
			left = slices.Delete(left, i, i+1)
		} else {
			n++
		}
	}
	return n + len(left)
}

func (b *bruteSearch) leaf(handled int) {
	b.leaves++
	if !b.straight() {
		return
	}
	r := bruteRank{handled: handled, ratio: b.ratio()}
	r.within = r.ratio <= 1
	for i := range b.stations {
		by := float64(b.by[[2]int{b.stations[i].machine, b.stations[i].foot}])
		r.squares += by * by
		for k := range b.stations[i].feet {
			r.stacks = append(r.stacks, b.stations[i].feet[k].chosen)
		}
	}
	if b.best == nil || r.before(b.best) {
		b.best = &r
	}
}

func (r *bruteRank) before(q *bruteRank) bool {
	if r.within != q.within {
		return r.within
	}
	first, second := cmp.Compare(r.handled, q.handled), cmp.Compare(r.ratio, q.ratio)
	if !r.within {
		first, second = second, first
	}
	if c := cmp.Or(first, second, cmp.Compare(r.squares, q.squares)); c != 0 {
		return c < 0
	}
	for i := range r.stacks {
		if c := slices.Compare(r.stacks[i], q.stacks[i]); c != 0 {
			return c > 0
		}
	}
	return false
}

// line returns the change of a machine's centreline at x mm, and its slope.
func (b *bruteSearch) line(machine int, x float64) (at, slope float64) {
	m := b.t.Machines[machine]
	if m.Name == b.t.Reference {
		return 0, 0
	}
	first, last := 0, 0
	for k := range m.Feet {
		if m.Feet[k].X < m.Feet[first].X {
			first = k
		}
		if m.Feet[k].X > m.Feet[last].X {
			last = k
		}
	}
	x0, x1 := mmOf(m.Feet[first].X), mmOf(m.Feet[last].X)
	h0, h1 := float64(b.by[[2]int{machine, first}]), float64(b.by[[2]int{machine, last}])
	slope = (h1 - h0) / (x1 - x0) // nm a mm
	return h0 + slope*(x-x0), slope
}

// straight tells whether the stations between the ends come near enough to the line.
func (b *bruteSearch) straight() bool {
	for i, m := range b.t.Machines {
		for k, f := range m.Feet {
			if at, _ := b.line(i, mmOf(f.X)); math.Round(math.Abs(float64(b.by[[2]int{i, k}])-at)) > math.Round(float64(b.rule.Error)) {
				return false
			}
		}
	}
	return true
}

// ratio is the worst of all couplings, both rounded to 1 nm.
func (b *bruteSearch) ratio() float64 {
	worst := 0.0
	for j, joint := range b.t.Joints {
		at := mmOf(joint.At)
		atBefore, slopeBefore := b.line(j, at)
		atAfter, slopeAfter := b.line(j+1, at)
		off := joint.Found.Value.Vertical
		target := joint.Target.Value.Vertical
		up := [2]float64{ // nm, and nm over a metre
			float64(off.Offset-target.Offset) + atAfter - atBefore,
			float64(off.Slope-target.Slope)*1e9 + (slopeAfter-slopeBefore)*1e3,
		}
		aside := [2]float64{float64(b.aside[j].Offset), float64(b.aside[j].Slope) * 1e9}
		judge := func(limit float64, shares ...float64) {
			if limit == 0 {
				return
			}
			y := shares[0]*aside[0] + shares[1]*aside[1]
			z := shares[0]*up[0] + shares[1]*up[1]
			sizes := []float64{math.Sqrt(y*y + z*z)}
			if joint.Limits.PerPlane {
				sizes = []float64{math.Abs(y), math.Abs(z)}
			}
			for _, size := range sizes {
				worst = max(worst, math.Round(size)/math.Round(limit))
			}
		}
		if span := mmOf(joint.Coupling.Span); span != 0 {
			judge(float64(joint.Limits.Flex)*1e9, +1000/span, 0.5)
			judge(float64(joint.Limits.Flex)*1e9, -1000/span, 0.5)
			continue
		}
		judge(float64(joint.Limits.Offset), 1, 0)
		judge(float64(joint.Limits.Slope)*1e9, 0, 1)
	}
	return worst
}
