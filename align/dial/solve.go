package dial

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Result is the answer of a hand method: the centreline by the closed form, its
// uncertainty, and the checks of its two sets in the order in which the method
// names them.
type Result struct {
	align.Fitted
	Checks [2]Check `json:"checks"`
}

// part is one of a method's two sets and where it stands in the method's own
// input.
type part struct {
	set      align.Set
	readings []align.Reading // with the return to the start
	field    string          // that holds it
	carrier  string          // path to the field that names its carrier
	round    bool            // it has a diameter in place of a radius
}

// solve does what all methods share: it checks both parts, fits them in general
// for uncertainty, condition and warnings, and puts the closed form's answer in
// the place of the fit's. faults holds what the method itself found.
func solve(parts [2]part, limits Limits, faults *check.Faults, form func(a, b *sweep) align.Centreline) (Result, error) {
	fitted, err := align.Fit(parts[0].set, parts[1].set)
	addRenamed(faults, err, &parts)
	for i := range parts {
		parts[i].check(faults)
	}
	limits.check(faults)
	if err := faults.Err(); err != nil {
		return Result{}, err
	}
	a, b := newSweep(&parts[0]), newSweep(&parts[1])
	fitted.Value = form(&a, &b)
	result := Result{Fitted: fitted, Checks: [2]Check{a.check, b.check}}
	rename(result.Warnings, &parts)
	for i := range parts {
		result.Warnings = limits.judge(result.Warnings, result.Checks[i], parts[i].field)
	}
	return result, nil
}

// check asks for three or four readings at different quarters, all of one
// uncertainty. What they have in common with any set the fit has checked.
func (p *part) check(faults *check.Faults) {
	var root check.Path
	field := root.Field(p.field)
	at := field.Field("readings")
	if n := len(p.set.Readings); n == 2 { // of none and one the fit has said so
		faults.Add(units.Missing, at, n, "readings at three or four of 12, 3, 6 and 9 o'clock")
	}
	var seen [quarters]bool
	for i, r := range p.set.Readings {
		reading := at.Index(i)
		switch q, ok := quarter(r.At); {
		case r.At.Normal() != r.At.Normal(): // not a number: the fit has said so
		case !ok:
			faults.Add(units.OutOfRange, reading.Field("at"), r.At, "12:00, 3:00, 6:00 or 9:00; other positions are for align.Fit")
		case seen[q]:
			faults.Add(units.Duplicate, reading.Field("at"), r.At, "each position once, and the first once more at the end")
		default:
			seen[q] = true
		}
		if r.U != p.set.Readings[0].U {
			faults.Add(units.Conflict, reading.Field("u"), r.U, "one uncertainty for all readings; different weights are for align.Fit")
		}
	}
	if last := len(p.readings) - 1; returns(p.readings) {
		reading := at.Index(last)
		check.Finite(faults, reading.Field("value"), p.readings[last].Value)
	}
}
