package align_test

import (
	"errors"
	"fmt"
	"log"
	"math"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// A reverse-dial job: one rim dial carried by each shaft, read at 12, 3, 6 and 9
// to 0.01 mm, good to 5 um.
func ExampleFit() {
	u := align.Uncertainty{Reading: 5 * units.Micrometre}
	onMovable := align.Set{
		Probe: align.Probe{Kind: align.Rim, Carrier: align.Stationary, Station: 90 * units.Millimetre}, U: u,
		Readings: []align.Reading{
			{At: units.Twelve}, {At: units.Three, Value: -60 * units.Micrometre},
			{At: units.Six, Value: -220 * units.Micrometre}, {At: units.Nine, Value: -160 * units.Micrometre},
		},
	}
	onStationary := align.Set{
		Probe: align.Probe{Kind: align.Rim, Carrier: align.Movable, Station: -90 * units.Millimetre}, U: u,
		Readings: []align.Reading{
			{At: units.Twelve}, {At: units.Three, Value: 30 * units.Micrometre},
			{At: units.Six, Value: 140 * units.Micrometre}, {At: units.Nine, Value: 110 * units.Micrometre},
		},
	}
	found, err := align.Fit(onMovable, onStationary)
	if err != nil {
		log.Fatal(err)
	}
	standard := found.Cov.Standard()
	fmt.Println("high by", found.Value.Vertical.Offset.Text(units.InMillimetres, 3), "+/-", standard.Vertical.Offset.Text(units.InMillimetres, 3))
	fmt.Println("climbing away by", found.Value.Vertical.Slope.Text(units.InMillimetresPerMetre, 3), "+/-", standard.Vertical.Slope.Text(units.InMillimetresPerMetre, 3))
	fmt.Println("readings left over:", found.DegreesOfFreedom)
	// Output:
	// high by 0.090 mm +/- 0.003 mm
	// climbing away by 0.222 mm/m +/- 0.028 mm/m
	// readings left over: 2
}

// One dial sees only what stands at its own rim.
func ExampleFit_unseen() {
	alone := align.Set{
		Probe: align.Probe{Kind: align.Rim, Carrier: align.Stationary},
		Readings: []align.Reading{
			{At: units.Twelve}, {At: units.Three, Value: units.Mil}, {At: units.Six, Value: 2 * units.Mil},
		},
	}
	_, err := align.Fit(alone)
	fmt.Println(errors.Is(err, units.Unseen))
	fmt.Println(err)
	// Output:
	// true
	// /sets: want readings that see the horizontal slope, vertical slope (unseen)
}

// The dial at 6 was read 0.04 mm off: its own sweep cannot tell which of the
// four it was, for each miss shows in all of them alike.
func ExampleResiduals() {
	sweep := func(p align.Probe, at3, at6, at9 units.Length) align.Set {
		return align.Set{Probe: p, Readings: []align.Reading{
			{At: units.Twelve}, {At: units.Three, Value: at3}, {At: units.Six, Value: at6}, {At: units.Nine, Value: at9},
		}}
	}
	sets := []align.Set{
		sweep(align.Probe{Kind: align.Rim, Carrier: align.Stationary}, 100*units.Micrometre, 240*units.Micrometre, 100*units.Micrometre),
		sweep(align.Probe{Kind: align.NearFace, Carrier: align.Stationary, Radius: 80 * units.Millimetre}, 20*units.Micrometre, 60*units.Micrometre, 40*units.Micrometre),
	}
	found, err := align.Fit(sets...)
	if err != nil {
		log.Fatal(err)
	}
	residuals, err := align.Residuals(nil, sets, found)
	if err != nil {
		log.Fatal(err)
	}
	for _, r := range residuals[:4] {
		fmt.Printf("%v: %s, leverage %.2f\n", sets[r.Set].Readings[r.Reading].At, r.Value.Text(units.InMillimetres, 3), r.Leverage)
	}
	// Output:
	// 12:00: 0.010 mm, leverage 0.75
	// 3:00: -0.010 mm, leverage 0.75
	// 6:00: 0.010 mm, leverage 0.75
	// 9:00: -0.010 mm, leverage 0.75
}

// What the dial will show when the pump stands 0.10 mm high: its bracket droops
// by 0.02 mm.
func ExampleSet_Predict() {
	dial := align.Set{
		Probe: align.Probe{Kind: align.Rim, Carrier: align.Stationary, Station: 60 * units.Millimetre},
		Sag:   20 * units.Micrometre,
	}
	high := align.Centreline{Vertical: align.Line{Offset: 100 * units.Micrometre}}
	readings, err := dial.Predict(high, units.Twelve, units.Three, units.Six, units.Nine)
	if err != nil {
		log.Fatal(err)
	}
	for _, r := range readings {
		fmt.Println(r.At, r.Value.Text(units.InMillimetres, 2))
	}
	// Output:
	// 12:00 0.00 mm
	// 3:00 -0.12 mm
	// 6:00 -0.24 mm
	// 9:00 -0.12 mm
}

// H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair, ch. 5,
// p. 203 (read): the centreline is 0.012 in high at the stationary plane and
// 0.007 in high at the adjusted one, 14 in apart; the inboard feet are 12 in
// beyond, the outboard 26 in further. Printed: lower 2.7 mils, raise 6.6 (0.0066
// in). Vertical only.
func ExampleEstimate_Corrections() {
	vertical, err := align.Through(
		align.Point{X: -7 * units.Inch, W: 12 * units.Mil},
		align.Point{X: +7 * units.Inch, W: 7 * units.Mil})
	if err != nil {
		log.Fatal(err)
	}
	found := align.Exact(align.Centreline{Vertical: vertical})
	moves, err := found.Corrections(
		align.Foot{Name: "inboard", X: 19 * units.Inch},
		align.Foot{Name: "outboard", X: 45 * units.Inch})
	if err != nil {
		log.Fatal(err)
	}
	for _, m := range moves {
		fmt.Println(m.Text(align.Style{Unit: units.InMils}))
	}
	// Output:
	// inboard: lower 2.7 mil, leave sideways
	// outboard: raise 6.6 mil, leave sideways
}

// While a machine is being moved the same list is filled again and again.
func ExampleEstimate_AppendCorrections() {
	feet := []align.Foot{{Name: "front", X: 250 * units.Millimetre}, {Name: "rear", X: 750 * units.Millimetre}}
	moves := make([]align.Move, 0, len(feet))
	for _, slope := range []units.Slope{0.4 * units.MillimetrePerMetre, 0} {
		now := align.Exact(align.Centreline{Vertical: align.Line{Slope: slope}})
		var err error
		if moves, err = now.AppendCorrections(moves[:0], feet...); err != nil {
			log.Fatal(err)
		}
		fmt.Println(moves[0], "|", moves[1])
	}
	// Output:
	// front: lower 0.10 mm, leave sideways | rear: lower 0.30 mm, leave sideways
	// front: leave | rear: leave
}

// What was found less the target: a motor that will rise by 0.12 mm is set so
// much low when cold.
func ExampleEstimate_Minus() {
	found := align.Exact(align.Centreline{Vertical: align.Line{Offset: 50 * units.Micrometre}})
	target := align.Exact(align.Centreline{Vertical: align.Line{Offset: -120 * units.Micrometre}})
	fmt.Println(found.Minus(target).Value.Vertical.Offset, "too high")
	// Output: 0.17 mm too high
}

// Running is cold plus what both machines grow. The uncertainties of independent
// parts add in squares.
func ExampleEstimate_Plus() {
	part := func(offset, u units.Length) align.Estimate {
		cov, err := align.NewCovariance(align.Stated, align.Centreline{Vertical: align.Line{Offset: u}}, uncorrelated)
		if err != nil {
			log.Fatal(err)
		}
		return align.Estimate{Value: align.Centreline{Vertical: align.Line{Offset: offset}}, Cov: cov}
	}
	cold, growth := part(-80*units.Micrometre, 3*units.Micrometre), part(100*units.Micrometre, 4*units.Micrometre)
	running := cold.Plus(growth)
	fmt.Println(running.Value.Vertical.Offset, "high +/-", running.Cov.Standard().Vertical.Offset)
	// Output: 0.02 mm high +/- 0.005 mm
}

var uncorrelated = [4][4]float64{{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}}

// Half way up to speed, a machine has made half of its growth.
func ExampleEstimate_Times() {
	growth := align.Exact(align.Centreline{Vertical: align.Line{Offset: 120 * units.Micrometre, Slope: 0.1 * units.MillimetrePerMetre}})
	half := growth.Times(0.5).Value.Vertical
	fmt.Println("up", half.Offset, "climbing away by", half.Slope)
	// Output: up 0.06 mm climbing away by 0.05 mm/m
}

// The further from the coupling, the less is known.
func ExampleEstimate_At() {
	cov, err := align.NewCovariance(align.Stated, align.Centreline{
		Vertical: align.Line{Offset: 3 * units.Micrometre, Slope: 0.02 * units.MillimetrePerMetre},
	}, uncorrelated)
	if err != nil {
		log.Fatal(err)
	}
	found := align.Estimate{Value: align.Centreline{Vertical: align.Line{Slope: 0.2 * units.MillimetrePerMetre}}, Cov: cov}
	for _, x := range []units.Length{0, 200 * units.Millimetre, units.Metre} {
		w, u := found.At(x)
		fmt.Println(x, w.Vertical.Text(units.InMicrometres, 0), "+/-", u.Vertical.Text(units.InMicrometres, 0))
	}
	// Output:
	// 0 mm 0 um +/- 3 um
	// 200 mm 40 um +/- 5 um
	// 1000 mm 200 um +/- 20 um
}

// A target off the maker's sheet is exact by declaration.
func ExampleExact() {
	target := align.Exact(align.Centreline{Vertical: align.Line{Offset: -4 * units.Mil}})
	fmt.Println(target.Cov.Basis, target.Cov.Standard().Vertical.Offset)
	// Output: declared 0 mm
}

// Standard uncertainties from a calibration report, with offset and slope that
// were found by the same two dials and so belong together.
func ExampleNewCovariance() {
	u := align.Centreline{
		Horizontal: align.Line{Offset: 4 * units.Micrometre, Slope: 0.03 * units.MillimetrePerMetre},
		Vertical:   align.Line{Offset: 4 * units.Micrometre, Slope: 0.03 * units.MillimetrePerMetre},
	}
	together := uncorrelated
	together[0][1], together[1][0] = -0.4, -0.4
	together[2][3], together[3][2] = -0.4, -0.4
	cov, err := align.NewCovariance(align.Stated, u, together)
	fmt.Println(cov.Basis, err)

	together[0][1] = 0.4
	_, err = align.NewCovariance(align.Stated, u, together)
	fmt.Println(err)
	// Output:
	// stated <nil>
	// /correlation/0/1: want a symmetric matrix with ones on its diagonal, got 0.4 (conflict)
}

// Three readings to a dial fit any circle, so they tell nothing of their own
// uncertainty. It is not a number, and never zero.
func ExampleCovariance_Standard() {
	three := []align.Reading{{At: units.Twelve}, {At: units.Three, Value: 3 * units.Mil}, {At: units.Six, Value: 5 * units.Mil}}
	found, err := align.Fit(
		align.Set{Probe: align.Probe{Kind: align.Rim, Carrier: align.Stationary}, Readings: three},
		align.Set{Probe: align.Probe{Kind: align.NearFace, Carrier: align.Stationary, Radius: 3 * units.Inch}, Readings: three})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(found.Cov.Basis, found.Cov.Standard().Vertical.Offset)
	// Output: unknown NaN mm
}

// Two dials on the same side of the coupling: an error that lifts the offset
// there tilts the line as well.
func ExampleCovariance_Correlation() {
	dial := func(carrier align.Shaft, x units.Length) align.Set {
		s := align.Set{Probe: align.Probe{Kind: align.Rim, Carrier: carrier, Station: x}}
		var err error
		if s.Readings, err = s.Predict(align.Centreline{}, units.Twelve, units.Three, units.Six, units.Nine); err != nil {
			log.Fatal(err)
		}
		s.U.Reading = 5 * units.Micrometre
		return s
	}
	found, err := align.Fit(dial(align.Stationary, 200*units.Millimetre), dial(align.Movable, 100*units.Millimetre))
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("%.2f\n", found.Cov.Correlation()[2][3])
	// Output: -0.95
}

// A slope that was divided by nothing is found before it goes any further.
func ExampleEstimate_Validate() {
	var off align.Estimate
	off.Value.Vertical.Slope = units.Slope(math.Inf(1))
	fmt.Println(off.Validate())
	// Output:
	// /value/vertical/slope: want a finite number, got +Inf mm/m (not_finite)
}
