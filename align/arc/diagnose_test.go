package arc_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
	"gonum.org/v1/gonum/stat/distuv"
)

func mustDiagnose(tb fataler, sets ...align.Set) arc.Diagnosis {
	tb.Helper()
	d, err := arc.Diagnose(mustFit(tb, sets...), sets...)
	if err != nil {
		tb.Fatalf("Diagnose: %v", err)
	}
	return d
}

// Nothing wrong: nothing found.
func TestDiagnoseOfSoundReadings(t *testing.T) {
	for _, stated := range []units.Length{3 * um, 0} {
		sets := wiggled(filled(t, caseA, sensorPair(stated, nine(180)...)))
		d := mustDiagnose(t, sets...)
		if d.Warnings != nil || len(d.Residuals) != 18 || len(d.Sweeps) != 2 {
			t.Errorf("stated %v: %+v", stated, d)
		}
		if d.Scatter.Known != (stated != 0) || d.Scatter.DegreesOfFreedom != 12 || !d.Scatter.Known && d.Scatter.P != 1 {
			t.Errorf("stated %v: scatter %+v", stated, d.Scatter)
		}
		for _, s := range d.Sweeps {
			near(t, "covered", s.Arc.Covered, 180*units.Degree, 1e-12)
			near(t, "gap", s.Gap, 22.5*units.Degree, 1e-12)
			if s.Returned || s.Reversed != nil || s.Return != (arc.Effect{}) {
				t.Errorf("%+v", s)
			}
		}
	}
}

// One thing wrong each: what is warned of, and where.
func TestDiagnoseWarns(t *testing.T) {
	const u = 5 * um
	there, round := nine(180), []units.Clock{0, 45, 90, 135, 180, 225, 270, 315, 360}
	rows := []struct {
		name   string
		clocks []units.Clock
		spoil  func(sets []align.Set)
		want   []string
	}{
		{"nothing", round, func([]align.Set) {}, nil},
		{"one way back", slices.Concat(there[:5], []units.Clock{there[3]}, there[5:]), func([]align.Set) {}, []string{"/sets/0/readings/5", "/sets/1/readings/5"}},
		{"last misses the first", round, func(s []align.Set) { s[1].Readings[8].Value += 20 * um }, []string{"/sets/1/readings/8"}},
		{"last misses the first, not enough", round, func(s []align.Set) { s[1].Readings[8].Value += 9 * um }, nil},
		{"a bad reading", there, func(s []align.Set) { s[0].Readings[4].Value += 22 * um }, []string{"/sets/0/readings/4"}},
		{"a bad reading, not enough", there, func(s []align.Set) { s[0].Readings[4].Value += 12 * um }, nil},
		{"drift", there, func(s []align.Set) {
			for j := range s[1].Readings {
				s[1].Readings[j].Value += 17 * units.Length(j) * um
			}
		}, []string{"/sets/1/readings"}},
		{"scatter", there, func(s []align.Set) {
			for j := range s[0].Readings {
				s[0].Readings[j].Value += [...]units.Length{6, -9, 6, 0, -6, 0, 6, -9, 6}[j] * 1.45 * um
			}
		}, []string{"/sets", "/sets/0/readings"}},
		{"a short arc", within(9, 200, 80), func([]align.Set) {}, []string{"/sets/0/readings", "/sets/1/readings"}},
		{"a quarter is enough", within(9, 200, 90), func([]align.Set) {}, nil},
		{"a gap", []units.Clock{0, 10, 20, 30, 170, 180, 190}, func([]align.Set) {}, []string{"/sets/0/readings", "/sets/1/readings"}},
		{"three spread over a turn", []units.Clock{0, 120, 240}, func([]align.Set) {}, nil},
	}
	for _, row := range rows {
		sets := filled(t, caseA, sensorPair(u, row.clocks...))
		row.spoil(sets)
		checkWarned(t, row.name, mustDiagnose(t, sets...).Warnings, row.want...)
	}
}

