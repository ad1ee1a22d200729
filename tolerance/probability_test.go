package tolerance_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

// spread is an offset in both planes in units of its limit: mean, standard
// uncertainties, their correlation and degrees of freedom (zero: normal).
type spread struct{ y, z, uy, uz, r, dof float64 }

// estimate is the spread for a limit of one metre, whose resolution is 1e-9.
func (s spread) estimate(tb fataler) align.Estimate {
	tb.Helper()
	r := uncorrelated
	r[0][2], r[2][0] = s.r, s.r
	basis := align.Stated
	if s.dof > 0 {
		basis = align.Scatter
	}
	cov, err := align.NewCovariance(basis, line(s.uy*1e3, 0, s.uz*1e3, 0), r)
	if err != nil {
		tb.Fatalf("%+v: %v", s, err)
	}
	cov.DoF = s.dof
	return align.Estimate{Value: line(s.y*1e3, 0, s.z*1e3, 0), Cov: cov}
}

// chance is the probability that Judge gives for the vector.
func (s spread) chance(tb fataler) float64 {
	tb.Helper()
	return judged(tb, tolerance.Limits{Offset: units.Metre}, s.estimate(tb), align.Coupling{}).Items[0].Probability
}

// within is that of a number in one plane, against a limit of one.
func within(tb fataler, y, u, dof float64) float64 {
	tb.Helper()
	l := tolerance.Limits{Offset: units.Metre, PerPlane: true}
	return judged(tb, l, spread{y: y, uy: u, uz: 1, dof: dof}.estimate(tb), align.Coupling{}).Items[0].Probability
}

// chord is a different quadrature for the normal: the density of y, as it is given
// and not along a principal axis, times the probability of z, given y, to lie on
// the chord there. With y = sin t all derivatives agree at both ends, and the
// midpoint rule converges faster than any power.
func (s spread) chord(n int) float64 {
	rest := s.uz * math.Sqrt((1-s.r)*(1+s.r))
	sum := 0.0
	for i := range n {
		sin, cos := math.Sincos(math.Pi * ((float64(i)+0.5)/float64(n) - 0.5))
		v := (sin - s.y) / s.uy
		at := s.z + s.r*s.uz*v
		density := math.Exp(-v*v/2) / (s.uy * math.Sqrt(2*math.Pi))
		sum += cos * density * (above((-cos-at)/rest) - above((cos-at)/rest))
	}
	return sum * math.Pi / float64(n)
}

// above is the probability that a standard normal number is larger than x.
func above(x float64) float64 { return math.Erfc(x/math.Sqrt2) / 2 }

// mixed is chord for Student's t: a normal whose covariance is divided by a
// chi-square over its degrees of freedom, averaged over the logarithm of that by
// the trapezium rule.
func (s spread) mixed(n int) float64 {
	half := s.dof / 2
	lg, _ := math.Lgamma(half)
	step := min(0.25, 0.6/math.Sqrt(s.dof)) // the weight is about sqrt(2/dof) wide
	sum := 0.0
	for t := -40.0; t < 6; t += step { // log of chi-square/dof
		weight := math.Exp(half*math.Log(half) - lg + half*(t-math.Exp(t)))
		if weight < 1e-14 {
			continue
		}
		wider := s
		wider.uy, wider.uz = s.uy*math.Exp(-t/2), s.uz*math.Exp(-t/2)
		sum += weight * step * wider.chord(n)
	}
	return sum
}

const given = 1.5e-9 // half of the last digit that is given, and the integral's own error

// Long and thin distributions whose mean is on the limit, or next to it: nearly all
// directions see nothing of the disc, or nothing else, and a sliver of them the edge.
func TestProbabilityOfThinSpreads(t *testing.T) {
	for _, s := range []spread{ // as they were drawn: the last digit decides where the edge is
		{y: 0.20459842708649212, z: 0.9788459958715331, uy: 0.2079200930356012, uz: 0.23515821877300755, r: 0.9999474152812483},
		{y: 0.9874329671471199, z: 0.1580383984702223, uy: 37.603148664316954, uz: 0.47596440951485935, r: 0.9998587537422645},
		{y: -0.9608128553301959, z: -0.2771978626040183, uy: 5.077880662716282, uz: 0.18561721388331362, r: 0.9999967202682825},
	} {
		s.check(t)
	}
	s := spread{y: 0.20459842708649212, z: 0.9788459958715331, uy: 0.2079200930356012, uz: 0.23515821877300755, r: 0.9999474152812483, dof: 3}
	near(t, "with three degrees of freedom", s.chance(t), s.mixed(40_000), 1e-8)
}

