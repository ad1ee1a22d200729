package main

import "math"

// flangeSlips are those that are only possible on a flange.
var flangeSlips = []slip{
	{flag: "push_reversed", twist: onFlange(func(in object) {
		other := map[any]any{"away_from_stationary": "towards_stationary", "towards_stationary": "away_from_stationary"}
		in["push"] = other[in["push"]]
	})},
	{flag: "push_ignored", twist: onFlange(func(in object) { in["push"] = "away_from_stationary" })},
	{flag: "one_radius", twist: onFlange(func(in object) {
		first := asObject(in["bolts"].([]any)[0])["radius"]
		eachOf("bolts", func(o object) { o["radius"] = first })("", in)
	})},
	{flag: "bolts_assumed_even", twist: onFlange(func(in object) {
		bolts := in["bolts"].([]any)
		first := float(asObject(bolts[0])["at"])
		for i := range bolts {
			asObject(bolts[i])["at"] = text(first+360*float64(i)/float64(len(bolts)), " deg")
		}
	})},
	{flag: "target_exact", twist: onFlange(func(in object) {
		each("", in["target"], func(_ string, o object) { delete(o, "u"); delete(o, "correlation") })
	})},

	{flag: "shims_below_zero", twist: ofFlange(func(in, r object) {
		c := math.Abs(float(r["axial"]))
		if towards := in["push"] == "towards_stationary"; towards != (float(r["axial"]) < 0) {
			c = -c // all bolts on one side
		}
		eachOf("shims", func(o object) { o["thickness"] = text(float(o["thickness"])-c, " mm") })("", r)
		r["axial"] = "0 mm"
	})},
	{flag: "axial_reversed", twist: ofFlange(func(_, r object) { member{"axial"}.times(r, -1) })},
	{flag: "axial_unsigned", twist: ofFlange(func(_, r object) { r["axial"] = text(math.Abs(float(r["axial"])), " mm") })},
	{flag: "slide_at_coupling", twist: slidFarther(1)},
	{flag: "tilt_twice", twist: slidFarther(-1)},
	{flag: "tilt_reversed", twist: func(op string, in, answer object) {
		slidFarther(2)(op, in, answer)
		member{"horizontal", "vertical"}.times(asObject(result(answer)["tilt_shift"]), -1)
	}},

	{flag: "clearance_as_radial", twist: ofFlange(func(in, r object) { refit(in, r, 1, 1, math.Hypot) })},
	{flag: "spigot_ignored", twist: ofFlange(func(in, r object) { refit(in, r, 0.5, 0, math.Hypot) })},
	{flag: "spigot_reversed", twist: ofFlange(func(in, r object) { refit(in, r, 0.5, -1, math.Hypot) })},
	{flag: "shim_u_alone", twist: ofFlange(uOfBolts)},
	{flag: "shaft_table_for_flange", twist: func(op string, in, answer object) {
		if r := result(answer); op == "flange_runout" && r != nil {
			shaft := honest(object{"seq": 1, "op": "shaft_runout", "input": object{"diameter": in["spigot"]}})
			r["limit"] = result(shaft)["limit"]
		}
	}},
}

// onFlanges is what a mistake that is made elsewhere as well is on a flange.
var onFlanges = map[string]func(op string, in, answer object){
	"station_unsigned": onFlange(func(in object) { in["face"] = text(math.Abs(float(in["face"])), " mm") }),
	"diameter_for_radius": onFlange(func(in object) {
		eachOf("bolts", func(o object) { member{"radius"}.times(o, 0.5) })("", in)
	}),
	"shared_ignored": onFlange(func(in object) { delete(in, "u_face") }),
	"correction_for_position": ofFlange(func(in, r object) {
		member{"horizontal", "vertical"}.times(asObject(r["slide"]), -1)
		refit(in, r, 0.5, 1, math.Hypot)
	}),
	"planes_apart": ofFlange(func(in, r object) {
		refit(in, r, 0.5, 1, func(y, z float64) float64 { return max(math.Abs(y), math.Abs(z)) })
	}),
}

