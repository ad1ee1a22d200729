package adapter

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"strings"
	"testing"
)

// served returns the lines that Serve writes to an input.
func served(t testing.TB, in string) []string {
	t.Helper()
	var out bytes.Buffer
	if err := Serve(strings.NewReader(in), &out); err != nil {
		t.Fatal(err)
	}
	text := out.String()
	if text == "" {
		return nil
	}
	if !strings.HasSuffix(text, "\n") {
		t.Fatalf("the last line has no end: %q", text)
	}
	return strings.Split(strings.TrimSuffix(text, "\n"), "\n")
}

// requestLine returns the line that asks; an input that is broken for the eye is put
// on one line.
func requestLine(op, input string) string {
	return `{"seq":7,"op":"` + op + `","input":` + strings.NewReplacer("\n", "", "\t", "").Replace(input) + "}\n"
}

// asked is an answer as the other side reads it.
type asked struct {
	Seq     json.RawMessage
	Result  json.RawMessage
	Error   *refusal
	Faults  []refusal
	Skipped string
}

// refusal is what a vector says of an error.
type refusal struct{ Code, Path string }

// ask sends one request and returns its answer.
func ask(t testing.TB, op, input string) asked {
	t.Helper()
	lines := served(t, requestLine(op, input))
	if len(lines) != 1 {
		t.Fatalf("%d lines for one", len(lines))
	}
	return readReply(t, lines[0])
}

func readReply(t testing.TB, line string) (a asked) {
	t.Helper()
	if err := json.Unmarshal([]byte(line), &a); err != nil {
		t.Fatalf("%v in %s", err, line)
	}
	return a
}

func TestServeLines(t *testing.T) {
	const sag = `{"seq":1,"op":"mandrel_sag","input":{"at12":"3 mil","at6":"-3 mil"}}`
	const answered = `{"seq":1,"result":{"sag":"0.0762 mm"}}`
	for _, row := range []struct {
		name, in string
		want     []string
	}{
		{"nothing at all", "", nil},
		{"one line", sag + "\n", []string{answered}},
		{"no end to the last line", sag, []string{answered}},
		{"line ends of another system", sag + "\r\n", []string{answered}},
		{"blanks around", " \t" + sag + "  \n", []string{answered}},
		{"members in another order", `{"input":{"at6":"-3 mil","at12":"3 mil"},"op":"mandrel_sag","seq":1}` + "\n", []string{answered}},
		{"a name that is escaped", strings.Replace(sag, `"op"`, `"\u006fp"`, 1) + "\n", []string{answered}},
		{"stop", `{"seq":2,"op":"stop"}` + "\n" + sag + "\n", []string{`{"seq":2,"result":{}}`}},
		{"stop without an end", `{"seq":2,"op":"stop"}`, []string{`{"seq":2,"result":{}}`}},
		{"an operation of another day", `{"seq":3,"op":"teleport","input":{}}` + "\n", []string{`{"seq":3,"skipped":"no such operation here"}`}},
		{"seq of fifteen digits and a sign", `{"seq":-123456789012345,"op":"stop"}`, []string{`{"seq":-123456789012345,"result":{}}`}},
		{"order", sag + "\n" + `{"seq":0,"op":"x"}` + "\n" + sag + "\n", []string{answered, `{"seq":0,"skipped":"no such operation here"}`, answered}},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := served(t, row.in)
			if strings.Join(got, "\n") != strings.Join(row.want, "\n") {
				t.Errorf("got  %q\nwant %q", got, row.want)
			}
		})
	}
}

func TestDescribe(t *testing.T) {
	a := readReply(t, served(t, `{"seq":1,"op":"describe"}`)[0])
	var d struct {
		Name, Version string
		Ops           []string
	}
	if err := json.Unmarshal(a.Result, &d); err != nil {
		t.Fatal(err)
	}
	if d.Name != "collinear" || d.Version != "unreleased" {
		t.Errorf("got %q %q", d.Name, d.Version)
	}
	if len(d.Ops) != len(operations) || d.Ops[0] != "arc" || d.Ops[len(d.Ops)-1] != "without_float" {
		t.Errorf("got %q", d.Ops)
	}
}

// Each answer is there before the next request is read.
func TestEachAnswerIsFlushed(t *testing.T) {
	in, requests := io.Pipe()
	answers, out := io.Pipe()
	done := make(chan error, 1)
	go func() { done <- Serve(in, out) }()
	buffer := make([]byte, 1000)
	for range 3 {
		if _, err := requests.Write([]byte(`{"seq":1,"op":"x"}` + "\n")); err != nil {
			t.Fatal(err)
		}
		n, err := answers.Read(buffer)
		if err != nil || n == 0 || buffer[n-1] != '\n' {
			t.Fatalf("%q, %v", buffer[:n], err)
		}
	}
	requests.Close()
	if err := <-done; err != nil {
		t.Error(err)
	}
}

var errBroken = errors.New("broken")

type brokenPipe struct{}

func (brokenPipe) Read([]byte) (int, error)  { return 0, errBroken }
func (brokenPipe) Write([]byte) (int, error) { return 0, errBroken }

func TestBrokenPipes(t *testing.T) {
	if err := Serve(brokenPipe{}, io.Discard); err != errBroken {
		t.Errorf("reading: got %v", err)
	}
	if err := Serve(strings.NewReader("x\n"), brokenPipe{}); err != errBroken {
		t.Errorf("writing: got %v", err)
	}
}
