package align_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// A sweep that is read again with the bracket as it was: what the two have in
// common is wrong in both, so that the fit follows as if one were changed.
func TestMountingByDifferences(t *testing.T) {
	for _, kind := range everyKind {
		for _, share := range shares {
			if !share.used(kind) {
				continue
			}
			t.Run(kind.String()+"/"+share.name, func(t *testing.T) {
				rapid.Check(t, func(t *rapid.T) {
					sets := drawShared(t, kind)
					again := sets[0]
					again.Readings = drawErrors(t, again.Readings)
					sets = append(state([]align.Set{again}, 3*um), sets...)
					want := matrix(mustFit(t, sets...).Cov)
					d := derivativeOfAll(t, sets, []int{0, 1}, share.err, share.step)
					for i := range want {
						for j := range want {
							want[i][j] += share.u * share.u * d[i] * d[j]
						}
					}
					doubtful := each(sets, func(*align.Set) {})
					for i := range 2 {
						doubtful[i].Mounting = "near side"
						share.state(&doubtful[i].U, share.u)
					}
					nearMatrix(t, "covariance", matrix(mustFit(t, doubtful...).Cov), want, 1e-6)
				})
			})
		}
	}
}

// drawErrors returns readings of their own, each off by up to 20 um.
func drawErrors(t *rapid.T, readings []align.Reading) []align.Reading {
	readings = slices.Clone(readings)
	for i := range readings {
		readings[i].Value += units.Length(rapid.Float64Range(-20, 20).Draw(t, "error, um")) * um
	}
	return readings
}

// Sixteen sweeps make the readings four times better, and the tape no better.
func TestRepeatsDoNotAverageTheTapeOut(t *testing.T) {
	once := state(read(t, caseA, reverse(), quarters...), 4*um)
	for i := range once {
		once[i].U.Station, once[i].Mounting = 2*mm, []string{"near", "far"}[i]
	}
	var repeated []align.Set
	for range 16 {
		repeated = append(repeated, once...)
	}
	readings := mustFit(t, state(read(t, caseA, reverse(), quarters...), 4*um)...).Cov.Standard()
	all := mustFit(t, once...).Cov.Standard()
	got := mustFit(t, repeated...).Cov.Standard()
	tape := func(all, readings units.Slope) float64 { return float64(all*all - readings*readings) }
	want := math.Sqrt(tape(all.Vertical.Slope, readings.Vertical.Slope) + float64(readings.Vertical.Slope*readings.Vertical.Slope)/16)
	near(t, "slope", got.Vertical.Slope, units.Slope(want), units.Slope(want*1e-9))

	for i := range repeated {
		repeated[i].Mounting = "" // a new mounting and a new measurement each time
	}
	near(t, "slope, mounted anew", mustFit(t, repeated...).Cov.Standard().Vertical.Slope, all.Vertical.Slope/4, all.Vertical.Slope*1e-9)
}

func TestMountingsRefuse(t *testing.T) {
	sound := func() []align.Set {
		sets := state(read(t, caseA, reverse(), quarters...), 4*um)
		sets = append(sets, sets[1])
		for i := range sets {
			sets[i].U.Station, sets[i].Mounting = 2*mm, []string{"near", "far", "far"}[i]
		}
		return sets
	}
	rows := []struct {
		name   string
		change func(*align.Set)
	}{
		{"another station", func(s *align.Set) { s.Probe.Station += um }},
		{"another sag", func(s *align.Set) { s.Sag = um }},
		{"another view", func(s *align.Set) { s.View = align.FromStationary }},
		{"another tape", func(s *align.Set) { s.U.Station = mm }},
		{"another clock", func(s *align.Set) { s.U.Clock = 0.01 }},
		{"the name of another probe", func(s *align.Set) { s.Mounting = "near" }},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			sets := sound()
			sets[2].U.Reading, sets[2].U.Angle = um, 0.01 // these are each sweep's own
			mustFit(t, sets...)
			row.change(&sets[2])
			_, err := align.Fit(sets...)
			checkFault(t, err, units.Conflict, "/sets/2/mounting")
		})
	}
}
