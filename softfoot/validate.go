package softfoot

import (
	"fmt"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

func (s Survey) check(l Limits) error {
	var faults check.Faults
	var root check.Path
	s.checkFeet(&faults, root.Field("feet"))
	check.Positive(&faults, root.Field("height"), s.Height, "a height of the shaft centreline above the feet")
	l.check(&faults, root.Field("limits"))
	return faults.Err()
}

func (l Limits) check(faults *check.Faults, at check.Path) {
	check.NotNegative(faults, at.Field("act"), l.Act, "a limit")
	check.NotNegative(faults, at.Field("margin"), l.Margin, "a margin")
	check.NotNegative(faults, at.Field("common"), l.Common, "a limit")
	check.NotNegative(faults, at.Field("taper"), l.Taper, "a limit")
	check.NotNegative(faults, at.Field("least"), l.Least, "a thickness")
}

func (s Survey) checkFeet(faults *check.Faults, at check.Path) {
	switch n := len(s.Feet); {
	case n < 3:
		faults.Add(units.Missing, at, n, "three to eight feet")
	case n > most:
		faults.Add(units.OutOfRange, at, n, "three to eight feet")
	}
	before := faults.Len()
	for i := range s.Feet {
		s.checkName(faults, at.Index(i), i)
		s.Feet[i].check(faults, at.Index(i))
	}
	if faults.Len() > before || len(s.Feet) < 3 || len(s.Feet) > most {
		return // where they stand is not known
	}
	if inLine(s.places()) {
		faults.Add(units.Conflict, at, nil, "feet that do not stand in one line")
	}
}

// checkName asks that foot i is none of those before it, by name and by place.
func (s Survey) checkName(faults *check.Faults, at check.Path, i int) {
	foot := s.Feet[i]
	if foot.Name == "" {
		faults.Add(units.Missing, at.Field("name"), nil, "a name")
	}
	for _, other := range s.Feet[:i] {
		if foot.Name != "" && foot.Name == other.Name {
			faults.Add(units.Duplicate, at.Field("name"), foot.Name, "a name of its own")
			return
		}
		if foot.X == other.X && foot.Y == other.Y {
			faults.Add(units.Duplicate, at, fmt.Sprintf("x %v, y %v", foot.X, foot.Y), "a place of its own, not that of "+other.Name)
			return
		}
	}
}

func (f *Foot) check(faults *check.Faults, at check.Path) {
	check.Finite(faults, at.Field("x"), f.X)
	check.Finite(faults, at.Field("y"), f.Y)
	if f.Gaps == nil {
		check.Finite(faults, at.Field("lift"), f.Lift)
		return
	}
	check.Unused(faults, at.Field("lift"), f.Lift, "a foot with gaps")
	f.checkGaps(faults, at.Field("gaps"))
}

func (f *Foot) checkGaps(faults *check.Faults, at check.Path) {
	before := faults.Len()
	switch n := len(f.Gaps); {
	case n < 3:
		faults.Add(units.Missing, at, n, "gaps at three to eight corners")
	case n > most:
		faults.Add(units.OutOfRange, at, n, "gaps at three to eight corners")
	}
	for i, g := range f.Gaps {
		corner := at.Index(i)
		check.Finite(faults, corner.Field("x"), g.X)
		check.Finite(faults, corner.Field("y"), g.Y)
		check.NotNegative(faults, corner.Field("gap"), g.Gap, "a gap")
	}
	if faults.Len() == before && f.narrow() {
		faults.Add(units.Conflict, at, nil, "corners that do not lie in one line")
	}
}
