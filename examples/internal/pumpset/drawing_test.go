package pumpset

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"regexp"
	"strings"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/lines"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// drawing is what the file holds.
func drawing(t rapid.TB, r Record, s System) string {
	t.Helper()
	return printed(t, func(w io.Writer) error { return WriteDrawing(w, r, s) })
}

func onSheet(t rapid.TB, r Record, s System) string {
	t.Helper()
	return printed(t, func(w io.Writer) error { return WriteSheet(w, r, s) })
}

func printed(t rapid.TB, write func(io.Writer) error) string {
	t.Helper()
	var out strings.Builder
	if err := write(&out); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// checkMarkup asks that a document is well-formed and holds nothing that is no number.
func checkMarkup(t rapid.TB, doc string) {
	t.Helper()
	dec := xml.NewDecoder(strings.NewReader(doc))
	for {
		token, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		if err != nil {
			t.Fatalf("not well-formed: %v\n%s", err, doc)
		}
		if e, ok := token.(xml.StartElement); ok {
			for _, a := range e.Attr {
				if noNumber.MatchString(a.Value) && a.Name.Local != "aria-label" {
					t.Fatalf("%s=%q of %s", a.Name.Local, a.Value, e.Name.Local)
				}
			}
		}
	}
}

var noNumber = regexp.MustCompile(`NaN|Inf`)

func TestEveryJobIsDrawn(t *testing.T) {
	for _, name := range jobs {
		r := mustSolve(t, load(t, name))
		for _, s := range []System{Metric, Inch} {
			checkMarkup(t, drawing(t, r, s))
			checkMarkup(t, onSheet(t, r, s))
		}
	}
}

// The sheet has no room for all that the report says, but for every warning, every
// verdict, every move, every pack, and what the dials should show.
func TestSheetLeavesOutNoWarning(t *testing.T) {
	for _, name := range jobs {
		r := mustSolve(t, load(t, name))
		p := sheet{report: report{Record: r, display: r.Job.display(AsTheJob)}}
		var want []string
		for _, t := range append(append(p.unsettled(), p.unfit()...), p.leftOver()...) {
			want = append(want, t.what[1:])
		}
		want = append(want, p.odd()...)
		want = append(want, "Nothing here is permission to run")
		for _, s := range []*state{&r.Found, r.Left} {
			if s == nil {
				continue
			}
			for _, m := range s.Moves {
				want = append(want, p.inPlace(p.moveUp(m.By)), p.inPlace(p.moveAside(m.By)))
			}
			if s.Verdict != nil {
				want = append(want, outcomeWords(s.Verdict), "It is not permission to run")
			}
		}
		if r.Packs != nil && r.Packs.Choice != nil {
			for _, s := range r.Packs.Choice.Stacks {
				want = append(want, p.hands(s.In), p.error(s))
			}
		}
		if r.Left == nil {
			m := r.Job.methods(&r.Job.Found)[0]
			for i := range r.Expected {
				for _, reading := range r.Expected[i][1:] {
					want = append(want, p.change(&m.parts[i], reading.Value))
				}
			}
		}
		text := readable(onSheet(t, r, AsTheJob))
		for _, words := range want {
			if !strings.Contains(text, words) {
				t.Errorf("%s: no %q on the sheet", name, words)
			}
		}
	}
}

// readable is the text of a document.
func readable(doc string) string {
	text := regexp.MustCompile(`<[^>]*>`).ReplaceAllString(doc, "\n")
	return strings.NewReplacer("&#34;", `"`, "&#39;", "'", "&lt;", "<", "&gt;", ">", "&amp;", "&").Replace(lines.Plain(text))
}

// Where nothing is known of the uncertainty, no band is drawn, and words say so.
func TestUnknownIsToldBesideTheDrawing(t *testing.T) {
	const words = "which is not zero"
	known := drawing(t, mustSolve(t, sample), AsTheJob)
	r := mustSolve(t, sample)
	r.Found.Result.Cov = align.Covariance{}
	r.Found.Result.Cov.Basis = align.Unknown
	unknown := drawing(t, r, AsTheJob)
	if strings.Contains(known, words) || !strings.Contains(unknown, words) {
		t.Errorf("told of what is known: %v, of what is unknown: %v", strings.Contains(known, words), strings.Contains(unknown, words))
	}
	if bands := strings.Count(known, "#d8d8d8") - strings.Count(unknown, "#d8d8d8"); bands != 2 {
		t.Errorf("%d bands less, want those of both planes as found", bands)
	}
}

// A crew at the stationary end calls the other side of the plan 3 o'clock: the words
// change places, the drawing does not.
func TestPlanFromTheOtherEnd(t *testing.T) {
	planes := func(view align.View) (above, below string, w units.Length) {
		r := mustSolve(t, sample)
		r.Job.View = view
		p := report{Record: r, display: r.Job.display(AsTheJob)}
		g := p.planView(&r.Found, align.Centreline{})
		w, _ = g.Movable(0)
		return g.Above, g.Below, w
	}
	a, b, w := planes(align.FromMovable)
	c, d, v := planes(align.FromStationary)
	if a != "towards the wall" || b != "towards the aisle" || c != b || d != a || w != v {
		t.Errorf("%q above %q, %v; from the other end %q above %q, %v", a, b, w, c, d, v)
	}
}

// What the drawing of a sweep shows is the sweep: its readings lie about the sine as
// the fit leaves them, the sum of what is left over being nothing but for
// the return to the start.
func TestTurnShowsTheSweep(t *testing.T) {
	for _, name := range jobs {
		r := mustSolve(t, load(t, name))
		p := report{Record: r, display: r.Job.display(AsTheJob)}
		m := r.Job.methods(&r.Job.Found)[0]
		for i, set := range m.Sets() {
			g, err := p.turn("as found", &m.parts[i], set, r.Found.Result.Value)
			if err != nil {
				t.Fatal(err)
			}
			sum := units.Length(0)
			for k, reading := range g.Readings {
				if k < m.parts[i].once() {
					sum += reading.Off
				}
				on := g.Sine[int(m.parts[i].readings[k].At.Value.Normal()/(units.Hour/4))].Value // all are quarters
				if d := reading.Value - reading.Off - on; math.Abs(float64(d)) > 1e-3 {
					t.Errorf("%s, %s: reading %d less what is left over misses the sine by %v", name, g.Title, k, d)
				}
				if max(reading.Off, -reading.Off) > 2*units.Mil {
					t.Errorf("%s, %s: reading %d lies %v off the sine", name, g.Title, k, reading.Off)
				}
			}
			if max(sum, -sum) > 1 {
				t.Errorf("%s, %s: %v is left over in all", name, g.Title, sum)
			}
		}
	}
}