func (s spread) check(tb fataler) {
	tb.Helper()
	const points = 60 // of the chords in the width of the density along them
	across := s.uz * math.Sqrt((1-s.r)*(1+s.r))
	near(tb, fmt.Sprintf("%+v", s), s.chance(tb), s.chord(max(3000, int(points/across))), given)
}

func TestProbabilityOfDrawnThinSpreads(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sin, cos := math.Sincos(rapid.Float64Range(-4, 4).Draw(t, "angle"))
		size := 1 + rapid.SampledFrom([]float64{0, 1e-15, -1e-15, 1e-9, -1e-9, 1e-4, -1e-4, 0.1, -0.1}).Draw(t, "beyond")
		tens := func(low, high float64, name string) float64 {
			return math.Pow(10, rapid.Float64Range(low, high).Draw(t, name))
		}
		s := spread{y: size * cos, z: size * sin, uy: tens(-1, 2, "uy"), uz: tens(-1, 0, "uz"), r: 1 - tens(-5, 0, "r")}
		s.check(t)
	})
}

// Correlations up to 0.999 either way, limits from a tenth of an uncertainty to
// ten, centres up to three limits away in all directions, unlike planes.
func TestProbabilityAgainstChords(t *testing.T) {
	worst := 0.0
	for _, r := range []float64{0, 0.5, -0.9, 0.99, 0.999, -0.999} {
		for _, u := range []float64{0.1, 0.3, 1, 3, 10} {
			for _, ratio := range []float64{1, 0.4} {
				for _, centre := range []float64{0, 0.5, 0.9, 1, 1.1, 2, 3} {
					for _, angle := range []float64{0, 0.7, math.Pi / 2, 2.5} {
						sin, cos := math.Sincos(angle)
						s := spread{y: centre * cos, z: centre * sin, uy: u, uz: u * ratio, r: r}
						got, want := s.chance(t), s.chord(3000)
						worst = max(worst, math.Abs(got-want))
						near(t, fmt.Sprintf("%+v", s), got, want, given)
					}
				}
			}
		}
	}
	t.Logf("largest difference %.3g", worst)
}

// The same for few degrees of freedom.
func TestProbabilityOfStudentsT(t *testing.T) {
	worst := 0.0
	for _, dof := range []float64{1, 2.5, 5, 40} {
		for _, r := range []float64{0, 0.95, -0.99} {
			for _, u := range []float64{0.1, 1, 5} {
				for _, centre := range []float64{0, 0.95, 2} {
					s := spread{y: centre * 0.6, z: centre * 0.8, uy: u, uz: u * 0.5, r: r, dof: dof}
					got, want := s.chance(t), s.mixed(1000)
					worst = max(worst, math.Abs(got-want))
					near(t, fmt.Sprintf("%+v", s), got, want, 1e-8)
				}
			}
		}
	}
	t.Logf("largest difference %.3g", worst)
}

// In one plane the answers are those of gonum's distributions.
func TestProbabilityInOnePlane(t *testing.T) {
	for _, u := range []float64{1e-6, 0.01, 0.3, 1, 7, 1e4} {
		for _, y := range []float64{0, 0.3, -0.99, 1, 1.01, -2, 30} {
			normal := distuv.Normal{Mu: y, Sigma: u}
			near(t, fmt.Sprint("normal ", y, u), within(t, y, u, 0), bounded(normal.CDF(1)-normal.CDF(-1)), given)
			for _, dof := range []float64{1, 3, 4.5, 30, 300} { // gonum loses digits for more
				student := distuv.StudentsT{Mu: y, Sigma: u, Nu: dof}
				near(t, fmt.Sprint("t ", y, u, dof), within(t, y, u, dof), bounded(student.CDF(1)-student.CDF(-1)), 1e-8)
			}
		}
	}
}

