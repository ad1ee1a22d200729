package softfoot

import (
	"fmt"
	"slices"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

func (s Survey) check(faults *check.Faults) {
	var root check.Path
	s.checkFeet(faults, root.Field("feet"))
	check.Positive(faults, root.Field("height"), s.Height, "a height of the shaft centreline above the feet")
}

func (l Limits) check(faults *check.Faults, at check.Path) {
	check.NotNegative(faults, at.Field("act"), l.Act, "a limit")
	check.NotNegative(faults, at.Field("margin"), l.Margin, "a margin")
	check.NotNegative(faults, at.Field("common"), l.Common, "a limit")
	check.NotNegative(faults, at.Field("taper"), l.Taper, "a limit")
	check.NotNegative(faults, at.Field("least"), l.Least, "a thickness")
}

func (s Survey) checkFeet(faults *check.Faults, at check.Path) {
	if n := len(s.Feet); n < 3 {
		faults.Add(units.Missing, at, n, "three to eight feet")
	} else if n > most {
		faults.Add(units.OutOfRange, at, n, "three to eight feet")
		return
	}
	placed := true
	for i := range s.Feet {
		foot := at.Index(i)
		s.checkName(faults, foot.Field("name"), i)
		placed = s.checkPlace(faults, foot, i) && placed
		s.Feet[i].check(faults, foot)
	}
	if placed && len(s.Feet) >= 3 && inLine(s.places()) {
		faults.Add(units.Conflict, at, nil, "feet that do not stand in one line")
	}
}

// checkName asks that foot i has a name that none before it has.
func (s Survey) checkName(faults *check.Faults, at check.Path, i int) {
	name := s.Feet[i].Name
	if name == "" {
		faults.Add(units.Missing, at, nil, "a name")
	} else if slices.ContainsFunc(s.Feet[:i], func(f Foot) bool { return f.Name == name }) {
		faults.Add(units.Duplicate, at, name, "a name of its own")
	}
}

// checkPlace asks that foot i has a place where none before it stands.
func (s Survey) checkPlace(faults *check.Faults, at check.Path, i int) bool {
	foot := &s.Feet[i]
	x := check.Finite(faults, at.Field("x"), foot.X)
	y := check.Finite(faults, at.Field("y"), foot.Y)
	if slices.ContainsFunc(s.Feet[:i], func(f Foot) bool { return f.X == foot.X && f.Y == foot.Y }) {
		faults.Add(units.Duplicate, at, fmt.Sprintf("x %v, y %v", foot.X, foot.Y), "a place where no other foot stands")
		return false
	}
	return x && y
}

func (f *Foot) check(faults *check.Faults, at check.Path) {
	if f.Gaps == nil {
		check.Finite(faults, at.Field("lift"), f.Lift)
		return
	}
	check.Unused(faults, at.Field("lift"), f.Lift, "a foot with gaps")
	f.checkGaps(faults, at.Field("gaps"))
}

func (f *Foot) checkGaps(faults *check.Faults, at check.Path) {
	before := faults.Len()
	if n := len(f.Gaps); n < 3 {
		faults.Add(units.Missing, at, n, "gaps at three to eight corners")
	} else if n > most {
		faults.Add(units.OutOfRange, at, n, "gaps at three to eight corners")
		return
	}
	for i, g := range f.Gaps {
		corner := at.Index(i)
		check.Finite(faults, corner.Field("x"), g.X)
		check.Finite(faults, corner.Field("y"), g.Y)
		check.NotNegative(faults, corner.Field("gap"), g.Gap, "a gap")
		if slices.ContainsFunc(f.Gaps[:i], func(h Gap) bool { return h.X == g.X && h.Y == g.Y }) {
			faults.Add(units.Duplicate, corner, fmt.Sprintf("x %v, y %v", g.X, g.Y), "a corner of its own")
		}
	}
	if faults.Len() == before && f.narrow() {
		faults.Add(units.Conflict, at, nil, "corners that do not lie in one line")
	}
}
