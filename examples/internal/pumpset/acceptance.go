package pumpset

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// judge is what the job is judged by: limits, and where in the job a fault of
// them stands.
type judge struct {
	tolerance.Limits
	by     tolerance.Acceptance
	rename func(string) string
}

// judge makes the limits ready; nothing where the job asks for none, or where
// they are not sound.
func (j *Job) judge(f *strict.Faults) *judge {
	if j.Speed.given() && j.Speed.Value <= 0 {
		f.Add(units.OutOfRange, "/speed", j.Speed.text, "a speed above zero")
	}
	a := j.Acceptance
	if a == nil {
		return nil
	}
	ways := []struct {
		given  bool
		limits func(*strict.Faults) *judge
	}{
		{a.Rule != "", j.byRule}, {a.Sliding.given(), j.bySliding}, {a.Own != nil, j.byOwn}, {a.Table != nil, j.byTable},
	}
	var chosen []func(*strict.Faults) *judge
	for _, w := range ways {
		if w.given {
			chosen = append(chosen, w.limits)
		}
	}
	if len(chosen) != 1 {
		code := units.Missing
		if len(chosen) > 1 {
			code = units.Conflict
		}
		f.Add(code, "/acceptance", "", "exactly one of rule, sliding, own, table")
		return nil
	}
	limits := chosen[0](f)
	by := tolerance.Acceptance{Confidence: float64(a.Confidence.Value)}
	if a.Confidence.given() && !(by.Confidence > 0.5 && by.Confidence < 1) {
		f.Add(units.OutOfRange, "/acceptance/confidence", a.Confidence.text, "more than 50 % and less than 100 %")
		return nil
	}
	if limits != nil {
		limits.by = by
	}
	return limits
}

func (j *Job) byRule(f *strict.Faults) *judge {
	if !j.Coupling.Span.given() {
		f.Add(units.Conflict, "/acceptance/rule", string(j.Acceptance.Rule), "another way to judge, or the span of a spacer: the rule is about flex planes")
		return nil
	}
	return &judge{Limits: tolerance.APIRP686(), rename: func(string) string { return "/acceptance/rule" }}
}

func (j *Job) bySliding(f *strict.Faults) *judge {
	limits, err := tolerance.Rubbing(j.Acceptance.Sliding.Value, j.Speed.Value, j.coupling())
	rename := func(of string) string {
		if of == "/sliding" {
			return "/acceptance/sliding"
		}
		return of
	}
	f.Adopt(err, rename)
	return sound(err, limits, rename)
}

func (j *Job) byOwn(f *strict.Faults) *judge {
	o, path := j.Acceptance.Own, "/acceptance/own"
	rename := func(of string) string { return path + of }
	checkAbove(f, path, o.Offset, o.Slope, o.Flex)
	limits := tolerance.Limits{
		Offset: o.Offset.Value, Slope: o.Slope.Value, Flex: o.Flex.Value, PerPlane: o.PerPlane,
		Rule: "limits of the job's own", Source: string(o.Source),
	}
	err := limits.Validate()
	f.Adopt(err, rename)
	return sound(err, limits, rename)
}

func (j *Job) byTable(f *strict.Faults) *judge {
	t, path := j.Acceptance.Table, "/acceptance/table"
	rows := make([]tolerance.Row, len(t.Rows))
	for i, r := range t.Rows {
		checkAbove(f, strict.Step(path+"/rows", i), r.Offset, r.Slope, r.Flex)
		rows[i] = tolerance.Row{Speed: r.Speed.Value, Offset: r.Offset.Value, Slope: r.Slope.Value, Flex: r.Flex.Value}
	}
	if !j.Speed.given() {
		f.Add(units.Missing, "/speed", "", "the speed whose row counts")
	}
	table, err := tolerance.NewTable(string(t.Source), string(t.Edition), rows...)
	f.Adopt(err, func(of string) string { return path + of })
	if err != nil {
		return nil
	}
	limits, err := table.At(j.Speed.Value)
	f.Adopt(err, func(of string) string { return of })
	limits.PerPlane = t.PerPlane
	return sound(err, limits, func(string) string { return path + "/rows" })
}

// checkAbove refuses limits of zero, which the library takes for none.
func checkAbove(f *strict.Faults, path string, offset length, tilts ...slope) {
	if offset.given() {
		positive(f, path+"/offset", offset, "a limit")
	}
	for i, field := range []string{"/slope", "/flex"} {
		if t := tilts[i]; t.given() && t.Value <= 0 {
			f.Add(units.OutOfRange, path+field, t.text, "a limit above zero")
		}
	}
}

func sound(err error, limits tolerance.Limits, rename func(string) string) *judge {
	if err != nil {
		return nil
	}
	return &judge{Limits: limits, rename: rename}
}

// verdict holds what was found at path less the target against the limits.
func (j *judge) verdict(f *strict.Faults, path string, off align.Estimate, k align.Coupling) *tolerance.Verdict {
	if j == nil {
		return nil
	}
	v, err := j.JudgeBy(off, k, j.by)
	f.Adopt(err, func(of string) string {
		switch {
		case strings.HasPrefix(of, "/off"+"/"):
			return path
		case strings.HasPrefix(of, "/coupling"):
			return of
		}
		return j.rename(of)
	})
	return &v
}

func (j *Job) coupling() align.Coupling {
	return align.Coupling{Diameter: j.Coupling.Diameter.Value, Span: j.Coupling.Span.Value}
}
