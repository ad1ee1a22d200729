package align_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// number is one float field somewhere in an input, with its JSON Pointer.
type number struct {
	path  string
	value reflect.Value
}

// numbers walks an input by reflection, so that no field is forgotten.
func numbers(path string, v reflect.Value) []number {
	var list []number
	switch v.Kind() {
	case reflect.Float64:
		list = append(list, number{path, v})
	case reflect.Pointer:
		list = numbers(path, v.Elem())
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			list = append(list, numbers(fmt.Sprintf("%s/%d", path, i), v.Index(i))...)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			field := v.Type().Field(i)
			name, _, _ := strings.Cut(field.Tag.Get("json"), ",")
			if name == "" {
				name = strings.ToLower(field.Name)
			}
			list = append(list, numbers(path+"/"+name, v.Field(i))...)
		}
	}
	return list
}

// An entry is an entry point with an input that is sound, made anew each time.
type entry struct {
	name  string
	input func(tb fataler) any // a pointer to a struct of what goes in
	call  func(input any) error
	paths bool // whether a fault's path is that of the field below the struct
}

type setsInput struct{ Sets []align.Set }

type predictInput struct {
	Set   align.Set
	Truth align.Centreline
	At    []units.Clock
}

type feetInput struct {
	Value align.Centreline
	Feet  []align.Foot
}

type throughInput struct{ P, Q align.Point }

type gapInput struct { // an offset opens no gap
	Diameter units.Length
	Tilt     align.Tilt
}

type flexInput struct {
	Span                units.Length
	C                   align.Centreline
	Stationary, Movable align.Tilt
}

type slopeInput struct {
	Opening  units.Length
	At       units.Clock
	Diameter units.Length
}

type covarianceInput struct {
	U           align.Centreline
	Correlation [4][4]float64
}

// full is a set of every kind with every uncertainty that the kind has.
func full(tb fataler) any {
	sets := each(state(sound(tb), 5*um), func(s *align.Set) {
		_, station, radius, _, _, sag := needs(s.Probe.Kind)
		if station {
			s.U.Station = mm
		}
		if radius {
			s.U.Radius = mm
		}
		if sag {
			s.U.Sag = um
		}
		s.U.Clock = 0.01
		for i := range s.Readings {
			s.Readings[i].U = 4 * um
		}
	})
	return &setsInput{sets}
}

var entries = []entry{
	{"Fit", full, func(in any) error { _, err := align.Fit(in.(*setsInput).Sets...); return err }, true},
	{"Residuals", full, func(in any) error {
		_, err := align.Residuals(nil, in.(*setsInput).Sets, align.Fitted{})
		return err
	}, true},
	{"Predict", func(fataler) any {
		return &predictInput{rim(align.Stationary, 40), caseA, []units.Clock{0, 90}}
	}, func(in any) error {
		p := in.(*predictInput)
		p.Set.U, p.Set.Readings = align.Uncertainty{}, nil // not used, so not looked at
		_, err := p.Set.Predict(p.Truth, p.At...)
		return err
	}, false},
	{"Corrections", func(fataler) any {
		return &feetInput{caseA, []align.Foot{{X: 300 * mm, U: mm}, {X: 900 * mm, U: mm}}}
	}, func(in any) error {
		f := in.(*feetInput)
		_, err := align.Exact(f.Value).Corrections(f.Feet...)
		return err
	}, false},
	{"Through", func(fataler) any { return &throughInput{align.Point{X: -100, W: 3}, align.Point{X: 200, W: 5}} },
		func(in any) error { _, err := align.Through(in.(*throughInput).P, in.(*throughInput).Q); return err }, true},
	{"Gap", func(fataler) any { return &gapInput{150 * mm, caseA.Tilt()} }, func(in any) error {
		g := in.(*gapInput)
		c := line(0, float64(g.Tilt.Horizontal), 0, float64(g.Tilt.Vertical))
		_, _, err := align.Coupling{Diameter: g.Diameter}.Gap(c)
		return err
	}, false},
	{"FlexTilts and FromFlexTilts", func(fataler) any { return &flexInput{800 * mm, caseA, caseA.Tilt(), caseA.Tilt()} }, func(in any) error {
		f := in.(*flexInput)
		k := align.Coupling{Span: f.Span}
		_, _, err := k.FlexTilts(f.C)
		_, other := k.FromFlexTilts(f.Stationary, f.Movable)
		return errors.Join(err, other)
	}, false},
	{"SlopeFromGap", func(fataler) any { return &slopeInput{100 * um, 30, 150 * mm} }, func(in any) error {
		s := in.(*slopeInput)
		_, err := align.SlopeFromGap(s.Opening, s.At, s.Diameter)
		return err
	}, true},
	{"NewCovariance", func(fataler) any { return &covarianceInput{line(0.003, 1e-5, 0.004, 2e-5), uncorrelated} }, func(in any) error {
		c := in.(*covarianceInput)
		_, err := align.NewCovariance(align.Stated, c.U, c.Correlation)
		return err
	}, false},
}

