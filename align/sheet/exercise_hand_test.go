package sheet_test

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
	"example.org/collinear/align/sheet"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// hand is a calculator that may round what it writes down. Heights are in mm or mil,
// distances along the shaft in m or in, slopes in mm/m or mil/in, so that a slope times a
// distance is a height in either system.
type hand struct {
	system sheet.System
	rounds func() bool
	view   align.View
	last   map[string]string // last lines, as they are to be shown
}

func (h *hand) pick(metric, inch float64) float64 {
	if h.system == sheet.Inch {
		return inch
	}
	return metric
}

// write writes a number down, with so many digits, or goes on with what the calculator
// shows.
func (h *hand) write(x, digits float64) float64 {
	if !h.rounds() {
		return x
	}
	p := math.Pow(10, digits)
	return math.Round(x*p+math.Copysign(1e-7, x)) / p
}

func (h *hand) height(x float64) float64 { return h.write(x, h.pick(3, 2)) }
func (h *hand) slope(x float64) float64  { return h.write(x, 3) }

func (h *hand) small(l units.Length) float64 { return float64(l) / h.pick(1e6, 25_400) }
func (h *hand) far(l units.Length) float64   { return float64(l) / h.pick(1e9, 25_400_000) }
func (h *hand) steep(s units.Slope) float64  { return float64(s) / 1e-3 }

// amount is a number as it is shown, and zero of the same.
func (h *hand) amount(x, digits float64, metric, inch string) (text, zero string) {
	unit := metric
	if h.system == sheet.Inch {
		unit = inch
	}
	show := func(x float64) string { return strconv.FormatFloat(x, 'f', int(digits), 64) + " " + unit }
	return show(x), show(0)
}

// say notes a last line with the words for its sign.
func (h *hand) say(id string, x, digits float64, metric, inch, positive, negative, nothing string) {
	text, zero := h.amount(math.Abs(x), digits, metric, inch)
	switch {
	case text == zero && nothing != "":
		text = nothing
	case text == zero:
	case x > 0:
		text = strings.Replace(positive, "%", text, 1)
	default:
		text = strings.Replace(negative, "%", text, 1)
	}
	h.last[id] = text
}

// plain notes a last line that shows its sign.
func (h *hand) plain(id string, x, digits float64, metric, inch string) {
	text, _ := h.amount(x, digits, metric, inch)
	if zero, negative := strings.CutPrefix(text, "-"); negative && strings.Trim(zero, "0. mil") == "" {
		text = zero
	}
	h.last[id] = text
}

func (h *hand) reading(id string, x float64) { h.plain(id, x, h.pick(3, 2), "mm", "mil") }

// sides are what the crew calls the positive and the negative side.
func (h *hand) sides() (positive, negative string) {
	if h.view == align.FromStationary {
		return "9", "3"
	}
	return "3", "9"
}

func (h *hand) lies(id string, x float64) {
	positive, negative := "% high", "% low"
	if strings.HasPrefix(id, "horizontal") {
		p, n := h.sides()
		positive, negative = "% towards "+p+" o'clock", "% towards "+n+" o'clock"
	}
	h.say(id, x, h.pick(3, 2), "mm", "mil", positive, negative, "")
}

func (h *hand) move(id string, x float64) {
	positive, negative := "raise %", "lower %"
	if strings.HasPrefix(id, "horizontal") {
		p, n := h.sides()
		positive, negative = "push % towards "+p+" o'clock", "push % towards "+n+" o'clock"
	}
	h.say(id, x, h.pick(2, 1), "mm", "mil", positive, negative, "leave")
}

func (h *hand) opens(id string, x, digits float64, metric, inch string) {
	positive, negative := "% open at 6 o'clock", "% open at 12 o'clock"
	if strings.HasPrefix(id, "horizontal") {
		p, n := h.sides()
		positive, negative = "% open at "+n+" o'clock", "% open at "+p+" o'clock"
	}
	h.say(id, x, digits, metric, inch, positive, negative, "")
}

