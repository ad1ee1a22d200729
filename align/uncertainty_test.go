package align_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

const sigma = 0.005 // millimetres: what a reading is good for, in these checks

// The hand formulas for readings at 12, 3, 6, 9, of standard uncertainty sigma:
// u(w) = sigma/sqrt 2, face slope sqrt 2 sigma/D, and what follows from two
// rims. Derived here.
func TestUncertaintyByHand(t *testing.T) {
	const xm, xs, d = 40.0, -50.0, 150.0
	uw := sigma / math.Sqrt2
	twoRims := mustFit(t, state(read(t, caseA, reverse(), quarters...), length(sigma))...)
	withFace := mustFit(t, state(read(t, caseA, rimFace(), quarters...), length(sigma))...)
	at := func(f align.Fitted, x float64) float64 {
		_, u := f.At(length(x))
		if math.Abs(float64(u.Horizontal-u.Vertical)) > 1e-9 {
			t.Errorf("at %v mm: horizontal %v, vertical %v, want both alike at the quarters", x, u.Horizontal, u.Vertical)
		}
		return inMM(u.Vertical)
	}
	const tolerance = 1e-15
	standard := twoRims.Cov.Standard()
	near(t, "w at the movable rim", at(twoRims, xm), uw, tolerance)
	near(t, "w at the stationary rim", at(twoRims, xs), uw, tolerance)
	near(t, "reverse slope", float64(standard.Vertical.Slope), math.Sqrt2*uw/(xm-xs), 1e-17)
	near(t, "reverse offset", inMM(standard.Vertical.Offset), uw*math.Hypot(xm, xs)/(xm-xs), tolerance)
	for _, foot := range []float64{-300, 40, 300, 900} {
		near(t, "reverse foot", at(twoRims, foot), uw*math.Hypot(foot-xs, foot-xm)/(xm-xs), 1e-14)
	}
	near(t, "face slope", float64(withFace.Cov.Standard().Vertical.Slope), math.Sqrt2*sigma/d, 1e-17)
	near(t, "rim-face, at the rim", at(withFace, 40), uw, tolerance)
}

// A foot whose station is uncertain: u^2 = Voo + 2 x Vos + x^2 Vss + slope^2 u(x)^2.
func TestUncertaintyOfAFoot(t *testing.T) {
	f := mustFit(t, state(read(t, caseA, rimFace(), quarters...), length(sigma))...)
	v, tilt := matrix(f.Cov), f.Value.Tilt()
	for _, x := range []float64{-200, 0, 300, 900} {
		moves, err := f.Corrections(align.Foot{X: length(x), U: 2 * mm})
		if err != nil {
			t.Fatal(err)
		}
		plane := func(o, s int, slope units.Slope) float64 {
			return math.Sqrt(v[o][o] + 2*x*v[o][s] + x*x*v[s][s] + math.Pow(2*float64(slope), 2))
		}
		near(t, "horizontal", inMM(moves[0].U.Horizontal), plane(0, 1, tilt.Horizontal), 1e-14)
		near(t, "vertical", inMM(moves[0].U.Vertical), plane(2, 3, tilt.Vertical), 1e-14)
		if moves[0].Basis != align.Stated {
			t.Errorf("basis %v, want stated", moves[0].Basis)
		}
	}
	exact, _ := align.Exact(caseA).Corrections(align.Foot{X: 100 * mm}, align.Foot{X: 200 * mm, U: mm})
	if exact[0].Basis != align.Declared || exact[1].Basis != align.Stated {
		t.Errorf("bases %v and %v, want declared, and stated once the foot is uncertain", exact[0].Basis, exact[1].Basis)
	}
	near(t, "foot of an exact line", exact[1].U.Vertical, units.Length(0.7e-3*1e6), 1e-9)
}

