package arc_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/internal/rigid"
	"example.org/collinear/units"
)

// What a forecast says at the coupling and at the feet is how far fits of noisy
// readings, simulated on rigid shafts, scatter about the truth. Of 4000 fits the
// scatter itself is good to about 1.1 % (1/sqrt(2*4000)); four times that is left.
func TestForecastAgainstSimulatedNoise(t *testing.T) {
	const rounds, sigma = 4000, 3.0 // um
	clocks := within(5, 70, 80)
	sensors := []arc.Sensor{
		{Carrier: align.Stationary, Station: 120 * mm, Gain: 1, Readings: taken(clocks...)},
		{Carrier: align.Movable, Station: -80 * mm, Gain: -1, Readings: taken(clocks...)},
	}
	feet := []align.Foot{{Name: "inboard", X: 300 * mm}, {Name: "outboard", X: 900 * mm}}
	for i := range sensors {
		sensors[i].U.Reading = sigma * um
	}
	now := mustForecast(t, caseA, feet, mustSets(t, sensors...)...).Now

	exact := make([]arc.Sensor, len(sensors))
	for i := range sensors {
		exact[i] = simulated(sensors[i], caseA, clocks)
	}
	var squares [3]align.Vector // at the coupling and the feet
	for round := range rounds {
		noisy := make([]arc.Sensor, len(exact))
		for i := range exact {
			noisy[i] = exact[i]
			noise := rigid.Noise(uint64(2*round+i), sigma, make([]float64, len(clocks)))
			noisy[i].Readings = taken(clocks...)
			for j, r := range exact[i].Readings {
				noisy[i].Readings[j].Value = r.Value + units.Length(noise[j])*um
			}
		}
		off := mustFit(t, mustSets(t, noisy...)...).Value.Minus(caseA)
		for i, x := range []units.Length{0, feet[0].X, feet[1].X} {
			w := off.At(x)
			squares[i].Vertical += w.Vertical * w.Vertical / rounds
			squares[i].Horizontal += w.Horizontal * w.Horizontal / rounds
		}
	}
	for i, u := range []align.Vector{now.UCoupling, now.Feet[0].U, now.Feet[1].U} {
		near(t, "vertical", math.Sqrt(float64(squares[i].Vertical)), float64(u.Vertical), 0.045*float64(u.Vertical))
		near(t, "horizontal", math.Sqrt(float64(squares[i].Horizontal)), float64(u.Horizontal), 0.045*float64(u.Horizontal))
	}
}
