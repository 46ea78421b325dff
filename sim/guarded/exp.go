// Package guarded holds the few transcendental functions the simulator needs, built so that every processor gives the
// same bits: Exp, Log, Pow, Pow25, Erf, NormalCDF, and chance (Uniform, NormalPair, Normal).
//
// This file: the rules of the package, and the exponential.
//
// The standard library's versions are assembly on some processors, and even portable Go may be compiled to a fused
// multiply-add, which rounds once where separate operations round twice. Here only + - * / and math.Sqrt on float64,
// and moves between a float and its bits, are used, all of which IEEE 754 fixes to the last bit. Every product that may
// reach a sum is written float64(a*b): the Go specification forbids fusing across an explicit conversion. Products that
// are returned carry it too, since the function may be inlined into a caller's sum.
//
// A NaN result is always the one of math.NaN, whatever the argument's payload, as processors disagree on NaN bits.
// Finite results hold 4 ulp of the true value (subnormal results: 4 units of the smallest subnormal); the tests of the
// package state on which domains that is checked.
package guarded

import "math"

const (
	// ln 2 in two parts; the first has 33 significant bits, so that its product with any exponent is exact.
	ln2Hi = 6.93147180369123816490e-01
	ln2Lo = 1.90821492927058770002e-10
	log2E = 1.44269504088896338700e+00

	// Adding this leaves the nearest whole number in the low bits of the significand (|value| < 2^31).
	roundShift = 3 << 51

	// Beyond these the result is infinite or rounds to zero, with some room: the exact edge is found by the rounding of
	// the last multiplication.
	expOver  = 710.0
	expUnder = -746.0

	nearZero = 1.0 / (1 << 28)

	signBit  = 1 << 63
	fracMask = 1<<52 - 1
	headMask = 1<<64 - 1<<27 // keeps 26 significant bits: the product of two such numbers is exact
)

// Exp gives e to the power x.
//
// Exp(NaN) = NaN, Exp(+Inf) = +Inf, Exp(-Inf) = 0, Exp(±0) = 1; above 709.78… it is +Inf, below -745.13… it is 0,
// and between -745.13… and -708.39… subnormal.
func Exp(x float64) float64 {
	switch {
	case x != x:
		return math.NaN()
	case x > expOver:
		return math.Inf(1)
	case x < expUnder:
		return 0
	case -nearZero < x && x < nearZero:
		return 1 + x
	}
	return expSum(x, 0)
}

// expSum gives e^(hi+lo), |lo| far below |hi|, hi between expUnder and expOver. The argument is reduced to
// r = hi + lo - k·ln 2, |r| <= ln 2 / 2, and e^r comes from a rational function in r·r.
// Method and coefficients: FreeBSD msun e_exp.c, as given in the notes of the Go standard library's math package.
func expSum(hi, lo float64) float64 {
	const (
		p1 = 1.66666666666666657415e-01
		p2 = -2.77777777770155933842e-03
		p3 = 6.61375632143793436117e-05
		p4 = -1.65339022054652515390e-06
		p5 = 4.13813679705723846039e-08
	)
	shifted := float64(hi*log2E) + roundShift
	k := int(int32(math.Float64bits(shifted)))
	kf := shifted - roundShift

	head := hi - float64(kf*ln2Hi)
	tail := float64(kf*ln2Lo) - lo
	r := head - tail
	z := float64(r * r)
	zz := float64(z * z)
	poly := float64(z*(p1+float64(z*p2))) + float64(float64(z*zz)*(p3+float64(z*p4)+float64(zz*p5)))
	c := r - poly
	y := 1 - ((tail - float64(r*c)/(2-c)) - head)
	return scale(y, k)
}

// scale gives y·2^k for a y near 1 and -1100 < k <= 1024, rounding once.
func scale(y float64, k int) float64 {
	switch {
	case k > 1023:
		return float64(y * 2 * pow2(k-1))
	case k < -1022:
		return float64(y * pow2(k+1000) * pow2(-1000))
	}
	return float64(y * pow2(k))
}

// pow2 gives 2^k for a k of a normal number (-1022 to 1023).
func pow2(k int) float64 { return math.Float64frombits(uint64(k+1023) << 52) }

// headOf gives the first 26 significant bits of x; x - headOf(x) is exact.
func headOf(x float64) float64 { return math.Float64frombits(math.Float64bits(x) & headMask) }
