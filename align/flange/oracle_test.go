package flange_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
	"pgregory.net/rapid"
)

// The oracle is a rigid machine in space, in millimetres: x from the stationary
// machine to the movable one, y towards 3 o'clock, z upwards. It shares no line
// with the package: no slope is small, and a shim is a solid block on a face.

type vector struct{ x, y, z float64 }

func (a vector) plus(b vector) vector { return vector{a.x + b.x, a.y + b.y, a.z + b.z} }

func (a vector) minus(b vector) vector { return a.plus(b.times(-1)) }

func (a vector) times(k float64) vector { return vector{k * a.x, k * a.y, k * a.z} }

func (a vector) dot(b vector) float64 { return a.x*b.x + a.y*b.y + a.z*b.z }

func (a vector) cross(b vector) vector {
	return vector{a.y*b.z - a.z*b.y, a.z*b.x - a.x*b.z, a.x*b.y - a.y*b.x}
}

func (a vector) unit() vector { return a.times(1 / math.Sqrt(a.dot(a))) }

// rotation is a matrix by its rows.
type rotation [3]vector

func (m rotation) of(a vector) vector { return vector{m[0].dot(a), m[1].dot(a), m[2].dot(a)} }

// bringing returns the rotation that takes direction a to b by the shortest way
// (Rodrigues): R = I + [v] + [v]^2/(1 + a.b) with v = a x b.
func bringing(a, b vector) rotation {
	v, k := a.cross(b), 1/(1+a.dot(b))
	of := func(e vector) vector {
		once := v.cross(e)
		return e.plus(once).plus(v.cross(once).times(k))
	}
	x, y, z := of(vector{1, 0, 0}), of(vector{0, 1, 0}), of(vector{0, 0, 1})
	return rotation{{x.x, y.x, z.x}, {x.y, y.y, z.y}, {x.z, y.z, z.z}}
}

// machine is a rigid body by the centre of its flange face and the direction of
// its axis, away from the stationary machine.
type machine struct{ face, axis vector }

// standing is the machine as it was found, with its face at station xf.
func standing(off align.Centreline, xf float64) machine {
	sy, sz := float64(off.Horizontal.Slope), float64(off.Vertical.Slope)
	at := vector{xf, float64(off.Horizontal.Offset)/1e6 + sy*xf, float64(off.Vertical.Offset)/1e6 + sz*xf}
	return machine{at, vector{1, sy, sz}.unit()}
}

// seat is the support: its face is that of the machine as long as there are no
// shims between them. Its 3 and 12 lie in the face.
type seat struct{ centre, out, three, twelve vector }

func (m machine) seat() seat {
	three := vector{-m.axis.y, m.axis.x, 0}.unit() // level, across the axis
	return seat{m.face, m.axis, three, m.axis.cross(three)}
}

// bolt is a place on the seat: clockwise from 12, for the observer behind the
// movable machine.
func (s seat) bolt(radius, degrees float64) vector {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return s.centre.plus(s.three.times(radius * sin)).plus(s.twelve.times(radius * cos))
}

// shimmed lays the machine on the tops of three shims: its face goes into their
// plane by the shortest rotation, and its centre out along the seat.
func (m machine) shimmed(s seat, tops [3]vector) machine {
	normal := tops[1].minus(tops[0]).cross(tops[2].minus(tops[0])).unit()
	if normal.dot(m.axis) < 0 {
		normal = normal.times(-1)
	}
	out := tops[0].minus(m.face).dot(normal) / s.out.dot(normal)
	return machine{m.face.plus(s.out.times(out)), bringing(m.axis, normal).of(m.axis)}
}

// slid moves the machine in the plane of its face, by y and z across the line of
// the stationary axis.
func (m machine) slid(y, z float64) machine {
	x := -(m.axis.y*y + m.axis.z*z) / m.axis.x
	m.face = m.face.plus(vector{x, y, z})
	return m
}

// centreline is where the axis passes x = 0, and its slopes.
func (m machine) centreline() (offsetY, slopeY, offsetZ, slopeZ float64) {
	slopeY, slopeZ = m.axis.y/m.axis.x, m.axis.z/m.axis.x
	return m.face.y - slopeY*m.face.x, slopeY, m.face.z - slopeZ*m.face.x, slopeZ
}

