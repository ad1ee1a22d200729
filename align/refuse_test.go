package align_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// sound is a set of every kind, each with just what it uses, that together make
// a good fit.
func sound(tb fataler) []align.Set {
	tb.Helper()
	var sets []align.Set
	for _, kind := range everyKind {
		sets = append(sets, soundSet(kind))
	}
	return read(tb, caseA, sets, 10, 100, 190, 280)
}

func soundSet(kind align.Kind) align.Set {
	s := align.Set{Probe: align.Probe{Kind: kind}}
	carrier, station, radius, span, gain, sag := needs(kind)
	if carrier {
		s.Probe.Carrier = align.Movable
	}
	if station {
		s.Probe.Station = -50 * mm
	}
	if radius {
		s.Probe.Radius = 75 * mm
	}
	if span {
		s.Probe.Span = 500 * mm
	}
	if gain {
		s.Probe.Gain = -2
	}
	if sag {
		s.Sag = 30 * um
	}
	return s
}

func indexOf(k align.Kind) int { return slices.Index(everyKind, k) }

// One thing wrong in sets that are sound otherwise: the fault, and a twin that is
// nearly the same and passes.
func TestFitRefuses(t *testing.T) {
	rimAt, boreAt, faceAt := indexOf(align.Rim), indexOf(align.Bore), indexOf(align.NearFace)
	gapAt, spacerAt, sensorAt := indexOf(align.Gap), indexOf(align.SpacerFace), indexOf(align.Displacement)
	edgeAt := indexOf(align.Straightedge)
	path := func(set int, rest string) string { return fmt.Sprintf("/sets/%d/%s", set, rest) }
	rows := []struct {
		name string
		set  int
		bad  func(*align.Set)
		twin func(*align.Set) // nil: the sound sets as they are
		want string
	}{
		{"no kind", rimAt, func(s *align.Set) { s.Probe.Kind = 0 }, nil, "missing " + path(rimAt, "probe/kind")},
		{"a kind that does not exist", rimAt, func(s *align.Set) { s.Probe.Kind = 99 }, nil, "out_of_range " + path(rimAt, "probe/kind")},
		{"no carrier", rimAt, func(s *align.Set) { s.Probe.Carrier = 0 }, nil, "missing " + path(rimAt, "probe/carrier")},
		{"a carrier that does not exist", faceAt, func(s *align.Set) { s.Probe.Carrier = 3 }, func(s *align.Set) { s.Probe.Carrier = 1 }, "out_of_range " + path(faceAt, "probe/carrier")},
		{"a view that does not exist", rimAt, func(s *align.Set) { s.View = 2 }, func(s *align.Set) { s.View = 1 }, "out_of_range " + path(rimAt, "view")},
		{"a carrier for a gap", gapAt, func(s *align.Set) { s.Probe.Carrier = align.Movable }, nil, "conflict " + path(gapAt, "probe/carrier")},
		{"a carrier for a sensor", sensorAt, func(s *align.Set) { s.Probe.Carrier = align.Stationary }, nil, "conflict " + path(sensorAt, "probe/carrier")},

		{"no radius of a face", faceAt, func(s *align.Set) { s.Probe.Radius = 0 }, nil, "missing " + path(faceAt, "probe/radius")},
		{"a radius below zero", faceAt, func(s *align.Set) { s.Probe.Radius *= -1 }, nil, "out_of_range " + path(faceAt, "probe/radius")},
		{"no radius of a gap", gapAt, func(s *align.Set) { s.Probe.Radius = 0 }, nil, "missing " + path(gapAt, "probe/radius")},
		{"a radius of a rim below zero", rimAt, func(s *align.Set) { s.Probe.Radius = -1 }, func(s *align.Set) { s.Probe.Radius = 1 }, "out_of_range " + path(rimAt, "probe/radius")},
		{"no span", spacerAt, func(s *align.Set) { s.Probe.Span = 0 }, nil, "missing " + path(spacerAt, "probe/span")},
		{"a span below zero", spacerAt, func(s *align.Set) { s.Probe.Span *= -1 }, nil, "out_of_range " + path(spacerAt, "probe/span")},
		{"no gain", sensorAt, func(s *align.Set) { s.Probe.Gain = 0 }, func(s *align.Set) { s.Probe.Gain = -1e-3 }, "missing " + path(sensorAt, "probe/gain")},

		{"sag of a rim below zero", rimAt, func(s *align.Set) { s.Sag *= -1 }, func(s *align.Set) { s.Sag = 0 }, "out_of_range " + path(rimAt, "sag")},
		{"sag of a bore below zero", boreAt, func(s *align.Set) { s.Sag *= -1 }, func(s *align.Set) { s.Sag = 0 }, "out_of_range " + path(boreAt, "sag")},
		{"sag of a straightedge", edgeAt, func(s *align.Set) { s.Sag = 1 }, nil, "conflict " + path(edgeAt, "sag")},
		{"sag of a gap, not of a face", gapAt, func(s *align.Set) { s.Sag = 1 }, nil, "conflict " + path(gapAt, "sag")},

		{"no readings", rimAt, func(s *align.Set) { s.Readings = nil }, nil, "missing " + path(rimAt, "readings")},
		{"one reading", rimAt, func(s *align.Set) { s.Readings = s.Readings[:1] }, func(s *align.Set) { s.Readings = s.Readings[:2] }, "missing " + path(rimAt, "readings")},
		{"uncertainty of the station below zero", rimAt, func(s *align.Set) { s.U.Station = -1 }, func(s *align.Set) { s.U.Station = 1 }, "out_of_range " + path(rimAt, "u/station")},
		{"uncertainty of the radius below zero", faceAt, func(s *align.Set) { s.U.Radius = -1 }, func(s *align.Set) { s.U.Radius = 1 }, "out_of_range " + path(faceAt, "u/radius")},
		{"uncertainty of the sag below zero", boreAt, func(s *align.Set) { s.U.Sag = -1 }, func(s *align.Set) { s.U.Sag = 1 }, "out_of_range " + path(boreAt, "u/sag")},
		{"uncertainty of the clock below zero", gapAt, func(s *align.Set) { s.U.Clock = -1 }, func(s *align.Set) { s.U.Clock = 0.01 }, "out_of_range " + path(gapAt, "u/clock")},
		{"uncertainty of some readings", rimAt, func(s *align.Set) { s.Readings[1].U = 5 * um }, nil, "conflict /sets"},
		{"uncertainty of one set", rimAt, func(s *align.Set) { s.U.Reading = 5 * um }, nil, "conflict /sets"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			sets := each(sound(t), func(*align.Set) {})
			row.bad(&sets[row.set])
			_, err := align.Fit(sets...)
			if got := codesAndPaths(err); !slices.Equal(got, []string{row.want}) {
				t.Errorf("got %v (%v), want just %s", got, err, row.want)
			}
			twin := each(sound(t), func(*align.Set) {})
			if row.twin != nil {
				row.twin(&twin[row.set])
			}
			if _, err := align.Fit(twin...); err != nil {
				t.Errorf("the twin is refused: %v", err)
			}
		})
	}
}

