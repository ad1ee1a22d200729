package main

import (
	"bytes"
	"compress/gzip"
	"embed"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"example.org/collinear/examples/internal/pumpset"
)

//go:embed index.html *.css *.js format.json
var files embed.FS

const (
	command = "example.org/collinear/examples/page/wasm"
	program = "collinear.wasm"
	support = "wasm_exec.js" // comes with the go command, and has to be of its version
)

// build puts all of the page into a folder, and prints how large its program is.
func build(folder string, stdout io.Writer) error {
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return err
	}
	if err := compile(filepath.Join(folder, program)); err != nil {
		return err
	}
	if err := copySupport(filepath.Join(folder, support)); err != nil {
		return err
	}
	if err := writeFiles(folder); err != nil {
		return err
	}
	plain, packed, err := pack(filepath.Join(folder, program))
	if err != nil {
		return err
	}
	fmt.Fprintf(stdout, "%s: %.2f MB, gzipped %.2f MB\n", program, megabytes(plain), megabytes(packed))
	return nil
}

func megabytes(n int) float64 { return float64(n) / 1e6 }

// compile lets the go command build the program for the browser.
func compile(name string) error {
	name, err := filepath.Abs(name)
	if err != nil {
		return err
	}
	child := exec.Command("go", "build", "-trimpath", "-ldflags=-s -w", "-o", name, command)
	child.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm")
	if said, err := child.CombinedOutput(); err != nil {
		return fmt.Errorf("the program cannot be built: %w\n%s", err, said)
	}
	return nil
}

// copySupport copies what loads a Go program in a browser.
func copySupport(name string) error {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	if err != nil {
		return fmt.Errorf("go env GOROOT: %w", err)
	}
	data, err := os.ReadFile(filepath.Join(strings.TrimSpace(string(root)), "lib", "wasm", support))
	if err != nil {
		return err
	}
	return os.WriteFile(name, data, 0o644)
}

// writeFiles writes the page itself, the style of the sheet, and the sample.
func writeFiles(folder string) error {
	content := map[string][]byte{
		"sheet.css":   []byte(pumpset.SheetStyle()),
		"sample.json": pumpset.Sample(),
	}
	names, err := fs.Glob(files, "*")
	if err != nil {
		return err
	}
	for _, name := range names {
		if content[name], err = files.ReadFile(name); err != nil {
			return err
		}
	}
	for name, data := range content {
		if err := os.WriteFile(filepath.Join(folder, name), data, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// pack puts a gzipped copy beside a file, and returns the lengths of both.
func pack(name string) (plain, packed int, err error) {
	data, err := os.ReadFile(name)
	if err != nil {
		return 0, 0, err
	}
	var out bytes.Buffer
	w, err := gzip.NewWriterLevel(&out, gzip.BestCompression)
	if err != nil {
		return 0, 0, err
	}
	if _, err := w.Write(data); err != nil {
		return 0, 0, err
	}
	if err := w.Close(); err != nil {
		return 0, 0, err
	}
	return len(data), out.Len(), os.WriteFile(name+".gz", out.Bytes(), 0o644)
}
