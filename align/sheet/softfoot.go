package sheet

import (
	"slices"
	"strconv"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

// SoftFoot is a round over the feet, each loosened by itself: a softfoot.Survey.
type SoftFoot struct {
	Feet   []softfoot.Foot `json:"feet"`
	Height units.Length    `json:"height"`
}

// Working works the excess of every foot above the movement that all make, which is what
// softfoot.Survey.Judge answers. Of a foot with gaps under its corners the smallest
// counts. It refuses what Judge refuses.
func (s SoftFoot) Working() (Working, error) {
	finding, err := softfoot.Survey(s).Judge(softfoot.Limits{})
	if err != nil {
		return Working{}, err
	}
	var p page
	var lifts []input
	var names []string
	for i, f := range finding.Feet {
		symbol := "z" + strconv.Itoa(i+1)
		lifts = append(lifts, put(symbol, reading, f.Lift))
		names = append(names, symbol)
	}
	common := p.answers(p.add(line{
		id:      "common",
		sought:  "movement that all feet make",
		formula: "zc = max(0, min(" + strings.Join(names, ", ") + "))",
		source:  leastLift,
		kind:    reading,
		inputs:  lifts,
		rule:    func(v values) float64 { return max(0, slices.Min(v)) },
	}), float64(finding.Common))
	for i, f := range finding.Feet {
		right := func(v values) float64 { return v[0] - v[1] }
		p.answers(p.add(line{
			id:      "foot." + f.Foot + ".excess",
			sought:  "lift of " + f.Foot + " above that",
			formula: "e = " + names[i] + " - zc",
			source:  leastLift,
			kind:    reading,
			inputs:  []input{lifts[i], p.above("zc", common)},
			rule:    right,
			ways: append(unitWays("excess", f.Foot, right),
				way{kind: CommonNotTakenOff, rule: func(v values) float64 { return v[0] }}),
		}), float64(f.Excess))
	}
	return p.working("Soft feet", align.FromMovable)
}

const leastLift = "the common movement is the smallest lift: US Bureau of Reclamation, FIST 4-1A, p. 17 (read)"
