package adapter

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// position is a centreline in both planes, in input and result.
type position struct {
	Horizontal  line        `json:"horizontal"`
	Vertical    line        `json:"vertical"`
	Correlation [][]float64 `json:"correlation,omitzero"`
}

// line is a centreline in one plane, with its standard uncertainties where they
// are known.
type line struct {
	Offset units.Length `json:"offset"`
	Slope  units.Slope  `json:"slope"`
	U      *align.Line  `json:"u,omitzero"`
}

func (l *line) plain() align.Line { return align.Line{Offset: l.Offset, Slope: l.Slope} }

func (p *position) centreline() align.Centreline {
	return align.Centreline{Horizontal: p.Horizontal.plain(), Vertical: p.Vertical.plain()}
}

// estimate returns the position with its covariance: exact by declaration where
// none is stated.
func (p *position) estimate(f *strict.Faults, path string) align.Estimate {
	e := align.Exact(p.centreline())
	if p.stated(f, path) {
		cov, err := align.NewCovariance(align.Stated, p.standard(), p.correlation(f, path+"/correlation"))
		f.Adopt(err, func(of string) string { return path + uOfPlane.Replace(of) })
		e.Cov = cov
	}
	f.Adopt(e.Validate(), func(of string) string {
		return path + uOfPlane.Replace(strings.TrimPrefix(strings.TrimPrefix(of, "/value"), "/cov"))
	})
	return e
}

// uOfPlane turns the library's order around: uncertainties stand in their plane.
var uOfPlane = strings.NewReplacer("/u/horizontal", "/horizontal/u", "/u/vertical", "/vertical/u")

// stated tells whether the position has uncertainties, and asks for them in both
// planes or in none.
func (p *position) stated(f *strict.Faults, path string) bool {
	switch h, v := p.Horizontal.U != nil, p.Vertical.U != nil; {
	case h && v:
		return true
	case h:
		f.Add(units.Missing, path+"/vertical/u", "", "uncertainties, as the other plane has them")
	case v:
		f.Add(units.Missing, path+"/horizontal/u", "", "uncertainties, as the other plane has them")
	case p.Correlation != nil:
		f.Add(units.Conflict, path+"/correlation", "", "uncertainties with it")
	}
	return false
}

func (p *position) standard() align.Centreline {
	return align.Centreline{Horizontal: *p.Horizontal.U, Vertical: *p.Vertical.U}
}

// correlation returns four rows of four numbers; independent where none are
// given, and where they are not that.
func (p *position) correlation(f *strict.Faults, path string) [4][4]float64 {
	var r [4][4]float64
	for i := range r {
		r[i][i] = 1
	}
	if p.Correlation == nil {
		return r
	}
	if len(p.Correlation) != len(r) {
		f.Add(units.Malformed, path, "", "four rows")
		return r
	}
	for i, row := range p.Correlation {
		if len(row) != len(r) {
			f.Add(units.Malformed, strict.Step(path, i), "", "four numbers")
			continue
		}
		copy(r[i][:], row)
	}
	return r
}

// told returns an estimate as a position, with uncertainties where the input
// stated some.
func told(e align.Estimate) position {
	p := position{Horizontal: toldLine(e.Value.Horizontal), Vertical: toldLine(e.Value.Vertical)}
	if e.Cov.Basis == align.Stated {
		u := e.Cov.Standard()
		p.Horizontal.U, p.Vertical.U = &u.Horizontal, &u.Vertical
	}
	return p
}

func toldLine(l align.Line) line { return line{Offset: l.Offset, Slope: l.Slope} }
