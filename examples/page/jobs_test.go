//go:build !js

package main

import (
	"slices"
	"strings"
	"testing"

	"example.org/collinear/examples/internal/pumpset"
)

// A new job has fields for all that its method needs, and nothing is wrong with it
// but that they are empty.
func TestNewJobs(t *testing.T) {
	b := load(t, 1366, 768)
	for _, method := range []string{"reverse", "rim_face", "face_face", "rim_gap", "straightedge_gap"} {
		eval[string](b, element("method")+`.value = "`+method+`"`)
		b.press("new")
		b.picture("new " + method)
		codes := eval[[]string](b, `import("`+b.base+`/page.js").then((m) => m.state.faults.map((f) => f.code))`)
		if slices.ContainsFunc(codes, func(c string) bool { return c != "missing" }) || len(codes) < 10 {
			t.Errorf("%s: %q", method, codes)
		}
		if !eval[bool](b, element("/found/"+method)+" !== null && "+element("sheet")+".childElementCount === 0 && "+element("stale")+".hidden") {
			t.Errorf("%s: the sheet of another job is still there", method)
		}
		if marked := eval[int](b, `document.querySelectorAll("p.fault:not([hidden])").length`); marked != len(codes) {
			t.Errorf("%s: %d fields are marked for %d faults", method, marked, len(codes))
		}
	}
	b.press("back")
	b.quiet()
}

// The job that was in the fields before another one can be had back, with all that was
// typed; and again the other one.
func TestJobBefore(t *testing.T) {
	b := load(t, 1366, 768)
	b.write(reading, "+0.60 mm")
	b.press("new")
	b.write(reading, "-4.5 mil")
	b.press("back")
	b.shows(sampleAnswer(t, `"+0.55 mm"`, `"+0.60 mm"`))
	b.press("back")
	if got := eval[string](b, element(reading)+".value"); got != "-4.5 mil" {
		t.Errorf("what was typed last is %q", got)
	}
}

// A whole job is entered by keyboard alone, and comes to what the library says.
func TestJobIsEntered(t *testing.T) {
	b := load(t, 1366, 768)
	b.press("new")
	eval[int](b, `[...document.querySelectorAll("details")].forEach((e) => { e.open = true }) ?? 1`)
	written := map[string]string{
		"/title": "Pump P-1", "/stationary": "pump", "/movable": "motor", "/coupling/diameter": "6 in",
		"/tape/stationary_rim": "0 in", "/tape/centre": "7 in", "/tape/movable_rim": "1'-2\"",
		"/tape/feet/0/at": "26 in", "/tape/feet/1/at": "52 3/64 in",
	}
	for id, text := range written {
		b.write(id, text)
	}
	eval[bool](b, element("/view")+`.value = "from_movable"; `+element("/view")+`.dispatchEvent(new Event("input"))`)
	for part, values := range map[string][]string{"carried_by_stationary": {"0 mil", "-7 mil", "-14 mil", "-7 mil"}, "carried_by_movable": {"0 mil", "12 mil", "24 mil", "12 mil"}} {
		b.write("/found/reverse/"+part+"/sag", "0 mm")
		for i, value := range values {
			b.write("/found/reverse/"+part+"/readings/"+string(rune('0'+i))+"/value", value)
		}
	}
	if faults := b.text("fault-list"); faults != "" {
		t.Fatalf("refused: %s", faults)
	}
	rim := func(values string) string {
		list := strings.Fields(values)
		for i, at := range []string{"12:00", "3:00", "6:00", "9:00"} {
			list[i] = `{"at": "` + at + `", "value": "` + list[i] + ` mil"}`
		}
		return `{"sag": "0 mm", "readings": [` + strings.Join(list, ",") + `]}`
	}
	want := natively(t, []string{`{"format": "pumpset job 1", "title": "Pump P-1", "stationary": "pump", "movable": "motor", "view": "from_movable",
		"coupling": {"diameter": "6 in"}, "tape": {"stationary_rim": "0 in", "centre": "7 in", "movable_rim": "1'-2\"",
		"feet": [{"name": "inboard", "at": "26 in"}, {"name": "outboard", "at": "52 3/64 in"}]},
		"found": {"reverse": {"carried_by_stationary": ` + rim("0 -7 -14 -7") + `, "carried_by_movable": ` + rim("0 12 24 12") + `}}}`, ""})
	b.shows(want)
	b.quiet()
}

// Lists and parts come and go, and nothing else changes.
func TestAddAndTakeOut(t *testing.T) {
	b := load(t, 1366, 768)
	list := "/found/reverse/carried_by_stationary/readings"
	add := element(list) + `.lastElementChild.click() ?? true`
	eval[bool](b, add)
	if got := eval[string](b, "document.activeElement.id"); got != list+"/5/at" {
		t.Errorf("added, the focus is on %q", got)
	}
	b.overwrite("12:00")
	if got := b.text(list + "/5/value!fault"); got == "" {
		t.Error("a reading without a value is not refused")
	}
	eval[bool](b, `[...`+element(list)+`.querySelectorAll("button")].find((e) => e.ariaLabel === "Take out: Reading 6").click() ?? true`)
	if !b.holds(string(pumpset.Sample())) {
		t.Error("not as it was")
	}
	for _, part := range []string{"Left", "checks", "target", "growth", "acceptance", "shims"} {
		path := "/" + strings.ToLower(part)
		if eval[bool](b, element(path)+`.tagName === "FIELDSET"`) {
			eval[bool](b, `[...`+element(path)+`.children].find((e) => e.matches("button.remover")).click() ?? true`)
			b.press(path)
		} else {
			b.press(path)
			eval[bool](b, `[...`+element(path)+`.children].find((e) => e.matches("button.remover")).click() ?? true`)
		}
	}
	if got := eval[bool](b, element("/left/reverse/carried_by_movable/readings/3/value")+`.value === ""`); !got {
		t.Error("what was left is not asked for by the method of what was found")
	}
	b.quiet()
}
