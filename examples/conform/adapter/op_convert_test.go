package adapter

import "testing"

var convertAnswers = []example{
	{"tape", "convert", `{"quantity":"length","text":"5 7/16 in","to":"mm"}`, `{"value":"138.1125 mm"}`}, // (5 + 7/16) * 25.4
	{"to inches", "convert", `{"quantity":"length","text":"-6.35 mm","to":"in"}`, `{"value":"-0.25 in"}`},
	{"zero", "convert", `{"quantity":"length","text":"0 mil","to":"um"}`, `{"value":"0 um"}`},
	{"slope", "convert", `{"quantity":"slope","text":"0.05 mm/100mm","to":"mil/in"}`, `{"value":"0.5 mil/in"}`},
	{"angle", "convert", `{"quantity":"angle","text":"2 mrad","to":"urad"}`, `{"value":"2000 urad"}`},
	{"hours", "convert", `{"quantity":"clock","text":"10:30","to":"deg"}`, `{"value":"315 deg"}`},
	{"back past 12", "convert", `{"quantity":"clock","text":"-37.5 deg","to":"deg"}`, `{"value":"322.5 deg"}`},
	{"point on the scale", "convert", `{"quantity":"temperature","text":"212 °F","to":"degC"}`, `{"value":"100 °C"}`},
	{"difference", "convert", `{"quantity":"temperature_difference","text":"36 degF","to":"K"}`, `{"value":"20 K"}`},
	{"rotation", "convert", `{"quantity":"rotational_speed","text":"25 Hz","to":"rpm"}`, `{"value":"1500 rpm"}`},
	{"sliding", "convert", `{"quantity":"linear_speed","text":"0.5 in/s","to":"mm/s"}`, `{"value":"12.7 mm/s"}`},
	{"expansion", "convert", `{"quantity":"expansion","text":"10 um/m/°F","to":"um/m/K"}`, `{"value":"18 um/m/K"}`},
}

var convertRefused = []sound{
	{"convert", `{"quantity":"slope","text":"1 mm/m","to":"mil/in"}`, []change{
		{"nothing there", `1 mm/m`, ``, "missing /text"},
		{"no unit", `1 mm/m`, `1`, "malformed /text"},
		{"no number", `1 mm/m`, `mm/m`, "malformed /text"},
		{"an angle is no slope", `1 mm/m`, `1 mrad`, "unknown /text"},
		{"no such quantity", `"slope"`, `"weight"`, "unknown /quantity"},
		{"a unit of something else", `mil/in`, `mil`, "unknown /to"},
	}},
	{"convert", `{"quantity":"clock","text":"10:30","to":"deg"}`, []change{
		{"no unit for a position", `"deg"`, `"rad"`, "unknown /to"},
	}},
}

// All digits are there, and none that say nothing.
func TestConvertIsShort(t *testing.T) {
	for _, row := range []struct{ input, want string }{
		{`{"quantity":"length","text":"5 7/16 in","to":"mm"}`, `{"value":"138.1125 mm"}`},
		{`{"quantity":"length","text":"100 mm","to":"mm"}`, `{"value":"100 mm"}`},
		{`{"quantity":"length","text":"-0 mm","to":"mil"}`, `{"value":"0 mil"}`},
		{`{"quantity":"length","text":"1 mm","to":"in"}`, `{"value":"0.039370078740157480314960629921 in"}`},
	} {
		if a := ask(t, "convert", row.input); string(a.Result) != row.want {
			t.Errorf("%s: got %s, want %s", row.input, a.Result, row.want)
		}
	}
}
