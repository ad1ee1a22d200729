package main

import (
	"bytes"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// FuzzStream: whatever the bytes are, each line is answered by one line of JSON, which
// is one kind of answer, until the end or a set-up that is refused; the program ends as
// it says; and what was refused has changed nothing.
func FuzzStream(f *testing.F) {
	lines := sampleLines(f)
	f.Add([]byte(strings.Join(lines, "\n")))
	f.Add([]byte(strings.Join(lines[:3], "\r\n") + "\n\n"))
	for _, row := range refusedFirst {
		f.Add([]byte(row.line))
	}
	for _, row := range refusals {
		if len(row.line) < 10_000 {
			f.Add([]byte(strings.Join(append(slices.Clone(lines[:row.behind]), row.line, lines[row.behind]), "\n")))
		}
	}
	f.Fuzz(func(t *testing.T, text []byte) { holdsFor(t, text) })
}

// holdsFor holds the program to what FuzzStream says, and returns how many lines it
// answered with more than a refusal.
func holdsFor(t rapid.TB, text []byte) int {
	t.Helper()
	var stdout, stderr bytes.Buffer
	code := run(nil, bytes.NewReader(text), &stdout, &stderr)
	in, answers := split(text), split(stdout.Bytes())
	var sound, kept []string
	for i, a := range answers {
		r := read(t, a)
		if r.Line != i+1 {
			t.Fatalf("answer %d is said to be that to line %d", i+1, r.Line)
		}
		for _, fault := range slices.Concat(r.Faults, r.Unseen) {
			if fault.Code == "" || fault.Want == "" {
				t.Errorf("%s does not say what is wanted", a)
			}
		}
		if len(r.Faults) == 0 {
			sound, kept = append(sound, in[i]), append(kept, a)
		}
	}
	switch begun := len(in) == 0 || len(answers) > 0 && len(read(t, answers[0]).Faults) == 0; {
	case begun && (code != ended || len(answers) != len(in)):
		t.Fatalf("ends with %d after %d answers to %d lines, and says %q", code, len(answers), len(in), stderr.String())
	case !begun && (code != failed || len(answers) != 1):
		t.Fatalf("ends with %d after %d answers, the set-up refused or not answered, and says %q", code, len(answers), stderr.String())
	case begun && len(sound) < len(in):
		again, _ := sent(t, sound...)
		if diff := cmp.Diff(unnumbered(kept), unnumbered(again)); diff != "" {
			t.Errorf("what was refused has changed something:\n%s", diff)
		}
	}
	return len(sound)
}

// Quantities as large and as small as can be written are refused, or answered.
func TestExtremes(t *testing.T) {
	var sent, answered int
	rapid.Check(t, func(t *rapid.T) {
		pick := func(name, plain string, odd ...string) string { // odd are few, so that most lines are answered
			if !rapid.SampledFrom([]bool{29: true}).Draw(t, "odd") {
				return plain
			}
			return rapid.SampledFrom(odd).Draw(t, name)
		}
		length := func(name, plain string) string {
			return pick(name, plain, "0 mm", "1e-318 nm", "1e-9 nm", "1 nm", "-1 m", "999 m", "999 km", "-1000 km", "1e299 m")
		}
		clock := func(plain string) string { return pick("at", plain, "1e300 deg", "1e-300 deg", "-7 deg") }
		probe := func(name, carrier, station string) object {
			p := object{"kind": "rim", "carrier": carrier, "station": length("station", station)}
			if rapid.Bool().Draw(t, "sensor") {
				p = object{"kind": "displacement", "station": length("station", station), "gain": json.RawMessage(pick("gain", "1", "-1", "0", "1e-300", "1e300"))}
			}
			u := object{"reading": length("u", "2 um"), "station": length("u of station", "0.5 mm"), "clock": pick("u of clock", "0.5 deg", "0 deg", "90 deg", "1e200 deg", "1e-300 rad")}
			return object{"name": name, "probe": p, "u": u}
		}
		aim := object{"offset": length("target", "0 mm"), "slope": pick("target's slope", "0 mm/m", "1e9 mm/m", "1e-300 mm/m")}
		lines := []string{line(t, object{"setup": object{
			"view": "from_movable", "probes": []object{probe("A", "stationary", "100 mm"), probe("B", "movable", "-80 mm")},
			"feet":   []object{{"name": "in", "x": length("foot", "400 mm"), "u": length("u of foot", "1 mm")}},
			"target": object{"horizontal": aim, "vertical": aim},
			"judge":  object{"limits": object{"offset": length("limit", "0.05 mm"), "flex": "1 mm/m"}, "coupling": object{"span": length("span", "0 mm")}},
		}})}
		both := func(at, other string) []object {
			value := func() string {
				return length("value", rapid.SampledFrom([]string{"0.1 mm", "-0.2 mm", "0.3 mm"}).Draw(t, "value"))
			}
			return []object{{"probe": "A", "at": clock(at), "value": value()}, {"probe": "B", "at": clock(other), "value": value()}}
		}
		for _, at := range [][2]string{{"12:00", "6:00"}, {"3:00", "9:00"}, {"6:00", "12:00"}, {"9:00", "3:00"}} {
			lines = append(lines, line(t, object{"readings": both(at[0], at[1])}))
		}
		lines = append(lines, line(t, object{"rest": object{"plane": "vertical", "readings": both("12:00", "6:00")}}), line(t, object{"readings": both("12:00", "6:00")}))
		sent += len(lines)
		answered += holdsFor(t, []byte(strings.Join(lines, "\n")))
	})
	if answered < sent/4 {
		t.Errorf("of %d lines only %d were not refused", sent, answered)
	}
}

// split takes lines apart; what stands behind the last end is one if it is not empty.
func split(text []byte) []string {
	lines := strings.Split(string(text), "\n")
	if last := len(lines) - 1; lines[last] == "" {
		return lines[:last]
	}
	return lines
}
