package sheet

import (
	"maps"
	"slices"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// ReadOff is a value that was read off a graph, held against the truth. All
// lengths are on the machine.
type ReadOff struct {
	Foot       string       `json:"foot"`
	Value      units.Length `json:"value"`      // w as it was read off
	Difference units.Length `json:"difference"` // Value less the foot's W
	Tolerance  units.Length `json:"tolerance"`  // of the foot
	Within     bool         `json:"within"`     // the difference, either way, is not above the tolerance, both rounded to 1 nm
}

// Check judges values read off the graph: for each foot, by its name, the w of the
// movable centreline in that plane, on the machine and signed (up, or towards 3
// o'clock, is positive), not the correction, which is its opposite. The answer is
// in the order of the feet; a foot that was not read is not in it.
//
// Within tells that the value can come from this graph and a careful hand, no
// more: at a foot far beyond points that stand close, a careful hand may be so far
// off that the machine does not come in line. Tolerance says how far.
//
// It refuses a name that no foot has (Unknown, at /read/name) and values that are
// not finite (at /read/name), and of a graph that Draw did not make, feet whose
// names are missing or given twice, or whose numbers cannot be (at /feet/0/w).
func (g Graph) Check(read map[string]units.Length) ([]ReadOff, error) {
	var faults check.Faults
	var root check.Path
	known := g.check(&faults, root.Field("feet"))
	list := root.Field("read")
	for _, name := range slices.Sorted(maps.Keys(read)) {
		checkRead(&faults, list, name, read[name], known)
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	var answer []ReadOff
	for _, f := range g.Feet {
		if value, given := read[f.Foot.Name]; given {
			answer = append(answer, f.judge(value))
		}
	}
	return answer, nil
}

func (f FootMark) judge(value units.Length) ReadOff {
	return ReadOff{
		Foot:       f.Foot.Name,
		Value:      value,
		Difference: value - f.W,
		Tolerance:  f.Tolerance,
		Within:     !distance(value, f.W).Above(f.Tolerance),
	}
}

// checkRead asks for a finite value at a foot of the graph.
func checkRead(faults *check.Faults, list check.Path, name string, value units.Length, known map[string]bool) {
	const want = "the name of a foot of this graph"
	at := list.Field(name)
	if name == "" { // a step of a path that a Path does not have
		faults.Append(&units.Fault{Code: units.Unknown, Path: list.String() + "/", Want: want})
	} else if !known[name] {
		faults.Add(units.Unknown, at, name, want)
	} else {
		check.Finite(faults, at, value)
	}
}

// check walks what is used of the graph, which may come off the wire, and returns
// the names of its feet.
func (g *Graph) check(faults *check.Faults, list check.Path) map[string]bool {
	names := map[string]bool{}
	for i, f := range g.Feet {
		at := list.Index(i)
		foot := at.Field("foot")
		checkFootName(faults, foot.Field("name"), f.Foot.Name, names)
		check.Finite(faults, at.Field("w"), f.W)
		check.NotNegative(faults, at.Field("tolerance"), f.Tolerance, "a tolerance")
	}
	return names
}
