package main

import (
	"bufio"
	"bytes"
	"errors"
	"io"
	"os"
	"os/exec"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"testing"
	"testing/iotest"
	"time"

	"github.com/google/go-cmp/cmp"
)

// TestMain lets this test be the program that is tested: see TestProcess.
func TestMain(m *testing.M) {
	if _, there := os.LookupEnv("STREAM_ITSELF"); there {
		os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr))
	}
	os.Exit(m.Run())
}

// itself is the file of this test, for tests that start it again. They are skipped
// where no process can be started, and where the system does not know how to start
// this one, because an emulator did.
func itself(t *testing.T) string {
	t.Helper()
	if runtime.GOOS == "js" {
		t.Skip("no processes here")
	}
	self, err := os.Executable()
	if err != nil {
		t.Fatal(err)
	}
	if err := exec.Command(self, "-test.run=^$").Run(); errors.Is(err, syscall.ENOEXEC) {
		t.Skip("what an emulator runs cannot start itself here")
	}
	t.Setenv("STREAM_ITSELF", "")
	return self
}

// As a process the program answers each line before the next one is written, with the
// bytes that it gives for all at once, and ends with 0 when its input does.
func TestProcess(t *testing.T) {
	program := exec.Command(itself(t))
	to, err := program.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	from, err := program.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := program.Start(); err != nil {
		t.Fatal(err)
	}
	hung := time.AfterFunc(time.Minute, func() { _ = program.Process.Kill() }) // which ends the waiting below
	defer hung.Stop()
	lines := sampleLines(t)
	want, _ := sent(t, lines...)
	answers := bufio.NewReader(from)
	for i, line := range lines {
		if _, err := io.WriteString(to, line+"\n"); err != nil {
			t.Fatal(err)
		}
		got, err := answers.ReadString('\n')
		if err != nil {
			t.Fatalf("line %d is not answered: %v", i+1, err)
		}
		if diff := cmp.Diff(want[i]+"\n", got); diff != "" {
			t.Errorf("line %d (-want +got):\n%s", i+1, diff)
		}
	}
	if err := to.Close(); err != nil {
		t.Fatal(err)
	}
	if rest, err := io.ReadAll(answers); len(rest) > 0 || err != nil {
		t.Errorf("goes on with %q, %v", rest, err)
	}
	if err := program.Wait(); err != nil {
		t.Error(err)
	}
}

// The system sees how the program ended.
func TestProcessEnds(t *testing.T) {
	self := itself(t)
	for _, row := range []struct {
		input string
		args  []string
		code  int
	}{
		{"", nil, ended},
		{sampleSetUp + "\nhello\n", nil, ended},
		{"hello\n", nil, failed},
		{"", []string{"-colour"}, misused},
	} {
		program := exec.Command(self, row.args...)
		program.Stdin = strings.NewReader(row.input)
		err := program.Run()
		if code := program.ProcessState.ExitCode(); code != row.code {
			t.Errorf("%q %q: ends with %d, %v", row.args, row.input, code, err)
		}
	}
}

// How the program ends, and what it says beside its answers.
func TestEnds(t *testing.T) {
	broken := errors.New("the cable is out")
	for _, row := range []struct {
		name    string
		args    []string
		stdin   io.Reader
		code    int
		answers int
		stderr  string
	}{
		{"no input", nil, strings.NewReader(""), ended, 0, ""},
		{"the last line without its end", nil, strings.NewReader(sampleSetUp), ended, 1, ""},
		{"ends of lines as elsewhere", nil, strings.NewReader(sampleSetUp + "\r\n"), ended, 1, ""},
		{"an empty line is a line", nil, strings.NewReader(sampleSetUp + "\n\n\n"), ended, 3, ""},
		{"byte by byte", nil, iotest.OneByteReader(strings.NewReader(sampleSetUp + "\n{}\n")), ended, 2, ""},
		{"set-up refused", nil, strings.NewReader("{}\n{}\n"), failed, 1, "set-up was refused"},
		{"input broken", nil, io.MultiReader(strings.NewReader(sampleSetUp+"\n{"), iotest.ErrReader(broken)), failed, 1, broken.Error()},
		{"a flag", []string{"-v"}, strings.NewReader(sampleSetUp), misused, 0, `["-v"]`},
		{"an argument", []string{"job.jsonl"}, strings.NewReader(sampleSetUp), misused, 0, "usage"},
	} {
		var stdout, stderr bytes.Buffer
		code := run(row.args, row.stdin, &stdout, &stderr)
		if n := strings.Count(stdout.String(), "\n"); code != row.code || n != row.answers {
			t.Errorf("%s: ends with %d after %d answers, want %d after %d", row.name, code, n, row.code, row.answers)
		}
		if said := stderr.String(); !strings.Contains(said, row.stderr) || row.stderr == "" && said != "" {
			t.Errorf("%s: says %q", row.name, said)
		}
	}
}

// counting counts what is written at a time, and breaks after some of it.
type counting struct {
	writes []string
	most   int
}

func (c *counting) Write(p []byte) (int, error) {
	if len(c.writes) == c.most {
		return 0, io.ErrShortWrite
	}
	c.writes = append(c.writes, string(p))
	return len(p), nil
}

// Every answer is handed over whole and at once, and what cannot be written ends the
// program.
func TestWrites(t *testing.T) {
	out := &counting{most: 3}
	var stderr bytes.Buffer
	code := run(nil, strings.NewReader(strings.Join(sampleLines(t), "\n")), out, &stderr)
	if code != failed || !strings.Contains(stderr.String(), io.ErrShortWrite.Error()) {
		t.Errorf("ends with %d and says %q", code, stderr.String())
	}
	whole := func(s string) bool { return strings.HasPrefix(s, "{") && strings.Index(s, "\n") == len(s)-1 }
	if len(out.writes) != 3 || slices.ContainsFunc(out.writes, func(s string) bool { return !whole(s) }) {
		t.Errorf("%d writes, %q", len(out.writes), out.writes)
	}
}
