package shims

import (
	"cmp"
	"slices"
)

// problem is a sound input in whole nanometres. What can be told apart by
// thickness alone is a size; each size has one kind of piece or more.
type problem struct {
	err, keep int64 // allowed error, and what has to stay
	slots     int   // most pieces under a foot
	kinds     []kind
	sizes     []size
	pool      []int // how many there are of each size, in the stock and under all feet
	feet      []foot
	thinnest  int64 // nm of the last size; zero without any pieces
	step      int64 // every total is a multiple of it; zero without any pieces

	entries []entry
	numbers []int // of pool and feet
}

// kind is one kind of piece: thickest first, and in the order of the stock, then
// of the present packs, where they are equally thick.
type kind struct {
	Piece
	count int // in the stock and under all feet
}

// size is a thickness and its kinds.
type size struct {
	nm         int64
	first, end int // kinds
}

// foot is one order.
type foot struct {
	wanted int64 // total
	count  int   // pieces that lie there now
	bySize []int // how many of each size lie there
	byKind []int // and of each kind
	twin   int   // the last foot before it that wants and has the same; -1 for none
	floor  int64 // no pack whatever comes nearer than this
}

// entry is a row of the stock, or of the pack under a foot.
type entry struct {
	nm        int64
	foot, row int32 // foot -1: the stock
	kind      int32
}

// rows is where the entries are from.
type rows struct {
	stock  Stock
	orders []Order
}

func (r rows) piece(e entry) Piece {
	if e.foot < 0 {
		return r.stock[e.row]
	}
	return r.orders[e.foot].Now[e.row]
}

// begin sets a problem, in the memory of the one before.
func (p *problem) begin(stock Stock, rule Rule, orders []Order) {
	*p = problem{
		err: int64(rule.Error), keep: ceil(float64(rule.Keep)), slots: rule.Pieces,
		kinds: p.kinds[:0], sizes: p.sizes[:0], feet: zeros(p.feet, len(orders)),
		entries: p.entries[:0], numbers: p.numbers,
	}
	from := rows{stock, orders}
	p.gather(from)
	p.sort(from)
	p.fill(from)
}

func ceil(x float64) int64 {
	n := int64(x)
	if float64(n) < x {
		n++
	}
	return n
}

// gather lists all pieces, thickest first, and as they were given where they
// are equally thick.
func (p *problem) gather(from rows) {
	p.enter(from.stock, -1)
	for i := range from.orders {
		p.enter(from.orders[i].Now, i)
	}
	slices.SortStableFunc(p.entries, func(a, b entry) int { return cmp.Compare(b.nm, a.nm) })
}

func (p *problem) enter(pieces []Piece, foot int) {
	for i := range pieces {
		p.entries = append(p.entries, entry{nm: int64(pieces[i].Thickness()), foot: int32(foot), row: int32(i)})
	}
}

// sort finds the sizes and kinds, and tells every entry its kind.
func (p *problem) sort(from rows) {
	for i := range p.entries {
		e := &p.entries[i]
		if n := len(p.sizes); n == 0 || p.sizes[n-1].nm != e.nm {
			p.sizes = append(p.sizes, size{nm: e.nm, first: len(p.kinds), end: len(p.kinds)})
			p.thinnest, p.step = e.nm, gcd(p.step, e.nm)
		}
		e.kind = int32(p.kind(&p.sizes[len(p.sizes)-1], from.piece(*e)))
	}
}

// kind adds a piece to its kind, a new one of the size if need be, and returns
// which that is.
func (p *problem) kind(s *size, piece Piece) int {
	k := s.first
	for k < s.end && !p.kinds[k].sameKind(piece) {
		k++
	}
	if k == s.end {
		p.kinds = append(p.kinds, kind{Piece: piece})
		s.end++
	}
	p.kinds[k].count += piece.Count
	return k
}

func gcd(a, b int64) int64 {
	if b == 0 {
		return a
	}
	return gcd(b, a%b)
}

// fill counts what there is of each size, and what lies under each foot.
func (p *problem) fill(from rows) {
	sizes, kinds := len(p.sizes), len(p.kinds)
	p.numbers = zeros(p.numbers, sizes+len(p.feet)*(sizes+kinds))
	numbers := p.numbers
	take := func(n int) []int {
		taken := numbers[:n:n]
		numbers = numbers[n:]
		return taken
	}
	p.pool = take(sizes)
	for i := range p.feet {
		p.feet[i] = foot{wanted: int64(from.orders[i].wanted()), bySize: take(sizes), byKind: take(kinds)}
		p.feet[i].floor = p.floor(p.feet[i].wanted)
	}
	for _, e := range p.entries {
		if e.foot >= 0 {
			f, n := &p.feet[e.foot], from.piece(e).Count
			f.byKind[e.kind] += n
			f.count += n
		}
	}
	p.sumSizes()
	for i := range p.feet {
		p.feet[i].twin = p.twin(i)
	}
}

// sumSizes adds up the kinds of every size.
func (p *problem) sumSizes() {
	for s, size := range p.sizes {
		for k := size.first; k < size.end; k++ {
			p.pool[s] += p.kinds[k].count
			for i := range p.feet {
				p.feet[i].bySize[s] += p.feet[i].byKind[k]
			}
		}
	}
}

// floor returns the least error of any total that is a multiple of the step.
func (p *problem) floor(wanted int64) int64 {
	if wanted <= 0 || p.step == 0 {
		return max(wanted, -wanted)
	}
	over := wanted % p.step
	return min(over, p.step-over)
}

// twin returns the last foot before foot i for which any pack costs the same.
func (p *problem) twin(i int) int {
	f := &p.feet[i]
	for j := i - 1; j >= 0; j-- {
		if p.feet[j].wanted == f.wanted && slices.Equal(p.feet[j].bySize, f.bySize) {
			return j
		}
	}
	return -1
}

// cost is what a pack of this total costs the foot.
func (p *problem) cost(f *foot, total int64, pieces, handled int) cost {
	off := max(total-f.wanted, f.wanted-total)
	return cost{
		short:  max(0, p.keep-total),
		excess: max(0, off-p.err), pieces: pieces, err: off, handled: handled,
	}
}

// ideal is a lower bound for every pack of this foot that has so many pieces or
// more: nothing missing, no closer than floor, and every piece that can stay
// stays.
func (p *problem) ideal(f *foot, pieces int) cost {
	return cost{
		excess: max(0, f.floor-p.err), pieces: pieces, err: f.floor,
		handled: max(pieces-f.count, f.count-pieces),
	}
}
