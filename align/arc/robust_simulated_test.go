package arc_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
)

// nine positions over an arc, ends included; over a full turn one step apart.
func nine(width units.Clock) []units.Clock {
	if width == 360 {
		return shared(9, 20, 360)
	}
	return within(9, 30, width)
}

// ownReadings returns the sets with readings that can be changed.
func ownReadings(sets []align.Set) []align.Set {
	list := slices.Clone(sets)
	for i := range list {
		list[i].Readings = slices.Clone(list[i].Readings)
	}
	return list
}

// noisy returns the sets with normal errors of standard deviation u.
func noisy(random *rand.Rand, sets []align.Set, u units.Length) []align.Set {
	sets = ownReadings(sets)
	for i := range sets {
		for j := range sets[i].Readings {
			sets[i].Readings[j].Value += units.Length(random.NormFloat64()) * u
		}
	}
	return sets
}

// wanted are the numbers that a crew wants to know: the four, and both planes at two
// feet.
func wanted(c align.Centreline, at func(units.Length) align.Vector) [8]float64 {
	p, near, far := plain(c), at(300*mm), at(900*mm)
	return [8]float64{p[0], p[1], p[2], p[3],
		float64(near.Horizontal), float64(near.Vertical), float64(far.Horizontal), float64(far.Vertical)}
}

// tally adds up the squares of errors.
type tally struct{ squares [8]float64 }

func (t *tally) add(found, truth align.Centreline) {
	off := found.Minus(truth)
	for k, e := range wanted(off, off.At) {
		t.squares[k] += e * e
	}
}

// bad is a reading that is off.
type bad struct {
	set, reading int
	by           units.Length
}

// compared draws readings, spoils some, and adds up the errors of both fits.
func compared(tb fataler, draws int, sets []align.Set, u units.Length, spoilt ...bad) (robust, least tally, found int) {
	random := rand.New(rand.NewPCG(17, 4))
	for range draws {
		drawn := noisy(random, sets, u)
		for _, b := range spoilt {
			drawn[b.set].Readings[b.reading].Value += b.by
		}
		r, err := arc.FitRobust(drawn...)
		if err != nil {
			tb.Fatalf("FitRobust: %v", err)
		}
		robust.add(r.Value, caseA)
		least.add(mustFit(tb, drawn...).Value, caseA)
		if foundAll(r, spoilt) {
			found++
		}
	}
	return robust, least, found
}

// foundAll tells whether just the spoilt readings are left out.
func foundAll(r arc.Robust, spoilt []bad) bool {
	out := 0
	for _, w := range r.Weights {
		if w.Weight > 0.01 {
			continue
		}
		out++
		if !slices.ContainsFunc(spoilt, func(b bad) bool { return b.set == w.Set && b.reading == w.Reading }) {
			return false
		}
	}
	return out == len(spoilt)
}

func drawsOf(many int) int {
	if testing.Short() {
		return many / 20
	}
	return many
}

// One reading that is bad by 20 standard deviations, anywhere among nine, costs
// less than the double of the clean fit's uncertainty in each of the numbers wanted.
// Without robustness the same reading costs more: else this would show nothing.
func TestOneBadReading(t *testing.T) {
	const u = 5 * um
	for _, width := range []units.Clock{120, 180, 360} {
		sets := filled(t, caseA, sensorPair(u, nine(width)...))
		cov := mustFit(t, sets...).Cov
		clean := wanted(cov.Standard(), cov.At)
		for place := range 9 {
			t.Run(fmt.Sprintf("%.0f degrees, reading %d", float64(width), place), func(t *testing.T) {
				t.Parallel()
				draws := drawsOf(1000)
				robust, least, found := compared(t, draws, sets, u, bad{place % 2, place, 20 * u})
				worst, spoilt := 0.0, 0.0
				for k := range clean {
					worst = max(worst, math.Sqrt(robust.squares[k]/float64(draws))/clean[k])
					spoilt = max(spoilt, math.Sqrt(least.squares[k]/float64(draws))/clean[k])
				}
				t.Logf("worst %.2f u, least squares %.1f u, found in %d of %d", worst, spoilt, found, draws)
				if worst > 2 {
					t.Errorf("root mean square error is %.2f u", worst)
				}
				if spoilt < 3 {
					t.Errorf("least squares is off by no more than %.2f u: the reading is not bad", spoilt)
				}
				if found < draws*99/100 {
					t.Errorf("the bad reading alone was left out in %d of %d draws", found, draws)
				}
			})
		}
	}
}

