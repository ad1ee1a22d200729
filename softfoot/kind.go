package softfoot

import "example.org/collinear/internal/words"

// Kind is the cause of a soft foot.
type Kind uint8

// The kinds.
const (
	Parallel  Kind = iota + 1 // pads, or undersides of feet, that do not lie in one plane: a flat shim fills the gap
	Angular                   // the underside of a foot is not parallel to its pad: a stepped shim, or machining
	Springing                 // packing that gives: too many shims, rust, burrs, paint, dirt; clean and renew it
	Induced                   // a load on the machine: piping, conduit or coupling; shims do not cure it
)

var kindNames = words.List{"", "parallel", "angular", "springing", "induced"}

// String returns the wire form, for one "parallel".
func (k Kind) String() string { return kindNames.Word(uint8(k)) }

// MarshalText gives the wire form.
func (k Kind) MarshalText() ([]byte, error) { return kindNames.Marshal(uint8(k)) }

// UnmarshalText reads the wire form.
func (k *Kind) UnmarshalText(text []byte) error { return words.Unmarshal(k, kindNames, text) }

// Check is something to do that tells one kind from another.
type Check uint8

// The checks.
const (
	FeelCorners  Check = iota + 1 // a feeler under the corners of the foot, its bolt loose: a gap that differs is angular
	PartLoads                     // survey again with piping, conduit and coupling parted: what goes away was induced
	RenewPacking                  // clean the pad, put fewer and thicker shims in, survey again: what goes away was springing
)

var checkNames = words.List{"", "feel_corners", "part_loads", "renew_packing"}

// String returns the wire form, for one "feel_corners".
func (c Check) String() string { return checkNames.Word(uint8(c)) }

// MarshalText gives the wire form.
func (c Check) MarshalText() ([]byte, error) { return checkNames.Marshal(uint8(c)) }

// UnmarshalText reads the wire form.
func (c *Check) UnmarshalText(text []byte) error { return words.Unmarshal(c, checkNames, text) }
