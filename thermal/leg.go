package thermal

import (
	"example.org/collinear/align"
	"example.org/collinear/units"
)

// leg is a stack of pieces, and what it does to the centreline above it.
type leg struct {
	pieces []Piece
	up     float64 // the centreline's rise per growth of the leg
	across float64 // its movement towards 3 o'clock per growth of the leg
	lean   float64 // its movement towards 3 o'clock per height of the leg, once the machine is rolled
}

// legs returns the stacks of a support that was not measured. Legs that differ lift the shaft by their
// mean and roll the machine by their difference: for growths g3 and g9, the
// shaft H above the feet and the feet B apart,
//
//	dz = (g3 + g9)/2        dy = -H (g3 - g9)/B
//
// H is the mean height of both, so that each height counts for half in it.
func (s *Support) legs() [2]leg {
	if len(s.Pieces) > 0 {
		return [2]leg{{pieces: s.Pieces, up: 1}, {}}
	}
	three, nine := leg{pieces: s.Three, up: 0.5}, leg{pieces: s.Nine, up: 0.5}
	perTrack := float64((three.height()+nine.height())/2) / float64(s.Track)
	roll := float64(three.growth()-nine.growth()) / float64(s.Track)
	three.across, nine.across = -perTrack, perTrack
	three.lean, nine.lean = -roll/2, -roll/2
	return [2]leg{three, nine}
}

// movement is how the centreline moves at the support.
func (s *Support) movement() align.Vector {
	if s.Measured != nil {
		return s.Measured.By
	}
	var sum align.Vector
	for _, l := range s.legs() {
		v := l.moves(float64(l.growth()))
		sum.Horizontal += v.Horizontal
		sum.Vertical += v.Vertical
	}
	return sum
}

// moves is what a growth of the leg does to the centreline.
func (l *leg) moves(growth float64) align.Vector {
	return align.Vector{Horizontal: units.Length(l.across * growth), Vertical: units.Length(l.up * growth)}
}

func (l *leg) height() (sum units.Length) {
	for i := range l.pieces {
		sum += l.pieces[i].Height
	}
	return sum
}

func (l *leg) growth() (sum units.Length) {
	for i := range l.pieces {
		sum += l.pieces[i].growth()
	}
	return sum
}

// growth of a piece is height times coefficient times rise, McMillan, pp.
// 137-141.
func (p *Piece) growth() units.Length {
	return units.Length(float64(p.Height) * float64(p.Material.Expansion) * float64(p.rise()))
}

// rise is the mean temperature when running less that when cold.
func (p *Piece) rise() units.TemperatureDifference {
	if len(p.Profile) == 0 {
		return p.Rise
	}
	return units.TemperatureDifference(p.area() / float64(p.Height))
}

// area is the integral of the rise over the height, by the trapezoidal rule:
// exact for straight lines between the spots, with the end values held.
func (p *Piece) area() float64 {
	first, last := p.Profile[0], p.Profile[len(p.Profile)-1]
	sum := float64(float64(first.Up) * first.rise(p.Cold))
	for i := 1; i < len(p.Profile); i++ {
		below, above := p.Profile[i-1], p.Profile[i]
		sum += float64(float64(above.Up-below.Up) * (below.rise(p.Cold) + above.rise(p.Cold)) / 2)
	}
	return sum + float64(float64(p.Height-last.Up)*last.rise(p.Cold))
}

func (s Spot) rise(cold units.Temperature) float64 { return float64(s.Running.Minus(cold)) }
