package tolerance

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Resolution is what found and limit are rounded to before they are compared: a
// length to 1 nm, a slope to 1 nm over a metre.
const Resolution = units.Nanometre

// Limits are the sizes up to which what was found, less the target, is accepted.
// A zero field is an item for which no limit is given. Limits for the other sort
// of coupling may be there, for a row of a table has both, and are not used. The
// zero value has no limit and is refused by Judge.
type Limits struct {
	Offset   units.Length `json:"offset,omitzero"`    // short coupling: offset at the coupling centre
	Slope    units.Slope  `json:"slope,omitzero"`     // short coupling: slope between the shafts
	Flex     units.Slope  `json:"flex,omitzero"`      // spacer coupling: tilt at each flex plane
	PerPlane bool         `json:"per_plane,omitzero"` // each plane by itself; otherwise both together, as a vector
	Rule     string       `json:"rule,omitempty"`     // which rule gave these
	Source   string       `json:"source,omitempty"`   // the work and its edition
}

// Validate asks that each limit is finite and is at least the Resolution, or is
// not given (NotFinite and OutOfRange, at /offset, /slope and /flex). Whether
// those are given that a coupling needs, Judge tells.
func (l Limits) Validate() error {
	var faults check.Faults
	var root check.Path
	l.check(&faults, root)
	return faults.Err()
}

func (l *Limits) check(faults *check.Faults, at check.Path) {
	checkLimit(faults, at.Field("offset"), l.Offset, l.Offset)
	checkLimit(faults, at.Field("slope"), l.Slope, rise(l.Slope))
	checkLimit(faults, at.Field("flex"), l.Flex, rise(l.Flex))
}

// checkLimit asks that q, which is so many nanometres, is a limit or was not
// given.
func checkLimit[Q ~float64](faults *check.Faults, at check.Path, q Q, nanometres units.Length) bool {
	if !check.Finite(faults, at, q) {
		return false
	}
	if q != 0 && nanometres.Round(Resolution) < Resolution {
		faults.Add(units.OutOfRange, at, q, "a limit above zero, of at least 1 nm (a slope: 1 nm over a metre)")
		return false
	}
	return true
}

// rise is the rise of a slope over a metre: slopes are compared and rounded as
// the lengths that they are there.
func rise(s units.Slope) units.Length { return s.Over(units.Metre) }

// checkNeeded asks for the limits that the sort of coupling is judged by. One
// that is given and bad is a fault already.
func (l *Limits) checkNeeded(faults *check.Faults, at check.Path, k align.Coupling) {
	if k.Span == 0 && l.Offset == 0 && l.Slope == 0 {
		faults.Add(units.Missing, at.Field("offset"), nil, "a limit for the offset or the slope: the coupling is short")
	} else if k.Span > 0 && l.Flex == 0 {
		faults.Add(units.Missing, at.Field("flex"), nil, "a limit for the tilt at each flex plane: the coupling has a spacer")
	}
}
