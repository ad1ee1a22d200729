package pumpset

import (
	"fmt"
	"math"
	"strings"

	"pgregory.net/rapid"
)

// claim is something that a report has to say of a known number, its size in
// place of the #.
type claim struct {
	before       string
	known        float64 // in the unit
	unit         string
	above, below string
}

// seen tells whether a number is clear of what may round to nothing, and of a
// tie between two last digits.
func (c claim) seen() bool {
	_, digits := math.Modf(100 * math.Abs(c.known))
	return math.Abs(c.known) >= 0.02 && math.Abs(digits-0.5) > 1e-6
}

func (c claim) words() string {
	way := c.below
	if c.known > 0 {
		way = c.above
	}
	return c.before + strings.ReplaceAll(way, "#", fmt.Sprintf("%.2f %s", math.Abs(c.known), c.unit))
}

// checkWords asks that the report says of every number which way it goes, by
// what is known of the scene.
func (s *scene) checkWords(t rapid.TB, r Record) {
	t.Helper()
	report := strings.Join(strings.Fields(text(t, r, Metric)), " ")
	for _, c := range append(s.lies(), append(s.goes(), s.shows(r)...)...) {
		if c.seen() && !strings.Contains(report, c.words()) {
			t.Errorf("the report does not say %q:\n%s", c.words(), report)
		}
	}
}

// crew turns a horizontal number into the crew's view, where north is 3.
func (s *scene) crew(y float64) float64 {
	if s.fromStationary {
		return -y
	}
	return y
}

// hour is where a vector points, as the crew names it, to a quarter of an hour.
// One that is too close to a tie has none.
func (s *scene) hour(y, z float64) string {
	quarters := math.Mod(math.Atan2(s.crew(y), z)/(2*math.Pi)*48+48, 48)
	n := int(math.Round(quarters)) % 48
	if math.Abs(quarters-math.Floor(quarters)-0.5) < 1e-6 {
		return ""
	}
	return fmt.Sprintf("%d:%02d ", (n/4+11)%12+1, n%4*15)
}

// lies are the claims on how the shaft was found.
func (s *scene) lies() []claim {
	tilt := math.Sqrt(s.sy*s.sy + s.sz*s.sz)
	towards, wide := "# towards about "+s.hour(s.oy, s.oz), "# at about "+s.hour(-s.sy, -s.sz)
	return []claim{
		{"together ", math.Sqrt(s.oy*s.oy + s.oz*s.oz), "mm", towards, ""},
		{"gap open by ", tilt * s.diameter, "mm", wide, ""},
		{"up and down ", s.oz, "mm", "# high at the coupling centre", "# low at the coupling centre"},
		{"(u unknown); ", 1000 * s.sz, "mm/m", "climbs #", "falls #"},
		{"sideways ", s.crew(s.oy), "mm", "# towards north at", "# towards south at"},
		{"(u unknown); ", 1000 * s.crew(s.sy), "mm/m", "drifts towards north by #", "drifts towards south by #"},
		{"movable shaft ", s.high, "mm", "# high at", "# low at"},
		{"movable shaft ", s.toThree, "mm", "# towards north at", "# towards south at"},
		{"", s.opening / s.diameter * 1000, "mm/m", "drifts towards south by # BEFORE", "drifts towards north by # BEFORE"},
	}
}

// goes are the claims on the feet.
func (s *scene) goes() []claim {
	ty, tsy, tz, tsz := s.goal()
	var all []claim
	for i, x := range s.feet {
		up, across := tz+tsz*x-s.oz-s.sz*x, s.crew(ty+tsy*x-s.oy-s.sy*x)
		name := "- " + []string{"inboard", "outboard"}[i] + ": "
		raise := claim{name, up, "mm", "raise #", "lower #"}
		push := claim{raise.words() + ", ", across, "mm", "push # towards north", "push # towards south"}
		if !raise.seen() {
			continue
		}
		all = append(all, raise, push)
	}
	return all
}

// shows are the claims on the readings, the one that was supplied among them.
func (s *scene) shows(r Record) []claim {
	m := r.Job.methods(&r.Job.Found)[0]
	var all []claim
	for i, l := range s.laws() {
		above, below := "# inwards ", "# outwards "
		if s.gauge(i) {
			above, below = "# wider ", "# narrower "
			l.sag = 0
		}
		list, entered := s.quarters(), m.parts[i].readings
		change := func(l law, q int) float64 {
			return s.read(l, q, s.oy, s.sy, s.oz, s.sz) - s.read(l, list[0], s.oy, s.sy, s.oz, s.sz)
		}
		clean := l
		clean.sag = 0
		for k, q := range list[1:] {
			raw := claim{fmt.Sprintf("%s %s ", positions[q], entered[k+1].Value), change(l, q), "mm", above, below}
			all = append(all, raw)
			if l.sag != 0 && raw.seen() {
				less := change(clean, q)
				all = append(all, claim{raw.words(), less, "mm", above, below})
			}
		}
		if s.leftOut < 4 {
			by := change(l, s.leftOut)
			all = append(all, claim{"Not read at " + positions[s.leftOut] + ": the validity rule (12 + 6 = 3 + 9) supplies ", by, "mm", above + "against the first", below + "against the first"})
		}
	}
	return all
}
