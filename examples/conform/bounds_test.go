package main

import (
	"bytes"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"testing/fstest"
	"time"
	"unicode"
)

// endless is a file without an end, and counts what was read of it.
type endless struct {
	fs.File
	read int
}

func (e *endless) Read(p []byte) (int, error) {
	e.read += len(p)
	return len(p), nil
}

// withEndless is a folder in which one file has no end.
type withEndless struct {
	fstest.MapFS
	name string
	file endless
}

func (w *withEndless) Open(name string) (fs.File, error) {
	f, err := w.MapFS.Open(name)
	if name != w.name {
		return f, err
	}
	w.file.File = f
	return &w.file, err
}

// Of a suite no more is read than shows that it is too long, in whichever file.
func TestSuiteWithoutAnEnd(t *testing.T) {
	manifest := []byte(`{"version":"1.0.0","files":[{"name":"a.json","sha256":"","count":1}]}`)
	for _, name := range []string{"manifest.json", "a.json"} {
		w := &withEndless{fstest.MapFS{"manifest.json": {Data: manifest}, "a.json": {}}, name, endless{}}
		_, err := loadSuite(w)
		if err == nil || !strings.HasSuffix(err.Error(), name+": a suite has at most 16777216 bytes") {
			t.Errorf("%s: %v", name, err)
		}
		if w.file.read > mostSuite+1 {
			t.Errorf("%s: %d bytes were read", name, w.file.read)
		}
	}
}

// A file that is named again and again counts each time.
func TestSuiteOfOneFileManyTimes(t *testing.T) {
	area := bytes.Repeat([]byte(" "), 5<<20)
	entry := `{"name":"a.txt","sha256":"` + sum(area) + `","count":0}`
	many := `{"files":[` + strings.Repeat(entry+",", 99) + entry + `]}`
	_, err := loadSuite(fstest.MapFS{"a.txt": {Data: area}, "manifest.json": {Data: []byte(many)}})
	if err == nil || !strings.Contains(err.Error(), "a.txt: a suite has at most") {
		t.Error(err)
	}
}

// A list of vectors is counted before they are taken apart: each is a hundred times
// as large then.
func TestVectorsOfNothing(t *testing.T) {
	text := []byte(`{"vectors":[{}` + strings.Repeat(",{}", 300_000) + `]}`)
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	err := new(suite).take("a.json", text, 1)
	runtime.ReadMemStats(&after)
	if room := after.TotalAlloc - before.TotalAlloc; err == nil || room > 64<<20 {
		t.Errorf("%d bytes were asked for, %v", room, err)
	}
}

// What is no file is refused before anything is asked, with a line that says so.
func TestNoSuite(t *testing.T) {
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, "manifest.json"), 0o700); err != nil {
		t.Fatal(err)
	}
	long := filepath.Join(dir, "long")
	if err := os.WriteFile(long, bytes.Repeat([]byte("#"), mostKnown+1), 0o600); err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		name, says string
		args       []string
	}{
		{"a folder for the manifest", "a folder, where a file is wanted", []string{"-suite", dir}},
		{"a folder without a manifest", "no suite here: ", []string{"-suite", t.TempDir()}},
		{"a folder for the known failures", "a folder, where a file is wanted", []string{"-suite", folder, "-known", dir}},
		{"too many known failures", "is longer than 1048576 bytes", []string{"-suite", folder, "-known", long}},
	} {
		var out, notes bytes.Buffer
		status := run(row.args, nil, &out, &notes)
		if status != broken || out.Len() > 0 || !strings.Contains(notes.String(), row.says) || strings.Count(notes.String(), "\n") != 1 {
			t.Errorf("%s: status %d, %q, %q", row.name, status, out.String(), notes.String())
		}
	}
}

// A suite that cannot be asked is refused as it is read, not when an answer is held
// against it.
func TestVectorsThatCannotBeAsked(t *testing.T) {
	plan, feet := string(stopped().Input), string(fourFeet().Input)
	for _, row := range []struct{ name, vector, says string }{
		{"sound", `"op":"fit","tolerance":{"/a":{"within":"1 mm"},"/b":{"within":"1 degF"}}`, ""},
		{"a tolerance of no known unit", `"op":"fit","tolerance":{"/a":{"within":"1 parsec"}}`, "the tolerance at /a"},
		{"a tolerance with nothing in it", `"op":"fit","tolerance":{"/a":{}}`, "the tolerance at /a"},
		{"a tolerance that is a number", `"op":"fit","tolerance":{"/a":{"within":1}}`, "within"},
		{"a plan", `"op":"plan","verify":{},"input":` + plan, ""},
		{"a plan without a joint", `"op":"plan","verify":{},"input":` + strings.Replace(plan, `"joints"`, `"j"`, 1), "a joint between"},
		{"a plan without machines", `"op":"plan","verify":{},"input":{}`, "a joint between"},
		{"a plan that is none", `"op":"plan","verify":{},"input":[]`, "a joint between"},
		{"a plan that is refused", `"op":"plan","error":{"code":"missing","path":"/joints"},"input":{}`, ""},
		{"soft feet", `"op":"soft_foot","verify":{"left":"1 mm"},"input":` + feet, ""},
		{"three soft feet", `"op":"soft_foot","verify":{"left":"1 mm"},"input":{"feet":[{},{},{}]}`, "four feet"},
		{"five soft feet", `"op":"soft_foot","verify":{"left":"1 mm"},"input":{"feet":[{},{},{},{},{}]}`, "four feet"},
		{"six soft feet, of which no twist is asked", `"op":"soft_foot","verify":{"kinds":["springing"]},"input":{"feet":[{},{},{},{},{},{}]}`, ""},
	} {
		err := new(suite).take("a.json", []byte(`{"vectors":[{"id":"a-1",`+row.vector+`}]}`), 1)
		if row.says == "" && err != nil || row.says != "" && (err == nil || !strings.Contains(err.Error(), row.says) || !strings.Contains(err.Error(), "vector 0")) {
			t.Errorf("%s: %v", row.name, err)
		}
	}
}

