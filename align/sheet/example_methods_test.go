package sheet_test

import (
	"fmt"
	"log"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/sheet"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// onBoard prints a working as a trainer writes it down: what is sought, the numbers put
// in, and the answer.
func onBoard(s sheet.System, w sheet.Working, err error) {
	if err != nil {
		log.Fatal(err)
	}
	for _, step := range w.Steps(s) {
		fmt.Printf("%s: %s = %s\n", step.Sought, step.Filled, step.Answer)
	}
}

// The trainee's first job: the brine pump and its motor, one dial on each shaft.
func ExampleReverse() {
	w, err := sheet.Reverse(dial.Reverse{
		CarriedByStationary: dial.Rim{Station: 90 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 0, -6, -22, -16)},
		CarriedByMovable:    dial.Rim{Station: -90 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 0, 3, 14, 11)},
	}, align.Foot{Name: "inboard", X: 240 * units.Millimetre}, align.Foot{Name: "outboard", X: 640 * units.Millimetre})
	onBoard(sheet.Metric, w, err)
	// Output:
	// how far the readings of the dial that the stationary shaft carries miss the validity rule: (0 mm + (-0.22 mm)) - ((-0.06 mm) + (-0.16 mm)) = 0.000 mm
	// how far the readings of the dial that the movable shaft carries miss the validity rule: (0 mm + 0.14 mm) - (0.03 mm + 0.11 mm) = 0.000 mm
	// vertical total reading of the dial that the stationary shaft carries: 0 mm - (-0.22 mm) = 0.220 mm
	// vertical offset of the movable shaft where the dial that the stationary shaft carries stands: 0.220 mm/2 = 0.110 mm high
	// vertical total reading of the dial that the movable shaft carries: 0 mm - 0.14 mm = -0.140 mm
	// vertical offset of the movable shaft where the dial that the movable shaft carries stands: -(-0.140 mm)/2 = 0.070 mm high
	// vertical slope between the two dials: (0.110 mm - 0.070 mm)/(90 mm - (-90 mm)) = 0.222 mm/m open at 6 o'clock
	// vertical offset at the coupling centre: 0.110 mm - (0.222 mm/m) * 90 mm = 0.090 mm high
	// horizontal total reading of the dial that the stationary shaft carries: (-0.06 mm) - (-0.16 mm) = 0.100 mm
	// horizontal offset of the movable shaft where the dial that the stationary shaft carries stands: 0.100 mm/2 = 0.050 mm towards 3 o'clock
	// horizontal total reading of the dial that the movable shaft carries: 0.03 mm - 0.11 mm = -0.080 mm
	// horizontal offset of the movable shaft where the dial that the movable shaft carries stands: -(-0.080 mm)/2 = 0.040 mm towards 3 o'clock
	// horizontal slope between the two dials: (0.050 mm - 0.040 mm)/(90 mm - (-90 mm)) = 0.056 mm/m open at 9 o'clock
	// horizontal offset at the coupling centre: 0.050 mm - (0.056 mm/m) * 90 mm = 0.045 mm towards 3 o'clock
	// vertical position of the shaft at the inboard feet: 0.090 mm + (0.222 mm/m) * 240 mm = 0.143 mm high
	// vertical position of the shaft at the outboard feet: 0.090 mm + (0.222 mm/m) * 640 mm = 0.232 mm high
	// vertical correction at the inboard feet: -0.143 mm = lower 0.14 mm
	// vertical correction at the outboard feet: -0.232 mm = lower 0.23 mm
	// horizontal position of the shaft at the inboard feet: 0.045 mm + (0.056 mm/m) * 240 mm = 0.058 mm towards 3 o'clock
	// horizontal position of the shaft at the outboard feet: 0.045 mm + (0.056 mm/m) * 640 mm = 0.081 mm towards 3 o'clock
	// horizontal correction at the inboard feet: -0.058 mm = push 0.06 mm towards 9 o'clock
	// horizontal correction at the outboard feet: -0.081 mm = push 0.08 mm towards 9 o'clock
}

