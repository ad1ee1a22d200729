package dial_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// fair is a sweep that obeys the validity rule, far from every warning.
func fair() sweep { return dial.Quarters(units.Micrometre, 0, 100, 300, 200) }

// missing is a fair sweep whose reading at 3 makes it miss the rule by a length.
func missing(by units.Length) sweep {
	s := fair()
	s[1].Value -= by
	return s
}

// returning is a fair sweep that comes back to 12 o'clock with a drift.
func returning(by units.Length) sweep {
	return append(fair(), align.Reading{At: units.Twelve, Value: by})
}

// Exactly on the limit passes, either way, and a nanometre over it warns; the
// answer stays what the readings say. Zero stands for the default, a mil.
func TestLimits(t *testing.T) {
	const nm, um, mil = units.Nanometre, units.Micrometre, units.Mil
	for _, row := range []struct {
		name     string
		sweep    sweep
		limits   dial.Limits
		warnings int
	}{
		{"no miss", fair(), dial.Limits{}, 0},
		{"default, on it", missing(1 * mil), dial.Limits{}, 0},
		{"default, on it the other way", missing(-1 * mil), dial.Limits{}, 0},
		{"default, over it", missing(1*mil + nm), dial.Limits{}, 1},
		{"default, over it the other way", missing(-1*mil - nm), dial.Limits{}, 1},
		{"a third of a nanometre over is rounding", missing(1*mil + nm/3), dial.Limits{}, 0},
		{"1.5 mil, on it", missing(1.5 * mil), dial.Limits{Miss: 1.5 * mil}, 0},
		{"1.5 mil, over it", missing(1.5*mil + nm), dial.Limits{Miss: 1.5 * mil}, 1},
		{"0.1 + 0.2 mil, on it", missing(0.1*mil + 0.2*mil), dial.Limits{Miss: 0.3 * mil}, 0},
		{"tighter than the default", missing(10 * um), dial.Limits{Miss: 9 * um}, 1},
		{"wider than the default", missing(90 * um), dial.Limits{Miss: 90 * um}, 0},
		{"limit of the return does not count for the miss", missing(26 * um), dial.Limits{Return: 90 * um}, 1},

		{"returned", returning(0), dial.Limits{}, 0},
		{"return, on the default", returning(-1 * mil), dial.Limits{}, 0},
		{"return, over the default", returning(-1*mil - nm), dial.Limits{}, 1},
		{"return, on its limit", returning(3 * um), dial.Limits{Return: 3 * um}, 0},
		{"return, over its limit", returning(3*um + nm), dial.Limits{Return: 3 * um}, 1},
		{"limit of the miss does not count for the return", returning(26 * um), dial.Limits{Miss: 90 * um}, 1},
		{"both", append(missing(30*um), align.Reading{Value: 40 * um}), dial.Limits{}, 2},
		{"no miss can be told of three", missing(90 * um)[:3], dial.Limits{}, 0},
	} {
		t.Run(row.name, func(t *testing.T) {
			for _, m := range methods {
				checkLimits(t, m, row.sweep, row.limits, row.warnings)
			}
		})
	}
}

// checkLimits tests that a method warns of a sweep so often, wherever the sweep
// stands, and otherwise not.
func checkLimits(t *testing.T, m method, s sweep, limits dial.Limits, warnings int) {
	t.Helper()
	for place, sweeps := range [][]sweep{{s, fair()}, {fair(), s}} {
		got := solved(t, m.limits(m.with(soundJobs[m.name], sweeps...), limits))
		if len(got.Warnings) != warnings {
			t.Errorf("%s: got warnings %v, want %d", m.name, got.Warnings, warnings)
		}
		for _, w := range got.Warnings {
			if want := "/" + m.fields[place] + "/readings"; w.Path != want || w.Code != units.Suspect {
				t.Errorf("%s: got %v at %s, want suspect at %s", m.name, w.Code, w.Path, want)
			}
		}
		free := solved(t, m.limits(m.with(soundJobs[m.name], sweeps...), dial.Limits{Miss: units.Metre, Return: units.Metre}))
		if got.Value != free.Value || len(free.Warnings) != 0 {
			t.Errorf("%s: the limits change the answer, or a metre is not enough: %v", m.name, free.Warnings)
		}
	}
}

