package sheet

import (
	"cmp"
	"maps"
	"math"
	"slices"
)

// theory is a suspect, or two, held against a sheet.
type theory struct {
	suspects []suspect
	expected []span // of every line
	left     []int  // lines that are wrong all the same
	misfit   float64
}

// test holds suspects against a sheet that is followed by the rules already.
func (w Working) test(sheet answers, right track, suspects ...suspect) theory {
	chosen := map[int]rule{}
	for _, s := range suspects {
		maps.Copy(chosen, s.chosen)
	}
	t := theory{suspects: suspects, expected: right.by(w, sheet, chosen).expected}
	t.left = w.wrong(sheet, t.expected)
	for i, own := range sheet {
		t.misfit = max(t.misfit, own.apart(t.expected[i]))
	}
	return t
}

// lines are those at which the theory has a slip.
func (t theory) lines() []int {
	var list []int
	for _, s := range t.suspects {
		list = append(list, s.lines...)
	}
	return list
}

// likelier orders theories: fewer slips, then the better fit, then fewer lines.
func likelier(a, b theory) int {
	return cmp.Or(
		cmp.Compare(len(a.suspects), len(b.suspects)),
		cmp.Compare(a.misfit, b.misfit),
		cmp.Compare(len(a.lines()), len(b.lines())),
	)
}

// leastForTwo is how many independent lines a sheet has to have before two slips at once
// are looked for: with fewer, two can account for almost anything.
const leastForTwo = 4

// theories finds what accounts for the wrong lines of a sheet: single slips; where none
// accounts for all and the sheet says enough, two; or else those single slips that
// account for most, for half of the lines at least, and contradict none that is right.
func (w Working) theories(sheet answers, right track, wrong []int) []theory {
	var alone, whole, partly []theory
	for _, s := range w.suspects() {
		t := w.test(sheet, right, s)
		alone = append(alone, t)
		if len(t.left) == 0 {
			whole = append(whole, t)
		} else if 2*len(t.left) <= len(wrong) && within(t.left, wrong) {
			partly = append(partly, t)
		}
	}
	if len(whole) == 0 && w.independent(sheet) >= leastForTwo {
		whole = w.twos(sheet, right, alone)
	}
	if len(whole) == 0 {
		whole = most(partly)
	}
	slices.SortStableFunc(whole, likelier)
	return whole
}

// twos finds the pairs of slips at different lines that account for all of a sheet. Each
// has to change what is expected of a line that the other leaves wrong, or the sheet shows
// but one of them.
func (w Working) twos(sheet answers, right track, alone []theory) []theory {
	changes := func(t theory, lines []int) bool {
		return slices.ContainsFunc(lines, func(i int) bool { return t.expected[i] != right.expected[i] })
	}
	var whole []theory
	for i, a := range alone {
		for _, b := range alone[i+1:] {
			s, t := a.suspects[0], b.suspects[0]
			if !changes(a, b.left) || !changes(b, a.left) || overlap(s, t) {
				continue
			}
			if both := w.test(sheet, right, s, t); len(both.left) == 0 {
				whole = append(whole, both)
			}
		}
	}
	return whole
}

func overlap(a, b suspect) bool {
	for i := range a.chosen {
		if _, ok := b.chosen[i]; ok {
			return true
		}
	}
	return false
}

func within(some, all []int) bool {
	return !slices.ContainsFunc(some, func(i int) bool { return !slices.Contains(all, i) })
}

// most keeps the theories that leave the fewest lines wrong.
func most(list []theory) []theory {
	least := math.MaxInt
	for _, t := range list {
		least = min(least, len(t.left))
	}
	return slices.DeleteFunc(list, func(t theory) bool { return len(t.left) > least })
}

// merged leaves out a theory that is another of the same kinds of slip with the same
// numbers on the sheet, at further lines beside: so much the sheet does not show. The list
// is in order of likelihood.
func merged(sheet answers, list []theory) []theory {
	var kept []theory
	for _, t := range list {
		if slices.ContainsFunc(kept, func(other theory) bool { return saysAll(sheet, other, t) }) {
			continue
		}
		wider := func(other theory) bool { return saysAll(sheet, t, other) }
		if i := slices.IndexFunc(kept, wider); i >= 0 {
			kept[i] = t // in its place; any others go
			kept = append(kept[:i+1], slices.DeleteFunc(kept[i+1:], wider)...)
		} else {
			kept = append(kept, t)
		}
	}
	return kept
}

// saysAll tells whether a sheet shows of the theory b no more than of a, which has the same
// slips at no other lines.
func saysAll(sheet answers, a, b theory) bool {
	return sameKinds(a, b) && within(a.lines(), b.lines()) && sameNumbers(sheet, a, b)
}

func sameKinds(a, b theory) bool {
	return slices.EqualFunc(a.suspects, b.suspects, func(s, t suspect) bool { return s.kind == t.kind })
}

func sameNumbers(sheet answers, a, b theory) bool {
	for i := range sheet {
		x, y := a.expected[i].at, b.expected[i].at
		if !exactlyAt(x).meets(exactlyAt(y)) {
			return false
		}
	}
	return true
}
