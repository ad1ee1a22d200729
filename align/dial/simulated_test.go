package dial_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/internal/rigid"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// kinds are the simulator's names.
var kinds = map[align.Kind]rigid.Kind{
	align.Rim: rigid.Rim, align.Bore: rigid.Bore,
	align.NearFace: rigid.NearFace, align.FarFace: rigid.FarFace,
	align.Gap: rigid.Gap, align.Straightedge: rigid.Straightedge,
	align.SpacerFace: rigid.SpacerNearFace, align.SpacerFarFace: rigid.SpacerFarFace,
}

// instrument returns the simulated probe of a set. A rim has the radius rho.
func instrument(s align.Set, rho units.Length) rigid.Instrument {
	i := rigid.Instrument{
		Kind:    kinds[s.Probe.Kind],
		Station: inMM(s.Probe.Station), Radius: inMM(s.Probe.Radius), Span: inMM(s.Probe.Span), Sag: inMM(s.Sag),
	}
	if s.Probe.Carrier == align.Movable {
		i.Carrier = rigid.Movable
	}
	switch s.Probe.Kind {
	case align.Rim, align.Bore, align.Straightedge:
		i.Radius = inMM(rho)
	}
	return i
}

func inMM(l units.Length) float64 { return l.In(units.InMillimetres) }

func pose(c align.Centreline) rigid.Pose {
	return rigid.Pose{
		OffsetY: inMM(c.Horizontal.Offset), SlopeY: float64(c.Horizontal.Slope),
		OffsetZ: inMM(c.Vertical.Offset), SlopeZ: float64(c.Vertical.Slope),
	}
}

// read returns what the simulated probe shows at clock positions that a crew
// names in its own view.
func read(i rigid.Instrument, c align.Centreline, v align.View, at ...units.Clock) sweep {
	var s sweep
	for _, t := range at {
		value := i.Read(pose(c), float64(v.Clock(t)))
		s = append(s, align.Reading{At: t, Value: units.Length(value) * units.Millimetre})
	}
	return s
}

var quarters = []units.Clock{units.Twelve, units.Three, units.Six, units.Nine}

// simulated returns the job with the readings of two simulated probes at all
// four quarters.
func simulated(bare solver, rho units.Length, c align.Centreline) (first, second sweep) {
	sets := bare.Sets()
	return read(instrument(sets[0], rho), c, sets[0].View, quarters...),
		read(instrument(sets[1], rho), c, sets[1].View, quarters...)
}

// drawWithin draws a centreline with offset and slope up to the given sizes,
// both planes together.
func drawWithin(t *rapid.T, offset units.Length, slope units.Slope) align.Centreline {
	share := func(what string) (y, z float64) {
		size := rapid.Float64Range(0, 1).Draw(t, what)
		sin, cos := units.Clock(rapid.Float64Range(0, 360).Draw(t, what+" towards")).SinCos()
		return size * sin, size * cos
	}
	oy, oz := share("offset")
	sy, sz := share("slope")
	return align.Centreline{
		Horizontal: align.Line{Offset: units.Length(oy) * offset, Slope: units.Slope(sy) * slope},
		Vertical:   align.Line{Offset: units.Length(oz) * offset, Slope: units.Slope(sz) * slope},
	}
}

// The promised accuracy: at 1 mm and 2 mm/m, both planes together, on rims of 40
// mm and more, faces of 40 to 800 mm and spans of 200 mm to 2 m, readings at the
// quarters give the centreline of exact three-dimensional geometry within 10 nm
// at the coupling and at both ends of the span. [TestWorstCorners] searches
// the edges of that range, and tells how much is left.
func TestWithinTenNanometres(t *testing.T) {
	eachMethod(t, func(t *rapid.T, m method) {
		span := drawLength(t, "span", 200, 2000)
		bare := spanning(m.draw(t), span, units.Length(rapid.SampledFrom([]float64{-1, 1}).Draw(t, "side")))
		want := drawWithin(t, units.Millimetre, 2*units.MillimetrePerMetre)
		first, second := simulated(bare, drawLength(t, "rho", 40, 500), want)
		got := solved(t, m.with(bare, first, second))
		off := got.Value.Minus(want)
		for _, x := range []units.Length{-span / 2, 0, span / 2} {
			if w := off.At(x).Size(); !(w <= 10*units.Nanometre) {
				t.Errorf("at %v off by %v", x, w)
			}
		}
	})
}

// spanning puts the stations of a job half a span from the coupling centre, the
// first one on the given side.
func spanning(s solver, span, side units.Length) solver {
	switch m := s.(type) {
	case dial.Reverse:
		m.CarriedByStationary.Station, m.CarriedByMovable.Station = side*span/2, -side*span/2
		return m
	case dial.RimFace:
		m.Rim.Station = side * span / 2
		return m
	case dial.FaceFace:
		m.Span = span
		return m
	case dial.RimGap:
		m.Rim.Station = side * span / 2
		return m
	case dial.StraightedgeGap:
		m.Straightedge.Station = side * span / 2
		return m
	}
	return s
}

// The validity rule on a rim of radius rho misses, to the second order, by
//
//	(w_z^2 - w_y^2)/rho + rho (slope_z^2 - slope_y^2)
//
// with either carrier, outside and in a bore but for the sign. What is left of the
// fourth order is w^4/(4 rho^3), under 10 nm here.
func TestMissOfARoundRim(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := methods[0]
		job := spanning(m.draw(t), drawLength(t, "span", 20, 200), 1).(dial.Reverse)
		job.CarriedByStationary.Sag, job.CarriedByMovable.Sag = 0, 0
		c := drawWithin(t, units.Millimetre, 2*units.MillimetrePerMetre)
		rho := drawLength(t, "rho", 40, 200)
		first, second := simulated(job, rho, c)
		got := solved(t, m.with(job, first, second))
		for i, rim := range []dial.Rim{job.CarriedByStationary, job.CarriedByMovable} {
			w, tilt := c.At(rim.Station), c.Tilt()
			want := (w.Vertical*w.Vertical - w.Horizontal*w.Horizontal) / rho
			want += (tilt.Vertical*tilt.Vertical - tilt.Horizontal*tilt.Horizontal).Over(rho)
			if rim.Bore {
				want = -want
			}
			checkNear(t, m.fields[i], got.Checks[i].Miss, want, 10*units.Nanometre)
		}
	})
}
