package arc

import (
	"example.org/collinear/align"
	"example.org/collinear/units"
)

// spread returns the sets with their readings spread over a wider arc, and
// whether that is wider for any of them.
func spread(sets []align.Set, width units.Clock) (wider []align.Set, gained bool) {
	wider = blank(sets)
	for i := range wider {
		s := &wider[i]
		_, hole, middle := arcOf(s.Readings, s.View)
		if !widens(width, len(s.Readings), hole) {
			continue
		}
		gained = true
		for j := range s.Readings {
			s.Readings[j].At = s.View.Clock(place(j, len(s.Readings), middle, width))
		}
	}
	return wider, gained
}

// widens tells whether n readings spread over an arc leave a smaller hole than
// they do now. A hair is left for rounding.
func widens(width units.Clock, n int, hole units.Angle) bool {
	const hair = 1e-9
	left := fullTurn - width
	if width == fullTurn {
		left = fullTurn / units.Clock(n)
	}
	return angle(left) < hole-hair
}

// place is where reading j of n stands on an arc about its middle, in the
// library's view. On a full turn the last stands one step before the first.
func place(j, n int, middle, width units.Clock) units.Clock {
	steps := n - 1
	if width == fullTurn {
		steps = n
	}
	return middle + units.Clock(float64(width)*(float64(2*j-(n-1))/float64(2*steps)))
}
