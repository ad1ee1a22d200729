package dial_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// solver is what the five methods share.
type solver interface {
	Sets() [2]align.Set
	Solve() (dial.Result, error)
}

// method is one of the five and what tests need to make jobs of it.
type method struct {
	name   string
	fields [2]string                     // where its two sets stand in its input
	draw   func(*rapid.T) solver         // geometry, sag and view at random, no readings
	with   func(solver, ...sweep) solver // the same job with these readings
	limits func(solver, dial.Limits) solver
	// exchanged names the same job with the roles of the two machines exchanged:
	// carriers change, x becomes -x, and the crew, which stays where it is, now
	// stands at the other machine.
	exchanged func(solver) solver
}

// sweep is what a crew writes down at one dial.
type sweep = []align.Reading

var methods = []method{
	{
		name: "reverse", fields: [2]string{"carried_by_stationary", "carried_by_movable"},
		draw: func(t *rapid.T) solver {
			at := drawLength(t, "station", -1000, 1000)
			apart := drawLength(t, "apart", 50, 2000)
			if rapid.Bool().Draw(t, "the other way round") {
				apart = -apart
			}
			return dial.Reverse{
				CarriedByStationary: drawRim(t, at),
				CarriedByMovable:    drawRim(t, at+apart),
				View:                drawView(t),
			}
		},
		with: func(s solver, r ...sweep) solver {
			m := s.(dial.Reverse)
			m.CarriedByStationary.Readings, m.CarriedByMovable.Readings = r[0], r[1]
			return m
		},
		limits: func(s solver, l dial.Limits) solver { m := s.(dial.Reverse); m.Limits = l; return m },
		exchanged: func(s solver) solver {
			m := s.(dial.Reverse)
			a, b := mirrored(m.CarriedByMovable), mirrored(m.CarriedByStationary)
			return dial.Reverse{CarriedByStationary: a, CarriedByMovable: b, View: otherView(m.View)}
		},
	},
	{
		name: "rim-face", fields: [2]string{"rim", "face"},
		draw: func(t *rapid.T) solver {
			return dial.RimFace{
				Carrier: drawShaft(t),
				Rim:     drawRim(t, drawLength(t, "station", -1000, 1000)),
				Face:    drawFace(t),
				View:    drawView(t),
			}
		},
		with: func(s solver, r ...sweep) solver {
			m := s.(dial.RimFace)
			m.Rim.Readings, m.Face.Readings = r[0], r[1]
			return m
		},
		limits: func(s solver, l dial.Limits) solver { m := s.(dial.RimFace); m.Limits = l; return m },
		exchanged: func(s solver) solver {
			m := s.(dial.RimFace)
			m.Carrier, m.Rim, m.View = other(m.Carrier), mirrored(m.Rim), otherView(m.View)
			return m
		},
	},
	{
		name: "face-face", fields: [2]string{"at_stationary", "at_movable"},
		draw: func(t *rapid.T) solver {
			return dial.FaceFace{
				Span:         drawLength(t, "span", 100, 3000),
				AtStationary: drawFace(t),
				AtMovable:    drawFace(t),
				View:         drawView(t),
			}
		},
		with: func(s solver, r ...sweep) solver {
			m := s.(dial.FaceFace)
			m.AtStationary.Readings, m.AtMovable.Readings = r[0], r[1]
			return m
		},
		limits: func(s solver, l dial.Limits) solver { m := s.(dial.FaceFace); m.Limits = l; return m },
		exchanged: func(s solver) solver {
			m := s.(dial.FaceFace)
			m.AtStationary, m.AtMovable = m.AtMovable, m.AtStationary
			m.View = otherView(m.View)
			return m
		},
	},
	{
		name: "rim and gap", fields: [2]string{"rim", "gap"},
		draw: func(t *rapid.T) solver {
			return dial.RimGap{
				Carrier: drawShaft(t),
				Rim:     drawRim(t, drawLength(t, "station", -1000, 1000)),
				Gap:     dial.Gap{Diameter: drawLength(t, "diameter", 40, 800)},
				View:    drawView(t),
			}
		},
		with: func(s solver, r ...sweep) solver {
			m := s.(dial.RimGap)
			m.Rim.Readings, m.Gap.Readings = r[0], r[1]
			return m
		},
		limits: func(s solver, l dial.Limits) solver { m := s.(dial.RimGap); m.Limits = l; return m },
		exchanged: func(s solver) solver {
			m := s.(dial.RimGap)
			m.Carrier, m.Rim, m.View = other(m.Carrier), mirrored(m.Rim), otherView(m.View)
			return m
		},
	},
	{
		name: "straightedge and gap", fields: [2]string{"straightedge", "gap"},
		draw: func(t *rapid.T) solver {
			return dial.StraightedgeGap{
				Straightedge: dial.Straightedge{On: drawShaft(t), Station: drawLength(t, "station", -1000, 1000)},
				Gap:          dial.Gap{Diameter: drawLength(t, "diameter", 40, 800)},
				View:         drawView(t),
			}
		},
		with: func(s solver, r ...sweep) solver {
			m := s.(dial.StraightedgeGap)
			m.Straightedge.Readings, m.Gap.Readings = r[0], r[1]
			return m
		},
		limits: func(s solver, l dial.Limits) solver { m := s.(dial.StraightedgeGap); m.Limits = l; return m },
		exchanged: func(s solver) solver {
			m := s.(dial.StraightedgeGap)
			m.Straightedge.On, m.Straightedge.Station = other(m.Straightedge.On), -m.Straightedge.Station
			m.View = otherView(m.View)
			return m
		},
	},
}

