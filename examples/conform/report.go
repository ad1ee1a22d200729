package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
)

// report is what became of a run.
type report struct {
	Suite struct {
		Version  string `json:"version"`
		Manifest string `json:"manifest_sha256"`
		Only     string `json:"only,omitempty"` // the area or the vector that was chosen
	} `json:"suite"`
	Implementation implementation `json:"implementation"`
	Counts         struct {
		Vectors    tally `json:"vectors"`
		Invariants tally `json:"invariants"`
		Lines      tally `json:"lines"`
	} `json:"counts"`
	Mistakes []suspicion `json:"mistakes"` // that explain the failures, the best first
	Failures []outcome   `json:"failures"`
	Unproven []outcome   `json:"unproven"` // right refusals that count for nothing
	Known    []outcome   `json:"known_failures"`
	Stale    []outcome   `json:"known_failures_that_pass"`
	Skips    []outcome   `json:"skips"`
}

// tally counts outcomes.
type tally struct {
	Passed   int `json:"passed"`
	Failed   int `json:"failed"`
	Unproven int `json:"unproven"`
	Skipped  int `json:"skipped"`
	Known    int `json:"known_failures"`
	Stale    int `json:"known_failures_that_pass"`
}

// implementation is what the program says of itself.
type implementation struct {
	Name    string   `json:"name"`
	Version string   `json:"version"`
	Command []string `json:"command"`
	Note    string   `json:"note,omitempty"` // where it did not say
}

func (s *suite) newReport() report {
	var r report
	r.Suite.Version, r.Suite.Manifest, r.Suite.Only = s.version, s.hash, s.only
	r.Mistakes, r.Failures, r.Unproven = []suspicion{}, []outcome{}, []outcome{} // not null in the file
	r.Known, r.Stale, r.Skips = []outcome{}, []outcome{}, []outcome{}
	return r
}

func (i *implementation) describe(p *program) {
	var own struct{ Name, Version string }
	a, t := p.ask("describe", nil)
	switch {
	case t != nil:
		i.Note = "does not describe itself: " + t.Kind + ", " + t.Detail
	case a.Result == nil || json.Unmarshal(a.Result, &own) != nil:
		i.Note = "does not describe itself"
	}
	i.Name, i.Version = short(own.Name), short(own.Version)
}

// take sorts outcomes into the report and counts them.
func (r *report) take(outcomes []outcome, known map[string]string, count *tally) {
	for _, o := range outcomes {
		reason, isKnown := known[o.ID]
		switch {
		case o.skipped():
			r.Skips = append(r.Skips, o)
			count.Skipped++
		case o.Kind == unproven:
			r.Unproven = append(r.Unproven, o)
			count.Unproven++
		case o.Kind == "" && isKnown:
			o.Reason = reason
			r.Stale = append(r.Stale, o)
			count.Stale++
		case o.Kind == "":
			count.Passed++
		case isKnown:
			o.Reason = reason
			r.Known = append(r.Known, o)
			count.Known++
		default:
			r.Failures = append(r.Failures, o)
			count.Failed++
		}
	}
}

// good tells whether nothing failed that was not known to, and nothing passed
// that was known to fail.
func (r *report) good() bool { return len(r.Failures) == 0 && len(r.Stale) == 0 }

// output is where a report goes: as text, and as JSON to a file if one is named.
type output struct {
	text io.Writer
	file *os.File
}

// newOutput opens the file before anything is asked: a name that is wrong would
// otherwise cost the run.
func newOutput(text io.Writer, name string) (output, error) {
	if name == "" {
		return output{text: text}, nil
	}
	file, err := os.Create(name)
	return output{text, file}, err
}

func (o output) write(r report) error {
	r.print(o.text)
	if o.file == nil {
		return nil
	}
	text, err := json.MarshalIndent(r, "", "  ")
	if err != nil {
		return err
	}
	_, err = o.file.Write(append(text, '\n'))
	return errors.Join(err, o.file.Close())
}

// print writes the report for a person.
func (r *report) print(out io.Writer) {
	name := strings.TrimSpace(r.Implementation.Name + " " + r.Implementation.Version)
	if name == "" {
		name = "the program"
	}
	fmt.Fprintf(out, "%s against suite %s (manifest %.12s)\n", name, r.Suite.Version, r.Suite.Manifest)
	if r.Implementation.Note != "" {
		fmt.Fprintf(out, "it %s\n", r.Implementation.Note)
	}
	if r.Suite.Only != "" {
		fmt.Fprintf(out, "only %s was asked\n", r.Suite.Only)
	}
	r.Counts.Vectors.print(out, "vectors")
	r.Counts.Invariants.print(out, "invariants")
	r.Counts.Lines.print(out, "bad lines")
	r.printMistakes(out)
	printEach(out, "failed", r.Failures)
	printEach(out, "unproven: refused as wanted, but the sound twin was not answered right", r.Unproven)
	printEach(out, "known to fail, but passed: take it off the list", r.Stale)
	r.printSkips(out)
}

func (t tally) print(out io.Writer, name string) {
	fmt.Fprintf(out, "%-10s %5d passed %5d failed %5d skipped", name, t.Passed, t.Failed, t.Skipped)
	if t.Unproven > 0 {
		fmt.Fprintf(out, " %5d unproven", t.Unproven)
	}
	if t.Known+t.Stale > 0 {
		fmt.Fprintf(out, " %5d known to fail %5d known to fail, but passed", t.Known, t.Stale)
	}
	fmt.Fprintln(out)
}

// mostMistakes is how many mistakes are worth a person's look, unless more
// explain the failures equally well.
const mostMistakes = 3

func (r *report) printMistakes(out io.Writer) {
	if len(r.Mistakes) > 0 {
		fmt.Fprintln(out, "\nmistakes that explain the failures, the likeliest first:")
	}
	for _, m := range r.Mistakes[:min(max(mostMistakes, len(r.first())), len(r.Mistakes))] {
		fmt.Fprintf(out, "  %s (%d of the %d vectors that betray it and were answered failed, match %.2f)\n    %s;\n    %s\n",
			m.Flag, m.Failed, m.Of, m.Match, m.Mistake, m.Effect)
	}
}

func printEach(out io.Writer, title string, outcomes []outcome) {
	if len(outcomes) > 0 {
		fmt.Fprintf(out, "\n%s:\n", title)
	}
	for _, o := range outcomes {
		fmt.Fprintf(out, "  %s: %s\n", o.ID, strings.TrimSpace(strings.Join([]string{o.Kind, o.Detail, o.Reason}, " ")))
		for _, d := range o.At {
			fmt.Fprintf(out, "    %s: got %s, want %s", d.At, d.Got, d.Want)
			if d.Within != "" {
				fmt.Fprintf(out, " within %s", d.Within)
			}
			fmt.Fprintln(out)
		}
	}
}

// printSkips counts the skips by their reason; the report as JSON has each.
func (r *report) printSkips(out io.Writer) {
	counts, order := map[string]int{}, []string{}
	for _, o := range r.Skips {
		if counts[o.Reason] == 0 {
			order = append(order, o.Reason)
		}
		counts[o.Reason]++
	}
	if len(order) > 0 {
		fmt.Fprintln(out, "\nskipped:")
	}
	for _, reason := range order {
		fmt.Fprintf(out, "  %d: %s\n", counts[reason], reason)
	}
}
