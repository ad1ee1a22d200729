package main

import (
	"fmt"
	"strings"
)

// badLine is a line that is no sound request, and what to answer to it.
type badLine struct {
	id   string
	text string
	seq  string
	want fault
}

// readLines reads lines.txt: blocks of three lines, the name, the line to send
// behind "> ", and the wanted answer behind "< ". Lines that begin with # are
// remarks.
func readLines(text string) ([]badLine, error) {
	var all []badLine
	for i, line := range strings.Split(text, "\n") {
		mark, rest, _ := strings.Cut(line, " ")
		last := len(all) - 1
		switch {
		case line == "" || mark == "#":
		case mark == ">" && last >= 0:
			all[last].text = rest
		case mark == "<" && last >= 0:
			seq, a, _ := takeApart([]byte(rest))
			if a.Error == nil {
				return nil, fmt.Errorf("line %d: an answer with an error is wanted", i+1)
			}
			all[last].seq, all[last].want = seq, *a.Error
		default:
			all = append(all, badLine{id: line})
		}
	}
	return all, nil
}

// badLines sends them, and after each asks something sound: a program has to go
// on.
func (s *suite) badLines(p *program) []outcome {
	var outcomes []outcome
	for _, l := range s.lines {
		outcomes = append(outcomes, l.hold(p))
	}
	return outcomes
}

func (l badLine) hold(p *program) outcome {
	o := outcome{ID: l.id, Op: "lines"}
	a, t := p.send([]byte(l.text), l.seq)
	if t == nil {
		_, t = p.ask("describe", nil)
	}
	switch {
	case t != nil:
		o.Kind, o.Detail = t.Kind, t.Detail
	case a.Skipped != nil:
		o.Reason = *a.Skipped
	default:
		o.Kind, o.Detail = holdRefusal(a, l.want)
	}
	return o
}

// leaveID names the last question.
const leaveID = "lines-stop"

// leave asks the program to stop, which it has to do by itself.
func leave(p *program) outcome {
	o := outcome{ID: leaveID, Op: "stop"}
	a, t := p.ask("stop", nil)
	switch e := p.stop(); {
	case t != nil:
		o.Kind, o.Detail = t.Kind, t.Detail
	case a.Result == nil:
		o.Kind, o.Detail = badAnswer, "stop has a result, {}"
	case !e.well:
		o.Kind, o.Detail = crash, "after stop: "+e.words
	}
	return o
}
