// Package sheet works the hand methods of alignment line by line, and marks what a hand
// has worked: it tells which line is wrong, and which slip explains it.
//
// # Workings
//
// A [Working] is a calculation as a trainer writes it on the board. Every line has what
// is sought, the formula in symbols, the numbers put in with their units, the answer as
// a person rounds it, the exact one beside it, and the rule or work that it follows.
// Workings come from the inputs of this package, by their Working methods: [Job] for a
// whole alignment by rim and face, reverse dials, face dials at a spacer or gauges, with
// growth and feet; [Sweep], [Sag], [GapFromSlope], [SlopeFromGap], [FlexTilts],
// [ColdTarget], [TargetReadings], [SoftFoot], [SlidingLimit], [FlangeShims] and
// [ShimStacks] for one step each; [Problem] for whichever of these stands in a file. The
// lines call what the packages of this module answer with, and where those answer the
// same question, a line has their answer to the last bit.
//
// # Marking
//
// [Working.Check] judges lines that were written on a sheet, each by what stands above it
// on that sheet, with the tolerance that rounding by hand deserves. What is wrong is
// compared with the slips that hands make ([SlipKind]), and all that give the same
// numbers are named, with the lines that would tell them apart. Nothing is learnt
// from sheets, and no mark is given.
//
// # Signs, units
//
// Those of package align, in every line: vertical is positive upwards, horizontal
// towards 3 o'clock as seen from behind the movable machine. Words for a sign ("push 4.0
// mil towards 9 o'clock") are those of the crew whose view the input states. Distances
// are shown in mm or inches, what a dial shows in mm or mils; see [System].
//
// # What is out
//
// Uncertainty, least squares on any angles, limits at feet and trains: no hand works
// them. Growth is worked for pieces with one mean rise on two supports a machine.
//
// # Sources
//
// H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair; R. B.
// McMillan, Rotating Machinery: Practical Solutions to Unbalance and Misalignment,
// Fairmont, 2004; J. Piotrowski, Shaft Alignment Handbook, 3rd edition (second-hand); US
// Bureau of Reclamation, FIST 4-1A, Maintenance Scheduling for Mechanical Equipment.
// Each line names its own. The list of slips is common practice, no source.
//
// # Caution
//
// A worked number is no permission to start or to run a machine, and a sheet without a
// wrong line may still rest on wrong readings. Isolate and lock out the driver before a
// coupling or a bolt is loosened; the makers' instructions, local codes and licensed
// practice come first.
package sheet