// A blower whose rim and face were swept from the blower's side, a gust guard in the way
// at 9 o'clock of the face.
func ExampleRimFace() {
	w, err := sheet.RimFace(dial.RimFace{
		Carrier: align.Movable,
		Rim:     dial.Rim{Station: -3 * units.Inch, Sag: units.Mil, Readings: dial.Quarters(units.Mil, 0, 2, 6, 4)},
		Face:    dial.Face{Diameter: 8 * units.Inch, Readings: dial.Quarters(units.Mil, 0, 3, 4, 0)[:3]},
	})
	onBoard(sheet.Inch, w, err)
	// Output:
	// how far the readings of the rim dial miss the validity rule: (0 mil + 6 mil) - (2 mil + 4 mil) = 0.00 mil
	// the reading of the face dial that was not taken: 0 mil + 4 mil - 3 mil = 1.00 mil
	// vertical total reading of the rim dial, sag taken off: (0 mil - 1 mil) - (6 mil + 1 mil) = -8.00 mil
	// vertical offset of the movable shaft where the rim dial stands: -(-8.00 mil)/2 = 4.00 mil high
	// vertical total reading of the face dial: 0 mil - 4 mil = -4.00 mil
	// vertical slope that the face dial sees: (-4.00 mil)/8 in = 0.500 mil/in open at 12 o'clock
	// vertical offset at the coupling centre: 4.00 mil - (-0.500 mil/in) * (-3 in) = 2.50 mil high
	// horizontal total reading of the rim dial: 2 mil - 4 mil = -2.00 mil
	// horizontal offset of the movable shaft where the rim dial stands: -(-2.00 mil)/2 = 1.00 mil towards 3 o'clock
	// horizontal total reading of the face dial: 3 mil - 1.00 mil = 2.00 mil
	// horizontal slope that the face dial sees: 2.00 mil/8 in = 0.250 mil/in open at 9 o'clock
	// horizontal offset at the coupling centre: 1.00 mil - (0.250 mil/in) * (-3 in) = 1.75 mil towards 3 o'clock
}

// A cooling tower fan: the spacer is two metres long, and a dial stands at each end.
func ExampleFaceFace() {
	w, err := sheet.FaceFace(dial.FaceFace{
		Span:         2000 * units.Millimetre,
		AtStationary: dial.Face{Diameter: 150 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 0, 4, 9, 5)},
		AtMovable:    dial.Face{Diameter: 150 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 0, -2, -6, -4)},
	})
	onBoard(sheet.Metric, w, err)
	// Output:
	// how far the readings of the face dial at the stationary joint miss the validity rule: (0 mm + 0.09 mm) - (0.04 mm + 0.05 mm) = 0.000 mm
	// how far the readings of the face dial at the movable joint miss the validity rule: (0 mm + (-0.06 mm)) - ((-0.02 mm) + (-0.04 mm)) = 0.000 mm
	// vertical total reading of the face dial at the stationary joint: 0 mm - 0.09 mm = -0.090 mm
	// vertical slope that the face dial at the stationary joint sees: (-0.090 mm)/150 mm = 0.600 mm/m open at 12 o'clock
	// vertical total reading of the face dial at the movable joint: 0 mm - (-0.06 mm) = 0.060 mm
	// vertical slope that the face dial at the movable joint sees: 0.060 mm/150 mm = 0.400 mm/m open at 6 o'clock
	// vertical slope between the shafts: (-0.600 mm/m) + (0.400 mm/m) = 0.200 mm/m open at 12 o'clock
	// vertical offset midway between the flex planes: ((-0.600 mm/m) - (0.400 mm/m)) * 2000 mm/2 = 1.000 mm low
	// horizontal total reading of the face dial at the stationary joint: 0.04 mm - 0.05 mm = -0.010 mm
	// horizontal slope that the face dial at the stationary joint sees: (-0.010 mm)/150 mm = 0.067 mm/m open at 3 o'clock
	// horizontal total reading of the face dial at the movable joint: (-0.02 mm) - (-0.04 mm) = 0.020 mm
	// horizontal slope that the face dial at the movable joint sees: 0.020 mm/150 mm = 0.133 mm/m open at 9 o'clock
	// horizontal slope between the shafts: (-0.067 mm/m) + (0.133 mm/m) = 0.067 mm/m open at 9 o'clock
	// horizontal offset midway between the flex planes: ((-0.067 mm/m) - (0.133 mm/m)) * 2000 mm/2 = 0.200 mm towards 9 o'clock
}

