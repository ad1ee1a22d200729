package adapter

import (
	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type rimFaceInput struct {
	View    align.View   `json:"view"`
	Carrier align.Shaft  `json:"carrier"`
	Rim     rim          `json:"rim"`
	Face    face         `json:"face"`
	Feet    []align.Foot `json:"feet,omitzero"`
}

func rimFace(in *rimFaceInput, f *strict.Faults) handResult {
	found, err := dial.RimFace{View: in.View, Carrier: in.Carrier, Rim: in.Rim.dial(), Face: in.Face.dial()}.Solve()
	return hand(f, found, err, in.Feet)
}

type reverseInput struct {
	View                align.View   `json:"view"`
	CarriedByStationary rim          `json:"carried_by_stationary"`
	CarriedByMovable    rim          `json:"carried_by_movable"`
	Feet                []align.Foot `json:"feet,omitzero"`
}

func reverse(in *reverseInput, f *strict.Faults) handResult {
	found, err := dial.Reverse{
		View:                in.View,
		CarriedByStationary: in.CarriedByStationary.dial(), CarriedByMovable: in.CarriedByMovable.dial(),
	}.Solve()
	return hand(f, found, err, in.Feet)
}

type faceFaceInput struct {
	View         align.View   `json:"view"`
	Span         units.Length `json:"span"`
	AtStationary face         `json:"at_stationary"`
	AtMovable    face         `json:"at_movable"`
	Feet         []align.Foot `json:"feet,omitzero"`
}

func faceFace(in *faceFaceInput, f *strict.Faults) handResult {
	found, err := dial.FaceFace{
		View: in.View, Span: in.Span, AtStationary: in.AtStationary.dial(), AtMovable: in.AtMovable.dial(),
	}.Solve()
	return hand(f, found, err, in.Feet)
}

type rimGapInput struct {
	View    align.View   `json:"view"`
	Carrier align.Shaft  `json:"carrier"`
	Rim     rim          `json:"rim"`
	Gap     gap          `json:"gap"`
	Feet    []align.Foot `json:"feet,omitzero"`
}

func rimGap(in *rimGapInput, f *strict.Faults) handResult {
	found, err := dial.RimGap{View: in.View, Carrier: in.Carrier, Rim: in.Rim.dial(), Gap: in.Gap.dial()}.Solve()
	return hand(f, found, err, in.Feet)
}

type straightedgeGapInput struct {
	View         align.View   `json:"view"`
	Straightedge straightedge `json:"straightedge"`
	Gap          gap          `json:"gap"`
	Feet         []align.Foot `json:"feet,omitzero"`
}

func straightedgeGap(in *straightedgeGapInput, f *strict.Faults) handResult {
	found, err := dial.StraightedgeGap{View: in.View, Straightedge: in.Straightedge.dial(), Gap: in.Gap.dial()}.Solve()
	return hand(f, found, err, in.Feet)
}

type handResult struct {
	Horizontal line          `json:"horizontal"`
	Vertical   line          `json:"vertical"`
	Moves      []move        `json:"moves"`
	Checks     [2]handCheck  `json:"checks"`
	Warnings   []units.Fault `json:"warnings"`
}

// hand tells what a hand method found. The library's paths are those of the
// wire.
func hand(f *strict.Faults, found dial.Result, err error, feet []align.Foot) handResult {
	f.Adopt(err, same)
	p := told(found.Estimate)
	return handResult{
		p.Horizontal, p.Vertical, toldMoves(movesOf(f, found.Estimate, feet)),
		[2]handCheck{toldCheck(found.Checks[0]), toldCheck(found.Checks[1])}, warnings(found.Warnings),
	}
}

// handCheck tells how a sweep satisfies the checks that it carries in itself.
type handCheck struct {
	Miss      *units.Length `json:"miss,omitzero"`
	Completed bool          `json:"completed,omitzero"`
	Supplied  *units.Clock  `json:"supplied,omitzero"`
	Return    *units.Length `json:"return,omitzero"`
}

func toldCheck(c dial.Check) handCheck {
	told := handCheck{Completed: c.Completed}
	if c.Completed {
		told.Supplied = new(c.Supplied.Normal())
	} else {
		told.Miss = &c.Miss
	}
	if c.Returned {
		told.Return = &c.Return
	}
	return told
}
