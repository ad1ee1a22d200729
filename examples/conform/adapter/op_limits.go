package adapter

import (
	"example.org/collinear/examples/internal/strict"
	"example.org/collinear/tolerance"
	"example.org/collinear/units"
)

// limits are limits in input and result.
type limits struct {
	Offset   *units.Length `json:"offset,omitzero"`
	Slope    *units.Slope  `json:"slope,omitzero"`
	Flex     *units.Slope  `json:"flex,omitzero"`
	PerPlane bool          `json:"per_plane,omitzero"`
}

func (l *limits) limits(f *strict.Faults, path string) tolerance.Limits {
	above(f, path+"/offset", l.Offset)
	above(f, path+"/slope", l.Slope)
	above(f, path+"/flex", l.Flex)
	return tolerance.Limits{Offset: value(l.Offset), Slope: value(l.Slope), Flex: value(l.Flex), PerPlane: l.PerPlane}
}

// toldLimits leaves out the limits that are not given.
func toldLimits(l tolerance.Limits) limits {
	return limits{Offset: given(l.Offset), Slope: given(l.Slope), Flex: given(l.Flex), PerPlane: l.PerPlane}
}

func given[Q ~float64](q Q) *Q {
	if q == 0 {
		return nil
	}
	return &q
}

type rubbingLimitsInput struct {
	Sliding  units.LinearSpeed     `json:"sliding"`
	Speed    units.RotationalSpeed `json:"speed"`
	Coupling coupling              `json:"coupling"`
}

func rubbingLimits(in *rubbingLimitsInput, f *strict.Faults) limits {
	l, err := tolerance.Rubbing(in.Sliding, in.Speed, in.Coupling.coupling(f))
	f.Adopt(err, same)
	return toldLimits(l)
}

type limitsAtInput struct {
	Rows  []limitsRow           `json:"rows"`
	Speed units.RotationalSpeed `json:"speed"`
}

type limitsRow struct {
	Speed  units.RotationalSpeed `json:"speed"`
	Offset *units.Length         `json:"offset,omitzero"`
	Slope  *units.Slope          `json:"slope,omitzero"`
	Flex   *units.Slope          `json:"flex,omitzero"`
}

func limitsAt(in *limitsAtInput, f *strict.Faults) limits {
	rows := make([]tolerance.Row, len(in.Rows))
	for i, r := range in.Rows {
		l := limits{Offset: r.Offset, Slope: r.Slope, Flex: r.Flex}
		row := l.limits(f, strict.Step("/rows", i))
		rows[i] = tolerance.Row{Speed: r.Speed, Offset: row.Offset, Slope: row.Slope, Flex: row.Flex}
	}
	table, err := tolerance.NewTable("the request", "", rows...)
	f.Adopt(err, same)
	if len(*f) > 0 {
		return limits{}
	}
	l, err := table.At(in.Speed)
	f.Adopt(err, same)
	return toldLimits(l)
}

type shaftRunoutInput struct {
	Diameter units.Length `json:"diameter"`
}

type shaftRunoutResult struct {
	Over  units.Length `json:"over"`
	UpTo  units.Length `json:"up_to"`
	Limit units.Length `json:"limit"`
}

func shaftRunout(in *shaftRunoutInput, f *strict.Faults) shaftRunoutResult {
	l, err := tolerance.ShaftRunout(in.Diameter)
	f.Adopt(err, same)
	return shaftRunoutResult{l.Over, l.UpTo, l.Limit}
}
