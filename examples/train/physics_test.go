package main

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/train"
	"example.org/collinear/thermal"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// A line lies a + b x above an axis that does not move; x is the place on the tape.
// Lengths are in millimetres. Nothing in this file is shared with what it judges.
type line struct{ a, b float64 }

func (l line) at(x float64) float64 { return l.a + float64(l.b*x) }
func (l line) plus(m line) line     { return line{l.a + m.a, l.b + m.b} }
func through(x1, y1, x2, y2 float64) line {
	b := (y2 - y1) / (x2 - x1)
	return line{y1 - float64(b*x1), b}
}

// body is a machine as it stands: towards 3, and up; its feet, and how much its
// supports, which stand there, warm.
type body struct {
	name       string
	across, up line
	feet       [2]float64
	height     float64
	rise       [2]float64
}

// scene is a train that is known to the last digit.
type scene struct {
	bodies    []body
	at        []float64 // of the couplings
	rims      [][2]float64
	backwards []bool
	sag       []float64
	reference int // -1: none
}

func draw(t *rapid.T) scene {
	within := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	n := rapid.IntRange(2, 4).Draw(t, "machines")
	s := scene{reference: rapid.IntRange(-1, n-1).Draw(t, "reference")}
	x := within("start", -500, 500)
	for i := range n {
		b := body{
			name:   fmt.Sprint("machine ", i),
			across: line{within("a", -1, 1), within("b", -5e-4, 5e-4)}, up: line{within("a", -1, 1), within("b", -5e-4, 5e-4)},
			height: within("height", 200, 900), rise: [2]float64{within("rise", -10, 60), within("rise", -10, 60)},
		}
		b.feet[0] = x + within("first foot", 200, 600)
		b.feet[1] = b.feet[0] + within("second foot", 400, 1500)
		x = b.feet[1] + within("coupling", 200, 600)
		s.bodies = append(s.bodies, b)
		if i == n-1 {
			break
		}
		s.at = append(s.at, x)
		s.rims = append(s.rims, [2]float64{x - within("rim", 20, 150), x + within("rim", 20, 150)})
		s.backwards = append(s.backwards, rapid.Bool().Draw(t, "backwards"))
		s.sag = append(s.sag, float64(rapid.IntRange(0, 200).Draw(t, "sag"))/1000)
	}
	return s
}

type object = map[string]any

func mm(x float64) string { return fmt.Sprintf("%v mm", x) }

// dial is what a crew takes down whose dial stands on the shaft at from and touches
// the one at to, both told by how far they lie up and to the crew's own right. A
// plunger is pushed in where the shaft it touches comes towards the dial: on top of
// it, where that shaft is high.
func reading(place, sag, up, right float64) object {
	clock := func(sin, cos float64) string { return mm(3 + float64(up*cos) + float64(right*sin) + float64(sag*cos)) }
	return object{"at": mm(place), "sag": mm(sag), "at_12": clock(0, 1), "at_3": clock(1, 0), "at_6": clock(0, -1), "at_9": clock(-1, 0)}
}

const expansion = 11.34e-6 // of the cast-iron frame, per K

func (b *body) growth() line {
	g := func(i int) float64 { return b.height * expansion * b.rise[i] }
	return through(b.feet[0], g(0), b.feet[1], g(1))
}

