package main

import (
	"bytes"
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The files beside this program are what it writes; the graphs are the ones that the
// README of the module shows.
func TestFilesThatAreShown(t *testing.T) {
	if runtime.GOARCH != "amd64" {
		t.Skip("the last digit of a coordinate may differ from one processor to another")
	}
	for _, row := range []struct{ flag, kept string }{
		{"-svg", "graphs.svg"},
		{"-html", "testdata/sheet.html"},
	} {
		name := filepath.Join(t.TempDir(), "file")
		var stdout, stderr bytes.Buffer
		if code := run([]string{row.flag, name}, &stdout, &stderr); code != solved || stderr.Len() > 0 || stdout.Len() == 0 {
			t.Fatalf("%s: ends with %d, says %q", row.flag, code, stderr.String())
		}
		got, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if *update {
			if err := os.WriteFile(row.kept, got, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(row.kept)
		if err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(string(want), string(got)); diff != "" {
			t.Errorf("differs from %s (-want +got):\n%.2000s", row.kept, diff)
		}
	}
}

// A refused job leaves no file, and one that cannot be written is told of.
func TestFilesThatAreNotWritten(t *testing.T) {
	folder := t.TempDir()
	name := filepath.Join(folder, "job.svg")
	var stdout, stderr bytes.Buffer
	if code := run([]string{"-job", filepath.Join(folder, "none.json"), "-svg", name}, &stdout, &stderr); code != refused {
		t.Errorf("ends with %d", code)
	}
	if _, err := os.Stat(name); err == nil {
		t.Error("a file was written all the same")
	}
	stderr.Reset()
	if code := run([]string{"-html", filepath.Join(folder, "no", "folder")}, &stdout, &stderr); code != refused || stderr.Len() == 0 {
		t.Errorf("ends with %d and says %q", code, stderr.String())
	}
}
