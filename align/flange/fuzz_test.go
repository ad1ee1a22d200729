package flange_test

import (
	"encoding/json"
	"slices"
	"strconv"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/units"
)

// tape makes an input out of bytes.
type tape struct{ fuzzed.Tape }

// number is mostly a few steps, and at times any float64: only the former get past
// the first checks.
func (t *tape) number(step float64) float64 {
	if t.Byte()%16 != 15 {
		return float64(int8(t.Byte())) * step
	}
	return t.Float64()
}

func (t *tape) length(step units.Length) units.Length { return units.Length(t.number(float64(step))) }

func (t *tape) flange() flange.Flange {
	f := flange.Flange{Face: t.length(10 * mm), Push: flange.Push(t.Byte() % 4), View: align.View(t.Byte() % 3)}
	for i := range t.Byte() % 8 {
		f.Bolts = append(f.Bolts, flange.Bolt{Name: strconv.Itoa(int(i)), Radius: t.length(2 * mm), At: units.Clock(t.number(15))})
	}
	f.Clearance, f.UFace = t.length(20*um), t.length(mm)
	f.Spigot = align.Vector{Horizontal: t.length(um), Vertical: t.length(um)}
	return f
}

func (t *tape) estimate() align.Estimate {
	plane := func() align.Line { return align.Line{Offset: t.length(10 * um), Slope: units.Slope(t.number(1e-4))} }
	e := align.Exact(align.Centreline{Horizontal: plane(), Vertical: plane()})
	e.Cov.Basis = align.Basis(t.Byte() % 5)
	return e
}

// seeds are flanges that are answered for: four bolts with a rabbet, and three seen
// from the other end, with nothing known of the uncertainty.
var seeds = [][]byte{
	{0, 40, 1, 0, 4, 0, 100, 0, 0, 0, 100, 0, 6, 0, 100, 0, 12, 0, 100, 0, 18, 0, 50, 0, 1, 0, 9, 0, 9, 0, 7, 0, 10, 0, 3, 0, 4, 0},
	{0, 200, 2, 1, 3, 0, 100, 0, 0, 0, 100, 0, 8, 0, 100, 0, 16, 0, 0, 0, 0, 0, 0, 0, 0, 0, 7, 0, 120, 0, 3, 0, 4, 3},
}

// Whatever is asked, Correct answers with numbers that hang together, or refuses
// with faults.
func FuzzCorrect(f *testing.F) {
	f.Add([]byte{})
	for _, raw := range seeds {
		f.Add(raw)
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		tape := tape{raw}
		fl := tape.flange()
		off := tape.estimate()
		c, err := fl.Correct(off)
		if err != nil {
			if len(units.Faults(err)) == 0 {
				t.Fatalf("refused without a fault: %v", err)
			}
			return
		}
		if fl.Validate() != nil || off.Validate() != nil {
			t.Fatal("answered for what Validate refuses")
		}
		if shims := thicknesses(c); len(shims) != len(fl.Bolts) || slices.Min(shims) != 0 {
			t.Fatalf("shims %v", shims)
		}
		if (c.Rabbet == flange.DoesNotFit) != (c.Over > 0) || (c.Rabbet == flange.NotStated) != (fl.Clearance == 0) {
			t.Fatalf("rabbet %v, over %v, clearance %v", c.Rabbet, c.Over, fl.Clearance)
		}
		if c.Text(align.Style{}) == "" {
			t.Fatal("no words")
		}
		if _, err := json.Marshal(c); err != nil {
			t.Fatalf("%+v is not finite: %v", c, err)
		}
	})
}

// Seeds that were refused would leave the fuzzer on this side of the checks.
func TestSeedsAreSound(t *testing.T) {
	for _, raw := range seeds {
		tape := tape{raw}
		f := tape.flange()
		mustCorrect(t, f, tape.estimate())
	}
}
