package align

import "example.org/collinear/units"

// shared is what all sets of one mounting have in common.
type shared struct {
	probe Probe
	sag   units.Length
	view  View
	u     Uncertainty
}

func (s *Set) shared() shared {
	u := s.U
	u.Reading, u.Angle = 0, 0
	return shared{s.Probe, s.Sag, s.View, u}
}

// exact tells whether no error is stated that its readings share.
func (s *Set) exact() bool {
	u := &s.U
	return u.Station == 0 && u.Radius == 0 && u.Sag == 0 && u.Clock == 0
}

// together tells whether set i is mounted as set first is, the first of its mounting.
func together(sets []Set, first, i int) bool {
	return i == first || sets[i].Mounting != "" && sets[i].Mounting == sets[first].Mounting
}

// mountedAt returns the index of the first set with the mounting of set i; a set
// without a name has a mounting of its own.
func mountedAt(sets []Set, i int) int {
	if sets[i].Mounting == "" {
		return i
	}
	for first := range i {
		if sets[first].Mounting == sets[i].Mounting {
			return first
		}
	}
	return i
}
