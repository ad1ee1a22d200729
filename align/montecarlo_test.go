package align_test

import (
	"fmt"
	"math"
	"slices"
	"sync"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// wholeJob is one with every kind of uncertainty, small enough for propagation
// to first order to hold.
func wholeJob(tb fataler) align.MonteCarlo {
	tb.Helper()
	sets := read(tb, caseA, []align.Set{rim(align.Stationary, 40), rim(align.Stationary, 40), face(align.Stationary, 75)}, even(8, 20, 300)...)
	for i := range sets {
		sets[i].U = align.Uncertainty{Reading: 2 * um, Sag: 1 * um, Clock: 0.002, Angle: 0.003}
	}
	sets[0].U.Station, sets[1].U.Station = 0.5*mm, 0.5*mm
	sets[0].Mounting, sets[1].Mounting = "rim", "rim"
	sets[2].U.Radius = 0.3 * mm
	sets[0].Readings[3].Value += 8 * um // so that readings miss the fit, and pull at it
	target, err := align.NewCovariance(align.Stated, line(4e-3, 8e-6, 6e-3, 1e-5), [4][4]float64{{1, 0.5, 0, 0}, {0.5, 1, 0, 0}, {0, 0, 1, -0.7}, {0, 0, -0.7, 1}})
	if err != nil {
		tb.Fatalf("NewCovariance: %v", err)
	}
	return align.MonteCarlo{
		Sets:     sets,
		Target:   align.Estimate{Value: line(-0.05, 1e-4, 0.1, 2e-4), Cov: target},
		Feet:     []align.Foot{{Name: "inboard", X: 300 * mm, U: 4 * mm}, {Name: "outboard", X: 900 * mm, U: 9 * mm}},
		Coupling: align.Coupling{Span: 400 * mm},
	}
}

// run runs the first blocks of a job one after another.
func run(tb fataler, m align.MonteCarlo, seed uint64, blocks int) []align.Block {
	tb.Helper()
	var list []align.Block
	for i := range blocks {
		b, err := m.Block(seed, uint32(i))
		if err != nil {
			tb.Fatalf("Block: %v", err)
		}
		list = append(list, b)
	}
	return list
}

func summary(tb fataler, p float64, blocks ...align.Block) align.Summary {
	tb.Helper()
	s, err := align.Summarise(p, blocks...)
	if err != nil {
		tb.Fatalf("Summarise: %v", err)
	}
	return s
}

// nearNormal compares a distribution with a normal one of 100 000 trials: the
// standard error of the mean is u/sqrt(n), of the deviation u/sqrt(2n), of an end
// of the 95 % interval 2.67 u/sqrt(n) (its probability density is 0.0584/u); five
// of each are let pass, and what second order brings in.
func nearNormal[Q units.Length | units.Slope](tb fataler, what string, d align.Distribution[Q], mean, u Q, trials int) {
	tb.Helper()
	const second = 1e-3
	e := 5/math.Sqrt(float64(trials)) + second
	near(tb, what+": mean", d.Mean, mean, u*Q(e))
	near(tb, what+": deviation", d.Deviation, u, u*Q(e))
	for _, end := range []Q{mean - d.Symmetric.Low, d.Symmetric.High - mean} {
		near(tb, what+": half width", end, 1.959964*u, u*Q(2.67*e))
	}
	near(tb, what+": shortest", d.Shortest.High-d.Shortest.Low, 2*1.959964*u, u*Q(2*2.67*e))
	if d.Shortest.High-d.Shortest.Low > d.Symmetric.High-d.Symmetric.Low {
		tb.Errorf("%s: the shortest interval is not the shortest", what)
	}
}

// Where errors are small the simulation agrees with propagation to first order:
// every input, both planes, feet and flex planes. The two share the fit, and not
// one derivative.
func TestMonteCarloAgreesWithFirstOrder(t *testing.T) {
	noAngle := wholeJob(t)
	for i := range noAngle.Sets {
		noAngle.Sets[i].U.Angle, noAngle.Sets[i].U.Clock, noAngle.Sets[i].U.Radius, noAngle.Sets[i].U.Station = 0, 0, 0, 0
	}
	fromStationary := wholeJob(t)
	for i := range fromStationary.Sets {
		fromStationary.Sets[i].View = align.FromStationary
	}
	for name, m := range map[string]align.MonteCarlo{"all": wholeJob(t), "readings and sag": noAngle, "seen from the other end": fromStationary} {
		t.Run(name, func(t *testing.T) {
			off := mustFit(t, m.Sets...).Minus(m.Target)
			s := summary(t, 0.95, run(t, m, 7, 10)...)
			if s.Trials != 10*align.TrialsPerBlock || s.Failed != 0 || s.Warnings != nil || s.Cov.Basis != align.Stated {
				t.Errorf("%d trials, %d failed, %v, basis %v", s.Trials, s.Failed, s.Warnings, s.Cov.Basis)
			}
			u := off.Cov.Standard()
			nearNormal(t, "offset y", s.Offset.Horizontal, off.Value.Horizontal.Offset, u.Horizontal.Offset, s.Trials)
			nearNormal(t, "offset z", s.Offset.Vertical, off.Value.Vertical.Offset, u.Vertical.Offset, s.Trials)
			nearNormal(t, "slope y", s.Slope.Horizontal, off.Value.Horizontal.Slope, u.Horizontal.Slope, s.Trials)
			nearNormal(t, "slope z", s.Slope.Vertical, off.Value.Vertical.Slope, u.Vertical.Slope, s.Trials)
			nearMatrix(t, "covariance", matrix(s.Cov), matrix(off.Cov), 5*math.Sqrt2/math.Sqrt(float64(s.Trials))+1e-3)
			moves, err := off.Corrections(m.Feet...)
			if err != nil {
				t.Fatal(err)
			}
			for i, f := range s.Feet {
				nearNormal(t, f.Foot.Name+" y", f.Horizontal, moves[i].By.Horizontal, moves[i].U.Horizontal, s.Trials)
				nearNormal(t, f.Foot.Name+" z", f.Vertical, moves[i].By.Vertical, moves[i].U.Vertical, s.Trials)
			}
			stationary, movable, _ := m.Coupling.FlexTilts(off.Value)
			us, um, _ := m.Coupling.FlexUncertainty(off.Cov)
			nearNormal(t, "stationary y", s.Stationary.Horizontal, stationary.Horizontal, us.Horizontal, s.Trials)
			nearNormal(t, "stationary z", s.Stationary.Vertical, stationary.Vertical, us.Vertical, s.Trials)
			near(t, "stationary, both planes", s.Stationary.Size.Mean, stationary.Size(), us.Horizontal+us.Vertical)
			nearNormal(t, "movable y", s.Movable.Horizontal, movable.Horizontal, um.Horizontal, s.Trials)
			nearNormal(t, "movable z", s.Movable.Vertical, movable.Vertical, um.Vertical, s.Trials)
		})
	}
}

// JCGM 101:2008, 9.2.2, as a job: the vertical move of a foot is the sum of four
// normal errors of 0.01 mm each, of the target, of the foot's station, of the
// rim's station, and of the readings, which nothing but the first three and these
// make. The rim stands on the foot, the slope of 1 mm/m is seen by a face that is
// as good as exact, so its 95 % half width is 0.0391992797 mm. The standard error
// of an end is that of TestSumOfFour, in hundredths of a millimetre.
func TestFourErrorsAlike(t *testing.T) {
	sets := read(t, line(0, 0, 0, 1e-3), []align.Set{rim(align.Stationary, 500), face(align.Stationary, 100)}, quarters...)
	sets[0].U = align.Uncertainty{Reading: length(0.01 * math.Sqrt2), Station: 10 * mm}
	sets[1].U = align.Uncertainty{Reading: 0.1 * units.Nanometre}
	u, err := align.NewCovariance(align.Stated, line(0, 0, 0.01, 0), uncorrelated)
	if err != nil {
		t.Fatal(err)
	}
	m := align.MonteCarlo{Sets: sets, Target: align.Estimate{Cov: u}, Feet: []align.Foot{{X: 500 * mm, U: 10 * mm}}}
	s := summary(t, 0.95, run(t, m, 5, 20)...)
	got, e := s.Feet[0].Vertical, length(0.01*0.0054*math.Sqrt(5)*4)
	near(t, "below", -500*um-got.Symmetric.Low, length(0.0391992797), e)
	near(t, "above", got.Symmetric.High+500*um, length(0.0391992797), e)
}

// At zero misalignment the length of the offset has a Rayleigh distribution: mean
// u sqrt(pi/2) = 1.2533 u, 95 % symmetric interval u sqrt(-2 ln(1 -/+ 0.95)/2)) =
// 0.22502 u to 2.71620 u. To first order the length is zero and has no
// derivative; the numbers are derived here from the distribution.
func TestLengthAtNothing(t *testing.T) {
	sets := state(read(t, align.Centreline{}, []align.Set{rim(align.Stationary, 0), face(align.Stationary, 75)}, quarters...), 10*um)
	s := summary(t, 0.95, run(t, align.MonteCarlo{Sets: sets}, 1, 20)...)
	u := length(0.01 / math.Sqrt2)
	n := math.Sqrt(float64(s.Trials))
	near(t, "mean", s.Offset.Size.Mean, 1.2533141*u, 5*0.6551*u/units.Length(n))
	near(t, "deviation", s.Offset.Size.Deviation, 0.6551364*u, 5*0.6551*u/units.Length(n))
	near(t, "low", s.Offset.Size.Symmetric.Low, 0.2250170*u, 5*0.72*u/units.Length(n))  // density 0.219
	near(t, "high", s.Offset.Size.Symmetric.High, 2.7162030*u, 5*2.3*u/units.Length(n)) // density 0.0679
	if s.Offset.Size.Shortest.Low >= s.Offset.Size.Symmetric.Low {
		t.Errorf("the shortest interval of a skewed quantity is the symmetric one: %v", s.Offset.Size.Shortest)
	}
	slope := units.Slope(2 * 0.01 / math.Sqrt2 / 150)
	near(t, "slope", s.Slope.Size.Mean, 1.2533141*slope, 5*0.6551*slope/units.Slope(n))
	if s.Feet != nil || s.Stationary != nil || s.Movable != nil {
		t.Error("outputs that nobody asked for")
	}
}

// A clock that is off by delta turns an offset W: w = W (sin, cos)(delta). For a
// normal delta of deviation v the mean height is W exp(-v^2/2) and its deviation
// W (1 - exp(-v^2))/sqrt 2, where first order has W and zero (derived here).
func TestClockOnABigOffset(t *testing.T) {
	const v = 0.2
	sets := read(t, line(0, 0, 2, 0), []align.Set{rim(align.Stationary, 0), face(align.Stationary, 75)}, quarters...)
	for i := range sets {
		sets[i].U = align.Uncertainty{Reading: 1 * units.Nanometre, Clock: v}
	}
	s := summary(t, 0.95, run(t, align.MonteCarlo{Sets: sets}, 3, 20)...)
	n := math.Sqrt(float64(s.Trials))
	mean, deviation := 2*math.Exp(-v*v/2), 2*(1-math.Exp(-v*v))/math.Sqrt2
	near(t, "mean", inMM(s.Offset.Vertical.Mean), mean, 5*deviation/n)
	near(t, "deviation", inMM(s.Offset.Vertical.Deviation), deviation, 5*2*deviation/n) // a squared normal has a kurtosis of 15: sqrt(14)/2 < 2
	across := 2 * math.Sqrt((1-math.Exp(-2*v*v))/2)
	near(t, "across", inMM(s.Offset.Horizontal.Deviation), across, 5*across/n)
	if high := inMM(s.Offset.Vertical.Symmetric.High); high > 2+1e-5 {
		t.Errorf("an offset of 2 mm cannot stand %v mm high", high)
	}
	near(t, "first order", inMM(mustFit(t, sets...).Cov.Standard().Vertical.Offset), 0, 1e-5)
}

// Each input alone, by hand: a line of 2 mm/m that stands level with the other at x = 0. A face
// of 75 mm that is off by 1.5 mm, a fiftieth, sees a slope off by as much; a rim that is off by
// 1 mm an offset off by 2 um. Both change what readings mean, and not only the readings.
func TestOneUncertaintyAlone(t *testing.T) {
	job := func(tell func(rim, face *align.Uncertainty)) align.Summary {
		sets := read(t, line(0, 0, 0, 2e-3), []align.Set{rim(align.Stationary, 0), face(align.Stationary, 75)}, quarters...)
		for i := range sets {
			sets[i].U.Reading = 1 * units.Nanometre
		}
		tell(&sets[0].U, &sets[1].U)
		return summary(t, 0.95, run(t, align.MonteCarlo{Sets: sets}, 3, 2)...)
	}
	const e = 5 / 200.0 // sqrt(2n) of 20 000
	s := job(func(_, face *align.Uncertainty) { face.Radius = 1.5 * mm })
	near(t, "radius of the face", s.Slope.Vertical.Deviation, 2e-3/50, 2e-3/50*e)
	s = job(func(rim, _ *align.Uncertainty) { rim.Station = mm })
	near(t, "station of the rim", inMM(s.Offset.Vertical.Deviation), 2e-3, 2e-3*e)
}

// The readings of one mounting share one tape: repeats do not average it out.
func TestMonteCarloMounting(t *testing.T) {
	deviation := func(mounting string) float64 {
		sets := read(t, line(0, 0, 0, 2e-3), []align.Set{rim(align.Stationary, 0), rim(align.Stationary, 0), face(align.Stationary, 75)}, quarters...)
		for i := range sets {
			sets[i].U.Reading = 1 * units.Nanometre
		}
		sets[0].U.Station, sets[1].U.Station = mm, mm
		sets[0].Mounting, sets[1].Mounting = mounting, mounting
		s := summary(t, 0.95, run(t, align.MonteCarlo{Sets: sets}, 3, 2)...)
		return inMM(s.Offset.Vertical.Deviation)
	}
	const e = 5 / 200.0 // sqrt(2n) of 20 000
	near(t, "one mounting", deviation("rim"), 2e-3, 2e-3*e)
	near(t, "two", deviation(""), 2e-3/math.Sqrt2, 2e-3*e)
}

// Scatter with few degrees of freedom gives a t distribution (JCGM 101:2008,
// 6.4.9). The standard error of an end is sqrt(0.025*0.975/n) over the density
// there: 0.0108 at 4.303 for two degrees of freedom, 0.0392 at 2.262 for nine.
func TestScatterGivesT(t *testing.T) {
	rows := []struct {
		readings     int
		density, dof float64
		basis        align.Basis
	}{{4, 0.0108, 2, align.Unknown}, {8, 0.0392, 10, align.Scatter}}
	for _, row := range rows {
		t.Run(fmt.Sprint(row.readings), func(t *testing.T) {
			sets := read(t, caseA, reverse(), even(row.readings, 0, 360)...)
			for i := range sets {
				for j := range sets[i].Readings {
					sets[i].Readings[j].Value += units.Length(5 * math.Cos(float64(7*j*j+3*i)) * float64(um))
				}
			}
			f := mustFit(t, sets...)
			if f.Cov.DoF != row.dof {
				t.Fatalf("%v degrees of freedom", f.Cov.DoF)
			}
			m := align.MonteCarlo{Sets: sets, Feet: []align.Foot{{X: 700 * mm}}}
			check := func(s align.Summary) {
				half, err := f.Expanded(0.95)
				if err != nil {
					t.Fatal(err)
				}
				u, e := f.Cov.Standard().Vertical.Offset, units.Length(5*math.Sqrt(0.025*0.975/float64(s.Trials))/row.density)
				near(t, "below", f.Value.Vertical.Offset-s.Offset.Vertical.Symmetric.Low, half.Vertical.Offset, u*e)
				near(t, "above", s.Offset.Vertical.Symmetric.High-f.Value.Vertical.Offset, half.Vertical.Offset, u*e)
				if s.Cov.Basis != row.basis || math.IsNaN(float64(s.Offset.Vertical.Deviation)) != (row.basis == align.Unknown) {
					t.Errorf("basis %v, deviation %v", s.Cov.Basis, s.Offset.Vertical.Deviation)
				}
				if row.dof > 4 { // the kurtosis of t is finite then
					near(t, "deviation", s.Offset.Vertical.Deviation, u*units.Length(math.Sqrt(row.dof/(row.dof-2))), 0.02*u)
				}
			}
			check(summary(t, 0.95, run(t, m, 11, 20)...))

			// The same out of a target whose covariance comes from that scatter.
			exact := state(read(t, align.Centreline{}, reverse(), quarters...), 0.01*units.Nanometre)
			m = align.MonteCarlo{Sets: exact, Target: f.Times(-1)}
			check(summary(t, 0.95, run(t, m, 12, 20)...))
		})
	}
}

// What is stated beside a scatter stays normal in a target: 0.1 of a normal number
// and 0.01 of one with a t distribution of one degree of freedom (Cauchy) hold half
// of their sum within 0.07340, with a density of 2.88 there. Derived here: the mean of
// Cauchy's distribution function over the normal one, by 40 001 equal steps. All of
// it from the scatter would be 0.1005, all of it normal 0.0678.
func TestTargetScatterInPart(t *testing.T) {
	scatter, err := align.NewCovariance(align.Scatter, line(0, 0, 0.01, 0), uncorrelated)
	if err != nil {
		t.Fatal(err)
	}
	scatter.DoF = 1
	stated, err := align.NewCovariance(align.Stated, line(0, 0, 0.1, 0), uncorrelated)
	if err != nil {
		t.Fatal(err)
	}
	target := align.Estimate{Cov: scatter}.Plus(align.Estimate{Cov: stated})
	exact := state(read(t, align.Centreline{}, reverse(), quarters...), 0.01*units.Nanometre)
	s := summary(t, 0.5, run(t, align.MonteCarlo{Sets: exact, Target: target}, 2, 10)...)
	half := inMM(s.Offset.Vertical.Symmetric.High-s.Offset.Vertical.Symmetric.Low) / 2
	near(t, "half width", half, 0.07340, 5*math.Sqrt(0.25*0.75/float64(s.Trials))/2.88)
	if !math.IsNaN(float64(s.Offset.Vertical.Mean)) {
		t.Errorf("one degree of freedom has a mean: %v", s.Offset.Vertical.Mean)
	}
}

// Bits do not depend on which blocks run when and beside which, nor on the order
// in which they are handed over; nor are blocks changed by summing them up.
func TestBlocksInAnyOrder(t *testing.T) {
	m := wholeJob(t)
	want := run(t, m, 42, 6)
	blocks := make([]align.Block, 6)
	var wait sync.WaitGroup
	for i := range blocks {
		wait.Go(func() { blocks[5-i], _ = m.Block(42, uint32(i)) })
	}
	wait.Wait()
	first := summary(t, 0.9, want...)
	for range 2 {
		if diff := cmp.Diff(first, summary(t, 0.9, blocks...), openly); diff != "" {
			t.Fatalf("in another order:\n%s", diff)
		}
	}
	if !slices.Equal(first.Blocks, []uint32{0, 1, 2, 3, 4, 5}) || first.Seed != 42 {
		t.Errorf("blocks %v, seed %d", first.Blocks, first.Seed)
	}
	one, other := summary(t, 0.9, want[0]), summary(t, 0.9, want[1])
	if one.Offset.Vertical.Mean == other.Offset.Vertical.Mean {
		t.Error("two blocks are alike")
	}
	reseeded, err := m.Block(43, 0)
	if err != nil || summary(t, 0.9, reseeded).Offset == one.Offset {
		t.Errorf("two seeds are alike, %v", err)
	}
}

// A later change of the caller's sets does not reach a block.
func TestBlockKeepsItsJob(t *testing.T) {
	m := wholeJob(t)
	a := run(t, m, 1, 1)[0]
	m.Sets[0].Readings[0].Value += mm
	b, err := m.Block(1, 1)
	if err != nil {
		t.Fatal(err)
	}
	_, err = align.Summarise(0.95, a, b)
	checkFault(t, err, units.Conflict, "/blocks/1")
}

// A radius drawn at or below zero ends a trial: with u = R, 0.158655 of them.
func TestFailedTrialsAreCounted(t *testing.T) {
	m := wholeJob(t)
	m.Sets[2].U.Radius = m.Sets[2].Probe.Radius
	s := summary(t, 0.95, run(t, m, 1, 2)...)
	near(t, "share", float64(s.Failed)/float64(s.Trials), 0.158655, 5*math.Sqrt(0.158655*0.841345/20000))
	if s.Trials != 20000 || len(s.Warnings) != 1 || s.Warnings[0].Code != units.Suspect || s.Warnings[0].Path != "/sets" || s.Warnings[0].Value != fmt.Sprint(s.Failed) {
		t.Errorf("%d trials, warnings %v", s.Trials, s.Warnings)
	}
	roundTrip(t, s)
}

func TestSummaryRoundTrips(t *testing.T) {
	m := wholeJob(t)
	roundTrip(t, m)
	roundTrip(t, summary(t, 0.95, run(t, m, math.MaxUint64, 1)...))
	for i := range m.Sets { // t with three readings too many: no deviation
		m.Sets[i] = align.Set{Probe: m.Sets[i].Probe, Readings: m.Sets[i].Readings[1:4]}
	}
	s := summary(t, 0.95, run(t, m, 0, 1)...)
	if !math.IsNaN(float64(s.Slope.Size.Deviation)) {
		t.Errorf("deviation %v", s.Slope.Size.Deviation)
	}
	roundTrip(t, s)
	var d align.Distribution[units.Length]
	if err := d.UnmarshalJSON([]byte(`{"mean":"1 furlong"}`)); err == nil || d != (align.Distribution[units.Length]{}) {
		t.Errorf("got %v, %v", d, err)
	}
}

// Any job: the mean and the deviation of all outputs are those of first order
// within the error of the simulation, and what holds of any numbers holds.
func TestAnyJob(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		scene := drawScene(t, everyKind)
		u := align.Uncertainty{Reading: units.Length(rapid.Float64Range(0.1, 3).Draw(t, "u")) * um}
		if rapid.Bool().Draw(t, "clock") {
			u.Clock, u.Angle = 1e-3, 1e-3
		}
		for i := range scene.sets {
			scene.sets[i].U = u
		}
		foot := align.Foot{X: length(rapid.Float64Range(-900, 900).Draw(t, "foot"))}
		m := align.MonteCarlo{Sets: scene.sets, Target: align.Exact(drawLine(t)), Feet: []align.Foot{foot}}
		f, err := align.Fit(m.Sets...)
		if err != nil || f.Condition > 1e4 {
			t.Skip("seen too badly for first order")
		}
		s := summary(t, 0.9, run(t, m, rapid.Uint64().Draw(t, "seed"), 1)...)
		off := f.Minus(m.Target)
		moves, err := off.Corrections(foot)
		if err != nil {
			t.Fatal(err)
		}
		e := units.Length(6/math.Sqrt(2*align.TrialsPerBlock) + 0.02)
		near(t, "deviation at the foot", s.Feet[0].Vertical.Deviation, moves[0].U.Vertical, moves[0].U.Vertical*e)
		near(t, "mean at the foot", s.Feet[0].Horizontal.Mean, moves[0].By.Horizontal, moves[0].U.Horizontal*2*e)
		// Without an error of the foot, the mean move is that of the mean line.
		mean := s.Offset.Vertical.Mean + s.Slope.Vertical.Mean.Over(foot.X)
		near(t, "a line", s.Feet[0].Vertical.Mean, -mean, 1e-9*(max(mean, -mean)+moves[0].U.Vertical+mm))
		for _, d := range []align.Distribution[units.Length]{s.Offset.Horizontal, s.Offset.Vertical, s.Offset.Size, s.Feet[0].Vertical} {
			if d.Shortest.High-d.Shortest.Low > d.Symmetric.High-d.Symmetric.Low || d.Symmetric.Low > d.Mean || d.Mean > d.Symmetric.High {
				t.Errorf("%+v", d)
			}
		}
	})
}

