package align_test

import (
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/internal/rigid"
	"example.org/collinear/units"
)

// The sign table: what a dial shows at 12, 3, 6, 9 with its zero at 12. The
// readings are millimetres, derived here from two rigid shafts; see is what the
// dial shows of the misalignment, offsets at the coupling for a rim at x = 0.
var signTable = []struct {
	name  string
	truth align.Centreline
	set   align.Set
	want  [4]float64
	radii float64 // second order: the radius of the rim, where the last digits need it
}{
	{"high, seen from the stationary shaft", line(0, 0, 0.10, 0), rim(align.Stationary, 0), [4]float64{0, -0.10, -0.20, -0.10}, 0},
	{"high, seen from the movable shaft", line(0, 0, 0.10, 0), rim(align.Movable, 0), [4]float64{0, +0.10, +0.20, +0.10}, 0},
	{"towards 3, seen from the stationary shaft", line(0.10, 0, 0, 0), rim(align.Stationary, 0), [4]float64{0, +0.10, 0, -0.10}, 0},
	{"climbing away, near face", line(0, 0, 0, 1e-3), face(align.Stationary, 50), [4]float64{0, -0.05, -0.10, -0.05}, 0},
	{"climbing away, near face of the other carrier", line(0, 0, 0, 1e-3), face(align.Movable, 50), [4]float64{0, -0.05, -0.10, -0.05}, 0},
	{"case A, rim of the movable shaft", caseA, rim(align.Stationary, 40), [4]float64{0, +0.363764, +0.456000, +0.091764}, 75},
	{"case A, near face", caseA, face(align.Stationary, 75), [4]float64{0, +0.082500, +0.105000, +0.022500}, 0},
	{"case A, rim of the stationary shaft", caseA, rim(align.Movable, -50), [4]float64{0, -0.265127, -0.330000, -0.065127}, 75},
	{"case A, machines and standpoint exchanged", caseA.Exchanged(), rim(align.Stationary, +50), [4]float64{0, -0.065127, -0.330000, -0.265127}, 75},
}

// Predict gives the first order. On a rim of radius rho the second,
//
//	-(w_y cos t - w_z sin t)^2/(2 rho) + rho (slope . u)^2/2,
//
// is the last digits of the table, and is added here.
func TestSignsOfReadings(t *testing.T) {
	for _, row := range signTable {
		t.Run(row.name, func(t *testing.T) {
			readings, err := row.set.Predict(row.truth, quarters...)
			if err != nil {
				t.Fatal(err)
			}
			for i, r := range readings {
				second := secondOrder(row.truth, row.set, row.radii, i) - secondOrder(row.truth, row.set, row.radii, 0)
				near(t, r.At.String(), inMM(r.Value)+second, row.want[i], 0.5e-6) // printed to 1 nm
			}
		})
	}
}

// secondOrder is that of a rim at quarter i, in millimetres.
func secondOrder(c align.Centreline, s align.Set, rho float64, i int) float64 {
	if rho == 0 {
		return 0
	}
	w, tilt := c.At(s.Probe.Station), c.Tilt()
	across, along := inMM(w.Horizontal), float64(tilt.Vertical) // at 12 and 6
	if i%2 == 1 {
		across, along = inMM(w.Vertical), float64(tilt.Horizontal)
	}
	return -across*across/(2*rho) + rho*along*along/2
}

// The rigid shafts themselves confirm the table, by an instrument made from the
// same words.
func TestSignsAgainstRigidShafts(t *testing.T) {
	for _, row := range signTable {
		instrument := toRigid(row.set.Probe)
		if row.radii != 0 {
			instrument.Radius = row.radii
		}
		got := instrument.Sweep(pose(row.truth), 0, 90, 180, 270)
		tolerance := 0.6e-6
		if row.radii == 0 && row.set.Probe.Kind == align.Rim { // first order: the circle of the rim takes 0.1^2/(2*75) off
			tolerance = 0.1 * 0.1 / (2 * 75) * 1.01
		}
		for i := range got {
			near(t, row.name, got[i], row.want[i], tolerance)
		}
	}
}

