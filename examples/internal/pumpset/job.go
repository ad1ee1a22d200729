package pumpset

import (
	"example.org/collinear/align"
	"example.org/collinear/units"
)

// Job is what a crew takes down at one pump set. JOB.md describes the document.
// A field marked omitzero or omitempty may be left out; all others are needed.
type Job struct {
	Format     format      `json:"format"`
	Title      words       `json:"title"`
	Place      words       `json:"place,omitzero"`
	Stationary words       `json:"stationary"` // name of the machine that stays
	Movable    words       `json:"movable"`    // name of the machine whose feet are shimmed and slid
	By         words       `json:"by,omitzero"`
	When       words       `json:"when,omitzero"`
	Instrument words       `json:"instrument,omitzero"`
	Conditions words       `json:"conditions,omitzero"`
	Notes      []words     `json:"notes,omitempty"`
	Units      System      `json:"units,omitzero"`
	View       align.View  `json:"view"`
	Three      words       `json:"three,omitzero"` // what the crew calls their 3 o'clock side
	Nine       words       `json:"nine,omitzero"`
	Coupling   coupling    `json:"coupling"`
	Tape       tape        `json:"tape"`
	Speed      speed       `json:"speed,omitzero"` // at which the shafts run
	Limits     limits      `json:"limits,omitzero"`
	Checks     *checks     `json:"checks,omitempty"`
	SingleFeet *singleFeet `json:"single_feet,omitempty"`
	Target     *target     `json:"target,omitempty"`
	Growth     *growth     `json:"growth,omitempty"` // from which the target follows
	Acceptance *acceptance `json:"acceptance,omitempty"`
	Shims      *stock      `json:"shims,omitempty"`
	Found      survey      `json:"found"`
	Left       *survey     `json:"left,omitempty"`
}

// coupling is what joins the shafts.
type coupling struct {
	Diameter length `json:"diameter"`      // across which a gap is told
	Span     length `json:"span,omitzero"` // of a spacer, flex plane to flex plane
}

// tape holds positions read off one tape along the shafts, its zero anywhere on
// the stationary side, its readings growing towards the movable machine.
type tape struct {
	StationaryRim length `json:"stationary_rim,omitzero"` // where a plunger or feeler touches the stationary shaft's rim
	Centre        length `json:"centre"`                  // the middle of the coupling
	MovableRim    length `json:"movable_rim,omitzero"`    // where a plunger or feeler touches the movable shaft's rim
	Feet          []foot `json:"feet"`
	U             length `json:"u,omitzero"` // standard uncertainty of a reading off the tape
}

// foot is both feet of one end of the movable machine.
type foot struct {
	Name words  `json:"name"`
	At   length `json:"at"`
	U    length `json:"u,omitzero"` // in place of the tape's
}

// limits are what the readings may miss before the report asks for another set.
type limits struct {
	Miss   length `json:"miss,omitzero"`
	Return length `json:"return,omitzero"`
}

// target is where the movable shaft is to lie, as its maker words it.
type target struct {
	Source   words    `json:"source,omitzero"`
	At       length   `json:"at,omitzero"`       // on the tape; left out: at the coupling centre
	High     length   `json:"high,omitzero"`     // low is negative
	ToThree  length   `json:"to_three,omitzero"` // to nine is negative
	Opening  length   `json:"opening,omitzero"`  // how much wider the gap is at OpenAt than opposite
	OpenAt   position `json:"open_at,omitzero"`
	Diameter length   `json:"diameter,omitzero"` // left out: the coupling's
}

// survey is one set of readings: exactly one of the methods.
type survey struct {
	Reverse         *reverse         `json:"reverse,omitempty"`
	RimFace         *rimFace         `json:"rim_face,omitempty"`
	FaceFace        *faceFace        `json:"face_face,omitempty"`
	RimGap          *rimGap          `json:"rim_gap,omitempty"`
	StraightedgeGap *straightedgeGap `json:"straightedge_gap,omitempty"`
}

type reverse struct {
	CarriedByStationary rim `json:"carried_by_stationary"`
	CarriedByMovable    rim `json:"carried_by_movable"`
}

type rimFace struct {
	Carrier align.Shaft `json:"carrier"`
	Rim     rim         `json:"rim"`
	Face    face        `json:"face"`
}

type faceFace struct {
	AtStationary face `json:"at_stationary"`
	AtMovable    face `json:"at_movable"`
}

type rimGap struct {
	Carrier align.Shaft `json:"carrier"`
	Rim     rim         `json:"rim"`
	Gap     gap         `json:"gap"`
}

type straightedgeGap struct {
	Straightedge straightedge `json:"straightedge"`
	Gap          gap          `json:"gap"`
}

// rim is a sweep of a rim dial. Its sag is needed, one way or the other.
type rim struct {
	Sag      length    `json:"sag,omitzero"`
	Mandrel  *mandrel  `json:"mandrel,omitempty"`
	Readings []reading `json:"readings"`
	U        doubt     `json:"u,omitzero"`
}

// face is a sweep of a face dial. Its droop may be left out: none.
type face struct {
	Diameter length    `json:"diameter"`
	Far      bool      `json:"far,omitzero"`
	Sag      length    `json:"sag,omitzero"`
	Mandrel  *mandrel  `json:"mandrel,omitempty"`
	Readings []reading `json:"readings"`
	U        doubt     `json:"u,omitzero"`
}

// gap is a round of a feeler or an inside gauge between the faces.
type gap struct {
	Diameter length    `json:"diameter"`
	Readings []reading `json:"readings"`
	U        doubt     `json:"u,omitzero"`
}

// straightedge is a round of feelers under a straightedge.
type straightedge struct {
	On       align.Shaft `json:"on"`
	Readings []reading   `json:"readings"`
	U        doubt       `json:"u,omitzero"`
}

// mandrel is what the dial showed with its bracket on a straight mandrel.
type mandrel struct {
	At12 length `json:"at_12"`
	At6  length `json:"at_6"`
}

type reading struct {
	At    position `json:"at"`
	Value length   `json:"value"`
}

// doubt holds standard uncertainties; one that is left out is not stated.
type doubt struct {
	Reading  length      `json:"reading,omitzero"`
	Diameter length      `json:"diameter,omitzero"`
	Sag      length      `json:"sag,omitzero"`
	Clock    units.Angle `json:"clock,omitzero"`
}
