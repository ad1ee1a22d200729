package thermal

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// covariance adds up what each uncertain input does to the line, to first order
// (JCGM 100:2008, 5.1.2). Inputs are independent, so their parts add; what one
// input does to front and rear, and to offset and slope, belongs together.
func covariance(supports []Support, shares []share) (align.Covariance, error) {
	var t tally
	for i := range supports {
		t.support(&supports[i], shares[i])
	}
	for _, m := range t.materials {
		t.add(m.line.Times(float64(m.U)))
	}
	if !t.stated {
		return align.Covariance{Basis: align.Unknown}, nil
	}
	return t.sum.Cov, t.err
}

// tally gathers the parts of a covariance.
type tally struct {
	sum       align.Estimate
	stated    bool
	err       error
	materials []grown
}

// grown is how the line moves per coefficient of a material, in every piece that
// is of it: its error is one and the same everywhere (JCGM 100:2008, 5.2.2).
type grown struct {
	Material
	line align.Centreline
}

func (t *tally) support(s *Support, of share) {
	if m := s.Measured; m != nil {
		t.input(float64(m.U.Horizontal), of.of(align.Vector{Horizontal: 1}))
		t.input(float64(m.U.Vertical), of.of(align.Vector{Vertical: 1}))
		return
	}
	for _, l := range s.legs() {
		for i := range l.pieces {
			t.piece(&l.pieces[i], &l, of)
		}
	}
}

// piece adds the derivatives of height * expansion * rise.
func (t *tally) piece(p *Piece, l *leg, of share) {
	height, expansion, rise := float64(p.Height), float64(p.Material.Expansion), float64(p.rise())
	byHeight := l.moves(expansion * rise)
	byHeight.Horizontal += units.Length(l.lean)
	t.input(float64(p.U.Height), of.of(byHeight))
	t.input(float64(p.U.Temperature), of.of(l.moves(height*expansion)))
	t.material(p.Material, of.of(l.moves(height*rise)))
}

// input adds an input of standard uncertainty u that moves the line by so much
// per unit.
func (t *tally) input(u float64, per align.Centreline) {
	if u != 0 {
		t.add(per.Times(u))
	}
}

// material notes how a coefficient moves the line, to be added once all of its
// pieces are known.
func (t *tally) material(m Material, per align.Centreline) {
	if m.U == 0 {
		return
	}
	for i := range t.materials {
		if t.materials[i].Material == m {
			t.materials[i].line = t.materials[i].line.Plus(per)
			return
		}
	}
	t.materials = append(t.materials, grown{m, per})
}

// add adds what one standard uncertainty of one input does to the line: four
// numbers that are fully correlated.
func (t *tally) add(by align.Centreline) {
	t.stated = true
	cov, err := align.NewCovariance(align.Stated, sizes(by), together(by))
	if err != nil {
		t.err = err
		return
	}
	t.sum = t.sum.Plus(align.Estimate{Cov: cov})
}

func sizes(c align.Centreline) align.Centreline {
	plane := func(l align.Line) align.Line {
		return align.Line{Offset: max(l.Offset, -l.Offset), Slope: max(l.Slope, -l.Slope)}
	}
	return align.Centreline{Horizontal: plane(c.Horizontal), Vertical: plane(c.Vertical)}
}

// together is the correlation of numbers that move with one input: plus or minus
// one, and none with a number that does not move.
func together(c align.Centreline) (r [4][4]float64) {
	sign := [4]float64{
		signOf(c.Horizontal.Offset), signOf(c.Horizontal.Slope),
		signOf(c.Vertical.Offset), signOf(c.Vertical.Slope),
	}
	for i := range r {
		for j := range r[i] {
			r[i][j] = sign[i] * sign[j]
		}
		r[i][i] = 1
	}
	return r
}

func signOf[Q ~float64](q Q) float64 {
	if q == 0 {
		return 0
	}
	return math.Copysign(1, float64(q))
}
