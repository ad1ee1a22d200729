package arc

import (
	"math"
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// A standing is one probe of a Following. It reads, up to a constant,
//
//	along (onOffset offset + onSlope slope)    of the line in the plane that is followed
//	across (the same)                          of the line in the other plane
//
// in nanometres, offsets in nanometres and slopes as ratios.
type standing struct {
	start             units.Length
	onOffset, onSlope float64 // the law of the probe
	along, across     float64 // cosine and sine of its position, in the vertical plane; sine and cosine in the horizontal one
	turned            float64 // what it reads more where the shafts have turned by a radian
	variance          float64 // of a difference of two readings; zero where not stated
	toOffset, toSlope float64 // what the move has of a reading of one
}

// read takes in one probe of a sound follow.
func (p *standing) read(f *Follow, i int) {
	probe := &f.Probes[i]
	p.start = probe.Start.Value
	p.variance = 2 * float64(probe.Start.U) * float64(probe.Start.U)
	p.onOffset, p.onSlope, _ = lawOf(probe.Probe)
	sin, cos := f.View.Clock(probe.Start.At).SinCos()
	p.along, p.across = cos, sin
	if f.Plane == Horizontal {
		p.along, p.across = sin, cos
	}
	p.turned = float64(p.displacement(f.From.Value.Horizontal)*cos) - float64(p.displacement(f.From.Value.Vertical)*sin)
	if f.View == align.FromStationary { // clockwise for the crew goes the other way round
		p.turned = -p.turned
	}
}

// lawOf returns what a probe reads per offset and per slope of a line. The probe is
// asked: from 6 to 12 o'clock its reading grows by twice that.
func lawOf(probe align.Probe) (onOffset, onSlope float64, err error) {
	const one = units.Millimetre
	s := align.Set{Probe: probe}
	half := func(l align.Line) float64 {
		readings, predictErr := s.Predict(align.Centreline{Vertical: l}, units.Six, units.Twelve)
		if predictErr != nil {
			err = predictErr
			return 0
		}
		return float64(readings[1].Value) / 2
	}
	onOffset = half(align.Line{Offset: one}) / float64(one)
	onSlope = half(align.Line{Slope: 1})
	return onOffset, onSlope, err
}

// displacement is what the probe sees of a line, in its own sign and gain.
func (p *standing) displacement(l align.Line) float64 {
	return float64(p.onOffset*float64(l.Offset)) + float64(p.onSlope*float64(l.Slope))
}

// add adds to a line what a reading has to say.
func (p *standing) add(l *align.Line, reading units.Length) {
	l.Offset += units.Length(p.toOffset * float64(reading))
	l.Slope += units.Slope(p.toSlope * float64(reading))
}

// weight is one over the uncertainty of a difference of two readings, or one.
func (p *standing) weight() float64 {
	if p.variance == 0 {
		return 1
	}
	return 1 / math.Sqrt(p.variance)
}

// limitCondition is where probes count as blind, as in align.Fit.
const limitCondition = 1e12

// solve finds what each reading counts in the offset and in the slope: that part of
// each column of the weighted equations which the other cannot explain, over its
// own square.
func (g *Following) solve() error {
	offset, slope := g.columns()
	ownOffset, ownSlope := rest(offset, slope), rest(slope, offset)
	g.condition = g.conditionOf(offset, slope, ownSlope)
	if !(g.condition < limitCondition) {
		return &units.Fault{Code: units.Unseen, Path: "/probes", Want: "probes that see the " + g.plane.String() + " offset and slope: at two stations, or at one and on a face"}
	}
	for i := range g.probes {
		p := &g.probes[i]
		p.toOffset = p.weight() * ownOffset[i] / squares(ownOffset)
		p.toSlope = p.weight() * ownSlope[i] / squares(ownSlope)
	}
	return g.propagate()
}

// columns are the weighted equations, one row of each per probe.
func (g *Following) columns() (offset, slope []float64) {
	for i := range g.probes {
		p := &g.probes[i]
		offset = append(offset, p.weight()*p.along*p.onOffset)
		slope = append(slope, p.weight()*p.along*p.onSlope)
	}
	return offset, slope
}

// rest returns what is left of a column without its part along another. The second
// round takes out what rounding left in the first.
func rest(of, other []float64) []float64 {
	left := slices.Clone(of)
	for range 2 {
		k := product(left, other) / squares(other)
		for i := range left {
			left[i] -= float64(k * other[i])
		}
	}
	return left
}

func squares(a []float64) float64 { return product(a, a) }

func product(a, b []float64) (sum float64) {
	for i := range a {
		sum += float64(a[i] * b[i])
	}
	return sum
}

// conditionOf is one over the least singular value of the columns, scaled as probes
// that all look along the move would leave them.
func (g *Following) conditionOf(offset, slope, ownSlope []float64) float64 {
	var fullOffset, fullSlope float64
	for i := range g.probes {
		p := &g.probes[i]
		a, b := p.weight()*p.onOffset, p.weight()*p.onSlope
		fullOffset += float64(a * a)
		fullSlope += float64(b * b)
	}
	trace := squares(offset)/fullOffset + squares(slope)/fullSlope
	determinant := squares(offset) / fullOffset * (squares(ownSlope) / fullSlope)
	largest := (trace + math.Sqrt(max(0, float64(trace*trace)-4*determinant))) / 2
	return math.Sqrt(largest / determinant)
}

// propagate finds the covariance of the move, the same wherever it goes.
func (g *Following) propagate() error {
	var offset, slope, both float64
	for i := range g.probes {
		p := &g.probes[i]
		if p.variance == 0 {
			g.cov = align.Covariance{Basis: align.Unknown}
			return nil
		}
		offset += float64(p.toOffset * p.toOffset * p.variance)
		slope += float64(p.toSlope * p.toSlope * p.variance)
		both += float64(p.toOffset * p.toSlope * p.variance)
	}
	u := align.Line{Offset: units.Length(math.Sqrt(offset)), Slope: units.Slope(math.Sqrt(slope))}
	var r [4][4]float64
	for i := range r {
		r[i][i] = 1
	}
	rho := both / (math.Sqrt(offset) * math.Sqrt(slope))
	r[0][1], r[1][0], r[2][3], r[3][2] = rho, rho, rho, rho
	var err error
	if g.cov, err = align.NewCovariance(align.Stated, g.inPlane(u), r); err != nil {
		return &units.Fault{Code: units.OutOfRange, Path: "/probes", Want: "uncertainties that make one of the move that can be reckoned with"}
	}
	return nil
}
