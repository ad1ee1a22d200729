package softfoot_test

import (
	"encoding/binary"
	"math"
	"strconv"
	"testing"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

// tape hands out raw bytes as whatever is asked for; at its end all is zero.
type tape []byte

func (t *tape) byte() byte {
	if len(*t) == 0 {
		return 0
	}
	b := (*t)[0]
	*t = (*t)[1:]
	return b
}

// length is mostly a number of steps, of a size that machines have: only those get
// past the first checks; and at times any float64.
func (t *tape) length(step units.Length) units.Length {
	if t.byte()%16 != 15 {
		return units.Length(int8(t.byte())) * step
	}
	var raw [8]byte
	for i := range raw {
		raw[i] = t.byte()
	}
	return units.Length(math.Float64frombits(binary.LittleEndian.Uint64(raw[:])))
}

func (t *tape) survey() softfoot.Survey {
	s := softfoot.Survey{Height: t.length(10 * mm)}
	for i := range t.byte() % 10 {
		f := softfoot.Foot{Name: strconv.Itoa(int(i)), X: t.length(10 * mm), Y: t.length(10 * mm)}
		switch kind := t.byte() % 8; kind {
		case 0:
			for range t.byte() % 10 {
				f.Gaps = append(f.Gaps, softfoot.Gap{X: t.length(mm), Y: t.length(mm), Gap: t.length(3 * um)})
			}
		case 1:
			f.Name = string(rune(t.byte()))
		default:
			f.Lift = t.length(3 * um)
		}
		s.Feet = append(s.Feet, f)
	}
	return s
}

func (t *tape) limits() softfoot.Limits {
	if t.byte()%4 != 3 {
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
		tape := tape(raw)
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
