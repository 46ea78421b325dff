// This file: the natural logarithm, and taking a number apart into exponent and significand.

package guarded

import "math"

// Log gives the natural logarithm of x.
//
// Log(NaN) = NaN, Log(x < 0) = NaN, Log(±0) = -Inf, Log(+Inf) = +Inf, Log(1) = +0; subnormal numbers are taken at their value.
//
// With x = 2^k·(1+f) and s = f/(2+f), log(1+f) = 2s + s·R(s·s). Method and coefficients: FreeBSD msun e_log.c, as given in
// the notes of the Go standard library's math package.
func Log(x float64) float64 {
	const (
		l1 = 6.666666666666735130e-01
		l2 = 3.999999999940941908e-01
		l3 = 2.857142874366239149e-01
		l4 = 2.222219843214978396e-01
		l5 = 1.818357216161805012e-01
		l6 = 1.531383769920937332e-01
		l7 = 1.479819860511658591e-01
	)
	switch {
	case x != x || x < 0:
		return math.NaN()
	case x == 0:
		return math.Inf(-1)
	case x > math.MaxFloat64:
		return x
	}
	m, k, _ := split(x)
	f := m - 1

	s := f / (2 + f)
	z := float64(s * s)
	w := float64(z * z)
	odd := float64(z * (l1 + float64(w*(l3+float64(w*(l5+float64(w*l7)))))))
	even := float64(w * (l2 + float64(w*(l4+float64(w*l6)))))
	half := float64(0.5 * float64(f*f))
	return float64(k*ln2Hi) - ((half - (float64(s*(half+(odd+even))) + float64(k*ln2Lo))) - f)
}

// From this row of logRows on (1.4140625, just under √2) a significand is halved, so that it lies on both sides of 1.
const rowsBelowHalving = 53

// split gives x = m·2^k exactly, with m between about √½ and √2, for a positive finite x, and the row of logRows that serves m.
// The exponent comes back as a float64, ready for use.
func split(x float64) (m, k float64, row uint64) {
	bits := math.Float64bits(x)
	exponent := bits>>52 - 1023
	if bits>>52 == 0 {
		bits = math.Float64bits(float64(x * (1 << 54)))
		exponent = bits>>52 - 1023 - 54
	}
	frac := bits & fracMask
	row = frac >> 45
	halve := (row + 128 - rowsBelowHalving) >> 7 // 0 or 1: a branch here would be mispredicted every other time
	return math.Float64frombits((1023-halve)<<52 | frac), float64(int64(exponent + halve)), row
}