// No face dial at hand: the gap is felt with a feeler.
func ExampleRimGap() {
	w, err := sheet.RimGap(dial.RimGap{
		Carrier: align.Stationary,
		Rim:     dial.Rim{Station: 40 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 0, 4, 10, 6)},
		Gap:     dial.Gap{Diameter: 160 * units.Millimetre, Readings: dial.Quarters(units.Millimetre/100, 305, 300, 297, 302)},
	}, align.Foot{Name: "rear", X: 500 * units.Millimetre})
	onBoard(sheet.Metric, w, err)
	// Output:
	// how far the readings of the rim dial miss the validity rule: (0 mm + 0.1 mm) - (0.04 mm + 0.06 mm) = 0.000 mm
	// how far the readings of the gap gauge miss the validity rule: (3.05 mm + 2.97 mm) - (3 mm + 3.02 mm) = 0.000 mm
	// vertical total reading of the rim dial: 0 mm - 0.1 mm = -0.100 mm
	// vertical offset of the movable shaft where the rim dial stands: (-0.100 mm)/2 = 0.050 mm low
	// vertical total reading of the gap gauge: 3.05 mm - 2.97 mm = 0.080 mm
	// vertical slope that the gap gauge sees: -0.080 mm/160 mm = 0.500 mm/m open at 12 o'clock
	// vertical offset at the coupling centre: (-0.050 mm) - (-0.500 mm/m) * 40 mm = 0.030 mm low
	// horizontal total reading of the rim dial: 0.04 mm - 0.06 mm = -0.020 mm
	// horizontal offset of the movable shaft where the rim dial stands: (-0.020 mm)/2 = 0.010 mm towards 9 o'clock
	// horizontal total reading of the gap gauge: 3 mm - 3.02 mm = -0.020 mm
	// horizontal slope that the gap gauge sees: -(-0.020 mm)/160 mm = 0.125 mm/m open at 9 o'clock
	// horizontal offset at the coupling centre: (-0.010 mm) - (0.125 mm/m) * 40 mm = 0.015 mm towards 9 o'clock
	// vertical position of the shaft at the rear feet: (-0.030 mm) + (-0.500 mm/m) * 500 mm = 0.280 mm low
	// vertical correction at the rear feet: -(-0.280 mm) = raise 0.28 mm
	// horizontal position of the shaft at the rear feet: (-0.015 mm) + (0.125 mm/m) * 500 mm = 0.048 mm towards 3 o'clock
	// horizontal correction at the rear feet: -0.048 mm = push 0.05 mm towards 9 o'clock
}

