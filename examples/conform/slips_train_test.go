package main

import (
	"encoding/json"
	"math"
)

// trainSlips are those in trains of machines.
var trainSlips = []slip{
	{flag: "limits_ignored", spoil: ofPlan(withoutLimits)},
	{flag: "limit_sides_exchanged", spoil: ofPlan(func(in object) { eachLimit(in, otherEnds) })},
	{flag: "limits_of_other_plane", spoil: ofPlan(func(in object) {
		eachMachine(in, func(o object) {
			eachOf("feet", func(f object) { exchangeMembers(f, "vertical", "horizontal") })("", o)
		})
	})},
	{flag: "clipped_to_limits", twist: planTwist(clipped)},
	{flag: "relative_reversed", spoil: ofTrains(func(in object) { eachJointLine(in, func(_, line object) { member{"offset", "slope"}.times(line, -1) }) })},
	{flag: "slope_not_carried", spoil: ofTrains(func(in object) { eachJointLine(in, fromZeroOfTrain) })},
	{flag: "seen_from_ignored", spoil: ofTrains(eachJoint(func(j object) { delete(j, "seen_from") }))},
	{flag: "exchange_forgotten", spoil: func(op string, in object) {
		ofPlan(eachJoint(rolesOnly))(op, in)
		ofCentrelines(eachJoint(offsetsOnly))(op, in)
	}, twist: func(op string, _, answer object) {
		if op == "exchange" {
			member{"slope"}.times(asObject(result(answer)["horizontal"]), -1)
			member{"offset"}.times(asObject(result(answer)["vertical"]), -1)
		}
	}},
	{flag: "first_coupling_only", spoil: ofPlan(laterCouplingsLoose)},
	{flag: "reference_ignored", spoil: ofTrains(func(in object) { delete(in, "reference") })},
	{flag: "first_as_reference", spoil: ofPlan(firstAsReference)},
	{flag: "work_ignored", spoil: ofPlan(func(in object) { delete(in, "work") })},
	{flag: "work_confused", spoil: ofPlan(func(in object) {
		in["work"] = map[any]string{"largest_move": "total_travel", "fewest_feet": "total_travel"}[in["work"]]
		if in["work"] == "" {
			in["work"] = "largest_move"
		}
	})},
	{flag: "neighbour_taken_as_still", twist: planTwist(ontoNeighbours)},
	{flag: "ways_out_forgotten", twist: planTwist(func(_, r object) { r["in_the_way"] = []any{} })},
	{flag: "way_out_side_exchanged", twist: planTwist(func(_, r object) {
		eachOf("in_the_way", func(o object) { o["side"] = map[any]string{"low": "high", "high": "low"}[o["side"]] })("", r)
	})},
	{flag: "reference_not_a_way_out", twist: planTwist(func(in, r object) {
		var others []any
		eachOf("in_the_way", func(o object) {
			if o["machine"] != in["reference"] {
				others = append(others, o)
			}
		})("", r)
		r["in_the_way"] = others
	})},
	{flag: "at_sign", spoil: ofCentrelines(func(in object) {
		eachJointLine(in, func(j, line object) { fromZeroOfTrain(j, line); fromZeroOfTrain(j, line) })
	})},
	{flag: "target_taken_off", spoil: ofCentrelines(eachJoint(takeTargetOff))},
	{flag: "last_joint_only", twist: linesTwist(lastJointOnly)},
	{flag: "u_not_carried", twist: linesTwist(uNotCarried)},
	{flag: "shift_reversed", twist: planTwist(func(_, r object) {
		eachOf("machines", func(o object) { member{"shift"}.times(o, -1) })("", r)
	})},
}

// inTrains are mistakes that are possible elsewhere too, as they are made in trains.
var inTrains = map[string]slip{
	"target_ignored":          {spoil: ofTrains(eachJoint(func(j object) { delete(j, "target") }))},
	"target_added":            {spoil: ofTrains(eachJoint(func(j object) { linesOf(j["target"]).times(-1) }))},
	"planes_apart":            {spoil: ofPlan(eachJoint(func(j object) { perPlaneIs(asObject(j["limits"]), true) }))},
	"planes_together":         {spoil: ofPlan(eachJoint(func(j object) { perPlaneIs(asObject(j["limits"]), false) }))},
	"short_for_spacer":        {spoil: ofPlan(eachJoint(func(j object) { delete(j, "coupling") }))},
	"planes_mixed":            {}, // are other mistakes in a plan
	"correction_for_position": {},
}

