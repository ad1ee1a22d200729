package train

import (
	"cmp"
	"slices"
)

// shimKey is what a choice is ranked by.
type shimKey struct {
	handled        int
	ratio, squares float64
}

// compare returns -1, 0 or +1 as k is better than l, as good, or worse: by the ratio
// first, or by the handling.
func (k shimKey) compare(l shimKey, byRatio bool) int {
	first, second := cmp.Compare(k.handled, l.handled), cmp.Compare(k.ratio, l.ratio)
	if byRatio {
		first, second = second, first
	}
	return cmp.Or(first, second, cmp.Compare(k.squares, l.squares))
}

// shimChoice is a pack for every foot.
type shimChoice struct {
	shimKey
	changes []int64 // of the stations
	packs   []int   // of the feet
}

// ratio is that of the best choice.
func (s *shimSearch) ratio() float64 {
	if s.best == nil {
		return largest
	}
	return s.best.ratio
}

// within tells whether the best choice is within all limits.
func (s *shimSearch) within() bool { return s.ratio() <= 1 }

// better tells whether a choice comes before the best, of which there may be none.
func (s *shimSearch) better(c *shimChoice) bool {
	b := s.best
	if b == nil {
		return true
	}
	if within := c.ratio <= 1; within != (b.ratio <= 1) {
		return within
	}
	order := c.compare(b.shimKey, c.ratio > 1)
	for i := 0; order == 0 && i < len(c.packs); i++ {
		order = thicker(s.packs[c.packs[i]].sizes, s.packs[b.packs[i]].sizes)
	}
	return order < 0
}

// handle counts what has to be taken out and put in for each pack.
func (f *shimFoot) handle(packs []shimPack) {
	f.handled = make([]int, len(packs))
	for i, p := range packs {
		f.handled[i] = len(p.sizes) + f.pieces - 2*staying(p.sizes, f.bySize)
	}
}

// atLeast is what has to be handled for a pack that begins so, and has so many pieces
// more, none thicker than the last.
func (f *shimFoot) atLeast(sizes []int32, last, more int) int {
	stay, gone := staying(sizes, f.bySize), 0
	for s := range last {
		gone += f.bySize[s] // if it does not stay
	}
	first := slices.Index(sizes, int32(last)) // of those that may become more
	gone -= staying(sizes[:max(0, first)], f.bySize)
	return len(sizes) - stay + max(gone, f.pieces-stay-more)
}

// staying counts the pieces of a pack that lie there already.
func staying(sizes []int32, lying []int) (stay int) {
	for k, s := range sizes {
		run := 1 // the how manieth of its size this is
		for k >= run && sizes[k-run] == s {
			run++
		}
		if run <= lying[s] {
			stay++
		}
	}
	return stay
}
