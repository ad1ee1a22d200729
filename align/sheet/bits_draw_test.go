package sheet

import (
	"fmt"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/flange"
	"example.org/collinear/shims"
	"example.org/collinear/softfoot"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// drawLength draws a length up to most either way: whole steps, as off a dial or a tape,
// with zero among them, or anything.
func drawLength(t *rapid.T, name string, step units.Length, most int) units.Length {
	if rapid.Bool().Draw(t, name+" in steps") {
		return step * units.Length(rapid.IntRange(-most, most).Draw(t, name))
	}
	reach := float64(step) * float64(most)
	l := units.Length(rapid.Float64Range(-reach, reach).Draw(t, name))
	if max(l, -l) < units.Nanometre/1000 {
		return 0 // no negative zero, for no text has one, and nothing that a float64 holds with a few bits alone
	}
	return l
}

// drawPositive draws a length above zero.
func drawPositive(t *rapid.T, name string, step units.Length, most int) units.Length {
	l := drawLength(t, name, step, most)
	return max(l, -l, step)
}

// drawClock draws a place on the clock, more than once round, in thousandths of a degree.
func drawClock(t *rapid.T, name string) units.Clock {
	return units.Clock(rapid.IntRange(-400_000, 400_000).Draw(t, name)) / 1000
}

func drawView(t *rapid.T) align.View {
	return rapid.SampledFrom([]align.View{align.FromMovable, align.FromStationary}).Draw(t, "view")
}

func drawShaft(t *rapid.T, name string) align.Shaft {
	return rapid.SampledFrom([]align.Shaft{align.Stationary, align.Movable}).Draw(t, name)
}

// drawReadings draws a round over the quarters, in any order and from any zero: all
// four, perhaps with a return to the start, or three.
func drawReadings(t *rapid.T, name string) []align.Reading {
	step := rapid.SampledFrom([]units.Length{units.Mil / 2, 10 * units.Micrometre}).Draw(t, name+" step")
	places := rapid.Permutation([]units.Clock{units.Twelve, units.Three, units.Six, units.Nine}).Draw(t, name+" places")
	if rapid.Bool().Draw(t, name+" one is missing") {
		places = places[:3]
	} else if rapid.Bool().Draw(t, name+" returns") {
		places = append(places, places[0])
	}
	var readings []align.Reading
	for _, at := range places {
		turn := units.Clock(360 * rapid.IntRange(-1, 1).Draw(t, name+" turns"))
		readings = append(readings, align.Reading{At: at + turn, Value: drawLength(t, name, step, 60)})
	}
	return readings
}

func drawRim(t *rapid.T, name string) dial.Rim {
	sag := drawLength(t, name+" sag", 10*units.Micrometre, 20)
	return dial.Rim{
		Station: drawLength(t, name+" station", units.Millimetre, 400),
		Bore:    rapid.Bool().Draw(t, name+" bore"), Sag: max(sag, 0),
		Readings: drawReadings(t, name),
	}
}

func drawFace(t *rapid.T, name string) dial.Face {
	return dial.Face{
		Diameter: drawPositive(t, name+" diameter", units.Millimetre, 500),
		Far:      rapid.Bool().Draw(t, name+" far"),
		Sag:      drawLength(t, name+" sag", 10*units.Micrometre, 5),
		Readings: drawReadings(t, name),
	}
}

func drawGap(t *rapid.T) dial.Gap {
	return dial.Gap{Diameter: drawPositive(t, "gap diameter", units.Millimetre, 500), Readings: drawReadings(t, "gap")}
}

// drawMethod puts one of the five methods into a job.
func drawMethod(t *rapid.T) Job {
	view := drawView(t)
	switch rapid.IntRange(0, 4).Draw(t, "method") {
	case 0:
		m := dial.Reverse{CarriedByStationary: drawRim(t, "on movable"), CarriedByMovable: drawRim(t, "on stationary"), View: view}
		if m.CarriedByStationary.Station-m.CarriedByMovable.Station < units.Centimetre {
			m.CarriedByMovable.Station = m.CarriedByStationary.Station - 180*units.Millimetre
		}
		return Job{Reverse: &m}
	case 1:
		return Job{RimFace: &dial.RimFace{Carrier: drawShaft(t, "carrier"), Rim: drawRim(t, "rim"), Face: drawFace(t, "face"), View: view}}
	case 2:
		return Job{FaceFace: &dial.FaceFace{
			Span: drawPositive(t, "span", units.Millimetre, 2000), View: view,
			AtStationary: drawFace(t, "at stationary"), AtMovable: drawFace(t, "at movable"),
		}}
	case 3:
		return Job{RimGap: &dial.RimGap{Carrier: drawShaft(t, "carrier"), Rim: drawRim(t, "rim"), Gap: drawGap(t), View: view}}
	}
	edge := dial.Straightedge{
		On: drawShaft(t, "on"), Station: drawLength(t, "station", units.Millimetre, 400), Readings: drawReadings(t, "straightedge"),
	}
	return Job{StraightedgeGap: &dial.StraightedgeGap{Straightedge: edge, Gap: drawGap(t), View: view}}
}

func drawFeet(t *rapid.T) []align.Foot {
	var feet []align.Foot
	for i := range rapid.IntRange(0, 4).Draw(t, "feet") {
		feet = append(feet, align.Foot{Name: fmt.Sprintf("foot %d", i), X: drawLength(t, "x", units.Millimetre, 3000)})
	}
	return feet
}

// drawSupports draws a machine that grows, or none.
func drawSupports(t *rapid.T, name string) []thermal.Support {
	if !rapid.Bool().Draw(t, name+" grows") {
		return nil
	}
	supports := []thermal.Support{drawSupport(t, "near"), drawSupport(t, "far")}
	supports[0].X = drawLength(t, name+" x", units.Millimetre, 900)
	supports[1].X = supports[0].X + drawPositive(t, name+" apart", units.Centimetre, 150)
	return supports
}

func drawSupport(t *rapid.T, name string) thermal.Support {
	s := thermal.Support{Name: name}
	if rapid.Bool().Draw(t, name+" measured") {
		s.Measured = &thermal.Measured{By: align.Vector{
			Horizontal: drawLength(t, "sideways", units.Mil, 10), Vertical: drawLength(t, "up", units.Mil, 20),
		}}
		return s
	}
	for range rapid.IntRange(1, 3).Draw(t, name+" pieces") {
		s.Pieces = append(s.Pieces, drawPiece(t))
	}
	return s
}

func drawPiece(t *rapid.T) thermal.Piece {
	piece := thermal.Piece{
		Height:   drawPositive(t, "height", units.Millimetre, 900),
		Material: rapid.SampledFrom(thermal.Materials()).Draw(t, "material"),
	}
	if rapid.Bool().Draw(t, "two temperatures") {
		running := units.Celsius(rapid.Float64Range(-40, 200).Draw(t, "running"))
		piece.Profile = []thermal.Spot{{Running: running}}
		piece.Cold = units.Celsius(rapid.Float64Range(-20, 40).Draw(t, "cold"))
	} else {
		piece.Rise = units.TemperatureDifference(rapid.Float64Range(-30, 150).Draw(t, "rise"))
	}
	return piece
}

func drawJob(t *rapid.T) Job {
	j := drawMethod(t)
	j.Stationary, j.Movable = drawSupports(t, "stationary"), drawSupports(t, "movable")
	j.Feet = drawFeet(t)
	return j
}

func drawCentreline(t *rapid.T) align.Centreline {
	line := func(name string) align.Line {
		return align.Line{
			Offset: drawLength(t, name+" offset", 10*units.Micrometre, 60),
			Slope:  drawLength(t, name+" slope", units.Micrometre, 900).Per(units.Metre),
		}
	}
	return align.Centreline{Horizontal: line("horizontal"), Vertical: line("vertical")}
}

func drawSweep(t *rapid.T) Sweep {
	s := Sweep{
		Carrier: drawShaft(t, "carrier"), Rim: drawRim(t, "rim"), View: drawView(t),
		Zero: units.Clock(90 * rapid.IntRange(-3, 5).Draw(t, "zero")),
	}
	if rapid.Bool().Draw(t, "mandrel") {
		s.Rim.Sag = 0
		top := drawLength(t, "mandrel top", units.Mil/2, 20)
		s.Mandrel = &Sag{At12: top, At6: top - drawPositive(t, "mandrel turn", units.Mil/2, 20)}
	}
	return s
}

func drawTargetReadings(t *rapid.T) TargetReadings {
	r := TargetReadings{View: drawView(t), Centreline: drawCentreline(t)}
	r.Probe.Kind = rapid.SampledFrom([]align.Kind{align.Rim, align.NearFace, align.FarFace, align.Gap}).Draw(t, "kind")
	if r.Probe.Kind != align.Gap {
		r.Probe.Carrier = drawShaft(t, "carrier")
		r.Sag = drawLength(t, "sag", 10*units.Micrometre, 20)
	}
	if r.Probe.Kind == align.Rim {
		r.Probe.Station, r.Sag = drawLength(t, "station", units.Millimetre, 400), max(r.Sag, 0)
	} else {
		r.Probe.Radius = drawPositive(t, "radius", units.Millimetre, 300)
	}
	return r
}

func drawSoftFoot(t *rapid.T) SoftFoot {
	s := SoftFoot{Height: 280 * units.Millimetre}
	for i := range 4 {
		f := softfoot.Foot{
			Name: fmt.Sprintf("foot %d", i), X: 600 * units.Millimetre * units.Length(i/2), Y: 200 * units.Millimetre * units.Length(1-2*(i%2)),
		}
		if rapid.Bool().Draw(t, "gaps") {
			for c := range 4 {
				gap := softfoot.Gap{X: units.Length(c/2) * units.Centimetre, Y: units.Length(c%2) * units.Centimetre}
				gap.Gap = max(0, drawLength(t, "gap", units.Mil/2, 20))
				f.Gaps = append(f.Gaps, gap)
			}
		} else {
			f.Lift = drawLength(t, "lift", units.Mil/2, 20)
		}
		s.Feet = append(s.Feet, f)
	}
	return s
}

func drawSlidingLimit(t *rapid.T) SlidingLimit {
	s := SlidingLimit{
		Sliding: units.LinearSpeed(rapid.Float64Range(1, 40).Draw(t, "sliding")),
		Speed:   units.RotationalSpeed(rapid.Float64Range(100, 12000).Draw(t, "speed")),
	}
	s.Coupling.Diameter = drawPositive(t, "diameter", units.Millimetre, 500)
	if rapid.Bool().Draw(t, "spacer") {
		s.Coupling.Span = drawPositive(t, "span", units.Millimetre, 2000)
	}
	return s
}

func drawFlangeShims(t *rapid.T) FlangeShims {
	f := flange.Flange{
		Face: drawLength(t, "face", units.Millimetre, 900), View: drawView(t),
		Push: rapid.SampledFrom([]flange.Push{flange.AwayFromStationary, flange.TowardsStationary}).Draw(t, "push"),
	}
	n := rapid.IntRange(3, 8).Draw(t, "bolts")
	first := float64(drawClock(t, "first"))
	for i := range n {
		f.Bolts = append(f.Bolts, flange.Bolt{
			Name: fmt.Sprint(i + 1), At: units.Clock(first + 360*float64(i)/float64(n)), Radius: drawPositive(t, "radius", units.Millimetre, 20) + 150*units.Millimetre,
		})
	}
	return FlangeShims{Flange: f, Off: drawCentreline(t)}
}

func drawShimStacks(t *rapid.T) ShimStacks {
	s := ShimStacks{Stock: shims.CommonMetric(rapid.IntRange(1, 8).Draw(t, "each"))}
	if rapid.Bool().Draw(t, "inch") {
		s.Stock = shims.CommonInch(4)
	}
	for i := range rapid.IntRange(1, 4).Draw(t, "orders") {
		o := shims.Order{Foot: fmt.Sprintf("foot %d", i), Correction: drawLength(t, "correction", 10*units.Micrometre, 200)}
		o.SoftFoot = max(0, drawLength(t, "soft foot", units.Mil, 10))
		for range rapid.IntRange(0, 3).Draw(t, "now") {
			thick := drawPositive(t, "thickness", 10*units.Micrometre, 300).Round(units.Nanometre)
			o.Now = append(o.Now, shims.Piece{Marked: thick, Count: rapid.IntRange(1, 3).Draw(t, "count")})
		}
		s.Orders = append(s.Orders, o)
	}
	return s
}
