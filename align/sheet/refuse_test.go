package sheet_test

import (
	"math"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/flange"
	"example.org/collinear/align/sheet"
	"example.org/collinear/shims"
	"example.org/collinear/softfoot"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

var nan = math.NaN()

// changed returns a copy of something sound with one thing wrong.
func changed[V any](sound V, wrong func(*V)) V {
	wrong(&sound)
	return sound
}

func soundReverse() *dial.Reverse { r := *blochGeitner().Reverse; return &r }

// soundJob is a whole job, of which every part may be changed.
func soundJob() sheet.Job {
	j := blochGeitner()
	j.Movable = []thermal.Support{soundSupport("near", 20), soundSupport("far", 45)}
	return j
}

func soundSupport(name string, x units.Length) thermal.Support {
	steel, _ := thermal.FindMaterial("steel")
	return thermal.Support{Name: name, X: x * units.Inch, Pieces: []thermal.Piece{{
		Height: 17 * units.Inch, Material: steel, Rise: 20 * units.Kelvin,
	}}}
}

func soundSweep() sheet.Sweep {
	return sheet.Sweep{Carrier: align.Stationary, Rim: dial.Rim{Sag: units.Mil, Readings: dial.Quarters(units.Mil, 0, 5, 10, 5)}}
}

func soundTargetReadings() sheet.TargetReadings {
	return sheet.TargetReadings{Probe: align.Probe{Kind: align.Rim, Carrier: align.Stationary}}
}

func soundFlange() sheet.FlangeShims {
	return sheet.FlangeShims{Flange: flange.Flange{Push: flange.AwayFromStationary, Bolts: []flange.Bolt{
		{Name: "a", Radius: units.Metre}, {Name: "b", Radius: units.Metre, At: 120}, {Name: "c", Radius: units.Metre, At: 240},
	}}}
}

func soundStacks() sheet.ShimStacks {
	return sheet.ShimStacks{Stock: shims.CommonMetric(2), Orders: []shims.Order{{Foot: "A", Correction: units.Millimetre}}}
}

func soundSliding() sheet.SlidingLimit {
	return sheet.SlidingLimit{Sliding: 12, Speed: 1480, Coupling: align.Coupling{Diameter: 200 * units.Millimetre}}
}

// refusals are things that are wrong with a calculation, and a twin that is nearly the
// same and sound.
var refusals = []struct {
	name string
	bad  worked
	want []string
	twin worked
}{
	{"no method", sheet.Job{}, []string{"missing /reverse"}, sheet.Job{Reverse: soundReverse()}},
	{"two methods", changed(soundJob(), func(j *sheet.Job) { j.RimFace = mcMillan(align.Stationary, false).RimFace }),
		[]string{"conflict /reverse"}, soundJob()},
	{"a method that is not sound", changed(soundJob(), func(j *sheet.Job) { j.Reverse = soundReverse(); j.Reverse.CarriedByMovable.Sag = -1 }),
		[]string{"out_of_range /reverse/carried_by_movable/sag"}, changed(soundJob(), func(j *sheet.Job) { j.Reverse = soundReverse(); j.Reverse.CarriedByMovable.Sag = 1 })},
	{"an hour between the quarters", changed(soundJob(), func(j *sheet.Job) {
		j.Reverse = soundReverse()
		j.Reverse.CarriedByMovable.Readings = slices.Clone(j.Reverse.CarriedByMovable.Readings)
		j.Reverse.CarriedByMovable.Readings[1].At = units.Three - units.Minute
	}), []string{"out_of_range /reverse/carried_by_movable/readings/1/at"}, soundJob()},
	{"a view that does not exist", changed(soundJob(), func(j *sheet.Job) { j.Reverse = soundReverse(); j.Reverse.View = 2 }),
		[]string{"out_of_range /reverse/view"}, changed(soundJob(), func(j *sheet.Job) { j.Reverse = soundReverse(); j.Reverse.View = 1 })},
	{"a foot without a name", changed(soundJob(), func(j *sheet.Job) { j.Feet = []align.Foot{{X: 1}} }),
		[]string{"missing /feet/0/name"}, changed(soundJob(), func(j *sheet.Job) { j.Feet = []align.Foot{{Name: "1", X: 1}} })},
	{"a foot with blanks for a name", changed(soundJob(), func(j *sheet.Job) { j.Feet = []align.Foot{{Name: " \t"}} }),
		[]string{"missing /feet/0/name"}, changed(soundJob(), func(j *sheet.Job) { j.Feet = nil })},
	{"two feet of one name", changed(soundJob(), func(j *sheet.Job) { j.Feet = []align.Foot{{Name: "a"}, {Name: "a", X: 1}} }),
		[]string{"duplicate /feet/1/name"}, changed(soundJob(), func(j *sheet.Job) { j.Feet = []align.Foot{{Name: "a"}, {Name: "A", X: 1}} })},
	{"a foot nowhere", changed(soundJob(), func(j *sheet.Job) { j.Feet = []align.Foot{{Name: "a", X: units.Length(nan)}} }),
		[]string{"not_finite /feet/0/x"}, changed(soundJob(), func(j *sheet.Job) { j.Feet = []align.Foot{{Name: "a"}} })},
	{"one support", changed(soundJob(), func(j *sheet.Job) { j.Movable = j.Movable[:1] }), []string{"missing /movable"}, soundJob()},
	{"a list without a support", changed(soundJob(), func(j *sheet.Job) { j.Stationary = []thermal.Support{} }),
		[]string{"missing /stationary"}, changed(soundJob(), func(j *sheet.Job) { j.Stationary = nil })},
	{"three supports", changed(soundJob(), func(j *sheet.Job) {
		j.Movable = []thermal.Support{soundSupport("a", 1), soundSupport("b", 2), soundSupport("c", 3)}
	}), []string{"out_of_range /movable"}, soundJob()},
	{"a support without a name", changed(soundJob(), func(j *sheet.Job) { j.Movable[0].Name = "" }), []string{"missing /movable/0/name"}, soundJob()},
	{"legs that differ", changed(soundJob(), func(j *sheet.Job) {
		j.Movable[1].Three, j.Movable[1].Nine, j.Movable[1].Track, j.Movable[1].Pieces = j.Movable[1].Pieces, j.Movable[1].Pieces, units.Metre, nil
	}), []string{"conflict /movable/1/three"}, soundJob()},
	{"a profile", changed(soundJob(), func(j *sheet.Job) {
		j.Movable[1].Pieces[0].Rise = 0
		j.Movable[1].Pieces[0].Profile = []thermal.Spot{{Running: units.Celsius(40)}, {Up: units.Inch, Running: units.Celsius(50)}}
	}), []string{"conflict /movable/1/pieces/0/profile"}, changed(soundJob(), func(j *sheet.Job) {
		j.Movable[1].Pieces[0].Rise = 0
		j.Movable[1].Pieces[0].Profile = []thermal.Spot{{Running: units.Celsius(40)}}
	})},
	{"a coefficient without its e-6", changed(soundJob(), func(j *sheet.Job) { j.Movable[0].Pieces[0].Material.Expansion = 11.3 }),
		[]string{"out_of_range /movable/0/pieces/0/material/expansion"}, soundJob()},
	{"supports whose lines have one name", changed(soundJob(), func(j *sheet.Job) {
		j.Movable[0].Name, j.Movable[1].Name = "a", "a.piece 1"
		j.Movable[0].Pieces = append(j.Movable[0].Pieces, j.Movable[0].Pieces...)
	}), []string{"duplicate ", "duplicate "}, changed(soundJob(), func(j *sheet.Job) {
		j.Movable[0].Name, j.Movable[1].Name = "a", "a, piece 1"
		j.Movable[0].Pieces = append(j.Movable[0].Pieces, j.Movable[0].Pieces...)
	})},
	{"all of it at once", changed(soundJob(), func(j *sheet.Job) {
		j.Reverse = soundReverse()
		j.Reverse.CarriedByStationary.Sag = -1
		j.Reverse.CarriedByMovable.Station = units.Length(math.Inf(1))
		j.Stationary = []thermal.Support{soundSupport("a", 1), soundSupport("b", 2), soundSupport("c", 3)}
		j.Movable[1].Pieces[0].Height = 0
		j.Feet = []align.Foot{{Name: "a", X: units.Length(nan)}, {}}
	}), []string{
		"missing /feet/1/name", "missing /movable/1/pieces/0/height", "not_finite /feet/0/x",
		"not_finite /reverse/carried_by_movable/station", "out_of_range /reverse/carried_by_stationary/sag", "out_of_range /stationary",
	}, soundJob()},
	{"what thermal finds beside what is not for hands", changed(soundJob(), func(j *sheet.Job) {
		j.Movable[0].Pieces[0].Height = 0
		j.Movable[1].Pieces[0].Rise = 0
		j.Movable[1].Pieces[0].Profile = []thermal.Spot{{Running: units.Celsius(40)}, {Up: units.Inch, Running: units.Celsius(50)}}
	}), []string{"conflict /movable/1/pieces/0/profile", "missing /movable/0/pieces/0/height"}, soundJob()},

	{"a sweep without readings", sheet.Sweep{Carrier: align.Stationary}, []string{"missing /rim/readings"}, soundSweep()},
	{"a sweep without a carrier", changed(soundSweep(), func(s *sheet.Sweep) { s.Carrier = 0 }), []string{"missing /carrier"}, soundSweep()},
	{"a sag that is no number", changed(soundSweep(), func(s *sheet.Sweep) { s.Rim.Sag = units.Length(nan) }), []string{"not_finite /rim/sag"}, soundSweep()},
	{"a sag below zero", changed(soundSweep(), func(s *sheet.Sweep) { s.Rim.Sag = -1 }), []string{"out_of_range /rim/sag"}, soundSweep()},
	{"a zero between the quarters", changed(soundSweep(), func(s *sheet.Sweep) { s.Zero = units.Hour }), []string{"out_of_range /zero"},
		changed(soundSweep(), func(s *sheet.Sweep) { s.Zero = -units.Three })},
	{"a zero that is nowhere", changed(soundSweep(), func(s *sheet.Sweep) { s.Zero = units.Clock(nan) }), []string{"out_of_range /zero"}, soundSweep()},
	{"a mandrel beside a sag", changed(soundSweep(), func(s *sheet.Sweep) { s.Mandrel = &sheet.Sag{At12: 0, At6: -2 * units.Mil} }),
		[]string{"conflict /mandrel"}, changed(soundSweep(), func(s *sheet.Sweep) { s.Rim.Sag, s.Mandrel = 0, &sheet.Sag{At12: 0, At6: -2 * units.Mil} })},
	{"a bracket that hangs up", changed(soundSweep(), func(s *sheet.Sweep) { s.Rim.Sag, s.Mandrel = 0, &sheet.Sag{At12: 0, At6: 1} }),
		[]string{"out_of_range /mandrel/at6"}, changed(soundSweep(), func(s *sheet.Sweep) { s.Rim.Sag, s.Mandrel = 0, &sheet.Sag{At12: 1, At6: 0} })},
	{"a bracket that hangs up by next to nothing", changed(soundSweep(), func(s *sheet.Sweep) { s.Rim.Sag, s.Mandrel = 0, &sheet.Sag{At12: -1, At6: 0} }),
		[]string{"out_of_range /mandrel/at6"}, changed(soundSweep(), func(s *sheet.Sweep) { s.Rim.Sag, s.Mandrel = 0, &sheet.Sag{At12: 0, At6: 0} })},
	{"a mandrel that reads no number, a zero between, and no readings", sheet.Sweep{
		Carrier: align.Stationary, Mandrel: &sheet.Sag{At12: 0, At6: units.Length(nan)}, Zero: units.Hour,
	}, []string{"missing /rim/readings", "not_finite /mandrel/at6", "out_of_range /zero"}, soundSweep()},

	{"a sag of no numbers", sheet.Sag{At12: units.Length(nan), At6: units.Length(math.Inf(-1))}, []string{"not_finite /at12", "not_finite /at6"}, sheet.Sag{}},
	{"a sag of 2000 km", sheet.Sag{At6: -2e15}, []string{"out_of_range /at6"}, sheet.Sag{At6: -1e15}},

	{"a gap without a diameter", sheet.GapFromSlope{}, []string{"missing /diameter"}, sheet.GapFromSlope{Diameter: units.Metre}},
	{"a gap of no number", sheet.GapFromSlope{Diameter: -1, Centreline: align.Centreline{Vertical: align.Line{Slope: units.Slope(nan)}}},
		[]string{"not_finite /centreline/vertical/slope", "out_of_range /diameter"}, sheet.GapFromSlope{Diameter: 1}},
	{"a slope without a diameter", sheet.SlopeFromGap{Opening: units.Length(nan), At: units.Clock(nan)},
		[]string{"missing /diameter", "not_finite /at", "not_finite /opening"}, sheet.SlopeFromGap{Diameter: 1}},
	{"tilts without a span", sheet.FlexTilts{Centreline: align.Centreline{Horizontal: align.Line{Offset: units.Length(nan)}}},
		[]string{"missing /span", "not_finite /centreline/horizontal/offset"}, sheet.FlexTilts{Span: 1}},

	{"a target of nothing", sheet.ColdTarget{}, []string{"missing /movable"}, sheet.ColdTarget{Movable: soundJob().Movable}},
	{"a target of feet without names", sheet.ColdTarget{Movable: soundJob().Movable, Feet: []align.Foot{{X: units.Length(nan)}}},
		[]string{"missing /feet/0/name", "not_finite /feet/0/x"}, sheet.ColdTarget{Movable: soundJob().Movable, Feet: []align.Foot{{Name: "a"}}}},
	{"a target of one support on either side", sheet.ColdTarget{Stationary: soundJob().Movable[:1], Movable: soundJob().Movable[1:]},
		[]string{"missing /movable", "missing /stationary"}, sheet.ColdTarget{Stationary: soundJob().Movable}},

	{"readings of no probe", sheet.TargetReadings{}, []string{"missing /probe/kind"}, soundTargetReadings()},
	{"readings in a bore", changed(soundTargetReadings(), func(r *sheet.TargetReadings) { r.Probe.Kind = align.Bore }),
		[]string{"out_of_range /probe/kind"}, soundTargetReadings()},
	{"readings of a displacement sensor", sheet.TargetReadings{Probe: align.Probe{Kind: align.Displacement, Gain: 1}},
		[]string{"out_of_range /probe/kind"}, soundTargetReadings()},
	{"readings without a radius, at a line that is none", sheet.TargetReadings{
		Probe: align.Probe{Kind: align.Gap}, Centreline: align.Centreline{Vertical: align.Line{Offset: units.Length(nan)}},
	}, []string{"missing /probe/radius", "not_finite /centreline/vertical/offset"}, sheet.TargetReadings{Probe: align.Probe{Kind: align.Gap, Radius: 1}}},
	{"a sag of a gap gauge", sheet.TargetReadings{Probe: align.Probe{Kind: align.Gap, Radius: 1}, Sag: 1},
		[]string{"conflict /sag"}, sheet.TargetReadings{Probe: align.Probe{Kind: align.NearFace, Carrier: align.Movable, Radius: 1}, Sag: 1}},

	{"no feet", sheet.SoftFoot{}, []string{"missing /feet", "missing /height"}, fourFeet(0, 0, 0, 0)},
	{"a lift of no number", fourFeet(0, 0, nan, 0), []string{"not_finite /feet/2/lift"}, fourFeet(0, 0, -1, 0)},
	{"a foot twice", changed(fourFeet(0, 0, 0, 0), func(s *sheet.SoftFoot) { s.Feet[1].Name = "A" }), []string{"duplicate /feet/1/name"}, fourFeet(0, 0, 0, 0)},
	{"a lift and gaps", changed(fourFeet(0, 0, 1, 0), func(s *sheet.SoftFoot) { s.Feet[2].Gaps = gapsOfThree() }), []string{"conflict /feet/2/lift"},
		changed(fourFeet(0, 0, 0, 0), func(s *sheet.SoftFoot) { s.Feet[2].Gaps = gapsOfThree() })},

	{"no speeds", sheet.SlidingLimit{}, []string{"missing /coupling/diameter", "missing /sliding", "missing /speed"}, soundSliding()},
	{"a span below zero", changed(soundSliding(), func(s *sheet.SlidingLimit) { s.Coupling.Span = -1 }), []string{"out_of_range /coupling/span"},
		changed(soundSliding(), func(s *sheet.SlidingLimit) { s.Coupling.Span = 1 })},

	{"no bolts", sheet.FlangeShims{}, []string{"missing /flange/bolts", "missing /flange/push"}, soundFlange()},
	{"a bolt on the axis, and an estimate of no number", changed(soundFlange(), func(f *sheet.FlangeShims) {
		f.Flange.Bolts[2].Radius, f.Off.Horizontal.Slope = 0, units.Slope(nan)
	}), []string{"missing /flange/bolts/2/radius", "not_finite /off/horizontal/slope"}, soundFlange()},

	{"no orders", sheet.ShimStacks{}, []string{"missing /orders"}, soundStacks()},
	{"a foot twice in the orders", changed(soundStacks(), func(s *sheet.ShimStacks) { s.Orders = append(s.Orders, s.Orders[0]) }),
		[]string{"duplicate /orders/1/foot"}, soundStacks()},
	{"shims of no thickness, a rule below zero", changed(soundStacks(), func(s *sheet.ShimStacks) {
		s.Stock, s.Rule.Error = shims.Stock{{Count: 1}}, -1
	}), []string{"missing /stock/0/marked", "out_of_range /rule/error"}, soundStacks()},

	{"no problem", sheet.Problem{}, []string{"missing "}, sheet.Problem{Sag: &sheet.Sag{}}},
	{"two problems, of which the first is not sound", sheet.Problem{
		Sag: &sheet.Sag{At6: units.Length(nan)}, FlexTilts: &sheet.FlexTilts{}, ShimStacks: &sheet.ShimStacks{},
	}, []string{"conflict /flex_tilts", "conflict /shim_stacks", "not_finite /sag/at6"}, sheet.Problem{Sag: &sheet.Sag{}}},
	{"a problem that is not sound", sheet.Problem{Job: &sheet.Job{Reverse: &dial.Reverse{}}}, []string{
		"conflict /job/reverse/carried_by_movable/station", "missing /job/reverse/carried_by_movable/readings", "missing /job/reverse/carried_by_stationary/readings",
	}, sheet.Problem{Job: &sheet.Job{Reverse: soundReverse()}}},
}

func gapsOfThree() []softfoot.Gap {
	return []softfoot.Gap{{X: 1e7, Y: 1e7}, {X: -1e7, Y: 1e7}, {X: -1e7, Y: -1e7}}
}

// What is wrong is refused, all of it at once, where it is, and with no working.
func TestRefusals(t *testing.T) {
	for _, row := range refusals {
		t.Run(row.name, func(t *testing.T) {
			w, err := row.bad.Working()
			if got := codesAt(err); !slices.Equal(got, row.want) {
				t.Errorf("got %q (%v), want %q", got, err, row.want)
			}
			if w.Title() != "" || len(w.Steps(sheet.Metric)) != 0 {
				t.Error("refused, with a working")
			}
			for _, f := range units.Faults(err) {
				if f.Want == "" || strings.Contains(f.Value, "0x") {
					t.Errorf("it tells little: %+v", f)
				}
			}
			if _, err := row.twin.Working(); err != nil {
				t.Errorf("the twin is refused: %v", err)
			}
		})
	}
}

// The short ways to a job refuse the same.
func TestMethodRefusals(t *testing.T) {
	feet := []align.Foot{{X: 1}}
	rows := []struct {
		field string
		work  func() (sheet.Working, error)
	}{
		{"/rim_face/rim/readings", func() (sheet.Working, error) { return sheet.RimFace(dial.RimFace{}, feet...) }},
		{"/reverse/carried_by_movable/readings", func() (sheet.Working, error) { return sheet.Reverse(dial.Reverse{}, feet...) }},
		{"/face_face/span", func() (sheet.Working, error) { return sheet.FaceFace(dial.FaceFace{}, feet...) }},
		{"/rim_gap/gap/diameter", func() (sheet.Working, error) { return sheet.RimGap(dial.RimGap{}, feet...) }},
		{"/straightedge_gap/straightedge/on", func() (sheet.Working, error) { return sheet.StraightedgeGap(dial.StraightedgeGap{}, feet...) }},
	}
	for _, row := range rows {
		_, err := row.work()
		for _, want := range []string{"missing " + row.field, "missing /feet/0/name"} {
			if !slices.Contains(codesAt(err), want) {
				t.Errorf("got %q, want %s among them", codesAt(err), want)
			}
		}
	}
}

// What is wrong with a problem is told under the name that it has in a file.
func TestProblemRefusals(t *testing.T) {
	for name, p := range problems() {
		field := reflect.ValueOf(&p).Elem()
		for i := range field.NumField() {
			if one := field.Field(i); !one.IsNil() {
				one.Set(reflect.New(one.Type().Elem()))
			}
		}
		if p.Sag != nil {
			p.Sag.At12 = units.Length(nan)
		}
		_, err := p.Working()
		for _, f := range units.Faults(err) {
			if !strings.HasPrefix(f.Path, "/"+name+"/") {
				t.Errorf("%s: %v", name, f)
			}
		}
		if err == nil {
			t.Errorf("%s without anything is not refused", name)
		}
	}
}

// A sheet that cannot be read is refused, whole, with every line that is at fault.
func TestSheetRefusals(t *testing.T) {
	w := work(t, blochGeitner())
	const line = "vertical.slope"
	rows := []struct {
		name        string
		bad         map[string]string
		want        []string
		twin        map[string]string
		drawn, also map[string]units.Length
	}{
		{"an empty sheet", nil, []string{"missing /answers"}, map[string]string{line: "0 mil/in"}, nil, nil},
		{"a line that is not there", map[string]string{"vertical.slop": "0 mil/in"}, []string{"unknown /answers/vertical.slop"}, map[string]string{line: "0 mil/in"}, nil, nil},
		{"a line whose name has a stroke", map[string]string{"a/b~": "0 mil"}, []string{"unknown /answers/a~1b~0"}, map[string]string{line: "0 mil/in"}, nil, nil},
		{"a unit of something else", map[string]string{line: "0 mil"}, []string{"unknown /answers/" + line}, map[string]string{line: "0 mil/in"}, nil, nil},
		{"three things at once", map[string]string{line: "", "x": "1 mil", "vertical.offset": "lower 3 mil"},
			[]string{"malformed /answers/vertical.offset", "missing /answers/" + line, "unknown /answers/x"},
			map[string]string{line: "0 mil/in", "vertical.offset": "3 mil low"}, nil, nil},

		{"a drawing of a line that is not on the sheet", map[string]string{"vertical.offset": "9.5 mil"}, []string{"unknown /drawn/" + line},
			map[string]string{"vertical.offset": "9.5 mil"}, map[string]units.Length{line: 1}, map[string]units.Length{"vertical.offset": 1}},
		{"a drawing of a slope", map[string]string{line: "0 mil/in"}, []string{"conflict /drawn/" + line}, map[string]string{line: "0 mil/in"}, map[string]units.Length{line: 1}, nil},
		{"a drawing that is off by less than nothing", map[string]string{"vertical.offset": "9.5 mil"}, []string{"out_of_range /drawn/vertical.offset"},
			map[string]string{"vertical.offset": "9.5 mil"}, map[string]units.Length{"vertical.offset": -1}, map[string]units.Length{"vertical.offset": 0}},
		{"a drawing that is off by no number", map[string]string{"vertical.offset": "9.5 mil"}, []string{"not_finite /drawn/vertical.offset"},
			map[string]string{"vertical.offset": "9.5 mil"}, map[string]units.Length{"vertical.offset": units.Length(nan)}, nil},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			m, err := w.CheckDrawn(row.bad, row.drawn)
			if got := codesAt(err); !slices.Equal(got, row.want) {
				t.Errorf("got %q (%v), want %q", got, err, row.want)
			}
			if m.Lines != nil || m.Explanations != nil || m.Ask != nil {
				t.Errorf("refused, with %+v", m)
			}
			if _, err := w.CheckDrawn(row.twin, row.also); err != nil {
				t.Errorf("the twin is refused: %v", err)
			}
		})
	}
}

