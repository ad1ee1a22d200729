package sheet_test

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align/sheet"
)

// deed is one slip that a hand can make on a page: a mistake, and all lines at which it
// is made together.
type deed struct {
	mistake
	where string
	lines []int
}

func (x deed) made() map[int]mistake {
	m := make(map[int]mistake, len(x.lines))
	for _, i := range x.lines {
		m[i] = x.mistake
	}
	return m
}

func (x deed) String() string { return fmt.Sprintf("%v %q %s", x.kind, x.form, x.where) }

// deeds lists all slips on a page: each mistake wherever it can be made, in one plane, on
// one dial or one leg, there in one plane, and at one line alone.
func (p *handPage) deeds() []deed {
	var list []deed
	add := func(x deed) {
		same := func(y deed) bool { return x.mistake == y.mistake && slices.Equal(x.lines, y.lines) }
		if !slices.ContainsFunc(list, same) {
			list = append(list, x)
		}
	}
	var order []mistake
	type place struct {
		mistake
		where string
	}
	places := map[place][]int{}
	var names []place
	for i := range p.lines {
		for _, c := range p.lines[i].can {
			if !slices.Contains(order, c.mistake) {
				order = append(order, c.mistake)
			}
			plane := planeOf(p.lines[i].id)
			for _, where := range [...]string{"everywhere", plane, "on " + c.group, "on " + c.group + plane, "at " + p.lines[i].id} {
				at := place{c.mistake, where}
				if places[at] == nil {
					names = append(names, at)
				}
				places[at] = append(places[at], i)
			}
		}
	}
	for _, m := range order {
		for _, at := range names {
			if at.mistake == m {
				add(deed{m, at.where, places[at]})
			}
		}
	}
	return list
}

func planeOf(id string) string {
	for _, in := range handPlanes {
		if strings.HasPrefix(id, in.name) {
			return " in the " + in.name + " plane"
		}
	}
	return " in no plane"
}

// deed draws a slip: first of which kind, so that all kinds are seen, then where.
func (d draw) deed(list []deed) deed {
	var kinds []sheet.SlipKind
	for _, x := range list {
		if !slices.Contains(kinds, x.kind) {
			kinds = append(kinds, x.kind)
		}
	}
	kind := kinds[d.IntN(len(kinds))]
	var of []deed
	for _, x := range list {
		if x.kind == kind {
			of = append(of, x)
		}
	}
	return of[d.IntN(len(of))]
}

// names tells whether an explanation is the deed: one slip of its kind that leaves
// nothing, at lines of the deed alone.
func (p *handPage) names(e sheet.Explanation, x deed) bool {
	if len(e.Slips) != 1 || e.Left != nil || e.Slips[0].Kind != x.kind || len(e.Slips[0].Steps) == 0 {
		return false
	}
	return !slices.ContainsFunc(e.Slips[0].Steps, func(id string) bool {
		return !slices.ContainsFunc(x.lines, func(i int) bool { return p.lines[i].id == id })
	})
}

// rivals are the other deeds that the same hand would have written the same numbers
// with. What is of the same kind at some of the same lines is no rival.
func (p *handPage) rivals(list []deed, x deed, h habit, s *handSheet) []deed {
	var same []deed
	for _, y := range list {
		if y.kind == x.kind && !slices.ContainsFunc(y.lines, func(i int) bool { return !slices.Contains(x.lines, i) }) {
			continue
		}
		if maps.Equal(p.write(h, s.written, y.made()).answers, s.answers) {
			same = append(same, y)
		}
	}
	return same
}

// tally counts what became of the sheets.
type tally struct {
	sheets, shown, named, alone, first int
	near, nearFirst                    int // of those alone: others come near, within what rounding hides
	tied                               map[sheet.SlipKind]int
	asked, settled, unaskedFor         int
	misses                             []string
}

func TestSlipsAreNamed(t *testing.T) {
	t.Parallel()
	count := tally{tied: map[sheet.SlipKind]int{}}
	for seed := range uint64(runs(5000)) {
		count.try(t, 2_000_000+seed)
	}
	t.Logf("%d sheets: the slip shows on %d; of these it is named on %d; on %d it is alone, there it is first on %d",
		count.sheets, count.shown, count.named, count.alone, count.first)
	t.Logf("on %d of these others come near, there it is first on %d", count.near, count.nearFirst)
	t.Logf("ties by kind: %v", count.tied)
	t.Logf("lines are asked for on %d sheets, and settle it on %d; %d sheets where one could have been asked for", count.asked, count.settled, count.unaskedFor)
	if count.named != count.shown {
		t.Errorf("the slip is not named on %d sheets of %d", count.shown-count.named, count.shown)
	}
	if 100*count.first < 99*count.alone {
		t.Errorf("the slip is first on %d sheets of %d where nothing ties", count.first, count.alone)
	}
	if few := 20; count.near >= few && 2*count.nearFirst < count.near {
		t.Errorf("where others come near, the slip is first on %d of %d", count.nearFirst, count.near)
	}
	for _, miss := range count.misses[:min(len(count.misses), 40)] {
		t.Log(miss)
	}
}

