package align

// output is a quantity that a job is asked for. In each plane it is linear in the
// offset, in nanometres, and the slope; its size is the root of both squares.
type output struct {
	onOffset, onSlope float64
	plane             plane
	foot              int // whose station, where it is uncertain, stands for -onSlope; noFoot: none
}

type plane int

const (
	horizontal plane = iota
	vertical
	both
)

const noFoot = -1

// The outputs of a job begin with the four numbers and go on with these; two follow
// for each foot, and six for the flex planes where there is a span.
const (
	offsetSize = four + iota
	slopeSize
	firstFoot
)

// flexAt is where the tilts of the flex planes begin.
func (m *MonteCarlo) flexAt() int { return firstFoot + 2*len(m.Feet) }

func (m *MonteCarlo) outputs() []output {
	list := []output{
		offsetY: {1, 0, horizontal, noFoot}, slopeY: {0, 1, horizontal, noFoot},
		offsetZ: {1, 0, vertical, noFoot}, slopeZ: {0, 1, vertical, noFoot},
		offsetSize: {1, 0, both, noFoot}, slopeSize: {0, 1, both, noFoot},
	}
	for i, f := range m.Feet { // a move is what takes the line to zero: -(offset + slope*x)
		x := float64(f.X)
		list = append(list, output{-1, -x, horizontal, i}, output{-1, -x, vertical, i})
	}
	if m.Coupling.Span == 0 {
		return list
	}
	perOffset, perSlope := m.tilts(Line{Offset: 1}), m.tilts(Line{Slope: 1})
	for i := range perOffset { // linear, so that these tell all
		for _, p := range [...]plane{horizontal, vertical, both} {
			list = append(list, output{perOffset[i], perSlope[i], p, noFoot})
		}
	}
	return list
}

// tilts returns those of the stationary and of the movable flex plane that a line
// makes.
func (m *MonteCarlo) tilts(l Line) [2]float64 {
	stationary, movable, _ := m.Coupling.FlexTilts(Centreline{Vertical: l}) // the span was checked
	return [2]float64{float64(stationary.Vertical), float64(movable.Vertical)}
}

// fill writes output i of every trial.
func (b *Block) fill(dst []float64, i int) {
	o := b.outputs[i]
	switch o.plane {
	case horizontal:
		o.combine(dst, b.numbers[offsetY], b.numbers[slopeY], b.stationsOf(o))
	case vertical:
		o.combine(dst, b.numbers[offsetZ], b.numbers[slopeZ], b.stationsOf(o))
	case both:
		o.sizes(dst, &b.numbers)
	}
}

// stationsOf returns where the foot of an output stands in every trial; none where
// that is exact.
func (b *Block) stationsOf(o output) []float64 {
	if o.foot == noFoot {
		return nil
	}
	return b.stations[o.foot]
}

// combine fills dst with what follows from the lines of one plane.
func (o output) combine(dst, offset, slope, stations []float64) {
	offset, slope = offset[:len(dst)], slope[:len(dst)]
	if stations == nil {
		for k := range dst {
			dst[k] = o.of(offset[k], slope[k])
		}
		return
	}
	stations = stations[:len(dst)]
	for k := range dst {
		o.onSlope = -stations[k]
		dst[k] = o.of(offset[k], slope[k])
	}
}

// of returns what follows from one line; the zero at the end makes zero of a negative
// zero.
func (o output) of(offset, slope float64) float64 {
	return float64(o.onOffset*offset) + float64(o.onSlope*slope) + 0
}

func (o output) sizes(dst []float64, numbers *[four][]float64) {
	y, ySlope := numbers[offsetY][:len(dst)], numbers[slopeY][:len(dst)]
	z, zSlope := numbers[offsetZ][:len(dst)], numbers[slopeZ][:len(dst)]
	for k := range dst {
		dst[k] = root2(o.of(y[k], ySlope[k]), o.of(z[k], zSlope[k]))
	}
}
