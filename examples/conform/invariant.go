package main

import "encoding/json"

// An invariant is something that holds whatever the readings say, so that no
// expected answer is needed: the program's own answers are held against one
// another. It changes the input of a fit, and says what must become of the
// answer; it passes over inputs for which it says nothing.
type invariant struct {
	name   string
	change func(in *fitInput) bool // false: says nothing here
	follow func(c *coarse)         // turns the answer to the old input into that to the new one
}

// invariants are asked of every fit in the suite that has an answer.
var invariants = []invariant{
	{"reversed_order", reverseOrder, func(*coarse) {}},
	{"repeated", repeatReadings, func(*coarse) {}},
	{"weighted", splitWeights, func(*coarse) {}},
	{"turned", turnClock, (*coarse).turn},
	{"moved_origin", moveOrigin, (*coarse).moveOrigin},
	{"scaled", scaleLengths, (*coarse).scale},
	{"exchanged", exchangeMachines, (*coarse).exchange},
}

// Two more are made by predicting readings; see foretold.
const (
	predicted = "predicted"
	moved     = "moved"
)

func invariantNames() []string {
	names := []string{predicted, moved}
	for _, i := range invariants {
		names = append(names, i.name)
	}
	return names
}

func (v vector) hasInvariants() bool { return v.Op == "fit" && v.Error == nil }

// invariants asks them all.
func (s *suite) invariants(p *program) []outcome {
	var outcomes []outcome
	for _, v := range s.vectors {
		if v.hasInvariants() {
			outcomes = append(outcomes, v.invariants(p)...)
		}
	}
	return outcomes
}

func (v vector) invariants(p *program) []outcome {
	a, t := p.ask(v.Op, v.Input)
	base, err := readCoarse(a.Result)
	if t != nil || err != nil {
		return v.notAsked(a, t)
	}
	var outcomes []outcome
	bound := v.bound()
	for _, i := range invariants {
		outcomes = append(outcomes, i.hold(p, v, base, bound)...)
	}
	return append(outcomes, v.foretold(p, a, base, bound)...)
}

// notAsked lists the invariants of a vector as skipped, for want of an answer to
// start from.
func (v vector) notAsked(a answer, t *trouble) []outcome {
	reason := "no answer to the fit that can be used"
	switch {
	case t != nil:
		reason += ": " + t.Kind
	case a.Skipped != nil:
		reason = *a.Skipped
	}
	var outcomes []outcome
	for _, name := range v.applicable() {
		outcomes = append(outcomes, outcome{ID: v.ID + "/" + name, Op: v.Op, Reason: reason})
	}
	return outcomes
}

// applicable names the invariants that say something about a vector.
func (v vector) applicable() []string {
	names := []string{predicted}
	for _, i := range invariants {
		var in fitInput
		if json.Unmarshal(v.Input, &in) == nil && i.change(&in) {
			names = append(names, i.name)
		}
	}
	var in fitInput
	if json.Unmarshal(v.Input, &in) == nil && len(in.Feet) > 1 {
		names = append(names, moved)
	}
	return names
}

// hold asks the changed vector and compares.
func (i invariant) hold(p *program, v vector, want, bound coarse) []outcome {
	var in fitInput
	if json.Unmarshal(v.Input, &in) != nil || !i.change(&in) {
		return nil
	}
	i.follow(&want)
	i.follow(&bound)
	return []outcome{ask(p, v.ID+"/"+i.name, "fit", in, want, bound)}
}

// ask asks a fit and holds the answer against what is wanted.
func ask(p *program, id, op string, in any, want, bound coarse) outcome {
	o := outcome{ID: id, Op: op}
	input, err := json.Marshal(in)
	if err != nil {
		o.Kind, o.Detail = badAnswer, err.Error()
		return o
	}
	a, t := p.ask(op, input)
	switch {
	case t != nil:
		o.Kind, o.Detail = t.Kind, t.Detail
	case a.Skipped != nil:
		o.Reason = *a.Skipped
	case a.Error != nil:
		o.Kind, o.Detail = refused, a.Error.String()
	default:
		o.near(a.Result, want, bound)
	}
	return o
}

// near holds a position that came against one that is wanted.
func (o *outcome) near(result json.RawMessage, want, bound coarse) {
	got, err := readCoarse(result)
	if err != nil {
		o.Kind, o.Detail = badAnswer, misread(err)
		return
	}
	o.differ(want.differences(got, bound))
}

// foretold asks what the dials would show in the position that was found, and in
// the one that the moves lead to; the fits of those must give the position
// again, and nothing.
func (v vector) foretold(p *program, a answer, base, bound coarse) []outcome {
	var in fitInput
	if json.Unmarshal(v.Input, &in) != nil {
		return nil
	}
	outcomes := v.refit(p, predicted, in, base, base, bound)
	after, more, ok := v.afterMoves(in.Feet, a.Result, base)
	switch {
	case ok:
		outcomes = append(outcomes, v.refit(p, moved, in, after, coarse{}, bound.plus(more))...)
	case len(in.Feet) > 1:
		outcomes = append(outcomes, outcome{ID: v.ID + "/" + moved, Op: v.Op, Reason: "no moves that can be used"})
	}
	return outcomes
}

// refit has readings predicted for a position and fits them.
func (v vector) refit(p *program, name string, in fitInput, at, want, bound coarse) []outcome {
	o := outcome{ID: v.ID + "/" + name, Op: "predict"}
	input, err := json.Marshal(in.prediction(at))
	if err != nil {
		o.Kind, o.Detail = badAnswer, err.Error()
		return []outcome{o}
	}
	a, t := p.ask("predict", input)
	switch {
	case t != nil:
		o.Kind, o.Detail = t.Kind, t.Detail
	case a.Skipped != nil:
		o.Reason = *a.Skipped
	case a.Error != nil:
		o.Kind, o.Detail = refused, a.Error.String()
	default:
		if err := in.read(a.Result); err != nil {
			o.Kind, o.Detail = badAnswer, misread(err)
			break
		}
		return []outcome{ask(p, o.ID, "fit", in, want, bound)}
	}
	return []outcome{o}
}
