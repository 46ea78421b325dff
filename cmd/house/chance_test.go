// This file tests that the core calls nothing that may answer differently elsewhere or next time: mathematics
// that depends on the processor, the clock, chance from outside, the order of a map, and goroutines.
package house

import (
	"go/ast"
	"go/types"
	"testing"
)

// exact are the functions of package math that give the same bits on every processor. The others do not, or
// nobody promises it; sim/guarded has exp, log, pow and erf of our own.
var exact = map[string]bool{
	"Abs": true, "Ceil": true, "Copysign": true, "Dim": true, "Float32bits": true, "Float32frombits": true, "Float64bits": true,
	"Float64frombits": true, "Floor": true, "Frexp": true, "Inf": true, "IsInf": true, "IsNaN": true, "Ldexp": true, "Max": true,
	"Min": true, "Mod": true, "Modf": true, "NaN": true, "Nextafter": true, "Remainder": true, "Round": true, "RoundToEven": true,
	"Signbit": true, "Sqrt": true, "Trunc": true,
}

// clock are the functions of package time that read or follow the clock of the machine, or its time zone.
var clock = map[string]bool{
	"Now": true, "Since": true, "Until": true, "Sleep": true, "After": true, "AfterFunc": true, "Tick": true, "NewTicker": true,
	"NewTimer": true, "LoadLocation": true,
}

// changing finds what may answer differently elsewhere or next time.
func changing(p typedPackage) []finding {
	var found []finding
	sorted := map[ast.Expr]bool{} // calls that give the keys of a map to be sorted at once
	for _, f := range p.files {
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr:
				if o := p.called(n); o != nil && o.Pkg() != nil && o.Pkg().Path() == "slices" && len(n.Args) > 0 {
					switch o.Name() {
					case "Sorted", "SortedFunc", "SortedStableFunc":
						if inner, ok := ast.Unparen(n.Args[0]).(*ast.CallExpr); ok {
							sorted[ast.Unparen(inner.Fun)] = true
						}
					}
				}
			case *ast.GoStmt:
				found = append(found, finding{n, "a goroutine: the order of work must be written down"})
			case *ast.SelectStmt:
				found = append(found, finding{n, "select chooses by chance"})
			case *ast.RangeStmt:
				if _, ok := p.info.TypeOf(n.X).Underlying().(*types.Map); ok {
					found = append(found, finding{n, "the order of a map is not ours: range over slices.Sorted(maps.Keys(m))"})
				}
			case *ast.SelectorExpr:
				if why := changingUse(p.info.Uses[n.Sel]); why != "" && !sorted[n] {
					found = append(found, finding{n, why})
				}
			}
			return true
		})
		for _, spec := range f.Imports {
			if spec.Name != nil && spec.Name.Name == "." {
				found = append(found, finding{spec, "an import into the own names hides where a function comes from"})
			}
		}
	}
	return found
}

// changingUse says why an object of another package must not be used in the core, or nothing.
func changingUse(o types.Object) string {
	f, ok := o.(*types.Func)
	if !ok || f.Pkg() == nil {
		return ""
	}
	method := f.Signature().Recv() != nil
	switch name := f.Name(); {
	case name == "NormFloat64" || name == "ExpFloat64":
		return name + " differs between processors: draw it with guarded functions"
	case f.Pkg().Path() == "math" && !exact[name]:
		return "math." + name + " may differ in its last bit between processors: use rouleau/sim/guarded"
	case f.Pkg().Path() == "time" && clock[name] && !method:
		return "time." + name + " reads the machine's clock: count ticks"
	case f.Pkg().Path() == "golang.org/x/exp/rand" && !method && name != "New" && name != "NewSource":
		return "rand." + name + " draws from a generator that is not in the state"
	case f.Pkg().Path() == "maps" && (name == "Keys" || name == "Values" || name == "All"):
		return "maps." + name + " gives an order that is not ours: sort it at once with slices.Sorted"
	case (name == "MapRange" || name == "MapKeys") && method && f.Pkg().Path() == "reflect":
		return "reflect." + name + " gives an order that is not ours"
	}
	return ""
}

// called gives the function that a call names, or nil for a conversion, a built-in or a value.
func (p typedPackage) called(call *ast.CallExpr) *types.Func {
	fun := ast.Unparen(call.Fun)
	switch x := fun.(type) { // of a generic function, given types or not
	case *ast.IndexExpr:
		fun = x.X
	case *ast.IndexListExpr:
		fun = x.X
	}
	var name *ast.Ident
	switch x := fun.(type) {
	case *ast.Ident:
		name = x
	case *ast.SelectorExpr:
		name = x.Sel
	default:
		return nil
	}
	f, _ := p.info.Uses[name].(*types.Func)
	return f
}

func TestCoreAnswersTheSameEverywhere(t *testing.T) {
	for _, p := range core(t) {
		for _, f := range changing(p) {
			t.Errorf("%s: %s", p.place(f.node), f.why)
		}
	}
}

func TestChangingIsFound(t *testing.T) {
	p, bad := sample(t, `package sample

import (
	"maps"
	m "math"
	"reflect"
	"slices"
	"time"

	"golang.org/x/exp/rand"
)

type table map[string]int

func F(t table, g *rand.Rand) {
	_ = m.Exp(1) // bad
	_ = m.Sqrt(2)
	_ = m.MaxFloat64 + m.Pi
	hidden := m.Pow // bad
	_ = hidden
	_ = m.FMA(1, 2, 3) // bad
	_ = time.Now() // bad
	_ = 3 * time.Second
	_ = rand.Float64() // bad
	_ = rand.New(rand.NewSource(1)).Float64()
	_ = g.NormFloat64() // bad
	for k := range t { // bad
		_ = k
	}
	for k := range maps.Keys(t) { // bad
		_ = k
	}
	for _, k := range slices.Sorted(maps.Keys(t)) {
		_ = k
	}
	for i := range 3 {
		_ = i
	}
	_ = reflect.ValueOf(t).MapKeys() // bad
	go F(t, g) // bad
	select {} // bad
}
`)
	compare(t, p, bad, changing(p))
}
