package align

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// checkSets walks every field of every set. Paths start at /sets.
func checkSets(sets []Set) error {
	var faults check.Faults
	var root check.Path
	list := root.Field("sets")
	if len(sets) == 0 {
		faults.Add(units.Missing, list, nil, "at least one set of readings")
	}
	if !check.AtMost(&faults, list, len(sets), MostSets, "sets of readings") {
		return faults.Err()
	}
	for i := range sets {
		checkSet(&faults, list.Index(i), &sets[i])
	}
	checkWeights(&faults, list, sets)
	if faults.Len() == 0 {
		checkMountings(&faults, list, sets)
	}
	return faults.Err()
}

// checkMountings asks that sets of one mounting agree in what they share.
func checkMountings(faults *check.Faults, list check.Path, sets []Set) {
	for i := range sets {
		first := mountedAt(sets, i)
		if first != i && sets[i].shared() != sets[first].shared() {
			set := list.Index(i)
			faults.Add(units.Conflict, set.Field("mounting"), sets[i].Mounting, "what the first set of this mounting has: probe, sag, view and shared uncertainties")
		}
	}
}

// Validate checks one set on its own, as [Fit] would, with paths from the set
// (/readings/2/value). Whether its readings see enough only the fit of all sets
// can tell.
func (s Set) Validate() error {
	var faults check.Faults
	var root check.Path
	checkSet(&faults, root, &s)
	one := [1]Set{s}
	checkWeights(&faults, root.Field("readings"), one[:])
	return faults.Err()
}

func checkSet(faults *check.Faults, at check.Path, s *Set) {
	checkProbe(faults, at.Field("probe"), s.Probe)
	checkSag(faults, at.Field("sag"), s.Probe.Kind, s.Sag)
	checkView(faults, at.Field("view"), s.View)
	checkReadings(faults, at.Field("readings"), s.Readings)
	checkUncertainty(faults, at.Field("u"), s)
}

func checkCentreline(faults *check.Faults, at check.Path, c Centreline) {
	checkLine(faults, at.Field("horizontal"), c.Horizontal)
	checkLine(faults, at.Field("vertical"), c.Vertical)
}

func checkLine(faults *check.Faults, at check.Path, l Line) {
	check.Finite(faults, at.Field("offset"), l.Offset)
	check.Finite(faults, at.Field("slope"), l.Slope)
}

func checkTilt(faults *check.Faults, at check.Path, t Tilt) {
	check.Finite(faults, at.Field("horizontal"), t.Horizontal)
	check.Finite(faults, at.Field("vertical"), t.Vertical)
}

func checkView(faults *check.Faults, at check.Path, v View) {
	if !viewNames.Known(uint8(v)) {
		faults.Add(units.OutOfRange, at, v, "a known view")
	}
}

// uses tells which fields a kind of probe has a use for.
type uses struct{ carrier, station, radius, span, gain, sag bool }

var usesOf = [...]uses{
	Rim:           {carrier: true, station: true, sag: true},
	Bore:          {carrier: true, station: true, sag: true},
	NearFace:      {carrier: true, radius: true, sag: true},
	FarFace:       {carrier: true, radius: true, sag: true},
	Gap:           {radius: true},
	Straightedge:  {carrier: true, station: true},
	SpacerFace:    {carrier: true, radius: true, span: true, sag: true},
	SpacerFarFace: {carrier: true, radius: true, span: true, sag: true},
	Displacement:  {station: true, gain: true},
}

func checkProbe(faults *check.Faults, at check.Path, p Probe) {
	if p.Kind == 0 {
		faults.Add(units.Missing, at.Field("kind"), nil, "a kind of probe")
		return
	}
	if !kindNames.Known(uint8(p.Kind)) {
		faults.Add(units.OutOfRange, at.Field("kind"), p.Kind, "a known kind of probe")
		return
	}
	use, kind := usesOf[p.Kind], p.Kind.String()
	checkCarrier(faults, at.Field("carrier"), p.Carrier, use.carrier, kind)
	if use.station {
		check.Finite(faults, at.Field("station"), p.Station)
	} else {
		check.Unused(faults, at.Field("station"), p.Station, kind)
	}
	checkRadius(faults, at.Field("radius"), p, use.radius)
	if use.span {
		check.Positive(faults, at.Field("span"), p.Span, "a distance from flex plane to flex plane")
	} else {
		check.Unused(faults, at.Field("span"), p.Span, kind)
	}
	checkGain(faults, at.Field("gain"), p.Gain, use.gain, kind)
}

