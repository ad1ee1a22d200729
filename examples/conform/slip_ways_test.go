package main

import (
	"maps"
	"math"
	"regexp"
	"slices"
	"strings"
)

// The ways in which slips spoil a question or twist an answer.

// without forgets a member wherever it stands below another.
func without(top, name string) func(string, object) {
	return func(_ string, in object) {
		each("", in[top], func(_ string, o object) { delete(o, name) })
	}
}

// overdraw gives the stock, and what lies under the feet, out eight times.
func overdraw(op string, in object) {
	stock, _ := in["stock"].([]any)
	orders, _ := in["orders"].([]any)
	if op != "shims" {
		return
	}
	for _, o := range orders {
		if o, isObject := o.(object); isObject {
			now, _ := o["now"].([]any)
			stock = append(stock, now...)
		}
	}
	var many []any
	for _, row := range stock {
		if row, isObject := row.(object); isObject {
			row = maps.Clone(row)
			if n, isNumber := row["count"].(float64); isNumber {
				row["count"] = n * 8
			}
			many = append(many, row)
		}
	}
	if in["stock"] != nil {
		in["stock"] = many
	}
}

// whenAsked makes an answer out of each refusal of a code.
func whenAsked(code string) func(string, object, object) {
	return func(_ string, _, answer object) {
		if e, refused := answer["error"].(object); refused && e["code"] == code {
			delete(answer, "error")
			answer["result"] = object{}
		}
	}
}

var otherShaft = map[any]any{"stationary": "movable", "movable": "stationary"}

func otherCarrier(op string, in object) {
	if op == "sensor" { // carrier_ignored_in_sensor
		return
	}
	each("", in, func(_ string, o object) {
		switch o["kind"] {
		case "rim", "bore", "straightedge":
			swapCarrier(o)
		case nil:
			swapCarrier(o)
		}
	})
	for _, name := range []string{"carried_by_stationary", "carried_by_movable"} {
		if o, there := in[name].(object); there {
			values(o, -1)
		}
	}
}

func swapCarrier(o object) {
	for _, name := range []string{"carrier", "on"} {
		if other := otherShaft[o[name]]; other != nil {
			o[name] = other
		}
	}
}

// otherSide has every plunger on a face point the other way.
func otherSide(name string, o object) {
	sides := map[any]any{
		"near_face": "far_face", "far_face": "near_face",
		"spacer_face": "spacer_far_face", "spacer_far_face": "spacer_face",
	}
	if other := sides[o["kind"]]; other != nil {
		o["kind"] = other
	}
	switch name {
	case "face", "at_stationary", "at_movable":
		far, _ := o["far"].(bool)
		o["far"] = !far
	}
}

func otherJoint(op string, in object) {
	if coupling, _ := in["coupling"].(object); op == "judge" && coupling["span"] != nil {
		for _, name := range []string{"position", "target"} { // the tilts change places as the offset changes its sign
			each("", in[name], func(name string, o object) {
				if name != "u" {
					member{"offset"}.times(o, -1)
				}
			})
		}
	}
	for _, pair := range [][2]string{{"at_stationary", "at_movable"}, {"stationary", "movable"}} {
		if s, m := in[pair[0]], in[pair[1]]; (op == "face_face" || op == "from_flex") && s != nil && m != nil {
			in[pair[0]], in[pair[1]] = m, s
		}
	}
	each("", in, func(_ string, o object) {
		if kind, _ := o["kind"].(string); strings.HasPrefix(kind, "spacer") {
			swapCarrier(o)
		}
	})
}

func sagTimes(in object, k float64) {
	each("", in, func(name string, o object) {
		if name != "u" {
			member{"sag"}.times(o, k)
		}
	})
}

// sagOtherWay adds to the readings of a sweep twice what the droop shows, so that
// taking it off leaves it added.
func sagOtherWay(_ string, o object) {
	probe, _ := o["probe"].(object)
	share := 2.0
	if bore, _ := o["bore"].(bool); bore || probe["kind"] == "bore" {
		share = -2
	}
	readings, _ := o["readings"].([]any)
	sag := float(o["sag"])
	for _, r := range readings {
		r, isObject := r.(object)
		if at := float(r["at"]); isObject && !math.IsNaN(at+sag) {
			r["value"] = text(float(r["value"])+share*sag*math.Cos(at*math.Pi/180), " mm")
		}
	}
}

// predictedOtherWay takes off the droop where it belongs on top.
func predictedOtherWay(in, answer object) {
	asked, _ := in["sets"].([]any)
	told, _ := result(answer)["sets"].([]any)
	for i := range told {
		set := asked[i].(object)
		sag := float(set["sag"])
		if math.IsNaN(sag) {
			continue
		}
		if set["probe"].(object)["kind"] == "bore" {
			sag = -sag
		}
		readings := told[i].(object)["readings"].([]any)
		first := math.Cos(float(readings[0].(object)["at"]) * math.Pi / 180)
		for _, r := range readings {
			r := r.(object)
			cos := math.Cos(float(r["at"]) * math.Pi / 180)
			r["value"] = text(float(r["value"])-2*sag*(cos-first), " mm")
		}
	}
}

// wholeDifference is tir_not_halved in single steps.
func wholeDifference(op string, _, answer object) {
	switch op {
	case "quarters":
		if half, there := result(answer)["half"].(object); there {
			member{"horizontal", "vertical"}.times(half, 2)
		}
	case "mandrel_sag":
		member{"sag"}.times(result(answer), 2)
	case "separate_runout":
		each("", result(answer), func(_ string, o object) { member{"offset", "slope"}.times(o, 2) })
	}
}

