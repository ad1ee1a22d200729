package align_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// shares lists what the readings of a set have in common: how it is stated, how
// a set is changed by an error h of it, and the step of the difference.
var shares = []struct {
	name  string
	used  func(align.Kind) bool
	state func(*align.Uncertainty, float64)
	err   func(*align.Set, float64)
	u     float64 // millimetres or radians
	step  float64
}{
	{
		"station", func(k align.Kind) bool { _, station, _, _, _, _ := needs(k); return station },
		func(u *align.Uncertainty, v float64) { u.Station = length(v) },
		func(s *align.Set, h float64) { s.Probe.Station += length(h) }, 1.5, 0.02,
	},
	{
		"radius", func(k align.Kind) bool { _, _, radius, _, _, _ := needs(k); return radius },
		func(u *align.Uncertainty, v float64) { u.Radius = length(v) },
		func(s *align.Set, h float64) { s.Probe.Radius += length(h) }, 0.8, 0.1,
	},
	{
		"sag", func(k align.Kind) bool { _, _, _, _, _, sag := needs(k); return sag },
		func(u *align.Uncertainty, v float64) { u.Sag = length(v) },
		func(s *align.Set, h float64) { s.Sag += length(h) }, 0.01, 0.01,
	},
	{
		"clock", func(align.Kind) bool { return true },
		func(u *align.Uncertainty, v float64) { u.Clock = units.Angle(v) },
		func(s *align.Set, h float64) {
			for i := range s.Readings {
				s.Readings[i].At += units.Clock(h * 180 / math.Pi)
			}
		}, 0.02, 0.001,
	},
}

// derivative is that of the fit with respect to an error of one set, by
// differences of fourth order: the set is wrong by h and 2h one way, then the
// other. Rims a few millimetres apart are the hardest: a step of 0.02 mm leaves
// (0.02/2)^4 there.
func derivative(tb fataler, sets []align.Set, set int, wrong func(*align.Set, float64), h float64) [4]float64 {
	tb.Helper()
	return derivativeOfAll(tb, sets, []int{set}, wrong, h)
}

// derivativeOfAll is that with respect to an error that several sets share.
func derivativeOfAll(tb fataler, sets []align.Set, which []int, wrong func(*align.Set, float64), h float64) (d [4]float64) {
	tb.Helper()
	fit := func(h float64) [4]float64 {
		changed := each(sets, func(*align.Set) {})
		for _, set := range which {
			wrong(&changed[set], h)
		}
		return plain(mustFit(tb, changed...).Value)
	}
	plus, minus, plus2, minus2 := fit(h), fit(-h), fit(2*h), fit(-2*h)
	for i := range d {
		d[i] = (8*(plus[i]-minus[i]) - (plus2[i] - minus2[i])) / (12 * h)
	}
	return d
}

// The important one: what a fit says of a shared uncertainty against changing
// the input by hand and fitting again, for every kind, alone and all together.
// Two sets give four numbers for four, so that whatever their readings miss pulls
// at nothing; TestSharedUncertaintiesAdd has more.
func TestSharedUncertaintyByDifferences(t *testing.T) {
	for _, kind := range everyKind {
		for _, share := range shares {
			if !share.used(kind) {
				continue
			}
			t.Run(kind.String()+"/"+share.name, func(t *testing.T) {
				rapid.Check(t, func(t *rapid.T) {
					sets := drawShared(t, kind)
					plainly := matrix(mustFit(t, sets...).Cov)
					d := derivative(t, sets, 0, share.err, share.step)
					doubtful := each(sets, func(*align.Set) {})
					share.state(&doubtful[0].U, share.u)
					f := mustFit(t, doubtful...)
					got, want := matrix(f.Cov), plainly
					for i := range want {
						for j := range want {
							want[i][j] += share.u * share.u * d[i] * d[j]
						}
					}
					nearMatrix(t, "covariance", got, want, 1e-6)
					if f.Cov.Basis != align.Stated {
						t.Errorf("basis %v, want stated", f.Cov.Basis)
					}
				})
			})
		}
	}
}

// drawShared draws a sound scene whose first set is of the kind, with sag enough
// to be changed both ways, and readings that are good to so little that what
// they share is seen.
func drawShared(t *rapid.T, kind align.Kind) []align.Set {
	truth := drawLine(t)
	first := drawSet(t, kind)
	if _, _, _, _, _, sag := needs(kind); sag {
		first.Sag = length(rapid.Float64Range(0.05, 0.3).Draw(t, "sag enough"))
	}
	if first.Probe.Radius != 0 {
		first.Probe.Radius = length(rapid.Float64Range(50, 300).Draw(t, "radius enough"))
	}
	second := drawSet(t, rapid.SampledFrom(everyKind).Draw(t, "other kind"))
	sets := []align.Set{first, second}
	if !independent(sets) {
		sets[1].Probe, sets[1].Sag = complement(first.Probe), 0
	}
	for i := range sets {
		sets[i].Readings = drawReadings(t, sets[i], truth)
	}
	return state(sets, 1*um)
}

