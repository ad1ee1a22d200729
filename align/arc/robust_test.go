package arc_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

func mustRobust(tb fataler, sets ...align.Set) arc.Robust {
	tb.Helper()
	r, err := arc.FitRobust(sets...)
	if err != nil {
		tb.Fatalf("FitRobust: %v", err)
	}
	return r
}

// wiggle is a pattern of small errors that no harmonic explains.
var wiggle = [...]units.Length{2, -3, 1, 4, -2, -4, 3, -1, 0, 2, -2, 1, 3, -3, -1, 2}

// wiggled returns the sets with errors of a few micrometres.
func wiggled(sets []align.Set) []align.Set {
	sets = ownReadings(sets)
	for i := range sets {
		for j := range sets[i].Readings {
			sets[i].Readings[j].Value += wiggle[(5*i+j)%len(wiggle)] * um
		}
	}
	return sets
}

// spoilt returns the sets with one reading off.
func spoilt(sets []align.Set, set, reading int, by units.Length) []align.Set {
	sets = ownReadings(sets)
	sets[set].Readings[reading].Value += by
	return sets
}

// without returns the sets without one reading.
func without(sets []align.Set, set, reading int) []align.Set {
	sets = ownReadings(sets)
	sets[set].Readings = slices.Delete(sets[set].Readings, reading, reading+1)
	return sets
}

// Worked by hand: a reading that is far off is left out, and the answer, its
// covariance and its degrees of freedom are those of the others alone.
func TestRobustLeavesOut(t *testing.T) {
	for _, stated := range []units.Length{4 * um, 0} {
		sound := wiggled(filled(t, caseA, sensorPair(stated, nine(180)...)))
		for set := range 2 {
			for reading := range 9 {
				name := fmt.Sprintf("stated %v, set %d, reading %d", stated, set, reading)
				r := mustRobust(t, spoilt(sound, set, reading, 300*um)...)
				want := mustFit(t, without(sound, set, reading)...)
				nearLine(t, name, r.Value, want.Value, 1e-3)
				nearCov(t, name, r.Cov, want.Cov, 1e-9)
				near(t, name+": scatter", r.Scatter, want.Scatter, 1e-3)
				if r.DegreesOfFreedom != 11 || r.Cov.DoF != want.Cov.DoF || !r.Settled {
					t.Errorf("%s: degrees of freedom %d, %v, settled %v", name, r.DegreesOfFreedom, r.Cov.DoF, r.Settled)
				}
				down := r.Down()
				if len(down) != 1 || down[0].Set != set || down[0].Reading != reading || down[0].Weight != 0 {
					t.Errorf("%s: down %+v", name, down)
				}
				checkWarned(t, name, r.Warnings, fmt.Sprintf("/sets/%d/readings/%d", set, reading))
			}
		}
	}
}

// checkWarned asks for warnings at just these paths.
func checkWarned(tb fataler, what string, warnings []units.Fault, paths ...string) {
	tb.Helper()
	var got []string
	for _, w := range warnings {
		if w.Code != units.Suspect || w.Want == "" {
			tb.Errorf("%s: warning %+v", what, w)
		}
		got = append(got, w.Path)
	}
	if !slices.Equal(got, paths) {
		tb.Errorf("%s: warned of %v (%+v), want %v", what, got, warnings, paths)
	}
}

// Sound readings: Fit's answer to the last bit, every weight 1, no warning.
func TestRobustOfSoundReadings(t *testing.T) {
	for _, stated := range []units.Length{4 * um, 0} {
		sets := wiggled(filled(t, caseA, sensorPair(stated, nine(120)...)))
		r := mustRobust(t, sets...)
		if want := mustFit(t, sets...); !cmp.Equal(r.Fitted, want, cmp.Comparer(sameCov)) {
			t.Errorf("got %+v, want %+v", r.Fitted, want)
		}
		if len(r.Weights) != 18 || r.Down() != nil || !r.Settled || r.Warnings != nil || (r.Scale == 0) != (stated != 0) {
			t.Errorf("%+v", r)
		}
	}
}

func sameCov(a, b align.Covariance) bool { return a == b }

// What Fit asks about the readings as they were given is asked still, once.
func TestRobustKeepsWarnings(t *testing.T) {
	sets := filled(t, caseA, sensorPair(5*um, nine(180)...))
	r := mustRobust(t, spoilt(sets, 1, 4, 30*mm)...) // was it read in the right unit?
	checkWarned(t, "30 mm off", r.Warnings, "/sets/1/readings", "/sets/1/readings/4")
}