// document is the job that a crew would write.
func (s *scene) document(t rapid.TB) []byte {
	t.Helper()
	var machines, couplings []object
	for _, b := range s.bodies {
		var feet, growth []object
		for i, x := range b.feet {
			name := []string{"a", "b"}[i]
			feet = append(feet, object{"name": name, "at": mm(x)})
			growth = append(growth, object{"name": name, "at": mm(x), "height": mm(b.height), "material": "cast-iron frame", "rise": fmt.Sprintf("%v K", b.rise[i])})
		}
		machines = append(machines, object{"name": b.name, "height": mm(b.height), "feet": feet, "growth": growth})
	}
	for i, x := range s.at {
		earlier, later := &s.bodies[i], &s.bodies[i+1]
		seen, right := "last", 1.0
		if s.backwards[i] {
			seen, right = "first", -1
		}
		apart := func(x float64) (float64, float64) {
			return later.up.at(x) - earlier.up.at(x), right * (later.across.at(x) - earlier.across.at(x))
		}
		touched, touches := s.rims[i][1], s.rims[i][0]
		up, side := apart(touched)
		down, other := apart(touches)
		couplings = append(couplings, object{
			"name": fmt.Sprint("coupling ", i), "at": mm(x), "limits": object{"offset": "0.05 mm", "slope": "0.5 mm/m", "source": "test"},
			"found": object{"seen_from": seen, "carried_by_earlier": reading(touched, s.sag[i], up, side), "carried_by_later": reading(touches, s.sag[i], -down, -other)},
		})
	}
	doc := object{"format": "train job 1", "title": "x", "machines": machines, "couplings": couplings}
	if s.reference >= 0 {
		doc["reference"] = s.bodies[s.reference].name
	}
	data, err := json.Marshal(doc)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// move does a step: the foot goes, and the other foot of the machine stays.
func (s *scene) move(t rapid.TB, step train.Step) {
	t.Helper()
	for i := range s.bodies {
		b := &s.bodies[i]
		if b.name != step.Machine {
			continue
		}
		by := [2]float64{}
		by[map[string]int{"a": 0, "b": 1}[step.Foot]] = float64(step.By / units.Millimetre)
		moved := through(b.feet[0], by[0], b.feet[1], by[1])
		if step.Plane == tolerance.Vertical {
			b.up = b.up.plus(moved)
		} else {
			b.across = b.across.plus(moved)
		}
		return
	}
	t.Fatalf("no machine %q", step.Machine)
}

// However the machines stand and whoever measured them from whichever end, after
// the steps they run in one line when they are warm, and the one that was to stay
// has stayed.
func TestStepsBringTheTrainInLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t)
		r := mustSolve(t, s.document(t))
		if len(r.Plans) != 1 || r.Plans[0].Reach != train.OnTarget {
			t.Fatalf("%d plans, reach %v", len(r.Plans), r.Plans[0].Reach)
		}
		for _, step := range r.Plans[0].Steps {
			if s.reference >= 0 && step.Machine == s.bodies[s.reference].name {
				t.Errorf("%v moves the machine that stays", step)
			}
			s.move(t, step)
		}
		// Moves below LeastStep are no steps; a line through two feet that miss it leaves
		// some times as much farther out.
		const left = 10 * float64(train.LeastStep/units.Millimetre)
		for i, x := range s.at {
			earlier, later := &s.bodies[i], &s.bodies[i+1]
			for _, x := range []float64{x, earlier.feet[0], later.feet[1]} {
				up := later.up.plus(later.growth()).at(x) - earlier.up.plus(earlier.growth()).at(x)
				side := later.across.at(x) - earlier.across.at(x)
				if math.Abs(up) > left || math.Abs(side) > left {
					t.Errorf("coupling %d at %v: %v up, %v across after the steps", i, x, up, side)
				}
			}
		}
	})
}

// The centrelines of the report are those of the scene, told against the machine
// that stays, or the first.
func TestCentrelinesAsFound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t)
		axis := s.bodies[max(0, s.reference)]
		r := mustSolve(t, s.document(t))
		for i, standing := range r.Plans[0].Machines {
			for _, x := range s.bodies[i].feet {
				w, _ := standing.Before.At(units.Length(x) * units.Millimetre)
				up, side := s.bodies[i].up.at(x)-axis.up.at(x), s.bodies[i].across.at(x)-axis.across.at(x)
				if off := math.Hypot(float64(w.Vertical/units.Millimetre)-up, float64(w.Horizontal/units.Millimetre)-side); off > 1e-6 {
					t.Errorf("machine %d at %v is off by %v mm", i, x, off)
				}
			}
		}
	})
}

// chosen are the lines that the notes of the built-in job tell, and what its
// readings were worked out from: across, drift, up, climb.
var chosen = [2]align.Centreline{
	{Horizontal: at0("0.62 mm", "0.20 mm/m"), Vertical: at0("-0.15 mm", "0.30 mm/m")},
	{Horizontal: at0("-0.12 mm", "-0.25 mm/m"), Vertical: at0("0.55 mm", "0.10 mm/m")},
}

func at0(offset, slope string) align.Line {
	var s units.Slope
	if err := s.UnmarshalText([]byte(slope)); err != nil {
		panic(err)
	}
	return align.Line{Offset: units.MustParseLength(offset), Slope: s}
}