// bounded keeps off 0 and 1, which are for what is exact.
func bounded(p float64) float64 { return min(max(p, 1e-9), 1-1e-9) }

// In line and alike in all directions, the radius is elementary: Rayleigh's law,
// 1 - exp(-L^2/(2 u^2)), and its counterpart for t.
func TestProbabilityInClosedForm(t *testing.T) {
	for _, u := range []float64{0.05, 0.2, 0.5, 1, 3, 50, 1e4} {
		near(t, "normal", spread{uy: u, uz: u}.chance(t), bounded(-math.Expm1(-1/(2*u*u))), given)
		for _, n := range []float64{1, 2, 7.5, 1e9} {
			want := -math.Expm1(-n / 2 * math.Log1p(1/(n*u*u)))
			near(t, "t", spread{uy: u, uz: u, dof: n}.chance(t), bounded(want), given)
		}
	}
}

// Off centre and alike in all directions, the square of the length is a noncentral
// chi-square with two degrees of freedom: a sum of central ones weighed by
// Poisson's law, each of them elementary.
func TestProbabilityAsPoissonSum(t *testing.T) {
	for _, u := range []float64{0.1, 0.4, 1, 4} {
		for _, c := range []float64{0, 0.5, 0.99, 1, 1.2, 2.5} {
			far, x := c*c/(2*u*u), 1/(2*u*u)
			p, poisson := 0.0, math.Exp(-far)
			term, below := math.Exp(-x), 0.0 // of the sum of x^i/i! exp(-x) up to j
			for j := 0.0; j < 2000; j++ {
				below += term
				p += poisson * (1 - below)
				poisson *= far / (j + 1)
				term *= x / (j + 1)
			}
			near(t, fmt.Sprint(u, c), spread{y: c * 0.28, z: -c * 0.96, uy: u, uz: u}.chance(t), bounded(p), given)
		}
	}
}

// A million draws (PCG, seed 3, 4) each: 5 standard deviations of a count.
func TestProbabilityByDrawing(t *testing.T) {
	const n = 1_000_000
	random := rand.New(rand.NewPCG(3, 4))
	for _, s := range []spread{
		{0.5, -0.4, 0.3, 0.6, 0.7, 0}, {1.2, 0.3, 0.5, 0.1, -0.95, 0},
		{0.5, -0.4, 0.3, 0.6, 0.7, 2}, {0.9, 0, 0.2, 0.2, 0.999, 3}, {-1.5, 1, 1, 2, 0.3, 1},
	} {
		hits := 0
		for range n {
			a, b, scale := random.NormFloat64(), random.NormFloat64(), 1.0
			if s.dof > 0 {
				chi2 := 0.0
				for range int(s.dof) {
					x := random.NormFloat64()
					chi2 += x * x
				}
				scale = math.Sqrt(s.dof / chi2)
			}
			y := s.y + scale*s.uy*a
			z := s.z + scale*s.uz*(s.r*a+math.Sqrt(1-s.r*s.r)*b)
			if y*y+z*z <= 1 {
				hits++
			}
		}
		p := s.chance(t)
		near(t, fmt.Sprintf("%+v", s), float64(hits)/n, p, 5*math.Sqrt(p*(1-p)/n))
	}
}

