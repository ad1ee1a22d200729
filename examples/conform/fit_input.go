package main

import (
	"encoding/json"
	"errors"
	"math/big"
	"slices"
	"strconv"
)

// fitInput is the input of the operation fit.
type fitInput struct {
	View string    `json:"view"`
	Sets []fitSet  `json:"sets"`
	Feet []fitFoot `json:"feet,omitempty"`
}

type fitSet struct {
	Probe    fitProbe          `json:"probe"`
	Mounting string            `json:"mounting,omitempty"`
	Sag      string            `json:"sag,omitempty"`
	Readings []fitReading      `json:"readings"`
	U        map[string]string `json:"u,omitempty"`
}

type fitProbe struct {
	Kind    string      `json:"kind"`
	Carrier string      `json:"carrier,omitempty"`
	Station string      `json:"station,omitempty"`
	Radius  string      `json:"radius,omitempty"`
	Span    string      `json:"span,omitempty"`
	Gain    json.Number `json:"gain,omitempty"`
}

type fitReading struct {
	At    string `json:"at"`
	Value string `json:"value"`
	U     string `json:"u,omitempty"`
}

type fitFoot struct {
	Name string `json:"name"`
	X    string `json:"x"`
	U    string `json:"u,omitempty"`
}

// prediction is the input of the operation predict that asks what the same
// dials would show at the same places.
func (in fitInput) prediction(c coarse) any {
	type asked struct {
		Probe fitProbe `json:"probe"`
		Sag   string   `json:"sag,omitempty"`
		At    []string `json:"at"`
	}
	line := func(offset, slope float64) map[string]string {
		text := func(x float64, unit string) string { return strconv.FormatFloat(x, 'g', -1, 64) + unit }
		return map[string]string{"offset": text(offset, " mm"), "slope": text(slope, " mm/m")}
	}
	var sets []asked
	for _, s := range in.Sets {
		var at []string
		for _, r := range s.Readings {
			at = append(at, r.At)
		}
		sets = append(sets, asked{s.Probe, s.Sag, at})
	}
	return map[string]any{
		"view": in.View,
		"sets": sets,
		"position": map[string]any{
			"horizontal": line(c.numbers[0], c.numbers[1]),
			"vertical":   line(c.numbers[2], c.numbers[3]),
		},
	}
}

// read puts predicted values in the place of the readings.
func (in *fitInput) read(result json.RawMessage) error {
	var out struct {
		Sets []struct{ Readings []fitReading }
	}
	if err := json.Unmarshal(result, &out); err != nil {
		return err
	}
	if len(out.Sets) != len(in.Sets) {
		return errors.New("as many sets as were asked are wanted")
	}
	for i := range in.Sets {
		to, from := in.Sets[i].Readings, out.Sets[i].Readings
		if len(from) != len(to) {
			return errors.New("as many readings as positions are wanted")
		}
		for j := range to {
			to[j].Value = from[j].Value
		}
	}
	return nil
}

// all applies a change of a text to every text that is there, and tells whether
// it could be made everywhere.
func all(change func(string) (string, bool), texts ...*string) bool {
	for _, t := range texts {
		if *t == "" {
			continue
		}
		changed, ok := change(*t)
		if !ok {
			return false
		}
		*t = changed
	}
	return true
}

// on makes a change of texts out of one of numbers: of lengths in mm, or of
// angles in degrees. It is not made where the result has no end as a decimal.
func on(change func(x *big.Rat)) func(string) (string, bool) {
	return func(text string) (string, bool) {
		q, err := readQuantity(text)
		if err != nil {
			return "", false
		}
		change(q.value)
		digits, ends := q.value.FloatPrec()
		unit := map[string]string{"length": " mm", "angle": " deg"}[q.of]
		return q.value.FloatString(digits) + unit, ends && unit != ""
	}
}

// eachSet applies a change to every set until one cannot be made.
func (in *fitInput) eachSet(change func(s *fitSet) bool) bool {
	return !slices.ContainsFunc(indices(in.Sets), func(i int) bool { return !change(&in.Sets[i]) })
}

func indices[T any](list []T) []int {
	all := make([]int, len(list))
	for i := range all {
		all[i] = i
	}
	return all
}
