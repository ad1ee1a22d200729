package pumpset

import (
	_ "embed"
	"io"

	"example.org/collinear/examples/internal/graph"
	"example.org/collinear/examples/internal/lines"
	"example.org/collinear/examples/internal/markup"
)

//go:embed sheet.css
var sheetStyle string

// SheetStyle is the style sheet that the article of WriteSheet is made for.
func SheetStyle() string { return sheetStyle }

// WritePage writes the sheet as a page of its own, in one file.
func WritePage(w io.Writer, r Record, s System) error {
	var p markup.Writer
	p.WriteString("<!doctype html>\n")
	p.Open("html", "lang", "en")
	p.Open("head")
	p.WriteString(`<meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">`)
	p.Leaf("title", string(r.Job.Title))
	p.WriteString("<style>" + sheetStyle + "</style>")
	p.End()
	p.Open("body")
	article, err := article(r, s)
	if err != nil {
		return err
	}
	p.WriteString(article)
	p.End()
	p.End()
	_, err = io.WriteString(w, p.String()+"\n")
	return err
}

// WriteSheet writes the report for one sheet of paper, with its drawings, as one
// article of HTML that goes into a page with SheetStyle.
func WriteSheet(w io.Writer, r Record, s System) error {
	article, err := article(r, s)
	if err != nil {
		return err
	}
	_, err = io.WriteString(w, article)
	return err
}

// sheet puts a record on one sheet of paper. What it has no room for is in the report.
type sheet struct {
	markup.Writer
	report
}

func article(r Record, s System) (string, error) {
	p := sheet{report: report{Record: r, display: r.Job.display(s)}}
	drawings, err := p.drawings()
	if err != nil {
		return "", err
	}
	p.Open("article", "class", "sheet")
	p.head()
	p.toWarn()
	p.Open("div", "class", "states")
	p.found(drawings[0])
	p.leftAs(drawings[1:])
	p.End()
	p.shims()
	p.legend()
	p.foot()
	p.End()
	return p.Writer.String(), nil
}

// head says what was measured, by whom, and where the clock is seen from.
func (p *sheet) head() {
	j := &p.Job
	p.Leaf("h1", string(j.Title))
	p.Open("dl", "class", "facts")
	for _, fact := range [...]struct{ name, text string }{
		{"place", string(j.Place)}, {"stays", string(j.Stationary)}, {"is moved", string(j.Movable)},
		{"measured by", string(j.By)}, {"when", string(j.When)}, {"speed", j.Speed.text},
		{"instrument", string(j.Instrument)}, {"conditions", string(j.Conditions)}, {"clock", p.standpoint()}, {"limits", p.limitWords()}, {"target", p.targetWords()},
	} {
		if fact.text != "" {
			p.Open("div")
			p.Leaf("dt", fact.name)
			p.Leaf("dd", fact.text)
			p.End()
		}
	}
	p.End()
}

// targetWords tell where the movable shaft is wanted, and by whom.
func (p *sheet) targetWords() string {
	if p.Growth != nil {
		return "from the growth between cold and running, " + p.lies(p.Growth.Target)
	}
	if p.Job.Target == nil {
		return "in line as the machines stood when measured: no growth is allowed for"
	}
	words := p.lies(p.aim())
	if source := p.Job.Target.Source; source != "" {
		words += ", " + string(source)
	}
	return words
}

// limitWords tell what a verdict is held against.
func (p *sheet) limitWords() string {
	if p.Limits == nil {
		return "none: nothing is judged"
	}
	return p.ruleWords() + "; " + p.Limits.Source
}

const locked = "Isolate and lock out the driver before a bolt or the coupling is touched, and put the guard back before the lock is taken off."

// toWarn lists everything that is not as it should be.
func (p *sheet) toWarn() {
	all := append(append(p.unsettled(), p.unfit()...), p.leftOver()...)
	odd := p.odd()
	if len(all)+len(odd) == 0 {
		p.Leaf("p", locked+" Warnings: none.")
		return
	}
	p.Leaf("p", locked)
	p.Leaf("h2", "Warnings")
	p.Open("ul", "class", "warnings")
	for _, t := range all {
		p.Leaf("li", capital(t.what)+".")
	}
	for _, words := range odd {
		p.Leaf("li", words)
	}
	p.End()
}

func (p *sheet) legend() {
	p.Open("div", "class", "states")
	for _, f := range graph.Legend() {
		p.WriteString(f.SVG())
	}
	p.End()
}

// foot says what nobody may take from the sheet, and has room for who stands for it.
func (p *sheet) foot() {
	p.Open("footer")
	p.Leaf("p", "The instructions of the makers, local codes and licensed practice come before this sheet. Nothing here is permission to run. "+
		sentence(p.unseen())+" are not looked at. The readings as taken, the tape, the checks before the alignment and the growth are in the report and in the record.")
	p.Leaf("p", "Name, date:", "class", "signed")
	p.End()
}

// Leaf writes an element with text, in which no number is parted from its unit.
func (p *sheet) Leaf(tag, text string, attributes ...string) {
	p.Writer.Leaf(tag, lines.Unbroken(text), attributes...)
}
