package sheet

import (
	"math"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/shims"
	"example.org/collinear/units"
)

// No seed is given up, by far: the attempts that 18 000 exercises took.
func TestExerciseAttempts(t *testing.T) {
	seeds := uint64(3000)
	if testing.Short() {
		seeds = 50
	}
	most, sum, n := 0, 0, 0
	for _, d := range []Difficulty{OneStep, OneMethod, WholeJob} {
		for _, s := range []System{Metric, Inch} {
			for seed := range seeds {
				_, attempts, err := newExercise(seed, d, s, mostAttempts)
				if err != nil {
					t.Fatalf("seed %d, %v, %v: %v", seed, d, s, err)
				}
				most, sum, n = max(most, attempts), sum+attempts, n+1
			}
		}
	}
	t.Logf("%d exercises took %.1f attempts, %d at most", n, float64(sum)/float64(n), most)
	if most > mostAttempts/10 {
		t.Errorf("an exercise took %d attempts, more than a tenth of what is allowed", most)
	}
}

// A seed that is given up is said to be, with nothing that could be taken for an
// exercise; one more attempt makes it.
func TestExerciseGivenUp(t *testing.T) {
	const seed = 1
	whole, attempts, err := newExercise(seed, WholeJob, Metric, mostAttempts)
	if err != nil || attempts < 2 {
		t.Fatalf("%d attempts, %v: this wants a seed that takes two", attempts, err)
	}
	e, _, err := newExercise(seed, WholeJob, Metric, attempts-1)
	faults := units.Faults(err)
	if len(faults) != 1 || faults[0].Code != units.Unreachable || faults[0].Path != "/seed" || e.Seed != 0 || e.Story != "" {
		t.Errorf("%+v, %v", e, err)
	}
	if e, _, err := newExercise(seed, WholeJob, Metric, attempts); err != nil || e.Story != whole.Story {
		t.Errorf("%+v, %v", e, err)
	}
}

// Of no problem nothing is wanted.
func TestTaskOfNoProblem(t *testing.T) {
	if got := (Problem{}).task(); got != "" {
		t.Error(got)
	}
}

// A number may be so long that one of its last place, which has a nought before the
// point, is too long to be read. That is a fault of the answer.
func TestAnswerAsLongAsCanBe(t *testing.T) {
	const longest = 64
	answer := func(noughts int) string { return "." + strings.Repeat("0", noughts) + "5 mm" }
	short, long := answer(longest-6), answer(longest-5)
	if _, err := reading.read(short, align.FromMovable); err != nil || len(long) != longest {
		t.Errorf("%d characters: %v", len(short), err)
	}
	if _, err := units.ParseLength(long); err != nil {
		t.Fatalf("%d characters: %v", len(long), err)
	}
	got, err := reading.read(long, align.FromMovable)
	if len(units.Faults(err)) != 1 || got != (written{}) {
		t.Errorf("%d characters: %+v, %v", len(long), got, err)
	}
}

