package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A file of 100 MB, here one full of zeros that take no room, is refused with one
// line that says how long it may be.
func TestLargeFile(t *testing.T) {
	name := filepath.Join(t.TempDir(), "large.json")
	if err := os.WriteFile(name, []byte("{"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(name, 100<<20); err != nil {
		t.Skip("no such files here: ", err)
	}
	var stdout, stderr bytes.Buffer
	code := run([]string{"-job", name}, &stdout, &stderr)
	if code != refused || stdout.Len() > 0 || stderr.String() != name+": want a job of at most 1048576 bytes (out_of_range)\n" {
		t.Errorf("code %d, %.200q, %.200q", code, stdout.String(), stderr.String())
	}
}

// A job of nothing but faults is told with a few hundred lines.
func TestManyFaults(t *testing.T) {
	name := filepath.Join(t.TempDir(), "faults.json")
	doc := strings.Replace(string(builtIn), `"notes": [`, `"notes": [`+strings.Repeat("1,", 400_000), 1)
	if err := os.WriteFile(name, []byte(doc), 0o600); err != nil {
		t.Fatal(err)
	}
	var stdout, stderr bytes.Buffer
	code := run([]string{"-job", name}, &stdout, &stderr)
	if n := strings.Count(stderr.String(), "\n"); code != refused || stdout.Len() > 0 || n < 100 || n > 300 || !strings.Contains(stderr.String(), "/notes/0: ") {
		t.Errorf("code %d, %d lines: %.300q", code, n, stderr.String())
	}
}
