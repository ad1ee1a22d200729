package arc_test

import (
	"math"
	"reflect"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// The clock's rotation, the dial's zero and a scale of everything change no
// probability; the order of the sets changes nothing but their order.
func TestDiagnoseProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		stated := rapid.SampledFrom([]units.Length{0, 5 * um}).Draw(t, "stated")
		sets := filled(t, drawLine(t), sensorPair(stated, 0, 50, 90, 140, 130, 200, 260, 310, 360))
		for i := range sets {
			for j := range sets[i].Readings {
				sets[i].Readings[j].Value += units.Length(rapid.Float64Range(-9, 9).Draw(t, "error")) * um
			}
		}
		d := mustDiagnose(t, sets...)
		turn := units.Clock(rapid.IntRange(-360, 360).Draw(t, "turn"))
		own := ownReadings(sets)
		for i := range own {
			own[i].U.Reading *= 4
			for j := range own[i].Readings {
				r := &own[i].Readings[j]
				r.Value = 4 * (r.Value + 321*um)
				r.At += turn
			}
		}
		slices.Reverse(own)
		e := mustDiagnose(t, own...)
		near(t, "scatter", e.Scatter.P, d.Scatter.P, 1e-6)
		for i, s := range d.Sweeps {
			o := e.Sweeps[1-i]
			near(t, "return", o.Return.P, s.Return.P, 1e-6)
			near(t, "drift", o.Drift.P, s.Drift.P, 1e-6)
			near(t, "drift", o.Drift.Value, 4*s.Drift.Value, 1e-2)
			near(t, "covered", o.Arc.Covered, s.Arc.Covered, 1e-9)
			near(t, "gap", o.Gap, s.Gap, 1e-9)
			if !slices.Equal(o.Reversed, s.Reversed) {
				t.Errorf("reversed %v, %v", o.Reversed, s.Reversed)
			}
		}
		if len(d.Warnings) != len(e.Warnings) {
			t.Errorf("%v, %v", d.Warnings, e.Warnings)
		}
	})
}

// Angles that are uncertain explain residuals where the reading changes fast.
func TestDiagnoseKnowsOfAngles(t *testing.T) {
	sets := filled(t, line(2, 0, 0, 0), sensorPair(2*um, nine(360)...))
	sets = spoilt(sets, 0, 0, 40*um)
	if d := mustDiagnose(t, sets...); d.Warnings == nil {
		t.Error("angles exact: nothing found")
	}
	for i := range sets {
		sets[i].U.Angle = 1.5 * units.Degree
	}
	d := mustDiagnose(t, sets...)
	checkWarned(t, "angles good to 1.5 degrees", d.Warnings)
	at, slope := sets[0].Readings[0].At, 2e6 // nanometres a radian, at 12
	_, cos := at.SinCos()
	dev := math.Hypot(2e3, slope*cos*1.5*math.Pi/180)
	r := d.Residuals[0]
	near(t, "standardised", r.Standardised, float64(r.Value)/dev/math.Sqrt(1-r.Leverage), 0.02*math.Abs(r.Standardised))
}

func TestDiagnoseRefuses(t *testing.T) {
	sound := wiggled(filled(t, caseA, sensorPair(5*um, nine(180)...)))
	rows := []struct {
		name string
		bad  func(f *align.Fitted, s []align.Set) []align.Set
		want string
	}{
		{"no sets", func(_ *align.Fitted, _ []align.Set) []align.Set { return nil }, "missing /sets"},
		{"no carrier", func(_ *align.Fitted, s []align.Set) []align.Set { s[1].Probe = align.Probe{Kind: align.Rim}; return s }, "missing /sets/1/probe/carrier"},
		{"a scatter that is none", func(f *align.Fitted, s []align.Set) []align.Set { f.Scatter = units.Length(math.NaN()); return s }, "not_finite /fit/scatter"},
		{"a fit of fewer readings", func(f *align.Fitted, s []align.Set) []align.Set { f.DegreesOfFreedom--; return s }, "conflict /fit/degrees_of_freedom"},
		{"a fit of other sets", func(_ *align.Fitted, s []align.Set) []align.Set {
			s[0].Readings = s[0].Readings[:8]
			return s
		}, "conflict /fit/degrees_of_freedom"},
	}
	for _, row := range rows {
		f, sets := mustFit(t, sound...), ownReadings(sound)
		_, err := arc.Diagnose(f, row.bad(&f, sets)...)
		if row.name != "no sets" {
			_, err = arc.Diagnose(f, sets...)
		}
		if got := codesAndPaths(err); !slices.Equal(got, []string{row.want}) {
			t.Errorf("%s: got %v, want %s", row.name, got, row.want)
		}
	}
	mustDiagnose(t, sound...)
}

func TestDiagnoseZeroValues(t *testing.T) {
	var d arc.Diagnosis
	if d.Scatter.Known || d.Warnings != nil || d.Sweeps != nil {
		t.Error("the zero diagnosis has found something")
	}
	if (arc.Sweep{}).Returned || (arc.Effect{}).Basis != align.Declared {
		t.Error("the zero sweep came back, or its effect was measured")
	}
}

func TestDiagnoseJSON(t *testing.T) {
	sets := filled(t, caseA, sensorPair(5*um, 0, 60, 50, 120, 200, 280, 360))
	sets[0].Readings[3].Value += 70 * um
	checkJSON(t, mustDiagnose(t, sets...), `"reversed":[2]`, `"return":{`, `"drift":{`, `"known":true`, `"warnings":[`)
	if name := untagged(reflect.TypeFor[arc.Diagnosis](), reflect.TypeFor[arc.Sweep](), reflect.TypeFor[arc.Effect](), reflect.TypeFor[arc.Agreeing](), reflect.TypeFor[arc.Weight]()); name != "" {
		t.Errorf("%s has no name in JSON", name)
	}
}

// untagged names a field without a name in JSON.
func untagged(types ...reflect.Type) string {
	for _, typ := range types {
		for field := range typ.Fields() {
			if field.Tag.Get("json") == "" {
				return typ.Name() + "." + field.Name
			}
		}
	}
	return ""
}
