package adapter

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type flangeInput struct {
	Position  position      `json:"position"`
	Target    *position     `json:"target,omitzero"`
	Face      units.Length  `json:"face"`
	UFace     units.Length  `json:"u_face,omitzero"`
	Push      flange.Push   `json:"push"`
	View      align.View    `json:"view"`
	Bolts     []flange.Bolt `json:"bolts"`
	Clearance *units.Length `json:"clearance,omitzero"`
	Spigot    align.Vector  `json:"spigot,omitzero"`
}

type flangeResult struct {
	Shims     []flangeShim  `json:"shims"`
	Axial     units.Length  `json:"axial"`
	Slide     slide         `json:"slide"`
	TiltShift align.Vector  `json:"tilt_shift"`
	Rabbet    string        `json:"rabbet,omitzero"` // where a clearance is given
	Over      *units.Length `json:"over,omitzero"`   // where it does not fit
}

type flangeShim struct {
	Bolt      string        `json:"bolt"`
	Thickness units.Length  `json:"thickness"`
	U         *units.Length `json:"u,omitzero"`
}

type slide struct {
	Horizontal units.Length  `json:"horizontal"`
	Vertical   units.Length  `json:"vertical"`
	U          *align.Vector `json:"u,omitzero"`
}

func correctFlange(in *flangeInput, f *strict.Faults) flangeResult {
	above(f, "/clearance", in.Clearance)
	off := lessTarget(f, &in.Position, in.Target)
	c, err := flange.Flange{
		Face: in.Face, UFace: in.UFace, Push: in.Push, Bolts: in.Bolts, View: in.View,
		Clearance: value(in.Clearance), Spigot: in.Spigot,
	}.Correct(off)
	f.Adopt(err, ofFlange)
	return toldFlange(&c)
}

// ofFlange blames the clock position of a bolt that stands where another does; the
// library blames the bolt.
func ofFlange(path string) string {
	if bolt, found := strings.CutPrefix(path, "/bolts/"); found && !strings.Contains(bolt, "/") {
		return path + "/at"
	}
	return ofPosition(path)
}

func toldFlange(c *flange.Correction) flangeResult {
	by := toldMove(c.Slide)
	result := flangeResult{Axial: c.Axial, Slide: slide{by.Horizontal, by.Vertical, by.U}, TiltShift: c.TiltShift}
	for _, s := range c.Shims {
		told := flangeShim{Bolt: s.Bolt.Name, Thickness: s.Thickness}
		if s.Basis == align.Stated {
			told.U = &s.U
		}
		result.Shims = append(result.Shims, told)
	}
	if c.Rabbet != flange.NotStated {
		result.Rabbet = c.Rabbet.String()
	}
	if c.Rabbet == flange.DoesNotFit {
		result.Over = &c.Over
	}
	return result
}

type flangeRunoutInput struct {
	Spigot units.Length `json:"spigot"`
}

type flangeRunoutResult struct {
	Limit units.Length `json:"limit"`
}

func flangeRunout(in *flangeRunoutInput, f *strict.Faults) flangeRunoutResult {
	l, err := flange.Runout(in.Spigot)
	f.Adopt(err, same)
	return flangeRunoutResult{l.Limit}
}
