package pumpset

import (
	"fmt"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

// y is where a foot stands across, in the library's view.
func (s *singleFoot) y(j *Job) units.Length {
	if s.Side == nine {
		return j.toThree(-s.Across.Value)
	}
	return j.toThree(s.Across.Value)
}

// felt tells whether it was noted what the foot did.
func (s *singleFoot) felt() bool { return s.Lift.given() || s.Gaps != nil }

// softFoot judges what the feet did, as found or as left; nothing where that was
// not looked at. A foot that was left out while others were looked at is a fault.
func (r *Record) softFoot(f *strict.Faults, left bool) *softfoot.Finding {
	if !r.Job.SingleFeet.surveyed(f, left) {
		if !left {
			r.Job.SingleFeet.checkWay(f, 0)
		}
		return nil
	}
	finding, err := r.survey(left).Judge(softfoot.Limits{Act: r.Job.SingleFeet.Limit.Value})
	f.Adopt(err, r.renameSurvey(left))
	if err == nil && !left {
		r.Job.SingleFeet.checkWay(f, len(finding.Advice))
	}
	return &finding
}

// surveyed tells whether any foot was looked at, and asks for the others then.
func (s *singleFeet) surveyed(f *strict.Faults, left bool) bool {
	if s == nil {
		return false
	}
	field, told := "/lift", (*singleFoot).felt
	if left {
		field, told = "/lift_left", func(foot *singleFoot) bool { return foot.LiftLeft.given() }
	}
	var without []int
	for i := range s.Feet {
		if !told(&s.Feet[i]) {
			without = append(without, i)
		}
	}
	if len(without) == len(s.Feet) {
		return false
	}
	for _, i := range without {
		f.Add(units.Missing, strict.Step("/single_feet/feet", i)+field, "", `what this foot did, as of the others ("0 mm" if it did not lift)`)
	}
	return true
}

func (r *Record) survey(left bool) softfoot.Survey {
	s := softfoot.Survey{Height: r.Job.SingleFeet.Height.Value}
	for i := range r.Job.SingleFeet.Feet {
		s.Feet = append(s.Feet, r.surveyFoot(i, left))
	}
	return s
}

func (r *Record) surveyFoot(i int, left bool) softfoot.Foot {
	foot := &r.Job.SingleFeet.Feet[i]
	out := softfoot.Foot{Name: string(foot.Name), Y: foot.y(&r.Job), Lift: foot.Lift.Value}
	if k := r.Job.Tape.named(foot.Station); k >= 0 {
		out.X = r.Stations.Feet[k].X
	}
	if left {
		out.Lift = foot.LiftLeft.Value
		return out
	}
	for _, c := range foot.Gaps {
		out.Gaps = append(out.Gaps, softfoot.Gap{X: c.Away.Value, Y: r.Job.toThree(c.ToThree.Value), Gap: c.Gap.Value})
	}
	if foot.Gaps != nil && out.Gaps == nil {
		out.Gaps = []softfoot.Gap{}
	}
	return out
}

// renameSurvey returns where in the job a fault of a survey stands.
func (r *Record) renameSurvey(left bool) func(string) string {
	return func(of string) string {
		if of == "/limits/act" {
			return "/single_feet/limit"
		}
		for i := range r.Job.SingleFeet.Feet {
			if rest, mine := strings.CutPrefix(of+"/", strict.Step("/feet", i)+"/"); mine {
				return r.renameSingle(i, strings.TrimSuffix(rest, "/"), left)
			}
		}
		return "/single_feet" + of
	}
}

// renameSingle does so for one foot, whose place along the shaft is told by the
// tape.
func (r *Record) renameSingle(i int, field string, left bool) string {
	foot, here := &r.Job.SingleFeet.Feet[i], strict.Step("/single_feet/feet", i)
	switch {
	case field == "", field == "x":
		return r.Job.Tape.blame(foot.Station, here, field == "x")
	case field == "y":
		return here + "/across"
	case field == "lift" && left:
		return here + "/lift_left"
	case strings.HasSuffix(field, "/x"):
		return here + "/" + strings.TrimSuffix(field, "x") + "away"
	case strings.HasSuffix(field, "/y"):
		return here + "/" + strings.TrimSuffix(field, "y") + "to_three"
	}
	return here + "/" + field
}

// blame returns what is to blame for the place of a single foot: its station, if
// that is unknown, or the tape, if it gives no place or one twice, or the foot.
func (t *tape) blame(station words, foot string, place bool) string {
	k := t.named(station)
	if k < 0 {
		return foot + "/station"
	}
	for i := range t.Feet {
		if i != k && t.Feet[i].At.Value == t.Feet[k].At.Value {
			return strict.Step("/tape/feet", max(i, k)) + "/at"
		}
	}
	if place {
		return strict.Step("/tape/feet", k) + "/at"
	}
	return foot
}

// checkWay asks that the way which the job chooses is one of so many.
func (s *singleFeet) checkWay(f *strict.Faults, ways int) {
	if s == nil || !s.Way.given() || 0 <= s.chosen() && s.chosen() < ways {
		return
	}
	want := fmt.Sprintf("a way from 1 to %d, as the sheet lists them", ways)
	if ways == 0 {
		want = "no way: no shims are advised against soft foot"
	}
	f.Add(units.OutOfRange, "/single_feet/way", s.Way.text, want)
}

// chosen is the index of the way that the job chooses.
func (s *singleFeet) chosen() int {
	if s.Way.given() {
		return int(s.Way.Value) - 1
	}
	return 0
}

// cure is the way to cure soft feet that the sheet plans with; none where none is
// advised.
func (r *Record) cure() *softfoot.Advice {
	if r.SoftFoot == nil {
		return nil
	}
	if i := r.Job.SingleFeet.chosen(); 0 <= i && i < len(r.SoftFoot.Advice) {
		return &r.SoftFoot.Advice[i]
	}
	return nil
}

// shift is how the shims of the cure move the shaft.
func (r *Record) shift() align.Centreline {
	if c := r.cure(); c != nil {
		return centreline(c.Shift)
	}
	return align.Centreline{}
}

// flat is the flat shim that the cure puts under a foot, if any.
func (r *Record) flat(foot words) units.Length {
	if c := r.cure(); c != nil {
		for _, s := range c.Shims {
			if s.Foot == string(foot) {
				return s.Flat
			}
		}
	}
	return 0
}
