package house

import (
	"fmt"
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// topLevel lists what may stand at the top: the house, and what Git, Go and the
// automatic checks need.
var topLevel = strings.Fields(`
	units align softfoot tolerance thermal shims internal testdata examples
	go.mod go.sum README.md DEVELOPERS.md LICENSE CHANGELOG.md
	.git .gitignore .ci`)

func TestTopLevelHoldsNothingElse(t *testing.T) { report(t, layoutFaults(t, ours)) }

func layoutFaults(t *testing.T, tree fs.FS) []string {
	t.Helper()
	entries, err := fs.ReadDir(tree, ".")
	if err != nil {
		t.Fatal(err)
	}
	var faults []string
	for _, e := range entries {
		if !slices.Contains(topLevel, e.Name()) {
			faults = append(faults, e.Name()+": has no place at the top level")
		}
	}
	return faults
}

func TestLayoutFaultsAreSeen(t *testing.T) {
	seen(t, layoutFaults, []badTree{
		{"stray folder", map[string]string{"units/a.go": "", "util/a.go": ""}, "util"},
		{"stray file", map[string]string{"go.mod": "", "NOTES.md": ""}, "NOTES.md"},
		{"nothing stray", map[string]string{"go.mod": "", "align/dial/a.go": "", ".ci/run": ""}, ""},
	})
}

// The marks of unfinished work, in two halves so that this file has none.
var mark = regexp.MustCompile(`\b(TO` + `DO|FIX` + `ME)\b`)

func TestNothingIsMarkedUnfinished(t *testing.T) { report(t, markFaults(t, ours)) }

func markFaults(t *testing.T, tree fs.FS) []string {
	t.Helper()
	var faults []string
	for _, name := range files(t, tree, ".go", ".md") {
		text, err := fs.ReadFile(tree, name)
		if err != nil {
			t.Fatal(err)
		}
		for i, line := range strings.Split(string(text), "\n") {
			if found := mark.FindString(line); found != "" {
				faults = append(faults, fmt.Sprintf("%s:%d: %s: finish it, or say in DEVELOPERS.md what is open", name, i+1, found))
			}
		}
	}
	return faults
}

func TestMarkFaultsAreSeen(t *testing.T) {
	seen(t, markFaults, []badTree{
		{"in code", map[string]string{"align/a.go": "package align\n\n// TO" + "DO: later\n"}, "align/a.go:3"},
		{"in a document", map[string]string{"README.md": "FIX" + "ME\n"}, "README.md:1"},
		{"in a longer word", map[string]string{"README.md": "TO" + "DOs\n"}, ""},
		{"in Git's own files", map[string]string{".git/a.md": "TO" + "DO\n"}, ""},
	})
}
