package arc_test

import (
	"encoding/json"
	"math"
	"slices"
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/arc"
	"example.org/collinear/units"
	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// One thing wrong in a follow that is sound otherwise, and a twin that is nearly
// the same and passes.
func TestFollowRefuses(t *testing.T) {
	face := func(free bool) arc.Standing {
		return arc.Standing{
			Probe:     align.Probe{Kind: align.NearFace, Carrier: align.Stationary, Radius: 75 * mm},
			Start:     align.Reading{U: um},
			AxialFree: free,
		}
	}
	at := func(t units.Clock) func(*arc.Follow) {
		return func(f *arc.Follow) { f.Probes[1].Start.At = t }
	}
	nan := units.Length(math.NaN())
	for _, row := range []struct {
		name      string
		plane     arc.Plane
		bad, twin func(*arc.Follow)
		want      []string
	}{
		{"where it stood", arc.Vertical, func(f *arc.Follow) { f.From.Value.Vertical.Offset = nan }, func(f *arc.Follow) { f.From.Value.Vertical.Offset = 0 }, []string{"not_finite /from/value/vertical/offset"}},
		{"no plane", arc.Vertical, func(f *arc.Follow) { f.Plane = 0 }, func(*arc.Follow) {}, []string{"missing /plane"}},
		{"a plane that does not exist", arc.Vertical, func(f *arc.Follow) { f.Plane = 3 }, func(f *arc.Follow) { f.Plane = 2 }, []string{"out_of_range /plane"}},
		{"a view that does not exist", arc.Vertical, func(f *arc.Follow) { f.View = 2 }, func(f *arc.Follow) { f.View = 1 }, []string{"out_of_range /view"}},
		{"one probe", arc.Vertical, func(f *arc.Follow) { f.Probes = f.Probes[:1] }, func(f *arc.Follow) { f.Probes = f.Probes[:2] }, []string{"missing /probes"}},
		{"no kind", arc.Vertical, func(f *arc.Follow) { f.Probes[1].Probe = align.Probe{} }, func(*arc.Follow) {}, []string{"missing /probes/1/probe/kind"}},
		{"no carrier", arc.Horizontal, func(f *arc.Follow) { f.Probes[1].Probe.Carrier = 0 }, func(f *arc.Follow) { f.Probes[1].Probe.Carrier = 1 }, []string{"missing /probes/1/probe/carrier"}},
		{"a station that is not finite", arc.Vertical, func(f *arc.Follow) { f.Probes[0].Probe.Station = nan }, func(f *arc.Follow) { f.Probes[0].Probe.Station = 0 }, []string{"not_finite /probes/0/probe/station"}},
		{"a position that is not finite", arc.Vertical, at(units.Clock(math.Inf(1))), at(170), []string{"not_finite /probes/1/start/at"}},
		{"a start that is not finite", arc.Vertical, func(f *arc.Follow) { f.Probes[1].Start.Value = nan }, func(f *arc.Follow) { f.Probes[1].Start.Value = 0 }, []string{"not_finite /probes/1/start/value"}},
		{"an uncertainty below zero", arc.Vertical, func(f *arc.Follow) { f.Probes[1].Start.U = -1 }, func(f *arc.Follow) { f.Probes[1].Start.U = 1 }, []string{"out_of_range /probes/1/start/u"}},
		{"an uncertainty of one only", arc.Vertical, func(f *arc.Follow) { f.Probes[1].Start.U = 0 }, func(f *arc.Follow) { f.Probes[0].Start.U, f.Probes[1].Start.U = 0, 0 }, []string{"conflict /probes"}},

		{"at 3, vertical", arc.Vertical, at(units.Three), at(units.Three - 30), []string{"unseen /probes/1/start/at"}},
		{"at 9, vertical", arc.Vertical, at(units.Nine), at(units.Nine + 30), []string{"unseen /probes/1/start/at"}},
		{"nearly at 3, vertical", arc.Vertical, at(89.5), at(89.4), []string{"unseen /probes/1/start/at"}},
		{"at 12, horizontal", arc.Horizontal, at(units.Twelve), at(units.Twelve + 30), []string{"unseen /probes/1/start/at"}},
		{"nearly at 6, horizontal", arc.Horizontal, at(180.5), at(180.6), []string{"unseen /probes/1/start/at"}},

		{"a face, vertical", arc.Vertical, func(f *arc.Follow) { f.Probes[1] = face(false) }, func(f *arc.Follow) { f.Probes[1] = face(true) }, []string{"unseen /probes/1/axial_free"}},
		{"a rim free of axial shift", arc.Horizontal, func(f *arc.Follow) { f.Probes[1].AxialFree = true }, func(f *arc.Follow) { f.Probes[1] = face(true); f.Probes[1].Start.At = 90 }, []string{"conflict /probes/1/axial_free"}},
		{"one station only", arc.Vertical, func(f *arc.Follow) { f.Probes[1].Probe.Station = 40 * mm }, func(f *arc.Follow) { f.Probes[1].Probe.Station = 41 * mm }, []string{"unseen /probes"}},
		{"the coupling only", arc.Vertical, func(f *arc.Follow) { f.Probes[0].Probe.Station, f.Probes[1].Probe.Station = 0, 0 }, func(f *arc.Follow) { f.Probes[0].Probe.Station = 0 }, []string{"unseen /probes"}},
		{"faces only", arc.Vertical, func(f *arc.Follow) { f.Probes = []arc.Standing{face(true), face(true)} }, func(f *arc.Follow) { f.Probes = append(f.Probes, face(true), face(true)) }, []string{"unseen /probes"}},
		{"all at once", arc.Vertical, func(f *arc.Follow) {
			f.From.Cov.Basis, f.View, f.Probes[0].Probe.Carrier, f.Probes[1].Start.At = 9, 9, 9, 90
		}, func(*arc.Follow) {}, []string{"out_of_range /from/cov/basis", "out_of_range /probes/0/probe/carrier", "out_of_range /view", "unseen /probes/1/start/at"}},
	} {
		t.Run(row.name, func(t *testing.T) {
			bad, twin := rims(row.plane), rims(row.plane)
			row.bad(&bad)
			_, err := bad.Begin()
			if got := codesAndPaths(err); !slices.Equal(got, row.want) {
				t.Errorf("got %v (%v), want just %v", got, err, row.want)
			}
			row.twin(&twin)
			if _, err := twin.Begin(); err != nil {
				t.Errorf("the twin is refused: %v", err)
			}
		})
	}
}

// A face of any kind sees a machine turn sideways, and is asked for what it is when
// it is raised.
func TestFollowFacesByPlane(t *testing.T) {
	for _, p := range everyStanding {
		for _, plane := range []arc.Plane{arc.Horizontal, arc.Vertical} {
			f := rims(plane)
			f.Probes[1].Probe = p
			f.Probes[1].Probe.Carrier = p.Carrier
			_, err := f.Begin()
			if want := faces(p.Kind) && plane == arc.Vertical; want != (err != nil) && p.Station != 40*mm {
				t.Errorf("%v, %v: got %v", p.Kind, plane, err)
			}
		}
	}
}

func TestNowRefuses(t *testing.T) {
	g := mustBegin(t, rims(arc.Vertical))
	nan := units.Length(math.NaN())
	near := rims(arc.Vertical)
	near.Probes[1].Probe.Station = 41 * mm
	three := rims(arc.Vertical)
	three.Probes = append(three.Probes, three.Probes[0])
	for i := range three.Probes {
		three.Probes[i].Start.Value = 0
	}
	three.Probes[2].Start.Value = -0.9e15
	for _, row := range []struct {
		name string
		g    *arc.Following
		now  []units.Length
		want []string
	}{
		{"a miss not of this world", mustBegin(t, three), []units.Length{-0.9e15, 0, 0.9e15}, []string{"out_of_range /readings"}},
		{"too few", g, []units.Length{1}, []string{"missing /readings"}},
		{"too many", g, []units.Length{1, 2, 3}, []string{"conflict /readings"}},
		{"not finite, both", g, []units.Length{nan, nan}, []string{"not_finite /readings/0", "not_finite /readings/1"}},
		{"not of this world", mustBegin(t, near), []units.Length{9e14, -9e14}, []string{"out_of_range /readings"}},
		{"the zero value", new(arc.Following), nil, []string{"missing /probes"}},
	} {
		_, err := row.g.Now(row.now...)
		if got := codesAndPaths(err); !slices.Equal(got, row.want) {
			t.Errorf("%s: got %v (%v), want %v", row.name, got, err, row.want)
		}
	}
	mustNow(t, g, 1, 2) // the twin
	for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		_, err := g.TurnError(units.Angle(bad))
		checkFault(t, err, units.NotFinite, "/by")
		_, err = g.UnseenError(align.Line{Slope: units.Slope(bad)})
		checkFault(t, err, units.NotFinite, "/other/slope")
	}
}

