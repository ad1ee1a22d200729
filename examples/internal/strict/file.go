package strict

import (
	"errors"
	"io"
	"io/fs"
	"os"
)

// Limited reads all of r, but of more than most bytes no more than most and one,
// which shows that there are too many.
func Limited(r io.Reader, most int) ([]byte, error) {
	return io.ReadAll(io.LimitReader(r, int64(most)+1))
}

// File is Limited for a file, or for what the system shows as one, which may have
// no end.
func File(name string, most int) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	switch about, err := f.Stat(); {
	case err != nil:
		return nil, err
	case about.IsDir():
		return nil, &fs.PathError{Op: "read", Path: name, Err: errFolder}
	}
	return Limited(f, most)
}

// errFolder is said in words: what a system says to one who reads a folder is not
// the same everywhere, and not clear everywhere.
var errFolder = errors.New("a folder, where a file is wanted")
