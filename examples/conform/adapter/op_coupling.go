package adapter

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// coupling is a coupling on the wire; without a span it is short.
type coupling struct {
	Diameter *units.Length `json:"diameter,omitzero"`
	Span     *units.Length `json:"span,omitzero"`
}

// coupling returns the coupling for the library, to which a span of zero would
// be none.
func (c *coupling) coupling(f *strict.Faults) align.Coupling {
	above(f, "/coupling/diameter", c.Diameter)
	above(f, "/coupling/span", c.Span)
	return align.Coupling{Diameter: value(c.Diameter), Span: value(c.Span)}
}

type couplingInput struct {
	Position position `json:"position"`
	Coupling coupling `json:"coupling"`
}

type couplingResult struct {
	Gap  *opening `json:"gap,omitzero"`
	Flex *flex    `json:"flex,omitzero"`
}

type opening struct {
	Opening units.Length `json:"opening"`
	At      units.Clock  `json:"at"`
}

type flex struct {
	Stationary align.Tilt `json:"stationary"`
	Movable    align.Tilt `json:"movable"`
}

func couple(in *couplingInput, f *strict.Faults) (out couplingResult) {
	position, k := in.Position.estimate(f, "/position").Value, in.Coupling.coupling(f)
	if in.Coupling == (coupling{}) {
		f.Add(units.Missing, "/coupling", "", "a diameter, a span, or both")
	}
	if in.Coupling.Diameter != nil {
		wide, at, err := k.Gap(position)
		f.Adopt(err, ofCoupling)
		out.Gap = &opening{wide, at.Normal()}
	}
	if in.Coupling.Span != nil {
		stationary, movable, err := k.FlexTilts(position)
		f.Adopt(err, ofCoupling)
		out.Flex = &flex{stationary, movable}
	}
	return out
}

func ofCoupling(path string) string {
	if rest, found := strings.CutPrefix(path, "/centreline"); found {
		return "/position" + rest
	}
	return "/coupling" + path
}

type slopeFromGapInput struct {
	Opening  units.Length `json:"opening"`
	At       units.Clock  `json:"at"`
	Diameter units.Length `json:"diameter"`
}

func slopeFromGap(in *slopeFromGapInput, f *strict.Faults) align.Tilt {
	tilt, err := align.SlopeFromGap(in.Opening, in.At, in.Diameter)
	f.Adopt(err, same)
	return tilt
}

type fromFlexInput struct {
	Span       units.Length `json:"span"`
	Stationary align.Tilt   `json:"stationary"`
	Movable    align.Tilt   `json:"movable"`
}

func fromFlex(in *fromFlexInput, f *strict.Faults) position {
	c, err := align.Coupling{Span: in.Span}.FromFlexTilts(in.Stationary, in.Movable)
	f.Adopt(err, same)
	return told(align.Exact(c))
}
