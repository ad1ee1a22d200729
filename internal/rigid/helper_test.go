package rigid_test

import (
	"math"
	"testing"

	"example.org/collinear/internal/rigid"
	"pgregory.net/rapid"
)

const nm = 1e-6 // millimetres

// caseA is the pose that several checks share: offsets +0.12 and -0.20 mm,
// slopes +0.4 and -0.7 mm/m.
var caseA = rigid.Pose{OffsetY: 0.12, SlopeY: 0.4e-3, OffsetZ: -0.20, SlopeZ: -0.7e-3}

// carriers are both shafts with the sign of what a rim dial carried by them sees.
var carriers = []struct {
	name string
	by   rigid.Shaft
	k    float64
}{
	{"stationary carrier", rigid.Stationary, +1},
	{"movable carrier", rigid.Movable, -1},
}

// checkNear fails unless got lies within tolerance of want; NaN never does.
func checkNear(t interface {
	Helper()
	Errorf(string, ...any)
}, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: got %.12g, want %.12g within %.3g (off by %.3g)", what, got, want, tolerance, got-want)
	}
}

// harmonic returns the fitted vector of four readings at 12, 3, 6, 9.
func harmonic(r []float64) (y, z float64) { return (r[1] - r[3]) / 2, (r[0] - r[2]) / 2 }

// quarters sweeps 12, 3, 6, 9.
func quarters(i rigid.Instrument, p rigid.Pose) []float64 { return i.Sweep(p, 0, 90, 180, 270) }

// drawPose draws a pose with an offset and a slope up to the given sizes.
func drawPose(t *rapid.T, offset, slope float64) rigid.Pose {
	return rigid.Pose{
		OffsetY: rapid.Float64Range(-offset, offset).Draw(t, "offset y"),
		SlopeY:  rapid.Float64Range(-slope, slope).Draw(t, "slope y"),
		OffsetZ: rapid.Float64Range(-offset, offset).Draw(t, "offset z"),
		SlopeZ:  rapid.Float64Range(-slope, slope).Draw(t, "slope z"),
	}
}

// pointing returns the pose of the given offset and slope that point towards two
// clock angles.
func pointing(offset, offsetAt, slope, slopeAt float64) rigid.Pose {
	sinO, cosO := math.Sincos(offsetAt * math.Pi / 180)
	sinS, cosS := math.Sincos(slopeAt * math.Pi / 180)
	return rigid.Pose{OffsetY: offset * sinO, SlopeY: slope * sinS, OffsetZ: offset * cosO, SlopeZ: slope * cosS}
}

// along returns the part of the vector (y, z) that points to a clock angle.
func along(y, z, clock float64) float64 {
	sin, cos := math.Sincos(clock * math.Pi / 180)
	return y*sin + z*cos
}

func TestHelpersAgreeOnTheClock(t *testing.T) {
	p := pointing(2, 90, 3, 180)
	checkNear(t, "offset towards 3", p.OffsetY, 2, 1e-15)
	checkNear(t, "slope towards 6", p.SlopeZ, -3, 1e-15)
	checkNear(t, "along 9", along(1, 5, 270), -1, 1e-14)
}
