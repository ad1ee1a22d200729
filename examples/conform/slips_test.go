package main

import (
	"math"
	"slices"
	"strings"
)

// slips are the deliberate mistakes of the tests, each known by the flag of the
// vectors that betray it.
var slips = asOnFlanges(asInTrains(slices.Concat(generalSlips, arcSlips, trainSlips, flangeSlips)))

// generalSlips are those that are possible in many places.
var generalSlips = []slip{
	{flag: "view_mirrored", spoil: func(op string, in object) {
		if in["view"] != nil && op != "arc" {
			in["view"] = "from_movable"
		}
	}, twist: func(op string, in, answer object) {
		if r := result(answer); op == "arc" && r != nil && in["view"] == "from_stationary" {
			r["middle"] = text(-float(r["middle"]), " deg")
		}
	}},
	{flag: "carrier_sign", spoil: otherCarrier},
	{flag: "face_sign", spoil: func(_ string, in object) { each("", in, otherSide) }},
	{flag: "bore_as_rim", spoil: func(_ string, in object) {
		each("", in, func(_ string, o object) {
			delete(o, "bore")
			if o["kind"] == "bore" {
				o["kind"] = "rim"
			}
		})
	}},
	{flag: "gap_as_dial", spoil: func(_ string, in object) {
		each("", in, func(name string, o object) {
			if name == "gap" {
				values(o, -1)
			}
			if o["kind"] == "gap" {
				o["kind"], o["carrier"] = "near_face", "stationary"
			}
		})
	}},
	{flag: "gain_ignored", spoil: func(_ string, in object) {
		each("", in, func(_ string, o object) {
			if o["gain"] != nil {
				o["gain"] = 1
			}
		})
	}},
	{flag: "sag_ignored", spoil: func(_ string, in object) { sagTimes(in, 0) }},
	{flag: "sag_once", spoil: func(_ string, in object) { sagTimes(in, 0.5) }},
	{flag: "sag_added", spoil: func(op string, in object) {
		each("", in, sagOtherWay)
		if op == "forecast" { // there is nothing yet to take a droop off
			sagTimes(in, -1)
		}
	}, twist: func(op string, in, answer object) {
		if op == "mandrel_sag" {
			member{"sag"}.times(result(answer), -1)
		}
		if op == "predict" || op == "expect" {
			predictedOtherWay(in, answer)
		}
	}},
	{flag: "tir_not_halved", spoil: func(_ string, in object) {
		for _, name := range []string{"rim", "straightedge", "carried_by_stationary", "carried_by_movable"} {
			if o, there := in[name].(object); there {
				values(o, 2)
			}
		}
	}, twist: wholeDifference},
	{flag: "radius_for_diameter", spoil: func(op string, in object) {
		each("", in, func(name string, o object) {
			if op != "rubbing_limits" && op != "shaft_runout" {
				member{"diameter"}.times(o, 0.5)
			}
			if name == "probe" {
				member{"radius"}.times(o, 0.5)
			}
		})
	}},
	{flag: "half_span", spoil: func(_ string, in object) {
		each("", in, func(_ string, o object) { member{"span"}.times(o, 0.5) })
	}},
	{flag: "joints_exchanged", spoil: otherJoint, twist: func(_ string, _, answer object) {
		if flex, there := result(answer)["flex"].(object); there {
			flex["stationary"], flex["movable"] = flex["movable"], flex["stationary"]
		}
	}},
	{flag: "station_unsigned", spoil: func(op string, in object) {
		each("", in, func(_ string, o object) {
			if s, there := o["station"].(string); there {
				o["station"] = strings.TrimPrefix(s, "-")
			}
			if s, there := o["x"].(string); there && op == "corrections" {
				o["x"] = strings.TrimPrefix(s, "-")
			}
		})
	}},
	{flag: "offset_at_dial_plane", spoil: func(op string, in object) {
		if op == "predict" || op == "maker_target" {
			each("", in, func(_ string, o object) { member{"station"}.times(o, 0) })
		}
	}, twist: offsetAtDial},
	{flag: "correction_for_position", spoil: func(op string, in object) {
		if op == "shims" {
			each("", in["orders"], func(_ string, o object) { member{"correction"}.times(o, -1) })
		}
	}, twist: func(_ string, _, answer object) {
		each("", result(answer)["moves"], func(name string, o object) {
			if name != "u" {
				member{"horizontal", "vertical"}.times(o, -1)
			}
		})
	}},
	{flag: "planes_mixed", spoil: func(op string, in object) {
		if op == "lift_at_shaft" {
			in["up"], in["sideways"] = in["sideways"], in["up"]
		}
	}, twist: func(_ string, _, answer object) {
		each("", result(answer), func(name string, o object) {
			if name == "gap" {
				o["at"] = text(90-float(o["at"]), " deg")
			}
			if h, v := o["horizontal"], o["vertical"]; h != nil && v != nil {
				o["horizontal"], o["vertical"] = v, h
			}
		})
	}},
	{flag: "growth_sign", spoil: func(op string, in object) {
		if op == "cold_target" || op == "running" {
			in["stationary"], in["movable"] = in["movable"], in["stationary"]
		}
	}},
	{flag: "difference_with_32", spoil: func(_ string, in object) {
		eachText(in, func(name, t string) string {
			if name == "rise" || in["quantity"] == "temperature_difference" && name == "text" {
				return less32(t)
			}
			return t
		})
	}, twist: func(_ string, in, answer object) {
		if to, _ := in["to"].(string); in["quantity"] == "temperature_difference" && strings.HasSuffix(to, "F") {
			r := result(answer)
			number, _, _ := strings.Cut(r["value"].(string), " ")
			r["value"] = text(float(number)+32, " "+to)
		}
	}},
	{flag: "hours_as_degrees", spoil: func(_ string, in object) { eachText(in, hoursAsDegrees) }},
	{flag: "mil_as_hundredth", spoil: func(_ string, in object) { eachText(in, milAsHundredth) }, twist: func(op string, in, answer object) {
		if r := result(answer); op == "convert" && in["to"] == "mil" && r != nil {
			r["value"] = text(100*float(r["value"]), " mil")
		}
	}},
	{flag: "fraction_misread", spoil: func(_ string, in object) {
		eachText(in, func(_, t string) string { return blankInFraction.ReplaceAllString(t, "$1$2/") })
	}},
	{flag: "weights_ignored", spoil: sameWeights, twist: plainMean},
	{flag: "shared_ignored", spoil: func(op string, in object) {
		if op == "corrections" { // that of a foot's station
			without("feet", "u")(op, in)
		}
		each("", []any{in["sets"], in["sensors"]}, func(name string, o object) {
			if name == "u" {
				for _, shared := range []string{"station", "radius", "sag", "clock"} {
					delete(o, shared)
				}
			}
		})
	}},
	{flag: "planes_apart", spoil: func(_ string, in object) { perPlane(in, true) }},
	{flag: "planes_together", spoil: func(_ string, in object) { perPlane(in, false) }, twist: strainAsVector},
	{flag: "target_ignored", spoil: func(_ string, in object) { delete(in, "target") }},
	{flag: "target_added", spoil: func(_ string, in object) {
		each("", in["target"], func(name string, o object) {
			if name != "u" {
				member{"offset", "slope"}.times(o, -1)
			}
		})
	}},
	{flag: "diameter_for_radius", spoil: func(op string, in object) {
		if op == "rubbing_limits" {
			each("", in, func(_ string, o object) { member{"diameter"}.times(o, 2) })
		}
	}},
	{flag: "revolutions_for_radians", twist: func(op string, _, answer object) {
		if op == "rubbing_limits" {
			member{"offset", "slope", "flex"}.times(result(answer), 2*math.Pi)
		}
	}},
	{flag: "short_for_spacer", spoil: func(op string, in object) {
		if op == "rubbing_limits" || op == "judge" {
			each("", in["coupling"], func(_ string, o object) { delete(o, "span") })
		}
	}},
	{flag: "median_common", twist: middleAsCommon},
	{flag: "roll_forgotten", spoil: func(_ string, in object) {
		member{"sideways"}.times(in, 0)
		each("", in["supports"], func(_ string, o object) { member{"track"}.times(o, 1e6) })
	}, twist: func(op string, _, answer object) { rolls(op, answer, 0) }},
	{flag: "roll_sign", spoil: func(_ string, in object) {
		member{"sideways"}.times(in, -1)
		each("", in["supports"], func(_ string, o object) {
			if three, nine := o["three"], o["nine"]; three != nil && nine != nil {
				o["three"], o["nine"] = nine, three
			}
		})
	}, twist: func(op string, _, answer object) { rolls(op, answer, -1) }},
	{flag: "pack_forgotten", spoil: without("orders", "now")},
	{flag: "soft_foot_forgotten", spoil: without("orders", "soft_foot")},
	{flag: "keep_ignored", spoil: without("rule", "keep")},
	{flag: "marked_for_measured", spoil: func(op string, in object) {
		each("", in, func(_ string, o object) {
			if op == "shims" && o["marked"] != nil {
				delete(o, "measured")
			}
		})
	}},
	{flag: "pieces_over", spoil: func(op string, in object) {
		if op == "shims" {
			rule, _ := in["rule"].(object)
			if rule == nil {
				rule = object{}
				in["rule"] = rule
			}
			rule["pieces"] = 16
		}
	}},
	{flag: "stock_overdrawn", spoil: overdraw},
	{flag: "sign_lost", spoil: func(op string, in object) {
		if t, isText := in["text"].(string); isText {
			in["text"] = strings.TrimPrefix(t, "-")
		}
	}},
	{flag: "answers_missing", twist: whenAsked("missing")},
	{flag: "answers_out_of_range", twist: whenAsked("out_of_range")},
	{flag: "answers_malformed", twist: whenAsked("malformed")},
	{flag: "answers_unknown", twist: whenAsked("unknown")},
	{flag: "answers_duplicate", twist: whenAsked("duplicate")},
	{flag: "answers_conflict", twist: whenAsked("conflict")},
	{flag: "answers_unseen", twist: whenAsked("unseen")},
	{flag: "answers_not_finite", twist: whenAsked("not_finite")},
}