// What stands in the way of an exercise is seen, each by itself; beside it a twin that is
// fit.
func TestTeaches(t *testing.T) {
	mil := func(x float64) units.Length { return units.Length(x) * units.Mil }
	reverse := func(r []align.Reading, x, foot units.Length) Problem {
		return Problem{Job: &Job{
			Reverse: &dial.Reverse{
				CarriedByStationary: dial.Rim{Station: 4 * units.Inch, Sag: mil(2), Readings: r},
				CarriedByMovable:    dial.Rim{Station: x, Sag: mil(2), Readings: dial.Quarters(units.Mil, 0, 9, 20, 11)},
			},
			Feet: []align.Foot{{Name: "inboard", X: 20 * units.Inch}, {Name: "outboard", X: foot}},
		}}
	}
	good := dial.Quarters(units.Mil, 0, -6, -16, -10)
	flat := dial.Quarters(units.Mil, 0, 0, 0, 0)
	stacks := func(wanted float64) Problem {
		return Problem{ShimStacks: &ShimStacks{
			Stock:  shims.Stock{{Marked: mil(4), Count: 4}},
			Rule:   shims.Rule{Error: units.Nanometre},
			Orders: []shims.Order{{Foot: "a", Correction: mil(wanted)}},
		}}
	}
	for _, row := range []struct {
		name    string
		problem Problem
		fault   string
	}{
		{"fit", reverse(good, -6*units.Inch, 40*units.Inch), ""},
		{"a slope that a hand rounds, over a long way", reverse(good, -3*units.Inch, 1000*units.Inch), "settled"},
		{"a last line on the edge between two", Problem{Sag: &Sag{At12: 0, At6: mil(-8.01)}}, "settled"},
		{"its twin", Problem{Sag: &Sag{At12: 0, At6: mil(-8.02)}}, ""},
		{"a sag of just twenty places", Problem{Sag: &Sag{At12: mil(0), At6: mil(-0.4)}}, ""},
		{"hardly any sag", Problem{Sag: &Sag{At12: mil(0), At6: mil(-0.2)}}, "amounts"},
		{"a sag that shows no slip", Problem{Sag: &Sag{At12: mil(0.02), At6: mil(0)}}, "amounts"},
		{"no size sideways", Problem{FlexTilts: &FlexTilts{Span: units.Metre, Centreline: align.Centreline{
			Vertical: align.Line{Offset: units.Millimetre, Slope: 1e-3}}}}, ""},
		{"no opening sideways", Problem{SlopeFromGap: &SlopeFromGap{Opening: mil(8), At: units.Twelve, Diameter: 8 * units.Inch}}, "slips"},
		{"its twin", Problem{SlopeFromGap: &SlopeFromGap{Opening: mil(8), At: 30, Diameter: 8 * units.Inch}}, ""},
		{"nothing sideways on a sweep", Problem{Sweep: &Sweep{Carrier: align.Stationary, Rim: dial.Rim{Station: units.Inch, Readings: dial.Quarters(units.Mil, 0, -8, -16, -8)}}}, "slips"},
		{"its twin", Problem{Sweep: &Sweep{Carrier: align.Stationary, Rim: dial.Rim{Station: units.Inch, Readings: dial.Quarters(units.Mil, 0, -6, -16, -10)}}}, ""},
		{"a pack that the box cannot make", stacks(7), "settled"},
		{"its twin", stacks(8), ""},
		{"nothing at all", Problem{Sweep: &Sweep{Carrier: align.Stationary, Rim: dial.Rim{Station: units.Inch, Readings: flat}}}, "amounts"},
	} {
		t.Run(row.name, func(t *testing.T) {
			w, err := row.problem.Working()
			if err != nil {
				t.Fatal(err)
			}
			fault := ""
			switch {
			case !w.settled(Inch):
				fault = "settled"
			case !w.amounts(Inch):
				fault = "amounts"
			case !w.steady(Inch):
				fault = "steady"
			case !w.showsSlips(Inch):
				fault = "slips"
			}
			if fault != row.fault || w.teaches(Inch) != (row.fault == "") {
				t.Errorf("got %q, want %q", fault, row.fault)
			}
		})
	}
}

// A slip shows where it changes a line by three places or more, either way, and not to
// what is no number or none that can be written.
func TestShows(t *testing.T) {
	w := Working{lines: []line{{kind: raise, exact: 50_000}, {kind: raise}}}
	for _, row := range []struct {
		first, second float64
		want          bool
	}{
		{50_000, 0, false}, {20_000, 0, true}, {20_001, 0, false}, {80_000, 0, true}, {79_999, 0, false}, {50_000, 30_000, true},
		{math.Inf(1), 0, false}, {math.NaN(), 0, false},
	} {
		if got := w.shows(values{row.first, row.second}, Metric); got != row.want {
			t.Errorf("%v and %v: got %v", row.first, row.second, got)
		}
	}
}