func (h *hand) leans(id string, x float64) { h.opens(id, x, 3, "mm/m", "mil/in") }

func (h *hand) work(p sheet.Problem) {
	switch {
	case p.Job != nil:
		h.job(*p.Job)
	case p.Sag != nil:
		h.reading("sag", (h.small(p.Sag.At12)-h.small(p.Sag.At6))/2)
	case p.Sweep != nil:
		h.sweep(*p.Sweep)
	case p.GapFromSlope != nil:
		c, d := p.GapFromSlope.Centreline, h.far(p.GapFromSlope.Diameter)
		v, s := h.height(h.steep(c.Vertical.Slope)*d), h.height(h.steep(c.Horizontal.Slope)*d)
		h.reading("opening", math.Sqrt(v*v+s*s))
	case p.SlopeFromGap != nil:
		g := p.SlopeFromGap
		angle := float64(g.At) * math.Pi / 180
		a := h.small(g.Opening) / h.far(g.Diameter)
		h.leans("vertical.slope", -a*math.Cos(angle))
		h.leans("horizontal.slope", -a*math.Sin(angle))
	case p.FlexTilts != nil:
		l := h.far(p.FlexTilts.Span)
		for name, c := range bothPlanes(p.FlexTilts.Centreline) {
			h.leans(name+".tilt.stationary", h.steep(c.Slope)/2+h.small(c.Offset)/l)
			h.leans(name+".tilt.movable", h.steep(c.Slope)/2-h.small(c.Offset)/l)
		}
	case p.ColdTarget != nil:
		h.coldTarget(*p.ColdTarget)
	case p.TargetReadings != nil:
		h.targetReadings(*p.TargetReadings)
	case p.SoftFoot != nil:
		least := math.Inf(1)
		for _, f := range p.SoftFoot.Feet {
			least = min(least, h.small(f.Lift))
		}
		for _, f := range p.SoftFoot.Feet {
			h.reading("foot."+f.Name+".excess", h.small(f.Lift)-h.height(least))
		}
	case p.SlidingLimit != nil:
		s := p.SlidingLimit
		arm := h.height(float64(s.Sliding) / (float64(s.Speed) / 60 * 2 * math.Pi) / h.pick(1, 0.0254))
		name := "slope"
		if s.Coupling.Span != 0 {
			name = "tilt"
		}
		text, _ := h.amount(arm/(h.far(s.Coupling.Diameter)/2), 3, "mm/m", "mil/in")
		h.last[name] = text
	case p.FlangeShims != nil:
		h.flange(*p.FlangeShims)
	case p.ShimStacks != nil:
		for _, o := range p.ShimStacks.Orders {
			wanted := h.small(o.Correction) + h.small(o.SoftFoot)
			for _, piece := range o.Now {
				wanted += float64(piece.Count) * h.small(piece.Thickness())
			}
			h.reading("foot."+o.Foot+".wanted", wanted)
			h.reading("foot."+o.Foot+".total", h.height(wanted))
			h.reading("foot."+o.Foot+".error", 0)
		}
	}
}

func bothPlanes(c align.Centreline) map[string]align.Line {
	return map[string]align.Line{"vertical": c.Vertical, "horizontal": c.Horizontal}
}

// quarters are the readings at the library's 12, 3, 6 and 9, the fourth from the three.
func (h *hand) quarters(readings []align.Reading) (at [4]float64) {
	var seen [4]bool
	for _, r := range readings {
		q := int(r.At / 90)
		if h.view == align.FromStationary {
			q = (4 - q) % 4
		}
		at[q], seen[q] = h.small(r.Value), true
	}
	for q := range at {
		if !seen[q] {
			at[q] = h.height(at[(q+1)%4] + at[(q+3)%4] - at[(q+2)%4])
		}
	}
	return at
}

// totals are what a round shows in the vertical and the horizontal plane, without sag.
func (h *hand) totals(readings []align.Reading, sag units.Length) [2]float64 {
	at := h.quarters(readings)
	return [2]float64{h.height(at[0] - at[2] - 2*h.small(sag)), h.height(at[1] - at[3])}
}