// asInTrains puts what a mistake is in trains beside what it is elsewhere.
func asInTrains(all []slip) []slip {
	for i := range all {
		here, there := inTrains[all[i].flag]
		if !there {
			continue
		}
		spoil, twist := all[i].spoil, all[i].twist
		all[i].spoil = func(op string, in object) {
			if isTrain(op) && here.spoil != nil {
				here.spoil(op, in)
			} else if !isTrain(op) && spoil != nil {
				spoil(op, in)
			}
		}
		all[i].twist = func(op string, in, answer object) {
			if !isTrain(op) && twist != nil {
				twist(op, in, answer)
			}
		}
	}
	return all
}

func isTrain(op string) bool { return op == "plan" || op == "centrelines" }

// ofTrains spoils every train, ofPlan one that is to be planned.
func ofTrains(spoil func(in object)) func(string, object) {
	return func(op string, in object) {
		if isTrain(op) {
			spoil(in)
		}
	}
}

func ofPlan(spoil func(in object)) func(string, object) {
	return func(op string, in object) {
		if op == "plan" {
			spoil(in)
		}
	}
}

// planTwist twists a plan, if it is one.
func planTwist(twist func(in, result object)) func(string, object, object) {
	return func(op string, in, answer object) {
		if r := result(answer); op == "plan" && r != nil {
			twist(in, r)
		}
	}
}

// ofCentrelines spoils a train whose centrelines are asked for, linesTwist twists them;
// it gets those of the machines in order, and which of them is the axis.
func ofCentrelines(spoil func(in object)) func(string, object) {
	return func(op string, in object) {
		if op == "centrelines" {
			spoil(in)
		}
	}
}

func linesTwist(twist func(in object, lines []object, axis int)) func(string, object, object) {
	return func(op string, in, answer object) {
		var lines []object
		axis := 0
		eachOf("machines", func(o object) {
			if o["machine"] == in["reference"] {
				axis = len(lines)
			}
			lines = append(lines, asObject(o["at"]))
		})("", result(answer))
		if op == "centrelines" && lines != nil {
			twist(in, lines, axis)
		}
	}
}

// lastJointOnly adds up nothing: each machine is told from its neighbour.
func lastJointOnly(_ object, lines []object, axis int) {
	less := func(i, next int) {
		for _, plane := range planePairNames {
			a, b := asObject(lines[i][plane]), asObject(lines[next][plane])
			a["offset"] = text(float(a["offset"])-float(b["offset"]), " mm")
			a["slope"] = text(float(a["slope"])-float(b["slope"]), " mm/m")
		}
	}
	for i := len(lines) - 1; i > axis; i-- {
		less(i, i-1)
	}
	for i := range axis {
		less(i, i+1)
	}
}

// uNotCarried forgets what an uncertain slope does on the way to the zero of x: the
// squares of offsets alone are added up from the axis.
func uNotCarried(in object, lines []object, axis int) {
	joints, _ := in["joints"].([]any)
	for _, plane := range planePairNames {
		squares := make([]float64, len(lines))
		add := func(i, next, joint int) {
			squares[i] = squares[next]
			if u := uOf(asObject(asObject(joints[joint])["found"])[plane]); u != nil {
				squares[i] += float(u["offset"]) * float(u["offset"])
			}
			if u := uOf(lines[i][plane]); u != nil {
				u["offset"] = text(math.Sqrt(squares[i]), " mm")
			}
		}
		for i := axis + 1; i < len(lines); i++ {
			add(i, i-1, i-1)
		}
		for i := axis - 1; i >= 0; i-- {
			add(i, i+1, i)
		}
	}
}

func takeTargetOff(joint object) {
	found, target := linesOf(joint["found"]), asObject(joint["target"])
	if target == nil || len(found) != 2 {
		return
	}
	for _, plane := range planePairNames {
		a, b := asObject(asObject(joint["found"])[plane]), asObject(target[plane])
		a["offset"] = text(float(a["offset"])-float(b["offset"]), " mm")
		a["slope"] = text(float(a["slope"])-float(b["slope"]), " mm/m")
	}
}

func perPlaneIs(limits object, is bool) {
	if limits != nil {
		limits["per_plane"] = is
	}
}

func eachMachine(in object, f func(m object)) { eachOf("machines", f)("", in) }

func eachJoint(f func(j object)) func(in object) {
	return func(in object) { eachOf("joints", f)("", in) }
}

// eachJointLine calls f for what was found at a joint, and its target, in each plane.
func eachJointLine(in object, f func(joint, line object)) {
	eachJoint(func(j object) {
		for _, line := range append(linesOf(j["found"]), linesOf(j["target"])...) {
			f(j, line)
		}
	})(in)
}

// eachLimit calls f for the limit of each foot in each plane.
func eachLimit(in object, f func(limit object)) {
	each("", in["machines"], func(name string, o object) {
		if name == "vertical" || name == "horizontal" {
			f(o)
		}
	})
}

