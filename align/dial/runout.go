package dial

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Only the carrier was turned: the dial saw misalignment and the form and
// eccentricity of what it rode on, together. Both shafts turned together keep
// the dial on one spot, and runout drops out to first order.

// RemoveRunout returns the readings of a sweep in which only the carrier was
// turned, less the runout of the surface that the dial rode on:
//
//	true(t) = r(t) - E(t0 - t)
//
// E(turned) was measured with the dial still, touching at t0, while the target
// was turned clockwise by the angle turned; it stands in the readings runout,
// whose At is that angle, from any zero. All clock positions are of one view;
// seen from the stationary end, clockwise is clockwise there. Derived here: the
// spot that the dial touches at t comes under the still dial after a turn of
// t0 - t; places meet within a millionth of a degree. Holds to first order in
// the runout. A difference states an uncertainty where both of its readings do.
//
// It refuses a sweep or a runout with no readings (Missing), a runout of more than
// MostTurns (OutOfRange), numbers that are
// not finite, a turn that was measured twice (Duplicate, at /runout/1/at), and a
// reading whose turn was not measured (Missing, at /readings/2/at).
func RemoveRunout(readings []align.Reading, t0 units.Clock, runout []align.Reading) ([]align.Reading, error) {
	var faults check.Faults
	var root check.Path
	check.Finite(&faults, root.Field("t0"), t0)
	checkRound(&faults, root.Field("readings"), readings)
	list := root.Field("runout")
	checkRound(&faults, list, runout)
	if check.AtMost(&faults, list, len(runout), MostTurns, "turns") {
		checkTurns(&faults, list, runout)
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	clean := make([]align.Reading, len(readings))
	at := root.Field("readings")
	for i, r := range readings {
		e, ok := readingAt(runout, t0-r.At)
		if !ok {
			reading := at.Index(i)
			faults.Add(units.Missing, reading.Field("at"), r.At, "a runout measured at a turn of "+degrees(t0-r.At))
		}
		clean[i] = less(r, e)
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return clean, nil
}

// MostTurns is at how many turns a runout may be measured: three to a degree, nearly. Ours.
const MostTurns = 1000

// SeparateRunout returns misalignment and runout apart, from two sets of sweeps
// in which only the carriers were turned, the targets turned on by 180 degrees
// in between:
//
//	misalignment = (first + second)/2        runout = (first - second)/2
//
// on the fitted numbers with their signs, each with its uncertainty, taken as of
// independent sets: what both have in common (an error of sag, station or
// diameter) does not average out, and weighs on the misalignment by up to the
// root of two more than is told. The runout is what the first set was wrong by.
// For gaps both shafts are turned on by 180 degrees. Derived here: half a turn of
// the target reverses its runout and leaves the misalignment.
func SeparateRunout(first, second align.Estimate) (misalignment, runout align.Estimate) {
	return first.Plus(second).Times(0.5), first.Minus(second).Times(0.5)
}

// readingAt returns the reading at the same place of the clock as t.
func readingAt(readings []align.Reading, t units.Clock) (align.Reading, bool) {
	for _, r := range readings {
		if samePlace(r.At, t) {
			return r, true
		}
	}
	return align.Reading{}, false
}

// less returns r less s, at the place of r. Its uncertainty is stated where both
// are.
func less(r, s align.Reading) align.Reading {
	d := align.Reading{At: r.At, Value: r.Value - s.Value}
	if r.U != 0 && s.U != 0 {
		d.U = rootSum(r.U, s.U)
	}
	return d
}

func checkRound(faults *check.Faults, at check.Path, readings []align.Reading) {
	if len(readings) == 0 {
		faults.Add(units.Missing, at, nil, "readings")
	}
	for i, r := range readings {
		checkReading(faults, at.Index(i), r)
	}
}

func checkReading(faults *check.Faults, at check.Path, r align.Reading) {
	check.Finite(faults, at.Field("at"), r.At)
	check.Finite(faults, at.Field("value"), r.Value)
	check.Weight(faults, at.Field("u"), r.U)
}

func checkTurns(faults *check.Faults, at check.Path, runout []align.Reading) {
	for i, r := range runout {
		if _, again := readingAt(runout[:i], r.At); again && check.Sound(r.At) {
			reading := at.Index(i)
			faults.Add(units.Duplicate, reading.Field("at"), r.At, "each turn once")
		}
	}
}
