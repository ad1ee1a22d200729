package arc_test

import (
	"fmt"
	"log"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
)

// Two rim dials watch the machine go: first up, at 12 and 6 o'clock, then sideways,
// at 3 and 9, from where the first move ended. The misalignment found before is
// case A of the library: 0.20 mm low and 0.12 mm towards 3 at the coupling.
func ExampleFollow_Begin() {
	const mm = units.Millimetre
	found := align.Exact(align.Centreline{
		Horizontal: align.Line{Offset: 0.12 * mm, Slope: 0.4e-3},
		Vertical:   align.Line{Offset: -0.20 * mm, Slope: -0.7e-3},
	})
	dials := func(first, second units.Clock) []arc.Standing {
		u := 2 * units.Micrometre
		return []arc.Standing{
			{Probe: align.Probe{Kind: align.Rim, Carrier: align.Stationary, Station: 40 * mm}, Start: align.Reading{At: first, U: u}},
			{Probe: align.Probe{Kind: align.Rim, Carrier: align.Movable, Station: -50 * mm}, Start: align.Reading{At: second, U: u}},
		}
	}
	up, err := arc.Follow{From: found, Plane: arc.Vertical, Probes: dials(units.Twelve, units.Six)}.Begin()
	if err != nil {
		log.Fatal(err)
	}
	raised, err := up.Now(0.058*mm, 0.040*mm)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("raised: %.3f mm, %.2f mm/m\n", raised.Value.Vertical.Offset/mm, raised.Value.Vertical.Slope*1e3)

	sideways, err := arc.Follow{From: raised.Estimate, Plane: arc.Horizontal, Probes: dials(units.Three, units.Nine)}.Begin()
	if err != nil {
		log.Fatal(err)
	}
	pushed, err := sideways.Now(-0.130*mm, -0.100*mm)
	if err != nil {
		log.Fatal(err)
	}
	now, u := pushed.At(0)
	fmt.Printf("coupling: %.3f mm up (u %.4f), %.3f mm towards 3 (u %.4f)\n", now.Vertical/mm, u.Vertical/mm, now.Horizontal/mm, u.Horizontal/mm)
	// Output:
	// raised: -0.150 mm, -0.50 mm/m
	// coupling: -0.150 mm up (u 0.0020), 0.003 mm towards 3 (u 0.0020)
}

// Three sensors, of which two do not look along the move: what they show cannot be
// one line, and the machine has gone sideways too or a sensor has slipped.
func ExampleFollowing_Now() {
	const mm = units.Millimetre
	sensor := func(x units.Length, at units.Clock) arc.Standing {
		return arc.Standing{Probe: align.Probe{Kind: align.Displacement, Station: x, Gain: 1}, Start: align.Reading{At: at}}
	}
	follow := arc.Follow{Plane: arc.Vertical, Probes: []arc.Standing{
		sensor(-100*mm, 0), sensor(0, 30), sensor(100*mm, 330),
	}}
	following, err := follow.Begin()
	if err != nil {
		log.Fatal(err)
	}
	e, err := following.Now(0.10*mm, 0.10*mm, 0.10*mm)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("moved %.4f mm, misses by %.4f mm, uncertainty %v\n", e.Moved.Value.Vertical.Offset/mm, e.Miss/mm, e.Cov.Basis)
	// Output:
	// moved 0.1101 mm, misses by 0.0047 mm, uncertainty unknown
}

// How still must the shafts be held, and the machine sideways, while it is raised?
// Two sensors at 1 o'clock tell: half a degree, and 0.05 mm.
func ExampleFollowing_TurnError() {
	const mm = units.Millimetre
	sensor := func(x units.Length) arc.Standing {
		return arc.Standing{Probe: align.Probe{Kind: align.Displacement, Station: x, Gain: 1}, Start: align.Reading{At: units.Hour}}
	}
	follow := arc.Follow{
		From:   align.Exact(align.Centreline{Horizontal: align.Line{Offset: 0.12 * mm}, Vertical: align.Line{Offset: -0.20 * mm}}),
		Plane:  arc.Vertical,
		Probes: []arc.Standing{sensor(-80 * mm), sensor(120 * mm)},
	}
	following, err := follow.Begin()
	if err != nil {
		log.Fatal(err)
	}
	turned, err := following.TurnError(0.5 * units.Degree)
	if err != nil {
		log.Fatal(err)
	}
	unseen, err := following.UnseenError(align.Line{Offset: 0.05 * mm})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("turned: %.4f mm\n", turned.Vertical.Offset/mm)
	fmt.Printf("unseen: %.4f mm\n", unseen.Vertical.Offset/mm)
	// Output:
	// turned: 0.0021 mm
	// unseen: 0.0289 mm
}

// An unseen move in the other plane does no harm where the probes look along the
// move.
func ExampleFollowing_UnseenError() {
	const mm = units.Millimetre
	sensor := func(x units.Length) arc.Standing {
		return arc.Standing{Probe: align.Probe{Kind: align.Displacement, Station: x, Gain: 1}, Start: align.Reading{At: units.Twelve}}
	}
	following, err := arc.Follow{Plane: arc.Vertical, Probes: []arc.Standing{sensor(-80 * mm), sensor(120 * mm)}}.Begin()
	if err != nil {
		log.Fatal(err)
	}
	unseen, err := following.UnseenError(align.Line{Offset: 0.05 * mm})
	if err != nil {
		log.Fatal(err)
	}
	fmt.Println(unseen.Vertical.Offset)
	// Output:
	// 0 mm
}
