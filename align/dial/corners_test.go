package dial_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

// corners are the poses at the edge of the promised accuracy: 1 mm and 2 mm/m,
// towards every twelfth of the clock.
func corners() []align.Centreline {
	var all []align.Centreline
	for o := units.Clock(0); o < 360; o += 30 {
		for s := units.Clock(0); s < 360; s += 30 {
			oy, oz := o.SinCos()
			sy, sz := s.SinCos()
			all = append(all, align.Centreline{
				Horizontal: align.Line{Offset: units.Length(oy) * units.Millimetre, Slope: units.Slope(sy) * 2 * units.MillimetrePerMetre},
				Vertical:   align.Line{Offset: units.Length(oz) * units.Millimetre, Slope: units.Slope(sz) * 2 * units.MillimetrePerMetre},
			})
		}
	}
	return all
}

// sided returns a job in which every dial sits the other way: the other carrier,
// in a bore, on the far side.
func sided(s solver) solver {
	switch m := s.(type) {
	case dial.Reverse:
		m.CarriedByStationary.Bore, m.CarriedByMovable.Bore = true, true
		return m
	case dial.RimFace:
		m.Carrier, m.Rim.Bore, m.Face.Far = other(m.Carrier), true, true
		return m
	case dial.FaceFace:
		m.AtStationary.Far, m.AtMovable.Far = true, true
		return m
	case dial.RimGap:
		m.Carrier, m.Rim.Bore = other(m.Carrier), true
		return m
	case dial.StraightedgeGap:
		m.Straightedge.On = other(m.Straightedge.On)
		return m
	}
	return s
}

// The worst that the linear closed forms are off by in exact geometry, searched at
// the corners on the smallest rim, 40 mm. Measured: face-face over 200 mm 9.7 nm,
// where 1 mm tilts the spacer by 5 mm/m; over 2 m 5.5 nm. The others 2.8 nm over
// 200 mm and 6.5 nm over 2 m.
func TestWorstCorners(t *testing.T) {
	for _, row := range []struct {
		span      units.Length
		faceFace  units.Length // nanometres
		allOthers units.Length
	}{
		{200 * units.Millimetre, 9.7, 2.8},
		{2000 * units.Millimetre, 5.6, 6.5},
	} {
		for _, m := range methods {
			bound := row.allOthers
			if m.name == "face-face" {
				bound = row.faceFace
			}
			worst := units.Length(0)
			for _, side := range []units.Length{-1, 1} {
				job := spanning(soundJobs[m.name], row.span, side)
				worst = max(worst, worstCorner(t, m, job, row.span), worstCorner(t, m, sided(job), row.span))
			}
			// Below half the bound the search would not have been at the corners.
			if !(worst <= bound*units.Nanometre) || worst < bound/2*units.Nanometre {
				t.Errorf("%s over %v: worst %.3f nm, want up to %v", m.name, row.span, float64(worst/units.Nanometre), float64(bound))
			}
		}
	}
}

// worstCorner returns the largest error over a span that any corner makes.
func worstCorner(t *testing.T, m method, job solver, span units.Length) units.Length {
	t.Helper()
	worst := units.Length(0)
	for _, c := range corners() {
		first, second := simulated(job, 40*units.Millimetre, c)
		off := solved(t, m.with(job, first, second)).Value.Minus(c)
		for _, x := range []units.Length{-span / 2, 0, span / 2} {
			worst = max(worst, off.At(x).Size())
		}
	}
	return worst
}
