package sheet_test

import (
	"math"

	"example.org/collinear/align"
	"example.org/collinear/align/flange"
	"example.org/collinear/align/sheet"
	"example.org/collinear/shims"
)

// workProblem works whichever problem it is.
func workProblem(p sheet.Problem) *handPage {
	switch {
	case p.Job != nil:
		return workJob(*p.Job)
	case p.Sweep != nil:
		return workSweep(*p.Sweep)
	case p.Sag != nil:
		return workSag(*p.Sag)
	case p.GapFromSlope != nil:
		return workGap(*p.GapFromSlope)
	case p.SlopeFromGap != nil:
		return workSlope(*p.SlopeFromGap)
	case p.FlexTilts != nil:
		return workTilts(*p.FlexTilts)
	case p.ColdTarget != nil:
		return workColdTarget(*p.ColdTarget)
	case p.TargetReadings != nil:
		return workTargetReadings(*p.TargetReadings)
	case p.SoftFoot != nil:
		return workSoftFoot(*p.SoftFoot)
	case p.SlidingLimit != nil:
		return workSliding(*p.SlidingLimit)
	case p.FlangeShims != nil:
		return workFlange(*p.FlangeShims)
	}
	return workStacks(*p.ShimStacks)
}

func workGap(g sheet.GapFromSlope) *handPage {
	p := &handPage{}
	d := inMM(g.Diameter)
	var both []int
	for _, in := range handPlanes {
		a, sort := float64(g.Centreline.Vertical.Slope), aGap
		if !in.upright {
			a, sort = float64(g.Centreline.Horizontal.Slope), aGapSide
		}
		both = append(both, p.put(handLine{
			id: in.name + ".opening", sort: sort,
			work: func(_ []float64, m mistake) float64 {
				across := d
				if m.kind == sheet.RadiusAndDiameter {
					across = d / 2
				}
				if m.kind == in.exchanged {
					return -a * across
				}
				return a * across
			},
			can: []chance{can(sheet.RadiusAndDiameter, "", ""), can(in.exchanged, "", "")},
		}))
	}
	p.put(handLine{id: "opening", sort: aReading, from: both,
		work: func(v []float64, _ mistake) float64 { return math.Sqrt(v[0]*v[0] + v[1]*v[1]) }})
	return p
}

func workSlope(g sheet.SlopeFromGap) *handPage {
	p := &handPage{}
	opening, d := inMM(g.Opening), inMM(g.Diameter)
	sin, cos := sinCos(float64(g.At))
	for _, in := range handPlanes {
		share := in.of(cos, sin)
		p.put(handLine{
			id: in.name + ".slope", sort: in.leans,
			work: func(_ []float64, m mistake) float64 {
				over := d
				if m.kind == sheet.RadiusAndDiameter {
					over = d / 2
				}
				if m.kind == in.exchanged {
					return opening * share / over
				}
				return -wrongUnit(opening, m) * share / over
			},
			can: append(canMistakeUnit("opening"), can(sheet.RadiusAndDiameter, "", ""), can(in.exchanged, "", "")),
		})
	}
	return p
}

func workTilts(f sheet.FlexTilts) *handPage {
	p := &handPage{}
	span := inMM(f.Span)
	for _, in := range handPlanes {
		l := f.Centreline.Vertical
		if !in.upright {
			l = f.Centreline.Horizontal
		}
		offset, slope := inMM(l.Offset), float64(l.Slope)
		for i, end := range [2]string{"stationary", "movable"} {
			sign := [2]float64{1, -1}[i]
			p.put(handLine{
				id: in.name + ".tilt." + end, sort: in.leans,
				work: func(_ []float64, m mistake) float64 {
					s, l := sign, span
					if m.kind == sheet.MachinesExchanged {
						s = -s
					}
					if m.kind == sheet.WrongDatum {
						l = span / 2 // from the coupling centre
					}
					return slope/2 + s*offset/l
				},
				can: []chance{can(sheet.MachinesExchanged, "", ""), can(sheet.WrongDatum, "", "")},
			})
		}
	}
	return p
}

func workColdTarget(c sheet.ColdTarget) *handPage {
	p := &handPage{}
	for _, in := range handPlanes {
		target := p.growth(c.Stationary, c.Movable, in)
		for i, f := range c.Feet {
			if target != nil {
				p.targetAt(in, *target, f, c.Feet[twins(c.Feet)[i]])
			}
		}
	}
	return p
}

