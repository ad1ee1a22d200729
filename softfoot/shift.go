package softfoot

import (
	"slices"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Shift is how the shaft moves when flat shims go under single feet: up along a
// line, and sideways as the machine rolls. Its direction in plan stays. In package
// align it is the centreline
//
//	align.Centreline{
//		Horizontal: align.Line{Offset: shift.Sideways},
//		Vertical:   align.Line{Offset: shift.Up, Slope: shift.Slope},
//	}
//
// where X was counted as there. Add it to what was found before the target is taken
// off: the corrections that follow go with these shims.
type Shift struct {
	Up       units.Length `json:"up"`       // at x = 0, positive upwards
	Slope    units.Slope  `json:"slope"`    // growth of Up along x
	Sideways units.Length `json:"sideways"` // positive towards 3 o'clock
}

// At returns how far up the shaft moves at station x.
func (s Shift) At(x units.Length) units.Length { return s.Up + s.Slope.Over(x) }

// Shift returns how flat shims under feet of the survey move the shaft; a shim
// below zero is one that is taken out. The machine follows the plane of least
// squares through them, dz = a + b x + c y. So its centreline, at the height H,
// rises by a + b x, and goes sideways by -H c as the machine rolls. With two feet on
// a track B that is
//
//	dz = (h3 + h9)/2        dy = -H (h3 - h9)/B
//
// Derived here for a rigid machine whose feet give alike; exact where the shims lie
// in one plane. It refuses a survey that is not sound, with paths from the survey,
// and shims that are not finite, under no foot of it, or twice under one
// (/shims/1/foot).
func (s Survey) Shift(shims ...Shim) (Shift, error) {
	var faults check.Faults
	var root check.Path
	s.check(&faults)
	flats := s.flats(&faults, root.Field("shims"), shims)
	if err := faults.Err(); err != nil {
		return Shift{}, err
	}
	return s.follow(flats), nil
}

// flats returns the thickness of the flat shim under each foot.
func (s Survey) flats(faults *check.Faults, at check.Path, shims []Shim) (flats column) {
	var had [most]bool
	for k, shim := range shims {
		here := at.Index(k)
		i := slices.IndexFunc(s.Feet, func(f Foot) bool { return f.Name == shim.Foot })
		if i >= most {
			continue // a fault already: there are too many feet
		}
		if i < 0 {
			faults.Add(units.Unknown, here.Field("foot"), shim.Foot, "a foot of the survey")
		} else if had[i] {
			faults.Add(units.Duplicate, here.Field("foot"), shim.Foot, "one shim under a foot")
		} else if check.Finite(faults, here.Field("flat"), shim.Flat) {
			flats[i], had[i] = mm(shim.Flat), true
		}
	}
	return flats
}

// follow lays the machine on its shims.
func (s Survey) follow(shims column) Shift {
	n, x, y := s.places()
	p := planeThrough(n, x, y, shims)
	return Shift{
		Up:       fromMM(p.level),
		Slope:    units.Slope(p.along),
		Sideways: fromMM(0 - mm(s.Height)*p.across), // 0 - s: no negative zero
	}
}
