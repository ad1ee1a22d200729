package shims_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/collinear/shims"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

type kindOf struct{ marked, measured units.Length }

func add(into map[kindOf]int, pieces []shims.Piece, sign int) {
	for _, p := range pieces {
		into[kindOf{p.Marked, p.Measured}] += sign * p.Count
	}
}

// checkChoice asks for all that a choice promises whatever the problem is: that
// its numbers belong together, that the hands can do what it says, and that its
// warnings say no more and no less.
func checkChoice(tb testing.TB, stock shims.Stock, rule shims.Rule, orders []shims.Order, c shims.Choice) {
	tb.Helper()
	if rule.Error == 0 {
		rule.Error = shims.DefaultError
	}
	if rule.Pieces == 0 {
		rule.Pieces = shims.DefaultPieces
	}
	if len(c.Stacks) != len(orders) {
		tb.Fatalf("%d stacks for %d orders", len(c.Stacks), len(orders))
	}
	box := map[kindOf]int{}
	add(box, stock, +1)
	var missed []string
	for i, s := range c.Stacks {
		checkStack(tb, rule, orders[i], s)
		add(box, s.Out, +1)
		add(box, s.In, -1)
		if !s.Reached {
			missed = append(missed, fmt.Sprint("/orders/", i))
		}
	}
	for kind, n := range box {
		if n < 0 {
			tb.Errorf("%d pieces of %v were never there", -n, kind)
		}
	}
	var warned []string
	for _, w := range c.Warnings {
		switch w.Code {
		case units.Unreachable:
			warned = append(warned, w.Path)
		case units.Suspect:
			if c.Proven {
				tb.Errorf("proven, and %v", &w)
			}
		default:
			tb.Errorf("a warning of no known code: %v", &w)
		}
	}
	if !slices.Equal(warned, missed) {
		tb.Errorf("missed %v, warned of %v", missed, warned)
	}
	for _, p := range c.Add {
		if p.Count <= 0 || p.Thickness() <= 0 || len(missed) == 0 {
			tb.Errorf("to add: %+v, with %d feet missed", p, len(missed))
		}
	}
}

// checkStack checks what belongs to one foot.
func checkStack(tb testing.TB, rule shims.Rule, o shims.Order, s shims.Stack) {
	tb.Helper()
	laid, now, count := total(s.Pieces), map[kindOf]int{}, 0
	for _, p := range s.Pieces {
		count += p.Count
		if p.Count != 1 {
			tb.Errorf("%s: an entry of %d pieces", s.Foot, p.Count)
		}
	}
	wanted := (o.Correction + o.SoftFoot + total(o.Now)).Round(units.Nanometre)
	if s.Foot != o.Foot || s.Total != laid || s.Wanted != wanted || s.Error != laid-wanted {
		tb.Errorf("%+v does not add up: %v wanted, %v laid", s, wanted, laid)
	}
	if count > rule.Pieces {
		tb.Errorf("%s: %d pieces", s.Foot, count)
	}
	if reached := max(s.Error, -s.Error) <= rule.Error && s.Total >= rule.Keep; reached != s.Reached {
		tb.Errorf("%s: reached is %v: %+v", s.Foot, s.Reached, s)
	}
	// Pieces are whole nanometres, and so is what their totals can come to.
	most, least := math.Floor(float64(s.Wanted+rule.Error)), math.Ceil(float64(rule.Keep))
	if tooLow := most < least; tooLow != s.TooLow {
		tb.Errorf("%s: too low is %v: %+v", s.Foot, s.TooLow, s)
	}
	// out and in turn the pack that lies there into the one that is to lie there
	add(now, o.Now, +1)
	add(now, s.Out, -1)
	for kind, n := range now {
		if n < 0 {
			tb.Errorf("%s: %d pieces of %v taken out that do not lie there", s.Foot, -n, kind)
		}
	}
	add(now, s.In, +1)
	add(now, s.Pieces, -1)
	for kind, n := range now {
		if n != 0 {
			tb.Errorf("%s: %d pieces of %v too many after the work", s.Foot, n, kind)
		}
	}
	both := map[kindOf]int{}
	add(both, s.Out, 1)
	for _, p := range s.In {
		if both[kindOf{p.Marked, p.Measured}] != 0 {
			tb.Errorf("%s: %+v goes out and in", s.Foot, p)
		}
	}
	checkLaid(tb, s)
}