// All of them at once, in every set, on sets that also have a set between them
// to share the work, and that contradict one another by up to a tenth of what they read: the
// variances add.
func TestSharedUncertaintiesAdd(t *testing.T) {
	sets := each([]align.Set{
		rim(align.Stationary, 40), rim(align.Movable, -50), face(align.Movable, 75),
		{Probe: align.Probe{Kind: align.SpacerFace, Carrier: align.Movable, Radius: 90 * mm, Span: 500 * mm}, View: align.FromStationary},
	}, func(s *align.Set) { s.Sag = 60 * um })
	sets = state(read(t, caseA, sets, even(5, 20, 250)...), 1*um)
	for n := range sets {
		for i := range sets[n].Readings {
			sets[n].Readings[i].Value += length(0.02 * math.Sin(float64(5*n+3*i)))
		}
	}
	want := matrix(mustFit(t, sets...).Cov)
	doubtful := each(sets, func(*align.Set) {})
	for n := range sets {
		for _, share := range shares {
			if !share.used(sets[n].Probe.Kind) {
				continue
			}
			share.state(&doubtful[n].U, share.u)
			d := derivative(t, sets, n, share.err, share.step)
			for i := range want {
				for j := range want {
					want[i][j] += share.u * share.u * d[i] * d[j]
				}
			}
		}
	}
	nearMatrix(t, "covariance", matrix(mustFit(t, doubtful...).Cov), want, 1e-6)
}

// Repeats average the readings' noise out and leave what they share.
func TestSharedUncertaintyDoesNotAverageOut(t *testing.T) {
	const times = 400
	one := state(read(t, caseA, reverse(), quarters...), length(sigma))
	one = each(one, func(s *align.Set) { s.U.Sag = 8 * um })
	many := each(one, func(s *align.Set) {
		single := s.Readings
		for range times - 1 {
			s.Readings = append(s.Readings, single...)
		}
	})
	_, u1 := mustFit(t, one...).At(40 * mm)
	_, un := mustFit(t, many...).At(40 * mm)
	near(t, "once", inMM(u1.Vertical), math.Hypot(sigma/math.Sqrt2, 0.008), 1e-14)
	near(t, "four hundred times", inMM(un.Vertical), math.Hypot(sigma/math.Sqrt(2*times), 0.008), 1e-14)
	near(t, "sideways, where sag does nothing", inMM(un.Horizontal), sigma/math.Sqrt(2*times), 1e-14)
}

// A clock bias delta (true = read + delta) moves (w_y, w_z) by (-w_z delta, +w_y
// delta): a fit of readings that stand elsewhere than noted, and the
// uncertainty that follows.
func TestClockBias(t *testing.T) {
	const delta = 0.004
	x := length(40)
	w := caseA.At(x)
	sets := read(t, caseA, reverse(), even(8, 0, 360)...)
	noted := each(sets, func(s *align.Set) {
		for i := range s.Readings { // noted = true - delta
			s.Readings[i].At -= units.Clock(delta * 180 / math.Pi)
		}
	})
	moved := mustFit(t, noted...).Value.At(x)
	second := units.Length(delta*delta) * w.Size()
	near(t, "horizontal", moved.Horizontal-w.Horizontal, -w.Vertical*delta, second)
	near(t, "vertical", moved.Vertical-w.Vertical, w.Horizontal*delta, second)

	doubtful := each(state(sets, 1), func(s *align.Set) { s.U.Clock = delta }) // readings good to 1 nm
	_, u := mustFit(t, doubtful...).At(x)
	near(t, "u, horizontal", u.Horizontal, units.Length(math.Abs(float64(w.Vertical*delta))), 1)
	near(t, "u, vertical", u.Vertical, units.Length(math.Abs(float64(w.Horizontal*delta))), 1)
}

// The radius of a rim or a bore has no part in the linear fit, so its
// uncertainty has none.
func TestRadiusOfARimHasNoPart(t *testing.T) {
	for _, kind := range []align.Kind{align.Rim, align.Bore} {
		sets := state(read(t, caseA, reverse(), quarters...), 5*um)
		sets = each(sets, func(s *align.Set) { s.Probe.Kind, s.Probe.Radius = kind, 75*mm })
		want := matrix(mustFit(t, sets...).Cov)
		doubtful := each(sets, func(s *align.Set) { s.U.Radius = 5 * mm })
		nearMatrix(t, kind.String(), matrix(mustFit(t, doubtful...).Cov), want, 0)
	}
}

// With shared uncertainties stated and none for the readings, the scatter stands
// for these and the shared part is added to it.
func TestSharedBesideScatter(t *testing.T) {
	sets := []align.Set{
		{Probe: reverse()[0].Probe, Readings: at(mm, quarters, 0, 0.10, 0.30, 0.24)},
		{Probe: reverse()[1].Probe, Readings: at(mm, quarters, 0, -0.2, -0.3, -0.12)},
	}
	_, u := mustFit(t, sets...).At(40 * mm)
	doubtful := each(sets, func(s *align.Set) { s.U.Sag = 8 * um })
	f := mustFit(t, doubtful...)
	_, more := f.At(40 * mm)
	near(t, "vertical", inMM(more.Vertical), math.Hypot(inMM(u.Vertical), 0.008), 1e-14)
	near(t, "horizontal", more.Horizontal, u.Horizontal, 1e-9)
	if f.Cov.Basis != align.Scatter || f.Cov.DoF != 2 {
		t.Errorf("basis %v with %v degrees of freedom, want scatter with 2", f.Cov.Basis, f.Cov.DoF)
	}
}
