package align_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"pgregory.net/rapid"
)

// What one set sees by itself, against rigid shafts computed exactly: the vector
// a*offset + b*slope, which is w at the station of a rim, the slope times the
// radius of a face, the tilt at its joint times the radius of a spacer face. Read
// at the four quarters, with sag and from either end, the fit has it within 10 nm:
// up to 1 mm of offset and 2 mm/m of slope as vectors, on rims from 40 mm radius
// at up to 1 m, on faces, and on spacers of 200 mm to 2 m whose faces are swept at
// up to 150 mm.

// drawMounted draws a set of the kind, anywhere in the domain, and its readings of
// the truth. radius is that of a rim, which the linear law does not know.
func drawMounted(t *rapid.T, kind align.Kind, truth align.Centreline) align.Set {
	s := drawSet(t, kind)
	carrier, station, radius, span, _, _ := needs(kind)
	if station {
		s.Probe.Station = length(rapid.Float64Range(-1000, 1000).Draw(t, "station of a rim"))
	}
	touched, bySpacer := rapid.Float64Range(40, 500).Draw(t, "radius of a rim"), false
	switch {
	case span:
		s.Probe.Span = length(rapid.Float64Range(200, 2000).Draw(t, "span of a spacer"))
		s.Probe.Radius = length(rapid.Float64Range(40, 150).Draw(t, "radius on a spacer"))
		bySpacer = rapid.Bool().Draw(t, "carried by the spacer")
	case radius && carrier:
		s.Probe.Radius = length(rapid.Float64Range(40, 500).Draw(t, "radius of a face"))
	}
	return sweepQuarters(truth, s, touched, bySpacer)
}

// sweepQuarters reads a set on rigid shafts at the quarters as its crew names
// them; a crew at the stationary end has 3 and 9 exchanged.
func sweepQuarters(truth align.Centreline, s align.Set, touched float64, bySpacer bool) align.Set {
	i := toRigid(s.Probe)
	i.Sag, i.BySpacer = inMM(s.Sag), bySpacer
	if s.Probe.Radius == 0 {
		i.Radius = touched
	}
	clocks := []float64{0, 90, 180, 270}
	if s.View == align.FromStationary {
		clocks = []float64{0, 270, 180, 90}
	}
	s.Readings = at(mm, quarters, i.Sweep(pose(truth), clocks...)...)
	return s
}

// ownLaw is what a set sees per offset and per slope, without its gain.
func ownLaw(p align.Probe) (a, b float64) {
	a, b = coefficients(p)
	if p.Gain != 0 {
		return a / p.Gain, b / p.Gain
	}
	return a, b
}

// seenApart is how far two centrelines lie apart in what a set sees of them, in
// millimetres.
func seenApart(p align.Probe, c, d align.Centreline) float64 {
	a, b := ownLaw(p)
	m := plain(c.Minus(d))
	return math.Hypot(a*m[0]+b*m[1], a*m[2]+b*m[3])
}

// fitBeside fits a set together with one that is read without error and sees
// what the first does not. Both have just as many unknowns as they see numbers,
// so that the first alone decides what it sees.
func fitBeside(tb fataler, truth align.Centreline, s align.Set) align.Centreline {
	tb.Helper()
	other := read(tb, truth, []align.Set{{Probe: complement(s.Probe)}}, quarters...)[0]
	return mustFit(tb, s, other).Value
}

func TestEveryKindWithinTenNanometres(t *testing.T) {
	for _, kind := range everyKind {
		t.Run(kind.String(), func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				truth := drawVectors(t, 1, 2e-3)
				s := drawMounted(t, kind, truth)
				if d := seenApart(s.Probe, fitBeside(t, truth, s), truth); !(d <= tenNanometres) {
					t.Errorf("what %+v sees is %.2f nm off", s, 1e6*d)
				}
			})
		})
	}
}

// Two sets of any kinds see all four numbers. With errors e_1 and e_2 of up to 10
// nm each in what the sets see, in each plane,
//
//	a_1 offset + b_1 slope = m_1 + e_1        a_2 offset + b_2 slope = m_2 + e_2
//
// Cramer's rule bounds the vectors of offset and slope by 10 nm times
//
//	(|b_1| + |b_2|)/|a_1 b_2 - a_2 b_1|        (|a_1| + |a_2|)/|a_1 b_2 - a_2 b_1|.
func TestTwoSetsWithinTheirGeometry(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		truth := drawVectors(t, 1, 2e-3)
		one := drawMounted(t, rapid.SampledFrom(everyKind).Draw(t, "one"), truth)
		other := drawMounted(t, rapid.SampledFrom(everyKind).Draw(t, "other"), truth)
		if !independent([]align.Set{one, other}) {
			probe := complement(one.Probe)
			other = sweepQuarters(truth, align.Set{Probe: probe}, 75, false)
		}
		a1, b1 := ownLaw(one.Probe)
		a2, b2 := ownLaw(other.Probe)
		det := math.Abs(a1*b2 - a2*b1)
		off := mustFit(t, one, other).Value.Minus(truth)
		offset := inMM(off.At(0).Size())
		slope := float64(off.Tilt().Size())
		if most := tenNanometres * (math.Abs(b1) + math.Abs(b2)) / det; !(offset <= most) {
			t.Errorf("offset is %.2f nm off, at most %.2f by geometry", 1e6*offset, 1e6*most)
		}
		if most := tenNanometres * (math.Abs(a1) + math.Abs(a2)) / det; !(slope <= most) {
			t.Errorf("slope is %.3g off, at most %.3g by geometry", slope, most)
		}
	})
}

// Where a spacer's 10 nm end. The tilt at a joint of a 200 mm spacer reaches
// w(100)/200 = 1.2 mm/200 mm; the linear law leaves out a share of its third
// power, and the radius multiplies that. The figures are ours, the largest of this
// simulation over directions 12 degrees apart and both joints; their tolerance is
// half their last digit.
func TestWhereASpacerFaceEnds(t *testing.T) {
	rows := []struct {
		name         string
		span, radius float64
		byShafts     float64 // nanometres, dials carried by the two shafts
		bySpacer     float64 // and by the spacer
	}{
		{"the corner of the domain", 200, 150, 7.3, 9.8},
		{"wider than the domain", 200, 200, 9.7, 13.0},
		{"far wider", 200, 500, 24.2, 32.6},
		{"as wide, a longer spacer", 250, 500, 15.2, 19.1},
		{"as wide, long enough for it", 400, 500, 5.6, 6.3},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			byShafts := worst(1, 2e-3, spacerFaceMiss(t, row.span, row.radius, false))
			bySpacer := worst(1, 2e-3, spacerFaceMiss(t, row.span, row.radius, true))
			near(t, "carried by the shafts, nm", 1e6*byShafts, row.byShafts, 0.05)
			near(t, "carried by the spacer, nm", 1e6*bySpacer, row.bySpacer, 0.05)
		})
	}
}

// spacerFaceMiss is how far off the worse joint is in what its face sees.
func spacerFaceMiss(tb fataler, span, radius float64, bySpacer bool) func(align.Centreline) float64 {
	return func(truth align.Centreline) float64 {
		most := 0.0
		for _, joint := range carriers {
			p := align.Probe{Kind: align.SpacerFace, Carrier: joint, Span: length(span), Radius: length(radius)}
			s := sweepQuarters(truth, align.Set{Probe: p}, 0, bySpacer)
			most = max(most, seenApart(p, fitBeside(tb, truth, s), truth))
		}
		return most
	}
}