// Where all readings have an uncertainty, one below zero is one fault.
func TestReadingUncertainBelowZero(t *testing.T) {
	own := each(state(sound(t), 5*um), func(*align.Set) {})
	own[3].Readings[2].U = -1
	_, err := align.Fit(own...)
	if got, want := codesAndPaths(err), []string{"out_of_range /sets/3/readings/2/u"}; !slices.Equal(got, want) {
		t.Errorf("got %v, want just %v", got, want)
	}
	own[3].Readings[2].U = 1
	own[3].U.Reading = -1
	_, err = align.Fit(own...)
	if got, want := codesAndPaths(err), []string{"out_of_range /sets/3/u/reading"}; !slices.Equal(got, want) {
		t.Errorf("got %v, want just %v", got, want)
	}
	own[3].U.Reading = 1
	if _, err := align.Fit(own...); err != nil {
		t.Errorf("the twin is refused: %v", err)
	}
}

// Signed sag is right for faces, near, far and of a spacer.
func TestSignedSagOfFaces(t *testing.T) {
	sets := each(sound(t), func(s *align.Set) {
		if k := s.Probe.Kind; signedSag(k) && s.Sag != 0 {
			s.Sag *= -1
		}
	})
	if _, err := align.Fit(sets...); err != nil {
		t.Error(err)
	}
}

