package strict_test

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/collinear/examples/internal/strict"
)

// endless goes on, and counts what was read of it.
type endless struct{ read int }

func (e *endless) Read(p []byte) (int, error) {
	e.read += len(p)
	return len(p), nil
}

// Of what has no end one byte more than wanted is read, and of what is just long
// enough all.
func TestLimitedReadsOneByteMore(t *testing.T) {
	const most = 10_000
	in := new(endless)
	if data, err := strict.Limited(in, most); err != nil || len(data) != most+1 || in.read != most+1 {
		t.Errorf("%d bytes, %d of them read, %v", len(data), in.read, err)
	}
	if data, err := strict.Limited(strings.NewReader(strings.Repeat("x", most)), most); err != nil || len(data) != most {
		t.Errorf("%d bytes, %v", len(data), err)
	}
}

// What is no file is called what it is, in the same words on every system.
func TestNoFile(t *testing.T) {
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "file"), []byte("text"), 0o600); err != nil {
		t.Fatal(err)
	}
	read := func(name string) ([]byte, error) { return strict.File(filepath.Join(dir, name), 100) }
	if data, err := read("file"); err != nil || string(data) != "text" {
		t.Errorf("%q, %v", data, err)
	}
	if _, err := read("."); err == nil || !strings.HasSuffix(err.Error(), ": a folder, where a file is wanted") {
		t.Errorf("a folder: %v", err)
	}
	if _, err := read("none"); !errors.Is(err, fs.ErrNotExist) {
		t.Errorf("nothing: %v", err)
	}
}
