package train

import "example.org/collinear/shims"

// Pack is what lies under one single foot of a station now, for one the left or the
// right.
type Pack struct {
	Name string        `json:"name"`          // no other pack of the station has it
	Now  []shims.Piece `json:"now,omitempty"` // none: the foot stands on its base
}