// A working that no hand works is not marked: the search for slips would be long.
func TestLongWorkingsAreNotMarked(t *testing.T) {
	packs := func(feet int) sheet.Working {
		var orders []shims.Order
		for i := range feet {
			orders = append(orders, shims.Order{Foot: strconv.Itoa(i), Correction: units.Mil})
		}
		return work(t, sheet.ShimStacks{Stock: shims.CommonInch(100), Orders: orders})
	}
	answers := map[string]string{"foot.0.wanted": "1 mil"}
	_, err := packs(sheet.MostMarked/3 + 1).Check(answers)
	if got := codesAt(err); !slices.Equal(got, []string{"out_of_range "}) {
		t.Errorf("got %q", got)
	}
	if _, err := packs(sheet.MostMarked / 3).Check(answers); err != nil {
		t.Error(err)
	}
}

func TestValueRefusals(t *testing.T) {
	w := work(t, soundJob())
	rows := []struct {
		name string
		ask  func(id string) error
		bad  string
		want units.Code
		twin string
	}{
		{"a length of a line that is not there", valueError[units.Length](w), "vertical", units.Unknown, "vertical.offset"},
		{"a length of a slope", valueError[units.Length](w), "vertical.slope", units.Conflict, "horizontal.foot.inboard.correction"},
		{"a length of a rise", valueError[units.Length](w), "movable.near.rise", units.Conflict, "movable.near.growth"},
		{"a slope of a length", valueError[units.Slope](w), "vertical.offset", units.Conflict, "horizontal.slope"},
		{"a rise of a length", valueError[units.TemperatureDifference](w), "movable.near.growth", units.Conflict, "movable.near.rise"},
		{"a rise of nothing", valueError[units.TemperatureDifference](w), "", units.Unknown, "movable.far.rise"},
	}
	for _, row := range rows {
		if got := codesAt(row.ask(row.bad)); !slices.Equal(got, []string{string(row.want) + " /id"}) {
			t.Errorf("%s: got %q, want %s", row.name, got, row.want)
		}
		if err := row.ask(row.twin); err != nil {
			t.Errorf("%s: the twin is refused: %v", row.name, err)
		}
	}
}

func valueError[Q sheet.Answered](w sheet.Working) func(id string) error {
	return func(id string) error {
		_, err := sheet.Value[Q](w, id)
		return err
	}
}
