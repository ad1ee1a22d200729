package align

import "example.org/collinear/units"

// Reading is what a dial shows at one clock position.
type Reading struct {
	At    units.Clock  `json:"at"`         // where this dial's plunger touches, as the crew's view names it
	Value units.Length `json:"value"`      // positive when the plunger is pushed in; a gap gauge reads the gap
	U     units.Length `json:"u,omitzero"` // standard uncertainty; zero: that of the set, if any
}

// Uncertainty holds the standard uncertainties that the readings of a set have
// in common. Zero means not stated, and what is not stated counts as exact once
// that of the readings is stated; a probe that has no use for one refuses it.
// Those of a reading and of its angle are independent from one reading to the
// next; the others are shared by all readings of the set, and of its mounting,
// and do not average out.
type Uncertainty struct {
	Reading units.Length `json:"reading,omitzero"`
	Station units.Length `json:"station,omitzero"`
	Radius  units.Length `json:"radius,omitzero"` // faces and Gap; Rim and Bore only where their radius is given, where it counts for FitExact alone
	Sag     units.Length `json:"sag,omitzero"`
	Clock   units.Angle  `json:"clock,omitzero"` // a common error of the clock positions
	Angle   units.Angle  `json:"angle,omitzero"` // of each clock position by itself, beside the common one
}

// Set is one sweep of one probe. Its zero may stand anywhere and belongs to
// this sweep alone: re-zeroing or re-clamping starts a new set.
//
// Sweeps of one probe as it was mounted and measured once have the errors of
// station, radius, sag and clock in common: give them one Mounting, and repeats
// do not average these out. Sets without a name share nothing.
type Set struct {
	Probe    Probe        `json:"probe"`
	Mounting string       `json:"mounting,omitzero"` // sets of one name have one probe, sag and view, and one U but for the reading
	Sag      units.Length `json:"sag,omitzero"`      // droop of the bracket at the dial: Rim, Bore not below zero; faces signed, positive if it pushes the plunger in at 12
	View     View         `json:"view"`              // where the crew stands that names the clock positions
	Readings []Reading    `json:"readings"`
	U        Uncertainty  `json:"u,omitzero"`
}

// MostSets is how many sets one fit may have: far more than any job, and few enough
// for what is worked out for every two of them. Ours. There is no limit to the
// readings of a set but memory; the time grows with their number.
const MostSets = 200

// uncertainty returns the standard uncertainty of reading i; zero: not stated.
func (s *Set) uncertainty(i int) units.Length {
	if u := s.Readings[i].U; u != 0 {
		return u
	}
	return s.U.Reading
}

// droop is the sag as it enters the reading at 12 o'clock, in millimetres.
func (s *Set) droop() float64 { return s.Probe.Kind.sagSign() * mm(s.Sag) }

// sinCos returns the direction u(t) of reading i in the library's view.
func (s *Set) sinCos(i int) (sin, cos float64) {
	return s.View.Clock(s.Readings[i].At).SinCos()
}

// corrected returns reading i in millimetres, without sag.
func (s *Set) corrected(i int, cos float64) float64 {
	return mm(s.Readings[i].Value) - float64(s.droop()*cos)
}
