//go:build !js

package main

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// What is refused is told at its field and nowhere else, and the sheet is no longer
// that of the job, until the field is mended.
func TestBadReading(t *testing.T) {
	b := load(t, 1366, 768)
	before := b.text("verdict")
	b.write(reading, "abc")
	if !eval[bool](b, element(reading)+invalid) {
		t.Error("the field is not marked")
	}
	note := b.text(reading + "!fault")
	if !strings.Contains(note, `"abc"`) || !strings.Contains(note, "Wanted: ") {
		t.Errorf("beside the field stands %q", note)
	}
	for _, claim := range []string{
		element(reading) + `.getAttribute("aria-describedby").split(" ").includes("` + reading + `!fault")`,
		element(reading) + `.closest("tr").nextElementSibling.contains(` + element(reading+"!fault") + `)`,
		element("sheet") + `.getAttribute("aria-describedby") === "stale"`,
		`document.querySelectorAll("[aria-invalid]").length === 1`,
		`document.querySelectorAll("p.fault:not([hidden])").length === 1`,
		element("print") + ".disabled",
	} {
		if !eval[bool](b, claim) {
			t.Errorf("not so: %s", claim)
		}
	}
	if got := b.text("verdict"); !strings.Contains(got, "refused: 1 fault,") {
		t.Errorf("the live region says %q", got)
	}
	if got := b.text("stale"); !strings.Contains(got, "NOT THE SHEET OF WHAT STANDS IN THE FIELDS") {
		t.Errorf("of the sheet it says %q", got)
	}
	if got := b.record(); got != "" {
		t.Error("there still is a record")
	}
	b.picture("refused")

	b.write(reading, " +0.55 mm") // what is typed is not trimmed
	if note := b.text(reading + "!fault"); !strings.Contains(note, `" +0.55 mm"`) {
		t.Errorf("of a space in front it says %q", note)
	}
	b.write(reading, "+0.55 mm")
	for _, claim := range []string{
		`document.querySelectorAll("[aria-invalid]").length === 0`,
		`document.querySelectorAll("p.fault:not([hidden])").length === 0`,
		element("stale") + ".hidden", element("faults") + ".hidden",
		"!" + element(reading) + `.hasAttribute("aria-describedby")`,
		"!" + element("print") + ".disabled",
	} {
		if !eval[bool](b, claim) {
			t.Errorf("mended, but not so: %s", claim)
		}
	}
	if got := b.text("verdict"); got != before {
		t.Errorf("mended, it says %q and not %q", got, before)
	}
	b.shows(sampleAnswer(t))
	b.quiet()
}

// The list of faults leads to each field, also to one that is folded away.
func TestListOfFaultsLeadsToFields(t *testing.T) {
	b := load(t, 1366, 768)
	eval[bool](b, `document.querySelector('details[data-path="/tape"]').open = true`)
	b.write(centre, "7 1/0 in")
	b.write(reading, "+0,55 mm")
	eval[bool](b, `document.querySelector('details[data-path="/tape"]').open = false ?? true`)
	if got := eval[int](b, element("fault-list")+".children.length"); got != 2 {
		t.Fatalf("%d faults are listed: %s", got, b.text("fault-list"))
	}
	if got := eval[string](b, `document.querySelector('details[data-path="/tape"] summary').innerText`); !strings.Contains(got, "1 refused") {
		t.Errorf("folded away: %q", got)
	}
	for _, id := range []string{centre, reading} {
		b.do(chromedp.Click(`a[href="#` + id + `"]`))
		if got := eval[string](b, "document.activeElement.id"); got != id {
			t.Errorf("the link to %s leads to %q", id, got)
		}
	}
	if got := b.text(centre + "!fault"); !strings.Contains(got, "7 1/0 in") {
		t.Errorf("a fraction over nothing is refused with %q", got)
	}
	link := eval[string](b, `document.querySelector('a[href="#`+reading+`"]').innerText`)
	if want := "As found, Reverse dial, Rim dial carried by the stationary shaft, Readings, Reading 2, reading"; link != want {
		t.Errorf("the link says %q, want %q", link, want)
	}
}

// A fault of something that is not there is told where it can be added.
func TestFaultOfAPartThatIsMissing(t *testing.T) {
	b := load(t, 1366, 768)
	eval[bool](b, `[...document.querySelectorAll("button")].find((e) => e.textContent === "Take out: Single feet").click() ?? true`)
	if got := eval[string](b, element("/single_feet")+".tagName"); got != "BUTTON" {
		t.Fatalf("there is a %s", got)
	}
	if got := eval[string](b, "document.activeElement.id"); got != "/single_feet" {
		t.Errorf("the focus is on %q", got)
	}
	if got := b.text("/single_feet!fault"); !strings.Contains(got, "Wanted: ") {
		t.Errorf("it says %q", got)
	}
	b.press("/single_feet")
	if got := eval[string](b, "document.activeElement.id"); got != "/single_feet/height" {
		t.Errorf("added, the focus is on %q", got)
	}
	if got := b.text("/single_feet/feet/0/name!fault"); !strings.Contains(got, "Wanted: ") {
		t.Errorf("the new field says %q", got)
	}
}
