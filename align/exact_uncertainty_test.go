package align_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// rigidRows are the derivatives of what the rigid shafts show with respect to the
// four numbers, by differences of fourth order, one column for the zero of each set
// beside them, and weighted by a common uncertainty.
func rigidRows(c align.Centreline, sets []align.Set, u float64) *mat.Dense {
	rows := 0
	for _, s := range sets {
		rows += len(s.Readings)
	}
	a, row := mat.NewDense(rows, 4+len(sets), nil), 0
	for k, s := range sets {
		for _, r := range s.Readings {
			shown := func(j int, h float64) float64 {
				p := plain(c)
				p[j] += h
				return toRigid(s.Probe).Read(pose(line(p[0], p[1], p[2], p[3])), float64(s.View.Clock(r.At)))
			}
			for j, h := range []float64{0.05, 1e-4, 0.05, 1e-4} {
				d := (8*(shown(j, h)-shown(j, -h)) - shown(j, 2*h) + shown(j, -2*h)) / (12 * h)
				a.Set(row, j, d/u)
			}
			a.Set(row, 4+k, 1/u)
			row++
		}
	}
	return a
}

// The covariance of the readings is that of the exact equations at the answer.
func TestExactCovarianceByDifferences(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, sets := drawTold(t)
		sets = state(sets, 5*um)
		f := mustFitExact(t, sets...)
		a := rigidRows(f.Value, sets, 0.005)
		var qr mat.QR
		var r, inverse, cov mat.Dense
		qr.Factorize(a)
		qr.RTo(&r)
		n := 4 + len(sets)
		if err := inverse.Inverse(r.Slice(0, n, 0, n)); err != nil {
			t.Skip(err)
		}
		cov.Mul(&inverse, inverse.T())
		var want [4][4]float64
		for i := range want {
			for j := range want {
				want[i][j] = cov.At(i, j)
			}
		}
		if f.Cov.Basis != align.Stated {
			t.Errorf("basis %v", f.Cov.Basis)
		}
		nearMatrix(t, "covariance", matrix(f.Cov), want, 1e-7*f.Condition)
	})
}

// The exact equations differ from the linear ones: at 5 mm and along a quarter of
// a turn by some per cent.
func TestExactCovarianceIsNotThatOfFit(t *testing.T) {
	truth := line(3, 1.2e-3, -4, 1.6e-3)
	sets := known(75, reverse()...)
	for i := range sets {
		sets[i] = swept(truth, sets[i], even(9, 37, 90))
	}
	sets = state(sets, 5*um)
	exact, linear := mustFitExact(t, sets...), mustFit(t, sets...)
	ratio := float64(exact.Cov.At(0).Vertical / linear.Cov.At(0).Vertical)
	if math.Abs(ratio-1) < 0.01 {
		t.Errorf("u is %v of that of Fit", ratio)
	}
}

// What a set states of its station, radius, sag and clock, against changing the
// input by hand and fitting exactly again, at 5 mm and 2 mm/m. Readings fit, so that
// nothing is neglected.
func TestExactSharedUncertaintyByDifferences(t *testing.T) {
	for _, kind := range []align.Kind{align.Rim, align.Bore, align.NearFace, align.FarFace, align.SpacerFace} {
		for _, share := range shares {
			if !share.used(kind) {
				continue
			}
			t.Run(kind.String()+"/"+share.name, func(t *testing.T) {
				rapid.Check(t, func(t *rapid.T) { checkExactShare(t, kind, share.err, share.state, share.u, share.step) })
			})
		}
	}
}

func checkExactShare(t *rapid.T, kind align.Kind, err func(*align.Set, float64), tell func(*align.Uncertainty, float64), u, step float64) {
	truth := drawVectors(t, 5, 2e-3)
	first := drawKnown(t, kind, 60)
	if _, _, _, _, _, sag := needs(kind); sag {
		first.Sag = 0.1 * mm
	}
	other := known(80, align.Set{Probe: complement(first.Probe)})[0]
	sets := []align.Set{swept(truth, first, drawArc(t)), swept(truth, other, drawArc(t))}
	sets = state(sets, 1*um)
	d := exactDerivative(t, sets, err, step)
	doubtful := each(sets, func(*align.Set) {})
	tell(&doubtful[0].U, u)
	plainly, got := mustFitExact(t, sets...), mustFitExact(t, doubtful...)
	want := matrix(plainly.Cov)
	for i := range want {
		for j := range want {
			want[i][j] += u * u * d[i] * d[j]
		}
	}
	nearMatrix(t, "covariance", matrix(got.Cov), want, 1e-4)
}

func exactDerivative(t *rapid.T, sets []align.Set, err func(*align.Set, float64), h float64) (d [4]float64) {
	fit := func(h float64) [4]float64 {
		changed := each(sets, func(*align.Set) {})
		err(&changed[0], h)
		return plain(mustFitExact(t, changed...).Value)
	}
	plus, minus, plus2, minus2 := fit(h), fit(-h), fit(2*h), fit(-2*h)
	for i := range d {
		d[i] = (8*(plus[i]-minus[i]) - (plus2[i] - minus2[i])) / (12 * h)
	}
	return d
}

// A rim's own radius counts in the exact fit, which Fit has no need of.
func TestExactUncertaintyOfARimsRadius(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		kind := rapid.SampledFrom([]align.Kind{align.Rim, align.Bore}).Draw(t, "kind")
		checkExactShare(t, kind,
			func(s *align.Set, h float64) { s.Probe.Radius += length(h) },
			func(u *align.Uncertainty, v float64) { u.Radius = length(v) }, 2, 0.05)
	})
}

