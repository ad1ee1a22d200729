package flange

import (
	"example.org/collinear/align"
	"example.org/collinear/units"
)

// Bolt is a place on the flange where a shim can go.
type Bolt struct {
	Name   string       `json:"name"`   // no other bolt of the flange has it
	Radius units.Length `json:"radius"` // from the shaft's axis, above zero; bolts may differ
	At     units.Clock  `json:"at"`     // as the crew sees it, see Flange.View
}

// Flange is the joint on which the movable machine is held.
type Flange struct {
	Face  units.Length `json:"face"`            // signed station x_f of the face that the shims touch; zero is the coupling centre, not "not given"
	UFace units.Length `json:"u_face,omitzero"` // standard uncertainty of Face
	Push  Push         `json:"push"`            // which way a thicker shim pushes the machine; has to be said
	Bolts []Bolt       `json:"bolts"`           // three or more, up to MostBolts, not in one line
	View  align.View   `json:"view"`            // from which end the bolts' clock positions are seen

	// Clearance is that of the spigot in its rabbet, on the diameter, before shims.
	// Zero: not stated, and whether the slide fits is not judged. A spigot that is
	// tilted by s uses up s times its engaged depth, which has to come off first.
	Clearance units.Length `json:"clearance,omitzero"`
	// Spigot is where the spigot's centre stands now from that of the rabbet, in
	// the library's axes, of no more than half the clearance. Zero: centred, or not
	// known and taken as centred.
	Spigot align.Vector `json:"spigot,omitzero"`
}

// MostBolts is how many bolts a flange may have, more than machines need.
const MostBolts = 200

// place is where a bolt stands from the axis, in nanometres, in the library's axes.
type place struct{ horizontal, vertical float64 }

func (f *Flange) place(i int) place {
	sin, cos := f.View.Clock(f.Bolts[i].At).SinCos()
	r := float64(f.Bolts[i].Radius)
	return place{float64(r * sin), float64(r * cos)}
}

func (p place) minus(q place) place {
	return place{p.horizontal - q.horizontal, p.vertical - q.vertical}
}

func (p place) dot(q place) float64 {
	return float64(p.horizontal*q.horizontal) + float64(p.vertical*q.vertical)
}

// lag is how far a face that climbs by a tilt lies behind at p, towards -x.
func (p place) lag(t align.Tilt) float64 {
	return p.dot(place{float64(t.Horizontal), float64(t.Vertical)})
}
