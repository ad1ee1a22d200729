package sheet

import (
	"errors"
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/shims"
	"example.org/collinear/softfoot"
	"example.org/collinear/thermal"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// reply is what a package of this module answers to the question of one line.
type reply struct {
	id   string
	bits float64
}

func replied[Q ~float64](id string, q Q) reply { return reply{id, float64(q)} }

// question is a calculation, and what the packages answer to it where a line claims to
// have the same.
type question struct {
	worked
	replies []reply
}

// questions draws one of each calculation.
var questions = map[string]func(t *rapid.T) question{
	"job":   func(t *rapid.T) question { j := drawJob(t); return question{j, repliesOfJob(t, j)} },
	"sweep": func(t *rapid.T) question { s := drawSweep(t); return question{s, repliesOfSweep(t, s)} },
	"sag": func(t *rapid.T) question {
		s := Sag{At12: drawLength(t, "top", units.Mil/2, 20), At6: drawLength(t, "bottom", units.Mil/2, 20)}
		return question{s, []reply{replied("sag", dial.MandrelSag(s.At12, s.At6))}}
	},
	"gap from slope": func(t *rapid.T) question {
		g := GapFromSlope{Diameter: drawPositive(t, "diameter", units.Millimetre, 500), Centreline: drawCentreline(t)}
		opening, _, err := align.Coupling{Diameter: g.Diameter}.Gap(g.Centreline)
		return question{g, []reply{replied("opening", sound(t, opening, err))}}
	},
	"slope from gap": func(t *rapid.T) question {
		g := SlopeFromGap{
			Opening: drawLength(t, "opening", 10*units.Micrometre, 60), At: drawClock(t, "at"),
			Diameter: drawPositive(t, "diameter", units.Millimetre, 500),
		}
		tilt, err := align.SlopeFromGap(g.Opening, g.At, g.Diameter)
		return question{g, bothPlanes(sound(t, tilt, err), ".slope")}
	},
	"flex tilts": func(t *rapid.T) question {
		f := FlexTilts{Span: drawPositive(t, "span", units.Millimetre, 2000), Centreline: drawCentreline(t)}
		stationary, movable, err := align.Coupling{Span: f.Span}.FlexTilts(f.Centreline)
		return question{f, append(bothPlanes(sound(t, stationary, err), ".tilt.stationary"), bothPlanes(movable, ".tilt.movable")...)}
	},
	"cold target": func(t *rapid.T) question {
		c := ColdTarget{Stationary: drawSupports(t, "stationary"), Movable: drawSupports(t, "movable"), Feet: drawFeet(t)}
		if c.Stationary == nil && c.Movable == nil {
			c.Movable = []thermal.Support{drawSupport(t, "near"), drawSupport(t, "far")}
			c.Movable[1].X = 500 * units.Millimetre
		}
		return question{c, repliesOfColdTarget(t, c)}
	},
	"target readings": func(t *rapid.T) question {
		r := drawTargetReadings(t)
		shown, err := align.Set{Probe: r.Probe, Sag: r.Sag, View: r.View}.Predict(r.Centreline, 0, units.Three, units.Six, units.Nine)
		sound(t, shown, err)
		return question{r, []reply{
			replied("reading.3", shown[1].Value), replied("reading.6", shown[2].Value), replied("reading.9", shown[3].Value),
		}}
	},
	"soft foot": func(t *rapid.T) question {
		s := drawSoftFoot(t)
		found, err := softfoot.Survey(s).Judge(softfoot.Limits{})
		replies := []reply{replied("common", sound(t, found, err).Common)}
		for _, f := range found.Feet {
			replies = append(replies, replied("foot."+f.Foot+".excess", f.Excess))
		}
		return question{s, replies}
	},
	"sliding limit": func(t *rapid.T) question {
		s := drawSlidingLimit(t)
		limits, err := tolerance.Rubbing(s.Sliding, s.Speed, s.Coupling)
		sound(t, limits, err)
		if s.Coupling.Span != 0 {
			return question{s, []reply{replied("tilt", limits.Flex)}}
		}
		return question{s, []reply{replied("offset", limits.Offset), replied("slope", limits.Slope)}}
	},
	"flange shims": func(t *rapid.T) question {
		f := drawFlangeShims(t)
		c, err := f.Flange.Correct(align.Exact(f.Off))
		sound(t, c, err)
		replies := []reply{replied("vertical.slide", c.Slide.By.Vertical), replied("horizontal.slide", c.Slide.By.Horizontal)}
		for i, b := range f.Flange.Bolts {
			replies = append(replies, replied("bolt."+b.Name+".shim", c.Shims[i].Thickness))
		}
		return question{f, replies}
	},
	"shim stacks": func(t *rapid.T) question {
		s := drawShimStacks(t)
		choice, err := shims.Choose(s.Stock, s.Rule, s.Orders...)
		var replies []reply
		for _, stack := range sound(t, choice, err).Stacks {
			at := "foot." + stack.Foot
			replies = append(replies, replied(at+".wanted", stack.Wanted), replied(at+".total", stack.Total), replied(at+".error", stack.Error))
		}
		return question{s, replies}
	},
}

// sound hands on an answer to a question that is not refused.
func sound[A any](t *rapid.T, answer A, err error) A {
	if err != nil {
		t.Fatalf("the library refuses: %v", err)
	}
	return answer
}

func bothPlanes(tilt align.Tilt, id string) []reply {
	return []reply{replied("vertical"+id, tilt.Vertical), replied("horizontal"+id, tilt.Horizontal)}
}

// slopeOf is which line of a job has the slope at the coupling, or the tilt.
func (j Job) slopeOf() string {
	switch {
	case j.RimFace != nil:
		return ".face.slope"
	case j.RimGap != nil, j.StraightedgeGap != nil:
		return ".gap.slope"
	}
	return ".slope"
}

// crewsTotal is 3 less 9 as the crew names them.
func crewsTotal(v align.View, at [4]units.Length) units.Length {
	if v == align.FromStationary {
		return at[3] - at[1]
	}
	return at[1] - at[3]
}

func repliesOfJob(t *rapid.T, j Job) []reply {
	m := j.method(nil)
	found, err := m.Solve()
	sound(t, found, err)
	replies := bothPlanes(found.Value.Tilt(), j.slopeOf())
	replies = append(replies,
		replied("vertical.offset", found.Value.Vertical.Offset), replied("horizontal.offset", found.Value.Horizontal.Offset))
	for i, c := range found.Checks {
		name := m.rounds[i].name
		if !c.Completed {
			replies = append(replies, replied(name+".miss", c.Miss))
		}
		replies = append(replies,
			replied("vertical."+name+".total", c.Quarters[0]-c.Quarters[2]),
			replied("horizontal."+name+".total", crewsTotal(m.view, c.Quarters)))
	}
	target, grown := repliesOfGrowth(t, j.Stationary, j.Movable)
	replies = append(replies, grown...)
	if len(j.Feet) == 0 {
		return replies
	}
	moves, err := found.Estimate.Minus(target).Corrections(j.Feet...)
	for _, move := range sound(t, moves, err) {
		at := ".foot." + move.Foot.Name + "."
		w := found.Value.At(move.Foot.X)
		replies = append(replies,
			replied("vertical"+at+"correction", move.By.Vertical), replied("horizontal"+at+"correction", move.By.Horizontal),
			replied("vertical"+at+"position", w.Vertical), replied("horizontal"+at+"position", w.Horizontal))
	}
	return replies
}

// repliesOfGrowth asks package thermal for the cold target, and for every line that
// leads there.
func repliesOfGrowth(t *rapid.T, stationary, movable []thermal.Support) (align.Estimate, []reply) {
	grew := func(name string, supports []thermal.Support) (align.Estimate, []reply) {
		if supports == nil {
			return align.Estimate{}, nil
		}
		line, err := thermal.Growth(supports...)
		sound(t, line, err)
		replies := []reply{
			replied("vertical."+name+".growth.offset", line.Value.Vertical.Offset),
			replied("vertical."+name+".growth.slope", line.Value.Vertical.Slope),
		}
		for _, s := range supports {
			if s.Measured == nil {
				by, _, _ := s.Growth()
				replies = append(replies, replied(name+"."+s.Name+".growth", by.Vertical))
			}
		}
		return line, replies
	}
	s, ofStationary := grew("stationary", stationary)
	m, ofMovable := grew("movable", movable)
	target := thermal.ColdTarget(s, m)
	replies := append(ofStationary, ofMovable...)
	if stationary != nil || movable != nil {
		replies = append(replies,
			replied("vertical.target.offset", target.Value.Vertical.Offset), replied("vertical.target.slope", target.Value.Vertical.Slope))
	}
	if target.Value.Horizontal != (align.Line{}) {
		replies = append(replies,
			replied("horizontal.target.offset", target.Value.Horizontal.Offset), replied("horizontal.target.slope", target.Value.Horizontal.Slope))
	}
	return target, replies
}

func repliesOfColdTarget(t *rapid.T, c ColdTarget) []reply {
	target, replies := repliesOfGrowth(t, c.Stationary, c.Movable)
	for _, f := range c.Feet {
		replies = append(replies, replied("vertical.foot."+f.Name+".target", target.Value.At(f.X).Vertical))
	}
	return replies
}

// repliesOfSweep has package dial take the sag off, and halve.
func repliesOfSweep(t *rapid.T, s Sweep) []reply {
	var replies []reply
	rim := s.Rim
	if s.Mandrel != nil {
		rim.Sag = dial.MandrelSag(s.Mandrel.At12, s.Mandrel.At6)
		replies = append(replies, replied("sag", rim.Sag))
	}
	face := dial.Face{Diameter: units.Metre, Readings: dial.Quarters(units.Mil, 0, 0, 0, 0)}
	found, err := dial.RimFace{Carrier: s.Carrier, Rim: rim, Face: face, View: s.View}.Solve()
	at := sound(t, found, err).Checks[0].Quarters
	seen := align.Vector{Horizontal: dial.HalfTIR(at[1], at[3]), Vertical: dial.HalfTIR(at[0], at[2])}
	if (s.Carrier == align.Movable) != rim.Bore {
		seen = align.Vector{Horizontal: 0 - seen.Horizontal, Vertical: 0 - seen.Vertical}
	}
	return append(replies, replied("vertical.rim.offset", seen.Vertical), replied("horizontal.rim.offset", seen.Horizontal))
}

// Whatever is asked, a line that asks the same as a package of this module has that
// package's answer, to the last bit. A negative zero, which some sums leave,
// is zero on a sheet.
func TestLinesHaveTheLibrarysBits(t *testing.T) {
	for name, draw := range questions {
		t.Run(name, func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				q := draw(t)
				w, err := q.Working()
				sound(t, w, err)
				for _, r := range q.replies {
					got, err := valueOf(w, r.id)
					if err != nil {
						t.Errorf("%s: %v", r.id, err)
					} else if math.Float64bits(got) != math.Float64bits(r.bits+0) {
						t.Errorf("%s comes to %v, and the library answers %v", r.id, got, r.bits)
					}
				}
			})
		})
	}
}

// valueOf is Value of whichever type the line has; it asks for all of them, and all but
// one have to refuse.
func valueOf(w Working, id string) (float64, error) {
	var answers []float64
	var refused []error
	take := func(x float64, err error) {
		if err != nil {
			refused = append(refused, err)
		} else {
			answers = append(answers, x)
		}
	}
	length, err := Value[units.Length](w, id)
	take(float64(length), err)
	slope, err := Value[units.Slope](w, id)
	take(float64(slope), err)
	rise, err := Value[units.TemperatureDifference](w, id)
	take(float64(rise), err)
	if len(answers) != 1 {
		return 0, errors.Join(append(refused, errors.New("not of just one type"))...)
	}
	return answers[0], nil
}
