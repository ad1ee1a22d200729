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

// invariants asks them all.
func (s *suite) invariants(p *program) []outcome {
	var outcomes []outcome
	for _, v := range s.vectors {
		if v.Op != "fit" || v.Error != nil {
			continue
		}
		a, t := p.ask(v.Op, v.Input)
		base, err := readCoarse(a.Result)
		if t != nil || err != nil {
			continue // the vector itself has failed or was skipped, and says so
		}
		bound := v.bound()
		for _, i := range invariants {
			outcomes = append(outcomes, i.hold(p, v, base, bound)...)
		}
		outcomes = append(outcomes, v.foretold(p, a, base, bound)...)
	}
	return outcomes
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
		got, err := readCoarse(a.Result)
		if o.At = want.differences(got, bound); len(o.At) > 0 || err != nil {
			o.Kind = off
		}
		if err != nil {
			o.Detail = err.Error()
		}
	}
	return o
}

// foretold asks what the dials would show in the position that was found, and in
// the one that the moves lead to; the fits of those must give the position
// again, and nothing.
func (v vector) foretold(p *program, a answer, base, bound coarse) []outcome {
	var in fitInput
	if json.Unmarshal(v.Input, &in) != nil {
		return nil
	}
	outcomes := v.refit(p, "predicted", in, base, base, bound)
	if after, more, ok := v.afterMoves(in.Feet, a.Result, base); ok {
		outcomes = append(outcomes, v.refit(p, "moved", in, after, coarse{}, bound.plus(more))...)
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
			o.Kind, o.Detail = badAnswer, err.Error()
			break
		}
		return []outcome{ask(p, o.ID, "fit", in, want, bound)}
	}
	return []outcome{o}
}