func withoutLimits(in object) {
	eachLimit(in, func(limit object) { delete(limit, "at_least"); delete(limit, "at_most") })
}

// otherEnds takes what can be gone downwards for what can be gone upwards.
func otherEnds(limit object) {
	exchangeMembers(limit, "at_least", "at_most")
	member{"at_least", "at_most"}.times(limit, -1)
}

func exchangeMembers(o object, one, other string) {
	a, b := o[one], o[other]
	for name, v := range map[string]any{one: b, other: a} {
		delete(o, name)
		if v != nil {
			o[name] = v
		}
	}
}

// fromZeroOfTrain takes the offset for that at the zero of the train's x.
func fromZeroOfTrain(joint, line object) {
	line["offset"] = text(float(line["offset"])+float(line["slope"])/1000*float(joint["at"]), " mm")
}

// rolesOnly exchanges the roles of the machines, and forgets from which end one looks.
func rolesOnly(joint object) {
	if joint["seen_from"] == "first" {
		for _, p := range []any{joint["found"], joint["target"]} {
			member{"offset"}.times(asObject(asObject(p)["horizontal"]), -1)
			member{"slope"}.times(asObject(asObject(p)["vertical"]), -1)
		}
	}
	delete(joint, "seen_from")
}

// offsetsOnly turns both offsets, and neither slope.
func offsetsOnly(joint object) {
	if joint["seen_from"] == "first" {
		for _, line := range linesOf(joint["found"]) {
			member{"offset"}.times(line, -1)
		}
	}
	delete(joint, "seen_from")
}

// laterCouplingsLoose gives all couplings but the first a thousand times their limits.
func laterCouplingsLoose(in object) {
	joints, _ := in["joints"].([]any)
	for i, j := range joints {
		if i > 0 {
			member{"offset", "slope", "flex"}.times(asObject(asObject(j)["limits"]), 1000)
		}
	}
}

func firstAsReference(in object) {
	if machines, _ := in["machines"].([]any); len(machines) > 0 {
		in["reference"] = asObject(machines[0])["name"]
	}
}

// clipped plans without limits, and stops each foot at its own.
func clipped(in, r object) {
	var train trainInput
	free := object{}
	document, _ := json.Marshal(in)
	json.Unmarshal(document, &train)
	json.Unmarshal(document, &free)
	withoutLimits(free)
	plan := result(honest(object{"seq": 1, "op": "plan", "input": free}))
	eachOf("moves", func(m object) {
		machine, foot := train.find(m["machine"].(string), m["foot"].(string))
		for plane, name := range planePairNames {
			ends, by := train.Machines[machine].Feet[foot].ends(plane), float(m[name])
			if ends.AtLeast != "" {
				by = max(by, float(ends.AtLeast))
			}
			if ends.AtMost != "" {
				by = min(by, float(ends.AtMost))
			}
			m[name] = text(by, " mm")
		}
	})("", plan)
	r["moves"], r["machines"], r["in_the_way"] = plan["moves"], plan["machines"], []any{}
	judgeAgain(train, r)
}

// judgeAgain says of a plan what its moves leave.
func judgeAgain(train trainInput, r object) {
	var l lengths
	moves := make([][]planePair, len(train.Machines))
	eachOf("moves", func(m object) {
		machine, _ := train.find(m["machine"].(string), m["foot"].(string))
		moves[machine] = append(moves[machine], planePair{float(m["horizontal"]), float(m["vertical"])})
	})("", r)
	w, onTarget := train.after(moves, &l)
	r["ratio"] = w.ratio
	switch {
	case onTarget:
		r["reach"] = "on_target"
	case w.ratio <= 1:
		r["reach"] = "within_limits"
	default:
		r["reach"] = "out_of_reach"
	}
}

// ontoNeighbours moves each machine onto its neighbour on the side of the reference,
// or else of the first machine, as that stands now.
func ontoNeighbours(in, r object) {
	var train trainInput
	document, _ := json.Marshal(in)
	json.Unmarshal(document, &train)
	axis, _ := train.find(train.Reference, "")
	axis = max(axis, 0)
	eachOf("moves", func(m object) {
		machine, foot := train.find(m["machine"].(string), m["foot"].(string))
		joint, sign := machine, 1.0
		if machine > axis {
			joint, sign = machine-1, -1
		}
		if machine == axis {
			joint, sign = 0, 0
		}
		off, _ := train.Joints[joint].off()
		along := (float(train.Machines[machine].Feet[foot].X) - float(train.Joints[joint].At)) / 1000
		for plane, name := range planePairNames {
			m[name] = text(sign*(off.numbers[2*plane]+off.numbers[2*plane+1]*along), " mm")
		}
	})("", r)
	r["reach"], r["ratio"], r["in_the_way"] = "on_target", 0.0, []any{}
}
