package sheet

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// ColdTarget is the question where the movable shaft has to lie cold. Supports are as
// for [Job]; at every foot, each with a name, the target is told too.
type ColdTarget struct {
	Stationary []thermal.Support `json:"stationary,omitempty"`
	Movable    []thermal.Support `json:"movable,omitempty"`
	Feet       []align.Foot      `json:"feet,omitempty"`
}

// Working works the growth of both machines and the target, which is what
// thermal.ColdTarget answers, in the vertical plane, and in the horizontal one where a
// support was measured to go sideways. It refuses what [Job.Working] refuses of growth
// and of feet, and neither machine to grow (Missing, at /movable).
func (c ColdTarget) Working() (Working, error) {
	var faults check.Faults
	var root check.Path
	growth := Job{Stationary: c.Stationary, Movable: c.Movable}.growth(&faults)
	if growth.machines == nil {
		faults.Add(units.Missing, root.Field("movable"), nil, "the supports of a machine that grows")
	}
	checkNames(&faults, c.Feet)
	corrections(&faults, growth.target, c.Feet)
	if err := faults.Err(); err != nil {
		return Working{}, err
	}
	var p page
	for _, in := range planes {
		target := growth.put(&p, in)
		for i, f := range c.Feet {
			if target.wanted {
				p.wanted(in, target, f, across(c.Feet, i))
			}
		}
	}
	return p.working("Growth and the cold target", align.FromMovable)
}

// TargetReadings is the question what a dial will show when the shafts lie as they
// should: a rim dial, a face dial near or far, or a gap gauge.
type TargetReadings struct {
	Probe      align.Probe      `json:"probe"`
	Sag        units.Length     `json:"sag,omitzero"` // as in align.Set
	View       align.View       `json:"view"`
	Centreline align.Centreline `json:"centreline"`
}

// Working works the readings at 3, 6 and 9 o'clock from zero at 12, sag included, which
// is what align.Set.Predict answers. It refuses what that refuses, and other probes
// (OutOfRange, at /probe/kind).
func (r TargetReadings) Working() (Working, error) {
	set := align.Set{Probe: r.Probe, Sag: r.Sag, View: r.View}
	at := [...]units.Clock{units.Twelve, units.Three, units.Six, units.Nine} // as the crew names them
	shown, err := set.Predict(r.Centreline, at[:]...)
	var faults check.Faults
	var root check.Path
	faults.Adopt(root, err)
	seen, known := probesWorked[set.Probe.Kind]
	if err == nil && !known {
		probe := root.Field("probe")
		faults.Add(units.OutOfRange, probe.Field("kind"), set.Probe.Kind, "rim, near_face, far_face or gap: others are not worked line by line")
	}
	if err := faults.Err(); err != nil {
		return Working{}, err
	}
	var p page
	var seenIn [len(planes)]input
	for _, in := range planes {
		seenIn[in] = p.above(pick(in, "v", "h"), seen(&p, &r, in))
	}
	sign := outwards(set.Probe.Kind == align.FarFace, set.Probe.Kind == align.Gap,
		set.Probe.Kind == align.Rim && set.Probe.Carrier == align.Movable)
	for i := 1; i < len(at); i++ {
		p.answers(p.shows(set, sign, at[i], seenIn), float64(shown[i].Value))
	}
	return p.working("What the dial will show", set.View)
}

// probesWorked puts on the page what a probe of a kind sees of a centreline in one plane.
var probesWorked = map[align.Kind]func(p *page, r *TargetReadings, in plane) int{
	align.Rim:      (*page).offsetSeen,
	align.NearFace: (*page).slopeSeen,
	align.FarFace:  (*page).slopeSeen,
	align.Gap:      (*page).slopeSeen,
}

// offsetSeen is the offset where a rim dial stands.
func (p *page) offsetSeen(r *TargetReadings, in plane) int {
	l := in.line(r.Centreline)
	return p.add(line{
		id:      in.String() + ".offset",
		sought:  in.String() + " offset where the dial stands",
		formula: "w = w0 + a * x",
		source:  carriedOn,
		kind:    in.lies(),
		inputs:  []input{put("w0", in.lies(), l.Offset), put("a", in.leans(), l.Slope), put("x", station, r.Probe.Station)},
		rule:    along,
		ways:    []way{{kind: LeftAtDial, rule: func(v values) float64 { return v[0] }}},
	})
}

// slopeSeen is how far the face stands off at the radius of the probe.
func (p *page) slopeSeen(r *TargetReadings, in plane) int {
	return p.add(line{
		id:      in.String() + ".lag",
		sought:  "how much farther back the face stands at " + pick(in, "6", hour(r.View, 3)) + " o'clock than at the middle, at the radius of the probe",
		formula: "w = a * r",
		source:  "derived here: the slope over the radius",
		kind:    reading,
		inputs:  []input{put("a", in.leans(), in.line(r.Centreline).Slope), put("r", station, r.Probe.Radius)},
		rule:    func(v values) float64 { return float64(v.slope(0).Over(v.length(1))) },
		ways: []way{{kind: RadiusAndDiameter, rule: func(v values) float64 {
			return float64(v.slope(0).Over(2 * v.length(1)))
		}}},
	})
}

// shows puts on the page what a dial shows at a place, from zero at 12:
//
//	R = k (h sin t + v (cos t - 1)) + s (cos t - 1)
func (p *page) shows(set align.Set, sign float64, at units.Clock, seen [len(planes)]input) int {
	sin, cos := set.View.Clock(at).SinCos()
	show := func(sign, v, h, s float64) float64 {
		return float64(sign*(float64(h*sin)+float64(v*(cos-1)))) + float64(s*(cos-1))
	}
	name := hour(set.View, quarter(set.View.Clock(at)))
	formula := "R = " + shownAs(sign, sin, cos-1)
	inputs := []input{seen[vertical], seen[horizontal], put("s", reading, set.Sag)}
	ways := []way{
		{kind: TopAndBottomExchanged, rule: func(v values) float64 { return show(sign, -v[0], v[1], v[2]) }},
		{kind: LeftAndRightExchanged, rule: func(v values) float64 { return show(sign, v[0], -v[1], v[2]) }},
		{kind: TotalNotHalved, rule: func(v values) float64 { return show(sign, v[0]/2, v[1]/2, v[2]) }},
	}
	if set.Probe.Kind == align.Rim {
		ways = append(ways, way{kind: MachinesExchanged, rule: func(v values) float64 { return show(-sign, v[0], v[1], v[2]) }})
	}
	if set.Sag != 0 {
		formula += " " + times(cos-1, "s")
		ways = append(ways,
			way{kind: SagForgotten, rule: func(v values) float64 { return show(sign, v[0], v[1], 0) }},
			way{kind: SagAdded, rule: func(v values) float64 { return show(sign, v[0], v[1], -v[2]) }},
			way{kind: SagOnce, rule: func(v values) float64 { return show(sign, v[0], v[1], v[2]/2) }})
	}
	return p.add(line{
		id:      "reading." + name,
		sought:  "reading at " + name + " o'clock, from zero at 12",
		formula: formula,
		source:  "the law of a dial from 12 o'clock, sag included, derived here",
		kind:    reading,
		inputs:  inputs,
		rule:    func(v values) float64 { return show(sign, v[0], v[1], v[2]) },
		ways:    ways,
	})
}

// shownAs writes k (h sin t + v (cos t - 1)) at a quarter.
func shownAs(sign, sin, down float64) string {
	terms := times(sign*down, "v")
	if sin != 0 {
		terms = times(sign*sin, "h") + " " + terms
	}
	return strings.TrimPrefix(terms, "+ ")
}
