package lsq_test

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// probe is a set of readings at several angles (degrees),
//
//	reading = c + S sin(angle) + C cos(angle)
//
// with its own constant c, and S = k(a·x0 + b·x1), C = k(a·x2 + b·x3) of the
// four unknowns x that all probes share.
type probe struct {
	k, a, b  float64
	angles   []float64
	readings []float64
	weight   float64
}

// local returns the probe's equations in (c, S, C).
func (p probe) local() system {
	var s system
	for i, angle := range p.angles {
		sin, cos := math.Sincos(angle * math.Pi / 180)
		s.add(p.weight*p.readings[i], p.weight, p.weight*sin, p.weight*cos)
	}
	return s
}

// shared maps a row in (S, C) to the four unknowns.
func (p probe) shared(s, c float64) []float64 {
	return []float64{p.k * p.a * s, p.k * p.b * s, p.k * p.a * c, p.k * p.b * c}
}

// joint returns the equations of all probes in the four unknowns and one
// constant for each probe.
func joint(probes []probe) system {
	var s system
	for i, p := range probes {
		local := p.local()
		for k, row := range local.a {
			constants := make([]float64, len(probes))
			constants[i] = row[0]
			s.add(local.b[k], append(p.shared(row[1], row[2]), constants...)...)
		}
	}
	return s
}

// nested reduces each probe on its own, drops its constant with the first row,
// and fits the four unknowns to what remains.
func nested(probes []probe) answer {
	common, local := empty(4), 0.0
	for _, p := range probes {
		own := triangle(p.local())
		local += own.SumSquares()
		var row [3]float64
		for i := 1; i < 3; i++ {
			rhs := own.Row(row[:], i)
			common.Add(p.shared(row[1], row[2]), rhs)
		}
	}
	got := answerOf(&common, 4)
	got.sum += local
	return got
}

// checkNested compares the nested fit with the joint fit over all unknowns, in
// one triangle and by gonum.
func checkNested(t fataler, probes []probe, kappa float64) {
	t.Helper()
	s := joint(probes)
	n := s.unknowns()
	whole := triangle(s)
	same(t, nested(probes), firstFour(answerOf(&whole, n), n), kappa, s)
	same(t, nested(probes), firstFour(byGonum(t, s), n), kappa, s)
}

// firstFour keeps the shared unknowns of an answer in n.
func firstFour(a answer, n int) answer {
	var cov []float64
	for i := range 4 {
		cov = append(cov, a.cov[i*n:][:4]...)
	}
	return answer{a.x[:4], cov, a.sum}
}

func TestNested(t *testing.T) {
	full := []float64{0, 40, 80, 120, 160, 200, 240, 280, 320}
	rim := func(x float64, angles ...float64) probe { return measured(1, 1, x, angles) }
	for _, c := range []struct {
		name   string
		probes []probe
	}{
		{"two full turns", []probe{rim(0.04, full...), rim(-0.05, full...)}},
		{"rim and face", []probe{rim(0.04, full...), measured(-1, 0, 0.075, full)}},
		{"short arcs", []probe{rim(0.4, -20, 0, 20, 40), rim(-0.5, 60, 80, 100, 130)}},
		{"one reading: says nothing but its constant", []probe{rim(0.4, full...), rim(-0.5, full...), rim(0.1, 77)}},
		{"one angle read three times", []probe{rim(0.4, full...), rim(-0.5, full...), rim(0.1, 77, 77, 77)}},
		{"two readings", []probe{rim(0.4, full...), rim(-0.5, full...), rim(0.1, 10, 150)}},
		{"two angles, one of them repeated", []probe{rim(0.4, full...), rim(-0.5, full...), rim(0.1, 10, 150, 10, 10)}},
		{"opposite readings only, across a common direction", []probe{rim(0.4, 0, 180, 0, 180), rim(-0.5, 0, 180), rim(0.3, 90, 270), rim(-0.2, 90, 270, 270)}},
		{"a lever so short that rotations meet subnormal numbers", []probe{
			rim(5.288655398041493e-279, 180, 180, 0.5), measured(1, 0, 1, []float64{0, 90}), measured(1, 0, 1.5, []float64{0, 0, 180, 0}),
			rim(1, 0, 70, 200, 300), measured(-1, 1, -1, []float64{10, 100, 220, 330})}},
		{"no probe sees more than one number", []probe{
			rim(0.4, 0, 90), rim(-0.5, 10, 120), rim(0.3, 30, 200), rim(-0.2, 77, 140), rim(0.1, 250, 290), rim(0.2, 5, 95)}},
	} {
		t.Run(c.name, func(t *testing.T) {
			kappa := joint(c.probes).condition()
			if !(kappa < 1e3) {
				t.Fatalf("the joint fit is not sound, condition %.3g", kappa)
			}
			checkNested(t, c.probes, kappa)
		})
	}
}

