package house

import (
	"go/ast"
	"go/doc"
	"io/fs"
	"regexp"
	"slices"
	"testing"
)

// A method of the text family is known by its name; an example of each would
// say nothing that the type's own does not.
var textFamily = regexp.MustCompile(`^(String|Error|Unwrap|Is[A-Z].*|(Marshal|Append|Unmarshal)(Text|JSON))$`)

// Must functions wrap another that has its example.
var must = regexp.MustCompile(`^MustParse`)

func TestEveryEntryPointHasAnExample(t *testing.T) { report(t, exampleFaults(t, ours)) }

// exampleFaults asks for an Example of every exported function of the library,
// and for one of every type, or of one of its methods, that can do more than
// turn into text and back.
func exampleFaults(t *testing.T, tree fs.FS) []string {
	t.Helper()
	all := parse(t, tree)
	packages := byFolder(all)
	var faults []string
	for _, dir := range folders(all) {
		if s := packages[dir][0]; s.internal() || s.example() {
			continue
		}
		p, err := document(packages[dir])
		if err != nil {
			t.Fatal(err)
		}
		for _, name := range bare(p) {
			faults = append(faults, dir+": "+name+" has no Example")
		}
	}
	return faults
}

// document reads a package as its readers will see it.
func document(sources []source) (*doc.Package, error) {
	var parsed []*ast.File
	for _, s := range sources {
		parsed = append(parsed, s.File)
	}
	return doc.NewFromFiles(sources[0].pos, parsed, module+"/"+sources[0].dir())
}

// bare names the functions and types of a package that lack their example.
func bare(p *doc.Package) []string {
	functions := p.Funcs
	var names []string
	for _, typ := range p.Types {
		functions = slices.Concat(functions, typ.Funcs) // constructors stand with their type
		if active(typ) && !shown(typ) {
			names = append(names, "type "+typ.Name)
		}
	}
	for _, f := range functions {
		if len(f.Examples) == 0 && !must.MatchString(f.Name) {
			names = append(names, "func "+f.Name)
		}
	}
	return names
}

// active tells whether a type has methods beyond the text family.
func active(typ *doc.Type) bool {
	return slices.ContainsFunc(typ.Methods, func(m *doc.Func) bool { return !textFamily.MatchString(m.Name) })
}

// shown tells whether a type or one of its methods has an example.
func shown(typ *doc.Type) bool {
	return len(typ.Examples) > 0 ||
		slices.ContainsFunc(typ.Methods, func(m *doc.Func) bool { return len(m.Examples) > 0 })
}

func TestEveryExampleIsRun(t *testing.T) { report(t, outputFaults(t, ours)) }

// outputFaults asks for the comment without which the go command only compiles
// an example.
func outputFaults(t *testing.T, tree fs.FS) []string {
	t.Helper()
	var faults []string
	for _, s := range parse(t, tree) {
		if !s.test() {
			continue
		}
		for _, e := range doc.Examples(s.File) {
			if e.Output == "" && !e.EmptyOutput {
				faults = append(faults, s.name+": Example"+e.Name+" has no Output comment, so it is never run")
			}
		}
	}
	return faults
}

const (
	function = "package align\n\nfunc Fit() {}\n"
	method   = "package align\n\ntype Line struct{}\n\nfunc (Line) At() {}\n"
	text     = "package align\n\ntype Code string\n\nfunc (Code) String() string { return \"\" }\n"
	newTable = "package align\n\ntype Table struct{}\n\nfunc NewTable() Table { return Table{} }\n"
)

// example returns a test file with one example, for the external test package.
func example(name, comment string) string {
	return "package align_test\n\nfunc Example" + name + "() {\n\t" + comment + "\n}\n"
}

func TestExampleFaultsAreSeen(t *testing.T) {
	seen(t, exampleFaults, []badTree{
		{"function", map[string]string{"align/a.go": function}, "align: func Fit"},
		{"method", map[string]string{"align/a.go": method}, "align: type Line"},
		{"constructor", map[string]string{"align/a.go": newTable}, "align: func NewTable"},
		{"example of something else", map[string]string{"align/a.go": function, "align/a_test.go": example("Line", "// Output:")}, "func Fit"},

		{"function shown", map[string]string{"align/a.go": function, "align/a_test.go": example("Fit", "// Output:")}, ""},
		{"type shown", map[string]string{"align/a.go": method, "align/a_test.go": example("Line", "// Output:")}, ""},
		{"method shown", map[string]string{"align/a.go": method, "align/a_test.go": example("Line_At", "// Output:")}, ""},
		{"text only", map[string]string{"align/a.go": text}, ""},
		{"must", map[string]string{"align/a.go": "package align\n\nfunc MustParseLength() {}\n"}, ""},
		{"not exported", map[string]string{"align/a.go": "package align\n\nfunc fit() {}\n"}, ""},
		{"internal", map[string]string{"internal/lsq/a.go": "package lsq\n\nfunc Solve() {}\n"}, ""},
	})
}

func TestOutputFaultsAreSeen(t *testing.T) {
	seen(t, outputFaults, []badTree{
		{"no comment", map[string]string{"align/a_test.go": example("Fit", "")}, "ExampleFit"},
		{"other comment", map[string]string{"align/a_test.go": example("Fit", "// prints 3")}, "ExampleFit"},
		{"output", map[string]string{"align/a_test.go": example("Fit", "// Output: 3")}, ""},
		{"empty output", map[string]string{"align/a_test.go": example("Fit", "// Output:")}, ""},
		{"unordered output", map[string]string{"align/a_test.go": example("Fit", "// Unordered output: 3")}, ""},
	})
}
