package align

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Expect returns what [Set.Predict] returns for the centreline of e, each reading
// with its standard uncertainty against the first: from that of e, from those of
// station, radius, sag and clock that the set states, and from those of both
// readings and both angles where it states them. The first reading is zero by
// choice and states none. To first order (JCGM 100:2008, 5.2).
//
// Where the set states no uncertainty of its readings, they are left out, and U is
// that of what a dial without scatter would show: put the scatter of the fit into
// U.Reading to have them in. Where that of e comes from a scatter, an interval needs
// Student's t: [CoverageFactor] with the DoF of e.Cov is never too narrow.
//
// The errors of e and of the set count as independent: where e was measured with
// this very mounting, what it shares with the set is counted twice. No uncertainty
// is stated where that of e is Unknown. It refuses what Predict refuses, an estimate
// and uncertainties that are not sound (/estimate/cov/u/vertical/offset, /u/station),
// and an estimate of readings that cannot be reckoned with (OutOfRange, at /estimate).
func (s Set) Expect(e Estimate, at ...units.Clock) ([]Reading, error) {
	if err := checkExpect(&s, &e, at); err != nil {
		return nil, err
	}
	readings := s.predict(e.Value, at)
	if e.Cov.Basis != Unknown {
		for i := 1; i < len(at); i++ {
			readings[i].U = fromMM(s.deviationBetween(&e, at[0], at[i]))
		}
	}
	for i := range readings {
		if r := &readings[i]; !check.Sound(r.Value) || !check.Sound(r.U) {
			return nil, &units.Fault{Code: units.OutOfRange, Path: "/estimate", Want: "an estimate of readings that can be reckoned with"}
		}
	}
	return readings, nil
}

// deviationBetween is the standard uncertainty, in millimetres, of what the
// reading at t shows more than that at t0.
func (s *Set) deviationBetween(e *Estimate, t0, t units.Clock) float64 {
	l, beta := s.Probe.law(), e.Value.numbers()
	sin0, cos0 := s.View.Clock(t0).SinCos()
	sin, cos := s.View.Clock(t).SinCos()
	variance := e.Cov.v.along(l.row(sin-sin0, cos-cos0))
	for _, in := range sharedInputs {
		d := s.disturbance(in, beta)
		moved := float64(d.sin*(sin-sin0)) + float64(d.cos*(cos-cos0))
		variance += float64(moved * moved)
	}
	reading := mm(s.U.Reading)
	variance += float64(2 * reading * reading)
	for _, direction := range [2][2]float64{{sin0, cos0}, {sin, cos}} {
		turned := s.slopeAt(beta, direction[0], direction[1]) * float64(s.U.Angle)
		variance += float64(turned * turned)
	}
	return e.Cov.root(variance)
}

// slopeAt is dr/dt, in millimetres a radian, droop included.
func (s *Set) slopeAt(beta [four]float64, sin, cos float64) float64 {
	return s.Probe.law().at(beta, cos, -sin) - float64(s.droop()*sin)
}

func checkExpect(s *Set, e *Estimate, at []units.Clock) error {
	var faults check.Faults
	var root check.Path
	s.checkPlaces(&faults, at)
	checkUncertainty(&faults, root.Field("u"), s)
	e.check(&faults, root.Field("estimate"))
	return faults.Err()
}
