package main

import (
	"bytes"
	"fmt"
	"io"
	"testing"
	"time"

	"example.org/collinear/examples/conform/adapter"
)

// TestThisModulePasses holds this module against the whole suite.
func TestThisModulePasses(t *testing.T) {
	s, _ := ours(t)
	r := s.hold(newProgram(inside(adapter.Serve), time.Minute), nil)
	if !r.good() || len(r.Skips) > 0 {
		var text bytes.Buffer
		r.print(&text)
		t.Error(text.String())
	}
	want := r.Counts
	want.Vectors, want.Lines = tally{Passed: len(s.vectors)}, tally{Passed: len(s.lines) + 1}
	if r.Counts != want || len(s.vectors) < 1000 || len(s.lines) < 5 || r.Counts.Invariants.Passed < 500 {
		t.Errorf("%+v", r.Counts)
	}
}

// always answers every request alike.
func always(member string) func(io.Reader, io.Writer) error {
	return behave(func(n int, out io.Writer) error {
		return say(fmt.Sprintf(`{"seq":%d,%s}`+"\n", n+1, member))(n, out)
	})
}

// TestWhoeverAlwaysRefusesPassesNothing tests that a refusal counts only where
// the sound twin was answered.
func TestWhoeverAlwaysRefusesPassesNothing(t *testing.T) {
	s, _ := ours(t)
	r := s.hold(newProgram(inside(always(`"error":{"code":"missing","path":"/feet"}`)), time.Minute), nil)
	if r.Counts.Vectors.Passed > 0 || r.Counts.Vectors.Skipped > 0 {
		t.Errorf("%+v", r.Counts.Vectors)
	}
}

// TestSkipsAreListed tests that each skip stands in the report with its reason,
// and that nothing counts as passed.
func TestSkipsAreListed(t *testing.T) {
	s, _ := ours(t)
	r := s.hold(newProgram(inside(always(`"skipped":"on leave"`)), time.Minute), nil)
	c := r.Counts
	if c.Vectors != (tally{Skipped: len(s.vectors)}) || c.Invariants != (tally{Skipped: c.Invariants.Skipped}) ||
		c.Invariants.Skipped < 500 || len(r.Skips) != c.Vectors.Skipped+c.Invariants.Skipped {
		t.Errorf("%+v", c)
	}
	for _, o := range r.Skips {
		if o.Reason != "on leave" {
			t.Errorf("%s: %q", o.ID, o.Reason)
		}
	}
}
