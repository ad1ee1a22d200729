package align_test

import (
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/units"
)

func TestBlockRefuses(t *testing.T) {
	rows := []struct {
		name      string
		bad, twin func(*align.MonteCarlo)
		want      string
	}{
		{"no sets", func(m *align.MonteCarlo) { m.Sets = nil }, nil, "missing /sets"},
		{"a set that is not sound", func(m *align.MonteCarlo) { m.Sets[2].Probe.Radius = 0 }, func(m *align.MonteCarlo) { m.Sets[2].Probe.Radius = mm }, "missing /sets/2/probe/radius"},
		{"sets that do not see the slope", func(m *align.MonteCarlo) { m.Sets = m.Sets[:2] }, nil, "unseen /sets"},
		{"readings of unknown uncertainty", func(m *align.MonteCarlo) { m.Sets = readThree(m.Sets, 0) }, func(m *align.MonteCarlo) { m.Sets = readThree(m.Sets, um) }, "unseen /sets"},
		{"a target of unknown uncertainty", func(m *align.MonteCarlo) { m.Target.Cov = align.Covariance{Basis: align.Unknown} }, func(m *align.MonteCarlo) { m.Target.Cov = align.Covariance{} }, "unseen /target/cov/basis"},
		{"a target that is not finite", func(m *align.MonteCarlo) { m.Target.Value.Vertical.Offset = units.Length(math.NaN()) }, nil, "not_finite /target/value/vertical/offset"},
		{"a foot given twice", func(m *align.MonteCarlo) { m.Feet[1].Name = "inboard" }, nil, "duplicate /feet/1/name"},
		{"a foot uncertain below zero", func(m *align.MonteCarlo) { m.Feet[0].U = -1 }, func(m *align.MonteCarlo) { m.Feet[0].U = 0 }, "out_of_range /feet/0/u"},
		{"a span below zero", func(m *align.MonteCarlo) { m.Coupling.Span = -mm }, func(m *align.MonteCarlo) { m.Coupling.Span = 0 }, "out_of_range /coupling/span"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			m := wholeJob(t)
			row.bad(&m)
			_, err := m.Block(1, 1)
			if got := codesAndPaths(err); !slices.Equal(got, []string{row.want}) {
				t.Errorf("got %v (%v), want just %s", got, err, row.want)
			}
			m = wholeJob(t)
			if row.twin != nil {
				row.twin(&m)
			}
			if _, err := m.Block(1, 1); err != nil {
				t.Errorf("the twin is refused: %v", err)
			}
		})
	}
	m := wholeJob(t)
	m.Sets[1].Readings, m.Feet[0].X, m.Coupling.Span = nil, units.Length(math.Inf(1)), -1
	m.Target.Cov.Basis = 9
	_, err := m.Block(1, 1)
	want := []string{"missing /sets/1/readings", "not_finite /feet/0/x", "out_of_range /coupling/span", "out_of_range /target/cov/basis"}
	if got := codesAndPaths(err); !slices.Equal(got, want) {
		t.Errorf("got %v, want all at once: %v", got, want)
	}
}

// readThree leaves as few readings as can be, so that none tells the scatter.
func readThree(sets []align.Set, u units.Length) []align.Set {
	sets = slices.Clone(sets)[1:]
	for i := range sets {
		sets[i].Readings, sets[i].U.Reading = sets[i].Readings[:3], u
	}
	return sets
}

