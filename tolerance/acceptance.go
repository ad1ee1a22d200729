package tolerance

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/internal/words"
	"example.org/collinear/units"
)

// Acceptance is how uncertainty counts in a verdict. The zero value is simple
// acceptance: it does not count. At most one of the two is given.
type Acceptance struct {
	Confidence float64 `json:"confidence,omitzero"` // the probability asked for, above 0.5 and below 1
	Guard      float64 `json:"guard,omitzero"`      // standard uncertainties by which a limit is drawn in, above 0
}

// Validate asks that Confidence and Guard are finite (NotFinite), that a
// Confidence is between 0.5 and 1 and a Guard not below zero (OutOfRange), at
// /confidence and /guard, and that not both are given (Conflict, at /guard).
func (a Acceptance) Validate() error {
	var faults check.Faults
	a.check(&faults, check.Path{})
	return faults.Err()
}

func (a *Acceptance) check(faults *check.Faults, at check.Path) {
	confidence, guard := at.Field("confidence"), at.Field("guard")
	if check.Finite(faults, confidence, a.Confidence) && a.Confidence != 0 && !(a.Confidence > 0.5 && a.Confidence < 1) {
		faults.Add(units.OutOfRange, confidence, a.Confidence, "a probability above 0.5 and below 1")
	}
	check.NotNegative(faults, guard, a.Guard, "a number of standard uncertainties")
	if a.Confidence != 0 && a.Guard != 0 {
		faults.Add(units.Conflict, guard, a.Guard, "no value: a confidence is given, and one rule decides")
	}
}

// rule is the decision rule that a asks for.
func (a Acceptance) rule() DecisionRule {
	if a.Confidence != 0 {
		return ByProbability
	}
	if a.Guard != 0 {
		return Guarded
	}
	return Simple
}

// DecisionRule is how a verdict came about. The zero value is simple acceptance.
type DecisionRule uint8

// The rules (JCGM 106:2012, clause 8, from memory).
const (
	Simple        DecisionRule = iota // what was found against its limit; uncertainty decides nothing
	ByProbability                     // the conformance probability against the one asked for
	Guarded                           // what was found against the limit less a guard band
)

var ruleNames = words.List{"simple", "by_probability", "guarded"}

// String returns the wire form, for one "by_probability".
func (r DecisionRule) String() string { return ruleNames.Word(uint8(r)) }

// MarshalText gives the wire form.
func (r DecisionRule) MarshalText() ([]byte, error) { return ruleNames.Marshal(uint8(r)) }

// UnmarshalText reads the wire form.
func (r *DecisionRule) UnmarshalText(text []byte) error { return words.Unmarshal(r, ruleNames, text) }

// JudgeBy holds off against the limits as Judge does, and decides by what a asks
// for (JCGM 106:2012, clause 8, from memory):
//
//	nothing      simple acceptance, as Judge
//	Confidence   Within if AtLeast of the verdict reaches it; Outside if an item
//	             is outside with that probability; otherwise Undecided
//	Guard        guarded acceptance (8.3.2): Within if every item is at or below
//	             its limit less Guard times its U; Outside if one is above its
//	             limit; otherwise, within the limit and not by the guard band,
//	             Undecided, where the standard would reject
//
// On the basis Unknown there is nothing to count with: the verdict is by simple
// acceptance whatever was asked, and says so in its Rule. A position that is
// exact by declaration has the probability 1 or 0 and no guard band.
//
// A probability is that of the true value to be up to its limit, given what was
// measured and nothing else that would make one value likelier than another.
// Both planes together are a bivariate normal distribution, with the covariance
// that both have, integrated over the disc of the limit. Uncertainty that comes
// from a scatter makes it a bivariate Student's t with the effective degrees of
// freedom of the item ([align.Covariance.EffectiveDoF]): of those of the two
// planes the fewer, which gives the tails their full due.
//
// Accuracy: a probability is right to 1e-9 for the covariance given and is
// rounded to that; checked against another quadrature, drawing, and numbers in
// many digits. Of what is known to a ten-millionth of its limit and as close to
// it, the last digit of a float64 decides. Of an item that has an uncertainty it
// is never given as 0 or 1.
// JudgeBy allocates nothing when it answers. It refuses what Judge does, and what
// Validate of a does, with paths from /acceptance.
func (l Limits) JudgeBy(off align.Estimate, k align.Coupling, a Acceptance) (Verdict, error) {
	if err := l.checkJudge(&off, k, &a); err != nil {
		return Verdict{}, err
	}
	v := Verdict{Basis: off.Cov.Basis, Asked: a, Rule: a.rule()}
	if v.Basis == align.Unknown {
		v.Rule = Simple
	}
	l.items(&v, &off, k)
	if !v.sound() {
		return Verdict{}, &units.Fault{Code: units.OutOfRange, Path: "/off", Want: "an estimate that the coupling makes into numbers that can be reckoned with"}
	}
	v.AtLeast = v.atLeast()
	v.Outcome, v.Governs = v.decide()
	return v, nil
}

// decide gives what follows from the items by the rule.
func (v *Verdict) decide() (outcome Outcome, governs int) {
	outcome = Within
	for i := range v.used() {
		switch item := &v.Items[i]; {
		case v.rejects(item):
			outcome = Outside
		case outcome == Within && !v.accepts(item):
			outcome = Undecided
		}
		if v.closer(i, governs) {
			governs = i
		}
	}
	return outcome, governs
}

func (v *Verdict) rejects(i *Item) bool {
	if v.Rule == ByProbability {
		return i.Probability <= 1-v.Asked.Confidence
	}
	return !i.Within()
}

// accepts tells whether an item that is not rejected does not stand in the way.
func (v *Verdict) accepts(i *Item) bool {
	switch v.Rule {
	case ByProbability:
		return v.AtLeast >= v.Asked.Confidence
	case Guarded:
		return i.withinGuarded(v.Asked.Guard)
	}
	return i.Within()
}

// closer tells whether item i is closer to being outside than item j, by the
// rule; of equals the one with the larger ratio is.
func (v *Verdict) closer(i, j int) bool {
	a, b := &v.Items[i], &v.Items[j]
	if v.Rule == ByProbability && a.Probability != b.Probability {
		return a.Probability < b.Probability
	}
	if v.Rule == Guarded && a.guardedRatio(v.Asked.Guard) != b.guardedRatio(v.Asked.Guard) {
		return a.guardedRatio(v.Asked.Guard) > b.guardedRatio(v.Asked.Guard)
	}
	return a.Ratio > b.Ratio
}

// withinGuarded compares found with the limit less the guard band, both rounded
// to the Resolution.
func (i *Item) withinGuarded(guard float64) bool {
	drawnIn := i.Of.number(i.Limit) - float64(guard*i.Of.number(i.U))
	return i.Of.nanometres(i.Found) <= i.Of.nanometres(i.Of.amount(drawnIn))
}

// guardedRatio is at most 1 where the item is within its guarded limit, but for
// rounding.
func (i *Item) guardedRatio(guard float64) float64 {
	return (i.Of.number(i.Found) + float64(guard*i.Of.number(i.U))) / i.Of.number(i.Limit)
}

// atLeast is the bound on the probability that all items are within at once, by
// the inequality of Boole: what each leaves open adds up at worst.
func (v *Verdict) atLeast() float64 {
	open := 0.0
	for i := range v.used() {
		open += 1 - v.Items[i].Probability
	}
	return rounded(max(0, 1-open))
}

// Probabilities are told apart, and given, to finest.
const finest = 1e-9

func rounded(p float64) float64 { return math.Round(p/finest) / (1 / finest) }