// The readings of the built-in job are those of the chosen lines, to 0.01 mm of
// scatter and half of that of rounding, and what is found is that again.
func TestBuiltInReadings(t *testing.T) {
	r := mustSolve(t, builtIn)
	for i, c := range r.Job.Couplings {
		w := chosen[i]
		right := 1.0
		if c.Found.SeenFrom == first {
			right = -1
		}
		for k, d := range []struct {
			rim *rim
			way float64
		}{{&c.Found.CarriedByEarlier, 1}, {&c.Found.CarriedByLater, -1}} {
			v := w.At(d.rim.At - c.At)
			up, side, sag := d.way*float64(v.Vertical), d.way*right*float64(v.Horizontal), float64(d.rim.Sag)
			want := []float64{0, side - up - sag, -2*up - 2*sag, -side - up - sag}
			for q, got := range []units.Length{d.rim.At12, d.rim.At3, d.rim.At6, d.rim.At9} {
				if off := got - units.Length(want[q]); off > 15*units.Micrometre || off < -15*units.Micrometre {
					t.Errorf("coupling %d, dial %d, quarter %d: %v, off by %v", i, k, q, got, off)
				}
			}
		}
		off := r.Joints[i].Found.Value.Minus(w)
		for _, got := range []units.Length{off.Horizontal.Offset, off.Vertical.Offset} {
			if got > 5*units.Micrometre || got < -5*units.Micrometre {
				t.Errorf("coupling %d: found off by %v", i, off)
			}
		}
	}
}

// A crew that stands behind the first machine may as well keep the roles and say
// that it stands there: the library has two ways to tell it, and both agree.
func TestSeenFromTheFirstMachine(t *testing.T) {
	r := mustSolve(t, builtIn)
	c := r.Job.Couplings[0]
	result, err := dial.Reverse{
		CarriedByStationary: c.Found.CarriedByEarlier.dial(c.Found.CarriedByEarlier.At - c.At),
		CarriedByMovable:    c.Found.CarriedByLater.dial(c.Found.CarriedByLater.At - c.At),
		View:                align.FromStationary,
	}.Solve()
	if err != nil || c.Found.SeenFrom != first {
		t.Fatal(err, c.Found.SeenFrom)
	}
	off := result.Value.Minus(r.Joints[0].Found.Value)
	for _, x := range []units.Length{-units.Metre, units.Metre} {
		if v := off.At(x); v.Size() > units.Nanometre/1000 {
			t.Errorf("differ by %v at %v", v, x)
		}
	}
}

// The plan of the built-in job in which the gearbox stays, by hand. In height the
// pump is in the way: its inboard feet lie off(3500) too high and come down by
// 0.12 mm, the outboard ones are free, so the pump tilts until offset and slope
// stand the same many times over their limits, 400 mm apart:
//
//	off - 0.12 mm = ratio (0.06 mm + 400 mm 0.5 mm/m)
func TestPlanWithTheGearboxStaying(t *testing.T) {
	r := mustSolve(t, builtIn)
	// Readings of the high-speed coupling, sag taken off, at 3150 and 3050 mm.
	found := through(3150, 1.17/2-0.03, 3050, 1.02/2+0.03)
	grows := func(x1, t1, x2, t2, height float64, material string) line {
		m, err := thermal.FindMaterial(material)
		if err != nil {
			t.Fatal(err)
		}
		per := float64(m.Expansion/units.PerKelvin) * height
		return through(x1, per*t1, x2, per*t2)
	}
	gear := grows(2150, 30, 2750, 38, 400, "grey cast iron")
	pump := grows(3500, 48, 4400, 44, 420, "cast steel, 3 % carbon")
	off := found.at(3500) - (gear.at(3500) - pump.at(3500))
	want := (off - 0.12) / (0.06 + 400*0.5e-3)
	plan := r.Plans[0]
	if plan.Reach != train.OutOfReach || math.Abs(plan.Ratio-want) > 1e-5 || math.Abs(plan.Bound-want) > 1e-9 {
		t.Errorf("%v, %v and no better than %v; by hand %v", plan.Reach, plan.Ratio, plan.Bound, want)
	}
	// It is enough to open it until that ratio is one.
	for _, b := range plan.InTheWay {
		if b.Machine == "pump P-4" && math.Abs(float64(b.Alone/units.Millimetre)-(off-0.12-0.06-0.2)) > 1e-5 {
			t.Errorf("opening %v, by hand %v mm", b.Alone, off-0.38)
		}
	}
}

// An opening that the report tells is enough, and one that is a micrometre short is
// not; each plane has one of its own.
func TestOpeningsAreEnough(t *testing.T) {
	r := mustSolve(t, builtIn)
	opened := func(less units.Length) train.Reach {
		doc := builtIn
		for _, b := range r.Plans[0].InTheWay {
			switch by := b.Alone - less; b.Machine + " " + b.Plane.String() {
			case "motor M-4 horizontal":
				doc = with(motor+"/feet/1/horizontal/three_by", fmt.Sprintf("%q", 100*units.Micrometre+by))(t, doc)
			case "pump P-4 vertical":
				doc = with("/machines/2/feet/0/vertical/down_by", fmt.Sprintf("%q", 120*units.Micrometre+by))(t, doc)
			}
		}
		return mustSolve(t, doc).Plans[0].Reach
	}
	if got := opened(0); got != train.WithinLimits {
		t.Errorf("opened as told: %v", got)
	}
	if got := opened(units.Micrometre); got != train.OutOfReach {
		t.Errorf("a micrometre less: %v", got)
	}
}

