package main

import (
	"encoding/json"
	"fmt"
	"slices"
)

// Kinds of failure, beside those of trouble.
const (
	off       = "wrong"             // an answer that is off
	refused   = "refused"           // a refusal of sound input
	answered  = "answered"          // an answer to unsound input
	otherwise = "refused_otherwise" // a refusal with another code or path
	unproven  = "unproven"          // no failure of its own: the right refusal, but the sound twin is not answered right
)

// outcome is what became of one question.
type outcome struct {
	ID     string       `json:"id"`
	Op     string       `json:"op"`
	Kind   string       `json:"kind,omitempty"`  // of failure; none: as wanted, or skipped
	Flags  []string     `json:"flags,omitempty"` // mistakes that it betrays
	Detail string       `json:"detail,omitempty"`
	At     []difference `json:"differences,omitempty"`
	Reason string       `json:"reason,omitempty"` // why it was skipped, or known to fail
}

func (o outcome) skipped() bool { return o.Kind == "" && o.Reason != "" }

func (o outcome) passed() bool { return o.Kind == "" && o.Reason == "" }

// telling tells whether the failure is an answer that can be traced to a
// mistake, unlike trouble or a refusal whose twin failed.
func (o outcome) telling() bool {
	switch o.Kind {
	case off, refused, answered, otherwise:
		return true
	}
	return false
}

// hold asks a program everything in the suite and returns the report.
func (s *suite) hold(p *program, known map[string]string) report {
	r := s.newReport()
	r.Implementation.describe(p)
	answers := s.answers(p)
	r.take(answers, known, &r.Counts.Vectors)
	r.rank(s, answers)
	r.take(s.invariants(p), known, &r.Counts.Invariants)
	r.take(s.badLines(p), known, &r.Counts.Lines)
	r.take([]outcome{leave(p)}, known, &r.Counts.Lines)
	return r
}

// answers asks all vectors. A refusal counts once its twin was answered right.
func (s *suite) answers(p *program) []outcome {
	outcomes := make([]outcome, len(s.vectors))
	right := map[string]bool{}
	for i, v := range s.vectors {
		outcomes[i] = v.hold(p)
		right[v.ID] = outcomes[i].passed()
	}
	for i, v := range s.vectors {
		if o := &outcomes[i]; right[v.ID] && v.Error != nil && !right[v.Twin] {
			o.Kind, o.Detail = unproven, fmt.Sprintf("the twin %s is not answered right", v.Twin)
		}
	}
	return outcomes
}

// hold asks one vector.
func (v vector) hold(p *program) outcome {
	o := outcome{ID: v.ID, Op: v.Op, Flags: v.Flags}
	a, t := p.ask(v.Op, v.Input)
	switch {
	case t != nil:
		o.Kind, o.Detail = t.Kind, t.Detail
	case a.Skipped != nil:
		o.Reason = *a.Skipped
	case v.Error != nil:
		o.Kind, o.Detail = holdRefusal(a, *v.Error)
	case a.Error != nil:
		o.Kind, o.Detail = refused, a.Error.String()
	default:
		o.differ(v.differences(a.Result))
	}
	return o
}

// mostDifferences is how many differences of one answer are kept.
const mostDifferences = 50

// differ says where an answer is off. One that is not as the protocol has it says
// nothing about mistakes in the mathematics.
func (o *outcome) differ(all []difference) {
	switch {
	case slices.ContainsFunc(all, func(d difference) bool { return d.junk }):
		o.Kind = badAnswer
	case len(all) > 0:
		o.Kind = off
	}
	if more := len(all) - mostDifferences; more > 0 {
		all, o.Detail = all[:mostDifferences:mostDifferences], fmt.Sprintf("and in %d places more", more)
	}
	o.At = slices.Clone(all)
}

func holdRefusal(a answer, want fault) (kind, detail string) {
	switch {
	case a.Error == nil:
		return answered, "wanted: " + want.String()
	case *a.Error != want:
		return otherwise, fmt.Sprintf("%v; wanted: %v", a.Error, want)
	}
	return "", ""
}

// differences compares a result, and verifies where there is a choice.
func (v vector) differences(result json.RawMessage) []difference {
	all := compare(v.Result, result, v.Tolerance)
	if check, there := verifiers[v.Op]; there && v.Verify != nil {
		all = append(all, check(v, result)...)
	}
	return all
}
