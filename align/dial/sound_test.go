package dial_test

import (
	"example.org/collinear/align"
	"example.org/collinear/align/dial"
	"example.org/collinear/units"
)

// soundJobs are jobs without readings, one a method.
var soundJobs = map[string]solver{
	"reverse": dial.Reverse{
		CarriedByStationary: dial.Rim{Station: 90 * units.Millimetre},
		CarriedByMovable:    dial.Rim{Station: -60 * units.Millimetre},
	},
	"rim-face": dial.RimFace{
		Carrier: align.Stationary,
		Rim:     dial.Rim{Station: 40 * units.Millimetre},
		Face:    dial.Face{Diameter: 150 * units.Millimetre},
	},
	"face-face": dial.FaceFace{
		Span:         800 * units.Millimetre,
		AtStationary: dial.Face{Diameter: 150 * units.Millimetre},
		AtMovable:    dial.Face{Diameter: 120 * units.Millimetre},
	},
	"rim and gap": dial.RimGap{
		Carrier: align.Movable,
		Rim:     dial.Rim{Station: -40 * units.Millimetre},
		Gap:     dial.Gap{Diameter: 150 * units.Millimetre},
	},
	"straightedge and gap": dial.StraightedgeGap{
		Straightedge: dial.Straightedge{On: align.Stationary, Station: 30 * units.Millimetre},
		Gap:          dial.Gap{Diameter: 150 * units.Millimetre},
	},
}
