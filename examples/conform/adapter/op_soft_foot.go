package adapter

import (
	"slices"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

type softFootInput struct {
	Feet   []surveyFoot `json:"feet"`
	Height units.Length `json:"height"`
	Limits struct {
		Act   *units.Length `json:"act,omitzero"`
		Taper *units.Length `json:"taper,omitzero"`
	} `json:"limits,omitzero"`
}

// surveyFoot has a lift, or gaps at its corners.
type surveyFoot struct {
	Name string         `json:"name"`
	X    units.Length   `json:"x"`
	Y    units.Length   `json:"y"`
	Lift *units.Length  `json:"lift,omitzero"`
	Gaps []softfoot.Gap `json:"gaps,omitzero"`
}

func (s *surveyFoot) foot(f *strict.Faults, path string) softfoot.Foot {
	switch {
	case s.Lift != nil && s.Gaps != nil:
		f.Add(units.Conflict, path+"/lift", s.Lift.String(), "a lift or gaps, not both")
	case s.Lift == nil && s.Gaps == nil:
		f.Add(units.Missing, path+"/lift", "", "a lift, or gaps")
	}
	return softfoot.Foot{Name: s.Name, X: s.X, Y: s.Y, Lift: value(s.Lift), Gaps: s.Gaps}
}

type softFootResult struct {
	Common units.Length    `json:"common"`
	Worst  units.Length    `json:"worst"`
	Feet   []footFound     `json:"feet"`
	Kinds  []softfoot.Kind `json:"kinds"`
	Advice []advice        `json:"advice"`
}

type footFound struct {
	Foot   string          `json:"foot"`
	Excess units.Length    `json:"excess"`
	Soft   bool            `json:"soft"`
	Taper  *softfoot.Taper `json:"taper,omitzero"`
}

type advice struct {
	Shims []advisedShim `json:"shims"`
}

type advisedShim struct {
	Foot    string          `json:"foot"`
	Flat    units.Length    `json:"flat"`
	Stepped *softfoot.Taper `json:"stepped,omitzero"` // on top; the protocol does not look at it
}

func softFoot(in *softFootInput, f *strict.Faults) softFootResult {
	survey := softfoot.Survey{Height: in.Height, Feet: make([]softfoot.Foot, len(in.Feet))}
	for i := range in.Feet {
		survey.Feet[i] = in.Feet[i].foot(f, strict.Step("/feet", i))
	}
	found, err := survey.Judge(softfoot.Limits{Act: limit(in.Limits.Act), Taper: limit(in.Limits.Taper)})
	f.Adopt(err, same)
	return toldFinding(&found)
}

func toldFinding(found *softfoot.Finding) softFootResult {
	told := softFootResult{
		Common: found.Common, Worst: found.Worst,
		Feet: make([]footFound, len(found.Feet)), Kinds: []softfoot.Kind{}, Advice: make([]advice, len(found.Advice)),
	}
	for i, foot := range found.Feet {
		told.Feet[i] = footFound{foot.Foot, foot.Excess, foot.Soft, foot.Taper}
	}
	for _, fits := range found.Fits {
		if !slices.Contains(told.Kinds, fits.Kind) {
			told.Kinds = append(told.Kinds, fits.Kind)
		}
	}
	for i, way := range found.Advice {
		told.Advice[i].Shims = make([]advisedShim, len(way.Shims))
		for k, shim := range way.Shims {
			told.Advice[i].Shims[k] = advisedShim(shim)
		}
	}
	return told
}
