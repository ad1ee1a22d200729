package shims

import "sync"

// search finds the packs of all feet. What a choice costs is the sum over its
// feet, and all that couples these is that no size may be used up: so the sum of
// what each foot would take alone is a lower bound.
type search struct {
	problem
	budget
	own    []pack  // the best of each foot alone
	bound  cost    // the sum of their costs
	chosen []pack  // the best choice so far
	total  cost    // its cost
	proven bool    // nothing is better
	room   int     // how long the lists of packs are at first
	tried  [2]pack // by two feet that choose again
	taken  []int   // of each kind under each foot, and what is left
}

// searches lends its memory to one call after the other: to get it anew would take
// as long as a search that comes to its end at once. It holds nothing of a caller's.
var searches = sync.Pool{New: func() any { return new(search) }}

// begin sets a search to its start. Nothing is kept of the one before but memory.
func (s *search) begin(stock Stock, rule Rule, orders []Order) {
	s.problem.begin(stock, rule, orders)
	*s = search{
		problem: s.problem, budget: budget{most: rule.Nodes}, room: firstRoom,
		own: zeros(s.own, len(orders)), chosen: zeros(s.chosen, len(orders)), taken: s.taken,
	}
}

// zeros returns so many zeros, in the memory of a list where there is enough.
func zeros[T any](list []T, n int) []T {
	if n > cap(list) {
		return make([]T, n)
	}
	list = list[:n]
	clear(list)
	return list
}

func (s *search) run() {
	whole := s.alone()
	if s.fit(s.own) {
		copy(s.chosen, s.own)
		s.total, s.proven = s.bound, whole
		return
	}
	s.inTurn()
	if s.total.missesMoreThan(s.bound) {
		s.improve()
	}
	if whole {
		s.proven = s.together()
	}
}

// alone finds the best pack of each foot as if there were no others, and tells
// whether the budget was enough for that. It spends half of it at most.
func (s *search) alone() (whole bool) {
	whole = true
	for i := range s.feet {
		if twin := s.feet[i].twin; twin >= 0 {
			s.own[i] = s.own[twin]
		} else {
			whole = s.best(i, s.own[i:i:i+1], s.share(i, s.most/2)) && whole
		}
		s.bound = s.bound.plus(s.own[i].cost)
	}
	return whole
}

// inTurn lets one foot after the other take its best of what is left: a choice
// to begin with. It spends half of the budget that is left at most.
func (s *search) inTurn() {
	most := s.nodes + (s.most-s.nodes)/2
	for i := range s.feet {
		s.best(i, s.chosen[i:i:i+1], s.share(i, most))
		s.take(&s.chosen[i])
		s.total = s.total.plus(s.chosen[i].cost)
	}
	for i := range s.chosen {
		s.putBack(&s.chosen[i])
	}
}

// improve lets two feet at a time give back their packs and choose again, in
// either order, until no two have anything to gain, which was seen to take five
// rounds at most. It spends half of the budget that is left at most.
func (s *search) improve() {
	most := s.nodes + (s.most-s.nodes)/2
	for i := range s.chosen {
		s.take(&s.chosen[i])
	}
	const rounds = 100
	for range rounds {
		if s.nodes >= most || !s.exchangeAll(most) {
			break
		}
	}
	for i := range s.chosen {
		s.putBack(&s.chosen[i])
	}
}

// exchangeAll goes once through all pairs of feet, and tells whether any gained.
func (s *search) exchangeAll(most int) (gained bool) {
	for i := range s.feet {
		for j := range s.feet {
			gained = i != j && s.exchange(i, j, most) || gained
		}
	}
	return gained
}

// exchange lets foot i choose again, and then foot j of what it leaves. It tells
// whether that was a gain; if not, both have their packs again.
func (s *search) exchange(i, j, most int) (gained bool) {
	first, second := &s.tried[0], &s.tried[1]
	s.putBack(&s.chosen[i])
	s.putBack(&s.chosen[j])
	s.best(i, s.tried[0:0:1], most)
	s.take(first)
	s.best(j, s.tried[1:1:2], most)
	s.take(second)
	before := s.chosen[i].cost.plus(s.chosen[j].cost)
	after := first.cost.plus(second.cost)
	if after.compare(before) < 0 {
		s.chosen[i], s.chosen[j] = *first, *second
		s.total = s.total.plus(after.minus(before))
		return true
	}
	s.putBack(first)
	s.putBack(second)
	s.take(&s.chosen[i])
	s.take(&s.chosen[j])
	return false
}

// share returns up to where foot i may spend, so that the feet from i on share
// the nodes up to most.
func (s *search) share(i, most int) int { return s.nodes + (most-s.nodes)/(len(s.feet)-i) }

// best puts the best pack of foot i, of what is left of the pool, into the room
// for one that it is given. There always is one: the empty pack costs no node.
// It spends up to most.
func (s *search) best(i int, into []pack, most int) (whole bool) {
	h := hunt{
		problem: &s.problem, foot: &s.feet[i], pool: s.pool, room: 1, limit: worst, found: into,
		nodes: &s.budget, quota: most,
	}
	h.run()
	return !h.cut
}

// fit tells whether there are enough pieces for all packs.
func (s *search) fit(packs []pack) bool {
	enough := true
	for i := range packs {
		s.take(&packs[i])
	}
	for i := range packs {
		for _, size := range packs[i].pieces() {
			enough = enough && s.pool[size] >= 0
		}
	}
	for i := range packs {
		s.putBack(&packs[i])
	}
	return enough
}

// take takes a pack off the pool.
func (s *search) take(k *pack) {
	for _, size := range k.pieces() {
		s.pool[size]--
	}
}

// putBack undoes take.
func (s *search) putBack(k *pack) {
	for _, size := range k.pieces() {
		s.pool[size]++
	}
}

// has tells whether a pack can be made of what is left of the pool.
func (s *search) has(k *pack) bool {
	for size, n := range k.counts() {
		if s.pool[size] < n {
			return false
		}
	}
	return true
}
