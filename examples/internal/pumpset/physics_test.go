package pumpset

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// scene is a pump set whose misalignment is known. Lengths are in millimetres,
// in the library's signs; it shares no code with what it judges.
type scene struct {
	method           string
	movable, far     bool // the carrier (straightedge: on whose rim it lies); the face
	fromStationary   bool
	oy, sy, oz, sz   float64
	high, toThree    float64 // of the target, the crew's three
	opening          float64 // of the target, at the crew's 3 o'clock
	rimS, rimM       float64 // stations
	diameter, span   float64
	sag              [2]float64
	feet             [2]float64
	centre, zero     float64 // place of the coupling centre on the tape; what the dials show at no deflection
	leftOut, first   int     // quarter that is not read (4: none), and the one that the sweep starts with
	returns, mandrel bool
}

func draw(t *rapid.T) scene {
	within := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	sag := func(name string) float64 { return float64(rapid.IntRange(0, 200).Draw(t, name)) / 1000 }
	s := scene{
		method:  rapid.SampledFrom([]string{"reverse", "rim_face", "face_face", "rim_gap", "straightedge_gap"}).Draw(t, "method"),
		movable: rapid.Bool().Draw(t, "movable"), far: rapid.Bool().Draw(t, "far"), fromStationary: rapid.Bool().Draw(t, "from stationary"),
		oy: within("oy", -1, 1), sy: within("sy", -2e-3, 2e-3), oz: within("oz", -1, 1), sz: within("sz", -2e-3, 2e-3),
		high: within("high", -0.3, 0.3), toThree: within("to three", -0.3, 0.3), opening: within("opening", -0.2, 0.2),
		rimS: within("rim s", -300, -20), rimM: within("rim m", 20, 300), diameter: within("diameter", 50, 300), span: within("span", 100, 900),
		sag:    [2]float64{sag("sag a"), sag("sag b")},
		centre: within("centre", 300, 900), zero: within("zero", 1, 5),
		leftOut: rapid.IntRange(0, 4).Draw(t, "left out"), first: rapid.IntRange(0, 3).Draw(t, "first"),
		returns: rapid.Bool().Draw(t, "returns"), mandrel: rapid.Bool().Draw(t, "mandrel"),
	}
	s.feet[0] = within("inboard", 310, 900)
	s.feet[1] = s.feet[0] + within("between", 100, 900)
	return s
}

// law is what one set reads: c + k (a offset + b slope) . u + sag cos t.
type law struct {
	k, a, b, sag float64
}

// laws gives both sets of the method. The table is that of the signs of the
// library, written down anew from the arrangement of two rigid shafts.
func (s *scene) laws() [2]law {
	carrier := 1.0 // a dial on the movable shaft sees the stationary one displaced, the other way round
	rim := s.rimM
	if s.movable {
		carrier, rim = -1, s.rimS
	}
	side := 1.0 // a plunger that points back sees the face go the other way
	if s.far {
		side = -1
	}
	r := s.diameter / 2
	switch s.method {
	case "reverse":
		return [2]law{{1, 1, s.rimM, s.sag[0]}, {-1, 1, s.rimS, s.sag[1]}}
	case "rim_face":
		return [2]law{{carrier, 1, rim, s.sag[0]}, {side, 0, r, -s.sag[1]}}
	case "face_face":
		return [2]law{{side, r / s.span, r / 2, -s.sag[0]}, {1, -r / s.span, r / 2, s.sag[1]}}
	case "rim_gap":
		return [2]law{{carrier, 1, rim, s.sag[0]}, {-1, 0, r, 0}}
	}
	return [2]law{{-carrier, 1, rim, 0}, {-1, 0, r, 0}} // straightedge_gap
}

