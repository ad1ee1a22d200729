package align_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// Bad input, and twins that are nearly the same and pass.
func TestFitExactRefuses(t *testing.T) {
	good := func() []align.Set {
		return read(t, caseA, known(75, rimFace()...), even(6, 30, 200)...)
	}
	far := func(radius float64) func() []align.Set {
		return func() []align.Set {
			return read(t, line(0, 0, 60, 0), known(radius, rimFace()...), even(6, 30, 200)...)
		}
	}
	rows := []struct {
		name string
		sets func() []align.Set
		code units.Code
		path string
		twin func() []align.Set
	}{
		{"no sets", func() []align.Set { return nil }, units.Missing, "/sets", good},
		{"a reading that is no number", func() []align.Set {
			sets := good()
			sets[1].Readings[2].Value = units.Length(math.NaN())
			return sets
		}, units.NotFinite, "/sets/1/readings/2/value", good},
		{"a radius below zero", func() []align.Set { return known(-75, good()...) }, units.OutOfRange, "/sets/0/probe/radius", good},
		{"no slope to be seen", func() []align.Set { return good()[:1] }, units.Unseen, "/sets", good},
		{"an axis outside the rim", far(50), units.Unreachable, "/sets", far(70)},
		{"readings that pull the search to and fro", unsettled(0.25, 40), units.Unreachable, "/sets", unsettled(1, 40)},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			f, err := align.FitExact(row.sets()...)
			checkFault(t, err, row.code, row.path)
			if f.Value != (align.Centreline{}) || f.Linear != nil {
				t.Errorf("a refusal comes with %+v", f)
			}
			mustFitExact(t, row.twin()...)
		})
	}
}

// unsettled is a rim 20 mm from a sensor of a given gain on a sixth of a turn, with
// readings that scatter by 5 um.
func unsettled(gain, radius float64) func() []align.Set {
	return func() []align.Set {
		bore := align.Set{Probe: align.Probe{Kind: align.Bore, Carrier: align.Stationary, Station: -10 * mm, Radius: length(radius)}, Sag: 0.3 * mm}
		sensor := align.Set{Probe: align.Probe{Kind: align.Displacement, Station: 10 * mm, Gain: gain}}
		truth := line(5*math.Sin(1), 2e-3*math.Sin(1), 5*math.Cos(1), 2e-3*math.Cos(1))
		sets := []align.Set{swept(truth, bore, even(6, 1, 360)), swept(truth, sensor, even(4, 1, 60))}
		return each(sets, func(s *align.Set) {
			for i := range s.Readings {
				s.Readings[i].Value += length(0.005 * math.Sin(float64(1+3*i*i*i)))
			}
		})
	}
}

// A spread that asks about the unit is answered with the warning of Fit.
func TestFitExactWarns(t *testing.T) {
	sets := read(t, line(0, 0, 20, 0), known(75, rimFace()...), quarters...)
	f := mustFitExact(t, sets...)
	if want := mustFit(t, sets...).Warnings; len(want) == 0 || !slices.Equal(f.Warnings, want) {
		t.Errorf("warnings %v, Fit has %v", f.Warnings, want)
	}
}

func TestFitExactLeavesItsInput(t *testing.T) {
	sets := sweptBench(t, 9)
	before := each(sets, func(*align.Set) {})
	mustFitExact(t, sets...)
	for i := range sets {
		if !slices.Equal(sets[i].Readings, before[i].Readings) || sets[i].Probe != before[i].Probe {
			t.Errorf("set %d has changed", i)
		}
	}
}

// sweptBench is a rim and a face carried by the movable shaft on a third of a turn,
// with every uncertainty stated.
func sweptBench(tb fataler, readings int) []align.Set {
	sets := each(sweeps(tb, 3, readings, true), func(s *align.Set) {
		s.U.Angle = 0.002
		*s = swept(line(0.6, 0.5e-3, -0.8, -1e-3), *s, even(readings, 30, 120))
	})
	return known(75, sets...)[1:]
}

func TestFitExactDoesNotAllocate(t *testing.T) {
	for _, readings := range []int{3, 9, 60} {
		sets := sweptBench(t, readings)
		mustFitExact(t, sets...)
		if n := testing.AllocsPerRun(100, func() { _, _ = align.FitExact(sets...) }); n != 0 {
			t.Errorf("FitExact of %d readings allocates %v times", readings, n)
		}
	}
}

func TestExactFitRoundTrips(t *testing.T) {
	roundTrip(t, align.ExactFit{})
	f := mustFitExact(t, sweptBench(t, 9)...)
	roundTrip(t, f)
	f.Linear = []int{0, 2}
	roundTrip(t, f)
}

func BenchmarkFitExact(b *testing.B) {
	for _, readings := range []int{9, 60, 1000} {
		sets := sweptBench(b, readings)
		for _, of := range []struct {
			name string
			run  func() error
		}{
			{"exact", func() error { _, err := align.FitExact(sets...); return err }},
			{"linear", func() error { _, err := align.Fit(sets...); return err }},
		} {
			b.Run(fmt.Sprintf("%s/%d", of.name, readings), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if err := of.run(); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

// A spacer so long that the exact centreline is 1050 km off, more than numbers may be, where
// the linear law makes less of it.
func TestExactRefusesWhatCannotBeReckonedWith(t *testing.T) {
	spacer := func(offset float64) []align.Set {
		var sets []align.Set
		for _, carrier := range []align.Shaft{align.Stationary, align.Movable} {
			p := align.Probe{Kind: align.SpacerFace, Carrier: carrier, Radius: 100 * mm, Span: length(1e9)}
			sets = append(sets, swept(line(0, 0, offset, 0.2), align.Set{Probe: p}, even(9, 0, 360)))
		}
		mustFit(t, sets...)
		return sets
	}
	_, err := align.FitExact(spacer(1.05e9)...)
	checkFault(t, err, units.OutOfRange, "/sets")
	f := mustFitExact(t, spacer(0.99e9)...)
	near(t, "990 km", f.Value.Vertical.Offset, length(0.99e9), length(1))
}
