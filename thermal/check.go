package thermal

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// What an input can be. No source: they are ours, wide enough for anything that
// a machine stands on, and narrow enough for a slip of units.
const (
	largestExpansion = 1e-3 * units.PerKelvin // soft plastics reach 3e-4 (from memory)
	leastExpansion   = -2e-6 * units.PerKelvin
	largestRise      = 2000 * units.Kelvin
	absoluteZero     = -273.15 // °C
	nearest          = units.Millimetre
	mostSupports     = 100
)

func checkGrowth(limit units.Length, supports []Support) error {
	var faults check.Faults
	var root check.Path
	check.NotNegative(&faults, root.Field("limit"), limit, "a limit")
	list := root.Field("supports")
	if len(supports) < 2 {
		faults.Add(units.Missing, list, len(supports), "at least two supports: one does not tell a slope")
	}
	if !check.AtMost(&faults, list, len(supports), mostSupports, "supports") {
		return faults.Err()
	}
	for i := range supports {
		at := list.Index(i)
		checkSupport(&faults, at, &supports[i])
		checkOthers(&faults, at, &supports[i], supports[:i])
	}
	return faults.Err()
}

func (s *Support) check() error {
	var faults check.Faults
	var root check.Path
	checkSupport(&faults, root, s)
	return faults.Err()
}

// checkOthers compares a support with those before it.
func checkOthers(faults *check.Faults, at check.Path, s *Support, before []Support) {
	for i := range before {
		if s.Name != "" && s.Name == before[i].Name {
			faults.Add(units.Duplicate, at.Field("name"), s.Name, "a name that no other support has")
			break
		}
	}
	for i := range before {
		if apart := s.X - before[i].X; max(apart, -apart) < nearest {
			faults.Add(units.Conflict, at.Field("x"), s.X,
				"a station that no other support has: the legs of both sides belong to one support")
			break
		}
	}
}

func checkSupport(faults *check.Faults, at check.Path, s *Support) {
	check.Finite(faults, at.Field("x"), s.X)
	checkWays(faults, at, s)
	checkPieces(faults, at.Field("pieces"), s.Pieces)
	checkPieces(faults, at.Field("three"), s.Three)
	checkPieces(faults, at.Field("nine"), s.Nine)
	if s.Measured != nil {
		checkMeasured(faults, at.Field("measured"), s.Measured)
	}
}

// checkWays asks for exactly one way to tell how the support moves.
func checkWays(faults *check.Faults, at check.Path, s *Support) {
	alike, sides, measured := len(s.Pieces) > 0, len(s.Three)+len(s.Nine) > 0, s.Measured != nil
	const ways = "pieces alike on both sides, or three, nine and track, or a measured movement"
	if alike && sides || alike && measured || sides && measured {
		faults.Add(units.Conflict, at, nil, "one of "+ways)
	} else if alike || measured {
		check.Unused(faults, at.Field("track"), s.Track, "a support without three and nine")
	} else if sides || s.Track != 0 {
		checkSides(faults, at, s)
	} else {
		faults.Add(units.Missing, at, nil, ways)
	}
}

func checkSides(faults *check.Faults, at check.Path, s *Support) {
	if len(s.Three) == 0 {
		faults.Add(units.Missing, at.Field("three"), nil, "the leg on the side of 3 o'clock")
	}
	if len(s.Nine) == 0 {
		faults.Add(units.Missing, at.Field("nine"), nil, "the leg on the side of 9 o'clock")
	}
	check.Positive(faults, at.Field("track"), s.Track, "a distance of the feet across the machine")
}

func checkMeasured(faults *check.Faults, at check.Path, m *Measured) {
	by, u := at.Field("by"), at.Field("u")
	check.Finite(faults, by.Field("horizontal"), m.By.Horizontal)
	check.Finite(faults, by.Field("vertical"), m.By.Vertical)
	check.Uncertainty(faults, u.Field("horizontal"), m.U.Horizontal)
	check.Uncertainty(faults, u.Field("vertical"), m.U.Vertical)
}

// checkStandOff asks that no support stands off the line by more than the
// limit, and blames the one that stands off most.
func checkStandOff(limit units.Length, supports []Support, line align.Centreline) error {
	worst, most := 0, units.Length(-1)
	for i := range supports {
		if off := standOff(&supports[i], line); off > most {
			worst, most = i, off
		}
	}
	if most <= limit {
		return nil
	}
	var faults check.Faults
	var root check.Path
	list := root.Field("supports")
	value := most.Text(units.InMillimetres, 3) + " off the line"
	if name := supports[worst].Name; name != "" {
		value = name + ", " + value
	}
	faults.Add(units.Conflict, list.Index(worst), value, "supports that grow along one line, to "+limit.String())
	return faults.Err()
}

func standOff(s *Support, line align.Centreline) units.Length {
	w, on := s.movement(), line.At(s.X)
	off := align.Vector{Horizontal: w.Horizontal - on.Horizontal, Vertical: w.Vertical - on.Vertical}
	return off.Size().Round(units.Nanometre)
}

// checkSum asks for a sum that can be reckoned with. Heights and stations that
// pass one by one can give one that cannot.
func checkSum(sum align.Estimate) error {
	lines := []align.Line{sum.Value.Horizontal, sum.Value.Vertical}
	if sum.Cov.Basis != align.Unknown {
		u := sum.Cov.Standard()
		lines = append(lines, u.Horizontal, u.Vertical)
	}
	for _, l := range lines {
		if !check.Sound(l.Offset) || !check.Sound(l.Slope) {
			return units.OutOfRange
		}
	}
	return nil
}

func tooLarge(path string) error {
	return &units.Fault{Code: units.OutOfRange, Path: path, Want: "a movement that can be reckoned with"}
}