func workTargetReadings(r sheet.TargetReadings) *handPage {
	p := &handPage{view: r.View}
	rim := r.Probe.Kind == align.Rim
	var seen []int
	for _, in := range handPlanes {
		l := r.Centreline.Vertical
		if !in.upright {
			l = r.Centreline.Horizontal
		}
		offset, slope, x, radius := inMM(l.Offset), float64(l.Slope), inMM(r.Probe.Station), inMM(r.Probe.Radius)
		if rim {
			seen = append(seen, p.put(handLine{
				id: in.name + ".offset", sort: in.lies,
				work: func(_ []float64, m mistake) float64 {
					if m.kind == sheet.LeftAtDial {
						return offset
					}
					return offset + slope*x
				},
				can: []chance{can(sheet.LeftAtDial, "", "")},
			}))
			continue
		}
		seen = append(seen, p.put(handLine{
			id: in.name + ".lag", sort: aReading,
			work: func(_ []float64, m mistake) float64 {
				if m.kind == sheet.RadiusAndDiameter {
					return slope * 2 * radius
				}
				return slope * radius
			},
			can: []chance{can(sheet.RadiusAndDiameter, "", "")},
		}))
	}
	k := signOf(r.Probe.Kind == align.FarFace, r.Probe.Kind == align.Gap, rim && r.Probe.Carrier == align.Movable)
	s := inMM(r.Sag)
	for i, hour := range [3]string{"3", "6", "9"} {
		degrees := float64(90 * (i + 1))
		if r.View == align.FromStationary {
			degrees = -degrees
		}
		sin, cos := sinCos(degrees)
		l := handLine{
			id: "reading." + hour, sort: aReading, from: seen,
			work: func(v []float64, m mistake) float64 {
				up, right, k, s := v[0], v[1], k, s
				switch m.kind {
				case sheet.TopAndBottomExchanged:
					up = -up
				case sheet.LeftAndRightExchanged:
					right = -right
				case sheet.TotalNotHalved:
					up, right = up/2, right/2 // an offset taken for the total reading
				case sheet.MachinesExchanged:
					k = -k
				case sheet.SagForgotten:
					s = 0
				case sheet.SagAdded:
					s = -s
				case sheet.SagOnce:
					s /= 2
				}
				return k*(right*sin+up*(cos-1)) + s*(cos-1)
			},
			can: []chance{can(sheet.TopAndBottomExchanged, "", ""), can(sheet.LeftAndRightExchanged, "", ""), can(sheet.TotalNotHalved, "", "")},
		}
		if rim {
			l.can = append(l.can, can(sheet.MachinesExchanged, "carrier", ""))
		}
		if s != 0 {
			l.can = append(l.can, can(sheet.SagForgotten, "", ""), can(sheet.SagAdded, "", ""), can(sheet.SagOnce, "", ""))
		}
		p.put(l)
	}
	return p
}

func workSoftFoot(s sheet.SoftFoot) *handPage {
	p := &handPage{}
	least := math.Inf(1)
	for _, f := range s.Feet {
		least = min(least, inMM(f.Lift))
	}
	common := p.put(handLine{id: "common", sort: aReading, work: func([]float64, mistake) float64 { return max(0, least) }})
	for _, f := range s.Feet {
		lift := inMM(f.Lift)
		p.put(handLine{
			id: "foot." + f.Name + ".excess", sort: aReading, from: []int{common},
			work: func(v []float64, m mistake) float64 {
				if m.kind == sheet.CommonNotTakenOff {
					return lift
				}
				return wrongUnit(lift-v[0], m)
			},
			can: append(canMistakeUnit("excess"), can(sheet.CommonNotTakenOff, "", "")),
		})
	}
	return p
}

func workSliding(s sheet.SlidingLimit) *handPage {
	p := &handPage{}
	arm := float64(s.Sliding) / (2 * math.Pi * float64(s.Speed) / 60) // mm/s over rad/s
	d := inMM(s.Coupling.Diameter)
	over := func(e float64, m mistake) float64 {
		if m.kind == sheet.RadiusAndDiameter {
			return e / d
		}
		return e / (d / 2)
	}
	if s.Coupling.Span != 0 { // no offset rubs by itself: a spacer tilts at its flex planes
		e := p.put(handLine{id: "radius", sort: aReading, work: func(_ []float64, m mistake) float64 { return wrongUnit(arm, m) },
			can: canMistakeUnit("radius")})
		p.put(handLine{id: "tilt", sort: aSteep, from: []int{e}, work: func(v []float64, m mistake) float64 { return over(v[0], m) },
			can: []chance{can(sheet.RadiusAndDiameter, "", "")}})
		return p
	}
	e := p.put(handLine{
		id: "offset", sort: aReading,
		work: func(_ []float64, m mistake) float64 {
			switch {
			case m.is(sheet.TotalNotHalved, "total"):
				return 2 * arm
			case m.is(sheet.TotalNotHalved, "half"):
				return arm / 2
			}
			return wrongUnit(arm, m)
		},
		can: append(canMistakeUnit("offset"), can(sheet.TotalNotHalved, "total", ""), can(sheet.TotalNotHalved, "half", "")),
	})
	p.put(handLine{
		id: "slope", sort: aSteep, from: []int{e},
		work: func(v []float64, m mistake) float64 { return over(v[0], m) },
		can:  []chance{can(sheet.RadiusAndDiameter, "", "")},
	})
	return p
}

