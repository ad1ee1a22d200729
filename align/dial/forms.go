package dial

import (
	"example.org/collinear/align"
	"example.org/collinear/units"
)

// HalfTIR returns half the difference of two opposite readings: the displacement
// of a rim's centre along that diameter. The total indicator reading (TIR) is
// twice the offset. McMillan, eq. 9.1 and 9.2, p. 164 (read); Bloch & Geitner,
// ch. 5 (read).
func HalfTIR(here, opposite units.Length) units.Length { return (here - opposite) / 2 }

// FaceSlope returns the slope that a near-face dial sees along a diameter:
// readings here and opposite over the diameter swept. A far face has the other
// sign. McMillan, eq. 8.3, p. 141 (read).
func FaceSlope(here, opposite, diameter units.Length) units.Slope {
	return (here - opposite).Per(diameter)
}

// GapSlope returns the slope towards a place from the gaps there and opposite: a
// gap that is wider opposite means that the movable shaft climbs towards here.
// Derived here; a gauge counts against a dial.
func GapSlope(here, opposite, diameter units.Length) units.Slope {
	return (opposite - here).Per(diameter)
}

// Miss returns how far four readings miss the validity rule: what they show at
// 12 and 6 less what they show at 3 and 9, which is zero for a sound set from
// any zero. It is blind to sag. Piotrowski, ch. 8 (second-hand).
func Miss(at12, at3, at6, at9 units.Length) units.Length { return (at12 + at6) - (at3 + at9) }

// Fourth returns the reading that the validity rule expects opposite a reading,
// from the two that stand across: 9 = 12 + 6 - 3. Piotrowski, ch. 8
// (second-hand).
func Fourth(opposite, across1, across2 units.Length) units.Length {
	return across1 + across2 - opposite
}

// MandrelSag returns the sag of a bracket from its readings at 12 and 6 o'clock
// on a straight mandrel: half their difference, since turning from top to bottom
// shows it twice. US Bureau of Reclamation, FIST 4-1A, Maintenance Scheduling
// for Mechanical Equipment, p. 17 (read). For a face dial, mounted as in use,
// it is the signed droop.
func MandrelSag(at12, at6 units.Length) units.Length { return HalfTIR(at12, at6) }

// WithoutSag returns a rim reading less what the droop of the bracket adds to it:
//
//	reading - sag cos t
//
// from the dial's own zero, where that was at 12 the one at 12 becomes -sag. In a
// bore give the sag with a minus. Derived here from a tip that hangs lower by the sag
// wherever the bracket is turned; between top and bottom it counts twice (US Bureau
// of Reclamation, FIST 4-1A, p. 17, read).
func WithoutSag(reading, sag units.Length, at units.Clock) units.Length {
	_, cos := at.SinCos()
	return reading - units.Length(float64(sag)*cos)
}

// displacement returns where a rim's centre lies, seen from the shaft that
// carries the dial: half the TIR on each diameter.
func (s sweep) displacement() align.Vector {
	return align.Vector{
		Horizontal: HalfTIR(s[three], s[nine]),
		Vertical:   HalfTIR(s[twelve], s[six]),
	}
}

// displaced returns w at the dial's station. A dial on the movable shaft sees
// the stationary one displaced, the other way round; so does a plunger that
// points outwards in a bore.
func (r Rim) displaced(carrier align.Shaft, s sweep) align.Vector {
	if (carrier == align.Movable) != r.Bore {
		return reversed(s.displacement())
	}
	return s.displacement()
}

// displaced returns w where the feelers go in: seen from the stationary rim they
// show how near the movable one lies.
func (e Straightedge) displaced(s sweep) align.Vector {
	if e.On == align.Stationary {
		return reversed(s.displacement())
	}
	return s.displacement()
}

// tilt returns the tilt that the face dial sees.
func (f Face) tilt(s sweep) align.Tilt {
	at := s
	if f.Far {
		at = sweep{s[six], s[nine], s[twelve], s[three]}
	}
	return align.Tilt{
		Horizontal: FaceSlope(at[three], at[nine], f.Diameter),
		Vertical:   FaceSlope(at[twelve], at[six], f.Diameter),
	}
}

// tilt returns the tilt that the gap gauge sees.
func (g Gap) tilt(s sweep) align.Tilt {
	return align.Tilt{
		Horizontal: GapSlope(s[three], s[nine], g.Diameter),
		Vertical:   GapSlope(s[twelve], s[six], g.Diameter),
	}
}

// carried returns the line of the given slope that passes w at station x, as
// offset = w - slope x. McMillan, eq. 8.3 and 8.4, p. 141, carries it on to the
// feet in the same way (read).
func carried(w units.Length, slope units.Slope, x units.Length) align.Line {
	return align.Line{Offset: w - slope.Over(x), Slope: slope}
}

// centrelineAt returns the centreline of the given tilt that passes w at x.
func centrelineAt(w align.Vector, tilt align.Tilt, x units.Length) align.Centreline {
	return align.Centreline{
		Horizontal: carried(w.Horizontal, tilt.Horizontal, x),
		Vertical:   carried(w.Vertical, tilt.Vertical, x),
	}
}

// through returns the centreline that passes w1 at x1 and w2 at x2, with
// slope = (w2 - w1)/(x2 - x1). McMillan, eq. 9.1 and 9.2, p. 164 (read).
func through(x1 units.Length, w1 align.Vector, x2 units.Length, w2 align.Vector) align.Centreline {
	plane := func(v1, v2 units.Length) align.Line {
		return carried(v1, (v2 - v1).Per(x2-x1), x1)
	}
	return align.Centreline{
		Horizontal: plane(w1.Horizontal, w2.Horizontal),
		Vertical:   plane(w1.Vertical, w2.Vertical),
	}
}

// reversed subtracts from zero, which makes no negative zero.
func reversed(v align.Vector) align.Vector {
	return align.Vector{Horizontal: 0 - v.Horizontal, Vertical: 0 - v.Vertical}
}
