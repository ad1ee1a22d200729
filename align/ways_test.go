package align

import (
	"math"
	"testing"

	"example.org/collinear/internal/lsq"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// anySet draws a rim or a face with readings on an arc from 10 degrees up, with
// noise, from any zero, noted from either end, with weights or without.
func anySet(t *rapid.T, kind Kind, clocks func(*rapid.T) []units.Clock) Set {
	s := Set{Probe: Probe{Kind: kind, Carrier: rapid.SampledFrom([]Shaft{Stationary, Movable}).Draw(t, "carrier")}}
	if kind == Rim {
		s.Probe.Station = units.Millimetre * units.Length(rapid.Float64Range(-600, 600).Draw(t, "station"))
	} else {
		s.Probe.Radius = units.Millimetre * units.Length(rapid.Float64Range(50, 500).Draw(t, "radius"))
	}
	s.View = rapid.SampledFrom([]View{FromMovable, FromStationary}).Draw(t, "view")
	s.Sag = units.Micrometre * units.Length(rapid.IntRange(0, 300).Draw(t, "sag"))
	zero := rapid.SampledFrom([]float64{0, -1e6, 1e9}).Draw(t, "zero")
	weighted := rapid.Bool().Draw(t, "weighted")
	for i, at := range clocks(t) {
		_, cos := at.SinCos()
		wobble := math.Sin(float64(3*i*i*i + 1))
		r := Reading{At: at, Value: units.Length(zero + 2e5*cos + 1e4*wobble)}
		if weighted {
			r.U = units.Micrometre * units.Length(2+wobble)
		}
		s.Readings = append(s.Readings, r)
	}
	return s
}

// arc draws three places and more, well apart.
func arc(t *rapid.T) (clocks []units.Clock) {
	n := rapid.SampledFrom([]int{3, 4, 9, atOnce, atOnce + 1, 3 * atOnce}).Draw(t, "readings")
	width := rapid.SampledFrom([]float64{10, 60, 180, 360}).Draw(t, "arc")
	start := rapid.Float64Range(-400, 400).Draw(t, "start")
	for i := range n {
		clocks = append(clocks, units.Clock(start+width*float64(i)/float64(n)))
	}
	return clocks
}

// oneByOne reduces a set reading by reading.
func oneByOne(set *Set) (r reduced) {
	var work [3 * (3 + 1)]float64
	own := lsq.In(work[:], 3)
	r.add(&own, set, set.Readings, set.Readings[0].Value)
	r.takeRows(&own)
	r.straighten(set)
	return r
}

// alike asks that two numbers agree to some rounding units of a size.
func alike(t *rapid.T, what string, got, want, size float64) {
	if !(math.Abs(got-want) <= 64*0x1p-52*size) {
		t.Errorf("%s: got %v, want %v, off by %v of %v", what, got, want, got-want, size)
	}
}

// What a set comes to in blocks is what it comes to reading by reading: the same
// harmonic with the same covariance, as far as its arc lets it, and the same sums.
func TestBlocksAreTheSameAsReadingByReading(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		set := anySet(t, Rim, arc)
		var got reduced
		var b block
		got.reduce(&set, &b)
		want := oneByOne(&set)
		alike(t, "weight", got.weight, want.weight, want.weight*float64(len(set.Readings)))
		alike(t, "size", got.size, want.size, want.size*float64(len(set.Readings)))
		sin, cos, ss, sc, cc := got.harmonic()
		wantSin, wantCos, wantSS, wantSC, wantCC := want.harmonic()
		// What is left of a reading has the rounding of a sine times the amplitude, which a
		// short arc makes far larger than the readings. The sag is taken off afterwards and
		// may leave little of it.
		amplitude := math.Hypot(wantSin, wantCos) + math.Abs(set.droop())
		alike(t, "sum", got.sum, want.sum, want.size+math.Sqrt(want.sum)*(math.Sqrt(want.size)+math.Sqrt(want.weight)*amplitude))
		condition := math.Sqrt(want.weight * (wantSS + wantCC))
		reach := condition * (amplitude + condition*math.Sqrt(want.sum/want.weight))
		alike(t, "sine", sin, wantSin, reach)
		alike(t, "cosine", cos, wantCos, reach)
		alike(t, "variance of the sine", ss, wantSS, condition*(wantSS+wantCC))
		alike(t, "covariance", sc, wantSC, condition*(wantSS+wantCC))
		alike(t, "variance of the cosine", cc, wantCC, condition*(wantSS+wantCC))
	})
}

