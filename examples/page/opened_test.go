//go:build !js

package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/collinear/examples/internal/pumpset"
	"github.com/chromedp/chromedp"
)

// A file that is opened is kept as it is, or left alone.
func TestFilesThatAreOpened(t *testing.T) {
	b := load(t, 1366, 768)
	sample := string(pumpset.Sample())
	rows := []struct{ name, text, notice, marked string }{
		{"sound", strings.Replace(sample, "+0.55 mm", "+0.60 mm", 1), "", ""},
		{"with a field that nobody knows", strings.Replace(sample, `"title"`, `"a b~/c": {"x": 1}, "title"`, 1), "", "/a%20b~0~1c"},
		{"with a number", strings.Replace(sample, `"1480 rpm"`, `1480`, 1), "", "/speed"},
		{"with null for a part", strings.Replace(sample, `{"miss": "0.02 mm", "return": "0.02 mm"}`, `null`, 1), "", "/limits"},
		{"with a list of nothing", strings.Replace(sample, `{"at": "12:00", "value": "0 mm"}`, `7`, 1), "", "/found/reverse/carried_by_stationary/readings/0"},
		{"with empty text", strings.Replace(sample, `"the wall"`, `""`, 1), "", "/three"},
		{"with spaces", strings.Replace(sample, `"3 5/16 in"`, `" 3 5/16 in"`, 1), "", "/tape/stationary_rim"},
		{"with another word", strings.Replace(sample, `"from_movable"`, `"from_above"`, 1), "", "/view"},
		{"a name twice", strings.Replace(sample, `"title"`, `"title": "x", "title"`, 1), "/title", ""},
		{"cut off", sample[:len(sample)/2], "breaks off", ""},
		{"no object", `[1]`, "the file", ""},
		{"not UTF-8", "\xff\xfe" + sample, "UTF-8", ""},
		{"marked as UTF-8", "\xef\xbb\xbf" + sample, "the file", ""},
		{"too long", strings.Repeat(" ", pumpset.MaxSize) + sample, "1 MiB", ""},
		{"more faults than are told", strings.Replace(sample, `"notes": [`, `"notes": [`+strings.Repeat("1,", 300), 1), "more", ""},
	}
	for _, row := range rows {
		b.press("sample")
		name := filepath.Join(t.TempDir(), "job.json")
		if err := os.WriteFile(name, []byte(row.text), 0o644); err != nil {
			t.Fatal(err)
		}
		before := b.text("verdict") + b.record()
		b.do(chromedp.SetUploadFiles("#open", []string{name}))
		b.until(element("open") + `.files.length === 0`)
		notice := b.text("notice")
		switch {
		case row.notice != "":
			if !strings.Contains(notice, "was not opened") || !strings.Contains(notice, row.notice) {
				t.Errorf("%s: says %q", row.name, notice)
			}
			if after := b.text("verdict") + b.record(); after != before {
				t.Errorf("%s: was taken all the same", row.name)
			}
			continue
		case notice != "":
			t.Errorf("%s: says %q", row.name, notice)
		case row.marked == "":
			sameRecord(t, b.record(), natively(t, []string{row.text, ""}).Record)
		case !eval[bool](b, "!"+element(row.marked+"!fault")+".hidden"):
			t.Errorf("%s: no fault at %s", row.name, row.marked)
		}
		if !b.holds(row.text) {
			t.Errorf("%s: something was lost", row.name)
		}
	}
	b.quiet()
}

// What belongs to no job can be taken out, wherever it stands.
func TestStrangersAreTakenOut(t *testing.T) {
	b := load(t, 1366, 768)
	sample := string(pumpset.Sample())
	for _, row := range []struct{ name, old, by string }{
		{"of the job", `"title"`, `"odd": 1, "title"`},
		{"of a part", `"span"`, `"odd": {"x": []}, "span"`},
		{"of a reading", `{"at": "3:00", "value": "+0.55 mm"`, `{"at": "3:00", "value": "+0.55 mm", "odd": null`},
		{"a reading that is none", `{"at": "3:00", "value": "+0.55 mm"}`, `{"at": "3:00", "value": "+0.55 mm"}, 5`},
		{"a note that is none", `"notes": [`, `"notes": [true,`},
	} {
		name := filepath.Join(t.TempDir(), "job.json")
		if err := os.WriteFile(name, []byte(strings.Replace(sample, row.old, row.by, 1)), 0o644); err != nil {
			t.Fatal(err)
		}
		b.do(chromedp.SetUploadFiles("#open", []string{name}))
		b.until(element("open") + `.files.length === 0`)
		if !strings.Contains(b.text("verdict"), "refused: 1 fault,") {
			t.Errorf("%s: %s", row.name, b.text("verdict"))
		}
		eval[bool](b, `[...document.querySelectorAll("code")].at(0).parentElement.querySelector("button").click() ?? true`)
		if !b.holds(sample) || !strings.HasPrefix(b.text("verdict"), "No fault.") {
			t.Errorf("%s: not as it was", row.name)
		}
	}
	b.quiet()
}
