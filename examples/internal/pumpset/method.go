package pumpset

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// method is what the five hand methods of package dial have in common.
type method interface {
	Solve() (dial.Result, error)
	Sets() [2]align.Set
}

// measured is a survey made ready for the library, with the way back: which
// field of the job each fault of the library belongs to.
type measured struct {
	method
	path  string  // of the method in the job, below the survey: "/reverse"; whole once measure has seen it
	parts [2]part // in the order of the method's sets
}

// part is one of a method's two sets, as the job has it.
type part struct {
	field    string   // below the method
	rim      string   // the field of the tape that gives its station, if any does
	sag      length   // as entered
	mandrel  *mandrel // or from which it follows
	readings []reading
}

// measure makes a survey ready. It notes where the survey is not exactly one
// method, and where a sag is not told or told twice; there is no method then, or
// it is sound but for that.
func (j *Job) measure(f *strict.Faults, path string, s *survey) *measured {
	all := j.methods(s)
	if len(all) != 1 {
		code := units.Missing
		if len(all) > 1 {
			code = units.Conflict
		}
		f.Add(code, path, "", "exactly one of reverse, rim_face, face_face, rim_gap, straightedge_gap")
		return nil
	}
	m := &all[0]
	m.path = path + m.path
	for i := range m.parts {
		m.parts[i].check(f, m.path)
	}
	return m
}

// methods lists the methods that a survey holds.
func (j *Job) methods(s *survey) []measured {
	var all []measured
	if s.Reverse != nil {
		all = append(all, s.Reverse.measured(j))
	}
	if s.RimFace != nil {
		all = append(all, s.RimFace.measured(j))
	}
	if s.FaceFace != nil {
		all = append(all, s.FaceFace.measured(j))
	}
	if s.RimGap != nil {
		all = append(all, s.RimGap.measured(j))
	}
	if s.StraightedgeGap != nil {
		all = append(all, s.StraightedgeGap.measured(j))
	}
	return all
}

// check asks for the sag of a rim dial, which nobody may forget, and for one
// source of any sag.
func (p *part) check(f *strict.Faults, path string) {
	at := path + "/" + p.field
	switch {
	case p.mandrel != nil && p.sag.given():
		f.Add(units.Conflict, at+"/mandrel", "", "a sag or what the dial showed on a mandrel, not both")
	case p.mandrel == nil && !p.sag.given() && p.droops():
		f.Add(units.Missing, at+"/sag", "", `the sag of the bracket ("0 mm" if it has none), or the mandrel that tells it`)
	}
}

// droops tells whether a part is a rim dial on its bracket.
func (p *part) droops() bool { return p.rim != "" && p.field != "straightedge" }

// checkRims asks for the places that the readings were taken at, and for no
// others.
func (t *tape) checkRims(f *strict.Faults, surveys ...*measured) {
	check := func(name string, place length) {
		used := false
		for _, m := range surveys {
			used = used || m != nil && (m.parts[0].rim == name || m.parts[1].rim == name)
		}
		switch {
		case used && !place.given():
			f.Add(units.Missing, "/tape/"+name, "", "where on the tape the readings were taken on this rim")
		case !used && place.given():
			f.Add(units.Conflict, "/tape/"+name, place.text, "no value: these readings were not taken on this rim")
		}
	}
	check("stationary_rim", t.StationaryRim)
	check("movable_rim", t.MovableRim)
}

// rename returns where in the job a fault of the method's own input stands.
func (m *measured) rename(path string) string {
	switch {
	case path == "/view", strings.HasPrefix(path, "/limits/"):
		return path
	case path == "/span":
		return "/coupling/span"
	}
	for i := range m.parts {
		p := &m.parts[i]
		rest, mine := strings.CutPrefix(path, "/"+p.field+"/")
		switch {
		case !mine:
		case rest == "station":
			return "/tape/" + p.rim
		case rest == "u/station":
			return "/tape/u"
		case rest == "u/radius":
			return m.path + "/" + p.field + "/u/diameter"
		case rest == "sag" && p.mandrel != nil:
			return m.path + "/" + p.field + "/mandrel"
		}
	}
	return m.path + path
}
