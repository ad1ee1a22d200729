package shims

import (
	"slices"

	"example.org/collinear/units"
)

// served tells whether no stock could bring foot i nearer.
func (s *search) served(i int) bool {
	return s.asGood(i, s.chosen[i].cost)
}

// asGood tells whether no stock could bring foot i nearer than a pack that costs c.
func (s *search) asGood(i int, c cost) bool { return c.short == 0 && c.excess == s.out(i) }

// out is by how much foot i misses what is allowed whatever there is in stock:
// where less is wanted than has to stay, or less than nothing.
func (s *search) out(i int) int64 { return max(0, s.keep-s.feet[i].wanted-s.err) }

// lacking returns pieces with which, added to the stock, every foot could come as
// near as any stock could bring it: the feet that are served keep their packs, and
// each of the others gets one of its own. It takes so many nodes at most.
func (s *search) lacking(nodes int) []Piece {
	var rest []int
	for i := range s.feet {
		if !s.served(i) {
			rest = append(rest, i)
		}
	}
	if len(rest) == 0 {
		return nil
	}
	l := lack{search: s, left: slices.Clone(s.pool), spent: budget{most: nodes}}
	l.plenty = slices.Repeat([]int{s.slots}, len(s.pool))
	for i := range s.feet {
		if s.served(i) {
			l.use(&s.chosen[i])
		}
	}
	for n, i := range rest {
		l.serve(i, l.spent.nodes+(l.spent.most-l.spent.nodes)/(len(rest)-n))
	}
	return l.add
}

// lack gathers the pieces that are lacking.
type lack struct {
	*search
	spent  budget // on naming them
	left   []int  // what the packs that were settled have left of each size
	plenty []int  // as many of each size as a foot could use
	add    []Piece
}

// serve settles a pack for foot i: first of more of the sizes that are known, and
// if these do not do, with one piece of just the thickness that is missing.
func (l *lack) serve(i, quota int) {
	h := hunt{
		problem: &l.problem, foot: &l.feet[i], pool: l.plenty, room: 1, limit: worst,
		nodes: &l.spent, quota: quota,
	}
	h.run()
	if l.asGood(i, h.found[0].cost) {
		l.use(&h.found[0])
		return
	}
	missing := max(l.feet[i].wanted, l.keep)
	if k := &l.chosen[i]; k.total < missing && k.cost.pieces < l.slots {
		l.use(k)
		missing -= k.total
	}
	if missing > 0 {
		l.name(Piece{Marked: units.Length(missing)}, 1)
	}
}

// use takes a pack off what is left, and names what there is not enough of.
func (l *lack) use(k *pack) {
	for size, n := range k.counts() {
		there := min(n, l.left[size])
		l.left[size] -= there
		if n > there {
			l.name(l.kinds[l.sizes[size].first].Piece, n-there)
		}
	}
}

// name adds so many of a kind to the list.
func (l *lack) name(p Piece, count int) {
	i := slices.IndexFunc(l.add, p.sameKind)
	if i < 0 {
		i = len(l.add)
		p.Count = 0
		l.add = append(l.add, p)
	}
	l.add[i].Count += count
}
