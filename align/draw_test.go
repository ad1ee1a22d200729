package align_test

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// everyKind lists the kinds of probe; earthbound those whose law does not name
// the coupling centre, so that the origin may be moved.
var (
	everyKind = []align.Kind{
		align.Rim, align.Bore, align.NearFace, align.FarFace, align.Gap,
		align.Straightedge, align.SpacerFace, align.SpacerFarFace, align.Displacement,
	}
	earthbound = []align.Kind{
		align.Rim, align.Bore, align.NearFace, align.FarFace, align.Gap,
		align.Straightedge, align.Displacement,
	}
)

// needs tells which fields a kind of probe uses, from the table of probes.
func needs(k align.Kind) (carrier, station, radius, span, gain, sag bool) {
	switch k {
	case align.Rim, align.Bore:
		return true, true, false, false, false, true
	case align.NearFace, align.FarFace:
		return true, false, true, false, false, true
	case align.Gap:
		return false, false, true, false, false, false
	case align.Straightedge:
		return true, true, false, false, false, false
	case align.SpacerFace, align.SpacerFarFace:
		return true, false, true, true, false, true
	}
	return false, true, false, false, true, false
}

// signedSag tells whether a kind's sag may be below zero.
func signedSag(k align.Kind) bool { return k != align.Rim && k != align.Bore }

// scene is a misalignment and sets that see all of it.
type scene struct {
	truth align.Centreline
	sets  []align.Set
}

func drawScene(t *rapid.T, kinds []align.Kind) scene {
	s := scene{truth: drawLine(t)}
	n := rapid.IntRange(2, 4).Draw(t, "sets")
	for range n {
		s.sets = append(s.sets, drawSet(t, rapid.SampledFrom(kinds).Draw(t, "kind")))
	}
	if !independent(s.sets) { // the last one sees what the first does not
		last := &s.sets[n-1]
		last.Probe, last.Sag = complement(s.sets[0].Probe), 0
	}
	for i := range s.sets {
		s.sets[i].Readings = drawReadings(t, s.sets[i], s.truth)
	}
	return s
}

func drawLine(t *rapid.T) align.Centreline {
	offset, slope := rapid.Float64Range(-1, 1), rapid.Float64Range(-2e-3, 2e-3)
	return line(offset.Draw(t, "offset y"), slope.Draw(t, "slope y"), offset.Draw(t, "offset z"), slope.Draw(t, "slope z"))
}

// drawProbe draws a probe with just the fields that its kind uses.
func drawProbe(t *rapid.T, kind align.Kind) align.Probe {
	p := align.Probe{Kind: kind}
	carrier, station, radius, span, gain, _ := needs(kind)
	if carrier {
		p.Carrier = rapid.SampledFrom([]align.Shaft{align.Stationary, align.Movable}).Draw(t, "carrier")
	}
	if station {
		p.Station = length(rapid.Float64Range(-600, 600).Draw(t, "station"))
	}
	if radius {
		p.Radius = length(rapid.Float64Range(30, 500).Draw(t, "radius"))
	}
	if span {
		p.Span = length(rapid.Float64Range(100, 2000).Draw(t, "span"))
	}
	if gain {
		size := rapid.Float64Range(0.1, 5).Draw(t, "gain")
		p.Gain = size * rapid.SampledFrom([]float64{1, -1}).Draw(t, "sense")
	}
	return p
}

func drawSet(t *rapid.T, kind align.Kind) align.Set {
	s := align.Set{
		Probe: drawProbe(t, kind),
		View:  rapid.SampledFrom([]align.View{align.FromMovable, align.FromStationary}).Draw(t, "view"),
	}
	if _, _, _, _, _, sag := needs(kind); sag {
		low := 0.0
		if signedSag(kind) {
			low = -0.3
		}
		s.Sag = length(rapid.Float64Range(low, 0.3).Draw(t, "sag"))
	}
	return s
}

// drawReadings predicts readings on an arc of any width from 60 degrees up, not
// quite even and anywhere round the clock, with the zero anywhere.
func drawReadings(t *rapid.T, s align.Set, truth align.Centreline) []align.Reading {
	n := rapid.IntRange(4, 9).Draw(t, "readings")
	width := rapid.Float64Range(60, 360).Draw(t, "arc")
	clocks := even(n, units.Clock(rapid.Float64Range(-400, 400).Draw(t, "middle")), units.Clock(width))
	for i := range clocks {
		clocks[i] += units.Clock(rapid.Float64Range(-0.2, 0.2).Draw(t, "jitter") * width / float64(n))
	}
	zero := length(rapid.Float64Range(-3, 3).Draw(t, "zero"))
	readings, err := s.Predict(truth, clocks...)
	if err != nil {
		t.Fatalf("Predict: %v", err)
	}
	for i := range readings {
		readings[i].Value += zero
	}
	return readings
}

// scatterReadings moves each reading by up to 0.03 mm, by amounts that no
// harmonic explains, so that a shrunk failure still scatters.
func scatterReadings(t *rapid.T, s *align.Set) {
	size := rapid.Float64Range(0.005, 0.03).Draw(t, "noise")
	phase := rapid.Float64Range(0, 6).Draw(t, "phase of the noise")
	for i := range s.Readings {
		s.Readings[i].Value += length(size * math.Sin(phase+float64(3*i*i*i)))
	}
}

// independent tells whether some two of the sets see offset and slope apart: the
// sine of the angle between their laws, with slopes counted over 100 mm.
func independent(sets []align.Set) bool {
	best := 0.0
	for i := range sets {
		a, b := coefficients(sets[i].Probe)
		for j := range i {
			c, d := coefficients(sets[j].Probe)
			b, d := b/100, d/100
			best = max(best, math.Abs(a*d-b*c)/(math.Hypot(a, b)*math.Hypot(c, d)))
		}
	}
	return best > 0.02
}

// complement is a probe that sees what p does not.
func complement(p align.Probe) align.Probe {
	if a, b := coefficients(p); math.Abs(b) < 100*math.Abs(a) {
		return align.Probe{Kind: align.NearFace, Carrier: align.Stationary, Radius: 100 * mm}
	}
	return align.Probe{Kind: align.Rim, Carrier: align.Stationary, Station: 0}
}
