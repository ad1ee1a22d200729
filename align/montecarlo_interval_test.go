package align

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// Order statistics told by hand, from JCGM 101:2008, 7.7: with n = 20 and p =
// 0.9, q = 18 and r = 1; with n = 9 and p = 0.5, pn = 4.5 gives q = 5, and r = 2.
func TestIntervalsByHand(t *testing.T) {
	count := make([]float64, 20) // 1, 2, ... 19, 1000
	for i := range count {
		count[i] = float64(i + 1)
	}
	count[19] = 1000
	rows := []struct {
		name                string
		rising              []float64
		p                   float64
		symmetric, shortest [2]float64
	}{
		{"n-q even", count, 0.9, [2]float64{1, 19}, [2]float64{1, 19}},
		{"pn is half whole and n-q even", []float64{-90, -80, 0, 1, 2, 3, 4, 5, 70}, 0.5, [2]float64{-80, 4}, [2]float64{0, 5}},
		{"n-q odd", count, 0.85, [2]float64{2, 19}, [2]float64{1, 18}},
		{"one outside", []float64{-9, 1, 2, 3}, 0.75, [2]float64{-9, 3}, [2]float64{-9, 3}},
		{"short at the upper end", []float64{-9, -8, 1, 2, 3}, 0.4, [2]float64{-8, 2}, [2]float64{1, 3}},
	}
	for _, row := range rows {
		var ends tails
		ends.take(row.rising, len(row.rising)-within(len(row.rising), row.p))
		low, high := ends.symmetric()
		if got := [2]float64{low, high}; got != row.symmetric {
			t.Errorf("%s: symmetric %v, want %v", row.name, got, row.symmetric)
		}
		low, high = ends.shortest()
		if got := [2]float64{low, high}; got != row.shortest {
			t.Errorf("%s: shortest %v, want %v", row.name, got, row.shortest)
		}
	}
}

// JCGM 101:2008, 9.2 (recomputed): the 95 % half width of a sum of four standard
// normal numbers is 3.91992797, that of four rectangular ones of unit deviation
// 3.87940674. The density at the end of the first is 0.0292, so that of a million
// trials the end has a standard error of 0.0054; of the second it is less.
func TestSumOfFour(t *testing.T) {
	random := rand.New(rand.NewPCG(9, 2))
	rows := []struct {
		name string
		draw func() float64
		want float64
	}{
		{"normal", random.NormFloat64, 3.91992797},
		{"rectangular", func() float64 { return math.Sqrt(3) * (2*random.Float64() - 1) }, 3.87940674134782},
	}
	const n, tolerance = 1_000_000, 0.0054 * 4
	for _, row := range rows {
		sums := make([]float64, n)
		for i := range sums {
			sums[i] = row.draw() + row.draw() + row.draw() + row.draw()
		}
		var ends tails
		ends.take(sums, n-within(n, 0.95))
		low, high := ends.symmetric()
		if math.Abs(high-row.want) > tolerance || math.Abs(low+row.want) > tolerance {
			t.Errorf("%s: symmetric %.4f to %.4f, want +/-%.4f", row.name, low, high, row.want)
		}
		if low, high = ends.shortest(); math.Abs((high-low)/2-row.want) > tolerance || high-low > 2*row.want+tolerance {
			t.Errorf("%s: shortest %.4f to %.4f, want half of it %.4f", row.name, low, high, row.want)
		}
	}
}

// The tails of any numbers are those of all of them in order: few and
// many, alike and apart, in order already, with the sample of the bounds misled.
func TestTails(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 4))
	draws := map[string]func(i int) float64{
		"normal":   func(int) float64 { return random.NormFloat64() },
		"two":      func(int) float64 { return float64(random.IntN(2)) },
		"all one":  func(int) float64 { return -3 },
		"rising":   func(i int) float64 { return float64(i) },
		"misled":   func(i int) float64 { return float64(i % 64) }, // the sample sees zeros alone
		"misled 2": func(i int) float64 { return -float64(i % 64) },
	}
	var used tails // again and again, as in a summary
	for name, draw := range draws {
		for _, n := range []int{2, 3, 130, 1064, 10_017} {
			all := make([]float64, n)
			for i := range all {
				all[i] = draw(i)
			}
			rising := slices.Sorted(slices.Values(all))
			for _, k := range []int{1, n / 20, n / 7, n / 3, n - 1} {
				k = max(k, 1)
				for _, got := range []*tails{&used, {}} {
					got.take(all, k)
					if !slices.Equal(got.low, rising[:k]) || !slices.Equal(got.high, rising[n-k:]) {
						t.Errorf("%s, %d, %d at each end: got %v and %v", name, n, k, got.low, got.high)
					}
				}
			}
		}
	}
}

// The mean and the variance of a gamma distribution are both its shape, and the
// third central moment is twice it.
func TestGamma(t *testing.T) {
	const n = 200_000
	for _, shape := range []float64{0.05, 0.5, 1, 2.5, 40} {
		random := rand.New(rand.NewPCG(1, 1))
		var sum, squares float64
		for range n {
			d := gamma(random, shape) - shape
			sum += d
			squares += d * d
		}
		mean, variance := sum/n, squares/n
		if e := 5 * math.Sqrt(shape/n); math.Abs(mean) > e {
			t.Errorf("shape %v: mean off by %v, want within %v", shape, mean, e)
		}
		// Var(d^2) = 2 a^2 + 6 a: the fourth moment is 3 a^2 + 6 a.
		if e := 5 * math.Sqrt((2*shape*shape+6*shape)/n); math.Abs(variance-shape) > e {
			t.Errorf("shape %v: variance %v, want within %v", shape, variance, e)
		}
	}
}

