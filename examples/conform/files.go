package main

import (
	"fmt"
	"io"
	"io/fs"
	"strconv"
	"strings"
	"unicode"
)

// mostSuite is how many bytes all files of a suite have together, at most: several
// times what they have.
const mostSuite = 16 << 20

// files reads the files of a suite.
type files struct {
	fs.FS
	left int // bytes that may still be read
}

func (f *files) read(name string) ([]byte, error) {
	file, err := f.Open(name)
	if err != nil {
		return nil, err
	}
	text, err := readAll(file, name, f.left)
	if err == nil && len(text) > f.left {
		err = fmt.Errorf("%s: a suite has at most %d bytes", name, mostSuite)
	}
	f.left -= len(text)
	return text, err
}

// readAll reads a file and closes it. Of one that has more than most bytes, or no
// end, it reads one byte more, which shows that.
func readAll(f fs.File, name string, most int) ([]byte, error) {
	defer f.Close()
	switch about, err := f.Stat(); {
	case err != nil:
		return nil, err
	case about.IsDir():
		return nil, fmt.Errorf("%s: a folder, where a file is wanted", name)
	}
	return io.ReadAll(io.LimitReader(f, int64(most)+1))
}

// printable spells out what would break a line or steer the terminal.
func printable(text string) string {
	var out strings.Builder
	for _, r := range text {
		if unicode.IsGraphic(r) {
			out.WriteRune(r)
		} else {
			out.WriteString(strings.Trim(strconv.QuoteRune(r), "'"))
		}
	}
	return out.String()
}