// What an arc costs: sqrt(N) u/sigma for N readings dense over it. The table is
// derived here from 1/sqrt(1/2 + sin 2h/(4h) - (sin h/h)^2) along the middle and
// 1/sqrt(1/2 - sin 2h/(4h)) across. Readings in the middle of N equal shares
// miss the dense limit by some 3/N^2 of it, 2e-7; the rest is the last digit.
func TestUncertaintyOfArcs(t *testing.T) {
	const n = 4000
	for _, row := range []struct {
		arc           units.Clock
		along, across float64
		digit         float64
	}{
		{360, 1.41421, 1.41421, 1e-5},
		{180, 3.24930, 1.41421, 1e-5},
		{120, 6.61826, 1.84663, 1e-5},
		{90, 11.3663, 2.34603, 1e-4},
		{60, 24.9531, 3.40004, 1e-4},
		{45, 43.9819, 4.47923, 1e-4},
		{30, 98.3549, 6.66146, 1e-4},
	} {
		for _, middle := range []units.Clock{0, 90} { // along is vertical, then horizontal
			sets := state(read(t, caseA, reverse(), even(n, middle, row.arc)...), length(sigma))
			f := mustFit(t, sets...)
			_, u := f.At(40 * mm) // only the rim that stands there counts
			along, across := u.Vertical, u.Horizontal
			if middle == 90 {
				along, across = across, along
			}
			factor := math.Sqrt(n) / sigma
			near(t, "along "+row.arc.String(), inMM(along)*factor, row.along, row.digit/2+3*row.along/(n*n))
			near(t, "across "+row.arc.String(), inMM(across)*factor, row.across, 0.5e-5+3*row.across/(n*n))

			h := float64(row.arc) / 2 * math.Pi / 180
			closed := 1 / math.Sqrt(0.5+math.Sin(2*h)/(4*h)-math.Pow(math.Sin(h)/h, 2))
			near(t, "closed form "+row.arc.String(), inMM(along)*factor, closed, 3*closed/(n*n)*1.1)
		}
	}
}

// Three readings to a set and no stated uncertainty tell nothing of it. That is
// never zero, in any form.
func TestUnknownIsNotZero(t *testing.T) {
	rows := []struct {
		name string
		sets []align.Set
		dof  int
	}{
		{"three readings each", read(t, caseA, reverse(), 0, 90, 180), 0},
		{"three readings each, sag and station uncertain", eachU(read(t, caseA, reverse(), 0, 90, 180), align.Uncertainty{Station: mm, Sag: 10 * um}), 0},
		{"four readings that agree to rounding", read(t, caseA, reverse(), quarters...), 2},
		{"sixty readings that agree to rounding", read(t, caseA, reverse(), even(60, 20, 300)...), 114},
		{"readings all alike", []align.Set{
			{Probe: reverse()[0].Probe, Readings: at(mm, quarters, 1, 1, 1, 1)},
			{Probe: reverse()[1].Probe, Readings: at(mm, quarters, 0, 0, 0, 0)},
		}, 2},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			f := mustFit(t, row.sets...)
			if f.Cov.Basis != align.Unknown || f.DegreesOfFreedom != row.dof || f.Scatter != 0 {
				t.Errorf("basis %v, %d degrees of freedom, scatter %v; want unknown, %d, none", f.Cov.Basis, f.DegreesOfFreedom, f.Scatter, row.dof)
			}
			for i, u := range plain(f.Cov.Standard()) {
				if !math.IsNaN(u) {
					t.Errorf("standard uncertainty of the %s is %v, want NaN", fourNames[i], u)
				}
			}
			if _, u := f.At(0); !math.IsNaN(float64(u.Horizontal)) || !math.IsNaN(float64(u.Vertical)) {
				t.Errorf("at 0: u %v, want NaN", u)
			}
			moves, err := f.Corrections(align.Foot{X: 300 * mm, U: mm})
			if err != nil {
				t.Fatal(err)
			}
			if m := moves[0]; m.Basis != align.Unknown || !math.IsNaN(float64(m.U.Horizontal)) || !math.IsNaN(float64(m.U.Vertical)) {
				t.Errorf("move: basis %v, u %v, want unknown and NaN", m.Basis, m.U)
			}
			for _, value := range []any{f, f.Cov, moves[0]} {
				text, err := json.Marshal(value)
				if err != nil {
					t.Fatal(err)
				}
				if !strings.Contains(string(text), `"basis":"unknown"`) || strings.Contains(string(text), `"u":{"horizontal"`) {
					t.Errorf("JSON %s: want the basis unknown and no u", text)
				}
			}
			sum := f.Estimate.Plus(align.Exact(caseA))
			if sum.Cov.Basis != align.Unknown {
				t.Errorf("plus an exact line the basis is %v, want unknown", sum.Cov.Basis)
			}
		})
	}
}

