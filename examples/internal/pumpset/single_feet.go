package pumpset

import (
	"strings"

	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// named returns which feet of the tape have this name, or -1.
func (t *tape) named(name words) int {
	for i, f := range t.Feet {
		if f.Name == name {
			return i
		}
	}
	return -1
}

// check asks that the single feet belong to the stations of the tape, each of
// which has some, and that each is one of its own.
func (s *singleFeet) check(f *strict.Faults, t *tape) {
	if s == nil {
		return
	}
	notNegative(f, "/single_feet/height", s.Height, "a height")
	if s.Limit.given() {
		positive(f, "/single_feet/limit", s.Limit, "a limit")
	}
	for i := range s.Feet {
		s.checkFoot(f, t, i)
		checkPieces(f, strict.Step("/single_feet/feet", i)+"/pack", s.Feet[i].Pack)
	}
	if bare := s.bare(t); len(bare) > 0 {
		f.Add(units.Missing, "/single_feet/feet", "", "the single feet of every station, also of "+strings.Join(bare, ", "))
	}
}

// bare lists the stations without single feet.
func (s *singleFeet) bare(t *tape) []string {
	var list []string
	for _, station := range t.Feet {
		if !s.under(station.Name) {
			list = append(list, string(station.Name))
		}
	}
	return list
}

// under tells whether a station has single feet.
func (s *singleFeet) under(station words) bool {
	for _, foot := range s.Feet {
		if foot.Station == station {
			return true
		}
	}
	return false
}

func (s *singleFeet) checkFoot(f *strict.Faults, t *tape, i int) {
	foot, path := &s.Feet[i], strict.Step("/single_feet/feet", i)
	if t.named(foot.Station) < 0 {
		f.Add(units.Unknown, path+"/station", string(foot.Station), "the name of feet on the tape")
	}
	notNegative(f, path+"/across", foot.Across, "a distance from below the shaft, whose side is told apart from it")
	if foot.Lift.given() && foot.Gaps != nil {
		f.Add(units.Conflict, path+"/lift", foot.Lift.text, "a lift or gaps, not both")
	}
	for _, before := range s.Feet[:i] {
		switch {
		case before.Name == foot.Name:
			f.Add(units.Duplicate, path+"/name", string(foot.Name), "a name of its own")
			return
		case before.Station == foot.Station && before.Side == foot.Side && before.Across.Value == foot.Across.Value:
			f.Add(units.Duplicate, path, string(foot.Name), "a place of its own, not that of "+string(before.Name))
			return
		}
	}
}

// checkPieces refuses thicknesses of zero, which the library takes for none.
func checkPieces(f *strict.Faults, path string, list []piece) {
	for i, p := range list {
		if p.Marked.given() {
			positive(f, strict.Step(path, i)+"/marked", p.Marked, "a thickness")
		}
		if p.Measured.given() {
			positive(f, strict.Step(path, i)+"/measured", p.Measured, "a thickness")
		}
	}
}
