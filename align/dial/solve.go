package dial

import (
	"cmp"

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
// input. It holds no pointers to that, which would put the input on the heap.
type part struct {
	set      align.Set
	readings []align.Reading // with the return to the start
	field    string          // that holds it
	carrier  string          // path to the field that names its carrier
	diameter units.Length    // of a face or a gap
	swept    bool            // it has a diameter
}

// solve does what all methods share: it checks both parts and fits them in general
// for uncertainty, condition and warnings. The closed form's answer, from the
// quarters of the checks, is the method's to put in the place of the fit's. faults
// holds what the method itself found.
func (r *Result) solve(parts *[2]part, limits Limits, faults *check.Faults) error {
	for i := range parts {
		parts[i].check(faults)
	}
	limits.check(faults)
	fitted, err := align.Fit(parts[0].set, parts[1].set)
	addRenamed(faults, err, parts)
	if err := faults.Err(); err != nil {
		return err
	}
	r.Fitted = fitted
	rename(r.Warnings, parts)
	for i := range parts {
		c := &r.Checks[i]
		c.read(&parts[i])
		r.Warnings = limits.judge(r.Warnings, c, parts[i].field)
	}
	return nil
}

// check asks for three or four readings at different quarters, all of one
// uncertainty. What any set has to have is left to the fit.
func (p *part) check(faults *check.Faults) {
	var root check.Path
	field := root.Field(p.field)
	if p.swept {
		check.Positive(faults, field.Field("diameter"), p.diameter, "a diameter")
	}
	at := field.Field("readings")
	if n := len(p.set.Readings); n == 2 { // of none and one the fit says so
		faults.Add(units.Missing, at, n, "readings at three or four of 12, 3, 6 and 9 o'clock")
	}
	checkPlaces(faults, at, p.set.Readings)
	checkOneWeight(faults, at, &p.set)
	if last := len(p.readings) - 1; p.returned() { // the fit does not see it
		checkReading(faults, at.Index(last), p.readings[last])
	}
}

// checkPlaces asks for different quarters. A position that is not sound is
// left to the fit.
func checkPlaces(faults *check.Faults, at check.Path, readings []align.Reading) {
	var seen [quarters]bool
	for i, r := range readings {
		reading := at.Index(i)
		switch q, ok := quarter(r.At); {
		case !check.Sound(r.At):
		case !ok:
			faults.Add(units.OutOfRange, reading.Field("at"), r.At, "12:00, 3:00, 6:00 or 9:00; other positions are for align.Fit")
		case seen[q]:
			faults.Add(units.Duplicate, reading.Field("at"), r.At, "each position once, and the first once more at the end")
		default:
			seen[q] = true
		}
	}
}

// checkOneWeight asks that the same uncertainty counts for every reading. Where
// some have none of their own, that of the set is the one that all should have.
// One that is not sound is left to the fit.
func checkOneWeight(faults *check.Faults, at check.Path, set *align.Set) {
	want := commonU(set)
	if !check.Sound(want) || want < 0 {
		return
	}
	for i, r := range set.Readings {
		u := cmp.Or(r.U, set.U.Reading)
		if !check.Sound(u) || u < 0 || !check.Sound(r.U) {
			continue
		}
		if reading := at.Index(i); u != want {
			faults.Add(units.Conflict, reading.Field("u"), r.U, "one uncertainty for all readings; different weights are for align.Fit")
		}
	}
}

// commonU is the uncertainty that all readings should have: the set's if any
// reading relies on it, or else that of the first sound reading.
func commonU(set *align.Set) units.Length {
	first := units.Length(0)
	for _, r := range set.Readings {
		if r.U == 0 {
			return set.U.Reading
		}
		if first == 0 && check.Sound(r.U) && r.U > 0 {
			first = r.U
		}
	}
	return first
}
