package align

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/collinear/internal/lsq"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// The long way: every reading and every angle has an error of its own, and each
// trial is a fit of sets as they were drawn.

// drawnSets are the sets of a trial: what it drew, with the errors of readings, in
// units of their deviation, put on each. It also returns what these errors come to in
// the two equations of each set, by plane rotations of the columns as drawn.
func drawnSets(t *trials, errors [][]float64) (sets []Set, noise [][2]float64) {
	for i := range t.sweeps {
		set, d := cloneSets([]Set{t.sweeps[i].set})[0], &t.drawn[i]
		var work [3 * 4]float64
		own := lsq.In(work[:], 3)
		for j := range set.Readings {
			r, w := &set.Readings[j], set.weight(j)
			if d.angles != nil {
				r.At += set.View.Clock(degrees(d.angles[j]))
			}
			sin, cos := set.sinCos(j)
			own.Add([]float64{w, w * sin, w * cos}, errors[i][j])
			r.Value += fromMM(errors[i][j] / w)
			r.At += set.View.Clock(degrees(math.Atan2(d.sin, d.cos)))
		}
		var n [2]float64
		var row [3]float64
		for k := range n {
			n[k] = own.Row(row[:], k+1)
		}
		sets, noise = append(sets, set), append(noise, n)
	}
	return sets, noise
}

func degrees(radians float64) units.Clock { return units.Clock(radians * (180 / math.Pi)) }

// drawProbes draws what the sets of a mounting share with the sets about it, as the
// trial does; drawShared puts it in the law, from which it cannot be read.
func (t *trials) drawProbes(random *rand.Rand) []Set {
	var sets []Set
	for i := range t.sweeps {
		set := t.sweeps[i].set
		if first := t.sweeps[i].first; first != i {
			set.Probe, set.Sag = sets[first].Probe, sets[first].Sag
		} else {
			set.Probe.Station = about(random, set.Probe.Station, set.U.Station)
			set.Probe.Radius = about(random, set.Probe.Radius, set.U.Radius)
			set.Sag = about(random, set.Sag, set.U.Sag)
		}
		sets = append(sets, set)
		t.drawn[i].law, t.drawn[i].droop = set.Probe.law(), set.droop()
	}
	return sets
}

// Whatever is drawn, the answer of a trial is the fit of the sets as drawn, to
// rounding: with every kind of error, in both views, with weights of their own, with
// repeats, and with sets that alone are singular.
func TestEveryTrialIsAFit(t *testing.T) {
	for name, m := range oracleJobs() {
		f, s, err := m.fit()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		random := rand.New(rand.NewPCG(5, 6))
		r := newTrials(&m, &f, &s, random)
		for trial := range 100 {
			for i := range r.sweeps {
				if !r.drawShared(i) {
					t.Fatal("a probe that cannot be")
				}
				r.drawReadings(i, 1)
			}
			probes := r.drawProbes(random)
			errors := make([][]float64, len(r.sweeps))
			for i := range errors {
				for range r.sweeps[i].set.Readings {
					errors[i] = append(errors[i], r.scatter.deviation*random.NormFloat64())
				}
			}
			sets, noise := drawnSets(r, errors)
			for i := range sets {
				sets[i].Probe, sets[i].Sag = probes[i].Probe, probes[i].Sag
				r.drawn[i].noise = noise[i]
			}
			var want solution
			if err := want.solve(sets); err != nil {
				t.Fatal(err)
			}
			got, ok := r.answer()
			if !ok {
				t.Fatalf("%s, trial %d: no answer", name, trial)
			}
			for i := range got {
				if u := r.scatter.deviation * math.Sqrt(want.unit[i][i]); math.Abs(got[i]-want.beta[i]) > 1e-11*u {
					t.Fatalf("%s, trial %d, number %d: got %v, want %v", name, trial, i, got[i], want.beta[i])
				}
			}
		}
	}
}

// Sets of one mounting share one draw of all that does not belong to single readings.
func TestMountingSharesItsDraw(t *testing.T) {
	m := oracleJobs()["repeated"]
	m.Sets[0].U.Sag, m.Sets[3].U.Sag = 3000, 3000
	f, s, err := m.fit()
	if err != nil {
		t.Fatal(err)
	}
	r := newTrials(&m, &f, &s, rand.New(rand.NewPCG(1, 2)))
	stated := m.Sets[0].asStated()
	r.next()
	one, again, other := r.drawn[0], r.drawn[3], r.drawn[1]
	if one.law != again.law || one.droop != again.droop || one.sin != again.sin || one.cos != again.cos {
		t.Errorf("got %+v, want %+v", again, one)
	}
	if one.law == stated.law || one.droop == stated.droop || one.sin == 0 || one.sin == other.sin || one.noise == again.noise {
		t.Errorf("got %+v and %+v, want draws of their own", one, other)
	}
}

