package sheet_test

import (
	"slices"
	"testing"

	"example.org/collinear/align/sheet"
)

// TestHandmadeSlips: each kind of slip on a full sheet, where nothing else explains it.
func TestHandmadeSlips(t *testing.T) {
	t.Parallel()
	for _, row := range []struct {
		name    string // the slip, and what it does to the numbers
		problem func() sheet.Problem
		right   string
		slipped string
		wrong   []string
		want    string
	}{
		{
			"total not halved: wm = 20, a = (20 - 6)/8 = 1.75, w0 = 20 - 7 = 13, feet 13 + 17.5 and 13 + 59.5",
			slipsReverse, slipsReverseSheet, `
			vertical.carried_by_stationary.offset 20.0 mil high
			vertical.slope                        1.750 mil/in open at 6
			vertical.offset                       13.0 mil high
			vertical.foot.inboard.position        30.5 mil high
			vertical.foot.outboard.position       72.5 mil high
			vertical.foot.inboard.correction      lower 30.5 mil
			vertical.foot.outboard.correction     lower 72.5 mil`,
			[]string{"vertical.carried_by_stationary.offset"},
			"total_not_halved at vertical.carried_by_stationary.offset",
		},
		{
			"sag forgotten: Tm = 0 + 28 = 28, wm = 14, a = 1, w0 = 14 - 4 = 10, feet 20 and 44",
			slipsReverse, slipsReverseSheet, `
			vertical.carried_by_stationary.total  28.0 mil
			vertical.carried_by_stationary.offset 14.0 mil high
			vertical.slope                        1.000 mil/in open at 6
			vertical.offset                       10.0 mil high
			vertical.foot.inboard.position        20.0 mil high
			vertical.foot.outboard.position       44.0 mil high
			vertical.foot.inboard.correction      lower 20.0 mil
			vertical.foot.outboard.correction     lower 44.0 mil`,
			[]string{"vertical.carried_by_stationary.total"},
			"sag_forgotten at vertical.carried_by_stationary.total",
		},
		{
			"sag added: Tm = (0 + 4) - (-28 - 4) = 36, wm = 18, a = 1.5, w0 = 18 - 6 = 12, feet 27 and 63",
			slipsReverse, slipsReverseSheet, `
			vertical.carried_by_stationary.total  36.0 mil
			vertical.carried_by_stationary.offset 18.0 mil high
			vertical.slope                        1.500 mil/in open at 6
			vertical.offset                       12.0 mil high
			vertical.foot.inboard.position        27.0 mil high
			vertical.foot.outboard.position       63.0 mil high
			vertical.foot.inboard.correction      lower 27.0 mil
			vertical.foot.outboard.correction     lower 63.0 mil`,
			[]string{"vertical.carried_by_stationary.total"},
			"sag_added at vertical.carried_by_stationary.total",
		},
		{
			"sag once: Tm = 28 - 4 = 24, wm = 12, a = 0.75, w0 = 12 - 3 = 9, feet 16.5 and 34.5",
			slipsReverse, slipsReverseSheet, `
			vertical.carried_by_stationary.total  24.0 mil
			vertical.carried_by_stationary.offset 12.0 mil high
			vertical.slope                        0.750 mil/in open at 6
			vertical.offset                       9.0 mil high
			vertical.foot.inboard.position        16.5 mil high
			vertical.foot.outboard.position       34.5 mil high
			vertical.foot.inboard.correction      lower 16.5 mil
			vertical.foot.outboard.correction     lower 34.5 mil`,
			[]string{"vertical.carried_by_stationary.total"},
			"sag_once at vertical.carried_by_stationary.total",
		},
		{
			"12 for 6: Tm = (-28 - 4) - (0 + 4) = -36, wm = -18, a = -3, w0 = -18 + 12 = -6, feet -36 and -108",
			slipsReverse, slipsReverseSheet, `
			vertical.carried_by_stationary.total  -36.0 mil
			vertical.carried_by_stationary.offset 18.0 mil low
			vertical.slope                        3.000 mil/in open at 12
			vertical.offset                       6.0 mil low
			vertical.foot.inboard.position        36.0 mil low
			vertical.foot.outboard.position       108.0 mil low
			vertical.foot.inboard.correction      raise 36.0 mil
			vertical.foot.outboard.correction     raise 108.0 mil`,
			[]string{"vertical.carried_by_stationary.total"},
			"top_and_bottom_exchanged at vertical.carried_by_stationary.total",
		},
		{
			"3 for 9: Ts = 6 - 2 = 4, ws = -2, a = (3 + 2)/8 = 0.625, w0 = 3 - 2.5 = 0.5, feet 6.75 and 21.75",
			slipsReverse, slipsReverseSheet, `
			horizontal.carried_by_movable.total  4.0 mil
			horizontal.carried_by_movable.offset 2.0 mil towards 9
			horizontal.slope                     0.625 mil/in open at 9
			horizontal.offset                    0.5 mil towards 3
			horizontal.foot.inboard.position     6.75 mil towards 3
			horizontal.foot.outboard.position    21.75 mil towards 3
			horizontal.foot.inboard.correction   push 6.75 mil towards 9
			horizontal.foot.outboard.correction  push 21.75 mil towards 9`,
			[]string{"horizontal.carried_by_movable.total"},
			"left_and_right_exchanged at horizontal.carried_by_movable.total",
		},
		{
			"over the radius of 2.5 in: a = 2, w0 = 5 - 4 = 1, feet 21 and 61",
			slipsRimFace, slipsRimFaceSheet, `
			vertical.face.slope               2.000 mil/in open at 6
			vertical.offset                   1.0 mil high
			vertical.foot.inboard.position    21.0 mil high
			vertical.foot.outboard.position   61.0 mil high
			vertical.foot.inboard.correction  lower 21.0 mil
			vertical.foot.outboard.correction lower 61.0 mil`,
			[]string{"vertical.face.slope"},
			"radius_and_diameter at vertical.face.slope",
		},
		{
			"left at the dial: w0 = 5, feet 15 and 35",
			slipsRimFace, slipsRimFaceSheet, `
			vertical.offset                   5.0 mil high
			vertical.foot.inboard.position    15.0 mil high
			vertical.foot.outboard.position   35.0 mil high
			vertical.foot.inboard.correction  lower 15.0 mil
			vertical.foot.outboard.correction lower 35.0 mil`,
			[]string{"vertical.offset"},
			"left_at_dial at vertical.offset",
		},
		{
			"feet counted from the dial at 4 in: 8 + 0.5*6 = 11, 8 + 0.5*30 = 23; sideways 2.5 + 0.75, 2.5 + 3.75",
			slipsReverse, slipsReverseSheet, `
			vertical.foot.inboard.position      11.0 mil high
			vertical.foot.outboard.position     23.0 mil high
			vertical.foot.inboard.correction    lower 11.0 mil
			vertical.foot.outboard.correction   lower 23.0 mil
			horizontal.foot.inboard.position    3.25 mil towards 3
			horizontal.foot.outboard.position   6.25 mil towards 3
			horizontal.foot.inboard.correction  push 3.25 mil towards 9
			horizontal.foot.outboard.correction push 6.25 mil towards 9`,
			[]string{
				"vertical.foot.inboard.position", "vertical.foot.outboard.position",
				"horizontal.foot.inboard.position", "horizontal.foot.outboard.position",
			},
			"wrong_datum at vertical.foot.inboard.position, vertical.foot.outboard.position, horizontal.foot.inboard.position, horizontal.foot.outboard.position",
		},
		{
			"the dial's distance from the coupling for that from the other dial: a = 4/4 = 1, w0 = 10 - 4 = 6, feet 16 and 40",
			slipsReverse, slipsReverseSheet, `
			vertical.slope                    1.000 mil/in open at 6
			vertical.offset                   6.0 mil high
			vertical.foot.inboard.position    16.0 mil high
			vertical.foot.outboard.position   40.0 mil high
			vertical.foot.inboard.correction  lower 16.0 mil
			vertical.foot.outboard.correction lower 40.0 mil`,
			[]string{"vertical.slope"},
			"wrong_datum at vertical.slope",
		},
		{
			"the distance of the other feet: 25 and 13, sideways 6.75 and 3.75",
			slipsReverse, slipsReverseSheet, `
			vertical.foot.inboard.position      25.0 mil high
			vertical.foot.outboard.position     13.0 mil high
			vertical.foot.inboard.correction    lower 25.0 mil
			vertical.foot.outboard.correction   lower 13.0 mil
			horizontal.foot.inboard.position    6.75 mil towards 3
			horizontal.foot.outboard.position   3.75 mil towards 3
			horizontal.foot.inboard.correction  push 6.75 mil towards 9
			horizontal.foot.outboard.correction push 3.75 mil towards 9`,
			[]string{
				"vertical.foot.inboard.position", "vertical.foot.outboard.position",
				"horizontal.foot.inboard.position", "horizontal.foot.outboard.position",
			},
			"feet_exchanged at vertical.foot.inboard.position, vertical.foot.outboard.position, horizontal.foot.inboard.position, horizontal.foot.outboard.position",
		},
		{
			"13 mil and 25 mil written as 0.13 mm and 0.25 mm, sideways 3.75 and 6.75 mil as 0.038 and 0.068",
			slipsReverse, slipsReverseSheet, `
			vertical.foot.inboard.correction    lower 0.13 mm
			vertical.foot.outboard.correction   lower 0.25 mm
			horizontal.foot.inboard.correction  push 0.038 mm towards 9
			horizontal.foot.outboard.correction push 0.068 mm towards 9`,
			[]string{
				"vertical.foot.inboard.correction", "vertical.foot.outboard.correction",
				"horizontal.foot.inboard.correction", "horizontal.foot.outboard.correction",
			},
			"mil_for_hundredth at vertical.foot.inboard.correction, vertical.foot.outboard.correction, horizontal.foot.inboard.correction, horizontal.foot.outboard.correction",
		},
		{
			"0.10 mm written as 10 mil",
			slipsSoftFoot, slipsSoftFootSheet, `
			foot.A.excess 10 mil
			foot.D.excess 10 mil`,
			[]string{"foot.A.excess", "foot.D.excess"},
			"mil_for_hundredth at foot.A.excess, foot.B.excess, foot.C.excess, foot.D.excess",
		},
		{
			"where the shaft lies for the way it has to go: all signs the other way",
			slipsReverse, slipsReverseSheet, `
			vertical.foot.inboard.correction    raise 13.0 mil
			vertical.foot.outboard.correction   raise 25.0 mil
			horizontal.foot.inboard.correction  push 3.75 mil towards 3
			horizontal.foot.outboard.correction push 6.75 mil towards 3`,
			[]string{
				"vertical.foot.inboard.correction", "vertical.foot.outboard.correction",
				"horizontal.foot.inboard.correction", "horizontal.foot.outboard.correction",
			},
			"position_for_correction at vertical.foot.inboard.correction, vertical.foot.outboard.correction, horizontal.foot.inboard.correction, horizontal.foot.outboard.correction",
		},
		{
			"the dial on the movable shaft taken for one on the stationary: ws = -6, a = 16/8 = 2, w0 = 10 - 8 = 2, feet 22 and 70",
			slipsReverse, slipsReverseSheet, `
			vertical.carried_by_movable.offset 6.0 mil low
			vertical.slope                     2.000 mil/in open at 6
			vertical.offset                    2.0 mil high
			vertical.foot.inboard.position     22.0 mil high
			vertical.foot.outboard.position    70.0 mil high
			vertical.foot.inboard.correction   lower 22.0 mil
			vertical.foot.outboard.correction  lower 70.0 mil`,
			[]string{"vertical.carried_by_movable.offset"},
			"machines_exchanged at vertical.carried_by_movable.offset",
		},
		{
			"ws for wm in slope and offset: a = (6 - 10)/8 = -0.5, w0 = 6 + 0.5*4 = 8, feet 8 - 5 = 3 and 8 - 17 = -9",
			slipsReverse, slipsReverseSheet, `
			vertical.slope                    0.500 mil/in open at 12
			vertical.offset                   8.0 mil high
			vertical.foot.inboard.position    3.0 mil high
			vertical.foot.outboard.position   9.0 mil low
			vertical.foot.inboard.correction  lower 3.0 mil
			vertical.foot.outboard.correction raise 9.0 mil`,
			[]string{"vertical.slope", "vertical.offset"},
			"machines_exchanged at vertical.slope, vertical.offset",
		},
		{
			"in the slope alone: a = -0.5, w0 = 10 + 2 = 12, feet 12 - 5 = 7 and 12 - 17 = -5",
			slipsReverse, slipsReverseSheet, `
			vertical.slope                    0.500 mil/in open at 12
			vertical.offset                   12.0 mil high
			vertical.foot.inboard.position    7.0 mil high
			vertical.foot.outboard.position   5.0 mil low
			vertical.foot.inboard.correction  lower 7.0 mil
			vertical.foot.outboard.correction raise 5.0 mil`,
			[]string{"vertical.slope"},
			"machines_exchanged at vertical.slope",
		},
		{
			"in the offset alone: w0 = 6 - 0.5*4 = 4, feet 9 and 21",
			slipsReverse, slipsReverseSheet, `
			vertical.offset                   4.0 mil high
			vertical.foot.inboard.position    9.0 mil high
			vertical.foot.outboard.position   21.0 mil high
			vertical.foot.inboard.correction  lower 9.0 mil
			vertical.foot.outboard.correction lower 21.0 mil`,
			[]string{"vertical.offset"},
			"machines_exchanged at vertical.offset",
		},
		{
			"left at the other dial: w0 = ws = 6, feet 11 and 23",
			slipsReverse, slipsReverseSheet, `
			vertical.offset                   6.0 mil high
			vertical.foot.inboard.position    11.0 mil high
			vertical.foot.outboard.position   23.0 mil high
			vertical.foot.inboard.correction  lower 11.0 mil
			vertical.foot.outboard.correction lower 23.0 mil`,
			[]string{"vertical.offset"},
			"left_at_dial at vertical.offset",
		},
		{
			"the correction of the other feet, in one plane",
			slipsReverse, slipsReverseSheet, `
			vertical.foot.inboard.correction  lower 25.0 mil
			vertical.foot.outboard.correction lower 13.0 mil`,
			[]string{"vertical.foot.inboard.correction", "vertical.foot.outboard.correction"},
			"feet_exchanged at vertical.foot.inboard.correction, vertical.foot.outboard.correction",
		},
		{
			"the tilt of the other end: 0 and 1",
			slipsTilts, slipsTiltsSheet, `
			vertical.tilt.stationary 0.000 mil/in
			vertical.tilt.movable    1.000 mil/in open at 6`,
			[]string{"vertical.tilt.stationary", "vertical.tilt.movable"},
			"machines_exchanged at vertical.tilt.stationary, vertical.tilt.movable",
		},
		{
			"10 mil over the half span of 10 in: 0.5 + 1 = 1.5, 0.5 - 1 = -0.5",
			slipsTilts, slipsTiltsSheet, `
			vertical.tilt.stationary 1.500 mil/in open at 6
			vertical.tilt.movable    0.500 mil/in open at 12`,
			[]string{"vertical.tilt.stationary", "vertical.tilt.movable"},
			"wrong_datum at vertical.tilt.stationary, vertical.tilt.movable",
		},
		{
			"(90 - 32)*5/9 = 32.2, 508 mm * 11.34e-6 * 32.2 = 0.186; (50 - 32)*5/9 = 10, 0.058",
			slipsGrowth, slipsGrowthSheet, `
			movable.inboard.rise    32.2 K
			movable.inboard.growth  0.186 mm high
			movable.outboard.rise   10.0 K
			movable.outboard.growth 0.058 mm high`,
			[]string{"movable.inboard.rise", "movable.outboard.rise"},
			"thirty_two at movable.inboard.rise, movable.outboard.rise",
		},
		{
			"from one dial to the coupling: a = (10 - 6)/6 = 0.667, w0 = 10 - 4 = 6, feet 6 + 6.67 and 6 + 22.67",
			slipsReverseAside, slipsReverseAsideSheet, `
			vertical.slope                        0.667 mil/in open at 6
			vertical.offset                       6.0 mil high
			vertical.foot.inboard.position        12.7 mil high
			vertical.foot.outboard.position       28.7 mil high
			vertical.foot.inboard.correction      lower 12.7 mil
			vertical.foot.outboard.correction     lower 28.7 mil`,
			[]string{"vertical.slope"},
			"wrong_datum at vertical.slope",
		},
		{
			"from the other dial to the coupling: a = (10 - 6)/2 = 2, w0 = 10 - 12 = -2, feet -2 + 20 and -2 + 68",
			slipsReverseAside, slipsReverseAsideSheet, `
			vertical.slope                        2.000 mil/in open at 6
			vertical.offset                       2.0 mil low
			vertical.foot.inboard.position        18.0 mil high
			vertical.foot.outboard.position       66.0 mil high
			vertical.foot.inboard.correction      lower 18.0 mil
			vertical.foot.outboard.correction     lower 66.0 mil`,
			[]string{"vertical.slope"},
			"wrong_datum at vertical.slope",
		},
		{
			"feet counted from the one dial: 7 + 0.5 * 4 and 7 + 0.5 * 28",
			slipsReverseAside, slipsReverseAsideSheet, `
			vertical.foot.inboard.position        9.0 mil high
			vertical.foot.outboard.position       21.0 mil high
			vertical.foot.inboard.correction      lower 9.0 mil
			vertical.foot.outboard.correction     lower 21.0 mil`,
			[]string{"vertical.foot.inboard.position", "vertical.foot.outboard.position"},
			"wrong_datum at vertical.foot.inboard.position, vertical.foot.outboard.position",
		},
		{
			"feet counted from the other dial: 7 + 0.5 * 12 and 7 + 0.5 * 36",
			slipsReverseAside, slipsReverseAsideSheet, `
			vertical.foot.inboard.position        13.0 mil high
			vertical.foot.outboard.position       25.0 mil high
			vertical.foot.inboard.correction      lower 13.0 mil
			vertical.foot.outboard.correction     lower 25.0 mil`,
			[]string{"vertical.foot.inboard.position", "vertical.foot.outboard.position"},
			"wrong_datum at vertical.foot.inboard.position, vertical.foot.outboard.position",
		},
		{
			"50 K * 9/5 + 32 = 122 on one leg alone, 20 in * 6.3e-6 * 122 = 15.37",
			slipsGrowth, slipsGrowthSheet, `
			movable.inboard.rise   122 degF
			movable.inboard.growth 15.37 mil high`,
			[]string{"movable.inboard.rise"},
			"thirty_two at movable.inboard.rise",
		},
		{
			"lifts for what is above the least: 0.12 on A, 0.02 on B and C, 0.12 on D",
			slipsSoftFoot, slipsSoftFootSheet, `
			foot.A.excess 0.12 mm
			foot.B.excess 0.02 mm
			foot.C.excess 0.02 mm
			foot.D.excess 0.12 mm`,
			[]string{"foot.A.excess", "foot.B.excess", "foot.C.excess", "foot.D.excess"},
			"common_not_taken_off at foot.A.excess, foot.B.excess, foot.C.excess, foot.D.excess",
		},
	} {
		t.Run(row.name, func(t *testing.T) {
			t.Parallel()
			if m := mark(t, row.problem(), onSheet(row.right)); !m.Right() {
				t.Errorf("the right sheet: wrong are %q", wrongOf(m))
			}
			m := mark(t, row.problem(), onSheet(row.right, row.slipped))
			if got := wrongOf(m); !slices.Equal(got, row.wrong) {
				t.Errorf("wrong are %q, want %q", got, row.wrong)
			}
			if got := namedBy(m); !slices.Equal(got, []string{row.want}) {
				t.Errorf("named is\n%q, want\n%q", got, row.want)
			}
			if m.Ask != nil {
				t.Errorf("asked for is %q", m.Ask)
			}
		})
	}
}
