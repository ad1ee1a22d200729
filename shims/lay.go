package shims

import "example.org/collinear/units"

// lay turns the sizes that were chosen into pieces.
func (s *search) lay(orders []Order) []Stack {
	s.deal()
	stacks := make([]Stack, len(s.feet))
	room := make([]Piece, 0, s.total.pieces+s.total.handled)
	for i := range stacks {
		f, k := &s.feet[i], &s.chosen[i]
		stack := &stacks[i]
		*stack = Stack{
			Foot: orders[i].Foot, Wanted: units.Length(f.wanted), Total: units.Length(k.total),
			Error: units.Length(k.total - f.wanted), Reached: k.cost.reached(), TooLow: s.out(i) > 0,
		}
		room, stack.Pieces = since(len(room), s.appendLaid(room, s.takes(i)))
		room, stack.Out = since(len(room), s.appendMore(room, f.byKind, s.takes(i)))
		room, stack.In = since(len(room), s.appendMore(room, s.takes(i), f.byKind))
	}
	return stacks
}

// since returns a list and what was appended to it from start on, none as nil.
func since(start int, list []Piece) (all, added []Piece) {
	if len(list) == start {
		return list, nil
	}
	return list, list[start:len(list):len(list)]
}

// deal says how many of each kind go under each foot. First every foot keeps of
// its own what it can use, then one after the other takes what is left, in the
// order of the kinds.
func (s *search) deal() {
	s.taken = zeros(s.taken, (len(s.feet)+1)*len(s.kinds))
	left := s.takes(len(s.feet)) // of each kind
	for k := range left {
		left[k] = s.kinds[k].count
	}
	give := func(foot, size, n int, most []int) {
		for k := s.sizes[size].first; k < s.sizes[size].end; k++ {
			m := min(n, most[k])
			s.takes(foot)[k] += m
			left[k] -= m
			n -= m
		}
	}
	for i := range s.chosen {
		for size, n := range s.chosen[i].counts() {
			give(i, size, n, s.feet[i].byKind)
		}
	}
	for i := range s.chosen {
		for size, n := range s.chosen[i].counts() {
			give(i, size, n-s.ofSize(s.takes(i), size), left)
		}
	}
}

// takes returns how many of each kind go under foot i; after the last foot stands
// what is left.
func (s *search) takes(i int) []int {
	kinds := len(s.kinds)
	return s.taken[i*kinds : (i+1)*kinds]
}

// ofSize sums the numbers of all kinds of a size.
func (s *search) ofSize(byKind []int, size int) int {
	n := 0
	for _, m := range byKind[s.sizes[size].first:s.sizes[size].end] {
		n += m
	}
	return n
}

// appendLaid appends the pieces in the order in which they are laid: the thickest
// first, then every other one up and the rest down again. So the two thickest
// lie outside and the thinnest in the middle, where nothing creases them. Common
// practice, no source.
func (s *search) appendLaid(to []Piece, taken []int) []Piece {
	start := len(to)
	for k, n := range taken {
		for range n {
			to = append(to, s.piece(k, 1))
		}
	}
	var sorted [MostPieces]Piece
	laid := to[start:]
	for i, p := range sorted[:copy(sorted[:], laid)] {
		if i%2 == 0 {
			laid[i/2] = p
		} else {
			laid[len(laid)-1-i/2] = p
		}
	}
	return to
}

// appendMore appends what there is more of in a than in b.
func (s *search) appendMore(to []Piece, a, b []int) []Piece {
	for k := range a {
		if a[k] > b[k] {
			to = append(to, s.piece(k, a[k]-b[k]))
		}
	}
	return to
}

// piece returns so many of a kind.
func (s *search) piece(kind, count int) Piece {
	p := s.kinds[kind].Piece
	p.Count = count
	return p
}
