package pumpset

// growth tells how the machines move from cold to running. One that is left out
// stays as it is.
type growth struct {
	Source     words     `json:"source,omitzero"`
	Stationary []support `json:"stationary,omitempty"`
	Movable    []support `json:"movable,omitempty"`
}

// support is one station of a machine: where it stands, and one of three ways to
// tell how its shaft moves there.
type support struct {
	Name       words     `json:"name"`
	At         length    `json:"at,omitzero"`          // on the tape, or
	FromCentre length    `json:"from_centre,omitzero"` // from the middle of the coupling, to the stationary side negative
	Pieces     []leg     `json:"pieces,omitempty"`     // from the base to the shaft's centreline
	Three      []leg     `json:"three,omitempty"`      // the legs where they differ
	Nine       []leg     `json:"nine,omitempty"`
	Track      length    `json:"track,omitzero"` // between them
	Measured   *movement `json:"measured,omitempty"`
}

// leg is a part of what carries the shaft, of one material.
type leg struct {
	Name      words       `json:"name,omitzero"`
	Height    length      `json:"height"`
	Material  words       `json:"material"`
	Expansion expansion   `json:"expansion,omitzero"` // of a material of the crew's own
	Source    words       `json:"source,omitzero"`    // of that
	Rise      rise        `json:"rise,omitzero"`
	Cold      temperature `json:"cold,omitzero"`
	Profile   []spot      `json:"profile,omitempty"`
	U         legDoubt    `json:"u,omitzero"`
}

// spot is a running temperature at a place up a leg.
type spot struct {
	Up      length      `json:"up"`
	Running temperature `json:"running"`
}

// legDoubt holds standard uncertainties.
type legDoubt struct {
	Height      length    `json:"height,omitzero"`
	Temperature rise      `json:"temperature,omitzero"` // of the rise
	Expansion   expansion `json:"expansion,omitzero"`
}

// movement of the shaft from cold to running, as it was measured.
type movement struct {
	Up      length        `json:"up"`
	ToThree length        `json:"to_three"`
	U       movementDoubt `json:"u,omitzero"`
}

type movementDoubt struct {
	Up      length `json:"up,omitzero"`
	ToThree length `json:"to_three,omitzero"`
}
