package tolerance_test

import (
	"fmt"
	"log"
	"os"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// A short coupling against the limits of its maker: found less target, with an
// uncertainty of 4 um and 0.03 mm/m in each plane.
func ExampleLimits_Judge() {
	limits := tolerance.Limits{
		Offset: 100 * units.Micrometre,
		Slope:  0.5 * units.MillimetrePerMetre,
		Source: "the coupling's manual",
	}
	u := align.Line{Offset: 4 * units.Micrometre, Slope: 0.03 * units.MillimetrePerMetre}
	cov, err := align.NewCovariance(align.Stated, align.Centreline{Horizontal: u, Vertical: u}, uncorrelated)
	if err != nil {
		log.Fatal(err)
	}
	off := align.Estimate{Cov: cov, Value: align.Centreline{
		Horizontal: align.Line{Offset: 30 * units.Micrometre, Slope: 0.30 * units.MillimetrePerMetre},
		Vertical:   align.Line{Offset: -40 * units.Micrometre, Slope: 0.40 * units.MillimetrePerMetre},
	}}
	verdict, err := limits.Judge(off, align.Coupling{Diameter: 150 * units.Millimetre})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(verdict)
	for _, item := range verdict.All() {
		fmt.Printf("%v, ratio %.2f\n", item, item.Ratio)
	}
	fmt.Println("offset known to", verdict.Items[0].U.Length.Text(units.InMicrometres, 0))
	// Output:
	// within, slope 0.50 mm/m of 0.50 mm/m
	// offset 0.05 mm of 0.10 mm, ratio 0.50
	// slope 0.50 mm/m of 0.50 mm/m, ratio 1.00
	// offset known to 4 um
}

// The same alignment by three rules: what is close to its limit is not decided
// where its uncertainty counts.
func ExampleLimits_JudgeBy() {
	limits := tolerance.Limits{Offset: 100 * units.Micrometre, Source: "the coupling's manual"}
	u := align.Line{Offset: 10 * units.Micrometre}
	cov, err := align.NewCovariance(align.Stated, align.Centreline{Horizontal: u, Vertical: u}, uncorrelated)
	if err != nil {
		log.Fatal(err)
	}
	off := align.Estimate{Cov: cov, Value: align.Centreline{Vertical: align.Line{Offset: -85 * units.Micrometre}}}
	for _, by := range []tolerance.Acceptance{{}, {Confidence: 0.95}, {Guard: 2}} {
		verdict, err := limits.JudgeBy(off, align.Coupling{}, by)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Println(verdict)
		fmt.Println("  " + verdict.Chance())
	}
	// Output:
	// within, offset 0.09 mm of 0.10 mm
	//   by simple acceptance; all limits are kept with a probability of at least 92 %
	// undecided, offset 0.09 mm of 0.10 mm
	//   by a probability of 95 %; all limits are kept with a probability of at least 92 %
	// undecided, offset 0.09 mm of 0.10 mm
	//   by limits less 2 standard uncertainties; all limits are kept with a probability of at least 92 %
}

// A confidence is a probability and no percentage.
func ExampleAcceptance_Validate() {
	fmt.Println(tolerance.Acceptance{Confidence: 95}.Validate())
	// Output: /confidence: want a probability above 0.5 and below 1, got 95 (out_of_range)
}

// Each item has its own probability; together they are kept with at least what
// all of them leave.
func ExampleItem_Chance() {
	u := align.Line{Offset: 10 * units.Micrometre, Slope: 0.05 * units.MillimetrePerMetre}
	cov, err := align.NewCovariance(align.Stated, align.Centreline{Horizontal: u, Vertical: u}, uncorrelated)
	if err != nil {
		log.Fatal(err)
	}
	off := align.Estimate{Cov: cov, Value: align.Centreline{
		Vertical: align.Line{Offset: -85 * units.Micrometre, Slope: 0.40 * units.MillimetrePerMetre},
	}}
	limits := tolerance.Limits{Offset: 100 * units.Micrometre, Slope: 0.5 * units.MillimetrePerMetre}
	verdict, err := limits.Judge(off, align.Coupling{})
	if err != nil {
		log.Fatal(err)
	}
	for _, item := range verdict.All() {
		fmt.Println(item.Of, item.Chance())
	}
	fmt.Println(verdict.Chance())
	// Output:
	// offset 92 %
	// slope 97 %
	// by simple acceptance; all limits are kept with a probability of at least 89 %
}

// A spacer coupling is judged at its flex planes.
func ExampleAPIRP686() {
	off := align.Exact(align.Centreline{
		Horizontal: align.Line{Offset: 120 * units.Micrometre, Slope: 0.4 * units.MillimetrePerMetre},
		Vertical:   align.Line{Offset: -200 * units.Micrometre, Slope: -0.7 * units.MillimetrePerMetre},
	})
	verdict, err := tolerance.APIRP686().Judge(off, align.Coupling{Span: 800 * units.Millimetre})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(verdict.Outcome)
	for _, item := range verdict.All() {
		fmt.Println(item)
	}
	// Output:
	// outside
	// tilt at the stationary flex plane 0.69 mm/m of 0.50 mm/m
	// tilt at the movable flex plane 0.11 mm/m of 0.50 mm/m
}

// What is off by less than the digits shown gets the digits that show it.
func ExampleVerdict_Text() {
	limits := tolerance.Limits{Offset: 4 * units.Mil}
	off := align.Exact(align.Centreline{Vertical: align.Line{Offset: 4.002 * units.Mil}})
	verdict, err := limits.Judge(off, align.Coupling{})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(verdict.Text(tolerance.Style{Length: units.InMils}))
	// Output: outside, offset 4.002 mil of 4.000 mil
}

func ExampleItem_Text() {
	off := align.Exact(align.Centreline{Vertical: align.Line{Offset: -2 * units.Mil}})
	verdict, err := tolerance.Limits{Offset: 4 * units.Mil, PerPlane: true}.Judge(off, align.Coupling{})
	if err != nil {
		log.Fatal(err)
	}
	for _, item := range verdict.All() {
		fmt.Println(item.Text(tolerance.Style{Length: units.InInches}))
	}
	// Output:
	// horizontal offset 0.0000 in of 0.0040 in
	// vertical offset 0.0020 in of 0.0040 in
}

func ExampleLimits_Validate() {
	fmt.Println(tolerance.Limits{Offset: -units.Mil}.Validate())
	// Output: /offset: want a limit above zero, of at least 1 nm (a slope: 1 nm over a metre), got -0.0254 mm (out_of_range)
}

// The owner of a standard makes the table; the numbers here are made up.
func ExampleNewTable() {
	table, err := tolerance.NewTable("Works standard 4-12", "2024",
		tolerance.Row{Speed: 1000, Offset: 120 * units.Micrometre, Slope: 0.8 * units.MillimetrePerMetre},
		tolerance.Row{Speed: 2000, Offset: 60 * units.Micrometre, Slope: 0.4 * units.MillimetrePerMetre})
	if err != nil {
		log.Fatal(err)
	}
	limits, err := table.At(1480)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(limits.Offset, limits.Slope)
	fmt.Println(limits.Rule)
	fmt.Println(limits.Source)
	_, err = table.At(3000)
	fmt.Println(err)
	// Output:
	// 0.06 mm 0.4 mm/m
	// row for speeds above 1000 rpm up to 2000 rpm
	// Works standard 4-12, 2024
	// /speed: want a speed up to 2000 rpm, where the table ends, got 3000 rpm (out_of_range)
}

// The numbers are made up.
func ExampleReadCSV() {
	table, err := tolerance.ReadCSV(strings.NewReader(`source,"Works standard 4-12, pumps"
edition,2024
flex (mil/in),speed (rpm),offset (in)
0.8, 1800, 1/256
0.4, 3600, 0.002
`))
	if err != nil {
		log.Fatal(err)
	}
	for _, row := range table.Rows() {
		fmt.Println(row.Speed, row.Offset.Text(units.InMils, 1), row.Flex)
	}
	// Output:
	// 1800 rpm 3.9 mil 0.8 mm/m
	// 3600 rpm 2.0 mil 0.4 mm/m
}

// Everything that is wrong comes at once.
func ExampleReadCSV_faults() {
	_, err := tolerance.ReadCSV(strings.NewReader("speed (rpm),offset (mm)\n1000,0.05\n2000,0.12\n3000,\n"))
	fmt.Println(err)
	// Output:
	// /source: want the work that the limits were taken from (missing)
	// /rows/2/offset: want a number, in mm (missing)
	// /rows/1/offset: want a limit no wider than at the next slower speed (conflict)
}

func ExampleTable_WriteCSV() {
	table, err := tolerance.NewTable("Works standard 4-12", "",
		tolerance.Row{Speed: 2000, Flex: 0.4 * units.MillimetrePerMetre},
		tolerance.Row{Speed: 1000, Flex: 0.8 * units.MillimetrePerMetre})
	if err != nil {
		log.Fatal(err)
	}
	if err := table.WriteCSV(os.Stdout); err != nil {
		log.Fatal(err)
	}
	// Output:
	// source,Works standard 4-12
	// speed (rpm),flex (mm/m)
	// 1000,0.8
	// 2000,0.4
}

// What a caller's own sliding speed comes to at two speeds. UsualSliding is common
// practice without a source.
func ExampleRubbing() {
	k := align.Coupling{Diameter: 150 * units.Millimetre}
	for _, speed := range []units.RotationalSpeed{1500, 3000} {
		limits, err := tolerance.Rubbing(tolerance.UsualSliding, speed, k)
		if err != nil {
			log.Fatal(err)
		}
		fmt.Println(limits.Offset.Text(units.InMicrometres, 0), limits.Slope.Text(units.InMillimetresPerMetre, 2))
	}
	// Output:
	// 76 um 1.02 mm/m
	// 38 um 0.51 mm/m
}

// EASA AR100-2015, table 2-4 (read): over 30 up to 50 mm, 0.050 mm.
func ExampleShaftRunout() {
	limit, err := tolerance.ShaftRunout(42 * units.Millimetre)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(limit.Limit, "TIR over", limit.Over, "up to", limit.UpTo)
	fmt.Println(limit.Source)
	// Output:
	// 0.05 mm TIR over 30 mm up to 50 mm
	// EASA AR100-2015, table 2-4, IEC machines (read)
}
