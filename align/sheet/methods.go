package sheet

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

// method is a hand method of package dial, and how its lines are put on a page.
type method struct {
	dialled
	field  string // of the job
	title  string
	view   align.View
	rounds [2]probe
	lay    func(p *page, in plane, a, b *round) laid
}

// dialled is what the methods of package dial have in common.
type dialled interface {
	Solve() (dial.Result, error)
	Sets() [2]align.Set
}

// laid is where the lines of one plane stand that lay the centreline.
type laid struct {
	offset, slope int
	stations      []units.Length // of the probes, from which a distance could be counted in error
}

func ofReverse(m dial.Reverse) method {
	return method{
		dialled: m, field: "reverse", title: "Reverse dials", view: m.View,
		rounds: [2]probe{
			{"carried_by_stationary", "dial that the stationary shaft carries", "R"},
			{"carried_by_movable", "dial that the movable shaft carries", "R"},
		},
		lay: func(p *page, in plane, a, b *round) laid { return p.reverse(m, in, a, b) },
	}
}

func ofRimFace(m dial.RimFace) method {
	rim, face := outwards(m.Carrier == align.Movable, m.Rim.Bore), outwards(m.Face.Far)
	return method{
		dialled: m, field: "rim_face", title: "Rim and face", view: m.View,
		rounds: [2]probe{{"rim", "rim dial", "R"}, {"face", "face dial", "F"}},
		lay: func(p *page, in plane, a, b *round) laid {
			return p.rimAndSlope(in, p.displaced(a, in, rim), m.Rim.Station, p.leaning(b, in, face, m.Face.Diameter))
		},
	}
}

func ofRimGap(m dial.RimGap) method {
	rim := outwards(m.Carrier == align.Movable, m.Rim.Bore)
	return method{
		dialled: m, field: "rim_gap", title: "Rim dial and gap gauge", view: m.View,
		rounds: [2]probe{{"rim", "rim dial", "R"}, {"gap", "gap gauge", "G"}},
		lay: func(p *page, in plane, a, b *round) laid {
			return p.rimAndSlope(in, p.displaced(a, in, rim), m.Rim.Station, p.leaning(b, in, -1, m.Gap.Diameter))
		},
	}
}

func ofStraightedgeGap(m dial.StraightedgeGap) method {
	edge := outwards(m.Straightedge.On == align.Stationary)
	return method{
		dialled: m, field: "straightedge_gap", title: "Straightedge and gap gauge", view: m.View,
		rounds: [2]probe{{"straightedge", "feeler under the straightedge", "S"}, {"gap", "gap gauge", "G"}},
		lay: func(p *page, in plane, a, b *round) laid {
			return p.rimAndSlope(in, p.displaced(a, in, edge), m.Straightedge.Station, p.leaning(b, in, -1, m.Gap.Diameter))
		},
	}
}

func ofFaceFace(m dial.FaceFace) method {
	return method{
		dialled: m, field: "face_face", title: "Face dials at both ends of a spacer", view: m.View,
		rounds: [2]probe{
			{"at_stationary", "face dial at the stationary joint", "F"},
			{"at_movable", "face dial at the movable joint", "F"},
		},
		lay: func(p *page, in plane, a, b *round) laid { return p.faceFace(m, in, a, b) },
	}
}

// measured puts the two rounds of a method on the page, and then what lays the
// centreline in both planes.
func (p *page) measured(m *method, found *dial.Result) [len(planes)]laid {
	sets := m.Sets()
	a := p.round(m.rounds[0], sets[0], found.Checks[0])
	b := p.round(m.rounds[1], sets[1], found.Checks[1])
	var both [len(planes)]laid
	for _, in := range planes {
		both[in] = m.lay(p, in, a, b)
	}
	return both
}

// outwards is the sign of a probe, which each of the facts turns round.
func outwards(facts ...bool) float64 {
	sign := 1.0
	for _, fact := range facts {
		if fact {
			sign = -sign
		}
	}
	return sign
}

// rimAndSlope lays the centreline by an offset at one station, and a slope.
func (p *page) rimAndSlope(in plane, w int, x units.Length, slope int) laid {
	offset := p.add(line{
		id:      in.String() + ".offset",
		sought:  in.String() + " offset at the coupling centre",
		formula: "w0 = w - a * x",
		source:  carriedOn,
		kind:    in.lies(),
		inputs:  []input{p.above("w", w), p.above("a", slope), put("x", station, x)},
		rule:    carried,
		ways:    []way{{kind: LeftAtDial, rule: func(v values) float64 { return v[0] }}},
	})
	return laid{offset, slope, []units.Length{x}}
}