// A trial ends without an answer where the answer is more than can be reckoned with.
func TestAnswersBeyondNumbersFail(t *testing.T) {
	m := twoSweeps(5000)
	f, s, err := m.fit()
	if err != nil {
		t.Fatal(err)
	}
	r := newTrials(&m, &f, &s, rand.New(rand.NewPCG(1, 2)))
	for _, x := range []float64{math.NaN(), math.Inf(1), -2e15, 0} {
		r.gain.nominal[slopeZ] = x
		if _, ok := r.next(); ok != (x == 0) {
			t.Errorf("%v: answered %v", x, ok)
		}
	}
}

// A foot in line is moved by zero, not by a negative zero.
func TestNoNegativeZero(t *testing.T) {
	m := MonteCarlo{Feet: []Foot{{X: 300e6}}}
	if x := m.outputs()[firstFoot].of(0, 0); math.Signbit(x) {
		t.Errorf("got %v", x)
	}
}

// The errors of a set's equations are those of its readings times rows of an
// orthogonal matrix, so that independent normal errors of unit deviation stay what
// they are. It holds with any errors of angles, on which nothing here depends.
func TestEquationsKeepTheErrorsNormal(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	for name, m := range oracleJobs() {
		for i := range m.Sets {
			angles := make([]float64, len(m.Sets[i].Readings))
			for j := range angles {
				angles[j] = 0.3 * random.NormFloat64()
			}
			s := newSweep(m.Sets, i)
			rows := make([][2]float64, len(angles))
			for j := range rows {
				for k := range s.readings {
					s.readings[k].value = 0
				}
				s.readings[j].value = 1
				rows[j] = s.reduce(angles).rhs
			}
			var product [2][2]float64
			for _, r := range rows {
				for a := range r {
					for b := range r {
						product[a][b] += r[a] * r[b]
					}
				}
			}
			if len(rows) < 3 {
				continue // a set that has one equation only
			}
			for a := range product {
				for b := range product {
					want := 0.0
					if a == b {
						want = 1
					}
					if math.Abs(product[a][b]-want) > 1e-12 {
						t.Errorf("%s, set %d: %v, want one", name, i, product)
					}
				}
			}
		}
	}
}

// Where only readings and sag are uncertain the answer is a matrix times independent
// unit errors, and its covariance, exactly, that of first order.
func TestGainHasTheCovariance(t *testing.T) {
	m := twoSweeps(5000)
	m.Sets[0].Readings[2].U = 9000
	f, s, err := m.fit()
	if err != nil {
		t.Fatal(err)
	}
	r := newTrials(&m, &f, &s, nil)
	if r.gain == nil {
		t.Fatal("no gain for readings and sag alone")
	}
	var v matrix
	for i, set := range r.gain.sets {
		v.addSquare(set.noise[0])
		v.addSquare(set.noise[1])
		var droop [four]float64
		addTimes(&droop, mm(m.Sets[i].U.Sag), &set.onDroop)
		v.addSquare(droop)
	}
	want := f.Cov.v
	for i := range v {
		if math.Abs(r.gain.nominal[i]-s.beta[i]) > 1e-12*math.Sqrt(want[i][i]) {
			t.Errorf("number %d: %v, want %v", i, r.gain.nominal[i], s.beta[i])
		}
		for j := range v {
			if scale := math.Sqrt(want[i][i] * want[j][j]); math.Abs(v[i][j]-want[i][j]) > 1e-12*scale {
				t.Errorf("%d, %d: got %v, want %v", i, j, v[i][j], want[i][j])
			}
		}
	}
}

// With readings alone uncertain, d'V^-1 d of the four numbers has a chi-squared
// distribution with four degrees of freedom: F(x) = 1 - exp(-x/2) (1 + x/2). The
// distance of Kolmogorov and Smirnov beyond 2.69/sqrt(n) has a probability of 1e-6.
func TestReadingsGiveChiSquared(t *testing.T) {
	m := twoSweeps(5000)
	for i := range m.Sets {
		m.Sets[i].U.Sag = 0
	}
	b, err := m.Block(17, 3)
	if err != nil {
		t.Fatal(err)
	}
	root := b.fitted.Cov.v.root(&b.fitted.Cov.v)
	var squares []float64
	for k := range b.trials() {
		var z [four]float64 // L z = d
		sum := 0.0
		for i := range z {
			z[i] = b.numbers[i][k] - b.nominal[i]
			if i == offsetY || i == offsetZ {
				z[i] = mm(units.Length(z[i]))
			}
			for j := range i {
				z[i] -= root[i][j] * z[j]
			}
			z[i] /= root[i][i]
			sum += z[i] * z[i]
		}
		squares = append(squares, sum)
	}
	slices.Sort(squares)
	distance := 0.0
	for k, x := range squares {
		f := 1 - math.Exp(-x/2)*(1+x/2)
		distance = max(distance, f-float64(k)/float64(len(squares)), float64(k+1)/float64(len(squares))-f)
	}
	if limit := 2.69 / math.Sqrt(float64(len(squares))); distance > limit {
		t.Errorf("distance %v, want at most %v", distance, limit)
	}
}

