package main

import (
	"strings"
	"testing"
	"unicode"
)

// FuzzFile: whatever the bytes are, they are worked and marked, or refused with a
// reason; nothing panics, and nothing that is printed steers the terminal.
func FuzzFile(f *testing.F) {
	f.Add(builtIn)
	for _, doc := range others {
		f.Add([]byte(doc))
	}
	f.Add([]byte(`{"problem": {"job": {"feet": [{}]}}, "answers": {"": "1/0 in", "a/b": "1e400 mm"}, "drawn": {"x": "1 mm"}}`))
	f.Add([]byte(`{"answers": {"sag": "9 mm low"}, "problem": {"sag": {"at12": "1e300 m", "at6": "-1e300 m"}}}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		for _, args := range [][]string{{"-check", "-"}, {"-job", "-"}, {"-job", "-", "-markdown", "-units", "inch"}, {"-job", "-", "-graph"}} {
			got := play(string(data), args...)
			switch got.code {
			case right, wrong:
				if got.stdout == "" || got.stderr != "" {
					t.Fatalf("%q: ends with %d, prints %q and says %q", args, got.code, got.stdout, got.stderr)
				}
			case refused:
				if got.stdout != "" || !strings.HasPrefix(got.stderr, "standard input: ") {
					t.Fatalf("%q: refused, prints %q and says %q", args, got.stdout, got.stderr)
				}
			default:
				t.Fatalf("%q: ends with %d", args, got.code)
			}
			odd := func(r rune) bool { return r != '\n' && !unicode.IsGraphic(r) }
			if strings.ContainsFunc(got.stdout+got.stderr, odd) {
				t.Fatalf("%q: prints %q and says %q", args, got.stdout, got.stderr)
			}
			if args[0] == "-job" && got.code == wrong {
				t.Fatalf("%q: a working is not wrong", args)
			}
		}
	})
}
