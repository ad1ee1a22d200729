package dial

import (
	"strings"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// addRenamed adds the faults that the general fit found, with the names that
// the fields have in the method's input. A fault of a field that both sets
// share comes once; that the readings cannot see something comes only where
// nothing else explains it.
func addRenamed(faults *check.Faults, err error, parts *[2]part) {
	found := faults.Len() > 0
	seen := map[string]bool{}
	for _, f := range units.Faults(err) {
		path := newPath(f.Path, parts)
		if seen[path] || (f.Code == units.Unseen && found) {
			continue
		}
		seen[path] = true
		renamed := *f
		renamed.Path = path
		faults.Append(&renamed)
	}
}

// rename gives warnings the names of the method's input, in place.
func rename(warnings []units.Fault, parts *[2]part) {
	for i := range warnings {
		warnings[i].Path = newPath(warnings[i].Path, parts)
	}
}

// newPath turns a path of the general fit, for one /sets/0/probe/station, into
// that of the method's input: /rim/station.
func newPath(path string, parts *[2]part) string {
	rest, first := strings.CutPrefix(path, "/sets/0")
	p := &parts[0]
	if !first {
		p = &parts[1]
		second := false
		if rest, second = strings.CutPrefix(path, "/sets/1"); !second {
			return "" // the sets as a whole
		}
	}
	switch rest {
	case "/probe/carrier":
		return p.carrier
	case "/probe/span", "/view":
		return strings.TrimPrefix(rest, "/probe")
	case "/probe/radius":
		if p.round {
			return "/" + p.field + "/diameter"
		}
	}
	return "/" + p.field + strings.TrimPrefix(rest, "/probe")
}