// The first rough look at a conveyor drive, before any dial is mounted.
func ExampleStraightedgeGap() {
	w, err := sheet.StraightedgeGap(dial.StraightedgeGap{
		Straightedge: dial.Straightedge{On: align.Stationary, Station: units.Inch, Readings: dial.Quarters(units.Mil, 2, 10, 18, 10)},
		Gap:          dial.Gap{Diameter: 6 * units.Inch, Readings: dial.Quarters(units.Mil, 130, 127, 124, 127)},
	})
	onBoard(sheet.Inch, w, err)
	// Output:
	// how far the readings of the feeler under the straightedge miss the validity rule: (2 mil + 18 mil) - (10 mil + 10 mil) = 0.00 mil
	// how far the readings of the gap gauge miss the validity rule: (130 mil + 124 mil) - (127 mil + 127 mil) = 0.00 mil
	// vertical total reading of the feeler under the straightedge: 2 mil - 18 mil = -16.00 mil
	// vertical offset of the movable shaft where the feeler under the straightedge stands: -(-16.00 mil)/2 = 8.00 mil high
	// vertical total reading of the gap gauge: 130 mil - 124 mil = 6.00 mil
	// vertical slope that the gap gauge sees: -6.00 mil/6 in = 1.000 mil/in open at 12 o'clock
	// vertical offset at the coupling centre: 8.00 mil - (-1.000 mil/in) * 1 in = 9.00 mil high
	// horizontal total reading of the feeler under the straightedge: 10 mil - 10 mil = 0.00 mil
	// horizontal offset of the movable shaft where the feeler under the straightedge stands: -0.00 mil/2 = 0.00 mil
	// horizontal total reading of the gap gauge: 127 mil - 127 mil = 0.00 mil
	// horizontal slope that the gap gauge sees: -0.00 mil/6 in = 0.000 mil/in
	// horizontal offset at the coupling centre: 0.00 mil - (0.000 mil/in) * 1 in = 0.00 mil
}

