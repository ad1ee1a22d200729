package align

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Predict returns what the dial of the set will show at the given clock
// positions when the misalignment is c: sag included, positions as the set's
// view names them, and zero at the first of them. The readings of the set are
// not used. It is linear, as [Fit] is, and refuses a set that is not sound with
// paths from the set (/probe/station), a centreline that is not finite (at
// /centreline/vertical/offset) and positions that are not (/at/0).
func (s Set) Predict(c Centreline, at ...units.Clock) ([]Reading, error) {
	if err := checkPredict(&s, c, at); err != nil {
		return nil, err
	}
	return s.predict(c, at), nil
}

func (s *Set) predict(c Centreline, at []units.Clock) []Reading {
	readings := make([]Reading, len(at))
	for i, t := range at {
		readings[i] = Reading{At: t, Value: fromMM(s.expect(c, t) - s.expect(c, at[0]))}
	}
	return readings
}

// expect is the reading at t in millimetres, up to the set's constant.
func (s *Set) expect(c Centreline, t units.Clock) float64 {
	sin, cos := s.View.Clock(t).SinCos()
	return s.Probe.law().at(c.numbers(), sin, cos) + float64(s.droop()*cos)
}

// at evaluates the law.
func (l law) at(beta [four]float64, sin, cos float64) float64 {
	horizontal, vertical := l.amplitudes(beta)
	return float64(horizontal*sin) + float64(vertical*cos)
}

func checkPredict(s *Set, c Centreline, at []units.Clock) error {
	var faults check.Faults
	var root check.Path
	s.checkPlaces(&faults, at)
	checkCentreline(&faults, root.Field("centreline"), c)
	return faults.Err()
}

// checkPlaces asks for a sound probe and for clock positions.
func (s *Set) checkPlaces(faults *check.Faults, at []units.Clock) {
	var root check.Path
	checkProbe(faults, root.Field("probe"), s.Probe)
	checkSag(faults, root.Field("sag"), s.Probe.Kind, s.Sag)
	checkView(faults, root.Field("view"), s.View)
	list := root.Field("at")
	if len(at) == 0 {
		faults.Add(units.Missing, list, nil, "at least one clock position")
	}
	for i, t := range at {
		check.Finite(faults, list.Index(i), t)
	}
}
