package train_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/collinear/align/train"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// One thing wrong in a train that is sound otherwise: the fault, and a twin that is
// nearly the same and passes.
func TestValidateRefuses(t *testing.T) {
	nan, inf := units.Length(math.NaN()), units.Length(math.Inf(1))
	rows := []struct {
		name  string
		spoil func(*train.Train)
		code  units.Code
		path  string
		mend  func(*train.Train)
	}{
		{"one machine", func(t *train.Train) { t.Machines, t.Joints, t.Reference = t.Machines[:1], nil, "" }, units.Missing, "/machines", func(t *train.Train) {
			t.Machines, t.Joints = t.Machines[:2], t.Joints[:1]
		}},
		{"no machine", func(t *train.Train) { *t = train.Train{} }, units.Missing, "/machines", nil},
		{"too many machines", func(t *train.Train) { *t = chain(train.MostMachines + 1) }, units.OutOfRange, "/machines", func(t *train.Train) { *t = chain(train.MostMachines) }},
		{"a joint too few", func(t *train.Train) { t.Joints = t.Joints[:2] }, units.Conflict, "/joints", nil},
		{"a joint too many", func(t *train.Train) { t.Machines = t.Machines[:3] }, units.Conflict, "/joints", func(t *train.Train) {
			t.Machines, t.Joints = t.Machines[:3], t.Joints[:2]
		}},

		{"machine without a name", func(t *train.Train) { t.Machines[2].Name = "" }, units.Missing, "/machines/2/name", nil},
		{"doubled machine", func(t *train.Train) { t.Machines[2].Name = "motor" }, units.Duplicate, "/machines/2/name", func(t *train.Train) { t.Machines[2].Name = "Motor" }},
		{"unknown reference", func(t *train.Train) { t.Reference = "gear" }, units.Unknown, "/reference", func(t *train.Train) { t.Reference = "" }},
		{"height below zero", func(t *train.Train) { t.Machines[0].Height = -1 * mm }, units.OutOfRange, "/machines/0/height", func(t *train.Train) { t.Machines[0].Height = 0 }},
		{"height not finite", func(t *train.Train) { t.Machines[0].Height = nan }, units.NotFinite, "/machines/0/height", nil},

		{"one foot", func(t *train.Train) { t.Machines[0].Feet = t.Machines[0].Feet[:1] }, units.Missing, "/machines/0/feet", nil},
		{"no feet", func(t *train.Train) { t.Machines[0].Feet = nil }, units.Missing, "/machines/0/feet", func(t *train.Train) { t.Machines[1].Feet = nil }},
		{"reference on one foot", func(t *train.Train) { t.Machines[1].Feet = t.Machines[1].Feet[:1] }, units.Missing, "/machines/1/feet", nil},
		{"too many feet", func(t *train.Train) { t.Machines[2].Feet = row(train.MostFeet + 1) }, units.OutOfRange, "/machines/2/feet", func(t *train.Train) { t.Machines[2].Feet = row(train.MostFeet) }},
		{"foot without a name", func(t *train.Train) { t.Machines[0].Feet[1].Name = "" }, units.Missing, "/machines/0/feet/1/name", nil},
		{"doubled foot", func(t *train.Train) { t.Machines[0].Feet[1].Name = "inboard" }, units.Duplicate, "/machines/0/feet/1/name", nil},
		{"foot nowhere", func(t *train.Train) { t.Machines[0].Feet[1].X = nan }, units.NotFinite, "/machines/0/feet/1/x", nil},
		{"two feet at one station", func(t *train.Train) { t.Machines[0].Feet[1].X = 200 * mm }, units.Duplicate, "/machines/0/feet/1/x", func(t *train.Train) { t.Machines[0].Feet[1].X = 201 * mm }},

		{"limit upside down", func(t *train.Train) { t.Machines[0].Feet[1].Vertical = train.Between(2*mm, 1*mm) }, units.Conflict, "/machines/0/feet/1/vertical/at_least", func(t *train.Train) {
			t.Machines[0].Feet[1].Vertical = train.Between(1*mm, 1*mm)
		}},
		{"sideways limit upside down", func(t *train.Train) { t.Machines[2].Feet[0].Horizontal = train.Between(1*nm, 0) }, units.Conflict, "/machines/2/feet/0/horizontal/at_least", nil},
		{"least that is not finite", func(t *train.Train) { t.Machines[2].Feet[0].Horizontal = train.AtLeast(-inf) }, units.NotFinite, "/machines/2/feet/0/horizontal/at_least", func(t *train.Train) {
			t.Machines[2].Feet[0].Horizontal = train.Limit{}
		}},
		{"most that is not finite", func(t *train.Train) { t.Machines[2].Feet[0].Vertical = train.AtMost(nan) }, units.NotFinite, "/machines/2/feet/0/vertical/at_most", nil},
		{"no place to stand", func(t *train.Train) { t.Machines[2].Feet = bent(601 * um) }, units.Conflict, "/machines/2/feet", func(t *train.Train) { t.Machines[2].Feet = bent(600 * um) }},

		{"coupling nowhere", func(t *train.Train) { t.Joints[1].At = nan }, units.NotFinite, "/joints/1/at", nil},
		{"doubled coupling", func(t *train.Train) { t.Joints[1].Coupling.Name = "high speed" }, units.Duplicate, "/joints/1/coupling/name", func(t *train.Train) {
			t.Joints[0].Coupling.Name, t.Joints[1].Coupling.Name = "", ""
		}},
		{"diameter below zero", func(t *train.Train) { t.Joints[1].Coupling.Diameter = -1 }, units.OutOfRange, "/joints/1/coupling/diameter", nil},
		{"span below zero", func(t *train.Train) { t.Joints[1].Coupling.Span = -1 * mm }, units.OutOfRange, "/joints/1/coupling/span", nil},
		{"span not finite", func(t *train.Train) { t.Joints[1].Coupling.Span = nan }, units.NotFinite, "/joints/1/coupling/span", nil},
		{"found not finite", func(t *train.Train) { t.Joints[1].Found.Value.Vertical.Offset = nan }, units.NotFinite, "/joints/1/found/value/vertical/offset", nil},
		{"target not finite", func(t *train.Train) { t.Joints[1].Target.Value.Horizontal.Slope = units.Slope(inf) }, units.NotFinite, "/joints/1/target/value/horizontal/slope", nil},
		{"limit not finite", func(t *train.Train) { t.Joints[1].Limits.Flex = units.Slope(nan) }, units.NotFinite, "/joints/1/limits/flex", nil},
		{"limit below zero", func(t *train.Train) { t.Joints[0].Limits.Offset = -50 * um }, units.OutOfRange, "/joints/0/limits/offset", nil},
		{"coupling without limits", func(t *train.Train) { t.Joints[0].Limits = tolerance.Limits{} }, units.Missing, "/joints/0/limits", func(t *train.Train) {
			t.Joints[0].Limits = tolerance.Limits{Slope: milliPerMetre}
		}},
		{"spacer without a limit of its own", func(t *train.Train) { t.Joints[1].Limits = perPlane }, units.Missing, "/joints/1/limits/flex", nil},
		{"spacer of no length", func(t *train.Train) { t.Joints[1].Coupling.Span = 0 }, units.Missing, "/joints/1/coupling/span", func(t *train.Train) {
			t.Joints[1].Coupling.Span = 1 * mm
		}},

		{"couplings in another order", func(t *train.Train) { t.Joints[1].At, t.Machines[1].Feet = 1000*mm, nil }, units.Conflict, "/joints/1/at", nil},
		{"a spacer that reaches into the coupling before", func(t *train.Train) { t.Joints[1].Coupling.Span = 2100 * mm }, units.Conflict, "/joints/1/at", func(t *train.Train) {
			t.Joints[1].Coupling.Span = 2099 * mm
		}},
		{"a spacer that begins before the one before it ends", func(t *train.Train) {
			t.Joints[2].Coupling.Span, t.Joints[2].Limits = 2900*mm, t.Joints[1].Limits
		}, units.Conflict, "/joints/2/at", func(t *train.Train) {
			t.Joints[2].Coupling.Span, t.Joints[2].Limits = 2899*mm, t.Joints[1].Limits
		}},
		{"machines that overlap", func(t *train.Train) { t.Machines[1].Feet[0].X = 1050 * mm }, units.Conflict, "/machines/1/feet/0/x", func(t *train.Train) {
			t.Machines[1].Feet[0].X = 1101 * mm
		}},
		{"the first machine beyond its coupling", func(t *train.Train) { t.Machines[0].Feet[1].X = 1100 * mm }, units.Conflict, "/machines/0/feet/1/x", func(t *train.Train) {
			t.Machines[0].Feet[1].X = 1099 * mm
		}},
		{"the last machine before its coupling", func(t *train.Train) { t.Machines[3].Feet[0].X = 3800 * mm }, units.Conflict, "/machines/3/feet/0/x", nil},
	}
	for _, r := range rows {
		t.Run(r.name, func(t *testing.T) {
			bad, good := four(true), four(true)
			r.spoil(&bad)
			if r.mend != nil {
				r.mend(&good)
			}
			refuses(t, bad.Validate(), r.code, r.path)
			_, err := bad.Plan(train.TotalTravel)
			refuses(t, err, r.code, r.path)
			_, err = bad.Centrelines()
			refuses(t, err, r.code, r.path)
			if err := good.Validate(); err != nil {
				t.Errorf("the twin is refused: %v", err)
			}
			if _, err := good.Plan(train.LargestMove); err != nil {
				t.Errorf("the twin is refused: %v", err)
			}
		})
	}
}

