package align_test

import (
	"fmt"
	"log"
	"math"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// A rim and a face dial, read to 5 um, stations off a tape good to 1.5 mm and a
// face circle measured to 2 mm.
func taped() []align.Set {
	rim := align.Set{
		Probe:    align.Probe{Kind: align.Rim, Carrier: align.Stationary, Station: 60 * units.Millimetre},
		Readings: hundredths(0, 38, 112, 74),
		U:        align.Uncertainty{Reading: 5 * units.Micrometre, Station: 1.5 * units.Millimetre},
	}
	face := align.Set{
		Probe:    align.Probe{Kind: align.NearFace, Carrier: align.Stationary, Radius: 70 * units.Millimetre},
		Readings: hundredths(0, -20, -44, -24),
		U:        align.Uncertainty{Reading: 5 * units.Micrometre, Radius: 2 * units.Millimetre},
	}
	return []align.Set{rim, face}
}

// hundredths makes readings at the quarters, in hundredths of a millimetre.
func hundredths(values ...float64) []align.Reading {
	var list []align.Reading
	for i, v := range values {
		list = append(list, align.Reading{At: units.Three * units.Clock(i), Value: units.Length(v) * 10 * units.Micrometre})
	}
	return list
}

func ExampleBudget() {
	sets := taped()
	shares, err := align.Budget(sets...)
	if err != nil {
		log.Fatal(err)
	}
	found, err := align.Fit(sets...)
	if err != nil {
		log.Fatal(err)
	}
	const foot = 900 * units.Millimetre
	_, all := found.At(foot)
	fmt.Printf("u in height at the outboard feet: %.3f mm\n", all.Vertical.In(units.InMillimetres))
	for _, s := range shares {
		u := s.Cov.At(foot).Vertical
		fmt.Printf("set %d, %-7s %.3f mm, %2.0f %%\n", s.Set, s.Of.String()+":", u.In(units.InMillimetres), 100*float64(u*u/(all.Vertical*all.Vertical)))
	}
	// Output:
	// u in height at the outboard feet: 0.087 mm
	// set 0, reading: 0.004 mm,  0 %
	// set 0, station: 0.005 mm,  0 %
	// set 1, reading: 0.042 mm, 24 %
	// set 1, radius: 0.075 mm, 76 %
}

func ExampleCoverageFactor() {
	for _, dof := range []float64{2, 5, 20, 0} {
		k, err := align.CoverageFactor(0.95, dof)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Printf("%2.0f degrees of freedom: %.2f\n", dof, k)
	}
	// Output:
	//  2 degrees of freedom: 4.30
	//  5 degrees of freedom: 2.57
	// 20 degrees of freedom: 2.09
	//  0 degrees of freedom: 1.96
}

func ExampleEstimate_Expanded() {
	found, err := align.Fit(taped()...)
	if err != nil {
		log.Fatal(err)
	}
	half, err := found.Expanded(0.95)
	if err != nil {
		log.Fatal(err)
	}
	line := found.Value.Vertical
	fmt.Printf("offset %.3f mm +- %.3f mm\n", line.Offset.In(units.InMillimetres), half.Vertical.Offset.In(units.InMillimetres))
	fmt.Printf("slope %.2f mm/m +- %.2f mm/m, in 95 of 100 such measurements\n", 1e3*line.Slope, 1e3*half.Vertical.Slope)
	// Output:
	// offset -0.749 mm +- 0.017 mm
	// slope 3.14 mm/m +- 0.20 mm/m, in 95 of 100 such measurements
}

func ExampleEstimate_ExpandedAt() {
	found, err := align.Fit(taped()...)
	if err != nil {
		log.Fatal(err)
	}
	half, err := found.ExpandedAt(900*units.Millimetre, 0.95)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("+- %.2f mm sideways, +- %.2f mm in height\n", half.Horizontal.In(units.InMillimetres), half.Vertical.In(units.InMillimetres))
	// Output: +- 0.08 mm sideways, +- 0.17 mm in height
}

func ExampleMove_Expanded() {
	found, err := align.Fit(taped()...)
	if err != nil {
		log.Fatal(err)
	}
	moves, err := found.Corrections(align.Foot{Name: "outboard", X: 900 * units.Millimetre, U: 3 * units.Millimetre})
	if err != nil {
		log.Fatal(err)
	}
	half, err := moves[0].Expanded(0.95)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%v, good to %.2f mm\n", moves[0], half.Vertical.In(units.InMillimetres))
	// Output: outboard: lower 2.08 mm, push 0.06 mm towards 9 o'clock, good to 0.17 mm
}

// The scatter of four spare readings has four degrees of freedom; a tape beside
// it counts as known, so what both make has more.
func ExampleCovariance_EffectiveDoF() {
	sets := taped()
	for i := range sets {
		sets[i].U.Reading = 0
		sets[i].Readings = append(sets[i].Readings, align.Reading{At: 45, Value: 110 * units.Micrometre})
	}
	found, err := align.Fit(sets...)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("of the fit: %.0f\n", found.Cov.DoF)
	fmt.Printf("of the vertical offset: %.1f\n", found.Cov.EffectiveDoF([4]float64{2: 1}))
	// Output:
	// of the fit: 4
	// of the vertical offset: 4.2
}

func ExampleCovariance_At() {
	found, err := align.Fit(taped()...)
	if err != nil {
		log.Fatal(err)
	}
	for _, x := range []units.Length{0, 300 * units.Millimetre, 900 * units.Millimetre} {
		fmt.Printf("%v from the coupling: u %.3f mm in height\n", x, found.Cov.At(x).Vertical.In(units.InMillimetres))
	}
	// Output:
	// 0 mm from the coupling: u 0.009 mm in height
	// 300 mm from the coupling: u 0.025 mm in height
	// 900 mm from the coupling: u 0.087 mm in height
}

func ExampleCoupling_FlexUncertainty() {
	found, err := align.Fit(taped()...)
	if err != nil {
		log.Fatal(err)
	}
	stationary, movable, err := align.Coupling{Span: 400 * units.Millimetre}.FlexUncertainty(found.Cov)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("u of the vertical tilts: %.3f mm/m and %.3f mm/m\n", 1e3*stationary.Vertical, 1e3*movable.Vertical)
	// Output: u of the vertical tilts: 0.039 mm/m and 0.069 mm/m
}

func ExampleSet_Expect() {
	sets := taped()
	target := align.Exact(align.Centreline{Vertical: align.Line{Offset: -80 * units.Micrometre}})
	readings, err := sets[0].Expect(target, units.Twelve, units.Three, units.Six)
	if err != nil {
		log.Fatal(err)
	}
	for _, r := range readings {
		fmt.Printf("%v: %.3f mm, u %.3f mm\n", r.At, r.Value.In(units.InMillimetres), r.U.In(units.InMillimetres))
	}
	// Output:
	// 12:00: 0.000 mm, u 0.000 mm
	// 3:00: 0.080 mm, u 0.007 mm
	// 6:00: 0.160 mm, u 0.007 mm
}

// What a dial reading is good to: rounded to marks of 0.01 mm, calibrated to 3 um,
// and repeating with 4 um, which was found from ten readings.
func ExampleCombine() {
	u, dof, err := align.Combine(
		align.Part[units.Length]{U: units.Length(float64(10*units.Micrometre) / math.Sqrt(12))},
		align.Part[units.Length]{U: 3 * units.Micrometre},
		align.Part[units.Length]{U: 4 * units.Micrometre, DoF: 9})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("u %s, %.0f degrees of freedom\n", u.Text(units.InMicrometres, 1), dof)
	// Output: u 5.8 um, 39 degrees of freedom
}
