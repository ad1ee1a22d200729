package sheet_test

import (
	"math"
	"math/rand/v2"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/flange"
	"example.org/collinear/align/sheet"
	"example.org/collinear/shims"
	"example.org/collinear/softfoot"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// draw draws the problems and the habits of the evidence.
type draw struct{ *rand.Rand }

func newDraw(seed uint64) draw { return draw{rand.New(rand.NewPCG(seed, 0x5eed))} }

func (d draw) yes(share float64) bool             { return d.Float64() < share }
func (d draw) between(low, high float64) float64  { return low + (high-low)*d.Float64() }
func (d draw) sign() float64                      { return signOf(d.yes(0.5)) }
func pickOne[T any](d draw, list ...T) T          { return list[d.IntN(len(list))] }
func (d draw) step(low, high, by float64) float64 { return math.Round(d.between(low, high)/by) * by }

// tape is a distance as a tape shows it: whole millimetres, or quarters of an inch.
func (d draw) tape(low, high float64) units.Length {
	if d.yes(0.4) {
		return units.Length(math.Round(d.between(low, high)/6.35)) * units.Inch / 4
	}
	return units.Length(math.Round(d.between(low, high))) * units.Millimetre
}

func (d draw) view() align.View { return pickOne(d, align.FromMovable, align.FromStationary) }
func (d draw) carrier() align.Shaft {
	return pickOne(d, align.Stationary, align.Movable)
}

// small is a length as a dial shows it.
func (d draw) small(low, high float64) units.Length {
	if d.yes(0.4) {
		return units.Length(math.Round(d.between(low, high)/mil*2)) * units.Mil / 2
	}
	return units.Length(math.Round(d.between(low, high)*100)) * units.Millimetre / 100
}

// truth is how the movable shaft lies: offset in mm and slope, vertical and horizontal.
type truth struct{ offset, slope [2]float64 }

func (d draw) truth() truth {
	var t truth
	for i := range t.offset {
		t.offset[i] = d.between(-0.5, 0.5)
		t.slope[i] = d.between(-1.5e-3, 1.5e-3)
	}
	return t
}

func (t truth) centreline() align.Centreline {
	line := func(i int) align.Line {
		return align.Line{
			Offset: units.Length(math.Round(t.offset[i]*100)) * 10 * units.Micrometre,
			Slope:  units.Slope(math.Round(t.slope[i]*1e5)) / 1e5,
		}
	}
	return align.Centreline{Vertical: line(0), Horizontal: line(1)}
}

// readings are those of a probe that sees up and right, by the law k (right sin t +
// up cos t) + s cos t, from any zero, as a dial shows them; three of them or four.
func (d draw) readings(view align.View, k, up, right, sag float64) []align.Reading {
	graduation := pickOne(d, 0.01, 0.01, mil/2, mil)
	from := d.step(-0.3, 0.3, graduation)
	if d.yes(0.5) {
		from = -(k*up + sag) // zero at 12
	}
	var list []align.Reading
	for hour := range 4 {
		degrees := float64(90 * hour)
		seen := degrees
		if view == align.FromStationary {
			seen = -degrees
		}
		sin, cos := sinCos(seen)
		r := from + k*(right*sin+up*cos) + sag*cos
		if d.yes(0.3) {
			r += d.between(-0.008, 0.008)
		}
		list = append(list, align.Reading{At: units.Clock(degrees), Value: mm(math.Round(r/graduation) * graduation)})
	}
	if d.yes(0.3) {
		gone := d.IntN(4)
		list = append(list[:gone], list[gone+1:]...)
	}
	return list
}

// mm is a length to the nanometre.
func mm(x float64) units.Length { return units.Length(math.Round(x * 1e6)) }

func (d draw) sag() units.Length {
	if d.yes(0.3) {
		return 0
	}
	return d.small(0.03, 0.3)
}

func (d draw) rim(view align.View, carrier align.Shaft, t truth, x units.Length, bores bool) dial.Rim {
	r := dial.Rim{Station: x, Sag: d.sag(), Bore: bores && d.yes(0.15)}
	k, sag := signOf(carrier == align.Movable, r.Bore), inMM(r.Sag)
	if r.Bore {
		sag = -sag
	}
	at := func(i int) float64 { return t.offset[i] + t.slope[i]*inMM(x) }
	r.Readings = d.readings(view, k, at(0), at(1), sag)
	return r
}

func (d draw) face(view align.View, up, right float64) dial.Face {
	f := dial.Face{Diameter: d.tape(100, 400), Far: d.yes(0.3)}
	if d.yes(0.2) {
		f.Sag = d.small(-0.05, 0.05)
	}
	r := inMM(f.Diameter) / 2
	f.Readings = d.readings(view, signOf(f.Far), up*r, right*r, inMM(f.Sag))
	return f
}

func (d draw) gap(view align.View, t truth) dial.Gap {
	g := dial.Gap{Diameter: d.tape(100, 400)}
	r := inMM(g.Diameter) / 2
	g.Readings = d.readings(view, -1, t.slope[0]*r, t.slope[1]*r, 0)
	return g
}

func (d draw) feet() []align.Foot {
	near := d.tape(150, 500)
	far := near + d.tape(250, 1200)
	switch {
	case d.yes(0.1):
		return nil
	case d.yes(0.1):
		return []align.Foot{{Name: "inboard", X: near}, {Name: "middle", X: (near + far) / 2}, {Name: "outboard", X: far}}
	}
	return []align.Foot{{Name: "inboard", X: near}, {Name: "outboard", X: far}}
}

func (d draw) job() sheet.Job {
	t, view := d.truth(), d.view()
	j := sheet.Job{Feet: d.feet()}
	switch d.IntN(5) {
	case 0:
		carrier := d.carrier()
		j.RimFace = &dial.RimFace{
			Carrier: carrier, View: view, Rim: d.rim(view, carrier, t, d.dialStation(), true),
			Face: d.face(view, t.slope[0], t.slope[1]),
		}
	case 1:
		carrier := d.carrier()
		j.RimGap = &dial.RimGap{Carrier: carrier, View: view, Rim: d.rim(view, carrier, t, d.dialStation(), true), Gap: d.gap(view, t)}
	case 2:
		on, x := d.carrier(), d.dialStation()
		at := func(i int) float64 { return t.offset[i] + t.slope[i]*inMM(x) }
		j.StraightedgeGap = &dial.StraightedgeGap{
			Straightedge: dial.Straightedge{On: on, Station: x, Readings: d.readings(view, signOf(on == align.Stationary), at(0), at(1), 0)},
			Gap:          d.gap(view, t), View: view,
		}
	case 3:
		j.Reverse = &dial.Reverse{
			View:                view,
			CarriedByStationary: d.rim(view, align.Stationary, t, d.tape(30, 250), true),
			CarriedByMovable:    d.rim(view, align.Movable, t, -d.tape(30, 250), true),
		}
	case 4:
		span := d.tape(300, 2000)
		tilt := func(i int, sign float64) float64 { return t.slope[i]/2 + sign*t.offset[i]/inMM(span) }
		j.FaceFace = &dial.FaceFace{
			Span: span, View: view,
			AtStationary: d.face(view, tilt(0, 1), tilt(1, 1)),
			AtMovable:    d.face(view, tilt(0, -1), tilt(1, -1)),
		}
	}
	if len(j.Feet) > 0 && d.yes(0.4) {
		j.Stationary, j.Movable = d.growth()
	}
	return j
}

func (d draw) dialStation() units.Length {
	if d.yes(0.1) {
		return 0
	}
	return units.Length(d.sign()) * d.tape(20, 200)
}

// growth is that of both machines; either may have none.
func (d draw) growth() (stationary, movable []thermal.Support) {
	near := d.tape(200, 500)
	movable = []thermal.Support{d.support("inboard", near), d.support("outboard", near+d.tape(300, 1000))}
	if d.yes(0.6) {
		stationary = []thermal.Support{d.support("inboard", -near), d.support("outboard", -near-d.tape(300, 1000))}
	}
	if stationary != nil && d.yes(0.2) {
		movable = nil
	}
	return stationary, movable
}

func (d draw) support(name string, x units.Length) thermal.Support {
	s := thermal.Support{Name: name, X: x}
	if d.yes(0.1) {
		s.Name = ""
	}
	if d.yes(0.2) {
		s.Measured = &thermal.Measured{By: align.Vector{Vertical: d.small(-0.1, 0.5), Horizontal: d.small(-0.1, 0.1)}}
		return s
	}
	s.Pieces = append(s.Pieces, d.piece())
	if d.yes(0.2) {
		s.Pieces = append(s.Pieces, d.piece())
	}
	return s
}

func (d draw) piece() thermal.Piece {
	materials := thermal.Materials()
	p := thermal.Piece{Height: d.tape(150, 700), Material: materials[d.IntN(len(materials))]}
	switch {
	case d.yes(0.4):
		p.Profile = []thermal.Spot{{Running: units.Celsius(d.step(30, 90, 1))}}
		p.Cold = units.Celsius(d.step(5, 30, 1))
	case d.yes(0.5):
		p.Rise = units.TemperatureDifference(d.step(5, 120, 1)) * units.FahrenheitDegree
	default:
		p.Rise = units.TemperatureDifference(d.step(3, 65, 1))
	}
	return p
}

func (d draw) sweep() sheet.Sweep {
	t, view := d.truth(), d.view()
	s := sheet.Sweep{Carrier: d.carrier(), View: view, Zero: units.Clock(90 * d.IntN(4))}
	s.Rim = d.rim(view, s.Carrier, t, d.dialStation(), true)
	if d.yes(0.4) {
		top := d.small(-0.1, 0.1)
		s.Mandrel = &sheet.Sag{At12: top, At6: top - 2*s.Rim.Sag}
		s.Rim.Sag = 0
	}
	return s
}

// problem draws one of any kind; half of all are whole jobs.
func (d draw) problem() sheet.Problem {
	if d.yes(0.5) {
		j := d.job()
		return sheet.Problem{Job: &j}
	}
	t := d.truth()
	switch d.IntN(11) {
	case 0, 1:
		s := d.sweep()
		return sheet.Problem{Sweep: &s}
	case 2:
		top := d.small(-0.1, 0.1)
		return sheet.Problem{Sag: &sheet.Sag{At12: top, At6: top - d.small(0.02, 0.5)}}
	case 3:
		return sheet.Problem{GapFromSlope: &sheet.GapFromSlope{Diameter: d.tape(80, 400), Centreline: t.centreline()}}
	case 4:
		return sheet.Problem{SlopeFromGap: &sheet.SlopeFromGap{
			Opening: d.small(0.03, 0.6), At: pickOne(d, units.Clock(90*d.IntN(4)), units.Clock(d.step(0, 359, 5))), Diameter: d.tape(80, 400),
		}}
	case 5:
		return sheet.Problem{FlexTilts: &sheet.FlexTilts{Span: d.tape(200, 2500), Centreline: t.centreline()}}
	case 6:
		c := sheet.ColdTarget{Feet: d.feet()}
		c.Stationary, c.Movable = d.growth()
		return sheet.Problem{ColdTarget: &c}
	case 7:
		return sheet.Problem{TargetReadings: d.targetReadings(t)}
	case 8:
		return sheet.Problem{SoftFoot: d.softFoot()}
	case 9:
		s := sheet.SlidingLimit{
			Sliding:  units.LinearSpeed(d.step(5, 120, 1)),
			Speed:    units.RotationalSpeed(pickOne(d, 740.0, 985, 1480, 1780, 2980, 3560)),
			Coupling: align.Coupling{Diameter: d.tape(60, 300)},
		}
		if d.yes(0.3) {
			s.Coupling.Span = d.tape(200, 1500)
		}
		return sheet.Problem{SlidingLimit: &s}
	}
	if d.yes(0.5) {
		return sheet.Problem{FlangeShims: d.flangeShims(t)}
	}
	return sheet.Problem{ShimStacks: d.shimStacks()}
}

func (d draw) targetReadings(t truth) *sheet.TargetReadings {
	r := sheet.TargetReadings{View: d.view(), Centreline: t.centreline()}
	switch kind := pickOne(d, align.Rim, align.Rim, align.NearFace, align.FarFace, align.Gap); kind {
	case align.Rim:
		r.Probe = align.Probe{Kind: kind, Carrier: d.carrier(), Station: d.dialStation()}
		r.Sag = d.sag()
	case align.Gap:
		r.Probe = align.Probe{Kind: kind, Radius: d.tape(50, 200)}
	default:
		r.Probe = align.Probe{Kind: kind, Carrier: d.carrier(), Radius: d.tape(50, 200)}
		if d.yes(0.2) {
			r.Sag = d.small(-0.05, 0.05)
		}
	}
	return &r
}

func (d draw) softFoot() *sheet.SoftFoot {
	s := sheet.SoftFoot{Height: d.tape(150, 500)}
	long, wide := d.tape(300, 1000), d.tape(200, 500)
	names := [4]string{"inboard at 3", "inboard at 9", "outboard at 3", "outboard at 9"}
	for i, name := range names {
		f := softfoot.Foot{Name: name, Y: wide, Lift: d.small(0, 0.25)}
		if i%2 == 1 {
			f.Y = -wide
		}
		if i >= 2 {
			f.X = long
		}
		s.Feet = append(s.Feet, f)
	}
	return &s
}

func (d draw) flangeShims(t truth) *sheet.FlangeShims {
	n := pickOne(d, 3, 4, 4, 6)
	f := flange.Flange{Face: units.Length(d.sign()) * d.tape(100, 600), Push: pickOne(d, flange.AwayFromStationary, flange.TowardsStationary), View: d.view()}
	radius, first := d.tape(80, 300), pickOne(d, 0.0, 45, 30)
	for i := range n {
		f.Bolts = append(f.Bolts, flange.Bolt{Name: string(rune('A' + i)), Radius: radius, At: units.Clock(first + float64(360*i)/float64(n)).Normal()})
	}
	return &sheet.FlangeShims{Flange: f, Off: t.centreline()}
}

func (d draw) shimStacks() *sheet.ShimStacks {
	s := sheet.ShimStacks{Stock: shims.CommonMetric(20)}
	for _, name := range [2]string{"inboard", "outboard"} {
		o := shims.Order{
			Foot: name, Correction: d.small(-1, 1),
			Now: []shims.Piece{{Marked: units.Millimetre, Count: 2}, {Marked: units.Millimetre / 2, Count: 1 + d.IntN(3)}},
		}
		if d.yes(0.4) {
			o.SoftFoot = d.small(0.05, 0.2)
		}
		s.Orders = append(s.Orders, o)
	}
	return &s
}
