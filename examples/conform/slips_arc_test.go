package main

import (
	"math"
	"slices"
)

// arcSlips are those in what is measured and followed while shafts turn, in what a
// fit rests on, and in two measurements of one position.
var arcSlips = []slip{
	{flag: "mounting_ignored", spoil: without("sets", "mounting")},
	{flag: "angle_ignored", spoil: func(_ string, in object) {
		each("", []any{in["sets"], in["sensors"]}, func(name string, o object) {
			if name == "u" {
				delete(o, "angle")
			}
		})
	}},
	{flag: "carrier_ignored_in_sensor", spoil: eachOf("sensors", func(o object) {
		if o["carrier"] == "movable" {
			o["carrier"] = "stationary"
		}
	})},
	{flag: "angle_channel_mirrored", spoil: eachOf("sensors", func(o object) {
		channel, _ := o["angle"].(object)
		if gain, isNumber := channel["gain"].(float64); isNumber && o["carrier"] == "movable" {
			channel["gain"] = -gain
		}
	})},
	{flag: "angle_channel_dropped", spoil: eachOf("sensors", func(o object) { delete(o, "angle") })},
	{flag: "expected_ignored", spoil: func(_ string, in object) { linesOf(in["expected"]).times(0) }},
	{flag: "foot_station_ignored", spoil: func(op string, in object) {
		if op == "sensor" || op == "forecast" {
			without("feet", "u")(op, in)
		}
	}},

	{flag: "leverage_ignored", twist: eachResidual(func(o object) {
		if s, isNumber := o["standardised"].(float64); isNumber {
			o["standardised"] = s * math.Sqrt(max(0, 1-o["leverage"].(float64)))
		}
	})},
	{flag: "residual_reversed", twist: eachResidual(func(o object) {
		member{"value"}.times(o, -1)
		if s, isNumber := o["standardised"].(float64); isNumber {
			o["standardised"] = -s
		}
	})},

	{flag: "reading_not_doubled", spoil: eachOf("probes", func(o object) { member{"u"}.times(o, math.Sqrt(0.5)) })},
	{flag: "start_ignored", spoil: eachOf("probes", func(o object) { member{"start"}.times(o, 0) })},
	{flag: "change_reversed", spoil: eachOf("probes", func(o object) { o["start"], o["now"] = o["now"], o["start"] })},
	{flag: "cosine_forgotten", spoil: func(_ string, in object) {
		eachOf("probes", func(o object) { alongTheMove(in["plane"], o) })("", in)
	}},
	{flag: "plane_exchanged", spoil: func(_ string, in object) { swapPlanes(in["from"]) }, twist: func(op string, _, answer object) {
		if op == "follow" {
			swapPlanes(answer["result"])
		}
	}},
	{flag: "from_forgotten", spoil: func(_ string, in object) { linesOf(movedPlane(in)).times(0) }},
	{flag: "from_known", spoil: func(_ string, in object) {
		member{"offset", "slope"}.times(uOf(movedPlane(in)), 0)
	}},
	{flag: "change_known", twist: func(op string, in, answer object) {
		plane, _ := in["plane"].(string)
		if before := uOf(movedPlane(in)); op == "follow" && uOf(result(answer)[plane]) != nil {
			result(answer)[plane].(object)["u"] = before
		}
	}},

	{flag: "correlation_ignored", spoil: func(op string, in object) {
		each("", in, func(_ string, o object) { delete(o, "correlation") })
	}},
	{flag: "position_known", spoil: func(op string, in object) {
		if op == "expect" {
			each("", in["position"], func(_ string, o object) { delete(o, "u"); delete(o, "correlation") })
		}
	}},
	{flag: "covariances_not_added", spoil: func(op string, in object) {
		if op == "compare" {
			each("", in["second"], func(name string, o object) {
				if name == "u" {
					member{"offset", "slope"}.times(o, 0)
				}
			})
		}
	}},
	{flag: "difference_reversed", twist: func(_ string, _, answer object) { linesOf(result(answer)["difference"]).times(-1) }},
	{flag: "p_lower_tail", twist: func(op string, _, answer object) {
		if p, isNumber := result(answer)["p"].(float64); isNumber {
			result(answer)["p"] = 1 - p
		}
	}},
	{flag: "weights_not_inverse", spoil: otherWeights},
	{flag: "u_not_reduced", twist: uOfTheBetter},

	{flag: "hole_for_arc", twist: func(op string, _, answer object) {
		if r := result(answer); op == "arc" && r != nil {
			r["covered"], r["hole"] = r["hole"], r["covered"]
			r["middle"] = text(float(r["middle"])+180, " deg")
		}
	}},
	{flag: "arc_over_twelve", twist: fromFirstToLast},
}