// The same without a stated uncertainty, where the readings' own scatter tells.
func TestDiagnoseWarnsUnstated(t *testing.T) {
	round := []units.Clock{0, 45, 90, 135, 180, 225, 270, 315, 360}
	rows := []struct {
		name  string
		spoil func(sets []align.Set)
		want  string
	}{
		{"last misses the first", func(s []align.Set) { s[1].Readings[8].Value += 60 * um }, "/sets/1/readings/8"},
		{"a bad reading", func(s []align.Set) { s[0].Readings[4].Value += 60 * um }, "/sets/0/readings/4"},
		{"drift", func(s []align.Set) {
			for j := range s[1].Readings {
				s[1].Readings[j].Value += 30 * units.Length(j) * um
			}
		}, "/sets/1/readings"},
	}
	for _, row := range rows {
		sets := wiggled(filled(t, caseA, sensorPair(0, round...)))
		checkWarned(t, row.name+", not yet", mustDiagnose(t, sets...).Warnings)
		row.spoil(sets)
		found := mustDiagnose(t, sets...).Warnings
		if !slices.ContainsFunc(found, func(f units.Fault) bool { return f.Path == row.want }) {
			t.Errorf("%s: warned of %+v, want %s", row.name, found, row.want)
		}
	}
}

// Steps and their direction; indices are those of readings after a step back.
func TestDiagnoseReversed(t *testing.T) {
	rows := []struct {
		name   string
		clocks []units.Clock
		want   []int
	}{
		{"one way", []units.Clock{0, 90, 180, 270}, nil},
		{"one way, past 12", []units.Clock{300, 350, 20, 60}, nil},
		{"anticlockwise", []units.Clock{20, 350, 300, 240}, nil},
		{"back at the end", []units.Clock{0, 90, 180, 120}, []int{3}},
		{"back in the middle", []units.Clock{0, 50, 40, 90}, []int{2}},
		{"mostly back: the first step is the odd one", []units.Clock{0, 10, 330, 300}, []int{1}},
		{"as many: the first step counts", []units.Clock{0, 90, 180, 90, 0}, []int{3, 4}},
		{"as many, anticlockwise", []units.Clock{180, 90, 0, 90, 180}, []int{3, 4}},
		{"half turns have no direction", []units.Clock{0, 90, 270, 180}, []int{3}},
		{"nor has the first, a half turn", []units.Clock{0, 180, 90}, nil},
		{"standing still is no step", []units.Clock{0, 60, 60, 120}, nil},
		{"full turns on", []units.Clock{0, 120, 240, 360, 480}, nil},
	}
	for _, row := range rows {
		for _, view := range []align.View{align.FromMovable, align.FromStationary} {
			sets := sensorPair(5*um, row.clocks...)
			for i := range sets {
				sets[i].View = view
			}
			d := mustDiagnose(t, filled(t, caseA, sets)...)
			for _, s := range d.Sweeps {
				if !slices.Equal(s.Reversed, row.want) {
					t.Errorf("%s, %v: got %v, want %v", row.name, view, s.Reversed, row.want)
				}
			}
		}
	}
}

// Coming back: where, and by how much, free of what two positions differ by.
func TestDiagnoseReturn(t *testing.T) {
	rows := []struct {
		name string
		last units.Clock
		want bool
	}{
		{"to the same mark", 10, true},
		{"a full turn on", 370, true},
		{"nearly", 11.5, true},
		{"nearly, from the other side", 368.5, true},
		{"not", 13, false},
	}
	for _, row := range rows {
		sets := filled(t, caseA, sensorPair(5*um, 10, 80, 160, 240, 300, row.last))
		sets[0].Readings[5].Value += 2 * um
		f := mustFit(t, filled(t, caseA, sensorPair(5*um, 10, 80, 160, 240, 300, row.last))...)
		d, err := arc.Diagnose(f, sets...)
		if err != nil {
			t.Fatal(err)
		}
		got := d.Sweeps[0]
		if got.Returned != row.want {
			t.Errorf("%s: returned %v", row.name, got.Returned)
		}
		if row.want {
			near(t, row.name+": miss", got.Return.Value, 2*um, 1e-2)
			near(t, row.name+": its uncertainty", got.Return.U, 5*um*math.Sqrt2, 1e-6)
			near(t, row.name+": its probability", got.Return.P, math.Erfc(2/(5*math.Sqrt2)/math.Sqrt2), 1e-9)
		}
	}
	two := filled(t, caseA, append(sensorPair(5*um, nine(180)...), sensorPair(5*um, 0, 0)...))
	if d := mustDiagnose(t, two...); d.Sweeps[2].Returned {
		t.Error("a set of two readings came back")
	}
	two = filled(t, caseA, append(sensorPair(5*um, nine(180)...), sensorPair(5*um, 0, 90, 0)...))
	if d := mustDiagnose(t, two...); !d.Sweeps[2].Returned {
		t.Error("the third of three readings did not come back")
	}
}

