package softfoot

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// PipingLimit is how much the shaft may move at the coupling, in each plane, when
// piping is made up: 0.003 in (H. P. Bloch, F. K. Geitner, Machinery Component
// Maintenance and Repair, p. 173, read). The machine's maker may allow less.
const PipingLimit = 3 * units.Mil

// Release is how the shaft moved at the coupling when something that may strain
// the machine was let go: the bolts of a flange, a pipe support, an anchor bolt.
type Release struct {
	What       string       `json:"what"`
	Horizontal units.Length `json:"horizontal"` // positive towards 3 o'clock
	Vertical   units.Length `json:"vertical"`   // positive upwards
}

// Strain is a release, judged.
type Strain struct {
	Release Release      `json:"release"`
	Largest units.Length `json:"largest"` // size of the movement in the plane where it is larger
	Over    bool         `json:"over"`    // whether that is over the limit
}

// Strains judges what the shaft did at each release: in each plane it may move by
// the limit, for one [PipingLimit]. Exactly on the limit is not over; lengths are
// compared after rounding to the nanometre. Strain is cured where it comes from,
// not at the feet.
//
// It refuses a limit that is not above zero (/limit), an empty list, a name that
// is missing or given twice (/releases/0/what) and numbers that are not finite.
func Strains(limit units.Length, releases ...Release) ([]Strain, error) {
	if err := checkReleases(limit, releases); err != nil {
		return nil, err
	}
	list := make([]Strain, len(releases))
	for i, r := range releases {
		largest := max(r.Horizontal, -r.Horizontal, r.Vertical, -r.Vertical)
		list[i] = Strain{r, largest, largest.Above(limit)}
	}
	return list, nil
}

func checkReleases(limit units.Length, releases []Release) error {
	var faults check.Faults
	var root check.Path
	check.Positive(&faults, root.Field("limit"), limit, "a limit")
	list := root.Field("releases")
	if len(releases) == 0 {
		faults.Add(units.Missing, list, nil, "at least one release")
	}
	seen := map[string]bool{}
	for i, r := range releases {
		at := list.Index(i)
		if r.What == "" {
			faults.Add(units.Missing, at.Field("what"), nil, "what was released")
		} else if seen[r.What] {
			faults.Add(units.Duplicate, at.Field("what"), r.What, "a name of its own")
		}
		seen[r.What] = true
		check.Finite(&faults, at.Field("horizontal"), r.Horizontal)
		check.Finite(&faults, at.Field("vertical"), r.Vertical)
	}
	return faults.Err()
}
