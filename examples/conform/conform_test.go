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
	if c := r.Counts.Vectors; len(r.Skips) != len(s.vectors) || c.Skipped != len(s.vectors) || c.Passed+c.Failed > 0 {
		t.Errorf("%+v", r.Counts)
	}
	for _, o := range r.Skips {
		if o.Reason != "on leave" {
			t.Errorf("%s: %q", o.ID, o.Reason)
		}
	}
}
