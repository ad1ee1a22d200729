package dial_test

import (
	"testing"

	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

// The signs of every probe, from pictures of simple misalignments: the dial
// pushed in where the touched surface comes nearer, the gap narrower where the
// faces do. Readings in hundredths of a millimetre at 12, 3, 6, 9.
func TestSigns(t *testing.T) {
	const (
		high   = 0.10 * units.Millimetre
		climbs = 1 * units.MillimetrePerMetre
	)
	flat := dial.Quarters(units.Millimetre, 1, 1, 1, 1)
	readings := func(at12, at3, at6, at9 float64) sweep {
		return dial.Quarters(units.Millimetre/100, at12, at3, at6, at9)
	}
	rimFace := func(carrier align.Shaft, bore bool, rim sweep, far bool, face sweep) solver {
		return dial.RimFace{
			Carrier: carrier,
			Rim:     dial.Rim{Station: 40 * units.Millimetre, Bore: bore, Readings: rim},
			Face:    dial.Face{Diameter: 100 * units.Millimetre, Far: far, Readings: face},
		}
	}
	edge := func(on align.Shaft, edge, gap sweep) solver {
		return dial.StraightedgeGap{
			Straightedge: dial.Straightedge{On: on, Station: 40 * units.Millimetre, Readings: edge},
			Gap:          dial.Gap{Diameter: 100 * units.Millimetre, Readings: gap},
		}
	}
	rimGap := func(rim, gap sweep) solver {
		return dial.RimGap{
			Carrier: align.Stationary,
			Rim:     dial.Rim{Station: 40 * units.Millimetre, Readings: rim},
			Gap:     dial.Gap{Diameter: 100 * units.Millimetre, Readings: gap},
		}
	}
	faceFace := func(far bool, stationary, movable sweep) solver {
		d := 100 * units.Millimetre
		return dial.FaceFace{
			Span:         800 * units.Millimetre,
			AtStationary: dial.Face{Diameter: d, Far: far, Readings: stationary},
			AtMovable:    dial.Face{Diameter: d, Far: far, Readings: movable},
		}
	}
	up, right := align.Line{Offset: high}, align.Line{Offset: high}
	// A line that climbs and passes w = 0 under the rim dial at 40 mm.
	climbing := align.Line{Offset: -0.04 * units.Millimetre, Slope: climbs}
	for _, row := range []struct {
		name string
		job  solver
		want align.Centreline
	}{
		{"high, stationary carrier", rimFace(align.Stationary, false, readings(0, -10, -20, -10), false, flat), align.Centreline{Vertical: up}},
		{"high, movable carrier", rimFace(align.Movable, false, readings(0, 10, 20, 10), false, flat), align.Centreline{Vertical: up}},
		{"towards 3, stationary carrier", rimFace(align.Stationary, false, readings(0, 10, 0, -10), false, flat), align.Centreline{Horizontal: right}},
		{"towards 3, movable carrier", rimFace(align.Movable, false, readings(0, -10, 0, 10), false, flat), align.Centreline{Horizontal: right}},
		{"high, in a bore, stationary carrier", rimFace(align.Stationary, true, readings(0, 10, 20, 10), false, flat), align.Centreline{Vertical: up}},
		{"high, in a bore, movable carrier", rimFace(align.Movable, true, readings(0, -10, -20, -10), false, flat), align.Centreline{Vertical: up}},

		{"climbs, near face", rimFace(align.Stationary, false, flat, false, readings(0, -5, -10, -5)), align.Centreline{Vertical: climbing}},
		{"climbs, near face, movable carrier", rimFace(align.Movable, false, flat, false, readings(0, -5, -10, -5)), align.Centreline{Vertical: climbing}},
		{"climbs, far face", rimFace(align.Stationary, false, flat, true, readings(0, 5, 10, 5)), align.Centreline{Vertical: climbing}},
		{"climbs, far face, movable carrier", rimFace(align.Movable, false, flat, true, readings(0, 5, 10, 5)), align.Centreline{Vertical: climbing}},
		{"climbs towards 3, near face", rimFace(align.Stationary, false, flat, false, readings(0, 5, 0, -5)), align.Centreline{Horizontal: climbing}},

		{"gap open at 6", rimGap(flat, readings(100, 105, 110, 105)), align.Centreline{Vertical: climbing}},
		{"gap open at 9", rimGap(flat, readings(105, 100, 105, 110)), align.Centreline{Horizontal: climbing}},

		{"high, straightedge on the stationary rim", edge(align.Stationary, readings(0, 10, 20, 10), flat), align.Centreline{Vertical: up}},
		{"high, straightedge on the movable rim", edge(align.Movable, readings(20, 10, 0, 10), flat), align.Centreline{Vertical: up}},
		{"towards 3, straightedge on the stationary rim", edge(align.Stationary, readings(10, 0, 10, 20), flat), align.Centreline{Horizontal: right}},

		// Case A over a spacer of 800 mm: tilts (y +0.35, z -0.60) mm/m at the
		// stationary joint and (y +0.05, z -0.10) mm/m at the movable one, across 100 mm.
		{"spacer, near faces", faceFace(false, readings(0, 4.75, 6, 1.25), readings(0, 0.75, 1, 0.25)), caseA},
		{"spacer, far faces", faceFace(true, readings(0, -4.75, -6, -1.25), readings(0, -0.75, -1, -0.25)), caseA},
	} {
		t.Run(row.name, func(t *testing.T) {
			got := solved(t, row.job).Value
			checkLine(t, "horizontal", got.Horizontal, row.want.Horizontal.Offset, row.want.Horizontal.Slope)
			checkLine(t, "vertical", got.Vertical, row.want.Vertical.Offset, row.want.Vertical.Slope)
		})
	}
}

// caseA is the misalignment that several checks of the design share.
var caseA = align.Centreline{
	Horizontal: align.Line{Offset: 0.12 * units.Millimetre, Slope: 0.4 * units.MillimetrePerMetre},
	Vertical:   align.Line{Offset: -0.20 * units.Millimetre, Slope: -0.7 * units.MillimetrePerMetre},
}

// Case A as an exact simulation reads it on a rim of 75 mm, and the linear law on
// a face of 75 mm, to the nanometre. The circle of the rim cancels at the
// quarters.
func TestCaseA(t *testing.T) {
	onMovable := dial.Quarters(units.Millimetre, 0, 0.363764, 0.456000, 0.091764)
	onStationary := dial.Quarters(units.Millimetre, 0, -0.265127, -0.330000, -0.065127)
	onFace := dial.Quarters(units.Millimetre, 0, 0.082500, 0.105000, 0.022500)
	asExchanged := dial.Quarters(units.Millimetre, 0, -0.065127, -0.330000, -0.265127)
	near := dial.Rim{Station: 40 * units.Millimetre, Readings: onMovable}
	far := dial.Rim{Station: -50 * units.Millimetre, Readings: onStationary}
	face := dial.Face{Diameter: 150 * units.Millimetre, Readings: onFace}

	// Printed to 1 nm, half of it is lost in each reading: 1 nm in w, and across
	// the 90 mm between the dials 2 nm, 2.2e-8 in the slope.
	const lost = 2.5
	check := func(name string, got, want align.Centreline) {
		t.Helper()
		checkNear(t, name+", horizontal offset", got.Horizontal.Offset, want.Horizontal.Offset, lost)
		checkNear(t, name+", vertical offset", got.Vertical.Offset, want.Vertical.Offset, lost)
		checkNear(t, name+", horizontal slope", got.Horizontal.Slope, want.Horizontal.Slope, lost/90e6)
		checkNear(t, name+", vertical slope", got.Vertical.Slope, want.Vertical.Slope, lost/90e6)
	}
	reverse := dial.Reverse{CarriedByStationary: near, CarriedByMovable: far}
	check("reverse", solved(t, reverse).Value, caseA)
	check("rim-face", solved(t, dial.RimFace{Carrier: align.Stationary, Rim: near, Face: face}).Value, caseA)

	// The same dial, called stationary carrier at x' = +50 by a crew that takes the
	// machines the other way round and stands at the other end.
	exchanged := dial.RimFace{Carrier: align.Stationary, Rim: dial.Rim{Station: 50 * units.Millimetre, Readings: asExchanged},
		Face: dial.Face{Diameter: 150 * units.Millimetre, Readings: dial.Quarters(units.Millimetre, 0, 0.0225, 0.105, 0.0825)}}
	check("exchanged", solved(t, exchanged).Value, caseA.Exchanged())

	// From the stationary end 3 and 9 are exchanged.
	for _, r := range []sweep{onMovable, onStationary} {
		r[1].Value, r[3].Value = r[3].Value, r[1].Value
	}
	reverse.View = align.FromStationary
	check("from the stationary end", solved(t, reverse).Value, caseA)
}
