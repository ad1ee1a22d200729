package softfoot

import "example.org/collinear/units"

// Shift is how the shaft moves when flat shims go under single feet: up along a
// line, and sideways as the machine rolls. Its direction in plan stays.
type Shift struct {
	Up       units.Length `json:"up"`       // at x = 0, positive upwards
	Slope    units.Slope  `json:"slope"`    // growth of Up along x
	Sideways units.Length `json:"sideways"` // positive towards 3 o'clock
}

// At returns how far up the shaft moves at station x.
func (s Shift) At(x units.Length) units.Length { return s.Up + s.Slope.Over(x) }

// shift: the machine follows the plane of least squares through the shims,
// dz = a + b x + c y. So its centreline, at the height H, rises by a + b x, and
// goes sideways by -H c as the machine rolls. With two feet on a track B that is
//
//	dz = (h3 + h9)/2        dy = -H (h3 - h9)/B
func (s Survey) shift(shims column) Shift {
	n, x, y := s.places()
	p := planeThrough(n, x, y, shims)
	return Shift{
		Up:       fromMM(p.level),
		Slope:    units.Slope(p.along),
		Sideways: fromMM(0 - mm(s.Height)*p.across), // 0 - s: no negative zero
	}
}
