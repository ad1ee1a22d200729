package main

import (
	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// bounds of a line: bytes without its end, and objects and lists inside one another,
// of which a line has five.
var bounds = strict.Bounds{Size: 1 << 16, Depth: 8}

// request is a line that is read: one of its fields is there. STREAM.md describes
// them. A field marked omitzero or omitempty may be left out; all others are needed.
type request struct {
	SetUp    *setUp    `json:"setup,omitempty"`
	Readings []reading `json:"readings,omitempty"`
	Rest     *rest     `json:"rest,omitempty"`
}

// setUp is what does not change while the shaft turns.
type setUp struct {
	View   align.View       `json:"view"`
	Probes []mounted        `json:"probes"`
	Feet   []align.Foot     `json:"feet"`
	Target align.Centreline `json:"target,omitzero"` // exact; left out: in line
	Judge  *judge           `json:"judge,omitempty"` // left out: no verdict
}

// mounted is a probe as it is mounted.
type mounted struct {
	Name      string            `json:"name"`
	Probe     align.Probe       `json:"probe"`
	AxialFree bool              `json:"axial_free,omitzero"`
	Sag       units.Length      `json:"sag,omitzero"`
	U         align.Uncertainty `json:"u,omitzero"`
}

// judge is what a verdict is reached by.
type judge struct {
	Limits     tolerance.Limits     `json:"limits"`
	Coupling   align.Coupling       `json:"coupling,omitzero"`
	Acceptance tolerance.Acceptance `json:"acceptance,omitzero"`
}

// reading is what a probe shows, and where it stands.
type reading struct {
	Probe string       `json:"probe"`
	At    units.Clock  `json:"at"`
	Value units.Length `json:"value"`
}

// rest says that the shaft stands still and the machine will be moved in a plane.
type rest struct {
	Plane    arc.Plane `json:"plane"`
	Readings []reading `json:"readings"` // at the start, of the probes that follow
}

// answer is a line that is written. Of faults, unseen, found and followed one is
// there; all are as the library writes them.
type answer struct {
	Line     int                `json:"line"`
	Faults   []*units.Fault     `json:"faults,omitempty"` // the line is refused, and nothing has changed
	Unseen   []*units.Fault     `json:"unseen,omitempty"` // what it still takes to see all
	Found    *align.Fitted      `json:"found,omitempty"`
	Followed *arc.Followed      `json:"followed,omitempty"`
	Moves    []align.Move       `json:"moves,omitempty"` // what is left to do at the feet
	Verdict  *tolerance.Verdict `json:"verdict,omitempty"`
	Warnings []units.Fault      `json:"warnings,omitempty"` // what is odd about the readings
}
