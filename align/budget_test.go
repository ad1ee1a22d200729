package align_test

import (
	"encoding/json"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// The shares add up to the covariance of the fit, entry by entry, whichever
// inputs are stated and whichever basis the readings have.
func TestBudgetAddsUp(t *testing.T) {
	for _, kind := range everyKind {
		t.Run(kind.String(), func(t *testing.T) {
			rapid.Check(t, func(t *rapid.T) {
				sets := drawShared(t, kind)
				again := sets[0]
				again.Readings = drawErrors(t, again.Readings)
				sets = append(sets, again)
				if rapid.Bool().Draw(t, "scatter") {
					sets = state(sets, 0)
				}
				mounted := rapid.Bool().Draw(t, "mounted")
				for i := range sets {
					if mounted && i != 1 {
						sets[i].Mounting = "one"
					}
					sets[i].U.Angle = units.Angle(rapid.Float64Range(0, 0.01).Draw(t, "angle"))
				}
				for _, share := range shares {
					if share.used(kind) && rapid.Bool().Draw(t, share.name) {
						share.state(&sets[0].U, share.u)
						share.state(&sets[2].U, share.u)
					}
				}
				f := mustFit(t, sets...)
				if f.Cov.Basis == align.Unknown {
					t.Skip("the errors drawn are nothing: no scatter")
				}
				list, err := align.Budget(sets...)
				if err != nil {
					t.Fatal(err)
				}
				var sum [4][4]float64
				for _, share := range list {
					m := matrix(share.Cov)
					for i := range m {
						for j := range m {
							sum[i][j] += m[i][j]
						}
					}
				}
				nearMatrix(t, "sum of the shares", sum, matrix(f.Cov), 1e-9)
			})
		})
	}
}

// What is in a budget, and in which order.
func TestBudgetNamesItsShares(t *testing.T) {
	sets := state(read(t, caseA, append(reverse(), rim(align.Movable, -50), face(align.Movable, 75)), quarters...), um)
	for i := range 3 {
		sets[i].U.Station, sets[i].U.Clock = mm, 0.01
	}
	sets[1].Mounting, sets[2].Mounting = "far", "far"
	sets[3].U.Radius, sets[3].U.Sag, sets[3].U.Angle = mm, um, 0.01
	list, err := align.Budget(sets...)
	if err != nil {
		t.Fatal(err)
	}
	type name struct {
		Set      int
		Mounting string
		Of       string
	}
	var got []name
	for _, share := range list {
		got = append(got, name{share.Set, share.Mounting, share.Of.String()})
		if share.Cov.Basis != align.Stated {
			t.Errorf("%s of set %d: basis %v", share.Of, share.Set, share.Cov.Basis)
		}
	}
	want := []name{
		{0, "", "reading"}, {0, "", "station"}, {0, "", "clock"},
		{1, "far", "reading"}, {1, "far", "station"}, {1, "far", "clock"},
		{2, "far", "reading"},
		{3, "", "reading"}, {3, "", "angle"}, {3, "", "radius"}, {3, "", "sag"},
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// The share of a tape on a rim dial, by hand: a station that is wrong by e moves
// w(x) there by slope times e, and nothing else.
func TestTapeOfARimAndAFace(t *testing.T) {
	sets := state(read(t, caseA, rimFace(), quarters...), um)
	sets[0].U.Station = 2 * mm
	list, err := align.Budget(sets...)
	if err != nil {
		t.Fatal(err)
	}
	u := list[1].Cov.Standard()
	near(t, "horizontal offset", u.Horizontal.Offset, caseA.Horizontal.Slope.Over(2*mm), 1e-6)
	near(t, "vertical offset", u.Vertical.Offset, -caseA.Vertical.Slope.Over(2*mm), 1e-6)
	near(t, "horizontal slope", u.Horizontal.Slope, 0, 1e-15)
}

func TestBudgetRefuses(t *testing.T) {
	sets := read(t, caseA, reverse(), quarters[:3]...)
	_, err := align.Budget(sets...)
	checkFault(t, err, units.Unseen, "/sets")
	if _, err := align.Budget(state(sets, um)...); err != nil {
		t.Errorf("the sound twin: %v", err)
	}
	_, err = align.Budget()
	checkFault(t, err, units.Missing, "/sets")
}

func TestShareInJSON(t *testing.T) {
	sets := state(read(t, caseA, reverse(), quarters...), um)
	sets[0].Mounting = "near"
	checkSharesInJSON(t, sets)
}

// A share of what readings scatter is all scatter, and no more than that of the share.
func TestShareOfScatterInJSON(t *testing.T) {
	sets := read(t, caseA, reverse(), quarters...)
	for i := range sets {
		sets[i].Readings[1].Value += 3 * um
	}
	checkSharesInJSON(t, sets)
}

func checkSharesInJSON(t *testing.T, sets []align.Set) {
	t.Helper()
	list, err := align.Budget(sets...)
	if err != nil {
		t.Fatal(err)
	}
	data, err := json.Marshal(list)
	if err != nil {
		t.Fatal(err)
	}
	var back []align.Share
	if err := json.Unmarshal(data, &back); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(list, back, openly, closely(1e-12, 0)); diff != "" {
		t.Error(diff)
	}
}