// What is thinner and wider than any machine: the plane that is known without
// doubt cuts the disc in a chord, and a limit far above every doubt decides by
// where the mean is.
func TestProbabilityAtTheEdges(t *testing.T) {
	chord := func(half, y, u float64) float64 { return above((-half-y)/u) - above((half-y)/u) }
	for _, row := range []struct {
		name string
		s    spread
		want float64
	}{
		{"one plane exact", spread{y: 0.2, z: 0.6, uy: 0.5}, chord(0.8, 0.2, 0.5)},
		{"the other", spread{y: -0.6, z: 0.2, uz: 0.5}, chord(0.8, 0.2, 0.5)},
		{"one plane exact and beyond", spread{z: 1.5, uy: 0.5}, 0},
		{"one plane exact, seen from outside", spread{y: 2, z: 0.6, uy: 0.5}, chord(0.8, 2, 0.5)},
		{"one plane nearly exact", spread{y: 0.2, z: 0.6, uy: 0.5, uz: 1e-12}, chord(0.8, 0.2, 0.5)},
		{"one plane nearly exact, outside", spread{y: 2, z: 0.6, uy: 0.5, uz: 1e-12}, chord(0.8, 2, 0.5)},
		{"both planes by one number", spread{y: 0.3, z: 0.3, uy: 0.4, uz: 0.4, r: 1}, chord(1, 0.3*math.Sqrt2, 0.4*math.Sqrt2)},
		{"both against each other", spread{y: 0.3, z: 0.3, uy: 0.4, uz: 0.4, r: -1}, chord(math.Sqrt(0.82), 0, 0.4*math.Sqrt2)},
		{"limit of a millionth of u", spread{uy: 1e6, uz: 1e6}, 5e-13},
		{"and thin", spread{uy: 1e5, uz: 0.1}, chord(1, 0, 1e5)}, // all but the ends
		{"u of a billionth, inside", spread{y: 0.6, z: 0.79, uy: 1e-9, uz: 1e-9}, 1},
		{"u of a billionth, outside", spread{y: 0.6, z: 0.81, uy: 1e-9, uz: 1e-9}, 0},
		{"u of a billionth, on the limit", spread{y: 0.6, z: 0.8, uy: 1e-9, uz: 1e-9}, 0.5},
		{"a hundred thousand limits away", spread{y: 1e5, uy: 1, uz: 1}, 0},
	} {
		tolerated := given
		switch row.name {
		case "and thin":
			tolerated = 2e-8 // the ends of the chords, where the disc is narrower than 0.1: 4 % of 8e-6 is less than this at 3 u
			row.want = row.s.chord(200_000)
		case "u of a billionth, on the limit":
			tolerated = 1e-5 // where exactly the mean is: 1e-16 over 1e-9, and the bend of the circle
		}
		near(t, row.name, row.s.chance(t), bounded(row.want), tolerated)
	}
}

// On the limit and at every distance from it down to 1e-12, inside and outside,
// half a plane is left: seen from so close the circle is straight.
func TestProbabilityAcrossTheLimit(t *testing.T) {
	for k := range 12 {
		for _, side := range []float64{-1, 1} {
			d := side * math.Pow(10, -float64(k+1))
			u := 1e-3
			want := above(d/u) - u/2*math.Exp(-d*d/(2*u*u))/math.Sqrt(2*math.Pi)
			near(t, fmt.Sprint(d), spread{y: 1 + d, uy: u, uz: u}.chance(t), bounded(want), 2*u*u)
		}
	}
}

// drawSpread draws what a machine can have, and more.
func drawSpread(t *rapid.T) spread {
	log := func(lo, hi float64, name string) float64 {
		return math.Exp(rapid.Float64Range(math.Log(lo), math.Log(hi)).Draw(t, name))
	}
	s := spread{
		y: rapid.Float64Range(-3, 3).Draw(t, "y"), z: rapid.Float64Range(-3, 3).Draw(t, "z"),
		uy: log(0.01, 100, "uy"), uz: log(0.01, 100, "uz"), r: rapid.Float64Range(-0.9999, 0.9999).Draw(t, "r"),
	}
	if rapid.Bool().Draw(t, "scatter") {
		s.dof = log(0.5, 1000, "dof")
	}
	return s
}

