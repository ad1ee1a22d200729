package train

import (
	"cmp"
	"math"
	"slices"

	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// shimKind is one kind of piece and how many there are, in the stock and under all
// feet that can be shimmed.
type shimKind struct {
	shims.Piece
	nm int64
}

func sameKind(p, q shims.Piece) bool { return p.Marked == q.Marked && p.Measured == q.Measured }

// shimSize is a thickness, and its kinds from first up to end.
type shimSize struct {
	nm         int64
	first, end int
}

// shimFoot is one single foot that can be shimmed.
type shimFoot struct {
	name    string
	total   int64 // nm that lie there now
	pieces  int
	byKind  []int // how many of each kind lie there
	bySize  []int
	handled []int // to lay each of the packs here
}

// shimPack is a pack that can lie under a foot.
type shimPack struct {
	total int64
	sizes []int32 // thickest first
}

// compare sorts packs by total, those with the thickest pieces first.
func (p shimPack) compare(q shimPack) int {
	return cmp.Or(cmp.Compare(p.total, q.total), thicker(p.sizes, q.sizes))
}

// thicker returns -1, 0 or +1 as the first piece in which two packs differ is thicker
// in a, or there is none, or thinner. No piece is thinner than any.
func thicker(a, b []int32) int {
	for i := range min(len(a), len(b)) {
		if a[i] != b[i] {
			return cmp.Compare(a[i], b[i])
		}
	}
	return cmp.Compare(len(b), len(a))
}

// shimBox is what there is to lay, and what can be laid of it.
type shimBox struct {
	kinds []shimKind // thickest first, as given where they are equally thick
	sizes []shimSize
	left  []int // of each size, the packs taken so far not counted
	feet  []shimFoot
	packs []shimPack
	spans map[int64]span // of each total: where its packs are

	budget
}

// span is a range of indexes, the end not included.
type span struct{ first, end int }

// budget counts the nodes of the search, and where it has to end.
type budget struct {
	nodes, most int
	cut         bool // it has ended
}

// share is where the search stands once it has used one part in so many of what is left
// up to an end.
func (b *budget) share(end, parts int) int { return b.nodes + (end-b.nodes)/parts }

// spend takes a node, and tells whether there was one.
func (b *budget) spend() bool {
	if b.nodes >= b.most {
		b.cut = true
		return false
	}
	b.nodes++
	return true
}

// fill gathers what there is: the stock, and the packs in the order of the feet.
func (b *shimBox) fill(stock shims.Stock, packs [][]shims.Piece) {
	for _, list := range append([][]shims.Piece{stock}, packs...) {
		for _, p := range list {
			b.add(p)
		}
	}
	slices.SortStableFunc(b.kinds, func(k, l shimKind) int { return cmp.Compare(l.nm, k.nm) })
	for k, kind := range b.kinds {
		if n := len(b.sizes); n == 0 || b.sizes[n-1].nm != kind.nm {
			b.sizes = append(b.sizes, shimSize{nm: kind.nm, first: k})
			b.left = append(b.left, 0)
		}
		last := len(b.sizes) - 1
		b.sizes[last].end = k + 1
		b.left[last] += kind.Count
	}
	for i := range b.feet {
		b.feet[i].count(b, packs[i])
	}
}

func (b *shimBox) add(p shims.Piece) {
	k := slices.IndexFunc(b.kinds, func(k shimKind) bool { return sameKind(k.Piece, p) })
	if k < 0 {
		k = len(b.kinds)
		b.kinds = append(b.kinds, shimKind{Piece: p, nm: int64(p.Thickness())})
		b.kinds[k].Count = 0
	}
	b.kinds[k].Count += p.Count
}

// count notes what lies under the foot.
func (f *shimFoot) count(b *shimBox, now []shims.Piece) {
	f.byKind, f.bySize = make([]int, len(b.kinds)), make([]int, len(b.sizes))
	for _, p := range now {
		k := slices.IndexFunc(b.kinds, func(k shimKind) bool { return sameKind(k.Piece, p) })
		f.byKind[k] += p.Count
		f.pieces += p.Count
		f.total += int64(p.Count) * b.kinds[k].nm
	}
	for s, size := range b.sizes {
		for _, n := range f.byKind[size.first:size.end] {
			f.bySize[s] += n
		}
	}
}

// wantedPacks says which packs are looked for: of at most so many pieces, and for some
// foot with a total in its range and at most so many pieces handled.
type wantedPacks struct {
	most    int
	totals  []reach // of the feet
	handled int
}

// listWanted finds every pack that is wanted, and adds it to those that are listed. The
// packs that lie there now come first, so that a budget that ends does not lose them.
func (b *shimBox) listWanted(w wantedPacks) {
	for i := range b.feet {
		if f := &b.feet[i]; f.pieces <= w.most && w.totals[i].has(float64(f.total)) {
			b.packs = append(b.packs, f.now())
		}
	}
	empty := shimPack{sizes: make([]int32, 0, w.most)}
	if b.wanted(&w, empty, 0) {
		b.packs = append(b.packs, shimPack{})
	}
	for more := range w.most {
		b.extend(&w, empty, 1+more)
	}
	b.index()
}

// index puts the packs in order, and counts what they take.
func (b *shimBox) index() {
	slices.SortFunc(b.packs, shimPack.compare)
	b.packs = slices.CompactFunc(b.packs, func(p, q shimPack) bool { return p.compare(q) == 0 })
	b.spans = make(map[int64]span)
	for i, p := range b.packs {
		s, known := b.spans[p.total]
		if !known {
			s.first = i
		}
		s.end = i + 1
		b.spans[p.total] = s
	}
	for i := range b.feet {
		b.feet[i].handle(b.packs)
	}
}

// listed tells whether some pack comes to the total.
func (b *shimBox) listed(total int64) bool {
	_, ok := b.spans[total]
	return ok
}

// now is the pack that lies under the foot.
func (f *shimFoot) now() shimPack {
	p := shimPack{total: f.total}
	for s, n := range f.bySize {
		p.sizes = append(p.sizes, slices.Repeat([]int32{int32(s)}, n)...)
	}
	return p
}

// extend adds so many pieces more to a pack, none thicker than its last, in every way
// that is wanted.
func (b *shimBox) extend(w *wantedPacks, pack shimPack, more int) {
	if more == 0 {
		b.packs = append(b.packs, shimPack{pack.total, slices.Clone(pack.sizes)})
		return
	}
	from := 0
	if n := len(pack.sizes); n > 0 {
		from = int(pack.sizes[n-1])
	}
	for s := from; s < len(b.sizes); s++ {
		next := shimPack{pack.total + b.sizes[s].nm, append(pack.sizes, int32(s))}
		if b.left[s] == 0 || !b.wanted(w, next, more-1) {
			continue
		}
		if !b.spend() {
			return
		}
		b.left[s]--
		b.extend(w, next, more-1)
		b.left[s]++
	}
}

// wanted tells whether the pack may be wanted with so many pieces more, none thicker
// than its last.
func (b *shimBox) wanted(w *wantedPacks, pack shimPack, more int) bool {
	last := 0
	if n := len(pack.sizes); n > 0 {
		last = int(pack.sizes[n-1])
	}
	totals := reach{float64(pack.total), float64(pack.total)}
	if more > 0 {
		totals.low += float64(int64(more) * b.sizes[len(b.sizes)-1].nm)
		totals.high += float64(int64(more) * b.sizes[last].nm)
	}
	for i := range b.feet {
		if !totals.and(w.totals[i]).empty() && (w.handled == math.MaxInt || b.feet[i].atLeast(pack.sizes, last, more) <= w.handled) {
			return true
		}
	}
	return false
}

// laying finds packs of given totals for some feet with the least handling, which
// there are pieces enough for; of equals those that come first, foot by foot.
type laying struct {
	*shimBox
	feet   []int
	spans  []span
	least  []int // handling of the feet from each on, as if there were no others
	chosen []int // packs
	next   int   // the least handling that was more than allowed; zero: none was
}

// lay returns the packs of the feet, of totals that are listed, and how many pieces are
// handled for them; false where that is not possible with so many.
func (b *shimBox) lay(feet []int, totals []int64, most int) (packs []int, handled int, ok bool) {
	n := len(feet)
	l := laying{shimBox: b, feet: feet, spans: make([]span, n), least: make([]int, n+1), chosen: make([]int, n)}
	for i, foot := range slices.Backward(feet) {
		f := &b.feet[foot]
		l.spans[i] = b.spans[totals[foot]]
		l.least[i] = l.least[i+1] + slices.Min(f.handled[l.spans[i].first:l.spans[i].end])
	}
	for allowed := l.least[0]; allowed <= most; allowed = l.next {
		l.next = 0
		if l.from(0, 0, allowed) {
			return l.chosen, allowed, true
		}
		if b.cut || l.next <= allowed {
			break
		}
	}
	return nil, 0, false
}

// from lays the feet from i on, and handles so many pieces at most in all.
func (l *laying) from(i, spent, allowed int) bool {
	if i == len(l.feet) {
		return true
	}
	f := &l.shimBox.feet[l.feet[i]]
	for k := l.spans[i].first; k < l.spans[i].end; k++ {
		now := spent + f.handled[k]
		if atLeast := now + l.least[i+1]; atLeast > allowed {
			if l.next == 0 || atLeast < l.next {
				l.next = atLeast
			}
			continue
		}
		if !l.spend() {
			return false
		}
		found := l.take(l.packs[k].sizes, -1) && l.from(i+1, now, allowed)
		l.take(l.packs[k].sizes, +1)
		if found {
			l.chosen[i] = k
			return true
		}
	}
	return false
}

// take takes the pieces off what is left, or puts them back, and tells whether there
// were enough.
func (b *shimBox) take(sizes []int32, by int) (enough bool) {
	enough = true
	for _, s := range sizes {
		b.left[s] += by
		enough = enough && b.left[s] >= 0
	}
	return enough
}

// stacks turns packs, one for each foot, into pieces.
func (b *shimBox) stacks(packs []int) []shims.Stack {
	list := make([]shims.Stack, len(packs))
	takes := b.deal(packs)
	for i, pack := range packs {
		f := &b.feet[i]
		total := units.Length(b.packs[pack].total)
		list[i] = shims.Stack{
			Foot: f.name, Wanted: total, Total: total, Reached: true,
			Pieces: laid(b.pieces(takes[i], nil)),
			Out:    b.pieces(f.byKind, takes[i]),
			In:     b.pieces(takes[i], f.byKind),
		}
	}
	return list
}

// laid returns the pieces one by one in the order in which package shims lays them:
// the thickest first, every other one up and the rest down again.
func laid(pieces []shims.Piece) []shims.Piece {
	var up, down []shims.Piece
	for _, p := range pieces {
		n := p.Count
		p.Count = 1
		for range n {
			if len(up) == len(down) {
				up = append(up, p)
			} else {
				down = append(down, p)
			}
		}
	}
	slices.Reverse(down)
	return append(up, down...)
}

// pieces lists what there is more of in a than in b, thickest first.
func (b *shimBox) pieces(a, than []int) []shims.Piece {
	var list []shims.Piece
	for k, n := range a {
		if than != nil {
			n -= than[k]
		}
		if n > 0 {
			p := b.kinds[k].Piece
			p.Count = n
			list = append(list, p)
		}
	}
	return list
}

// deal says how many of each kind go under each foot: every foot keeps of its own
// what it can use, then one after the other takes what is left.
func (b *shimBox) deal(packs []int) (takes [][]int) {
	takes = make([][]int, len(packs))
	need := make([][]int, len(packs))
	left := make([]int, len(b.kinds))
	for k := range left {
		left[k] = b.kinds[k].Count
	}
	give := func(foot int, most []int) {
		for s, size := range b.sizes {
			for k := size.first; k < size.end; k++ {
				n := min(need[foot][s], most[k])
				need[foot][s] -= n
				takes[foot][k] += n
				left[k] -= n
			}
		}
	}
	for i, pack := range packs {
		takes[i], need[i] = make([]int, len(b.kinds)), make([]int, len(b.sizes))
		for _, s := range b.packs[pack].sizes {
			need[i][s]++
		}
		give(i, b.feet[i].byKind)
	}
	for i := range packs {
		give(i, left)
	}
	return takes
}
