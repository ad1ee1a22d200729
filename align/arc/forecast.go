package arc

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Prospect is what readings at given clock positions will tell, before they are
// taken. The zero value promises an exact answer: it is of no forecast.
type Prospect struct {
	Arc              units.Angle      `json:"arc"`                // that the narrowest set covers; of a spread over a full turn, the full turn
	Cov              align.Covariance `json:"cov"`                // of the centreline that will be found
	Condition        float64          `json:"condition"`          // as align.Fitted has it: about 1 for a full turn with probes well apart
	DegreesOfFreedom int              `json:"degrees_of_freedom"` // readings that will be left over
	UCoupling        align.Vector     `json:"u_coupling"`         // standard uncertainty of the offset at the coupling centre
	Feet             []align.Move     `json:"feet,omitempty"`     // By: the correction if the expected misalignment is found; U: its standard uncertainty
}

// Outlook is a forecast for the arc that is there, and for wider ones.
type Outlook struct {
	Now   Prospect   `json:"now"`
	Wider []Prospect `json:"wider,omitempty"` // from narrow to wide
}

// widths are the arcs that a forecast tries, in degrees.
var widths = [...]units.Clock{90, 120, 180, 270, fullTurn}

// Forecast tells how well a measurement will know the centreline, before it is
// made: the fit's covariance for sets whose readings say where and how well the
// probes will be read, and what a wider arc would buy. Values of readings are not
// used.
//
// Expected is about what will be found: the uncertainties of station, radius,
// clock and angle count in proportion to it, or to the sag, while those of readings
// and sag do not depend on it. Of the zero value, in line, and without sag, only
// these last are left. Feet are where moves will be wanted; there may be none.
//
// Wider has the same number of readings spread evenly over 90, 120, 180, 270 and
// 360 degrees, about the middle of the arc of each set, as far as that is wider
// than its own: the first and the last at the ends of the arc, over a full turn
// one step apart. A set that covers more already keeps its positions. Each
// reading keeps its uncertainty, in the order of the list.
//
// For N readings of standard uncertainty u dense over an arc of 2h, one probe sees
// the displacement of its station with
//
//	u/sqrt(N (1/2 + sin 2h/(4h) - (sin h/h)^2))      along the arc's middle
//	u/sqrt(N (1/2 - sin 2h/(4h)))                    across it
//
// so that half the arc costs far more than half the readings: on 90 degrees 8 times
// a full turn's uncertainty along the middle, on 60 degrees 18 times. Derived here.
// Common practice asks for at least three readings over about a quarter turn; no
// source was found.
//
// To first order (JCGM 100:2008, 5.2), with the linear law of [align.Fit]: it
// forecasts what the readings' uncertainty brings, not the circle of the rim on a
// partial arc, nor backlash. It is that fit's covariance for readings that fit
// exactly, to some rounding units times the condition.
//
// It refuses what Fit refuses, the values left out, with paths below /sets; a set
// without an uncertainty of its readings (Missing, at /sets/0/u/reading); an
// expected misalignment that is not finite or makes readings that no machine can
// hold (/expected); and feet as [align.Estimate.Corrections] does (/feet).
func Forecast(expected align.Centreline, feet []align.Foot, sets ...align.Set) (Outlook, error) {
	sets = blank(sets)
	if err := checkForecast(expected, feet, sets); err != nil {
		return Outlook{}, err
	}
	now, err := prospect(expected, feet, sets)
	if err != nil {
		return Outlook{}, err
	}
	now.Arc = narrowest(sets)
	o := Outlook{Now: now}
	for _, width := range widths {
		wider, gained := spread(sets, width)
		if !gained {
			continue
		}
		p, err := prospect(expected, feet, wider)
		if err != nil {
			return Outlook{}, err
		}
		p.Arc = angle(width)
		o.Wider = append(o.Wider, p)
	}
	return o, nil
}

// blank returns the sets with readings of their own, without values.
func blank(sets []align.Set) []align.Set {
	sets = clone(sets)
	for _, s := range sets {
		for j := range s.Readings {
			s.Readings[j].Value = 0
		}
	}
	return sets
}

// prospect fits the readings that the expected misalignment will make.
func prospect(expected align.Centreline, feet []align.Foot, sets []align.Set) (Prospect, error) {
	if err := foresee(expected, sets); err != nil {
		return Prospect{}, err
	}
	f, err := align.Fit(sets...)
	if err != nil {
		return Prospect{}, err
	}
	e := align.Estimate{Value: expected, Cov: f.Cov}
	p := Prospect{Cov: f.Cov, Condition: f.Condition, DegreesOfFreedom: f.DegreesOfFreedom}
	_, p.UCoupling = e.At(0)
	if len(feet) > 0 {
		p.Feet, err = e.Corrections(feet...)
	}
	return p, err
}

// foresee writes the values that the expected misalignment makes.
func foresee(expected align.Centreline, sets []align.Set) error {
	for i := range sets {
		readings := sets[i].Readings
		at := make([]units.Clock, len(readings))
		for j := range readings {
			at[j] = readings[j].At
		}
		for j, r := range predicted(sets[i], expected, at...) {
			if !check.Sound(r.Value) {
				return &units.Fault{Code: units.OutOfRange, Path: "/expected", Want: "a misalignment that makes readings which can be reckoned with"}
			}
			readings[j].Value = r.Value
		}
	}
	return nil
}

// narrowest is the least arc that a set covers.
func narrowest(sets []align.Set) units.Angle {
	least := angle(fullTurn)
	for i := range sets {
		covered, _, _ := arcOf(sets[i].Readings, sets[i].View)
		least = min(least, covered)
	}
	return least
}
