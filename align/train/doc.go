// Package train plans the moves of machines that stand in one line, two or many,
// when feet cannot go where the arithmetic sends them.
//
// # What it answers
//
// Each foot is free, fixed, or can go so far: bolt-bound sideways, base-bound
// downwards by what can come out from under it, under a ceiling upwards. One machine
// is the reference and stays, or none is. What was found at the couplings adds up to
// one picture of all centrelines ([Train.Centrelines]). [Train.Plan] then says
// which foot goes how far, in which order, and where that leads: on target, within
// limits, or, where neither can be had, the best that can, which limits stand in the
// way, and how far each has to open. [Train.PlanShims] lays the heights from shims
// that are there.
//
// # Axes and signs
//
// x runs along the whole train, from the first machine to the last, in line with the
// axis of package align; its zero is the caller's. The observer stands behind the
// last machine and looks at the first: 3 o'clock is on the right. Up and towards 3
// o'clock are positive. A coupling always speaks of the later machine relative to
// the earlier, in its own x, which is zero at the coupling centre; a set that was
// measured the other way round is turned with [align.Estimate.Exchanged].
//
//	s_(j+1) = s_j + slope_j        a_(j+1) = a_j + offset_j - slope_j X_j
//
// A move m_i of machine i, a line as everything here, changes what is left at
// coupling j from w_j to w_j + m_(j+1) - m_j.
//
// # How a plan is found
//
// On target, and where each plane is judged by itself, everything is a linear
// program: the least worst ratio, then the least work within it. Where a limit is
// that of a vector's length, it is a circle in the two planes; tangents of it are
// added as rows until the plan is outside none. [Plan].Ratio is that of the plan,
// [Plan].Bound that of the program, which allows more than the circles do: nothing
// better than the bound exists. Among plans of the least work the one of least
// squares is taken, which is the point nearest to the origin of a convex set, and
// only one point is. Derived here; the methods are named where they are used.
//
// What is left at the couplings is linear in the moves, exact for rigid machines and
// small slopes. The uncertainty of what was found stays: it is that of
// [JointAfter].After. A move is a decision and has none.
//
// # Before you touch the machine
//
// A plan is arithmetic on what was found and on limits that somebody stated; it does
// not know pipes, conduits, dowels, seals, gear contact, the axial float of a coupling
// or the strength of a frame, and it is no leave to run. Moving a machine that was to
// stay, a gearbox or a pump with its piping above all, loads what is tied to it:
// measure again with the pipes in place. Isolate and lock out every driver of the
// train before loosening a coupling or a bolt, lift with proper gear, keep hands from
// under feet, and put the guards back before starting. The instructions of the
// machines' and the couplings' makers, local codes and licensed practice come first.
package train
