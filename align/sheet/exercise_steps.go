package sheet

import (
	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/flange"
	"example.org/collinear/shims"
	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

// The exercises of one step. Each draws a problem.

func sagExercise(d *draw) Problem {
	at12, at6 := d.mandrel()
	return Problem{Sag: &Sag{At12: at12, At6: at6}}
}

// mandrel draws what a bracket shows on a straight mandrel, from any zero.
func (d *draw) mandrel() (at12, at6 units.Length) {
	at12 = units.Length(d.between(-6, 6)) * d.division
	return at12, at12 - units.Length(d.between(4, 24))*d.division
}

func sweepExercise(d *draw) Problem {
	rim, carrier := d.rim(d.oneIn(2))
	s := Sweep{Carrier: carrier, Rim: rim, View: d.view(), Zero: oneOf(d, units.Twelve, units.Three, units.Six, units.Nine)}
	if s.Rim.Sag == 0 && d.oneIn(2) {
		at12, at6 := d.mandrel()
		s.Mandrel = &Sag{At12: at12, At6: at6}
		rim.Sag = dial.MandrelSag(at12, at6)
	}
	set := align.Set{
		Probe: align.Probe{Kind: align.Rim, Carrier: carrier, Station: rim.Station},
		Sag:   rim.Sag, View: s.View,
	}
	s.Rim.Readings = d.onDial(set, d.centreline(d.anySlope()), units.Length(d.between(-30, 30))*d.division)
	return Problem{Sweep: &s}
}

func gapExercise(d *draw) Problem {
	diameter := d.distance(80*mm, 400*mm)
	c := align.Centreline{
		Horizontal: align.Line{Slope: d.slope(diameter)},
		Vertical:   align.Line{Slope: d.slope(diameter)},
	}
	return Problem{GapFromSlope: &GapFromSlope{Diameter: diameter, Centreline: c}}
}

// slopeExercise opens the coupling by 0.4 to 1.5 mm/m, at an hour at which both planes
// have a share.
func slopeExercise(d *draw) Problem {
	diameter := d.distance(150*mm, 400*mm)
	least, most := int(0.4e-3*diameter/d.division)+1, int(1.5e-3*diameter/d.division)
	return Problem{SlopeFromGap: &SlopeFromGap{
		Opening:  units.Length(d.between(least, most)) * d.division,
		At:       units.Clock(oneOf(d, 1, 2, 4, 5, 7, 8, 10, 11)) * units.Hour,
		Diameter: diameter,
	}}
}

func tiltsExercise(d *draw) Problem {
	return Problem{FlexTilts: &FlexTilts{Span: d.distance(300*mm, 1200*mm), Centreline: d.centreline(d.anySlope())}}
}

func targetExercise(d *draw) Problem {
	cold := d.cold()
	t := ColdTarget{Movable: d.supports(+1, d.near(50*mm), cold)}
	if d.oneIn(2) {
		t.Stationary = d.supports(-1, d.near(50*mm), cold)
	}
	if d.oneIn(2) {
		t.Feet = d.feet(t.Movable[0].X, t.Movable[1].X)
	}
	return Problem{ColdTarget: &t}
}

func readingsExercise(d *draw) Problem {
	r := TargetReadings{View: d.view(), Probe: align.Probe{Kind: oneOf(d, align.Rim, align.Rim, align.NearFace, align.FarFace, align.Gap)}}
	run := d.distance(80*mm, 200*mm)
	r.Centreline = d.centreline(run)
	switch r.Probe.Kind {
	case align.Rim:
		rim, carrier := d.rim(true)
		r.Probe.Station, r.Probe.Carrier, r.Sag = rim.Station, carrier, rim.Sag
		r.Centreline = d.centreline(max(rim.Station, -rim.Station))
	case align.Gap:
		r.Probe.Radius = run
	default:
		r.Probe.Radius, r.Probe.Carrier = run, d.shaft()
	}
	return Problem{TargetReadings: &r}
}

func softFootExercise(d *draw) Problem {
	x, apart, half := d.distance(250*mm, 600*mm), d.distance(400*mm, 1000*mm), d.distance(150*mm, 400*mm)
	feet := []softfoot.Foot{
		{Name: "inboard_3", X: x, Y: half},
		{Name: "inboard_9", X: x, Y: -half},
		{Name: "outboard_3", X: x + apart, Y: half},
		{Name: "outboard_9", X: x + apart, Y: -half},
	}
	common, soft := d.between(3, 10), d.below(len(feet))
	for i := range feet {
		above := oneOf(d, 0, d.between(1, 4))
		if i == soft {
			above = d.between(8, 40)
		}
		feet[i].Lift = units.Length(common+above) * d.division
	}
	return Problem{SoftFoot: &SoftFoot{Feet: feet, Height: d.distance(200*mm, 650*mm)}}
}

func slidingExercise(d *draw) Problem {
	s := SlidingLimit{
		Sliding:  units.LinearSpeed(d.between(4, 24)) * 0.5 * units.MillimetrePerSecond,
		Speed:    units.RotationalSpeed(10*d.between(30, 360)) * units.RevolutionPerMinute,
		Coupling: align.Coupling{Diameter: d.distance(250*mm, 800*mm)},
	}
	if d.system == Inch {
		s.Sliding = units.LinearSpeed(d.between(4, 20)) * 0.025 * units.InchPerSecond
	}
	if d.oneIn(2) {
		s.Coupling.Span = d.distance(300*mm, 1200*mm)
	}
	return Problem{SlidingLimit: &s}
}

func flangeExercise(d *draw) Problem {
	radius := d.distance(80*mm, 300*mm)
	f := flange.Flange{
		Face: d.distance(50*mm, 400*mm), View: d.view(),
		Push: oneOf(d, flange.AwayFromStationary, flange.TowardsStationary),
	}
	for i, name := range [...]string{"1", "2", "3", "4"} { // clockwise from 12, as the crew sees it
		f.Bolts = append(f.Bolts, flange.Bolt{Name: name, Radius: radius, At: units.Clock(90 * i)})
	}
	return Problem{FlangeShims: &FlangeShims{Flange: f, Off: d.centreline(radius)}}
}

// stacksExercise asks for packs that the box can make to the last hundredth: pieces are
// to come to just what is wanted, so that only one total is right.
func stacksExercise(d *draw) Problem {
	step, stock := 50*units.Micrometre, shims.CommonMetric(8)
	if d.system == Inch {
		step, stock = units.Mil, shims.CommonInch(8)
	}
	s := ShimStacks{Stock: stock, Rule: shims.Rule{Error: units.Nanometre, Pieces: 5}}
	for _, end := range [...]string{"inboard", "outboard"} {
		correction := units.Length(d.either(2, 30)) * step
		for _, side := range [...]string{"_3", "_9"} {
			s.Orders = append(s.Orders, shims.Order{
				Foot: end + side, Correction: correction, SoftFoot: oneOf(d, 0, 0, units.Length(d.between(1, 6))*step),
				Now: d.pack(stock),
			})
		}
	}
	return Problem{ShimStacks: &s}
}

// pack draws what lies under a foot now: a thick piece of the box, and thinner ones.
func (d *draw) pack(stock shims.Stock) []shims.Piece {
	pack := []shims.Piece{{Marked: stock[len(stock)-1-d.below(2)].Marked, Count: 1}}
	if d.oneIn(2) {
		pack = append(pack, shims.Piece{Marked: stock[d.below(5)].Marked, Count: d.between(1, 2)})
	}
	return pack
}
