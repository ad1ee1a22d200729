package sheet

import (
	"strconv"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

// Text returns what a trainee is handed: the story, all that is given, with units, and
// the lines to find with their ids, without formulas and answers, with the usual caution
// below. What no problem has that [NewExercise] draws, such as readings in other units, it
// does not tell of.
func (e Exercise) Text() string {
	h := handout{system: e.System}
	h.add(e.Title, "", e.Story, "", "Given")
	e.Problem.tell(&h)
	h.add("", "To find")
	if w, err := e.Problem.Working(); err == nil {
		for i, step := range w.Steps(e.System) {
			h.add(strconv.Itoa(i+1) + ". " + step.Sought + "  [" + step.ID + "]")
		}
	}
	h.add("", "Write every answer with its unit, and its sign or words for it. "+aboutSigns, "", caution)
	return strings.Join(h.lines, "\n") + "\n"
}

const aboutSigns = "Heights are positive upwards; what lies or goes to the side is positive towards 3 o'clock as seen from " +
	"behind the movable machine; a slope is positive where the shaft climbs, or swings towards that 3 o'clock, away from the " +
	"stationary machine."

// handout gathers what a trainee is told.
type handout struct {
	system System
	view   align.View
	lines  []string
}

func (h *handout) add(lines ...string) { h.lines = append(h.lines, lines...) }

// say puts one given on the handout.
func (h *handout) say(parts ...string) { h.add("- " + strings.Join(parts, "")) }

// told is a problem that can put all it has on a handout.
type told interface{ tell(h *handout) }

func (p Problem) tell(h *handout) {
	for _, f := range p.fields() {
		if t, ok := f.worked.(told); ok && f.given {
			t.tell(h)
		}
	}
}

// stands tells from where the crew looks, by whose words all else is told.
func (h *handout) stands(v align.View) {
	h.view = v
	if v == align.FromStationary {
		h.say("The crew stands behind the stationary machine and looks at the movable one. All clock positions are as it sees them, 3 o'clock on its right.")
		return
	}
	h.say("The crew stands behind the movable machine and looks at the stationary one. All clock positions are as it sees them, 3 o'clock on its right.")
}

// dial is a length as a dial or a gauge shows it, or as it stands on a shim.
func (h *handout) dial(x units.Length) string {
	n := &natures[reading]
	return n.text(float64(x), h.system, n.digits[h.system.index()]-1)
}

// change is a reading with its sign.
func (h *handout) change(x units.Length) string {
	if x > 0 {
		return "+" + h.dial(x)
	}
	return h.dial(x)
}

// tape is a distance as it is read off a tape.
func (h *handout) tape(x units.Length) string {
	if h.system == Inch {
		if text, ok := eighths(x); ok {
			return text
		}
	}
	return h.plain(station, float64(x))
}

// plain is a number with no more digits than it has.
func (h *handout) plain(k kind, x float64) string {
	amount, unit, _ := strings.Cut(natures[k].text(x, h.system, natures[k].digits[h.system.index()]), " ")
	if strings.Contains(amount, ".") {
		amount = strings.TrimRight(strings.TrimRight(amount, "0"), ".")
	}
	return amount + " " + unit
}

// eighths is a distance in inches and eighths, if it is one.
func eighths(x units.Length) (string, bool) {
	n := int64(x / (units.Inch / 8))
	if x <= 0 || units.Length(n)*units.Inch/8 != x {
		return "", false
	}
	whole, part := n/8, [...]string{"", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8"}[n%8]
	if whole == 0 {
		return part + " in", true
	}
	return strings.TrimRight(strconv.FormatInt(whole, 10)+" "+part, " ") + " in", true
}

// from is a station as a distance and a side.
func (h *handout) from(x units.Length) string {
	if x < 0 {
		return h.tape(-x) + " from the coupling centre on the stationary side"
	}
	return h.tape(x) + " from the coupling centre on the movable side"
}

// hours are the quarters, as every crew calls them.
var hours = [...]units.Clock{units.Twelve, units.Three, units.Six, units.Nine}

func oClock(t units.Clock) string {
	if t == t.Round(units.Hour) {
		return strings.TrimSuffix(t.String(), ":00") + " o'clock"
	}
	return t.String()
}

// round is what was read on a way round the clock.
func (h *handout) round(readings []align.Reading, show func(units.Length) string) string {
	var parts []string
	for _, t := range hours {
		shown := oClock(t) + " not taken"
		for _, r := range readings {
			if r.At.Normal() == t {
				shown = oClock(t) + " " + show(r.Value)
			}
		}
		parts = append(parts, shown)
	}
	return strings.Join(parts, ", ")
}

// lies is a misalignment in both planes.
func (h *handout) lies(c align.Centreline) {
	for _, in := range planes {
		l := in.line(c)
		h.say(upper(in.String()), ": ", in.lies().rounded(float64(l.Offset), h.system, h.view), " at the coupling centre")
	}
	h.leans(c)
}

// leans are the slopes of a misalignment.
func (h *handout) leans(c align.Centreline) {
	for _, in := range planes {
		l := in.line(c)
		h.say(upper(in.String()), " slope: ", in.leans().rounded(float64(l.Slope), h.system, h.view))
	}
}
