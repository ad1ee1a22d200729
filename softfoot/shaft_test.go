package softfoot_test

import (
	"math"
	"testing"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// turn turns a point about an axis through the origin by a small angle, exactly
// (Rodrigues).
func turn(p, axis [3]float64, angle float64) [3]float64 {
	sin, cos := math.Sincos(angle)
	cross := [3]float64{axis[1]*p[2] - axis[2]*p[1], axis[2]*p[0] - axis[0]*p[2], axis[0]*p[1] - axis[1]*p[0]}
	dot := axis[0]*p[0] + axis[1]*p[1] + axis[2]*p[2]
	var out [3]float64
	for i := range out {
		out[i] = p[i]*cos + cross[i]*sin + axis[i]*dot*(1-cos)
	}
	return out
}

// A rigid machine turned in space about any line of the plane of its feet, and
// raised. What its shaft shows at the station of a foot gives that foot's lift but
// for terms of the second order: with an angle up to 1e-4 and sizes up to 2 m,
// 2 m x 1e-8 = 20 nm for each of the few of them.
func TestRollingAgainstRigidBody(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(low, high int, name string) float64 {
			return float64(rapid.IntRange(low, high).Draw(t, name))
		}
		height := draw(100, 900, "height")
		x, y := draw(-1000, 1000, "x"), draw(50, 600, "y")*float64(1-2*rapid.IntRange(0, 1).Draw(t, "side"))
		angle := draw(-1000, 1000, "angle") * 1e-7
		direction := draw(0, 359, "direction") * math.Pi / 180
		axis := [3]float64{math.Cos(direction), math.Sin(direction), 0}
		through := [3]float64{draw(-1000, 1000, "px"), draw(-500, 500, "py"), 0}
		raised := draw(-200, 200, "raised") / 1000
		moved := func(p [3]float64) [3]float64 {
			for i := range p {
				p[i] -= through[i]
			}
			p = turn(p, axis, angle)
			for i := range p {
				p[i] += through[i]
			}
			p[2] += raised
			return p
		}
		shaft, foot := moved([3]float64{x, 0, height}), moved([3]float64{x, y, 0})
		seen := softfoot.AtShaft{Y: units.Length(y) * mm, Up: units.Length(shaft[2]-height) * mm, Sideways: units.Length(shaft[1]) * mm}
		lift, err := seen.Rolling(units.Length(height) * mm)
		if err != nil {
			t.Fatal(err)
		}
		if miss := math.Abs(float64(lift/mm) - foot[2]); miss > 1e-4 {
			t.Errorf("%+v, height %v: got %v, want %v mm", seen, height, lift, foot[2])
		}
	})
}

// A frame that swings about the foot across: its shaft, anywhere between, rises in
// proportion to the distance from that foot.
func TestHingedAgainstRigidBody(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(low, high int, name string) float64 {
			return float64(rapid.IntRange(low, high).Draw(t, name))
		}
		side := float64(1 - 2*rapid.IntRange(0, 1).Draw(t, "side"))
		y, across := side*draw(50, 600, "y"), -side*draw(50, 600, "across")
		height := draw(0, 900, "height")
		angle := draw(-1000, 1000, "angle") * 1e-7
		along := [3]float64{1, 0, 0}
		shaft, foot := turn([3]float64{0, -across, height}, along, angle), turn([3]float64{0, y - across, 0}, along, angle)
		seen := softfoot.AtShaft{Y: units.Length(y) * mm, Up: units.Length(shaft[2]-height) * mm}
		lift, err := seen.Hinged(units.Length(across) * mm)
		if err != nil {
			t.Fatal(err)
		}
		// the shaft sinks by height angle^2/2 <= 4.5 nm, which the lever makes up to 13 times that
		if miss := math.Abs(float64(lift/mm) - foot[2]); miss > 1e-4 {
			t.Errorf("%+v, across %v: got %v, want %v mm", seen, across, lift, foot[2])
		}
		seen.Sideways = 77 * um
		if again, err := seen.Hinged(units.Length(across) * mm); err != nil || again != lift {
			t.Errorf("sideways counts: %v, then %v (%v)", lift, again, err)
		}
	})
}

// Signs by hand, in numbers that come out exactly.
func TestAtShaftByHand(t *testing.T) {
	for _, row := range []struct {
		name                string
		seen                softfoot.AtShaft
		height, across      units.Length
		wantRoll, wantHinge units.Length
	}{
		{"3 o'clock foot up: the shaft goes to 9", softfoot.AtShaft{Y: 200 * mm, Up: 50 * um, Sideways: -60 * um}, 240 * mm, -200 * mm, 100 * um, 100 * um},
		{"9 o'clock foot up: the shaft goes to 3", softfoot.AtShaft{Y: -200 * mm, Up: 50 * um, Sideways: 60 * um}, 240 * mm, 200 * mm, 100 * um, 100 * um},
		{"straight up", softfoot.AtShaft{Y: 200 * mm, Up: 50 * um}, 240 * mm, -200 * mm, 50 * um, 100 * um},
		{"down", softfoot.AtShaft{Y: 200 * mm, Up: -50 * um, Sideways: 60 * um}, 240 * mm, -200 * mm, -100 * um, -100 * um},
		{"the foot across three times as far out", softfoot.AtShaft{Y: 100 * mm, Up: 60 * um}, 240 * mm, -300 * mm, 60 * um, 80 * um},
		{"the foot across a third as far out", softfoot.AtShaft{Y: 300 * mm, Up: 60 * um}, 240 * mm, -100 * mm, 60 * um, 240 * um},
	} {
		roll, err := row.seen.Rolling(row.height)
		if err != nil || roll.Round(nm) != row.wantRoll {
			t.Errorf("%s: rolling %v (%v), want %v", row.name, roll, err, row.wantRoll)
		}
		hinge, err := row.seen.Hinged(row.across)
		if err != nil || hinge.Round(nm) != row.wantHinge {
			t.Errorf("%s: hinged %v (%v), want %v", row.name, hinge, err, row.wantHinge)
		}
	}
}

// Places and motions that may each be given, of which the lift cannot be reckoned with.
func TestLiftBeyondReckoning(t *testing.T) {
	far := softfoot.AtShaft{Y: 1e15, Up: 1e15, Sideways: 1e15}
	for name, lift := range map[string]func(units.Length) (units.Length, error){"rolling": far.Rolling, "hinged": far.Hinged} {
		at := units.Length(1e-3)
		if name == "hinged" {
			at = -at
		}
		got, err := lift(at)
		if f := units.Faults(err); got != 0 || len(f) != 1 || f[0].Code != units.OutOfRange || f[0].Path != "" {
			t.Errorf("%s: got %v, %v", name, got, err)
		}
	}
	if _, err := (softfoot.AtShaft{Y: 1e15, Up: 1e14}).Hinged(-1e15); err != nil {
		t.Errorf("the twin is refused: %v", err)
	}
}

// The least place that there is still is one.
func TestFootNextToTheShaft(t *testing.T) {
	const least = 1e-15
	if lift, err := (softfoot.AtShaft{Y: least, Up: 30 * um}).Rolling(240 * mm); err != nil || lift != 30*um {
		t.Errorf("the foot: %v, %v", lift, err)
	}
	if lift, err := (softfoot.AtShaft{Y: 200 * mm}).Hinged(-least); err != nil || lift != 0 {
		t.Errorf("the foot across: %v, %v", lift, err)
	}
}
