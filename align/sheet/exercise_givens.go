package sheet

import (
	"strconv"
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/align/flange"
	"example.org/collinear/shims"
	"example.org/collinear/thermal"
	"example.org/collinear/units"
)

// What the problems put on a handout.

const pushedIn = "A dial counts up when its plunger is pushed in. The readings are as it showed them."

func (j Job) tell(h *handout) {
	if j.Reverse != nil {
		h.stands(j.Reverse.View)
		h.rim(align.Stationary, j.Reverse.CarriedByStationary)
		h.rim(align.Movable, j.Reverse.CarriedByMovable)
	} else if j.RimFace != nil {
		h.stands(j.RimFace.View)
		h.rim(j.RimFace.Carrier, j.RimFace.Rim)
		h.face("Face dial, carried by the "+j.RimFace.Carrier.String()+" shaft", "machine", j.RimFace.Face)
	} else if j.FaceFace != nil {
		h.stands(j.FaceFace.View)
		h.say("The coupling has a spacer, ", h.tape(j.FaceFace.Span), " from flex plane to flex plane.")
		h.face("Face dial at the stationary end of the spacer", "side of the joint", j.FaceFace.AtStationary)
		h.face("Face dial at the movable end of the spacer", "side of the joint", j.FaceFace.AtMovable)
	} else if j.RimGap != nil {
		h.stands(j.RimGap.View)
		h.rim(j.RimGap.Carrier, j.RimGap.Rim)
		h.gauge(j.RimGap.Gap)
	} else if j.StraightedgeGap != nil {
		h.stands(j.StraightedgeGap.View)
		h.straightedge(j.StraightedgeGap.Straightedge)
		h.gauge(j.StraightedgeGap.Gap)
	}
	if j.StraightedgeGap == nil {
		h.say(pushedIn)
	}
	h.supports(align.Stationary, j.Stationary)
	h.supports(align.Movable, j.Movable)
	h.feet(j.Feet)
}

func (h *handout) rim(carrier align.Shaft, r dial.Rim) {
	h.say("Rim dial, carried by the ", carrier.String(), " shaft, touching ", h.from(r.Station), droops(r.Sag, h.dial(r.Sag)), ": ", h.round(r.Readings, h.change))
}

// droops tells of a sag, where there is one.
func droops(sag units.Length, text string) string {
	if sag == 0 {
		return ""
	}
	return ", bracket sag " + text
}

func (h *handout) face(what, side string, f dial.Face) {
	way := ", plunger towards the other " + side
	if f.Far {
		way = ", plunger back towards the " + side + " that carries it"
	}
	h.say(what, ", sweeping a circle of ", h.tape(f.Diameter), " diameter", way, h.faceSag(f.Sag), ": ", h.round(f.Readings, h.change))
}

// faceSag tells which way the droop of its bracket moves a face dial.
func (h *handout) faceSag(sag units.Length) string {
	if sag > 0 {
		return ", bracket sag pushes the plunger in by " + h.dial(sag) + " at 12 o'clock"
	}
	if sag < 0 {
		return ", bracket sag lets the plunger out by " + h.dial(-sag) + " at 12 o'clock"
	}
	return ""
}

func (h *handout) gauge(g dial.Gap) {
	h.say("Gap between the faces, across ", h.tape(g.Diameter), ": ", h.round(g.Readings, h.dial))
}

func (h *handout) straightedge(s dial.Straightedge) {
	h.say("Feeler under a straightedge that lies on the ", s.On.String(), " rim, at the other rim, ", h.from(s.Station), ": ", h.round(s.Readings, h.dial))
}

func (h *handout) feet(feet []align.Foot) {
	for _, f := range feet {
		h.say(upper(f.Name), " feet of the movable machine: ", h.from(f.X))
	}
}

func (h *handout) supports(of align.Shaft, supports []thermal.Support) {
	for _, s := range supports {
		text := ""
		for _, p := range s.Pieces {
			text += h.leg(p)
		}
		h.say(upper(s.Name), " support of the ", of.String(), " machine: ", h.from(s.X), text)
	}
}

// leg tells what a support stands on, and how warm that is.
func (h *handout) leg(p thermal.Piece) string {
	text := "; " + p.Material.Name + ", " + h.tape(p.Height) + " from the base to the shaft's centreline, coefficient of expansion " +
		h.plain(expansion, float64(p.Material.Expansion)) + "; " + h.degrees(p.Cold) + " cold"
	for _, spot := range p.Profile {
		text += ", " + h.degrees(spot.Running) + " running, on average"
	}
	return text
}

func (h *handout) degrees(t units.Temperature) string { return h.plain(temperature, t.Celsius()) }

func (s Sweep) tell(h *handout) {
	h.stands(s.View)
	h.rim(s.Carrier, s.Rim)
	h.say(pushedIn)
	if s.Mandrel != nil {
		h.mandrel(s.Mandrel.At12, s.Mandrel.At6)
	}
	without := "The readings are wanted"
	if s.Mandrel != nil || s.Rim.Sag != 0 {
		without += " without sag,"
	}
	h.say(without, " from zero at ", oClock(s.Zero), ".")
}

