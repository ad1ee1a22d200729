package shims

// The list of packs of a foot begins with so many, and is made longer by a
// factor until it is known to hold all that matter.
const (
	firstRoom = 64
	moreRoom  = 8
	mostRoom  = firstRoom * moreRoom * moreRoom * moreRoom
)

// together looks for a choice that is better than the one in hand, or as good and
// before it in the order of the package comment. It tells whether it came to its
// end, so that there is none.
//
// The packs of each foot are listed, best first. A pack is worth trying only if
// it leaves the others room for their own best. Lists are cut off at a length, and
// longer ones are made only if what was cut off could matter.
func (s *search) together() (proven bool) {
	j := newJoint(s)
	for room := s.room; room <= mostRoom; room *= moreRoom {
		if !j.list(room) {
			return false
		}
		j.found, j.cut = false, false
		j.serve(0, cost{})
		if j.cut {
			return false
		}
		if !j.tailsMatter() {
			return true
		}
	}
	return false
}

// joint is a depth-first search over the feet in the order of their orders, and
// over the packs of each from the best on. So of choices that cost the same it
// finds that one first which the package comment promises.
type joint struct {
	*search
	lists [][]pack
	tails []bool  // there are more packs than the list has
	first [][]int // at each depth: the first pack of each foot that can still be had
	path  []int   // the packs taken so far
	found bool    // a choice as good as s.chosen was found in these lists, and is s.chosen
	cut   bool    // the budget ended
}

func newJoint(s *search) *joint {
	feet := len(s.feet)
	j := &joint{
		search: s, lists: make([][]pack, feet), tails: make([]bool, feet),
		first: make([][]int, feet+1), path: make([]int, feet),
	}
	numbers := make([]int, feet*(feet+1))
	for depth := range j.first {
		j.first[depth], numbers = numbers[:feet:feet], numbers[feet:]
	}
	return j
}

// list fills the lists with up to room packs each that could be part of a choice
// as good as the one in hand. It tells whether the budget was enough.
func (j *joint) list(room int) bool {
	for i := range j.feet {
		if twin := j.feet[i].twin; twin >= 0 {
			j.lists[i], j.tails[i] = j.lists[twin], j.tails[twin]
			continue
		}
		h := hunt{
			problem: &j.problem, foot: &j.feet[i], pool: j.pool, room: room, limit: j.allows(i), found: j.lists[i][:0],
			nodes: &j.budget, quota: j.most,
		}
		h.limit.handled++ // as good is good enough
		h.run()
		if h.cut {
			return false
		}
		j.lists[i], j.tails[i] = h.found, h.truncated
	}
	return true
}

// allows returns the most that foot i may cost in a choice that is as good as the
// one in hand: what that costs, less what all others cost at least.
func (j *joint) allows(i int) cost { return j.total.minus(j.bound).plus(j.own[i].cost) }

// tailsMatter tells whether a pack that did not get on its list could be part of
// a choice as good as the one in hand.
func (j *joint) tailsMatter() bool {
	for i, list := range j.lists {
		if j.tails[i] && list[len(list)-1].cost.compare(j.allows(i)) <= 0 {
			return true
		}
	}
	return false
}

// serve tries all packs of the feet from i on that could make a better choice;
// those before it cost so much.
func (j *joint) serve(i int, spent cost) {
	if i == len(j.feet) {
		j.keep(spent)
		return
	}
	list, others := j.lists[i], j.rest(i+1, j.first[i])
	for k := j.first[i][i]; k < len(list); k++ {
		pack := &list[k]
		now := spent.plus(pack.cost)
		if j.hopeless(now.plus(others)) {
			return // and so are all packs after it
		}
		if !j.has(pack) {
			continue
		}
		if j.nodes++; j.nodes > j.most {
			j.nodes, j.cut = j.most, true
			return
		}
		j.path[i] = k
		j.take(pack)
		if j.look(i, k, now) {
			j.serve(i+1, now)
		}
		j.putBack(pack)
		if j.cut {
			return
		}
	}
}

// look finds the first pack of every foot after i that can still be had when
// foot i has taken its pack k, and tells whether there is hope with these. Of two
// feet for which any pack costs the same the second never takes the better one:
// exchanging them would give a choice that comes before.
func (j *joint) look(i, k int, spent cost) bool {
	at, next := j.first[i], j.first[i+1]
	for f := i + 1; f < len(j.feet); f++ {
		n := at[f]
		if j.feet[f].twin == i {
			n = max(n, k)
		}
		list := j.lists[f]
		for n < len(list) && !j.has(&list[n]) {
			n++
		}
		if n == len(list) {
			return false
		}
		next[f] = n
		spent = spent.plus(list[n].cost)
	}
	return !j.hopeless(spent)
}

// rest sums what the feet from i on cost at least.
func (j *joint) rest(i int, first []int) cost {
	var sum cost
	for f := i; f < len(j.feet); f++ {
		sum = sum.plus(j.lists[f][first[f]].cost)
	}
	return sum
}

// hopeless tells whether a choice that costs so much or more is not wanted: one
// as good as that in hand is, until one has been found in the order of the lists.
func (j *joint) hopeless(atLeast cost) bool {
	c := atLeast.compare(j.total)
	return c > 0 || c == 0 && j.found
}

// keep makes the choice on the path the one in hand.
func (j *joint) keep(total cost) {
	for i, k := range j.path {
		j.chosen[i] = j.lists[i][k]
	}
	j.total, j.found = total, true
}
