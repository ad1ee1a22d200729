package arc

import (
	"cmp"
	"math"
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

const (
	// faint is the weight of a reading that is left out while the search goes on:
	// so little pulls by nothing that matters, and keeps every number seen.
	faint = 1e-9
	// mostRounds of reweighting follow one start.
	mostRounds = 100
	// still is how little a weight changes where it has settled.
	still = 1e-6
	// mostChanged readings are left out or taken back one after the other, and
	// pairs are tried of at most mostPaired: with more, no two of them can hold
	// the fit. Of more than mostTried those are tried that stick out most, for among
	// so many none can hide. All are ours, to bound the work.
	mostChanged = 20
	mostPaired  = 60
	mostTried   = 60
)

// A search looks for the weights that make the sum of costs least. It counts the
// readings through all sets.
type search struct {
	sets   []align.Set // with the weighted uncertainties of the trial at hand
	stated bool
	u      []units.Length // by which a reading of weight one is weighted
	dev    []units.Length // by which its residual is judged: u, and what its angle adds
	judge  []bool         // whether it can be told from the others
	left   []align.Residual
}

// A trial is one list of weights, and what came of it.
type trial struct {
	weights []float64
	sum     float64 // of costs; infinite where the readings do not see enough
	settled bool
}

// fit finds the residuals under the given weights.
func (s *search) fit(weights []float64) error {
	n := 0
	for i := range s.sets {
		for j := range s.sets[i].Readings {
			s.sets[i].Readings[j].U = inflated(s.u[n], weights[n])
			n++
		}
	}
	f, err := align.Fit(s.sets...)
	if err != nil {
		return err
	}
	s.left, err = align.Residuals(s.left[:0], s.sets, f)
	return err
}

// inflated is the uncertainty that gives a reading its weight.
func inflated(u units.Length, weight float64) units.Length {
	return min(u/units.Length(math.Sqrt(max(weight, faint))), check.Largest)
}

// settle reweights from a start until nothing changes, or mostRounds.
func (s *search) settle(start []float64, weigh func(t float64) float64) trial {
	t := trial{weights: slices.Clone(start)}
	for range mostRounds {
		if s.fit(t.weights) != nil {
			t.sum = math.Inf(1)
			return t
		}
		t.sum = s.costs()
		if change := s.reweigh(t.weights, weigh); change <= still {
			t.settled = true
			return t
		}
	}
	return t
}

// costs is the sum that the weights of hampel make least: with r the residual,
//
//	sum (dev/u)^2 cost(r/dev)
//
// which is half of chi-square as long as every reading is untouched.
func (s *search) costs() float64 {
	sum := 0.0
	for n, r := range s.left {
		ratio := float64(s.dev[n] / s.u[n])
		sum += float64(ratio * ratio * cost(float64(r.Value/s.dev[n])))
	}
	return sum
}

// reweigh puts in the weights that the residuals ask for, and returns the
// largest change.
func (s *search) reweigh(weights []float64, weigh func(t float64) float64) (change float64) {
	for n, r := range s.left {
		if !s.judge[n] {
			continue
		}
		w := weigh(float64(r.Value / s.dev[n]))
		change = max(change, math.Abs(w-weights[n]))
		weights[n] = w
	}
	return change
}

// best starts at Huber's answer, which is the same from wherever one starts. Then
// readings are left out or taken back one at a time, each of them in turn, as long
// as that makes the sum of costs less, and where one is not enough, two at a time:
// two bad readings can hold the fit between them, so that it takes both to see it.
// What would cost more by itself than the sum is now is not tried.
func (s *search) best() trial {
	best := s.settle(s.settle(ones(len(s.u)), huber).weights, hampel)
	best = s.descend(best)
	if best.sum > 2*costOfGone && len(s.u) <= mostPaired {
		best = s.descend(s.pairs(best))
	}
	return best
}

// descend changes one reading after the other as long as that is better.
func (s *search) descend(from trial) trial {
	best := from
	for range mostChanged {
		if best.sum <= costOfGone {
			break
		}
		next := s.better(best)
		if !less(next.sum, best.sum) {
			break
		}
		best = next
	}
	return best
}

// better returns the best trial that starts with one reading more or one reading
// less left out, or the one that it was given.
func (s *search) better(than trial) trial {
	best := than
	for _, n := range s.sticking(than.weights) {
		start := slices.Clone(than.weights)
		start[n] = 1
		if than.weights[n] > 0.5 {
			start[n] = 0
		}
		s.try(&best, start, n)
	}
	return best
}

// sticking lists the readings that are worth trying, in their order: the mostTried
// that are farthest off the fit with the given weights.
func (s *search) sticking(weights []float64) []int {
	list := make([]int, len(weights))
	for n := range list {
		list[n] = n
	}
	if len(list) <= mostTried || s.fit(weights) != nil {
		return list[:min(len(list), mostTried)]
	}
	off := func(n int) float64 { return math.Abs(float64(s.left[n].Value / s.dev[n])) }
	slices.SortStableFunc(list, func(a, b int) int { return cmp.Compare(off(b), off(a)) })
	list = list[:mostTried]
	slices.Sort(list)
	return list
}

// pairs returns the best trial that starts with just one or two readings left out,
// or the one that it was given.
func (s *search) pairs(than trial) trial {
	best := than
	for n := range s.u {
		for m := range n + 1 {
			start := ones(len(s.u))
			start[n], start[m] = 0, 0
			s.try(&best, start, n, m)
		}
	}
	return best
}

// try settles from a start, in which the named readings were changed, and keeps
// what is better.
func (s *search) try(best *trial, start []float64, changed ...int) {
	for _, n := range changed {
		if !s.judge[n] {
			return
		}
	}
	if t := s.settle(start, hampel); less(t.sum, best.sum) {
		*best = t
	}
}

// less asks for more than rounding, so that the order of the readings does not
// decide.
func less(a, b float64) bool { return a < b-float64(1e-9*(1+b)) || math.IsInf(b, 1) && a < b }

// tellable finds the readings that can be told from all others when they are
// wrong. One that alone decides its own fitted value has no residual; and where
// leaving one out makes another decide alone, an error of either looks the same. A
// set of two is the exception: both go together, see leaveLone.
func (s *search) tellable() {
	s.judge = make([]bool, len(s.u))
	weights := ones(len(s.u))
	if s.fit(weights) != nil {
		return
	}
	before := slices.Clone(s.left)
	for n := range before {
		weights[n] = faint
		s.judge[n] = !decides(before[n]) && s.fit(weights) == nil && !s.twin(n, before)
		weights[n] = 1
	}
}

// twin tells whether another reading decides alone now that n is left out.
func (s *search) twin(n int, before []align.Residual) bool {
	for m, now := range s.left {
		if m != n && decides(now) && !decides(before[m]) && len(s.sets[now.Set].Readings) > 2 {
			return true
		}
	}
	return false
}

// decides tells whether a reading alone decides its own fitted value.
func decides(r align.Residual) bool { return r.Leverage > 1-1e-4 }

// ones is the weights with which every fit begins.
func ones(n int) []float64 {
	list := make([]float64, n)
	for i := range list {
		list[i] = 1
	}
	return list
}
