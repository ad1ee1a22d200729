package align_test

import (
	"testing"

	"example.org/collinear/align"
)

// The other view, an uncertainty of each reading's own, and every kind of probe
// bring no allocation either, nor does the check of a single set.
func TestNoAllocationsWhateverTheSets(t *testing.T) {
	fromStationary := each(sweeps(t, 3, 9, true), func(s *align.Set) { s.View = align.FromStationary })
	fromBoth := append(sweeps(t, 2, 9, true), fromStationary[2])
	rows := []struct {
		name string
		sets []align.Set
	}{
		{"seen from the stationary machine", fromStationary},
		{"sets seen from either end", fromBoth},
		{"every kind, with every uncertainty", full(t).(*setsInput).Sets},
		{"every kind, with none", sound(t)},
	}
	for _, row := range rows {
		mustFit(t, row.sets...) // a refusal would allocate, and an answer with warnings
		if n := testing.AllocsPerRun(100, func() { _, _ = align.Fit(row.sets...) }); n != 0 {
			t.Errorf("%s: Fit allocates %v times", row.name, n)
		}
		for _, s := range row.sets {
			if n := testing.AllocsPerRun(10, func() { _ = s.Validate() }); n != 0 {
				t.Errorf("%s: Validate of a %v allocates %v times", row.name, s.Probe.Kind, n)
			}
		}
	}
}

// Corrections without room allocate the list and nothing beside it.
func TestCorrectionsAllocateTheirList(t *testing.T) {
	e := mustFit(t, sweeps(t, 2, 9, true)...).Estimate
	feet := []align.Foot{{Name: "front", X: 250 * mm, U: mm}, {Name: "middle", X: 500 * mm}, {Name: "rear", X: 750 * mm}}
	if n := testing.AllocsPerRun(100, func() { kept, _ = e.Corrections(feet...) }); n != 1 {
		t.Errorf("Corrections allocates %v times, want once", n)
	}
	tight := make([]align.Move, 0, len(feet)-1)
	if n := testing.AllocsPerRun(100, func() { kept, _ = e.AppendCorrections(tight, feet...) }); n != 1 {
		t.Errorf("AppendCorrections without room allocates %v times, want once", n)
	}
}
