//go:build !js

package main

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"example.org/collinear/examples/internal/pumpset"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// faults of the layout as they can be measured: what lies beside the page, what
// overlaps, and what is longer than its room.
const layout = `(() => {
	const faults = [];
	const name = (e) => e.tagName + " " + (e.id || e.textContent).slice(0, 60);
	const pen = document.createElement("canvas").getContext("2d");
	const wide = (select) => { pen.font = getComputedStyle(select).font; return pen.measureText(select.selectedOptions[0].text).width; };
	const page = document.scrollingElement;
	if (page.scrollWidth > innerWidth) faults.push("the page is " + page.scrollWidth + " wide, the window " + innerWidth);
	const all = [...document.querySelectorAll("header p, label:not(.hidden), input, select, textarea, button, legend, summary, th, .hint, .fault, .count")]
		.filter((e) => !e.closest("article") && !e.matches("#form > details > .group > legend") && e.checkVisibility());
	const boxes = all.map((e) => [e, e.getBoundingClientRect()]);
	for (const [e, r] of boxes) {
		if (r.left < 0 || r.right > innerWidth + 0.5) faults.push(name(e) + " lies beside the window");
		if (!e.matches("input") && (e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0)) faults.push(name(e) + " is cut");
		if (e.matches("select") && wide(e) > e.clientWidth - 36) faults.push(name(e) + " does not show all of " + e.selectedOptions[0].text); // beside the arrow
		if (e.matches("input[type=text]") && e.value.length <= 12 && e.scrollWidth > e.clientWidth + 1) faults.push(name(e) + " does not show " + e.value);
	}
	boxes.sort((a, b) => a[1].top - b[1].top);
	boxes.forEach(([e, r], i) => {
		for (let k = i + 1; k < boxes.length && boxes[k][1].top < r.bottom - 1; k++) {
			const [f, s] = boxes[k];
			const overlap = s.left < r.right - 1 && r.left < s.right - 1;
			const apart = e.closest("#answer") !== f.closest("#answer"); // one of the columns scrolls
			if (overlap && !apart && !e.contains(f) && !f.contains(e)) faults.push(name(e) + " and " + name(f) + " overlap");
		}
	});
	return faults;
})()`

func TestLayout(t *testing.T) {
	for _, size := range []struct{ width, height int64 }{{360, 740}, {768, 1024}, {1366, 768}, {1920, 1080}} {
		t.Run(fmt.Sprintf("%dx%d", size.width, size.height), func(t *testing.T) {
			b := load(t, size.width, size.height)
			states := []struct{ name, do string }{
				{"sample", "1"},
				{"unfolded", `document.querySelectorAll("details").forEach((e) => { e.open = true }) ?? 1`},
				{"sheet", element("sheet-title") + ".scrollIntoView(), 1"},
				{"refused", `(() => { const e = ` + element(reading) + `; e.value = "abc"; e.dispatchEvent(new Event("input")); e.scrollIntoView({ block: "center" }); return 1; })()`},
				{"empty", element("new") + ".click() ?? 1"},
				{"long words", `(() => { for (const e of document.querySelectorAll("#form input[type=text], #form textarea")) { e.value = "x".repeat(300); e.dispatchEvent(new Event("input")); } scrollTo(0, 0); return 1; })()`},
			}
			for _, s := range states {
				eval[int](b, s.do)
				for _, fault := range eval[[]string](b, layout) {
					t.Errorf("%s: %s", s.name, fault)
				}
				b.picture(fmt.Sprintf("%d %s", size.width, s.name))
			}
			b.quiet()
		})
	}
}

var pageOfPDF = regexp.MustCompile(`/Type\s*/Page\b`)

// On paper stands the sheet alone, on one page, in black and white; of a job that is
// refused no sheet at all.
func TestPrintsOnePage(t *testing.T) {
	b := load(t, 1366, 768)
	for _, units := range []string{"", "inch"} {
		eval[bool](b, element("units")+`.value = "`+units+`"; `+element("units")+`.dispatchEvent(new Event("change"))`)
		for name, paper := range map[string]chromedp.PaperSize{"A4": chromedp.PaperA4, "letter": chromedp.PaperLetter} {
			if n := b.pages(paper); n != 1 {
				t.Errorf("%q on %s: %d pages", units, name, n)
			}
		}
	}
	send(b, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"})
	b.picture("print")
	shown := `[...document.querySelectorAll("body *")].filter((e) => e.getClientRects().length && !e.closest("article") && !e.querySelector("article")).map((e) => e.outerHTML.slice(0, 100))`
	if rest := eval[[]string](b, shown); len(rest) > 0 {
		t.Errorf("beside the sheet it prints %q", rest)
	}
	hidden := `[...document.querySelectorAll("article *")].filter((e) => e.textContent && !e.closest("svg") && !e.getClientRects().length).map((e) => e.outerHTML)`
	if lost := eval[[]string](b, hidden); len(lost) > 0 {
		t.Errorf("of the sheet it does not print %q", lost)
	}
	coloured := eval[[]string](b, `[...document.querySelectorAll("article.sheet, article.sheet *")].flatMap((e) => ["color", "backgroundColor", "fill", "stroke", "borderTopColor"].map((p) => getComputedStyle(e)[p]))
		.filter((c) => { const n = (c.match(/[\d.]+/g) ?? []).map(Number); return /^rgb/.test(c) && n[3] !== 0 && !(n[0] === n[1] && n[1] === n[2]); })`)
	if len(coloured) > 0 {
		t.Errorf("colours: %q", coloured)
	}
	eval[bool](b, `(() => { const e = `+element(reading)+`; e.value = "abc"; e.dispatchEvent(new Event("input")); return true; })()`)
	if eval[bool](b, element("sheet")+".getClientRects().length > 0") {
		t.Error("a sheet that does not fit the fields is printed")
	}
	if got := b.text("stale"); !strings.Contains(got, "NOT THE SHEET") {
		t.Errorf("instead it prints %q", got)
	}
	b.picture("print refused")
}

// pages counts those that come out of the printer.
func (b *tab) pages(paper chromedp.PaperSize) int {
	b.Helper()
	data, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPaper(paper)))
	if err != nil {
		b.Fatal(err)
	}
	return len(pageOfPDF.FindAll(data, -1))
}

// Whatever stands in a job comes out as text.
func TestMarkupInAJobIsText(t *testing.T) {
	b := load(t, 1366, 768)
	eval[bool](b, `document.querySelectorAll("details").forEach((e) => { e.open = true }) ?? true`)
	const bad = `<img src=x onerror=alert(1)>&lt;"'`
	for _, id := range []string{"/title", "/movable", "/three", "/tape/feet/0/name", "/notes/0", "/single_feet/feet/0/name"} {
		b.write(id, bad)
		b.write("/single_feet/feet/0/station", bad)
	}
	if eval[int](b, `document.querySelectorAll("img, #sheet script").length`) > 0 {
		t.Error("the page holds what was typed as markup")
	}
	want := natively(t, []string{string(pumpset.Sample()), ""})
	if want.Sheet == "" || !eval[bool](b, element("sheet")+`.childElementCount === 1`) {
		t.Error("there is no sheet")
	}
	b.quiet()
}
