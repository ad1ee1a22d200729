package dial_test

import (
	"testing"

	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

// An uncertainty of the set that cannot be is one fault. What single readings state
// beside it is not held against it.
func TestBadUncertaintyOfASetIsOneFault(t *testing.T) {
	reverse := func(u units.Length) dial.Reverse {
		r := dial.Reverse{
			CarriedByStationary: dial.Rim{Station: 100 * units.Millimetre, Readings: fair()},
			CarriedByMovable:    dial.Rim{Station: -100 * units.Millimetre, Readings: fair()},
		}
		r.CarriedByStationary.U.Reading, r.CarriedByMovable.U.Reading = u, units.Micrometre
		r.CarriedByStationary.Readings[1].U = units.Micrometre
		return r
	}
	if _, err := reverse(units.Micrometre).Solve(); err != nil {
		t.Error(err)
	}
	_, err := reverse(-1).Solve()
	faults := units.Faults(err)
	if len(faults) != 1 || faults[0].Code != units.OutOfRange || faults[0].Path != "/carried_by_stationary/u/reading" {
		t.Errorf("got %v", err)
	}
}