// Fitted back with what sees the rest, the table gives its misalignments. In
// the full turn the second order cancels, but for the last printed digit.
func TestSignTableFittedBack(t *testing.T) {
	readings := func(row int) align.Set {
		s := signTable[row].set
		s.Readings = at(mm, quarters, signTable[row].want[:]...)
		return s
	}
	still := func(s align.Set) align.Set {
		s.Readings = at(mm, quarters, 0, 0, 0, 0)
		return s
	}
	noSlope, noOffset := still(face(align.Stationary, 50)), still(rim(align.Stationary, 0))
	rows := []struct {
		name string
		sets []align.Set
		want align.Centreline
	}{
		{"high, from the stationary shaft", []align.Set{readings(0), noSlope}, signTable[0].truth},
		{"high, from the movable shaft", []align.Set{readings(1), noSlope}, signTable[1].truth},
		{"towards 3", []align.Set{readings(2), noSlope}, signTable[2].truth},
		{"climbing away", []align.Set{noOffset, readings(3)}, signTable[3].truth},
		{"climbing away, other carrier", []align.Set{noOffset, readings(4)}, signTable[4].truth},
		{"case A, rim and face", []align.Set{readings(5), readings(6)}, caseA},
		{"case A, two rims", []align.Set{readings(5), readings(7)}, caseA},
		{"case A, all three", []align.Set{readings(5), readings(6), readings(7)}, caseA},
		{"case A exchanged", []align.Set{readings(8), exchange(readings(6)), exchange(readings(5))}, caseA.Exchanged()},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			nearLine(t, "fit", mustFit(t, row.sets...).Value, row.want, uniform(1e-6))
		})
	}
}

// exchange tells of the same sweep by a crew that calls the other machine the
// movable one: x and the carrier change ends, and so does the library's observer
// though the crew stands where it stood.
func exchange(s align.Set) align.Set {
	s.Probe.Station = -s.Probe.Station
	s.Probe.Gain = -s.Probe.Gain // displaced towards the sensor: now of the other shaft
	switch s.Probe.Carrier {
	case align.Stationary:
		s.Probe.Carrier = align.Movable
	case align.Movable:
		s.Probe.Carrier = align.Stationary
	}
	s.View = align.FromStationary - s.View
	return s
}

// The closed forms at 12, 3, 6, 9, one zero within the sweep.
func TestClosedForms(t *testing.T) {
	r := [4]float64{0.31, -0.07, 0.12, 0.5} // need not fit a harmonic
	y, z := (r[1]-r[3])/2, (r[0]-r[2])/2
	const d, x = 150.0, 40.0
	faceOf := func(kind align.Kind, by align.Shaft) align.Set {
		return align.Set{Probe: align.Probe{Kind: kind, Carrier: by, Radius: length(d / 2)}}
	}
	rimOf := func(kind align.Kind, by align.Shaft) align.Set {
		return align.Set{Probe: align.Probe{Kind: kind, Carrier: by, Station: length(x)}}
	}
	sensor := func(gain float64) align.Set {
		return align.Set{Probe: align.Probe{Kind: align.Displacement, Station: length(x), Gain: gain}}
	}
	rows := []struct {
		name string
		set  align.Set
		y, z float64 // w at x for those that see it, the slope for the others
	}{
		{"rim, stationary carrier", rimOf(align.Rim, align.Stationary), y, z},
		{"rim, movable carrier", rimOf(align.Rim, align.Movable), -y, -z},
		{"bore, stationary carrier", rimOf(align.Bore, align.Stationary), -y, -z},
		{"bore, movable carrier", rimOf(align.Bore, align.Movable), y, z},
		{"straightedge on the stationary rim", rimOf(align.Straightedge, align.Stationary), -y, -z},
		{"straightedge on the movable rim", rimOf(align.Straightedge, align.Movable), y, z},
		{"sensor that grows", sensor(+2), y / 2, z / 2},
		{"sensor that falls", sensor(-2), -y / 2, -z / 2},
		{"near face, stationary carrier", faceOf(align.NearFace, align.Stationary), 2 * y / d, 2 * z / d},
		{"near face, movable carrier", faceOf(align.NearFace, align.Movable), 2 * y / d, 2 * z / d},
		{"far face, stationary carrier", faceOf(align.FarFace, align.Stationary), -2 * y / d, -2 * z / d},
		{"far face, movable carrier", faceOf(align.FarFace, align.Movable), -2 * y / d, -2 * z / d},
		{"gap", faceOf(align.Gap, 0), -2 * y / d, -2 * z / d},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			row.set.Readings = at(mm, quarters, r[:]...)
			if row.set.Probe.Radius != 0 {
				sight := read(t, align.Centreline{}, []align.Set{rim(align.Stationary, 0)}, quarters...)[0]
				tilt := mustFit(t, row.set, sight).Value.Tilt()
				near(t, "horizontal slope", float64(tilt.Horizontal), row.y, 1e-17)
				near(t, "vertical slope", float64(tilt.Vertical), row.z, 1e-17)
				return
			}
			level := read(t, align.Centreline{}, []align.Set{face(align.Stationary, 100)}, quarters...)[0]
			w := mustFit(t, row.set, level).Value.At(length(x))
			near(t, "horizontal", inMM(w.Horizontal), row.y, 1e-15)
			near(t, "vertical", inMM(w.Vertical), row.z, 1e-15)
		})
	}
}

