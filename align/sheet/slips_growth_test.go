package sheet_test

import (
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/sheet"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// slipsWarm is slipsReverse between machines that were measured to grow, up and to the
// side, on supports at -30 in and -10 in, and at 10 in and 34 in:
//
//	stationary, up 2 and 6: ga = 4/20 = 0.2, g0 = 2 + 0.2*30 = 8
//	movable, up 6 and 12: ga = 6/24 = 0.25, g0 = 6 - 0.25*10 = 3.5
//	t0 = 8 - 3.5 = 4.5, ta = 0.2 - 0.25 = -0.05
//	inboard 4.5 - 0.5 = 4, c = 4 - 13 = -9    outboard 4.5 - 1.7 = 2.8, c = 2.8 - 25 = -22.2
//
// and sideways:
//
//	stationary, 1 and 0.2: ga = -0.8/20 = -0.04, g0 = 1 - 0.04*30 = -0.2
//	movable, 1 and 3.4: ga = 2.4/24 = 0.1, g0 = 1 - 0.1*10 = 0
//	t0 = -0.2, ta = -0.04 - 0.1 = -0.14
//	inboard -0.2 - 1.4 = -1.6, c = -1.6 - 3.75 = -5.35
//	outboard -0.2 - 4.76 = -4.96, c = -4.96 - 6.75 = -11.71
func slipsWarm() sheet.Problem {
	p := slipsReverse()
	support := func(name string, x, up, aside units.Length) thermal.Support {
		by := align.Vector{Vertical: up * units.Mil, Horizontal: aside * units.Mil}
		return thermal.Support{Name: name, X: x * units.Inch, Measured: &thermal.Measured{By: by}}
	}
	p.Job.Stationary = []thermal.Support{support("outer", -30, 2, 1), support("inner", -10, 6, 0.2)}
	p.Job.Movable = []thermal.Support{support("inner", 10, 6, 1), support("outer", 34, 12, 3.4)}
	return p
}

const slipsWarmSheet = slipsReverseSheet + `
	vertical.stationary.growth.slope    0.200 mil/in
	vertical.stationary.growth.offset   8.0 mil high
	vertical.movable.growth.slope       0.250 mil/in
	vertical.movable.growth.offset      3.5 mil high
	vertical.target.offset              4.5 mil high
	vertical.target.slope               -0.050 mil/in
	vertical.foot.inboard.target        4.0 mil high
	vertical.foot.outboard.target       2.8 mil high
	vertical.foot.inboard.correction    lower 9.0 mil
	vertical.foot.outboard.correction   lower 22.2 mil
	horizontal.stationary.growth.slope  -0.040 mil/in
	horizontal.stationary.growth.offset 0.2 mil towards 9
	horizontal.movable.growth.slope     0.100 mil/in
	horizontal.movable.growth.offset    0.00 mil
	horizontal.target.offset            0.2 mil towards 9
	horizontal.target.slope             -0.140 mil/in
	horizontal.foot.inboard.target      1.6 mil towards 9
	horizontal.foot.outboard.target     4.96 mil towards 9
	horizontal.foot.inboard.correction  push 5.35 mil towards 9
	horizontal.foot.outboard.correction push 11.71 mil towards 9
`

// slipsWarmUpSlip has both machines' supports exchanged in the vertical plane:
//
//	stationary: ga = (2 - 6)/20 = -0.2, g0 = 6 - 0.2*30 = 0
//	movable: ga = -0.25, g0 = 12 + 0.25*10 = 14.5
//	t0 = -14.5, ta = 0.05, inboard -14, c = -14 - 13 = -27, outboard -12.8, c = -37.8
const slipsWarmUpSlip = `
	vertical.stationary.growth.slope  -0.200 mil/in
	vertical.stationary.growth.offset 0.00 mil
	vertical.movable.growth.slope     -0.250 mil/in
	vertical.movable.growth.offset    14.5 mil high
	vertical.target.offset            14.5 mil low
	vertical.target.slope             0.050 mil/in
	vertical.foot.inboard.target      14.0 mil low
	vertical.foot.outboard.target     12.8 mil low
	vertical.foot.inboard.correction  lower 27.0 mil
	vertical.foot.outboard.correction lower 37.8 mil
`

// slipsWarmAsideSlip has the same done sideways:
//
//	stationary: ga = 0.04, g0 = 0.2 + 0.04*30 = 1.4
//	movable: ga = -0.1, g0 = 3.4 + 0.1*10 = 4.4
//	t0 = 1.4 - 4.4 = -3, ta = 0.14, inboard -1.6, c = -5.35, outboard 1.76, c = 1.76 - 6.75 = -4.99
const slipsWarmAsideSlip = `
	horizontal.stationary.growth.slope  0.040 mil/in
	horizontal.stationary.growth.offset 1.4 mil towards 3
	horizontal.movable.growth.slope     -0.100 mil/in
	horizontal.movable.growth.offset    4.4 mil towards 3
	horizontal.target.offset            3.0 mil towards 9
	horizontal.target.slope             0.140 mil/in
	horizontal.foot.inboard.target      1.6 mil towards 9
	horizontal.foot.outboard.target     1.76 mil towards 3
	horizontal.foot.inboard.correction  push 5.35 mil towards 9
	horizontal.foot.outboard.correction push 4.99 mil towards 9
`

// A hand that takes the supports for one another wherever it works out growth slips once,
// be it in one plane or in both, and the feet that it has right are not accused.
func TestSlipsOfGrowth(t *testing.T) {
	up := "vertical.stationary.growth.slope, vertical.stationary.growth.offset, vertical.movable.growth.slope, vertical.movable.growth.offset"
	aside := "horizontal.stationary.growth.slope, horizontal.stationary.growth.offset, horizontal.movable.growth.slope, horizontal.movable.growth.offset"
	for _, row := range []struct {
		name    string
		slipped string
		want    []string
	}{
		{"none", "", nil},
		{"the supports of both machines, in one plane", slipsWarmUpSlip, []string{"feet_exchanged at " + up}},
		{"the supports of both machines, in both planes", slipsWarmUpSlip + slipsWarmAsideSlip, []string{"feet_exchanged at " + up + ", " + aside}},
		{"the correction of the other feet, where they have a target", `
			vertical.foot.inboard.correction  lower 22.2 mil
			vertical.foot.outboard.correction lower 9.0 mil`,
			[]string{"feet_exchanged at vertical.foot.inboard.correction, vertical.foot.outboard.correction"}},
	} {
		t.Run(row.name, func(t *testing.T) {
			m := mark(t, slipsWarm(), onSheet(slipsWarmSheet, row.slipped))
			if got := namedBy(m); !slices.Equal(got, row.want) || m.Right() != (row.want == nil) {
				t.Errorf("named is\n%q, want\n%q; wrong are %q", got, row.want, wrongOf(m))
			}
		})
	}
}
