package main

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/train"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/thermal"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// record is what became of a job.
type record struct {
	Format string `json:"format"`
	Job    *job   `json:"job"`

	// Growth of each machine along the x of the train, and what the dials came to at
	// each coupling, with what is to be looked at again there. Found is the later
	// machine relative to the earlier one, in the coupling's own x.
	Growth   []align.Estimate `json:"growth"`
	Joints   []train.Joint    `json:"joints"`
	Warnings [][]units.Fault  `json:"warnings"`

	// Plans holds the plan that the job asks for, and, where a machine was to stay and
	// the train comes nowhere near so, one in which every machine may move.
	Plans []train.Plan `json:"plans"`
}

// solve turns the job into a train and plans it. All faults come at once.
func solve(j *job) (record, error) {
	var f strict.Faults
	r := record{Format: "train record 1", Job: j}
	t := train.Train{Reference: string(j.Reference)}
	for i := range j.Machines {
		t.Machines = append(t.Machines, j.Machines[i].train(&f, strict.Step("/machines", i)))
		r.Growth = append(r.Growth, j.Machines[i].growth(&f, strict.Step("/machines", i)))
	}
	for i := range j.Couplings {
		joint, warnings := j.joint(&f, i, r.Growth)
		t.Joints = append(t.Joints, joint)
		r.Warnings = append(r.Warnings, warnings)
	}
	r.Joints = t.Joints
	f.Adopt(t.Validate(), inJob)
	if err := f.Err(); err != nil {
		return record{}, err
	}
	plan, err := t.Plan(j.Work)
	r.Plans = append(r.Plans, plan)
	if plan.Reach == train.OutOfReach && t.Reference != "" {
		t.Reference = ""
		plan, err = t.Plan(j.Work)
		r.Plans = append(r.Plans, plan)
	}
	f.Adopt(err, inJob)
	return r, f.Err()
}

// trainFields are the names that the fields of package train have in a job.
var trainFields = strings.NewReplacer(
	"/joints", "/couplings", "/coupling/", "/", "/limits/flex", "/limits/tilt", "/x", "/at",
	"/vertical/at_least", "/vertical/down_by", "/vertical/at_most", "/vertical/up_by",
	"/horizontal/at_least", "/horizontal/nine_by", "/horizontal/at_most", "/horizontal/three_by",
)

func inJob(path string) string { return trainFields.Replace(path) }

func (m *machine) train(f *strict.Faults, path string) train.Machine {
	out := train.Machine{Name: string(m.Name), Height: m.Height}
	for i := range m.Feet {
		foot, at := &m.Feet[i], strict.Step(path+"/feet", i)
		of := train.Foot{Name: string(foot.Name), X: foot.At}
		if v := foot.Vertical; v != nil {
			of.Vertical = limit(f, at+"/vertical", v.Fixed, way{"down_by", v.DownBy}, way{"up_by", v.UpBy})
		}
		if h := foot.Horizontal; h != nil {
			of.Horizontal = limit(f, at+"/horizontal", h.Fixed, way{"nine_by", h.NineBy}, way{"three_by", h.ThreeBy})
		}
		out.Feet = append(out.Feet, of)
	}
	return out
}

// way is how far feet can go one way; nil is free.
type way struct {
	field string
	by    *units.Length
}

// limit is what holds a foot in one plane, from how far it can go downwards or
// towards nine, and upwards or towards three.
func limit(f *strict.Faults, path string, fixed bool, minus, plus way) train.Limit {
	for _, w := range []way{minus, plus} {
		switch {
		case w.by != nil && fixed:
			f.Add(units.Conflict, path+"/"+w.field, w.by.String(), "fixed, or how far it can go, not both")
		case w.by != nil && *w.by < 0:
			f.Add(units.OutOfRange, path+"/"+w.field, w.by.String(), "how far it can go from where it stands, not below zero")
		}
	}
	switch {
	case fixed:
		return train.Fixed()
	case minus.by != nil && plus.by != nil:
		return train.Between(-*minus.by, *plus.by)
	case minus.by != nil:
		return train.AtLeast(-*minus.by)
	case plus.by != nil:
		return train.AtMost(*plus.by)
	}
	return train.Limit{}
}