// measured returns a probe with readings that fit no model exactly, so that
// there are residuals to account for.
func measured(k, a, b float64, angles []float64) probe {
	p := probe{k: k, a: a, b: b, angles: angles, weight: 2}
	for i, angle := range angles {
		p.readings = append(p.readings, math.Sin(angle)+0.1*float64(i)*b)
	}
	return p
}

func TestNestedProperty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		probes := rapid.SliceOfN(rapid.Custom(drawProbe), 2, 6).Draw(t, "probes")
		probes = append(probes, // two that see all, so that few draws are singular
			measured(1, 1, 1, []float64{0, 70, 200, 300}), measured(-1, 1, -1, []float64{10, 100, 220, 330}))
		kappa := joint(probes).condition()
		if !(kappa < 1e5) {
			t.Skip("nearly singular")
		}
		checkNested(t, probes, kappa)
	})
}

func drawProbe(t *rapid.T) probe {
	count := rapid.IntRange(1, 6).Draw(t, "readings")
	angle := rapid.OneOf(rapid.Float64Range(-180, 180), rapid.SampledFrom([]float64{0, 90, 180, 270}))
	return probe{
		k:        rapid.SampledFrom([]float64{1, -1, 0.5}).Draw(t, "k"),
		a:        rapid.SampledFrom([]float64{0, 1}).Draw(t, "a"),
		b:        rapid.Float64Range(-2, 2).Draw(t, "b"),
		angles:   rapid.SliceOfN(angle, count, count).Draw(t, "angles"),
		readings: rapid.SliceOfN(rapid.Float64Range(-1, 1), count, count).Draw(t, "readings"),
		weight:   rapid.SampledFrom([]float64{1, 0.1, 30}).Draw(t, "weight"),
	}
}

// A probe read more often than it has unknowns carries residuals of its own;
// one that fits itself carries none, and all of the misfit shows in the common
// triangle. By hand: two probes at one station read a step of 2 and of 4 on the
// same half turn; with three free zeros the best common half-step is 1.5, and
// the misfit is 4 times 0.5² = 1.
func TestNestedResidualsByHand(t *testing.T) {
	first := probe{k: 1, a: 1, angles: []float64{90, 270}, readings: []float64{1, -1}, weight: 1}
	second := probe{k: 1, a: 1, angles: []float64{90, 270}, readings: []float64{7, 3}, weight: 1}
	common := empty(1)
	local := 0.0
	for _, p := range []probe{first, second} {
		own := triangle(p.local())
		local += own.SumSquares()
		var row [3]float64
		for i := 1; i < 3; i++ {
			rhs := own.Row(row[:], i)
			common.Add(slices.Clone(row[1:2]), rhs)
		}
	}
	got := answerOf(&common, 1)
	near(t, "half-step", got.x, []float64{1.5}, 1e-15)
	near(t, "variance", got.cov, []float64{0.25}, 1e-15)
	near(t, "sum of squares", []float64{local, got.sum}, []float64{0, 1}, 1e-14)
}
