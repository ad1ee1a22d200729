package softfoot

import "example.org/collinear/units"

// lift returns how far the foot lifted: of gaps the smallest, which is what a flat
// shim can fill.
func (f *Foot) lift() units.Length {
	if f.Gaps == nil {
		return f.Lift
	}
	least := f.Gaps[0].Gap
	for _, g := range f.Gaps {
		least = min(least, g.Gap)
	}
	return least
}

// taper returns how the gap grows from one side of the foot to the other, or
// nothing where the corners differ by no more than the limit.
func (f *Foot) taper(limit units.Length) *Taper {
	rise := units.Length(0)
	for _, g := range f.Gaps {
		rise = max(rise, g.Gap-f.lift())
	}
	if !rise.Above(limit) {
		return nil
	}
	p := planeThrough(f.corners())
	return &Taper{Rise: rise, Along: units.Slope(p.along), Across: units.Slope(p.across)}
}

// corners returns the places of the corners and the gaps there.
func (f *Foot) corners() (n int, x, y, gap column) {
	for i, g := range f.Gaps {
		x[i], y[i], gap[i] = mm(g.X), mm(g.Y), mm(g.Gap)
	}
	return len(f.Gaps), x, y, gap
}

// narrow tells whether the corners lie in one line.
func (f *Foot) narrow() bool {
	n, x, y, _ := f.corners()
	return inLine(n, x, y)
}
