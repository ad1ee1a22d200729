package dial

import (
	"example.org/collinear/align"
	"example.org/collinear/units"
)

// The quarters of the clock, as the library's own view names them.
const (
	twelve = iota
	three
	six
	nine
	quarters // how many
)

// Check tells how far a set satisfies the checks that it carries in itself.
type Check struct {
	Quarters  [4]units.Length `json:"quarters"`           // at 12, 3, 6 and 9 in the library's view, sag removed, from the set's own zero: 12 shows minus the sag where the dial was zeroed there
	Miss      units.Length    `json:"miss"`               // of the validity rule, 12 + 6 - 3 - 9; says nothing when Completed
	Completed bool            `json:"completed,omitzero"` // one quarter was not read but supplied by the rule
	Supplied  units.Clock     `json:"supplied"`           // which, in the library's view; says nothing unless Completed
	Return    units.Length    `json:"return"`             // last reading less first, back at the start; says nothing unless Returned
	Returned  bool            `json:"returned,omitzero"`  // the sweep ended where it began
}

// sweep is one set at the quarters, sag removed, all four there.
type sweep struct {
	at    [quarters]units.Length
	check Check
}

// newSweep brings a sound part to its quarters.
func newSweep(p *part) sweep {
	var s sweep
	var seen [quarters]bool
	for _, r := range p.set.Readings {
		q, _ := quarter(p.set.View.Clock(r.At))
		s.at[q], seen[q] = WithoutSag(r.Value, p.sag(), units.Clock(90*q)), true
	}
	s.complete(seen)
	s.check.Quarters = s.at
	s.check.Miss = Miss(s.at[twelve], s.at[three], s.at[six], s.at[nine])
	if returns(p.readings) {
		s.check.Returned = true
		s.check.Return = p.readings[len(p.readings)-1].Value - p.readings[0].Value
	}
	return s
}

// quarter returns which quarter of the clock t is, if it is one.
func quarter(t units.Clock) (q int, ok bool) {
	n := float64(t.Normal()) / 90
	return int(n), n == float64(int(n))
}

// sag is that of the part's set, the other way round in a bore.
func (p *part) sag() units.Length {
	if p.set.Probe.Kind == align.Bore {
		return -p.set.Sag
	}
	return p.set.Sag
}

// complete supplies the one quarter that was not seen, if there is one.
func (s *sweep) complete(seen [quarters]bool) {
	for q := range seen {
		if !seen[q] {
			s.at[q] = Fourth(s.at[(q+2)%4], s.at[(q+1)%4], s.at[(q+3)%4])
			s.check.Completed, s.check.Supplied = true, units.Clock(90*q)
		}
	}
}

// outward returns the readings without the return to the start, which is a
// check on the set and not a reading of its own.
func outward(readings []align.Reading) []align.Reading {
	if returns(readings) {
		return readings[:len(readings)-1]
	}
	return readings
}

// returns tells whether the last reading stands where the first did.
func returns(readings []align.Reading) bool {
	last := len(readings) - 1
	return last >= 2 && samePlace(readings[last].At, readings[0].At)
}