// Residuals are taken from where the sound readings put the zero of the set, so that
// a bad one shows all of what it is off by.
func TestRobustResiduals(t *testing.T) {
	sets := filled(t, caseA, sensorPair(5*um, nine(180)...))
	r := mustRobust(t, spoilt(sets, 1, 8, 200*um)...)
	for _, w := range r.Weights {
		want := units.Length(0)
		if w.Set == 1 && w.Reading == 8 {
			want = 200 * um
		}
		near(t, fmt.Sprintf("residual of %d, %d", w.Set, w.Reading), w.Residual, want, 1e-2)
		near(t, "off", w.Off, float64(w.Residual/(5*um)), 1e-12)
	}
}

// Of readings that differ in weight as well: what is left of the others is what it is
// without the bad one.
func TestRobustResidualsOfUnequalReadings(t *testing.T) {
	sound := wiggled(filled(t, caseA, sensorPair(5*um, nine(180)...)))
	for i := range sound {
		for j := range sound[i].Readings {
			sound[i].Readings[j].U = units.Length(2+3*(j%3)) * um
		}
	}
	r := mustRobust(t, spoilt(sound, 1, 8, 400*um)...)
	kept := without(sound, 1, 8)
	left, err := align.Residuals(nil, kept, mustFit(t, kept...))
	if err != nil {
		t.Fatal(err)
	}
	if down := r.Down(); len(down) != 1 || down[0].Reading != 8 {
		t.Fatalf("down %+v", down)
	}
	for n, l := range left {
		near(t, fmt.Sprintf("residual %d", n), r.Weights[n].Residual, l.Value, 1e-3)
	}
}

// The words tell a reading that is left out from one that counts for a part.
func TestRobustWarningsSayWhatCounts(t *testing.T) {
	sets := filled(t, caseA, sensorPair(5*um, shared(24, 0, 360)...))
	for off, want := range map[units.Length]string{40: "is left out", 4: "of one"} {
		r := mustRobust(t, spoilt(sets, 0, 5, off*5*um)...)
		if len(r.Warnings) != 1 || !strings.HasSuffix(r.Warnings[0].Want, want) {
			t.Errorf("%v u off: %+v", float64(off), r.Warnings)
		}
	}
}

// A reading that is a little off counts for a part, by Hampel's parts: between 3.5
// and 8.5 its weight is 2.5/t (8.5 - t)/5, below that 2.5/t. The answer is that of
// readings with that weight.
func TestRobustPartWeights(t *testing.T) {
	sets := filled(t, caseA, sensorPair(5*um, shared(24, 0, 360)...))
	parts := 0
	for _, off := range []units.Length{2, 2.6, 3, 4, 4.5} {
		r := mustRobust(t, spoilt(sets, 0, 5, off*5*um)...)
		at := math.Abs(r.Weights[5].Off)
		want := 1.0
		if at > 2.5 {
			want = 2.5 / at
			parts++
		}
		if at > 3.5 {
			want *= (8.5 - at) / 5
		}
		near(t, fmt.Sprintf("weight at %v u", float64(off)), r.Weights[5].Weight, want, 2e-6)
		own := spoilt(sets, 0, 5, off*5*um)
		own[0].Readings[5].U = 5 * um / units.Length(math.Sqrt(r.Weights[5].Weight))
		fit := mustFit(t, own...)
		nearLine(t, "answer", r.Value, fit.Value, 1e-3)
		nearCov(t, "answer", r.Cov, fit.Cov, 1e-9)
	}
	if parts < 2 {
		t.Errorf("only %d readings counted for a part", parts)
	}
}

// The same without a stated uncertainty: the basis is the scatter, which counts a
// part of a reading as a part of a degree of freedom, and what is stated beside it
// comes on top.
func TestRobustPartWeightsUnstated(t *testing.T) {
	sets := wiggled(filled(t, caseA, sensorPair(0, shared(12, 0, 360)...)))
	sets = spoilt(sets, 0, 5, 30*um)
	sets[0].U.Station = 3 * mm
	r := mustRobust(t, sets...)
	sum, squares := 0.0, 0.0
	for _, w := range r.Weights {
		sum += w.Weight
		squares += w.Weight * float64(w.Residual) * float64(w.Residual)
	}
	if down := r.Down(); len(down) == 0 || down[0].Weight < 0.01 {
		t.Fatalf("down %+v: this wants one that counts for a part", down)
	}
	freedom := sum - 6
	scatter := units.Length(math.Sqrt(squares / freedom))
	near(t, "scatter", r.Scatter, scatter, 1e-6*scatter)
	near(t, "degrees of freedom", r.Cov.DoF, freedom, 1e-9)
	own := ownReadings(sets)
	for _, w := range r.Weights {
		own[w.Set].Readings[w.Reading].U = scatter / units.Length(math.Sqrt(w.Weight))
	}
	want := mustFit(t, own...)
	nearLine(t, "answer", r.Value, want.Value, 1e-3)
	if r.Cov.Basis != align.Scatter {
		t.Errorf("basis %v", r.Cov.Basis)
	}
	for _, x := range []units.Length{0, 120 * mm, 900 * mm} {
		got, w := r.Cov.At(x), want.Cov.At(x)
		near(t, "u", got.Vertical, w.Vertical, 1e-6*w.Vertical)
		near(t, "u", got.Horizontal, w.Horizontal, 1e-6*w.Horizontal)
	}
	if dof := r.Cov.EffectiveDoF([4]float64{1, 0, 0, 0}); !(dof > freedom) {
		t.Errorf("effective degrees of freedom %v: the stated station counts as known", dof)
	}
}

