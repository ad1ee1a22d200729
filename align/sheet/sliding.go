package sheet

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// SlidingLimit is the question at which offset and slope the parts of a coupling rub on
// one another at a sliding speed. A limit is no permission to run.
type SlidingLimit struct {
	Sliding  units.LinearSpeed     `json:"sliding"`
	Speed    units.RotationalSpeed `json:"speed"`
	Coupling align.Coupling        `json:"coupling"`
}

// Working works the limits, which are what tolerance.Rubbing answers: offset and slope of
// a short coupling, the tilt at each flex plane of one with a spacer. Of a slope or a tilt
// it is the peak that reaches the sliding speed. It refuses what Rubbing refuses.
func (s SlidingLimit) Working() (Working, error) {
	limits, err := tolerance.Rubbing(s.Sliding, s.Speed, s.Coupling)
	if err != nil {
		return Working{}, err
	}
	var p page
	if s.Coupling.Span == 0 {
		offset := p.answers(p.arm(s, "offset", "offset that rubs at the sliding speed", TotalNotHalved), float64(limits.Offset))
		p.answers(p.rubbing(s, offset, "slope", "slope that rubs at the sliding speed, at its peak"), float64(limits.Slope))
	} else {
		radius := p.arm(s, "radius", "radius at which what turns with the shaft goes at the sliding speed")
		p.answers(p.rubbing(s, radius, "tilt", "tilt at a flex plane that rubs at the sliding speed, at its peak"), float64(limits.Flex))
	}
	return p.working("Limits by sliding speed", align.FromMovable)
}

const rubs = "two hubs that turn at one speed, derived here: v = e * 2 pi n/60"

// arm is how far from an axis a speed of sliding is reached. doubled are the slips that
// take twice or half of it.
func (p *page) arm(s SlidingLimit, id, sought string, doubled ...SlipKind) int {
	right := func(v values) float64 {
		turning := 2 * math.Pi * v[1] / 60 // rad/s
		return v[0] / turning * float64(units.Millimetre)
	}
	ways := unitWays(id, "", right)
	for _, kind := range doubled {
		ways = append(ways,
			way{kind: kind, form: "total", rule: func(v values) float64 { return 2 * right(v) }},
			way{kind: kind, form: "half", rule: func(v values) float64 { return right(v) / 2 }})
	}
	return p.add(line{
		id:      id,
		sought:  sought,
		formula: "e = 60 * v/(2 * pi * n)",
		source:  rubs,
		kind:    thickness,
		inputs:  []input{put("v", sliding, s.Sliding), put("n", rotation, s.Speed)},
		rule:    right,
		ways:    ways,
	})
}

// rubbing is the slope or the tilt at which the circle of the coupling slides as fast as
// it does at an arm.
func (p *page) rubbing(s SlidingLimit, arm int, id, sought string) int {
	return p.add(line{
		id:      id,
		sought:  sought,
		formula: "a = e/(D/2)",
		source:  rubs,
		kind:    steepness,
		inputs:  []input{p.above("e", arm), put("D", station, s.Coupling.Diameter)},
		rule:    func(v values) float64 { return float64(v.length(0).Per(v.length(1) / 2)) },
		ways:    []way{{kind: RadiusAndDiameter, rule: func(v values) float64 { return float64(v.length(0).Per(v.length(1))) }}},
	})
}