// checkLaid asks that no piece lies between two that are thinner: from the base
// up they get thinner and then thicker again.
func checkLaid(tb testing.TB, s shims.Stack) {
	tb.Helper()
	up := false
	for i := 1; i < len(s.Pieces); i++ {
		a, b := s.Pieces[i-1].Thickness(), s.Pieces[i].Thickness()
		if up && b < a {
			tb.Errorf("%s: a thick piece between thin ones: %v", s.Foot, s.Pieces)
		}
		up = up || b > a
	}
	if thick := thicknesses(s.Pieces); len(thick) > 1 {
		first, last := int64(s.Pieces[0].Thickness()), int64(s.Pieces[len(thick)-1].Thickness())
		if first != thick[0] || last != thick[1] {
			tb.Errorf("%s: the two thickest do not lie outside: %v", s.Foot, s.Pieces)
		}
	}
}

// reachable tells whether any stock could bring a foot to what is wanted.
func reachable(rule shims.Rule, wanted units.Length) bool {
	if rule.Error == 0 {
		rule.Error = shims.DefaultError
	}
	return wanted+rule.Error >= rule.Keep
}

// With what is to be added, every foot is reached that any stock could reach, and
// the others come as near as any stock could bring them.
func TestAddMakesReachable(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	added, exact := 0, 0
	for n := range 4000 {
		stock, rule, orders := small(r)
		c, err := shims.Choose(stock, rule, orders...)
		if err != nil || !c.Proven {
			t.Fatalf("case %d: proven %v, %v", n, c.Proven, err)
		}
		checkChoice(t, stock, rule, orders, c)
		more := slices.Concat(stock, c.Add)
		again, err := shims.Choose(more, rule, orders...)
		if err != nil || !again.Proven {
			t.Fatalf("case %d, again: proven %v, %v", n, again.Proven, err)
		}
		for i, s := range again.Stacks {
			if s.Reached != reachable(rule, s.Wanted) {
				t.Errorf("case %d, foot %d: reached %v with %v added to %v: %+v", n, i, s.Reached, c.Add, stock, s)
			}
			if nearest := max(s.Wanted, rule.Keep); !s.Reached && s.Total != nearest {
				t.Errorf("case %d, foot %d: %v, where a stock could give %v", n, i, s.Total, nearest)
			}
		}
		if len(again.Add) != 0 {
			t.Errorf("case %d: with %v added, %v more is asked for", n, c.Add, again.Add)
		}
		if len(c.Add) > 0 {
			added++
		}
		for _, p := range c.Add {
			if !slices.ContainsFunc(stock, func(q shims.Piece) bool { return q.Thickness() == p.Thickness() }) {
				exact++
				break
			}
		}
	}
	if added < 500 || exact < 100 || exact == added {
		t.Errorf("pieces were added in %d cases, of a new thickness in %d", added, exact)
	}
}

