package dial_test

import (
	"encoding/json"
	"math"
	"reflect"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/units"
)

// tape makes an input out of bytes.
type tape struct{ fuzzed.Tape }

// number is mostly one that a crew could give, so that the fuzzer gets past the
// checks, and sometimes any float64.
func (p *tape) number() float64 {
	switch kind := p.Byte(); kind % 8 {
	case 0:
		return p.Float64()
	case 1:
		return math.Ldexp(float64(int8(p.Byte())), 4*int(int8(p.Byte())))
	default:
		return float64(int8(p.Byte())) * 10_000
	}
}

func (p *tape) length() units.Length { return units.Length(p.number()) }

func (p *tape) clock() units.Clock {
	if p.Byte()%16 == 0 {
		return units.Clock(p.number())
	}
	return 90 * units.Clock(int8(p.Byte())%8)
}

func (p *tape) uncertainty() align.Uncertainty {
	if p.Byte()%4 != 0 {
		return align.Uncertainty{}
	}
	return align.Uncertainty{
		Reading: p.length(), Station: p.length(), Radius: p.length(), Sag: p.length(), Clock: units.Angle(p.number()),
	}
}

func (p *tape) sweep() sweep {
	s := make(sweep, p.Byte()%7)
	for i := range s {
		s[i] = align.Reading{At: 90 * units.Clock(i), Value: p.length()}
		if p.Byte()%4 == 0 {
			s[i].At = p.clock()
		}
		if p.Byte()%8 == 0 {
			s[i].U = p.length()
		}
	}
	return s
}

func (p *tape) rim() dial.Rim {
	return dial.Rim{Station: p.length(), Bore: p.Byte()%2 == 0, Sag: p.length(), Radius: p.length(), Readings: p.sweep(), U: p.uncertainty()}
}

func (p *tape) face() dial.Face {
	return dial.Face{Diameter: p.length(), Far: p.Byte()%2 == 0, Sag: p.length(), Readings: p.sweep(), U: p.uncertainty()}
}

func (p *tape) gap() dial.Gap {
	return dial.Gap{Diameter: p.length(), Readings: p.sweep(), U: p.uncertainty()}
}

func (p *tape) job() solver {
	kind, carrier, view := p.Byte()%5, align.Shaft(p.Byte()%4), align.View(p.Byte()%3)
	limits := dial.Limits{Miss: p.length(), Return: p.length()}
	switch kind {
	case 0:
		return dial.Reverse{CarriedByStationary: p.rim(), CarriedByMovable: p.rim(), View: view, Limits: limits}
	case 1:
		return dial.RimFace{Carrier: carrier, Rim: p.rim(), Face: p.face(), View: view, Limits: limits}
	case 2:
		return dial.FaceFace{Span: p.length(), AtStationary: p.face(), AtMovable: p.face(), View: view, Limits: limits}
	case 3:
		return dial.RimGap{Carrier: carrier, Rim: p.rim(), Gap: p.gap(), View: view, Limits: limits}
	}
	edge := dial.Straightedge{On: carrier, Station: p.length(), Readings: p.sweep(), U: p.uncertainty()}
	return dial.StraightedgeGap{Straightedge: edge, Gap: p.gap(), View: view, Limits: limits}
}

// Whatever the input: no panic; either faults, each at a field of the input and
// none twice, or an answer in which every number is finite, so that it can be
// written out.
func FuzzSolve(f *testing.F) {
	f.Add([]byte(nil))
	for kind := range byte(5) { // sound ones: 2 is a plain number, 4 readings each
		input := []byte{kind, 1, 0, 2, 9, 2, 9}
		for range 2 {
			input = append(input, 2, 50, 1, 2, 0, 2, 0, 4)
			for i := range byte(4) {
				input = append(input, 2, 7*i, 1, 1)
			}
			input = append(input, 1)
		}
		f.Add(input)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		input := tape{data}
		checkAnswer(t, input.job())
	})
}

func checkAnswer(t *testing.T, job solver) {
	result, err := job.Solve()
	if err != nil {
		if len(found(err)) == 0 {
			t.Errorf("refused without a fault: %v", err)
		}
		checkPaths(t, job, err)
		return
	}
	if _, err := json.Marshal(result); err != nil { // as what is not finite cannot be
		t.Errorf("an answer that cannot be written: %v", err)
	}
	if !(result.Condition >= 1-1e-12) || !(result.Scatter >= 0) { // 1 but for rounding where nothing is lost
		t.Errorf("condition %v, scatter %v", result.Condition, result.Scatter)
	}
	for _, w := range result.Warnings {
		if _, ok := pointed(reflect.ValueOf(job), w.Path); !ok {
			t.Errorf("the path %q of a warning leads nowhere", w.Path)
		}
	}
}
