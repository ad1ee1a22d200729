//go:build !js

package main

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// Everything can be reached with the Tab key, in the order in which it stands, and
// shows that it is; and a reading that is typed there counts at once.
func TestKeyboardAlone(t *testing.T) {
	b := load(t, 1366, 768)
	seen := 0
	reached := false
	eval[int](b, "window.last = null; 1")
	for ; seen < 500; seen++ {
		b.do(chromedp.KeyEvent(kb.Tab))
		step := eval[string](b, `(() => {
			const now = document.activeElement, was = window.last;
			if (now === document.body) return "end";
			window.last = now;
			if (was && !(was.compareDocumentPosition(now) & 4)) return "backwards at " + now.outerHTML;
			const style = getComputedStyle(now);
			if (style.outlineStyle === "none" || parseFloat(style.outlineWidth) < 2) return "no sign of the focus at " + now.outerHTML;
			return now.id;
		})()`)
		if step == "end" {
			break
		}
		if strings.Contains(step, " ") {
			t.Error(step)
		}
		if step == reading {
			reached = true
			b.overwrite("+0.60 mm")
		}
	}
	if !reached || seen < 60 {
		t.Fatalf("%d stops of the Tab key, the reading among them: %v", seen, reached)
	}
	b.shows(sampleAnswer(t, `"+0.55 mm"`, `"+0.60 mm"`))
	if n := eval[int](b, `document.querySelectorAll("[tabindex]:not([tabindex='0']):not([tabindex='-1'])").length`); n > 0 {
		t.Errorf("%d elements are out of the order of the page", n)
	}
}

// Every control has a name, and every value of the job a field of its own.
func TestEveryFieldHasItsName(t *testing.T) {
	b := load(t, 1366, 768)
	nameless := eval[[]string](b, `[...document.querySelectorAll("input, select, textarea, button, fieldset, section, [role]")].filter((e) => !e.closest("article") &&
		!(e.labels?.[0]?.textContent || e.ariaLabel || e.getAttribute("aria-labelledby") || e.matches("button") && e.textContent || e.querySelector(":scope > legend")?.textContent || e.role === "status" || e.role === "alert")
	).map((e) => e.outerHTML.slice(0, 200))`)
	if len(nameless) > 0 {
		t.Errorf("without a name: %q", nameless)
	}
	doubled := eval[[]string](b, `[...document.querySelectorAll("[id]")].map((e) => e.id).filter((id, i, all) => all.indexOf(id) !== i || /\s/.test(id))`)
	if len(doubled) > 0 {
		t.Errorf("ids that stand twice or hold a space: %q", doubled)
	}
	dangling := eval[[]string](b, `[...document.querySelectorAll("[aria-describedby], [aria-labelledby], label[for]")].flatMap((e) =>
		["aria-describedby", "aria-labelledby", "for"].flatMap((a) => (e.getAttribute(a) ?? "").split(" ").filter(Boolean))).filter((id) => !document.getElementById(id))`)
	if len(dangling) > 0 {
		t.Errorf("these lead nowhere: %q", dangling)
	}
	paths := eval[[]string](b, `(() => {
		const all = [];
		const walk = (value, path) => {
			if (typeof value === "object") for (const key of Object.keys(value)) walk(value[key], path + "/" + key);
			else all.push(path);
		};
		return import("`+b.base+`/page.js").then((m) => { walk(m.state.job, ""); return all.filter((path) => document.getElementById(path)?.value === undefined); });
	})()`)
	if len(paths) > 0 {
		t.Errorf("these have no field: %q", paths)
	}
}