// What a check holds, by hand: a sag of 10 um taken off a rim at 12 and put on at
// 6; a reading as it came from its own zero; 12 + 6 - 3 - 9.
func TestChecks(t *testing.T) {
	const um = units.Micrometre
	rim := dial.Rim{Station: 90 * units.Millimetre, Sag: 10 * um}
	bore := dial.Rim{Station: -60 * units.Millimetre, Sag: 10 * um, Bore: true}
	job := dial.Reverse{CarriedByStationary: rim, CarriedByMovable: bore, Limits: dial.Limits{Miss: units.Millimetre}}
	readings := dial.Quarters(um, 5, 100, 300, 200)
	readings = append(readings, align.Reading{At: 360, Value: 9 * um})
	for _, row := range []struct {
		name  string
		view  align.View
		first sweep
		want  [2]dial.Check
	}{
		{
			"all read, and returned", align.FromMovable, readings,
			[2]dial.Check{
				{Quarters: [4]units.Length{-5 * um, 100 * um, 310 * um, 200 * um}, Miss: 5 * um, Return: 4 * um, Returned: true},
				{Quarters: [4]units.Length{15 * um, 100 * um, 290 * um, 200 * um}, Miss: 5 * um, Return: 4 * um, Returned: true},
			},
		},
		{
			"from the stationary end 3 and 9 are exchanged", align.FromStationary, readings[:4],
			[2]dial.Check{
				{Quarters: [4]units.Length{-5 * um, 200 * um, 310 * um, 100 * um}, Miss: 5 * um},
				{Quarters: [4]units.Length{15 * um, 200 * um, 290 * um, 100 * um}, Miss: 5 * um},
			},
		},
		{
			"9 not read: 5 + 300 - 100 = 205 whatever the sag", align.FromMovable, readings[:3],
			[2]dial.Check{
				{Quarters: [4]units.Length{-5 * um, 100 * um, 310 * um, 205 * um}, Completed: true, Supplied: units.Nine},
				{Quarters: [4]units.Length{15 * um, 100 * um, 290 * um, 205 * um}, Completed: true, Supplied: units.Nine},
			},
		},
		{
			"9 not read from the stationary end, which is 3", align.FromStationary, readings[:3],
			[2]dial.Check{
				{Quarters: [4]units.Length{-5 * um, 205 * um, 310 * um, 100 * um}, Completed: true, Supplied: units.Three},
				{Quarters: [4]units.Length{15 * um, 205 * um, 290 * um, 100 * um}, Completed: true, Supplied: units.Three},
			},
		},
		{
			// 12 = 100 + 200 - 300 = 0 from the dial; a sag of 10 um takes 6 to 310 and
			// 12 to -10.
			"12 not read", align.FromMovable, readings[1:4],
			[2]dial.Check{
				{Quarters: [4]units.Length{-10 * um, 100 * um, 310 * um, 200 * um}, Completed: true},
				{Quarters: [4]units.Length{10 * um, 100 * um, 290 * um, 200 * um}, Completed: true},
			},
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			job.View = row.view
			job.CarriedByStationary.Readings, job.CarriedByMovable.Readings = row.first, row.first
			if diff := cmp.Diff(row.want, solved(t, job).Checks); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

// The return to the start is a check and no reading: it changes nothing of the
// answer, and the general form leaves it out.
func TestReturnIsNoReading(t *testing.T) {
	for _, m := range methods {
		bare := soundJobs[m.name]
		without := m.with(bare, fair(), fair())
		with := m.with(bare, returning(20*units.Micrometre), returning(-20*units.Micrometre))
		if diff := cmp.Diff(without.Sets(), with.Sets()); diff != "" {
			t.Errorf("%s: sets (-without +with return):\n%s", m.name, diff)
		}
		a, b := solved(t, without), solved(t, with)
		if diff := cmp.Diff(a.Fitted, b.Fitted, cmpopts.EquateComparable(align.Covariance{})); diff != "" {
			t.Errorf("%s: answer (-without +with return):\n%s", m.name, diff)
		}
		three := m.with(bare, append(fair()[:3], fair()[0]), fair())
		if c := solved(t, three).Checks[0]; !c.Returned || !c.Completed || c.Supplied != units.Nine {
			t.Errorf("%s: three readings and the return: %+v", m.name, c)
		}
	}
}

// The warnings of the general fit carry the method's own paths and come with an
// answer: a dial that did not move, and one read in the wrong unit.
func TestWarningsOfTheFit(t *testing.T) {
	still := dial.Quarters(units.Micrometre, 7, 7, 7, 7)
	coarse := dial.Quarters(units.Millimetre, 0, 20, 40, 20)
	for _, m := range methods {
		got := solved(t, m.with(soundJobs[m.name], still, coarse))
		var paths []string
		for _, w := range got.Warnings {
			paths = append(paths, w.Code.Error()+" "+w.Path)
		}
		want := []string{"suspect /" + m.fields[0] + "/readings", "suspect /" + m.fields[1] + "/readings"}
		if diff := cmp.Diff(want, paths); diff != "" {
			t.Errorf("%s (-want +got):\n%s", m.name, diff)
		}
	}
}