func (h *handout) mandrel(at12, at6 units.Length) {
	h.say("On a straight mandrel the bracket showed ", h.change(at12), " at 12 o'clock and ", h.change(at6), " at 6 o'clock.")
}

func (s Sag) tell(h *handout) { h.mandrel(s.At12, s.At6) }

func (g GapFromSlope) tell(h *handout) {
	h.stands(align.FromMovable)
	h.say("Coupling: ", h.tape(g.Diameter), " diameter")
	h.leans(g.Centreline)
}

func (g SlopeFromGap) tell(h *handout) {
	h.stands(align.FromMovable)
	h.say("Coupling: ", h.tape(g.Diameter), " diameter")
	h.say("At ", oClock(g.At), " it stands open by ", h.dial(g.Opening), " more than across from there.")
}

func (f FlexTilts) tell(h *handout) {
	h.stands(align.FromMovable)
	h.say("The coupling has a spacer, ", h.tape(f.Span), " from flex plane to flex plane.")
	h.lies(f.Centreline)
}

func (c ColdTarget) tell(h *handout) {
	h.supports(align.Stationary, c.Stationary)
	h.supports(align.Movable, c.Movable)
	if c.Stationary == nil {
		h.say("The stationary machine does not grow.")
	}
	h.feet(c.Feet)
}

func (r TargetReadings) tell(h *handout) {
	h.stands(r.View)
	by := ", carried by the " + r.Probe.Carrier.String() + " shaft"
	switch r.Probe.Kind {
	case align.Rim:
		h.rimToSet(r, by)
	case align.NearFace:
		h.say("Face dial", by, ", plunger towards the other machine, ", h.tape(r.Probe.Radius), " from the axis")
	case align.FarFace:
		h.say("Face dial", by, ", plunger back towards the machine that carries it, ", h.tape(r.Probe.Radius), " from the axis")
	case align.Gap:
		h.say("Gauge for the gap between the faces, ", h.tape(r.Probe.Radius), " from the axis")
	}
	h.say("It is set to zero at 12 o'clock.")
	h.say("The movable shaft is to lie:")
	h.lies(r.Centreline)
}

func (h *handout) rimToSet(r TargetReadings, by string) {
	h.say("Rim dial", by, ", touching ", h.from(r.Probe.Station), droops(r.Sag, h.dial(r.Sag)))
}

func (s SoftFoot) tell(h *handout) {
	h.stands(align.FromMovable)
	for _, f := range s.Feet {
		h.say("Foot ", f.Name, ", ", h.from(f.X), " and ", h.aside(f.Y), ": lifted by ", h.dial(f.Lift))
	}
	h.say("The shaft's centreline is ", h.tape(s.Height), " above the undersides of the feet.")
}

// aside is a place beside the shaft.
func (h *handout) aside(y units.Length) string {
	if y < 0 {
		return h.tape(-y) + " from below the shaft to the 9 o'clock side"
	}
	return h.tape(y) + " from below the shaft to the 3 o'clock side"
}

func (s SlidingLimit) tell(h *handout) {
	h.say("Sliding speed, the most that is reached in a turn: ", h.plain(sliding, float64(s.Sliding)))
	h.say("Shaft speed: ", h.plain(rotation, float64(s.Speed)))
	h.say("The parts rub on a circle of ", h.tape(s.Coupling.Diameter), " diameter.")
	if s.Coupling.Span != 0 {
		h.say("The coupling has a spacer, ", h.tape(s.Coupling.Span), " from flex plane to flex plane.")
	}
}

func (s FlangeShims) tell(h *handout) {
	h.stands(s.Flange.View)
	h.say("The face of the flange: ", h.from(s.Flange.Face))
	if s.Flange.Push == flange.TowardsStationary {
		h.say("A thicker shim pushes the movable machine towards the stationary one.")
	} else {
		h.say("A thicker shim pushes the movable machine away from the stationary one.")
	}
	for _, b := range s.Flange.Bolts {
		h.say("Bolt ", b.Name, ": at ", oClock(b.At), ", ", h.tape(b.Radius), " from the axis")
	}
	h.say("Measured against its target the movable shaft lies:")
	h.lies(s.Off)
}

func (s ShimStacks) tell(h *handout) {
	h.say("In the box: ", h.pieces(s.Stock))
	h.say("At most ", strconv.Itoa(s.Rule.Pieces), " pieces under a foot; they have to come to just what is wanted.")
	for _, o := range s.Orders {
		text := ""
		if o.SoftFoot != 0 {
			text = ", a shim of " + h.dial(o.SoftFoot) + " more for its soft foot"
		}
		h.say("Foot ", o.Foot, ": lying there now: ", h.pieces(o.Now), "; correction: ", raise.rounded(float64(o.Correction), h.system, h.view), text)
	}
}

func (h *handout) pieces(list []shims.Piece) string {
	var parts []string
	for _, p := range list {
		parts = append(parts, strconv.Itoa(p.Count)+" of "+h.dial(p.Thickness()))
	}
	return strings.Join(parts, ", ")
}
