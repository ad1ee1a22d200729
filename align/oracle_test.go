package align_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// coefficients is the table of what probes read, in millimetres, once more and
// apart from the code: r(t) = c + (a*offset + b*slope) . u(t).
func coefficients(p align.Probe) (a, b float64) {
	k := +1.0
	if p.Carrier == align.Movable {
		k = -1
	}
	x, r, l := inMM(p.Station), inMM(p.Radius), inMM(p.Span)
	switch p.Kind {
	case align.Rim:
		return k, k * x
	case align.Bore, align.Straightedge:
		return -k, -k * x
	case align.NearFace:
		return 0, r
	case align.FarFace, align.Gap:
		return 0, -r
	case align.SpacerFace:
		return k * r / l, r / 2
	case align.SpacerFarFace:
		return -k * r / l, -r / 2
	case align.Displacement:
		return p.Gain, p.Gain * x
	}
	return math.NaN(), math.NaN()
}

// droopSign is how a bracket's droop enters a reading at 12.
func droopSign(k align.Kind) float64 {
	if k == align.Bore {
		return -1
	}
	return 1
}

// joint is the whole problem as one dense matrix: the four numbers first, then
// one zero for each set, rows multiplied by 1/u where it is stated.
type joint struct {
	a       *mat.Dense
	b       *mat.VecDense
	lengths []float64 // of the columns, before they were scaled to one
}

func stack(sets []align.Set) joint {
	rows := 0
	for _, s := range sets {
		rows += len(s.Readings)
	}
	j := joint{a: mat.NewDense(rows, 4+len(sets), nil), b: mat.NewVecDense(rows, nil)}
	row := 0
	for i, s := range sets {
		for _, r := range s.Readings {
			j.fill(row, i, s, r)
			row++
		}
	}
	j.scale()
	return j
}

func (j *joint) fill(row, set int, s align.Set, r align.Reading) {
	sin, cos := direction(s.View, r.At)
	weight := 1.0
	if u := stated(s, r); u != 0 {
		weight = 1 / inMM(u)
	}
	a, b := coefficients(s.Probe)
	for i, v := range []float64{a * sin, b * sin, a * cos, b * cos} {
		j.a.Set(row, i, weight*v)
	}
	j.a.Set(row, 4+set, weight)
	j.b.SetVec(row, weight*(inMM(r.Value)-droopSign(s.Probe.Kind)*inMM(s.Sag)*cos))
}

func direction(v align.View, t units.Clock) (sin, cos float64) {
	sin, cos = math.Sincos(float64(t) * math.Pi / 180)
	if v == align.FromStationary {
		sin = -sin
	}
	return sin, cos
}

func stated(s align.Set, r align.Reading) units.Length {
	if r.U != 0 {
		return r.U
	}
	return s.U.Reading
}

// scale brings every column to length one.
func (j *joint) scale() {
	rows, columns := j.a.Dims()
	j.lengths = make([]float64, columns)
	for c := range j.lengths {
		column := j.a.ColView(c)
		j.lengths[c] = mat.Norm(column, 2)
		for r := range rows {
			j.a.Set(r, c, column.AtVec(r)/j.lengths[c])
		}
	}
}

// kappa is the condition of the stacked equations with columns of length one.
func (j *joint) kappa() float64 {
	var svd mat.SVD
	if !svd.Factorize(j.a, mat.SVDNone) {
		return math.Inf(1)
	}
	return svd.Cond()
}

// condition is what Fitted promises: one over the least singular value of the
// equations without the zeros, whose columns are scaled as a full turn would
// leave them, by the root of half the weighted squares of a and of b.
func condition(sets []align.Set) float64 {
	j := stack(sets)
	free := j.withoutZeros()
	var offset, slope float64
	for i, s := range sets {
		a, b := coefficients(s.Probe)
		weight := j.lengths[4+i] * j.lengths[4+i] // the column of a zero holds the weights
		offset += a * a * weight / 2
		slope += b * b * weight / 2
	}
	for c, square := range []float64{offset, slope, offset, slope} {
		for r := range 4 {
			free.Set(r, c, free.At(r, c)*j.lengths[c]/math.Sqrt(square))
		}
	}
	var svd mat.SVD
	if !svd.Factorize(free, mat.SVDNone) {
		return math.Inf(1)
	}
	return 1 / svd.Values(nil)[3]
}

