package arc_test

import (
	"slices"
	"strconv"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
)

// Of more readings than are tried one by one, the bad ones are found wherever they stand,
// also two neighbours at an end that err alike, and none of the others is.
func TestBadReadingsAmongMany(t *testing.T) {
	bad := []int{0, 1, 77, 140, 199}
	sound := wiggled(filled(t, caseA, sensorPair(4*um, within(200, 30, 180)...)))
	sets := sound
	for _, n := range bad {
		sets = spoilt(sets, n%2, n, 80*um)
	}
	r := mustRobust(t, sets...)
	var gone []int
	for i, w := range r.Weights {
		if w.Weight == 0 {
			gone = append(gone, i)
		} else if w.Weight != 1 {
			t.Errorf("reading %d: %v", i, w)
		}
	}
	if want := []int{0, 140, 201, 277, 399}; !slices.Equal(gone, want) || !r.Settled {
		t.Errorf("left out %v, want %v", gone, want)
	}
	for k := len(bad) - 1; k >= 0; k-- { // from the last on, so that indices stay
		sets = without(sets, bad[k]%2, bad[k])
	}
	if f, err := align.Fit(sets...); err != nil || f.Value != r.Value {
		t.Errorf("%v, want %v without them, %v", r.Value, f.Value, err)
	}
}

// As many readings as may be are judged, one more is refused.
func TestMostJudged(t *testing.T) {
	pair := func(n int) []align.Set {
		return wiggled(filled(t, caseA, sensorPair(4*um, within(n, 30, 180)...)))
	}
	mustRobust(t, pair(arc.MostJudged/2)...)
	_, err := arc.FitRobust(pair(arc.MostJudged/2 + 1)...)
	f := units.Faults(err)
	if len(f) != 1 || f[0].Code != units.OutOfRange || f[0].Path != "/sets" || f[0].Value != strconv.Itoa(arc.MostJudged+2) {
		t.Errorf("got %v", err)
	}
}
