package thermal_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// Signs, by hand: legs of 500 mm on a track of 800 mm. The side at 3 gets warmer,
// stands higher, and tips the shaft towards 9.
func TestRollByHand(t *testing.T) {
	rows := []struct {
		name        string
		three, nine thermal.Piece
		want        align.Vector
	}{
		{"warmer at 3: grows 220 and 110 um", piece(500*mm, steel, 40), piece(500*mm, steel, 20), align.Vector{Horizontal: -68.75 * um, Vertical: 165 * um}},
		{"warmer at 9", piece(500*mm, steel, 20), piece(500*mm, steel, 40), align.Vector{Horizontal: 68.75 * um, Vertical: 165 * um}},
		{"colder at 3", piece(500*mm, steel, -20), piece(500*mm, steel, 20), align.Vector{Horizontal: 137.5 * um}},
		{"bronze at 3: grows 180 and 110 um", piece(500*mm, bronze, 20), piece(500*mm, steel, 20), align.Vector{Horizontal: -43.75 * um, Vertical: 145 * um}},
		{"a longer leg at 9, on a lower floor: 110 and 154 um at 600 mm", piece(500*mm, steel, 20), piece(700*mm, steel, 20), align.Vector{Horizontal: 33 * um, Vertical: 132 * um}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			got, _ := alone(t, sides(0, 800*mm, row.three, row.nine))
			nearVector(t, "movement", got, row.want, 1e-6)
		})
	}
}

// By hand for uncertainty: heights count twice, in what a leg grows and in how
// far the roll reaches. Growths 220 and 110 um, u 5 mm on the leg at 3 alone:
// dz = (11 um/m/K * 40 K * 5 mm)/2 = 1.1 um; dy = -(500/800) * 2.2 - (110/800) * 2.5 =
// -1.375 - 0.34375 = -1.71875 um.
func TestRollOfAnUncertainHeight(t *testing.T) {
	_, u := alone(t, sides(0, 800*mm, withU(piece(500*mm, steel, 40), 5*mm, 0), piece(500*mm, steel, 20)))
	nearVector(t, "u", u, align.Vector{Horizontal: 1.71875 * um, Vertical: 1.1 * um}, 1e-6)
	// At 9: -(500/800) * -1.1 - 0.34375 = 0.34375 um, and 0.55 um up.
	_, u = alone(t, sides(0, 800*mm, piece(500*mm, steel, 40), withU(piece(500*mm, steel, 20), 5*mm, 0)))
	nearVector(t, "u", u, align.Vector{Horizontal: 0.34375 * um, Vertical: 0.55 * um}, 1e-6)
}

// A coefficient that both legs share lifts and rolls in one; two that are each
// their own do not.
func TestRollOfAnUncertainCoefficient(t *testing.T) {
	sure := steel
	sure.U = 1e-6
	other := sure
	other.Source = "its own certificate"
	leg := func(m thermal.Material) thermal.Piece { return piece(500*mm, m, 40) }
	_, u := alone(t, sides(0, 500*mm, leg(sure), leg(sure)))
	nearVector(t, "shared", u, align.Vector{Vertical: 20 * um}, 1e-6)
	_, u = alone(t, sides(0, 500*mm, leg(sure), leg(other)))
	root2 := units.Length(math.Sqrt2)
	nearVector(t, "apart", u, align.Vector{Horizontal: 20 * root2 * um, Vertical: 10 * root2 * um}, 1e-3)
}

// A machine as a rigid body on two points that rise: it turns about x by what
// the feet's line turns, exactly. The linear formula misses by the square of the
// roll times the height, and by the cube times the track.
func TestRollAgainstARigidBody(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		height, track := between(t, 100*mm, 2000*mm, "height"), between(t, 200*mm, 2000*mm, "track")
		three, nine := between(t, -50*units.Kelvin, 150*units.Kelvin, "three"), between(t, -50*units.Kelvin, 150*units.Kelvin, "nine")
		got, _ := alone(t, sides(0, track, piece(height, steel, three), piece(height, steel, nine)))

		h, b := float64(height), float64(track)
		g3, g9 := h*11e-6*float64(three), h*11e-6*float64(nine)
		roll := math.Atan2(g3-g9, b) // the foot at 3, at +y, rises over the one at 9
		want := align.Vector{
			Horizontal: units.Length(-h * math.Sin(roll)),
			Vertical:   units.Length((g3+g9)/2 + h*(math.Cos(roll)-1)),
		}
		nearVector(t, "rigid", got, want, units.Length(h*roll*roll*0.51+1e-3))
	})
}
