package align

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Fitted is a centreline fitted to readings, with what tells how far to trust
// it.
type Fitted struct {
	Estimate
	DegreesOfFreedom int           `json:"degrees_of_freedom"` // readings less unknowns: four numbers and one zero per set
	Scatter          units.Length  `json:"scatter"`            // standard deviation of one reading (of average weight) about the fit; zero where no reading is left over to tell, or they agree to rounding
	Condition        float64       `json:"condition"`          // how much more an error of the readings can count than on a full turn with probes well apart, which is about 1: the cost of a short arc or a short distance
	Warnings         []units.Fault `json:"warnings,omitempty"`
}

// Fit returns the centreline that fits the readings of all sets best: weighted
// linear least squares in four numbers and one zero per set. Any mix of probes,
// carriers and views will do, and any angles: what one set cannot see another
// may.
//
// Readings are weighted by their standard uncertainties, stated for all or for
// none. Where none is stated the uncertainty follows from the scatter, and is
// Unknown where no reading is left over, or where the readings agree to the last
// digits of a float64: that happens with round numbers and tells nothing.
// Uncertainties of station, radius, sag and clock that a set states are
// propagated on their own to first order (JCGM 100:2008, 5.2) and do not average
// out, over the sets of one mounting neither. Those of single angles do; they
// do not change the weights, and are in the scatter already where no uncertainty
// of the readings is stated.
//
// The condition is one over the least singular value of the equations, free of
// the zeros, whose columns are scaled as a full turn would leave them; turning
// the clock does not change it. Numbers agree with exact arithmetic to some
// rounding units times the condition times the readings.
//
// It is linear; the package comment says where that holds. It refuses input
// that is not sound, each fault with its path below /sets, more than MostSets sets
// (OutOfRange, at /sets), and readings that
// cannot see one of the four numbers, with a condition of 1e12 and more (Unseen,
// at /sets). A spread of readings under 0.5 um or over 25 mm is answered with a
// warning that asks about the unit. A sound set without warnings allocates
// nothing.
func Fit(sets ...Set) (Fitted, error) {
	var s solution
	return s.fit(sets)
}

// fit is Fit, and leaves the solution too.
func (s *solution) fit(sets []Set) (f Fitted, err error) {
	if err := checkSets(sets); err != nil {
		return Fitted{}, err
	}
	if err := s.solve(sets); err != nil {
		return Fitted{}, err
	}
	f.Value = centreline(s.beta)
	s.covariance(&f.Cov, sets)
	f.DegreesOfFreedom, f.Scatter, f.Condition = s.dof(), s.scatter(), s.condition
	var faults check.Faults
	if f.check(&faults, check.Path{}); faults.Len() > 0 {
		return Fitted{}, refuse(units.OutOfRange, "readings and stations that leave numbers a machine can hold")
	}
	f.Warnings = warnings(sets)
	return f, nil
}

// refuse is a fault of the sets as a whole.
func refuse(code units.Code, want string) error {
	return &units.Fault{Code: code, Path: "/sets", Want: want}
}

// check asks for numbers that can be reckoned with.
func (f *Fitted) check(faults *check.Faults, at check.Path) {
	checkCentreline(faults, at.Field("value"), f.Value)
	f.Cov.check(faults, at.Field("cov"))
	check.NotNegative(faults, at.Field("scatter"), f.Scatter, "a scatter")
}

// warnings asks about the unit where the spread of a set is one that dials do
// not show. The limits are ours: common practice has no figure.
func warnings(sets []Set) []units.Fault {
	const little, much = units.Micrometre / 2, 25 * units.Millimetre
	var list []units.Fault
	for i := range sets {
		if spread := sets[i].spread(); spread < little || spread > much {
			var root check.Path
			all := root.Field("sets")
			one := all.Index(i)
			at := one.Field("readings")
			list = append(list, units.Fault{
				Code: units.Suspect, Path: at.String(), Value: spread.String(),
				Want: "a spread from 0.5 um to 25 mm: is the unit right, and did the dial touch?",
			})
		}
	}
	return list
}

// spread is the largest reading less the smallest.
func (s *Set) spread() units.Length {
	low, high := s.Readings[0].Value, s.Readings[0].Value
	for i := range s.Readings {
		v := s.Readings[i].Value
		low, high = min(low, v), max(high, v)
	}
	return high - low
}
