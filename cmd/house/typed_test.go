// This file reads the deterministic part of the house with its types, for the tests of what may be written there.
package house

import (
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// typedPackage is a package with the meaning of every name in it.
type typedPackage struct {
	set   *token.FileSet
	files []*ast.File
	info  *types.Info
}

// place says where something stands, from the top of the tree.
func (p typedPackage) place(n ast.Node) string {
	position := p.set.Position(n.Pos())
	top, err := filepath.Abs(root)
	if err == nil {
		if short, err := filepath.Rel(top, position.Filename); err == nil && filepath.IsLocal(short) {
			position.Filename = filepath.ToSlash(short)
		}
	}
	return position.String()
}

// exports gives for each package where the compiler left what it tells to those that import it.
type exports map[string]string

// compile builds the packages and all they import.
func compile(t *testing.T, patterns ...string) ([]goPackage, exports) {
	t.Helper()
	packages := goList(t, nil, append([]string{"-export", "-deps"}, patterns...)...)
	found := exports{}
	for _, p := range packages {
		found[p.ImportPath] = p.Export
	}
	return packages, found
}

// check gives the meaning of every name in the files.
func check(t *testing.T, path string, compiled exports, set *token.FileSet, syntax []*ast.File) typedPackage {
	t.Helper()
	p := typedPackage{set: set, files: syntax, info: &types.Info{
		Types: map[ast.Expr]types.TypeAndValue{},
		Uses:  map[*ast.Ident]types.Object{},
		Defs:  map[*ast.Ident]types.Object{},
	}}
	config := types.Config{Importer: importer.ForCompiler(set, "gc", func(path string) (io.ReadCloser, error) {
		if compiled[path] == "" {
			return nil, fmt.Errorf("%s was not compiled", path)
		}
		return os.Open(compiled[path])
	})}
	if _, err := config.Check(path, set, syntax, p.info); err != nil {
		t.Fatalf("%s: %v", path, err)
	}
	return p
}

// core gives every package of sim, scenarios and scoring, without its tests.
func core(t *testing.T) []typedPackage {
	t.Helper()
	packages, compiled := compile(t, "./sim/...", "./scenarios/...", "./scoring/...")
	var found []typedPackage
	for _, p := range packages {
		if !p.ours() {
			continue
		}
		set := token.NewFileSet()
		var syntax []*ast.File
		for _, name := range p.GoFiles {
			f, err := parser.ParseFile(set, filepath.Join(p.Dir, name), nil, parser.SkipObjectResolution)
			if err != nil {
				t.Fatal(err)
			}
			syntax = append(syntax, f)
		}
		if len(syntax) > 0 {
			found = append(found, check(t, p.ImportPath, compiled, set, syntax))
		}
	}
	if len(found) == 0 {
		t.Fatal("the core has no package")
	}
	return found
}

// sample reads a few lines in which each line marked "// bad" must be found by the test of a rule.
func sample(t *testing.T, source string) (p typedPackage, bad map[int]bool) {
	t.Helper()
	_, compiled := compile(t, "math", "time", "maps", "slices", "reflect", "golang.org/x/exp/rand")
	set := token.NewFileSet()
	f, err := parser.ParseFile(set, "sample.go", source, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	bad = map[int]bool{}
	for i, line := range strings.Split(source, "\n") {
		if strings.HasSuffix(line, "// bad") {
			bad[i+1] = true
		}
	}
	return check(t, "sample", compiled, set, []*ast.File{f}), bad
}

// finding is a place where a rule is broken.
type finding struct {
	node ast.Node
	why  string
}

// compare tells whether what was found is what is marked.
func compare(t *testing.T, p typedPackage, bad map[int]bool, found []finding) {
	t.Helper()
	seen := map[int]bool{}
	for _, f := range found {
		line := p.set.Position(f.node.Pos()).Line
		seen[line] = true
		if !bad[line] {
			t.Errorf("line %d was found and is good: %s", line, f.why)
		}
	}
	for line := range bad {
		if !seen[line] {
			t.Errorf("line %d is bad and was not found", line)
		}
	}
}
