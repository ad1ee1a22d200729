package arc

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// check walks all that a follow is given.
func (f *Follow) check() error {
	var faults check.Faults
	var root check.Path
	faults.Adopt(root.Field("from"), f.From.Validate())
	f.checkPlane(&faults, root.Field("plane"))
	if f.View != align.FromMovable && f.View != align.FromStationary {
		faults.Add(units.OutOfRange, root.Field("view"), f.View, "a known view")
	}
	list := root.Field("probes")
	if len(f.Probes) < 2 {
		faults.Add(units.Missing, list, len(f.Probes), "at least two probes: one alone does not see offset and slope")
	}
	for i := range f.Probes {
		f.checkStanding(&faults, list.Index(i), &f.Probes[i])
	}
	f.checkStated(&faults, list)
	return faults.Err()
}

func (f *Follow) checkPlane(faults *check.Faults, at check.Path) {
	if f.Plane == 0 {
		faults.Add(units.Missing, at, nil, "the plane in which the machine moves")
	} else if !planeNames.Known(uint8(f.Plane)) {
		faults.Add(units.OutOfRange, at, f.Plane, "horizontal or vertical")
	}
}

func (f *Follow) checkStanding(faults *check.Faults, at check.Path, s *Standing) {
	start := at.Field("start")
	placed := check.Finite(faults, start.Field("at"), s.Start.At)
	check.Finite(faults, start.Field("value"), s.Start.Value)
	check.Weight(faults, start.Field("u"), s.Start.U)
	if _, _, err := lawOf(s.Probe); err != nil {
		faults.Adopt(at, err)
		return // what it can see is not known then
	}
	f.checkAxial(faults, at.Field("axial_free"), s)
	if placed {
		f.checkSight(faults, start.Field("at"), s.Start.At)
	}
}

// checkAxial asks that an axial shift, which goes with a tilt, is not taken for a
// tilt.
func (f *Follow) checkAxial(faults *check.Faults, at check.Path, s *Standing) {
	face := facing(s.Probe.Kind)
	if !face && s.AxialFree {
		faults.Add(units.Conflict, at, true, "false: only faces and gaps see axial shift")
	} else if face && !s.AxialFree && f.Plane == Vertical {
		faults.Add(units.Unseen, at, false, "a channel that is free of axial shift, or no face: a machine that tilts about its feet goes along its axis as well")
	}
}

// facing tells whether a kind of probe measures along the axis.
func facing(k align.Kind) bool {
	switch k {
	case align.NearFace, align.FarFace, align.Gap, align.SpacerFace, align.SpacerFarFace:
		return true
	}
	return false
}

// leastSight is the least part of a displacement that a probe has to see: that of
// 0.57 degrees. Ours; see Follow.Begin.
const leastSight = 0.01

func (f *Follow) checkSight(faults *check.Faults, at check.Path, t units.Clock) {
	sin, cos := t.SinCos() // the view changes the sign of the sine alone
	if f.Plane == Vertical && max(cos, -cos) < leastSight {
		faults.Add(units.Unseen, at, t, "a place off 3 and 9 o'clock: there a probe does not see a vertical move")
	} else if f.Plane == Horizontal && max(sin, -sin) < leastSight {
		faults.Add(units.Unseen, at, t, "a place off 12 and 6 o'clock: there a probe does not see a horizontal move")
	}
}

// checkStated asks for an uncertainty of every probe or of none.
func (f *Follow) checkStated(faults *check.Faults, list check.Path) {
	stated := 0
	for i := range f.Probes {
		u := f.Probes[i].Start.U
		if !(u >= 0) {
			return // a fault already
		}
		if u != 0 {
			stated++
		}
	}
	if stated != 0 && stated != len(f.Probes) {
		faults.Add(units.Conflict, list, nil, "an uncertainty for every probe or for none")
	}
}

func (g *Following) checkNow(readings []units.Length) error {
	var faults check.Faults
	var root check.Path
	list := root.Field("readings")
	if len(g.probes) == 0 {
		faults.Add(units.Missing, root.Field("probes"), nil, "a following that Follow.Begin has made")
	} else if len(readings) < len(g.probes) {
		faults.Add(units.Missing, list, len(readings), "one reading of every probe")
	} else if len(readings) > len(g.probes) {
		faults.Add(units.Conflict, list, len(readings), "one reading of every probe, and no more")
	}
	for i, r := range readings {
		check.Finite(&faults, list.Index(i), r)
	}
	return faults.Err()
}