// Sag adds s cos t to the reading whoever carries the dial, and takes it from
// that of a bore; taken for misalignment it is w_z + s or - s.
func TestSignOfSag(t *testing.T) {
	const s = 0.05
	rows := []struct {
		name string
		set  align.Set
		sag  float64
		want [4]float64
	}{
		{"rim, stationary carrier", rim(align.Stationary, 40), s, [4]float64{0, -s, -2 * s, -s}},
		{"rim, movable carrier", rim(align.Movable, -50), s, [4]float64{0, -s, -2 * s, -s}},
		{"face pushed in at 12", face(align.Stationary, 75), s, [4]float64{0, -s, -2 * s, -s}},
		{"face let out at 12", face(align.Movable, 75), -s, [4]float64{0, s, 2 * s, s}},
		{"bore", align.Set{Probe: align.Probe{Kind: align.Bore, Carrier: align.Movable}}, s, [4]float64{0, s, 2 * s, s}},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			row.set.Sag = length(row.sag)
			readings := read(t, align.Centreline{}, []align.Set{row.set}, quarters...)[0].Readings
			for i, r := range readings {
				near(t, r.At.String(), inMM(r.Value), row.want[i], 1e-15)
			}
		})
	}
}

// On a reverse set a sag that is left out makes a false slope of
// (s_m + s_s)/(x_m - x_s) and shifts w by +s and -s.
func TestSagLeftOut(t *testing.T) {
	const sm, ss = 0.03, 0.05
	sets := reverse()
	sets[0].Sag, sets[1].Sag = length(ss), length(sm)
	sets = read(t, caseA, sets, quarters...)
	right := mustFit(t, sets...).Value
	nearLine(t, "sag given", right, caseA, uniform(1e-6))
	sets = slices.Clone(sets)
	sets[0].Sag, sets[1].Sag = 0, 0
	wrong := mustFit(t, sets...).Value.Minus(right)
	near(t, "false slope", float64(wrong.Vertical.Slope), (sm+ss)/90, 1e-15)
	near(t, "from the stationary shaft", inMM(wrong.At(length(40)).Vertical), +ss, 1e-13)
	near(t, "from the movable shaft", inMM(wrong.At(length(-50)).Vertical), -sm, 1e-13)
	near(t, "sideways", inMM(wrong.Horizontal.Offset), 0, 1e-13)
}

// The difference of two opposite readings is twice the part of w on that
// diameter; over a full turn the largest less the smallest is 2 |w|.
func TestTotalReading(t *testing.T) {
	set := rim(align.Stationary, 40)
	w := caseA.At(length(40))
	low, high := 0.0, 0.0
	for _, r := range read(t, caseA, []align.Set{set}, even(3600, 0, 360)...)[0].Readings {
		low, high = min(low, inMM(r.Value)), max(high, inMM(r.Value))
	}
	near(t, "largest less smallest", high-low, 2*inMM(w.Size()), 1e-6) // a step of 0.1 degrees misses the top by (0.05 deg)^2/2 of it
	across := read(t, caseA, []align.Set{set}, w.Direction(), w.Direction().Opposite())[0].Readings
	near(t, "along w itself", inMM(across[0].Value-across[1].Value), 2*inMM(w.Size()), 1e-14)
}