// read is what a set shows at a quarter as the crew names it, if the shafts lie
// at (oy, sy, oz, sz).
func (s *scene) read(l law, quarter int, oy, sy, oz, sz float64) float64 {
	sin := []float64{0, 1, 0, -1}[quarter]
	cos := []float64{1, 0, -1, 0}[quarter]
	if s.fromStationary {
		sin = -sin
	}
	return s.zero + l.k*((l.a*oy+l.b*sy)*sin+(l.a*oz+l.b*sz)*cos) + l.sag*cos
}

// quarters lists the positions of a sweep in their order.
func (s *scene) quarters() []int {
	var list []int
	for i := range 4 {
		if q := (s.first + i) % 4; q != s.leftOut {
			list = append(list, q)
		}
	}
	if s.returns {
		list = append(list, list[0])
	}
	return list
}

var positions = []string{"12:00", "3:00", "6:00", "9:00"}

type object = map[string]any

// millimetres writes a length so that it comes back to the bit.
func millimetres(x float64) string { return fmt.Sprintf("%v mm", x) }

// document is the job that a crew would write.
func (s *scene) document(t rapid.TB) []byte {
	t.Helper()
	var sets [2]object
	for i, l := range s.laws() {
		var list []object
		for _, q := range s.quarters() {
			list = append(list, object{"at": positions[q], "value": millimetres(s.read(l, q, s.oy, s.sy, s.oz, s.sz))})
		}
		sets[i] = object{"readings": list}
		switch {
		case s.gauge(i):
		case s.mandrel:
			sets[i]["mandrel"] = object{"at_12": millimetres(3), "at_6": millimetres(3 - 2*l.sag)}
		default:
			sets[i]["sag"] = millimetres(l.sag)
		}
		if l.a != 1 {
			sets[i]["diameter"] = millimetres(s.diameter)
		}
	}
	tape := object{
		"centre": millimetres(s.centre),
		"feet":   []object{{"name": "inboard", "at": millimetres(s.centre + s.feet[0])}, {"name": "outboard", "at": millimetres(s.centre + s.feet[1])}},
	}
	if s.method == "reverse" || s.movable && s.method != "face_face" {
		tape["stationary_rim"] = millimetres(s.centre + s.rimS)
	}
	if s.method == "reverse" || !s.movable && s.method != "face_face" {
		tape["movable_rim"] = millimetres(s.centre + s.rimM)
	}
	carrier, view := "stationary", "from_movable"
	if s.movable {
		carrier = "movable"
	}
	if s.fromStationary {
		view = "from_stationary"
	}
	doc := object{
		"format": "pumpset job 1", "title": "t", "stationary": "s", "movable": "m", "view": view, "three": "north", "nine": "south",
		"coupling": object{"diameter": millimetres(s.diameter), "span": millimetres(s.span)}, "tape": tape,
		"limits": object{"miss": "1 nm", "return": "1 nm"},
		"target": object{"high": millimetres(s.high), "to_three": millimetres(s.toThree), "opening": millimetres(s.opening), "open_at": "3:00"},
		"found":  object{s.method: s.survey(sets, carrier)},
	}
	data, err := json.Marshal(doc)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// gauge tells whether set i has no bracket that could sag.
func (s *scene) gauge(i int) bool {
	return s.method == "straightedge_gap" || s.method == "rim_gap" && i == 1
}

func (s *scene) survey(sets [2]object, carrier string) object {
	switch s.method {
	case "reverse":
		return object{"carried_by_stationary": sets[0], "carried_by_movable": sets[1]}
	case "rim_face":
		sets[1]["far"] = s.far
		return object{"carrier": carrier, "rim": sets[0], "face": sets[1]}
	case "face_face":
		sets[0]["far"] = s.far
		return object{"at_stationary": sets[0], "at_movable": sets[1]}
	case "rim_gap":
		return object{"carrier": carrier, "rim": sets[0], "gap": sets[1]}
	}
	sets[0]["on"] = carrier
	return object{"straightedge": sets[0], "gap": sets[1]}
}

// goal is the target in the library's signs: a gap open at the crew's 3 means
// that the shaft drifts away from there.
func (s *scene) goal() (oy, sy, oz, sz float64) {
	three := 1.0
	if s.fromStationary {
		three = -1
	}
	return three * s.toThree, -three * s.opening / s.diameter, s.high, 0
}

// near asks for agreement to a nanometre, which is what a reading of a metre
// leaves after the sums of a job.
func near(t rapid.TB, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) < 1e-6) {
		t.Errorf("%s: got %v, want %v", what, got, want)
	}
}

