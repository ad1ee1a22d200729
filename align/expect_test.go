package align_test

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// The uncertainty of a predicted reading against changing each thing that it
// rests on by hand and predicting again, for every kind.
func TestExpectByDifferences(t *testing.T) {
	for _, kind := range everyKind {
		t.Run(kind.String(), func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				found := mustFit(t, state(read(t, drawLine(t), reverse(), quarters...), 3*um)...).Estimate
				set := drawShared(t, kind)[0]
				set.Readings, set.U = nil, align.Uncertainty{}
				first := units.Clock(rapid.Float64Range(0, 360).Draw(t, "first"))
				clocks := []units.Clock{first, first + units.Clock(rapid.Float64Range(20, 340).Draw(t, "clock"))}
				shown := func(c align.Centreline, s align.Set, clocks ...units.Clock) float64 {
					r, err := s.Predict(c, clocks...)
					if err != nil {
						t.Fatal(err)
					}
					return inMM(r[1].Value)
				}
				want := ofEstimate(found, func(c align.Centreline) float64 { return shown(c, set, clocks...) })
				add := func(u float64, plus, minus float64, h float64) {
					d := (plus - minus) / (2 * h)
					want += u * u * d * d
				}
				for _, share := range shares {
					if !share.used(kind) || share.name == "clock" {
						continue
					}
					share.state(&set.U, share.u)
					plus, minus := set, set
					share.err(&plus, share.step/10)
					share.err(&minus, -share.step/10)
					add(share.u, shown(found.Value, plus, clocks...), shown(found.Value, minus, clocks...), share.step/10)
				}
				const clock, angle, h = 0.02, 0.015, 1e-4
				turn := func(c units.Clock, h float64) units.Clock { return c + units.Clock(h*180/math.Pi) }
				add(clock, shown(found.Value, set, turn(clocks[0], h), turn(clocks[1], h)), shown(found.Value, set, turn(clocks[0], -h), turn(clocks[1], -h)), h)
				add(angle, shown(found.Value, set, turn(clocks[0], h), clocks[1]), shown(found.Value, set, turn(clocks[0], -h), clocks[1]), h)
				add(angle, shown(found.Value, set, clocks[0], turn(clocks[1], h)), shown(found.Value, set, clocks[0], turn(clocks[1], -h)), h)
				const reading = 0.004
				want += 2 * reading * reading
				set.U.Clock, set.U.Angle, set.U.Reading = clock, angle, length(reading)

				got, err := set.Expect(found, clocks...)
				if err != nil {
					t.Fatal(err)
				}
				near(t, "u", inMM(got[1].U), math.Sqrt(want), 1e-6*math.Sqrt(want))
				if got[0].U != 0 || got[0].Value != 0 {
					t.Errorf("the first reading is %v, u %v", got[0].Value, got[0].U)
				}
				near(t, "value", inMM(got[1].Value), shown(found.Value, set, clocks...), 1e-15)
			})
		})
	}
}

// ofEstimate is the variance of a linear function of a centreline, by its change
// with each of the four numbers.
func ofEstimate(e align.Estimate, f func(align.Centreline) float64) float64 {
	var d [4]float64
	for i := range d {
		var one [4]float64
		one[i] = 1
		d[i] = f(line(one[0], one[1], one[2], one[3])) - f(align.Centreline{})
	}
	v, sum := matrix(e.Cov), 0.0
	for i := range d {
		for j := range d {
			sum += d[i] * v[i][j] * d[j]
		}
	}
	return sum
}

func TestExpectOfUnknownStatesNothing(t *testing.T) {
	set := rim(align.Stationary, 40)
	set.U.Station = mm
	got, err := set.Expect(align.Estimate{Value: caseA, Cov: align.Covariance{Basis: align.Unknown}}, quarters...)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range got {
		if r.U != 0 {
			t.Errorf("at %v: u %v", r.At, r.U)
		}
	}
}

func TestExpectRefuses(t *testing.T) {
	set, e := rim(align.Stationary, 40), align.Exact(caseA)
	if _, err := set.Expect(e, quarters...); err != nil {
		t.Fatalf("the sound twin: %v", err)
	}
	_, err := set.Expect(e)
	checkFault(t, err, units.Missing, "/at")
	bad := e
	bad.Value.Vertical.Slope = units.Slope(math.NaN())
	_, err = set.Expect(bad)
	checkFault(t, err, units.Missing, "/at")
	checkFault(t, err, units.NotFinite, "/estimate/value/vertical/slope")
	set.U.Station = -mm
	_, err = set.Expect(e, quarters...)
	checkFault(t, err, units.OutOfRange, "/u/station")
	set.U.Station, set.Probe.Carrier = 0, 0
	_, err = set.Expect(e, quarters...)
	checkFault(t, err, units.Missing, "/probe/carrier")
}

// The tilts at the flex planes by hand: offset and slope independent, so that
// u^2 = (u_o/L)^2 + (u_s/2)^2; then with what the two have in common, against the
// change of the tilts with each of the four numbers.
func TestFlexUncertainty(t *testing.T) {
	k := align.Coupling{Span: 800 * mm}
	cov, err := align.NewCovariance(align.Stated, line(0.008, 30e-6, 0.004, 10e-6), [4][4]float64{{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}})
	if err != nil {
		t.Fatal(err)
	}
	s, m, err := k.FlexUncertainty(cov)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "stationary, horizontal", s.Horizontal, units.Slope(math.Hypot(10e-6, 15e-6)), 1e-18)
	near(t, "movable, vertical", m.Vertical, units.Slope(math.Hypot(5e-6, 5e-6)), 1e-18)

	found := mustFit(t, state(read(t, caseA, rimFace(), even(5, 30, 100)...), 3*um)...).Estimate
	s, m, err = k.FlexUncertainty(found.Cov)
	if err != nil {
		t.Fatal(err)
	}
	tilts := func(c align.Centreline) (s, m align.Tilt) {
		s, m, err := k.FlexTilts(c)
		if err != nil {
			t.Fatal(err)
		}
		return s, m
	}
	rows := []struct {
		name string
		got  units.Slope
		of   func(align.Centreline) float64
	}{
		{"stationary, horizontal", s.Horizontal, func(c align.Centreline) float64 { s, _ := tilts(c); return float64(s.Horizontal) }},
		{"stationary, vertical", s.Vertical, func(c align.Centreline) float64 { s, _ := tilts(c); return float64(s.Vertical) }},
		{"movable, horizontal", m.Horizontal, func(c align.Centreline) float64 { _, m := tilts(c); return float64(m.Horizontal) }},
		{"movable, vertical", m.Vertical, func(c align.Centreline) float64 { _, m := tilts(c); return float64(m.Vertical) }},
	}
	for _, row := range rows {
		want := math.Sqrt(ofEstimate(found, row.of))
		near(t, row.name, float64(row.got), want, 1e-9*want)
	}
}

func TestFlexUncertaintyRefuses(t *testing.T) {
	_, _, err := align.Coupling{}.FlexUncertainty(align.Covariance{})
	checkFault(t, err, units.Missing, "/span")
	_, _, err = align.Coupling{Span: mm}.FlexUncertainty(align.Covariance{Basis: 9})
	checkFault(t, err, units.OutOfRange, "/cov/basis")
	s, _, err := align.Coupling{Span: mm}.FlexUncertainty(align.Covariance{Basis: align.Unknown})
	if err != nil || !math.IsNaN(float64(s.Vertical)) {
		t.Errorf("unknown: %v, %v", s, err)
	}
}
