package dial_test

import (
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
)

// A zero value never passes for a job: each method says all that it lacks. What
// is not a fault has a meaning at zero: a station at the coupling centre, a view
// from behind the movable machine, no sag.
func TestZeroMethods(t *testing.T) {
	for _, row := range []struct {
		zero solver
		want []string
	}{
		{dial.Reverse{}, []string{
			"conflict /carried_by_movable/station", "missing /carried_by_stationary/readings", "missing /carried_by_movable/readings",
		}},
		{dial.RimFace{}, []string{"missing /carrier", "missing /rim/readings", "missing /face/diameter", "missing /face/readings"}},
		{dial.FaceFace{}, []string{
			"missing /at_stationary/diameter", "missing /span", "missing /at_stationary/readings",
			"missing /at_movable/diameter", "missing /at_movable/readings",
		}},
		{dial.RimGap{}, []string{"missing /carrier", "missing /rim/readings", "missing /gap/diameter", "missing /gap/readings"}},
		{dial.StraightedgeGap{}, []string{
			"missing /straightedge/on", "missing /straightedge/readings", "missing /gap/diameter", "missing /gap/readings",
		}},
	} {
		result, err := row.zero.Solve()
		got := found(err)
		slices.Sort(got)
		slices.Sort(row.want)
		if diff := cmp.Diff(row.want, got); diff != "" {
			t.Errorf("%T (-want +got):\n%s", row.zero, diff)
		}
		if diff := cmp.Diff(dial.Result{}, result, cmpopts.EquateComparable(align.Covariance{})); diff != "" {
			t.Errorf("%T: refused, with an answer:\n%s", row.zero, diff)
		}
		for i, set := range row.zero.Sets() {
			if set.Readings != nil || set.Sag != 0 {
				t.Errorf("%T: set %d is %+v", row.zero, i, set)
			}
		}
	}
}

func TestZeroParts(t *testing.T) {
	c, err := dial.Target{}.Centreline()
	if err != nil || c != (align.Centreline{}) {
		t.Errorf("the zero target is %+v, %v, want in line", c, err)
	}
	if _, err := dial.WithoutFloat(dial.Face{}, dial.Face{}); err == nil {
		t.Error("two zero faces were taken for a pair")
	}
	misalignment, runout := dial.SeparateRunout(align.Estimate{}, align.Estimate{})
	if misalignment != (align.Estimate{}) || runout != (align.Estimate{}) {
		t.Errorf("of nothing: %+v and %+v", misalignment, runout)
	}
	if clean, err := dial.RemoveRunout(nil, 0, nil); err == nil || clean != nil {
		t.Errorf("no readings less no runout: %v, %v", clean, err)
	}
}

// A zero limit is the default, not none at all.
func TestZeroLimitsAreTheDefault(t *testing.T) {
	m := methods[0]
	job := m.with(soundJobs[m.name], missing(dial.DefaultLimit), missing(dial.DefaultLimit+1))
	zero := solved(t, job).Warnings
	named := solved(t, m.limits(job, dial.Limits{Miss: dial.DefaultLimit, Return: dial.DefaultLimit})).Warnings
	if diff := cmp.Diff(named, zero); diff != "" || len(zero) != 1 {
		t.Errorf("(-named +zero):\n%s", diff)
	}
}
