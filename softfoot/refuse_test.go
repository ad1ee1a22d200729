package softfoot_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"example.org/collinear/softfoot"
	"example.org/collinear/units"
)

var notNumbers = []units.Length{units.Length(math.NaN()), units.Length(math.Inf(1)), units.Length(math.Inf(-1))}

// sound is a survey of four feet, the third of them felt.
func sound() softfoot.Survey {
	return felt(rectangle(um, 100, 0, 0, 0), 2, 0, 0, 10, 10)
}

// narrowed gives a rectangle of 600 mm another width.
func narrowed(s *softfoot.Survey, width units.Length) {
	for i := range s.Feet {
		s.Feet[i].Y = width * mm * units.Length(i%2)
	}
}

// One thing wrong in a survey that is sound otherwise: the fault, and a twin that
// is nearly the same and passes.
func TestJudgeRefuses(t *testing.T) {
	type survey = softfoot.Survey
	feet := func(count int) func(*survey) {
		return func(s *survey) {
			s.Feet = nil
			for i := range count {
				sin, cos := math.Sincos(float64(i))
				s.Feet = append(s.Feet, softfoot.Foot{Name: fmt.Sprint(i), X: units.Length(cos) * 300 * mm, Y: units.Length(sin) * 300 * mm})
			}
		}
	}
	corners := func(count int) func(*survey) {
		return func(s *survey) {
			s.Feet[2].Gaps = nil
			for i := range count {
				sin, cos := math.Sincos(float64(i))
				s.Feet[2].Gaps = append(s.Feet[2].Gaps, softfoot.Gap{X: units.Length(cos) * 30 * mm, Y: units.Length(sin) * 30 * mm})
			}
		}
	}
	line := func(off units.Length) func(*survey) {
		return func(s *survey) {
			for i := range s.Feet {
				s.Feet[i].X, s.Feet[i].Y = units.Length(i)*200*mm, units.Length(i)*100*mm
			}
			s.Feet[1].Y += off
		}
	}
	cornerLine := func(off units.Length) func(*survey) {
		return func(s *survey) {
			for i := range s.Feet[2].Gaps {
				s.Feet[2].Gaps[i].X, s.Feet[2].Gaps[i].Y = units.Length(i)*20*mm, units.Length(i)*10*mm
			}
			s.Feet[2].Gaps[1].Y += off
		}
	}
	threeIn := func(off units.Length) func(*survey) {
		return func(s *survey) {
			s.Feet = s.Feet[:3]
			line(off)(s)
		}
	}
	for _, row := range []struct {
		name      string
		bad, twin func(*survey) // no twin: the sound one
		want      string
	}{
		{"no feet", func(s *survey) { s.Feet = nil }, feet(3), "missing /feet"},
		{"two feet", feet(2), feet(3), "missing /feet"},
		{"nine feet", feet(9), feet(8), "out_of_range /feet"},
		{"feet in one line", line(0), line(100 * mm), "conflict /feet"},
		{"three feet in one line", threeIn(0), threeIn(100 * mm), "conflict /feet"},
		{"feet nearly in one line, 0.5 mm over 600", func(s *survey) { narrowed(s, 0.5) }, func(s *survey) { narrowed(s, 1) }, "conflict /feet"},
		{"no name", func(s *survey) { s.Feet[1].Name = "" }, func(s *survey) { s.Feet[1].Name = "b" }, "missing /feet/1/name"},
		{"a name twice", func(s *survey) { s.Feet[3].Name = s.Feet[1].Name }, func(s *survey) { s.Feet[3].Name = s.Feet[1].Name + " " }, "duplicate /feet/3/name"},
		{"a place twice", func(s *survey) { s.Feet[3].X, s.Feet[3].Y = s.Feet[1].X, s.Feet[1].Y }, func(s *survey) { s.Feet[3].X, s.Feet[3].Y = s.Feet[1].X+100*mm, s.Feet[1].Y }, "duplicate /feet/3"},
		{"lift and gaps", func(s *survey) { s.Feet[2].Lift = 1 * um }, func(s *survey) { s.Feet[2].Lift, s.Feet[2].Gaps = 1*um, nil }, "conflict /feet/2/lift"},
		{"two gaps", corners(2), corners(3), "missing /feet/2/gaps"},
		{"nine gaps", corners(9), corners(8), "out_of_range /feet/2/gaps"},
		{"corners in one line", cornerLine(0), cornerLine(10 * mm), "conflict /feet/2/gaps"},
		{"a gap below zero", func(s *survey) { s.Feet[2].Gaps[1].Gap = -1 * nm }, func(s *survey) { s.Feet[2].Gaps[1].Gap = 0 }, "out_of_range /feet/2/gaps/1/gap"},
		{"no height", func(s *survey) { s.Height = 0 }, func(s *survey) { s.Height = 1 * mm }, "missing /height"},
		{"a height below zero", func(s *survey) { s.Height = -1 * mm }, nil, "out_of_range /height"},
		{"a lift below zero is right", func(s *survey) { s.Feet[1].Lift = -1 * mm }, nil, ""},
	} {
		t.Run(row.name, func(t *testing.T) {
			s := sound()
			row.bad(&s)
			want := []string{row.want}
			if row.want == "" {
				want = nil
			}
			found, err := s.Judge(softfoot.Limits{})
			if got := faultsOf(err); !slices.Equal(got, want) {
				t.Errorf("got %q (%v), want just %q", got, err, want)
			}
			if err != nil && (found.Fits != nil || found.Feet != nil || found.Advice != nil || found.Next != nil || found.Common != 0 || found.Worst != 0) {
				t.Errorf("refused, and yet found %+v", found)
			}
			s = sound()
			if row.twin != nil {
				row.twin(&s)
			}
			if _, err := s.Judge(softfoot.Limits{}); err != nil {
				t.Errorf("the twin is refused: %v", err)
			}
		})
	}
}

