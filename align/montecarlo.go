package align

import (
	"math/rand/v2"
	"slices"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// MonteCarlo is a whole job whose uncertainties are propagated by drawing them,
// again and again, and doing the job each time (the Monte Carlo method of JCGM
// 101:2008, clauses 5 and 7). It shows what propagation to first order cannot:
// products of errors, and lengths of vectors, which are never below zero.
//
// The zero value has no readings and is refused.
type MonteCarlo struct {
	Sets     []Set    `json:"sets"`              // as for [Fit]; those of one mounting share one draw of station, radius, sag and clock
	Target   Estimate `json:"target,omitzero"`   // drawn with its covariance; zero: in line, exactly
	Feet     []Foot   `json:"feet,omitempty"`    // where corrections are wanted; each station is drawn with its U
	Coupling Coupling `json:"coupling,omitzero"` // Span zero: no tilts of flex planes are wanted; the span is exact
}

// TrialsPerBlock is how many trials one [Block] holds. JCGM 101:2008, 7.2.1 (from
// memory) advises 1e4/(1-p) trials or more for an interval of probability p:
// twenty blocks for 0.95.
const TrialsPerBlock = 10_000

// Block runs [TrialsPerBlock] trials of the job with the random numbers that
// belong to seed and number. It keeps the four numbers of every trial and the
// station of each foot that is uncertain (80 kB for each), from which every output
// follows. Blocks with different numbers are independent; the same seed and number
// give the same block, wherever and beside whatever else it runs. The library starts
// no goroutine: run blocks in as many as there are cores, and hand them all to
// [Summarise].
//
// In a trial every input is drawn from a normal distribution (JCGM 101:2008,
// 6.4.7) about its stated value with its standard uncertainty: the readings and
// the angle of each reading, for each mounting its station, radius, sag and
// clock, the target with its covariance, and the stations of the feet. The sets
// as drawn are fitted as [Fit] does it, the target as drawn is subtracted, and
// corrections are taken at the feet as drawn.
//
// Nothing in this is of first order. Of the errors of the readings of a set, which are
// independent and normal, any fit of one harmonic sees two combinations, which are so
// too; these are drawn, in units of their deviations, in place of the readings one by
// one, with the angles as drawn. The answer has the same distribution exactly. Where
// nothing but readings and sag is uncertain the fit is linear in them, and its matrix is
// worked out once.
//
// Where the readings state no uncertainty, they are drawn about the fit with a
// deviation s*sqrt(dof/chi2), s being the scatter and chi2 one draw for the trial
// from a chi-squared distribution with the degrees of freedom of the fit. The
// outcome then has a t distribution (JCGM 101:2008, 6.4.9); angles are not drawn,
// for their errors are in the scatter already. At few degrees of freedom, beside
// uncertainties that are stated, that makes wider intervals than [Move.Expanded] with
// its effective degrees of freedom does, and no product of errors is the reason. The
// part of the target's
// covariance that comes from a scatter is drawn likewise with its own DoF.
//
// A drawn sag may be below zero: the model is linear in it. A trial fails, and
// is counted, where the sets as drawn do not see all four numbers, where a radius
// is drawn that is not above zero, or where the outcome is beyond the numbers that can
// be reckoned with (an offset of 1000 km).
//
// It refuses what Fit refuses (/sets), readings whose uncertainty is Unknown
// (Unseen, at /sets), a target that is not sound or whose uncertainty is Unknown
// (/target), feet that [Estimate.Corrections] refuses (/feet), and a span that is
// negative or not finite (/coupling/span).
//
// Random numbers are those of Go's rand.PCG, seeded with seed and number, whose
// algorithm is laid down (PCG-DXSM), through rand.Rand.NormFloat64 (a ziggurat):
// measured twice as fast as inverting the normal distribution. Its algorithm is not
// laid down, but Go's own tests pin its outputs; should they change all the same,
// results change within the error of the simulation. Between platforms the
// outcomes of one block agree as sines and logarithms do, in all but the last
// digits.
func (m MonteCarlo) Block(seed uint64, number uint32) (Block, error) {
	f, s, err := m.fit()
	if err != nil {
		return Block{}, err
	}
	b := newBlock(m.clone(), f, seed, number)
	b.run(newTrials(&m, &f, &s, rand.New(rand.NewPCG(seed, uint64(number)))))
	return b, nil
}

// fit checks the whole job and fits its sets as they stand.
func (m *MonteCarlo) fit() (Fitted, solution, error) {
	var faults check.Faults
	var root check.Path
	m.check(&faults)
	var s solution
	f, err := s.fit(m.Sets)
	faults.Adopt(root, err)
	if err == nil && f.Cov.Basis == Unknown {
		faults.Add(units.Unseen, root.Field("sets"), nil, "an uncertainty of the readings, stated or from readings left over")
	}
	return f, s, faults.Err()
}

// check walks everything but the sets.
func (m *MonteCarlo) check(faults *check.Faults) {
	var root check.Path
	target, coupling := root.Field("target"), root.Field("coupling")
	m.Target.check(faults, target)
	if m.Target.Cov.Basis == Unknown {
		cov := target.Field("cov")
		faults.Add(units.Unseen, cov.Field("basis"), Unknown, "an uncertainty of the target, or one that is declared exact")
	}
	if len(m.Feet) > 0 {
		faults.Adopt(root, checkCorrections(new(Estimate), m.Feet))
	}
	if m.Coupling.Span != 0 {
		check.Positive(faults, coupling.Field("span"), m.Coupling.Span, "a distance from flex plane to flex plane")
	}
}

// clone copies the job, so that no later change of the caller's reaches a block.
func (m *MonteCarlo) clone() MonteCarlo {
	c := *m
	c.Sets, c.Feet = cloneSets(m.Sets), slices.Clone(m.Feet)
	return c
}

func cloneSets(sets []Set) []Set {
	sets = slices.Clone(sets)
	for i := range sets {
		sets[i].Readings = slices.Clone(sets[i].Readings)
	}
	return sets
}

// equal tells whether both are one job, number by number.
func (m *MonteCarlo) equal(n *MonteCarlo) bool {
	same := func(a, b Set) bool {
		return a.shared() == b.shared() && a.U == b.U && a.Mounting == b.Mounting && slices.Equal(a.Readings, b.Readings)
	}
	return m.Target == n.Target && m.Coupling == n.Coupling &&
		slices.Equal(m.Feet, n.Feet) && slices.EqualFunc(m.Sets, n.Sets, same)
}
