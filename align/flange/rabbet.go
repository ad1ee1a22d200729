package flange

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/words"
	"example.org/collinear/units"
)

// Rabbet says whether the clearance of the spigot in its rabbet lets the flange
// slide as far as it has to.
type Rabbet uint8

// What is found.
const (
	NotStated  Rabbet = iota // no clearance was given, and nothing is judged
	Fits                     // the spigot stays within half of the clearance from the rabbet's centre
	DoesNotFit               // it would have to go beyond
)

var rabbetNames = words.List{"not_stated", "fits", "does_not_fit"}

// String returns the wire form, for one "does_not_fit".
func (r Rabbet) String() string { return rabbetNames.Word(uint8(r)) }

// MarshalText gives the wire form.
func (r Rabbet) MarshalText() ([]byte, error) { return rabbetNames.Marshal(uint8(r)) }

// UnmarshalText reads the wire form.
func (r *Rabbet) UnmarshalText(text []byte) error { return words.Unmarshal(r, rabbetNames, text) }

// reach judges a slide: from where the spigot stands it may go as far as half of
// the clearance from the rabbet's centre, to any side.
func (f *Flange) reach(slide align.Vector) (Rabbet, units.Length) {
	if f.Clearance == 0 {
		return NotStated, 0
	}
	then := align.Vector{
		Horizontal: f.Spigot.Horizontal + slide.Horizontal,
		Vertical:   f.Spigot.Vertical + slide.Vertical,
	}.Size()
	if then.Above(f.Clearance / 2) {
		return DoesNotFit, then - f.Clearance/2
	}
	return Fits, 0
}