// Chi-square by hand: two probes of nine readings, six left over each.
func TestDiagnoseScatter(t *testing.T) {
	sets := wiggled(filled(t, caseA, sensorPair(2*um, nine(180)...)))
	sets[1].Readings[3].U = 4 * um
	d := mustDiagnose(t, sets...)
	sums := [2]float64{}
	for _, r := range d.Residuals {
		u := 2 * um
		if r.Set == 1 && r.Reading == 3 {
			u = 4 * um
		}
		sums[r.Set] += float64(r.Value/u) * float64(r.Value/u)
	}
	near(t, "all", d.Scatter.Ratio, (sums[0]+sums[1])/12, 1e-12)
	near(t, "probability", d.Scatter.P, survival(sums[0]+sums[1], 12), 1e-9)
	for i, s := range d.Sweeps {
		near(t, "degrees of freedom of a set", s.Scatter.DegreesOfFreedom, 6, 1e-9)
		near(t, "of a set", s.Scatter.Ratio, sums[i]/6, 1e-9)
		near(t, "probability", s.Scatter.P, survival(sums[i], 6), 1e-9)
	}
}

// survival of chi-square with an even number of degrees of freedom: a sum of
// Poisson's terms (Abramowitz and Stegun 26.4.21, from memory).
func survival(x float64, dof int) float64 {
	sum, term := 0.0, math.Exp(-x/2)
	for k := range dof / 2 {
		if k > 0 {
			term *= x / 2 / float64(k)
		}
		sum += term
	}
	return sum
}

// The drift is what is taken off to make the scatter least, and its uncertainty the
// curvature there: both from three fits.
func TestDiagnoseDrift(t *testing.T) {
	for _, stated := range []units.Length{2 * um, 0} {
		sets := wiggled(filled(t, caseA, sensorPair(stated, 0, 40, 75, 130, 170, 200, 260, 290)))
		sets[0].Sag = 0
		if stated != 0 {
			sets[1].Readings[2].U = 7 * um
		}
		without := func(drift units.Length) float64 {
			own := ownReadings(sets)
			for j := range own[1].Readings {
				own[1].Readings[j].Value -= drift * units.Length(j)
			}
			return chiSquare(t, own)
		}
		const h = 10 * um
		low, mid, high := without(-h), without(0), without(h)
		curve := (low + high - 2*mid) / float64(h*h)
		drift := (low - high) / float64(2*h) / curve
		got := mustDiagnose(t, sets...).Sweeps[1].Drift
		near(t, "drift", got.Value, units.Length(drift), 1e-6*um)
		u := math.Sqrt(2 / curve)
		basis := align.Stated
		if stated == 0 { // one more is fitted now: 16 readings, seven unknowns
			u *= math.Sqrt(without(units.Length(drift)) / 9)
			basis = align.Scatter
		}
		near(t, "its uncertainty", got.U, units.Length(u), 1e-6*um)
		if got.Basis != basis {
			t.Errorf("basis %v", got.Basis)
		}
		if stated != 0 {
			near(t, "its probability", got.P, math.Erfc(math.Abs(drift)/u/math.Sqrt2), 1e-9)
		}
	}
}

