package dial_test

import "testing"

// A sound job leaves nothing for the garbage collector, whatever the number of
// readings, with a return to the start and without.
func TestSolveAllocatesNothing(t *testing.T) {
	for _, m := range methods {
		for name, s := range map[string]sweep{
			"three readings": fair()[:3], "four": fair(), "four and the return": returning(0), "with uncertainty": fullSweep(),
		} {
			job := m.with(soundJobs[m.name], s, s)
			if r := solved(t, job); len(r.Warnings) != 0 {
				t.Fatalf("%s, %s: a warning allocates as well: %v", m.name, name, r.Warnings)
			}
			if n := testing.AllocsPerRun(100, func() { sink, _ = job.Solve() }); n != 0 {
				t.Errorf("%s, %s: %v allocations", m.name, name, n)
			}
		}
	}
}

// A target is worked out on the stack, and what returns readings allocates their
// list. The pair copies both of its faces beside it.
func TestAllocationsOfTheRest(t *testing.T) {
	most := map[string]float64{"target": 0, "remove runout": 1, "without float": 3}
	for _, e := range entries {
		limit, ok := most[e.name]
		if !ok {
			continue
		}
		input := e.full()
		if n := testing.AllocsPerRun(100, func() { _ = e.run(input) }); n > limit {
			t.Errorf("%s: %v allocations, more than %v", e.name, n, limit)
		}
	}
}
