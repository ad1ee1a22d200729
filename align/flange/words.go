package flange

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// String puts the shim into words in the zero [align.Style].
func (s Shim) String() string { return s.Text(align.Style{}) }

// Text puts the shim into words, for one "bolt 1: add 0.20 mm"; one that rounds to
// nothing is left: "bolt 4: leave".
func (s Shim) Text(style align.Style) string {
	words := "leave"
	if !check.Sound(s.Thickness) {
		words = "unknown, the shim is not a number"
	} else if thick := amount(style, s.Thickness); thick != "" {
		words = "add " + thick
	}
	if s.Bolt.Name == "" {
		return words
	}
	return s.Bolt.Name + ": " + words
}

// String puts the correction into words in the zero [align.Style].
func (c Correction) String() string { return c.Text(align.Style{}) }

// Text puts the correction into words, a line for each bolt, one for the slide, and
// where there is something to say one for the movement along the axis and one for
// the rabbet.
func (c Correction) Text(style align.Style) string {
	lines := make([]string, 0, len(c.Shims)+3)
	for _, s := range c.Shims {
		lines = append(lines, s.Text(style))
	}
	lines = append(lines, c.Slide.Text(style))
	if along := amount(style, c.Axial); along != "" {
		way := "away from"
		if c.Axial < 0 {
			way = "towards"
		}
		lines = append(lines, "machine: goes "+along+" "+way+" the stationary one")
	}
	if c.Rabbet == DoesNotFit {
		lines = append(lines, "rabbet: in the way"+c.short(style))
	}
	return strings.Join(lines, "\n")
}

// short says by how much the rabbet is in the way.
func (c *Correction) short(style align.Style) string {
	if over := amount(style, c.Over); over != "" {
		return " by " + over
	}
	return ""
}

// amount is the size of a length with its unit, as a move's would be put, or nothing
// if it rounds to nothing or is not a number.
func amount(style align.Style, l units.Length) string {
	plain := align.Style{Unit: style.Unit, Digits: style.Digits}
	return strings.TrimPrefix(plain.Height(max(l, -l)), "raise ")
}
