//go:build !js

package main

import (
	"bufio"
	"bytes"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

func TestListensToThisMachineAlone(t *testing.T) {
	l, err := listen(0)
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if address := l.Addr().(*net.TCPAddr); !address.IP.IsLoopback() || address.Port == 0 {
		t.Errorf("listens on %v", address)
	}
}

func TestPortThatIsTaken(t *testing.T) {
	l, err := listen(0)
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if second, err := listen(uint(l.Addr().(*net.TCPAddr).Port)); err == nil {
		second.Close()
		t.Error("two listen on one port")
	}
}

func TestServesProgramGzippedToThoseWhoCanReadIt(t *testing.T) {
	folder := t.TempDir()
	for name, text := range map[string]string{program: "plain", program + ".gz": "packed", "index.html": "<p>page"} {
		if err := os.WriteFile(filepath.Join(folder, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	for _, row := range []struct{ path, accepts, body, kind, encoding string }{
		{"/" + program, "gzip, br", "packed", "application/wasm", "gzip"},
		{"/" + program, "identity", "plain", "application/wasm", ""},
		{"/", "gzip", "<p>page", "text/html; charset=utf-8", ""},
	} {
		r := httptest.NewRequest(http.MethodGet, row.path, nil)
		r.Header.Set("Accept-Encoding", row.accepts)
		w := httptest.NewRecorder()
		handler(folder).ServeHTTP(w, r)
		got := w.Result()
		body, err := io.ReadAll(got.Body)
		if err != nil {
			t.Fatal(err)
		}
		if string(body) != row.body || got.Header.Get("Content-Type") != row.kind || got.Header.Get("Content-Encoding") != row.encoding {
			t.Errorf("%+v: got %q, %v", row, body, got.Header)
		}
	}
}

// It says where it serves, and ends in order when it is told to.
func TestServesUntilItIsInterrupted(t *testing.T) {
	folder := t.TempDir()
	if err := os.WriteFile(filepath.Join(folder, "index.html"), []byte("<p>page"), 0o644); err != nil {
		t.Fatal(err)
	}
	said, stdout := io.Pipe()
	ended := make(chan error)
	go func() { ended <- serve(folder, 0, stdout) }()
	line, err := bufio.NewReader(said).ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	address, _, _ := strings.Cut(line, " ")
	if !strings.HasPrefix(address, "http://127.0.0.1:") {
		t.Errorf("serves at %q", address)
	}
	answer, err := http.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	answer.Body.Close()
	if answer.StatusCode != http.StatusOK {
		t.Errorf("answers %s", answer.Status)
	}
	self, err := os.FindProcess(os.Getpid())
	if err != nil {
		t.Fatal(err)
	}
	if err := self.Signal(os.Interrupt); err != nil {
		t.Skipf("this system knows no such signal: %v", err)
	}
	if err := <-ended; err != nil {
		t.Errorf("ends with %v", err)
	}
}

func TestFlags(t *testing.T) {
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"-h"}, done, "-port"},
		{[]string{"-colour"}, misused, "-colour"},
		{[]string{"-port", "-1"}, misused, "-port"},
		{[]string{"here"}, misused, `want flags only, got "here"`},
		{[]string{"-o", file}, failed, "page: "},
	} {
		var stdout, stderr bytes.Buffer
		if code := run(row.args, &stdout, &stderr); code != row.code || !strings.Contains(stderr.String(), row.says) || stdout.Len() > 0 {
			t.Errorf("%q: ends with %d, says %q, prints %q", row.args, code, stderr.String(), stdout.String())
		}
	}
}
