package adapter

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type pairInput struct {
	First  position `json:"first"`
	Second position `json:"second"`
}

// estimates asks for two positions with their uncertainties.
func (in *pairInput) estimates(f *strict.Faults) (first, second align.Estimate) {
	first, second = in.First.estimate(f, "/first"), in.Second.estimate(f, "/second")
	if len(*f) > 0 {
		return first, second
	}
	for _, p := range []struct {
		path string
		of   align.Estimate
	}{{"/first", first}, {"/second", second}} {
		if p.of.Cov.Basis != align.Stated {
			f.Add(units.Missing, p.path+"/horizontal/u", "", "the uncertainties of the position")
		}
	}
	return first, second
}

type compareResult struct {
	Difference position `json:"difference"`
	ChiSquared float64  `json:"chi_squared"`
	Degrees    int      `json:"degrees_of_freedom"`
	P          float64  `json:"p"`
}

func compare(in *pairInput, f *strict.Faults) compareResult {
	first, second := in.estimates(f)
	a, err := arc.Compare(first, second)
	f.Adopt(err, ofPair)
	return compareResult{told(a.Difference), a.Chi2, a.Compared, a.P}
}

func merge(in *pairInput, f *strict.Faults) position {
	first, second := in.estimates(f)
	merged, _, err := arc.Merge(first, second)
	f.Adopt(err, ofPair)
	return told(merged)
}

// ofPair turns the names of two estimates into those of the wire.
func ofPair(path string) string {
	for from, to := range map[string]string{"/a": "/first", "/b": "/second"} {
		if rest, found := strings.CutPrefix(path, from+"/"); found {
			rest = "/" + rest
			return to + uOfPlane.Replace(strings.TrimPrefix(strings.TrimPrefix(rest, "/value"), "/cov"))
		}
	}
	return path
}