// Every field that a kind has no use for is refused for it, and for it alone,
// and every one that it has passes.
func TestFieldsOfKinds(t *testing.T) {
	fields := []struct {
		path string
		set  func(*align.Set)
		used func(align.Kind) bool
	}{
		{"probe/carrier", func(s *align.Set) { s.Probe.Carrier = align.Stationary }, func(k align.Kind) bool { c, _, _, _, _, _ := needs(k); return c }},
		{"probe/station", func(s *align.Set) { s.Probe.Station = 40 * mm }, func(k align.Kind) bool { _, st, _, _, _, _ := needs(k); return st }},
		{"probe/radius", func(s *align.Set) { s.Probe.Radius = 80 * mm }, func(k align.Kind) bool { _, _, r, _, _, _ := needs(k); return r || k == align.Rim || k == align.Bore }},
		{"probe/span", func(s *align.Set) { s.Probe.Span = 400 * mm }, func(k align.Kind) bool { _, _, _, sp, _, _ := needs(k); return sp }},
		{"probe/gain", func(s *align.Set) { s.Probe.Gain = 2 }, func(k align.Kind) bool { _, _, _, _, g, _ := needs(k); return g }},
		{"sag", func(s *align.Set) { s.Sag = 20 * um }, func(k align.Kind) bool { _, _, _, _, _, sag := needs(k); return sag }},
		{"u/station", func(s *align.Set) { s.U.Station = mm }, func(k align.Kind) bool { _, st, _, _, _, _ := needs(k); return st }},
		{"u/radius", func(s *align.Set) { s.U.Radius = mm }, func(k align.Kind) bool { _, _, r, _, _, _ := needs(k); return r }},
		{"u/sag", func(s *align.Set) { s.U.Sag = um }, func(k align.Kind) bool { _, _, _, _, _, sag := needs(k); return sag }},
		{"u/clock", func(s *align.Set) { s.U.Clock = 0.01 }, func(align.Kind) bool { return true }},
	}
	for n, kind := range everyKind {
		for _, field := range fields {
			t.Run(kind.String()+"/"+field.path, func(t *testing.T) {
				sets := each(sound(t), func(*align.Set) {})
				field.set(&sets[n])
				_, err := align.Fit(sets...)
				if field.used(kind) {
					if err != nil {
						t.Errorf("refused: %v", err)
					}
					return
				}
				if got, want := codesAndPaths(err), fmt.Sprintf("conflict /sets/%d/%s", n, field.path); !slices.Equal(got, []string{want}) {
					t.Errorf("got %v, want just %s", got, want)
				}
			})
		}
	}
}

// Faults that do not depend on one another come all at once.
func TestFaultsComeTogether(t *testing.T) {
	sets := each(sound(t)[:3], func(*align.Set) {})
	sets[0].Probe.Carrier = 0
	sets[0].Sag = -1
	sets[0].Readings[3].At = units.Clock(math.NaN())
	sets[1].View = 7
	sets[1].U.Clock = -1
	sets[2].Probe.Radius = 0
	sets[2].Probe.Gain = 2
	sets[2].Readings = nil
	_, err := align.Fit(sets...)
	want := []string{
		"conflict /sets/2/probe/gain", "missing /sets/0/probe/carrier", "missing /sets/2/probe/radius", "missing /sets/2/readings",
		"not_finite /sets/0/readings/3/at", "out_of_range /sets/0/sag", "out_of_range /sets/1/u/clock", "out_of_range /sets/1/view",
	}
	if diff := cmp.Diff(want, codesAndPaths(err)); diff != "" {
		t.Errorf("faults (-want +got):\n%s", diff)
	}
	for _, f := range units.Faults(err) {
		if f.Want == "" {
			t.Errorf("%v does not say what was wanted", f)
		}
	}
	_, again := align.Residuals(nil, sets, align.Fitted{})
	if diff := cmp.Diff(codesAndPaths(err), codesAndPaths(again)); diff != "" {
		t.Errorf("Residuals refuses otherwise (-Fit +Residuals):\n%s", diff)
	}
}

func TestNoSets(t *testing.T) {
	_, err := align.Fit()
	checkFault(t, err, units.Missing, "/sets")
}

