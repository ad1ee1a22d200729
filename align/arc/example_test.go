package arc_test

import (
	"errors"
	"fmt"
	"log"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
)

// A guard leaves the upper quarter of a turn free. Two displacement sensors, one
// on each shaft, are read at three positions; their readings grow as the other
// shaft comes nearer.
func ExampleSensor_Sets() {
	u := align.Uncertainty{Reading: 2 * units.Micrometre}
	onStationary := arc.Sensor{
		Carrier: align.Stationary, Station: 90 * units.Millimetre, Gain: 1, U: u,
		Readings: []align.Reading{
			{At: 315},
			{At: 0, Value: 50 * units.Micrometre},
			{At: 45, Value: 70 * units.Micrometre},
		},
	}
	onMovable := arc.Sensor{
		Carrier: align.Movable, Station: -90 * units.Millimetre, Gain: 1, U: u,
		Readings: []align.Reading{
			{At: 315},
			{At: 0, Value: -35 * units.Micrometre},
			{At: 45, Value: -50 * units.Micrometre},
		},
	}
	first, err := onStationary.Sets()
	if err != nil {
		log.Fatal(err)
	}
	second, err := onMovable.Sets()
	if err != nil {
		log.Fatal(err)
	}
	found, err := align.Fit(append(first, second...)...)
	if err != nil {
		log.Fatal(err)
	}
	w, uw := found.At(0)
	fmt.Println("high by", w.Vertical.Text(units.InMillimetres, 3), "+/-", uw.Vertical.Text(units.InMillimetres, 3))
	fmt.Println("towards 3 o'clock by", w.Horizontal.Text(units.InMillimetres, 3), "+/-", uw.Horizontal.Text(units.InMillimetres, 3))
	// Output:
	// high by 0.043 mm +/- 0.006 mm
	// towards 3 o'clock by 0.042 mm +/- 0.001 mm
}

// One sensor with two channels sees displacement and slope by itself. Its angle
// channel counts a lean of the other shaft towards the sensor with gain +1.
func ExampleSensor_Sets_twoChannels() {
	s := arc.Sensor{
		Carrier: align.Stationary, Station: 0, Gain: 1,
		Readings: []align.Reading{
			{At: units.Nine}, {At: units.Twelve, Value: 0.3 * units.Millimetre}, {At: units.Three, Value: 0.2 * units.Millimetre},
		},
		Angle: arc.AngleChannel{Gain: 1, Readings: []arc.AngleReading{
			{At: units.Nine}, {At: units.Twelve, Value: units.MillimetrePerMetre}, {At: units.Three},
		}},
	}
	sets, err := s.Sets()
	if err != nil {
		log.Fatal(err)
	}
	found, err := align.Fit(sets...)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("high by", found.Value.Vertical.Offset.Text(units.InMillimetres, 2))
	fmt.Println("climbing away by", found.Value.Vertical.Slope.Text(units.InMillimetresPerMetre, 2))
	fmt.Println("its uncertainty is", found.Cov.Basis)
	// Output:
	// high by 0.20 mm
	// climbing away by 1.00 mm/m
	// its uncertainty is unknown
}

// Readings at 10:30, 12 and 2 o'clock cover 105 degrees across 12.
func ExampleOf() {
	covered, err := arc.Of(align.Set{Readings: []align.Reading{{At: 315}, {At: units.Twelve}, {At: 2 * units.Hour}}})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(covered.Covered.Text(units.InDegrees, 1), "about", covered.Middle)
	fmt.Println("a hole of", covered.Hole.Text(units.InDegrees, 1))
	// Output:
	// 105.0 deg about 12:15
	// a hole of 255.0 deg
}