func TestSummariseRefuses(t *testing.T) {
	m, other := wholeJob(t), wholeJob(t)
	other.Feet[1].U++
	blocks := run(t, m, 1, 2)
	a, b := blocks[0], blocks[1]
	reseeded, changed := run(t, m, 2, 2)[1], run(t, other, 1, 2)[1]
	rows := []struct {
		name         string
		p            float64
		blocks, twin []align.Block
		want         string
	}{
		{"no block", 0.95, nil, blocks, "missing /blocks"},
		{"a block that was not run", 0.95, []align.Block{a, {}}, blocks, "missing /blocks/1"},
		{"the first was not run", 0.95, []align.Block{{}, a, b}, blocks, "missing /blocks/0"},
		{"a block given twice", 0.95, []align.Block{a, b, a}, []align.Block{b, a}, "duplicate /blocks/2"},
		{"another seed", 0.95, []align.Block{a, reseeded}, []align.Block{reseeded}, "conflict /blocks/1"},
		{"another job", 0.95, []align.Block{a, changed}, []align.Block{changed}, "conflict /blocks/1"},
		{"no probability", 0, blocks, nil, "out_of_range /probability"},
		{"certainty", 1, blocks, nil, "out_of_range /probability"},
		{"not a number", math.NaN(), blocks, nil, "out_of_range /probability"},
		{"more than the trials tell", 1 - 1e-5, blocks, nil, "out_of_range /probability"},
		{"less than the trials tell", 1e-5, blocks, nil, "out_of_range /probability"},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			_, err := align.Summarise(row.p, row.blocks...)
			if got := codesAndPaths(err); !slices.Equal(got, []string{row.want}) {
				t.Errorf("got %v (%v), want just %s", got, err, row.want)
			}
			p, twin := row.p, row.twin
			if twin == nil {
				p, twin = min(max(row.p, 5e-5), 1-5e-5), blocks // one trial of 20 000
			}
			if math.IsNaN(p) {
				p = 0.5
			}
			if _, err := align.Summarise(p, twin...); err != nil {
				t.Errorf("the twin is refused: %v", err)
			}
		})
	}
}

// No probability is said beside what else is wrong.
func TestSummariseNamesAllAtOnce(t *testing.T) {
	for _, p := range []float64{0, 1} {
		_, err := align.Summarise(p)
		if got, want := codesAndPaths(err), []string{"missing /blocks", "out_of_range /probability"}; !slices.Equal(got, want) {
			t.Errorf("%v: got %v, want %v", p, got, want)
		}
	}
}

// A job is another one with any of its numbers changed.
func TestEveryNumberMakesTheJob(t *testing.T) {
	a := run(t, wholeJob(t), 1, 1)[0]
	changes := map[string]func(*align.MonteCarlo){
		"reading":  func(m *align.MonteCarlo) { m.Sets[1].Readings[2].Value++ },
		"angle":    func(m *align.MonteCarlo) { m.Sets[0].U.Angle *= 2 },
		"u":        func(m *align.MonteCarlo) { m.Sets[2].U.Reading *= 2 },
		"mounting": func(m *align.MonteCarlo) { m.Sets[2].Mounting = "face" },
		"sag":      func(m *align.MonteCarlo) { m.Sets[2].Sag++ },
		"probe":    func(m *align.MonteCarlo) { m.Sets[2].Probe.Carrier = align.Movable },
		"set":      func(m *align.MonteCarlo) { m.Sets = m.Sets[1:] },
		"target":   func(m *align.MonteCarlo) { m.Target.Value.Vertical.Slope *= 2 },
		"foot":     func(m *align.MonteCarlo) { m.Feet = m.Feet[:1] },
		"span":     func(m *align.MonteCarlo) { m.Coupling.Span++ },
	}
	for name, change := range changes {
		m := wholeJob(t)
		change(&m)
		b, err := m.Block(1, 1)
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if _, err = align.Summarise(0.95, a, b); !slices.Equal(codesAndPaths(err), []string{"conflict /blocks/1"}) {
			t.Errorf("%s: got %v", name, err)
		}
	}
}

func TestMonteCarloZeroValues(t *testing.T) {
	_, err := align.MonteCarlo{}.Block(0, 0)
	checkFault(t, err, units.Missing, "/sets")
	_, err = align.Summarise(0.95, align.Block{})
	checkFault(t, err, units.Missing, "/blocks/0")
	roundTrip(t, align.Summary{})
	roundTrip(t, align.Distribution[units.Slope]{})
	if s := (align.Summary{}); s.Trials != 0 || s.Stationary != nil || s.Cov.Basis != align.Declared {
		t.Errorf("%+v", s)
	}
}
