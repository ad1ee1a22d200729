package house

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
)

// module is the path that our own imports start with.
const module = "example.org/collinear"

// ours is the source tree as it stands.
var ours = os.DirFS("../..")

// source is one parsed file.
type source struct {
	*ast.File
	name string // from the root of the module, with slashes
	pos  *token.FileSet
}

func (s source) dir() string    { return path.Dir(s.name) }
func (s source) test() bool     { return strings.HasSuffix(s.name, "_test.go") }
func (s source) internal() bool { return strings.HasPrefix(s.name, "internal/") }
func (s source) example() bool  { return strings.HasPrefix(s.name, "examples/") }

// at says where in the tree a node stands.
func (s source) at(n ast.Node) string { return s.pos.Position(n.Pos()).String() }

// parse reads every Go file that the go command would see, ordered by name.
func parse(t *testing.T, tree fs.FS) []source {
	t.Helper()
	var all []source
	pos := token.NewFileSet()
	for _, name := range files(t, tree, ".go") {
		if !built(name) {
			continue
		}
		text, err := fs.ReadFile(tree, name)
		if err != nil {
			t.Fatal(err)
		}
		file, err := parser.ParseFile(pos, name, text, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, source{file, name, pos})
	}
	return all
}

// built tells whether the go command looks into the folders on the way to name.
func built(name string) bool {
	for step := range strings.SplitSeq(name, "/") {
		if step == "testdata" || step[0] == '.' || step[0] == '_' {
			return false
		}
	}
	return true
}

// files names the files of the tree with one of the endings, in order. What Git
// keeps for itself is left out.
func files(t *testing.T, tree fs.FS, endings ...string) []string {
	t.Helper()
	var names []string
	err := fs.WalkDir(tree, ".", func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case name == ".git" && d.IsDir():
			return fs.SkipDir
		case !d.IsDir() && slices.Contains(endings, path.Ext(name)):
			names = append(names, name)
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return names
}

// byFolder gathers files by their folder, that is by package.
func byFolder(all []source) map[string][]source {
	folders := map[string][]source{}
	for _, s := range all {
		folders[s.dir()] = append(folders[s.dir()], s)
	}
	return folders
}

// folders names the folders of the files, in order.
func folders(all []source) []string {
	return slices.Sorted(maps.Keys(byFolder(all)))
}

// report fails the test with each of the faults that a rule found.
func report(t *testing.T, faults []string) {
	t.Helper()
	for _, f := range faults {
		t.Error(f)
	}
}

// badTree is a tree that breaks a rule, and the words that its fault must hold.
type badTree struct {
	name string
	tree map[string]string // text by file
	want string            // "" if the tree is a good one after all
}

// seen asks that a rule finds exactly the fault that each tree has.
func seen(t *testing.T, rule func(*testing.T, fs.FS) []string, rows []badTree) {
	t.Helper()
	for _, row := range rows {
		t.Run(row.name, func(t *testing.T) {
			tree := fstest.MapFS{}
			for name, text := range row.tree {
				tree[name] = &fstest.MapFile{Data: []byte(text)}
			}
			faults := rule(t, tree)
			if row.want == "" {
				report(t, faults)
				return
			}
			if len(faults) != 1 || !strings.Contains(faults[0], row.want) {
				t.Errorf("got %q, want one fault with %q", faults, row.want)
			}
		})
	}
}