// asOnFlanges puts what a mistake is on a flange beside what it is elsewhere.
func asOnFlanges(all []slip) []slip {
	for i := range all {
		here, there := onFlanges[all[i].flag]
		elsewhere := all[i].twist
		if !there {
			continue
		}
		all[i].twist = func(op string, in, answer object) {
			if elsewhere != nil {
				elsewhere(op, in, answer)
			}
			here(op, in, answer)
		}
	}
	return all
}

// ofFlange twists what is told of a flange; refusals stand.
func ofFlange(twist func(in, r object)) func(string, object, object) {
	return func(op string, in, answer object) {
		if r := result(answer); op == "flange" && r != nil {
			twist(in, r)
		}
	}
}

// onFlange has a flange taken for another: one that would be refused still is.
func onFlange(change func(in object)) func(string, object, object) {
	return func(op string, in, answer object) {
		if op == "flange" && result(answer) != nil {
			change(in)
			answer["result"] = honest(object{"seq": 1, "op": op, "input": in})["result"]
		}
	}
}

// slidFarther adds to the slide what the tilt does to the offset, so many times.
func slidFarther(times float64) func(string, object, object) {
	return ofFlange(func(in, r object) {
		slide, tilt := asObject(r["slide"]), asObject(r["tilt_shift"])
		for _, plane := range []string{"horizontal", "vertical"} {
			slide[plane] = text(float(slide[plane])+times*float(tilt[plane]), " mm")
		}
		refit(in, r, 0.5, 1, math.Hypot)
	})
}

// refit judges the rabbet of the slide in an answer again: by a share of the
// clearance, the spigot's place so many times, and a size of the two planes.
func refit(in, r object, share, times float64, size func(y, z float64) float64) {
	if r["rabbet"] == nil {
		return
	}
	slide, now := asObject(r["slide"]), asObject(in["spigot"])
	to := func(plane string) float64 {
		if now == nil {
			return float(slide[plane])
		}
		return float(slide[plane]) + times*float(now[plane])
	}
	found, most := size(to("horizontal"), to("vertical")), share*float(in["clearance"])
	delete(r, "over")
	r["rabbet"] = "fits"
	if math.Round(found*1e6) > math.Round(most*1e6) { // to a nanometre
		r["rabbet"], r["over"] = "does_not_fit", text(found-most, " mm")
	}
}

// uOfBolts has each shim as uncertain as the slopes are at its bolt.
func uOfBolts(in, r object) {
	shims, bolts := r["shims"].([]any), in["bolts"].([]any)
	for i := range shims {
		shim, bolt := asObject(shims[i]), asObject(bolts[i])
		if shim["u"] == nil {
			continue
		}
		t := float(bolt["at"]) * math.Pi / 180
		if in["view"] == "from_stationary" {
			t = -t
		}
		y, z := float(bolt["radius"])*math.Sin(t), float(bolt["radius"])*math.Cos(t)
		square := 0.0
		for _, p := range []object{asObject(in["position"]), asObject(in["target"])} {
			h, v, rho := uOfSlopes(p)
			square += y*h*y*h + 2*y*h*rho*z*v + z*v*z*v
		}
		shim["u"] = text(math.Sqrt(square), " mm")
	}
}

// uOfSlopes returns the uncertainties of both slopes of a position and their
// correlation, zero where none are stated.
func uOfSlopes(p object) (horizontal, vertical, correlation float64) {
	h, v := uOf(p["horizontal"]), uOf(p["vertical"])
	if h == nil || v == nil {
		return 0, 0, 0
	}
	if rows, given := p["correlation"].([]any); given {
		correlation = rows[1].([]any)[3].(float64)
	}
	return float(h["slope"]) / 1000, float(v["slope"]) / 1000, correlation
}
