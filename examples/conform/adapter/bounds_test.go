package adapter

import (
	"strings"
	"testing"
)

// An input of nothing but faults is answered with a line that fits into what the
// runner reads of one, 64 KiB.
func TestManyFaultsFitOnALine(t *testing.T) {
	const longestAnswer = 1 << 16
	for _, row := range []struct{ name, op, input string }{
		{"empty sets", "fit", `{"view":"from_movable","sets":[{}` + strings.Repeat(",{}", 100_000) + `]}`},
		{"no sets", "fit", `{"view":"from_movable","sets":[1` + strings.Repeat(",1", 100_000) + `]}`},
		{"unknown members", "fit", `{"a":1` + strings.Repeat(`,"a":1`, 100_000) + `}`},
		{"doubled members", "fit", `{"view":"from_movable"` + strings.Repeat(`,"view":1`, 100_000) + `,"sets":[]}`},
	} {
		lines := served(t, `{"seq":1,"op":"`+row.op+`","input":`+row.input+"}\n"+`{"seq":9,"op":"stop"}`+"\n")
		if len(lines) != 2 || lines[1] != `{"seq":9,"result":{}}` {
			t.Fatalf("%s: %d answers", row.name, len(lines))
		}
		if a := readReply(t, lines[0]); a.Error == nil || len(lines[0]) >= longestAnswer {
			t.Errorf("%s: %d bytes, %.200s", row.name, len(lines[0]), lines[0])
		}
	}
}

// Of several members that nobody knows the same one is named each time.
func TestSameMemberIsNamed(t *testing.T) {
	for range 20 {
		line := served(t, `{"seq":4,"z":1,"op":"stop","b":1,"y":1,"a":1,"x":1}`+"\n")[0]
		if !strings.Contains(line, `"value":"a member a"`) {
			t.Fatalf("got %s", line)
		}
	}
}