// chiSquare is the sum of squared residuals of the plain fit, over the squared
// uncertainty where there is one.
func chiSquare(tb fataler, sets []align.Set) (sum float64) {
	left, err := align.Residuals(nil, sets, mustFit(tb, sets...))
	if err != nil {
		tb.Fatalf("Residuals: %v", err)
	}
	for _, r := range left {
		u := sets[r.Set].U.Reading
		if own := sets[r.Set].Readings[r.Reading].U; own != 0 {
			u = own
		}
		if u == 0 {
			u = 1
		}
		sum += float64(r.Value/u) * float64(r.Value/u)
	}
	return sum
}

// Without a stated uncertainty a miss is measured by the scatter of the rest: that
// of the same readings with both ends at their mean.
func TestDiagnoseReturnUnstated(t *testing.T) {
	sets := wiggled(filled(t, caseA, sensorPair(0, 0, 60, 120, 180, 240, 300, 360)))
	d := mustDiagnose(t, sets...)
	miss := sets[0].Readings[6].Value - sets[0].Readings[0].Value
	near(t, "miss", d.Sweeps[0].Return.Value, miss, 1e-3)
	own := ownReadings(sets)
	own[0].Readings[0].Value += miss / 2
	own[0].Readings[6].Value -= miss / 2
	rest := math.Sqrt(chiSquare(t, own) / 7) // of the eight left over, the miss is one
	near(t, "uncertainty", d.Sweeps[0].Return.U, units.Length(math.Sqrt2*rest), 1e-3)
	if d.Sweeps[0].Return.Basis != align.Scatter {
		t.Errorf("basis %v", d.Sweeps[0].Return.Basis)
	}
}

// The droop of a bracket is in the readings and in none of what is found.
func TestDiagnoseOfSag(t *testing.T) {
	dial := func(carrier align.Shaft, x, sag units.Length) align.Set {
		return align.Set{
			Probe: align.Probe{Kind: align.Rim, Carrier: carrier, Station: x}, Sag: sag,
			Readings: taken(10, 50, 95, 140, 200, 260, 300, 369), U: align.Uncertainty{Reading: um},
		}
	}
	dials := []align.Set{dial(align.Stationary, 40*mm, 80*um), dial(align.Movable, -50*mm, 0), dial(align.Stationary, 70*mm, 0)}
	dials = filled(t, caseA, dials)
	d := mustDiagnose(t, dials...)
	checkWarned(t, "drooping", d.Warnings)
	for _, s := range d.Sweeps {
		near(t, "drift", s.Drift.Value, 0, 1e-3)
		near(t, "miss", s.Return.Value, 0, 1e-3)
	}
	for j := range dials[0].Readings {
		dials[0].Readings[j].Value += 5 * um * units.Length(j)
	}
	near(t, "5 um a reading", mustDiagnose(t, dials...).Sweeps[0].Drift.Value, 5*um, 1e-3)
}

// Where nothing tells, that is said.
func TestDiagnoseCannotTell(t *testing.T) {
	three := filled(t, caseA, sensorPair(5*um, 0, 60, 120))
	d := mustDiagnose(t, three...)
	for _, s := range d.Sweeps {
		if s.Drift != (arc.Effect{Basis: align.Unknown, P: 1}) || s.Scatter.Known || s.Scatter.P != 1 {
			t.Errorf("%+v", s)
		}
	}
	if d.Scatter.Known || d.Scatter.P != 1 || d.Warnings != nil {
		t.Errorf("%+v", d)
	}
	unstated := filled(t, caseA, sensorPair(0, 0, 90, 180, 270, 360))
	unstated[0].Readings[2].Value += 200 * um
	unstated[0].Readings = unstated[0].Readings[:4]
	unstated[1].Readings = unstated[1].Readings[:3]
	d = mustDiagnose(t, unstated...) // one left over: its residual is the scatter
	if d.Warnings != nil || d.Sweeps[0].Drift.Basis != align.Unknown {
		t.Errorf("%+v", d)
	}
}

