package main

import (
	"bytes"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"example.org/collinear/examples/internal/pumpset"
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
	var code int
	room := allocated(func() { code = run([]string{"-job", name}, &stdout, &stderr) })
	if code != refused || stdout.Len() > 0 || stderr.String() != name+": want a job of at most 1048576 bytes (out_of_range)\n" {
		t.Errorf("code %d, %.200q, %.200q", code, stdout.String(), stderr.String())
	}
	if room > 20<<20 {
		t.Errorf("%d bytes were asked for", room)
	}
}

// allocated returns for how many bytes f asks, freed or not.
func allocated(f func()) uint64 {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	f()
	runtime.ReadMemStats(&after)
	return after.TotalAlloc - before.TotalAlloc
}

// What is no file is refused with one line that says so.
func TestNoFile(t *testing.T) {
	folder := t.TempDir()
	for _, row := range []struct{ name, says string }{
		{folder, ": a folder, where a file is wanted\n"},
		{filepath.Join(folder, "none.json"), "none.json: "},
	} {
		var stdout, stderr bytes.Buffer
		code := run([]string{"-job", row.name}, &stdout, &stderr)
		if said := stderr.String(); code != refused || stdout.Len() > 0 || !strings.HasPrefix(said, row.name+": ") || !strings.Contains(said, row.says) || strings.Count(said, "\n") != 1 {
			t.Errorf("%s: code %d, %q, %q", row.name, code, stdout.String(), said)
		}
	}
}

// A job of nothing but faults is told with a few hundred lines.
func TestManyFaults(t *testing.T) {
	name := filepath.Join(t.TempDir(), "faults.json")
	doc := strings.Replace(string(pumpset.Sample()), `"notes": [`, `"notes": [`+strings.Repeat("1,", 400_000), 1)
	if err := os.WriteFile(name, []byte(doc), 0o600); err != nil {
		t.Fatal(err)
	}
	var stdout, stderr bytes.Buffer
	code := run([]string{"-job", name}, &stdout, &stderr)
	if n := strings.Count(stderr.String(), "\n"); code != refused || stdout.Len() > 0 || n < 100 || n > 300 || !strings.Contains(stderr.String(), "/notes/0: ") {
		t.Errorf("code %d, %d lines: %.300q", code, n, stderr.String())
	}
}
