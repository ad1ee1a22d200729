package rigid_test

import (
	"math"
	"testing"

	"example.org/collinear/internal/rigid"
	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// secondOrder returns what a rim dial reads to second order, less its constant:
// k w(x).u - (w_y cos t - w_z sin t)^2/(2 rho) + rho (slope.u)^2/2.
func secondOrder(p rigid.Pose, x, rho, k, clock float64) float64 {
	y, z := p.At(x)
	across := along(y, z, clock+90) // only its square counts
	slope := along(p.SlopeY, p.SlopeZ, clock)
	return k*along(y, z, clock) - across*across/(2*rho) + rho*slope*slope/2
}

func TestSecondOrderOnARim(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPose(t, 1, 2e-3)
		x := rapid.Float64Range(-500, 500).Draw(t, "x")
		rho := rapid.Float64Range(40, 500).Draw(t, "rho")
		clock := rapid.Float64Range(0, 360).Draw(t, "clock")
		reach := math.Hypot(p.OffsetY, p.OffsetZ) + math.Abs(x)*math.Hypot(p.SlopeY, p.SlopeZ)
		slope2 := p.SlopeY*p.SlopeY + p.SlopeZ*p.SlopeZ
		// The next terms: w slope^2, and of fourth order w^4/rho^3 and rho slope^4.
		left := 2*reach*slope2 + math.Pow(reach, 4)/math.Pow(rho, 3) + rho*slope2*slope2
		for _, c := range carriers {
			probe := rigid.Instrument{Carrier: c.by, Station: x, Radius: rho}
			got := probe.Sweep(p, 0, clock)[1]
			want := secondOrder(p, x, rho, c.k, clock) - secondOrder(p, x, rho, c.k, 0)
			checkNear(t, c.name, got, want, left+1e-13)
		}
	})
}

// miss returns by how much the sums of opposite readings differ.
func miss(i rigid.Instrument, p rigid.Pose) float64 {
	r := quarters(i, p)
	return (r[0] + r[2]) - (r[1] + r[3])
}

func TestMissOfTheValidityRule(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPose(t, 1, 2e-3)
		x := rapid.Float64Range(-500, 500).Draw(t, "x")
		rho := rapid.Float64Range(40, 500).Draw(t, "rho")
		y, z := p.At(x)
		want := (z*z-y*y)/rho + rho*(p.SlopeZ*p.SlopeZ-p.SlopeY*p.SlopeY)
		// Even in the clock angle, so nothing of third order: w^4/rho^3,
		// (w slope)^2/rho and rho slope^4 remain.
		w2, s2 := y*y+z*z, p.SlopeY*p.SlopeY+p.SlopeZ*p.SlopeZ
		left := w2*w2/math.Pow(rho, 3) + 4*rho*s2*s2 + 4*(w2+x*x*s2)*s2/rho
		for _, c := range carriers {
			got := miss(rigid.Instrument{Carrier: c.by, Station: x, Radius: rho}, p)
			checkNear(t, c.name, got, want, left+1e-13)
		}
	})
}

func TestMissOnParallelShafts(t *testing.T) {
	rim := rigid.Instrument{Radius: 75}
	for _, row := range []struct {
		name           string
		offset, at, um float64
	}{
		{"0.25 mm up", 0.25, 0, +0.83},
		{"0.25 mm towards 3", 0.25, 90, -0.83},
		{"1 mm down", 1, 180, +13.3},
		{"1 mm towards 9", 1, 270, -13.3},
		{"1 mm along a diagonal", 1, 45, 0},
		{"1 mm along the other diagonal", 1, 135, 0},
	} {
		checkNear(t, row.name, 1e3*miss(rim, pointing(row.offset, row.at, 0, 0)), row.um, 0.05)
	}
	// Sag makes both sums -2s and so stays unseen, but for its own second order.
	rim.Sag = 0.1
	checkNear(t, "sag", miss(rim, rigid.Pose{}), 0, 1.01*0.1*0.1/75)
}