// Single angles, by turning one reading after the other by hand. The readings fit,
// and their second order is that of the differences.
func TestExactUncertaintyOfAngles(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		_, sets := drawTold(t)
		sets = state(sets, 1*um)
		const u = 0.02
		want := matrix(mustFitExact(t, sets...).Cov)
		for i := range sets[0].Readings {
			turn := func(s *align.Set, h float64) { s.Readings[i].At += units.Clock(h * 180 / math.Pi) }
			d := exactDerivative(t, sets, turn, 1e-4)
			for j := range want {
				for k := range want {
					want[j][k] += u * u * d[j] * d[k]
				}
			}
		}
		sets[0].U.Angle = u
		nearMatrix(t, "covariance", matrix(mustFitExact(t, sets...).Cov), want, 1e-4)
	})
}

// Where every set is linear, or a face on the stationary shaft, which is, the whole
// answer is that of Fit: with every uncertainty, sets that share a mounting, and
// readings that contradict one another.
func TestExactFitOfLinearSetsIsFit(t *testing.T) {
	linear := []align.Set{
		rim(align.Stationary, 40), rim(align.Movable, -50), face(align.Stationary, 75),
		{Probe: align.Probe{Kind: align.Gap, Radius: 90 * mm}},
		{Probe: align.Probe{Kind: align.Straightedge, Carrier: align.Movable, Station: 70 * mm}},
		{Probe: align.Probe{Kind: align.Displacement, Station: -120 * mm, Gain: -2}},
	}
	rapid.Check(t, func(t *rapid.T) {
		sets := each(linear, func(s *align.Set) {
			s.Readings = drawReadings(t, *s, caseA)
			scatterReadings(t, s)
			s.View = rapid.SampledFrom([]align.View{align.FromMovable, align.FromStationary}).Draw(t, "view")
			if rapid.Bool().Draw(t, "doubtful") {
				s.U = align.Uncertainty{Clock: 0.02, Angle: 0.01}
				_, station, radius, _, _, sag := needs(s.Probe.Kind)
				if station {
					s.U.Station = mm
				}
				if radius {
					s.U.Radius = mm
				}
				if sag {
					s.U.Sag = 20 * um
				}
			}
			s.Mounting = s.Probe.Kind.String() + s.Probe.Carrier.String()
		})
		again := sets[0]
		again.Readings = drawReadings(t, again, caseA)
		sets = append(sets, again)
		if rapid.Bool().Draw(t, "stated") {
			sets = state(sets, 5*um)
		}
		exact, fit := mustFitExact(t, sets...), mustFit(t, sets...)
		nearLine(t, "value", exact.Value, fit.Value, uniform(1e-5))
		nearMatrix(t, "covariance", matrix(exact.Cov), matrix(fit.Cov), 1e-10)
		if exact.Cov.Basis != fit.Cov.Basis || exact.Cov.DoF != fit.Cov.DoF || exact.DegreesOfFreedom != fit.DegreesOfFreedom {
			t.Errorf("counts %+v, Fit %+v", exact.Cov, fit.Cov)
		}
		near(t, "scatter", inMM(exact.Scatter), inMM(fit.Scatter), 1e-12)
		near(t, "condition", exact.Condition, fit.Condition, 1e-9)
	})
}

// Two readings of three numbers each leave nothing that tells an uncertainty.
func TestExactUncertaintyUnknown(t *testing.T) {
	sets := known(75, reverse()...)
	for i := range sets {
		sets[i] = swept(caseA, sets[i], []units.Clock{0, 120, 240})
	}
	if f := mustFitExact(t, sets...); f.Cov.Basis != align.Unknown || f.DegreesOfFreedom != 0 || f.Scatter != 0 {
		t.Errorf("%+v", f)
	}
}

// Rims of 1 m radius, far apart, are nearly flat for small misalignments, so that
// the exact fit of readings that scatter is that of Fit: to |w|/rho, 2e-4, and
// rho slope/x, 8e-4, times the condition. One uncertainty at a time, in one set, so
// that none hides another; the third set contradicts the others by 0.05 mm, so that
// residuals pull.
func TestExactFitOfWideRimsIsFit(t *testing.T) {
	sets := []align.Set{rim(align.Stationary, 400), rim(align.Movable, -500), rim(align.Movable, 300)}
	sets = each(read(t, line(0.12, 3e-4, -0.2, -2e-4), sets, even(7, 30, 270)...), func(s *align.Set) {
		s.Sag = 0.05 * mm
		s.Probe.Radius = 1000 * mm
		for i := range s.Readings {
			s.Readings[i].Value += length(0.05 * math.Sin(float64(1+3*i*i*i)))
		}
	})
	for i := range sets[2].Readings {
		_, cos := direction(sets[2].View, sets[2].Readings[i].At)
		sets[2].Readings[i].Value += length(0.05 * cos)
	}
	for i := range sets {
		for _, u := range []align.Uncertainty{{Station: 100 * mm}, {Sag: 10 * um}, {Clock: 0.02}, {Angle: 0.02}} {
			one := state(sets, um)
			u.Reading = um
			one[i].U = u
			exact, fit := mustFitExact(t, one...), mustFit(t, one...)
			nearLine(t, "value", exact.Value, fit.Value, [4]float64{1e-3, 2e-6, 1e-3, 2e-6})
			nearMatrix(t, "covariance", matrix(exact.Cov), matrix(fit.Cov), 0.03)
		}
	}
}
