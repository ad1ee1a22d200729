package tolerance_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

type point struct{ x, y, z float64 }

// about turns p about x, and tipped turns it about y.
func (p point) about(angle float64) point {
	sin, cos := math.Sincos(angle)
	return point{p.x, cos*p.y - sin*p.z, sin*p.y + cos*p.z}
}

func (p point) tipped(angle float64) point {
	sin, cos := math.Sincos(angle)
	return point{cos*p.x + sin*p.z, p.y, -sin*p.x + cos*p.z}
}

// rubbing follows a point on the rim of one hub through a turn, as somebody sees
// it who rides on the other. Both turn at w; the first hub's axis is tipped by an
// angle and set off by e. It returns the least and the largest speed of the point
// against the rider, by differences over a ten-thousandth of a turn. Nothing is
// taken for small. Millimetres and seconds.
func rubbing(r, e, angle, w float64) (least, largest float64) {
	seen := func(t float64) point {
		p := point{y: r}.about(w * t).tipped(angle)
		p.z += e
		return p.about(-w * t)
	}
	const steps = 10_000
	dt := 2 * math.Pi / w / steps
	least = math.Inf(1)
	for i := range steps {
		t := float64(i) * dt
		a, b := seen(t-dt/2), seen(t+dt/2)
		v := math.Sqrt(sq(b.x-a.x)+sq(b.y-a.y)+sq(b.z-a.z)) / dt
		least, largest = min(least, v), max(largest, v)
	}
	return least, largest
}

func sq(x float64) float64 { return x * x }

// The limits of Rubbing, put into the simulation, rub at the sliding speed: an
// offset all round, a slope at its worst, and both at once at the square root of
// 2 of it, which is less than the sum. Differences over a ten-thousandth of a turn
// are short by (2 pi/10^4)^2/24, 2e-8; the slope counts at second order, below
// 1e-4 of its speed at 0.02 and less.
func TestRubbingKinematics(t *testing.T) {
	for _, row := range []struct {
		v        units.LinearSpeed
		speed    units.RotationalSpeed
		diameter units.Length
	}{
		{tolerance.UsualSliding, 3000, 150 * mm},
		{tolerance.UsualSliding, 980, 400 * mm},
		{0.5 * units.InchPerSecond, 3600, 3 * units.Inch},
		{1, 60, 50 * mm},
	} {
		k := align.Coupling{Diameter: row.diameter}
		l, err := tolerance.Rubbing(row.v, row.speed, k)
		if err != nil {
			t.Fatal(err)
		}
		v, r, w := float64(row.v), float64(row.diameter)/2e6, 2*math.Pi*float64(row.speed)/60
		e, angle := float64(l.Offset)/1e6, math.Atan(float64(l.Slope))

		least, largest := rubbing(r, e, 0, w)
		near(t, "offset, all round", least/v, 1, 1e-6)
		near(t, "offset, at its worst", largest/v, 1, 1e-6)
		least, largest = rubbing(r, 0, angle, w)
		near(t, "slope, at its worst", largest/v, 1, 1e-4)
		near(t, "slope, at its least", least/v, 0, 2e-2) // second order only: slope/2 of it
		_, largest = rubbing(r, e, angle, w)
		near(t, "both", largest/v, math.Sqrt2, 2e-2)
		if largest > 2*v {
			t.Errorf("both at once rub at %v, more than the sum", largest)
		}

		k.Span = 500 * mm
		spacer, err := tolerance.Rubbing(row.v, row.speed, k)
		if err != nil {
			t.Fatal(err)
		}
		_, largest = rubbing(r, 0, math.Atan(float64(spacer.Flex)), w)
		near(t, "tilt at a flex plane", largest/v, 1, 1e-4)
		if spacer.Offset != 0 || spacer.Slope != 0 || l.Flex != 0 {
			t.Errorf("limits for the other sort: %+v, %+v", l, spacer)
		}
	}
}

// By hand: 12 mm/s at 3000 rpm, w = 314.159/s: e = 38.1972 um; on 150 mm a slope
// of 0.0381972/75 = 0.509296 mm/m.
func TestRubbingByHand(t *testing.T) {
	l, err := tolerance.Rubbing(12*units.MillimetrePerSecond, 3000, align.Coupling{Diameter: 150 * mm})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "offset", l.Offset, 38.1972*um, 0.00005*um)
	near(t, "slope", l.Slope, 0.509296*mmm, 5e-10)
	if l.PerPlane || l.Source == "" || l.Rule != "sliding at 12 mm/s on a circle of 150 mm at 3000 rpm" {
		t.Errorf("%+v", l)
	}
}

// Twice the speed halves every limit, twice the sliding doubles it, a larger
// circle leaves the offset alone.
func TestRubbingScales(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := units.LinearSpeed(rapid.Float64Range(0.1, 50).Draw(t, "v"))
		s := units.RotationalSpeed(rapid.Float64Range(10, 20_000).Draw(t, "speed"))
		k := align.Coupling{Diameter: units.Length(rapid.Float64Range(20, 2000).Draw(t, "diameter")) * mm}
		get := func(v units.LinearSpeed, s units.RotationalSpeed, k align.Coupling) tolerance.Limits {
			l, err := tolerance.Rubbing(v, s, k)
			if err != nil {
				t.Fatal(err)
			}
			return l
		}
		one := get(v, s, k)
		fast, sliding := get(v, 2*s, k), get(2*v, s, k)
		k.Diameter *= 2
		large := get(v, s, k)
		for _, pair := range [][2]float64{
			{float64(fast.Offset) * 2, float64(one.Offset)}, {float64(fast.Slope) * 2, float64(one.Slope)},
			{float64(sliding.Offset), float64(one.Offset) * 2}, {float64(sliding.Slope), float64(one.Slope) * 2},
			{float64(large.Offset), float64(one.Offset)}, {float64(large.Slope) * 2, float64(one.Slope)},
		} {
			near(t, "scaled", pair[0], pair[1], 4*eps*pair[1])
		}
	})
}
