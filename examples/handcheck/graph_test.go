package main

import (
	"os"
	"strings"
	"testing"
)

// The published example on squared paper: the adjusted centreline 12 mils high at S
// and 7 mils at A, 14 in on, the feet 12 and 38 in beyond A. The coordinates were
// worked by hand at the scales that the print states.
func TestGraphOfThePublishedExample(t *testing.T) {
	data, err := os.ReadFile("testdata/published/bloch-geitner-p203.json")
	if err != nil {
		t.Fatal(err)
	}
	got := play(string(data), "-job", "-", "-graph")
	if got.code != right {
		t.Fatal(got.stderr)
	}
	inOrder(t, got.stdout, []string{
		"Side view, up is up", "Along the shaft 10 times shorter than the machine, across it 200 times larger.",
		"stationary centreline from x -0.70 in, y 0.00 in to x 4.50 in, y 0.00 in",
		"point 1 dial on the stationary rim: x -0.70 in, y 2.40 in",
		"point 2 dial on the movable rim: x 0.70 in, y 1.40 in",
		"movable centreline from x -0.70 in, y 2.40 in to x 4.50 in, y -1.31 in",
		"feet inboard: x 1.90 in, y 0.54 in; lies 2.7 mil high, may be read off wrong by", "[vertical.foot.inboard.correction]",
		"feet outboard: x 4.50 in, y -1.31 in; lies 6.6 mil low", "[vertical.foot.outboard.correction]",
		"Plan, 3 o'clock is up", "lies on the stationary centreline",
	})
}

// Where the graph says that a centreline lies, a value read off is right with the
// tolerance that it states, and needs it.
func TestGraphAndSheetAgree(t *testing.T) {
	doc := all(with("/drawn", `{"vertical.foot.inboard.correction": "0.024 mm"}`), answered("vertical.foot.inboard.correction", "raise 0.187 mm"))(t, builtIn)
	if got := check(doc); got.code != right { // 0.1646 + 0.024
		t.Errorf("ends with %d\n%s", got.code, got.stdout)
	}
	inOrder(t, play("", "-graph").stdout, []string{"The target is taken off already", "inboard: x 52.0 mm", "lies 0.16 mm low, may be read off wrong by 0.024 mm either way [vertical.foot.inboard.correction]"})
	if got := check(without("/drawn")(t, doc)); got.code != wrong {
		t.Errorf("without the tolerance: ends with %d", got.code)
	}
}

// A crew at the other end calls the upper edge 9 o'clock; the drawing stays as it is
// if its readings say the same.
func TestGraphFromTheOtherEnd(t *testing.T) {
	text := play("", "-graph").stdout
	doc := string(with(reverse+"/view", `"from_stationary"`)(t, builtIn))
	swap := strings.NewReplacer(`"3:00"`, `"9:00"`, `"9:00"`, `"3:00"`)
	got := play(swap.Replace(doc), "-job", "-", "-graph").stdout
	if want := strings.NewReplacer("3 o'clock", "9 o'clock", "9 o'clock", "3 o'clock").Replace(text[strings.Index(text, "Plan"):]); got[strings.Index(got, "Plan"):] != want {
		t.Errorf("got\n%swant\n%s", got, want)
	}
}

// Each method plots its own points.
func TestGraphOfEachMethod(t *testing.T) {
	quarters := func(a, b, c, d string) string {
		return `[{"at": "12:00", "value": "` + a + ` mm"}, {"at": "3:00", "value": "` + b + ` mm"}, {"at": "6:00", "value": "` + c + ` mm"}, {"at": "9:00", "value": "` + d + ` mm"}]`
	}
	rim := `{"station": "50 mm", "readings": ` + quarters("0", "-0.1", "-0.2", "-0.1") + `}` // 0.1 mm high there
	face := `{"diameter": "100 mm", "readings": ` + quarters("0", "-0.05", "-0.1", "-0.05") + `}`
	gap := `{"diameter": "100 mm", "readings": ` + quarters("5", "5.05", "5.1", "5.05") + `}` // both 1 mm/m up
	feet := `, "feet": [{"name": "near", "x": "250 mm"}, {"name": "far", "x": "650 mm"}]`
	for _, row := range []struct {
		name, job string
		want      []string
	}{
		{"rim and face", `{"rim_face": {"carrier": "stationary", "rim": ` + rim + `, "face": ` + face + `, "view": "from_movable"}` + feet + `}`,
			[]string{"point 1 rim dial: x 10.0 mm, y 20.0 mm", "point 2 far feet: x 130.0 mm, y 140.0 mm", "near: x 50.0 mm, y 60.0 mm; lies 0.30 mm high", "far: x 130.0 mm, y 140.0 mm; lies 0.70 mm high"}},
		{"rim and gap", `{"rim_gap": {"carrier": "stationary", "rim": ` + rim + `, "gap": ` + gap + `, "view": "from_movable"}` + feet + `}`,
			[]string{"point 1 rim dial: x 10.0 mm, y 20.0 mm", "far feet", "lies 0.30 mm high", "lies 0.70 mm high"}},
		{"straightedge and gap", `{"straightedge_gap": {"straightedge": {"on": "stationary", "station": "50 mm", "readings": ` + quarters("1", "1.1", "1.2", "1.1") + `}, "gap": ` + gap + `, "view": "from_movable"}}`,
			[]string{"point 1 straightedge: x", "point 2 a metre further on: x"}},
		{"face and face", `{"face_face": {"span": "500 mm", "at_stationary": ` + face + `, "at_movable": ` + face + `, "view": "from_movable"}` + feet + `}`,
			[]string{"point 1 stationary flex plane: x -50.0 mm", "point 2 movable flex plane: x 50.0 mm", "near: x 50.0 mm", "lies 0.50 mm high", "lies 1.30 mm high"}},
	} {
		got := play(`{"problem": {"job": `+row.job+`}}`, "-job", "-", "-graph")
		if got.code != right {
			t.Errorf("%s: ends with %d: %s", row.name, got.code, got.stderr)
		}
		inOrder(t, got.stdout, row.want)
	}
}
