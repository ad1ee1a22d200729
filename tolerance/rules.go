package tolerance

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// APIRP686 returns the limit of API Recommended Practice 686, 2nd edition, 2009,
// clause 5.4.6.2: 0.5 mm/m (0.5 mil/in) at each flex plane (second-hand: the
// clause was quoted elsewhere, the work itself was not seen). There is nothing in
// it for a short coupling.
func APIRP686() Limits {
	return Limits{
		Flex:   0.5 * units.MillimetrePerMetre,
		Rule:   "0.5 mm/m at each flex plane",
		Source: "API RP 686, 2nd ed., 2009, cl. 5.4.6.2 (second-hand)",
	}
}

// UsualSliding is the sliding speed up to which lubricated steel on steel is
// commonly let rub in a coupling, about half an inch a second. Common practice,
// no source. It counts only where a caller hands it to Rubbing; the coupling's
// maker knows better.
const UsualSliding = 12 * units.MillimetrePerSecond

// Rubbing returns the limits at which the parts of a coupling rub on one another
// at the sliding speed v, at a shaft speed s, on a circle of the coupling's
// Diameter. With w = 2 pi s and r = Diameter/2:
//
//	short coupling:   offset e rubs at v = e w, constant in size
//	                  slope rubs at v = r slope w, the peak of a sine
//	spacer coupling:  the tilt at each flex plane rubs at v = r tilt w, a peak
//
// so the limits are e = v/w and slope or tilt = v/(r w). Derived here, from two
// hubs that turn at one speed about axes that do not meet or meet at an angle; to
// first order in the slope. Each limit by itself reaches v; both at once reach up
// to the sum, 2 v, where the parts are shaped so that the two add, and v times
// the square root of 2 on the hubs themselves, for an offset rubs across the axis
// and a slope along it.
//
// It refuses a sliding speed, a shaft speed and a diameter that are not above
// zero (at /sliding, /speed and /coupling/diameter), a span that is not finite or
// is below zero (/coupling/span), and a sliding speed whose limits Validate would
// refuse (OutOfRange, at /sliding).
func Rubbing(v units.LinearSpeed, s units.RotationalSpeed, k align.Coupling) (Limits, error) {
	var faults check.Faults
	var root check.Path
	check.Positive(&faults, root.Field("sliding"), v, "a sliding speed")
	check.Positive(&faults, root.Field("speed"), s, "a speed")
	coupling := root.Field("coupling")
	checkCoupling(&faults, coupling, k)
	if k.Diameter == 0 {
		faults.Add(units.Missing, coupling.Field("diameter"), nil, "the diameter on which the parts rub")
	}
	if err := faults.Err(); err != nil {
		return Limits{}, err
	}
	w := 2 * math.Pi * float64(s) / 60 // rad/s
	arm := units.Length(float64(v) / w * float64(units.Millimetre))
	tilt := arm.Per(k.Diameter / 2)
	l := Limits{
		Rule:   "sliding at " + v.String() + " on a circle of " + k.Diameter.String() + " at " + s.String(),
		Source: "kinematics of hubs that turn at one speed (derived)",
	}
	if k.Span == 0 {
		l.Offset, l.Slope = arm, tilt
	} else {
		l.Flex = tilt
	}
	if l.Validate() != nil {
		faults.Add(units.OutOfRange, root.Field("sliding"), v, "a sliding speed that gives limits which can be reckoned with")
		return Limits{}, faults.Err()
	}
	return l, nil
}
