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

// freeOfProtein is the share of a liquid's calcium that its protein (g/L) does not bind.
func freeOfProtein(protein float64) float64 {
	return 1 - float64(proteinCalciumShare/normalProteinGPerL*min(protein, normalProteinGPerL))
}

// IonisedCalcium is the free calcium (mmol/L) of a liquid with total calcium and citrate in mmol/L and protein in g/L.
func IonisedCalcium(calcium, citrate, protein float64) float64 {
	return ionised(float64(calcium*freeOfProtein(protein)), citrate)
}

// ionised is the free calcium beside citrate (X), of the diffusible calcium Cd, all in mmol/L: the positive root of
// K·f² + f·(1 + K·(X − Cd)) − Cd = 0.
func ionised(cd, citrate float64) float64 {
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
	c := ionisedCalcium / calciumHalfMmolPerL
	c2 := c * c
	c4 := c2 * c2
	c8 := float64(c4 * c4)
	return c8 / ((1 + c8) * (1 + float64(h*h*h)))
}

// clottingOf gives g of a liquid in which heparin and citrate count only by the share mixed (0–1).
func clottingOf(l *Liquid, mixed float64) float64 {
	if l.ML <= 0 {
		return 0
	}
	perML := 1 / l.ML
	perL := 1000 * perML
	diffusible := float64(l.In[Calcium] * perL * freeOfProtein(l.In[Protein]*perL))
	return freedomToClot(mixed*l.In[Heparin]*perML, ionised(diffusible, float64(mixed*l.In[Citrate]*perL)))
}