func eachU(sets []align.Set, u align.Uncertainty) []align.Set {
	return each(sets, func(s *align.Set) { s.U = u })
}

// Four readings to a set leave one over each. It is the miss of the validity
// rule, and s^2 = (sum of miss^2/4)/2 by hand.
func TestScatterByHand(t *testing.T) {
	sets := []align.Set{
		{Probe: reverse()[0].Probe, Readings: at(mm, quarters, 0, 0.10, 0.30, 0.24)},  // misses by -0.04
		{Probe: reverse()[1].Probe, Readings: at(mm, quarters, 0, -0.2, -0.3, -0.12)}, // misses by +0.02
	}
	f := mustFit(t, sets...)
	s := math.Sqrt((0.04*0.04/4 + 0.02*0.02/4) / 2)
	near(t, "scatter", inMM(f.Scatter), s, 1e-16)
	if f.Cov.Basis != align.Scatter || f.Cov.DoF != 2 || f.DegreesOfFreedom != 2 {
		t.Errorf("basis %v, %v and %d degrees of freedom, want scatter and 2", f.Cov.Basis, f.Cov.DoF, f.DegreesOfFreedom)
	}
	_, u := f.At(40 * mm)
	near(t, "u(w)", inMM(u.Vertical), s/math.Sqrt2, 1e-15)
}

// Stated uncertainties are taken at their word, whatever the scatter; the
// scatter is told beside them.
func TestStatedIsNotScatter(t *testing.T) {
	sets := state([]align.Set{
		{Probe: reverse()[0].Probe, Readings: at(mm, quarters, 0, 0.10, 0.30, 0.24)},
		{Probe: reverse()[1].Probe, Readings: at(mm, quarters, 0, -0.2, -0.3, -0.12)},
	}, length(sigma))
	f := mustFit(t, sets...)
	_, u := f.At(40 * mm)
	near(t, "u(w)", inMM(u.Vertical), sigma/math.Sqrt2, 1e-15)
	if f.Cov.Basis != align.Stated || f.Cov.DoF != 0 {
		t.Errorf("basis %v with %v degrees of freedom, want stated with none", f.Cov.Basis, f.Cov.DoF)
	}
	near(t, "scatter", inMM(f.Scatter), math.Sqrt((0.04*0.04/4+0.02*0.02/4)/2), 1e-15)
}

// A reading's own uncertainty goes before that of its set.
func TestReadingBeforeSet(t *testing.T) {
	sets := state(read(t, caseA, reverse(), even(5, 0, 360)...), 9*um)
	own := each(sets, func(s *align.Set) {
		s.U.Reading = 0
		for i := range s.Readings {
			s.Readings[i].U = 9 * um
		}
	})
	mixed := each(sets, func(s *align.Set) {
		s.U.Reading = 1 * um
		for i := range s.Readings {
			s.Readings[i].U = 9 * um
		}
	})
	want := matrix(mustFit(t, sets...).Cov)
	nearMatrix(t, "on each reading", matrix(mustFit(t, own...).Cov), want, 0)
	nearMatrix(t, "on both", matrix(mustFit(t, mixed...).Cov), want, 0)
}

// Noise on the readings, drawn again and again from a fixed seed, spreads the
// fits as the covariance says (JCGM 101:2008 against JCGM 100:2008). The
// covariance of n draws has a standard deviation of sqrt((Vii Vjj + Vij^2)/n),
// so five of them bound it: the chance that one of ten entries passes that is
// 6e-6, and the seed decides it once for all.
func TestMonteCarloOfReadings(t *testing.T) {
	const n = 40_000
	rows := []struct {
		name string
		sets []align.Set
	}{
		{"two rims, quarters", read(t, caseA, reverse(), quarters...)},
		{"rim and face on an arc, weights apart", each(read(t, caseA, rimFace(), even(7, 60, 130)...), func(s *align.Set) {
			for i := range s.Readings {
				s.Readings[i].U = length(sigma * float64(1+i%3))
			}
		})},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			sets := state(row.sets, length(sigma))
			truth := mustFit(t, sets...)
			random := rand.New(rand.NewPCG(101, 2008))
			noisy := each(sets, func(*align.Set) {})
			var sum [4]float64
			var product [4][4]float64
			for range n {
				for i := range noisy {
					for k, r := range sets[i].Readings {
						u := stated(sets[i], r)
						noisy[i].Readings[k].Value = r.Value + u*units.Length(random.NormFloat64())
					}
				}
				d := plain(mustFit(t, noisy...).Value.Minus(truth.Value))
				for i := range d {
					sum[i] += d[i]
					for j := range d {
						product[i][j] += d[i] * d[j]
					}
				}
			}
			v := matrix(truth.Cov)
			for i := range v {
				near(t, "mean of the "+fourNames[i], sum[i]/n, 0, 5*math.Sqrt(v[i][i]/n))
				for j := range v {
					limit := 5 * math.Sqrt((v[i][i]*v[j][j]+v[i][j]*v[i][j])/n)
					near(t, fourNames[i]+" with "+fourNames[j], product[i][j]/n, v[i][j], limit)
				}
			}
		})
	}
}

