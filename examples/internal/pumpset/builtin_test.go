package pumpset

import (
	"math"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/softfoot"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// The built-in job is what its notes say: its readings follow from the chosen
// misalignment and sag to within the scatter, and what was left from the moves
// and the shims.
func TestBuiltInJobIsConsistent(t *testing.T) {
	r := mustSolve(t, sample)
	place := func(x units.Length) float64 { return x.In(units.InMillimetres) }
	s := scene{
		method: "reverse", rimS: place(*r.Stations.StationaryRim), rimM: place(*r.Stations.MovableRim),
		sag: [2]float64{0.03, 0.04},
	}
	inboard, outboard := place(r.Stations.Feet[0].X), place(r.Stations.Feet[1].X)
	foundAt := [4]float64{0.18, 0.35e-3, -0.31, -0.52e-3}
	line := func(atInboard, atOutboard float64) (offset, slope float64) {
		slope = (atOutboard - atInboard) / (outboard - inboard)
		return atInboard - slope*inboard, slope
	}
	// The shims raise the shaft by their mean at either end, and roll the machine
	// by the mean of what they do across.
	more := shimmed(t, r)
	upOffset, upSlope := line((more[0]+more[1])/2, (more[2]+more[3])/2)
	acrossOffset, acrossSlope := line(-0.36, -0.57)
	acrossOffset -= 280 * (more[0] - more[1] + more[2] - more[3]) / 2 / (2 * 228)
	leftAt := [4]float64{foundAt[0] + acrossOffset, foundAt[1] + acrossSlope, foundAt[2] + upOffset, foundAt[3] + upSlope}
	s.checkSurvey(t, "found", r.Job.Found.Reverse, foundAt)
	s.checkSurvey(t, "left", r.Job.Left.Reverse, leftAt)
	checkLifts(t, r, more)
	if n := len(r.Found.Result.Warnings) + len(r.Left.Result.Warnings); n != 0 {
		t.Errorf("%d warnings", n)
	}
	for _, foot := range r.Left.Moves { // what is left is small, and not nothing
		if size := foot.By.Size(); size > 50*units.Micrometre || size == 0 {
			t.Errorf("%v would remain", foot)
		}
	}
	checkReadingsShown(t, r)
	if r.Left.Result.Cov.Basis != align.Stated {
		t.Error("the uncertainties that the job states do not count")
	}
}

// shimmed is what the packs of the sheet put in at each foot, as the notes have
// it.
func shimmed(t *testing.T, r Record) []float64 {
	t.Helper()
	noted := []float64{0.55, 0.55, 0.80, 1.01}
	for i, s := range r.Packs.Choice.Stacks {
		before := 0.0
		for _, p := range r.Job.SingleFeet.Feet[i].Pack {
			thickness := p.Marked.Value
			if p.Measured.given() {
				thickness = p.Measured.Value
			}
			before += float64(p.Count.Value) * thickness.In(units.InMillimetres)
		}
		near(t, "put in under "+s.Foot, s.Total.In(units.InMillimetres)-before, noted[i])
		if !s.Reached {
			t.Errorf("%s is not reached", s.Foot)
		}
	}
	return noted
}

// checkLifts: on four pads of a rectangle a foot whose bolt is loose hangs above
// its pad by the twist, if that is low or the one across from it, in the order
// inboard wall and aisle, outboard wall and aisle.
func checkLifts(t *testing.T, r Record, more []float64) {
	t.Helper()
	const common, low, scatter = 0.02, 0.24, 0.01 + 1e-9
	for i, foot := range r.Job.SingleFeet.Feet {
		sign := []float64{1, -1, -1, 1}[i]
		lift := func(pads []float64) float64 {
			return common + max(0, sign*(pads[1]+pads[2]-pads[0]-pads[3]))
		}
		before := []float64{0, 0, 0, -low}
		after := []float64{more[0], more[1], more[2], more[3] - low}
		if got := foot.Lift.Value.In(units.InMillimetres); math.Abs(got-lift(before)) > scatter {
			t.Errorf("%s lifts %v, worked out %v", foot.Name, got, lift(before))
		}
		if got := foot.LiftLeft.Value.In(units.InMillimetres); math.Abs(got-lift(after)) > scatter {
			t.Errorf("%s lifts %v as left, worked out %v", foot.Name, got, lift(after))
		}
	}
}

func checkReadingsShown(t *testing.T, r Record) {
	t.Helper()
	report := sections(text(t, r, Metric))
	for i, want := range []string{"READINGS AS FOUND", "READINGS AS LEFT"} {
		survey := []*reverse{r.Job.Found.Reverse, r.Job.Left.Reverse}[i]
		for _, value := range append(survey.CarriedByStationary.Readings, survey.CarriedByMovable.Readings...) {
			line := value.At.text + " " + value.Value.text + " "
			if !strings.Contains(strings.Join(strings.Fields(strings.Join(report[want], " ")), " "), line) {
				t.Errorf("%s: no reading %q", want, line)
			}
		}
	}
}

// The built-in job passes through what it is meant to show: one soft foot that
// shims cure, and an alignment that is outside before and within after.
func TestBuiltInJobShowsTheWhole(t *testing.T) {
	r := mustSolve(t, sample)
	if len(r.SoftFoot.Advice) == 0 || r.SoftFoot.Fits[0].Kind != softfoot.Parallel || len(r.SoftFootLeft.Fits) != 0 {
		t.Errorf("soft foot: %+v, and left %+v", r.SoftFoot, r.SoftFootLeft)
	}
	if r.Found.Verdict.Outcome != tolerance.Outside || r.Left.Verdict.Outcome != tolerance.Within {
		t.Errorf("verdicts: %v, and left %v", r.Found.Verdict, r.Left.Verdict)
	}
}

func (s *scene) checkSurvey(t rapid.TB, when string, got *reverse, at [4]float64) {
	t.Helper()
	scattered := false
	for i, set := range []rim{got.CarriedByStationary, got.CarriedByMovable} {
		l := s.laws()[i]
		start := s.read(l, 0, at[0], at[1], at[2], at[3])
		for _, r := range set.Readings {
			q := int(r.At.Value / units.Three)
			want := s.read(l, q, at[0], at[1], at[2], at[3]) - start
			value := r.Value.Value.In(units.InMillimetres)
			if math.Abs(value-want) > 0.01+1e-9 { // the scatter
				t.Errorf("%s, set %d at %s: read %v, worked out %v", when, i, r.At, value, want)
			}
			if hundredths := value * 100; math.Abs(hundredths-math.Round(hundredths)) > 1e-9 {
				t.Errorf("%s, set %d at %s: %v is not a whole hundredth", when, i, r.At, value)
			}
			scattered = scattered || math.Abs(value-want) > 0.005
		}
	}
	if !scattered {
		t.Errorf("%s: no reading is off by more than its rounding", when)
	}
}

// The uncertainties of a job reach the numbers that they belong to. Closed forms
// from the law of each gauge, to first order; derived here.
func TestUncertaintiesReachTheAnswer(t *testing.T) {
	r := mustSolve(t, load(t, "testdata/rim-gap.json"))
	// Gap across D = 160 mm: u(slope)^2 = 2 (u_r/D)^2 + (slope u(D)/D)^2.
	slope := r.Found.Result.Value.Vertical.Slope
	got := float64(r.Found.Result.Cov.Standard().Vertical.Slope)
	near(t, "slope from a gap, mm/m", 1000*got, 1000*math.Hypot(math.Sqrt2*0.02/160, float64(slope)/160))

	// A foot whose place is uncertain by u: u(move)^2 grows by (slope u)^2, and
	// the tape's u goes for every foot that has none of its own.
	alone := load(t, "testdata/alignment-alone.json")
	plain := mustSolve(t, with("/tape/u", `"0 mm"`)(t, alone))
	feet := mustSolve(t, both(with("/tape/u", `"0 mm"`), with("/tape/feet/0/u", `"40 mm"`), with("/tape/feet/1/u", `"40 mm"`))(t, alone))
	for i, move := range feet.Found.Moves {
		before := plain.Found.Moves[i].U.Vertical.In(units.InMillimetres)
		more := 40 * float64(feet.Found.Off.Value.Vertical.Slope)
		near(t, "u of a foot", move.U.Vertical.In(units.InMillimetres), math.Hypot(before, more))
	}
	tape := mustSolve(t, with("/tape/u", `"40 mm"`)(t, alone))
	for i, foot := range tape.Stations.Feet {
		if foot.U != 40*units.Millimetre {
			t.Errorf("foot %d: u %v is not that of the tape", i, foot.U)
		}
	}
	// A rim that is uncertain by u: u(w)^2 grows by (slope u)^2 at that rim.
	at := *tape.Stations.MovableRim
	_, u := tape.Found.Result.At(at)
	_, u0 := plain.Found.Result.At(at)
	near(t, "u at a rim", u.Vertical.In(units.InMillimetres),
		math.Hypot(u0.Vertical.In(units.InMillimetres), 40*float64(tape.Found.Result.Value.Vertical.Slope)))
}

// The uncertainty of a growth is that of its rise and of its coefficient, and
// counts in what is off target: u^2 = (h a u(rise))^2 + (h rise u(a))^2.
func TestUncertaintyOfTheGrowth(t *testing.T) {
	r := mustSolve(t, sample)
	for i, rise := range []float64{24, 19} {
		want := math.Hypot(280*11.34e-6*2, 280*rise*0.5e-6)
		near(t, "u of a growth", r.Growth.Movable.Supports[i].U.Vertical.In(units.InMillimetres), want)
	}
	x := r.Stations.Feet[1].X
	_, found := r.Found.Result.At(x)
	_, target := r.Growth.Target.At(x)
	_, off := r.Found.Off.At(x)
	near(t, "u off target", off.Vertical.In(units.InMillimetres),
		math.Hypot(found.Vertical.In(units.InMillimetres), target.Vertical.In(units.InMillimetres)))
	if target.Vertical == 0 {
		t.Error("the target has no uncertainty")
	}
}

// A target that is told at a place on the tape holds there, and with an opening
// without a diameter the coupling's is meant.
func TestTargetOnTheTape(t *testing.T) {
	r := mustSolve(t, both(
		with("/target/at", `"11 5/8 in"`), with("/target/opening", `"0.03 mm"`), with("/target/open_at", `"12:00"`),
	)(t, load(t, "testdata/alignment-alone.json")))
	near(t, "high at the rim", r.Target.At(*r.Stations.MovableRim).Vertical.In(units.InMillimetres), 0.04)
	near(t, "slope, mm/m: open at the top falls", 1000*float64(r.Target.Vertical.Slope), -1000*0.03/150)
	if moved := r.Found.Moves[1].By.Vertical; moved == mustSolve(t, load(t, "testdata/alignment-alone.json")).Found.Moves[1].By.Vertical {
		t.Error("the moves do not follow the target")
	}
}
