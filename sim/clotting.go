package sim

import "math"

// Whether a liquid clots: ionised calcium against citrate and protein, and heparin.

const (
	citrateAffinityLPerMmol = 1.6  // K [C]: formation constant of calcium citrate as it acts in blood
	proteinCalciumShare     = 0.45 // share of calcium bound at normal protein [S] clinical biochemistry
	normalProteinGPerL      = 70.0 // [S] 60–80 g/L, clinical biochemistry tables
	heparinHalfIUPerML      = 0.8  // [C]
	calciumHalfMmolPerL     = 0.45 // midway between no clot below 0.33 and normal above 0.56 mmol/L [S] James & Roche 2004
)

// IonisedCalcium is the free calcium (mmol/L) of a liquid with total calcium and citrate in mmol/L and protein in g/L: the
// positive root of K·f² + f·(1 + K·(X − Cd)) − Cd = 0, Cd the diffusible calcium.
func IonisedCalcium(calcium, citrate, protein float64) float64 {
	cd := float64(calcium * (1 - proteinCalciumShare*math.Min(protein, normalProteinGPerL)/normalProteinGPerL))
	if cd <= 0 {
		return 0
	}
	b := 1 + float64(citrateAffinityLPerMmol*(citrate-cd))
	root := math.Sqrt(float64(b*b) + float64(4*citrateAffinityLPerMmol*cd))
	if b < 0 {
		return (root - b) / (2 * citrateAffinityLPerMmol)
	}
	return 2 * cd / (b + root) // the form of the root without cancellation for each sign of b
}

// freedomToClot is g: 1 for blood with nothing added, towards 0 as heparin (IU/mL) or lack of calcium forbid clotting.
func freedomToClot(heparinIUPerML, ionisedCalcium float64) float64 {
	h := heparinIUPerML / heparinHalfIUPerML
	gh := 1 / (1 + float64(h*h*h))
	c := ionisedCalcium / calciumHalfMmolPerL
	c2 := c * c
	c4 := c2 * c2
	c8 := float64(c4 * c4)
	return gh * c8 / (1 + c8)
}

// clottingOf gives g of a liquid in which heparin and citrate count only by the share mixed (0–1).
func clottingOf(l *Liquid, mixed float64) float64 {
	if l.ML <= 0 {
		return 0
	}
	return freedomToClot(mixed*l.PerML(Heparin), IonisedCalcium(l.PerL(Calcium), mixed*l.PerL(Citrate), l.PerL(Protein)))
}