// A block has the distribution that the long way gives: output by output, by the
// distance of Kolmogorov and Smirnov between two samples (beyond 2.69 sqrt(1/n + 1/m)
// with a probability of 1e-6), in sums and differences of the four numbers too, which
// see how they go together.
func TestBlocksAgreeWithTheLongWay(t *testing.T) {
	for name, m := range oracleJobs() {
		b, err := m.Block(23, 1)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		long := longWay(t, m)
		limit := 2.69 * math.Sqrt(1/float64(b.trials())+1/float64(long.trials()))
		column, other := make([]float64, b.trials()), make([]float64, long.trials())
		for i := range b.outputs {
			b.fill(column, i)
			long.fill(other, i)
			if d := apart(column, other); d > limit {
				t.Errorf("%s, output %d: distance %v, want at most %v", name, i, d, limit)
			}
		}
		for i := range four {
			for j := range i {
				for _, sign := range []float64{-1, 1} {
					one, other := 1/math.Sqrt(b.squares[i]), sign/math.Sqrt(b.squares[j])
					if d := apart(b.together(i, one, j, other), long.together(i, one, j, other)); d > limit {
						t.Errorf("%s, numbers %d and %d, %v: distance %v, want at most %v", name, i, j, sign, d, limit)
					}
				}
			}
		}
	}
}

// together returns one number times its scale and another one times its own.
func (b *Block) together(i int, one float64, j int, other float64) []float64 {
	sum := make([]float64, b.trials())
	for k := range sum {
		sum[k] = one*(b.numbers[i][k]-b.nominal[i]) + other*(b.numbers[j][k]-b.nominal[j])
	}
	return sum
}

// longWay fills a block with trials that draw each reading.
func longWay(tb testing.TB, m MonteCarlo) Block {
	tb.Helper()
	f, s, err := m.fit()
	if err != nil {
		tb.Fatal(err)
	}
	random := rand.New(rand.NewPCG(29, 31))
	r := newTrials(&m, &f, &s, random)
	b := newBlock(m, f, 1, 1)
	for range 4000 {
		deviation := r.scatter.draw(random)
		sets := r.drawProbes(random)
		for i := range sets {
			set := &sets[i]
			clock := about(random, 0, degrees(float64(set.U.Clock)))
			if first := r.sweeps[i].first; first != i {
				clock = units.Clock(r.drawn[first].sin)
			}
			r.drawn[i].sin = float64(clock) // where this test keeps it
			set.Readings = slices.Clone(set.Readings)
			for j := range set.Readings {
				reading := &set.Readings[j]
				reading.At += clock + about(random, 0, degrees(float64(set.U.Angle)))
				reading.Value += fromMM(deviation / set.weight(j) * random.NormFloat64())
			}
		}
		var drawn solution
		if err := drawn.solve(sets); err != nil {
			tb.Fatal(err)
		}
		target := r.target.draw(random)
		for i := range target {
			target[i] = drawn.beta[i] - target[i]
		}
		b.keep(target)
	}
	b.drawStations(random)
	return b
}

// apart returns the largest difference of two empirical distributions.
func apart(a, b []float64) (distance float64) {
	a, b = slices.Sorted(slices.Values(a)), slices.Sorted(slices.Values(b))
	j := 0
	for i, x := range a {
		for j < len(b) && b[j] <= x {
			j++
		}
		distance = max(distance, math.Abs(float64(i+1)/float64(len(a))-float64(j)/float64(len(b))))
	}
	return distance
}

