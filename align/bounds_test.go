package align_test

import (
	"strconv"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// manySets are sweeps that each have a mounting of their own.
func manySets(n int) []align.Set {
	sets := make([]align.Set, n)
	for i := range sets {
		sets[i] = rim(align.Stationary, 40+float64(i))
		sets[i].Mounting = strconv.Itoa(i)
		sets[i].U.Station = mm
		for _, t := range []units.Clock{units.Twelve, units.Three, units.Six, units.Nine} {
			sets[i].Readings = append(sets[i].Readings, align.Reading{At: t, Value: units.Length(i%7) * um, U: um})
		}
	}
	return sets
}

func manyFeet(n int) []align.Foot {
	feet := make([]align.Foot, n)
	for i := range feet {
		feet[i] = align.Foot{Name: strconv.Itoa(i), X: units.Length(i) * mm}
	}
	return feet
}

// Lists that no job has are one fault and are not walked, however long; as many as may
// be are answered.
func TestLongListsAreRefused(t *testing.T) {
	still := align.Exact(align.Centreline{})
	for _, row := range []struct {
		name string
		path string
		most int
		try  func(n int) error
	}{
		{"fit", "/sets", align.MostSets, func(n int) error { _, err := align.Fit(manySets(n)...); return err }},
		{"exact fit", "/sets", align.MostSets, func(n int) error { _, err := align.FitExact(manySets(n)...); return err }},
		{"budget", "/sets", align.MostSets, func(n int) error { _, err := align.Budget(manySets(n)...); return err }},
		{"corrections", "/feet", align.MostFeet, func(n int) error { _, err := still.Corrections(manyFeet(n)...); return err }},
	} {
		if err := row.try(row.most); err != nil {
			t.Errorf("%s: %v", row.name, err)
		}
		for _, n := range []int{row.most + 1, 100_000} {
			f := units.Faults(row.try(n))
			if len(f) != 1 || f[0].Code != units.OutOfRange || f[0].Path != row.path || f[0].Value != strconv.Itoa(n) {
				t.Errorf("%s: %.200v", row.name, f)
			}
		}
	}
}
