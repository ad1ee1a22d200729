package dial_test

import (
	"errors"
	"math"
	"reflect"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

// bad is an input with a mistake that a crew could make. mend undoes that one
// mistake, after which the input must be sound.
type bad[T any] struct {
	name  string
	spoil func(*T)
	want  []string // "code path"
	mend  func(*T)
}

// checkBad runs the rows of an input that full makes anew.
func checkBad[T any](t *testing.T, full func() *T, run func(T) error, rows []bad[T]) {
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			input := full()
			row.spoil(input)
			err := run(*input)
			got, want := found(err), slices.Clone(row.want)
			slices.Sort(got)
			slices.Sort(want)
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("faults (-want +got):\n%s", diff)
			}
			checkPaths(t, *input, err)
			for _, f := range units.Faults(err) {
				if !errors.Is(err, f.Code) || f.Want == "" {
					t.Errorf("%v is not found by its code, or wants nothing", f)
				}
			}
			row.mend(input)
			if err := run(*input); err != nil {
				t.Errorf("the mended one is refused: %v", err)
			}
		})
	}
}

func run[S solver](s S) error { _, err := s.Solve(); return err }

var infinite = units.Length(math.Inf(1))

// plainReverse is a sound job that states no uncertainty.
func plainReverse() *dial.Reverse {
	return &dial.Reverse{
		CarriedByStationary: dial.Rim{Station: 90 * units.Millimetre, Readings: fair()},
		CarriedByMovable:    dial.Rim{Station: -60 * units.Millimetre, Readings: fair()},
	}
}

