package flange

import (
	"fmt"
	"slices"

	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Validate checks the flange on its own, as [Flange.Correct] does, with paths from
// the flange (/bolts/2/radius).
func (f Flange) Validate() error {
	var faults check.Faults
	f.check(&faults)
	return faults.Err()
}

func (f *Flange) check(faults *check.Faults) {
	var root check.Path
	check.Finite(faults, root.Field("face"), f.Face)
	check.Uncertainty(faults, root.Field("u_face"), f.UFace)
	checkPush(faults, root.Field("push"), f.Push)
	if f.View != align.FromMovable && f.View != align.FromStationary {
		faults.Add(units.OutOfRange, root.Field("view"), f.View, "a known view")
	}
	f.checkBolts(faults, root.Field("bolts"))
	f.checkRabbet(faults, root)
}

func checkPush(faults *check.Faults, at check.Path, p Push) {
	if p == 0 {
		faults.Add(units.Missing, at, nil, "which way a thicker shim pushes the movable machine")
	} else if !pushNames.Known(uint8(p)) {
		faults.Add(units.OutOfRange, at, p, "a known way")
	}
}

func (f *Flange) checkBolts(faults *check.Faults, at check.Path) {
	if n := len(f.Bolts); n < 3 {
		faults.Add(units.Missing, at, n, "three bolts or more")
	} else if n > MostBolts {
		faults.Add(units.OutOfRange, at, n, fmt.Sprintf("at most %d bolts", MostBolts))
		return
	}
	places := make([]place, 0, MostBolts)
	for i := range f.Bolts {
		bolt := at.Index(i)
		f.checkName(faults, bolt.Field("name"), i)
		if f.checkPlace(faults, bolt, i) {
			places = f.addPlace(faults, bolt, places, i)
		}
	}
	if len(places) == len(f.Bolts) && len(places) >= 3 && inLine(places) {
		faults.Add(units.Conflict, at, nil, "bolts that do not stand in one line, which holds no slope across it")
	}
}

// checkName asks that bolt i has a name that none before it has.
func (f *Flange) checkName(faults *check.Faults, at check.Path, i int) {
	name := f.Bolts[i].Name
	if name == "" {
		faults.Add(units.Missing, at, nil, "a name")
	} else if slices.ContainsFunc(f.Bolts[:i], func(b Bolt) bool { return b.Name == name }) {
		faults.Add(units.Duplicate, at, name, "a name of its own")
	}
}

func (f *Flange) checkPlace(faults *check.Faults, at check.Path, i int) bool {
	bolt := &f.Bolts[i]
	radius := check.Positive(faults, at.Field("radius"), bolt.Radius, "a radius")
	return check.Finite(faults, at.Field("at"), bolt.At) && radius
}

// apart is how far bolts stand from each other at least. It is small for bolts, and
// large against the rounding of a sine.
const apart = float64(units.Micrometre)

// addPlace adds the place of bolt i, unless another bolt stands there.
func (f *Flange) addPlace(faults *check.Faults, at check.Path, places []place, i int) []place {
	p := f.place(i)
	if slices.ContainsFunc(places, func(q place) bool { d := p.minus(q); return d.dot(d) < apart*apart }) {
		faults.Add(units.Duplicate, at, fmt.Sprintf("radius %v at %v", f.Bolts[i].Radius, f.Bolts[i].At), "a place where no other bolt stands")
		return places
	}
	return append(places, p)
}

// narrow is the share of the length of a bolt pattern below which its width does
// not count.
const narrow = 1e-3

// inLine tells whether bolts stand in one line. The product of the squared spreads
// along their long and short axes is the determinant of their scatter, the sum its
// trace.
func inLine(places []place) bool {
	var middle place
	for _, p := range places {
		middle.horizontal += p.horizontal / float64(len(places))
		middle.vertical += p.vertical / float64(len(places))
	}
	hh, hv, vv := 0.0, 0.0, 0.0
	for _, p := range places {
		d := p.minus(middle)
		hh += float64(d.horizontal * d.horizontal)
		hv += float64(d.horizontal * d.vertical)
		vv += float64(d.vertical * d.vertical)
	}
	trace := hh + vv
	return float64(hh/trace*vv/trace)-float64(hv/trace*hv/trace) <= narrow*narrow
}

func (f *Flange) checkRabbet(faults *check.Faults, root check.Path) {
	check.NotNegative(faults, root.Field("clearance"), f.Clearance, "a clearance")
	at := root.Field("spigot")
	horizontal := check.Finite(faults, at.Field("horizontal"), f.Spigot.Horizontal)
	vertical := check.Finite(faults, at.Field("vertical"), f.Spigot.Vertical)
	if !horizontal || !vertical || !(f.Clearance >= 0) {
		return
	}
	if f.Spigot.Size().Above(f.Clearance / 2) {
		want := "a place within half of the clearance"
		if f.Clearance == 0 {
			want += ", which has to be stated with it"
		}
		faults.Add(units.Conflict, at, fmt.Sprint(f.Spigot.Size()), want)
	}
}