// The random numbers that blocks rest on are those of the Go that this was
// written with (1.26): a change would change results within their errors.
func TestRandomNumbersStay(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for i, want := range normals {
		if got := random.NormFloat64(); got != want {
			t.Errorf("number %d: got %v, want %v", i, got, want)
		}
	}
}

// Streams with neighbouring numbers have nothing to do with each other: their
// correlation is zero within its standard error 1/sqrt(n).
func TestStreamsAreIndependent(t *testing.T) {
	const n = 100_000
	for seed := range uint64(3) {
		for _, apart := range []uint64{1, 2, 1 << 20} {
			a, b := rand.New(rand.NewPCG(seed, 0)), rand.New(rand.NewPCG(seed, apart))
			sum := 0.0
			for range n {
				sum += a.NormFloat64() * b.NormFloat64()
			}
			if r := sum / n; math.Abs(r) > 4/math.Sqrt(n) {
				t.Errorf("seed %d, %d apart: correlation %v", seed, apart, r)
			}
		}
	}
}

// A trial with only readings and sag leaves nothing behind, one with everything
// neither.
func TestTrialsDoNotAllocate(t *testing.T) {
	all := twoSweeps(5000)
	for i := range all.Sets {
		all.Sets[i].U.Station, all.Sets[i].U.Clock, all.Sets[i].U.Angle = 1e6, 0.01, 0.01
	}
	for _, m := range []MonteCarlo{twoSweeps(5000), twoSweeps(0), all} {
		f, s, err := m.fit()
		if err != nil {
			t.Fatal(err)
		}
		r := newTrials(&m, &f, &s, rand.New(rand.NewPCG(3, 4)))
		if n := testing.AllocsPerRun(100, func() { _, _ = r.next() }); n != 0 {
			t.Errorf("a trial allocates %v times", n)
		}
	}
}

// Trials without an answer are counted; where none has one, there is no summary.
func TestNothingButFailures(t *testing.T) {
	m := twoSweeps(5000)
	f, _, err := m.fit()
	if err != nil {
		t.Fatal(err)
	}
	b := newBlock(m, f, 1, 1)
	b.failed = 10
	_, err = Summarise(0.95, b)
	faults := units.Faults(err)
	if len(faults) != 1 || faults[0].Code != units.Unseen || faults[0].Path != "/blocks" || faults[0].Value != "10" {
		t.Errorf("got %v", err)
	}
}

// The root of a covariance that is singular gives it back.
func TestMatrixRoot(t *testing.T) {
	var m matrix
	for _, d := range [][four]float64{{1, 2e-3, 0.5, 0}, {0.1, -1e-3, 0, 0}} { // of rank two
		m.addSquare(d)
	}
	l := m.root(&m)
	for i := range m {
		for j := range m {
			got := 0.0
			for k := range m {
				got += l[i][k] * l[j][k]
			}
			if scale := math.Sqrt(m[i][i] * m[j][j]); math.Abs(got-m[i][j]) > 1e-6*scale {
				t.Errorf("%d, %d: got %v, want %v", i, j, got, m[i][j])
			}
			if j > i && l[i][j] != 0 {
				t.Errorf("%d, %d: %v above the diagonal", i, j, l[i][j])
			}
		}
	}
}

// twoSweeps is a job of two rims whose readings scatter.
func twoSweeps(u units.Length) MonteCarlo {
	sweep := func(carrier Shaft, x units.Length, values ...units.Length) Set {
		s := Set{Probe: Probe{Kind: Rim, Carrier: carrier, Station: x}, Sag: 20_000, U: Uncertainty{Reading: u, Sag: 3000}}
		for i, v := range values {
			s.Readings = append(s.Readings, Reading{At: units.Clock(80 * i), Value: v * 1000})
		}
		return s
	}
	return MonteCarlo{
		Sets: []Set{
			sweep(Stationary, 40e6, 0, 120, 333, 380, 150),
			sweep(Movable, -50e6, 0, -90, -280, -330, -110),
		},
		Feet:     []Foot{{Name: "inboard", X: 300e6, U: 1e6}, {Name: "outboard", X: 900e6, U: 1e6}},
		Coupling: Coupling{Span: 400e6},
	}
}

var normals = [...]float64{0.37944549835531083, 0.07473804659119399, 0.20006841200604142, -1.1253144115495104, -0.4005883316435388}

// Sorted digit by digit is sorted, whatever the numbers; and again with the memory of
// a longer list.
func TestSorter(t *testing.T) {
	var s sorter
	rapid.Check(t, func(t *rapid.T) {
		x := rapid.SliceOfN(rapid.OneOf(rapid.Float64(), rapid.Float64Range(-2, 2), rapid.SampledFrom([]float64{0, math.Inf(-1), math.Inf(1), -1, 1, math.MaxFloat64, 5e-324, -5e-324})), 0, 40).Draw(t, "numbers")
		want := slices.Sorted(slices.Values(x))
		if s.sort(x); !slices.Equal(x, want) {
			t.Errorf("got %v, want %v", x, want)
		}
	})
}
