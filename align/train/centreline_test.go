package train_test

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/train"
	"example.org/collinear/units"
)

// Worked by hand. Couplings at 1 m and 3 m; at the first the later machine is 0.2 mm
// high and climbs 0.5 mm/m, at the second 0.1 mm low and falls 0.3 mm/m:
//
//	machine 1   s = 0.5 mm/m            a = 0.2 - 0.5 x 1 = -0.3 mm
//	machine 2   s = 0.5 - 0.3 = 0.2     a = -0.3 - 0.1 + 0.3 x 3 = 0.5 mm
//
// With machine 1 as the reference the other two are 0.3 mm, -0.5 mm/m and 0.8 mm,
// -0.3 mm/m.
func TestCentrelinesByHand(t *testing.T) {
	tr := train.Train{
		Machines: []train.Machine{machine("a", 200*mm, 800*mm), machine("b", 1200*mm, 2800*mm), machine("c", 3200*mm, 3800*mm)},
		Joints: []train.Joint{
			{At: 1000 * mm, Found: height(200*um, 0.5*milliPerMetre), Limits: perPlane},
			{At: 3000 * mm, Found: height(-100*um, -0.3*milliPerMetre), Limits: perPlane},
		},
	}
	rows := []struct {
		reference string
		want      [3][2]float64 // mm and mm/m
	}{
		{"", [3][2]float64{{0, 0}, {-0.3, 0.5}, {0.5, 0.2}}},
		{"a", [3][2]float64{{0, 0}, {-0.3, 0.5}, {0.5, 0.2}}},
		{"b", [3][2]float64{{0.3, -0.5}, {0, 0}, {0.8, -0.3}}},
		{"c", [3][2]float64{{-0.5, -0.2}, {-0.8, 0.3}, {0, 0}}},
	}
	for _, row := range rows {
		t.Run("reference "+row.reference, func(t *testing.T) {
			tr.Reference = row.reference
			lines, err := tr.Centrelines()
			if err != nil {
				t.Fatal(err)
			}
			for i, want := range row.want {
				got := lines[i].Value.Vertical
				if math.Abs(float64(got.Offset/mm)-want[0]) > 1e-12 || math.Abs(float64(got.Slope)*1000-want[1]) > 1e-12 {
					t.Errorf("machine %d lies on %v, want %v mm and mm/m", i, got, want)
				}
			}
		})
	}
}

// The covariance of a machine is the sum of J V J' over the couplings between it and
// the axis, J = [[1, -X], [0, 1]], here in exact rationals for one plane: offsets to
// 3 and 4 um, slopes to 0.02 and 0.05 mm/m, offset and slope correlated by 0.5 and
// -0.25.
func TestCovarianceAddsUpExactly(t *testing.T) {
	tr := three(t)
	stations := []*big.Rat{big.NewRat(1000, 1), big.NewRat(3000, 1)} // mm
	// V in um^2, um * um/mm and (um/mm)^2
	v := [][3]*big.Rat{
		{big.NewRat(9, 1), big.NewRat(3*2*5, 1000), big.NewRat(4, 10000)},
		{big.NewRat(16, 1), big.NewRat(-4*5*25, 10000), big.NewRat(25, 10000)},
	}
	sum := [3]*big.Rat{new(big.Rat), new(big.Rat), new(big.Rat)}
	lines, err := tr.Centrelines()
	if err != nil {
		t.Fatal(err)
	}
	for i := range v {
		add := transported(v[i], stations[i])
		for k := range sum {
			sum[k].Add(sum[k], add[k])
		}
		for _, x := range []int64{0, 1000, -2500, 4000} {
			at := big.NewRat(x, 1)
			want := new(big.Rat).Add(sum[0], new(big.Rat).Mul(at, new(big.Rat).Add(new(big.Rat).Mul(rat(2), sum[1]), new(big.Rat).Mul(at, sum[2]))))
			square, _ := want.Float64()
			_, u := lines[i+1].At(units.Length(x) * mm)
			if math.Abs(float64(u.Vertical/um)-math.Sqrt(square)) > 1e-9*math.Sqrt(square) {
				t.Errorf("machine %d at %d mm is known to %v, want %v um", i+1, x, u.Vertical, math.Sqrt(square))
			}
			if u.Horizontal != 0 && i == 0 {
				t.Errorf("machine %d has an uncertainty sideways that nobody stated: %v", i+1, u)
			}
		}
	}
}

// transported is J V J' for the offset, the mixed term and the slope.
func transported(v [3]*big.Rat, x *big.Rat) [3]*big.Rat {
	times := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Mul(a, b) }
	offset := new(big.Rat).Sub(v[0], times(times(rat(2), x), v[1]))
	offset.Add(offset, times(times(x, x), v[2]))
	return [3]*big.Rat{offset, new(big.Rat).Sub(v[1], times(x, v[2])), v[2]}
}

