package pumpset

import (
	"io"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/graph"
)

// WriteDrawing writes all drawings of a record as one file of SVG, with lengths in
// the system that is asked for: both planes and the readings as found, and below them
// the same as left.
func WriteDrawing(w io.Writer, r Record, s System) error {
	p := report{Record: r, display: r.Job.display(s)}
	var rows []graph.Row
	all, err := p.drawings()
	if err != nil {
		return err
	}
	for _, d := range all {
		rows = append(rows, graph.Row{Figures: d.planes[:], Words: d.words}, graph.Row{Figures: d.turns[:]})
	}
	rows = append(rows, graph.Row{Figures: []graph.Figure{graph.Legend()}})
	_, err = io.WriteString(w, graph.Together(string(r.Job.Title), rows...).SVG()+"\n")
	return err
}

// drawn is what is drawn of one survey.
type drawn struct {
	when   string          // "as found", "as left"
	words  string          // the scale of both, and what is missing from them
	planes [2]graph.Figure // the side view and the plan
	turns  [2]graph.Figure // the readings of both sets
}

func (p *report) drawings() ([]drawn, error) {
	found, err := p.draw("as found", &p.Job.Found, &p.Found, p.shift())
	if err != nil || p.Left == nil {
		return []drawn{found}, err
	}
	left, err := p.draw("as left", p.Job.Left, p.Left, align.Centreline{})
	return []drawn{found, left}, err
}

// draw draws what was measured. The shift is what the shims of soft foot do to the
// shaft before the moves.
func (p *report) draw(when string, s *survey, st *state, shift align.Centreline) (drawn, error) {
	side, plan := p.sideView(when, st, shift), p.planView(when, st, shift)
	scale := graph.Fit(side, plan)
	d := drawn{when: when, words: p.drawnAt(scale, st), planes: [2]graph.Figure{side.Draw(scale), plan.Draw(scale)}}
	m := p.Job.methods(s)[0]
	for i, set := range m.Sets() {
		t, err := p.turn(when, &m.parts[i], set, st.Result.Value)
		if err != nil {
			return drawn{}, err
		}
		d.turns[i] = t.Draw()
	}
	return d, nil
}

// drawnAt tells the scale, and why there is no band where there is none.
func (p *report) drawnAt(scale graph.Scale, st *state) string {
	words := scale.String()
	if st.Result.Cov.Basis == align.Unknown {
		words += " No grey: how well the shaft's place is known is unknown, which is not zero."
	}
	if p.aim().Cov.Basis == align.Unknown {
		words += " No dots: how well the target is known is unknown."
	}
	return words
}
