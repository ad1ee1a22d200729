package softfoot

import (
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Judge tells which feet are soft and why, and what to do about it.
//
// The smallest lift is the common movement; what a foot lifts above it is its
// excess, and a foot is soft where that is above l.Act. Exactly on a limit is not
// above it: lengths are compared after rounding to the nanometre. The package
// comment says how causes are told apart.
//
// It refuses a survey or limits that are not sound: fewer than three feet, or
// more than eight; feet that stand in one line; names or places that are missing
// or given twice; a foot with both Lift and Gaps, with fewer than three gaps, more
// than eight, or corners in one line; numbers that are not finite or of the wrong
// sign. Paths start at the survey (/feet/2/lift) and at /limits.
func (s Survey) Judge(l Limits) (Finding, error) {
	var faults check.Faults
	var root check.Path
	s.check(&faults)
	l.check(&faults, root.Field("limits"))
	if err := faults.Err(); err != nil {
		return Finding{}, err
	}
	j := newJudgement(s, l.orDefaults())
	j.explain()
	j.advise()
	return j.Finding, nil
}

// judgement is a finding on its way.
type judgement struct {
	Finding
	survey  Survey
	limits  Limits
	plan    plan
	excess  column // in millimetres
	soft    []int
	angular []int
	sunk    []int   // feet that went down as they were loosened
	pads    column  // heights that explain the excess, if parallel
	flat    bool    // whether any do
	missed  float64 // by how much they miss it
}

func newJudgement(s Survey, l Limits) *judgement {
	j := &judgement{survey: s, limits: l}
	j.plan = newPlan(s.places())
	j.Common = s.common()
	for i := range s.Feet {
		f := &s.Feet[i]
		found := FootFinding{Foot: f.Name, Lift: f.lift(), Excess: f.lift() - j.Common, Taper: f.taper(l.Taper)}
		found.Soft = found.Excess.Above(l.Act)
		j.note(i, found)
	}
	return j
}

func (j *judgement) note(i int, f FootFinding) {
	j.Feet = append(j.Feet, f)
	j.Worst = max(j.Worst, f.Excess)
	j.excess[i] = mm(f.Excess)
	if f.Soft {
		j.soft = append(j.soft, i)
	}
	if f.Taper != nil {
		j.angular = append(j.angular, i)
	}
	if (-f.Lift).Above(j.limits.Margin) {
		j.sunk = append(j.sunk, i)
	}
}

// common is the movement of all feet: the smallest lift, or none where a foot went
// down.
func (s Survey) common() units.Length {
	least := s.Feet[0].lift()
	for i := range s.Feet {
		least = min(least, s.Feet[i].lift())
	}
	return max(0, least)
}

func mm(l units.Length) float64 { return float64(l / units.Millimetre) }

func fromMM(x float64) units.Length { return units.Length(x) * units.Millimetre }

// names returns the names of some feet.
func (s Survey) names(feet []int) []string {
	list := make([]string, len(feet))
	for i, f := range feet {
		list[i] = s.Feet[f].Name
	}
	return list
}

// places returns where the feet stand.
func (s Survey) places() (n int, x, y column) {
	for i, f := range s.Feet {
		x[i], y[i] = mm(f.X), mm(f.Y)
	}
	return len(s.Feet), x, y
}
