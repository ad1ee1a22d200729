package arc

import (
	"fmt"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// report says of every reading what it counted for.
func (s *search) report(r *Robust, sets []align.Set, weights []float64) error {
	left, err := align.Residuals(nil, sets, r.Fitted)
	if err != nil {
		return err
	}
	n := 0
	for i := range sets {
		own := left[n : n+len(sets[i].Readings)]
		zero := s.zero(own, n, weights)
		for _, l := range own {
			w := Weight{Set: l.Set, Reading: l.Reading, Weight: weights[n], Residual: l.Value - zero, Judged: s.judge[n]}
			if s.stated || r.Scale != 0 {
				w.Off = float64(w.Residual / s.dev[n])
			}
			r.Weights = append(r.Weights, w)
			n++
		}
	}
	return nil
}

// zero is the mean residual of a set under the given weights: readings that count
// for nothing have no part in where its zero stands. Own are its residuals, the
// first of them that of reading n.
func (s *search) zero(own []align.Residual, n int, weights []float64) units.Length {
	var sum, all units.Length
	for i, l := range own {
		w := units.Length(weights[n+i]) / s.u[n+i] / s.u[n+i]
		sum += units.Length(float64(w) * float64(l.Value))
		all += w
	}
	if all == 0 {
		return 0
	}
	return sum / all
}

// warn puts into words what a person has to know.
func (s *search) warn(r *Robust, sets []align.Set) {
	var root check.Path
	list := root.Field("sets")
	if !r.Settled {
		r.suspect(list, "", "readings of which most agree: these settle on no answer")
	}
	if !s.stated && r.Scale == 0 {
		r.suspect(list, fmt.Sprintf("%d readings left over", r.DegreesOfFreedom),
			"a stated uncertainty, or at least four readings left over: without, nothing tells a bad one")
		return
	}
	n := 0
	for i := range sets {
		set := list.Index(i)
		readings := set.Field("readings")
		blind := 0
		for j := range sets[i].Readings {
			if !s.judge[n] {
				blind++
			}
			if w := r.Weights[n]; w.Weight < 1 {
				r.suspect(readings.Index(j), sets[i].Readings[j].Value.String(), counted(w))
			}
			n++
		}
		if blind > 0 {
			r.suspect(readings, fmt.Sprintf("%d of %d not judged", blind, len(sets[i].Readings)),
				"more readings, at other positions: with these, a bad one cannot be told from another")
		}
	}
}

// counted says why a reading counts for less than 1.
func counted(w Weight) string {
	if w.Weight == 0 {
		return fmt.Sprintf("a reading that agrees with the others: it stands %.1f standard deviations off and is left out", w.Off)
	}
	return fmt.Sprintf("a reading that agrees with the others: it stands %.1f standard deviations off and counts for %.2f of one", w.Off, w.Weight)
}

// suspect adds a warning.
func (r *Robust) suspect(at check.Path, value, want string) {
	r.Warnings = append(r.Warnings, suspect(at, value, want))
}
