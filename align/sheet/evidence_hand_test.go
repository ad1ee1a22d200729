package sheet_test

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/align/sheet"
)

// The hand of these tests is a calculator of its own: every line by a plain formula in
// millimetres, ratios and kelvins, and a switch for every slip where a hand makes it. It
// shares no code with the package but the ids of the lines and the names of the slips.

// handLine is one line as a hand works it.
type handLine struct {
	id    string
	sort  *handSort
	from  []int // the lines above that it goes on with
	work  func(v []float64, m mistake) float64
	can   []chance
	allow float64 // how far a choice of the writer's own may take it, as of shims
	free  bool    // the writer chooses: the library's own answer may be another
}

// mistake is a slip, and which of its forms where a hand has several.
type mistake struct {
	kind sheet.SlipKind
	form string
}

func (m mistake) is(k sheet.SlipKind, form string) bool { return m == mistake{k, form} }

// chance is a mistake that can be made at a line, and what a hand has in front of it
// there: one dial, one leg, one machine.
type chance struct {
	mistake
	group string
}

// handPage is a problem as a hand works it.
type handPage struct {
	view  align.View
	lines []handLine
}

func (p *handPage) put(l handLine) int {
	p.lines = append(p.lines, l)
	return len(p.lines) - 1
}

// handUnit is what a hand writes behind a number, how much it is, and how many digits
// are usual after the point.
type handUnit struct {
	name   string
	size   float64
	digits int
}

// handSort is what sort of number a line comes to.
type handSort struct {
	metric, inch handUnit
	plus, minus  string // words in place of the sign; % is the amount
	mirrored     bool   // the words exchange for a crew at the stationary end
	move         bool   // nothing to move is "leave"
	keeps        float64
}

const (
	mil  = 0.0254 // mm
	degF = 5.0 / 9
)

func lengths(metric, inch int, plus, minus string) *handSort {
	return &handSort{metric: handUnit{"mm", 1, metric}, inch: handUnit{"mil", mil, inch}, plus: plus, minus: minus, keeps: 0.001}
}

func slopes(plus, minus string) *handSort {
	return &handSort{metric: handUnit{"mm/m", 1e-3, 3}, inch: handUnit{"mil/in", 1e-3, 3}, plus: plus, minus: minus, keeps: 1e-6}
}

func (s *handSort) sideways() *handSort { s.mirrored = true; return s }
func (s *handSort) moving() *handSort   { s.move = true; return s }

var (
	aReading = lengths(3, 2, "", "")
	aHeight  = lengths(3, 2, "% high", "% low")
	anAside  = lengths(3, 2, "% towards 3 o'clock", "% towards 9 o'clock").sideways()
	aRaise   = lengths(2, 1, "raise %", "lower %").moving()
	aPush    = lengths(2, 1, "push % towards 3 o'clock", "push % towards 9 o'clock").sideways().moving()
	aClimb   = slopes("% open at 6 o'clock", "% open at 12 o'clock")
	aSwing   = slopes("% open at 9 o'clock", "% open at 3 o'clock").sideways()
	aRising  = slopes("% rising along x", "% falling along x")
	aDrift   = slopes("% to 3 o'clock along x", "% to 9 o'clock along x").sideways()
	aSteep   = slopes("", "")
	aGap     = lengths(3, 2, "% open at 6 o'clock", "% open at 12 o'clock")
	aGapSide = lengths(3, 2, "% open at 9 o'clock", "% open at 3 o'clock").sideways()
	aRise    = &handSort{metric: handUnit{"K", 1, 1}, inch: handUnit{"°F", degF, 1}, keeps: 0.1}
)

// handPlane is one of the two planes.
type handPlane struct {
	name                     string
	upright                  bool
	lies, leans, goes, grows *handSort
	exchanged                sheet.SlipKind
}

var handPlanes = [...]handPlane{
	{"vertical", true, aHeight, aClimb, aRaise, aRising, sheet.TopAndBottomExchanged},
	{"horizontal", false, anAside, aSwing, aPush, aDrift, sheet.LeftAndRightExchanged},
}

// of chooses what belongs to the plane.
func (in handPlane) of(vertical, horizontal float64) float64 {
	if in.upright {
		return vertical
	}
	return horizontal
}

// Mistakes in the unit: a number of mils written as one of hundredths of a millimetre is
// 1 mil for 0.01 mm, so the length comes out 1/2.54 of what it is, and the other way
// round 2.54 times.
const (
	milsWrittenAsHundredths = "mil written as 0.01 mm"
	hundredthsWrittenAsMils = "0.01 mm written as mil"
)

func wrongUnit(x float64, m mistake) float64 {
	switch {
	case m.is(sheet.MilForHundredth, milsWrittenAsHundredths):
		return x / 2.54
	case m.is(sheet.MilForHundredth, hundredthsWrittenAsMils):
		return x * 2.54
	}
	return x
}

func canMistakeUnit(group string) []chance {
	return []chance{
		{mistake{sheet.MilForHundredth, milsWrittenAsHundredths}, group},
		{mistake{sheet.MilForHundredth, hundredthsWrittenAsMils}, group},
	}
}

