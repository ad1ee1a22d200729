package sheet_test

import (
	"log"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/flange"
	"example.org/collinear/align/sheet"
	"example.org/collinear/shims"
	"example.org/collinear/softfoot"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// A dial that was zeroed at the top, on a bracket that hung on a pipe first; the class
// wants the readings from zero at 3 o'clock.
func ExampleSweep() {
	w, err := sheet.Sweep{
		Carrier: align.Stationary,
		Rim:     dial.Rim{Readings: dial.Quarters(units.Mil, 0, 1, 10, 9)},
		Zero:    units.Three,
		Mandrel: &sheet.Sag{At12: 0, At6: -6 * units.Mil},
	}.Working()
	onBoard(sheet.Inch, w, err)
	// Output:
	// sag of the bracket: (0 mil - (-6 mil))/2 = 3.00 mil
	// reading at 12 o'clock from zero at 3, without sag: 0 mil - 1 mil - 3.00 mil = -4.00 mil
	// reading at 3 o'clock from zero at 3: 1 mil - 1 mil = 0.00 mil
	// reading at 6 o'clock from zero at 3, without sag: 10 mil - 1 mil + 3.00 mil = 12.00 mil
	// reading at 9 o'clock from zero at 3: 9 mil - 1 mil = 8.00 mil
	// how far the readings of the rim dial miss the validity rule: ((-4.00 mil) + 12.00 mil) - (0.00 mil + 8.00 mil) = 0.00 mil
	// vertical total reading of the rim dial: (-4.00 mil) - 12.00 mil = -16.00 mil
	// vertical offset of the movable shaft where the rim dial stands: (-16.00 mil)/2 = 8.00 mil low
	// horizontal total reading of the rim dial: 0.00 mil - 8.00 mil = -8.00 mil
	// horizontal offset of the movable shaft where the rim dial stands: (-8.00 mil)/2 = 4.00 mil towards 9 o'clock
}

// The bracket on the mandrel, by itself.
func ExampleSag() {
	w, err := sheet.Sag{At12: 0, At6: -70 * units.Micrometre}.Working()
	onBoard(sheet.Metric, w, err)
	// Output:
	// sag of the bracket: (0 mm - (-0.07 mm))/2 = 0.035 mm
}

// How far do the faces of a 6 in coupling open?
func ExampleGapFromSlope() {
	w, err := sheet.GapFromSlope{
		Diameter: 6 * units.Inch,
		Centreline: align.Centreline{
			Vertical:   align.Line{Slope: 0.4 * units.MilPerInch},
			Horizontal: align.Line{Slope: -0.3 * units.MilPerInch},
		},
	}.Working()
	onBoard(sheet.Inch, w, err)
	// Output:
	// vertical opening of the coupling: (0.4 mil/in) * 6 in = 2.40 mil open at 6 o'clock
	// horizontal opening of the coupling: (-0.3 mil/in) * 6 in = 1.80 mil open at 3 o'clock
	// opening at the widest place: sqrt(2.40 mil * 2.40 mil + (-1.80 mil) * (-1.80 mil)) = 3.00 mil
}

// The maker of the pump wants 0.03 mm more at 6 o'clock, across 150 mm.
func ExampleSlopeFromGap() {
	w, err := sheet.SlopeFromGap{Opening: 30 * units.Micrometre, At: units.Six, Diameter: 150 * units.Millimetre}.Working()
	onBoard(sheet.Metric, w, err)
	// Output:
	// vertical slope of the movable shaft: -0.03 mm * cos(6:00)/150 mm = 0.200 mm/m open at 6 o'clock
	// horizontal slope of the movable shaft: -0.03 mm * sin(6:00)/150 mm = 0.000 mm/m
}

// Two packs of discs share the misalignment of a spacer coupling.
func ExampleFlexTilts() {
	w, err := sheet.FlexTilts{
		Span:       400 * units.Millimetre,
		Centreline: align.Centreline{Vertical: align.Line{Offset: 0.12 * units.Millimetre, Slope: 0.2 * units.MillimetrePerMetre}},
	}.Working()
	onBoard(sheet.Metric, w, err)
	// Output:
	// vertical tilt at the flex plane of the stationary machine: the spacer less the shaft: (0.2 mm/m)/2 + 0.12 mm/400 mm = 0.400 mm/m open at 6 o'clock
	// vertical tilt at the flex plane of the movable machine: the shaft less the spacer: (0.2 mm/m)/2 - 0.12 mm/400 mm = 0.200 mm/m open at 12 o'clock
	// horizontal tilt at the flex plane of the stationary machine: the spacer less the shaft: (0 mm/m)/2 + 0 mm/400 mm = 0.000 mm/m
	// horizontal tilt at the flex plane of the movable machine: the shaft less the spacer: (0 mm/m)/2 - 0 mm/400 mm = 0.000 mm/m
}

// A hot oil pump on two pedestals, and a motor that hardly warms up. One pedestal is of
// two materials.
func ExampleColdTarget() {
	steel, err := thermal.FindMaterial("steel")
	if err != nil {
		log.Fatal(err)
	}
	concrete, err := thermal.FindMaterial("concrete")
	if err != nil {
		log.Fatal(err)
	}
	warm := []thermal.Spot{{Running: units.Celsius(65)}}
	w, err := sheet.ColdTarget{
		Stationary: []thermal.Support{
			{Name: "far", X: -900 * units.Millimetre, Pieces: []thermal.Piece{
				{Height: 500 * units.Millimetre, Material: steel, Profile: warm},
			}},
			{Name: "near", X: -300 * units.Millimetre, Pieces: []thermal.Piece{
				{Height: 200 * units.Millimetre, Material: concrete, Rise: 10 * units.Kelvin},
				{Height: 300 * units.Millimetre, Material: steel, Profile: warm},
			}},
		},
		Feet: []align.Foot{{Name: "front", X: 350 * units.Millimetre}},
	}.Working()
	onBoard(sheet.Metric, w, err)
	// Output:
	// temperature rise: stationary machine, far: 65 °C - 20 °C = 45.0 K
	// growth: stationary machine, far: 500 mm * (11.34 um/m/K) * 45.0 K = 0.255 mm high
	// temperature rise: stationary machine, near, piece 1: 10 K = 10.0 K
	// growth: stationary machine, near, piece 1: 200 mm * (14.5 um/m/K) * 10.0 K = 0.029 mm high
	// temperature rise: stationary machine, near, piece 2: 65 °C - 20 °C = 45.0 K
	// growth: stationary machine, near, piece 2: 300 mm * (11.34 um/m/K) * 45.0 K = 0.153 mm high
	// growth: stationary machine, near: 0.029 mm + 0.153 mm = 0.182 mm high
	// vertical slope of the growth of the stationary machine, x counting from the stationary machine to the movable one: (0.182 mm - 0.255 mm)/((-300 mm) - (-900 mm)) = 0.122 mm/m falling along x
	// vertical growth of the stationary machine, carried to the coupling centre: 0.255 mm - (-0.122 mm/m) * (-900 mm) = 0.146 mm high
	// vertical offset that the shafts should have cold: 0.146 mm - 0 mm = 0.146 mm high
	// vertical slope that the shafts should have cold: (-0.122 mm/m) - (0 mm/m) = 0.122 mm/m open at 12 o'clock
	// vertical position that the shaft should have at the front feet, cold: 0.146 mm + (-0.122 mm/m) * 350 mm = 0.103 mm high
}

// What the dial will show when the motor stands as it should.
func ExampleTargetReadings() {
	w, err := sheet.TargetReadings{
		Probe:      align.Probe{Kind: align.Rim, Carrier: align.Stationary, Station: 4 * units.Inch},
		Sag:        2 * units.Mil,
		Centreline: align.Centreline{Vertical: align.Line{Offset: -5 * units.Mil, Slope: 0.25 * units.MilPerInch}},
	}.Working()
	onBoard(sheet.Inch, w, err)
	// Output:
	// vertical offset where the dial stands: (-5 mil) + (0.25 mil/in) * 4 in = 4.00 mil low
	// horizontal offset where the dial stands: 0 mil + (0 mil/in) * 4 in = 0.00 mil
	// reading at 3 o'clock, from zero at 12: 0.00 mil - (-4.00 mil) - 2 mil = 2.00 mil
	// reading at 6 o'clock, from zero at 12: - 2 * (-4.00 mil) - 2 * 2 mil = 4.00 mil
	// reading at 9 o'clock, from zero at 12: - 0.00 mil - (-4.00 mil) - 2 mil = 2.00 mil
}

// One foot of a gear box lifts more than the others. The lifts are those of the US
// Bureau of Reclamation, FIST 4-1A, p. 17 (read).
func ExampleSoftFoot() {
	s := sheet.SoftFoot{Height: 11 * units.Inch}
	for i, name := range []string{"A", "B", "C", "D"} {
		s.Feet = append(s.Feet, softfoot.Foot{
			Name: name, X: 24 * units.Inch * units.Length(i/2), Y: 8 * units.Inch * units.Length(1-2*(i%2)), Lift: 2 * units.Mil,
		})
	}
	s.Feet[3].Lift = 5 * units.Mil
	w, err := s.Working()
	onBoard(sheet.Inch, w, err)
	// Output:
	// movement that all feet make: max(0, min(2 mil, 2 mil, 2 mil, 5 mil)) = 2.00 mil
	// lift of A above that: 2 mil - 2.00 mil = 0.00 mil
	// lift of B above that: 2 mil - 2.00 mil = 0.00 mil
	// lift of C above that: 2 mil - 2.00 mil = 0.00 mil
	// lift of D above that: 5 mil - 2.00 mil = 3.00 mil
}

// From what offset on do the teeth of a gear coupling rub at 12 mm/s?
func ExampleSlidingLimit() {
	w, err := sheet.SlidingLimit{
		Sliding: 12 * units.MillimetrePerSecond, Speed: 2960, Coupling: align.Coupling{Diameter: 180 * units.Millimetre},
	}.Working()
	onBoard(sheet.Metric, w, err)
	// Output:
	// offset that rubs at the sliding speed: 60 * (12 mm/s)/(2 * pi * 2960 rpm) = 0.039 mm
	// slope that rubs at the sliding speed, at its peak: 0.039 mm/(180 mm/2) = 0.430 mm/m
}

// A vertical pump on four bolts, 12 o'clock at the discharge.
func ExampleFlangeShims() {
	f := flange.Flange{Face: 300 * units.Millimetre, Push: flange.AwayFromStationary}
	for i, name := range []string{"north", "east", "south", "west"} {
		f.Bolts = append(f.Bolts, flange.Bolt{Name: name, Radius: 250 * units.Millimetre, At: units.Clock(90 * i)})
	}
	w, err := sheet.FlangeShims{Flange: f, Off: align.Centreline{
		Vertical: align.Line{Offset: 0.06 * units.Millimetre, Slope: 0.2 * units.MillimetrePerMetre},
	}}.Working()
	onBoard(sheet.Metric, w, err)
	// Output:
	// shim wanted at bolt north beside that at the middle of the flange, below zero where less: 250 mm * ((0.2 mm/m) * cos(12:00) + (0 mm/m) * sin(12:00)) = 0.050 mm
	// shim wanted at bolt east beside that at the middle of the flange, below zero where less: 250 mm * ((0.2 mm/m) * cos(3:00) + (0 mm/m) * sin(3:00)) = 0.000 mm
	// shim wanted at bolt south beside that at the middle of the flange, below zero where less: 250 mm * ((0.2 mm/m) * cos(6:00) + (0 mm/m) * sin(6:00)) = -0.050 mm
	// shim wanted at bolt west beside that at the middle of the flange, below zero where less: 250 mm * ((0.2 mm/m) * cos(9:00) + (0 mm/m) * sin(9:00)) = 0.000 mm
	// the least of these, where the shim is zero: min(0.050 mm, 0.000 mm, (-0.050 mm), 0.000 mm) = -0.050 mm
	// shim at bolt north: 0.050 mm - (-0.050 mm) = 0.100 mm
	// shim at bolt east: 0.000 mm - (-0.050 mm) = 0.050 mm
	// shim at bolt south: (-0.050 mm) - (-0.050 mm) = 0.000 mm
	// shim at bolt west: 0.000 mm - (-0.050 mm) = 0.050 mm
	// vertical slide of the face: -(0.06 mm + (0.2 mm/m) * 300 mm) = lower 0.12 mm
	// horizontal slide of the face: -(0 mm + (0 mm/m) * 300 mm) = leave
}

// The feet come up by 0.36 mm, one of them by a soft foot more.
func ExampleShimStacks() {
	w, err := sheet.ShimStacks{
		Stock: shims.CommonMetric(4),
		Orders: []shims.Order{
			{Foot: "left", Correction: 0.36 * units.Millimetre, Now: []shims.Piece{{Marked: units.Millimetre, Count: 1}}},
			{Foot: "right", Correction: 0.36 * units.Millimetre, SoftFoot: 0.10 * units.Millimetre, Now: []shims.Piece{{Marked: units.Millimetre, Count: 1}}},
		},
	}.Working()
	onBoard(sheet.Metric, w, err)
	// Output:
	// pack wanted under left: 1 mm + 0.36 mm + 0 mm = 1.360 mm
	// what the pieces under left come to, from the base up: 1 mm + 0.1 mm + 0.25 mm = 1.350 mm
	// by how much the pack under left is too high: 1.350 mm - 1.360 mm = -0.010 mm
	// pack wanted under right: 1 mm + 0.36 mm + 0.1 mm = 1.460 mm
	// what the pieces under right come to, from the base up: 1 mm + 0.05 mm + 0.4 mm = 1.450 mm
	// by how much the pack under right is too high: 1.450 mm - 1.460 mm = -0.010 mm
}
