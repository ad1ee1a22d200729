package pumpset

import (
	"io"
	"strings"

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
		rows = append(rows, graph.Row{Figures: d.planes[:], Words: strings.TrimSpace(d.scale.String() + " " + d.lacks)}, graph.Row{Figures: d.turns[:]})
	}
	legend := graph.Legend()
	rows = append(rows, graph.Row{Figures: legend[:]})
	_, err = io.WriteString(w, graph.Together(string(r.Job.Title), rows...).SVG()+"\n")
	return err
}

// drawn is what is drawn of one survey.
type drawn struct {
	scale  graph.Scale     // of both
	lacks  string          // what is missing from them
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
	side, plan := p.sideView(st, shift), p.planView(st, shift)
	scale := graph.Fit(side, plan)
	side.Title = "Side view " + when + ", " + scale.Slopes() + ", from " + p.nearSide()
	plan.Title = "From above " + when + ", " + scale.Slopes()
	d := drawn{scale: scale, lacks: p.lacks(st), planes: [2]graph.Figure{side.Draw(scale), plan.Draw(scale)}}
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

// lacks tells why there is no band where there is none.
func (p *report) lacks(st *state) string {
	var words []string
	if st.Result.Cov.Basis == align.Unknown {
		words = append(words, "No grey: how well the shaft's place is known is unknown, which is not zero.")
	}
	if p.aim().Cov.Basis == align.Unknown {
		words = append(words, "No dots: how well the target is known is unknown.")
	}
	return strings.Join(words, " ")
}
