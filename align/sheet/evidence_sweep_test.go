package sheet_test

import (
	"example.org/collinear/align"
	"example.org/collinear/align/sheet"
	"example.org/collinear/units"
)

// workSweep works a round of a rim dial by itself.
func workSweep(s sheet.Sweep) *handPage {
	p := &handPage{view: s.View}
	droop, from := s.Rim.Sag, -1
	sag := inMM(droop)
	if s.Mandrel != nil {
		from = p.mandrel(s.Mandrel.At12, s.Mandrel.At6)
	}
	sagged := from >= 0 || sag != 0
	if s.Rim.Bore {
		sag = -sag
	}
	raw, missing := roundOf("rim", s.View, droop, s.Rim.Readings)
	if missing >= 0 {
		p.rule12369(raw, missing)
	}
	zero := int(s.Zero.Normal()) / 90
	if s.View == align.FromStationary {
		zero = (4 - zero) % 4
	}
	clean := &handRound{name: "rim", noSag: true}
	for q := range 4 {
		clean.from[q] = p.rezero(raw, q, zero, from, sag, sagged, signOf(s.Rim.Bore))
	}
	if missing < 0 {
		p.rule12369(clean, -1)
	}
	for _, in := range handPlanes {
		p.half(clean, in, signOf(s.Carrier == align.Movable, s.Rim.Bore))
	}
	return p
}

// rezero is a reading without sag from another zero. The sag weighs s at 12, nothing at
// 3 and 9, -s at 6.
func (p *handPage) rezero(raw *handRound, q, zero, sagLine int, sag float64, sagged bool, droops float64) int {
	weight := [4]float64{1, 0, -1, 0}
	times := weight[q] - weight[zero]
	from, get := raw.reads(q, zero)
	n := len(from)
	if sagLine >= 0 {
		from = append(from, sagLine)
	}
	name := [4]string{"12", "3", "6", "9"}[q]
	if p.view == align.FromStationary {
		name = [4]string{"12", "9", "6", "3"}[q]
	}
	l := handLine{id: "rim." + name, sort: aReading, from: from, work: func(v []float64, m mistake) float64 {
		r := get(v)
		s := sag
		if sagLine >= 0 {
			s = droops * v[n]
		}
		counted := times
		switch m.kind {
		case sheet.SagForgotten:
			counted = 0
		case sheet.SagAdded:
			counted = -times
		case sheet.SagOnce:
			counted = times / 2
		}
		return r[0] - r[1] - counted*s
	}}
	if sagged && times != 0 {
		l.can = []chance{can(sheet.SagForgotten, "", ""), can(sheet.SagAdded, "", "")}
		if times == 2 || times == -2 {
			l.can = append(l.can, can(sheet.SagOnce, "", ""))
		}
	}
	return p.put(l)
}

func (p *handPage) mandrel(at12, at6 units.Length) int {
	top, bottom := inMM(at12), inMM(at6)
	return p.put(handLine{
		id: "sag", sort: aReading,
		work: func(_ []float64, m mistake) float64 {
			if m.kind == sheet.TotalNotHalved {
				return top - bottom
			}
			return wrongUnit((top-bottom)/2, m)
		},
		can: append(canMistakeUnit("mandrel"), can(sheet.TotalNotHalved, "", "mandrel")),
	})
}

func workSag(s sheet.Sag) *handPage {
	p := &handPage{}
	p.mandrel(s.At12, s.At6)
	return p
}