// Before the sensors are read on the 60 degrees that a guard leaves: is that good
// enough at the feet, and would opening the guard help?
func ExampleForecast() {
	at := func(x units.Length) align.Set {
		return align.Set{
			Probe:    align.Probe{Kind: align.Displacement, Station: x, Gain: 1},
			Readings: []align.Reading{{At: -30}, {At: -15}, {At: 0}, {At: 15}, {At: 30}},
			U:        align.Uncertainty{Reading: units.Micrometre},
		}
	}
	var inLine align.Centreline
	feet := []align.Foot{{Name: "outboard", X: 900 * units.Millimetre}}
	outlook, err := arc.Forecast(inLine, feet, at(-100*units.Millimetre), at(100*units.Millimetre))
	if err != nil {
		log.Fatal(err)
	}
	for _, p := range append([]arc.Prospect{outlook.Now}, outlook.Wider...) {
		fmt.Printf("%s: u of the height %s at the coupling, %s at the outboard feet\n",
			p.Arc.Text(units.InDegrees, 0), p.UCoupling.Vertical.Text(units.InMillimetres, 4), p.Feet[0].U.Vertical.Text(units.InMillimetres, 4))
	}
	// Output:
	// 60 deg: u of the height 0.0057 mm at the coupling, 0.0512 mm at the outboard feet
	// 90 deg: u of the height 0.0026 mm at the coupling, 0.0235 mm at the outboard feet
	// 120 deg: u of the height 0.0015 mm at the coupling, 0.0138 mm at the outboard feet
	// 180 deg: u of the height 0.0008 mm at the coupling, 0.0070 mm at the outboard feet
	// 270 deg: u of the height 0.0005 mm at the coupling, 0.0043 mm at the outboard feet
	// 360 deg: u of the height 0.0004 mm at the coupling, 0.0040 mm at the outboard feet
}

// A forecast has nothing to go by where nobody says how well the probe reads.
func ExampleForecast_nothingStated() {
	s := align.Set{
		Probe:    align.Probe{Kind: align.Displacement, Gain: 1},
		Readings: []align.Reading{{At: 0}, {At: 45}, {At: 90}},
	}
	_, err := arc.Forecast(align.Centreline{}, nil, s)
	fmt.Println(errors.Is(err, units.Missing))
	fmt.Println(err)
	// Output:
	// true
	// /sets/0/u/reading: want the standard uncertainty of a reading: without one there is nothing to forecast (missing)
}

// Readings of two sensors come in as the shaft turns; those that were taken with the
// shaft still swinging, at 2 o'clock, are dropped again.
func ExampleBuffer() {
	room := make([]align.Reading, 0, 50)
	buffer := arc.NewBuffer(
		align.Set{Probe: align.Probe{Kind: align.Displacement, Station: -100 * units.Millimetre, Gain: 1}, Readings: room},
		align.Set{Probe: align.Probe{Kind: align.Displacement, Station: 100 * units.Millimetre, Gain: 1}, Readings: room},
	)
	for i, r := range []align.Reading{
		{At: units.Twelve},
		{At: 45, Value: -29 * units.Micrometre},
		{At: 60, Value: -20 * units.Micrometre},
		{At: units.Three, Value: -100 * units.Micrometre},
	} {
		for set := range 2 {
			if err := buffer.Add(set, r); err != nil {
				log.Fatal(err)
			}
		}
		if _, err := buffer.Fit(); i > 0 && err != nil {
			fmt.Println("after", i+1, "positions:", err)
		}
	}
	for set := range 2 {
		if err := buffer.Drop(set, 2); err != nil {
			log.Fatal(err)
		}
	}
	found, err := buffer.Fit()
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println("high by", found.Value.Vertical.Offset.Text(units.InMillimetres, 2))
	// Output:
	// after 2 positions: /sets: want readings that see the horizontal offset, horizontal slope, vertical offset, vertical slope (unseen)
	// high by 0.10 mm
}

func ExampleNewBuffer() {
	buffer := arc.NewBuffer(align.Set{Probe: align.Probe{Kind: align.Displacement, Gain: 1}})
	fmt.Println(buffer.Add(0, align.Reading{At: units.Three}))
	fmt.Println(buffer.Add(1, align.Reading{At: units.Three}))
	fmt.Println(len(buffer.Sets()[0].Readings), "reading held")
	// Output:
	// <nil>
	// /set: want a set that is held, got 1 (out_of_range)
	// 1 reading held
}
