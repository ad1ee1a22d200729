package sheet

import (
	"cmp"
	"math"
	"strconv"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// ShimStacks is the question which pieces make the packs under the feet.
type ShimStacks struct {
	Stock  shims.Stock   `json:"stock"`
	Rule   shims.Rule    `json:"rule"`
	Orders []shims.Order `json:"orders"`
}

// Working works how much is wanted under each foot, and what the pieces come to that
// shims.Choose takes from the stock. A sheet may choose other pieces: its total is right
// within the error that the rule allows. It refuses what Choose refuses.
func (s ShimStacks) Working() (Working, error) {
	choice, err := shims.Choose(s.Stock, s.Rule, s.Orders...)
	if err != nil {
		return Working{}, err
	}
	allow := cmp.Or(s.Rule.Error, shims.DefaultError)
	var p page
	for i, order := range s.Orders {
		p.stack(order, choice.Stacks[i], allow)
	}
	return p.working("Packs of shims", align.FromMovable)
}

// stack puts the pack under one foot on the page.
func (p *page) stack(order shims.Order, stack shims.Stack, allow units.Length) {
	now := 0.0
	for _, piece := range order.Now {
		now += float64(float64(piece.Thickness()) * float64(piece.Count))
	}
	change := func(v values) float64 { return v[0] + v[1] + v[2] }
	wanted := p.answers(p.add(line{
		id:      "foot." + order.Foot + ".wanted",
		sought:  "pack wanted under " + order.Foot,
		formula: "p = p0 + c + f",
		source:  "what lies there now, the correction, and the shim that cures a soft foot",
		kind:    thickness,
		inputs:  []input{put("p0", thickness, now), put("c", raise, order.Correction), put("f", thickness, order.SoftFoot)},
		rule:    change,
		ways: append(unitWays("wanted", order.Foot, change),
			way{kind: PositionForCorrection, rule: func(v values) float64 { return v[0] - v[1] + v[2] }}),
	}), float64(stack.Wanted))
	// Any pieces that come near enough will do, so a total follows from what is wanted.
	inputs, names := []input{p.above("", wanted)}, []string{}
	for i, piece := range stack.Pieces {
		names = append(names, "s"+strconv.Itoa(i+1))
		inputs = append(inputs, put(names[i], thickness, piece.Thickness()))
	}
	total := p.answers(p.add(line{
		id:      "foot." + order.Foot + ".total",
		sought:  "what the pieces under " + order.Foot + " come to, from the base up",
		formula: "q = " + cmp.Or(strings.Join(names, " + "), "0"),
		source:  "pieces that lie one on the other",
		kind:    thickness,
		inputs:  inputs,
		allow:   max(float64(allow), math.Abs(float64(stack.Error))),
		rule:    func(v values) float64 { return v[0] },
	}), float64(stack.Total))
	p.answers(p.add(line{
		id:      "foot." + order.Foot + ".error",
		sought:  "by how much the pack under " + order.Foot + " is too high",
		formula: "error = q - p",
		source:  "what the pieces come to less what is wanted",
		kind:    reading,
		inputs:  []input{p.above("q", total), p.above("p", wanted)},
		rule:    func(v values) float64 { return v[0] - v[1] },
	}), float64(stack.Error))
}
