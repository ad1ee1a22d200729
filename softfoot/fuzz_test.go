package softfoot_test

import (
	"strconv"
	"testing"

	"example.org/collinear/internal/fuzzed"
	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

// tape makes an input out of bytes.
type tape struct{ fuzzed.Tape }

// length is mostly a number of steps, of a size that machines have: only those get
// past the first checks; and at times any float64.
func (t *tape) length(step units.Length) units.Length {
	if t.Byte()%16 != 15 {
		return units.Length(int8(t.Byte())) * step
	}
	return units.Length(t.Float64())
}

func (t *tape) survey() softfoot.Survey {
	s := softfoot.Survey{Height: t.length(10 * mm)}
	for i := range t.Byte() % 10 {
		f := softfoot.Foot{Name: strconv.Itoa(int(i)), X: t.length(10 * mm), Y: t.length(10 * mm)}
		switch kind := t.Byte() % 8; kind {
		case 0:
			for range t.Byte() % 10 {
				f.Gaps = append(f.Gaps, softfoot.Gap{X: t.length(mm), Y: t.length(mm), Gap: t.length(3 * um)})
			}
		case 1:
			f.Name = string(rune(t.Byte()))
		default:
			f.Lift = t.length(3 * um)
		}
		s.Feet = append(s.Feet, f)
	}
	return s
}

func (t *tape) limits() softfoot.Limits {
	if t.Byte()%4 != 3 {
		return softfoot.Limits{}
	}
	return softfoot.Limits{Act: t.length(um), Margin: t.length(um), Common: t.length(um), Taper: t.length(um), Least: t.length(um)}
}

// Whatever is asked, Judge answers with numbers that are finite and hang together,
// or refuses with faults.
func FuzzJudge(f *testing.F) {
	f.Add([]byte{})
	f.Add([]byte{0, 0, 28, 4, 0, 0, 0, 20, 2, 0, 40, 0, 0, 0, 236, 2, 0, 0, 0, 60, 0, 20, 2, 0, 0, 0, 60, 0, 236, 2, 0, 40})
	f.Add([]byte{0, 0, 28, 3, 0, 0, 0, 20, 0, 4, 0, 3, 0, 3, 0, 9, 0, 253, 0, 3, 0, 0, 0, 3, 0, 253, 0, 30, 0, 253, 0, 253, 0, 40, 0, 0, 0, 236, 2, 0, 0, 0, 60, 0, 20, 2, 0, 0})
	f.Fuzz(func(t *testing.T, raw []byte) {
		tape := tape{raw}
		l := tape.limits()
		s := tape.survey()
		found, err := s.Judge(l)
		if err != nil {
			if !hasFault(err) {
				t.Errorf("%v is no fault", err)
			}
			return
		}
		checkFinite(t, s, found)
		if (l == softfoot.Limits{}) {
			checkFinding(t, s, found)
		}
	})
}
