package adapter

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

type growthInput struct {
	Supports []support     `json:"supports"`
	Within   *units.Length `json:"within,omitzero"`
}

// support tells in one of three ways how the shaft moves there.
type support struct {
	X        units.Length  `json:"x"`
	Pieces   []piece       `json:"pieces,omitzero"`
	Three    []piece       `json:"three,omitzero"`
	Nine     []piece       `json:"nine,omitzero"`
	Track    *units.Length `json:"track,omitzero"`
	Measured *measured     `json:"measured,omitzero"`
}

type measured struct {
	By align.Vector `json:"by"`
	U  struct {
		Horizontal units.Length `json:"horizontal,omitzero"`
		Vertical   units.Length `json:"vertical,omitzero"`
	} `json:"u,omitzero"`
}

func growth(in *growthInput, f *strict.Faults) position {
	within := thermal.DefaultStandOff
	if in.Within != nil {
		within = *in.Within
	}
	supports := make([]thermal.Support, len(in.Supports))
	for i := range in.Supports {
		supports[i] = in.Supports[i].support(f, strict.Step("/supports", i))
	}
	line, err := thermal.GrowthWithin(within, supports...)
	if len(*f) == 0 { // otherwise the library was not asked what the input says
		f.Adopt(err, ofGrowth)
	}
	return told(line)
}

// ofGrowth gives the limit its name on the wire, and blames the station of a
// support that stands off the line.
func ofGrowth(path string) string {
	if path == "/limit" {
		return "/within"
	}
	if rest, found := strings.CutPrefix(path, "/supports/"); found && !strings.Contains(rest, "/") {
		return path + "/x"
	}
	return path
}

func (s *support) support(f *strict.Faults, path string) thermal.Support {
	s.checkWays(f, path)
	support := thermal.Support{
		X: s.X, Pieces: pieces(f, path+"/pieces", s.Pieces),
		Three: pieces(f, path+"/three", s.Three), Nine: pieces(f, path+"/nine", s.Nine), Track: value(s.Track),
	}
	if m := s.Measured; m != nil {
		support.Measured = &thermal.Measured{By: m.By, U: align.Vector{Horizontal: m.U.Horizontal, Vertical: m.U.Vertical}}
	}
	return support
}

// checkWays asks for exactly one way. Where there are several the later ones
// have to go.
func (s *support) checkWays(f *strict.Faults, path string) {
	const ways = "one of pieces; three, nine and track; measured"
	sides := s.Three != nil || s.Nine != nil
	switch {
	case s.Measured != nil && (s.Pieces != nil || sides || s.Track != nil):
		f.Add(units.Conflict, path+"/measured", "", ways)
	case s.Measured != nil:
	case s.Pieces != nil:
		s.checkAlike(f, path)
	case sides, s.Track != nil:
		s.checkSides(f, path)
	default:
		f.Add(units.Missing, path, "", ways)
	}
}

func (s *support) checkAlike(f *strict.Faults, path string) {
	for _, other := range []struct {
		name  string
		given bool
	}{{"three", s.Three != nil}, {"nine", s.Nine != nil}, {"track", s.Track != nil}} {
		if other.given {
			f.Add(units.Conflict, path+"/"+other.name, "", "no value: the pieces are alike on both sides")
		}
	}
	if len(s.Pieces) == 0 {
		f.Add(units.Missing, path+"/pieces", "", "at least one piece")
	}
}

func (s *support) checkSides(f *strict.Faults, path string) {
	if len(s.Three) == 0 {
		f.Add(units.Missing, path+"/three", "", "the leg on the side of 3 o'clock")
	}
	if len(s.Nine) == 0 {
		f.Add(units.Missing, path+"/nine", "", "the leg on the side of 9 o'clock")
	}
	if s.Track == nil {
		f.Add(units.Missing, path+"/track", "", "the distance of the feet across the machine")
	}
}