func (h *hand) halves(readings []align.Reading, sag units.Length, sign float64) [2]float64 {
	t := h.totals(readings, sag)
	return [2]float64{h.height(sign * t[0] / 2), h.height(sign * t[1] / 2)}
}

func (h *hand) tilts(readings []align.Reading, sag, diameter units.Length, sign float64) [2]float64 {
	t := h.totals(readings, sag)
	return [2]float64{h.slope(sign * t[0] / h.far(diameter)), h.slope(sign * t[1] / h.far(diameter))}
}

func minusIf(yes bool) float64 {
	if yes {
		return -1
	}
	return 1
}

// job lays the centreline by one method, and goes on to the feet.
func (h *hand) job(j sheet.Job) {
	var slope, offset [2]float64
	through := func(w [2]float64, x float64) {
		for p := range offset {
			offset[p] = h.height(w[p] - slope[p]*x)
		}
	}
	switch {
	case j.Reverse != nil:
		m := j.Reverse
		h.view = m.View
		wm := h.halves(m.CarriedByStationary.Readings, m.CarriedByStationary.Sag, 1)
		ws := h.halves(m.CarriedByMovable.Readings, m.CarriedByMovable.Sag, -1)
		xm, xs := h.far(m.CarriedByStationary.Station), h.far(m.CarriedByMovable.Station)
		for p := range slope {
			slope[p] = h.slope((wm[p] - ws[p]) / (xm - xs))
		}
		through(wm, xm)
	case j.RimFace != nil:
		m := j.RimFace
		h.view = m.View
		slope = h.tilts(m.Face.Readings, m.Face.Sag, m.Face.Diameter, minusIf(m.Face.Far))
		through(h.halves(m.Rim.Readings, m.Rim.Sag, minusIf(m.Carrier == align.Movable)), h.far(m.Rim.Station))
	case j.RimGap != nil:
		m := j.RimGap
		h.view = m.View
		slope = h.tilts(m.Gap.Readings, 0, m.Gap.Diameter, -1)
		through(h.halves(m.Rim.Readings, m.Rim.Sag, minusIf(m.Carrier == align.Movable)), h.far(m.Rim.Station))
	case j.StraightedgeGap != nil:
		m := j.StraightedgeGap
		h.view = m.View
		slope = h.tilts(m.Gap.Readings, 0, m.Gap.Diameter, -1)
		through(h.halves(m.Straightedge.Readings, 0, minusIf(m.Straightedge.On == align.Stationary)), h.far(m.Straightedge.Station))
	case j.FaceFace != nil:
		m := j.FaceFace
		h.view = m.View
		s := h.tilts(m.AtStationary.Readings, m.AtStationary.Sag, m.AtStationary.Diameter, 1)
		v := h.tilts(m.AtMovable.Readings, m.AtMovable.Sag, m.AtMovable.Diameter, 1)
		for p := range slope {
			slope[p] = h.slope(s[p] + v[p])
			offset[p] = h.height((s[p] - v[p]) * h.far(m.Span) / 2)
		}
	}
	t0, ta := h.target(j.Stationary, j.Movable)
	for _, f := range j.Feet {
		x := h.far(f.X)
		up := h.height(offset[0] + slope[0]*x)
		wanted := 0.0
		if j.Movable != nil {
			wanted = h.height(t0 + ta*x)
		}
		h.move("vertical.foot."+f.Name+".correction", wanted-up)
		h.move("horizontal.foot."+f.Name+".correction", -h.height(offset[1]+slope[1]*x))
	}
}

// grows is the line through the growth of two supports.
func (h *hand) grows(supports []thermal.Support) (g0, ga float64) {
	if supports == nil {
		return 0, 0
	}
	var g, x [2]float64
	for i, s := range supports {
		piece := s.Pieces[0]
		kelvin := piece.Profile[0].Running.Celsius() - piece.Cold.Celsius()
		rise := h.write(kelvin*h.pick(1, 1.8), 1)
		k := float64(piece.Material.Expansion) * h.pick(1, 1/1.8)
		g[i] = h.height(h.small(piece.Height) * k * rise)
		x[i] = h.far(s.X)
	}
	ga = h.slope((g[1] - g[0]) / (x[1] - x[0]))
	return h.height(g[0] - ga*x[0]), ga
}

