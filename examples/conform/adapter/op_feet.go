package adapter

import (
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

type shimShiftInput struct {
	Feet []struct {
		Name string       `json:"name"`
		X    units.Length `json:"x"`
		Y    units.Length `json:"y"`
	} `json:"feet"`
	Height units.Length `json:"height"`
	Shims  []struct {
		Foot string       `json:"foot"`
		Flat units.Length `json:"flat"`
	} `json:"shims"`
}

func shimShift(in *shimShiftInput, f *strict.Faults) softfoot.Shift {
	survey := softfoot.Survey{Height: in.Height}
	for _, foot := range in.Feet {
		survey.Feet = append(survey.Feet, softfoot.Foot{Name: foot.Name, X: foot.X, Y: foot.Y})
	}
	var shims []softfoot.Shim
	for _, shim := range in.Shims {
		shims = append(shims, softfoot.Shim{Foot: shim.Foot, Flat: shim.Flat})
	}
	shift, err := survey.Shift(shims...)
	f.Adopt(err, same)
	return shift
}

type liftAtShaftInput struct {
	Y        units.Length  `json:"y"`
	Up       units.Length  `json:"up"`
	Sideways *units.Length `json:"sideways,omitzero"`
	Height   *units.Length `json:"height,omitzero"`
	Across   *units.Length `json:"across,omitzero"`
}

type liftAtShaftResult struct {
	Rolling *units.Length `json:"rolling,omitzero"`
	Hinged  *units.Length `json:"hinged,omitzero"`
}

func liftAtShaft(in *liftAtShaftInput, f *strict.Faults) (out liftAtShaftResult) {
	shaft := softfoot.AtShaft{Y: in.Y, Up: in.Up, Sideways: value(in.Sideways)}
	if in.Height == nil && in.Across == nil {
		f.Add(units.Missing, "", "", "a height, across, or both")
	}
	if in.Height != nil {
		if in.Sideways == nil {
			f.Add(units.Missing, "/sideways", "", "how far the shaft went sideways as the machine rolled")
		}
		lift, err := shaft.Rolling(*in.Height)
		f.Adopt(err, same)
		out.Rolling = &lift
	}
	if in.Across != nil {
		lift, err := shaft.Hinged(*in.Across)
		f.Adopt(err, same)
		out.Hinged = &lift
	}
	return out
}

type pipeStrainInput struct {
	Limit    units.Length       `json:"limit"`
	Releases []softfoot.Release `json:"releases"`
}

type pipeStrainResult struct {
	Strains []strain `json:"strains"`
}

type strain struct {
	What    string       `json:"what"`
	Largest units.Length `json:"largest"`
	Over    bool         `json:"over"`
}

func pipeStrain(in *pipeStrainInput, f *strict.Faults) pipeStrainResult {
	found, err := softfoot.Strains(in.Limit, in.Releases...)
	f.Adopt(err, same)
	list := make([]strain, len(found))
	for i, s := range found {
		list[i] = strain{s.Release.What, s.Largest, s.Over}
	}
	return pipeStrainResult{list}
}
