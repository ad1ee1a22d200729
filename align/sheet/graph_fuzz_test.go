package sheet_test

import (
	"encoding/json"
	"strconv"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/sheet"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/units"
)

// pencilTape makes a drawing out of bytes.
type pencilTape struct{ fuzzed.Tape }

// number is mostly a few steps, and at times any float64: only the former get past
// the first checks.
func (t *pencilTape) number(step float64) float64 {
	if t.Byte()%16 != 15 {
		return float64(int8(t.Byte())) * step
	}
	return t.Float64()
}

func (t *pencilTape) length(step units.Length) units.Length {
	return units.Length(t.number(float64(step)))
}

func (t *pencilTape) drawing() drawing {
	d := drawing{
		paper:   sheet.Paper{Reduction: t.number(1), Exaggeration: t.number(10), Pencil: t.length(micrometre * 10)},
		line:    align.Line{Offset: t.length(micrometre * 10), Slope: units.Slope(t.number(1e-5))},
		through: [2]sheet.Station{{X: t.length(10 * millimetre)}, {X: t.length(10 * millimetre)}},
	}
	for i := range t.Byte() % 4 {
		d.feet = append(d.feet, align.Foot{Name: strconv.Itoa(int(i)), X: t.length(10 * millimetre)})
	}
	return d
}

// drawingSeeds are drawings that are answered for.
var drawingSeeds = [][]byte{
	{0, 10, 0, 10, 0, 50, 0, 12, 0, 40, 0, 0, 0, 40, 2, 0, 30, 0, 90},
	{0, 5, 0, 20, 0, 0, 0, 200, 0, 200, 0, 30, 0, 236, 3, 0, 1, 0, 100, 0, 156},
}

// Whatever is asked, Draw answers with a graph that holds together, or refuses with
// faults, and so does SuggestPaper.
func FuzzDraw(f *testing.F) {
	f.Add([]byte{})
	for _, raw := range drawingSeeds {
		f.Add(raw)
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		tape := pencilTape{raw}
		d := tape.drawing()
		soundGraph(t, d)
		p, err := d.suggest(tape.length(5*millimetre), tape.length(5*millimetre))
		if err != nil {
			faulty(t, err)
			return
		}
		d.paper = p
		if !soundGraph(t, d) {
			t.Fatalf("%v is suggested, and then refused", p)
		}
	})
}

// soundGraph draws and reads, and tells whether that was not refused.
func soundGraph(t *testing.T, d drawing) bool {
	g, err := d.draw()
	if err != nil {
		faulty(t, err)
		return false
	}
	if _, err := json.Marshal(g); err != nil {
		t.Fatalf("%+v is not finite: %v", g, err)
	}
	read := readings{}
	for _, f := range g.Feet {
		read[f.Foot.Name] = f.W
	}
	answer, err := g.Check(read)
	if err != nil || len(answer) != len(g.Feet) {
		t.Fatalf("%+v is drawn, and then refused: %v", g, err)
	}
	for _, r := range answer {
		if !r.Within || !(r.Tolerance > 0) {
			t.Fatalf("the truth is not within: %+v", r)
		}
	}
	return true
}

func faulty(t *testing.T, err error) {
	if len(units.Faults(err)) == 0 {
		t.Fatalf("refused without a fault: %v", err)
	}
}

// Seeds that were refused would leave the fuzzer on this side of the checks.
func TestDrawingSeedsAreSound(t *testing.T) {
	for _, raw := range drawingSeeds {
		tape := pencilTape{raw}
		d := tape.drawing()
		d.mustDraw(t)
	}
}