// three has an uncertainty in height at both its couplings, at 1 m and 3 m.
func three(t *testing.T) train.Train {
	t.Helper()
	stated := func(offset units.Length, slope units.Slope, correlation float64) align.Estimate {
		r := [4][4]float64{{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, correlation}, {0, 0, correlation, 1}}
		cov, err := align.NewCovariance(align.Stated, height(offset, slope).Value, r)
		if err != nil {
			t.Fatal(err)
		}
		return align.Estimate{Value: height(50*um, 0).Value, Cov: cov}
	}
	return train.Train{
		Machines: []train.Machine{machine("a", 200*mm, 800*mm), machine("b", 1200*mm, 2800*mm), machine("c", 3200*mm, 3800*mm)},
		Joints: []train.Joint{
			{At: 1000 * mm, Found: stated(3*um, 0.02*milliPerMetre, 0.5), Limits: perPlane},
			{At: 3000 * mm, Found: stated(4*um, 0.05*milliPerMetre, -0.25), Limits: perPlane},
		},
	}
}

// The uncertainty of what was found is not made less by moving: that of what is left
// at a coupling is that of what was found there, and a basis that is not known
// anywhere is not known of all that hangs on it.
func TestUncertaintyStays(t *testing.T) {
	tr := three(t)
	p := plan(t, tr, train.TotalTravel)
	for i, j := range p.Joints {
		_, found := tr.Joints[i].Found.At(0)
		_, left := j.After.At(0)
		if d := left.Vertical - found.Vertical; max(d, -d) > 1e-9*um || j.After.Cov.Basis != align.Stated {
			t.Errorf("coupling %d: known to %v (%v), was %v", i, left, j.After.Cov.Basis, found)
		}
	}
	tr.Joints[1].Found.Cov = align.Covariance{Basis: align.Unknown}
	p = plan(t, tr, train.TotalTravel)
	for i, want := range []align.Basis{align.Declared, align.Stated, align.Unknown} {
		if got := p.Machines[i].After.Cov.Basis; got != want {
			t.Errorf("machine %d: basis %v, want %v", i, got, want)
		}
	}
	for _, s := range p.Machines {
		for _, f := range s.Feet {
			if f.Basis != align.Declared || f.U != (align.Vector{}) {
				t.Errorf("%s %s: a move is a decision, and is given %v (%v)", s.Machine, f.Foot.Name, f.U, f.Basis)
			}
		}
	}
}

// What is told about neighbours agrees with what was found between them: machine j+1
// less machine j, in the coupling's own x, is what stands there.
func TestCentrelinesAgreeWithWhatWasFound(t *testing.T) {
	for seed := range uint64(50) {
		j := job{machines: 5, scale: 1}
		tr := j.draw(rand.New(rand.NewPCG(seed, 3)))
		lines, err := tr.Centrelines()
		if err != nil {
			t.Fatal(err)
		}
		for i, joint := range tr.Joints {
			d := lines[i+1].Value.Minus(lines[i].Value).About(joint.At).Minus(joint.Found.Value)
			if d.At(0).Size() > 1e-3*nm || d.Tilt().Size() > 1e-15 {
				t.Errorf("seed %d: coupling %d is off by %v", seed, i, d)
			}
		}
		if i := referenceOf(tr); lines[i] != (align.Estimate{}) {
			t.Errorf("seed %d: the axis lies on %v", seed, lines[i])
		}
	}
}

func referenceOf(tr train.Train) int {
	for i, m := range tr.Machines {
		if m.Name == tr.Reference {
			return i
		}
	}
	return 0
}

// A machine that tilts about its feet takes its shaft along: -height x slope. A pump
// that has to climb by 1 mm/m more, 0.4 m above its feet, comes 0.4 mm nearer.
func TestAxialShift(t *testing.T) {
	tr := pair()
	tr.Machines[1].Height = 400 * mm
	tr.Joints[0].Found = height(0, -1*milliPerMetre)
	p := plan(t, tr, train.TotalTravel)
	if got := p.Machines[1].Shift; math.Abs(float64((got+400*um)/nm)) > 1 {
		t.Errorf("the pump shifts by %v, want -0.4 mm", got)
	}
	if got := p.Joints[0].Opens; math.Abs(float64((got+400*um)/nm)) > 1 {
		t.Errorf("the coupling opens by %v, want -0.4 mm", got)
	}
	tr.Reference = ""
	if p = plan(t, tr, train.TotalTravel); p.Joints[0].Opens != 0 {
		t.Errorf("the coupling opens by %v, although one height is not known", p.Joints[0].Opens)
	}
	tr.Reference = "pump"
	tr.Machines[0].Height, tr.Machines[1].Height = 300*mm, 400*mm
	p = plan(t, tr, train.TotalTravel) // the motor falls by 1 mm/m, away from ... to the pump
	if got := p.Machines[0].Shift; math.Abs(float64((got-300*um)/nm)) > 1 {
		t.Errorf("the motor shifts by %v, want 0.3 mm", got)
	}
	if got := p.Joints[0].Opens; math.Abs(float64((got+300*um)/nm)) > 1 {
		t.Errorf("the coupling opens by %v, want -0.3 mm", got)
	}
	if stays := float64(p.Machines[1].Shift); stays != 0 || math.Signbit(stays) {
		t.Errorf("the pump, which stays, shifts by %v", stays)
	}
}