// Begin keeps nothing of what it was given.
func TestFollowSharesNoMemory(t *testing.T) {
	f := rims(arc.Vertical)
	g := mustBegin(t, f)
	before := mustNow(t, g, 1, 2)
	f.Probes[0] = arc.Standing{}
	if diff := cmp.Diff(before, mustNow(t, g, 1, 2), openly); diff != "" {
		t.Error(diff)
	}
}

var openly = cmp.AllowUnexported(align.Covariance{})

func TestFollowZero(t *testing.T) {
	_, err := arc.Follow{}.Begin()
	if got, want := codesAndPaths(err), []string{"missing /plane", "missing /probes"}; !slices.Equal(got, want) {
		t.Errorf("Follow: got %v, want %v", got, want)
	}
	_, err = arc.Follow{Plane: arc.Vertical, Probes: make([]arc.Standing, 2)}.Begin()
	checkFault(t, err, units.Missing, "/probes/0/probe/kind")
	var g arc.Following
	if c, err := g.TurnError(1); c != (align.Centreline{}) || err != nil {
		t.Errorf("TurnError: %v, %v", c, err)
	}
	if c, err := g.UnseenError(align.Line{Offset: 1}); c != (align.Centreline{}) || err != nil {
		t.Errorf("UnseenError: %v, %v", c, err)
	}
	if _, err := arc.Plane(0).MarshalText(); err == nil {
		t.Error("no plane has no word")
	}
	var none arc.Followed
	if none.Validate() != nil || none.Moved.Validate() != nil {
		t.Error("the zero Followed is in line, exactly")
	}
}

