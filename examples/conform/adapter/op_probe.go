package adapter

import (
	"slices"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// probe is a probe on the wire. Pointers tell what was left out: a station of
// zero is one.
type probe struct {
	Kind    align.Kind    `json:"kind"`
	Carrier *align.Shaft  `json:"carrier,omitzero"`
	Station *units.Length `json:"station,omitzero"`
	Radius  *units.Length `json:"radius,omitzero"`
	Span    *units.Length `json:"span,omitzero"`
	Gain    *float64      `json:"gain,omitzero"`
}

// uses are the fields that a kind of probe needs, and those that it may have.
type uses struct{ needs, may string }

var usesOf = map[align.Kind]uses{
	align.Rim:           {"carrier station", "radius sag"},
	align.Bore:          {"carrier station", "radius sag"},
	align.NearFace:      {"carrier radius", "sag"},
	align.FarFace:       {"carrier radius", "sag"},
	align.Gap:           {"radius", ""},
	align.Straightedge:  {"carrier station", ""},
	align.SpacerFace:    {"carrier radius span", "sag"},
	align.SpacerFarFace: {"carrier radius span", "sag"},
	align.Displacement:  {"station gain", ""},
}

func (u uses) need(field string) bool { return slices.Contains(strings.Fields(u.needs), field) }
func (u uses) allow(field string) bool {
	return u.need(field) || slices.Contains(strings.Fields(u.may), field)
}

// probe returns the probe for the library, which looks at the values.
func (p *probe) probe(f *strict.Faults, path string) align.Probe {
	for _, field := range []struct {
		name  string
		given bool
	}{
		{"carrier", p.Carrier != nil},
		{"station", p.Station != nil},
		{"radius", p.Radius != nil},
		{"span", p.Span != nil},
		{"gain", p.Gain != nil},
	} {
		if p.unused(f, path, field.name, field.given); !field.given && usesOf[p.Kind].need(field.name) {
			f.Add(units.Missing, path+"/"+field.name, "", "what a "+p.Kind.String()+" needs")
		}
	}
	above(f, path+"/radius", p.Radius)
	return align.Probe{
		Kind: p.Kind, Carrier: value(p.Carrier), Station: value(p.Station),
		Radius: value(p.Radius), Span: value(p.Span), Gain: value(p.Gain),
	}
}

// unused notes a field that was given and that the kind does not use, also one
// of zero.
func (p *probe) unused(f *strict.Faults, path, field string, given bool) {
	if given && !usesOf[p.Kind].allow(field) {
		f.Add(units.Conflict, path+"/"+field, "", "no value: a "+p.Kind.String()+" does not use it")
	}
}
