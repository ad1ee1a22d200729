//go:build !js

package main

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
)

var scratch string

func TestMain(m *testing.M) {
	code := m.Run()
	closeBrowser()
	if scratch != "" {
		os.RemoveAll(scratch)
	}
	os.Exit(code)
}

// page is the page, built once for all tests that need it, and what was said of it.
var page = sync.OnceValues(func() (said string, err error) {
	if scratch, err = os.MkdirTemp("", "page-test"); err != nil {
		return "", err
	}
	var out, errs bytes.Buffer
	if code := run([]string{"-o", scratch}, &out, &errs); code != done {
		return "", errors.New(errs.String())
	}
	return out.String() + errs.String(), nil
})

// built returns the folder with the page, which takes tens of seconds to compile.
func built(t *testing.T) (folder, said string) {
	t.Helper()
	if testing.Short() {
		t.Skip("compiles the library for the browser")
	}
	said, err := page()
	if err != nil {
		t.Fatal(err)
	}
	return scratch, said
}

var sizes = regexp.MustCompile(`^collinear\.wasm: \d+\.\d\d MB, gzipped \d+\.\d\d MB\nAny web server .*\n$`)

func TestFolderHoldsAllOfThePage(t *testing.T) {
	folder, said := built(t)
	if !sizes.MatchString(said) {
		t.Errorf("says %q of its size", said)
	}
	want := strings.Fields("collinear.wasm collinear.wasm.gz wasm_exec.js sheet.css sample.json")
	own, err := fs.Glob(files, "*")
	if err != nil {
		t.Fatal(err)
	}
	want = append(want, own...)
	entries, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		at := slices.Index(want, e.Name())
		if at < 0 {
			t.Errorf("%s was not expected", e.Name())
			continue
		}
		want = slices.Delete(want, at, at+1)
		if about, err := os.Stat(filepath.Join(folder, e.Name())); err != nil || about.Size() == 0 {
			t.Errorf("%s is empty: %v", e.Name(), err)
		}
	}
	if len(want) > 0 {
		t.Errorf("missing: %q", want)
	}
}
