package sheet

import (
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// subjects are what the exercises of each difficulty are about.
var subjects = [...][]func(*draw) Problem{
	OneStep: {
		sweepExercise, sagExercise, gapExercise, slopeExercise, tiltsExercise, targetExercise,
		readingsExercise, softFootExercise, slidingExercise, flangeExercise, stacksExercise,
	},
	OneMethod: {
		oneMethod((*draw).reverse), oneMethod((*draw).rimFace), oneMethod((*draw).faceFace),
		oneMethod((*draw).rimGap), oneMethod((*draw).straightedgeGap),
	},
	WholeJob: {wholeJob((*draw).reverse), wholeJob((*draw).rimFace), wholeJob((*draw).faceFace)},
}

func (d *draw) subject(of Difficulty) func(*draw) Problem { return oneOf(d, subjects[of]...) }

// measurer draws what a method measured, with brackets that droop or not, and how far the
// coupling reaches towards the feet.
type measurer func(d *draw, droops bool) (j Job, reach units.Length)

func oneMethod(measure measurer) func(*draw) Problem {
	return func(d *draw) Problem {
		j, reach := measure(d, d.oneIn(2))
		if d.oneIn(3) {
			d.leaveOut(&j)
		}
		near := d.near(reach)
		j.Feet = d.feet(near, d.distance(near+400*mm, near+1000*mm))
		return Problem{Job: &j}
	}
}

func wholeJob(measure measurer) func(*draw) Problem {
	return func(d *draw) Problem {
		j, reach := measure(d, true)
		cold := d.cold()
		j.Stationary = d.supports(-1, d.near(reach), cold)
		j.Movable = d.supports(+1, d.near(reach), cold)
		j.Feet = d.feet(j.Movable[0].X, j.Movable[1].X)
		return Problem{Job: &j}
	}
}

const mm = units.Millimetre

// near draws the first support of a machine, beyond where the coupling reaches.
func (d *draw) near(reach units.Length) units.Length { return d.distance(reach+200*mm, reach+500*mm) }

// droop is the sag of a bracket that droops, or none.
func (d *draw) droop(droops bool) units.Length {
	if !droops {
		return 0
	}
	return d.sag()
}

func (d *draw) reverse(droops bool) (Job, units.Length) {
	between := d.run(d.division/2, 80*mm, 320*mm)
	onMovable := d.distance(25*mm, between-25*mm)
	m := dial.Reverse{
		CarriedByStationary: dial.Rim{Station: onMovable, Sag: d.droop(droops)},
		CarriedByMovable:    dial.Rim{Station: onMovable - between, Sag: d.droop(droops)},
		View:                d.view(),
	}
	c, sets := d.centreline(d.anySlope()), m.Sets()
	m.CarriedByStationary.Readings = d.onDial(sets[0], c, 0)
	m.CarriedByMovable.Readings = d.onDial(sets[1], c, 0)
	return Job{Reverse: &m}, onMovable
}

// rim draws a rim dial and the shaft that carries it.
func (d *draw) rim(droops bool) (dial.Rim, align.Shaft) {
	x := d.distance(25*mm, 120*mm)
	if d.oneIn(2) {
		return dial.Rim{Station: -x, Sag: d.droop(droops)}, align.Movable
	}
	return dial.Rim{Station: x, Sag: d.droop(droops)}, align.Stationary
}

// diameter draws the circle that the tip of a face dial sweeps.
func (d *draw) diameter() units.Length { return d.run(d.division, 80*mm, 400*mm) }

func (d *draw) rimFace(droops bool) (Job, units.Length) {
	rim, carrier := d.rim(droops)
	m := dial.RimFace{
		Carrier: carrier, Rim: rim, View: d.view(),
		Face: dial.Face{Diameter: d.diameter(), Far: d.oneIn(4)},
	}
	c, sets := d.centreline(d.anySlope()), m.Sets()
	m.Rim.Readings = d.onDial(sets[0], c, 0)
	m.Face.Readings = d.onDial(sets[1], c, 0)
	return Job{RimFace: &m}, 120 * mm
}

func (d *draw) faceFace(droops bool) (Job, units.Length) {
	m := dial.FaceFace{
		Span:         d.distance(300*mm, 1200*mm),
		AtStationary: dial.Face{Diameter: d.diameter(), Sag: d.faceDroop(droops)},
		AtMovable:    dial.Face{Diameter: d.diameter(), Sag: d.faceDroop(droops)},
		View:         d.view(),
	}
	c, sets := d.centreline(d.anySlope()), m.Sets()
	m.AtStationary.Readings = d.onDial(sets[0], c, 0)
	m.AtMovable.Readings = d.onDial(sets[1], c, 0)
	return Job{FaceFace: &m}, m.Span / 2
}

// faceDroop is what a droop does to a face dial: less, and either way.
func (d *draw) faceDroop(droops bool) units.Length {
	if !droops {
		return 0
	}
	return units.Length(d.either(1, 4)) * d.division
}

// gap draws a gauge between the faces, and the gap that it finds at 12.
func (d *draw) gap() (g dial.Gap, at12 units.Length) {
	wide := units.Length(d.between(int(3*mm/d.division), int(6*mm/d.division)))
	return dial.Gap{Diameter: d.diameter()}, wide * d.division
}

func (d *draw) rimGap(droops bool) (Job, units.Length) {
	rim, carrier := d.rim(droops)
	gap, at12 := d.gap()
	m := dial.RimGap{Carrier: carrier, Rim: rim, Gap: gap, View: d.view()}
	c, sets := d.centreline(d.anySlope()), m.Sets()
	m.Rim.Readings = d.onDial(sets[0], c, 0)
	m.Gap.Readings = d.onDial(sets[1], c, at12)
	return Job{RimGap: &m}, 120 * mm
}

// straightedgeGap has no bracket that could droop. The rim under the feeler is the
// smaller one by so much that there is a gap all round.
func (d *draw) straightedgeGap(bool) (Job, units.Length) {
	rim, on := d.rim(false)
	gap, at12 := d.gap()
	m := dial.StraightedgeGap{
		Straightedge: dial.Straightedge{On: on, Station: rim.Station},
		Gap:          gap, View: d.view(),
	}
	c, sets := d.centreline(d.anySlope()), m.Sets()
	m.Straightedge.Readings = lifted(d.onDial(sets[0], c, 0), units.Length(d.between(5, 30))*d.division)
	m.Gap.Readings = d.onDial(sets[1], c, at12)
	return Job{StraightedgeGap: &m}, 120 * mm
}

// lifted adds to all readings what makes the smallest least.
func lifted(readings []align.Reading, least units.Length) []align.Reading {
	low := units.Length(0)
	for _, r := range readings {
		low = min(low, r.Value)
	}
	for i := range readings {
		readings[i].Value += least - low
	}
	return readings
}

// leaveOut takes a reading out of one of the rounds of a job, at any quarter but that
// where the dial was set to zero: it was not taken.
func (d *draw) leaveOut(j *Job) {
	readings := oneOf(d, j.rounds()...)
	i := d.between(1, 3)
	*readings = slices.Delete(*readings, i, i+1)
}

// rounds are the two lists of readings that a job has.
func (j *Job) rounds() []*[]align.Reading {
	if j.Reverse != nil {
		return []*[]align.Reading{&j.Reverse.CarriedByStationary.Readings, &j.Reverse.CarriedByMovable.Readings}
	}
	if j.RimFace != nil {
		return []*[]align.Reading{&j.RimFace.Rim.Readings, &j.RimFace.Face.Readings}
	}
	if j.FaceFace != nil {
		return []*[]align.Reading{&j.FaceFace.AtStationary.Readings, &j.FaceFace.AtMovable.Readings}
	}
	if j.RimGap != nil {
		return []*[]align.Reading{&j.RimGap.Rim.Readings, &j.RimGap.Gap.Readings}
	}
	return []*[]align.Reading{&j.StraightedgeGap.Straightedge.Readings, &j.StraightedgeGap.Gap.Readings}
}

// feet draws two feet, at stations that are known, or a third between them.
func (d *draw) feet(inboard, outboard units.Length) []align.Foot {
	feet := []align.Foot{{Name: "inboard", X: inboard}, {Name: "outboard", X: outboard}}
	if d.oneIn(3) {
		x := d.distance(inboard+100*mm, outboard-100*mm)
		feet = slices.Insert(feet, 1, align.Foot{Name: "middle", X: x})
	}
	return feet
}

// metal is what legs are made of.
type metal struct {
	name      string
	expansion [2]int // in 1e-9 per K, per degree F
}

// metals have coefficients as a drawing gives them, near those of thermal.Materials.
var metals = []metal{
	{"steel", [...]int{Metric: 12_000, Inch: 6_500}},
	{"cast iron", [...]int{Metric: 10_000, Inch: 6_000}},
}

// degrees is the step in which the rises of temperature are drawn.
const degrees = 5

// supports draws how a machine stands on two legs of one height, the first so far from the
// coupling centre, on the side that the sign tells, and how warm each of them becomes. What
// they grow, and the slope that this makes, has no more digits than are shown.
func (d *draw) supports(side, near units.Length, cold int) []thermal.Support {
	m := oneOf(d, metals...)
	height, grows := d.leg(m)
	apart := d.run(grows, 400*mm, 1100*mm)
	inboard, outboard := d.rises()
	return []thermal.Support{
		{Name: "inboard", X: side * near, Pieces: d.pieces(m, height, cold, cold+inboard)},
		{Name: "outboard", X: side * (near + apart), Pieces: d.pieces(m, height, cold, cold+outboard)},
	}
}

// leg draws the height of a leg, and how much it grows with every step of the rise.
func (d *draw) leg(m metal) (height, grows units.Length) {
	const unit = 1_000_000_000 // of the coefficients
	var list []units.Length
	step := int64(m.expansion[d.system]) * degrees
	for _, h := range d.marks(200*mm, 650*mm) {
		if int64(h)*step%(int64(d.place)*unit) == 0 {
			list = append(list, h)
		}
	}
	height = oneOf(d, list...)
	return height, units.Length(int64(height) * step / unit)
}

// cold draws the temperature of the hall, in whole degrees of the system.
func (d *draw) cold() int {
	if d.system == Inch {
		return d.between(55, 85)
	}
	return d.between(12, 28)
}

// rises draws how much warmer two legs become, in degrees of the system: not the same.
func (d *draw) rises() (inboard, outboard int) {
	const least = 2 // steps
	steps := [...]int{Metric: 11, Inch: 20}[d.system]
	i := d.below(steps)
	j := (i + d.between(1, steps-1)) % steps
	return degrees * (least + i), degrees * (least + j)
}

// pieces is a leg of one piece.
func (d *draw) pieces(m metal, height units.Length, cold, running int) []thermal.Piece {
	return []thermal.Piece{{
		Height:   height,
		Material: thermal.Material{Name: m.name, Expansion: d.expansion(m), Source: "drawing of the machine"},
		Cold:     d.temperature(cold),
		Profile:  []thermal.Spot{{Running: d.temperature(running)}},
	}}
}

func (d *draw) expansion(m metal) units.Expansion {
	per := units.PerKelvin
	if d.system == Inch {
		per = units.PerFahrenheitDegree
	}
	return units.Expansion(m.expansion[d.system]) * 1e-9 * per
}

func (d *draw) temperature(degrees int) units.Temperature {
	if d.system == Inch {
		return units.Fahrenheit(float64(degrees))
	}
	return units.Celsius(float64(degrees))
}
