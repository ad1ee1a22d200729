package train

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// Where a program stops on the way from the basis that the solver has, it is solved from
// scratch, so that the least of eases will do.
func TestStoppedProgramsBeginAnew(t *testing.T) {
	tr := crooked(98)
	p := &planner{train: &tr, space: new(workspace), scale: tr.scale(), lines: make([]align.Centreline, len(tr.Machines))}
	in := []int{horizontal, vertical}
	m := p.newModel(false, in...)
	m.ease = roundEases[0]
	if _, ok := p.comeNear(m, in); !ok {
		t.Error("no plan with the least ease")
	}
	m = p.newModel(true, in...)
	m.ease = roundEases[0]
	if !p.findBlocks(m) {
		t.Error("not found what is in the way with the least ease")
	}
}

// A program that is solved is not solved from scratch once more.
func TestSolvedProgramsGoOn(t *testing.T) {
	tr := crooked(98)
	p := &planner{train: &tr, space: new(workspace), scale: tr.scale()}
	m := p.newModel(false, vertical)
	b, ok := m.bestRatio()
	if !ok {
		t.Fatal("no ratio")
	}
	r := region{m: m, level: above(b.ratio, 1e-6), cuts: b.cuts}
	program := m.inMoves(0, m.split)
	first, ok := r.minimise(program)
	if !ok || first.Pivots == 0 {
		t.Fatalf("%v after %d pivots", first.Status, first.Pivots)
	}
	if again := solve(&m.space.linear, program.Program); again.Status != first.Status || again.Pivots != 0 {
		t.Errorf("%v after %d pivots more", again.Status, again.Pivots)
	}
}

// A move that can go one way only, or none, is one variable of a program.
func TestMovesOfOneWayAreOnePiece(t *testing.T) {
	inf := math.Inf(1)
	for _, row := range []struct {
		low, high float64
		want      []piece
	}{
		{-inf, inf, []piece{{+1, 0, inf, 1}, {-1, 0, inf, 1}}},
		{-2, 3, []piece{{+1, 0, 3, 1}, {-1, 0, 2, 1}}},
		{0, 3, []piece{{+1, 0, 3, 1}}},
		{1, 3, []piece{{+1, 1, 3, 1}}},
		{-2, 0, []piece{{-1, 0, 2, 1}}},
		{-2, -1, []piece{{-1, 1, 2, 1}}},
		{0, 0, []piece{{-1, 0, 0, 1}}},
	} {
		m := model{stops: []stop{{low: row.low, high: row.high}}}
		if got := m.split(nil, 0); !slices.Equal(got, row.want) {
			t.Errorf("from %v to %v: %v, want %v", row.low, row.high, got, row.want)
		}
	}
}

// fixedOff is the planner of a coupling that is off by so much in height where 1 mm is
// allowed, beside machines that cannot go up or down, and its model.
func fixedOff(off units.Length) (*planner, *model) {
	p := threeInLine()
	p.train.Machines, p.train.Joints = p.train.Machines[:2], p.train.Joints[:1]
	p.train.Reference = p.train.Machines[0].Name
	p.train.Joints[0].Found = align.Exact(align.Centreline{Vertical: align.Line{Offset: off}})
	p.train.Joints[0].Limits = tolerance.Limits{Offset: units.Millimetre, PerPlane: true}
	for k := range p.train.Machines[1].Feet {
		p.train.Machines[1].Feet[k].Vertical = Fixed()
	}
	p.lines, p.scale = make([]align.Centreline, 2), 1
	return p, p.newModel(false, vertical)
}

// A coupling exactly at its limit is not outside of it, so that nothing stands in the way.
func TestExactlyAtTheLimitIsNotOutside(t *testing.T) {
	const mm = units.Millimetre
	for off, want := range map[units.Length]bool{mm / 2: false, mm: false, 2 * mm: true} {
		p, m := fixedOff(off)
		m.ease = flatEases[0]
		outside, ok := p.comeNear(m, []int{vertical})
		if !ok || outside != want || p.ratio != float64(off/mm) {
			t.Errorf("%v: ratio %v, outside %v", off, p.ratio, outside)
		}
	}
}

// Openings that were found with an ease may leave the ratio above one by that ease, and
// by no more.
func TestOpeningsLeaveAnEaseAboveOne(t *testing.T) {
	const mm = units.Millimetre
	for off, want := range map[units.Length]bool{mm: true, 1.125 * mm: true, 1.25 * mm: true, 1.375 * mm: false} {
		_, m := fixedOff(off)
		m.ease = 0.25
		if m.admits(nil, nil) != want {
			t.Errorf("%v over a limit of %v is admitted with an ease of a quarter: %v", off, mm, !want)
		}
	}
}