func TestBadReverse(t *testing.T) {
	const um = units.Micrometre
	type job = dial.Reverse
	checkBad(t, plainReverse, run[job], []bad[job]{
		{
			"both rims at one station", func(m *job) { m.CarriedByMovable.Station = m.CarriedByStationary.Station },
			[]string{"conflict /carried_by_movable/station"},
			func(m *job) { m.CarriedByMovable.Station++ },
		},
		{
			"both rims infinitely far", func(m *job) {
				m.CarriedByStationary.Station, m.CarriedByMovable.Station = infinite, infinite
			},
			[]string{"not_finite /carried_by_stationary/station", "not_finite /carried_by_movable/station"},
			func(m *job) { m.CarriedByStationary.Station, m.CarriedByMovable.Station = 0, 1 },
		},
		{
			"negative sag", func(m *job) { m.CarriedByStationary.Sag = -um },
			[]string{"out_of_range /carried_by_stationary/sag"},
			func(m *job) { m.CarriedByStationary.Sag = um },
		},
		{
			"negative sag in a bore", func(m *job) { m.CarriedByMovable.Bore, m.CarriedByMovable.Sag = true, -um },
			[]string{"out_of_range /carried_by_movable/sag"},
			func(m *job) { m.CarriedByMovable.Sag = um },
		},
		{
			"negative radius", func(m *job) { m.CarriedByMovable.Radius = -um },
			[]string{"out_of_range /carried_by_movable/radius"},
			func(m *job) { m.CarriedByMovable.Radius = um },
		},
		{
			"uncertainty of a radius that is not given", func(m *job) { m.CarriedByMovable.U.Radius = um },
			[]string{"conflict /carried_by_movable/u/radius"},
			func(m *job) { m.CarriedByMovable.Radius = units.Inch },
		},
		{
			"no readings", func(m *job) { m.CarriedByStationary.Readings = nil },
			[]string{"missing /carried_by_stationary/readings"},
			func(m *job) { m.CarriedByStationary.Readings = fair() },
		},
		{
			"one reading", func(m *job) { m.CarriedByStationary.Readings = fair()[:1] },
			[]string{"missing /carried_by_stationary/readings"},
			func(m *job) { m.CarriedByStationary.Readings = fair()[:3] },
		},
		{
			"two readings", func(m *job) { m.CarriedByStationary.Readings = fair()[:2] },
			[]string{"missing /carried_by_stationary/readings"},
			func(m *job) { m.CarriedByStationary.Readings = fair()[1:] },
		},
		{
			"two readings in each set", func(m *job) {
				m.CarriedByStationary.Readings, m.CarriedByMovable.Readings = fair()[:2], fair()[2:]
			},
			[]string{"missing /carried_by_stationary/readings", "missing /carried_by_movable/readings"},
			func(m *job) {
				m.CarriedByStationary.Readings, m.CarriedByMovable.Readings = fair()[:3], fair()[1:]
			},
		},
		{
			// Of two, the second is no return to a start.
			"two readings at one place", func(m *job) { m.CarriedByMovable.Readings = sweep{{At: 0}, {At: 360}} },
			[]string{"missing /carried_by_movable/readings", "duplicate /carried_by_movable/readings/1/at"},
			func(m *job) { m.CarriedByMovable.Readings = fair() },
		},
		{
			"two places and the return", func(m *job) { m.CarriedByMovable.Readings = append(fair()[:2], fair()[0]) },
			[]string{"missing /carried_by_movable/readings"},
			func(m *job) { m.CarriedByMovable.Readings = append(fair()[:3], fair()[0]) },
		},
		{
			"five places", func(m *job) {
				m.CarriedByStationary.Readings = append(fair(), align.Reading{At: units.Clock(4.5 * 30)})
			},
			[]string{"out_of_range /carried_by_stationary/readings/4/at"},
			func(m *job) { m.CarriedByStationary.Readings[4].At = 360 },
		},
		{
			"half past one", func(m *job) { m.CarriedByMovable.Readings[1].At = 45 },
			[]string{"out_of_range /carried_by_movable/readings/1/at"},
			func(m *job) { m.CarriedByMovable.Readings[1].At = 450 },
		},
		{
			"the last bit off 3 o'clock", func(m *job) { m.CarriedByMovable.Readings[1].At = 90 + 1e-13 },
			[]string{"out_of_range /carried_by_movable/readings/1/at"},
			func(m *job) { m.CarriedByMovable.Readings[1].At = -270 },
		},
		{
			"3 o'clock twice", func(m *job) { m.CarriedByMovable.Readings[3].At = 450 },
			[]string{"duplicate /carried_by_movable/readings/3/at"},
			func(m *job) { m.CarriedByMovable.Readings[3].At = units.Nine },
		},
		{
			"all at 12", func(m *job) {
				for i := range m.CarriedByMovable.Readings {
					m.CarriedByMovable.Readings[i].At = 0
				}
			},
			[]string{ // the last one is taken for the return
				"duplicate /carried_by_movable/readings/1/at", "duplicate /carried_by_movable/readings/2/at",
			},
			func(m *job) { m.CarriedByMovable.Readings = fair() },
		},
		{
			"uncertainties that differ within a set", func(m *job) {
				m.CarriedByStationary.U.Reading, m.CarriedByMovable.U.Reading = um, um
				m.CarriedByMovable.Readings[2].U = 2 * um
			},
			[]string{"conflict /carried_by_movable/readings/2/u"},
			func(m *job) { m.CarriedByMovable.Readings[2].U = 0 },
		},
		{
			"uncertainty of one set only", func(m *job) { m.CarriedByMovable.U.Reading = um },
			[]string{"conflict "}, // of the input itself
			func(m *job) { m.CarriedByStationary.U.Reading = 5 * um },
		},
		{
			"negative uncertainty", func(m *job) { m.CarriedByMovable.U.Clock = -units.Degree },
			[]string{"out_of_range /carried_by_movable/u/clock"},
			func(m *job) { m.CarriedByMovable.U.Clock = units.Degree },
		},
		{
			"negative uncertainty of the return", func(m *job) {
				m.CarriedByMovable.Readings = append(fair(), align.Reading{U: -um})
			},
			[]string{"out_of_range /carried_by_movable/readings/4/u"},
			func(m *job) { m.CarriedByMovable.Readings[4].U = 0 },
		},
		{
			"unknown view", func(m *job) { m.View = 7 },
			[]string{"out_of_range /view"},
			func(m *job) { m.View = align.FromStationary },
		},
		{
			"negative limits", func(m *job) { m.Limits = dial.Limits{Miss: -1, Return: -1} },
			[]string{"out_of_range /limits/miss", "out_of_range /limits/return"},
			func(m *job) { m.Limits = dial.Limits{} },
		},
		{
			"rims a thousandth of an atom apart", func(m *job) {
				m.CarriedByStationary.Station, m.CarriedByMovable.Station = 1e9, 1e9+1e-6
			},
			[]string{"unseen "},
			func(m *job) { m.CarriedByStationary.Station = 1e9 + 1 },
		},
		{
			"everything at once", func(m *job) {
				*m = job{View: 9, Limits: dial.Limits{Return: -1}}
				m.CarriedByStationary.Sag = -1
				m.CarriedByMovable.Readings = fair()[:2]
				m.CarriedByMovable.Readings[0].At = 10
				m.CarriedByMovable.U.Station = -1
			},
			[]string{
				"out_of_range /view", "out_of_range /limits/return", "conflict /carried_by_movable/station",
				"out_of_range /carried_by_stationary/sag", "missing /carried_by_stationary/readings",
				"missing /carried_by_movable/readings", "out_of_range /carried_by_movable/readings/0/at",
				"out_of_range /carried_by_movable/u/station",
			},
			func(m *job) { *m = *plainReverse() },
		},
	})
}

