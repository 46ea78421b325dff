// This file tests what stands at the top, how long a file is, and how it begins.
package house

import (
	"bytes"
	"go/ast"
	"go/token"
	"os"
	"slices"
	"strings"
	"testing"
)

const longestFile = 400 // lines

func TestTopLevel(t *testing.T) {
	want := []string{
		".ci", ".gitattributes", ".gitignore", "DEVELOPERS.md", "LICENSE", "README.md", "assets", "cmd",
		"go.mod", "go.sum", "scenarios", "scoring", "sim", "testdata",
	}
	entries, err := os.ReadDir(root)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, e := range entries {
		if !skipped[e.Name()] {
			got = append(got, e.Name())
		}
	}
	for _, name := range want {
		if !slices.Contains(got, name) {
			t.Errorf("%s is missing at the top of the tree", name)
		}
	}
	for _, name := range got {
		if !slices.Contains(want, name) {
			t.Errorf("%s does not belong at the top of the tree", name)
		}
	}
}

func TestFilesAreModest(t *testing.T) {
	for _, f := range goFiles(t) {
		lines := bytes.Count(f.content, []byte("\n"))
		if lines > longestFile && !ast.IsGenerated(f.syntax) {
			t.Errorf("%s has %d lines, of which %d are allowed: divide it by ideas", f.path, lines, longestFile)
		}
	}
}

func TestFilesSayWhatLivesInThem(t *testing.T) {
	for _, f := range goFiles(t) {
		if !f.test && !ast.IsGenerated(f.syntax) && !beginsWithComment(f.syntax) {
			t.Errorf("%s does not begin with a comment that says what lives there", f.path)
		}
	}
}

// beginsWithComment tells whether words for people, not for tools, stand before the first declaration after
// the imports, and belong to the file and not to that declaration.
func beginsWithComment(f *ast.File) bool {
	var first ast.Decl
	for _, d := range f.Decls {
		if g, ok := d.(*ast.GenDecl); !ok || g.Tok != token.IMPORT {
			first = d
			break
		}
	}
	for _, c := range f.Comments {
		if first != nil && (c.Pos() > first.Pos() || c == docOf(first)) {
			break
		}
		if len(strings.Fields(c.Text())) >= 3 { // Text leaves out directives
			return true
		}
	}
	return false
}

func docOf(d ast.Decl) *ast.CommentGroup {
	switch d := d.(type) {
	case *ast.FuncDecl:
		return d.Doc
	case *ast.GenDecl:
		return d.Doc
	}
	return nil
}

func TestBeginsWithComment(t *testing.T) {
	for _, c := range []struct {
		name, source string
		want         bool
	}{
		{"package comment", "// Package p keeps words.\npackage p\n", true},
		{"detached comment", "// Here live the words.\n\npackage p\n", true},
		{"after the package line", "package p\n\n// Here live the words.\n\nimport \"fmt\"\n\nvar _ = fmt.Sprint\n", true},
		{"after the imports", "package p\n\nimport \"fmt\"\n\n// Here live the words.\n\n// A is one.\nvar A = fmt.Sprint()\n", true},
		{"nothing", "package p\n\nvar A int\n", false},
		{"a directive only", "//go:build linux\n\npackage p\n\nvar A int\n", false},
		{"the comment of a declaration", "package p\n\n// A counts the words here.\nvar A int\n", false},
		{"too late", "package p\n\nvar A int\n\n// Here live the words.\n", false},
	} {
		if got := beginsWithComment(parseSource(t, c.source)); got != c.want {
			t.Errorf("%s: got %v, want %v", c.name, got, c.want)
		}
	}
}
