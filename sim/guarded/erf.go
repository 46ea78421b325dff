// This file: the error function and the normal distribution function.

package guarded

import "math"

const (
	// Where the approximations of erf change.
	smallEnd  = 0.84375
	middleEnd = 1.25
	nearEnd   = 1 / 0.35
	erfIsOne  = 6.0

	erfAtOne = 8.45062911510467529297e-01 // erf(1) to 24 bits, which the middle approximation is taken from
)

// Erf gives the error function of x.
//
// Erf(NaN) = NaN, Erf(±Inf) = ±1, Erf(±0) = ±0; beyond ±6 it is ±1.
//
// Ranges and coefficients here and below: FreeBSD msun s_erf.c, as given in the notes of the Go standard library's math package.
func Erf(x float64) float64 {
	t := math.Abs(x)
	var y float64
	switch {
	case x != x:
		return math.NaN()
	case t < smallEnd:
		return x + float64(x*erfSmall(float64(t*t)))
	case t < middleEnd:
		y = erfAtOne + erfMiddle(t-1)
	case t >= erfIsOne:
		y = 1
	default:
		head := headOf(t)
		y = 1 - erfcTail(t, float64(head*head), float64((t-head)*(t+head)))/t
	}
	return math.Copysign(y, x)
}

// NormalCDF gives the share of a standard normal distribution that lies below x.
//
// The far lower tail keeps its relative accuracy down to about -37.5, is subnormal below that and 0 below about -38.5.
// NormalCDF(NaN) = NaN, NormalCDF(-Inf) = 0, NormalCDF(+Inf) = 1; 1 above about 8.3.
func NormalCDF(x float64) float64 {
	const (
		rootHalfHi = 0x1.6a09e6p-1
		rootHalfLo = 1/math.Sqrt2 - rootHalfHi
	)
	if x != x {
		return math.NaN()
	}
	if x < -39 {
		return 0
	}
	if x > 9 {
		return 1
	}
	// The distribution is ½·erfc(t), t = |x|/√2, or what that lacks of 1. The rounding of t would cost several ulp below 0,
	// so what it lost is given back.
	a := math.Abs(x)
	head := headOf(a)
	t := float64(a * (1 / math.Sqrt2))
	lost := (float64(head*rootHalfHi) - t) + (float64((a-head)*rootHalfHi) + float64(a*rootHalfLo))
	var lower float64
	switch {
	case t < 0.25:
		return 0.5 + math.Copysign(float64(0.5*(t+float64(t*erfSmall(float64(t*t))))), x)
	case t < smallEnd:
		lower = float64(0.5 * ((1 - t) - (float64(t*erfSmall(float64(t*t))) + lost)))
	case t < middleEnd:
		lower = float64(0.5 * ((1 - erfAtOne) - erfMiddle((t-1)+lost)))
	default:
		// From x itself, not from t: squaring a rounded t would cost hundreds of ulp in the far tail.
		squareHi := float64(0.5 * float64(head*head))
		squareLo := float64(0.5 * float64((a-head)*(a+head)))
		lower = erfcTail(t, squareHi, squareLo) / float64(a*math.Sqrt2)
	}
	if x > 0 {
		return 1 - lower
	}
	return lower
}

// erfSmall gives erf(t)/t - 1 from z = t·t, for t below smallEnd.
func erfSmall(z float64) float64 {
	const (
		p0 = 1.28379167095512558561e-01
		p1 = -3.25042107247001499370e-01
		p2 = -2.84817495755985104766e-02
		p3 = -5.77027029648944159157e-03
		p4 = -2.37630166566501626084e-05
		q1 = 3.97917223959155352819e-01
		q2 = 6.50222499887672944485e-02
		q3 = 5.08130628187576562776e-03
		q4 = 1.32494738004321644526e-04
		q5 = -3.96022827877536812320e-06
	)
	p := p0 + float64(z*(p1+float64(z*(p2+float64(z*(p3+float64(z*p4)))))))
	q := 1 + float64(z*(q1+float64(z*(q2+float64(z*(q3+float64(z*(q4+float64(z*q5)))))))))
	return p / q
}

