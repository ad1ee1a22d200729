package softfoot_test

import (
	"errors"
	"math/big"
	"strconv"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

const (
	nm = units.Nanometre
	um = units.Micrometre
	mm = units.Millimetre
)

// judge is Judge on a survey that is sound.
func judge(tb rapid.TB, s softfoot.Survey, l softfoot.Limits) softfoot.Finding {
	tb.Helper()
	found, err := s.Judge(l)
	if err != nil {
		tb.Fatalf("refused: %v", err)
	}
	return found
}

// onFeet is a survey of feet at whole millimetres, named 0, 1 and so on.
func onFeet(plan []spot, lifts []units.Length) softfoot.Survey {
	s := softfoot.Survey{Height: 280 * mm}
	for i, at := range plan {
		s.Feet = append(s.Feet, softfoot.Foot{
			Name: strconv.Itoa(i), X: units.Length(at.x) * mm, Y: units.Length(at.y) * mm, Lift: lifts[i],
		})
	}
	return s
}

// faultsOf lists what an error says as "code path".
func faultsOf(err error) (list []string) {
	for _, f := range units.Faults(err) {
		list = append(list, string(f.Code)+" "+f.Path)
	}
	if list == nil && err != nil {
		return []string{"no fault: " + err.Error()}
	}
	return list
}

// flats is the flat shim under each foot of a survey.
func flats(s softfoot.Survey, way softfoot.Advice) []units.Length {
	list := make([]units.Length, len(s.Feet))
	for _, shim := range way.Shims {
		for i, f := range s.Feet {
			if f.Name == shim.Foot {
				list[i] += shim.Flat
			}
		}
	}
	return list
}

// exact is a length as a rational number of millimetres.
func exact(l units.Length) *big.Rat {
	r := new(big.Rat)
	if r.SetFloat64(float64(l)) == nil {
		panic("not finite")
	}
	return r.Quo(r, big.NewRat(1e6, 1))
}

func rat(x float64) *big.Rat {
	r := new(big.Rat)
	if r.SetFloat64(x) == nil {
		panic("not finite")
	}
	return r
}

func times(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }

func minus(a, b *big.Rat) *big.Rat { return new(big.Rat).Sub(a, b) }

// solve solves a x = b by Gauss's elimination in rationals; false: singular.
func solve(a [][]*big.Rat, b []*big.Rat) ([]*big.Rat, bool) {
	n := len(b)
	for c := range n {
		pivot := c
		for pivot < n && a[pivot][c].Sign() == 0 {
			pivot++
		}
		if pivot == n {
			return nil, false
		}
		a[c], a[pivot], b[c], b[pivot] = a[pivot], a[c], b[pivot], b[c]
		for r := range n {
			if r == c {
				continue
			}
			f := new(big.Rat).Quo(a[r][c], a[c][c])
			for k := c; k < n; k++ {
				a[r][k] = minus(a[r][k], times(f, a[c][k]))
			}
			b[r] = minus(b[r], times(f, b[c]))
		}
	}
	for i := range n {
		b[i] = new(big.Rat).Quo(b[i], a[i][i])
	}
	return b, true
}

// hasFault tells whether an error is a fault.
func hasFault(err error) bool {
	var f *units.Fault
	return errors.As(err, &f)
}
