package shims_test

import (
	"cmp"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// The obvious way to choose: every pack of every foot with every pack of the
// others, kind by kind, by the words of the package comment and nothing else. It
// knows no sizes, no bounds and no pool but a list of counts.

// brute is a problem as the package comment puts it.
type brute struct {
	kinds []shims.Piece // with the count in the stock and under all feet
	rule  shims.Rule
	feet  []bruteFoot
}

type bruteFoot struct {
	wanted int64
	now    []int // of each kind
}

// brutePack is a pack under a foot and what it costs there: what is lacking, the
// excess, the pieces, the error, the handling.
type brutePack struct {
	counts []int
	thick  []int64 // thickest first
	cost   [5]int64
}

func newBrute(stock shims.Stock, rule shims.Rule, orders []shims.Order) *brute {
	b := &brute{rule: spelt(rule)}
	b.feet = make([]bruteFoot, len(orders))
	for _, p := range stock {
		b.kinds[b.kind(p)].Count += p.Count
	}
	for i, o := range orders {
		for _, p := range o.Now {
			k := b.kind(p)
			b.kinds[k].Count += p.Count
			b.feet[i].now[k] += p.Count
		}
		b.feet[i].wanted = int64((o.Correction + o.SoftFoot + total(o.Now)).Round(units.Nanometre))
	}
	return b
}

// spelt puts in what a rule leaves open. Totals are whole nanometres: so much more
// of Error, or less of Keep, makes no difference.
func spelt(rule shims.Rule) shims.Rule {
	if rule.Error == 0 {
		rule.Error = shims.DefaultError
	}
	if rule.Pieces == 0 {
		rule.Pieces = shims.DefaultPieces
	}
	rule.Error = units.Length(math.Floor(float64(rule.Error)))
	rule.Keep = units.Length(math.Ceil(float64(rule.Keep)))
	return rule
}

// kind returns the index of a kind, which is added if it is new.
func (b *brute) kind(p shims.Piece) int {
	for k, q := range b.kinds {
		if p.Marked == q.Marked && p.Measured == q.Measured {
			return k
		}
	}
	p.Count = 0
	b.kinds = append(b.kinds, p)
	for i := range b.feet {
		b.feet[i].now = append(b.feet[i].now, 0)
	}
	return len(b.kinds) - 1
}

// packs lists all packs of a foot from the whole pool, best first, then with the
// thickest pieces first.
func (b *brute) packs(f bruteFoot) []brutePack {
	var all []brutePack
	counts := make([]int, len(b.kinds))
	var fill func(k, room int)
	fill = func(k, room int) {
		if k == len(counts) {
			all = append(all, b.pack(f, slices.Clone(counts)))
			return
		}
		for n := 0; n <= min(room, b.kinds[k].Count); n++ {
			counts[k] = n
			fill(k+1, room-n)
		}
		counts[k] = 0
	}
	fill(0, b.rule.Pieces)
	slices.SortStableFunc(all, func(x, y brutePack) int {
		if c := slices.Compare(x.cost[:], y.cost[:]); c != 0 {
			return c
		}
		return -slices.Compare(x.thick, y.thick)
	})
	return all
}

func (b *brute) pack(f bruteFoot, counts []int) brutePack {
	k := brutePack{counts: counts}
	total := int64(0)
	for i, n := range counts {
		nm := int64(b.kinds[i].Thickness())
		total += int64(n) * nm
		k.thick = append(k.thick, slices.Repeat([]int64{nm}, n)...)
		k.cost[2] += int64(n)
		k.cost[4] += int64(max(n-f.now[i], f.now[i]-n))
	}
	slices.SortFunc(k.thick, func(x, y int64) int { return cmp.Compare(y, x) })
	k.cost[3] = max(total-f.wanted, f.wanted-total)
	k.cost[0] = max(0, int64(b.rule.Keep)-total)
	k.cost[1] = max(0, k.cost[3]-int64(b.rule.Error))
	return k
}

// best tries everything. Of choices that cost the same it returns the first in
// the order of packs, foot by foot.
func (b *brute) best() (cost [5]int64, chosen []brutePack) {
	lists := make([][]brutePack, len(b.feet))
	for i, f := range b.feet {
		lists[i] = b.packs(f)
	}
	pool := make([]int, len(b.kinds))
	for k := range pool {
		pool[k] = b.kinds[k].Count
	}
	path := make([]brutePack, len(b.feet))
	var try func(i int, spent [5]int64)
	try = func(i int, spent [5]int64) {
		if i == len(path) {
			if chosen == nil || slices.Compare(spent[:], cost[:]) < 0 {
				cost, chosen = spent, slices.Clone(path)
			}
			return
		}
		for _, k := range lists[i] {
			if !takeFrom(pool, k.counts) {
				continue
			}
			path[i] = k
			sum := spent
			for n := range sum {
				sum[n] += k.cost[n]
			}
			try(i+1, sum)
			for n := range pool {
				pool[n] += k.counts[n]
			}
		}
	}
	try(0, [5]int64{})
	return cost, chosen
}

func takeFrom(pool, counts []int) bool {
	for i, n := range counts {
		if pool[i] < n {
			return false
		}
	}
	for i, n := range counts {
		pool[i] -= n
	}
	return true
}

// costOf adds up what a choice costs, from what the hands do and not from what it
// says of itself.
func costOf(rule shims.Rule, orders []shims.Order, c shims.Choice) (cost [5]int64) {
	rule = spelt(rule)
	for i, s := range c.Stacks {
		wanted := (orders[i].Correction + orders[i].SoftFoot + total(orders[i].Now)).Round(units.Nanometre)
		have := total(s.Pieces)
		for _, p := range s.Pieces {
			cost[2] += int64(p.Count)
		}
		off := max(have-wanted, wanted-have)
		cost[0] += int64(max(0, rule.Keep-have))
		cost[1] += int64(max(0, off-rule.Error))
		cost[3] += int64(off)
		for _, p := range append(slices.Clone(s.Out), s.In...) {
			cost[4] += int64(p.Count)
		}
	}
	return cost
}

// dice is where a made-up problem comes from: a random generator, or rapid, which
// can make the problem smaller again.
type dice interface{ IntN(n int) int }

// small makes a problem that can still be tried out in full: few kinds, so few
// pieces of them that the feet are in each other's way, some of them equally
// thick, and packs that lie there already.
func small(r dice) (shims.Stock, shims.Rule, []shims.Order) {
	kinds := make([]shims.Piece, 1+r.IntN(4))
	for i := range kinds {
		kinds[i].Marked = units.Length(1+r.IntN(12)) * 50 * units.Micrometre
		switch r.IntN(4) {
		case 0:
			kinds[i].Measured = kinds[i].Marked
		case 1:
			kinds[i].Measured = kinds[i].Marked + units.Length(r.IntN(9)-4)*units.Micrometre
		}
	}
	some := func(most int) []shims.Piece {
		var list []shims.Piece
		for range r.IntN(most + 1) {
			p := kinds[r.IntN(len(kinds))]
			p.Count = 1 + r.IntN(2)
			list = append(list, p)
		}
		return list
	}
	rule := shims.Rule{Pieces: 1 + r.IntN(3)}
	if r.IntN(2) == 0 {
		rule.Error = units.Length(1+r.IntN(80)) * units.Micrometre
	}
	if r.IntN(3) == 0 {
		rule.Keep = units.Length(r.IntN(1000)) * units.Micrometre
	}
	orders := make([]shims.Order, 1+r.IntN(3))
	for i := range orders {
		orders[i] = shims.Order{
			Foot: string(rune('a' + i)), Correction: units.Length(r.IntN(180)-40) * 10 * units.Micrometre, Now: some(2),
		}
		if r.IntN(3) == 0 {
			orders[i].SoftFoot = units.Length(r.IntN(300)) * units.Micrometre
		}
		if i == 0 {
			continue
		}
		last := orders[i-1]
		switch r.IntN(5) {
		case 0: // wants the same and has the same
			orders[i].Correction, orders[i].SoftFoot, orders[i].Now = last.Correction, last.SoftFoot, last.Now
		case 1: // wants the same, but has something else
			orders[i].Correction, orders[i].SoftFoot = last.Correction+last.SoftFoot+total(last.Now)-total(orders[i].Now), 0
		}
	}
	return some(4), rule, orders
}

func total(pieces []shims.Piece) units.Length {
	sum := units.Length(0)
	for _, p := range pieces {
		sum += p.Thickness() * units.Length(p.Count)
	}
	return sum
}

// Choose is as good as trying everything, objective by objective, and takes the
// one that is promised of those that are equal.
func TestChooseEqualsTryingEverything(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	cases := 3000
	if testing.Short() {
		cases = 300
	}
	scarce := 0
	for n := range cases {
		stock, rule, orders := small(r)
		b := newBrute(stock, rule, orders)
		want, packs := b.best()
		got, err := shims.Choose(stock, rule, orders...)
		if err != nil || !got.Proven {
			t.Fatalf("case %d: proven %v, %v", n, got.Proven, err)
		}
		if got.Nodes < 0 || got.Nodes > shims.DefaultNodes {
			t.Fatalf("case %d: proven with %d nodes", n, got.Nodes)
		}
		if cost := costOf(rule, orders, got); cost != want {
			t.Fatalf("case %d: costs %v, want %v\n%+v\n%+v\n%+v\n%+v", n, cost, want, stock, rule, orders, got)
		}
		alone := [5]int64{}
		for i, k := range packs {
			for j, c := range b.packs(b.feet[i])[0].cost {
				alone[j] += c
			}
			if thick := thicknesses(got.Stacks[i].Pieces); !slices.Equal(thick, k.thick) {
				t.Fatalf("case %d: foot %d has %v, want %v\n%+v\n%+v\n%+v", n, i, thick, k.thick, stock, rule, orders)
			}
		}
		if alone != want {
			scarce++
		}
	}
	if scarce < cases/10 {
		t.Errorf("only in %d of %d cases the feet are in each other's way", scarce, cases)
	}
}

// thicknesses lists the pieces, thickest first.
func thicknesses(pieces []shims.Piece) []int64 {
	var thick []int64
	for _, p := range pieces {
		for range p.Count {
			thick = append(thick, int64(p.Thickness()))
		}
	}
	slices.SortFunc(thick, func(x, y int64) int { return cmp.Compare(y, x) })
	return thick
}