// What must not change the probability, and how it goes with what does.
func TestProbabilityProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawSpread(t)
		p := s.chance(t)
		same := func(what string, other spread) {
			t.Helper()
			near(t, what, other.chance(t), p, 4*given)
		}
		same("planes exchanged", spread{s.z, s.y, s.uz, s.uy, s.r, s.dof})
		same("the other side", spread{-s.y, -s.z, s.uy, s.uz, s.r, s.dof})
		same("mirrored", spread{-s.y, s.z, s.uy, s.uz, -s.r, s.dof})
		same("turned", s.turned(rapid.Float64Range(0, 2*math.Pi).Draw(t, "angle")))

		off, last := s.estimate(t), 0.0
		for limit := units.Length(0.1); limit < 8; limit *= 1.3 {
			v := judged(t, tolerance.Limits{Offset: limit * units.Metre}, off, align.Coupling{})
			if p := v.Items[0].Probability; p < last-4*given {
				t.Errorf("%+v: a limit of %v has %v, a smaller one %v", s, limit, p, last)
			} else {
				last = p
			}
		}
		k := rapid.Float64Range(0.01, 100).Draw(t, "scale")
		v := judged(t, tolerance.Limits{Offset: units.Length(k) * units.Metre}, off.Times(k), align.Coupling{})
		near(t, "scaled", v.Items[0].Probability, p, 1e-8)
		// The disc lies in the strip that is one plane alone.
		l := tolerance.Limits{Offset: units.Metre, PerPlane: true}
		each := judged(t, l, off, align.Coupling{})
		if least := min(each.Items[0].Probability, each.Items[1].Probability); p > least+4*given {
			t.Errorf("%+v: together %v, one plane alone %v", s, p, least)
		}
		// The square within the disc is less likely than it, and no less than the bound.
		l.Offset = units.Length(math.Sqrt(0.5)) * units.Metre
		if bound := judged(t, l, off, align.Coupling{}).AtLeast; p < bound-4*given {
			t.Errorf("%+v: together %v, at least %v", s, p, bound)
		}
	})
}

// turned is s seen by somebody who leans over.
func (s spread) turned(angle float64) spread {
	sin, cos := math.Sincos(angle)
	yy, zz, yz := s.uy*s.uy, s.uz*s.uz, s.r*s.uy*s.uz
	uy := math.Sqrt(cos*cos*yy + 2*sin*cos*yz + sin*sin*zz)
	uz := math.Sqrt(sin*sin*yy - 2*sin*cos*yz + cos*cos*zz)
	r := (sin*cos*(zz-yy) + (cos*cos-sin*sin)*yz) / (uy * uz)
	return spread{cos*s.y + sin*s.z, cos*s.z - sin*s.y, uy, uz, max(-1, min(1, r)), s.dof}
}

// JCGM 106:2012, inputs from memory, recomputed. One-sided limits are intervals
// whose other end is too far away to count.
func TestConformanceOfJCGM106(t *testing.T) {
	for _, row := range []struct {
		name                string
		y, u, lower, upper  float64
		conforms, tolerance float64
	}{
		{"one-sided, upper", -5.47, 0.05, -25.40, -5.40, 0.919243, 5e-7},
		{"one-sided, lower", 509.7, 8.6, 490, 2490, 0.989010, 5e-7},
		{"two-sided", 13.6, 1.8, 12.5, 16.3, 0.662630, 5e-7},
	} {
		half := (row.upper - row.lower) / 2
		y := (row.y - (row.lower+row.upper)/2) / half
		near(t, row.name, within(t, y, row.u/half, 0), row.conforms, row.tolerance)
	}
}

// Of all items that are made with a standard deviation of one and measured with a
// quarter of it, the shares that are accepted though outside of two, and rejected
// though within (Deaver, second-hand, recomputed). What was measured y leaves for
// the true value a normal distribution about y/(1 + u^2) of variance
// u^2/(1 + u^2), whose conformance is summed over all y.
func TestFalseAcceptAndReject(t *testing.T) {
	const limit, u, step = 2.0, 0.25, 1.0 / 256
	wide := 1 + u*u
	accepted, rejected := 0.0, 0.0
	for i := range 4 * 512 { // midpoints, so that the limit is between two
		y := (float64(i) + 0.5) * step
		p := within(t, y/wide/limit, u/math.Sqrt(wide)/limit, 0)
		share := 2 * step * math.Exp(-y*y/(2*wide)) / math.Sqrt(2*math.Pi*wide)
		if y <= limit {
			accepted += share * (1 - p)
		} else {
			rejected += share * p
		}
	}
	near(t, "accepted", accepted, 0.00800608, 1e-6)
	near(t, "rejected", rejected, 0.01485088, 1e-6)
}

