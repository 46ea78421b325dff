package group

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"rouleau/assets/words"
	"rouleau/cmd/rouleau-desk/ui"
	"rouleau/scoring/debrief"
)

// aspects are the names of all kinds of decisions, as the source of package debrief lists them.
func aspects(t *testing.T) (names []string) {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join("..", "..", "..", "scoring", "debrief", "*.go"))
	if err != nil {
		t.Fatal(err)
	}
	for _, path := range paths {
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		ast.Inspect(f, func(n ast.Node) bool {
			lit, ok := n.(*ast.CompositeLit)
			if !ok {
				return true
			}
			name, finds := "", false
			for _, e := range lit.Elts {
				kv, ok := e.(*ast.KeyValueExpr)
				if !ok {
					continue
				}
				switch id, _ := kv.Key.(*ast.Ident); {
				case id != nil && id.Name == "name":
					if l, ok := kv.Value.(*ast.BasicLit); ok {
						name, _ = strconv.Unquote(l.Value)
					}
				case id != nil && id.Name == "find":
					finds = true
				}
			}
			if finds && name != "" {
				names = append(names, name)
			}
			return true
		})
	}
	if len(names) < 60 {
		t.Fatalf("only %d kinds of decisions were found: this test looks in the wrong place", len(names))
	}
	return names
}

var faults = []debrief.Fault{debrief.LeftOut, debrief.Late, debrief.Wrong, debrief.Needless}

// Every kind of decision has a name for a class, no two have the same, and no name is left that belongs to none.
func TestEveryKindHasAName(t *testing.T) {
	names := aspects(t)
	said := map[string]string{}
	for _, a := range names {
		if !words.Has("group.aspect_" + a) {
			t.Errorf("the kind of decision %s has no name: give it one, group.aspect_%s", a, a)
			continue
		}
		text := words.Say("group.aspect_" + a)
		if said[text] != "" {
			t.Errorf("%s and %s are both called %q", a, said[text], text)
		}
		said[text] = a
		for _, f := range faults {
			if n := (kind{a, f}).name(); strings.ContainsAny(n, "‹%!") {
				t.Errorf("%s, %s: %q", a, f, n)
			}
		}
	}
	for _, k := range words.Keys() {
		if a, ours := strings.CutPrefix(k, "group.aspect_"); ours && !slices.Contains(names, a) {
			t.Errorf("%s belongs to no kind of decision", k)
		}
	}
	for k := range otherwise {
		if !slices.Contains(names, k.aspect) {
			t.Errorf("%s has a word of its own for a fault and is no kind of decision", k.aspect)
		}
	}
}

// The longest names leave room for bars and their figures.
func TestNamesLeaveRoomForBars(t *testing.T) {
	for _, a := range aspects(t) {
		for _, fault := range faults {
			k := kindFigures{kind: kind{a, fault}, each: 100, attempts: 999, critical: guarded{attempts: 999}}
			list := bars(&figures{kinds: []kindFigures{k}, all: part{attempts: 999}}).List
			apart(t, list)
			if w := (ui.Style{Size: chartText}).Width(k.name()); barsTo-w < 300 {
				t.Errorf("%q leaves %.0f for bars", k.name(), barsTo-w)
			}
		}
	}
}

// apart fails where a text lies over the edge of a drawing or over another.
func apart(t *testing.T, list *ui.List) {
	t.Helper()
	var texts []ui.Mark
	for _, m := range list.Marks {
		if m.Kind == ui.KindText {
			texts = append(texts, m)
		}
	}
	if len(texts) < 2 {
		t.Fatalf("only %d texts", len(texts))
	}
	for i, m := range texts {
		if m.Rect.X < -0.5 || m.Rect.Y < -0.5 || m.Rect.Right() > list.Size.X+0.5 || m.Rect.Bottom() > list.Size.Y+0.5 {
			t.Errorf("%q lies over the edge: %v of %v", m.Label, m.Rect, list.Size)
		}
		for _, o := range texts[:i] {
			if m.Rect.X < o.Rect.Right() && o.Rect.X < m.Rect.Right() && m.Rect.Y < o.Rect.Bottom() && o.Rect.Y < m.Rect.Bottom() {
				t.Errorf("%q lies over %q", m.Label, o.Label)
			}
		}
	}
}

// The texts of the charts of points keep apart with as many parts as there can be, each joined of several.
func TestTextsOfPointsKeepApart(t *testing.T) {
	for n := 1; n <= mostParts; n++ {
		var numbers, months []part
		for i := range n {
			numbers = append(numbers, part{from: 90 + 2*i, to: 91 + 2*i, attempts: 3, points: summary{50, 0, 50, 100}})
			months = append(months, part{from: 2031*12 + 3*i, to: 2031*12 + 3*i + 1, attempts: 3, points: summary{50, 0, 50, 100}})
		}
		s := &section{passMark: 75}
		apart(t, dots(s, numbers, "number of the attempt", numberText).List)
		apart(t, dots(s, months, "month of the attempt", monthText).List)
	}
}
