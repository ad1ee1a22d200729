package align

import (
	"example.org/collinear/internal/words"
	"example.org/collinear/units"
)

// View is where the crew stands when it names clock positions.
type View uint8

// The two places to stand. The zero value is the library's own observer.
const (
	FromMovable    View = iota // behind the movable machine, looking at the stationary one
	FromStationary             // behind the stationary machine, looking at the movable one: 3 and 9 change places
)

var viewNames = words.List{"from_movable", "from_stationary"}

// Clock converts a clock position from the crew's view to the library's
// (FromMovable), or back: it is its own inverse. 3 o'clock becomes -90 degrees;
// take Normal of it to print 9:00.
func (v View) Clock(t units.Clock) units.Clock {
	if v == FromStationary {
		return -t
	}
	return t
}

// String returns the wire form, for one "from_movable".
func (v View) String() string { return viewNames.Word(uint8(v)) }

// MarshalText gives the wire form.
func (v View) MarshalText() ([]byte, error) { return viewNames.Marshal(uint8(v)) }

// UnmarshalText reads the wire form.
func (v *View) UnmarshalText(text []byte) error { return words.Unmarshal(v, viewNames, text) }
