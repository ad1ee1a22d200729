package adapter

import (
	"strings"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/units"
)

type removeRunoutInput struct {
	Readings []reading   `json:"readings"`
	T0       units.Clock `json:"t0"`
	Runout   []struct {
		Turned units.Angle  `json:"turned"`
		Value  units.Length `json:"value"`
	} `json:"runout"`
}

type removeRunoutResult struct {
	Readings []reading `json:"readings"`
}

func removeRunout(in *removeRunoutInput, f *strict.Faults) removeRunoutResult {
	runout := make([]align.Reading, len(in.Runout))
	for i, e := range in.Runout {
		runout[i] = align.Reading{At: units.Clock(e.Turned.In(units.InDegrees)), Value: e.Value}
	}
	clean, err := dial.RemoveRunout(readings(in.Readings), in.T0, runout)
	f.Adopt(err, func(path string) string {
		if at, found := strings.CutSuffix(path, "/at"); found && strings.HasPrefix(path, "/runout") {
			return at + "/turned"
		}
		return path
	})
	return removeRunoutResult{toldReadings(clean)}
}

type separateRunoutInput struct {
	First  position `json:"first"`
	Second position `json:"second"`
}

type separateRunoutResult struct {
	Misalignment position `json:"misalignment"`
	Runout       position `json:"runout"`
}

func separateRunout(in *separateRunoutInput, f *strict.Faults) separateRunoutResult {
	misalignment, runout := dial.SeparateRunout(in.First.estimate(f, "/first"), in.Second.estimate(f, "/second"))
	return separateRunoutResult{told(misalignment), told(runout)}
}

type withoutFloatInput struct {
	A face `json:"a"`
	B face `json:"b"`
}

type withoutFloatResult struct {
	Diameter units.Length `json:"diameter"`
	Readings []reading    `json:"readings"`
}

// withoutFloat takes the droop out of the readings, since the result has no room
// for a sag.
func withoutFloat(in *withoutFloatInput, f *strict.Faults) withoutFloatResult {
	one, err := dial.WithoutFloat(in.A.dial(), in.B.dial())
	f.Adopt(err, same)
	for i, r := range one.Readings {
		_, up := r.At.SinCos()
		one.Readings[i].Value -= units.Length(float64(one.Sag) * up)
	}
	return withoutFloatResult{one.Diameter, toldReadings(one.Readings)}
}
