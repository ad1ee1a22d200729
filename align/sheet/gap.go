package sheet

import (
	"example.org/collinear/align"
	"example.org/collinear/units"
)

// GapFromSlope is the question how far the faces of a coupling open across a diameter.
type GapFromSlope struct {
	Diameter   units.Length     `json:"diameter"`
	Centreline align.Centreline `json:"centreline"` // of which the slopes count
}

// Working works the opening in each plane and at the widest place. The last line is what
// align.Coupling.Gap answers. It refuses what that refuses (/diameter, /centreline).
func (g GapFromSlope) Working() (Working, error) {
	widest, _, err := align.Coupling{Diameter: g.Diameter}.Gap(g.Centreline)
	if err != nil {
		return Working{}, err
	}
	var p page
	var openings []input
	for _, in := range planes {
		openings = append(openings, p.above(pick(in, "gv", "gh"), p.opening(g, in)))
	}
	p.answers(p.add(line{
		id:      "opening",
		sought:  "opening at the widest place",
		formula: "g = sqrt(gv * gv + gh * gh)",
		source:  "both planes together as a vector, derived here",
		kind:    thickness,
		inputs:  openings,
		rule: func(v values) float64 {
			return float64(align.Vector{Vertical: v.length(0), Horizontal: v.length(1)}.Size())
		},
	}), float64(widest))
	return p.working("The gap from the slope", align.FromMovable)
}

// opening puts the opening in one plane on the page.
func (p *page) opening(g GapFromSlope, in plane) int {
	over := func(v values, d float64) float64 { return float64(v.slope(0).Over(units.Length(d))) }
	return p.add(line{
		id:      in.String() + ".opening",
		sought:  in.String() + " opening of the coupling",
		formula: "g = a * D",
		source:  "derived here: the slope over the diameter",
		kind:    in.opens(),
		inputs:  []input{put("a", in.leans(), in.line(g.Centreline).Slope), put("D", station, g.Diameter)},
		rule:    func(v values) float64 { return over(v, v[1]) },
		ways: []way{
			{kind: RadiusAndDiameter, rule: func(v values) float64 { return over(v, v[1]/2) }},
			{kind: in.exchanged(), rule: func(v values) float64 { return -over(v, v[1]) }},
		},
	})
}

// SlopeFromGap is the question what slope opens a coupling so far: the way back from
// [GapFromSlope].
type SlopeFromGap struct {
	Opening  units.Length `json:"opening"` // how much wider the gap is there than opposite
	At       units.Clock  `json:"at"`      // where it is wider, in the library's view; left out it is 12
	Diameter units.Length `json:"diameter"`
}

// Working works the slope in each plane, which is what align.SlopeFromGap answers. It
// refuses what that refuses (/opening, /at, /diameter).
func (g SlopeFromGap) Working() (Working, error) {
	tilt, err := align.SlopeFromGap(g.Opening, g.At, g.Diameter)
	if err != nil {
		return Working{}, err
	}
	var p page
	for _, in := range planes {
		right := func(v values) float64 {
			t, _ := align.SlopeFromGap(v.length(0), units.Clock(v[1]), v.length(2)) // checked above
			return float64(in.slope(t))
		}
		p.answers(p.add(line{
			id:      in.String() + ".slope",
			sought:  in.String() + " slope of the movable shaft",
			formula: pick(in, "a = -g * cos(t)/D", "a = -g * sin(t)/D"),
			source:  "derived here: a shaft that climbs away opens the coupling at the bottom",
			kind:    in.leans(),
			inputs:  []input{put("g", thickness, g.Opening), put("t", clock, g.At), put("D", station, g.Diameter)},
			rule:    right,
			ways: append(unitWays("opening", "", right),
				way{kind: RadiusAndDiameter, rule: func(v values) float64 { return 2 * right(v) }},
				way{kind: in.exchanged(), rule: func(v values) float64 { return -right(v) }}),
		}), float64(in.slope(tilt)))
	}
	return p.working("The slope from the gap", align.FromMovable)
}

// FlexTilts is the question which tilts the flex planes of a spacer coupling take.
type FlexTilts struct {
	Span       units.Length     `json:"span"` // flex plane to flex plane, symmetric about the coupling centre
	Centreline align.Centreline `json:"centreline"`
}

// Working works the tilts in both planes, which is what align.Coupling.FlexTilts answers.
// It refuses what that refuses (/span, /centreline).
func (f FlexTilts) Working() (Working, error) {
	stationary, movable, err := align.Coupling{Span: f.Span}.FlexTilts(f.Centreline)
	if err != nil {
		return Working{}, err
	}
	var p page
	for _, in := range planes {
		p.tilt(f, in, false, in.slope(stationary))
		p.tilt(f, in, true, in.slope(movable))
	}
	return p.working("The tilts at the flex planes", align.FromMovable)
}

// tilt puts the tilt at one flex plane on the page.
func (p *page) tilt(f FlexTilts, in plane, movable bool, exact units.Slope) {
	name, sign, of := "stationary", "+", "the spacer less the shaft"
	if movable {
		name, sign, of = "movable", "-", "the shaft less the spacer"
	}
	tilt := func(v values, movable bool, l float64) float64 {
		line := align.Line{Offset: v.length(0), Slope: v.slope(1)}
		s, m, _ := align.Coupling{Span: units.Length(l)}.FlexTilts(in.centreline(line)) // checked above
		if movable {
			s = m
		}
		return float64(in.slope(s))
	}
	l := in.line(f.Centreline)
	p.answers(p.add(line{
		id:      in.String() + ".tilt." + name,
		sought:  in.String() + " tilt at the flex plane of the " + name + " machine: " + of,
		formula: "tilt = a/2 " + sign + " w0/L",
		source:  spacerSource,
		kind:    in.leans(),
		inputs:  []input{put("w0", in.lies(), l.Offset), put("a", in.leans(), l.Slope), put("L", station, f.Span)},
		rule:    func(v values) float64 { return tilt(v, movable, v[2]) },
		ways: []way{
			{kind: MachinesExchanged, rule: func(v values) float64 { return tilt(v, !movable, v[2]) }},
			{kind: WrongDatum, rule: func(v values) float64 { return tilt(v, movable, v[2]/2) }},
		},
	}), float64(exact))
}
