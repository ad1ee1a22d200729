package pumpset

import (
	"encoding/json"
	"math"
	"strconv"
	"testing"

	"example.org/collinear/units"
	"pgregory.net/rapid"
)

// plant is a scene with four single feet at the corners of a rectangle, one pad
// of which is low, and with machines that grow. Lengths are in millimetres.
type plant struct {
	scene
	height, across   float64 // of the shaft above the feet; of a foot from below the shaft
	low, common      float64
	which            int           // pad: inboard 3 and 9, outboard 3 and 9, of the library's observer
	legs             [4][2]float64 // rises at two supports of the stationary and two of the movable machine, under 3 and 9
	supports         [2]float64    // stations of the stationary machine's
	leg, coefficient float64
	way              int // against soft foot, of three
}

func drawPlant(t *rapid.T) plant {
	within := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	p := plant{
		scene: draw(t), height: within("height", 100, 900), across: within("across", 80, 500),
		low: within("low", 0.1, 0.6), common: within("common", 0, 0.05), which: rapid.IntRange(0, 3).Draw(t, "which"),
		leg: within("leg", 100, 900), coefficient: within("coefficient", 5e-6, 25e-6),
		way: rapid.IntRange(1, 3).Draw(t, "way"),
	}
	p.method, p.far = "reverse", false
	for i := range p.legs {
		p.legs[i] = [2]float64{within("rise at 3", -20, 80), within("rise at 9", -20, 80)}
	}
	p.supports[0] = within("coupling end", -900, -310)
	p.supports[1] = p.supports[0] - within("between", 100, 900)
	return p
}

// side names a side as the crew does.
func (p *plant) side(nine bool) string {
	if nine != p.fromStationary {
		return "nine"
	}
	return "three"
}

// lift of a foot with its bolt loose: the twist of the pads hangs the low one and
// the one across from it.
func (p *plant) lift(foot int) float64 {
	if foot == p.which || foot == 3-p.which {
		return p.common + p.low
	}
	return p.common
}

func (p *plant) singleFeet() object {
	var feet []object
	for i := range 4 {
		feet = append(feet, object{
			"name": string(rune('a' + i)), "station": []string{"inboard", "outboard"}[i/2], "side": p.side(i%2 == 1),
			"across": millimetres(p.across), "lift": millimetres(p.lift(i)),
		})
	}
	return object{"height": millimetres(p.height), "feet": feet, "way": strconv.Itoa(p.way)}
}

func (p *plant) growth() object {
	support := func(i int, x float64) object {
		side := func(rise float64) []object {
			return []object{{"height": millimetres(p.leg), "material": "own", "source": "drawn",
				"expansion": units.Expansion(p.coefficient).String(), "rise": units.TemperatureDifference(rise).String()}}
		}
		return object{
			"name": string(rune('a' + i)), "from_centre": millimetres(x), "track": millimetres(2 * p.across),
			p.side(false): side(p.legs[i][0]), p.side(true): side(p.legs[i][1]),
		}
	}
	return object{
		"stationary": []object{support(0, p.supports[0]), support(1, p.supports[1])},
		"movable":    []object{support(2, p.feet[0]), support(3, p.feet[1])},
	}
}

func (p *plant) document(t rapid.TB) []byte {
	t.Helper()
	set := func(field string, value object) edit {
		data, err := json.Marshal(value)
		if err != nil {
			t.Fatal(err)
		}
		return with(field, string(data))
	}
	return both(without("/target"), set("/single_feet", p.singleFeet()), set("/growth", p.growth()))(t, p.scene.document(t))
}

// grows is how a shaft moves, up and towards 3, when the legs at a support do:
// by their mean, and over to the lower one as the machine rolls on its feet.
func (p *plant) grows(support int) (up, to3 float64) {
	three, nine := p.leg*p.coefficient*p.legs[support][0], p.leg*p.coefficient*p.legs[support][1]
	return (three + nine) / 2, -p.leg * (three - nine) / (2 * p.across)
}