// rebuilt carries out a correction on a machine: the shims at all bolts, then the
// slide. It asks that all shims bear, not just the three that place the machine.
func rebuilt(t fataler, f flange.Flange, c flange.Correction, off align.Centreline) (tilted, done machine) {
	t.Helper()
	m := standing(off, float64(f.Face)/1e6)
	s, out := m.seat(), 1.0
	if f.Push == flange.TowardsStationary {
		out = -1
	}
	var tops []vector
	for _, shim := range c.Shims {
		degrees := float64(shim.Bolt.At)
		if f.View == align.FromStationary { // the observer at the other end counts the other way round
			degrees = 360 - degrees
		}
		tops = append(tops, s.bolt(float64(shim.Bolt.Radius)/1e6, degrees).plus(s.out.times(out*float64(shim.Thickness)/1e6)))
	}
	tilted = m.shimmed(s, [3]vector(tops[:3]))
	for i, top := range tops {
		if gap := math.Abs(top.minus(tilted.face).dot(tilted.axis)); !(gap < 1e-9) {
			t.Errorf("shim %d does not bear: %g mm", i, gap)
		}
	}
	return tilted, tilted.slid(float64(c.Slide.By.Horizontal)/1e6, float64(c.Slide.By.Vertical)/1e6)
}

// A machine that is corrected runs in line but for what the package comment says
// is left: R s^2 of offset at the face, s^3 of slope, both together at the
// coupling. What is told of the steps in between holds as well.
func TestAgainstExactRotations(t *testing.T) {
	const rounding = 1e-9 // mm, and ratios over a metre
	rapid.Check(t, func(t *rapid.T) {
		f, off := drawFlange(t), drawCentreline(t, rapid.SampledFrom([]float64{1e-4, 1e-3, 1e-2, 0.07}).Draw(t, "steepest"))
		c := mustCorrect(t, f, align.Exact(off))
		tilted, done := rebuilt(t, f, c, off)

		sy, sz := float64(off.Horizontal.Slope), float64(off.Vertical.Slope)
		s, r, xf := math.Hypot(sy, sz), 0.0, float64(f.Face)/1e6
		for _, b := range f.Bolts {
			r = max(r, float64(b.Radius)/1e6)
		}
		offsetY, slopeY, offsetZ, slopeZ := done.centreline()
		within(t, "offset left at the face", math.Hypot(done.face.y, done.face.z), r*s*s+rounding)
		within(t, "slope left", math.Hypot(slopeY, slopeZ), s*s*s+rounding*1e-3)
		within(t, "offset left at the coupling", math.Hypot(offsetY, offsetZ), r*s*s+math.Abs(xf)*s*s*s+rounding)

		// Axial by itself, and what the tilt alone does at the coupling, each with its
		// share of what is of higher order.
		within(t, "axial", tilted.face.x-xf-float64(c.Axial)/1e6, r*s*s*s+rounding)
		tiltedY, _, tiltedZ, _ := tilted.centreline()
		dy := tiltedY - float64(off.Horizontal.Offset+c.TiltShift.Horizontal)/1e6
		dz := tiltedZ - float64(off.Vertical.Offset+c.TiltShift.Vertical)/1e6
		within(t, "shift by the tilt", math.Hypot(dy, dz), r*s*s+math.Abs(xf)*s*s*s+rounding)
	})
}

// The bound at the face is no wider than it has to be: where a bolt stands just where
// the face is most behind, all of R s^2 is left. 20 um at 10 mm/m and 200 mm, towards
// where the machine climbed.
func TestBoundIsReached(t *testing.T) {
	off := line(0.5, 0, -0.3, 10e-3)
	f := worked()
	c := mustCorrect(t, f, align.Exact(off))
	_, done := rebuilt(t, f, c, off)
	near(t, "left at the face, up", done.face.z, 0.020, 1e-5)
	near(t, "left at the face, sideways", done.face.y, 0, 1e-12)
	if got := codes(c.Warnings); len(got) != 1 || got[0] != "suspect /off/value" {
		t.Errorf("warnings %q", got)
	}
}

func within(t fataler, what string, got, bound float64) {
	t.Helper()
	if !(math.Abs(got) <= bound) {
		t.Errorf("%s: %g, want at most %g", what, got, bound)
	}
}

// The oracle itself: a shim of 1 mm under each bolt pushes the machine along its
// axis, and a wedge turns it towards the side without shims.
func TestOracle(t *testing.T) {
	m := standing(line(0, 0, 0, 0), 400)
	s := m.seat()
	raise := func(a, b, c float64) [3]vector {
		return [3]vector{
			s.bolt(200, 0).plus(s.out.times(a)), s.bolt(200, 120).plus(s.out.times(b)), s.bolt(200, 240).plus(s.out.times(c)),
		}
	}
	if got := m.shimmed(s, raise(1, 1, 1)); got != (machine{vector{401, 0, 0}, vector{1, 0, 0}}) {
		t.Errorf("pushed to %+v", got)
	}
	turned := m.shimmed(s, raise(3, 0, 0)) // 3 mm at 12 over 300 mm from the other two
	_, _, _, slope := turned.centreline()
	near(t, "slope of a machine that is wedged out at 12", slope, -0.01, 1e-12)
	near(t, "its face", turned.face.x, 401, 1e-9)
}