// pose and toRigid put a misalignment and a probe into the simulator's words.
func pose(c align.Centreline) rigid.Pose {
	p := plain(c)
	return rigid.Pose{OffsetY: p[0], SlopeY: p[1], OffsetZ: p[2], SlopeZ: p[3]}
}

var rigidKinds = map[align.Kind]rigid.Kind{
	align.Rim: rigid.Rim, align.Bore: rigid.Bore, align.NearFace: rigid.NearFace,
	align.FarFace: rigid.FarFace, align.Gap: rigid.Gap, align.Straightedge: rigid.Straightedge,
	align.SpacerFace: rigid.SpacerNearFace, align.SpacerFarFace: rigid.SpacerFarFace,
	align.Displacement: rigid.Displacement,
}

func toRigid(p align.Probe) rigid.Instrument {
	i := rigid.Instrument{
		Kind: rigidKinds[p.Kind], Station: inMM(p.Station), Radius: inMM(p.Radius),
		Span: inMM(p.Span), Gain: p.Gain,
	}
	if p.Carrier == align.Movable {
		i.Carrier = rigid.Movable
	}
	if i.Radius == 0 {
		i.Radius = 75 // of a rim, which the linear law has no need of
	}
	return i
}

// A crew at the stationary end names 3 and 9 the other way round.
func TestSignsFromTheOtherEnd(t *testing.T) {
	set := rim(align.Stationary, 0)
	set.View = align.FromStationary
	got := read(t, line(0.10, 0, 0.03, 0), []align.Set{set}, units.Three, units.Nine, units.Twelve, units.Six)[0].Readings
	for i, want := range []float64{0, 0.20, 0.13, 0.07} {
		near(t, got[i].At.String(), inMM(got[i].Value), want, 1e-15)
	}
}

// A machine is moved under standing dials, from case A: offset_z by +0.05 mm and
// slope_z by +0.2 mm/m. The rim at 40 on the stationary carrier stands at 12, the
// one at -50 on the movable carrier at 6. Each changes by w_z at its station, and
// by the second order of the rim, rho (slope . u)^2/2, which makes the last digit.
// 3 o'clock, where nothing of a vertical move is seen, holds the zero. Derived
// here; the rigid shafts give the same.
func TestLiveMove(t *testing.T) {
	moved := caseA.Plus(line(0, 0, 0.05, 0.2e-3))
	const rho = 75
	rows := []struct {
		name    string
		set     align.Set
		quarter int
		linear  float64
		want    float64 // printed to 10 nm
	}{
		{"stationary carrier at 12", rim(align.Stationary, 40), 0, +0.058, +0.05799},
		{"movable carrier at 6", rim(align.Movable, -50), 2, +0.040, +0.03999},
	}
	var d [2]float64 // D_j = (r_j - r_j0)/(k_j cos t_j), with k cos t = +1 in both rows
	for i, row := range rows {
		stand := func(c align.Centreline) float64 {
			r := read(t, c, []align.Set{row.set}, units.Three, quarters[row.quarter])[0].Readings
			return inMM(r[1].Value)
		}
		d[i] = stand(moved) - stand(caseA)
		near(t, row.name+", first order", d[i], row.linear, 1e-15)
		second := secondOrder(moved, row.set, rho, row.quarter) - secondOrder(caseA, row.set, rho, row.quarter)
		near(t, row.name, d[i]+second, row.want, 0.5e-5)
		instrument := toRigid(row.set.Probe)
		instrument.Radius = rho
		clock := 90 * float64(row.quarter)
		exact := instrument.Read(pose(moved), clock) - instrument.Read(pose(caseA), clock)
		near(t, row.name+", on rigid shafts", exact, d[i]+second, 1e-7) // |w| slope^2/2 is left
	}
	// dslope = (D_2 - D_1)/(x_2 - x_1), doffset = (x_2 D_1 - x_1 D_2)/(x_2 - x_1)
	near(t, "slope from both", (d[1]-d[0])/(-50-40), 0.2e-3, 1e-17)
	near(t, "offset from both", (-50*d[0]-40*d[1])/(-50-40), 0.05, 1e-15)
}