// Where nothing can be told, all weights are 1 and that is said.
func TestRobustCannotTell(t *testing.T) {
	three := []units.Clock{0, 50, 110}
	quarters := []units.Clock{0, 90, 180, 270}
	both := []string{"/sets/0/readings", "/sets/1/readings"}
	rows := []struct {
		name   string
		stated units.Length
		clocks []units.Clock
		want   []string
	}{
		{"three readings each, stated", 5 * um, three, both},
		{"three readings each", 0, three, []string{"/sets"}},
		{"four each tell that something is wrong, not what", 5 * um, quarters, both},
		{"four each, not stated", 0, quarters, []string{"/sets"}},
		{"three positions, one of them twice", 5 * um, []units.Clock{0, 90, 90, 180}, both},
	}
	for _, row := range rows {
		sets := spoilt(filled(t, caseA, sensorPair(row.stated, row.clocks...)), 0, 1, 400*um)
		r := mustRobust(t, sets...)
		if want := mustFit(t, sets...); r.Value != want.Value || r.Cov != want.Cov {
			t.Errorf("%s: not the plain fit", row.name)
		}
		for _, w := range r.Weights {
			if w.Weight != 1 || w.Judged {
				t.Errorf("%s: %+v", row.name, w)
			}
		}
		checkWarned(t, row.name, r.Warnings, row.want...)
	}
}

// With three readings left over their scatter is not asked, with four it is.
func TestRobustOfFewLeftOver(t *testing.T) {
	sets := wiggled(filled(t, caseA, sensorPair(0, 0, 60, 120, 180, 250, 310)))
	sets = spoilt(sets, 0, 2, 900*um)
	sets[1].Readings = sets[1].Readings[:4]
	if r := mustRobust(t, sets...); r.DegreesOfFreedom != 3 || r.Scale == 0 || len(r.Down()) != 1 {
		t.Errorf("four left over: %+v", r)
	}
	sets[0].Readings = sets[0].Readings[:5]
	r := mustRobust(t, sets...)
	if r.DegreesOfFreedom != 3 || r.Scale != 0 || r.Down() != nil {
		t.Errorf("three left over: %+v", r)
	}
	checkWarned(t, "three left over", r.Warnings, "/sets")
}

// Where no reading agrees with another, the answer is Fit's, and said to be none.
func TestRobustOfContradictions(t *testing.T) {
	sets := filled(t, caseA, sensorPair(um/10, nine(180)...))
	for i := range sets {
		for j := range sets[i].Readings {
			sets[i].Readings[j].Value += wiggle[(7*i+3*j)%len(wiggle)] * 100 * um
		}
	}
	r := mustRobust(t, sets...)
	if want := mustFit(t, sets...); r.Value != want.Value || r.Down() != nil || r.Settled {
		t.Errorf("%+v", r)
	}
	checkWarned(t, "contradictions", r.Warnings, "/sets")
}

// However far off, a reading that is left out pulls at nothing.
func TestRobustOfHugeErrors(t *testing.T) {
	for _, row := range []struct{ stated, by units.Length }{
		{um / 100, 5 * mm}, {um / 100, -25 * mm}, {0, 25 * mm}, {0, mm},
	} {
		sets := filled(t, caseA, sensorPair(row.stated, nine(120)...))
		r := mustRobust(t, spoilt(sets, 0, 8, row.by)...)
		if down := r.Down(); len(down) != 1 || down[0].Reading != 8 {
			t.Errorf("%+v: down %+v", row, down)
		}
	}
}

// Five readings at five positions are enough to find one.
func TestRobustOfFive(t *testing.T) {
	sets := filled(t, caseA, sensorPair(5*um, 0, 72, 144, 216, 288))
	for j := range 5 {
		r := mustRobust(t, spoilt(sets, 0, j, 400*um)...)
		if down := r.Down(); len(down) != 1 || down[0].Reading != j {
			t.Errorf("reading %d: down %+v", j, down)
		}
		nearLine(t, "answer", r.Value, caseA, 1e-3)
	}
}

