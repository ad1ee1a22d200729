package arc

import (
	"fmt"
	"math"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// threshold is the probability below which one of n is warned of.
func threshold(n int) float64 { return -math.Expm1(math.Log1p(-rare) / float64(max(1, n))) }

// remarks gathers warnings.
type remarks []units.Fault

func (w *remarks) add(at check.Path, value, want string) {
	*w = append(*w, suspect(at, value, want))
}

// suspect is a warning.
func suspect(at check.Path, value, want string) units.Fault {
	return units.Fault{Code: units.Suspect, Path: at.String(), Value: value, Want: want}
}

// warnings puts into words what a person should look at.
func (e *examination) warnings(d *Diagnosis) []units.Fault {
	var w remarks
	var root check.Path
	list := root.Field("sets")
	if d.Scatter.P < rare {
		w.add(list, ratio(d.Scatter), "readings that scatter as their stated uncertainty says: a ratio near 1")
	}
	tested := e.tested()
	for i := range d.Sweeps {
		set := list.Index(i)
		e.warnOfSweep(&w, set.Field("readings"), i, &d.Sweeps[i])
		e.warnOfResiduals(&w, set.Field("readings"), i, tested)
	}
	return w
}

func ratio(a Agreeing) string {
	return fmt.Sprintf("chi-square is %.1f times its degrees of freedom", a.Ratio)
}

// warnOfSweep warns of what a whole set shows.
func (e *examination) warnOfSweep(w *remarks, readings check.Path, i int, s *Sweep) {
	limit := threshold(len(e.sets))
	if s.Arc.Covered < quarter-rounding {
		w.add(readings, degrees(s.Arc.Covered), "an arc of a quarter turn or more: on less, small errors count for much")
	}
	if s.Gap > wideGap+rounding {
		w.add(readings, degrees(s.Gap)+" without a reading", "readings no more than 120 degrees apart within the arc")
	}
	for _, j := range s.Reversed {
		w.add(readings.Index(j), e.sets[i].Readings[j].At.String(), "readings taken while turning one way: this one follows a step back, and backlash may offset it")
	}
	if s.Returned && s.Return.P < limit {
		w.add(readings.Index(len(e.sets[i].Readings)-1), shown(s.Return.Value), "a last reading that comes back to the first: did the bracket slip or the dial stick?")
	}
	if s.Drift.P < limit {
		w.add(readings, shown(s.Drift.Value)+" a reading", "readings that do not drift: did the bracket creep or the machine warm up?")
	}
	if s.Scatter.P < limit {
		w.add(readings, ratio(s.Scatter), "readings that scatter as their stated uncertainty says: a ratio near 1")
	}
}

// shown is a length for a person: to a tenth of a micrometre.
func shown(l units.Length) string { return l.Text(units.InMicrometres, 1) }

func degrees(a units.Angle) string { return a.Text(units.InDegrees, 0) }

// tested is how many residuals say something. One of a reading that the fit meets to
// the last digit does, one of a reading that alone decides does not.
func (e *examination) tested() (count int) {
	const decides = 1 - 1e-9 // as for align.Residuals
	for n, r := range e.residuals {
		if e.dev[n] != 0 && r.Leverage <= decides {
			count++
		}
	}
	return count
}

// warnOfResiduals warns of readings of a set that stand far from the fit.
func (e *examination) warnOfResiduals(w *remarks, readings check.Path, i, tested int) {
	for _, r := range e.residuals[e.first[i]:][:len(e.sets[i].Readings)] {
		if p, _, known := e.judge(r.Standardised); known && p < threshold(tested) {
			w.add(readings.Index(r.Reading), shown(r.Value)+" off the fit", fmt.Sprintf(
				"a reading that agrees with the others: the residual is %.1f times its own standard deviation", math.Abs(r.Standardised)))
		}
	}
}
