package main

import (
	"bytes"
	"fmt"
	"strings"
	"testing"
)

// counted is a text that goes on, and counts what was read of it.
type counted struct {
	text string
	read int
}

func (c *counted) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = c.text[(c.read+i)%len(c.text)]
	}
	c.read += len(p)
	return len(p), nil
}

// Of a standard input without an end no more is read than shows that it is too long,
// and it is refused with one line, whatever it is made of.
func TestInputWithoutAnEnd(t *testing.T) {
	for _, text := range []string{" ", "[", `{"answers":`, `"`, "9", "\x00", `{"title":"x"} `} {
		for _, flag := range []string{"-check", "-job"} {
			in := &counted{text: text}
			var stdout, stderr bytes.Buffer
			code := run([]string{flag, "-"}, in, &stdout, &stderr)
			if code != refused || stdout.Len() > 0 || stderr.String() != "standard input: want a sheet of at most 1048576 bytes (out_of_range)\n" {
				t.Errorf("%s %q: code %d, %.200q, %.200q", flag, text, code, stdout.String(), stderr.String())
			}
			if in.read > bounds.Size+1 {
				t.Errorf("%s %q: %d bytes were read", flag, text, in.read)
			}
		}
	}
}

// A list of nothing but faults is told with a few hundred lines, and in a time that
// grows with its length alone: with its square this would take an hour.
func TestManyFaultsOfDrawn(t *testing.T) {
	var list strings.Builder
	for i := range 80_000 {
		fmt.Fprintf(&list, `,"a%d":"x"`, i)
	}
	doc := strings.Replace(string(builtIn), "{", `{"drawn":{`+list.String()[1:]+"},", 1)
	got := check([]byte(doc))
	if got.code != refused || got.stdout != "" || strings.Count(got.stderr, "\n") > 300 {
		t.Errorf("code %d, %d lines: %.300q", got.code, strings.Count(got.stderr, "\n"), got.stderr)
	}
}