// Readings that a block can make something of are taken by a block; such as are
// singular, or as good as singular by their weights, are not.
func TestWhatABlockTakes(t *testing.T) {
	at := func(clocks ...units.Clock) Set {
		s := Set{Probe: Probe{Kind: Rim, Carrier: Stationary}}
		for i, c := range clocks {
			s.Readings = append(s.Readings, Reading{At: c, Value: units.Length(100 * i * i)})
		}
		return s
	}
	weighted := at(0, 90, 180, 270)
	for i := range weighted.Readings {
		weighted.Readings[i].U = units.Millimetre
	}
	weighted.Readings[0].U, weighted.Readings[3].U = units.Nanometre, units.Nanometre
	aside := at(10, 12, 200, 14, 16) // the place in the middle of the list weighs nothing
	for i := range aside.Readings {
		aside.Readings[i].U = units.Micrometre
	}
	aside.Readings[2].U = 100 * units.Millimetre
	rows := []struct {
		name string
		set  Set
		want bool
	}{
		{"quarters", at(0, 90, 180, 270), true},
		{"three of them", at(0, 90, 180), true},
		{"a short arc", at(10, 12, 14, 16, 18, 20), true},
		{"a short arc across 12", at(355, 358, 1, 4), true},
		{"the same the other way round", at(20, 18, 16, 14, 12, 10), true},
		{"three that repeat", at(0, 90, 180, 0, 90, 180), true},
		{"two places", at(0, 90), false},
		{"two places again and again", at(0, 90, 0, 90, 0), false},
		{"two places, one of them told in turns", at(0, 90, 360, 450), false},
		{"one place", at(30, 30, 30), false},
		{"two close together and one a quarter away", at(0, 1, 90), false},
		{"two close together and one across", at(0, 1, 180), true},
		{"two readings outweigh the rest", weighted, false},
		{"all that weighs is far from the middle of the list", aside, false},
	}
	for _, row := range rows {
		var b block
		if got := b.take(&row.set, row.set.Readings, 0); got != row.want {
			t.Errorf("%s: taken %v, want %v", row.name, got, row.want)
		}
	}
}

// A block that knows where another set stood takes the next one as a fresh block
// does, to the last bit.
func TestABlockThatWasUsedBefore(t *testing.T) {
	set := func(view View, clocks ...units.Clock) Set {
		s := Set{Probe: Probe{Kind: Rim, Carrier: Stationary}, View: view}
		for i, c := range clocks {
			s.Readings = append(s.Readings, Reading{At: c, Value: units.Length(1000 * (i * i % 5))})
		}
		return s
	}
	first := set(FromMovable, 10, 80, 200, 300)
	rows := []struct {
		name string
		next Set
	}{
		{"the same places", set(FromMovable, 10, 80, 200, 300)},
		{"seen from the other end", set(FromStationary, 10, 80, 200, 300)},
		{"the first elsewhere", set(FromMovable, 11, 80, 200, 300)},
		{"the last elsewhere", set(FromMovable, 10, 80, 200, 301)},
		{"another middle", set(FromMovable, 10, 80, 201, 300)},
		{"another order", set(FromMovable, 300, 200, 80, 10)},
		{"one more", set(FromMovable, 10, 80, 200, 300, 330)},
		{"one less", set(FromMovable, 10, 80, 200)},
		{"a full turn on", set(FromMovable, 370, 440, 560, 660)},
		{"too little to take", set(FromMovable, 10, 80)},
	}
	for _, row := range rows {
		var used block
		var got, want reduced
		got.reduce(&first, &used)
		got.reduce(&row.next, &used)
		want.reduce(&row.next, new(block))
		if got != want {
			t.Errorf("%s: got %v, want %v", row.name, got, want)
		}
		got.reduce(&first, &used) // and back
		want.reduce(&first, new(block))
		if got != want {
			t.Errorf("%s, and back: got %v, want %v", row.name, got, want)
		}
	}
}

