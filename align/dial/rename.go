package dial

import (
	"strings"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// addRenamed adds the faults that the general fit found, with the names that
// the fields have in the method's input. A field that has a fault already gets
// no second one; that the readings cannot see something comes only where nothing
// else explains it.
func addRenamed(faults *check.Faults, err error, parts *[2]part) {
	explained := faults.Len() > 0
	for _, f := range units.Faults(err) {
		renamed := *f
		renamed.Path = newPath(f.Path, parts)
		if faults.Has(renamed.Path) || f.Code == units.Unseen && explained {
			continue
		}
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
// that of the method's input: /rim/station. What is wrong with the sets as a
// whole is wrong with the whole input.
func newPath(path string, parts *[2]part) string {
	for i, prefix := range [2]string{"/sets/0", "/sets/1"} {
		if rest, found := strings.CutPrefix(path, prefix); found {
			return parts[i].newPath(rest)
		}
	}
	return ""
}

// newPath does the same for a path within the part's set.
func (p *part) newPath(path string) string {
	if path == "/probe/carrier" {
		return p.carrier
	}
	if path == "/probe/span" || path == "/view" {
		return strings.TrimPrefix(path, "/probe")
	}
	if path == "/probe/radius" && p.swept {
		return "/" + p.field + "/diameter"
	}
	return "/" + p.field + strings.TrimPrefix(path, "/probe")
}
