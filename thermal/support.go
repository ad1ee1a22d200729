package thermal

import (
	"example.org/collinear/align"
	"example.org/collinear/units"
)

// Support is one station of a machine. Exactly one of these tells how it moves
// from cold to running: Pieces; Three, Nine and Track; Measured. The zero value
// tells nothing and is refused.
type Support struct {
	Name string       `json:"name,omitzero"`
	X    units.Length `json:"x"` // signed station; zero is the coupling centre, not "not given"

	// What stands one on the other from the base to the shaft's centreline, both
	// feet of the station alike: pedestal, foot, casing.
	Pieces []Piece `json:"pieces,omitzero"`

	// The legs where they differ from side to side, 3 and 9 as the observer
	// behind the movable machine names them, and the distance B between their
	// feet across the machine. What both grow lifts the shaft, the difference
	// rolls the machine about its feet, with H the mean height of both legs:
	//
	//	up = (g3 + g9)/2        towards 3 o'clock = -H (g3 - g9)/B
	Three []Piece      `json:"three,omitzero"`
	Nine  []Piece      `json:"nine,omitzero"`
	Track units.Length `json:"track,omitzero"`

	Measured *Measured `json:"measured,omitzero"`
}

// Piece is a part of a leg that is of one material. It grows by
//
//	height * expansion * rise
//
// The rise is given by Rise, or by Profile and Cold.
type Piece struct {
	Name     string                      `json:"name,omitzero"`
	Height   units.Length                `json:"height"` // above zero; of the whole leg: from the base to the centreline
	Material Material                    `json:"material"`
	Rise     units.TemperatureDifference `json:"rise,omitzero"` // mean of the piece when running less when cold; zero: it stays as it is
	Cold     units.Temperature           `json:"cold,omitzero"` // with a Profile; left out it is 20 °C, the reference of ISO 1
	Profile  []Spot                      `json:"profile,omitzero"`
	U        Uncertainty                 `json:"u,omitzero"`
}

// Spot is a running temperature at a place up a piece. Spots are given from the
// base upwards. Between them the temperature is taken for a straight line, from
// the lowest down to the base and from the highest up to the top for constant; one
// spot alone is the mean.
type Spot struct {
	Up      units.Length      `json:"up"` // from the base of the piece
	Running units.Temperature `json:"running"`
}

// Uncertainty holds the standard uncertainties of a piece, zero where none is
// stated; that of the coefficient stands with the [Material]. The mean rise does
// not change with the height: the spots of a profile stay at their share of it.
type Uncertainty struct {
	Height      units.Length                `json:"height,omitzero"`
	Temperature units.TemperatureDifference `json:"temperature,omitzero"` // of the mean rise, however it was given
}

// Measured is a movement of the shaft's centreline at a support from cold to
// running, as it was measured there: up and towards 3 o'clock are positive. The
// zero value did not move.
type Measured struct {
	By align.Vector `json:"by"`
	U  align.Vector `json:"u,omitzero"` // standard uncertainty in each plane, independent; zero where none is stated
}