// offsetAtDial leaves the offset at the first station that is given.
func offsetAtDial(op string, in, answer object) {
	if op == "maker_target" {
		return
	}
	station := math.NaN()
	sets, _ := in["sets"].([]any)
	if sensors, _ := in["sensors"].([]any); sensors != nil {
		sets = sensors[:1]
	}
	for i := len(sets) - 1; i >= 0; i-- {
		each("", sets[i], func(name string, o object) {
			if x := float(o["station"]); !math.IsNaN(x) && name != "u" {
				station = x
			}
		})
	}
	for _, name := range []string{"rim", "straightedge", "carried_by_stationary"} {
		if o, there := in[name].(object); there {
			station = float(o["station"])
		}
	}
	for _, plane := range []string{"horizontal", "vertical"} {
		if o, there := result(answer)[plane].(object); there && !math.IsNaN(station) {
			o["offset"] = text(float(o["offset"])+float(o["slope"])*station/1000, " mm")
		}
	}
}

// eachText changes every text in a document, by the name under which it stands.
func eachText(v any, change func(name, text string) string) {
	changed := func(name string, v any) any {
		if t, isText := v.(string); isText {
			return change(name, t)
		}
		eachText(v, change)
		return v
	}
	switch v := v.(type) {
	case object:
		for name, member := range v {
			if list, isList := member.([]any); isList {
				for i := range list {
					list[i] = changed(name, list[i])
				}
				continue
			}
			v[name] = changed(name, member)
		}
	case []any:
		for i := range v {
			v[i] = changed("", v[i])
		}
	}
}

func hoursAsDegrees(name, t string) string {
	if !strings.Contains(t, ":") || math.IsNaN(float(t)) {
		return t
	}
	return text(float(t)/30, " deg")
}

// less32 takes the 32 off a difference in degrees F.
func less32(t string) string {
	number, unit, _ := strings.Cut(t, " ")
	if !strings.HasSuffix(unit, "F") {
		return t
	}
	return text(float(number)-32, " "+unit)
}

func milAsHundredth(_, t string) string {
	number, isMil := strings.CutSuffix(t, " mil")
	if !isMil {
		return t
	}
	return text(float(number)/100, " mm")
}

// blankInFraction is the place at which a whole number and a fraction are taken
// for one number.
var blankInFraction = regexp.MustCompile(`^([+-]?\d+)[ -](\d+)/`)

// sameWeights gives every reading the same uncertainty.
func sameWeights(op string, in object) {
	if op == "expect" { // nothing is weighed there
		return
	}
	sum, n := 0.0, 0
	add := func(v any, _ string) any {
		if u := float(v); !math.IsNaN(u) {
			sum, n = sum+u*u, n+1
		}
		return v
	}
	level := func(v any, unit string) any {
		if math.IsNaN(float(v)) {
			return v
		}
		return text(math.Sqrt(sum/float64(n)), unit)
	}
	for _, change := range []func(v any, unit string) any{add, level} {
		each("", []any{in["sets"], in["sensors"], in["probes"]}, func(name string, o object) { eachU(name, o, change) })
	}
}

// eachU changes the uncertainty of each reading of a set, a sensor's channel or a
// probe that stands still. Slopes count as what they make on a metre.
func eachU(name string, o object, change func(v any, unit string) any) {
	put := func(o object, v any, unit string) {
		if v = change(v, unit); v != nil {
			o["u"] = v
		}
	}
	shared, isObject := o["u"].(object)
	at, _ := o["at"].([]any)
	readings, _ := o["readings"].([]any)
	for _, r := range readings {
		r := asObject(r)
		switch {
		case name == "angle":
			put(r, o["u"], " mm/m")
		case r["u"] != nil:
			put(r, r["u"], " mm")
		default:
			put(r, shared["reading"], " mm")
		}
	}
	for range at { // a forecast
		if u := shared["reading"]; u != nil {
			shared["reading"] = change(u, " mm")
		}
	}
	if o["now"] != nil && !isObject {
		put(o, o["u"], " mm")
	}
}

func perPlane(in object, is bool) {
	if limits, there := in["limits"].(object); there && in["position"] != nil {
		limits["per_plane"] = is
	}
}

// strainAsVector holds the length of a movement against a limit that is meant in
// each plane.
func strainAsVector(op string, in, answer object) {
	strains, _ := result(answer)["strains"].([]any)
	releases, _ := in["releases"].([]any)
	for i := range strains {
		strain, moved := strains[i].(object), releases[i].(object)
		size := math.Hypot(float(moved["horizontal"]), float(moved["vertical"]))
		strain["largest"], strain["over"] = text(size, " mm"), size > float(in["limit"])
	}
}

// middleAsCommon takes the middle of the lifts for what all feet lift.
func middleAsCommon(op string, _, answer object) {
	r := result(answer)
	feet, _ := r["feet"].([]any)
	if op != "soft_foot" || len(feet) == 0 {
		return
	}
	var lifts []float64
	for _, f := range feet {
		lifts = append(lifts, float(r["common"])+float(f.(object)["excess"]))
	}
	sorted := slices.Sorted(slices.Values(lifts))
	middle := (sorted[len(sorted)/2] + sorted[(len(sorted)-1)/2]) / 2
	r["common"] = text(middle, " mm")
	r["worst"] = text(sorted[len(sorted)-1]-middle, " mm")
	for i, f := range feet {
		f.(object)["excess"] = text(lifts[i]-middle, " mm")
	}
}

// rolls multiplies what an answer says of a machine that rolls.
func rolls(op string, answer object, k float64) {
	if op == "shim_shift" {
		member{"sideways"}.times(result(answer), k)
	}
}
