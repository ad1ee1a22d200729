package thermal_test

import (
	"math"
	"testing"

	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// The same bits on every platform. The bits are those of this code on amd64; that
// they are right is for TestAgainstLongNumbers to say, which allows some
// roundings where this allows none.
func TestBits(t *testing.T) {
	line := growWithin(t, mm, mixed()...)
	u := line.Cov.Standard()
	got := [8]float64{
		float64(line.Value.Horizontal.Offset), float64(line.Value.Horizontal.Slope),
		float64(line.Value.Vertical.Offset), float64(line.Value.Vertical.Slope),
		float64(u.Horizontal.Offset), float64(u.Horizontal.Slope),
		float64(u.Vertical.Offset), float64(u.Vertical.Slope),
	}
	want := [8]uint64{
		0xc06e755cd5cd5d00, 0xbf0b55ec9dfb4deb, 0x4113f53f7bc7bc7c, 0x3f0c0c51fdc1e410,
		0x40ccfc4c68b2244b, 0x3ee7e15a26d5a0ca, 0x40dc4440cba5afdf, 0x3ef8b05dcadac0cd,
	}
	for i := range want {
		if bits := math.Float64bits(got[i]); bits != want[i] {
			t.Errorf("number %d: %v is %#x, want %#x", i, got[i], bits, want[i])
		}
	}
}

// Whole nanometres stay whole where the formula gives them: no rounding is put
// in where none is needed. 2^-20 per K is a float64, and so is all that follows.
func TestExactWhereItCanBe(t *testing.T) {
	m := thermal.Material{Expansion: 0x1p-20}
	profile := thermal.Piece{Height: 0x1p29, Material: m, Cold: units.Celsius(12), Profile: []thermal.Spot{
		{Up: 0x1p27, Running: units.Celsius(28)}, {Up: 0x1p28, Running: units.Celsius(44)}, {Up: 0x1p29, Running: units.Celsius(76)},
	}}
	by, _ := alone(t, on(0, piece(0x1p29, m, 64), profile))
	// A quarter at 16 K, a quarter from 16 to 32, a half from 32 to 64: 34 K.
	if want := units.Length(512 * (64 + 34)); by.Vertical != want {
		t.Errorf("grows %v, want %v", float64(by.Vertical), float64(want))
	}
	line := grow(t, measured(0x1p28, 3, 512), measured(0x1p29, 5, 1024))
	if v := line.Value.Vertical; v.Offset != 0 || v.Slope != 0x1p-19 {
		t.Errorf("line %v", v)
	}
}
