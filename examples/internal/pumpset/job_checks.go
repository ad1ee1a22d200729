package pumpset

import "example.org/collinear/align"

// checks are what is looked at before the alignment is worth its while.
type checks struct {
	Runout  []runout `json:"runout,omitempty"`
	Strain  *strain  `json:"strain,omitempty"`
	Spacing *spacing `json:"spacing,omitempty"`
}

// runout is what a dial that stands still shows over a full turn of one shaft.
type runout struct {
	Shaft    align.Shaft `json:"shaft"`
	Where    words       `json:"where,omitzero"`
	Diameter length      `json:"diameter"`        // of the shaft there
	Reading  length      `json:"reading"`         // the largest less the smallest
	Limit    length      `json:"limit,omitzero"`  // left out: that of the library's table
	Source   words       `json:"source,omitzero"` // of the limit
}

// strain is what the shaft did when something that may load the machine was let
// go.
type strain struct {
	Limit    length     `json:"limit,omitzero"`  // in each plane
	Source   words      `json:"source,omitzero"` // of the limit
	Released []released `json:"released"`
}

type released struct {
	What    words  `json:"what"`
	Up      length `json:"up"`       // down is negative
	ToThree length `json:"to_three"` // to nine is negative
}

// spacing is the distance along the shafts that the coupling needs.
type spacing struct {
	Between  words  `json:"between,omitzero"` // which faces
	Wanted   length `json:"wanted"`
	Measured length `json:"measured"`
	Allowed  length `json:"allowed"` // either way
}
