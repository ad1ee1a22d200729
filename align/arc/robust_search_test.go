package arc_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
)

// At the end of a short arc the fit follows a bad reading: 9 u off leaves a residual
// of a third of that, which reweighting alone takes for sound. Left out in turn, it
// is found, by itself and, where pairs are no longer tried, among many.
func TestRobustAtTheEnds(t *testing.T) {
	const u = 5 * um
	for _, row := range []struct {
		reading int
		off     units.Length
		found   bool
	}{
		{0, 9, true}, {8, 9, true}, {0, -10, true}, {8, -12, true}, {4, 9, true},
		{0, 7, false}, {8, -7, false}, // not worth leaving out: 7 sqrt(1 - leverage) is less than 4.9
	} {
		sets := filled(t, caseA, sensorPair(u, nine(120)...))
		r := mustRobust(t, spoilt(sets, 1, row.reading, row.off*u)...)
		name := fmt.Sprintf("reading %d, %v u", row.reading, float64(row.off))
		out := r.Weights[9+row.reading].Weight == 0
		if out != row.found {
			t.Errorf("%s: weights %+v", name, r.Weights[9:])
		}
		if row.found {
			nearLine(t, name, r.Value, caseA, 1e-3)
		}
	}
}

// Many readings, a cluster of them bad: the cluster is left out one by one.
func TestRobustOfMany(t *testing.T) {
	sets := filled(t, caseA, sensorPair(5*um, within(40, 30, 150)...))
	spoil := []int{0, 1, 2, 21, 39}
	for _, j := range spoil {
		sets[0].Readings[j].Value += 150 * um
	}
	r := mustRobust(t, sets...)
	if down := r.Down(); len(down) != len(spoil) || !foundThese(down, spoil) {
		t.Errorf("down %+v", down)
	}
	nearLine(t, "answer", r.Value, caseA, 1e-3)
}

func foundThese(down []arc.Weight, readings []int) bool {
	for i, w := range down {
		if w.Set != 0 || w.Reading != readings[i] || w.Weight != 0 {
			return false
		}
	}
	return true
}

// hampelCost is the area under Hampel's pull, a broken line through these corners.
func hampelCost(t float64) (area float64) {
	corners := [][2]float64{{0, 0}, {2.5, 2.5}, {3.5, 2.5}, {8.5, 0}}
	t = math.Abs(t)
	for i, b := range corners[1:] {
		a := corners[i]
		if t <= a[0] {
			break
		}
		to := min(t, b[0])
		pull := a[1] + (b[1]-a[1])*(to-a[0])/(b[0]-a[0])
		area += (to - a[0]) * (a[1] + pull) / 2
	}
	return area
}

// The answer is no dearer than any that leaves out one reading and fits the others:
// brute force against the search, where a bad reading at an end makes its neighbour
// look bad, and where angles make some readings better than others.
func TestRobustIsTheCheapest(t *testing.T) {
	const u = 5 * um
	for _, row := range []struct {
		truth align.Centreline
		angle units.Angle
		draws int
	}{{caseA, 0, drawsOf(2000)}, {line(1.5, 0, 0.2, 0), units.Degree, drawsOf(150)}} {
		random := rand.New(rand.NewPCG(11, 3))
		sound := filled(t, row.truth, sensorPair(u, nine(120)...))
		for i := range sound {
			sound[i].U.Angle = row.angle
		}
		for range row.draws {
			sets := noisy(random, sound, u)
			by := units.Length(6+6*random.Float64()) * deviations(sets, row.truth)[0]
			sets = spoilt(sets, 0, 0, by)
			dev := deviations(sets, mustFit(t, sets...).Value)
			r := mustRobust(t, sets...)
			got := 0.0
			for n, w := range r.Weights {
				got += costOf(w.Residual, u, dev[n])
			}
			for j := range 9 {
				if other := costWithout(t, sets, 0, j, u, dev); got > other+1e-6 {
					t.Fatalf("the sum of costs is %.4f, without reading %d it is %.4f: %+v", got, j, other, r.Weights)
				}
			}
		}
	}
}

// costOf is what a residual costs: half its square over that of u as long as it is
// within what is due to its deviation.
func costOf(residual, u, dev units.Length) float64 {
	return float64(dev/u) * float64(dev/u) * hampelCost(float64(residual/dev))
}

// deviations of readings of sensors: with the slope of the harmonic in the angle.
func deviations(sets []align.Set, c align.Centreline) (dev []units.Length) {
	for _, s := range sets {
		w := c.At(s.Probe.Station)
		for _, r := range s.Readings {
			sin, cos := r.At.SinCos()
			slope := float64(w.Horizontal)*cos - float64(w.Vertical)*sin
			dev = append(dev, units.Length(math.Hypot(float64(s.U.Reading), slope*float64(s.U.Angle))))
		}
	}
	return dev
}

// costWithout is the sum of costs at the fit that leaves out one reading.
func costWithout(tb fataler, sets []align.Set, set, reading int, u units.Length, dev []units.Length) (sum float64) {
	own := ownReadings(sets)
	own[set].Readings[reading].U = 1e6 * u
	left, err := align.Residuals(nil, own, mustFit(tb, own...))
	if err != nil {
		tb.Fatalf("Residuals: %v", err)
	}
	for n, l := range left {
		sum += costOf(l.Value, u, dev[n])
	}
	return sum
}
