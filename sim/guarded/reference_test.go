// This file: slow reference values in arbitrary precision, and the distance of a float64 from them in units in the last place.

package guarded

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
)

const refPrec = 256

func bigOf(x float64) *big.Float { return new(big.Float).SetPrec(refPrec).SetFloat64(x) }

func newBig(prec uint) *big.Float { return new(big.Float).SetPrec(prec) }

// bigExp is the plain series on x/2^40, squared 40 times.
func bigExp(x *big.Float) *big.Float {
	const halvings = 40
	prec := x.Prec() + 2*halvings
	r := newBig(prec).SetMantExp(newBig(prec).Set(x), -halvings)
	term, sum := newBig(prec).SetInt64(1), newBig(prec).SetInt64(1)
	for n := int64(1); ; n++ {
		term.Mul(term, r).Quo(term, newBig(prec).SetInt64(n))
		if term.Sign() == 0 || term.MantExp(nil) < -int(prec) {
			break
		}
		sum.Add(sum, term)
	}
	for range halvings {
		sum.Mul(sum, sum)
	}
	return sum.SetPrec(x.Prec())
}

// bigLog mends a float64 logarithm twice: y + 2·(x-e^y)/(x+e^y) has three times as many right digits as y.
func bigLog(x float64) *big.Float {
	if x == 1 {
		return newBig(refPrec)
	}
	y := bigOf(math.Log(x))
	if x < 0x1p-1022 { // where math.Log is wrong on some processors
		frac, exp := math.Frexp(x)
		y = bigOf(math.Log(frac) + float64(exp)*math.Ln2)
	}
	for range 2 {
		e := bigExp(y)
		up := newBig(refPrec).Sub(bigOf(x), e)
		down := e.Add(e, bigOf(x))
		y.Add(y, up.Mul(up, bigOf(2)).Quo(up, down))
	}
	return y
}

func bigPow(x, y float64) *big.Float {
	l := bigLog(x)
	return bigExp(l.Mul(l, bigOf(y)))
}

// bigHalfCDF gives NormalCDF(x) - ½ = φ(x)·(x + x³/3 + x⁵/15 + …), with bits to spare for the subtraction in the far tail.
func bigHalfCDF(x float64) *big.Float {
	prec := uint(refPrec + int(x*x))
	xx := newBig(prec).SetFloat64(x)
	xx.Mul(xx, xx)
	term := newBig(prec).SetFloat64(x)
	sum := newBig(prec).Set(term)
	for n := int64(3); term.Sign() != 0 && term.MantExp(nil) > sum.MantExp(nil)-int(prec); n += 2 {
		term.Mul(term, xx).Quo(term, newBig(prec).SetInt64(n))
		sum.Add(sum, term)
	}
	density := bigExp(newBig(prec).Mul(xx, newBig(prec).SetFloat64(-0.5)))
	return sum.Mul(sum, density).Quo(sum, bigRootTwoPi(prec))
}

// bigRootTwoPi takes π from J. Machin's formula 16·arctan(1/5) - 4·arctan(1/239).
func bigRootTwoPi(prec uint) *big.Float {
	arctanOfInverse := func(n int64) *big.Float {
		power := newBig(prec).Quo(newBig(prec).SetInt64(1), newBig(prec).SetInt64(n))
		sum := newBig(prec).Set(power)
		for k := int64(3); power.MantExp(nil) > -int(prec); k += 2 {
			power.Quo(power, newBig(prec).SetInt64(-n*n))
			sum.Add(sum, newBig(prec).Quo(power, newBig(prec).SetInt64(k)))
		}
		return sum
	}
	a := arctanOfInverse(5)
	b := arctanOfInverse(239)
	twoPi := newBig(prec).Sub(a.Mul(a, bigOf(32)), b.Mul(b, bigOf(8)))
	return twoPi.Sqrt(twoPi)
}

func bigCDF(x float64) *big.Float {
	half := bigHalfCDF(x)
	return half.Add(half, bigOf(0.5))
}

// bigErf uses erf(x) = 2·(NormalCDF(x·√2) - ½), as a series in x itself.
func bigErf(x float64) *big.Float {
	prec := uint(refPrec + 2*int(x*x))
	doubled := newBig(prec).SetFloat64(x)
	doubled.Mul(doubled, doubled).Mul(doubled, bigOf(2))
	term := newBig(prec).SetFloat64(x)
	sum := newBig(prec).Set(term)
	for n := int64(3); term.Sign() != 0 && term.MantExp(nil) > sum.MantExp(nil)-int(prec); n += 2 {
		term.Mul(term, doubled).Quo(term, newBig(prec).SetInt64(n))
		sum.Add(sum, term)
	}
	density := bigExp(newBig(prec).Mul(doubled, newBig(prec).SetFloat64(-0.5)))
	twoOverRootPi := newBig(prec).Quo(newBig(prec).Mul(newBig(prec).Sqrt(bigOf(2).SetPrec(prec)), bigOf(2)), bigRootTwoPi(prec))
	return sum.Mul(sum, density).Mul(sum, twoOverRootPi)
}

// ulps gives |got - want| in units in the last place of want (of the smallest subnormal where want is subnormal).
func ulps(got float64, want *big.Float) float64 {
	w, _ := want.Float64()
	if math.IsInf(w, 0) || w == 0 {
		if got == w {
			return 0
		}
		return math.Inf(1)
	}
	if math.IsNaN(got) || math.IsInf(got, 0) {
		return math.Inf(1)
	}
	exponent := max(want.MantExp(nil)-53, -1074)
	d := newBig(refPrec).Sub(newBig(refPrec).SetFloat64(got), want)
	f, _ := d.SetMantExp(d, -exponent).Float64()
	return math.Abs(f)
}

// worst keeps the largest error of a run of comparisons.
type worst struct {
	err  float64
	at   [2]float64
	runs int
}

func (w *worst) see(err float64, at ...float64) {
	w.runs++
	if err > w.err || math.IsNaN(err) {
		w.err = err
		w.at = [2]float64{}
		copy(w.at[:], at)
	}
}

func (w *worst) check(t *testing.T, name string, limit float64) {
	t.Helper()
	t.Logf("%s: worst %.3f ulp at %v of %d points", name, w.err, w.at, w.runs)
	if !(w.err <= limit) || w.runs == 0 {
		t.Errorf("%s: %.3f ulp at %v, more than %v", name, w.err, w.at, limit)
	}
}

// spread gives n points of [lo, hi]: half on a grid with both ends, half at random; logarithmically if geometric.
func spread(n int, lo, hi float64, geometric bool) []float64 {
	rng := rand.New(rand.NewPCG(7, uint64(n)))
	points := make([]float64, n)
	for i := range points {
		u := float64(i) / float64(n-1)
		if i%2 == 1 && i != n-1 {
			u = rng.Float64()
		}
		if geometric {
			points[i] = math.Exp(math.Log(lo) + float64((math.Log(hi)-math.Log(lo))*u))
		} else {
			points[i] = lo + float64((hi-lo)*u)
		}
	}
	return points
}
