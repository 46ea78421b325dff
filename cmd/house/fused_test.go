// This file tests that no product of the core enters a sum without having been rounded: there a processor that can
// multiply and add in one go would round once instead of twice. The language allows it even across statements,
// unless the product is converted: float64(x*y) + z.
package house

import (
	"go/ast"
	"go/constant"
	"go/token"
	"go/types"
	"math"
	"testing"
)

// carriers are variables and functions of a package that may hand on a product as it came from the multiplier,
// with the product.
type carriers map[types.Object]ast.Node

// fusable finds the sums into which an unrounded product goes: written there, held by a local variable, or
// returned by a function of the same package. Products in fields and parameters are left to the compiler's own
// report, which cmd/test.sh reads.
func fusable(p typedPackage) []finding {
	held := carriers{}
	for before := -1; before != len(held); { // a carrier may hold what another one held
		before = len(held)
		for _, f := range p.files {
			p.collect(f, held)
		}
	}
	var found []finding
	tell := func(n ast.Node, operands ...ast.Expr) {
		for _, x := range operands {
			if made := p.product(x, held); made != nil {
				found = append(found, finding{n, "an unrounded product enters a sum: write float64(x*y) where it is made, " + p.place(made)})
				return
			}
		}
	}
	for _, f := range p.files {
		ast.Inspect(f, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.BinaryExpr:
				switch {
				case p.isConstant(n):
				case isSum(n.Op) || n.Op == token.MUL && (p.isTwo(n.X) || p.isTwo(n.Y)): // 2*x is compiled to x+x
					tell(n, n.X, n.Y)
				}
			case *ast.AssignStmt:
				if isSum(n.Tok) {
					tell(n, n.Lhs[0], n.Rhs[0])
				}
			case *ast.IncDecStmt:
				tell(n, n.X)
			}
			return true
		})
	}
	return found
}

func isSum(op token.Token) bool {
	return op == token.ADD || op == token.SUB || op == token.ADD_ASSIGN || op == token.SUB_ASSIGN
}

// collect adds the carriers of one file.
func (p typedPackage) collect(f *ast.File, held carriers) {
	hold := func(target *ast.Ident, value ast.Expr) {
		made, o := p.product(value, held), p.info.ObjectOf(target)
		if made != nil && o != nil && held[o] == nil {
			held[o] = made
		}
	}
	var function types.Object
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.FuncDecl:
			function = p.info.Defs[n.Name]
		case *ast.FuncLit:
			p.collectLiteral(n, held)
			return false
		case *ast.ReturnStmt:
			if len(n.Results) == 1 && function != nil && held[function] == nil {
				if made := p.product(n.Results[0], held); made != nil {
					held[function] = made
				}
			}
		case *ast.AssignStmt:
			switch {
			case n.Tok == token.MUL_ASSIGN || n.Tok == token.QUO_ASSIGN:
				if target, ok := n.Lhs[0].(*ast.Ident); ok && p.isFloat(target) && (n.Tok == token.MUL_ASSIGN || p.isExactReciprocal(n.Rhs[0])) {
					held[p.info.ObjectOf(target)] = n
				}
			case (n.Tok == token.ASSIGN || n.Tok == token.DEFINE) && len(n.Lhs) == len(n.Rhs):
				for i := range n.Lhs {
					if target, ok := n.Lhs[i].(*ast.Ident); ok {
						hold(target, n.Rhs[i])
					}
				}
			}
		case *ast.ValueSpec:
			for i, value := range n.Values {
				if len(n.Names) == len(n.Values) {
					hold(n.Names[i], value)
				}
			}
		}
		return true
	})
}

// collectLiteral does the same inside a function without a name, whose returns are nobody's but its own.
func (p typedPackage) collectLiteral(literal *ast.FuncLit, held carriers) {
	body := &ast.File{Name: ast.NewIdent("literal"), Decls: []ast.Decl{
		&ast.FuncDecl{Name: ast.NewIdent("literal"), Type: literal.Type, Body: literal.Body},
	}}
	p.collect(body, held)
}

// product gives the multiplication from which the value may come unrounded, or nil.
func (p typedPackage) product(x ast.Expr, held carriers) ast.Node {
	x = ast.Unparen(x)
	if !p.isFloat(x) || p.isConstant(x) {
		return nil
	}
	switch x := x.(type) {
	case *ast.UnaryExpr:
		if x.Op == token.SUB || x.Op == token.ADD {
			return p.product(x.X, held)
		}
	case *ast.BinaryExpr:
		// The compiler turns division by a power of two into a product.
		if x.Op == token.MUL || x.Op == token.QUO && p.isExactReciprocal(x.Y) {
			return x
		}
	case *ast.Ident:
		return held[p.info.ObjectOf(x)]
	case *ast.CallExpr:
		if f := p.called(x); f != nil {
			return held[f]
		}
	}
	return nil
}

func (p typedPackage) isFloat(x ast.Expr) bool {
	t := p.info.TypeOf(x)
	if t == nil {
		return false
	}
	b, ok := t.Underlying().(*types.Basic)
	return ok && b.Info()&(types.IsFloat|types.IsComplex) != 0
}

func (p typedPackage) isConstant(x ast.Expr) bool { return p.info.Types[x].Value != nil }

// constantFloat gives the value of a constant, or NaN.
func (p typedPackage) constantFloat(x ast.Expr) float64 {
	value := p.info.Types[x].Value
	if value == nil || value.Kind() != constant.Int && value.Kind() != constant.Float {
		return math.NaN()
	}
	f, _ := constant.Float64Val(value)
	return f
}

func (p typedPackage) isTwo(x ast.Expr) bool { return p.constantFloat(x) == 2 }

// isExactReciprocal tells whether the divisor is a constant power of two.
func (p typedPackage) isExactReciprocal(x ast.Expr) bool {
	fraction, _ := math.Frexp(math.Abs(p.constantFloat(x)))
	return fraction == 0.5
}

func TestNoProductEntersASumUnrounded(t *testing.T) {
	for _, p := range core(t) {
		for _, f := range fusable(p) {
			t.Errorf("%s: %s", p.place(f.node), f.why)
		}
	}
}

func TestFusableIsFound(t *testing.T) {
	p, bad := sample(t, `package sample

type volume float64

const k = 2.0

func product(x, y float64) float64 { return x * y }

func rounded(x, y float64) float64 { return float64(x * y) }

func F(x, y, z float64, i, j int, v volume, s struct{ a float64 }) float64 {
	z = x*y + z // bad
	z = z - (x * y) // bad
	z = -(x * y) + z // bad
	z = -x*y - z // bad
	z += x * y // bad
	z -= k * x // bad
	z = 1 + x/4 // bad
	z = 1 + x/3
	z = float64(x*y) + z
	z += float64(x * y)
	_ = (x + y) * z
	z = x*y*z/3 + 1
	v = v*v + 1 // bad
	i = i*j + 1
	z = k*k + x
	t := x * y
	z = t + 1 // bad
	u := t
	z -= u // bad
	w := float64(x * y)
	z = w + 1
	q := x
	q *= y
	q++ // bad
	z = product(x, y) + z // bad
	z = rounded(x, y) + z
	s.a += x * y // bad
	_ = 2 * (x * y) // bad
	_ = 2 * x * y
	_ = 3 * (x * y)
	z = max(x*y, 1) + float64(t)
	each := func(r float64) float64 { return r * r }
	return each(x*y + 1) // bad
}
`)
	compare(t, p, bad, fusable(p))
}
