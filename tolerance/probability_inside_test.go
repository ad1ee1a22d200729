package tolerance

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A bound on the work ends the cutting where it is reached, and what was added up
// till then is not thrown away.
func TestCutsAreBounded(t *testing.T) {
	d := disc{m: [2]float64{-0.67, 1.035}, s: [2]float64{1.0 / 3, 1.0 / 9}} // takes more than twenty
	a := arc{&d, 0, math.Pi / 2}
	whole, left := a.gauss(-math.Pi/2, 0), mostCuts
	want := a.refined(-math.Pi/2, 0, whole, &left)
	if left > mostCuts-10 {
		t.Fatalf("%d cuts are too few to stop between them", mostCuts-left)
	}
	few := 3
	if got := a.refined(-math.Pi/2, 0, whole, &few); few != 0 || math.Abs(got-want) > 1e-3 {
		t.Errorf("%d cuts left, %g instead of %g", few, got, want)
	}
}

// byDepth is another quadrature, for the normal and a mean at either end of the second
// axis: over the depth t of the chords below that end, with t = v^2, so that the length of
// a chord, 2 v sqrt(2 - t), is smooth; the density of t times the probability to lie on
// the chord. Derived here.
func (d *disc) byDepth(points int) float64 {
	above := func(x float64) float64 { return math.Erfc(x/math.Sqrt2) / 2 }
	mean, seen := 1-math.Abs(d.m[1]), 9*d.s[1]
	from, to := math.Sqrt(max(0, mean-seen)), math.Sqrt(max(0, min(2, mean+seen)))
	step, sum := (to-from)/float64(points), 0.0
	for i := range points {
		v := from + step*(float64(i)+0.5)
		half := v * math.Sqrt(2-v*v)
		u := (v*v - mean) / d.s[1]
		density := math.Exp(-u*u/2) / (d.s[1] * math.Sqrt(2*math.Pi)) * 2 * v
		sum += density * (above((-half-d.m[0])/d.s[0]) - above((half-d.m[0])/d.s[0]))
	}
	return sum * step
}

// agrees is false where byDepth says something else; known, where it can tell.
func (d *disc) agrees() (ok, known bool) {
	want := d.byDepth(4000)
	return math.Abs(d.probability()-want) < 1e-9, math.Abs(d.byDepth(2900)-want) < 1e-10
}

// A long thin distribution lies along the circle where its mean is next to it: nearly all
// directions touch the disc or miss it by little. Widths down to a billionth of the limit,
// and means as close.
func TestProbabilityAlongTheLimit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		tens := func(low, high float64, name string) float64 {
			return math.Pow(10, rapid.Float64Range(low, high).Draw(t, name))
		}
		width := tens(-9, -2, "width")
		length := tens(max(-6, math.Log10(width)), min(3, math.Log10(width)+8), "length")
		within := rapid.Float64Range(-3, 3)
		end := rapid.SampledFrom([]float64{1, -1}).Draw(t, "end")
		d := disc{
			m: [2]float64{length * within.Draw(t, "along"), end * (1 + width*within.Draw(t, "beyond")*tens(-4, 0, "share"))},
			s: [2]float64{length, width},
		}
		ok, known := d.agrees()
		if !known {
			t.Skip("4000 chords are too few")
		}
		if !ok {
			t.Errorf("%+v: got %.12g, want %.12g", d, d.probability(), d.byDepth(4000))
		}
	})
}

// The longest of them see the whole disc in two slivers, which are at a right angle to
// their length; of the narrowest only the last digits of the mean tell the depth.
func TestProbabilityOfLongestAndNarrowest(t *testing.T) {
	for _, s := range [][2]float64{{697, 8.473e-6}, {126, 1.44e-6}, {266, 5.032e-5}, {115.7, 1.245e-5}, {247.5, 6.463e-5}, {1.26e-3, 1e-9}, {1e-4, 3e-9}} {
		for _, depth := range []float64{-1e-10, -1e-12, 0, 1e-12, 1e-10, 1e-9, 1e-6} {
			for _, end := range []float64{1, -1} {
				for _, along := range []float64{0, 1e-8, -1e-8, 0.5, -0.5} {
					d := disc{m: [2]float64{along, end * (1 - depth)}, s: s}
					if ok, known := d.agrees(); !ok || !known {
						t.Errorf("%+v: got %.12g, want %.12g", d, d.probability(), d.byDepth(4000))
					}
				}
			}
		}
	}
}

// A thin distribution through the centre is one along a diameter: for Student's t with
// one degree of freedom, that of Cauchy, an arc tangent.
func TestProbabilityThroughTheCentre(t *testing.T) {
	d := disc{m: [2]float64{2.4837468391326465e-16, 5.568916106481148e-08}, s: [2]float64{1.161077612516352, 4.416761184468123e-06}, dof: 1}
	if got, want := d.probability(), 2/math.Pi*math.Atan(1/d.s[0]); math.Abs(got-want) > 1e-9 {
		t.Errorf("got %.12g, want %.12g", got, want)
	}
}

// Ten million limits away all of the disc is as far, and a thin distribution cuts it in
// one chord: its length times the density there.
func TestProbabilityFromFarAway(t *testing.T) {
	d := disc{m: [2]float64{1e7, 0.3}, s: [2]float64{1e7, 1e-6}}
	want := 2 * math.Sqrt(1-0.3*0.3) * math.Exp(-0.5) / (d.s[0] * math.Sqrt(2*math.Pi))
	if got := d.probability(); math.Abs(got/want-1) > 1e-6 {
		t.Errorf("got %.9g, want %.9g", got, want)
	}
}
