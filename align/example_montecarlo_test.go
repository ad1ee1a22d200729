package align_test

import (
	"fmt"
	"log"
	"sync"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// Blocks run in as many goroutines as the caller likes, and give the same answer.
func ExampleSummarise() {
	job := align.MonteCarlo{
		Sets:   taped(),
		Target: align.Exact(align.Centreline{Vertical: align.Line{Offset: -80 * units.Micrometre}}),
		Feet:   []align.Foot{{Name: "outboard", X: 900 * units.Millimetre, U: 3 * units.Millimetre}},
	}
	blocks := make([]align.Block, 20)
	faults := make([]error, len(blocks))
	var wait sync.WaitGroup
	for i := range blocks {
		wait.Go(func() { blocks[i], faults[i] = job.Block(2026, uint32(i)) })
	}
	wait.Wait()
	for _, err := range faults {
		if err != nil {
			log.Fatal(err)
		}
	}
	s, err := align.Summarise(0.95, blocks...)
	if err != nil {
		log.Fatal(err)
	}
	move := s.Feet[0].Vertical
	fmt.Printf("%d trials, %d failed\n", s.Trials, s.Failed)
	fmt.Printf("outboard: lower %.2f mm, u %.2f mm\n", -move.Mean.In(units.InMillimetres), move.Deviation.In(units.InMillimetres))
	fmt.Printf("with probability 0.95 from %.2f mm to %.2f mm\n", -move.Symmetric.High.In(units.InMillimetres), -move.Symmetric.Low.In(units.InMillimetres))
	// Output:
	// 200000 trials, 0 failed
	// outboard: lower 2.16 mm, u 0.09 mm
	// with probability 0.95 from 2.00 mm to 2.34 mm
}

// At no misalignment an offset still has a length: propagation to first order,
// which has zero there, cannot tell.
func ExampleMonteCarlo_Block() {
	still := []units.Length{0, 0, 0, 0}
	var readings []align.Reading
	for i, v := range still {
		readings = append(readings, align.Reading{At: units.Three * units.Clock(i), Value: v})
	}
	u := align.Uncertainty{Reading: 10 * units.Micrometre}
	job := align.MonteCarlo{Sets: []align.Set{
		{Probe: align.Probe{Kind: align.Rim, Carrier: align.Stationary}, Readings: readings, U: u},
		{Probe: align.Probe{Kind: align.NearFace, Carrier: align.Stationary, Radius: 75 * units.Millimetre}, Readings: readings, U: u},
	}}
	block, err := job.Block(1, 0)
	if err != nil {
		log.Fatal(err)
	}
	s, err := align.Summarise(0.95, block)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("u of the height %.1f um, mean length %.1f um\n", s.Offset.Vertical.Deviation.In(units.InMicrometres), s.Offset.Size.Mean.In(units.InMicrometres))
	// Output: u of the height 7.1 um, mean length 8.8 um
}
