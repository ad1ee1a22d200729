package adapter

import (
	"errors"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type fitInput struct {
	View align.View   `json:"view"`
	Sets []fitSet     `json:"sets"`
	Feet []align.Foot `json:"feet,omitzero"`

	Probability *float64 `json:"probability,omitzero"`
}

// setsInput are readings without what follows from them.
type setsInput struct {
	View align.View `json:"view"`
	Sets []fitSet   `json:"sets"`
}

type fitSet struct {
	Probe    probe         `json:"probe"`
	Mounting string        `json:"mounting,omitzero"`
	Sag      *units.Length `json:"sag,omitzero"`
	Readings []fitReading  `json:"readings"`
	U        fitU          `json:"u,omitzero"`
}

type fitReading struct {
	At    units.Clock   `json:"at"`
	Value units.Length  `json:"value"`
	U     *units.Length `json:"u,omitzero"`
}

// fitU are the uncertainties that the readings of a set have in common.
type fitU struct {
	Reading *units.Length `json:"reading,omitzero"`
	Station *units.Length `json:"station,omitzero"`
	Radius  *units.Length `json:"radius,omitzero"`
	Sag     *units.Length `json:"sag,omitzero"`
	Clock   units.Angle   `json:"clock,omitzero"`
	Angle   units.Angle   `json:"angle,omitzero"`
}

type fitResult struct {
	Horizontal fitLine       `json:"horizontal"`
	Vertical   fitLine       `json:"vertical"`
	Moves      []fitMove     `json:"moves"`
	Warnings   []units.Fault `json:"warnings"`
}

// fitLine and fitMove have half the width of their interval beside them, where a
// probability was asked for.
type fitLine struct {
	line
	Half *align.Line `json:"half,omitzero"`
}

type fitMove struct {
	move
	Half *align.Vector `json:"half,omitzero"`
}

func fit(in *fitInput, f *strict.Faults) fitResult {
	fitted, err := align.Fit(in.sets(f)...)
	adoptFit(f, err)
	return in.told(f, fitted)
}

func (in *setsInput) sets(f *strict.Faults) []align.Set {
	sets := make([]align.Set, len(in.Sets))
	for i := range in.Sets {
		sets[i] = in.Sets[i].set(f, strict.Step("/sets", i), in.View)
	}
	return sets
}

func (in *fitInput) sets(f *strict.Faults) []align.Set {
	only := setsInput{in.View, in.Sets}
	return only.sets(f)
}

// told returns what was fitted, with the moves at the feet.
func (in *fitInput) told(f *strict.Faults, fitted align.Fitted) fitResult {
	found := told(fitted.Estimate)
	result := fitResult{
		Horizontal: fitLine{line: found.Horizontal}, Vertical: fitLine{line: found.Vertical},
		Moves: []fitMove{}, Warnings: warnings(fitted.Warnings),
	}
	known := fitted.Cov.Basis != align.Unknown
	if in.Probability != nil {
		half, err := fitted.Expanded(*in.Probability)
		f.Adopt(err, same)
		if known {
			result.Horizontal.Half, result.Vertical.Half = &half.Horizontal, &half.Vertical
		}
	}
	for _, m := range movesOf(f, fitted.Estimate, in.Feet) {
		told := fitMove{move: toldMove(m)}
		if in.Probability != nil && known {
			half, _ := m.Expanded(*in.Probability) // a fault of the probability is noted
			told.Half = &half
		}
		result.Moves = append(result.Moves, told)
	}
	return result
}

// adoptFit notes what a fit refuses. That readings see too little, which is
// refused alone, says nothing where a probe is not as it should be.
func adoptFit(f *strict.Faults, err error) {
	if len(*f) == 0 || !errors.Is(err, units.Unseen) {
		f.Adopt(err, same)
	}
}

// warnings is never nil, which would be written as null.
func warnings(found []units.Fault) []units.Fault { return append([]units.Fault{}, found...) }

func (s *fitSet) set(f *strict.Faults, path string, view align.View) align.Set {
	set := align.Set{
		Probe: s.Probe.probe(f, path+"/probe"), Mounting: s.Mounting, Sag: value(s.Sag), View: view,
		Readings: make([]align.Reading, len(s.Readings)), U: s.shared(f, path+"/u"),
	}
	s.Probe.unused(f, path, "sag", s.Sag != nil)
	for i, r := range s.Readings {
		above(f, strict.Step(path+"/readings", i)+"/u", r.U)
		set.Readings[i] = align.Reading{At: r.At, Value: r.Value, U: value(r.U)}
	}
	return set
}

func (s *fitSet) shared(f *strict.Faults, path string) align.Uncertainty {
	u := &s.U
	above(f, path+"/reading", u.Reading)
	s.Probe.unused(f, path, "station", u.Station != nil)
	s.Probe.unused(f, path, "sag", u.Sag != nil)
	s.Probe.unused(f, path, "radius", u.Radius != nil)
	if u.Radius != nil && s.Probe.Radius == nil && !usesOf[s.Probe.Kind].need("radius") {
		f.Adopt(&units.Fault{Code: units.Conflict, Path: path + "/radius", Want: "a radius with it"}, same)
	}
	return align.Uncertainty{
		Reading: value(u.Reading), Station: value(u.Station), Radius: value(u.Radius), Sag: value(u.Sag),
		Clock: u.Clock, Angle: u.Angle,
	}
}
