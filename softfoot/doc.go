// Package softfoot finds out why a machine does not stand square on its feet, and
// which shims cure it. Do it before alignment: a frame that is bent by its bolts
// moves with every one of them.
//
// # Surveys
//
// A [Survey] goes round three to eight feet, anywhere in plan. One foot at a time
// is loosened, all others tight, and it is noted how far it lifts: on a dial at
// the foot, with a feeler under its corners ([Gap]), or from what the probes of
// an alignment saw at the shaft ([AtShaft]).
//
// x runs along the shaft and y across it, positive towards 3 o'clock for an
// observer who looks along -x, from behind the movable machine, as package align
// has it. Lifts are positive upwards.
//
// # Kinds
//
// [Survey.Judge] takes a frame that is flat when free and bends like a plate, and
// looks for heights of the pads that explain the lifts. On four pads of which one
// is low by g, that foot lifts g, and so does the one diagonally across; the other
// two show nothing. Which of the two is short the lifts cannot tell: g under either
// takes the twist out, or half of g under each. The full lift under both would put
// it back the other way round. Real frames sag, and bolts yield, so a pattern
// counts when it misses no lift by more than Limits.Margin and a quarter of the
// largest excess, with four feet half of it; by how much it does miss is in
// [Advice].Left. Shims go only under feet
// that lift by more than Limits.Margin above the others.
//
//   - [Parallel]: pads out of plane explain the lifts; or a foot is soft alone, in
//     a frame that yields. Flat shims.
//   - [Angular]: the gap differs across the corners of a foot. A stepped shim, or
//     machining. A foot that is soft alone and was not felt may be that as well.
//   - [Springing]: all feet lift, or feet that no pads explain. The packing gives.
//   - [Induced]: feet lift that no pads explain, or not well, such as both of one end
//     or side of four, or a foot goes down as it is loosened. Piping, conduit or
//     coupling load the machine, which no shim cures.
//
// Where more than one fits, all are named, with what would tell them apart.
//
// # What the advice is worth
//
// Simulated in the tests: 5 000 elastic frames, half of them with four feet, the
// others with five to eight; a corner without its foot sags by 6 to 60 um; one pad
// is wrong by up to 0.4 mm, or all are uneven by 0.1 mm (standard deviation); dials
// scatter by 0.01 mm. The crew puts in what is advised first, acts a scatter below
// the 0.05 mm wanted, and stops after two rounds. Then no foot lifts 0.05 mm above
// another on 97 % of the machines: on 99 % of those with four feet, 97 % with five,
// 93 to 95 % with more, for there the bolts hide more than the lifts show. Further
// rounds cure some of the rest, not all.
//
// A crew that shims every foot by its own lift gets there on 43 % of the machines
// with four feet, for it shims both of a diagonal. On frames of more feet that bend,
// it fares about as well as the advice, with more shims.
//
// What shims do to the alignment ([Shift]) takes the machine as a rigid body that
// follows the plane of least squares through its shims. Plan both jobs together,
// and measure the alignment again after soft foot is cured.
//
// The package answers from what it is told. It knows no machine, talks to no
// instrument and keeps nothing.
//
// # Before you touch a bolt
//
// Isolate and lock out the driver, and support the shaft and the coupling as their
// makers say. Loosen one bolt at a time, never all of them under a machine that
// piping may push. Lift with proper gear, and keep hands out from under a lifted
// foot. The instructions of the machine's maker, local codes and licensed practice
// come first; a limit of this package is never permission to run.
package softfoot