// eachMethod runs a property on every method.
func eachMethod(t *testing.T, property func(*rapid.T, method)) {
	for _, m := range methods {
		t.Run(m.name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) { property(t, m) })
		})
	}
}

func other(s align.Shaft) align.Shaft { return align.Stationary + align.Movable - s }

func otherView(v align.View) align.View { return align.FromStationary - v }

func mirrored(r dial.Rim) dial.Rim { r.Station = -r.Station; return r }

// shows returns the most that an offset and a slope can add to a reading, as
// factors: |k a| of the offset and |k b| of the slope, from the table of probes
// in the design. A number times its factor is what a dial of the set would show
// of it, which can be compared with a reading whatever the geometry.
func shows(p align.Probe) (offset, slope float64) {
	radius := float64(p.Radius)
	switch p.Kind {
	case align.Rim, align.Bore, align.Straightedge:
		return 1, math.Abs(float64(p.Station))
	case align.SpacerFace, align.SpacerFarFace:
		return radius / float64(p.Span), radius / 2
	}
	return 0, radius
}

// differ returns by how much two centrelines differ, as the most that any dial
// of the method would show of it.
func differ(sets [2]align.Set, c, d align.Centreline) units.Length {
	var offset, slope float64
	for _, s := range sets {
		a, b := shows(s.Probe)
		offset, slope = max(offset, a), max(slope, b)
	}
	e := c.Minus(d)
	return units.Length(max(
		offset*math.Abs(float64(e.Horizontal.Offset)), slope*math.Abs(float64(e.Horizontal.Slope)),
		offset*math.Abs(float64(e.Vertical.Offset)), slope*math.Abs(float64(e.Vertical.Slope))))
}

// largest returns the largest number that stands in the readings or is taken
// off them.
func largest(sets [2]align.Set) units.Length {
	size := units.Length(0)
	for _, s := range sets {
		size = max(size, s.Sag, -s.Sag)
		for _, r := range s.Readings {
			size = max(size, r.Value, -r.Value)
		}
	}
	return size
}

func drawLength(t *rapid.T, what string, low, high float64) units.Length {
	return units.Length(rapid.Float64Range(low, high).Draw(t, what)) * units.Millimetre
}

func drawShaft(t *rapid.T) align.Shaft {
	return rapid.SampledFrom([]align.Shaft{align.Stationary, align.Movable}).Draw(t, "carrier")
}

func drawView(t *rapid.T) align.View {
	return rapid.SampledFrom([]align.View{align.FromMovable, align.FromStationary}).Draw(t, "view")
}

func drawRim(t *rapid.T, station units.Length) dial.Rim {
	return dial.Rim{
		Station: station,
		Bore:    rapid.Bool().Draw(t, "bore"),
		Sag:     drawLength(t, "sag", 0, 0.5),
		U:       align.Uncertainty{Station: drawLength(t, "u of the station", 0, 1)},
	}
}

func drawFace(t *rapid.T) dial.Face {
	return dial.Face{
		Diameter: drawLength(t, "diameter", 40, 800),
		Far:      rapid.Bool().Draw(t, "far"),
		Sag:      drawLength(t, "droop", -0.1, 0.1),
	}
}

// drawPlaces draws three or four quarters in any order, some of them named a
// turn on or back.
func drawPlaces(t *rapid.T) []units.Clock {
	places := rapid.Permutation([]units.Clock{units.Twelve, units.Three, units.Six, units.Nine}).Draw(t, "order")
	places = places[:rapid.IntRange(3, 4).Draw(t, "readings")]
	for i := range places {
		places[i] += 360 * units.Clock(rapid.IntRange(-1, 1).Draw(t, "turns"))
	}
	return places
}

func drawCentreline(t *rapid.T) align.Centreline {
	line := func(plane string) align.Line {
		return align.Line{
			Offset: drawLength(t, plane+" offset", -1, 1),
			Slope:  units.Slope(rapid.Float64Range(-2, 2).Draw(t, plane+" slope")) * units.MillimetrePerMetre,
		}
	}
	return align.Centreline{Horizontal: line("horizontal"), Vertical: line("vertical")}
}

// solved solves a job that must be sound.
func solved(t interface {
	Helper()
	Fatalf(string, ...any)
}, s solver) dial.Result {
	t.Helper()
	r, err := s.Solve()
	if err != nil {
		t.Fatalf("refused: %v\n%+v", err, s)
	}
	return r
}
