package sheet

import (
	"example.org/collinear/align"
	"example.org/collinear/units"
)

// plane is one of the two in which all lines are worked.
type plane uint8

const (
	vertical plane = iota
	horizontal
)

var planes = [...]plane{vertical, horizontal}

func (p plane) String() string { return pick(p, "vertical", "horizontal") }

// pick chooses what belongs to the plane.
func pick[T any](p plane, ofVertical, ofHorizontal T) T {
	if p == horizontal {
		return ofHorizontal
	}
	return ofVertical
}

func (p plane) line(c align.Centreline) align.Line { return pick(p, c.Vertical, c.Horizontal) }
func (p plane) length(v align.Vector) units.Length { return pick(p, v.Vertical, v.Horizontal) }
func (p plane) slope(t align.Tilt) units.Slope     { return pick(p, t.Vertical, t.Horizontal) }
func (p plane) tilt(s units.Slope) align.Tilt {
	return pick(p, align.Tilt{Vertical: s}, align.Tilt{Horizontal: s})
}
func (p plane) centreline(l align.Line) align.Centreline {
	return pick(p, align.Centreline{Vertical: l}, align.Centreline{Horizontal: l})
}

// The kinds of number of the plane.
func (p plane) lies() kind  { return pick(p, height, aside) }
func (p plane) moves() kind { return pick(p, raise, push) }
func (p plane) leans() kind { return pick(p, climb, swing) }
func (p plane) opens() kind { return pick(p, openVertical, openSideways) }

// here is the place on the clock that the plane counts positive, and its index among
// the quarters; the other is half a turn on.
func (p plane) here() units.Clock { return pick(p, units.Twelve, units.Three) }

// exchanged is the slip of taking one end of the plane for the other.
func (p plane) exchanged() SlipKind {
	return pick(p, TopAndBottomExchanged, LeftAndRightExchanged)
}
