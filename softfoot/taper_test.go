package softfoot_test

import (
	"math"
	"testing"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// Gaps that lie in a plane: the taper is that plane, whatever corners they were
// taken at, and the lift is the smallest gap.
func TestTaperOfPlane(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		along, across := rapid.IntRange(-8, 8).Draw(t, "along, um/mm"), rapid.IntRange(-8, 8).Draw(t, "across, um/mm")
		var corners []softfoot.Gap
		count := rapid.IntRange(3, 8).Draw(t, "corners")
		smallest, largest := units.Length(math.Inf(1)), units.Length(0)
		for i := range count {
			angle := 2 * math.Pi * (float64(i) + float64(rapid.IntRange(-20, 20).Draw(t, "turn"))/100) / float64(count)
			x, y := math.Round(40*math.Cos(angle))+7, math.Round(30*math.Sin(angle))-5
			gap := units.Length(1000+x*float64(along)+y*float64(across)) * um
			corners = append(corners, softfoot.Gap{X: units.Length(x) * mm, Y: units.Length(y) * mm, Gap: gap})
			smallest, largest = min(smallest, gap), max(largest, gap)
		}
		s := rectangle(um, 0, 0, 0, 0)
		s.Feet[2].Gaps = corners
		found := judge(t, s, softfoot.Limits{}).Feet[2]
		if found.Lift != smallest {
			t.Errorf("lift %v, want %v", found.Lift, smallest)
		}
		rise := largest - smallest
		if rise <= softfoot.DefaultTaper {
			if found.Taper != nil {
				t.Errorf("a rise of %v: %+v", rise, found.Taper)
			}
			return
		}
		if found.Taper == nil {
			t.Fatalf("a rise of %v: no taper", rise)
		}
		if found.Taper.Rise != rise ||
			math.Abs(float64(found.Taper.Along)-float64(along)/1000) > 1e-12 ||
			math.Abs(float64(found.Taper.Across)-float64(across)/1000) > 1e-12 {
			t.Errorf("got %+v, want rise %v, along %d, across %d um/mm", *found.Taper, rise, along, across)
		}
	})
}

// Which way a gap grows, by hand: 120 um over 60 mm along the shaft, over 80 mm
// across it. Four corners that lie in no plane have the slopes of least squares:
// one corner of four open by g has half the slope of a side open by g.
func TestTaperByHand(t *testing.T) {
	for _, row := range []struct {
		name          string
		gaps          []float64
		along, across units.Slope // 1 um/mm
	}{
		{"open at the far side", []float64{0, 0, 120, 120}, 2, 0},
		{"open at the near side", []float64{120, 120, 0, 0}, -2, 0},
		{"open towards 3 o'clock", []float64{0, 120, 0, 120}, 0, 1.5},
		{"open towards 9 o'clock", []float64{120, 0, 120, 0}, 0, -1.5},
		{"one corner open, far 3", []float64{0, 0, 0, 120}, 1, 0.75},
		{"two corners across from each other", []float64{120, 0, 0, 120}, 0, 0},
	} {
		s := felt(rectangle(um, 0, 0, 0, 0), 1, row.gaps...)
		found := judge(t, s, softfoot.Limits{})
		got := found.Feet[1].Taper
		if got == nil || got.Rise != 120*um ||
			math.Abs(float64(got.Along-row.along/1000)) > 1e-15 || math.Abs(float64(got.Across-row.across/1000)) > 1e-15 {
			t.Errorf("%s: got %+v, want along %v, across %v", row.name, got, row.along/1000, row.across/1000)
		}
		if len(found.Advice) != 1 || len(found.Advice[0].Shims) != 1 {
			t.Errorf("%s: got %+v", row.name, found.Advice)
			continue
		}
		shim := found.Advice[0].Shims[0]
		if shim.Foot != "near 9" || shim.Flat != 0 || shim.Stepped == nil || *shim.Stepped != *got {
			t.Errorf("%s: got %+v", row.name, shim)
		}
		if (found.Advice[0].Shift != softfoot.Shift{}) || found.Advice[0].Left != 0 {
			t.Errorf("%s: got %+v: a stepped shim fills a gap and lifts nothing", row.name, found.Advice[0])
		}
	}
}
