package align_test

import (
	"fmt"
	"testing"

	"example.org/collinear/align"
)

// sweeps makes two to four sets of readings that scatter, with every uncertainty
// stated that their kinds have, or with none. One set alone never sees all four
// numbers, so there is none of one.
func sweeps(tb fataler, n, readings int, stated bool) []align.Set {
	tb.Helper()
	sets := []align.Set{
		rim(align.Stationary, 40), rim(align.Movable, -50), face(align.Movable, 75),
		{Probe: align.Probe{Kind: align.SpacerFace, Carrier: align.Stationary, Radius: 90 * mm, Span: 500 * mm}},
	}[:n]
	return each(read(tb, caseA, sets, even(readings, 20, 300)...), func(s *align.Set) {
		for i := 0; i < len(s.Readings); i += 3 {
			s.Readings[i].Value += 5 * um
		}
		if !stated {
			return
		}
		s.U = align.Uncertainty{Reading: 5 * um, Clock: 0.005}
		_, station, radius, _, _, sag := needs(s.Probe.Kind)
		if station {
			s.U.Station = mm
		}
		if radius {
			s.U.Radius = mm
		}
		if sag {
			s.U.Sag = um
		}
	})
}

// What is called again and again, while a shaft turns or a screw is turned,
// leaves nothing for the garbage collector.
func TestNoAllocations(t *testing.T) {
	feet := []align.Foot{{Name: "inboard", X: 300 * mm, U: mm}, {Name: "outboard", X: 900 * mm}}
	none := func(name string, f func()) {
		t.Helper()
		if n := testing.AllocsPerRun(100, f); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
	for _, n := range []int{2, 3, 4} {
		for _, stated := range []bool{false, true} {
			for _, readings := range []int{3, 9, 60} {
				sets := sweeps(t, n, readings, stated)
				f := mustFit(t, sets...)
				name := fmt.Sprintf(" of %d sets of %d, stated %v", n, readings, stated)
				none("Fit"+name, func() { _, _ = align.Fit(sets...) })
				residuals := make([]align.Residual, 0, n*readings)
				none("Residuals"+name, func() { _, _ = align.Residuals(residuals, sets, f) })
			}
		}
	}
	e := mustFit(t, sweeps(t, 2, 9, true)...).Estimate
	moves := make([]align.Move, 0, len(feet))
	none("AppendCorrections", func() { _, _ = e.AppendCorrections(moves, feet...) })
	none("At", func() { _, _ = e.At(300 * mm) })
	none("Plus, Minus, Times", func() { _ = e.Minus(e.Plus(e).Times(2)) })
	none("Standard and Correlation", func() { _, _ = e.Cov.Standard(), e.Cov.Correlation() })
	coupling := align.Coupling{Diameter: 150 * mm, Span: 800 * mm}
	none("Gap", func() { _, _, _ = coupling.Gap(e.Value) })
	none("FlexTilts", func() { _, _, _ = coupling.FlexTilts(e.Value) })
}

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