// Three readings decide what only their sensor tells, whatever they are; only the nine of
// the other are tested, and one is warned of that would not be as one of twelve.
func TestReadingsThatDecideAreNotTested(t *testing.T) {
	const u = 5 * um
	sets := filled(t, caseA, sensorPair(u, nine(180)...))
	all := sets[1].Readings
	sets[1].Readings = []align.Reading{all[0], all[4], all[8]}
	free := 1 - mustDiagnose(t, sets...).Residuals[4].Leverage
	far := func(n int) float64 { // the largest of n is further off once in a hundred times
		return distuv.UnitNormal.Quantile((1 + math.Pow(0.99, 1/float64(n))) / 2)
	}
	sets[0].Readings[4].Value += u * units.Length((far(9)+far(12))/2/math.Sqrt(free))
	checkWarned(t, "between nine and twelve", mustDiagnose(t, sets...).Warnings, "/sets/0/readings/4")
}

// With no error but chance, each kind of warning comes about once in a hundred
// measurements, whether uncertainties are stated or not.
func TestDiagnoseFalseAlarms(t *testing.T) {
	const u = 5 * um
	draws := drawsOf(4000)
	for _, stated := range []units.Length{u, 0} {
		random := rand.New(rand.NewPCG(8, 1))
		sets := filled(t, caseA, sensorPair(stated, 0, 45, 90, 135, 180, 225, 270, 315, 360))
		alarms := map[string]int{}
		for range draws {
			for _, kind := range kindsOf(mustDiagnose(t, noisy(random, sets, u)...)) {
				alarms[kind]++
			}
		}
		kinds := []string{"return", "drift", "residual"}
		if stated != 0 {
			kinds = append(kinds, "scatter")
		}
		for _, kind := range kinds {
			share := float64(alarms[kind]) / float64(draws)
			t.Logf("stated %v: %s %.4f", stated, kind, share)
			if spread := 4 * math.Sqrt(0.01/float64(draws)); math.Abs(share-0.01) > spread+0.004 {
				t.Errorf("stated %v: %s in %.4f of draws, want about 0.01", stated, kind, share)
			}
		}
	}
}

// kindsOf names the kinds of warnings, each once, by the numbers behind them.
func kindsOf(d arc.Diagnosis) (kinds []string) {
	limit := 1 - math.Sqrt(0.99)
	returns := slices.ContainsFunc(d.Sweeps, func(s arc.Sweep) bool { return s.Return.P < limit })
	drifts := slices.ContainsFunc(d.Sweeps, func(s arc.Sweep) bool { return s.Drift.P < limit })
	misses, residuals := 0, 0
	for _, w := range d.Warnings {
		var set, reading int
		n, _ := fmt.Sscanf(w.Path, "/sets/%d/readings/%d", &set, &reading)
		if n == 2 && reading == 8 && d.Sweeps[set].Return.P < limit {
			misses++
		}
		if n == 2 {
			residuals++
		}
	}
	if returns {
		kinds = append(kinds, "return")
	}
	if drifts {
		kinds = append(kinds, "drift")
	}
	if residuals > misses {
		kinds = append(kinds, "residual")
	}
	if d.Scatter.P < 0.01 {
		kinds = append(kinds, "scatter")
	}
	return kinds
}

// Where the uncertainty comes from the scatter, a length is judged by what scatters
// besides it: with one degree of freedom less, of which one is enough.
func TestDiagnoseByScatter(t *testing.T) {
	for _, row := range []struct {
		places []units.Clock
		dof    int
	}{
		{[]units.Clock{10, 80, 160, 240, 300, 10}, 6},
		{[]units.Clock{10, 130, 250, 10}, 2},
	} {
		sets := wiggled(filled(t, caseA, sensorPair(0, row.places...)))
		d := mustDiagnose(t, sets...)
		got := d.Sweeps[0].Return
		if got.Basis != align.Scatter || d.Scatter.DegreesOfFreedom != float64(row.dof) {
			t.Fatalf("%d degrees of freedom: %+v, %+v", row.dof, got, d.Scatter)
		}
		student := distuv.StudentsT{Sigma: 1, Nu: float64(row.dof - 1)}
		near(t, "probability", got.P, 2*student.Survival(math.Abs(float64(got.Value/got.U))), 1e-9)
	}
}
