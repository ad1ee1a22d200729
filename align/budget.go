package align

import (
	"example.org/collinear/internal/words"
	"example.org/collinear/units"
)

// Input names what an uncertainty is of. The zero value is none.
type Input uint8

// The inputs of a fit.
const (
	OfReading Input = iota + 1 // of each reading by itself: stated, or from the scatter
	OfAngle                    // of each clock position by itself
	OfStation                  // of the probe's station: the tape
	OfRadius                   // of the circle that a face's plunger sweeps
	OfSag                      // of the bracket's droop
	OfClock                    // of all clock positions alike
)

// sharedInputs are those that all readings of a mounting share.
var sharedInputs = [...]Input{OfStation, OfRadius, OfSag, OfClock}

var inputNames = words.List{"", "reading", "angle", "station", "radius", "sag", "clock"}

// String returns the wire form, for one "station".
func (i Input) String() string { return inputNames.Word(uint8(i)) }

// MarshalText gives the wire form.
func (i Input) MarshalText() ([]byte, error) { return inputNames.Marshal(uint8(i)) }

// UnmarshalText reads the wire form.
func (i *Input) UnmarshalText(text []byte) error { return words.Unmarshal(i, inputNames, text) }

// of returns what is stated of one of the sharedInputs; lengths in nanometres,
// the clock in radians. It serves to tell whether anything is.
func (u *Uncertainty) of(in Input) float64 {
	switch in {
	case OfStation:
		return float64(u.Station)
	case OfRadius:
		return float64(u.Radius)
	case OfSag:
		return float64(u.Sag)
	default: // OfClock
		return float64(u.Clock)
	}
}

// Share is the part of a fit's covariance that one input brings in.
type Share struct {
	Set      int        `json:"set"`                // whose input it is; for what a mounting shares, its first set
	Mounting string     `json:"mounting,omitempty"` // of that set
	Of       Input      `json:"of"`
	Cov      Covariance `json:"cov"` // Standard and At tell how much it is
}

// Budget returns where the uncertainty of [Fit] comes from: one share for the
// readings of each set, and one for every other input whose uncertainty is
// stated, in the order of the sets. The shares are independent and add up to the
// fit's covariance, so that at any station x their squares [Covariance.At] add up
// to the square of the fit's. It tells whether the tape or the dial is what hurts.
//
// It is that of the fit, with its residuals: what a foot's own station brings into a
// move ([Foot.U] times the slope) and the target's uncertainty are not in it.
//
// It refuses what Fit refuses, and readings whose uncertainty is Unknown (Unseen,
// at /sets). An angle's uncertainty is in the scatter, and has no share, where the
// readings state none. A budget after JCGM 100:2008, 5.1.2 to 5.2.2, with the
// sensitivities of the fit at its answer.
func Budget(sets ...Set) ([]Share, error) {
	var s solution
	f, err := s.fit(sets)
	if err != nil {
		return nil, err
	}
	if f.Cov.Basis == Unknown {
		return nil, refuse(units.Unseen, "an uncertainty of the readings, stated or from readings left over")
	}
	var list []Share
	for i := range sets {
		list = s.appendShares(list, sets, i)
	}
	return list, nil
}

// appendShares appends the shares of set i, and of its mounting if it is the
// first of it.
func (s *solution) appendShares(list []Share, sets []Set, i int) []Share {
	set := &sets[i]
	list = append(list, Share{i, set.Mounting, OfReading, s.readingsOf(sets, i)})
	if s.stated && set.U.Angle != 0 {
		c := Covariance{Basis: Stated}
		s.addAngles(&c, set)
		list = append(list, Share{i, set.Mounting, OfAngle, c})
	}
	if mountedAt(sets, i) != i {
		return list
	}
	for k, d := range s.effects(sets, i) {
		if in := sharedInputs[k]; set.U.of(in) != 0 {
			c := Covariance{Basis: Stated}
			c.v.addSquare(d)
			list = append(list, Share{i, set.Mounting, in, c})
		}
	}
	return list
}

// readingsOf is the part of the covariance that the readings of one set bring:
// U A_i'W A_i U, which over all sets adds up to U = (A'WA)^-1.
func (s *solution) readingsOf(sets []Set, i int) Covariance {
	var c Covariance
	s.ofReadings(&c)
	factor := 1.0
	if c.Basis == Scatter {
		factor = s.residualVariance()
	}
	c.v = matrix{}
	r, l := s.reduced(sets, i), sets[i].Probe.law()
	for _, row := range r.rows {
		c.v.addSquare(s.unit.of(l.row(row[0], row[1])))
	}
	c.v = c.v.times(factor)
	if c.Basis == Scatter {
		c.scattered = c.v
	}
	return c
}
