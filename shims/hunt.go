package shims

import (
	"iter"
	"math"
	"slices"
)

// pack is a choice for one foot.
type pack struct {
	cost  cost
	total int64
	sizes [MostPieces]int32 // the first cost.pieces are its sizes, thickest first
}

// pieces returns the sizes of the pack, thickest first.
func (k *pack) pieces() []int32 { return k.sizes[:k.cost.pieces] }

// counts yields the sizes of the pack and how many of each it has.
func (k *pack) counts() iter.Seq2[int, int] {
	return func(yield func(size, n int) bool) {
		for rest := k.pieces(); len(rest) > 0; {
			n := 1
			for n < len(rest) && rest[n] == rest[0] {
				n++
			}
			if !yield(int(rest[0]), n) {
				return
			}
			rest = rest[n:]
		}
	}
}

// worst is a cost that every pack is better than.
var worst = cost{short: math.MaxInt64}

// budget counts the nodes of the search, and where it has to end.
type budget struct{ nodes, most int }

// hunt looks for the best packs of one foot, by number of pieces, and among
// those with as many thickest first. That is also the order in which packs of
// equal cost stand.
type hunt struct {
	*problem
	foot  *foot
	pool  []int   // what is left of each size; changed while a pack is built, and put back
	room  int     // how many packs are wanted
	limit cost    // only packs that are better than this are
	nodes *budget // spent up to quota
	quota int

	found     []pack // best first, once the hunt is over
	truncated bool   // there are more that are better than the first limit was
	cut       bool   // the quota ended before the hunt

	low, high int64 // totals that can be better than limit, with as many pieces as it is about
	built     pack  // as far as it is
}

// run hunts.
func (h *hunt) run() {
	for n := range h.slots + 1 {
		if h.cut || h.ideal(h.foot, n).compare(h.limit) >= 0 {
			break
		}
		h.built.cost.pieces = n
		h.aim()
		h.extend(n, 0, 0, h.foot.count)
	}
	h.trim()
}

// extend adds the pieces that are left to a pack, none thicker than the size
// from, in every way that can come to a total between low and high.
func (h *hunt) extend(left, from int, sum int64, handled int) {
	if left == 0 {
		h.judge(sum, handled)
		return
	}
	at := h.built.cost.pieces - left
	others := int64(left-1) * h.thinnest
	for s := from; s < len(h.sizes); s++ {
		nm := h.sizes[s].nm
		if sum+int64(left)*nm < h.low {
			return // and all thinner ones are too thin as well
		}
		if sum+nm+others > h.high || h.pool[s] == 0 {
			continue
		}
		if h.spend(); h.cut {
			return
		}
		h.built.sizes[at] = int32(s)
		stays := h.foot.bySize[s] > 0
		h.pool[s]--
		h.foot.bySize[s]--
		if stays {
			h.extend(left-1, s, sum+nm, handled-1)
		} else {
			h.extend(left-1, s, sum+nm, handled+1)
		}
		h.pool[s]++
		h.foot.bySize[s]++
	}
}

func (h *hunt) spend() {
	if h.nodes.nodes >= h.quota {
		h.cut = true
		return
	}
	h.nodes.nodes++
}

// judge keeps the pack that was built, if it is better than the limit.
func (h *hunt) judge(total int64, handled int) {
	c := h.cost(h.foot, total, h.built.cost.pieces, handled)
	if c.compare(h.limit) >= 0 {
		return
	}
	h.built.cost, h.built.total = c, total
	if h.room == 1 {
		h.found = append(h.found[:0], h.built)
		h.limit = c
		h.aim()
		return
	}
	h.found = append(h.found, h.built)
	if len(h.found) == 2*h.room {
		h.trim()
		h.aim()
	}
}

// trim sorts what was found and lets go of what there is no room for.
func (h *hunt) trim() {
	slices.SortStableFunc(h.found, func(a, b pack) int { return a.cost.compare(b.cost) })
	if len(h.found) > h.room {
		h.found = h.found[:h.room]
		h.limit = h.found[h.room-1].cost
		h.truncated = true
	}
}

// aim sets low and high to the totals that can be better than the limit, or as
// good, with as many pieces as the pack is to have.
func (h *hunt) aim() {
	n, off := h.built.cost.pieces, h.err
	switch {
	case h.ideal(h.foot, n).compare(h.limit) >= 0:
		h.low, h.high = math.MaxInt64, math.MinInt64 // none
		return
	case h.limit.short > 0:
		h.low, h.high = h.keep-h.limit.short, math.MaxInt64
		return
	case h.limit.excess > 0:
		off += h.limit.excess
	case n == h.limit.pieces:
		off = min(off, h.limit.err)
	}
	h.low, h.high = max(h.keep, h.foot.wanted-off), h.foot.wanted+off
}
