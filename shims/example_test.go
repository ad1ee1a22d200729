package shims_test

import (
	"errors"
	"fmt"
	"log"
	"strings"

	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// inWords says what the hands do, in inches or millimetres.
func inWords(unit units.LengthUnit, digits int, pieces []shims.Piece) string {
	var words []string
	for _, p := range pieces {
		words = append(words, fmt.Sprintf("%d x %s", p.Count, p.Thickness().Text(unit, digits)))
	}
	if words == nil {
		return "nothing"
	}
	return strings.Join(words, " + ")
}

// A motor goes up at the back, by 23 mils on the left and by 3 mils more on the
// right, where the foot is soft. A pack lies there already.
func ExampleChoose() {
	now := []shims.Piece{{Marked: 50 * units.Mil, Count: 1}, {Marked: 2 * units.Mil, Count: 1}}
	choice, err := shims.Choose(shims.CommonInch(5), shims.Rule{},
		shims.Order{Foot: "back left", Correction: 23 * units.Mil, Now: now},
		shims.Order{Foot: "back right", Correction: 23 * units.Mil, SoftFoot: 3 * units.Mil, Now: now})
	if err != nil {
		log.Fatal(err)
	}
	for _, s := range choice.Stacks {
		fmt.Printf("%s, %s wanted\n", s.Foot, s.Wanted.Text(units.InInches, 3))
		fmt.Println("  take out:", inWords(units.InInches, 3, s.Out))
		fmt.Println("  put in:  ", inWords(units.InInches, 3, s.In))
		fmt.Println("  then:    ", inWords(units.InInches, 3, s.Pieces), "from the base up")
	}
	fmt.Println("nothing is better:", choice.Proven)
	// Output:
	// back left, 0.075 in wanted
	//   take out: 1 x 0.050 in + 1 x 0.002 in
	//   put in:   1 x 0.075 in
	//   then:     1 x 0.075 in from the base up
	// back right, 0.078 in wanted
	//   take out: 1 x 0.050 in + 1 x 0.002 in
	//   put in:   1 x 0.075 in + 1 x 0.003 in
	//   then:     1 x 0.075 in + 1 x 0.003 in from the base up
	// nothing is better: true
}

// The box has run out of thick pieces: the nearest answer, and what to fetch.
func ExampleChoose_unreachable() {
	stock := shims.Stock{
		{Marked: 100 * units.Micrometre, Count: 4},
		{Marked: 500 * units.Micrometre, Count: 2},
		{Marked: units.Millimetre, Count: 1},
		{Marked: 2 * units.Millimetre, Count: 0},
	}
	choice, err := shims.Choose(stock, shims.Rule{},
		shims.Order{Foot: "front left", Correction: 2100 * units.Micrometre},
		shims.Order{Foot: "front right", Correction: 2 * units.Millimetre})
	if err != nil {
		log.Fatal(err)
	}
	for _, s := range choice.Stacks {
		fmt.Println(s.Foot, "reached:", s.Reached, "off by", s.Error)
	}
	for _, w := range choice.Warnings {
		fmt.Println(&w)
	}
	fmt.Println("add", inWords(units.InMillimetres, 2, choice.Add))

	choice, err = shims.Choose(append(stock, choice.Add...), shims.Rule{},
		shims.Order{Foot: "front left", Correction: 2100 * units.Micrometre},
		shims.Order{Foot: "front right", Correction: 2 * units.Millimetre})
	fmt.Println(len(choice.Warnings), err)
	// Output:
	// front left reached: false off by -0.1 mm
	// front right reached: false off by -1.6 mm
	// /orders/0: want a total of 2.1 mm within 0.0254 mm, got 2 mm (unreachable)
	// /orders/1: want a total of 2 mm within 0.0254 mm, got 0.4 mm (unreachable)
	// add 2 x 2.00 mm
	// 0 <nil>
}

// At least 1 mm is to stay under every foot, so that the machine can still go down
// later: that is not to be had together with 0.3 mm less than there is.
func ExampleChoose_keep() {
	choice, err := shims.Choose(shims.CommonMetric(10), shims.Rule{Keep: units.Millimetre, Pieces: 3},
		shims.Order{Foot: "left", Correction: -300 * units.Micrometre, Now: []shims.Piece{{Marked: units.Millimetre, Count: 1}}})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(choice.Stacks[0].Total, choice.Stacks[0].Reached)
	fmt.Println(&choice.Warnings[0])
	// Output:
	// 1 mm false
	// /orders/0: want a total of 0.7 mm within 0.0254 mm, and at least 1 mm; no stock can do both, got 1 mm (unreachable)
}

// Pieces that were measured and such that were not. Then a slip of the pen: l for 1.
func ExampleReadStock() {
	const table = "marked (mm),measured (mm),count\n" +
		"0.05,0.052,10\n" +
		"0.10,,8\n" +
		"1.00,0.996,4\n"
	stock, err := shims.ReadStock(strings.NewReader(table))
	fmt.Println(inWords(units.InMillimetres, 3, stock), err)

	_, err = shims.ReadStock(strings.NewReader(strings.Replace(table, "0.10,", "0.l0,", 1)))
	fmt.Println(errors.Is(err, units.Malformed), units.Faults(err)[0].Path)
	// Output:
	// 10 x 0.052 mm + 8 x 0.100 mm + 4 x 0.996 mm <nil>
	// true /rows/1/marked
}

// What counts is what was measured.
func ExamplePiece_Thickness() {
	p := shims.Piece{Marked: units.Millimetre, Count: 1}
	fmt.Println(p.Thickness())
	p.Measured = 996 * units.Micrometre
	fmt.Println(p.Thickness())
	// Output:
	// 1 mm
	// 0.996 mm
}

// Ten of each common inch thickness: sums are exact in whole nanometres.
func ExampleCommonInch() {
	stock := shims.CommonInch(10)
	fmt.Println(len(stock), "sizes from", stock[0].Marked.Text(units.InInches, 3), "to", stock[len(stock)-1].Marked.Text(units.InInches, 3))
	// Output:
	// 15 sizes from 0.001 in to 0.125 in
}

// Ten of each common metric thickness.
func ExampleCommonMetric() {
	stock := shims.CommonMetric(10)
	fmt.Println(len(stock), "sizes from", stock[0].Marked, "to", stock[len(stock)-1].Marked)
	// Output:
	// 10 sizes from 0.05 mm to 3 mm
}
