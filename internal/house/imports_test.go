package house

import (
	"fmt"
	"go/ast"
	"io/fs"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// graph lists every package of the house, and for each the packages of this
// module that its code may import; "*" stands for all but internal ones and
// examples. Tests may import any, internal/rigid among them: an oracle is worth
// nothing once the code it judges leans on it, so no code has it on its list.
var graph = map[string]string{
	"units":            "",
	"shims":            base,
	"softfoot":         base,
	"align":            base,
	"align/dial":       base + " align",
	"align/arc":        base + " align",
	"align/flange":     base + " align",
	"thermal":          base + " align",
	"tolerance":        base + " align",
	"align/train":      base + " align tolerance shims internal/linprog internal/nearest",
	"align/sheet":      base + " *",
	"internal/check":   "units",
	"internal/table":   "units internal/check",
	"internal/words":   "units",
	"internal/lsq":     "units",
	"internal/linprog": "",
	"internal/nearest": "",
	"internal/rigid":   "", // shares no line with what it judges
	"internal/house":   "",
	"internal/fuzzed":  "units",                                              // for tests
	"examples/...":     "* examples/internal/lines examples/internal/strict", // what a reader can write, who sees nothing internal

	"examples/internal/graph":   "units align examples/internal/markup",
	"examples/internal/markup":  "",
	"examples/internal/pumpset": "* examples/internal/graph examples/internal/lines examples/internal/markup examples/internal/strict",
	"examples/pumpset":          "examples/internal/pumpset examples/internal/strict", // flags and files around what the page shares
	"examples/page":             "examples/internal/pumpset",                          // builds and serves what runs in the browser
	"examples/page/wasm":        "units examples/internal/pumpset",                    // stands between JavaScript and the job
	"examples/conform":          "examples/conform/adapter",                           // a judge that leans on what it judges is none
}

// base is what the library packages above units stand on.
const base = "units internal/check internal/lsq internal/table internal/words"

// outside lists the modules from elsewhere. Library code keeps to the first.
var outside = struct{ library, tests, examples []string }{
	library: []string{
		"gonum.org/v1/gonum", // distributions and special functions
	},
	tests: []string{
		"github.com/google/go-cmp", // says what differs, field by field
		"pgregory.net/rapid",       // properties, with failures shrunk
	},
	examples: []string{
		"github.com/go-json-experiment/json",    // refuses names that are doubled or unknown
		"github.com/chromedp/chromedp",          // drives a browser, in tests
		"github.com/chromedp/cdproto",           // the browser's own words, for the same
		"github.com/santhosh-tekuri/jsonschema", // holds the suite's files against their schemas, in a test
	},
}

// barred lists what library code may not import from the standard library.
var barred = map[string]string{
	"C":         "pure Go runs everywhere",
	"unsafe":    "pure Go runs everywhere",
	"syscall":   "pure Go runs everywhere",
	"reflect":   "what happens to a value stands in the code",
	"os":        "no file and no environment",
	"io/ioutil": "no file and no environment",
	"embed":     "no file and no environment",
	"net":       "no network",
	"time":      "no clock",
	"log":       "a library hands its faults to the caller",
	"runtime":   "the answer does not depend on the machine's state",
	"crypto":    "no chance without a seed",
	"testing":   "belongs to tests",
}

func TestImportsRunOneWay(t *testing.T) { report(t, importFaults(t, ours)) }

func importFaults(t *testing.T, tree fs.FS) []string {
	t.Helper()
	all := parse(t, tree)
	var faults []string
	for _, dir := range folders(all) {
		if _, known := graph[entry(dir)]; !known {
			faults = append(faults, dir+": package not in the graph of internal/house: add it to the table")
		}
	}
	for _, s := range all {
		for _, spec := range s.Imports {
			if why := importFault(s, spec); why != "" {
				faults = append(faults, fmt.Sprintf("%s: imports %s: %s", s.at(spec), spec.Path.Value, why))
			}
		}
	}
	return faults
}

// entry returns the key of a folder in the graph.
func entry(dir string) string {
	if _, own := graph[dir]; !own && strings.HasPrefix(dir, "examples/") {
		return "examples/..."
	}
	return dir
}

// importFault says what is wrong with an import, if anything is.
func importFault(s source, spec *ast.ImportSpec) string {
	name, _ := strconv.Unquote(spec.Path.Value)
	if own, ok := strings.CutPrefix(name, module+"/"); ok {
		return ownFault(s, own)
	}
	if host, _, _ := strings.Cut(name, "/"); strings.Contains(host, ".") {
		return outsideFault(s, name)
	}
	return standardFault(s, name)
}

func ownFault(s source, own string) string {
	allowed, known := graph[entry(s.dir())]
	if s.test() || !known { // an unknown package is a fault already
		return ""
	}
	list := strings.Fields(allowed)
	if slices.Contains(list, own) {
		return ""
	}
	if slices.Contains(list, "*") && !strings.HasPrefix(own, "internal/") && !strings.HasPrefix(own, "examples/") {
		return ""
	}
	return "against the one way that imports run"
}

func outsideFault(s source, name string) string {
	allowed := slices.Clone(outside.library)
	if s.test() {
		allowed = append(allowed, outside.tests...)
	}
	if s.example() {
		allowed = append(allowed, outside.examples...)
	}
	if slices.ContainsFunc(allowed, func(m string) bool { return within(name, m) }) {
		return ""
	}
	return "not one of the modules that this code may use"
}

func standardFault(s source, name string) string {
	if s.test() || s.example() || s.dir() == "internal/fuzzed" { // which serves tests alone
		return ""
	}
	for top, why := range barred {
		if within(name, top) {
			return why
		}
	}
	return ""
}

// within tells whether the import path name is top or below it.
func within(name, top string) bool { return name == top || strings.HasPrefix(name, top+"/") }

func TestImportFaultsAreSeen(t *testing.T) {
	imports := func(pkg, name string) string { return "package " + pkg + "\nimport _ \"" + name + "\"\n" }
	seen(t, importFaults, []badTree{
		{"units above the rest", map[string]string{"units/a.go": imports("units", module+"/internal/check")}, "one way"},
		{"geometry that knows limits", map[string]string{"align/a.go": imports("align", module+"/tolerance")}, "one way"},
		{"hand method that knows growth", map[string]string{"align/dial/a.go": imports("dial", module+"/thermal")}, "one way"},
		{"shims that know geometry", map[string]string{"shims/a.go": imports("shims", module+"/align")}, "one way"},
		{"library leaning on an example", map[string]string{"align/a.go": imports("align", module+"/examples/pumpset")}, "one way"},
		{"library that reads as examples do", map[string]string{"align/sheet/a.go": imports("sheet", module+"/examples/internal/strict")}, "one way"},
		{"example leaning on an example", map[string]string{"examples/x/a.go": imports("main", module+"/examples/pumpset")}, "one way"},
		{"code leaning on what serves tests", map[string]string{"align/a.go": imports("align", module+"/internal/fuzzed")}, "one way"},
		{"code leaning on its oracle", map[string]string{"align/a.go": imports("align", module+"/internal/rigid")}, "one way"},
		{"oracle leaning on the code", map[string]string{"internal/rigid/a.go": imports("rigid", module+"/units")}, "one way"},
		{"judge leaning on the judged", map[string]string{"examples/conform/a.go": imports("main", module+"/units")}, "one way"},
		{"example with a look inside", map[string]string{"examples/x/a.go": imports("main", module+"/internal/lsq")}, "one way"},
		{"package nobody listed", map[string]string{"gears/a.go": "package gears\n"}, "add it to the table"},
		{"package at the root", map[string]string{"a.go": "package collinear\n"}, "add it to the table"},
		{"strange module", map[string]string{"align/a.go": imports("align", "example.com/other")}, "modules that this code may use"},
		{"look-alike module", map[string]string{"align/a.go": imports("align", "gonum.org/v1/gonumber")}, "modules that this code may use"},
		{"test module in code", map[string]string{"align/a.go": imports("align", "pgregory.net/rapid")}, "modules that this code may use"},
		{"decoder in a library test", map[string]string{"align/a_test.go": imports("align", "github.com/go-json-experiment/json")}, "modules that this code may use"},
		{"clock", map[string]string{"align/a.go": imports("align", "time")}, "no clock"},
		{"file", map[string]string{"internal/lsq/a.go": imports("lsq", "os")}, "no file"},
		{"process", map[string]string{"align/a.go": imports("align", "os/exec")}, "no file"},
		{"network", map[string]string{"tolerance/a.go": imports("tolerance", "net/http")}, "no network"},
		{"C", map[string]string{"align/a.go": imports("align", "C")}, "pure Go"},

		{"geometry on its base", map[string]string{"align/a.go": imports("align", module+"/internal/lsq")}, ""},
		{"train on limits", map[string]string{"align/train/a.go": imports("train", module+"/tolerance")}, ""},
		{"sheet on everything", map[string]string{"align/sheet/a.go": imports("sheet", module+"/align/train")}, ""},
		{"oracle in a test", map[string]string{"align/a_test.go": imports("align_test", module+"/internal/rigid")}, ""},
		{"what serves tests", map[string]string{"internal/fuzzed/a.go": imports("fuzzed", "reflect")}, ""},
		{"what examples share", map[string]string{"examples/x/a.go": imports("main", module+"/examples/internal/strict")}, ""},
		{"decoder in an example", map[string]string{"examples/x/a.go": imports("main", "github.com/go-json-experiment/json/jsontext")}, ""},
		{"what the go command skips", map[string]string{"testdata/a.go": imports("x", "time"), "_old/a.go": imports("x", "time")}, ""},
	})
}

func TestLibraryStartsNoGoroutine(t *testing.T) { report(t, goroutineFaults(t, ours)) }

func goroutineFaults(t *testing.T, tree fs.FS) []string {
	t.Helper()
	var faults []string
	for _, s := range parse(t, tree) {
		if s.test() || s.example() {
			continue
		}
		for n := range ast.Preorder(s.File) {
			if _, ok := n.(*ast.GoStmt); ok {
				faults = append(faults, s.at(n)+": starts a goroutine; how work is spread is the caller's choice")
			}
		}
	}
	return faults
}

func TestGoroutineFaultsAreSeen(t *testing.T) {
	const starts = "package align\nfunc f() { go f() }\n"
	seen(t, goroutineFaults, []badTree{
		{"in code", map[string]string{"align/a.go": starts}, "align/a.go:2:12"},
		{"in a test", map[string]string{"align/a_test.go": starts}, ""},
	})
}