// In the full-turn closed forms the second order cancels and about
// |w| slope^2/2 is left, 10 nm here. The largest over all directions stands for
// it.
func TestFullTurnClosedForm(t *testing.T) {
	for _, c := range carriers {
		worst := 0.0
		for slopeAt := 0.0; slopeAt < 360; slopeAt += 5 {
			p := pointing(5, 0, 2e-3, slopeAt)
			y, z := harmonic(quarters(rigid.Instrument{Carrier: c.by, Radius: 75}, p))
			worst = max(worst, math.Hypot(c.k*y-p.OffsetY, c.k*z-p.OffsetZ))
		}
		checkNear(t, c.name, worst, 10*nm, 0.5*nm)
	}
}

// Without the inclination of the cylinder a rim model is off by
// rho slope^2/2 = 150 nm at 5 mm and 2 mm/m.
func TestACircleIsNotEnough(t *testing.T) {
	const rho, w = 75.0, 5.0
	p := pointing(w, 0, 2e-3, 0)
	got := rigid.Instrument{Radius: rho}.Sweep(p, 90, 0)[1]
	circle := w - (math.Sqrt(rho*rho-w*w) - rho) // at 12 less at 3, which lies across w
	checkNear(t, "what a circle misses", got-circle, 150*nm, 15*nm)
}

// arcFit returns the amplitude along the middle of a dense arc, centred on the
// given clock angle, by linear least squares on 1, cos, sin.
func arcFit(i rigid.Instrument, p rigid.Pose, middle, width float64) float64 {
	const n = 2001
	rows, readings := mat.NewDense(n, 3, nil), mat.NewDense(n, 1, nil)
	for j := range n {
		off := width * ((float64(j)+0.5)/n - 0.5)
		sin, cos := math.Sincos(off * math.Pi / 180)
		rows.SetRow(j, []float64{1, cos, sin})
		readings.Set(j, 0, i.Read(p, middle+off))
	}
	var fit mat.Dense
	if err := fit.Solve(rows, readings); err != nil {
		return math.NaN()
	}
	return fit.At(1, 0)
}

// arcError returns the second-order error of arcFit for 1 mm along the middle of
// a dense arc at radius rho. The reading holds -sin^2 p/(2 rho), and so
// +cos^2 p/(2 rho) but for a constant; the regression of cos^2 on cos is the
// ratio of their covariance to the variance of cos over |p| <= h.
func arcError(rho, width float64) float64 {
	h := width / 2 * math.Pi / 180
	sin := math.Sin(h)
	cos1 := sin / h // means of cos, cos^2 and cos^3
	cos2 := 0.5 + math.Sin(2*h)/(4*h)
	cos3 := (sin - sin*sin*sin/3) / h
	return (cos3 - cos1*cos2) / (cos2 - cos1*cos1) / (2 * rho)
}

// On a part of a turn the second order does not cancel: 1 mm along the middle of
// the arc at rho = 75, parallel. The full turn shows that the fit itself is
// sound.
func TestPartialArcs(t *testing.T) {
	for _, c := range carriers {
		rim := rigid.Instrument{Carrier: c.by, Radius: 75}
		for _, row := range []struct{ width, um float64 }{
			{360, 0}, {180, 7.469}, {120, 10.445}, {90, 11.650}, {60, 12.566},
		} {
			for _, middle := range []float64{0, 30, 200} {
				p := pointing(1, middle, 0, 0)
				off := c.k*arcFit(rim, p, middle, row.width) - 1
				checkNear(t, c.name, 1e3*math.Abs(off), row.um, 0.001)
				// The fourth order and the spacing of the readings leave 1 nm.
				checkNear(t, c.name+", regression by hand", c.k*off, arcError(75, row.width), 1*nm)
			}
		}
	}
}
