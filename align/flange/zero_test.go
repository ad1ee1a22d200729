package flange_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
	"example.org/collinear/units"
)

// What the zero values are: not given, not chosen, nothing to do.
func TestZeroValues(t *testing.T) {
	_, err := flange.Flange{}.Correct(align.Estimate{})
	if got, want := faults(err), []string{"missing /bolts", "missing /push"}; !slices.Equal(got, want) {
		t.Errorf("Flange: %v, want %v", got, want)
	}
	f := worked()
	f.Bolts[1] = flange.Bolt{}
	if got, want := faults(f.Validate()), []string{"missing /bolts/1/name", "missing /bolts/1/radius"}; !slices.Equal(got, want) {
		t.Errorf("Bolt: %v, want %v", got, want)
	}
	if text := (flange.Shim{}).String(); text != "leave" {
		t.Errorf("Shim: %q", text)
	}
	if text := (flange.Correction{}).String(); text != "leave" {
		t.Errorf("Correction: %q", text)
	}
	if flange.Rabbet(0) != flange.NotStated {
		t.Error("Rabbet: judged though nothing was stated")
	}
	if _, err := (flange.RunoutLimit{}).Within(0); !errors.Is(err, units.Missing) {
		t.Errorf("RunoutLimit: %v", err)
	}
}

// A machine that is in line is left, and nothing of it has a minus sign, whatever
// the signs of what it stands on.
func TestNoNegativeZero(t *testing.T) {
	negative := math.Copysign(0, -1)
	for _, push := range []flange.Push{flange.AwayFromStationary, flange.TowardsStationary} {
		for _, face := range []units.Length{-400 * mm, 0, 400 * mm} {
			for _, off := range []align.Centreline{{}, line(negative, negative, negative, negative)} {
				f := worked()
				f.Push, f.Face, f.Clearance = push, face, mm
				c := mustCorrect(t, f, align.Exact(off))
				all := append(thicknesses(c), c.Axial, c.Over, c.TiltShift.Horizontal, c.TiltShift.Vertical, c.Slide.By.Horizontal, c.Slide.By.Vertical)
				for i, l := range all {
					if l != 0 || math.Signbit(float64(l)) {
						t.Errorf("push %v, face %v: number %d is %v with its sign", push, face, i, l)
					}
				}
			}
		}
	}
}
