package sheet_test

import (
	"strconv"

	"example.org/collinear/align/sheet"
	"example.org/collinear/thermal"
)

// handSupport is the growth of one support: a line, or a number that was measured.
type handSupport struct {
	line  int
	given float64
	x     float64
}

func (p *handPage) growth(stationary, movable []thermal.Support, in handPlane) *handCentre {
	if stationary == nil && movable == nil {
		return nil
	}
	if !in.upright && !aside(stationary) && !aside(movable) {
		return nil
	}
	s := p.machineGrowth("stationary", stationary, in)
	v := p.machineGrowth("movable", movable, in)
	less := func(id string, sort *handSort, a, b int) int {
		from, at := []int{}, [2]int{-1, -1}
		for i, l := range [2]int{a, b} {
			if l >= 0 {
				at[i] = len(from)
				from = append(from, l)
			}
		}
		return p.put(handLine{
			id: in.name + ".target." + id, sort: sort, from: from,
			work: func(v []float64, m mistake) float64 {
				g := [2]float64{}
				for i := range g {
					if at[i] >= 0 {
						g[i] = v[at[i]]
					}
				}
				if m.kind == sheet.MachinesExchanged {
					return g[1] - g[0]
				}
				return g[0] - g[1]
			},
			can: []chance{can(sheet.MachinesExchanged, "target", "")},
		})
	}
	return &handCentre{
		offset: less("offset", in.lies, s.offset, v.offset),
		slope:  less("slope", in.leans, s.slope, v.slope),
	}
}

func aside(supports []thermal.Support) bool {
	for _, s := range supports {
		if s.Measured != nil && s.Measured.By.Horizontal != 0 {
			return true
		}
	}
	return false
}

// machineGrowth is the line through the growth of both supports; -1 where none grows.
func (p *handPage) machineGrowth(machine string, supports []thermal.Support, in handPlane) handCentre {
	if supports == nil {
		return handCentre{-1, -1}
	}
	var grew [2]handSupport
	for i := range grew {
		grew[i] = p.supportGrowth(machine, &supports[i], i, in)
	}
	var from []int
	at := [2]int{-1, -1}
	for i, g := range grew {
		if g.line >= 0 {
			at[i] = len(from)
			from = append(from, g.line)
		}
	}
	both := func(v []float64) (g [2]float64) {
		for i := range g {
			g[i] = grew[i].given
			if at[i] >= 0 {
				g[i] = v[at[i]]
			}
		}
		return g
	}
	x1, x2 := grew[0].x, grew[1].x
	exchanged := []chance{can(sheet.FeetExchanged, "supports", machine)}
	slope := p.put(handLine{
		id: in.name + "." + machine + ".growth.slope", sort: in.grows, from: from,
		work: func(v []float64, m mistake) float64 {
			g := both(v)
			if m.kind == sheet.FeetExchanged {
				g[0], g[1] = g[1], g[0]
			}
			return (g[1] - g[0]) / (x2 - x1)
		},
		can: exchanged,
	})
	n := len(from)
	offset := p.put(handLine{
		id: in.name + "." + machine + ".growth.offset", sort: in.lies, from: append(append([]int{}, from...), slope),
		work: func(v []float64, m mistake) float64 {
			g := both(v)
			if m.kind == sheet.FeetExchanged {
				g[0] = g[1]
			}
			return g[0] - v[n]*x1
		},
		can: exchanged,
	})
	return handCentre{offset, slope}
}

func (p *handPage) supportGrowth(machine string, s *thermal.Support, i int, in handPlane) handSupport {
	g := handSupport{line: -1, x: inMM(s.X)}
	if s.Measured != nil {
		g.given = in.of(inMM(s.Measured.By.Vertical), inMM(s.Measured.By.Horizontal))
		return g
	}
	if !in.upright {
		return g
	}
	name := s.Name
	if name == "" {
		name = "support " + strconv.Itoa(i+1)
	}
	leg := machine + "." + name
	var pieces []int
	for k, piece := range s.Pieces {
		id := leg
		if len(s.Pieces) > 1 {
			id += ".piece " + strconv.Itoa(k+1)
		}
		warmer := float64(piece.Rise)
		if len(piece.Profile) == 1 {
			warmer = float64(piece.Profile[0].Running.Celsius()) - float64(piece.Cold.Celsius())
		}
		rise := p.put(handLine{
			id: id + ".rise", sort: aRise,
			work: func(_ []float64, m mistake) float64 {
				switch {
				case m.is(sheet.ThirtyTwo, "F to C"): // (rise - 32) * 5/9
					return (warmer/degF - 32) * degF
				case m.is(sheet.ThirtyTwo, "C to F"): // rise * 9/5 + 32
					return (warmer/degF + 32) * degF
				}
				return warmer
			},
			can: []chance{can(sheet.ThirtyTwo, "F to C", leg), can(sheet.ThirtyTwo, "C to F", leg)},
		})
		high, per := inMM(piece.Height), float64(piece.Material.Expansion)
		pieces = append(pieces, p.put(handLine{id: id + ".growth", sort: aHeight, from: []int{rise},
			work: func(v []float64, _ mistake) float64 { return high * per * v[0] }}))
	}
	g.line = pieces[0]
	if len(pieces) > 1 {
		g.line = p.put(handLine{id: leg + ".growth", sort: aHeight, from: pieces, work: func(v []float64, _ mistake) float64 {
			sum := 0.0
			for _, x := range v {
				sum += x
			}
			return sum
		}})
	}
	return g
}