func TestBadRimFace(t *testing.T) {
	type job = dial.RimFace
	full := func() *job {
		return &job{
			Carrier: align.Stationary,
			Rim:     dial.Rim{Station: 90 * units.Millimetre, Readings: fair()},
			Face:    dial.Face{Diameter: 150 * units.Millimetre, Readings: fair()},
		}
	}
	checkBad(t, full, run[job], []bad[job]{
		{"carrier missing", func(m *job) { m.Carrier = 0 }, []string{"missing /carrier"}, func(m *job) { m.Carrier = align.Movable }},
		{"carrier unknown", func(m *job) { m.Carrier = 3 }, []string{"out_of_range /carrier"}, func(m *job) { m.Carrier = align.Movable }},
		{"no diameter", func(m *job) { m.Face.Diameter = 0 }, []string{"missing /face/diameter"}, func(m *job) { m.Face.Diameter = 1 }},
		{"negative diameter", func(m *job) { m.Face.Diameter = -units.Inch }, []string{"out_of_range /face/diameter"}, func(m *job) { m.Face.Diameter = units.Inch }},
		{"view unknown, which both sets share", func(m *job) { m.View = 2 }, []string{"out_of_range /view"}, func(m *job) { m.View = 1 }},
		{
			"a face dial droops either way, a rim dial does not", func(m *job) { m.Face.Sag, m.Rim.Sag = -units.Mil, -units.Mil },
			[]string{"out_of_range /rim/sag"}, func(m *job) { m.Rim.Sag = units.Mil },
		},
		{
			"uncertainty of a diameter below zero", func(m *job) { m.Face.U.Radius = -1 },
			[]string{"out_of_range /face/u/radius"}, func(m *job) { m.Face.U.Radius = 1 },
		},
		{
			"everything at once", func(m *job) {
				*m = job{Face: dial.Face{Readings: fair()}}
				m.Face.Readings[3].At = 0
				m.Face.Readings = append(m.Face.Readings, align.Reading{At: 1})
			},
			[]string{
				"missing /carrier", "missing /rim/readings", "missing /face/diameter",
				"duplicate /face/readings/3/at", "out_of_range /face/readings/4/at",
			},
			func(m *job) { *m = *full() },
		},
	})
}

