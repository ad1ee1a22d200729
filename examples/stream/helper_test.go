package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// reply is an answer as another program reads it.
type reply struct {
	Line     int                `json:"line"`
	Faults   []*units.Fault     `json:"faults"`
	Unseen   []*units.Fault     `json:"unseen"`
	Found    *align.Fitted      `json:"found"`
	Followed *arc.Followed      `json:"followed"`
	Moves    []align.Move       `json:"moves"`
	Verdict  *tolerance.Verdict `json:"verdict"`
	Warnings []units.Fault      `json:"warnings"`
}

// sent runs the program on some lines, and returns its answers and how it ended.
func sent(t rapid.TB, lines ...string) ([]string, int) {
	t.Helper()
	var stdout, stderr bytes.Buffer
	code := run(nil, strings.NewReader(strings.Join(lines, "\n")), &stdout, &stderr)
	if stderr.Len() > 0 && code != failed {
		t.Errorf("says %q", stderr.String())
	}
	return strings.Split(strings.TrimSuffix(stdout.String(), "\n"), "\n"), code
}

// last is the answer to the last of some lines, each of which has to be answered.
func last(t rapid.TB, lines ...string) reply {
	t.Helper()
	all, code := sent(t, lines...)
	if len(all) != len(lines) || code != ended {
		t.Fatalf("%d answers to %d lines, the last %s; ends with %d", len(all), len(lines), all[len(all)-1], code)
	}
	return read(t, all[len(all)-1])
}

func read(t rapid.TB, line string) (r reply) {
	t.Helper()
	if err := json.Unmarshal([]byte(line), &r); err != nil {
		t.Fatalf("%v in %s", err, line)
	}
	kinds := 0
	for _, there := range []bool{len(r.Faults) > 0, len(r.Unseen) > 0, r.Found != nil, r.Followed != nil} {
		if there {
			kinds++
		}
	}
	if kinds != 1 {
		t.Fatalf("%d kinds of answer in %s", kinds, line)
	}
	return r
}

type object = map[string]any

// line writes a line to send.
func line(t rapid.TB, what any) string {
	t.Helper()
	text, err := json.Marshal(what)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// taken is one reading, of a clock position in degrees and a value in millimetres.
type taken struct {
	probe     string
	at, value float64
}

func readings(list ...taken) []object {
	all := make([]object, len(list))
	for i, r := range list {
		all[i] = object{"probe": r.probe, "at": units.Clock(r.at).String(), "value": mm(r.value)}
	}
	return all
}

func mm(x float64) string { return fmt.Sprintf("%v mm", x) }

// listed are faults as "code path".
func listed(faults []*units.Fault) (list []string) {
	for _, f := range faults {
		list = append(list, string(f.Code)+" "+f.Path)
	}
	return list
}

// apart tells whether two lengths, or slopes, are further apart than most.
func apart[Q ~float64](a, b, most Q) bool { return !(a-b <= most && b-a <= most) }
