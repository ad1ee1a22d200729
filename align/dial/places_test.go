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

// A hundred-thousandth of a degree is another place, and the fault tells the place
// without the digits of its rounding. A millionth is the same.
func TestPlacesApart(t *testing.T) {
	_, err := dial.RemoveRunout([]align.Reading{{At: 10}}, 12.3, []align.Reading{{At: 2.30001}})
	if got := units.Faults(err); len(got) != 1 || got[0].Want != "a runout measured at a turn of 2.3 deg" {
		t.Errorf("a turn of 2.30001 degrees for one of 2.3: got %v", err)
	}
	if _, err := dial.RemoveRunout([]align.Reading{{At: 0}}, 0, []align.Reading{{At: 1e-6}}); err != nil {
		t.Errorf("a millionth of a degree: %v", err)
	}
}

// A return that misses the start by rounding is one: 0.1 + 0.2 - 0.3 degrees is
// not zero. Taken for a reading it would be a fifth place.
func TestReturnMeetsToRounding(t *testing.T) {
	tenths := []units.Clock{0.1, 0.2, 0.3}
	back := tenths[0] + tenths[1] - tenths[2]
	if back == 0 {
		t.Fatal("the sum is exact, and shows nothing")
	}
	for _, at := range []units.Clock{back, -back, 360 + back} {
		for _, m := range methods {
			s := append(fair(), align.Reading{At: at, Value: 7 * units.Micrometre})
			c := solved(t, m.with(soundJobs[m.name], s, fair())).Checks[0]
			if !c.Returned || c.Return != 7*units.Micrometre {
				t.Errorf("%s, back at %g degrees: %+v", m.name, float64(at), c)
			}
		}
	}
}

// A fault names the place that it wants without the digits of its rounding:
// 0.3 - 0.1 is 0.19999999999999998 in float64.
func TestFaultsNameRoundPlaces(t *testing.T) {
	at, t0 := units.Clock(0.1), units.Clock(0.3)
	_, err := dial.RemoveRunout(sweep{{At: at}}, t0, sweep{{At: 90}})
	want := "a runout measured at a turn of 0.2 deg"
	if all := units.Faults(err); len(all) != 1 || all[0].Want != want {
		t.Errorf("got %v, want one that asks for %q", err, want)
	}
}
