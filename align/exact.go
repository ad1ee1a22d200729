package align

import (
	"math"

	"example.org/collinear/internal/check"
	"example.org/collinear/internal/lsq"
	"example.org/collinear/units"
)

// ExactFit is a centreline fitted with the exact geometry of rims and faces,
// beside what the linear fit makes of the same readings.
type ExactFit struct {
	Fitted
	Difference Centreline `json:"difference"`       // this answer less that of Fit: what the linear model costs here
	Linear     []int      `json:"linear,omitempty"` // sets taken as linear: a Rim or a Bore without its radius, a Straightedge
}

// FitExact is [Fit] without its small-angle step: a plunger is a ray that meets
// an inclined cylinder (a Rim or a Bore that gives the Radius) or an inclined
// plane (faces, those of a spacer too). It matters on a part of a turn, where the
// circle of a rim moves the linear answer by micrometres; on a full turn both
// agree to nanometres.
//
// Tips are points: add the radius of a ball tip to that of a rim, take it off
// that of a bore. A carrier's station counts along its own axis, and its clock
// turns about that axis, zero in the vertical plane through it. A Gap is taken
// parallel to the stationary axis; the dial at a spacer's joint is carried by
// the machine, and the spacer runs from the stationary axis at x = -span/2 to the
// movable one at span/2. Sag enters as in Fit. A Displacement is linear by what it
// is. Where the geometry is not known the law of Fit is used, and the answer
// names the sets.
//
// The method is Gauss and Newton's from the linear answer, with the exact
// derivatives, until a step changes no reading by more than its rounding. The
// answer then agrees with an exact simulation of two rigid shafts to 1 nm, on
// arcs from 60 degrees up, to 5 mm of offset and 2 mm/m of slope.
//
// Degrees of freedom, scatter, condition and covariance are those of the equations
// at the answer, as for Fit, with the exact derivatives to station, radius (of a rim
// too), sag, clock and angles. What residuals bring in beside these is that of the
// linear law, and their part in the curvature is neglected: a share of the
// covariance about the residuals over the rim's radius, times the square of the
// condition.
//
// It refuses what Fit refuses. It also refuses (Unreachable, at /sets) readings
// for which the search does not settle, or comes to an axis that lies outside a
// rim. A sound set without warnings allocates nothing unless a set is taken as
// linear.
func FitExact(sets ...Set) (ExactFit, error) {
	var s solution
	linear, err := s.fit(sets)
	if err != nil {
		return ExactFit{}, err
	}
	if err := s.refine(sets); err != nil {
		return ExactFit{}, err
	}
	f := ExactFit{
		Fitted: Fitted{
			Estimate:         Estimate{Value: centreline(s.beta), Cov: s.exactCovariance(sets)},
			DegreesOfFreedom: s.dof(),
			Scatter:          s.scatter(),
			Condition:        s.condition,
			Warnings:         linear.Warnings,
		},
		Linear: takenAsLinear(sets),
	}
	f.Difference = f.Value.Minus(linear.Value)
	var faults check.Faults
	if f.check(&faults, check.Path{}); faults.Len() > 0 {
		return ExactFit{}, refuse(units.OutOfRange, "readings and stations that leave numbers a machine can hold")
	}
	return f, nil
}

// Steps of a search, and when it is over: a step that moves no reading by more
// than some rounding units. Of 3000 scenes drawn at up to 5 mm, readings that fit
// took at most 5 steps and readings with 5 um of noise mostly 3 to 6, at most 17.
// What is left of each step grows with the residuals over the radius of the rim and
// the square of the condition; from about one on the search does not settle.
const (
	mostSteps = 200
	settled   = 64 * 0x1p-53
)

// refine goes from the linear answer to the exact one.
func (s *solution) refine(sets []Set) error {
	for range mostSteps {
		step, size, err := s.step(sets)
		if err != nil {
			return err
		}
		if step <= settled*size {
			return nil
		}
	}
	return refuse(units.Unreachable, "readings for which the search for the exact centreline settles")
}

// step solves the equations that are linear about beta, and moves beta there. It
// returns by how much that changes the readings, and how large the readings and
// what they are computed from are, both as roots of weighted squares.
func (s *solution) step(sets []Set) (step, size float64, err error) {
	var work [four * (four + 1)]float64
	common := lsq.In(work[:], four)
	var seen law
	shafts := posed(s.beta)
	s.sum = 0
	for i := range sets {
		part, err := s.takeExact(&common, &shafts, &sets[i])
		if err != nil {
			return 0, 0, err
		}
		size += part
		seen.addFullTurn(sets[i].Probe.law(), sets[i].totalWeight())
	}
	s.sum += common.SumSquares()
	if err := s.judge(&common, seen.fullTurn()); err != nil {
		return 0, 0, err
	}
	return s.move(&common), math.Sqrt(size), nil
}

// move adds the change that the equations ask for to beta, and returns by how much
// the readings change.
func (s *solution) move(common *lsq.Triangle) float64 {
	var change, row [four]float64
	common.Solve(change[:])
	sum := 0.0
	for i := range change {
		s.beta[i] += change[i]
		rhs := common.Row(row[:], i)
		sum += float64(rhs * rhs)
	}
	return math.Sqrt(sum)
}

// takeExact reduces one set, linear about the shafts as they are posed, to its
// own triangle in its zero and the four numbers. As in take, the first row settles
// the zero and the others enter the common equations. It returns the weighted
// squares of what the set's residuals are computed from.
func (s *solution) takeExact(common *lsq.Triangle, shafts *shafts, set *Set) (size float64, err error) {
	const unknowns = 1 + four
	var work [unknowns * (unknowns + 1)]float64
	own := lsq.In(work[:], unknowns)
	for i := range set.Readings {
		sin, cos := set.sinCos(i)
		c, ok := shafts.touch(set, sin, cos)
		if !ok {
			return 0, refuse(units.Unreachable, "a misalignment that leaves the axis of a dial within the rim that it touches")
		}
		w, value := set.weight(i), set.corrected(i, cos)
		row := [unknowns]float64{w}
		for j := range c.row {
			row[1+j] = w * c.row[j]
		}
		own.Add(row[:], w*(value-c.value))
		largest := w * max(math.Abs(mm(set.Readings[i].Value)), math.Abs(set.droop()), c.size)
		size += float64(largest * largest)
	}
	for i := range four {
		var row [unknowns]float64
		rhs := own.Row(row[:], 1+i)
		common.Add(row[1:], rhs)
	}
	s.sum += own.SumSquares()
	return size, nil
}

// takenAsLinear lists the sets whose geometry is not known.
func takenAsLinear(sets []Set) (list []int) {
	for i := range sets {
		p := &sets[i].Probe
		if p.Kind == Straightedge || p.radiusUnknown() {
			list = append(list, i)
		}
	}
	return list
}

// radiusUnknown tells of a rim or a bore without its radius.
func (p *Probe) radiusUnknown() bool { return (p.Kind == Rim || p.Kind == Bore) && p.Radius == 0 }