const carriedOn = "the line w(x) = w0 + a * x: R. B. McMillan, Rotating Machinery, 2004, eq. 8.3, p. 141 (read)"

// carried is w - a x, which carries an offset back from station x.
func carried(v values) float64 {
	return float64(align.Line{Offset: v.length(0), Slope: v.slope(1)}.At(-v.length(2)))
}

// reverse lays the centreline through the offsets at two stations.
func (p *page) reverse(m dial.Reverse, in plane, onMovable, onStationary *round) laid {
	xm, xs := m.CarriedByStationary.Station, m.CarriedByMovable.Station
	wm := p.displaced(onMovable, in, outwards(m.CarriedByStationary.Bore))
	ws := p.displaced(onStationary, in, outwards(true, m.CarriedByMovable.Bore))
	slope := p.add(line{
		id:      in.String() + ".slope",
		sought:  in.String() + " slope between the two dials",
		formula: "a = (wm - ws)/(xm - xs)",
		source:  "R. B. McMillan, Rotating Machinery, 2004, eq. 9.1 and 9.2, p. 164 (read)",
		kind:    in.leans(),
		inputs:  []input{p.above("wm", wm), p.above("ws", ws), put("xm", station, xm), put("xs", station, xs)},
		rule: func(v values) float64 {
			return float64((v.length(1) - v.length(0)).Per(v.length(3) - v.length(2))) // as the library subtracts
		},
		ways: []way{
			{kind: MachinesExchanged, sort: "dials", rule: func(v values) float64 { return (v[1] - v[0]) / (v[2] - v[3]) }},
			{kind: WrongDatum, form: "0", sort: "span", rule: func(v values) float64 { return (v[0] - v[1]) / math.Abs(v[2]) }}, // no number where a dial stands
			{kind: WrongDatum, form: "1", sort: "span", rule: func(v values) float64 { return (v[0] - v[1]) / math.Abs(v[3]) }}, // at the coupling centre
		},
	})
	offset := p.add(line{
		id:      in.String() + ".offset",
		sought:  in.String() + " offset at the coupling centre",
		formula: "w0 = wm - a * xm",
		source:  carriedOn,
		kind:    in.lies(),
		inputs:  []input{p.above("wm", wm), p.above("a", slope), put("xm", station, xm), p.above("ws", ws)},
		rule:    carried,
		ways: []way{
			{kind: LeftAtDial, form: "1", rule: func(v values) float64 { return v[0] }},
			{kind: LeftAtDial, form: "2", rule: func(v values) float64 { return v[3] }},
			{kind: MachinesExchanged, sort: "dials", rule: func(v values) float64 { return carried(values{v[3], v[1], v[2]}) }},
		},
	})
	return laid{offset, slope, []units.Length{xm, xs}}
}

// faceFace lays the centreline by the tilts at both joints of a spacer.
func (p *page) faceFace(m dial.FaceFace, in plane, s, v *round) laid {
	as := p.leaning(s, in, outwards(m.AtStationary.Far), m.AtStationary.Diameter)
	am := p.leaning(v, in, outwards(m.AtMovable.Far), m.AtMovable.Diameter)
	spacer := func(v values) align.Line {
		c, _ := align.Coupling{Span: m.Span}.FromFlexTilts(in.tilt(v.slope(0)), in.tilt(v.slope(1))) // all checked by Solve; a sheet's own numbers are finite
		return in.line(c)
	}
	tilts := []input{p.above("as", as), p.above("am", am), put("L", station, m.Span)}
	exchanged := func(v values) values { return values{v[1], v[0], v[2]} }
	slope := p.add(line{
		id:      in.String() + ".slope",
		sought:  in.String() + " slope between the shafts",
		formula: "a = as + am",
		source:  spacerSource,
		kind:    in.leans(),
		inputs:  tilts[:2],
		rule:    func(v values) float64 { return float64(spacer(v).Slope) },
	})
	offset := p.add(line{
		id:      in.String() + ".offset",
		sought:  in.String() + " offset midway between the flex planes",
		formula: "w0 = (as - am) * L/2",
		source:  spacerSource,
		kind:    in.lies(),
		inputs:  tilts,
		rule:    func(v values) float64 { return float64(spacer(v).Offset) },
		ways: []way{
			{kind: MachinesExchanged, rule: func(v values) float64 { return float64(spacer(exchanged(v)).Offset) }},
		},
	})
	return laid{offset, slope, []units.Length{-m.Span / 2, m.Span / 2}}
}

const spacerSource = "derived here: the spacer is a straight line between the flex planes"
