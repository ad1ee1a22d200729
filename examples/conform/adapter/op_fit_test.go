package adapter

import "testing"

// A line and its answer to the last digit, which are the same on every machine:
// case A (derived here from geometry alone, on a rim of 75 mm) seen by a rim and a
// face dial.
func TestSample(t *testing.T) {
	const request = `{"seq":1,"op":"fit","input":{"view":"from_movable",` +
		`"sets":[{"probe":{"kind":"rim","carrier":"stationary","station":"40 mm"},"sag":"0 mm",` +
		`"readings":[{"at":"12:00","value":"0 mm"},{"at":"3:00","value":"0.363764 mm"},{"at":"6:00","value":"0.456 mm"},{"at":"9:00","value":"0.091764 mm"}]},` +
		`{"probe":{"kind":"near_face","carrier":"stationary","radius":"75 mm"},` +
		`"readings":[{"at":"12:00","value":"0 mm"},{"at":"3:00","value":"0.0825 mm"},{"at":"6:00","value":"0.105 mm"},{"at":"9:00","value":"0.0225 mm"}]}],` +
		`"feet":[{"name":"inboard","x":"300 mm"},{"name":"outboard","x":"900 mm"}]}}`
	const want = `{"seq":1,"result":{"horizontal":{"offset":"0.11999999999999999 mm","slope":"0.4000000000000001 mm/m"},"vertical":{"offset":"-0.2 mm","slope":"-0.7 mm/m"},` +
		`"moves":[{"foot":"inboard","horizontal":"-0.24 mm","vertical":"0.41 mm"},` +
		`{"foot":"outboard","horizontal":"-0.48000000000000006 mm","vertical":"0.83 mm"}],"warnings":[]}}`
	if got := served(t, request+"\n"); len(got) != 1 || got[0] != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// A probe of each kind sees case A as the law of the protocol says.
func TestFitKinds(t *testing.T) {
	const face = `{"probe":{"kind":"near_face","carrier":"stationary","radius":"75 mm"},"readings":` + faceA + `}`
	const rimSet = `{"probe":{"kind":"rim","carrier":"stationary","station":"40 mm"},"readings":` + rimA + `}`
	round := func(at12, at3, at6, at9 string) string {
		return `[{"at":"12:00","value":"` + at12 + `"},{"at":"3:00","value":"` + at3 + `"},{"at":"6:00","value":"` + at6 + `"},{"at":"9:00","value":"` + at9 + `"}]`
	}
	for _, row := range []struct{ name, view, sets string }{
		{"bore, movable carrier", "from_movable", `{"probe":{"kind":"bore","carrier":"movable","station":"40 mm"},"sag":"0.01 mm","readings":` + round("-0.238 mm", "0.136 mm", "0.238 mm", "-0.136 mm") + `},` + face},
		{"far face, either carrier", "from_movable", rimSet + `,{"probe":{"kind":"far_face","carrier":"movable","radius":"75 mm"},"sag":"-0.01 mm","readings":` + round("0.0425 mm", "-0.03 mm", "-0.0425 mm", "0.03 mm") + `}`},
		{"gap, from the other end", "from_stationary", `{"probe":{"kind":"rim","carrier":"stationary","station":"40 mm"},"readings":` + round("-0.228 mm", "-0.136 mm", "0.228 mm", "0.136 mm") +
			`},{"probe":{"kind":"gap","radius":"75 mm"},"readings":` + round("3.0525 mm", "3.03 mm", "2.9475 mm", "2.97 mm") + `}`},
		{"straightedge", "from_movable", `{"probe":{"kind":"straightedge","carrier":"movable","station":"40 mm"},"readings":` + round("-0.228 mm", "0.136 mm", "0.228 mm", "-0.136 mm") + `},` + face},
		{"both joints of a spacer", "from_movable", `{"probe":{"kind":"spacer_face","carrier":"stationary","radius":"50 mm","span":"800 mm"},"readings":` + round("-0.03 mm", "0.0175 mm", "0.03 mm", "-0.0175 mm") +
			`},{"probe":{"kind":"spacer_far_face","carrier":"movable","radius":"50 mm","span":"800 mm"},"readings":` + round("0.005 mm", "-0.0025 mm", "-0.005 mm", "0.0025 mm") + `}`},
		{"sensors", "from_movable", `{"probe":{"kind":"displacement","station":"40 mm","gain":2},"readings":` + round("-0.456 mm", "0.272 mm", "0.456 mm", "-0.272 mm") +
			`},{"probe":{"kind":"displacement","station":"-60 mm","gain":-1},"readings":` + round("0.158 mm", "-0.096 mm", "-0.158 mm", "0.096 mm") + `}`},
	} {
		t.Run(row.name, func(t *testing.T) {
			a := ask(t, "fit", `{"view":"`+row.view+`","sets":[`+row.sets+`]}`)
			if want := `{` + caseA + `,"moves":[],"warnings":[]}`; a.Error != nil || !alike(decoded(t, string(a.Result)), decoded(t, want)) {
				t.Errorf("got %s %+v", a.Result, a.Faults)
			}
		})
	}
}

// Four quarters with an uncertainty s tell the amplitude to s/sqrt 2 (derived
// here): 0.01 mm for 0.0141421 mm. The slope over 150 mm is known twice as well
// as over its radius, and the offset at the rim's own station.
func TestFitUncertainty(t *testing.T) {
	set := func(probe, more, u string) string {
		reading := func(at, value string) string { return `{"at":"` + at + `","value":"` + value + `"` + u + `}` }
		return `{"probe":` + probe + `,"readings":[` + reading("12:00", "0.1 mm") + `,` + reading("3:00", "0 mm") + `,` +
			reading("6:00", "-0.1 mm") + `,` + reading("9:00", "0 mm") + `]` + more + `}`
	}
	const rimProbe, faceProbe = `{"kind":"rim","carrier":"stationary","station":"0 mm"}`, `{"kind":"near_face","carrier":"stationary","radius":"100 mm"}`
	const value = `{"offset":"0.1 mm","slope":"1 mm/m"`
	for _, row := range []struct{ name, sets, horizontal, vertical string }{
		{"of each reading", set(rimProbe, "", `,"u":"0.01 mm"`) + "," + set(faceProbe, "", `,"u":"0.02 mm"`),
			`,"u":{"offset":"0.0070710678118654752 mm","slope":"0.14142135623730951 mm/m"}}`, `,"u":{"offset":"0.0070710678118654752 mm","slope":"0.14142135623730951 mm/m"}}`},
		{"of the set, and what it shares", set(rimProbe, `,"u":{"reading":"0.01 mm","sag":"0.1 mm"}`, "") + "," + set(faceProbe, `,"u":{"reading":"0.02 mm"}`, ""),
			`,"u":{"offset":"0.0070710678118654752 mm","slope":"0.14142135623730951 mm/m"}}`, `,"u":{"offset":"0.10024968827881711 mm","slope":"0.14142135623730951 mm/m"}}`},
		{"none stated", set(rimProbe, "", "") + "," + set(faceProbe, "", ""), "}", "}"},
	} {
		t.Run(row.name, func(t *testing.T) {
			a := ask(t, "fit", `{"view":"from_movable","sets":[`+row.sets+`]}`)
			want := `{"horizontal":{"offset":"0 mm","slope":"0 mm/m"` + row.horizontal + `,"vertical":` + value + row.vertical + `,"moves":[],"warnings":[]}`
			if a.Error != nil || !alike(decoded(t, string(a.Result)), decoded(t, want)) {
				t.Errorf("got  %s %+v\nwant %s", a.Result, a.Faults, want)
			}
		})
	}
}

func TestFitWarns(t *testing.T) {
	a := ask(t, "fit", `{"view":"from_movable","sets":[{"probe":{"kind":"rim","carrier":"stationary","station":"40 mm"},"readings":`+rimA+`},
		{"probe":{"kind":"near_face","carrier":"stationary","radius":"75 mm"},"readings":[{"at":"12:00","value":"0 mm"},{"at":"3:00","value":"30 mm"},{"at":"6:00","value":"0 mm"}]}]}`)
	warned := decoded(t, string(a.Result)).(map[string]any)["warnings"].([]any)
	if len(warned) != 1 || warned[0].(map[string]any)["code"] != "suspect" || warned[0].(map[string]any)["path"] != "/sets/1/readings" {
		t.Errorf("got %s", a.Result)
	}
}
