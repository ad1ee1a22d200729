package main

import (
	"encoding/json"
	"math/big"
	"slices"
	"strings"
)

// The sizes of the changes: none of them is a number at which something
// special could happen.
const (
	turnBy  = 37.5  // degrees
	moveBy  = 100.0 // mm
	scaleBy = 3.0
)

// reverseOrder reads sets and readings from the last to the first.
func reverseOrder(in *fitInput) bool {
	slices.Reverse(in.Sets)
	for _, s := range in.Sets {
		slices.Reverse(s.Readings)
	}
	return true
}

// repeatReadings gives every reading twice.
func repeatReadings(in *fitInput) bool {
	return in.eachSet(func(s *fitSet) bool {
		s.Readings = append(s.Readings, slices.Clone(s.Readings)...)
		return true
	})
}

// splitWeights gives every reading of the first set four times with twice its
// uncertainty, which weighs as much as before.
func splitWeights(in *fitInput) bool {
	if len(in.Sets) == 0 || len(in.Sets[0].Readings) == 0 {
		return false
	}
	double := on(func(x *big.Rat) { x.Mul(x, rational("2")) })
	s := &in.Sets[0]
	own := s.U["reading"]
	if own == "" && s.Readings[0].U == "" || !all(double, &own) {
		return false
	}
	if own != "" {
		s.U["reading"] = own
	}
	for i := range s.Readings {
		if !all(double, &s.Readings[i].U) {
			return false
		}
	}
	s.Readings = slices.Concat(s.Readings, s.Readings, s.Readings, s.Readings)
	return true
}

// turnClock turns all clock positions clockwise for the observer. The droop of a
// bracket does not turn.
func turnClock(in *fitInput) bool {
	by := rational("75/2")
	if in.View == "from_stationary" {
		by.Neg(by)
	}
	turn := on(func(x *big.Rat) { x.Add(x, by) })
	return in.eachSet(func(s *fitSet) bool {
		for i := range s.Readings {
			if !all(turn, &s.Readings[i].At) {
				return false
			}
		}
		return s.Sag == "" || strings.HasPrefix(s.Sag, "0 ")
	})
}

// moveOrigin counts all stations from another place. A spacer's joints stand
// where they do.
func moveOrigin(in *fitInput) bool {
	move := on(func(x *big.Rat) { x.Add(x, new(big.Rat).SetInt64(moveBy)) })
	for i := range in.Feet {
		if !all(move, &in.Feet[i].X) {
			return false
		}
	}
	return in.eachSet(func(s *fitSet) bool {
		return s.Probe.Span == "" && all(move, &s.Probe.Station)
	})
}

// scaleLengths enlarges all lengths.
func scaleLengths(in *fitInput) bool {
	grow := on(func(x *big.Rat) { x.Mul(x, new(big.Rat).SetInt64(scaleBy)) })
	for i := range in.Feet {
		if !all(grow, &in.Feet[i].X, &in.Feet[i].U) {
			return false
		}
	}
	return in.eachSet(func(s *fitSet) bool { return s.grow(grow) })
}

func (s *fitSet) grow(grow func(string) (string, bool)) bool {
	for i := range s.Readings {
		if !all(grow, &s.Readings[i].Value, &s.Readings[i].U) {
			return false
		}
	}
	for name, u := range s.U {
		if name != "clock" && !all(grow, &u) {
			return false
		}
		s.U[name] = u
	}
	return all(grow, &s.Sag, &s.Probe.Station, &s.Probe.Radius, &s.Probe.Span)
}

// exchangeMachines gives the roles of the machines and the observer's end to
// each other: stations change their sign, dials their carrier, and what is named
// from one end is named from the other. A sensor that told how the movable shaft
// moves tells the opposite of the other one.
func exchangeMachines(in *fitInput) bool {
	negate := on(func(x *big.Rat) { x.Neg(x) })
	in.View = map[string]string{"from_movable": "from_stationary", "from_stationary": "from_movable"}[in.View]
	in.Feet = nil
	return in.eachSet(func(s *fitSet) bool {
		p := &s.Probe
		p.Carrier = map[string]string{"stationary": "movable", "movable": "stationary"}[p.Carrier]
		if gain := p.Gain.String(); gain != "" {
			p.Gain = otherSign(gain)
		}
		return all(negate, &p.Station)
	})
}

func otherSign(number string) json.Number {
	if positive, negative := strings.CutPrefix(number, "-"); negative {
		return json.Number(positive)
	}
	return json.Number("-" + number)
}