func can(k sheet.SlipKind, form, group string) chance { return chance{mistake{k, form}, group} }

// handRound are four readings in mm at the library's 12, 3, 6 and 9; one of them may be a
// line above.
type handRound struct {
	name  string
	given [4]float64
	from  [4]int // -1: given
	sag   float64
	noSag bool
}

// reads collects quarters of a round: which lines they come from, and how to get them.
func (r *handRound) reads(quarters ...int) (from []int, get func(v []float64) []float64) {
	at := make([]int, len(quarters))
	for i, q := range quarters {
		at[i] = -1
		if r.from[q] >= 0 {
			at[i] = len(from)
			from = append(from, r.from[q])
		}
	}
	return from, func(v []float64) []float64 {
		out := make([]float64, len(quarters))
		for i, q := range quarters {
			out[i] = r.given[q]
			if at[i] >= 0 {
				out[i] = v[at[i]]
			}
		}
		return out
	}
}

// rule12369 puts the fourth reading, or the miss, on the page.
func (p *handPage) rule12369(r *handRound, missing int) {
	if missing < 0 {
		from, get := r.reads(0, 1, 2, 3)
		p.put(handLine{id: r.name + ".miss", sort: aReading, from: from, work: func(v []float64, _ mistake) float64 {
			q := get(v)
			return (q[0] + q[2]) - (q[1] + q[3])
		}})
		return
	}
	_, get := r.reads((missing+1)%4, (missing+3)%4, (missing+2)%4)
	r.from[missing] = p.put(handLine{id: r.name + ".fourth", sort: aReading, work: func(v []float64, _ mistake) float64 {
		q := get(v)
		return q[0] + q[1] - q[2]
	}})
}

// total is the difference of opposite readings, with the sag off where it counts.
func (p *handPage) total(r *handRound, in handPlane) int {
	quarter := 0
	switch {
	case in.upright:
	case p.view == align.FromStationary: // what this crew calls 3
		quarter = 3
	default:
		quarter = 1
	}
	from, get := r.reads(quarter, (quarter+2)%4)
	s := 0.0
	if in.upright && !r.noSag {
		s = r.sag
	}
	l := handLine{id: in.name + "." + r.name + ".total", sort: aReading, from: from}
	l.work = func(v []float64, m mistake) float64 {
		q := get(v)
		here, there := q[0], q[1]
		if m.kind == in.exchanged {
			here, there = there, here
		}
		twice := 2 * s
		switch m.kind {
		case sheet.SagForgotten:
			twice = 0
		case sheet.SagAdded:
			twice = -twice
		case sheet.SagOnce:
			twice = s
		}
		return wrongUnit(here-there-twice, m)
	}
	l.can = append(canMistakeUnit(r.name), can(in.exchanged, "", r.name))
	if s != 0 {
		l.can = append(l.can, can(sheet.SagForgotten, "", r.name), can(sheet.SagAdded, "", r.name), can(sheet.SagOnce, "", r.name))
	}
	return p.put(l)
}

// crewSign turns what a crew at the stationary end counts towards its own 3.
func (p *handPage) crewSign(in handPlane) float64 {
	return signOf(!in.upright && p.view == align.FromStationary)
}

// half is the offset at a dial, from its total.
func (p *handPage) half(r *handRound, in handPlane, sign float64) int {
	t := p.total(r, in)
	sign *= p.crewSign(in)
	return p.put(handLine{
		id: in.name + "." + r.name + ".offset", sort: in.lies, from: []int{t},
		work: func(v []float64, m mistake) float64 {
			k := sign
			if m.kind == sheet.MachinesExchanged {
				k = -k // as if the other shaft carried it
			}
			if m.kind == sheet.TotalNotHalved {
				return k * v[0]
			}
			return k * v[0] / 2
		},
		can: []chance{can(sheet.TotalNotHalved, "", r.name), can(sheet.MachinesExchanged, "carrier", r.name)},
	})
}

// faceSlope is the slope that a face or a gauge sees.
func (p *handPage) faceSlope(r *handRound, in handPlane, sign, diameter float64) int {
	t := p.total(r, in)
	sign *= p.crewSign(in)
	return p.put(handLine{
		id: in.name + "." + r.name + ".slope", sort: in.leans, from: []int{t},
		work: func(v []float64, m mistake) float64 {
			over := diameter
			if m.kind == sheet.RadiusAndDiameter {
				over = diameter / 2
			}
			return sign * v[0] / over
		},
		can: []chance{can(sheet.RadiusAndDiameter, "", r.name)},
	})
}

func signOf(turned ...bool) float64 {
	s := 1.0
	for _, t := range turned {
		if t {
			s = -s
		}
	}
	return s
}

// sinCos are sine and cosine of a place on the clock, exact at the quarters.
func sinCos(degrees float64) (sin, cos float64) {
	switch math.Mod(math.Mod(degrees, 360)+360, 360) {
	case 0:
		return 0, 1
	case 90:
		return 1, 0
	case 180:
		return 0, -1
	case 270:
		return -1, 0
	}
	return math.Sincos(degrees * math.Pi / 180)
}
