package flange

import "example.org/collinear/internal/words"

// Push says which way a thicker shim pushes the movable machine. The zero value is
// none: a wrong guess would double the slope.
type Push uint8

// The two ways.
const (
	AwayFromStationary Push = iota + 1 // towards +x, as where the machine sits on its support from outside
	TowardsStationary                  // towards -x, as where the flange lies on the coupling's side of its support
)

var pushNames = words.List{"", "away_from_stationary", "towards_stationary"}

// sign is that of the way along x.
func (p Push) sign() float64 {
	if p == TowardsStationary {
		return -1
	}
	return +1
}

// String returns the wire form, for one "away_from_stationary".
func (p Push) String() string { return pushNames.Word(uint8(p)) }

// MarshalText gives the wire form.
func (p Push) MarshalText() ([]byte, error) { return pushNames.Marshal(uint8(p)) }

// UnmarshalText reads the wire form.
func (p *Push) UnmarshalText(text []byte) error { return words.Unmarshal(p, pushNames, text) }