// Two sets solved by their harmonics are two sets solved together.
func TestAPairIsTheJointFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		second := rapid.SampledFrom([]Kind{Rim, NearFace, FarFace}).Draw(t, "second kind")
		sets := []Set{anySet(t, Rim, arc), anySet(t, second, arc)}
		for i := range sets {
			sets[i].U.Reading = units.Micrometre
		}
		var pair solution
		if err := pair.solve(sets); err != nil || pair.condition > 1e5 {
			t.Skip("as good as singular")
		}
		if math.IsInf(pair.unit[offsetY][offsetY]+pair.unit[slopeY][slopeY]+pair.unit[offsetZ][offsetZ]+pair.unit[slopeZ][slopeZ], 1) {
			t.Skip("stations so close together that Fit refuses the covariance")
		}
		joint := solution{kept: pair.kept}
		var seen law
		for i := range sets {
			joint.count(&seen, &sets[i], joint.kept[i])
		}
		scale := seen.fullTurn()
		if err := joint.joint(sets, scale); err != nil {
			t.Fatalf("joint: %v", err)
		}
		compareWays(t, &pair, &joint, scale)
	})
}

func compareWays(t *rapid.T, pair, joint *solution, scale [four]float64) {
	alike(t, "condition", pair.condition, joint.condition, joint.condition*joint.condition)
	length := 0.0
	for i, x := range joint.beta {
		length += square(x * scale[i])
	}
	for i := range scale {
		alike(t, "number", pair.beta[i]*scale[i], joint.beta[i]*scale[i], joint.condition*math.Sqrt(length))
		for j := range scale {
			alike(t, "covariance", pair.unit[i][j], joint.unit[i][j], joint.condition*math.Sqrt(joint.unit[i][i]*joint.unit[j][j]))
		}
	}
}

// The condition off the covariance is the one off the singular values.
func TestConditionIsThatOfTheSingularValues(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sets := []Set{anySet(t, Rim, arc), anySet(t, Rim, arc), anySet(t, NearFace, arc)}
		var s solution
		if err := s.solve(sets); err != nil || s.condition > 1e5 {
			t.Skip("as good as singular")
		}
		var work [four * (four + 1)]float64
		common := lsq.In(work[:], four)
		var seen law
		for i := range sets {
			l := sets[i].Probe.law()
			seen.addFullTurn(l, s.kept[i].weight)
			for k := range s.kept[i].rows {
				row := l.row(s.kept[i].rows[k][0], s.kept[i].rows[k][1])
				common.Add(row[:], 0)
			}
		}
		want := solution{}
		if err := want.see(&common, seen.fullTurn()); err != nil {
			t.Fatalf("singular: %v", err)
		}
		alike(t, "condition", s.condition, want.condition, want.condition*want.condition)
	})
}

// Eigenvalues that are told apart by nothing, that lie far apart, or that have
// planes turned against each other.
func TestLargestEigenvalue(t *testing.T) {
	rows := []struct {
		name string
		m    matrix
		want float64
	}{
		{"nothing", matrix{}, 0},
		{"one", matrix{{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}}, 1},
		{"the last one", matrix{{1e-9, 0, 0, 0}, {0, 2, 0, 0}, {0, 0, 3, 0}, {0, 0, 0, 1e9}}, 1e9},
		{"all alike", matrix{{1, 1, 1, 1}, {1, 1, 1, 1}, {1, 1, 1, 1}, {1, 1, 1, 1}}, 4},
		{"offset with slope across the planes", matrix{{2, 0, 0, 1}, {0, 2, -1, 0}, {0, -1, 2, 0}, {1, 0, 0, 2}}, 3},
		{"a vector squared", matrix{{1, 2, 3, 4}, {2, 4, 6, 8}, {3, 6, 9, 12}, {4, 8, 12, 16}}, 30},
	}
	for _, row := range rows {
		m := row.m
		if got := m.largest(); !(math.Abs(got-row.want) <= 8*0x1p-52*row.want) {
			t.Errorf("%s: got %v, want %v", row.name, got, row.want)
		}
	}
}
