package dial_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
)

func TestBadTarget(t *testing.T) {
	type in = dial.Target
	full := func() *in {
		return &in{High: -50 * units.Micrometre, Opening: 20 * units.Micrometre, Diameter: 150 * units.Millimetre}
	}
	centreline := func(target in) error { _, err := target.Centreline(); return err }
	checkBad(t, full, centreline, []bad[in]{
		{"an opening across what?", func(p *in) { p.Diameter = 0 }, []string{"missing /diameter"}, func(p *in) { p.Opening = 0 }},
		{"negative diameter", func(p *in) { p.Diameter = -1 }, []string{"out_of_range /diameter"}, func(p *in) { p.Diameter = 1 }},
		{"negative diameter without an opening", func(p *in) { p.Diameter, p.Opening = -1, 0 }, []string{"out_of_range /diameter"}, func(p *in) { p.Diameter = 1 }},
		{"unknown view", func(p *in) { p.View = 2 }, []string{"out_of_range /view"}, func(p *in) { p.View = 1 }},
		{
			"diameter and view", func(p *in) { p.Diameter, p.View = -1, 9 },
			[]string{"out_of_range /diameter", "out_of_range /view"}, func(p *in) { *p = *full() },
		},
	})
}

func TestBadPair(t *testing.T) {
	full := func() *pair {
		p := &pair{
			A: dial.Face{Diameter: 150 * units.Millimetre, Readings: fair()},
			B: dial.Face{Diameter: 100 * units.Millimetre, Readings: fair()},
		}
		for i := range p.B.Readings {
			p.B.Readings[i].At += 180
		}
		return p
	}
	withoutFloat := func(p pair) error { _, err := dial.WithoutFloat(p.A, p.B); return err }
	checkBad(t, full, withoutFloat, []bad[pair]{
		{"no diameter", func(p *pair) { p.A.Diameter = 0 }, []string{"missing /a/diameter"}, func(p *pair) { p.A.Diameter = 1 }},
		{"negative diameter", func(p *pair) { p.B.Diameter = -1 }, []string{"out_of_range /b/diameter"}, func(p *pair) { p.B.Diameter = 1 }},
		{"one on the near, one on the far side", func(p *pair) { p.B.Far = true }, []string{"conflict /b/far"}, func(p *pair) { p.A.Far = true }},
		{"dials at one place", func(p *pair) { p.B.Readings[2].At = 180 }, []string{"conflict /b/readings/2/at"}, func(p *pair) { p.B.Readings[2].At = 720 }},
		{"a reading short", func(p *pair) { p.B.Readings = p.B.Readings[:3] }, []string{"conflict /b/readings"}, func(p *pair) { p.A.Readings = p.A.Readings[:3] }},
		{
			"no readings", func(p *pair) { p.A.Readings, p.B.Readings = nil, nil },
			[]string{"missing /a/readings", "missing /b/readings"}, func(p *pair) { *p = *full() },
		},
		{"negative uncertainty of a reading", func(p *pair) { p.A.Readings[1].U = -1 }, []string{"out_of_range /a/readings/1/u"}, func(p *pair) { p.A.Readings[1].U = 0 }},
		{"negative uncertainty of the set", func(p *pair) { p.B.U.Reading = -1 }, []string{"out_of_range /b/u/reading"}, func(p *pair) { p.B.U.Reading = 0 }},
		{"negative uncertainty of the clock", func(p *pair) { p.B.U.Clock = -1 }, []string{"out_of_range /b/u/clock"}, func(p *pair) { p.B.U.Clock = 0 }},
		{
			"everything at once", func(p *pair) { p.A.Diameter, p.B.Diameter, p.A.Far, p.B.Readings[0].At = 0, -1, true, 1 },
			[]string{"missing /a/diameter", "out_of_range /b/diameter", "conflict /b/far", "conflict /b/readings/0/at"},
			func(p *pair) { *p = *full() },
		},
	})
}

func TestBadRunout(t *testing.T) {
	full := func() *swept {
		return &swept{T0: 90, Readings: fair(), Runout: sweep{{At: 0}, {At: 90}, {At: 180}, {At: 270}}}
	}
	remove := func(s swept) error { _, err := dial.RemoveRunout(s.Readings, s.T0, s.Runout); return err }
	checkBad(t, full, remove, []bad[swept]{
		{"no readings", func(s *swept) { s.Readings = nil }, []string{"missing /readings"}, func(s *swept) { s.Readings = fair()[:1] }},
		{
			"no runout", func(s *swept) { s.Runout = nil }, []string{"missing /runout"},
			func(s *swept) { s.Runout = full().Runout },
		},
		{
			// From 3 o'clock the reading at 6 needs a turn of 90 - 180, which is 270.
			"a turn not measured", func(s *swept) { s.Runout = s.Runout[:3] }, []string{"missing /readings/2/at"},
			func(s *swept) { s.Runout = append(s.Runout, align.Reading{At: -90}) },
		},
		{"a turn measured twice", func(s *swept) { s.Runout = append(s.Runout, align.Reading{At: 360}) }, []string{"duplicate /runout/4/at"}, func(s *swept) { s.Runout[4].At = 45 }},
		{"negative uncertainty", func(s *swept) { s.Readings[3].U = -1 }, []string{"out_of_range /readings/3/u"}, func(s *swept) { s.Readings[3].U = 1 }},
		{
			"everything missing", func(s *swept) { *s = swept{} }, []string{"missing /readings", "missing /runout"},
			func(s *swept) { *s = *full() },
		},
	})
}

// A sweep that ends with the return to its start stays one.
func TestRunoutOfAReturn(t *testing.T) {
	got, err := dial.RemoveRunout(returning(7), 0, sweep{{At: 0, Value: 1}, {At: -90}, {At: 180}, {At: 90}})
	if err != nil {
		t.Fatal(err)
	}
	want := returning(7)
	want[0].Value, want[4].Value = -1, 6
	if diff := cmp.Diff(want, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}
