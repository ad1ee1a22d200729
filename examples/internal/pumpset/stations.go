package pumpset

import (
	"cmp"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// stations are the places of a job in the library's signs: x = 0 at the coupling
// centre, growing towards the movable machine.
type stations struct {
	StationaryRim *units.Length `json:"stationary_rim,omitempty"`
	MovableRim    *units.Length `json:"movable_rim,omitempty"`
	Feet          []align.Foot  `json:"feet"`
}

// station returns the x of a place on the tape:
//
//	x = place - centre
//
// so that two places differ by the distance between them, x_foot = x_rim +
// distance.
func (t *tape) station(place length) units.Length { return place.Value - t.Centre.Value }

// stations converts a sound tape.
func (t *tape) stations() stations {
	s := stations{Feet: make([]align.Foot, len(t.Feet))}
	for i, f := range t.Feet {
		u := cmp.Or(f.U, t.U)
		s.Feet[i] = align.Foot{Name: string(f.Name), X: t.station(f.At), U: u.Value}
	}
	at := func(place length) *units.Length {
		if !place.given() {
			return nil
		}
		x := t.station(place)
		return &x
	}
	s.StationaryRim, s.MovableRim = at(t.StationaryRim), at(t.MovableRim)
	return s
}

// check asks that the places stand in their order along the tape. It catches a
// tape that was read from the wrong end, and planes that were taken for one
// another.
func (t *tape) check(f *strict.Faults) {
	notNegative(f, "/tape/centre", t.Centre, "a reading off the tape")
	notNegative(f, "/tape/u", t.U, "a standard uncertainty")
	centre, rim := t.Centre.Value, t.StationaryRim
	if notNegative(f, "/tape/stationary_rim", rim, "a reading off the tape") && rim.given() && rim.Value > centre {
		f.Add(units.OutOfRange, "/tape/stationary_rim", t.StationaryRim.text, "a place on the stationary side, not beyond the centre at "+t.Centre.text)
	}
	rim = t.MovableRim
	if notNegative(f, "/tape/movable_rim", rim, "a reading off the tape") && rim.given() && rim.Value < centre {
		f.Add(units.OutOfRange, "/tape/movable_rim", t.MovableRim.text, "a place on the movable side, not before the centre at "+t.Centre.text)
	}
	if len(t.Feet) < 2 {
		f.Add(units.Missing, "/tape/feet", "", "the feet of at least two stations")
	}
	for i, foot := range t.Feet {
		t.checkFoot(f, i, foot)
	}
}

func (t *tape) checkFoot(f *strict.Faults, i int, foot foot) {
	path := strict.Step("/tape/feet", i)
	if foot.At.Value <= t.Centre.Value {
		f.Add(units.OutOfRange, path+"/at", foot.At.text, "a place on the movable side, beyond the centre at "+t.Centre.text)
	}
	for _, before := range t.Feet[:i] {
		if before.At.Value == foot.At.Value {
			f.Add(units.Duplicate, path+"/at", foot.At.text, "a place other than that of the feet "+string(before.Name))
		}
	}
	notNegative(f, path+"/u", foot.U, "a standard uncertainty")
}

func notNegative(f *strict.Faults, path string, l length, what string) bool {
	if l.Value < 0 {
		f.Add(units.OutOfRange, path, l.text, what+", not below zero")
	}
	return l.Value >= 0
}

// positive asks for a length above zero.
func positive(f *strict.Faults, path string, l length, what string) {
	if l.Value <= 0 {
		f.Add(units.OutOfRange, path, l.text, what+" above zero")
	}
}
