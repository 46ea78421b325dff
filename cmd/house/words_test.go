// This file tests that some words stand nowhere: skipped tests, work put off, and names of one machine.
// Every forbidden word is put together from parts here, so that this file does not contain it.
package house

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"path"
	"regexp"
	"strings"
	"testing"
)

func parseSource(t *testing.T, source string) *ast.File {
	t.Helper()
	f, err := parser.ParseFile(token.NewFileSet(), "source.go", source, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// skips gives the calls that leave a test out, or make it depend on how the tests were started.
func skips(f *ast.File) []ast.Node {
	var found []ast.Node
	ast.Inspect(f, func(n ast.Node) bool {
		if s, ok := n.(*ast.SelectorExpr); ok {
			switch s.Sel.Name {
			case "Skip", "Skipf", "SkipNow":
				found = append(found, s)
			case "Short":
				if x, ok := s.X.(*ast.Ident); ok && x.Name == "testing" {
					found = append(found, s)
				}
			}
		}
		return true
	})
	return found
}

// scriptSkip is the same in a script of testscript.
var scriptSkip = regexp.MustCompile(`(?m)^(\[[^\]]*\]\s*)*` + "sk" + `ip\b`)

func TestNoTestIsSkipped(t *testing.T) {
	for _, f := range goFiles(t) {
		if !f.test {
			continue
		}
		for _, n := range skips(f.syntax) {
			t.Errorf("%s: a test that can be skipped proves nothing: let it fail and say what is missing", f.place(n.Pos()))
		}
	}
	for _, p := range files(t) {
		if ext := path.Ext(p); (ext == ".txt" || ext == ".txtar") && strings.Contains(p, "testdata/") && scriptSkip.Match(read(t, p)) {
			t.Errorf("%s: a script that can be skipped proves nothing", p)
		}
	}
}

func TestSkipsAreFound(t *testing.T) {
	source := "package p\nfunc F(t *testing.T) { t.Skip(); t.Skipf(``); t.SkipNow(); testing.Short(); x.Short(); t.Error() }\n"
	if got := len(skips(parseSource(t, source))); got != 4 {
		t.Errorf("found %d of 4", got)
	}
	if !scriptSkip.MatchString("exec a\n[!unix] " + "sk" + "ip no shell\n") {
		t.Error("the script was not found")
	}
}

// A rule is a pattern that must not match in a text file, and what to do instead.
type rule struct {
	pattern *regexp.Regexp
	mend    string
}

var rules = []rule{
	{regexp.MustCompile(`\b(` + strings.Join([]string{"TO" + "DO", "FIX" + "ME", "XX" + "X"}, "|") + `)\b`), "do it, or leave it out"},
	// A path of this machine: at its root, so not after a name, a variable or a dot.
	{regexp.MustCompile(`(?m)(^|[^A-Za-z0-9_.~)}\]/-])/(` + strings.Join([]string{"wo" + "rk", "ro" + "ot", "fa" + "rm"}, "|") + `)(/|\b)`), "write a path from the top of the tree"},
	{regexp.MustCompile(`(?m)(^|[^A-Za-z0-9_.~)}\]/-])/(` + strings.Join([]string{"tm" + "p", "ho" + "me"}, "|") + `)/`), "ask the system for its folder"},
	{regexp.MustCompile(`(?i)\b[A-Z]:\\{1,2}` + `Users\b`), "ask the system for its folder"},
	{regexp.MustCompile(`(?i)\b(` + strings.Join([]string{
		`proxy\.go` + `lang\.org`, `sum\.go` + `lang\.org`, `goproxy\.` + `io`, `registry\.npm` + `js\.org`, `py` + `pi\.org`,
		`python` + `hosted\.org`, `crates\.` + `io`, `ruby` + `gems\.org`, `deb\.deb` + `ian\.org`, `archive\.ub` + `untu\.com`,
		`docker\.` + `io`, `ghcr\.` + `io`, `quay\.` + `io`,
	}, "|") + `)\b`), "leave the host of a registry to the settings of the machine"},
}

// breaches gives the rules that a text breaks, each with its line.
func breaches(text string) []string {
	var found []string
	for i, line := range strings.Split(text, "\n") {
		for _, r := range rules {
			if m := r.pattern.FindString(line); m != "" {
				found = append(found, fmt.Sprintf("%d: %q: %s", i+1, m, r.mend))
			}
		}
	}
	return found
}

func TestForbiddenWords(t *testing.T) {
	for _, p := range files(t) {
		content := read(t, p)
		if p == "go.sum" || !isText(content) { // checksums may spell anything
			continue
		}
		for _, b := range breaches(string(content)) {
			t.Errorf("%s:%s", p, b)
		}
	}
}

func TestForbiddenWordsAreFound(t *testing.T) {
	for _, bad := range []string{
		"// TO" + "DO: later", "FIX" + "ME", "// XX" + "X", "cd /wo" + "rk/main", "\"/ro" + "ot\"", "`/tm" + "p/x`", "=/ho" + "me/me/x",
		`C:\` + `Users\me`, "https://proxy.go" + "lang.org", "pip -i https://py" + "pi.org/simple",
	} {
		if len(breaches(bad)) != 1 {
			t.Errorf("%q: found %v, want one", bad, breaches(bad))
		}
	}
	for _, good := range []string{
		"mktemp -d x.XXXXXX", "the framework/workload", "$ro" + "ot/build", "../wo" + "rk", "https://go.dev/doc/install", "ml/wo" + "rk",
	} {
		if got := breaches(good); len(got) != 0 {
			t.Errorf("%q: found %v, want none", good, got)
		}
	}
}