// A fit of nothing has no weights to be split.
func TestSplitWeightsOfNothing(t *testing.T) {
	for name, in := range map[string]fitInput{"no sets": {}, "no readings": {Sets: []fitSet{{}}}} {
		if splitWeights(&in) {
			t.Errorf("%s: something was split", name)
		}
	}
}

// What a program says of itself, and anything else that it says, does not steer the
// terminal that the report is read on, and makes no lines of its own.
func TestReportDoesNotSteerTheTerminal(t *testing.T) {
	const evil = `\u001b[2J\u0007\r\n\u009b1m\u202e` + "\x7f\u0085\u2028"
	for name, member := range map[string]string{
		"name":   `"result":{"name":"%s","version":"%[1]s"}`,
		"code":   `"error":{"code":"%s","path":"%[1]s"}`,
		"reason": `"skipped":"%s"`,
		"value":  `"result":{"offset":"%s"}`,
		"list":   `"result":{"offset":["%s"]}`,
		"foot":   `"result":{"stacks":[{"foot":"%s"}],"kinds":["%[1]s"],"advice":[{"shims":[{"foot":"%[1]s"}]}]}`,
		"word":   `"result":{"reach":"%s","ratio":4,"moves":[{"machine":"%[1]s"}]}`,
		"other":  `"%s":1`,
	} {
		said := func(what string) string {
			order, feet := smallOrder(), fourFeet()
			order.ID, feet.ID = "order", "feet"
			plain := vector{ID: "plain", Result: []byte(`{"offset":"1 mm"}`)}
			refusal := vector{ID: "refusal", Error: &fault{"missing", "/feet"}}
			s := &suite{vectors: []vector{order, feet, stopped(), plain, refusal}}
			p := newProgram(inside(always(fmt.Sprintf(member, what))), time.Minute)
			defer p.stop()
			r := s.hold(p, nil)
			var out bytes.Buffer
			r.print(&out)
			return out.String()
		}
		tame, wild := said("x"), said(evil)
		if strings.Count(wild, "\n") != strings.Count(tame, "\n") {
			t.Errorf("%s: makes lines of its own:\n%q", name, wild)
		}
		if i := strings.IndexFunc(wild, func(r rune) bool { return r != '\n' && !unicode.IsGraphic(r) }); i >= 0 {
			t.Errorf("%s: prints %q", name, wild[max(0, i-40):min(len(wild), i+40)])
		}
	}
}

// Of notes without an end the end is kept, however they come.
func TestNotesWithoutAnEnd(t *testing.T) {
	var notes tail
	n, err := io.Copy(&notes, io.MultiReader(io.LimitReader(new(endless), 10<<20), strings.NewReader("last words")))
	if err != nil || n != 10<<20+10 || len(notes.end) != mostNotes || cap(notes.end) > 1<<20 || !strings.HasSuffix(string(notes.end), "last words") {
		t.Errorf("%d of %d bytes are kept, %v", cap(notes.end), n, err)
	}
	for _, text := range []string{"", "a", strings.Repeat("b", mostNotes-1), "c", "d"} {
		notes.Write([]byte(text))
	}
	if want := strings.Repeat("b", mostNotes-2) + "bcd"; string(notes.end) != want[len(want)-mostNotes:] {
		t.Errorf("got %q", notes.end)
	}
}

// Of a member that comes twice the last counts, as with many decoders; it is no
// second answer.
func TestMemberThatComesTwice(t *testing.T) {
	for line, want := range map[string]string{
		`{"seq":2,"seq":1,"result":{}}`:                                           "",
		`{"seq":1,"seq":2,"result":{}}`:                                           wrongSeq,
		`{"seq":1,"result":[],"result":{}}`:                                       "",
		`{"seq":1,"result":{},"result":[]}`:                                       badAnswer,
		`{"seq":1,"result":{},"result":{},"skipped":"no gauges"}`:                 badAnswer,
		`{"seq":1,"result":{` + strings.Repeat(`"a":1,`, 10_000) + `"a":1}}`:      "",
		`{` + strings.Repeat(`"a":1,`, 10_000) + `"seq":1,"result":{}}`:           "",
		`{` + strings.Repeat(`"seq":1,`, 8000) + `"seq":1` + `,"result":{}}`:      "",
		`{` + strings.Repeat(`"result":[],`, 5000) + `"seq":1,"result":"x"` + `}`: badAnswer,
	} {
		kind := ""
		if _, bad := read([]byte(line), "1"); bad != nil {
			kind = bad.Kind
		}
		if kind != want {
			t.Errorf("%.80s: %q, want %q", line, kind, want)
		}
	}
}
