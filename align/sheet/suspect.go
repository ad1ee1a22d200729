package sheet

import (
	"maps"
	"slices"
)

// suspect is a slip that a hand may have made on a working: the same at all the lines
// that it took for alike.
type suspect struct {
	form
	chosen map[int]rule
}

// form is a kind of slip in one of its forms.
type form struct {
	kind SlipKind
	form int
}

// suspects lists every slip that can be made on the working: of each kind and form at
// all lines that have it, at those of each group, and at each line alone.
func (w Working) suspects() []suspect {
	var list []suspect
	for _, s := range w.forms() {
		list = append(list, w.suspect(s, func(int, way) bool { return true }))
		for _, group := range w.groups(s) {
			list = append(list, w.suspect(s, func(_ int, x way) bool { return x.group == group }))
		}
		for i := range w.lines {
			list = append(list, w.suspect(s, func(at int, _ way) bool { return at == i }))
		}
	}
	return distinct(list)
}

// forms lists the forms of slips that the working knows, in a fixed order.
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

func (w Working) groups(f form) []string {
	var list []string
	for i := range w.lines {
		for _, x := range w.lines[i].ways {
			if x.kind == f.kind && x.form == f.form && !slices.Contains(list, x.group) {
				list = append(list, x.group)
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
			if x.kind == f.kind && x.form == f.form && meant(i, x) {
				s.chosen[i] = x.rule
			}
		}
	}
	return s
}

// distinct leaves out suspects that take no line, or the same lines as one before.
func distinct(list []suspect) []suspect {
	var kept []suspect
	for _, s := range list {
		same := func(other suspect) bool {
			return s.form == other.form && slices.Equal(s.lines(), other.lines())
		}
		if len(s.chosen) > 0 && !slices.ContainsFunc(kept, same) {
			kept = append(kept, s)
		}
	}
	return kept
}

// lines are where the slip was made, in the order of the working.
func (s suspect) lines() []int { return slices.Sorted(maps.Keys(s.chosen)) }
