// The catalogue is whole: everything the core and the window say has a text, and no text is left that nobody says.

package words_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/sim"
)

// literals are all string literals of the Go files below a folder, tests left out, each with where it stands.
func literals(t *testing.T, dir string, deep bool) map[string]string {
	t.Helper()
	found := map[string]string{}
	tree := os.DirFS(dir)
	err := fs.WalkDir(tree, ".", func(p string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && p != "." && !deep {
			return fs.SkipDir
		}
		if d.IsDir() || path.Ext(p) != ".go" || strings.HasSuffix(p, "_test.go") {
			return nil
		}
		content, err := fs.ReadFile(tree, p)
		if err != nil {
			return err
		}
		set := token.NewFileSet()
		f, err := parser.ParseFile(set, p, content, 0)
		if err != nil {
			return err
		}
		ast.Inspect(f, func(n ast.Node) bool {
			if l, ok := n.(*ast.BasicLit); ok && l.Kind == token.STRING {
				if s, err := strconv.Unquote(l.Value); err == nil {
					found[s] = set.Position(l.Pos()).String()
				}
			}
			return true
		})
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return found
}

// choices are the names of a small set of the core, up to the first it does not know.
func choices[T ~uint8](name func(T) string) (names []string) {
	for i := T(0); i < 200; i++ {
		n := name(i)
		if n == "unknown" {
			break
		}
		if n != "" {
			names = append(names, n)
		}
	}
	return names
}

func coreNames() map[string][]string {
	alarms := choices(sim.Alarm.String)
	return map[string][]string{
		"alarm": alarms, "check": alarms, "means": alarms, "part": choices(sim.Part.String), "act": choices(sim.Verb.String),
		"decision": choices(sim.Decision.String), "solution": choices(sim.Solution.String), "short": choices(sim.Solution.String), "bowl": choices(sim.BowlKind.String),
		"request": choices(sim.Request.String), "incident": choices(sim.Incident.String), "tally": choices(sim.TallyItem.String),
		"speaker": choices(sim.Speaker.String),
	}
}

func TestChoicesOfTheCoreHaveTexts(t *testing.T) {
	for area, names := range coreNames() {
		if len(names) < 3 {
			t.Errorf("%s: only %d names were found", area, len(names))
		}
		for _, n := range names {
			if !words.Has(area + "." + n) {
				t.Errorf("%s.%s has no text", area, n)
			}
		}
	}
}

// keyed are the calls of the core whose string is a key, by the place of the string among the arguments.
var keyed = map[string]struct {
	area string
	at   int
}{"unless": {"why", 1}, "say": {"say", 2}, "sayValue": {"say", 2}, "act": {"came", 1}}

// spoken gives the keys that the core's source says, with where.
func spoken(t *testing.T) map[string]string {
	t.Helper()
	found := map[string]string{}
	set := token.NewFileSet()
	entries, err := os.ReadDir("../../sim")
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		if path.Ext(e.Name()) != ".go" || strings.HasSuffix(e.Name(), "_test.go") {
			continue
		}
		f, err := parser.ParseFile(set, "../../sim/"+e.Name(), nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		note := func(area string, x ast.Expr) {
			if l, ok := x.(*ast.BasicLit); ok && l.Kind == token.STRING {
				if s, _ := strconv.Unquote(l.Value); s != "" {
					found[area+"."+s] = set.Position(l.Pos()).String()
				}
			}
		}
		inspectKeys(f, note)
	}
	return found
}

// inspectKeys notes reasons that are returned, strings given to the calls that speak, and variables called key.
func inspectKeys(f *ast.File, note func(area string, x ast.Expr)) {
	for _, d := range f.Decls {
		fn, ok := d.(*ast.FuncDecl)
		if !ok {
			continue
		}
		area := "came"
		ast.Inspect(fn, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.FuncType:
				_ = n
			case *ast.ReturnStmt:
				for _, r := range n.Results {
					if returnsReason(fn) {
						note("why", r)
					}
				}
			case *ast.CallExpr:
				name := ""
				switch f := n.Fun.(type) {
				case *ast.Ident:
					name = f.Name
				case *ast.SelectorExpr:
					name = f.Sel.Name
				}
				if k, ok := keyed[name]; ok && len(n.Args) > k.at {
					note(k.area, n.Args[k.at])
					if id, ok := n.Args[k.at].(*ast.Ident); ok && id.Name == "key" {
						area = k.area
					}
				}
			case *ast.KeyValueExpr:
				if id, ok := n.Key.(*ast.Ident); ok && id.Name == "Key" {
					if l, ok := n.Value.(*ast.BasicLit); ok && l.Value == `"sample_ready"` {
						note("say", l)
					} else {
						note("came", n.Value)
					}
				}
			}
			return true
		})
		ast.Inspect(fn, func(n ast.Node) bool {
			if a, ok := n.(*ast.AssignStmt); ok && len(a.Lhs) == 1 {
				if id, ok := a.Lhs[0].(*ast.Ident); ok && id.Name == "key" {
					note(area, a.Rhs[0])
				}
			}
			return true
		})
	}
}

