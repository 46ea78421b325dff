// This file tests that screens only show: they run no case and no goroutine, read no state of one, and see keys and pointer through the
// widgets alone.
package house

import (
	"go/ast"
	"strings"
	"testing"
)

// screens are the folders in which nothing but drawing and asking happens.
var screens = []string{"cmd/rouleau-desk/bench/", "cmd/rouleau-desk/home/", "cmd/rouleau-desk/ledgerdesk/", "cmd/rouleau-desk/ui/", "cmd/rouleau-desk/svg/",
	"cmd/rouleau-desk/raster/", "cmd/rouleau-desk/mesh/", "cmd/rouleau-desk/paint/"}

// running are the names of package sim that hold a case or let it go on; what may be done is asked through the view.
var running = map[string]bool{"State": true, "Case": true, "Start": true, "Step": true, "Apply": true, "May": true, "View": true}

// meddling gives what a screen has no business with.
func meddling(f *ast.File) []ast.Node {
	var found []ast.Node
	ast.Inspect(f, func(n ast.Node) bool {
		if g, ok := n.(*ast.GoStmt); ok {
			found = append(found, g) // a frame is drawn by one goroutine
		}
		s, ok := n.(*ast.SelectorExpr)
		if !ok {
			return true
		}
		x, _ := s.X.(*ast.Ident)
		call, _ := s.X.(*ast.CallExpr)
		switch {
		case x != nil && x.Name == "sim" && running[s.Sel.Name]:
			found = append(found, s)
		case call != nil && (s.Sel.Name == "Keys" || s.Sel.Name == "Pointer" || s.Sel.Name == "Touches" || s.Sel.Name == "Runes"):
			if in, ok := call.Fun.(*ast.SelectorExpr); ok && in.Sel.Name == "Input" {
				found = append(found, s)
			}
		}
		return true
	})
	return found
}

func TestScreensOnlyShow(t *testing.T) {
	looked := 0
	for _, f := range goFiles(t) {
		for _, folder := range screens {
			if f.test || !strings.HasPrefix(f.path, folder) {
				continue
			}
			looked++
			for _, n := range meddling(f.syntax) {
				t.Errorf("%s: a screen shows a view and asks for acts; let the session or a widget do this", f.place(n.Pos()))
			}
		}
	}
	if looked < 50 {
		t.Errorf("only %d files of screens were found", looked)
	}
}

func TestMeddlingIsFound(t *testing.T) {
	source := "package p\nfunc F() { sim.Step(); sim.Mix(); var s sim.State; for range c.Input().Keys { x.Keys() }; c.Input().Size.X++; _ = s; go F() }\n"
	if got := len(meddling(parseSource(t, source))); got != 4 {
		t.Errorf("found %d of 4", got)
	}
}
