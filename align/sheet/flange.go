package sheet

import (
	"slices"
	"strconv"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// FlangeShims is the question which shims go under the bolts of a flange.
type FlangeShims struct {
	Flange flange.Flange    `json:"flange"`
	Off    align.Centreline `json:"off"` // what was found less the target
}

// Working works the shims at the bolts and the slide of the face, which are what
// flange.Flange.Correct answers. It refuses what that refuses (/flange/bolts/2/radius,
// /off).
func (s FlangeShims) Working() (Working, error) {
	c, err := s.Flange.Correct(align.Exact(s.Off))
	var faults check.Faults
	for _, fault := range units.Faults(err) {
		moved := *fault
		if off, ok := strings.CutPrefix(moved.Path, "/off/value"); ok {
			moved.Path = "/off" + off
		} else {
			moved.Path = "/flange" + moved.Path
		}
		faults.Append(&moved)
	}
	if err := faults.Err(); err != nil {
		return Working{}, err
	}
	f, off := s.Flange, s.Off
	var p page
	var wedges []input
	var names []string
	for i := range f.Bolts {
		symbol := "b" + strconv.Itoa(i+1)
		wedges = append(wedges, p.above(symbol, p.wedge(&f, off, i)))
		names = append(names, symbol)
	}
	least := p.add(line{
		id:      "least",
		sought:  "the least of these, where the shim is zero",
		formula: "b0 = min(" + strings.Join(names, ", ") + ")",
		source:  flangeSource,
		kind:    reading,
		inputs:  wedges,
		rule:    func(v values) float64 { return slices.Min(v) },
	})
	for i, b := range f.Bolts {
		right := func(v values) float64 { return v[0] - v[1] }
		p.answers(p.add(line{
			id:      "bolt." + b.Name + ".shim",
			sought:  "shim at bolt " + b.Name,
			formula: "h = b - b0",
			source:  flangeSource,
			kind:    thickness,
			inputs:  []input{p.above("b", wedges[i].from), p.above("b0", least)},
			rule:    right,
			ways:    unitWays("shims", b.Name, right),
		}), float64(c.Shims[i].Thickness))
	}
	for _, in := range planes {
		p.answers(p.slide(&f, off, in), float64(in.length(c.Slide.By)))
	}
	return p.working("Shims under a flange", f.View)
}

const flangeSource = "shims take out the slope, sliding the offset at the face, derived here"

// wedge is how far the face lies behind at a bolt, by which it has to come forward.
func (p *page) wedge(f *flange.Flange, off align.Centreline, i int) int {
	b := f.Bolts[i]
	sign := outwards(f.Push == flange.TowardsStationary)
	lag := func(av, ah, r, t float64) float64 {
		sin, cos := f.View.Clock(units.Clock(t)).SinCos()
		return sign * (float64(av*r*cos) + float64(ah*r*sin))
	}
	clockwise := "sin(t)"
	if f.View == align.FromStationary {
		clockwise = "-sin(t)"
	}
	return p.add(line{
		id:      "bolt." + b.Name + ".wedge",
		sought:  "shim wanted at bolt " + b.Name + " beside that at the middle of the flange, below zero where less",
		formula: "b = " + signed(sign) + "r * (av * cos(t) + ah * " + clockwise + ")",
		source:  flangeSource,
		kind:    reading,
		inputs: []input{
			put("av", climb, off.Vertical.Slope), put("ah", swing, off.Horizontal.Slope),
			put("r", station, b.Radius), put("t", clock, b.At),
		},
		rule: func(v values) float64 { return lag(v[0], v[1], v[2], v[3]) },
		ways: []way{
			{kind: TopAndBottomExchanged, rule: func(v values) float64 { return lag(-v[0], v[1], v[2], v[3]) }},
			{kind: LeftAndRightExchanged, rule: func(v values) float64 { return lag(v[0], -v[1], v[2], v[3]) }},
			{kind: RadiusAndDiameter, rule: func(v values) float64 { return lag(v[0], v[1], 2*v[2], v[3]) }},
			{kind: PositionForCorrection, sort: "wedge", rule: func(v values) float64 { return -lag(v[0], v[1], v[2], v[3]) }},
		},
	})
}

// slide is how far the face has to slide in one plane.
func (p *page) slide(f *flange.Flange, off align.Centreline, in plane) int {
	right := func(v values) float64 { return 0 - along(v) }
	l, a := in.line(off), pick(in, "av", "ah")
	return p.add(line{
		id:      in.String() + ".slide",
		sought:  in.String() + " slide of the face",
		formula: "c = -(w0 + " + a + " * x)",
		source:  flangeSource,
		kind:    in.moves(),
		inputs:  []input{put("w0", in.lies(), l.Offset), put(a, in.leans(), l.Slope), put("x", station, f.Face)},
		rule:    right,
		ways: append(unitWays("slide", "", right),
			way{kind: LeftAtDial, rule: func(v values) float64 { return 0 - v[0] }},
			way{kind: PositionForCorrection, sort: "slide", rule: along}),
	})
}