// NaN and the infinities, in every field of every input, are refused; where the
// fault can name the field it does.
func TestNoNumberIsRefused(t *testing.T) {
	for _, e := range entries {
		t.Run(e.name, func(t *testing.T) {
			if err := e.call(e.input(t)); err != nil {
				t.Fatalf("the sound input is refused: %v", err)
			}
			for i, n := range numbers("", reflect.ValueOf(e.input(t))) {
				if strings.HasPrefix(n.path, "/set/u") { // Predict does not look at it
					continue
				}
				for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
					input := e.input(t)
					numbers("", reflect.ValueOf(input))[i].value.SetFloat(bad)
					err := e.call(input)
					if len(units.Faults(err)) == 0 {
						t.Errorf("%v at %s: got %v, want a fault", bad, n.path, err)
						continue
					}
					if e.paths && units.Faults(err)[0].Path != n.path {
						t.Errorf("%v at %s: the fault is %v", bad, n.path, err)
					}
				}
			}
		})
	}
}

// Finite numbers of any size, one at a time in any field, are refused or answered
// with finite numbers, and never with NaN.
func TestHugeAndTinyNumbers(t *testing.T) {
	sizes := []float64{1e300, -1e300, math.MaxFloat64, 1e160, -1e160, 1e100, 1e-100, 1e-160, 1e-300, math.SmallestNonzeroFloat64}
	for _, size := range sizes {
		t.Run(fmt.Sprint(size), func(t *testing.T) {
			for i, n := range numbers("", reflect.ValueOf(full(t))) {
				input := full(t).(*setsInput)
				numbers("", reflect.ValueOf(input))[i].value.SetFloat(size)
				checkFinite(t, n.path, input.Sets)
			}
		})
	}
}

// All numbers of a kind at once, from far too small to far too large. Where
// readings scatter and are answered with an uncertainty, it is not zero, and
// however large they are they do not agree to rounding.
func TestScaledToTheLimits(t *testing.T) {
	wobbly := []align.Set{
		{Probe: reverse()[0].Probe, Readings: at(mm, quarters, 0, 0.10, 0.30, 0.24)},
		{Probe: reverse()[1].Probe, Readings: at(mm, quarters, 0, -0.2, -0.3, -0.12)},
	}
	for power := -300; power <= 300; power += 20 {
		t.Run(fmt.Sprintf("1e%d", power), func(t *testing.T) {
			factor := units.Length(math.Pow(10, float64(power)))
			scaled := each(wobbly, func(s *align.Set) {
				for i := range s.Readings {
					s.Readings[i].Value *= factor
				}
			})
			checkFinite(t, "readings", scaled)
			checkFinite(t, "readings and uncertainties", state(scaled, factor))
			checkFinite(t, "stations", each(wobbly, func(s *align.Set) { s.Probe.Station *= factor }))
			f, err := align.Fit(scaled...)
			switch basis := f.Cov.Basis; {
			case err != nil:
			case basis == align.Scatter && !(f.Scatter > 0):
				t.Errorf("an uncertainty from a scatter of %v", f.Scatter)
			case basis == align.Unknown && power >= 0:
				t.Errorf("the basis is unknown, the scatter %v, as if the readings agreed to rounding", f.Scatter)
			}
		})
	}
}

// What can be reckoned with ends at 1000 km, and at 0.001 nm where readings are
// weighed by it: the limits themselves are still good, a thousandth beyond is
// out of range, at its own field.
func TestLimitsOfNumbers(t *testing.T) {
	rows := []struct {
		path string
		set  func(*align.Set, float64) // of a size in the quantity's own count
		size float64
		good []float64
		bad  []float64
	}{
		{"/sets/0/probe/station", func(s *align.Set, v float64) { s.Probe.Station = units.Length(v) }, 1e15, []float64{1, -1, 0}, []float64{1.001, -1.001}},
		{"/sets/0/readings/1/value", func(s *align.Set, v float64) { s.Readings[1].Value = units.Length(v) }, 1e15, []float64{1, -1}, []float64{1.001, -1.001}},
		{"/sets/0/sag", func(s *align.Set, v float64) { s.Sag = units.Length(v) }, 1e15, []float64{1}, []float64{1.001}},
		{"/sets/0/readings/1/u", func(s *align.Set, v float64) { s.Readings[1].U = units.Length(v) }, 1e15, []float64{1}, []float64{1.001}},
		{"/sets/0/readings/1/u", func(s *align.Set, v float64) { s.Readings[1].U = units.Length(v) }, 1e-3, []float64{1}, []float64{0.999}},
	}
	for _, row := range rows {
		fit := func(v float64) error {
			sets := each(state(read(t, caseA, reverse(), quarters...), 5*um), func(*align.Set) {})
			row.set(&sets[0], v*row.size)
			_, err := align.Fit(sets...)
			return err
		}
		for _, v := range row.good {
			for _, f := range units.Faults(fit(v)) {
				if f.Code == units.OutOfRange && f.Path == row.path {
					t.Errorf("%g at %s: refused: %v", v*row.size, row.path, f)
				}
			}
		}
		for _, v := range row.bad {
			checkFault(t, fit(v), units.OutOfRange, row.path)
		}
	}
}

