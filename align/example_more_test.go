package align_test

import (
	"encoding/json"
	"fmt"
	"log"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// A fan and its motor, from the readings to the moves. The rim dial's bracket
// droops by 0.02 mm. The motor will come up by 0.08 mm as it warms, so it has to
// stand that much low when cold.
func Example() {
	rim := align.Set{
		Probe: align.Probe{Kind: align.Rim, Carrier: align.Stationary, Station: 60 * units.Millimetre},
		Sag:   20 * units.Micrometre,
		Readings: []align.Reading{
			{At: units.Twelve}, {At: units.Three, Value: 50 * units.Micrometre},
			{At: units.Six, Value: -300 * units.Micrometre}, {At: units.Nine, Value: -350 * units.Micrometre},
		},
	}
	face := align.Set{
		Probe: align.Probe{Kind: align.NearFace, Carrier: align.Stationary, Radius: 100 * units.Millimetre},
		Readings: []align.Reading{
			{At: units.Twelve}, {At: units.Three, Value: 20 * units.Micrometre},
			{At: units.Six, Value: 60 * units.Micrometre}, {At: units.Nine, Value: 40 * units.Micrometre},
		},
	}
	found, err := align.Fit(rim, face)
	if err != nil {
		log.Fatal(err)
	}
	target := align.Exact(align.Centreline{Vertical: align.Line{Offset: -80 * units.Micrometre}})
	moves, err := found.Minus(target).Corrections(
		align.Foot{Name: "front", X: 250 * units.Millimetre},
		align.Foot{Name: "rear", X: 700 * units.Millimetre})
	if err != nil {
		log.Fatal(err)
	}
	for _, m := range moves {
		fmt.Println(m)
	}
	// Output:
	// front: lower 0.15 mm, push 0.18 mm towards 9 o'clock
	// rear: lower 0.02 mm, push 0.14 mm towards 9 o'clock
}

// R. B. McMillan, Rotating Machinery: Practical Solutions to Unbalance and
// Misalignment, Fairmont 2004, example 8-3, pp. 137-141 (read): rim -4 mils and
// face +3 mils at the bottom, zero at the top; the face dial swings 12 in across,
// the feet are 16 and 36 in beyond the rim. Printed: the feet stand at -2 and -7
// mils. Only the vertical plane is published; 3 and 9 are ours, half way between.
func ExampleFitted() {
	sweep := func(p align.Probe, bottom units.Length) align.Set {
		return align.Set{Probe: p, Readings: []align.Reading{
			{At: units.Twelve}, {At: units.Three, Value: bottom / 2}, {At: units.Six, Value: bottom}, {At: units.Nine, Value: bottom / 2},
		}}
	}
	found, err := align.Fit(
		sweep(align.Probe{Kind: align.Rim, Carrier: align.Stationary}, -4*units.Mil),
		sweep(align.Probe{Kind: align.NearFace, Carrier: align.Stationary, Radius: 6 * units.Inch}, 3*units.Mil))
	if err != nil {
		log.Fatal(err)
	}
	for _, x := range []units.Length{16 * units.Inch, 36 * units.Inch} {
		low := -found.Value.At(x).Vertical
		fmt.Println("at", x.Text(units.InInches, 0)+":", low.Text(units.InMils, 0), "low")
	}
	fmt.Println("uncertainty:", found.Cov.Basis)
	// Output:
	// at 16 in: 2 mil low
	// at 36 in: 7 mil low
	// uncertainty: unknown
}

// One sweep as it comes in a file, from a crew behind the stationary machine.
func ExampleSet() {
	const file = `{
		"probe": {"kind": "rim", "carrier": "movable", "station": "-3 1/2 in"},
		"sag": "1.5 mil",
		"view": "from_stationary",
		"readings": [
			{"at": "12:00", "value": "0 mil"},
			{"at": "3:00", "value": "4 mil"},
			{"at": "6:00", "value": "-2 mil"}
		],
		"u": {"reading": "0.25 mil"}
	}`
	var s align.Set
	if err := json.Unmarshal([]byte(file), &s); err != nil {
		log.Fatal(err)
	}
	atThree := s.Readings[1]
	fmt.Println(s.Probe.Kind, "dial carried by the", s.Probe.Carrier, "shaft")
	fmt.Println("the plunger is", atThree.Value.Text(units.InMils, 1), "further in at the crew's", atThree.At)
	fmt.Println("the library calls that place", s.View.Clock(atThree.At).Normal())
	// Output:
	// rim dial carried by the movable shaft
	// the plunger is 4.0 mil further in at the crew's 3:00
	// the library calls that place 9:00
}

// All that is wrong with a sweep comes at once, each with its place.
func ExampleSet_Validate() {
	s := align.Set{
		Probe:    align.Probe{Kind: align.Rim, Station: 40 * units.Millimetre, Gain: 2},
		Sag:      -30 * units.Micrometre,
		Readings: []align.Reading{{At: units.Twelve}},
	}
	fmt.Println(s.Validate())
	// Output:
	// /probe/carrier: want the shaft that carries the rim (missing)
	// /probe/gain: want no value: rim does not use it, got 2 (conflict)
	// /sag: want a sag not below zero, got -0.03 mm (out_of_range)
	// /readings: want at least two readings: one alone only sets the zero, got 1 (missing)
}

// The same misalignment, the movable shaft 0.10 mm high, as different dials show
// it at the bottom after a zero at the top: in is a plunger pushed in.
func ExampleProbe() {
	high := align.Centreline{Vertical: align.Line{Offset: 100 * units.Micrometre}}
	for _, p := range []align.Probe{
		{Kind: align.Rim, Carrier: align.Stationary, Station: 60 * units.Millimetre},
		{Kind: align.Rim, Carrier: align.Movable, Station: -60 * units.Millimetre},
		{Kind: align.Bore, Carrier: align.Stationary, Station: 60 * units.Millimetre},
	} {
		readings, err := align.Set{Probe: p}.Predict(high, units.Twelve, units.Six)
		if err != nil {
			log.Fatal(err)
		}
		way, bottom := "in", readings[1].Value
		if bottom < 0 {
			way, bottom = "out", -bottom
		}
		fmt.Println(p.Kind, "from the", p.Carrier, "shaft:", bottom.Text(units.InMillimetres, 2), way)
	}
	// Output:
	// rim from the stationary shaft: 0.20 mm out
	// rim from the movable shaft: 0.20 mm in
	// bore from the stationary shaft: 0.20 mm in
}