// BenchmarkMonteCarlo counts trials, each with the mean and the deviation of all its
// outputs: 14 of a job in four quarters with four feet, 16 of the others. "blocks"
// are run and kept, "summaries" are of twenty with both intervals of 0.95, run in as
// many goroutines as the name says.
func BenchmarkMonteCarlo(b *testing.B) {
	for _, row := range benchJobs(b) {
		for _, cores := range []int{1, 2} {
			b.Run(fmt.Sprintf("%s/blocks/%d", row.name, cores), func(b *testing.B) { benchBlocks(b, row.job, cores, false) })
			b.Run(fmt.Sprintf("%s/summaries/%d", row.name, cores), func(b *testing.B) { benchBlocks(b, row.job, cores, true) })
		}
	}
}

type benchJob struct {
	name string
	job  align.MonteCarlo
}

func benchJobs(tb fataler) []benchJob {
	dials := align.MonteCarlo{Sets: state(read(tb, caseA, reverse(), quarters...), 5*um), Target: align.Exact(caseA)}
	for _, x := range []units.Length{250, 300, 800, 900} {
		dials.Feet = append(dials.Feet, align.Foot{X: x * mm})
	}
	readings, all, noAngles := wholeJob(tb), wholeJob(tb), wholeJob(tb)
	for i := range readings.Sets {
		readings.Sets[i].U = align.Uncertainty{Reading: 2 * um}
		readings.Sets[i].Mounting = ""
		noAngles.Sets[i].U.Angle = 0
	}
	readings.Target = align.Exact(readings.Target.Value)
	readings.Feet = []align.Foot{{Name: "inboard", X: 300 * mm}, {Name: "outboard", X: 900 * mm}}
	return []benchJob{{"two dials of four readings", dials}, {"readings", readings}, {"all but angles", noAngles}, {"everything", all}}
}

func benchBlocks(b *testing.B, m align.MonteCarlo, cores int, summarise bool) {
	b.ReportAllocs()
	const many = 20
	blocks := make([]align.Block, many)
	for b.Loop() {
		var wait sync.WaitGroup
		for core := range cores {
			wait.Go(func() {
				for i := core; i < many; i += cores {
					blocks[i], _ = m.Block(1, uint32(i))
				}
			})
		}
		wait.Wait()
		if summarise {
			summary(b, 0.95, blocks...)
		}
	}
	b.ReportMetric(many*align.TrialsPerBlock*float64(b.N)/b.Elapsed().Seconds(), "trials/s")
}