// checkFinite asks for faults with paths, or for numbers throughout.
func checkFinite(tb fataler, what string, sets []align.Set) {
	tb.Helper()
	f, err := align.Fit(sets...)
	if err != nil {
		checkFaults(tb, what, err)
		return
	}
	list := []float64{f.Condition, float64(f.Scatter), f.Cov.DoF}
	p, u := plain(f.Value), plain(f.Cov.Standard())
	list = append(list, p[:]...)
	if f.Cov.Basis != align.Unknown {
		list = append(list, u[:]...)
	}
	for _, row := range f.Cov.Correlation() {
		list = append(list, row[:]...)
	}
	residuals, err := align.Residuals(nil, sets, f)
	if err != nil {
		tb.Fatalf("%s: Fit answers, Residuals does not: %v", what, err)
	}
	for _, r := range residuals {
		list = append(list, float64(r.Value), r.Leverage, r.Standardised)
	}
	for _, x := range list {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			tb.Fatalf("%s: the answer has a number that is none: %+v, residuals %v", what, f, residuals)
			return
		}
	}
	if _, err := json.Marshal(f); err != nil {
		tb.Fatalf("%s: %v", what, err)
	}
}

// checkFaults asks that an error is made of faults that say where and what.
func checkFaults(tb fataler, what string, err error) {
	tb.Helper()
	list := units.Faults(err)
	if len(list) == 0 {
		tb.Fatalf("%s: %v holds no fault", what, err)
	}
	for _, f := range list {
		if f.Code == "" || f.Path == "" || f.Want == "" || strings.HasSuffix(f.Want, "the ") {
			tb.Fatalf("%s: fault %+v does not say all", what, *f)
		}
	}
}

// The same of the entry points that return plain numbers.
func TestHugeAndTinyElsewhere(t *testing.T) {
	finite := func(what string, err error, list ...float64) {
		t.Helper()
		if err != nil {
			checkFaults(t, what, err)
			return
		}
		for _, x := range list {
			if math.IsNaN(x) || math.IsInf(x, 0) {
				t.Errorf("%s: answered with %v", what, list)
				return
			}
		}
	}
	stated := estimate(t, align.Stated, 0)
	for _, size := range []float64{1e300, 1e200, 1e160, 1e-160, 1e-300, math.SmallestNonzeroFloat64} {
		x := units.Length(size)
		for _, e := range []align.Estimate{align.Exact(caseA), stated, {}, {Cov: stated.Cov}} {
			m, err := e.Corrections(align.Foot{X: x, U: x})
			what := fmt.Sprintf("%v, %v: foot at %g", e.Value, e.Cov.Basis, size)
			if err == nil {
				finite(what, nil, float64(m[0].By.Horizontal), float64(m[0].By.Vertical), float64(m[0].U.Horizontal), float64(m[0].U.Vertical))
			} else {
				checkFaults(t, what, err)
			}
		}
		l, err := align.Through(align.Point{X: -x, W: -x}, align.Point{X: x, W: x})
		finite(fmt.Sprintf("through points %g out", size), err, float64(l.Offset), float64(l.Slope))
		l, err = align.Through(align.Point{W: 1e6}, align.Point{X: x, W: -1e6})
		finite(fmt.Sprintf("through points %g apart", size), err, float64(l.Offset), float64(l.Slope))
		tilt, err := align.SlopeFromGap(1e6, 30, x)
		finite(fmt.Sprintf("gap of 1 mm across %g", size), err, float64(tilt.Horizontal), float64(tilt.Vertical))
		opening, at, err := align.Coupling{Diameter: x}.Gap(caseA)
		finite(fmt.Sprintf("gap across %g", size), err, float64(opening), float64(at))
		s, m, err := align.Coupling{Span: x}.FlexTilts(caseA)
		finite(fmt.Sprintf("flex planes %g apart", size), err, float64(s.Horizontal), float64(s.Vertical), float64(m.Horizontal), float64(m.Vertical))
		c, err := align.Coupling{Span: x}.FromFlexTilts(align.Tilt{Vertical: units.Slope(size)}, align.Tilt{})
		finite(fmt.Sprintf("flex planes %g apart, back", size), err, float64(c.Vertical.Offset), float64(c.Vertical.Slope))
		v, err := align.NewCovariance(align.Stated, align.Centreline{Vertical: align.Line{Offset: x, Slope: units.Slope(size)}}, uncorrelated)
		got := v.Standard().Vertical
		finite(fmt.Sprintf("covariance of %g", size), err, float64(got.Offset), float64(got.Slope), v.Correlation()[0][2])
		r, err := rim(align.Stationary, 1).Predict(align.Centreline{Vertical: align.Line{Offset: x}, Horizontal: align.Line{Offset: -x}}, 45, 225)
		if err == nil {
			finite(fmt.Sprintf("prediction of %g", size), nil, float64(r[0].Value), float64(r[1].Value))
		}
	}
}
