package flange

import (
	"fmt"
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Correction is what takes the movable machine to its target. The zero value leaves
// it where it is.
type Correction struct {
	Shims     []Shim        `json:"shims,omitempty"`    // at each bolt, in the order of the flange; the smallest is zero
	Slide     align.Move    `json:"slide"`              // across the axis, alike at all stations; its Foot is the face, named "flange"
	Axial     units.Length  `json:"axial"`              // how far the shims move the machine along x, positive away from the stationary machine
	TiltShift align.Vector  `json:"tilt_shift"`         // what the shims alone, without the slide, add to the offset at the coupling centre
	Rabbet    Rabbet        `json:"rabbet"`             // whether the rabbet lets the flange slide that far
	Over      units.Length  `json:"over,omitzero"`      // by how much the spigot would go beyond the rabbet where it does not
	Warnings  []units.Fault `json:"warnings,omitempty"` // what has to be known before it is made
}

// Remainder is the offset at the face up to which what the equations leave out is
// passed over: the last digit of a dial in hundredths of a millimetre.
const Remainder = 10 * units.Micrometre

// Correct returns the shims and the slide that take the movable machine to its
// target, for an estimate that is what was found less the target:
//
//	shim_i = +-s . r_i u(t_i) + c        slide = -(offset + s x_f)
//
// where the sign is that of Push, see the package comment. Shims come on top of
// what is at the bolts now. The same thickness more or less at all of them moves the
// machine along x by it and nothing else: Axial counts for a smallest shim of zero.
// Axial changes the distance between the shaft ends; hold it against what coupling
// and bearings want. It goes against the push only where all bolts stand on one side
// of the shaft.
//
// Whether the rabbet lets the flange slide is judged after rounding to 1 nm, from
// where Spigot says that it stands, which is centred where nothing is said. A spigot
// that lies against the rabbet has no room at all to that side, and twice as much to
// the other: where it may lie aside, measure it.
//
// The warnings tell of a slide that does not fit (Unreachable, at /clearance), and of
// a slope so steep that more than [Remainder] may be left (Suspect, at
// /off/value).
//
// It refuses fewer than three bolts, a push, name or radius that is not given
// (Missing), a name or a place that two bolts share (Duplicate), bolts in one line,
// a spigot that stands beyond the rabbet (Conflict), numbers that are not finite
// (NotFinite) or cannot be (OutOfRange), with paths from the flange, and an estimate
// that is not sound with paths from /off, or of which the shims or the slide cannot be
// reckoned with (OutOfRange, at /off).
func (f Flange) Correct(off align.Estimate) (Correction, error) {
	var faults check.Faults
	var root check.Path
	f.check(&faults)
	faults.Adopt(root.Field("off"), off.Validate())
	if err := faults.Err(); err != nil {
		return Correction{}, err
	}
	slides, _ := off.Corrections(align.Foot{Name: "flange", X: f.Face, U: f.UFace}) // all checked above
	tilt := off.Value.Tilt()
	c := Correction{
		Slide:     slides[0],
		TiltShift: align.Vector{Horizontal: 0 + tilt.Horizontal.Over(f.Face), Vertical: 0 + tilt.Vertical.Over(f.Face)}, // 0 + s: no negative zero
	}
	c.Shims, c.Axial = f.shims(&off)
	if !c.sound() {
		return Correction{}, &units.Fault{Code: units.OutOfRange, Path: "/off", Want: "an estimate of shims and a slide that can be reckoned with"}
	}
	c.Rabbet, c.Over = f.reach(c.Slide.By)
	c.Warnings = f.warnings(&c, tilt)
	return c, nil
}

// sound tells whether the numbers of a correction can be reckoned with.
func (c *Correction) sound() bool {
	var faults check.Faults
	var root check.Path
	at := func(v align.Vector) {
		check.Finite(&faults, root, v.Horizontal)
		check.Finite(&faults, root, v.Vertical)
	}
	at(c.TiltShift)
	at(c.Slide.By)
	if c.Slide.Basis != align.Unknown {
		at(c.Slide.U)
	}
	check.Finite(&faults, root, c.Axial)
	for i := range c.Shims {
		s := &c.Shims[i]
		check.Finite(&faults, root, s.Thickness)
		if s.Basis != align.Unknown {
			check.Finite(&faults, root, s.U)
		}
	}
	return faults.Len() == 0
}

// shims returns the shim at every bolt, and how far they move the machine along x.
// What they are uncertain against is the first of those that are zero to 1 nm: among
// more than one, rounding is not to choose.
func (f *Flange) shims(off *align.Estimate) (shims []Shim, axial units.Length) {
	tilt, sign := off.Value.Tilt(), f.Push.sign()
	places, open := make([]place, len(f.Bolts)), make([]float64, len(f.Bolts))
	for i := range places {
		places[i] = f.place(i)
		open[i] = sign * places[i].lag(tilt)
	}
	least := slices.Min(open)
	thinnest := slices.IndexFunc(open, func(x float64) bool { return !units.Length(x - least).Above(0) })
	shims = make([]Shim, len(places))
	for i, p := range places {
		shims[i] = shimOver(off, p.minus(places[thinnest]), f.Bolts[i])
		shims[i].Thickness = units.Length(open[i] - least)
	}
	return shims, units.Length(0 - sign*least) // 0 - x: no negative zero
}

func (f *Flange) warnings(c *Correction, tilt align.Tilt) (list []units.Fault) {
	add := func(code units.Code, path string, value any, want string) {
		list = append(list, units.Fault{Code: code, Path: path, Value: fmt.Sprint(value), Want: want})
	}
	if c.Rabbet == DoesNotFit {
		add(units.Unreachable, "/clearance", f.Clearance, "a rabbet that lets the flange slide "+c.Over.String()+" further")
	}
	if left := f.remainder(tilt); left.Above(Remainder) {
		add(units.Suspect, "/off/value", tilt.Size(), "a slope that leaves at most "+Remainder.String()+" at the face, not "+left.String())
	}
	return list
}

// remainder bounds the offset at the face that is of second order: the shims push the
// machine along its own axis by c, which is R s at most, and so across by s times as
// much.
func (f *Flange) remainder(tilt align.Tilt) units.Length {
	r := units.Length(0)
	for i := range f.Bolts {
		r = max(r, f.Bolts[i].Radius)
	}
	return tilt.Size().Over(tilt.Size().Over(r))
}
