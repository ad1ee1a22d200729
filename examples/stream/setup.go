package main

import (
	"slices"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// sets returns the probes as the library takes them, with the readings given to each.
func (u *setUp) sets(readings []align.Reading) []align.Set {
	sets := make([]align.Set, len(u.Probes))
	for i, p := range u.Probes {
		sets[i] = align.Set{Probe: p.Probe, Sag: p.Sag, U: p.U, View: u.View, Readings: readings}
	}
	return sets
}

// check refuses a set-up that no readings could make an answer of. Whether the probes
// see all is asked of readings at the quarters: what these do not see no turn shows.
func (u *setUp) check() error {
	var faults strict.Faults
	for i, p := range u.Probes {
		if at := strict.Step("/setup/probes", i) + "/name"; p.Name == "" {
			faults.Add(units.Missing, at, "", "a name that readings can tell the probe by")
		} else if u.place(p.Name) < i {
			faults.Add(units.Duplicate, at, strict.Short(p.Name), "a name that no other probe has")
		}
	}
	_, err := align.Fit(u.sets([]align.Reading{{At: units.Twelve}, {At: units.Three}, {At: units.Six}, {At: units.Nine}})...)
	faults.Adopt(err, func(path string) string { return "/setup/probes" + strings.TrimPrefix(path, "/sets") })
	_, err = u.off(align.Estimate{}).Corrections(u.Feet...)
	faults.Adopt(err, func(path string) string { return "/setup" + strings.Replace(path, "/value", "/target", 1) })
	if u.Judge != nil {
		_, err = u.Judge.verdict(align.Estimate{})
		faults.Adopt(err, judgePath)
	}
	return faults.Err()
}

// judgePath is where a field of the library's stands in the line.
func judgePath(path string) string {
	if strings.HasPrefix(path, "/coupling") || strings.HasPrefix(path, "/acceptance") {
		return "/setup/judge" + path
	}
	return "/setup/judge/limits" + path
}

// place returns where the probe of a name stands in the list, or -1.
func (u *setUp) place(name string) int {
	return slices.IndexFunc(u.Probes, func(p mounted) bool { return p.Name == name })
}

// off is what was found less the target.
func (u *setUp) off(now align.Estimate) align.Estimate { return now.Minus(align.Exact(u.Target)) }

// verdict holds against the limits what was found less the target.
func (j *judge) verdict(off align.Estimate) (tolerance.Verdict, error) {
	return j.Limits.JudgeBy(off, j.Coupling, j.Acceptance)
}