// Where no machine stays, the gearbox rises, every foot keeps its limits, and the
// moves bring the chosen lines to their targets as well as the readings tell them.
func TestPlanWithNobodyStaying(t *testing.T) {
	r := mustSolve(t, builtIn)
	plan := r.Plans[1]
	if plan.Reach != train.OnTarget {
		t.Fatal(plan.Reach)
	}
	moves := map[string]units.Length{}
	for _, s := range plan.Steps {
		moves[s.Machine+" "+s.Foot+" "+s.Plane.String()] = s.By
	}
	for name, ends := range map[string][2]string{
		"motor M-4 inboard horizontal":       {"-1.2 mm", "0.10 mm"},
		"pump P-4 inboard vertical":          {"-0.12 mm", "1 m"},
		"gearbox G-4 low-speed end vertical": {"0.1 mm", "3 mm"},
	} {
		if by := moves[name]; by < units.MustParseLength(ends[0]) || by > units.MustParseLength(ends[1]) {
			t.Errorf("%s goes %v", name, by)
		}
	}
	for i := range r.Joints {
		c, target := r.Job.Couplings[i], r.Joints[i].Target.Value
		for _, plane := range []string{"horizontal", "vertical"} {
			moved := func(k int) line {
				m := r.Job.Machines[k]
				by := func(f int) float64 {
					return float64(moves[string(m.Name)+" "+string(m.Feet[f].Name)+" "+plane] / units.Millimetre)
				}
				return through(float64(m.Feet[0].At/units.Millimetre), by(0), float64(m.Feet[1].At/units.Millimetre), by(1))
			}
			was, wanted := chosen[i].Horizontal, target.Horizontal
			if plane == "vertical" {
				was, wanted = chosen[i].Vertical, target.Vertical
			}
			x := float64(c.At / units.Millimetre)
			left := float64((was.Offset-wanted.Offset)/units.Millimetre) + moved(i+1).at(x) - moved(i).at(x)
			slope := float64(was.Slope-wanted.Slope) + moved(i+1).b - moved(i).b
			if math.Abs(left) > 0.01 || math.Abs(slope) > 1e-4 {
				t.Errorf("%s, %s: %v mm and %v left", c.Name, plane, left, slope)
			}
		}
	}
}

// Words of the floor become signed moves: down and towards nine are negative.
func TestLimitsAtFeet(t *testing.T) {
	mm := units.Millimetre
	for _, row := range []struct {
		name, vertical, horizontal string
		up, across                 train.Limit
	}{
		{"only down, only towards nine", `{"down_by": "0.5 mm"}`, `{"nine_by": "0.5 mm"}`, train.AtLeast(-mm / 2), train.AtLeast(-mm / 2)},
		{"only up, only towards three", `{"up_by": "2 mm"}`, `{"three_by": "2 mm"}`, train.AtMost(2 * mm), train.AtMost(2 * mm)},
		{"both ways", `{"down_by": "0.5 mm", "up_by": "2 mm"}`, `{"nine_by": "0.5 mm", "three_by": "2 mm"}`, train.Between(-mm/2, 2*mm), train.Between(-mm/2, 2*mm)},
		{"fixed", `{"fixed": true}`, `{"fixed": true}`, train.Fixed(), train.Fixed()},
		{"free", `{}`, `{"fixed": false}`, train.Limit{}, train.Limit{}},
	} {
		r := mustSolve(t, all(with(gearbox+"/feet/0/vertical", row.vertical), with(gearbox+"/feet/0/horizontal", row.horizontal))(t, builtIn))
		got := r.Job.Machines[1].train(nil, "").Feet[0]
		if got.Vertical != row.up || got.Horizontal != row.across {
			t.Errorf("%s: %+v and %+v", row.name, got.Vertical, got.Horizontal)
		}
	}
}

// Readings of a picometre beside such of half a millimetre leave the search for the least
// work without an answer. Machines whose feet are free come to their targets all the same,
// and the sheet says what was not shown.
func TestTargetsComeBeforeTheLeastWork(t *testing.T) {
	data, err := os.ReadFile("testdata/picometres.json")
	if err != nil {
		t.Fatal(err)
	}
	plan := mustSolve(t, data).Plans[0]
	if plan.Reach != train.OnTarget || plan.Ratio > 1e-6 {
		t.Errorf("%v, ratio %v", plan.Reach, plan.Ratio)
	}
	if !plan.Proven && len(plan.Warnings) != 1 {
		t.Errorf("not proven, and warns of %v", plan.Warnings)
	}
}
