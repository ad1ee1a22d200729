package arc

import (
	"example.org/collinear/align"
	"example.org/collinear/internal/check"
	"example.org/collinear/units"
)

// Follow is a move that is watched as it is made: the shafts stand still, each
// probe at one clock position, and the machine goes in one plane at a time. Where
// it stood at the start is known from a full measurement; two probes or more tell
// how far it has gone since. First one plane, usually the vertical, then the other
// in a Follow of its own, with From where the first one ended and with new start
// readings.
//
//	D = (r - r0)/(k cos t)    vertical      D = (r - r0)/(k sin t)    horizontal
//
// is the displacement that a probe at clock position t has seen of its station,
// with k its sign or gain; of two stations
//
//	slope = (D_2 - D_1)/(x_2 - x_1)        offset = (x_2 D_1 - x_1 D_2)/(x_2 - x_1)
//
// More probes, and faces, enter by weighted least squares. What droops droops all
// the time, so sag cancels, to first order.
//
// What the other plane does meanwhile goes unseen: see [Following.UnseenError]; so
// does a shaft that turns: see [Following.TurnError]. The closer a probe stands to
// the direction of the move the less of both it shows: a vertical move is best
// seen at 12 or 6, a horizontal one at 3 or 9.
//
// A dial on a face sees the machine go along its own axis as well. Tilting a
// machine about its feet, H below the shaft, takes it along by H times the slope:
//
//	r - r0 = slope (H + R cos t)        not slope R cos t
//
// so faces and gaps are refused in the vertical plane unless they are free of it
// (Standing.AxialFree). Swinging it sideways about its own axis moves nothing
// along; about a foot or a bolt that stands y from the axis, towards 3 o'clock, a
// face reads slope (R sin t - y), and that is not seen here. Derived here.
//
// The zero Follow is refused.
type Follow struct {
	From   align.Estimate `json:"from"`   // where the movable machine stood at the start, as found and not less the target: take Minus of what Now returns
	Plane  Plane          `json:"plane"`  // in which it moves
	View   align.View     `json:"view"`   // where the crew stands that names the clock positions
	Probes []Standing     `json:"probes"` // two or more
}

// Standing is a probe that stands still at one clock position. A rotating sensor is
// the Probe of its [Sensor.Sets], in which its gain has the sign that the carrying
// shaft gives it.
type Standing struct {
	Probe     align.Probe   `json:"probe"`
	Start     align.Reading `json:"start"`               // where it stands, what it showed at the start, and the standard uncertainty of one reading: for all probes or for none
	AxialFree bool          `json:"axial_free,omitzero"` // faces and Gap: blind to axial shift, as an angle channel is, or two face dials across from each other whose readings are subtracted (a NearFace whose radius is the sum of both)
}

// Followed is where a machine stands while it is followed.
type Followed struct {
	align.Estimate                // where it stands now
	Moved          align.Estimate `json:"moved"`     // since the start, in the plane that is followed
	Miss           units.Length   `json:"miss"`      // largest departure of a reading from the move that was found; zero of two probes, which decide it
	Condition      float64        `json:"condition"` // as align.Fitted has it: about 1 for probes well apart that look along the move
}

// Following is a Follow that was checked and solved once, so that every reading
// after costs little. [Follow.Begin] makes it; the zero value refuses readings. It
// may be used by several goroutines at once.
type Following struct {
	from      align.Estimate
	plane     Plane
	probes    []standing
	cov       align.Covariance // of the move
	condition float64
}

// Begin checks the follow and solves its equations. What it returns shares no
// memory with f.
//
// It refuses, with paths from the follow: an estimate that is not sound
// (/from/cov/u/vertical/offset), no plane (Missing, at /plane) or one that is not
// known, fewer than two probes (Missing, at /probes), a probe that is not sound
// (/probes/0/probe/station), numbers that are not finite (/probes/0/start/value),
// uncertainties for some of the probes only (Conflict, at /probes), a face in the
// vertical plane that is not free of axial shift (Unseen, at
// /probes/0/axial_free), a probe of another kind that is said to be (Conflict), a
// probe that looks across the move to within 0.57 degrees (Unseen, at
// /probes/0/start/at: a clock position is hardly known better than the half degree
// of its minute, so that not even the sign of what it sees is sure; the figure is
// ours), and probes that do not see offset and slope together, with a condition of
// 1e12 and more (Unseen, at /probes).
func (f Follow) Begin() (*Following, error) {
	if err := f.check(); err != nil {
		return nil, err
	}
	g := &Following{from: f.From, plane: f.Plane, probes: make([]standing, len(f.Probes))}
	for i := range f.Probes {
		g.probes[i].read(&f, i)
	}
	if err := g.solve(); err != nil {
		return nil, err
	}
	return g, nil
}

// Now returns where the machine stands when the probes, in their order, show the
// given readings.
//
// The uncertainty is that of From and that of the move together, as of two
// independent parts. That of the move comes from both readings of each probe, now
// and at the start:
//
//	u(D) = sqrt(2) u/|k cos t|    vertical      sqrt(2) u/|k sin t|    horizontal
//
// It is Unknown where that of From is, or where none is stated: what two or three
// probes leave over is too little to tell. Errors of stations and clock positions
// are not counted: they are in proportion to the move, and small. Two positions of
// one Following share the start readings. Where From was fitted to readings of
// which the start is one, that is counted twice.
//
// Linear. A rim of radius rho adds to a reading, with w its displacement,
//
//	-(w_y cos t - w_z sin t)^2/(2 rho) + rho (slope_y sin t + slope_z cos t)^2/2
//
// less the same at the start: of a probe that looks along the move the first part
// stays and the second is some 10 nm for a slope that changes by 0.5 mm/m. Derived
// here and checked against an exact simulation.
//
// It refuses another number of readings than there are probes (Missing or
// Conflict, at /readings), readings that are not finite (/readings/1), and such as
// make a move that cannot be reckoned with (OutOfRange, at /readings). It allocates
// nothing.
func (g *Following) Now(readings ...units.Length) (Followed, error) {
	if err := g.checkNow(readings); err != nil {
		return Followed{}, err
	}
	var l align.Line
	for i, r := range readings {
		g.probes[i].add(&l, r-g.probes[i].start)
	}
	moved := align.Estimate{Value: g.inPlane(l), Cov: g.cov}
	e := Followed{Estimate: g.from.Plus(moved), Moved: moved, Condition: g.condition}
	if len(readings) > 2 {
		e.Miss = g.miss(l, readings)
	}
	if e.Validate() != nil || moved.Validate() != nil || !check.Sound(e.Miss) {
		return Followed{}, &units.Fault{Code: units.OutOfRange, Path: "/readings", Want: "readings of a move that can be reckoned with"}
	}
	return e, nil
}

// miss is the largest residual.
func (g *Following) miss(l align.Line, readings []units.Length) (largest units.Length) {
	for i, r := range readings {
		p := &g.probes[i]
		left := r - p.start - units.Length(p.along*p.displacement(l))
		largest = max(largest, left, -left)
	}
	return largest
}

// inPlane returns a centreline that has the line in the plane that is followed.
func (g *Following) inPlane(l align.Line) align.Centreline {
	if g.plane == Horizontal {
		return align.Centreline{Horizontal: l}
	}
	return align.Centreline{Vertical: l}
}