// Every number of a survey and of its limits that is not one is refused where it
// stands.
func TestJudgeRefusesWhatIsNoNumber(t *testing.T) {
	for _, bad := range notNumbers {
		for path, at := range map[string]func(*softfoot.Survey, *softfoot.Limits) *units.Length{
			"/height":            func(s *softfoot.Survey, _ *softfoot.Limits) *units.Length { return &s.Height },
			"/feet/1/x":          func(s *softfoot.Survey, _ *softfoot.Limits) *units.Length { return &s.Feet[1].X },
			"/feet/1/y":          func(s *softfoot.Survey, _ *softfoot.Limits) *units.Length { return &s.Feet[1].Y },
			"/feet/1/lift":       func(s *softfoot.Survey, _ *softfoot.Limits) *units.Length { return &s.Feet[1].Lift },
			"/feet/2/gaps/3/x":   func(s *softfoot.Survey, _ *softfoot.Limits) *units.Length { return &s.Feet[2].Gaps[3].X },
			"/feet/2/gaps/3/y":   func(s *softfoot.Survey, _ *softfoot.Limits) *units.Length { return &s.Feet[2].Gaps[3].Y },
			"/feet/2/gaps/3/gap": func(s *softfoot.Survey, _ *softfoot.Limits) *units.Length { return &s.Feet[2].Gaps[3].Gap },
			"/limits/act":        func(_ *softfoot.Survey, l *softfoot.Limits) *units.Length { return &l.Act },
			"/limits/margin":     func(_ *softfoot.Survey, l *softfoot.Limits) *units.Length { return &l.Margin },
			"/limits/common":     func(_ *softfoot.Survey, l *softfoot.Limits) *units.Length { return &l.Common },
			"/limits/taper":      func(_ *softfoot.Survey, l *softfoot.Limits) *units.Length { return &l.Taper },
			"/limits/least":      func(_ *softfoot.Survey, l *softfoot.Limits) *units.Length { return &l.Least },
		} {
			s, l := sound(), softfoot.Limits{}
			*at(&s, &l) = bad
			_, err := s.Judge(l)
			if got, want := faultsOf(err), []string{"not_finite " + path}; !slices.Equal(got, want) {
				t.Errorf("%v at %s: got %q (%v)", float64(bad), path, got, err)
			}
		}
	}
}