// growth is how the centreline of the machine moves from cold to running. Without
// supports it stays.
func (m *machine) growth(f *strict.Faults, path string) align.Estimate {
	if m.Growth == nil {
		return align.Estimate{}
	}
	path += "/growth"
	supports := make([]thermal.Support, len(m.Growth))
	for i, s := range m.Growth {
		material, err := thermal.FindMaterial(string(s.Material))
		f.Adopt(err, func(string) string { return strict.Step(path, i) + "/material" })
		if err != nil {
			material.Expansion = units.PerKelvin / 1e6 // any, so that it has no second fault
		}
		supports[i] = thermal.Support{Name: string(s.Name), X: s.At, Pieces: []thermal.Piece{{
			Height: s.Height, Material: material, Rise: s.Rise, U: thermal.Uncertainty{Temperature: s.U},
		}}}
	}
	line, err := thermal.Growth(supports...)
	f.Adopt(err, func(of string) string {
		return path + strings.NewReplacer("/supports", "", "/pieces/0", "", "/x", "/at", "/u/temperature", "/u").Replace(of)
	})
	return line
}

// joint is what was found at a coupling, and what is wanted there.
func (j *job) joint(f *strict.Faults, i int, growth []align.Estimate) (train.Joint, []units.Fault) {
	c, path := &j.Couplings[i], strict.Step("/couplings", i)
	estimate, warnings := c.found(f, path+"/found")
	joint := train.Joint{
		Coupling: align.Coupling{Name: string(c.Name), Span: c.Span},
		At:       c.At,
		Found:    estimate,
		Limits: tolerance.Limits{
			Offset: c.Limits.Offset, Slope: c.Limits.Slope, Flex: c.Limits.Tilt,
			PerPlane: c.Limits.PerPlane, Source: string(c.Limits.Source),
		},
	}
	grows := i+1 < len(j.Machines) && (j.Machines[i].Growth != nil || j.Machines[i+1].Growth != nil)
	switch {
	case c.Target != nil && grows:
		f.Add(units.Conflict, path+"/target", "", "a target, or the growth of the machines beside it, not both")
	case c.Target != nil:
		joint.Target = c.Target.estimate()
	case grows:
		joint.Target = thermal.ColdTarget(growth[i], growth[i+1]).About(c.At)
	}
	return joint, warnings
}

func (t *target) estimate() align.Estimate {
	return align.Exact(align.Centreline{
		Horizontal: align.Line{Offset: t.ToThree, Slope: t.Drift},
		Vertical:   align.Line{Offset: t.High, Slope: t.Climb},
	})
}

// found is the later machine relative to the earlier one. A crew that stood behind
// the first machine named the clock as the library's observer does where the later
// machine is the stationary one: it is told so to the dials, x growing backwards,
// and exchanged.
func (c *coupling) found(f *strict.Faults, path string) (align.Estimate, []units.Fault) {
	earlier, later := &c.Found.CarriedByEarlier, &c.Found.CarriedByLater
	backwards := c.Found.SeenFrom == first
	names := []string{"/carried_by_stationary", "/carried_by_earlier", "/carried_by_movable", "/carried_by_later"}
	m := dial.Reverse{CarriedByStationary: earlier.dial(earlier.At - c.At), CarriedByMovable: later.dial(later.At - c.At)}
	if backwards {
		names[1], names[3] = names[3], names[1]
		m = dial.Reverse{CarriedByStationary: later.dial(c.At - later.At), CarriedByMovable: earlier.dial(c.At - earlier.At)}
	}
	if earlier.At < later.At { // one place for both the dials refuse themselves
		f.Add(units.Conflict, path+"/carried_by_earlier/at", earlier.At.String(), "a place beyond "+later.At.String()+", where the other dial touches the earlier shaft: this one touches the later shaft")
	}
	rename := strings.NewReplacer(append(names, dialFields...)...)
	inJob := func(of string) string { return path + rename.Replace(of) }
	result, err := m.Solve()
	f.Adopt(err, inJob)
	for i := range result.Warnings {
		result.Warnings[i].Path = inJob(result.Warnings[i].Path)
	}
	if backwards {
		return result.Estimate.Exchanged(), result.Warnings
	}
	return result.Estimate, result.Warnings
}

var dialFields = []string{
	"/station", "/at", "/u/reading", "/u",
	"/readings/0/value", "/at_12", "/readings/1/value", "/at_3", "/readings/2/value", "/at_6", "/readings/3/value", "/at_9",
}

func (r *rim) dial(x units.Length) dial.Rim {
	return dial.Rim{
		Station: x, Sag: r.Sag, U: align.Uncertainty{Reading: r.U},
		Readings: []align.Reading{
			{At: units.Twelve, Value: r.At12}, {At: units.Three, Value: r.At3},
			{At: units.Six, Value: r.At6}, {At: units.Nine, Value: r.At9},
		},
	}
}
