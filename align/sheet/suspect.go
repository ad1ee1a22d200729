package sheet

import (
	"fmt"
	"slices"
)

// suspect is a slip that a hand may have made on a working: the same at all the lines
// that it took for alike.
type suspect struct {
	form
	lines  []int // where it was made, in the order of the working
	chosen map[int]rule
}

// form is a kind of slip in one of its forms.
type form struct {
	kind SlipKind
	form string
}

// suspects lists every slip that can be made on the working. Of each form there is one at
// all lines that have it, and at all of a plane; and for lines of each sort one at all of
// them, at those of a plane, of a group, of a group in one plane, and at each line: a hand
// may slip once, or wherever it meets the same.
func (w Working) suspects() []suspect {
	var list []suspect
	for _, f := range w.forms() {
		for i := range w.lines {
			for _, x := range w.lines[i].ways {
				if f == (form{x.kind, x.form}) {
					list = append(list, w.like(f, i, x)...)
				}
			}
		}
	}
	return distinct(list)
}

// like lists the slips of a form that take a line and those that a hand may take for
// alike, the most lines first.
func (w Working) like(f form, line int, x way) []suspect {
	inPlane := func(i int) bool { return w.lines[i].part() == w.lines[line].part() }
	ofGroup := func(y way) bool { return y.sort == x.sort && y.group == x.group }
	return []suspect{
		w.suspect(f, func(int, way) bool { return true }),
		w.suspect(f, func(i int, _ way) bool { return inPlane(i) }),
		w.suspect(f, func(_ int, y way) bool { return y.sort == x.sort }),
		w.suspect(f, func(i int, y way) bool { return y.sort == x.sort && inPlane(i) }),
		w.suspect(f, func(_ int, y way) bool { return ofGroup(y) }),
		w.suspect(f, func(i int, y way) bool { return ofGroup(y) && inPlane(i) }),
		w.suspect(f, func(i int, _ way) bool { return i == line }),
	}
}

// forms lists the forms of slips that the working knows, in the order of its lines.
func (w Working) forms() []form {
	var list []form
	for i := range w.lines {
		for _, x := range w.lines[i].ways {
			if f := (form{x.kind, x.form}); !slices.Contains(list, f) {
				list = append(list, f)
			}
		}
	}
	return list
}

// suspect takes the way of one form at every line that is meant.
func (w Working) suspect(f form, meant func(i int, x way) bool) suspect {
	s := suspect{form: f, chosen: map[int]rule{}}
	for i := range w.lines {
		for _, x := range w.lines[i].ways {
			if f == (form{x.kind, x.form}) && meant(i, x) {
				s.lines, s.chosen[i] = append(s.lines, i), x.rule
			}
		}
	}
	return s
}

// distinct leaves out suspects that take the same lines as one before.
func distinct(list []suspect) []suspect {
	seen := map[string]bool{}
	var kept []suspect
	for _, s := range list {
		if key := fmt.Sprint(s.form, s.lines); !seen[key] {
			seen[key] = true
			kept = append(kept, s)
		}
	}
	return kept
}