// A limit below zero is refused; the smallest above zero passes.
func TestJudgeRefusesLimits(t *testing.T) {
	for path, at := range map[string]func(*softfoot.Limits) *units.Length{
		"/limits/act":    func(l *softfoot.Limits) *units.Length { return &l.Act },
		"/limits/margin": func(l *softfoot.Limits) *units.Length { return &l.Margin },
		"/limits/common": func(l *softfoot.Limits) *units.Length { return &l.Common },
		"/limits/taper":  func(l *softfoot.Limits) *units.Length { return &l.Taper },
		"/limits/least":  func(l *softfoot.Limits) *units.Length { return &l.Least },
	} {
		var l softfoot.Limits
		*at(&l) = -1 * um
		_, err := sound().Judge(l)
		if got, want := faultsOf(err), []string{"out_of_range " + path}; !slices.Equal(got, want) {
			t.Errorf("got %q (%v), want %q", got, err, want)
		}
		*at(&l) = 1 * nm
		if _, err := sound().Judge(l); err != nil {
			t.Errorf("%s of 1 nm is refused: %v", path, err)
		}
	}
}

// Faults that do not hang on one another come all at once, in the order of the
// input.
func TestJudgeReportsAllFaults(t *testing.T) {
	s := sound()
	s.Feet[0].Name = ""
	s.Feet[1].X = notNumbers[0]
	s.Feet[2].Gaps[1].Gap = -1
	s.Feet[2].Gaps[2].X = notNumbers[1]
	s.Feet[3].Lift = notNumbers[2]
	s.Height = 0
	_, err := s.Judge(softfoot.Limits{Act: -1, Margin: notNumbers[0], Common: -1, Taper: -1, Least: -1})
	want := []string{
		"missing /feet/0/name", "not_finite /feet/1/x", "out_of_range /feet/2/gaps/1/gap", "not_finite /feet/2/gaps/2/x",
		"not_finite /feet/3/lift", "missing /height", "out_of_range /limits/act", "not_finite /limits/margin",
		"out_of_range /limits/common", "out_of_range /limits/taper", "out_of_range /limits/least",
	}
	got := faultsOf(err)
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
	s = sound()
	s.Feet[3].Name = s.Feet[0].Name
	s.Feet[2].X, s.Feet[2].Y = s.Feet[1].X, s.Feet[1].Y
	_, err = s.Judge(softfoot.Limits{})
	got, want = faultsOf(err), []string{"duplicate /feet/2", "duplicate /feet/3/name"}
	slices.Sort(got)
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

// A foot may have the name of one and the place of another: two faults.
func TestNameOfOneAndPlaceOfAnother(t *testing.T) {
	s := sound()
	s.Feet[3].Name = s.Feet[0].Name
	s.Feet[3].X, s.Feet[3].Y = s.Feet[1].X, s.Feet[1].Y
	_, err := s.Judge(softfoot.Limits{})
	got, want := faultsOf(err), []string{"duplicate /feet/3", "duplicate /feet/3/name"}
	slices.Sort(got)
	if !slices.Equal(got, want) {
		t.Errorf("got %q, want %q", got, want)
	}
}

func TestAtShaftRefuses(t *testing.T) {
	nan := notNumbers[0]
	type seen = softfoot.AtShaft
	good := seen{Y: 200 * mm, Up: 50 * um, Sideways: 10 * um}
	with := func(change func(*seen)) seen { s := good; change(&s); return s }
	for _, row := range []struct {
		name   string
		seen   seen
		height units.Length
		want   []string
	}{
		{"sound", good, 250 * mm, nil},
		{"up is no number", with(func(s *seen) { s.Up = nan }), 250 * mm, []string{"not_finite /up"}},
		{"sideways is no number", with(func(s *seen) { s.Sideways = nan }), 250 * mm, []string{"not_finite /sideways"}},
		{"y is no number", with(func(s *seen) { s.Y = notNumbers[1] }), 250 * mm, []string{"not_finite /y"}},
		{"a foot under the shaft", with(func(s *seen) { s.Y = 0 }), 250 * mm, []string{"missing /y"}},
		{"no height", good, 0, []string{"missing /height"}},
		{"a height below zero", good, -1, []string{"out_of_range /height"}},
		{"a height that is no number", good, notNumbers[1], []string{"not_finite /height"}},
		{"all at once", seen{Up: nan, Sideways: nan}, 0, []string{"missing /height", "missing /y", "not_finite /sideways", "not_finite /up"}},
	} {
		lift, err := row.seen.Rolling(row.height)
		got := faultsOf(err)
		slices.Sort(got)
		if !slices.Equal(got, row.want) || err != nil && lift != 0 {
			t.Errorf("rolling, %s: got %q and %v, want %q", row.name, got, lift, row.want)
		}
	}
	for _, row := range []struct {
		name   string
		seen   seen
		across units.Length
		want   []string
	}{
		{"sound", good, -200 * mm, nil},
		{"sound, no need of sideways", with(func(s *seen) { s.Sideways = 0 }), -200 * mm, nil},
		{"up is no number", with(func(s *seen) { s.Up = nan }), -200 * mm, []string{"not_finite /up"}},
		{"y is no number", with(func(s *seen) { s.Y = nan }), -200 * mm, []string{"not_finite /y"}},
		{"a foot under the shaft", with(func(s *seen) { s.Y = 0 }), -200 * mm, []string{"missing /y"}},
		{"across is no number", good, nan, []string{"not_finite /across"}},
		{"across is under the shaft", good, 0, []string{"missing /across"}},
		{"across on the same side", good, 100 * mm, []string{"conflict /across"}},
		{"across on the same side, 9 o'clock", with(func(s *seen) { s.Y *= -1 }), -100 * mm, []string{"conflict /across"}},
		{"all at once", seen{Up: nan}, nan, []string{"missing /y", "not_finite /across", "not_finite /up"}},
	} {
		lift, err := row.seen.Hinged(row.across)
		got := faultsOf(err)
		slices.Sort(got)
		if !slices.Equal(got, row.want) || err != nil && lift != 0 {
			t.Errorf("hinged, %s: got %q and %v, want %q", row.name, got, lift, row.want)
		}
	}
}

func TestStrainsRefuses(t *testing.T) {
	type release = softfoot.Release
	good := []release{{What: "a"}, {What: "b", Vertical: -1 * um}}
	with := func(change func([]release)) []release { r := slices.Clone(good); change(r); return r }
	for _, row := range []struct {
		name     string
		limit    units.Length
		releases []release
		want     []string
	}{
		{"sound", 1 * um, good, nil},
		{"no limit", 0, good, []string{"missing /limit"}},
		{"a limit below zero", -1, good, []string{"out_of_range /limit"}},
		{"a limit that is no number", notNumbers[0], good, []string{"not_finite /limit"}},
		{"no releases", 1 * um, nil, []string{"missing /releases"}},
		{"no name", 1 * um, with(func(r []release) { r[0].What = "" }), []string{"missing /releases/0/what"}},
		{"a name twice", 1 * um, with(func(r []release) { r[1].What = "a" }), []string{"duplicate /releases/1/what"}},
		{"horizontal is no number", 1 * um, with(func(r []release) { r[1].Horizontal = notNumbers[1] }), []string{"not_finite /releases/1/horizontal"}},
		{"vertical is no number", 1 * um, with(func(r []release) { r[0].Vertical = notNumbers[2] }), []string{"not_finite /releases/0/vertical"}},
		{"all at once", 0, []release{{Vertical: notNumbers[2]}, {What: "b", Horizontal: notNumbers[0]}},
			[]string{"missing /limit", "missing /releases/0/what", "not_finite /releases/0/vertical", "not_finite /releases/1/horizontal"}},
	} {
		strains, err := softfoot.Strains(row.limit, row.releases...)
		got := faultsOf(err)
		slices.Sort(got)
		if !slices.Equal(got, row.want) || err != nil && strains != nil {
			t.Errorf("%s: got %q and %v, want %q", row.name, got, strains, row.want)
		}
	}
}

// Where the planes differ the larger counts; exactly on the limit is not over.
func TestStrains(t *testing.T) {
	limit := 3 * units.Mil
	for _, row := range []struct {
		horizontal, vertical, largest units.Length
		over                          bool
	}{
		{0, 0, 0, false},
		{limit, -limit, limit, false},
		{-limit, 0, limit, false},
		{limit + 0.4, 0, limit + 0.4, false}, // less than half a nanometre
		{limit + nm, 0, limit + nm, true},
		{0, -limit - nm, limit + nm, true},
		{2 * units.Mil, 2.5 * units.Mil, 2.5 * units.Mil, false}, // 3.2 mil as a vector, but each plane has its own limit
		{-5 * units.Mil, 4 * units.Mil, 5 * units.Mil, true},
	} {
		release := softfoot.Release{What: "flange", Horizontal: row.horizontal, Vertical: row.vertical}
		got, err := softfoot.Strains(softfoot.PipingLimit, release)
		if want := (softfoot.Strain{Release: release, Largest: row.largest, Over: row.over}); err != nil || len(got) != 1 || got[0] != want {
			t.Errorf("got %+v (%v), want %+v", got, err, want)
		}
	}
}
