// Package house tests the house rules: what stands where, what may import what, and which Go may be
// written where the same bits are wanted everywhere. It holds tests only. This file finds and reads the tree.
package house

import (
	"bytes"
	"encoding/json"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"
)

// root is the top of the tree, seen from this package.
const root = "../.."

// skipped are folders that belong to git or to the build, not to the house.
var skipped = map[string]bool{".git": true, "build": true}

// files gives every file of the tree by its path from the top, with slashes, in a fixed order.
func files(t *testing.T) []string {
	t.Helper()
	var found []string
	err := fs.WalkDir(os.DirFS(root), ".", func(path string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case d.IsDir() && skipped[path]:
			return fs.SkipDir
		case !d.IsDir():
			found = append(found, path)
		}
		return nil
	})
	if err != nil {
		t.Fatalf("the tree could not be read: %v", err)
	}
	return found
}

func read(t *testing.T, path string) []byte {
	t.Helper()
	content, err := os.ReadFile(filepath.Join(root, filepath.FromSlash(path)))
	if err != nil {
		t.Fatalf("could not read %s: %v", path, err)
	}
	return content
}

// isText tells whether people read the file: valid UTF-8 without a zero byte.
func isText(content []byte) bool {
	return utf8.Valid(content) && bytes.IndexByte(content, 0) < 0
}

// goFile is one parsed file of Go.
type goFile struct {
	path    string // from the top of the tree
	test    bool
	content []byte
	syntax  *ast.File
	set     *token.FileSet
}

// place says where in the file something stands.
func (f goFile) place(pos token.Pos) string {
	return f.set.Position(pos).String()
}

// goFiles parses every file of Go in the tree.
func goFiles(t *testing.T) []goFile {
	t.Helper()
	var found []goFile
	for _, path := range files(t) {
		if !strings.HasSuffix(path, ".go") {
			continue
		}
		f := goFile{path: path, test: strings.HasSuffix(path, "_test.go"), content: read(t, path), set: token.NewFileSet()}
		var err error
		f.syntax, err = parser.ParseFile(f.set, path, f.content, parser.ParseComments|parser.SkipObjectResolution)
		if err != nil {
			t.Errorf("not Go: %v", err)
			continue
		}
		found = append(found, f)
	}
	if len(found) == 0 {
		t.Fatal("no file of Go was found")
	}
	return found
}

// goPackage is what go list tells of a package.
type goPackage struct {
	ImportPath, Dir, Export            string
	GoFiles, TestGoFiles, XTestGoFiles []string
	Imports, Deps                      []string
	Module                             *struct{ Main bool }
}

// ours tells whether the package belongs to this module.
func (p goPackage) ours() bool { return p.Module != nil && p.Module.Main }

// goList asks go list, run at the top of the tree with the given additions to its environment.
func goList(t *testing.T, environment []string, arguments ...string) []goPackage {
	t.Helper()
	command := exec.Command("go", append([]string{"list", "-json"}, arguments...)...)
	command.Dir = root
	command.Env = append(os.Environ(), environment...)
	var errors bytes.Buffer
	command.Stderr = &errors
	output, err := command.Output()
	if err != nil {
		t.Fatalf("go list %s: %v\n%s", strings.Join(arguments, " "), err, errors.String())
	}
	var packages []goPackage
	for decoder := json.NewDecoder(bytes.NewReader(output)); decoder.More(); {
		var p goPackage
		if err := decoder.Decode(&p); err != nil {
			t.Fatalf("go list %s: %v", strings.Join(arguments, " "), err)
		}
		packages = append(packages, p)
	}
	return packages
}