// Whatever method measures a known misalignment, from wherever the crew names
// the clock, the moves take the shaft to its target, and the dials then show
// what was expected.
func TestKnownMisalignment(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t)
		if s.method == "straightedge_gap" || s.method == "rim_gap" {
			s.far = false
		}
		r := mustSolve(t, s.document(t))
		s.checkMoves(t, r)
		s.checkExpected(t, r)
		s.checkWords(t, r)
		for _, system := range []System{Metric, Inch} {
			checkPage(t, text(t, r, system))
		}
		checkRecord(t, r)
		for _, w := range r.Found.Result.Warnings { // that nothing moved is asked about, and rightly
			if !strings.Contains(w.Want, "spread") {
				t.Errorf("warned of readings without an error: %v", w)
			}
		}
	})
}

func (s *scene) checkMoves(t rapid.TB, r Record) {
	t.Helper()
	value := r.Found.Result.Value
	near(t, "horizontal offset", value.Horizontal.Offset.In(units.InMillimetres), s.oy)
	near(t, "horizontal slope, mm/m", 1000*float64(value.Horizontal.Slope), 1000*s.sy)
	near(t, "vertical offset", value.Vertical.Offset.In(units.InMillimetres), s.oz)
	near(t, "vertical slope, mm/m", 1000*float64(value.Vertical.Slope), 1000*s.sz)
	ty, tsy, tz, tsz := s.goal()
	for i, x := range s.feet {
		near(t, "raise", r.Found.Moves[i].By.Vertical.In(units.InMillimetres), tz+tsz*x-s.oz-s.sz*x)
		near(t, "push towards 3", r.Found.Moves[i].By.Horizontal.In(units.InMillimetres), ty+tsy*x-s.oy-s.sy*x)
	}
}

func (s *scene) checkExpected(t rapid.TB, r Record) {
	t.Helper()
	oy, sy, oz, sz := s.goal()
	list := s.quarters()
	for i, l := range s.laws() {
		if s.gauge(i) {
			l.sag = 0
		}
		start := s.read(l, list[0], oy, sy, oz, sz)
		for k, q := range list {
			near(t, fmt.Sprintf("expected of set %d at %s", i, positions[q]),
				r.Expected[i][k].Value.In(units.InMillimetres), s.read(l, q, oy, sy, oz, sz)-start)
		}
	}
}

// Where the tape's zero is changes nothing, and where the centre was marked
// changes no move but of a face-face job.
func TestMarkOnTheTape(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := draw(t)
		s.high, s.toThree, s.opening = 0, 0, 0 // a target is told at the centre
		first := mustSolve(t, s.document(t))
		by := rapid.Float64Range(-15, 15).Draw(t, "by")
		shifted := s
		shifted.centre += 20 + by
		sameMoves(t, first, mustSolve(t, shifted.document(t)))
		if s.method == "face_face" {
			return
		}
		doc := with("/tape/centre", fmt.Sprintf("%q", millimetres(s.centre+by)))(t, s.document(t))
		sameMoves(t, first, mustSolve(t, doc))
	})
}

func sameMoves(t rapid.TB, a, b Record) {
	t.Helper()
	for i := range a.Found.Moves {
		v, w := a.Found.Moves[i].By, b.Found.Moves[i].By
		near(t, "raise", w.Vertical.In(units.InMillimetres), v.Vertical.In(units.InMillimetres))
		near(t, "push", w.Horizontal.In(units.InMillimetres), v.Horizontal.In(units.InMillimetres))
	}
}
