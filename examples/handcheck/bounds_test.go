package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
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

// A file of 100 MB, here one full of zeros that take no room, is refused with one
// line, and for no more room than a sheet that is just too long.
func TestLargeFile(t *testing.T) {
	name := filepath.Join(t.TempDir(), "large.json")
	if err := os.WriteFile(name, []byte("{"), 0o600); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(name, 100<<20); err != nil {
		t.Skip("no such files here: ", err)
	}
	for _, flag := range []string{"-check", "-job"} {
		var got ran
		room := allocated(func() { got = play("", flag, name) })
		if got.code != refused || got.stdout != "" || got.stderr != name+": want a sheet of at most 1048576 bytes (out_of_range)\n" {
			t.Errorf("%s: code %d, %.200q, %.200q", flag, got.code, got.stdout, got.stderr)
		}
		if room > 20<<20 {
			t.Errorf("%s: %d bytes were asked for", flag, room)
		}
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
		for _, flag := range []string{"-check", "-job"} {
			got := play("", flag, row.name)
			if got.code != refused || got.stdout != "" || !strings.HasPrefix(got.stderr, row.name+": ") || !strings.Contains(got.stderr, row.says) || strings.Count(got.stderr, "\n") != 1 {
				t.Errorf("%s %s: code %d, %q, %q", flag, row.name, got.code, got.stdout, got.stderr)
			}
		}
	}
}

// A line is found by its name, however many there are, and the names of a working are
// never the same.
func TestLinesAreFoundByName(t *testing.T) {
	d := mustRead(t, builtIn)
	if len(d.numbers) != len(d.steps) || len(d.steps) == 0 {
		t.Fatalf("%d names of %d lines", len(d.numbers), len(d.steps))
	}
	for i, s := range d.steps {
		if d.numbers[s.ID] != i+1 {
			t.Errorf("%s is line %d, want %d", s.ID, d.numbers[s.ID], i+1)
		}
	}
}
