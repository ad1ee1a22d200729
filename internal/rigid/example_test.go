package rigid_test

import (
	"fmt"

	"example.org/collinear/internal/rigid"
)

// The movable shaft lies 0.20 mm low and 0.12 mm towards 3 o'clock, and falls
// and runs out further away from the coupling.
func ExampleInstrument_Sweep() {
	pose := rigid.Pose{OffsetY: 0.12, SlopeY: 0.4e-3, OffsetZ: -0.20, SlopeZ: -0.7e-3}
	rim := rigid.Instrument{Kind: rigid.Rim, Carrier: rigid.Stationary, Station: 40, Radius: 75}
	fmt.Printf("%+.6f mm\n", rim.Sweep(pose, 0, 90, 180, 270))
	// Output: [+0.000000 +0.363764 +0.456000 +0.091764] mm
}

func ExampleInstrument_Read() {
	face := rigid.Instrument{Kind: rigid.NearFace, Radius: 50}
	rising := rigid.Pose{SlopeZ: 1e-3}
	fmt.Printf("%.3f mm\n", face.Read(rising, 0)-face.Read(rising, 180))
	// Output: 0.100 mm
}

func ExamplePose_At() {
	y, z := rigid.Pose{OffsetY: 0.12, SlopeY: 0.4e-3, OffsetZ: -0.20, SlopeZ: -0.7e-3}.At(-50)
	fmt.Printf("%.3f %.3f mm\n", y, z)
	// Output: 0.100 -0.165 mm
}

func ExampleNoise() {
	clean := []float64{0, 0.1, 0.2}
	noisy := rigid.Noise(1, 0.005, clean)
	fmt.Println(len(noisy), clean)
	// Output: 3 [0 0.1 0.2]
}