func through(xa, wa, xb, wb, x float64) float64 { return wa + (wb-wa)*(x-xa)/(xb-xa) }

// Whatever stands low and grows, the shims of each foot and the pushes leave the
// shafts in line when they run. The way there shares no code with the program:
// shims raise the shaft at either end by their mean, and roll the machine by what
// they do across.
func TestBothJobsInOne(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlant(t)
		doc := p.document(t)
		r := mustSolve(t, doc)
		if r.cure() == nil {
			t.Fatal("no shims are advised for one low pad")
		}
		var more [4]float64
		for i, o := range r.Packs.Orders {
			more[i] = (o.Correction + o.SoftFoot).In(units.InMillimetres)
		}
		near(t, "half of what is filled in of the twist, by one shim or two", sum(more[0], -more[1], -more[2], more[3])/2, p.twist()/2)
		roll := -p.height * sum(more[0], -more[1], more[2], -more[3]) / 2 / (2 * p.across)
		for i, x := range p.feet {
			up, to3 := p.runs(x)
			running, _ := r.Found.Running.At(units.Length(x) * units.Millimetre)
			near(t, "running, in height", running.Vertical.In(units.InMillimetres), up)
			near(t, "running, sideways", running.Horizontal.In(units.InMillimetres), to3)
			cold := r.Target.At(units.Length(x) * units.Millimetre)
			near(t, "target, in height", cold.Vertical.In(units.InMillimetres), p.oz+p.sz*x-up)
			near(t, "target, sideways", cold.Horizontal.In(units.InMillimetres), p.oy+p.sy*x-to3)
			near(t, "off in height", up+(more[2*i]+more[2*i+1])/2, 0)
			// A shim is rounded to a nanometre, which the roll makes more of.
			off := to3 + roll + r.Found.Moves[i].By.Horizontal.In(units.InMillimetres)
			near(t, "off sideways", off/(1+p.height/p.across), 0)
		}
		for _, system := range []System{Metric, Inch} {
			checkPage(t, text(t, r, system))
		}
		checkRecord(t, r)
	})
}

func sum(list ...float64) float64 {
	total := 0.0
	for _, x := range list {
		total += x
	}
	return total
}

// twist is what the shims have to fill in, added up with the signs of the corners.
func (p *plant) twist() float64 {
	if p.which == 0 || p.which == 3 {
		return p.low
	}
	return -p.low
}

// runs is how the movable shaft would lie at x, up and towards 3, if it ran as it
// was found.
func (p *plant) runs(x float64) (up, to3 float64) {
	var ups, to3s [4]float64
	for i := range p.legs {
		ups[i], to3s[i] = p.grows(i)
	}
	s, f := p.supports, p.feet
	up = p.oz + p.sz*x + through(f[0], ups[2], f[1], ups[3], x) - through(s[0], ups[0], s[1], ups[1], x)
	to3 = p.oy + p.sy*x + through(f[0], to3s[2], f[1], to3s[3], x) - through(s[0], to3s[0], s[1], to3s[1], x)
	return up, to3
}

// Which side of a machine is low is told in the crew's own words, wherever they
// stand: the foot that is named is the one that gets the shim.
func TestSingleFeetAreNamed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPlant(t)
		r := mustSolve(t, p.document(t))
		for _, f := range r.SoftFoot.Feet {
			i := int(f.Foot[0] - 'a')
			near(t, "excess of "+f.Foot, f.Excess.In(units.InMillimetres), p.lift(i)-p.common)
		}
		for _, s := range r.cure().Shims {
			if i := int(s.Foot[0] - 'a'); i != p.which && i != 3-p.which {
				t.Errorf("a shim goes under %s", s.Foot)
			}
		}
		rolls := math.Abs(float64(r.shift().Horizontal.Offset)) > 1 // nm
		if single := len(r.cure().Shims) == 1; rolls != single || single == (p.way == 3) {
			t.Errorf("way %d puts in %d shims, and rolls the machine: %t", p.way, len(r.cure().Shims), rolls)
		}
	})
}