// withoutZeros is what of the four numbers' columns stands upright on the columns
// of the zeros: with these first in Q R, it is the last rows of R.
func (j *joint) withoutZeros() *mat.Dense {
	rows, columns := j.a.Dims()
	reordered := mat.NewDense(rows, columns, nil)
	for c := range columns {
		reordered.SetCol((c+columns-4)%columns, mat.Col(nil, c, j.a))
	}
	var qr mat.QR
	qr.Factorize(reordered)
	var r mat.Dense
	qr.RTo(&r)
	return mat.DenseCopyOf(r.Slice(columns-4, columns, columns-4, columns))
}

// tolerance is how far rounding may put each of the four numbers off. Two
// backward stable solvers of scaled equations differ by a few rounding units
// times the condition times the size of the solution, which is at most the
// condition times that of the right-hand side where readings scatter; 40 stands
// for the few.
func (j *joint) tolerance(sets []align.Set, scatters bool) (tol [4]float64) {
	size := 0.0
	for _, s := range sets {
		for _, r := range s.Readings {
			weight := 1.0
			if u := stated(s, r); u != 0 {
				weight = 1 / inMM(u)
			}
			size += math.Pow(weight*(math.Abs(inMM(r.Value))+math.Abs(inMM(s.Sag))), 2)
		}
	}
	kappa := j.kappa()
	factor := 40 * eps * kappa * math.Sqrt(size)
	factor *= kappa // |solution| <= |readings| * kappa; with scatter it is the residual that kappa multiplies twice
	if scatters {
		factor *= 2
	}
	for i := range tol {
		tol[i] = factor / j.lengths[i]
	}
	return tol
}

// answer is what gonum's Householder QR makes of the stacked equations.
type answer struct {
	value   [4]float64
	unit    [4][4]float64 // (A'A)^-1
	squares float64       // of the weighted residuals
}

func (j *joint) solve(tb fataler) answer {
	tb.Helper()
	var qr mat.QR
	qr.Factorize(j.a)
	var x, residual mat.VecDense
	if err := qr.SolveVecTo(&x, false, j.b); err != nil {
		tb.Fatalf("gonum: %v", err)
	}
	residual.MulVec(j.a, &x)
	residual.SubVec(j.b, &residual)
	n := len(j.lengths)
	var r, inverse, cov mat.Dense
	qr.RTo(&r)
	if err := inverse.Inverse(r.Slice(0, n, 0, n)); err != nil {
		tb.Fatalf("gonum: %v", err)
	}
	cov.Mul(&inverse, inverse.T())
	got := answer{squares: mat.Dot(&residual, &residual)}
	for i := range got.value {
		got.value[i] = x.AtVec(i) / j.lengths[i]
		for k := range got.unit {
			got.unit[i][k] = cov.At(i, k) / (j.lengths[i] * j.lengths[k])
		}
	}
	return got
}

func (a answer) times(factor float64) (v [4][4]float64) {
	for i := range v {
		for k := range v {
			v[i][k] = factor * a.unit[i][k]
		}
	}
	return v
}

// checkAgainstJoint compares all that a fit says with the stacked problem.
// Covariances agree to the square of the condition, as inverses do.
func checkAgainstJoint(tb fataler, sets []align.Set) {
	tb.Helper()
	f, j := mustFit(tb, sets...), stack(sets)
	want, kappa := j.solve(tb), j.kappa()
	rows, unknowns := j.a.Dims()
	relative := 200 * eps * kappa * kappa

	tol := j.tolerance(sets, true)
	nearLine(tb, "value", f.Value, line(want.value[0], want.value[1], want.value[2], want.value[3]), tol)
	if dof := rows - unknowns; f.DegreesOfFreedom != dof {
		tb.Errorf("degrees of freedom: got %d, want %d", f.DegreesOfFreedom, dof)
	}
	magnified := condition(sets)
	near(tb, "condition", f.Condition, magnified, 1e-12*magnified*magnified)
	s2 := want.squares / float64(rows-unknowns)
	scatter := math.Sqrt(s2 / j.averageWeight())
	near(tb, "scatter", inMM(f.Scatter), scatter, 1e-9*scatter)
	if f.Cov.Basis == align.Stated {
		nearMatrix(tb, "covariance", matrix(f.Cov), want.times(1), relative)
		return
	}
	if f.Cov.Basis != align.Scatter || f.Cov.DoF != float64(rows-unknowns) {
		tb.Errorf("basis %v with %v degrees of freedom, want scatter with %d", f.Cov.Basis, f.Cov.DoF, rows-unknowns)
	}
	nearMatrix(tb, "covariance", matrix(f.Cov), want.times(s2), relative+1e-9)
}