// Three readings are judged where other sets know the centreline.
func TestRobustOfThreeBesideMore(t *testing.T) {
	sets := sensorPair(5*um, nine(180)...)
	sets = append(sets, sensorPair(5*um, 0, 90, 180)...)
	sets[3].Probe.Station = 40 * mm
	sets = filled(t, caseA, sets)
	r := mustRobust(t, spoilt(sets, 3, 1, -250*um)...)
	if down := r.Down(); len(down) != 1 || down[0].Set != 3 || down[0].Reading != 1 {
		t.Errorf("down %+v", down)
	}
}

// Two readings in a set that contradict the rest: one alone only sets the zero, so
// neither counts, and both are reported.
func TestRobustLoneReading(t *testing.T) {
	sets := filled(t, caseA, sensorPair(5*um, nine(360)...))
	extra := filled(t, caseA, sensorPair(5*um, 0, 180))[:1]
	r := mustRobust(t, spoilt(append(sets, extra...), 2, 0, 900*um)...)
	if r.DegreesOfFreedom != 12 {
		t.Errorf("degrees of freedom %d", r.DegreesOfFreedom)
	}
	nearLine(t, "answer", r.Value, caseA, 1e-3)
	for _, w := range r.Weights[18:] {
		if w.Weight != 0 {
			t.Errorf("%+v", w)
		}
	}
}

// The same readings in another order, in other units of everything, about another
// hour, or with the dial's zero elsewhere, get the same weights.
func TestRobustProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stated := rapid.SampledFrom([]units.Length{0, 5 * um}).Draw(t, "stated")
		width := rapid.SampledFrom([]units.Clock{120, 200, 360}).Draw(t, "width")
		sets := filled(t, drawLine(t), sensorPair(stated, nine(width)...))
		for i := range sets {
			for j := range sets[i].Readings {
				sets[i].Readings[j].Value += units.Length(rapid.Float64Range(-8, 8).Draw(t, "error")) * um
			}
		}
		set, reading := rapid.IntRange(0, 1).Draw(t, "set"), rapid.IntRange(0, 8).Draw(t, "reading")
		sets = spoilt(sets, set, reading, units.Length(rapid.Float64Range(-300, 300).Draw(t, "by"))*um)
		r := mustRobust(t, sets...)
		turn := units.Clock(rapid.IntRange(-360, 360).Draw(t, "turn"))
		zero := units.Length(rapid.IntRange(-900, 900).Draw(t, "zero")) * um
		// Whatever changes nothing but the words.
		other := map[string][]align.Set{"order": ownReadings(sets), "scale": ownReadings(sets), "clock": ownReadings(sets), "zero": ownReadings(sets)}
		for i := range sets {
			slices.Reverse(other["order"][i].Readings)
			other["scale"][i].U.Reading *= 8
			for j := range sets[i].Readings {
				other["scale"][i].Readings[j].Value *= 8
				other["clock"][i].Readings[j].At += turn
				other["zero"][i].Readings[j].Value += zero
			}
		}
		for name, changed := range other {
			got := mustRobust(t, changed...)
			weights := r.Weights
			if !r.Settled || !got.Settled {
				weights = nil // they end after a hundred rounds, and not all at the same place
			}
			for n, w := range weights {
				m := n
				if name == "order" {
					m = n/9*9 + 8 - n%9
				}
				near(t, name+": weight", got.Weights[m].Weight, w.Weight, 2e-5)
			}
			for x, scale := range map[units.Length]float64{0: 1, 900 * mm: 1} {
				if name == "scale" {
					scale = 8
				}
				near(t, name+": size", got.Value.At(x).Size(), units.Length(scale)*r.Value.At(x).Size(), 20)
			}
		}
	})
}

// The angles' uncertainty is a reason to be off as good as the readings'.
func TestRobustKnowsOfAngles(t *testing.T) {
	steep := line(2, 0, 0, 0) // horizontal: the reading changes fastest at 12
	sets := filled(t, steep, sensorPair(2*um, nine(360)...))
	sets = spoilt(sets, 0, 0, 60*um) // near 12 o'clock
	if down := mustRobust(t, sets...).Down(); len(down) != 1 {
		t.Errorf("angles exact: down %+v", down)
	}
	for i := range sets {
		sets[i].U.Angle = 1.5 * units.Degree
	}
	if down := mustRobust(t, sets...).Down(); down != nil {
		t.Errorf("angles good to 1.5 degrees: down %+v", down)
	}
}
