package arc_test

import (
	"fmt"
	"log"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
)

// sweeps are two dials on rims, read at seven positions over 150 degrees to 5 um. On
// the second the shaft was turned back a little before the fifth reading, and
// the third was written down 0.05 mm too large.
func sweeps() []align.Set {
	clocks := []units.Clock{0, 25, 50, 75, 100, 125, 150}
	back := []units.Clock{0, 25, 50, 75, 70, 125, 150}
	dial := func(carrier align.Shaft, x units.Length, at []units.Clock, hundredths ...float64) align.Set {
		set := align.Set{
			Probe: align.Probe{Kind: align.Rim, Carrier: carrier, Station: x},
			U:     align.Uncertainty{Reading: 5 * units.Micrometre},
		}
		for i, v := range hundredths {
			set.Readings = append(set.Readings, align.Reading{At: at[i], Value: units.Length(v) * 10 * units.Micrometre})
		}
		return set
	}
	return []align.Set{
		dial(align.Stationary, 100*units.Millimetre, clocks, 0, 6, 15, 25.5, 35.5, 44, 49),
		dial(align.Movable, -80*units.Millimetre, back, 0, -5, -8, -20.5, -19, -31.5, -33.5),
	}
}

func ExampleDiagnose() {
	sets := sweeps()
	found, err := align.Fit(sets...)
	if err != nil {
		log.Fatal(err)
	}
	d, err := arc.Diagnose(found, sets...)
	if err != nil {
		log.Fatal(err)
	}
	for i, s := range d.Sweeps {
		fmt.Printf("set %d: %s covered, drift %s +- %s a reading, chi-square %.1f times its freedom\n", i,
			s.Arc.Covered.Text(units.InDegrees, 0), s.Drift.Value.Text(units.InMicrometres, 0), s.Drift.U.Text(units.InMicrometres, 0), s.Scatter.Ratio)
	}
	for _, w := range d.Warnings {
		fmt.Printf("%s: %s\n", w.Path, w.Value)
	}
	// Output:
	// set 0: 150 deg covered, drift 13 um +- 10 um a reading, chi-square 0.5 times its freedom
	// set 1: 150 deg covered, drift -8 um +- 5 um a reading, chi-square 15.7 times its freedom
	// /sets: chi-square is 8.1 times its degrees of freedom
	// /sets/1/readings/4: 2:20
	// /sets/1/readings: chi-square is 15.7 times its degrees of freedom
	// /sets/1/readings/2: 33.7 um off the fit
}
