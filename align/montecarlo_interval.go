package align

import (
	"math"
	"slices"
)

// within returns how many steps from one outcome to the next an interval of
// probability p spans among n: q of JCGM 101:2008, 7.7.1.
func within(n int, p float64) int {
	return int(math.Floor(float64(p*float64(n)) + 0.5))
}

// tails are the n-q least and the n-q greatest of n outcomes, each in rising order.
// Every interval that q steps span reaches from low[r] to high[r] for some r, so
// nothing between the two has to be in order.
type tails struct {
	low, high []float64
	sorter
}

// symmetric returns the probabilistically symmetric interval (JCGM 101:2008, 7.7.2).
func (t *tails) symmetric() (low, high float64) {
	r := (len(t.low)+1)/2 - 1 // (n-q)/2, or half more where that is not whole; counted from zero
	return t.low[r], t.high[r]
}

// shortest returns the shortest interval (JCGM 101:2008, 7.7.3); the lowest, where
// several are as short.
func (t *tails) shortest() (low, high float64) {
	best := 0
	for r := range t.low {
		if t.high[r]-t.low[r] < t.high[best]-t.low[best] {
			best = r
		}
	}
	return t.low[best], t.high[best]
}

// take fills the tails with the k least and the k greatest of some numbers, of which
// there are more than k.
func (t *tails) take(all []float64, k int) {
	least, greatest := bounds(all, k)
	t.gather(all, least, greatest)
	if len(t.low) < k || len(t.high) < k {
		t.gather(all, math.Inf(1), math.Inf(-1))
	}
	t.sort(t.low)
	t.sort(t.high)
	t.low, t.high = t.low[:k], t.high[len(t.high)-k:]
}

// bounds returns numbers below and above which k of all or a few more stand most
// probably, judged by a sample: how many of it are in the tail, and three times the
// deviation of that number (binomial).
func bounds(all []float64, k int) (least, greatest float64) {
	const every = 64
	var sample []float64
	for i := 0; i < len(all); i += every {
		sample = append(sample, all[i])
	}
	slices.Sort(sample)
	share, n := float64(k)/float64(len(all)), float64(len(sample))
	in := int(float64(share*n)+float64(3*math.Sqrt(float64(n*share)*(1-share)))) + 1
	if in >= len(sample) {
		return math.Inf(1), math.Inf(-1)
	}
	return sample[in], sample[len(sample)-1-in]
}

// gather takes in what is not above least, and what is not below greatest.
func (t *tails) gather(all []float64, least, greatest float64) {
	t.low, t.high = t.low[:0], t.high[:0]
	for _, x := range all {
		if x <= least {
			t.low = append(t.low, x)
		}
		if x >= greatest {
			t.high = append(t.high, x)
		}
	}
}