// On sound readings the variance of least squares is at least 95 % of the robust
// one, in each of the numbers wanted, whether uncertainties are stated or not.
func TestEfficiency(t *testing.T) {
	const u = 5 * um
	rows := []struct {
		width  units.Clock
		stated units.Length
		want   float64
	}{
		{120, u, 0.95}, {180, u, 0.95}, {360, u, 0.95},
		{120, 0, 0.95}, {360, 0, 0.95},
	}
	for _, row := range rows {
		t.Run(fmt.Sprintf("%.0f degrees, stated %v", float64(row.width), row.stated), func(t *testing.T) {
			t.Parallel()
			sets := filled(t, caseA, sensorPair(row.stated, nine(row.width)...))
			robust, least, found := compared(t, max(600, drawsOf(2000)), sets, u)
			worst := math.Inf(1)
			for k := range robust.squares {
				worst = min(worst, least.squares[k]/robust.squares[k])
			}
			t.Logf("efficiency %.3f, nothing left out in %d", worst, found)
			if !(worst >= row.want) {
				t.Errorf("efficiency %.3f, want %.2f", worst, row.want)
			}
		})
	}
}

// Without a stated uncertainty one bad reading is found all the same.
func TestOneBadReadingUnstated(t *testing.T) {
	const u = 5 * um
	for _, width := range []units.Clock{120, 360} {
		sets := filled(t, caseA, sensorPair(0, nine(width)...))
		cov := mustFit(t, filled(t, caseA, sensorPair(u, nine(width)...))...).Cov
		clean := wanted(cov.Standard(), cov.At)
		for _, place := range []int{0, 1, 4, 8} {
			t.Run(fmt.Sprintf("%.0f degrees, reading %d", float64(width), place), func(t *testing.T) {
				t.Parallel()
				draws := drawsOf(400)
				robust, _, found := compared(t, draws, sets, u, bad{0, place, 20 * u})
				worst := 0.0
				for k := range clean {
					worst = max(worst, math.Sqrt(robust.squares[k]/float64(draws))/clean[k])
				}
				t.Logf("worst %.2f u, found in %d of %d", worst, found, draws)
				if worst > 2 {
					t.Errorf("root mean square error is %.2f u", worst)
				}
			})
		}
	}
}

// Two bad readings are found, also where they hold the fit between them: two at the
// ends that err alike look like a sound sweep with a bad middle. That is what leaving
// out two at a time is for; one at a time finds these in one draw of ten.
func TestTwoBadReadings(t *testing.T) {
	const u = 5 * um
	rows := []struct {
		name   string
		width  units.Clock
		spoilt [2]bad
		want   float64 // share of draws in which both and no other are left out
	}{
		{"one in each probe", 120, [2]bad{{0, 0, 20 * u}, {1, 8, 20 * u}}, 0.98},
		{"both ends", 180, [2]bad{{0, 0, 20 * u}, {0, 8, 20 * u}}, 0.98},
		{"both ends against each other", 120, [2]bad{{0, 0, 20 * u}, {0, 8, -20 * u}}, 0.98},
		{"an end and the middle", 120, [2]bad{{0, 0, 20 * u}, {0, 4, 20 * u}}, 0.98},
		{"neighbours in the middle", 120, [2]bad{{0, 4, 20 * u}, {0, 5, 20 * u}}, 0.98},
		{"neighbours at an end, alike", 120, [2]bad{{0, 0, 20 * u}, {0, 1, 20 * u}}, 0.98},
		{"neighbours at an end, against each other", 120, [2]bad{{0, 0, 20 * u}, {0, 1, -20 * u}}, 0.98},
		{"neighbours on a full turn", 360, [2]bad{{0, 0, 20 * u}, {0, 1, 20 * u}}, 0.98},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			sets := filled(t, caseA, sensorPair(u, nine(row.width)...))
			draws := drawsOf(200)
			_, _, found := compared(t, draws, sets, u, row.spoilt[:]...)
			share := float64(found) / float64(draws)
			t.Logf("both found in %.3f", share)
			if share < row.want {
				t.Errorf("both found in %.3f, want %.2f", share, row.want)
			}
		})
	}
}

// Coverage: the standard uncertainty that comes with the answer is that of its
// errors, with some percent for choosing the weights.
func TestRobustUncertaintyHolds(t *testing.T) {
	const u = 5 * um
	for _, stated := range []units.Length{u, 0} {
		t.Run(fmt.Sprintf("stated %v", stated), func(t *testing.T) {
			t.Parallel()
			sets := filled(t, caseA, sensorPair(stated, nine(180)...))
			random := rand.New(rand.NewPCG(3, 9))
			draws := drawsOf(1000)
			var errors, claims [8]float64
			for range draws {
				drawn := noisy(random, sets, u)
				drawn[0].Readings[8].Value -= 20 * u
				r, err := arc.FitRobust(drawn...)
				if err != nil {
					t.Fatal(err)
				}
				off := r.Value.Minus(caseA)
				for k, e := range wanted(off, off.At) {
					errors[k] += e * e
				}
				for k, s := range wanted(r.Cov.Standard(), r.Cov.At) {
					claims[k] += s * s
				}
			}
			for k := range errors {
				ratio := errors[k] / claims[k]
				t.Logf("%d: %.3f", k, ratio)
				if !(ratio > 0.6 && ratio < 1.6) {
					t.Errorf("number %d: variance of errors is %.2f of what was claimed", k, ratio)
				}
			}
		})
	}
}
