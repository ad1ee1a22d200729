package dial_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

// A reading may repeat what its set states; one that says something else is
// named, and no other.
func TestReadingAndSetStateOneUncertainty(t *testing.T) {
	for _, row := range []struct {
		name     string
		set, own units.Length
		all      bool // every reading of the first set, not only one
		want     []string
	}{
		{"the same as the set", units.Micrometre, units.Micrometre, false, nil},
		{"another than the set", units.Micrometre, 2 * units.Micrometre, false, []string{"/carried_by_stationary/readings/0/u"}},
		{"one of its own, and the set none", 0, 2 * units.Micrometre, false, []string{"/carried_by_stationary/readings/0/u", ""}},
		{"each its own, all alike", units.Micrometre, 2 * units.Micrometre, true, nil},
	} {
		stated := align.Uncertainty{Reading: row.set}
		m := dial.Reverse{
			CarriedByStationary: dial.Rim{Station: 100 * units.Millimetre, Readings: dial.Quarters(units.Millimetre, 0, 0.1, 0.2, 0.1), U: stated},
			CarriedByMovable:    dial.Rim{Station: -100 * units.Millimetre, Readings: dial.Quarters(units.Millimetre, 0, 0.1, 0.2, 0.1), U: stated},
		}
		for i := range m.CarriedByStationary.Readings {
			if i == 0 || row.all {
				m.CarriedByStationary.Readings[i].U = row.own
			}
		}
		_, err := m.Solve()
		faults := units.Faults(err)
		if len(faults) != len(row.want) {
			t.Fatalf("%s: got %v, want faults at %v", row.name, err, row.want)
		}
		for i, f := range faults {
			if f.Code != units.Conflict || f.Path != row.want[i] {
				t.Errorf("%s: got %v, want a conflict at %s", row.name, f, row.want[i])
			}
		}
	}
}
