package sheet_test

import (
	"fmt"
	"log"

	"example.org/collinear/align"
	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
)

// The worked example of H. P. Bloch and F. K. Geitner, Machinery Component
// Maintenance and Repair, chapter 5, page 203 (read), vertical plane: the movable
// centreline is 12 mil high at S and 7 mil high at A, 14 in on; the feet stand 12
// in and 38 in beyond A. The book has the inboard feet lowered by 2.7 mil, which it
// rounds to 3, and the outboard ones raised by 6.6, rounded to 7. The coupling
// centre is put midway between S and A here, and the scales are ours.
func ExamplePaper_Draw() {
	s := align.Point{X: -7 * units.Inch, W: 12 * units.Mil}
	a := align.Point{X: +7 * units.Inch, W: 7 * units.Mil}
	line, err := align.Through(s, a)
	if err != nil {
		log.Fatal(err)
	}
	paper := sheet.Paper{Reduction: 10, Exaggeration: 200}
	graph, err := paper.Draw(line,
		[2]sheet.Station{{Name: "S", X: s.X}, {Name: "A", X: a.X}},
		align.Foot{Name: "inboard", X: a.X + 12*units.Inch},
		align.Foot{Name: "outboard", X: a.X + 38*units.Inch})
	if err != nil {
		log.Fatal(err)
	}
	on := func(m sheet.Mark) string {
		return m.X.Text(units.InMillimetres, 1) + " right, " + m.Y.Text(units.InMillimetres, 1) + " up"
	}
	fmt.Printf("stationary: %s to %s\n", on(graph.Stationary[0]), on(graph.Stationary[1]))
	fmt.Printf("movable: %s to %s\n", on(graph.Movable[0]), on(graph.Movable[1]))
	for _, p := range graph.Points {
		fmt.Printf("plot %s: %s\n", p.Name, on(p))
	}
	for _, f := range graph.Feet {
		fmt.Printf("read at %s: %s\n", f.Mark.Name, on(f.Mark))
		fmt.Printf("  w %s, by hand within %s\n", f.W.Text(units.InMils, 3), f.Tolerance.Text(units.InMils, 1))
	}
	// Output:
	// stationary: -17.8 mm right, 0.0 mm up to 114.3 mm right, 0.0 mm up
	// movable: -17.8 mm right, 61.0 mm up to 114.3 mm right, -33.4 mm up
	// plot S: -17.8 mm right, 61.0 mm up
	// plot A: 17.8 mm right, 35.6 mm up
	// read at inboard: 48.3 mm right, 13.8 mm up
	//   w 2.714 mil, by hand within 0.6 mil
	// read at outboard: 114.3 mm right, -33.4 mm up
	//   w -6.571 mil, by hand within 1.3 mil
}

// A machine with its feet 0.3 and 0.9 m from the coupling, planes of the dials at
// its hubs.
var (
	graphHubs = [2]sheet.Station{{Name: "stationary hub", X: -50 * units.Millimetre}, {Name: "movable hub", X: 150 * units.Millimetre}}
	graphFeet = []align.Foot{{Name: "front", X: 300 * units.Millimetre}, {Name: "rear", X: 900 * units.Millimetre}}
	graphLine = align.Line{Offset: 80 * units.Micrometre, Slope: 0.3 * units.MillimetrePerMetre}
)

// A trainee's graph: the front foot is read off as well as the pencil allows; at
// the rear one the sign was lost.
func ExampleGraph_Check() {
	graph, err := sheet.Paper{Reduction: 5, Exaggeration: 200}.Draw(graphLine, graphHubs, graphFeet...)
	if err != nil {
		log.Fatal(err)
	}
	answer, err := graph.Check(map[string]units.Length{
		"front": 180 * units.Micrometre,
		"rear":  -350 * units.Micrometre,
	})
	if err != nil {
		log.Fatal(err)
	}
	for _, r := range answer {
		fmt.Printf("%s: off by %s of at most %s, within: %v\n", r.Foot,
			r.Difference.Text(units.InMicrometres, 0), r.Tolerance.Text(units.InMicrometres, 0), r.Within)
	}
	_, err = graph.Check(map[string]units.Length{"middle": 0})
	fmt.Println(err)
	// Output:
	// front: off by 10 um of at most 12 um, within: true
	// rear: off by -700 um of at most 32 um, within: false
	// /read/middle: want the name of a foot of this graph, got middle (unknown)
}

// Scales for the field that a page of squared paper of 210 by 297 mm, laid on its
// side, leaves between margins.
func ExampleSuggestPaper() {
	paper, err := sheet.SuggestPaper(250*units.Millimetre, 180*units.Millimetre, graphLine, graphHubs, graphFeet...)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("1 mm on paper is", paper.Reduction, "mm along the shaft and", 1/paper.Exaggeration, "mm across it")
	// Points that stand as close as the pencil's line is thick hold no ruler.
	_, err = sheet.SuggestPaper(250*units.Millimetre, 180*units.Millimetre, graphLine,
		[2]sheet.Station{{X: 0}, {X: 4 * units.Millimetre}}, graphFeet...)
	fmt.Println(err)
	// Output:
	// 1 mm on paper is 5 mm along the shaft and 0.002 mm across it
	// /through/1/x: want a station more than 1 mm from the first point on paper, twice the error of the pencil, got 4 mm (conflict)
}
