package arc

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Diagnosis is what readings say about themselves once a centreline is fitted to
// them.
type Diagnosis struct {
	Sweeps    []Sweep          `json:"sweeps"`             // one for every set
	Residuals []align.Residual `json:"residuals"`          // one for every reading; see Diagnose for what Standardised holds
	Scatter   Agreeing         `json:"scatter"`            // of all readings together
	Warnings  []units.Fault    `json:"warnings,omitempty"` // what a person should look at, in words
}

// Sweep is what the readings of one set show.
type Sweep struct {
	Arc      Arc         `json:"arc"`                // covered, and the largest hole of the turn
	Gap      units.Angle `json:"gap"`                // the largest between neighbours within what is covered
	Returned bool        `json:"returned,omitzero"`  // whether the last reading was taken where the first was
	Return   Effect      `json:"return,omitzero"`    // last reading less first, free of what their positions differ by; only where Returned
	Reversed []int       `json:"reversed,omitempty"` // readings taken after a step back
	Drift    Effect      `json:"drift"`              // of the dial from one reading to the next
	Scatter  Agreeing    `json:"scatter"`            // of this set
}

// Effect is a length that should be zero.
type Effect struct {
	Value units.Length `json:"value"`
	U     units.Length `json:"u,omitzero"` // standard uncertainty of Value; zero: not known
	Basis align.Basis  `json:"basis"`      // of U: Stated; Scatter; or Unknown, where nothing tells it
	P     float64      `json:"p"`          // probability of one at least as large, either way, if it is zero in truth; 1 where the basis is Unknown
}

// Agreeing compares how readings scatter about the fit with their stated
// uncertainty.
type Agreeing struct {
	Ratio            float64 `json:"ratio,omitzero"` // chi-square over its degrees of freedom, near 1 where the statement holds
	DegreesOfFreedom float64 `json:"degrees_of_freedom"`
	P                float64 `json:"p"`     // probability of a ratio at least as large if the statement holds; 1 where nothing tells
	Known            bool    `json:"known"` // whether uncertainties are stated and readings left over
}

const (
	// rare is how probable a warning of one kind is where nothing is wrong: one
	// time in a hundred for all readings or sets together. It is ours; common
	// practice has no figure.
	rare = 0.01
	// quarter is the least arc that common practice asks for, no source.
	quarter = 90 * units.Degree
	// wideGap is a third of a turn: three readings spread over a full turn have it
	// and no more. It is ours.
	wideGap = 120 * units.Degree
	// samePlace is how near the last reading has to be to the first to have come
	// back, in degrees. It is ours: what a person who turns a shaft to a mark hits.
	samePlace units.Clock = 2
	// rounding is what two angles may differ by that are meant to be the same.
	rounding = 1e-9 * units.Degree
)

// Diagnose tells what is odd about readings: f is [align.Fit] of these very sets.
// What is found comes as numbers; what a person should look at comes as warnings in
// words too (Suspect), each with the path of the set or the reading.
//
// Arc. Warned of, at /sets/0/readings, is an arc of less than a quarter turn, which
// common practice asks for (no source), and a gap of more than 120 degrees within
// what is covered (ours).
//
// Return. A sweep has come back when its last reading was taken within 2 degrees of
// the first (ours), a full turn on or not, and is not one of just two. What the two
// positions differ by on the fitted centreline is taken off. A miss says that the
// bracket slipped, the dial stuck or the machine moved. Warned of at the last reading.
//
// Reversed. The sweep's direction is that of most of its steps, and of the first of
// them where as many go either way. A step is the shorter way from one reading to
// the next; one of half a turn or of nothing has no direction, and one of more than
// half a turn looks like one back. Readings after a step back are those that the
// coupling's backlash spoils; in the order in which they were taken, that is.
//
// Drift. The slope of the readings against their order, fitted beside the four
// numbers and the zeros, which take up a part of it: at /sets/0/readings.
//
// Scatter. Chi-square of the residuals over their degrees of freedom: readings
// less unknowns for all sets, the sum of (1 - leverage) for one, where P is
// approximate unless the sets share no unknown. Only where uncertainties are stated.
// Warned of, at /sets and /sets/0/readings, is a scatter that is too large; one that
// is far too small (P near 1) says that the statement is too careful.
//
// Residuals are those of [align.Residuals], with the uncertainty of each angle
// counted beside that of the reading. A large one is warned of at the reading: with
// one bad reading it is the largest, and others may be large because of it.
// [FitRobust] sorts them out.
//
// A return, a drift, a scatter or a residual is warned of where one as large has a
// probability of less than 1 in 100, for all sets or readings together, if nothing is
// wrong (ours): P < 1 - 0.99^(1/n) for n of them. Probabilities are those of normal
// errors. Where no uncertainty is stated it comes from the scatter of the rest, with
// Student's t on one degree of freedom less (R. D. Cook and S. Weisberg, Residuals
// and Influence in Regression, 1982, from memory); where none is left, or all agree
// to rounding, nothing tells.
//
// It refuses what align.Residuals refuses (paths from /sets, and /fit/scatter), and
// degrees of freedom that the fit of these sets does not have (Conflict, at
// /fit/degrees_of_freedom). Stations so close that a drift of a millimetre a reading
// would be a slope that cannot be reckoned with are refused too (OutOfRange, at /sets).
func Diagnose(f align.Fitted, sets ...align.Set) (Diagnosis, error) {
	residuals, err := align.Residuals(nil, sets, f)
	if err != nil {
		return Diagnosis{}, err
	}
	if err := checkFreedom(f, sets); err != nil {
		return Diagnosis{}, err
	}
	e := examination{fit: f, sets: sets, residuals: residuals}
	e.deviations()
	e.standardise()
	d := Diagnosis{Sweeps: make([]Sweep, len(sets)), Residuals: e.residuals}
	d.Scatter = e.agreeing(0, len(residuals), float64(f.DegreesOfFreedom))
	for i := range sets {
		if d.Sweeps[i], err = e.sweep(i); err != nil {
			return Diagnosis{}, err
		}
	}
	d.Warnings = e.warnings(&d)
	return d, nil
}

// checkFreedom asks for the degrees of freedom that a fit of the sets has: readings
// less one zero each and four numbers.
func checkFreedom(f align.Fitted, sets []align.Set) error {
	left := -4
	for _, s := range sets {
		left += len(s.Readings) - 1
	}
	if f.DegreesOfFreedom == max(0, left) {
		return nil
	}
	var faults check.Faults
	var root check.Path
	fit := root.Field("fit")
	faults.Add(units.Conflict, fit.Field("degrees_of_freedom"), f.DegreesOfFreedom, "those of align.Fit of these very sets")
	return faults.Err()
}
