package dial_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

// Positions in tenths of a degree, entered as text, meet to rounding only.
func TestPlacesMeetToRounding(t *testing.T) {
	for tenth := range 3600 {
		at := units.Clock(float64(tenth) / 10)
		across := units.Clock(float64((tenth+1800)%3600) / 10)
		turn := units.Clock(float64((123-tenth+3600)%3600) / 10)
		value := 10 * units.Micrometre
		clean, err := dial.RemoveRunout([]align.Reading{{At: at, Value: value}}, 12.3, []align.Reading{{At: turn, Value: value}})
		if err != nil || clean[0].Value != 0 {
			t.Errorf("runout at %v: got %v, %v", at, clean, err)
		}
		face := func(places ...units.Clock) dial.Face {
			f := dial.Face{Diameter: 100 * units.Millimetre}
			for _, p := range places {
				f.Readings = append(f.Readings, align.Reading{At: p})
			}
			return f
		}
		if _, err := dial.WithoutFloat(face(at, 0), face(across, 180)); err != nil {
			t.Errorf("faces at %v and %v: %v", at, across, err)
		}
	}
}

// A hundred-thousandth of a degree is another place.
func TestPlacesApart(t *testing.T) {
	_, err := dial.RemoveRunout([]align.Reading{{At: 10}}, 12, []align.Reading{{At: 2.00001}})
	if err == nil {
		t.Error("a turn of 2.00001 degrees was taken for one of 2")
	}
}
