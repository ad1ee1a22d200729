package align

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Coupling is what joins the two shafts. A short coupling (Span zero) is judged
// by the offset at its centre and the slope, a spacer coupling by the tilt at
// each flex plane.
type Coupling struct {
	Name     string       `json:"name,omitempty"`
	Diameter units.Length `json:"diameter,omitzero"` // across which a gap is given
	Span     units.Length `json:"span,omitzero"`     // flex plane to flex plane, symmetric about x = 0; not shaft end to shaft end
}

// Gap returns how much wider the faces stand at the widest place of the
// coupling's diameter than across from it, and where that place is, in the
// library's view: slope times diameter, open at 6 o'clock for a positive
// vertical slope and at 9 for a positive horizontal one. With no slope it is
// zero at 12. It refuses a diameter that is not above zero (at /diameter), a
// centreline that is not finite (at /centreline/vertical/slope), and a gap that cannot
// be reckoned with (OutOfRange).
func (k Coupling) Gap(c Centreline) (opening units.Length, at units.Clock, err error) {
	var faults check.Faults
	var root check.Path
	check.Positive(&faults, root.Field("diameter"), k.Diameter, "a diameter")
	checkCentreline(&faults, root.Field("centreline"), c)
	if err := faults.Err(); err != nil {
		return 0, 0, err
	}
	tilt := c.Tilt()
	opening = tilt.Size().Over(k.Diameter)
	if opening == 0 {
		return 0, 0, nil
	}
	if !check.Sound(opening) {
		return 0, 0, beyond("a diameter and a slope of a gap")
	}
	return opening, tilt.Direction().Opposite(), nil
}

// FlexTilts returns the tilts that a spacer coupling's flex planes at x = -L/2
// and +L/2 have to take: stationary is the spacer less the stationary shaft,
// movable the movable shaft less the spacer.
//
//	stationary = offset/L + slope/2        movable = slope/2 - offset/L
//
// Their sum is the slope. Derived here from the spacer as a straight line
// between the flex planes; exact for lines of small slope. It refuses a span
// that is not above zero (at /span), a centreline that is not finite (at
// /centreline/vertical/slope), and tilts that cannot be reckoned with (OutOfRange).
func (k Coupling) FlexTilts(c Centreline) (stationary, movable Tilt, err error) {
	var faults check.Faults
	var root check.Path
	k.checkSpan(&faults)
	checkCentreline(&faults, root.Field("centreline"), c)
	if err := faults.Err(); err != nil {
		return Tilt{}, Tilt{}, err
	}
	plane := func(l Line) (s, m units.Slope) {
		swing := l.Offset.Per(k.Span)
		return swing + l.Slope/2, l.Slope/2 - swing
	}
	stationary.Horizontal, movable.Horizontal = plane(c.Horizontal)
	stationary.Vertical, movable.Vertical = plane(c.Vertical)
	if !stationary.sound() || !movable.sound() {
		return Tilt{}, Tilt{}, beyond("a span and a centreline of tilts")
	}
	return stationary, movable, nil
}

func (t Tilt) sound() bool { return check.Sound(t.Horizontal) && check.Sound(t.Vertical) }

// beyond is a fault of an input that is sound, and of which the answer is not.
func beyond(what string) error {
	return &units.Fault{Code: units.OutOfRange, Want: what + " that can be reckoned with"}
}

// FlexUncertainty returns the standard uncertainty of each of the tilts that
// [Coupling.FlexTilts] returns, from that of the centreline, the span being
// exact; NaN when the basis of c is Unknown. It refuses a span that is not above
// zero (at /span), a covariance that is not sound (at /cov/u/vertical/slope), and
// uncertainties that cannot be reckoned with (OutOfRange).
func (k Coupling) FlexUncertainty(c Covariance) (stationary, movable Tilt, err error) {
	var faults check.Faults
	var root check.Path
	k.checkSpan(&faults)
	c.check(&faults, root.Field("cov"))
	if err := faults.Err(); err != nil {
		return Tilt{}, Tilt{}, err
	}
	plane := func(offset, slope int, perSpan float64) units.Slope {
		var a [four]float64
		a[offset], a[slope] = perSpan, 0.5
		return units.Slope(c.root(c.v.along(a)))
	}
	swing := 1 / mm(k.Span)
	stationary = Tilt{plane(offsetY, slopeY, +swing), plane(offsetZ, slopeZ, +swing)}
	movable = Tilt{plane(offsetY, slopeY, -swing), plane(offsetZ, slopeZ, -swing)}
	if c.Basis != Unknown && (!stationary.sound() || !movable.sound()) {
		return Tilt{}, Tilt{}, beyond("a span and a covariance of uncertainties")
	}
	return stationary, movable, nil
}

// FromFlexTilts returns the centreline whose flex planes take the given tilts:
// the inverse of FlexTilts.
//
//	slope = stationary + movable        offset = (stationary - movable) L/2
//
// It refuses a span that is not above zero (at /span) and tilts that are not
// finite (at /stationary/vertical).
func (k Coupling) FromFlexTilts(stationary, movable Tilt) (Centreline, error) {
	var faults check.Faults
	var root check.Path
	k.checkSpan(&faults)
	checkTilt(&faults, root.Field("stationary"), stationary)
	checkTilt(&faults, root.Field("movable"), movable)
	if err := faults.Err(); err != nil {
		return Centreline{}, err
	}
	plane := func(s, m units.Slope) Line {
		return Line{Offset: (s - m).Over(k.Span) / 2, Slope: s + m}
	}
	return Centreline{
		Horizontal: plane(stationary.Horizontal, movable.Horizontal),
		Vertical:   plane(stationary.Vertical, movable.Vertical),
	}, nil
}

func (k Coupling) checkSpan(faults *check.Faults) {
	var root check.Path
	check.Positive(faults, root.Field("span"), k.Span, "a distance from flex plane to flex plane")
}

// SlopeFromGap returns the tilt whose gap across the diameter d is opening, open
// at the clock position at, in the library's view: the inverse of
// [Coupling.Gap]. A negative opening is one that is closed there. It refuses a
// diameter that is not above zero (at /diameter), numbers that are not finite, and a
// slope that cannot be reckoned with (OutOfRange).
func SlopeFromGap(opening units.Length, at units.Clock, d units.Length) (Tilt, error) {
	var faults check.Faults
	var root check.Path
	check.Finite(&faults, root.Field("opening"), opening)
	check.Finite(&faults, root.Field("at"), at)
	check.Positive(&faults, root.Field("diameter"), d, "a diameter")
	if err := faults.Err(); err != nil {
		return Tilt{}, err
	}
	slope := float64(opening.Per(d))
	if !check.Sound(slope) {
		return Tilt{}, beyond("an opening and a diameter of a slope")
	}
	sin, cos := at.SinCos()
	return Tilt{units.Slope(0 - slope*sin), units.Slope(0 - slope*cos)}, nil // 0 - s: no negative zero
}
