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
// [Limits.Judge] is simple acceptance. What stands on its limit is within. Found
// and limit are compared after rounding each to 1 nm, a slope to 1 nm over a
// metre, so that a reading that stands exactly on a limit compares right although
// 0.1 mm/m is no float64. The standard uncertainty stands beside each item and
// does not decide, whatever it is and wherever it comes from.
//
// # Verdicts that count with uncertainty
//
// [Limits.JudgeBy] follows JCGM 106:2012 (from memory): within, outside or
// undecided at a probability that the caller states, or guarded acceptance, where
// each limit is drawn in by so many standard uncertainties. Which rule it was
// stands in the verdict; where the uncertainty is unknown it is simple acceptance.
//
// Each item has its conformance probability: that the true value is up to the
// limit, given the estimate alone, without knowledge of what such machines are
// like. For both planes together it is the integral of the bivariate normal
// distribution over the disc of the limit, which holds where the length of a
// vector is not normal, near zero; for one plane it is that over the interval. An
// uncertainty from the scatter of few readings makes it Student's t. It is right
// to 1e-9, and as good as the uncertainties that it is given: what nobody put
// into them it does not know. All items at once are within with a probability of
// at least one less what each leaves open (inequality of Boole), however they
// depend on one another; that bound can be far too low, as offset and slope are
// mostly right or wrong together.
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
// A limit of this package, also one with a source, is never permission to run, and
// no probability is: it counts what was measured, and nothing else.
// The limits of the machine's and the coupling's makers, local codes and licensed
// practice come first, and those of a coupling are often closer than those of any
// table: its parallel, angular and axial limits use up one another. A verdict of
// "within" says nothing about soft foot, pipe strain, axial spacing, the bolts or
// the guard. Isolate and lock out the driver before touching a coupling, and put
// the guard back before starting.
package tolerance
