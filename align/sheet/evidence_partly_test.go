package sheet_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/align/sheet"
)

// errs makes a hand write a wrong number at a line that no slip explains but by chance,
// and go on with it; the function that it returns puts the line right again.
func (d draw) errs(l *handLine) (mend func()) {
	right := l.work
	factor := d.sign() * math.Exp(d.between(-1.5, 1.5))
	l.work = func(v []float64, m mistake) float64 { return factor*right(v, m) + 20*l.sort.keeps }
	return func() { l.work = right }
}

// TestErrorsThatAreNoSlip: a wrong number at one line, by which the sheet goes on. That
// line alone is wrong; how often a slip explains it by chance is told.
func TestErrorsThatAreNoSlip(t *testing.T) {
	t.Parallel()
	sheets, explained := 0, 0
	for seed := range uint64(pairRuns() / 2) {
		seed += 5_000_000
		d := newDraw(seed)
		one := drawnProblem(t, d)
		l := &one.page.lines[d.IntN(len(one.page.lines))]
		mend := d.errs(l)
		s := one.page.write(d.habit(), one.page.all(), nil)
		mend()
		m, err := one.working.Check(s.answers)
		if err != nil {
			t.Fatal(err)
		}
		if worst, _ := one.page.shows(s, nil); worst <= hair {
			continue
		}
		sheets++
		if got := wrongOf(m); !slices.Equal(got, []string{l.id}) {
			t.Errorf("seed %d: wrong are %q, not %q", seed, got, l.id)
		}
		if len(m.Explanations) > 0 {
			explained++
		}
		for _, e := range m.Explanations {
			if len(e.Slips) != 1 || !slices.Contains(e.Slips[0].Steps, l.id) {
				t.Errorf("seed %d: %s is wrong, accused is %v", seed, l.id, e)
			}
		}
	}
	t.Logf("%d sheets with a wrong number that is no slip: a slip explains it by chance on %d", sheets, explained)
}

// all are all lines of a page.
func (p *handPage) all() []bool { return slices.Repeat([]bool{true}, len(p.lines)) }

// TestSlipBesideAnError: a slip, and a wrong number that is none at another line of a full
// sheet. The slip is named with that line left, unless by chance there is more to be named;
// and what is named leaves no line that is right.
func TestSlipBesideAnError(t *testing.T) {
	t.Parallel()
	sheets, named, whole := 0, 0, 0
	for seed := range uint64(pairRuns() / 2) {
		seed += 6_000_000
		d := newDraw(seed)
		one := drawnProblem(t, d)
		deeds := one.page.deeds()
		if len(deeds) == 0 {
			continue
		}
		x, i := d.deed(deeds), d.IntN(len(one.page.lines))
		if slices.Contains(x.lines, i) {
			continue
		}
		mend := d.errs(&one.page.lines[i])
		s := one.page.write(d.habit(), one.page.all(), x.made())
		mend()
		m, err := one.working.Check(s.answers)
		if err != nil {
			t.Fatal(err)
		}
		_, wrong := one.page.shows(s, nil)
		_, left := one.page.shows(s, x.made())
		if len(left) == 0 || len(left) == len(wrong) {
			continue // one of them does not show
		}
		sheets++
		one.page.checkLeft(t, seed, m, wrong)
		switch {
		case len(m.Explanations) > 0 && m.Explanations[0].Left == nil:
			whole++
		case slices.ContainsFunc(m.Explanations, func(e sheet.Explanation) bool {
			return slices.Equal(e.Left, one.page.ids(left)) && one.page.names(sheet.Explanation{Slips: e.Slips}, x)
		}):
			named++
		default:
			t.Errorf("seed %d: %s: %v beside an error at %s: %v", seed, one.working.Title(), x, one.page.lines[i].id, m.Explanations)
		}
	}
	t.Logf("%d sheets with a slip and an error: the slip is named with the error left on %d, both are explained by chance on %d", sheets, named, whole)
}

// checkLeft: what explanations leave is wrong, and no more than others leave.
func (p *handPage) checkLeft(t *testing.T, seed uint64, m sheet.Marking, wrong []int) {
	t.Helper()
	for _, e := range m.Explanations {
		if len(e.Left) != len(m.Explanations[0].Left) || len(e.Left) >= len(wrong) {
			t.Errorf("seed %d: %v leaves %q of %q", seed, e, e.Left, p.ids(wrong))
		}
		for _, id := range e.Left {
			if !slices.Contains(p.ids(wrong), id) {
				t.Errorf("seed %d: %v leaves %s, which is right", seed, e, id)
			}
		}
	}
}