func (c *tally) try(t *testing.T, seed uint64) {
	t.Helper()
	d := newDraw(seed)
	one := drawnProblem(t, d)
	deeds := one.page.deeds()
	if len(deeds) == 0 {
		return
	}
	c.sheets++
	x := d.deed(deeds)
	h, which := d.habit(), d.which(one.page)
	s := one.page.write(h, which, x.made())
	m, err := one.working.Check(s.answers)
	if err != nil {
		t.Fatalf("seed %d: %v of %v", seed, err, s.answers)
	}
	worst, wrong := one.page.shows(s, nil)
	if worst > -hair && worst < hair {
		return // on the edge
	}
	if shows := worst > 0; shows == m.Right() {
		t.Errorf("seed %d: %v: %+v: off by %v places of a right hand, but right: %v: %+v", seed, x, h, worst, m.Right(), m)
	}
	if worst <= 0 {
		return
	}
	c.shown++
	if got := wrongOf(m); !slices.Equal(got, one.page.ids(wrong)) {
		t.Errorf("seed %d: %v: wrong are %q, by hand %q", seed, x, got, one.page.ids(wrong))
	}
	at := slices.IndexFunc(m.Explanations, func(e sheet.Explanation) bool { return one.page.names(e, x) })
	if at < 0 {
		c.misses = append(c.misses, fmt.Sprintf("seed %d, %s: %v: not among %v", seed, one.working.Title(), x, m.Explanations))
		return
	}
	c.named++
	if rivals := one.page.rivals(deeds, x, h, s); len(rivals) > 0 {
		c.tied[x.kind]++
	} else {
		c.alone++
		if len(m.Explanations) > 1 {
			c.near++
		}
		if at == 0 {
			c.first++
			if len(m.Explanations) > 1 {
				c.nearFirst++
			}
		} else {
			c.misses = append(c.misses, fmt.Sprintf("seed %d, %s: %+v, %v: only number %d: %v", seed, one.working.Title(), h, x, at, m.Explanations))
		}
	}
	c.ask(t, one, x, h, s, m)
}

// ask writes the lines asked for as the same hand would, and looks whether the slip is
// left alone.
func (c *tally) ask(t *testing.T, one drawn, x deed, h habit, s *handSheet, m sheet.Marking) {
	t.Helper()
	if m.Ask == nil {
		c.unasked(t, one, one.page.deeds(), s, m)
		return
	}
	c.asked++
	which := slices.Clone(s.written)
	for _, id := range m.Ask {
		i := slices.IndexFunc(one.page.lines, func(l handLine) bool { return l.id == id })
		if i < 0 || which[i] {
			t.Fatalf("asked for %q, which is no line or is written already", id)
		}
		which[i] = true
	}
	more, err := one.working.Check(one.page.write(h, which, x.made()).answers)
	if err != nil {
		t.Fatal(err)
	}
	if len(more.Explanations) == 1 && one.page.names(more.Explanations[0], x) {
		c.settled++
	}
}

// unasked looks for a line that would tell two explanations apart where none is asked for.
func (c *tally) unasked(t *testing.T, one drawn, deeds []deed, s *handSheet, m sheet.Marking) {
	t.Helper()
	var dues [][]interval
	for _, e := range m.Explanations {
		if x, ok := one.page.theDeed(deeds, s, e); ok {
			dues = append(dues, one.page.dues(s, x.made()))
		}
	}
	for i := range one.page.lines {
		l := &one.page.lines[i]
		for a := range dues {
			for b := range a {
				if apart := dues[a][i].apart(dues[b][i]); !s.written[i] && apart > 3*l.sort.keeps {
					c.unaskedFor++
					c.misses = append(c.misses, fmt.Sprintf("%s: %v: %s tells them apart and is not asked for", one.working.Title(), m.Explanations, l.id))
					return
				}
			}
		}
	}
}

// theDeed is the one that an explanation must mean, if only one can be meant.
func (p *handPage) theDeed(deeds []deed, s *handSheet, e sheet.Explanation) (deed, bool) {
	var meant []deed
	for _, x := range deeds {
		if len(e.Slips) == 1 && e.Slips[0].Kind == x.kind && slices.Equal(e.Slips[0].Steps, p.ids(x.lines)) {
			if worst, _ := p.shows(s, x.made()); worst <= hair {
				meant = append(meant, x)
			}
		}
	}
	if len(meant) != 1 {
		return deed{}, false
	}
	return meant[0], true
}

func wrongOf(m sheet.Marking) []string {
	var ids []string
	for _, j := range m.Lines {
		if !j.Right {
			ids = append(ids, j.Step)
		}
	}
	return ids
}

func (p *handPage) ids(lines []int) []string {
	var ids []string
	for _, i := range lines {
		ids = append(ids, p.lines[i].id)
	}
	return ids
}
