package adapter

import (
	"bytes"
	"encoding/json"
	"slices"
	"strings"
	"testing"
)

// FuzzServe: whatever the bytes are, each line is answered with one line of
// JSON, which has one of result, error and skipped, until stop.
func FuzzServe(f *testing.F) {
	for _, row := range answered {
		f.Add([]byte(requestLine(row.op, row.input)))
	}
	for _, row := range refused {
		for _, c := range row.changes {
			f.Add([]byte(requestLine(row.op, strings.Replace(row.input, c.what, c.with, 1))))
		}
	}
	f.Add([]byte("\n\n{\"seq\":1,\"op\":\"describe\"}\nhello\n{\"seq\":2,\"op\":\"stop\"}"))
	f.Fuzz(func(t *testing.T, in []byte) {
		var out bytes.Buffer
		if err := Serve(bytes.NewReader(in), &out); err != nil {
			t.Fatal(err)
		}
		answers := strings.SplitAfter(out.String(), "\n")
		answers = answers[:len(answers)-1] // behind the last end is nothing
		if lines := countLines(in); len(answers) != lines && !stopped(answers) || len(answers) > lines {
			t.Fatalf("%d answers for %d lines", len(answers), lines)
		}
		for _, line := range answers {
			checkAnswer(t, line)
		}
	})
}

// countLines counts the lines; what stands behind the last end is one if it is
// not empty.
func countLines(in []byte) int {
	n := bytes.Count(in, []byte("\n"))
	if len(in) > 0 && in[len(in)-1] != '\n' {
		n++
	}
	return n
}

func stopped(answers []string) bool {
	return len(answers) > 0 && strings.HasSuffix(answers[len(answers)-1], `"result":{}}`+"\n")
}

func checkAnswer(t *testing.T, line string) {
	t.Helper()
	var members map[string]json.RawMessage
	if err := json.Unmarshal([]byte(line), &members); err != nil {
		t.Fatalf("%v in %q", err, line)
	}
	found := 0
	for _, name := range []string{"result", "error", "skipped"} {
		if _, there := members[name]; there {
			found++
		}
	}
	if _, there := members["seq"]; !there || found != 1 {
		t.Fatalf("no answer: %s", line)
	}
	a := readReply(t, line)
	if a.Error != nil && (!slices.Contains(codes, a.Error.Code) || len(a.Faults) == 0 || a.Faults[0] != *a.Error) {
		t.Fatalf("no refusal: %s", line)
	}
}

// codes are those that an error may have.
var codes = strings.Fields("missing not_finite out_of_range malformed unknown duplicate conflict unseen")
