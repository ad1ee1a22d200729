package align_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// Case A on a spacer of 800 mm, derived here from the spacer as a straight line
// between its flex planes.
func TestFlexTiltsOfCaseA(t *testing.T) {
	k := align.Coupling{Span: 800 * mm}
	stationary, movable, err := k.FlexTilts(caseA)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "stationary, horizontal", stationary.Horizontal, +0.35e-3, 1e-18)
	near(t, "stationary, vertical", stationary.Vertical, -0.60e-3, 1e-18)
	near(t, "movable, horizontal", movable.Horizontal, +0.05e-3, 1e-18)
	near(t, "movable, vertical", movable.Vertical, -0.10e-3, 1e-18)
}

// Face-face: near-side dials on the two joints of the spacer read
// alpha = (F12 - F6)/D vertically and (F3 - F9)/D horizontally.
func TestFlexTiltsAreWhatSpacerFacesRead(t *testing.T) {
	k := align.Coupling{Span: 800 * mm}
	stationary, movable, _ := k.FlexTilts(caseA)
	for _, joint := range []struct {
		of   align.Shaft
		want align.Tilt
	}{{align.Stationary, stationary}, {align.Movable, movable}} {
		for kind, k := range map[align.Kind]float64{align.SpacerFace: +1, align.SpacerFarFace: -1} {
			const d = 150.0
			probe := align.Probe{Kind: kind, Carrier: joint.of, Radius: length(d / 2), Span: 800 * mm}
			f := read(t, caseA, []align.Set{{Probe: probe}}, quarters...)[0].Readings
			near(t, "vertical", k*inMM(f[0].Value-f[2].Value)/d, float64(joint.want.Vertical), 1e-17)
			near(t, "horizontal", k*inMM(f[1].Value-f[3].Value)/d, float64(joint.want.Horizontal), 1e-17)
		}
	}
}

func TestFlexTiltsThereAndBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawLine(t)
		span := rapid.Float64Range(50, 4000).Draw(t, "span")
		k := align.Coupling{Span: length(span)}
		stationary, movable, err := k.FlexTilts(c)
		if err != nil {
			t.Fatal(err)
		}
		// alpha_s = w(x_2)/L and alpha_m = -w(x_1)/L
		w2, w1 := c.At(k.Span/2), c.At(-k.Span/2)
		scale := 4 * eps * (1/span + 2e-3)
		near(t, "stationary, horizontal", float64(stationary.Horizontal), inMM(w2.Horizontal)/span, scale)
		near(t, "stationary, vertical", float64(stationary.Vertical), inMM(w2.Vertical)/span, scale)
		near(t, "movable, horizontal", float64(movable.Horizontal), -inMM(w1.Horizontal)/span, scale)
		near(t, "movable, vertical", float64(movable.Vertical), -inMM(w1.Vertical)/span, scale)

		back, err := k.FromFlexTilts(stationary, movable)
		if err != nil {
			t.Fatal(err)
		}
		slope := scale
		nearLine(t, "back", back, c, [4]float64{scale * span, slope, scale * span, slope})
	})
}

// Positive vertical slope opens at 6, positive horizontal slope at 9.
func TestGapOpensAcross(t *testing.T) {
	k := align.Coupling{Diameter: 150 * mm}
	rows := []struct {
		name    string
		c       align.Centreline
		opening units.Length
		at      units.Clock
	}{
		{"climbs away", line(0, 0, 0, 1e-3), 150 * um, units.Six},
		{"falls away", line(0, 0, 0, -1e-3), 150 * um, units.Twelve},
		{"runs towards 3", line(0, 1e-3, 0, 0), 150 * um, units.Nine},
		{"runs towards 9", line(0, -1e-3, 0, 0), 150 * um, units.Three},
		{"both planes as a vector", line(0, 3e-4, 0, 4e-4), 75 * um, 180 + 36.86989764584402}, // 3-4-5 triangle
		{"offset alone opens nothing", line(0.3, 0, -0.2, 0), 0, units.Twelve},
	}
	for _, row := range rows {
		opening, at, err := k.Gap(row.c)
		if err != nil {
			t.Errorf("%s: %v", row.name, err)
		}
		near(t, row.name, opening, row.opening, 1e-9)
		near(t, row.name, at, row.at, 1e-12)
	}
}

// A feeler at the widest place reads the opening more than one across from it.
func TestGapIsWhatAFeelerReads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawLine(t)
		k := align.Coupling{Diameter: length(rapid.Float64Range(40, 900).Draw(t, "diameter"))}
		opening, at, err := k.Gap(c)
		if err != nil {
			t.Fatal(err)
		}
		feeler := align.Set{Probe: align.Probe{Kind: align.Gap, Radius: k.Diameter / 2}}
		r := read(t, c, []align.Set{feeler}, at, at.Opposite())[0].Readings
		near(t, "opening", opening, r[0].Value-r[1].Value, 1e-8) // rounding of 2 mm in nm is 1e-10

		tilt, err := align.SlopeFromGap(opening, at, k.Diameter)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "back, horizontal", tilt.Horizontal, c.Tilt().Horizontal, 1e-17)
		near(t, "back, vertical", tilt.Vertical, c.Tilt().Vertical, 1e-17)
		closed, _ := align.SlopeFromGap(-opening, at.Opposite(), k.Diameter)
		near(t, "closed across", closed.Vertical, tilt.Vertical, 1e-17)
	})
}

// Angular step alone, a compressor builder's start-up manual, p. 213 (read):
// shim = bolt-to-bolt/face diameter * gap difference = 30/5 * 0.012 in = 0.072
// in. A gap wider at the top is a slope that falls away, so the far feet go up.
func TestAngularStepAlone(t *testing.T) {
	tilt, err := align.SlopeFromGap(12*mil, units.Twelve, 5*units.Inch)
	if err != nil {
		t.Fatal(err)
	}
	if tilt.Vertical >= 0 || tilt.Horizontal != 0 {
		t.Errorf("tilt %+v, want one that falls away and nothing sideways", tilt)
	}
	c := align.Centreline{Vertical: align.Line{Slope: tilt.Vertical}}
	moves, err := align.Exact(c).Corrections(align.Foot{Name: "front", X: 10 * units.Inch}, align.Foot{Name: "rear", X: 40 * units.Inch})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "rear less front", moves[1].By.Vertical-moves[0].By.Vertical, 72*mil, 1e-9)
}