func returnsReason(fn *ast.FuncDecl) bool {
	if fn.Type.Results == nil {
		return false
	}
	for _, r := range fn.Type.Results.List {
		if id, ok := r.Type.(*ast.Ident); ok && id.Name == "Reason" {
			return true
		}
	}
	return false
}

func TestWhatTheCoreSaysHasTexts(t *testing.T) {
	keys := spoken(t)
	if len(keys) < 90 {
		t.Fatalf("only %d keys were found in the core: this test looks in the wrong places", len(keys))
	}
	for k, at := range keys {
		if !words.Has(k) {
			t.Errorf("%s: %s has no text", at, k)
		}
	}
}

var snake = regexp.MustCompile(`^[a-z]+(_[a-z]+)*$`)

// Whatever way the core hands on a string that looks like a key, it is in the catalogue or in a list of files' names.
func TestNoKeyOfTheCoreIsOverlooked(t *testing.T) {
	elsewhere := map[string]bool{"unknown": true, "pack_is_": true}
	have := map[string]bool{}
	for _, k := range words.Keys() {
		_, key, _ := strings.Cut(k, ".")
		have[key] = true
	}
	for s, at := range literals(t, "../../sim", false) {
		if strings.Contains(at, "rig_") || strings.Contains(at, "trial") || elsewhere[s] {
			continue // trials name their own results, which the command line explains
		}
		if snake.MatchString(s) && strings.Contains(s, "_") && !have[s] {
			t.Errorf("%s: %q looks like a key and has no text", at, s)
		}
	}
}

// judged are the areas whose keys the grade puts together.
var judged = map[string]bool{"critical": true, "reason": true, "target": true, "verdict": true, "calc": true, "cli": true, "stuck": true}

// put are the areas whose keys are put together from a word of the source and one of these beginnings or ends.
var put = map[string]struct{ before, after []string }{
	"changes":  {before: []string{"", "no_", "new_", "more_", "less_"}},
	"decision": {after: []string{"_left_out", "_late", "_wrong", "_needless", "_all", "_once_wrong"}},
	"group":    {before: []string{"aspect_"}},
	"sheet":    {before: []string{"mode_"}},
	"book":     {before: []string{"due_"}},
}

// putTogether says whether a key is put together from a word that the source names.
func putTogether(area, key string, source map[string]string) bool {
	p := put[area]
	for _, b := range p.before {
		if word, ok := strings.CutPrefix(key, b); ok && source[word] != "" {
			return true
		}
	}
	for _, a := range p.after {
		if word, ok := strings.CutSuffix(key, a); ok && source[word] != "" {
			return true
		}
	}
	return false
}

// core areas are said by the core itself; keys put together from two parts are named here.
func TestEveryTextIsSaid(t *testing.T) {
	said := spoken(t)
	for area, names := range coreNames() {
		for _, n := range names {
			said[area+"."+n] = "core"
		}
	}
	for _, s := range choices(sim.Solution.String) {
		said["came.pack_is_"+s] = "inspect"
	}
	inCore := literals(t, "../../sim", false)
	window := literals(t, "../../cmd", true)
	scoring := literals(t, "../../scoring", true)
	for _, k := range words.Keys() {
		area, key, _ := strings.Cut(k, ".")
		switch {
		case said[k] != "" || window[k] != "":
		case (area == "why" || area == "say") && inCore[key] != "":
		case putTogether(area, key, scoring):
		case scoring[k] != "" || judged[area] && (scoring[key] != "" || window[key] != ""):
		default:
			t.Errorf("nobody says %s", k)
		}
	}
}

func TestTextsKeepTheHouseRule(t *testing.T) {
	for _, k := range words.Keys() {
		text := words.Say(k)
		if text == "" {
			t.Errorf("%s is empty", k)
		}
		if strings.HasPrefix(k, "why.") {
			if r := []rune(text); len(r) > 38 || strings.ToLower(text) != text {
				t.Errorf("%s: %q is longer than 38 letters or not lower case", k, text)
			}
		}
	}
}

func TestUnknownKeyShowsItself(t *testing.T) {
	if got := words.Say("nowhere.at_all"); got != "‹nowhere.at_all›" {
		t.Errorf("got %q", got)
	}
	if got := words.Say("came.wash_done", 1000.0); got != "wash finished after 1000 mL" {
		t.Errorf("got %q", got)
	}
}
