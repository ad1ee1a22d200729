package dial_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

func TestTarget(t *testing.T) {
	const mm = units.Millimetre
	low := dial.Target{High: -0.05 * mm, Opening: 0.02 * mm, OpenAt: units.Twelve, Diameter: 200 * mm}
	with := func(change func(*dial.Target)) dial.Target {
		changed := low
		change(&changed)
		return changed
	}
	sideways := dial.Target{ToThree: 0.03 * mm, Opening: 0.02 * mm, OpenAt: units.Three, Diameter: 200 * mm}
	fromStationary := sideways
	fromStationary.View = align.FromStationary
	lowFromStationary := with(func(t *dial.Target) { t.View = align.FromStationary })
	for _, row := range []struct {
		name                             string
		target                           dial.Target
		offsetY, slopeY, offsetZ, slopeZ float64 // mm, mm/m
	}{
		// 0.05 low: offset_z = -0.05. A positive vertical slope opens the gap at 6, so
		// one that is 0.02 wider at 12 across 200 mm is -0.02/200 = -0.1 mm/m.
		{"0.05 low, gap 0.02 open at the top", low, 0, 0, -0.05, -0.1},
		{"open at the bottom", with(func(t *dial.Target) { t.OpenAt = units.Six }), 0, 0, -0.05, +0.1},
		{"closed at the bottom", with(func(t *dial.Target) { t.OpenAt, t.Opening = units.Six, -t.Opening }), 0, 0, -0.05, -0.1},
		{"the same from the stationary end: up is up", lowFromStationary, 0, 0, -0.05, -0.1},
		// Low by 0.05 at x = 300 mm, and falling by 0.1 mm/m: at the coupling centre
		// it lies 300 * 0.0001 = 0.03 higher, at -0.02.
		{"low at another station", with(func(t *dial.Target) { t.Station = 300 * mm }), 0, 0, -0.02, -0.1},
		{"low at a station on the stationary side", with(func(t *dial.Target) { t.Station = -300 * mm }), 0, 0, -0.08, -0.1},
		// A positive horizontal slope opens at 9; open at 3 it is -0.02/200.
		{"towards 3 and open at 3", sideways, 0.03, -0.1, 0, 0},
		{"towards 3 and open at 3, as the stationary end has it", fromStationary, -0.03, +0.1, 0, 0},
		{"offset only", dial.Target{High: 0.01 * mm, ToThree: -0.02 * mm}, -0.02, 0, 0.01, 0},
		{"no opening, with its diameter", dial.Target{Diameter: 200 * mm, OpenAt: units.Six}, 0, 0, 0, 0},
	} {
		t.Run(row.name, func(t *testing.T) {
			got, err := row.target.Centreline()
			if err != nil {
				t.Fatal(err)
			}
			checkLine(t, "horizontal", got.Horizontal, units.Length(row.offsetY)*mm, units.Slope(row.slopeY)*units.MillimetrePerMetre)
			checkLine(t, "vertical", got.Vertical, units.Length(row.offsetZ)*mm, units.Slope(row.slopeZ)*units.MillimetrePerMetre)
		})
	}
}

// What a target asks for comes back from the centreline: the offset at its
// station, and the gap across its diameter, where it opens, as the view names it.
func TestTargetIsWhereItSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		target := dial.Target{
			Station: drawLength(t, "station", -500, 500), High: drawLength(t, "high", -1, 1), ToThree: drawLength(t, "to three", -1, 1),
			Opening:  drawLength(t, "opening", 0.001, 1),
			OpenAt:   units.Clock(rapid.Float64Range(0, 359).Draw(t, "open at")),
			Diameter: drawLength(t, "diameter", 40, 800),
			View:     drawView(t),
		}
		c, err := target.Centreline()
		if err != nil {
			t.Fatal(err)
		}
		w := c.At(target.Station)
		if target.View == align.FromStationary { // its 3 is the library's 9
			w.Horizontal = -w.Horizontal
		}
		checkNear(t, "high", w.Vertical, target.High, 1e-6)
		checkNear(t, "towards 3", w.Horizontal, target.ToThree, 1e-6)
		opening, at, err := align.Coupling{Diameter: target.Diameter}.Gap(c)
		if err != nil {
			t.Fatal(err)
		}
		checkNear(t, "opening", opening, target.Opening, 1e-6)
		off := (target.View.Clock(at) - target.OpenAt).Normal()
		checkNear(t, "open at", min(off, 360-off), 0, 1e-9)
	})
}

// A target given as the readings that the crew is to see, sag included, is solved
// by the method that will read it. In line, a bracket that sags 0.04 mm is to
// show 0, -0.04, -0.08, -0.04; here the movable shaft is to lie 0.10 low as well,
// which a dial carried by the stationary shaft shows as 0, +0.10, +0.20, +0.10.
func TestTargetAsReadings(t *testing.T) {
	rim := dial.Quarters(units.Millimetre/100, 0, 10-4, 20-8, 10-4)
	got := solved(t, dial.RimFace{
		Carrier: align.Stationary,
		Rim:     dial.Rim{Sag: 0.04 * units.Millimetre, Readings: rim},
		Face:    dial.Face{Diameter: 200 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 0, -1, -2, -1)},
	}).Value
	checkLine(t, "vertical", got.Vertical, -0.10*units.Millimetre, 0.02/200)
	checkLine(t, "horizontal", got.Horizontal, 0, 0)
}

// Lengths that may each be given, and of which nobody can reckon with the target: a
// slope that is too steep, or one that is not and leads too far at the station.
func TestTargetBeyondReckoning(t *testing.T) {
	for _, target := range []dial.Target{
		{Opening: 1e9, Diameter: 1e-9},
		{Station: 1e9, Opening: 1e9, Diameter: 1},
	} {
		c, err := target.Centreline()
		if f := units.Faults(err); len(f) != 1 || f[0].Code != units.OutOfRange || f[0].Path != "" || c != (align.Centreline{}) {
			t.Errorf("%+v: got %v, %v", target, c, err)
		}
	}
	if _, err := (dial.Target{Station: 1e5, Opening: 1e9, Diameter: 1}).Centreline(); err != nil {
		t.Errorf("the twin is refused: %v", err)
	}
}