func TestBadFaceFace(t *testing.T) {
	type job = dial.FaceFace
	full := func() *job {
		return &job{
			Span:         units.Metre,
			AtStationary: dial.Face{Diameter: 150 * units.Millimetre, Readings: fair()},
			AtMovable:    dial.Face{Diameter: 120 * units.Millimetre, Readings: fair()},
		}
	}
	checkBad(t, full, run[job], []bad[job]{
		{"no span", func(m *job) { m.Span = 0 }, []string{"missing /span"}, func(m *job) { m.Span = units.Inch }},
		{"negative span", func(m *job) { m.Span = -units.Inch }, []string{"out_of_range /span"}, func(m *job) { m.Span = units.Inch }},
		{"no diameter", func(m *job) { m.AtMovable.Diameter = 0 }, []string{"missing /at_movable/diameter"}, func(m *job) { m.AtMovable.Diameter = 1 }},
		{"negative diameter", func(m *job) { m.AtStationary.Diameter = -1 }, []string{"out_of_range /at_stationary/diameter"}, func(m *job) { m.AtStationary.Diameter = 1 }},
		{"droop of a face has a sign", func(m *job) { m.AtStationary.Sag, m.View = -1, 3 }, []string{"out_of_range /view"}, func(m *job) { m.View = 0 }},
		{
			"nothing given", func(m *job) { *m = job{} },
			[]string{
				"missing /span", "missing /at_stationary/diameter", "missing /at_stationary/readings",
				"missing /at_movable/diameter", "missing /at_movable/readings",
			},
			func(m *job) { *m = *full() },
		},
	})
}

func TestBadRimGap(t *testing.T) {
	type job = dial.RimGap
	full := func() *job {
		return &job{
			Carrier: align.Stationary, Rim: dial.Rim{Readings: fair()},
			Gap: dial.Gap{Diameter: 150 * units.Millimetre, Readings: fair()},
		}
	}
	checkBad(t, full, run[job], []bad[job]{
		{"carrier missing", func(m *job) { m.Carrier = 0 }, []string{"missing /carrier"}, func(m *job) { m.Carrier = align.Movable }},
		{"no diameter", func(m *job) { m.Gap.Diameter = 0 }, []string{"missing /gap/diameter"}, func(m *job) { m.Gap.Diameter = 1 }},
		{"negative diameter", func(m *job) { m.Gap.Diameter = -1 }, []string{"out_of_range /gap/diameter"}, func(m *job) { m.Gap.Diameter = 1 }},
		{"a gap gauge does not droop", func(m *job) { m.Gap.U.Sag = 1 }, []string{"conflict /gap/u/sag"}, func(m *job) { m.Gap.U.Sag = 0 }},
	})
}

func TestBadStraightedgeGap(t *testing.T) {
	type job = dial.StraightedgeGap
	full := func() *job {
		return &job{
			Straightedge: dial.Straightedge{On: align.Stationary, Readings: fair()},
			Gap:          dial.Gap{Diameter: 150 * units.Millimetre, Readings: fair()},
		}
	}
	checkBad(t, full, run[job], []bad[job]{
		{"on no rim", func(m *job) { m.Straightedge.On = 0 }, []string{"missing /straightedge/on"}, func(m *job) { m.Straightedge.On = align.Movable }},
		{"on an unknown rim", func(m *job) { m.Straightedge.On = 9 }, []string{"out_of_range /straightedge/on"}, func(m *job) { m.Straightedge.On = align.Movable }},
		{"no diameter", func(m *job) { m.Gap.Diameter = 0 }, []string{"missing /gap/diameter"}, func(m *job) { m.Gap.Diameter = 1 }},
		{"three places, one of them twice", func(m *job) { m.Straightedge.Readings[2].At = 90 }, []string{"duplicate /straightedge/readings/2/at"}, func(m *job) { m.Straightedge.Readings[2].At = 180 }},
	})
}

// A fault shows the value as it was found in the field that its path names, and
// what it wants is said of that field.
func TestFaultsShowTheValueThatWasGiven(t *testing.T) {
	for _, e := range entries {
		for _, path := range []string{
			"/face/diameter", "/gap/diameter", "/at_movable/diameter", "/span", "/rim/sag", "/diameter", "/a/diameter", "/readings/1/u",
		} {
			input := e.full()
			field, ok := pointed(reflect.ValueOf(input).Elem(), path)
			if !ok {
				continue
			}
			field.SetFloat(-50e6)
			for _, f := range units.Faults(e.run(input)) {
				if f.Path == path && f.Value != "-50 mm" {
					t.Errorf("%s, %s = -50 mm: the fault says %v", e.name, path, f)
				}
			}
		}
	}
}
