package train

import (
	"math"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// That couplings are on target is looked up in the lines of the machines, not taken from
// how they were made: a line that is a millionth off is seen.
func TestTargetsAreLookedUp(t *testing.T) {
	p := threeInLine()
	m, ok := p.newTargetModel(vertical)
	if !ok || !m.meets(vertical) {
		t.Fatal("couplings that are on target are not seen to be")
	}
	for i := range m.rays {
		for _, by := range []ray{{offset: 1e-6}, {slope: 1e-9}} {
			was := m.rays[i]
			m.rays[i].offset += by.offset
			m.rays[i].slope += by.slope
			if m.meets(vertical) {
				t.Errorf("machine %d off by %+v is not seen", i, by)
			}
			m.rays[i] = was
		}
	}
}

// A search of many nodes does not pile up what each of them needs: the least squares of
// one leave no more room taken than there was.
func TestLeastSquaresGiveRoomBack(t *testing.T) {
	p := threeInLine()
	m := p.newModel(false, vertical)
	b, ok := m.bestRatio()
	if !ok {
		t.Fatal("no ratio")
	}
	r := region{m: m, level: 1 + b.ratio, cuts: b.cuts}
	before := p.space.kept.used
	if y, _ := r.fewestFeet(); y == nil {
		t.Fatal("no plan")
	}
	if p.space.kept.used != before || p.space.rows.used != 0 {
		t.Errorf("%d numbers are kept, %d rows; before the search %d", p.space.kept.used, p.space.rows.used, before)
	}
}

// A program is begun in the room of the one before it.
func TestProgramsTakeTurns(t *testing.T) {
	p := threeInLine()
	m := p.newModel(false, vertical)
	m.inMoves(1, m.split)
	first := p.space.program.room.used
	if m.inMoves(1, m.split); p.space.program.room.used != first {
		t.Errorf("%d numbers, and %d the second time", first, p.space.program.room.used)
	}
}

// The coordinates of a program are those with which every foot moves as the program has
// it, also on target, where feet move at the coordinates zero.
func TestCoordinatesAreThoseOfTheMoves(t *testing.T) {
	planner := threeInLine()
	target, ok := planner.newTargetModel(vertical)
	if !ok {
		t.Fatal("not on target")
	}
	for _, m := range []*model{planner.newModel(false, vertical), target} {
		for k := range m.n {
			want := make([]float64, m.n)
			want[k] = 2
			p := m.inMoves(0, m.undivided)
			x := make([]float64, len(m.stops))
			for i := range m.stops {
				x[i] = m.stops[i].move.at(want)
			}
			for i, y := range p.coordinates(x) {
				if math.Abs(y-want[i]) > 1e-9 {
					t.Errorf("coordinate %d is %v, want %v", i, y, want[i])
				}
			}
		}
	}
}

// A vector that just fits is made in the room that there is.
func TestRoomIsUsedToItsEnd(t *testing.T) {
	var r room
	first := r.vector(1)
	r.empty()
	if all := r.vector(len(r.piece)); &all[0] != &first[0] {
		t.Error("memory anew for what fits")
	}
}

// threeInLine is the planner of three machines whose couplings are off.
func threeInLine() *planner {
	const mm = units.Millimetre
	machine := func(x units.Length) Machine {
		return Machine{Name: x.String(), Feet: []Foot{{Name: "a", X: x}, {Name: "b", X: x + 300*mm}}}
	}
	found := align.Exact(align.Centreline{Vertical: align.Line{Offset: 1 * mm, Slope: 1e-3}})
	tr := Train{
		Machines: []Machine{machine(0), machine(500 * mm), machine(1000 * mm)},
		Joints:   []Joint{{At: 400 * mm, Found: found}, {At: 900 * mm, Found: found}},
	}
	for i := range tr.Joints {
		tr.Joints[i].Limits = tolerance.Limits{Offset: 1 * mm, PerPlane: true}
	}
	return &planner{train: &tr, space: new(workspace), scale: tr.scale()}
}