// eachOf spoils every member of a list.
func eachOf(list string, spoil func(o object)) func(string, object) {
	return func(_ string, in object) {
		all, _ := in[list].([]any)
		for _, o := range all {
			if o, isObject := o.(object); isObject {
				spoil(o)
			}
		}
	}
}

func eachResidual(twist func(o object)) func(string, object, object) {
	return func(_ string, _, answer object) { eachOf("residuals", twist)("", result(answer)) }
}

// planeLines are the numbers of a position without their uncertainties.
type planeLines []object

// linesOf finds the lines in one plane or in both.
func linesOf(v any) planeLines {
	var found planeLines
	each("", v, func(name string, o object) {
		if name != "u" && o["offset"] != nil {
			found = append(found, o)
		}
	})
	return found
}

func (l planeLines) times(k float64) {
	for _, o := range l {
		member{"offset", "slope"}.times(o, k)
	}
}

// movedPlane is where a machine that is followed was in the plane of its move.
func movedPlane(in object) any {
	from, _ := in["from"].(object)
	plane, _ := in["plane"].(string)
	return from[plane]
}

// uOf returns the uncertainties in a plane, or nil.
func uOf(plane any) object {
	o, _ := plane.(object)
	u, _ := o["u"].(object)
	return u
}

// swapPlanes exchanges what is said of the two planes.
func swapPlanes(v any) {
	if o, isObject := v.(object); isObject && o["horizontal"] != nil && o["vertical"] != nil {
		o["horizontal"], o["vertical"] = o["vertical"], o["horizontal"]
	}
}

// alongTheMove turns a probe to where it sees the whole of a move.
func alongTheMove(plane any, probe object) {
	at := float(probe["at"]) * math.Pi / 180
	one, other, sees := "12:00", "6:00", math.Cos(at)
	if plane == "horizontal" {
		one, other, sees = "3:00", "9:00", math.Sin(at)
	}
	switch {
	case sees > 0:
		probe["at"] = one
	case sees <= 0:
		probe["at"] = other
	}
}

// otherWeights gives each of two measurements the covariance of the other.
func otherWeights(op string, in object) {
	first, second := asObject(in["first"]), asObject(in["second"])
	if op != "merge" || first == nil || second == nil {
		return
	}
	swapMember(first, second, "correlation")
	for _, plane := range []string{"horizontal", "vertical"} {
		swapMember(asObject(first[plane]), asObject(second[plane]), "u")
	}
}

func swapMember(a, b object, name string) {
	x, y := a[name], b[name]
	put := func(o object, v any) {
		delete(o, name)
		if v != nil {
			o[name] = v
		}
	}
	put(a, y)
	put(b, x)
}

func asObject(v any) object {
	o, _ := v.(object)
	return o
}

// eachMean calls f for each number of a mean, with what it is the mean of.
func eachMean(op string, in, answer object, f func(mean, first, second object, name, unit string)) {
	for _, plane := range []string{"horizontal", "vertical"} {
		mean := asObject(result(answer)[plane])
		if op != "merge" || mean == nil {
			continue
		}
		first, second := asObject(asObject(in["first"])[plane]), asObject(asObject(in["second"])[plane])
		f(mean, first, second, "offset", " mm")
		f(mean, first, second, "slope", " mm/m")
	}
}

// uOfTheBetter takes a mean to be as uncertain as the better of two.
func uOfTheBetter(op string, in, answer object) {
	eachMean(op, in, answer, func(mean, first, second object, name, unit string) {
		uOf(mean)[name] = text(min(float(uOf(first)[name]), float(uOf(second)[name])), unit)
	})
}

// plainMean is weights_ignored in a mean of two.
func plainMean(op string, in, answer object) {
	eachMean(op, in, answer, func(mean, first, second object, name, unit string) {
		mean[name] = text((float(first[name])+float(second[name]))/2, unit)
		uOf(mean)[name] = text(math.Hypot(float(uOf(first)[name]), float(uOf(second)[name]))/2, unit)
	})
}

// fromFirstToLast takes an arc to be what lies between the largest and the smallest
// position of a turn that begins at 12.
func fromFirstToLast(op string, in, answer object) {
	list, _ := in["at"].([]any)
	r := result(answer)
	if op != "arc" || r == nil || len(list) == 0 {
		return
	}
	way := 1.0
	if in["view"] == "from_stationary" {
		way = -1
	}
	var at []float64
	for _, t := range list {
		at = append(at, math.Mod(math.Mod(way*float(t), 360)+360, 360))
	}
	first, last := slices.Min(at), slices.Max(at)
	r["covered"], r["hole"] = text(last-first, " deg"), text(360-(last-first), " deg")
	r["middle"] = text(way*(first+last)/2, " deg")
}
