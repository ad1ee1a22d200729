package pumpset

import (
	"fmt"
	"slices"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

// grown shows what each support does, and the cold target that follows.
func (p *report) grown() {
	p.section("Target")
	p.para("From how the machines grow between cold and running:")
	j := p.Job.Growth
	p.item("source", string(j.Source))
	p.machine("stationary", j.Stationary, &p.Growth.Stationary)
	p.machine("movable", j.Movable, &p.Growth.Movable)
	p.para("Cold, the movable shaft has to lie like this, to run in line:")
	p.lie(p.Growth.Target)
	p.para(p.Growth.basisWords())
}

// machine shows one line for each support and one for each material.
func (p *report) machine(name string, entered []support, m *machineGrown) {
	if m.Supports == nil {
		p.item(name, "taken to stay as it is: the job gives no supports of it")
		return
	}
	for i, s := range m.Supports {
		p.item(name, fmt.Sprintf("%s, %s: grows %s, %s (%s). %s", s.Name, p.side(s.X),
			p.rise(s.By.Vertical), p.across(s.By.Horizontal), p.growthDoubt(s.U), p.told(&entered[i])))
	}
	var shown []string
	for i := range entered {
		for _, l := range entered[i].legs() {
			shown = p.material(shown, l)
		}
	}
}

func (p *report) growthDoubt(u *align.Vector) string {
	if u == nil {
		return "u unknown"
	}
	words := "u " + p.fine(u.Vertical)
	if u.Horizontal != 0 {
		words += " up, " + p.fine(u.Horizontal) + " sideways"
	}
	return words
}

// told is how the job tells the growth of a support.
func (p *report) told(s *support) string {
	if s.Measured != nil {
		return "Measured from cold to running."
	}
	words := make([]string, 0, len(s.Pieces))
	for _, l := range s.legs() {
		words = append(words, fmt.Sprintf("%s of %s, %s.", p.entered(l.Height, p.station), l.Material, l.warms()))
	}
	return strings.Join(words, " ")
}

// warms is how the job tells the rise of a piece.
func (l *leg) warms() string {
	switch last := len(l.Profile) - 1; {
	case last < 0 && l.Rise.Value == 0:
		return "stays as it is"
	case last < 0 && l.Rise.Value < 0:
		return "colder by " + unsigned(l.Rise.text)
	case last < 0:
		return "warmer by " + unsigned(l.Rise.text)
	case last == 0:
		return fmt.Sprintf("%s cold, %s running", belowZero(l.Cold.text), belowZero(l.Profile[0].Running.text))
	default:
		return fmt.Sprintf("%s cold, %s at the bottom to %s at the top running", belowZero(l.Cold.text),
			belowZero(l.Profile[0].Running.text), belowZero(l.Profile[last].Running.text))
	}
}

func unsigned(text string) string { return strings.TrimLeft(text, "+-") }

// belowZero says of a number with a minus what that means.
func belowZero(text string) string {
	if strings.HasPrefix(text, "-") {
		return unsigned(text) + " below zero"
	}
	return unsigned(text)
}

// legs are the pieces of a support on whichever side.
func (s *support) legs() []leg { return slices.Concat(s.Pieces, s.Three, s.Nine) }

// material shows a coefficient with its source, once.
func (p *report) material(shown []string, l leg) []string {
	var none strict.Faults
	m := l.material(&none, "")
	coefficient := l.Expansion.text
	if coefficient == "" {
		coefficient = m.Expansion.Text(units.InMicrometresPerMetreKelvin, 2)
	}
	text := fmt.Sprintf("%s: %s, from %s", m.Name, belowZero(coefficient), m.Source)
	if !slices.Contains(shown, text) {
		p.item("", text+".")
		shown = append(shown, text)
	}
	return shown
}

// lie says how the movable shaft lies at the coupling centre and on from there.
func (p *report) lie(e align.Estimate) {
	value, u, basis := e.Value, e.Cov.Standard(), e.Cov.Basis
	p.item("up and down", fmt.Sprintf("%s at the coupling centre (%s); %s (%s)",
		p.height(value.Vertical.Offset), p.doubt(u.Vertical.Offset, basis),
		p.climb(value.Vertical.Slope), p.slopeDoubt(u.Vertical.Slope, basis)))
	p.item("sideways", fmt.Sprintf("%s at the coupling centre (%s); %s (%s)",
		p.sideways(value.Horizontal.Offset), p.doubt(u.Horizontal.Offset, basis),
		p.drift(value.Horizontal.Slope), p.slopeDoubt(u.Horizontal.Slope, basis)))
}

// basisWords tell where the uncertainties of the target come from, and whose
// supports lack one.
func (g *grown) basisWords() string {
	var lack []string
	if g.Stationary.Line.Cov.Basis == align.Unknown {
		lack = append(lack, "the stationary machine")
	}
	if g.Movable.Line.Cov.Basis == align.Unknown {
		lack = append(lack, "the movable machine")
	}
	if lack != nil {
		return "u is unknown: no uncertainty is stated for the supports of " + strings.Join(lack, ", nor for those of ") + ". Unknown is not zero, and what is off target has none to show then."
	}
	return "u is a standard uncertainty, from those that the job states for the growth; what it does not state counts as exact. It counts in what is off target and in the moves."
}

// runs says how the shafts will lie when the machines are warm.
func (p *report) runs() {
	p.section("Running, as it is to be expected")
	p.para("What was left, and the growth of both machines on top of it:")
	p.lie(*p.Left.Running)
	p.para("This is a forecast. Measure the machines when they run, or soon after they stop, to know.")
}