func workFlange(s sheet.FlangeShims) *handPage {
	f, off := s.Flange, s.Off
	p := &handPage{view: f.View}
	push := signOf(f.Push == flange.TowardsStationary)
	var wedges []int
	for _, b := range f.Bolts {
		degrees := float64(b.At)
		if f.View == align.FromStationary {
			degrees = -degrees
		}
		sin, cos := sinCos(degrees)
		radius := inMM(b.Radius)
		wedges = append(wedges, p.put(handLine{
			id: "bolt." + b.Name + ".wedge", sort: aReading,
			work: func(_ []float64, m mistake) float64 {
				up, right, r := float64(off.Vertical.Slope)*cos, float64(off.Horizontal.Slope)*sin, radius
				switch m.kind {
				case sheet.TopAndBottomExchanged:
					up = -up
				case sheet.LeftAndRightExchanged:
					right = -right
				case sheet.RadiusAndDiameter:
					r = 2 * r
				case sheet.PositionForCorrection:
					r = -r
				}
				return push * r * (up + right)
			},
			can: []chance{
				can(sheet.TopAndBottomExchanged, "", ""), can(sheet.LeftAndRightExchanged, "", ""),
				can(sheet.RadiusAndDiameter, "", ""), can(sheet.PositionForCorrection, "shims", ""),
			},
		}))
	}
	least := p.put(handLine{id: "least", sort: aReading, from: wedges, work: func(v []float64, _ mistake) float64 {
		low := v[0]
		for _, x := range v {
			low = min(low, x)
		}
		return low
	}})
	for i, b := range f.Bolts {
		p.put(handLine{
			id: "bolt." + b.Name + ".shim", sort: aReading, from: []int{wedges[i], least},
			work: func(v []float64, m mistake) float64 { return wrongUnit(v[0]-v[1], m) },
			can:  canMistakeUnit("shims"),
		})
	}
	for _, in := range handPlanes {
		l := off.Vertical
		if !in.upright {
			l = off.Horizontal
		}
		offset, slope, x := inMM(l.Offset), float64(l.Slope), inMM(f.Face)
		p.put(handLine{
			id: in.name + ".slide", sort: in.goes,
			work: func(_ []float64, m mistake) float64 {
				there := offset + slope*x
				switch m.kind {
				case sheet.LeftAtDial:
					return -offset
				case sheet.PositionForCorrection:
					return there
				}
				return wrongUnit(-there, m)
			},
			can: append(canMistakeUnit("slide"), can(sheet.LeftAtDial, "", ""), can(sheet.PositionForCorrection, "slide", "")),
		})
	}
	return p
}

func workStacks(s sheet.ShimStacks) *handPage {
	p := &handPage{}
	allow := inMM(s.Rule.Error)
	if allow == 0 {
		allow = inMM(shims.DefaultError)
	}
	for _, o := range s.Orders {
		now := 0.0
		for _, piece := range o.Now {
			now += inMM(piece.Thickness()) * float64(piece.Count)
		}
		up, soft := inMM(o.Correction), inMM(o.SoftFoot)
		wanted := p.put(handLine{
			id: "foot." + o.Foot + ".wanted", sort: aReading,
			work: func(_ []float64, m mistake) float64 {
				if m.kind == sheet.PositionForCorrection {
					return now - up + soft
				}
				return wrongUnit(now+up+soft, m)
			},
			can: append(canMistakeUnit("wanted"), can(sheet.PositionForCorrection, "", "")),
		})
		total := p.put(handLine{
			id: "foot." + o.Foot + ".total", sort: aReading, from: []int{wanted}, allow: allow, free: true,
			work: func(v []float64, _ mistake) float64 { return math.Round(v[0]*50) / 50 }, // pieces in steps of 0.02 mm
		})
		p.put(handLine{id: "foot." + o.Foot + ".error", sort: aReading, from: []int{total, wanted}, free: true,
			work: func(v []float64, _ mistake) float64 { return v[0] - v[1] }})
	}
	return p
}