// refuses asks that a fault of this code and path, and no other, is in the error.
func refuses(t *testing.T, err error, code units.Code, path string) {
	t.Helper()
	faults := units.Faults(err)
	if len(faults) != 1 || faults[0].Code != code || faults[0].Path != path || !errors.Is(err, code) {
		t.Errorf("says %v, want %v at %s", err, code, path)
	}
}

// chain is n machines in line, a metre apart.
func chain(n int) train.Train {
	var t train.Train
	for i := range n {
		x := units.Length(i) * 1000 * mm
		t.Machines = append(t.Machines, machine(fmt.Sprint("machine ", i), x+200*mm, x+800*mm))
		if i > 0 {
			t.Joints = append(t.Joints, train.Joint{At: x, Found: height(100*um, 0), Limits: perPlane})
		}
	}
	return t
}

// row is n feet between 2.4 and 3.7 m.
func row(n int) []train.Foot {
	var feet []train.Foot
	for i := range n {
		feet = append(feet, train.Foot{Name: fmt.Sprint("foot ", i), X: 2400*mm + units.Length(i)*150*mm})
	}
	return feet
}

// bent is three feet of which the outer ones cannot rise above 0.4 and 1.2 mm, and the
// middle one, a quarter of the way along, has to rise by so much: 0.6 mm is what a
// line allows, 3/4 of the one and 1/4 of the other.
func bent(by units.Length) []train.Foot {
	feet := row(3)
	feet[2].X = 3000 * mm
	feet[0].Vertical, feet[1].Vertical, feet[2].Vertical = train.AtMost(400*um), train.AtLeast(by), train.AtMost(1200*um)
	return feet
}