// A turbine that grows from its base, and a generator whose growth was measured. The
// crew stands behind the turbine, so that the words for the sides are theirs.
func ExampleJob() {
	steel, err := thermal.FindMaterial("steel")
	if err != nil {
		log.Fatal(err)
	}
	leg := func(rise units.TemperatureDifference) []thermal.Piece {
		return []thermal.Piece{{Height: 20 * units.Inch, Material: steel, Rise: rise}}
	}
	w, err := sheet.Job{
		Reverse: &dial.Reverse{
			CarriedByStationary: dial.Rim{Station: 6 * units.Inch, Readings: dial.Quarters(units.Mil, 0, 5, 6, 1)},
			CarriedByMovable:    dial.Rim{Station: -6 * units.Inch, Readings: dial.Quarters(units.Mil, 0, -4, -10, -6)},
			View:                align.FromStationary,
		},
		Stationary: []thermal.Support{
			{Name: "governor end", X: -60 * units.Inch, Pieces: leg(90 * units.FahrenheitDegree)},
			{Name: "exhaust end", X: -20 * units.Inch, Pieces: leg(50 * units.FahrenheitDegree)},
		},
		Movable: []thermal.Support{
			{Name: "drive end", X: 24 * units.Inch, Measured: &thermal.Measured{By: align.Vector{Vertical: 3 * units.Mil}}},
			{Name: "free end", X: 84 * units.Inch, Measured: &thermal.Measured{By: align.Vector{Vertical: 2 * units.Mil}}},
		},
		Feet: []align.Foot{{Name: "drive end", X: 24 * units.Inch}, {Name: "free end", X: 84 * units.Inch}},
	}.Working()
	onBoard(sheet.Inch, w, err)
	// Output:
	// how far the readings of the dial that the stationary shaft carries miss the validity rule: (0 mil + 6 mil) - (5 mil + 1 mil) = 0.00 mil
	// how far the readings of the dial that the movable shaft carries miss the validity rule: (0 mil + (-10 mil)) - ((-4 mil) + (-6 mil)) = 0.00 mil
	// vertical total reading of the dial that the stationary shaft carries: 0 mil - 6 mil = -6.00 mil
	// vertical offset of the movable shaft where the dial that the stationary shaft carries stands: (-6.00 mil)/2 = 3.00 mil low
	// vertical total reading of the dial that the movable shaft carries: 0 mil - (-10 mil) = 10.00 mil
	// vertical offset of the movable shaft where the dial that the movable shaft carries stands: -10.00 mil/2 = 5.00 mil low
	// vertical slope between the two dials: ((-3.00 mil) - (-5.00 mil))/(6 in - (-6 in)) = 0.167 mil/in open at 6 o'clock
	// vertical offset at the coupling centre: (-3.00 mil) - (0.167 mil/in) * 6 in = 4.00 mil low
	// horizontal total reading of the dial that the stationary shaft carries: 5 mil - 1 mil = 4.00 mil
	// horizontal offset of the movable shaft where the dial that the stationary shaft carries stands: -4.00 mil/2 = 2.00 mil towards 3 o'clock
	// horizontal total reading of the dial that the movable shaft carries: (-4 mil) - (-6 mil) = 2.00 mil
	// horizontal offset of the movable shaft where the dial that the movable shaft carries stands: 2.00 mil/2 = 1.00 mil towards 9 o'clock
	// horizontal slope between the two dials: ((-2.00 mil) - 1.00 mil)/(6 in - (-6 in)) = 0.250 mil/in open at 9 o'clock
	// horizontal offset at the coupling centre: (-2.00 mil) - (-0.250 mil/in) * 6 in = 0.50 mil towards 3 o'clock
	// temperature rise: stationary machine, governor end: 90 °F = 90.0 °F
	// growth: stationary machine, governor end: 20 in * (0.0063 mil/in/°F) * 90.0 °F = 11.34 mil high
	// temperature rise: stationary machine, exhaust end: 50 °F = 50.0 °F
	// growth: stationary machine, exhaust end: 20 in * (0.0063 mil/in/°F) * 50.0 °F = 6.30 mil high
	// vertical slope of the growth of the stationary machine, x counting from the stationary machine to the movable one: (6.30 mil - 11.34 mil)/((-20 in) - (-60 in)) = 0.126 mil/in falling along x
	// vertical growth of the stationary machine, carried to the coupling centre: 11.34 mil - (-0.126 mil/in) * (-60 in) = 3.78 mil high
	// vertical slope of the growth of the movable machine, x counting from the stationary machine to the movable one: (2 mil - 3 mil)/(84 in - 24 in) = 0.017 mil/in falling along x
	// vertical growth of the movable machine, carried to the coupling centre: 3 mil - (-0.017 mil/in) * 24 in = 3.40 mil high
	// vertical offset that the shafts should have cold: 3.78 mil - 3.40 mil = 0.38 mil high
	// vertical slope that the shafts should have cold: (-0.126 mil/in) - (-0.017 mil/in) = 0.109 mil/in open at 12 o'clock
	// vertical position of the shaft at the drive end feet: (-4.00 mil) + (0.167 mil/in) * 24 in = 0.00 mil
	// vertical position of the shaft at the free end feet: (-4.00 mil) + (0.167 mil/in) * 84 in = 10.00 mil high
	// vertical position that the shaft should have at the drive end feet, cold: 0.38 mil + (-0.109 mil/in) * 24 in = 2.24 mil low
	// vertical position that the shaft should have at the free end feet, cold: 0.38 mil + (-0.109 mil/in) * 84 in = 8.80 mil low
	// vertical correction at the drive end feet: (-2.24 mil) - 0.00 mil = lower 2.2 mil
	// vertical correction at the free end feet: (-8.80 mil) - 10.00 mil = lower 18.8 mil
	// horizontal position of the shaft at the drive end feet: (-0.50 mil) + (-0.250 mil/in) * 24 in = 6.50 mil towards 3 o'clock
	// horizontal position of the shaft at the free end feet: (-0.50 mil) + (-0.250 mil/in) * 84 in = 21.50 mil towards 3 o'clock
	// horizontal correction at the drive end feet: -(-6.50 mil) = push 6.5 mil towards 9 o'clock
	// horizontal correction at the free end feet: -(-21.50 mil) = push 21.5 mil towards 9 o'clock
}