// oracleJobs are jobs of every kind of error.
func oracleJobs() map[string]MonteCarlo {
	everything := func(u units.Length) MonteCarlo {
		m := twoSweeps(u)
		face := Set{Probe: Probe{Kind: NearFace, Carrier: Movable, Radius: 75e6}, Sag: -8000, U: Uncertainty{Reading: u, Sag: 2000, Radius: 6e6}, View: FromStationary}
		for i, v := range []units.Length{0, 40, 90, 70, 20, -10} {
			face.Readings = append(face.Readings, Reading{At: units.Clock(25 + 20*i*i), Value: v * 1000})
		}
		m.Sets = append(m.Sets, face)
		for i := range m.Sets {
			m.Sets[i].U.Clock, m.Sets[i].U.Angle = 0.05, 0.03
		}
		m.Sets[0].U.Station, m.Sets[1].U.Station = 5e6, 9e6
		return m
	}
	weighted := everything(4000)
	for i := range weighted.Sets {
		for j := range weighted.Sets[i].Readings {
			weighted.Sets[i].Readings[j].U = units.Length(2000 * (1 + (i+j)%4))
		}
	}
	repeated := everything(4000)
	repeated.Sets[0].Mounting = "rim"
	again := cloneSets(repeated.Sets[:1])[0]
	again.Readings = again.Readings[1:3] // which alone are singular
	repeated.Sets = append(repeated.Sets, again)
	shared := everything(4000)
	for i := range shared.Sets {
		shared.Sets[i].U.Angle = 0
	}
	short := everything(4000)
	for i := range short.Sets {
		for j := range short.Sets[i].Readings {
			short.Sets[i].Readings[j].At = units.Clock(10*j + 50*i)
		}
		short.Sets[i].U.Angle = 0.003
	}
	return map[string]MonteCarlo{
		"readings and sag": twoSweeps(5000), "from the scatter": twoSweeps(0), "from the scatter, with tapes": everything(0),
		"everything": everything(4000), "weights of their own": weighted, "all but angles": shared,
		"repeated": repeated, "short arcs": short,
	}
}

// Where the scatter is all that tells the uncertainty of readings, they are drawn
// about the fit, with no error of single angles beside it: that would count it
// twice. Where it is stated, they are drawn about what was read.
func TestScatterIsDrawnAboutTheFit(t *testing.T) {
	for _, u := range []units.Length{5000, 0} {
		m := twoSweeps(u)
		for i := range m.Sets {
			m.Sets[i].U.Angle = 0.01
		}
		f, s, err := m.fit()
		if err != nil {
			t.Fatal(err)
		}
		r := newTrials(&m, &f, &s, rand.New(rand.NewPCG(3, 4)))
		var again solution
		if err := again.solve([]Set{r.sweeps[0].set, r.sweeps[1].set}); err != nil {
			t.Fatal(err)
		}
		onFit, scattered := again.sum < 1e-20*s.sum, u == 0
		if onFit != scattered || (r.drawn[0].angles == nil) != scattered || (r.scatter.dof != 0) != scattered {
			t.Errorf("u %v: squares %v of %v left, angles %v, scatter %v", u, again.sum, s.sum, r.drawn[0].angles, r.scatter)
		}
		for i := range s.beta {
			if d := again.beta[i] - s.beta[i]; math.Abs(d) > 1e-12 {
				t.Errorf("u %v: the fit moves by %v", u, d)
			}
		}
	}
}

// Gram and Schmidt's way through a system gives what plane rotations give, and tells
// the same of what it sees, however much alike two columns are. Entries are small
// enough for the sum of all squares to be four at most, as in a fit.
func TestTriangleAgainstRotations(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(4, 9).Draw(t, "equations")
		apart := rapid.SampledFrom([]float64{1, 1e-3, 1e-6, 1e-9, 1e-14}).Draw(t, "how much two columns differ")
		number := rapid.Float64Range(-0.1, 0.1)
		s := make(system, n)
		var work [four * (four + 1)]float64
		common := lsq.In(work[:], four)
		for i := range s {
			for k := range s[i] {
				s[i][k] = number.Draw(t, "entry")
			}
			s[i][slopeY] = s[i][offsetY] + apart*s[i][slopeY]
			row := s[i]
			common.Add(row[:four], row[four])
		}
		var want solution
		seen := law{1, 1}
		sees := want.see(&common, seen.fullTurn()) == nil
		r := s.triangle()
		if want.condition > 1e11 && want.condition < 1e13 {
			return // it may be told either way
		}
		if got := r.sees(&seen); got != sees {
			t.Fatalf("sees: got %v, want %v, condition %v", got, sees, want.condition)
		}
		if !sees {
			return
		}
		common.Solve(want.beta[:])
		size := 1.0
		for _, x := range want.beta {
			size = max(size, math.Abs(x))
		}
		for i, x := range r.solve() { // with a residual the condition counts twice
			if math.Abs(x-want.beta[i]) > 1e-14*want.condition*want.condition*size {
				t.Errorf("number %d: got %v, want %v, condition %v", i, x, want.beta[i], want.condition)
			}
		}
	})
}