// averageWeight is the mean of 1/u^2 over the readings. The column of a zero
// holds the 1/u of its set.
func (j *joint) averageWeight() float64 {
	rows, _ := j.a.Dims()
	sum := 0.0
	for _, l := range j.lengths[4:] {
		sum += l * l
	}
	return sum / float64(rows)
}

func TestFitIsTheJointFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawScene(t, everyKind)
		for i := range s.sets {
			scatterReadings(t, &s.sets[i])
		}
		checkAgainstJoint(t, s.sets)
	})
}

func TestFitIsTheJointFitOfWeightedReadings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := drawScene(t, everyKind)
		for i := range s.sets {
			scatterReadings(t, &s.sets[i])
			for k := range s.sets[i].Readings {
				s.sets[i].Readings[k].U = length(rapid.Float64Range(0.001, 0.02).Draw(t, "u"))
			}
		}
		checkAgainstJoint(t, s.sets)
	})
}

// A thousand readings to a probe, and sets that are singular one by one: two
// readings each, or readings at repeated angles. Together they see all.
func TestFitIsTheJointFitOfHardSets(t *testing.T) {
	const noise = 4e-3
	wobble := func(sets []align.Set) []align.Set {
		for i := range sets {
			for k := range sets[i].Readings {
				sets[i].Readings[k].Value += length(noise * math.Sin(float64(7*i+5*k*k)))
			}
		}
		return sets
	}
	two := func(x float64, first, second units.Clock) align.Set {
		return read(t, caseA, []align.Set{rim(align.Stationary, x)}, first, second)[0]
	}
	rows := []struct {
		name string
		sets []align.Set
	}{
		{"a thousand readings", read(t, caseA, reverse(), even(1000, 30, 200)...)},
		{"two readings in each of seven sets", []align.Set{
			two(40, 0, 70), two(40, 100, 200), two(-50, 10, 100), two(-50, 90, 230), two(120, 300, 20), two(10, 45, 135), two(80, 0, 180),
		}},
		{"each set at two angles again and again", []align.Set{
			read(t, caseA, reverse()[:1], 0, 180, 0, 180)[0], read(t, caseA, reverse()[:1], 90, 270, 90)[0],
			read(t, caseA, reverse()[1:], 30, 210, 30)[0], read(t, caseA, reverse()[1:], 120, 300, 120)[0],
		}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) { checkAgainstJoint(t, wobble(row.sets)) })
	}
}

// How much an arc magnifies errors does not depend on where it lies, so neither
// does the condition; a shorter arc costs more.
func TestConditionOfAnArcAnywhere(t *testing.T) {
	last := 0.0
	for _, width := range []units.Clock{360, 180, 90, 60, 30, 10} {
		first := mustFit(t, read(t, caseA, reverse(), even(9, 0, width)...)...).Condition
		for middle := units.Clock(15); middle < 360; middle += 15 {
			f := mustFit(t, read(t, caseA, reverse(), even(9, middle, width)...)...)
			near(t, "condition of an arc turned", f.Condition, first, 1e-12*first*first)
		}
		if first <= last {
			t.Errorf("arc of %v: condition %v, not above the %v of the arc before", width, first, last)
		}
		last = first
	}
}

// The ideal, one each of offset and slope on full turns, has a condition of one.
func TestConditionOfTheIdealIsOne(t *testing.T) {
	sets := []align.Set{rim(align.Stationary, 0), face(align.Stationary, 75)}
	near(t, "condition", mustFit(t, read(t, caseA, sets, quarters...)...).Condition, 1, 1e-14)
}