// A spacer coupling: each flex plane is a*offset + b*slope, with what of the
// covariance that has. By hand: span 1 m, u of offset 0.3 mm and of slope 0.8
// mm/m that are one and the same error (correlation 1): the stationary plane has
// 0.3 + 0.4 = 0.7 mm/m, the movable one 0.4 - 0.3 = 0.1 mm/m.
func TestProbabilityAtFlexPlanes(t *testing.T) {
	r := uncorrelated
	r[0][1], r[1][0] = 1, 1
	off := stated(t, line(0.2, 0.4, 0, 0), line(0.3, 0.8, 0, 0), r)
	v := judged(t, tolerance.Limits{Flex: mmm}, off, align.Coupling{Span: units.Metre})
	near(t, "stationary", v.Items[0].Probability, above((-1-0.4)/0.7)-above((1-0.4)/0.7), given)
	near(t, "movable", v.Items[1].Probability, 1-1e-9, 0)
	near(t, "at least", v.AtLeast, v.Items[0].Probability-1e-9, given)
}

// The degrees of freedom are those of the item: a scatter diluted by what is
// known counts for more, and of two planes the fewer count.
func TestDegreesOfFreedomOfItems(t *testing.T) {
	scatter := spread{y: 0.5, uy: 0.3, uz: 0.3, dof: 3}.estimate(t)
	known := spread{uy: 0.4, uz: 0}.estimate(t)
	off := scatter.Plus(known)
	dof := off.Cov.EffectiveDoF([4]float64{1})
	near(t, "Welch and Satterthwaite: 3 (0.25/0.09)^2", dof, 3*math.Pow(0.25/0.09, 2), 1e-9)
	l := tolerance.Limits{Offset: units.Metre, PerPlane: true}
	v := judged(t, l, off, align.Coupling{})
	student := distuv.StudentsT{Mu: 0.5, Sigma: 0.5, Nu: dof}
	near(t, "horizontal", v.Items[0].Probability, student.CDF(1)-student.CDF(-1), given)
	student = distuv.StudentsT{Sigma: 0.3, Nu: 3}
	near(t, "vertical", v.Items[1].Probability, student.CDF(1)-student.CDF(-1), given)
	l.PerPlane = false
	both := judged(t, l, off, align.Coupling{}).Items[0].Probability
	near(t, "both, with three", both, spread{y: 0.5, uy: 0.5, uz: 0.3, dof: 3}.chance(t), given)

	alone := spread{uy: 0.3, dof: 3}.estimate(t).Plus(spread{uz: 0.3}.estimate(t)) // one plane has none to count
	near(t, "one plane alone", judged(t, l, alone, align.Coupling{}).Items[0].Probability, spread{uy: 0.3, uz: 0.3, dof: 3}.chance(t), given)
	alone = spread{uz: 0.3, dof: 3}.estimate(t).Plus(spread{uy: 0.3}.estimate(t))
	near(t, "the other plane alone", judged(t, l, alone, align.Coupling{}).Items[0].Probability, spread{uy: 0.3, uz: 0.3, dof: 3}.chance(t), given)
}

// At a flex plane the degrees of freedom are those of offset/L + slope/2, here of a
// scatter of the offset beside a slope that is known: in both planes alike.
func TestDegreesOfFreedomAtFlexPlanes(t *testing.T) {
	scatter := stated(t, align.Centreline{}, line(0.3, 0, 0.3, 0), uncorrelated)
	cov, err := align.NewCovariance(align.Scatter, scatter.Cov.Standard(), uncorrelated)
	if err != nil {
		t.Fatal(err)
	}
	cov.DoF = 2
	off := align.Estimate{Value: line(0.5, 0, 0.5, 0), Cov: cov}.Plus(stated(t, align.Centreline{}, line(0, 0.8, 0, 0.8), uncorrelated))
	v := judged(t, tolerance.Limits{Flex: mmm, PerPlane: true}, off, align.Coupling{Span: units.Metre})
	student := distuv.StudentsT{Mu: 0.5, Sigma: 0.5, Nu: 2 * math.Pow(0.25/0.09, 2)}
	for _, item := range v.All() {
		near(t, item.String(), item.Probability, student.CDF(1)-student.CDF(-1), given)
	}
}