// Faults that do not depend on one another come all at once.
func TestAllFaultsAtOnce(t *testing.T) {
	tr := four(true)
	tr.Reference = "nobody"
	tr.Machines[0].Name = ""
	tr.Machines[2].Feet[1].Horizontal = train.Between(1, 0)
	tr.Joints[2].Limits = tolerance.Limits{}
	tr.Joints[0].Found.Value.Vertical.Slope = units.Slope(math.NaN())
	_, err := tr.Plan(train.Work(9))
	want := []string{"/work", "/machines/0/name", "/machines/2/feet/1/horizontal/at_least", "/joints/0/found/value/vertical/slope", "/joints/2/limits", "/reference"}
	faults := units.Faults(err)
	if len(faults) != len(want) {
		t.Fatalf("says %v, want faults at %v", err, want)
	}
	for i, f := range faults {
		if f.Path != want[i] {
			t.Errorf("fault %d is at %s, want %s", i, f.Path, want[i])
		}
	}
}

func TestPlanRefusesAnUnknownMeasure(t *testing.T) {
	_, err := four(true).Plan(train.FewestFeet + 1)
	refuses(t, err, units.Unknown, "/work")
}

// The fault says how many joints there have to be.
func TestJointsAreCounted(t *testing.T) {
	tr := four(true)
	tr.Joints = tr.Joints[:2]
	if got := units.Faults(tr.Validate()); len(got) != 1 || !strings.HasSuffix(got[0].Want, "which makes 3") {
		t.Errorf("got %v", got)
	}
}