func checkCarrier(faults *check.Faults, at check.Path, s Shaft, used bool, kind string) {
	if !used && s != 0 {
		faults.Add(units.Conflict, at, s, "no carrier: "+kind+" does not use it")
	} else if used && s == 0 {
		faults.Add(units.Missing, at, nil, "the shaft that carries the "+kind)
	} else if used && !shaftNames.Known(uint8(s)) {
		faults.Add(units.OutOfRange, at, s, "stationary or movable")
	}
}

// checkRadius: a rim or a bore may give its radius, though the linear fit has
// no need of it.
func checkRadius(faults *check.Faults, at check.Path, p Probe, used bool) {
	if used {
		check.Positive(faults, at, p.Radius, "the radius of the circle that the tip sweeps,")
	} else if p.Kind == Rim || p.Kind == Bore {
		check.NotNegative(faults, at, p.Radius, "a radius")
	} else {
		check.Unused(faults, at, p.Radius, p.Kind.String())
	}
}

func checkGain(faults *check.Faults, at check.Path, gain float64, used bool, kind string) {
	if !used {
		check.Unused(faults, at, gain, kind)
	} else if gain == 0 {
		faults.Add(units.Missing, at, gain, "a gain other than zero")
	} else if check.Finite(faults, at, gain) && max(gain, -gain) < check.Least {
		faults.Add(units.OutOfRange, at, gain, "a gain that can be reckoned with")
	}
}

// checkSag: an outside bracket droops, it never rises, so a negative sag is a
// sign error. A face dial's droop has a sign of its own.
func checkSag(faults *check.Faults, at check.Path, kind Kind, sag units.Length) {
	if !kindNames.Known(uint8(kind)) {
		return // the kind is a fault already
	}
	if !usesOf[kind].sag {
		check.Unused(faults, at, sag, kind.String())
	} else if kind == Rim || kind == Bore {
		check.NotNegative(faults, at, sag, "a sag")
	} else {
		check.Finite(faults, at, sag)
	}
}

func checkReadings(faults *check.Faults, at check.Path, readings []Reading) {
	if len(readings) < 2 {
		faults.Add(units.Missing, at, len(readings), "at least two readings: one alone only sets the zero")
	}
	for i := range readings {
		r := &readings[i]
		if check.Sound(r.At) && check.Sound(r.Value) && check.Weighty(r.U) {
			continue // paths take time
		}
		field := at.Index(i)
		check.Finite(faults, field.Field("at"), r.At)
		check.Finite(faults, field.Field("value"), r.Value)
		check.Weight(faults, field.Field("u"), r.U)
	}
}

func checkUncertainty(faults *check.Faults, at check.Path, s *Set) {
	check.Weight(faults, at.Field("reading"), s.U.Reading)
	check.Uncertainty(faults, at.Field("clock"), s.U.Clock)
	check.Uncertainty(faults, at.Field("angle"), s.U.Angle)
	kind := s.Probe.Kind
	if !kindNames.Known(uint8(kind)) {
		return // which fields count is not known then
	}
	use := usesOf[kind]
	shared := func(name string, u units.Length, used bool) {
		if used {
			check.Uncertainty(faults, at.Field(name), u)
		} else {
			check.Unused(faults, at.Field(name), u, kind.String())
		}
	}
	shared("station", s.U.Station, use.station)
	shared("radius", s.U.Radius, use.radius || s.Probe.Radius != 0)
	shared("sag", s.U.Sag, use.sag)
}

// checkWeights asks for an uncertainty on every reading or on none: readings
// with and without one cannot be weighed against each other.
func checkWeights(faults *check.Faults, list check.Path, sets []Set) {
	stated, all := 0, 0
	for i := range sets {
		s := &sets[i]
		for j := range s.Readings {
			u := s.uncertainty(j)
			if !(u >= 0) {
				return // a fault already
			}
			all++
			if u != 0 {
				stated++
			}
		}
	}
	if stated != 0 && stated != all {
		faults.Add(units.Conflict, list, nil, "an uncertainty for every reading or for none")
	}
}