// What readings cannot see is refused and named: just that.
func TestUnseen(t *testing.T) {
	all := fourNames[:]
	rims := reverse()
	twice := []align.Set{rim(align.Stationary, 40), rim(align.Movable, 40)}
	rows := []struct {
		name   string
		sets   []align.Set
		clocks []units.Clock
		blind  []string
		twin   []align.Set
		seen   []units.Clock
	}{
		{"readings on one diameter, 12 and 6", rims, []units.Clock{0, 180, 0, 180}, []string{fourNames[0], fourNames[1]}, rims, []units.Clock{0, 180, 1, 181}},
		{"readings on one diameter, 3 and 9", rims, []units.Clock{90, 270, 90}, []string{fourNames[2], fourNames[3]}, rims, []units.Clock{90, 270, 91}},
		{"readings on a slanting diameter", rims, []units.Clock{30, 210, 30, 210}, all, rims, []units.Clock{30, 210, 31, 210}},
		{"two angles again and again", rims, []units.Clock{10, 80, 10, 80, 10}, all, rims, []units.Clock{10, 80, 10, 80, 11}},
		{"one rim alone", rims[:1], quarters, all, rims, quarters},
		{"one rim alone, at the coupling", []align.Set{rim(align.Stationary, 0)}, quarters, []string{fourNames[1], fourNames[3]}, rimFace(), quarters},
		{"a face alone", rimFace()[1:], quarters, []string{fourNames[0], fourNames[2]}, rimFace(), quarters},
		{"two faces", []align.Set{face(align.Stationary, 75), face(align.Movable, 90)}, quarters, []string{fourNames[0], fourNames[2]}, rimFace(), quarters},
		{"two rims at one station", twice, quarters, all, []align.Set{twice[0], rim(align.Movable, 41)}, quarters},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			_, err := align.Fit(read(t, caseA, row.sets, row.clocks...)...)
			checkFault(t, err, units.Unseen, "/sets")
			for _, f := range units.Faults(err) {
				for _, name := range fourNames {
					if strings.Contains(f.Want, name) != slices.Contains(row.blind, name) {
						t.Errorf("%q, want it to name %v", f.Want, row.blind)
					}
				}
			}
			if _, err := align.Fit(read(t, caseA, row.twin, row.seen...)...); err != nil {
				t.Errorf("the twin is refused: %v", err)
			}
		})
	}
}

// All readings at one place, wherever that is and whatever it rounds to, see
// nothing.
func TestOnePlaceSeesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		here := units.Clock(rapid.Float64Range(-400, 400).Draw(t, "at"))
		n := rapid.IntRange(2, 9).Draw(t, "readings")
		sets := reverse()
		for i := range sets {
			for k := range n {
				sets[i].Readings = append(sets[i].Readings, align.Reading{At: here, Value: units.Length(k) * um})
			}
		}
		if f, err := align.Fit(sets...); !errors.Is(err, units.Unseen) {
			t.Errorf("got %+v, %v; want a refusal as unseen", f.Value, err)
		}
	})
}

// A spread that dials do not show is answered with a question. The limits are
// ours: 0.5 um and 25 mm, both still good.
func TestSuspectSpread(t *testing.T) {
	spread := func(v units.Length) []align.Reading { return at(v, quarters, 0, 0.5, 1, 0.5) }
	rows := []struct {
		name   string
		spread units.Length
		asks   bool
	}{
		{"0.5 um", um / 2, false}, {"just under", um/2 - 1e-6, true}, {"nothing", 0, true},
		{"25 mm", 25 * mm, false}, {"just over", 25*mm + 1e-6, true}, {"inches for millimetres", 30 * mm, true},
	}
	for _, row := range rows {
		sets := []align.Set{rim(align.Stationary, 40), rim(align.Movable, -50)}
		sets[0].Readings, sets[1].Readings = spread(mm), spread(row.spread)
		f := mustFit(t, sets...)
		var got []string
		for _, w := range f.Warnings {
			got = append(got, string(w.Code)+" "+w.Path)
		}
		var want []string
		if row.asks {
			want = []string{"suspect /sets/1/readings"}
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: got %v, want %v", row.name, got, want)
		}
		if row.asks && (f.Warnings[0].Want == "" || f.Warnings[0].Value != row.spread.String()) {
			t.Errorf("%s: %+v does not say what was found and wanted", row.name, f.Warnings[0])
		}
	}
}
