// This file tests what may import what: cmd → scoring → scenarios → sim, and the window alone opens a display.
package house

import (
	"slices"
	"strings"
	"testing"
)

const (
	module = "rouleau/"
	engine = "github.com/hajimehoshi/ebiten"
	window = "rouleau/cmd/rouleau-desk"
)

// systems are those for which the tree must build; files for one of them are seen only when asked for it.
var systems = [][]string{
	{"GOOS=linux", "GOARCH=amd64"},
	{"GOOS=windows", "GOARCH=amd64"},
	{"GOOS=js", "GOARCH=wasm"},
}

// mayImport says which parts of the house each part may use. A command may use everything but another's
// inside; the widgets and drawings of the window serve the pages of the command line too.
var mayImport = map[string][]string{
	"sim":       {"sim"},
	"scenarios": {"scenarios", "sim"},
	"scoring":   {"scoring", "scenarios", "sim", "assets"}, // of assets the catalogue of words, which imports nothing of ours
	"assets":    {"assets"},
	"cmd":       {"cmd", "scoring", "scenarios", "sim", "assets"},
}

// forbiddenImport says why a package must not import another, or nothing.
func forbiddenImport(from, to string) string {
	if strings.HasPrefix(to, engine) && from != window && !strings.HasPrefix(from, window+"/") {
		return "only the window may open a display"
	}
	if !strings.HasPrefix(to, module) {
		return ""
	}
	part := func(path string) string {
		p, _, _ := strings.Cut(strings.TrimPrefix(path, module), "/")
		return p
	}
	if !slices.Contains(mayImport[part(from)], part(to)) {
		return "imports go one way: cmd → scoring → scenarios → sim"
	}
	return ""
}

func TestImportsGoOneWay(t *testing.T) {
	for _, system := range systems {
		for _, p := range goList(t, system, "./...") {
			for _, to := range p.Imports {
				if why := forbiddenImport(p.ImportPath, to); why != "" {
					t.Errorf("%s: %s imports %s: %s", system[0], p.ImportPath, to, why)
				}
			}
		}
	}
}

func TestForbiddenImportsAreFound(t *testing.T) {
	for _, c := range []struct {
		from, to string
		bad      bool
	}{
		{"rouleau/sim", "rouleau/scenarios", true},
		{"rouleau/sim", "rouleau/sim/guarded", false},
		{"rouleau/scenarios", "rouleau/scoring", true},
		{"rouleau/scoring", "rouleau/sim", false},
		{"rouleau/scoring", "rouleau/cmd/rouleau", true},
		{"rouleau/sim", "rouleau/assets", true},
		{"rouleau/cmd/rouleau", engine + "/v2", true},
		{"rouleau/cmd/rouleau-desk/paint", engine + "/v2/vector", false},
	} {
		if got := forbiddenImport(c.from, c.to) != ""; got != c.bad {
			t.Errorf("%s imports %s: got %v, want %v", c.from, c.to, got, c.bad)
		}
	}
}

// Merely importing the engine panics where there is no display, so nothing else may reach it by any way.
func TestOnlyTheWindowReachesTheEngine(t *testing.T) {
	for _, system := range systems {
		reached := false
		for _, p := range goList(t, system, "./...") {
			for _, dep := range p.Deps {
				if !strings.HasPrefix(dep, engine) {
					continue
				}
				reached = true
				if p.ImportPath != window && !strings.HasPrefix(p.ImportPath, window+"/") {
					t.Errorf("%s: %s depends on %s", system[0], p.ImportPath, dep)
				}
				if len(p.TestGoFiles)+len(p.XTestGoFiles) > 0 {
					t.Errorf("%s: %s reaches the engine and so cannot be tested without a display: test what it paints in a package that does not", system[0], p.ImportPath)
				}
				break
			}
		}
		if !reached {
			t.Errorf("%s: no package reaches the engine, so this test looks for the wrong name", system[0])
		}
	}
}

// The core knows no files, no clock, no chance but its own, and no mathematics that is not guarded.
var notInCore = []string{
	"math/rand", "math/rand/v2", "math/cmplx", "crypto/rand", "hash/maphash", "runtime", "unsafe", "os/exec", "net", "net/http", "gonum.org/v1/gonum",
}

var notInSim = []string{"os", "io/fs", "path/filepath", "time", "embed", "gopkg.in/yaml.v3"}

func TestCoreImports(t *testing.T) {
	for _, p := range goList(t, nil, "./sim/...", "./scenarios/...", "./scoring/...") {
		forbidden := notInCore
		if p.ImportPath == "rouleau/sim" || strings.HasPrefix(p.ImportPath, "rouleau/sim/") {
			forbidden = append(slices.Clone(notInCore), notInSim...)
		}
		for _, to := range p.Imports {
			for _, f := range forbidden {
				if to == f || strings.HasPrefix(to, f+"/") {
					t.Errorf("%s imports %s: the core reads nothing but its state and its inputs", p.ImportPath, to)
				}
			}
		}
	}
}
