// Package tolerance judges how far two shafts are out of line: limits on offset
// and slope, tables of them by speed, the few rules that have a source, and the
// verdict.
//
// # What is judged
//
// Only what was found less the target is judged, never the misalignment as it
// stands: a machine that will grow is right when it is cold and out of line by
// its target. [Limits.Judge] takes an [align.Estimate] that is just that.
//
// A short coupling (Span zero) is judged by the offset at its centre, x = 0, and
// by the slope between the shafts. A spacer coupling is judged by the tilt at each
// flex plane, with L from flex plane to flex plane:
//
//	stationary = offset/L + slope/2        movable = slope/2 - offset/L
//
// Both planes are taken together, as the length of a vector, unless the owner of
// the limits says that each plane is judged by itself. Limits and what is held
// against them are sizes and have no sign.
//
// # Simple acceptance
//
// What stands on its limit is within. Found and limit are compared after rounding
// each to 1 nm, a slope to 1 nm over a metre, so that a reading that stands
// exactly on a limit compares right although 0.1 mm/m is no float64. The standard
// uncertainty stands beside each item and never decides, whatever it is and
// wherever it comes from; no probability is given. Whoever reads a verdict close
// to a limit has to look at that uncertainty.
//
// # What is not here
//
// No table of limits by speed is shipped. Those that are often reprinted belong
// to their makers, and the table of ANSI/ASA S2.75 was not seen here: its owner
// types it in, see [ReadCSV] for the form. There is no limit that counts when
// none is given.
//
// # Before you run the machine
//
// A limit of this package, also one with a source, is never permission to run.
// The limits of the machine's and the coupling's makers, local codes and licensed
// practice come first, and those of a coupling are often closer than those of any
// table: its parallel, angular and axial limits use up one another. A verdict of
// "within" says nothing about soft foot, pipe strain, axial spacing, the bolts or
// the guard. Isolate and lock out the driver before touching a coupling, and put
// the guard back before starting.
package tolerance