// What is named is no more than is lacking: first a size that is known, then what
// completes the pack that is there, and a whole new one only if that is full.
func TestAddIsNoMoreThanIsLacking(t *testing.T) {
	rows := []struct {
		name  string
		stock shims.Stock
		rule  shims.Rule
		up    []units.Length
		want  []shims.Piece
	}{
		{"one more of a size that ran out", shims.Stock{{Marked: 2 * mm}, {Marked: mm, Count: 1}}, shims.Rule{}, []units.Length{2 * mm}, []shims.Piece{{Marked: 2 * mm, Count: 1}}},
		{"one of two is there", shims.Stock{{Marked: mm, Count: 1}}, shims.Rule{}, []units.Length{2 * mm}, []shims.Piece{{Marked: mm, Count: 1}}},
		{"for two feet, one of three is there", shims.Stock{{Marked: mm, Count: 2}}, shims.Rule{}, []units.Length{mm, 2 * mm}, []shims.Piece{{Marked: mm, Count: 1}}},
		{"the rest of the thickness", shims.Stock{{Marked: mm, Count: 1}}, shims.Rule{}, []units.Length{1300 * um}, []shims.Piece{{Marked: 300 * um, Count: 1}}},
		{"the pack is full", shims.Stock{{Marked: mm, Count: 1}}, shims.Rule{Pieces: 1}, []units.Length{1300 * um}, []shims.Piece{{Marked: 1300 * um, Count: 1}}},
		{"the pack is too high", shims.Stock{{Marked: mm, Count: 1}}, shims.Rule{}, []units.Length{700 * um}, []shims.Piece{{Marked: 700 * um, Count: 1}}},
		{"as measured, not as marked", shims.Stock{{Marked: mm, Measured: 990 * um}}, shims.Rule{}, []units.Length{990 * um}, []shims.Piece{{Marked: mm, Measured: 990 * um, Count: 1}}},
		{"two feet alike", nil, shims.Rule{}, []units.Length{mm, mm}, []shims.Piece{{Marked: mm, Count: 2}}},
		{"up to what has to stay", nil, shims.Rule{Keep: mm}, []units.Length{0}, []shims.Piece{{Marked: mm, Count: 1}}},
		{"nothing helps", shims.Stock{{Marked: mm, Count: 1}}, shims.Rule{}, []units.Length{-mm}, nil},
	}
	for _, row := range rows {
		orders := many(len(row.up))
		for i, up := range row.up {
			orders[i].Correction = up
		}
		c, err := shims.Choose(row.stock, row.rule, orders...)
		if diff := cmp.Diff(row.want, c.Add); diff != "" || err != nil {
			t.Errorf("%s: %v %s", row.name, err, diff)
		}
	}
}

// Doubling the counts never makes a choice worse, and a foot more never better.
func TestMoreStockAndMoreFeet(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for n := range 1000 {
		stock, rule, orders := small(r)
		costs := func(stock shims.Stock, orders []shims.Order) [5]int64 {
			c, err := shims.Choose(stock, rule, orders...)
			if err != nil || !c.Proven {
				t.Fatal(c.Proven, err)
			}
			return costOf(rule, orders, c)
		}
		before := costs(stock, orders)
		if after := costs(slices.Concat(stock, stock), orders); slices.Compare(after[:], before[:]) > 0 {
			t.Errorf("case %d: %v with twice the stock, %v before", n, after, before)
		}
		another := shims.Order{Foot: "another", Correction: 300 * units.Micrometre}
		if after := costs(stock, append(slices.Clip(orders), another)); slices.Compare(after[:], before[:]) < 0 {
			t.Errorf("case %d: %v with a foot more, %v before", n, after, before)
		}
	}
}

// The same input gives the same answer to the last bit, and is left as it was.
func TestChooseIsDeterministicAndLeavesItsInput(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 9))
	for n := range 300 {
		stock, rule, orders := small(r)
		type input struct {
			Stock  shims.Stock
			Orders []shims.Order
		}
		copied := input{slices.Clone(stock), slices.Clone(orders)}
		for i := range copied.Orders {
			copied.Orders[i].Now = slices.Clone(orders[i].Now)
		}
		a, _ := shims.Choose(stock, rule, orders...)
		b, _ := shims.Choose(copied.Stock, rule, copied.Orders...)
		if diff := cmp.Diff(a, b); diff != "" {
			t.Errorf("case %d: %s", n, diff)
		}
		if diff := cmp.Diff(copied, input{stock, orders}); diff != "" {
			t.Errorf("case %d: the input changed: %s", n, diff)
		}
	}
}
