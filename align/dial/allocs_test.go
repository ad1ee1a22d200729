package dial_test

import "testing"

// What a sound job leaves for the garbage collector, measured: the two sweeps at
// the quarters, which the closed form reads through pointers, and the input of a
// method that has a diameter. The number of readings and a return to the start
// add nothing. Each is an upper bound: fewer is welcome.
func TestAllocationsOfSolve(t *testing.T) {
	most := map[string]float64{
		"reverse": 2, "rim-face": 3, "face-face": 3, "rim and gap": 3, "straightedge and gap": 3,
	}
	for _, m := range methods {
		for name, s := range map[string]sweep{
			"three readings": fair()[:3], "four": fair(), "four and the return": returning(0), "with uncertainty": fullSweep(),
		} {
			job := m.with(soundJobs[m.name], s, s)
			if r := solved(t, job); len(r.Warnings) != 0 {
				t.Fatalf("%s, %s: a warning allocates as well: %v", m.name, name, r.Warnings)
			}
			if n := testing.AllocsPerRun(100, func() { sink, _ = job.Solve() }); n > most[m.name] {
				t.Errorf("%s, %s: %v allocations, more than %v", m.name, name, n, most[m.name])
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
