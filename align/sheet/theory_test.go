package sheet

import (
	"maps"
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// suspected is a slip of one kind at the given lines, which does nothing.
func suspected(kind SlipKind, lines ...int) suspect {
	s := suspect{form: form{kind: kind}, lines: lines, chosen: map[int]rule{}}
	for _, i := range lines {
		s.chosen[i] = nil
	}
	return s
}

// Theories stand in the order in which a trainer would ask: one slip before two, then the
// one that fits better, then the one at fewer lines.
func TestLikelier(t *testing.T) {
	one, two := suspected(SagOnce, 1), suspected(TotalNotHalved, 2, 3)
	inOrder := []theory{
		{suspects: []suspect{one}, misfit: 0.1},
		{suspects: []suspect{two}, misfit: 0.1},
		{suspects: []suspect{one}, misfit: 0.2},
		{suspects: []suspect{one, two}, misfit: 0},
	}
	for i := range inOrder {
		for j := range inOrder {
			if got := likelier(inOrder[i], inOrder[j]); (got < 0) != (i < j) || (got > 0) != (i > j) {
				t.Errorf("theory %d against %d: %d", i, j, got)
			}
		}
	}
}

// says is a theory that expects the given numbers of a page's lines.
func says(s suspect, expected ...float64) theory {
	th := theory{suspects: []suspect{s}}
	for _, x := range expected {
		th.expected = append(th.expected, exactlyAt(x))
	}
	return th
}

// Of two lines that could be asked for, the one that parts all theories is enough.
func TestAskForTheLineThatPartsMost(t *testing.T) {
	w := Working{lines: []line{{kind: reading}, {kind: reading}, {kind: reading}}}
	theories := []theory{
		says(suspected(SagOnce, 0), 1e6, 1e6, 0),
		says(suspected(SagAdded, 0), 2e6, 2e6, 0),
		says(suspected(SagForgotten, 0), 2e6, 3e6, 0),
	}
	if got := w.ask(answers{2: {}}, theories); !slices.Equal(got, []int{1}) {
		t.Errorf("asks for lines %v", got)
	}
	if got := w.ask(answers{0: {}, 1: {}, 2: {}}, theories); got != nil {
		t.Errorf("asks for lines %v that are all on the sheet", got)
	}
}

// A slip at more lines is left out for the same at fewer, where the sheet shows no
// difference; where it does both stay, and so do other slips and other lines.
func TestMerged(t *testing.T) {
	few, more, elsewhere := suspected(SagOnce, 0), suspected(SagOnce, 0, 1), suspected(SagOnce, 1)
	sheet := answers{2: {}}
	for name, row := range map[string]struct {
		list []theory
		want []int // which of the list stay
	}{
		"the narrower first":   {[]theory{says(few, 0, 0, 5), says(more, 0, 9, 5)}, []int{0}},
		"the wider first":      {[]theory{says(more, 0, 9, 5), says(few, 0, 0, 5)}, []int{1}},
		"the sheet tells them": {[]theory{says(few, 0, 0, 5), says(more, 0, 9, 6)}, []int{0, 1}},
		"other lines":          {[]theory{says(few, 0, 0, 5), says(elsewhere, 0, 0, 5)}, []int{0, 1}},
		"another slip":         {[]theory{says(few, 0, 0, 5), says(suspected(SagAdded, 0, 1), 0, 0, 5)}, []int{0, 1}},
		"two that are wider":   {[]theory{says(more, 0, 9, 5), says(suspected(SagOnce, 0, 2), 0, 8, 5), says(few, 0, 0, 5)}, []int{2}},
	} {
		var want [][]int
		for _, i := range row.want {
			want = append(want, row.list[i].lines())
		}
		var got [][]int
		for _, th := range merged(sheet, row.list) {
			got = append(got, th.lines())
		}
		if !slices.EqualFunc(got, want, slices.Equal[[]int]) {
			t.Errorf("%s: %v stay, want %v", name, got, want)
		}
	}
}

// independentLines is a page of lines that have nothing in common, of 1 mm each, any of
// which a hand may double or triple.
func independentLines(t *testing.T, ids ...string) Working {
	t.Helper()
	times := func(factor float64) rule { return func(v values) float64 { return factor * v[0] } }
	var p page
	for _, id := range ids {
		p.add(line{
			id: id, kind: reading, inputs: []input{put(id, reading, units.Millimetre)}, rule: times(1),
			ways: []way{{kind: TotalNotHalved, rule: times(2)}, {kind: SagOnce, rule: times(3)}},
		})
	}
	w, err := p.working("", 0)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// A slip is named that accounts for half of the wrong lines, and none that accounts for
// less. Lines at 2 mm are doubled, those at 7 mm are wrong by no slip.
func TestSlipForHalfOfTheLines(t *testing.T) {
	w := independentLines(t, "a", "b", "c")
	for _, row := range []struct {
		name string
		mm   map[string]string
		want int
		left []string
	}{
		{"one of one", map[string]string{"a": "2.00 mm", "b": "1.00 mm", "c": "1.00 mm"}, 1, nil},
		{"one of two", map[string]string{"a": "2.00 mm", "b": "7.00 mm", "c": "1.00 mm"}, 1, []string{"b"}},
		{"two of three", map[string]string{"a": "2.00 mm", "b": "2.00 mm", "c": "7.00 mm"}, 1, []string{"c"}},
		{"one of three", map[string]string{"a": "2.00 mm", "b": "7.00 mm", "c": "7.00 mm"}, 0, []string{"a", "b", "c"}},
	} {
		m, err := w.Check(row.mm)
		if err != nil || len(m.Explanations) != row.want || !slices.Equal(m.Unexplained(), row.left) {
			t.Errorf("%s: %+v, %v", row.name, m, err)
		}
	}
}

// Two slips at once are named on a sheet with four independent lines, and on none with
// fewer, where each is named with the line that it leaves.
func TestTwoSlipsWantFourLines(t *testing.T) {
	doubled, tripled := Slip{TotalNotHalved, []string{"a"}}, Slip{SagOnce, []string{"b"}}
	for _, row := range []struct {
		sheet map[string]string
		want  []Explanation
	}{
		{map[string]string{"a": "2.00 mm", "b": "3.00 mm", "c": "1.00 mm", "d": "1.00 mm"},
			[]Explanation{{Slips: []Slip{doubled, tripled}}}},
		{map[string]string{"a": "2.00 mm", "b": "3.00 mm", "c": "1.00 mm"}, // the likelier first: what is left is off by less
			[]Explanation{{Slips: []Slip{tripled}, Left: []string{"a"}}, {Slips: []Slip{doubled}, Left: []string{"b"}}}},
	} {
		m, err := independentLines(t, slices.Sorted(maps.Keys(row.sheet))...).Check(row.sheet)
		if diff := cmp.Diff(row.want, m.Explanations); diff != "" || err != nil {
			t.Errorf("%d lines: %v, (-want +got)\n%s", len(row.sheet), err, diff)
		}
	}
}

// Lines are independent as far as the given numbers move them by themselves, whatever
// their units make of their size.
func TestRank(t *testing.T) {
	for name, row := range map[string]struct {
		rows [][]float64
		want int
	}{
		"none":                         {nil, 0},
		"one that nothing moves":       {[][]float64{{0, 0}}, 0},
		"one beside it":                {[][]float64{{0, 0}, {3, 4}}, 1},
		"the same twice":               {[][]float64{{3, 4}, {3, 4}}, 1},
		"a sum, but for rounding":      {[][]float64{{1e6, 0, 0}, {0, 1e6, 0}, {1e6, 1e6, 0.1}}, 2},
		"a sum and more":               {[][]float64{{1e6, 0, 0}, {0, 1e6, 0}, {1e6, 1e6, 10}}, 3},
		"two slopes, in what they are": {[][]float64{{3e-9, 1e-9}, {1e-9, 3e-9}}, 2},
		"a length and a slope of it":   {[][]float64{{1e6, 2e6}, {1e-6, 2e-6}}, 1},
	} {
		if got := rank(row.rows); got != row.want {
			t.Errorf("%s: %d, want %d", name, got, row.want)
		}
	}
}

// A line moves with each given number by as much as its formula says, and with no other.
// An opening is g = a * D, of 2 mm/m in the vertical plane and 1 mm/m in the other over
// 200 mm: where a slope is 1e-4 more it is 1e-4 * 200 mm = 20 um more, and where the
// diameter is 20 um more, 0.002 * 20 um = 40 nm and 0.001 * 20 um = 20 nm.
func TestSlopesOfALine(t *testing.T) {
	w, err := Problem{GapFromSlope: &GapFromSlope{Diameter: 200 * units.Millimetre, Centreline: align.Centreline{
		Vertical: align.Line{Slope: 2e-3}, Horizontal: align.Line{Slope: 1e-3},
	}}}.Working()
	if err != nil {
		t.Fatal(err)
	}
	for id, want := range map[string][]float64{ // by the vertical slope, the diameter, the other slope
		"vertical.opening":   {20_000, 40, 0},
		"horizontal.opening": {0, 20, 20_000},
	} {
		i, _ := w.find(id)
		same := func(x, y float64) bool { return math.Abs(x-y) < 1e-6 }
		if got := w.slopes(i); !slices.EqualFunc(got, want, same) {
			t.Errorf("%s: %v, want %v", id, got, want)
		}
	}
}

// A slip that would make a line wrong which is right explains nothing, though it accounts
// for another.
func TestNoSlipContradictsWhatIsRight(t *testing.T) {
	total := func(factor float64) rule { return func(v values) float64 { return factor * v[0] } }
	ways := []way{{kind: TotalNotHalved, rule: total(2)}}
	number := func(id string, x float64) line {
		return line{id: id, kind: reading, inputs: []input{put("r", reading, x)}, rule: total(1), ways: ways}
	}
	var p page
	p.add(number("a", 1e6))
	p.add(number("b", 2e6))
	p.add(number("c", 3e6))
	w, err := p.working("", 0)
	if err != nil {
		t.Fatal(err)
	}
	m, err := w.Check(map[string]string{"a": "2 mm", "b": "2 mm", "c": "7 mm"}) // a doubled, b right, c neither
	if err != nil {
		t.Fatal(err)
	}
	if len(m.Explanations) != 1 || !slices.Equal(m.Explanations[0].Slips[0].Steps, []string{"a"}) || !slices.Equal(m.Unexplained(), []string{"c"}) {
		t.Errorf("%+v", m)
	}
}
