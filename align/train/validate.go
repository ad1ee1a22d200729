package train

import (
	"strconv"

	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Validate checks the whole train as [Train.Plan] does, and gives all faults at
// once: names that are missing (Missing) or doubled (Duplicate) or not known
// (Unknown, at /reference), two feet of a machine at one station (Duplicate, at
// /machines/1/feet/1/x), fewer than two machines or two feet (Missing, at
// /machines and /machines/1/feet), more than the largest train has (OutOfRange), a
// number of joints that is not one less than that of machines (Conflict, at
// /joints), numbers that are not finite or below zero where they cannot be, limits
// whose ends are the wrong way round (Conflict, at
// /machines/1/feet/0/vertical/at_least), limits of three feet and more that leave
// a rigid machine no place to stand (Conflict, at /machines/1/feet), feet and
// couplings that are not in the order of the line, so that machines overlap
// (Conflict, at /machines/1/feet/0/x and /joints/1/at), couplings without limits
// (Missing, at /joints/0/limits), one whose limit is that of a spacer that has no
// length (Missing, at /joints/0/coupling/span), and what the limits, the coupling
// and the estimates themselves refuse.
func (t Train) Validate() error {
	var faults check.Faults
	var root check.Path
	t.check(&faults, root)
	if faults.Len() == 0 {
		t.checkOrder(&faults, root)
		t.checkPlaces(&faults, root)
	}
	return faults.Err()
}

func (t *Train) check(faults *check.Faults, root check.Path) {
	machines, joints := root.Field("machines"), root.Field("joints")
	n := len(t.Machines)
	if n > MostMachines {
		faults.Add(units.OutOfRange, machines, n, "at most "+strconv.Itoa(MostMachines)+" machines")
		return
	}
	if n < 2 {
		faults.Add(units.Missing, machines, n, "two machines or more")
	} else if len(t.Joints) != n-1 {
		faults.Add(units.Conflict, joints, len(t.Joints), "one joint between each two neighbours, which makes "+strconv.Itoa(n-1))
		return
	}
	for i := range t.Machines {
		t.checkMachine(faults, machines.Index(i), i)
	}
	for i := range t.Joints {
		t.checkJoint(faults, joints.Index(i), i)
	}
	if t.Reference != "" && t.reference() < 0 {
		faults.Add(units.Unknown, root.Field("reference"), t.Reference, "the name of one of the machines, or none")
	}
}

func (t *Train) checkMachine(faults *check.Faults, at check.Path, i int) {
	m := &t.Machines[i]
	taken := func(k int) bool { return t.Machines[k].Name == m.Name }
	checkName(faults, at.Field("name"), m.Name, i, taken, "a name that no other machine has")
	check.NotNegative(faults, at.Field("height"), m.Height, "a height above the feet")
	feet := at.Field("feet")
	n := len(m.Feet)
	if n == 0 && i == t.reference() {
		return
	}
	if n < 2 {
		faults.Add(units.Missing, feet, n, "two stations or more, at which the machine stands on its feet")
	} else if n > MostFeet {
		faults.Add(units.OutOfRange, feet, n, "at most "+strconv.Itoa(MostFeet)+" stations")
		return
	}
	for k := range m.Feet {
		m.checkFoot(faults, feet.Index(k), k)
	}
}

func (m *Machine) checkFoot(faults *check.Faults, at check.Path, k int) {
	f := &m.Feet[k]
	taken := func(i int) bool { return m.Feet[i].Name == f.Name }
	checkName(faults, at.Field("name"), f.Name, k, taken, "a name that no other foot of the machine has")
	if check.Finite(faults, at.Field("x"), f.X) {
		for i := range k {
			if m.Feet[i].X == f.X {
				faults.Add(units.Duplicate, at.Field("x"), f.X, "a station at which no other foot of the machine is")
				break
			}
		}
	}
	f.Vertical.check(faults, at.Field("vertical"))
	f.Horizontal.check(faults, at.Field("horizontal"))
}

// checkName asks for a name that none of the first n has.
func checkName(faults *check.Faults, at check.Path, name string, n int, taken func(int) bool, want string) {
	if name == "" {
		faults.Add(units.Missing, at, nil, "a name")
		return
	}
	for i := range n {
		if taken(i) {
			faults.Add(units.Duplicate, at, name, want)
			return
		}
	}
}

func (t *Train) checkJoint(faults *check.Faults, at check.Path, i int) {
	j := &t.Joints[i]
	coupling := at.Field("coupling")
	if j.Coupling.Name != "" {
		taken := func(k int) bool { return t.Joints[k].Coupling.Name == j.Coupling.Name }
		checkName(faults, coupling.Field("name"), j.Coupling.Name, i, taken, "a name that no other coupling has")
	}
	check.NotNegative(faults, coupling.Field("diameter"), j.Coupling.Diameter, "a diameter")
	check.Finite(faults, at.Field("at"), j.At)
	faults.Adopt(at.Field("found"), j.Found.Validate())
	faults.Adopt(at.Field("target"), j.Target.Validate())
	faults.Adopt(at.Field("limits"), j.Limits.Validate())
	if j.Coupling.Span == 0 || check.Positive(faults, coupling.Field("span"), j.Coupling.Span, "a distance from flex plane to flex plane") {
		j.checkNeeded(faults, at)
	}
}

// checkNeeded asks for the limits that the sort of coupling is judged by.
func (j *Joint) checkNeeded(faults *check.Faults, at check.Path) {
	short, spacer := j.Limits.Offset != 0 || j.Limits.Slope != 0, j.Limits.Flex != 0
	limits := at.Field("limits")
	if !short && !spacer {
		faults.Add(units.Missing, limits, nil, "limits of the coupling: of offset or slope for a short one, of the tilt at the flex planes for a spacer")
	} else if j.Coupling.Span > 0 && !spacer {
		faults.Add(units.Missing, limits.Field("flex"), nil, "a limit for the tilt at each flex plane: the coupling has a spacer")
	} else if j.Coupling.Span == 0 && !short {
		coupling := at.Field("coupling")
		faults.Add(units.Missing, coupling.Field("span"), nil, "the length of the spacer, from flex plane to flex plane, or limits of a short coupling")
	}
}

// checkOrder asks that couplings follow one another, each with its whole span, and
// that the feet of a machine stand between the centres of its couplings.
func (t *Train) checkOrder(faults *check.Faults, root check.Path) {
	joints := root.Field("joints")
	for i := 1; i < len(t.Joints); i++ {
		before, j := &t.Joints[i-1], &t.Joints[i]
		if end := before.At + before.Coupling.Span/2; j.At-j.Coupling.Span/2 <= end {
			at := joints.Index(i)
			faults.Add(units.Conflict, at.Field("at"), j.At, "a coupling that begins beyond "+end.String()+", where the one before it ends")
		}
	}
	machines := root.Field("machines")
	for i := range t.Machines {
		at := machines.Index(i)
		feet := at.Field("feet")
		for k, f := range t.Machines[i].Feet {
			if !t.between(i, f.X) {
				foot := feet.Index(k)
				faults.Add(units.Conflict, foot.Field("x"), f.X, "a station between the couplings of its machine: x runs from the first machine to the last")
			}
		}
	}
}

// between tells whether x lies between the couplings of machine i.
func (t *Train) between(i int, x units.Length) bool {
	return (i == 0 || x > t.Joints[i-1].At) && (i == len(t.Joints) || x < t.Joints[i].At)
}

// checkPlaces asks that the limits of each machine leave it a place to stand.
func (t *Train) checkPlaces(faults *check.Faults, root check.Path) {
	machines := root.Field("machines")
	for i := range t.Machines {
		for plane, name := range planeNames {
			if i != t.reference() && !t.Machines[i].hasPlace(plane) {
				at := machines.Index(i)
				faults.Add(units.Conflict, at.Field("feet"), nil, "limits that leave a rigid machine a "+name+" position: no straight line keeps those of all its feet")
			}
		}
	}
}