// A move is steady where its position may be cut off and it still comes out the same.
func TestSteady(t *testing.T) {
	at := func(position float64) Working { // of one foot, in mil, by its line and the move below
		var p page
		from := p.add(line{id: "at", kind: height, rule: func(values) float64 { return position * float64(units.Mil) }})
		p.add(line{id: "move", kind: raise, inputs: []input{p.above("w", from)}, rule: func(v values) float64 { return 0 - v[0] }})
		return Working{lines: p.lines}
	}
	for position, want := range map[float64]bool{4.20: true, 4.23: true, 4.24: false, 4.25: false, 4.26: false, 4.27: true, -4.24: false, -4.23: true} {
		if got := at(position).steady(Inch); got != want {
			t.Errorf("%v mil: got %v", position, got)
		}
	}
}

// The last places, as the digits say that are shown.
func TestPlaces(t *testing.T) {
	for _, row := range []struct {
		kind         kind
		metric, inch float64
	}{
		{reading, 1_000, 254}, {height, 1_000, 254}, {aside, 1_000, 254}, {thickness, 1_000, 254},
		{raise, 10_000, 2_540}, {push, 10_000, 2_540},
		{climb, 1e-6, 1e-6}, {swing, 1e-6, 1e-6},
		{warming, 0.1, 0.1 / 1.8},
		{station, 0, 0}, {clock, 0, 0},
	} {
		for s, want := range map[System]float64{Metric: row.metric, Inch: row.inch} {
			if got := float64(row.kind.place(s)); math.Abs(got-want) > 1e-12*want {
				t.Errorf("kind %d, %v: got %v, want %v", row.kind, s, got, want)
			}
		}
	}
}

func TestRoundedOrNot(t *testing.T) {
	for _, row := range []struct {
		name string
		span span
		want span
	}{
		{"on the place", exactlyAt(30), exactlyAt(30)},
		{"below it", exactlyAt(28), span{28, 28, 30}},
		{"above it", exactlyAt(32), span{32, 30, 32}},
		{"on the edge it goes either way", exactlyAt(35), span{35, 30, 40}},
		{"on the edge below zero", exactlyAt(-35), span{-35, -40, -30}},
		{"within one place", span{31, 29, 33}, span{31, 29, 33}},
		{"over an edge", span{34, 33, 36}, span{34, 30, 40}},
	} {
		if got := place(10).roundedOrNot(row.span); got != row.want {
			t.Errorf("%s: got %v, want %v", row.name, got, row.want)
		}
	}
	for s, want := range map[span]bool{
		exactlyAt(30): true, exactlyAt(34.5): true, exactlyAt(34.8): false, exactlyAt(35.2): false, exactlyAt(35.5): true,
		{34, 26, 34}: true, {34, 25, 34}: false, {0, -4, 4}: true,
	} {
		if got := place(10).alike(s); got != want {
			t.Errorf("%v: got %v", s, got)
		}
	}
}

// Runs make slopes, and slopes make heights, with no more digits than are shown.
func TestRunsAndSlopesAreShortNumbers(t *testing.T) {
	for _, s := range []System{Metric, Inch} {
		d := newDraw(5, OneStep, s)
		for range 2000 {
			run := d.run(d.division/2, 80*mm, 320*mm)
			if slope := float64(d.division) / 2 / float64(run) / shownSlope; math.Abs(slope-math.Round(slope)) > 1e-9*slope {
				t.Fatalf("%v: a slope of %v over %v", s, slope, run)
			}
			over := d.distance(60*mm, 400*mm)
			slope := d.slope(over)
			if size := math.Abs(float64(slope)); size < 0.19e-3 || size > 1.51e-3 {
				t.Fatalf("%v: a slope of %v", s, slope)
			}
			if rise := float64(slope.Over(over)) / float64(d.place); math.Abs(rise-math.Round(rise)) > 1e-6 {
				t.Fatalf("%v: %v over %v rises %v places", s, slope, over, rise)
			}
			if offset := math.Abs(float64(d.offset() / mm)); offset < 0.05 || offset > 0.8 {
				t.Fatalf("%v: an offset of %v", s, offset)
			}
		}
	}
}

