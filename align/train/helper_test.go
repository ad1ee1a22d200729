package train_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

const milliPerMetre = units.MillimetrePerMetre

// machine has two feet, free in both planes.
func machine(name string, first, second units.Length) train.Machine {
	return train.Machine{Name: name, Feet: []train.Foot{{Name: "inboard", X: first}, {Name: "outboard", X: second}}}
}

// height is what stands off in height alone.
func height(offset units.Length, slope units.Slope) align.Estimate {
	return align.Exact(align.Centreline{Vertical: align.Line{Offset: offset, Slope: slope}})
}

var perPlane = tolerance.Limits{Offset: 50 * um, Slope: 0.5 * milliPerMetre, PerPlane: true}

// pair is a motor that stays and a pump 0.5 mm too low, whose feet are free.
func pair() train.Train {
	return train.Train{
		Machines:  []train.Machine{machine("motor", 200*mm, 600*mm), machine("pump", 1000*mm, 1400*mm)},
		Joints:    []train.Joint{{At: 800 * mm, Found: height(-500*um, 0), Limits: perPlane}},
		Reference: "motor",
	}
}

// four is a motor, a gearbox, a spacer coupling, a compressor and an exciter, with
// feet that can go so far, judged plane by plane or by vectors.
func four(planes bool) train.Train {
	feet := func(m train.Machine, vertical, horizontal train.Limit) train.Machine {
		for i := range m.Feet {
			m.Feet[i].Vertical, m.Feet[i].Horizontal = vertical, horizontal
		}
		return m
	}
	line := func(offset units.Length, slope units.Slope) align.Line {
		return align.Line{Offset: offset, Slope: slope * milliPerMetre}
	}
	found := func(side, height align.Line) align.Estimate {
		return align.Exact(align.Centreline{Horizontal: side, Vertical: height})
	}
	short := tolerance.Limits{Offset: 50 * um, Slope: 0.5 * milliPerMetre, PerPlane: planes}
	spacer := tolerance.Limits{Flex: 0.5 * milliPerMetre, PerPlane: planes}
	t := train.Train{
		Machines: []train.Machine{
			feet(machine("motor", 200*mm, 900*mm), train.AtLeast(-200*um), train.Between(-1*mm, 1*mm)),
			feet(machine("gearbox", 1300*mm, 1700*mm), train.Limit{}, train.Fixed()),
			feet(machine("compressor", 2600*mm, 3600*mm), train.AtLeast(-300*um), train.Between(-400*um, 700*um)),
			feet(machine("exciter", 4000*mm, 4300*mm), train.AtMost(900*um), train.Limit{}),
		},
		Joints: []train.Joint{
			{Coupling: align.Coupling{Name: "high speed"}, At: 1100 * mm, Found: found(line(400*um, 0.6), line(-700*um, 0.4)), Limits: short},
			{Coupling: align.Coupling{Name: "spacer", Span: 400 * mm}, At: 2150 * mm, Found: found(line(-300*um, 0.5), line(450*um, -0.9)), Limits: spacer},
			{Coupling: align.Coupling{Name: "low speed"}, At: 3800 * mm, Found: found(line(120*um, -0.3), line(-250*um, 0.8)), Limits: short},
		},
		Reference: "gearbox",
	}
	t.Machines[0].Height, t.Machines[2].Height = 355*mm, 500*mm
	return t
}

func plan(t testing.TB, tr train.Train, w train.Work) train.Plan {
	t.Helper()
	p, err := tr.Plan(w)
	if err != nil {
		t.Fatal(err)
	}
	return p
}