// erfMiddle gives erf(1+s) - erfAtOne, for 1+s between smallEnd and middleEnd.
func erfMiddle(s float64) float64 {
	const (
		p0 = -2.36211856075265944077e-03
		p1 = 4.14856118683748331666e-01
		p2 = -3.72207876035701323847e-01
		p3 = 3.18346619901161753674e-01
		p4 = -1.10894694282396677476e-01
		p5 = 3.54783043256182359371e-02
		p6 = -2.16637559486879084300e-03
		q1 = 1.06420880400844228286e-01
		q2 = 5.40397917702171048937e-01
		q3 = 7.18286544141962662868e-02
		q4 = 1.26171219808761642112e-01
		q5 = 1.36370839120290507362e-02
		q6 = 1.19844998467991074170e-02
	)
	p := p0 + float64(s*(p1+float64(s*(p2+float64(s*(p3+float64(s*(p4+float64(s*(p5+float64(s*p6)))))))))))
	q := 1 + float64(s*(q1+float64(s*(q2+float64(s*(q3+float64(s*(q4+float64(s*(q5+float64(s*q6)))))))))))
	return p / q
}

// erfcTail gives t·erfc(t) for t from middleEnd on; squareHi + squareLo is t·t to more than one number can hold.
func erfcTail(t, squareHi, squareLo float64) float64 {
	s := 1 / float64(t*t)
	var correction float64
	if t < nearEnd {
		correction = tailNear(s)
	} else {
		correction = tailFar(s)
	}
	rest := (correction - 0.5625) - squareLo
	hi := rest - squareHi
	return expSum(hi, rest-(hi+squareHi))
}

// tailNear gives log(t·erfc(t)) + t² + 0.5625 from s = 1/t², for t between middleEnd and nearEnd.
func tailNear(s float64) float64 {
	const (
		p0 = -9.86494403484714822705e-03
		p1 = -6.93858572707181764372e-01
		p2 = -1.05586262253232909814e+01
		p3 = -6.23753324503260060396e+01
		p4 = -1.62396669462573470355e+02
		p5 = -1.84605092906711035994e+02
		p6 = -8.12874355063065934246e+01
		p7 = -9.81432934416914548592e+00
		q1 = 1.96512716674392571292e+01
		q2 = 1.37657754143519042600e+02
		q3 = 4.34565877475229228821e+02
		q4 = 6.45387271733267880336e+02
		q5 = 4.29008140027567833386e+02
		q6 = 1.08635005541779435134e+02
		q7 = 6.57024977031928170135e+00
		q8 = -6.04244152148580987438e-02
	)
	p := p0 + float64(s*(p1+float64(s*(p2+float64(s*(p3+float64(s*(p4+float64(s*(p5+float64(s*(p6+float64(s*p7)))))))))))))
	q := 1 + float64(s*(q1+float64(s*(q2+float64(s*(q3+float64(s*(q4+float64(s*(q5+float64(s*(q6+float64(s*(q7+float64(s*q8)))))))))))))))
	return p / q
}

// tailFar is tailNear for t from nearEnd on.
func tailFar(s float64) float64 {
	const (
		p0 = -9.86494292470009928597e-03
		p1 = -7.99283237680523006574e-01
		p2 = -1.77579549177547519889e+01
		p3 = -1.60636384855821916062e+02
		p4 = -6.37566443368389627722e+02
		p5 = -1.02509513161107724954e+03
		p6 = -4.83519191608651397019e+02
		q1 = 3.03380607434824582924e+01
		q2 = 3.25792512996573918826e+02
		q3 = 1.53672958608443695994e+03
		q4 = 3.19985821950859553908e+03
		q5 = 2.55305040643316442583e+03
		q6 = 4.74528541206955367215e+02
		q7 = -2.24409524465858183362e+01
	)
	p := p0 + float64(s*(p1+float64(s*(p2+float64(s*(p3+float64(s*(p4+float64(s*(p5+float64(s*p6)))))))))))
	q := 1 + float64(s*(q1+float64(s*(q2+float64(s*(q3+float64(s*(q4+float64(s*(q5+float64(s*(q6+float64(s*q7)))))))))))))
	return p / q
}
