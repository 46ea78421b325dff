// This file: powers. The logarithm is carried in two numbers (a high part and a correction), since an error in it is
// multiplied by the exponent before it reaches the result.

package guarded

import "math"

// From here on x^y is 0, 1 or +Inf, as |log x| is at least 2^-53 for any x but 1.
const hugeExponent = 1 << 64

// Pow gives x to the power y, for x >= 0. Unlike math.Pow it does not know negative bases, of which the simulator has none.
//
// In this order: Pow(x, ±0) = 1 for any x; Pow(1, y) = 1 for any y; NaN if either is NaN or x < 0 (-0 counts as 0);
// Pow(0, y) = 0 for y > 0, +Inf for y < 0; Pow(+Inf, y) = +Inf for y > 0, 0 for y < 0;
// Pow(x, ±Inf) = +Inf or 0 as the side of 1 on which x lies demands. Too large results are +Inf, too small ones subnormal or 0.
// Within 1 ulp, but not exact: Pow(x, 2) need not equal x·x.
func Pow(x, y float64) float64 {
	switch {
	case y == 0 || x == 1:
		return 1
	case x != x || y != y || x < 0:
		return math.NaN()
	case x == 0 || x > math.MaxFloat64:
		return zeroOrInf((x == 0) != (y > 0))
	case y >= hugeExponent || y <= -hugeExponent:
		return zeroOrInf((x < 1) != (y > 0))
	}
	logHi, logLo := logPair(x)

	yHead := headOf(y)
	hi := float64(yHead * logHi)
	lo := float64((y-yHead)*logHi) + float64(y*logLo)
	sum := hi + lo
	switch {
	case sum > expOver:
		return math.Inf(1)
	case sum < expUnder:
		return 0
	}
	return expSum(sum, lo-(sum-hi))
}

// zeroOrInf gives the two ends of the range of a power.
func zeroOrInf(inf bool) float64 {
	if inf {
		return math.Inf(1)
	}
	return 0
}

// logPair gives log x as hi + lo, good to about 2^-65 of its value, hi having 26 significant bits, for a positive finite x.
//
// With x = 2^k·m and r = m·inverse - 1 from the table: log x = k·ln 2 - log(inverse) + r - r²/2 + r³/3 - …, |r| < 2^-6.7. The first
// four are carried in two parts each. Choosing r by table follows P. T. P. Tang, ACM Transactions on Mathematical Software
// 1990;16:378–400, the splitting of sums and products T. J. Dekker, Numerische Mathematik 1971;18:224–242 (both from memory).
func logPair(x float64) (hi, lo float64) {
	m, k, i := split(x)
	row := &logRows[i&127]

	// Exact: the products because of the few bits of inverse, the sum because r has no more than 53 bits.
	mHead := headOf(m)
	r := (float64(mHead*row.inverse) - 1) + float64((m-mHead)*row.inverse)

	// r³/3 - r⁴/4 + … - r¹⁰/10: the next term is below 2^-70 of r.
	r2 := float64(r * r)
	r4 := float64(r2 * r2)
	low := (1.0/3 - float64(r*(1.0/4))) + float64(r2*(1.0/5-float64(r*(1.0/6))))
	high := (1.0/7 - float64(r*(1.0/8))) + float64(r2*(1.0/9-float64(r*(1.0/10))))
	series := float64(float64(r*r2) * (low + float64(r4*high)))

	// r²/2 in two parts, the first exact.
	rHead := headOf(r)
	halfHi := float64(0.5 * float64(rHead*rHead))
	halfLo := float64(0.5 * float64((r-rHead)*(r+rHead)))

	// The sum, and what each addition rounded off.
	base := float64(k*ln2Hi) + row.hi
	sum := base + r
	rShare := sum - base
	lost := (base - (sum - rShare)) + (r - rShare)
	total := sum - halfHi
	lost += (sum - total) - halfHi
	small := (lost + (float64(k*ln2Lo) + row.lo)) + (series - halfLo)
	hi = headOf(total + small)
	return hi, small + (total - hi)
}

// Pow25 gives x to the power 2.5 as x·x·√x, good to 2 ulp where neither x² nor the result leaves the normal range.
// Pow25(NaN) = NaN, Pow25(x < 0) = NaN, Pow25(±0) = 0, Pow25(+Inf) = +Inf.
func Pow25(x float64) float64 {
	switch {
	case x != x || x < 0:
		return math.NaN()
	case x == 0:
		return 0
	}
	return float64(x * x * math.Sqrt(x))
}
