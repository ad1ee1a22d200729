package main

import (
	"example.org/collinear/align/train"
	"example.org/collinear/units"
)

// job is what a crew takes down at one train. JOB.md describes the document. A
// field marked omitzero or omitempty may be left out; all others are needed.
// Places are read off one tape along the train; they are its x.
type job struct {
	Format    format     `json:"format"`
	Title     words      `json:"title"`
	Place     words      `json:"place,omitzero"`
	People    words      `json:"people,omitzero"`
	Notes     []words    `json:"notes,omitempty"`
	Units     system     `json:"units,omitzero"`
	Three     words      `json:"three,omitzero"` // what lies at 3 o'clock, for one who stands behind the last machine
	Nine      words      `json:"nine,omitzero"`
	Reference words      `json:"reference,omitzero"` // name of the machine that is to stay
	Work      train.Work `json:"work,omitzero"`      // what to make least; left out: the total travel
	Machines  []machine  `json:"machines"`
	Couplings []coupling `json:"couplings"`
}

// machine is one machine of the train.
type machine struct {
	Name   words        `json:"name"`
	Height units.Length `json:"height,omitzero"` // of the centreline above the feet
	Feet   []foot       `json:"feet"`
	Growth []support    `json:"growth,omitempty"` // left out: it stays as it is
}

// foot is both feet of one end of a machine, with what holds them.
type foot struct {
	Name       words        `json:"name"`
	At         units.Length `json:"at"`
	Vertical   *upAndDown   `json:"vertical,omitempty"`
	Horizontal *sideways    `json:"horizontal,omitempty"`
}

// upAndDown is how far feet can go from where they stand. What is left out is
// free.
type upAndDown struct {
	Fixed  bool          `json:"fixed,omitzero"`
	DownBy *units.Length `json:"down_by,omitempty"`
	UpBy   *units.Length `json:"up_by,omitempty"`
}

// sideways is the same across the train.
type sideways struct {
	Fixed   bool          `json:"fixed,omitzero"`
	NineBy  *units.Length `json:"nine_by,omitempty"`
	ThreeBy *units.Length `json:"three_by,omitempty"`
}

// support is a station where a machine stands, and what warms there.
type support struct {
	Name     words                       `json:"name"`
	At       units.Length                `json:"at"`
	Height   units.Length                `json:"height"` // of what warms, base to centreline
	Material words                       `json:"material"`
	Rise     units.TemperatureDifference `json:"rise"`
	U        units.TemperatureDifference `json:"u,omitzero"` // standard uncertainty of the rise
}

// coupling joins a machine, the earlier, and the next one in line, the later.
type coupling struct {
	Name   words        `json:"name"`
	At     units.Length `json:"at"`
	Span   units.Length `json:"span,omitzero"` // of a spacer, flex plane to flex plane
	Limits limits       `json:"limits"`
	Target *target      `json:"target,omitempty"` // left out: as the growth asks, or in line
	Found  found        `json:"found"`
}

// limits are those of what is found less the target.
type limits struct {
	Offset   units.Length `json:"offset,omitzero"`
	Slope    units.Slope  `json:"slope,omitzero"`
	Tilt     units.Slope  `json:"tilt,omitzero"` // at each flex plane
	PerPlane bool         `json:"per_plane,omitzero"`
	Source   words        `json:"source"`
}

// target is where the later shaft is to lie against the earlier one, cold. Climb
// and drift are told going on along the train.
type target struct {
	Source  words        `json:"source"`
	High    units.Length `json:"high,omitzero"`     // low is negative
	ToThree units.Length `json:"to_three,omitzero"` // to nine is negative
	Climb   units.Slope  `json:"climb,omitzero"`    // falling is negative
	Drift   units.Slope  `json:"drift,omitzero"`    // towards three; towards nine is negative
}

// found is a set of reverse dials.
type found struct {
	SeenFrom         end `json:"seen_from"`          // behind which end of the train the crew stood that named the clock
	CarriedByEarlier rim `json:"carried_by_earlier"` // touches the rim of the later shaft
	CarriedByLater   rim `json:"carried_by_later"`
}

// rim is a sweep of a rim dial.
type rim struct {
	At   units.Length `json:"at"` // what the plunger touches
	Sag  units.Length `json:"sag"`
	At12 units.Length `json:"at_12"`
	At3  units.Length `json:"at_3"`
	At6  units.Length `json:"at_6"`
	At9  units.Length `json:"at_9"`
	U    units.Length `json:"u,omitzero"` // standard uncertainty of one reading
}
