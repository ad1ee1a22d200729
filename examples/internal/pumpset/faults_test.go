package pumpset

import (
	"strings"
	"testing"

	"example.org/collinear/examples/internal/strict"
)

func TestOneLineForEachFault(t *testing.T) {
	bad := both(
		with("/tape/centre", `"190"`), with("/view", `"from_above"`), with("/title", `"a\nb"`),
		with("/found/reverse/carried_by_movable/readings/2/value", `"a\nlong\nway"`),
	)(t, sample)
	_, err := outcome(bad)
	var stderr strings.Builder
	strict.Complain(&stderr, "FILE", err)
	lines := strings.Split(strings.TrimSuffix(stderr.String(), "\n"), "\n")
	if len(lines) != 4 {
		t.Errorf("%d lines for four faults:\n%s", len(lines), stderr.String())
	}
	for _, line := range lines {
		if !strings.HasPrefix(line, "FILE: /") || !strings.Contains(line, ": want ") || !strings.HasSuffix(line, ")") {
			t.Errorf("not as FILE: /path: want ..., got ... (code): %q", line)
		}
	}
}
