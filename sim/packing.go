package sim

import (
	"math"

	"rouleau/sim/guarded"
)

// How well the spinning bowl catches cells, and how densely they pack.

const (
	captureSpread = 0.35 // σ of the logarithm of cell speed [C]
	captureFringe = 0.05 // [C] cm: a face this near to the inner wall catches half
	packSlip      = 0.70 // [C]
	packTimeS     = 20.0 // [C]
	swellFactor   = 1.3  // [C] a bed swells only when the flow exceeds this times what it holds
	packPower     = 1 / 2.5
)

var swellShare = guarded.Pow(1/swellFactor, packPower) // what φeq's term becomes at flow/1.3

// Captured is η, the share of incoming cells that the bed keeps when surface load gives the mean cell the chance x: the
// expectation of min(1, x·S) for S lognormal with mean 1.
func Captured(x float64) float64 {
	if x <= 0 {
		return 0
	}
	if x > 20 {
		return 1
	}
	a := (captureSpread*captureSpread/2 - guarded.Log(x)) / captureSpread
	return float64(x*guarded.NormalCDF(a-captureSpread)) + 1 - guarded.NormalCDF(a)
}

// bedForces is what packing and capture need to know of one bed.
type bedForces struct {
	shape  BowlShape
	height float64
}

func forcesOf(shape BowlShape) bedForces { return bedForces{shape, shape.HeightCM()} }

// capture is η for a feed at q mL/s, haematocrit h and protein p (g/L) onto a bed of bedML.
func (f bedForces) capture(q, h, p, bedML float64) float64 {
	if q <= 0 {
		return 1
	}
	r := f.shape.FaceCM(bedML)
	gap := atLeast(0, r-f.shape.InnerCM)
	x := StokesCMPerS(p) * f.shape.RCF(r) * guarded.Pow25(1-h) * (2 * math.Pi * r * f.height) / q * gap / (gap + captureFringe)
	return Captured(x)
}

// packRate is dφ/dt for a bed of bedML at packing phi through which ql mL/s of liquid flow, with protein p (g/L) around the
// cells.
func (f bedForces) packRate(ql, p, bedML, phi float64) float64 {
	target, swollen := packingLimit, packingLimit
	if ql > 0 {
		rm := (f.shape.FaceCM(bedML) + f.shape.OuterCM) / 2
		u := packSlip * ql / (2 * math.Pi * rm * f.height)
		t := guarded.Pow(u/(StokesCMPerS(p)*f.shape.RCF(rm)), packPower)
		target = clamp(1-t, leastPacking, packingLimit)
		swollen = clamp(1-float64(t*swellShare), leastPacking, packingLimit)
	}
	switch {
	case phi < target:
		return (target - phi) / packTimeS
	case phi > swollen:
		return (swollen - phi) / packTimeS
	}
	return 0
}
