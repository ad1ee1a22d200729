package flange_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// rounding is a nanometre's share that sums of products over a machine lose: a few
// parts in 1e16 of millimetres.
const rounding = 1e-6 * units.Nanometre

// The plane through the shims has the slope, with the sign of the push, and the
// smallest shim is zero. Twice the area of the triangle of the first three bolts
// weighs what each of their shims says of the plane.
func TestShimsLieInThePlaneOfTheSlope(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, off := drawFlange(t), drawCentreline(t, 5e-3)
		c := mustCorrect(t, f, align.Exact(off))
		shims := thicknesses(c)
		if slices.Min(shims) != 0 {
			t.Errorf("the smallest of %v is not zero", shims)
		}
		sign := 1.0
		if f.Push == flange.TowardsStationary {
			sign = -1
		}
		level := float64(c.Axial) * sign
		for i, b := range f.Bolts {
			angle := float64(b.At) * math.Pi / 180
			y, z := float64(b.Radius)*math.Sin(angle), float64(b.Radius)*math.Cos(angle)
			if f.View == align.FromStationary {
				y = -y
			}
			want := level + sign*(float64(off.Horizontal.Slope)*y+float64(off.Vertical.Slope)*z)
			near(t, "shim", shims[i], units.Length(want), rounding)
		}
	})
}

// Turning all bolts and the slope by the same angle leaves the shims as they are.
func TestTurningAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, off := drawFlange(t), drawCentreline(t, 5e-3)
		f.View = align.FromMovable
		want := mustCorrect(t, f, align.Exact(off))
		turn := rapid.Float64Range(-720, 720).Draw(t, "turn")
		for i := range f.Bolts {
			f.Bolts[i].At += units.Clock(turn)
		}
		sin, cos := math.Sincos(turn * math.Pi / 180)
		y, z := float64(off.Horizontal.Slope), float64(off.Vertical.Slope)
		off.Horizontal.Slope, off.Vertical.Slope = units.Slope(cos*y+sin*z), units.Slope(cos*z-sin*y)
		got := mustCorrect(t, f, align.Exact(off))
		nearAll(t, "shim", thicknesses(got), thicknesses(want), rounding)
		near(t, "axial", got.Axial, want.Axial, rounding)
	})
}

// The same bolts told by a crew at the other end get the same shims, to the bit.
func TestViewExchanged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, off := drawFlange(t), drawCentreline(t, 5e-3)
		f.View = align.FromMovable
		want := mustCorrect(t, f, align.Exact(off))
		f.View = align.FromStationary
		for i := range f.Bolts {
			f.Bolts[i].At = -f.Bolts[i].At
		}
		got := mustCorrect(t, f, align.Exact(off))
		if !slices.Equal(thicknesses(got), thicknesses(want)) || got.Axial != want.Axial || got.Slide.By != want.Slide.By {
			t.Errorf("got %v, want %v", got, want)
		}
	})
}

// With the push the other way round the shims change sign but for what makes the
// smallest zero: what both need at a bolt adds up to the same everywhere, and the
// thickest of one is the thinnest of the other. Slide and tilt stay.
func TestPushExchanged(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, off := drawFlange(t), drawCentreline(t, 5e-3)
		f.Push = flange.AwayFromStationary
		away := mustCorrect(t, f, align.Exact(off))
		f.Push = flange.TowardsStationary
		towards := mustCorrect(t, f, align.Exact(off))
		whole := slices.Max(thicknesses(away))
		for i := range f.Bolts {
			near(t, "both shims", away.Shims[i].Thickness+towards.Shims[i].Thickness, whole, rounding)
		}
		near(t, "axial", away.Axial-towards.Axial, whole, rounding)
		if away.Slide.By != towards.Slide.By || away.TiltShift != towards.TiltShift {
			t.Errorf("slide %v and %v, shift %v and %v", away.Slide.By, towards.Slide.By, away.TiltShift, towards.TiltShift)
		}
	})
}

// The shims of a sum of tilts differ by the sum of the differences.
func TestShimsAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, a, b := drawFlange(t), drawCentreline(t, 5e-3), drawCentreline(t, 5e-3)
		of := func(c align.Centreline) []units.Length {
			shims := thicknesses(mustCorrect(t, f, align.Exact(c)))
			first := shims[0]
			for i := range shims {
				shims[i] -= first
			}
			return shims
		}
		one, two, both := of(a), of(b), of(a.Plus(b))
		for i := range both {
			near(t, "difference to the first", both[i], one[i]+two[i], rounding)
		}
	})
}

// The tilt and the slide together take the offset at the coupling away.
func TestShiftAndSlideMakeUpTheOffset(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, off := drawFlange(t), drawCentreline(t, 5e-3)
		c := mustCorrect(t, f, align.Exact(off))
		near(t, "horizontal", off.Horizontal.Offset+c.TiltShift.Horizontal+c.Slide.By.Horizontal, 0, rounding)
		near(t, "vertical", off.Vertical.Offset+c.TiltShift.Vertical+c.Slide.By.Vertical, 0, rounding)
	})
}

// A slide fits where the spigot ends up within half the clearance: the one way to
// tell is asked for the other by making the clearance just enough and just not.
func TestRabbetIsHalfTheClearance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f, off := drawFlange(t), align.Exact(drawCentreline(t, 5e-3))
		by := mustCorrect(t, f, off).Slide.By
		size := units.Length(math.Hypot(float64(by.Horizontal), float64(by.Vertical)))
		if size < um {
			t.Skip("hardly a slide")
		}
		f.Clearance = 2*size + 2
		if c := mustCorrect(t, f, off); c.Rabbet != flange.Fits || c.Over != 0 {
			t.Errorf("a nanometre to spare: %v, over %v", c.Rabbet, c.Over)
		}
		f.Clearance = 2*size - 4
		if c := mustCorrect(t, f, off); c.Rabbet != flange.DoesNotFit || !(c.Over > 1 && c.Over < 3) {
			t.Errorf("two nanometres short: %v, over %v", c.Rabbet, c.Over)
		}
	})
}
