package thermal

import "example.org/collinear/align"

// ColdTarget returns where the movable shaft has to lie relative to the
// stationary one when both machines are cold, so that they run in line:
//
//	target = growth of the stationary machine - growth of the movable one
//
// What was found cold minus this target is what is left to correct. The dial
// readings to look for are those that align.Set.Predict gives for its value.
//
// The growths count as independent. An error that both have in common, of one
// coefficient or one thermometer for both machines, in truth cancels in part
// where both grow the same way, so that the uncertainty given is too large then,
// and too small where one grows and the other shrinks.
//
// Numbers that are not finite stay so: an estimate made by [Growth] has none.
func ColdTarget(stationary, movable align.Estimate) align.Estimate {
	return stationary.Minus(movable)
}

// Running returns how the shafts lie to one another at temperature, from how
// they lie cold:
//
//	running = cold + growth of the movable machine - growth of the stationary one
//
// The three count as independent. They are not where cold is a target that was
// made of the same growths: its value then comes out in line, but the
// uncertainty of each growth is counted twice.
func Running(cold, stationary, movable align.Estimate) align.Estimate {
	return cold.Plus(movable).Minus(stationary)
}
