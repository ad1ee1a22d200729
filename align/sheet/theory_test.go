package sheet

import (
	"slices"
	"testing"
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