// A leg grows by whole places at every step of its rise, and the supports stand so far
// apart that their slope is a short number, whichever metal and height are drawn; the
// rises are never alike.
func TestLegsGrowByShortNumbers(t *testing.T) {
	for _, s := range []System{Metric, Inch} {
		d := newDraw(6, WholeJob, s)
		for range 2000 {
			supports := d.supports(+1, 300*mm, d.cold())
			var grown [2]units.Length
			for i, support := range supports {
				v, _, err := support.Growth()
				if err != nil {
					t.Fatal(err)
				}
				if places := float64(v.Vertical / d.place); math.Abs(places-math.Round(places)) > 1e-6 || places < 1 {
					t.Fatalf("%v: a growth of %v", s, v.Vertical)
				}
				grown[i] = v.Vertical
			}
			slope := float64((grown[1] - grown[0]).Per(supports[1].X-supports[0].X)) / shownSlope
			if math.Abs(slope-math.Round(slope)) > 1e-5 || slope == 0 {
				t.Fatalf("%v: a slope of %v", s, slope)
			}
		}
	}
}

func TestEighths(t *testing.T) {
	for x, want := range map[float64]string{0.125: "1/8 in", 5: "5 in", 5.25: "5 1/4 in", 12.875: "12 7/8 in", 0.5: "1/2 in"} {
		if got, ok := eighths(units.Length(x) * units.Inch); got != want || !ok {
			t.Errorf("%v: got %q", x, got)
		}
	}
	for _, x := range []units.Length{0, -units.Inch, units.Inch / 16, units.Millimetre} {
		if got, ok := eighths(x); ok {
			t.Errorf("%v: got %q", x, got)
		}
	}
}

// Every problem can be told, and has a task.
func TestEveryProblemIsTold(t *testing.T) {
	for _, f := range (Problem{}).fields() {
		if _, ok := f.worked.(told); !ok || tasks[f.name] == "" {
			t.Errorf("%s is not told", f.name)
		}
	}
	if len(tasks) != len((Problem{}).fields())+1 {
		t.Errorf("%d tasks", len(tasks))
	}
}

func TestUpper(t *testing.T) {
	for s, want := range map[string]string{"axle end": "Axle end", "zinc end": "Zinc end", "Inboard": "Inboard", "1": "1", "{a}": "{a}", "`a`": "`a`", "": "", "öl": "öl"} {
		if got := upper(s); got != want {
			t.Errorf("%q became %q, want %q", s, got, want)
		}
	}
}

func BenchmarkNewExercise(b *testing.B) {
	seed := uint64(0)
	for b.Loop() {
		seed++
		_, _ = NewExercise(seed, WholeJob, Inch)
	}
}

// Stations are told with their side, in either system.
func TestHandoutTellsSides(t *testing.T) {
	for _, row := range []struct {
		system System
		x      units.Length
		want   string
	}{
		{Metric, -45 * mm, "45 mm from the coupling centre on the stationary side"},
		{Metric, 45 * mm, "45 mm from the coupling centre on the movable side"},
		{Inch, -units.Inch / 4, "1/4 in from the coupling centre on the stationary side"},
	} {
		if got := (&handout{system: row.system}).from(row.x); got != row.want {
			t.Errorf("got %q, want %q", got, row.want)
		}
	}
	h := handout{view: align.FromMovable}
	for _, row := range []struct{ got, want string }{
		{h.aside(-200 * mm), "200 mm from below the shaft to the 9 o'clock side"},
		{h.aside(200 * mm), "200 mm from below the shaft to the 3 o'clock side"},
		{h.faceSag(-50 * units.Micrometre), ", bracket sag lets the plunger out by 0.05 mm at 12 o'clock"},
		{h.faceSag(50 * units.Micrometre), ", bracket sag pushes the plunger in by 0.05 mm at 12 o'clock"},
		{h.change(50 * units.Micrometre), "+0.05 mm"},
		{h.change(-50 * units.Micrometre), "-0.05 mm"},
		{h.change(0), "0.00 mm"},
	} {
		if row.got != row.want {
			t.Errorf("got %q, want %q", row.got, row.want)
		}
	}
	h.stands(align.FromStationary)
	h.lies(align.Centreline{Horizontal: align.Line{Offset: mm, Slope: 1e-3}})
	if want := "- Horizontal: 1.000 mm towards 9 o'clock at the coupling centre"; h.lines[2] != want {
		t.Errorf("got %q, want %q", h.lines[2], want)
	}
}
