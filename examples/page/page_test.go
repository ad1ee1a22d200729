//go:build !js

package main

import (
	"strings"
	"testing"

	"example.org/collinear/examples/internal/pumpset"
)

// A reading of the sample, and what else is looked at.
const (
	reading = "/found/reverse/carried_by_stationary/readings/1/value"
	centre  = "/tape/centre"
	invalid = `?.getAttribute("aria-invalid") === "true"`
)

func sampleAnswer(t *testing.T, edits ...string) given {
	t.Helper()
	return natively(t, []string{strings.NewReplacer(edits...).Replace(string(pumpset.Sample())), ""})
}

func TestSampleInTheBrowser(t *testing.T) {
	b := load(t, 1366, 768)
	b.shows(sampleAnswer(t))
	title := element("sheet") + `.querySelector("article.sheet h1").textContent`
	if got := eval[string](b, title); !strings.Contains(got, "K-12") {
		t.Errorf("the sheet is called %q", got)
	}
	b.quiet()
	for _, url := range b.requests() {
		if !strings.HasPrefix(url, b.base+"/") && url != "data:," {
			t.Errorf("asks for %s", url)
		}
	}
}

// Once it is there the page asks for nothing, so it works where there is no network.
func TestOffline(t *testing.T) {
	b := load(t, 1366, 768)
	b.offline()
	b.write(reading, "+0.60 mm")
	b.shows(sampleAnswer(t, `"+0.55 mm"`, `"+0.60 mm"`))
	b.press("new")
	b.press("sample")
	b.press("back")
	b.press("save")
	b.press("save-record")
	b.quiet()
	for _, url := range b.requests() {
		if !strings.HasPrefix(url, "blob:") {
			t.Errorf("asks for %s", url)
		}
	}
}

// Should the program ever stop, its last sheet is not taken for an answer.
func TestProgramThatStopped(t *testing.T) {
	b := load(t, 1366, 768)
	for _, stop := range []string{"() => { throw new Error() }", "() => undefined"} {
		eval[int](b, "globalThis.collinear = "+stop+", 1")
		b.write(reading, "+0.60 mm")
		if got := b.text("fault-list"); !strings.Contains(got, "has stopped") || b.record() != "" || b.text("stale") == "" {
			t.Errorf("it says %q", got)
		}
	}
}

// The sheet is shown in the units that are asked for; the job keeps its own.
func TestUnitsOfTheSheet(t *testing.T) {
	b := load(t, 1366, 768)
	eval[bool](b, element("units")+`.value = "inch"; `+element("units")+`.dispatchEvent(new Event("change"))`)
	b.shows(natively(t, []string{string(pumpset.Sample()), "inch"}))
	if !b.holds(string(pumpset.Sample())) {
		t.Error("the job is another one")
	}
}