// target is where the shaft should lie cold.
func (h *hand) target(stationary, movable []thermal.Support) (t0, ta float64) {
	s0, sa := h.grows(stationary)
	m0, ma := h.grows(movable)
	return h.height(s0 - m0), h.slope(sa - ma)
}

func (h *hand) coldTarget(c sheet.ColdTarget) {
	t0, ta := h.target(c.Stationary, c.Movable)
	if len(c.Feet) == 0 {
		h.lies("vertical.target.offset", t0)
		h.leans("vertical.target.slope", ta)
	}
	for _, f := range c.Feet {
		h.lies("vertical.foot."+f.Name+".target", t0+ta*h.far(f.X))
	}
}

func (h *hand) sweep(s sheet.Sweep) {
	h.view = s.View
	sag := h.small(s.Rim.Sag)
	if s.Mandrel != nil {
		sag = h.height((h.small(s.Mandrel.At12) - h.small(s.Mandrel.At6)) / 2)
	}
	raw := h.quarters(s.Rim.Readings)
	free := [4]float64{raw[0] - sag, raw[1], raw[2] + sag, raw[3]}
	zero := int(s.Zero / 90)
	if h.view == align.FromStationary {
		zero = (4 - zero) % 4
	}
	var r [4]float64
	for q := range r {
		r[q] = h.height(free[q] - free[zero])
	}
	sign := minusIf(s.Carrier == align.Movable)
	h.lies("vertical.rim.offset", sign*h.height(r[0]-r[2])/2)
	h.lies("horizontal.rim.offset", sign*h.height(r[1]-r[3])/2)
	if len(s.Rim.Readings) == 4 {
		h.reading("rim.miss", r[0]+r[2]-r[1]-r[3])
	}
}

func (h *hand) targetReadings(r sheet.TargetReadings) {
	c := r.Centreline
	seen := func(l align.Line) float64 {
		if r.Probe.Kind == align.Rim {
			return h.height(h.small(l.Offset) + h.steep(l.Slope)*h.far(r.Probe.Station))
		}
		return h.height(h.steep(l.Slope) * h.far(r.Probe.Radius))
	}
	sign := minusIf(r.Probe.Kind == align.FarFace || r.Probe.Kind == align.Gap || r.Probe.Kind == align.Rim && r.Probe.Carrier == align.Movable)
	v, s := sign*seen(c.Vertical), sign*minusIf(r.View == align.FromStationary)*seen(c.Horizontal)
	sag := h.small(r.Sag)
	h.reading("reading.3", s-v-sag)
	h.reading("reading.6", -2*v-2*sag)
	h.reading("reading.9", -s-v-sag)
}

func (h *hand) flange(s sheet.FlangeShims) {
	h.view = s.Flange.View
	sign := minusIf(s.Flange.Push == flange.TowardsStationary)
	var back []float64
	for _, b := range s.Flange.Bolts {
		angle := float64(b.At) * math.Pi / 180 * minusIf(h.view == align.FromStationary)
		c := s.Off
		back = append(back, h.height(sign*h.far(b.Radius)*(h.steep(c.Vertical.Slope)*math.Cos(angle)+h.steep(c.Horizontal.Slope)*math.Sin(angle))))
	}
	least := math.Inf(1)
	for _, b := range back {
		least = min(least, b)
	}
	for i, b := range s.Flange.Bolts {
		h.reading(fmt.Sprintf("bolt.%s.shim", b.Name), back[i]-least)
	}
	for name, l := range bothPlanes(s.Off) {
		h.move(name+".slide", -(h.small(l.Offset) + h.steep(l.Slope)*h.far(s.Flange.Face)))
	}
}