// Independent estimates: covariances add, the basis is the weaker, and a scaled
// estimate has its uncertainty scaled.
func TestSumsOfEstimates(t *testing.T) {
	a := mustFit(t, state(read(t, caseA, reverse(), quarters...), length(sigma))...).Estimate
	b := mustFit(t, state(read(t, caseA, rimFace(), even(6, 30, 200)...), length(2*sigma))...).Estimate
	va, vb := matrix(a.Cov), matrix(b.Cov)
	var want, scaled [4][4]float64
	for i := range want {
		for j := range want {
			want[i][j], scaled[i][j] = va[i][j]+vb[i][j], 9*va[i][j]
		}
	}
	nearMatrix(t, "sum", matrix(a.Plus(b).Cov), want, 1e-14)
	nearMatrix(t, "difference", matrix(a.Minus(b).Cov), want, 1e-14)
	nearMatrix(t, "minus three times", matrix(a.Times(-3).Cov), scaled, 1e-14)
	nearLine(t, "sum", a.Plus(b).Value, caseA.Times(2), uniform(1e-6))
	nearLine(t, "difference", a.Minus(b).Value, align.Centreline{}, uniform(1e-6))

	bases := []align.Basis{align.Declared, align.Stated, align.Scatter, align.Unknown}
	for _, one := range bases {
		for _, other := range bases {
			sum := estimate(t, one, 3).Plus(estimate(t, other, 5)).Cov
			if want := slices.Max([]align.Basis{one, other}); sum.Basis != want {
				t.Errorf("%v plus %v is %v, want %v", one, other, sum.Basis, want)
			}
			dof := 0.0
			if sum.Basis == align.Scatter {
				dof = 5
				if one == align.Scatter {
					dof = 3
				}
			}
			if sum.DoF != dof {
				t.Errorf("%v plus %v has %v degrees of freedom, want %v", one, other, sum.DoF, dof)
			}
		}
	}
}

// estimate makes one of each basis.
func estimate(tb fataler, b align.Basis, dof float64) align.Estimate {
	tb.Helper()
	var u align.Centreline
	if b == align.Stated || b == align.Scatter {
		u = line(0.003, 1e-5, 0.004, 2e-5)
	}
	c, err := align.NewCovariance(b, u, uncorrelated)
	if err != nil {
		tb.Fatalf("NewCovariance: %v", err)
	}
	if b == align.Scatter {
		c.DoF = dof
	}
	return align.Estimate{Value: caseA, Cov: c}
}

// Readings that differ from the fit by their rounding alone tell no uncertainty, however
// large they are; a millionth of them does.
func TestRoundingIsNoScatter(t *testing.T) {
	for _, k := range []float64{1e-3, 1, 1e3, 1e6} {
		sets := read(t, caseA.Times(k), reverse(), even(9, 11, 300)...)
		if f := mustFit(t, sets...); f.Cov.Basis != align.Unknown || f.Scatter != 0 {
			t.Errorf("%v times: basis %v, scatter %v", k, f.Cov.Basis, f.Scatter)
		}
		sets[0].Readings[2].Value += length(1e-7 * k)
		if f := mustFit(t, sets...); f.Cov.Basis != align.Scatter || f.Scatter == 0 {
			t.Errorf("%v times, one off: basis %v, scatter %v", k, f.Cov.Basis, f.Scatter)
		}
	}
}
