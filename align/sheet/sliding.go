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

// Working works the limits, which are what tolerance.Rubbing answers. It refuses what
// that refuses.
func (s SlidingLimit) Working() (Working, error) {
	limits, err := tolerance.Rubbing(s.Sliding, s.Speed, s.Coupling)
	if err != nil {
		return Working{}, err
	}
	var p page
	arm := func(v values) float64 {
		turning := 2 * math.Pi * v[1] / 60 // rad/s
		return v[0] / turning * float64(units.Millimetre)
	}
	offset := p.add(line{
		id:      "offset",
		sought:  "offset that rubs at the sliding speed",
		formula: "e = 60 * v/(2 * pi * n)",
		source:  rubs,
		kind:    thickness,
		inputs:  []input{put("v", sliding, s.Sliding), put("n", rotation, s.Speed)},
		rule:    arm,
		ways: append(unitWays("offset", "", arm),
			way{kind: TotalNotHalved, form: "total", rule: func(v values) float64 { return 2 * arm(v) }},
			way{kind: TotalNotHalved, form: "half", rule: func(v values) float64 { return arm(v) / 2 }}),
	})
	sought, answer := "slope that rubs at the sliding speed", limits.Slope
	if s.Coupling.Span != 0 {
		sought, answer = "tilt at a flex plane that rubs at the sliding speed", limits.Flex
	} else {
		p.answers(offset, float64(limits.Offset))
	}
	p.answers(p.add(line{
		id:      "slope",
		sought:  sought,
		formula: "a = e/(D/2)",
		source:  rubs,
		kind:    steepness,
		inputs:  []input{p.above("e", offset), put("D", station, s.Coupling.Diameter)},
		rule:    func(v values) float64 { return float64(v.length(0).Per(v.length(1) / 2)) },
		ways:    []way{{kind: RadiusAndDiameter, rule: func(v values) float64 { return float64(v.length(0).Per(v.length(1))) }}},
	}), float64(answer))
	return p.working("Limits by sliding speed", align.FromMovable)
}

const rubs = "two hubs that turn at one speed, derived here: v = e * 2 pi n/60"
