package thermal_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
	"pgregory.net/rapid"
)

func profiled(height units.Length, cold float64, spots ...float64) thermal.Piece {
	p := thermal.Piece{Height: height, Material: steel, Cold: units.Celsius(cold)}
	for i := 0; i < len(spots); i += 2 {
		p.Profile = append(p.Profile, thermal.Spot{Up: units.Length(spots[i]) * mm, Running: units.Celsius(spots[i+1])})
	}
	return p
}

// The mean rise of a leg of 400 mm, worked out by hand.
func TestProfileByHand(t *testing.T) {
	rows := []struct {
		name  string
		spots []float64 // mm, °C
		mean  float64   // °C
	}{
		{"one spot is the mean, at the base", []float64{0, 70}, 70},
		{"one spot is the mean, anywhere", []float64{123, 70}, 70},
		{"one spot is the mean, at the top", []float64{400, 70}, 70},
		{"straight line", []float64{0, 30, 400, 90}, 60},
		{"straight line, read at uneven places", []float64{0, 30, 100, 45, 360, 84, 400, 90}, 60},
		{"end values held: 100 mm at 30, 200 mm at 50, 100 mm at 70", []float64{100, 30, 300, 70}, 50},
		{"held at the base alone: 300 mm at 40, 100 mm at 60", []float64{300, 40, 400, 80}, 45},
		{"held at the top alone: 100 mm at 60, 300 mm at 80", []float64{0, 40, 100, 80}, 75},
		{"uneven places: 40 mm at 20, 60 at 60, 300 at 100", []float64{40, 20, 100, 100}, (40*20 + 60*60 + 300*100) / 400.0},
		{"up and down again", []float64{0, 20, 200, 120, 400, 20}, 70},
		{"colder than cold", []float64{0, 10, 400, -30}, -10},
	}
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			got, _ := alone(t, on(0, profiled(400*mm, 10, row.spots...)))
			want := 400e6 * 11e-6 * (row.mean - 10)
			near(t, "growth", got.Vertical, units.Length(want), 1e-9)
		})
	}
}

// Left out, cold is 20 °C.
func TestColdLeftOut(t *testing.T) {
	p := profiled(400*mm, 20, 0, 70)
	p.Cold = units.Temperature{}
	got, _ := alone(t, on(0, p))
	near(t, "growth", got.Vertical, 400e6*11e-6*50, 1e-9)
}

// A profile that is the same everywhere, or straight, is its mean.
func TestProfileEqualsRise(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		height := between(t, 20*mm, 1500*mm, "height")
		cold := units.Celsius(between(t, -40.0, 60, "cold"))
		base, top := between(t, -100.0, 500, "base"), between(t, -100.0, 500, "top")
		straight := thermal.Piece{Height: height, Material: steel, Cold: cold, Profile: drawProfile(t, height)}
		last := len(straight.Profile) - 1
		straight.Profile[0].Up, straight.Profile[last].Up = 0, height
		if last == 0 {
			straight.Profile = []thermal.Spot{{}, {Up: height}}
		}
		for i := range straight.Profile {
			share := float64(straight.Profile[i].Up / height)
			straight.Profile[i].Running = units.Celsius(base + (top-base)*share)
		}
		got, _ := alone(t, on(0, straight))
		want, _ := alone(t, on(0, piece(height, steel, units.Celsius((base+top)/2).Minus(cold))))
		nearVector(t, "straight", got, want, rounding)

		for i := range straight.Profile {
			straight.Profile[i].Running = units.Celsius(top)
		}
		got, _ = alone(t, on(0, straight))
		want, _ = alone(t, on(0, piece(height, steel, units.Celsius(top).Minus(cold))))
		nearVector(t, "uniform", got, want, rounding)
	})
}

// running is the temperature at a place, looked up with no thought of areas.
func running(p thermal.Piece, up units.Length) float64 {
	before := p.Profile[0]
	for _, s := range p.Profile {
		if s.Up >= up {
			if s.Up == before.Up {
				return s.Running.Celsius()
			}
			share := float64((up - before.Up) / (s.Up - before.Up))
			if share < 0 { // below the first spot
				share = 0
			}
			return before.Running.Celsius() + (s.Running.Celsius()-before.Running.Celsius())*share
		}
		before = s
	}
	return before.Running.Celsius()
}

// Slices of a leg, each at the temperature of its middle, grow together what
// the leg grows. A middle is right for every slice but those with a spot in them,
// which miss by the bend there: at most 600 K over one slice, for five spots.
func TestProfileAgainstSlices(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		height := between(t, 20*mm, 1500*mm, "height")
		p := thermal.Piece{Height: height, Material: steel, Cold: units.Celsius(between(t, -40.0, 60, "cold")), Profile: drawProfile(t, height)}
		const n = 2000
		var slices float64
		for i := range n {
			up := height * units.Length((float64(i)+0.5)/n)
			slices += float64(height) / n * float64(steel.Expansion) * (running(p, up) - p.Cold.Celsius())
		}
		got, _ := alone(t, on(0, p))
		near(t, "growth", got.Vertical, units.Length(slices), height*units.Length(float64(steel.Expansion)*600*5/n))
	})
}

// A spot between two others that lies on their line changes nothing; and where
// the profile is cut, the two parts grow together what the whole grows.
func TestProfileCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		height := between(t, 20*mm, 1500*mm, "height")
		whole := thermal.Piece{Height: height, Material: steel, Cold: units.Celsius(15), Profile: drawProfile(t, height)}
		cut := between(t, mm, height-mm, "cut")
		middle := units.Celsius(running(whole, cut))
		lower, upper := whole, whole
		lower.Height, upper.Height = cut, height-cut
		lower.Profile, upper.Profile = nil, []thermal.Spot{{Running: middle}}
		for _, s := range whole.Profile {
			if s.Up < cut {
				lower.Profile = append(lower.Profile, s)
			}
			if s.Up > cut {
				upper.Profile = append(upper.Profile, thermal.Spot{Up: min(s.Up-cut, upper.Height), Running: s.Running})
			}
		}
		lower.Profile = append(lower.Profile, thermal.Spot{Up: cut, Running: middle})
		a, _ := alone(t, on(0, whole))
		b, _ := alone(t, on(0, lower, upper))
		nearVector(t, "cut", b, a, align.Vector{Vertical: 1e-5}.Vertical)
	})
}
