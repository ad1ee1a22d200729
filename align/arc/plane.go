package arc

import "example.org/collinear/internal/words"

// Plane names one of the two planes in which a centreline lies. The zero value is
// none.
type Plane uint8

// The two planes.
const (
	Horizontal Plane = iota + 1 // sideways: positive towards 3 o'clock
	Vertical                    // positive upwards
)

var planeNames = words.List{"", "horizontal", "vertical"}

// String returns the wire form, "horizontal" or "vertical".
func (p Plane) String() string { return planeNames.Word(uint8(p)) }

// MarshalText gives the wire form.
func (p Plane) MarshalText() ([]byte, error) { return planeNames.Marshal(uint8(p)) }

// UnmarshalText reads the wire form.
func (p *Plane) UnmarshalText(text []byte) error { return words.Unmarshal(p, planeNames, text) }
