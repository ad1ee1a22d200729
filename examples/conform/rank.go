package main

import (
	"cmp"
	"maps"
	"slices"
)

// suspicion is a mistake that would explain failures.
type suspicion struct {
	Flag    string  `json:"flag"`
	Mistake string  `json:"mistake"`
	Effect  string  `json:"effect"`
	Failed  int     `json:"failed"` // vectors that betray it and failed
	Of      int     `json:"of"`     // vectors that betray it and were answered
	Match   float64 `json:"match"`  // how well the two sets agree, 1 at best
}

// rank puts the mistakes first that explain the failures best. A mistake
// explains them the better the more of its vectors failed, and the fewer others
// did: the match is twice what both have in common over the sum of both (Dice's
// coefficient).
func (r *report) rank(s *suite, outcomes []outcome) {
	failed, of, all := map[string]int{}, map[string]int{}, 0
	for _, o := range outcomes {
		if o.telling() {
			all++
			count(failed, o.Flags)
		}
		if o.telling() || o.passed() {
			count(of, o.Flags)
		}
	}
	for _, flag := range slices.Sorted(maps.Keys(failed)) {
		text, n := s.flags[flag], failed[flag]
		match := 2 * float64(n) / float64(all+of[flag])
		r.Mistakes = append(r.Mistakes, suspicion{flag, text.Mistake, text.Effect, n, of[flag], match})
	}
	slices.SortStableFunc(r.Mistakes, func(a, b suspicion) int { return cmp.Compare(b.Match, a.Match) })
}

func count(counts map[string]int, flags []string) {
	for _, flag := range flags {
		counts[flag]++
	}
}

// first returns the mistake that explains the failures best, and those that
// explain them as well: the same vectors betray them.
func (r *report) first() []suspicion {
	n := 0
	for n < len(r.Mistakes) && r.Mistakes[n].Match == r.Mistakes[0].Match {
		n++
	}
	return r.Mistakes[:n]
}
