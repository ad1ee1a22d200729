package pumpset

import (
	"cmp"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// grown is how both machines move from cold to running, and the cold target that
// follows.
type grown struct {
	Stationary machineGrown   `json:"stationary"`
	Movable    machineGrown   `json:"movable"`
	Target     align.Estimate `json:"target"`
}

// machineGrown is the growth of one machine's shaft.
type machineGrown struct {
	Supports []supportGrown `json:"supports,omitempty"` // none: it stays as it is
	Line     align.Estimate `json:"line"`
}

// supportGrown is the growth at one support.
type supportGrown struct {
	Name string        `json:"name"`
	X    units.Length  `json:"x"`
	By   align.Vector  `json:"by"`
	U    *align.Vector `json:"u,omitempty"` // none: unknown
}

func (j *Job) grown(f *strict.Faults) *grown {
	g := j.Growth
	if g == nil {
		return nil
	}
	if j.Target != nil {
		f.Add(units.Conflict, "/growth", "", "a growth from which the target follows, or the target, not both")
	}
	if g.Stationary == nil && g.Movable == nil {
		f.Add(units.Missing, "/growth", "", "the supports of stationary, of movable, or of both")
	}
	out := grown{
		Stationary: j.machineGrown(f, "/growth/stationary", g.Stationary, -1),
		Movable:    j.machineGrown(f, "/growth/movable", g.Movable, +1),
	}
	out.Target = thermal.ColdTarget(out.Stationary.Line, out.Movable.Line)
	return &out
}

// machineGrown lays the line through the supports of the machine on one side of
// the coupling.
func (j *Job) machineGrown(f *strict.Faults, path string, list []support, way units.Length) machineGrown {
	if list == nil {
		return machineGrown{}
	}
	var out machineGrown
	supports := make([]thermal.Support, len(list))
	for i := range list {
		s := &list[i]
		s.check(f, strict.Step(path, i), &j.Tape, way)
		supports[i] = j.thermal(f, strict.Step(path, i), s)
		one := supportGrown{Name: string(s.Name), X: supports[i].X}
		if by, u, err := supports[i].Growth(); err == nil {
			one.By = by
			if u == u { // a number in both planes or in none
				one.U = &u
			}
		}
		out.Supports = append(out.Supports, one)
	}
	line, err := thermal.Growth(supports...)
	f.Adopt(err, func(of string) string { return j.renameGrowth(path, list, of) })
	out.Line = line
	return out
}

// thermal turns a support into that of package thermal.
func (j *Job) thermal(f *strict.Faults, path string, s *support) thermal.Support {
	out := thermal.Support{Name: string(s.Name), X: s.x(&j.Tape), Track: s.Track.Value}
	out.Pieces = legs(f, path+"/pieces", s.Pieces)
	out.Three, out.Nine = legs(f, path+"/three", s.Three), legs(f, path+"/nine", s.Nine)
	if j.View == align.FromStationary {
		out.Three, out.Nine = out.Nine, out.Three
	}
	if m := s.Measured; m != nil {
		out.Measured = &thermal.Measured{
			By: align.Vector{Horizontal: j.toThree(m.ToThree.Value), Vertical: m.Up.Value},
			U:  align.Vector{Horizontal: m.U.ToThree.Value, Vertical: m.U.Up.Value},
		}
	}
	return out
}

func legs(f *strict.Faults, path string, list []leg) []thermal.Piece {
	var out []thermal.Piece
	for i := range list {
		l := &list[i]
		l.check(f, strict.Step(path, i))
		p := thermal.Piece{
			Name: string(l.Name), Height: l.Height.Value, Material: l.material(f, strict.Step(path, i)),
			Rise: l.Rise.Value, Cold: l.Cold.Value,
			U: thermal.Uncertainty{Height: l.U.Height.Value, Temperature: l.U.Temperature.Value},
		}
		for _, s := range l.Profile {
			p.Profile = append(p.Profile, thermal.Spot{Up: s.Up.Value, Running: s.Running.Value})
		}
		out = append(out, p)
	}
	return out
}

// material is one of the crew's own, or one from the library's list.
func (l *leg) material(f *strict.Faults, path string) thermal.Material {
	if l.Expansion.given() {
		return thermal.Material{Name: string(l.Material), Expansion: l.Expansion.Value, U: l.U.Expansion.Value, Source: string(l.Source)}
	}
	m, err := thermal.FindMaterial(string(l.Material))
	f.Adopt(err, func(string) string { return path + "/material" })
	if err != nil {
		m.Expansion = units.PerKelvin / 1e6 // any, so that it has no second fault
	}
	m.U = l.U.Expansion.Value
	return m
}

// growthFields are the names that the fields of package thermal have in a job.
var growthFields = strings.NewReplacer(
	"/material/u", "/u/expansion", "/material/expansion", "/expansion",
	"/measured/by/vertical", "/measured/up", "/measured/by/horizontal", "/measured/to_three",
	"/measured/u/vertical", "/measured/u/up", "/measured/u/horizontal", "/measured/u/to_three",
)

// renameGrowth returns where in the job a fault of the growth of one machine
// stands.
func (j *Job) renameGrowth(path string, list []support, of string) string {
	rest := strings.TrimPrefix(of, "/supports")
	for i := range list {
		field, mine := strings.CutPrefix(rest, strict.Step("", i)+"/")
		if !mine {
			continue
		}
		here := strict.Step(path, i) + "/"
		switch side, below, _ := strings.Cut(field, "/"); {
		case field == "x":
			return here + list[i].placeField()
		case j.View == align.FromStationary && (side == "three" || side == "nine"):
			other := map[string]string{"three": "nine", "nine": "three"}[side]
			field = strings.TrimSuffix(other+"/"+below, "/")
		}
		return strict.Step(path, i) + growthFields.Replace("/"+field)
	}
	return path + rest
}

// aim is where the shaft is wanted, with what is known of its uncertainty.
func (r *Record) aim() align.Estimate {
	if r.Growth != nil {
		return r.Growth.Target
	}
	return align.Exact(r.Target)
}

// running is how the shafts will lie at temperature, from how they lie now.
func (r *Record) running(s *state) *align.Estimate {
	if r.Growth == nil {
		return nil
	}
	e := thermal.Running(s.Result.Estimate, r.Growth.Stationary.Line, r.Growth.Movable.Line)
	return &e
}

// x is the station of a support.
func (s *support) x(t *tape) units.Length {
	if s.At.given() {
		return t.station(s.At)
	}
	return s.FromCentre.Value
}

func (s *support) placeField() string {
	if s.At.given() {
		return "at"
	}
	return "from_centre"
}

// check asks for one place, on the side of the coupling where the machine is.
func (s *support) check(f *strict.Faults, path string, t *tape, way units.Length) {
	switch {
	case s.At.given() && s.FromCentre.given():
		f.Add(units.Conflict, path+"/from_centre", s.FromCentre.text, "a place on the tape or a distance from the centre, not both")
		return
	case !s.At.given() && !s.FromCentre.given():
		f.Add(units.Missing, path+"/at", "", "a place on the tape, or from_centre")
		return
	}
	notNegative(f, path+"/at", s.At, "a reading off the tape")
	if s.x(t)*way <= 0 {
		side := "stationary"
		if way > 0 {
			side = "movable"
		}
		where := cmp.Or(s.At.text, s.FromCentre.text)
		f.Add(units.OutOfRange, path+"/"+s.placeField(), where, "a place on the "+side+" side of the centre (from_centre is negative on the stationary side)")
	}
}

// check asks for one way to tell a rise, and for what goes with it.
func (l *leg) check(f *strict.Faults, path string) {
	profile := l.Profile != nil
	switch {
	case l.Rise.given() && profile:
		f.Add(units.Conflict, path+"/rise", l.Rise.text, "a rise or a profile, not both")
	case !l.Rise.given() && !profile:
		f.Add(units.Missing, path+"/rise", "", `a rise ("0 K" if it stays as it is), or cold and profile`)
	case profile && !l.Cold.given():
		f.Add(units.Missing, path+"/cold", "", "the temperature of the piece when cold")
	}
	if profile && len(l.Profile) == 0 {
		f.Add(units.Missing, path+"/profile", "", "at least one spot")
	}
	if l.Cold.given() && !profile {
		f.Add(units.Conflict, path+"/cold", l.Cold.text, "a profile with it: a rise does not use it")
	}
	switch {
	case l.Expansion.given() && l.Source == "":
		f.Add(units.Missing, path+"/source", "", "where the coefficient comes from")
	case !l.Expansion.given() && l.Source != "":
		f.Add(units.Conflict, path+"/source", string(l.Source), "no source without expansion: the list of materials has its own")
	}
}