func TestPlaneWords(t *testing.T) {
	for p, want := range map[arc.Plane]string{arc.Horizontal: "horizontal", arc.Vertical: "vertical"} {
		text, err := p.MarshalText()
		var back arc.Plane
		if err != nil || string(text) != want || p.String() != want || back.UnmarshalText(text) != nil || back != p {
			t.Errorf("%d: %s, %v, back %v", p, text, err, back)
		}
	}
	var p arc.Plane
	for _, bad := range []string{"", "Vertical", "up"} {
		if err := p.UnmarshalText([]byte(bad)); err == nil {
			t.Errorf("%q is read as %v", bad, p)
		}
	}
}

func TestFollowJSON(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := drawFollow(t)
		sameAfterJSON(t, f, 0)
		sameAfterJSON(t, mustNow(t, mustBegin(t, f), make([]units.Length, len(f.Probes))...), 1e-13)
	})
}

// sameAfterJSON writes, reads and compares; covariances come back to rounding.
func sameAfterJSON[V any](t fataler, v V, relative float64) {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatalf("%+v: %v", v, err)
	}
	var back V
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatalf("%s: %v", text, err)
	}
	closely := cmp.Comparer(func(a, b float64) bool {
		return a == b || math.Abs(a-b) <= relative*(math.Abs(a)+math.Abs(b)) || math.IsNaN(a) && math.IsNaN(b)
	})
	if diff := cmp.Diff(v, back, openly, closely); diff != "" {
		t.Errorf("%s comes back changed:\n%s", text, diff)
	}
}

// Whatever comes in, nothing panics, faults say where they are, and what is answered
// can be reckoned with.
func FuzzFollow(f *testing.F) {
	f.Add(uint8(2), uint8(0), uint8(1), false, 40e6, -50e6, 0.0, 180.0, 2e3, 3e5, 4e4)
	f.Add(uint8(1), uint8(1), uint8(3), true, 75e6, -50e6, 90.0, 250.0, 0.0, 3e5, 4e4)
	f.Add(uint8(2), uint8(1), uint8(9), false, 1e15, -1e-15, 60.0, 20.0, 1e15, 1e15, -1e15)
	f.Fuzz(func(t *testing.T, plane, view, kind uint8, free bool, x, y, s, z, u, now, then float64) {
		g := rims(arc.Plane(plane))
		g.View = align.View(view)
		g.From.Value.Vertical.Offset = units.Length(then)
		first := align.Probe{Kind: align.Kind(kind)}
		if faces(first.Kind) {
			first.Radius, first.Span = units.Length(x), units.Length(max(0, y))
		} else {
			first.Station = units.Length(x)
		}
		if first.Kind != align.Gap && first.Kind != align.Displacement {
			first.Carrier = align.Movable
		} else if first.Kind == align.Displacement {
			first.Gain = s
		}
		g.Probes[0] = arc.Standing{Probe: first, Start: align.Reading{At: units.Clock(s), U: units.Length(u)}, AxialFree: free}
		g.Probes[1].Probe.Station = units.Length(y)
		g.Probes[1].Start = align.Reading{At: units.Clock(z), Value: units.Length(then), U: units.Length(u)}
		followed, err := g.Begin()
		below(t, err, "/from", "/plane", "/view", "/probes")
		if err != nil {
			return
		}
		e, err := followed.Now(units.Length(now), units.Length(then))
		below(t, err, "/readings")
		if err == nil && e.Validate() != nil {
			t.Errorf("answered with %v", e)
		}
	})
}
