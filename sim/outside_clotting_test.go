package sim

// Anticoagulant and clotting against published values; each assertion names its source.

import (
	"math"
	"testing"
)

func TestCitrateSolutionChemistry(t *testing.T) {
	// [S] pharmacopoeia formula of acid citrate dextrose A: 22.0 g/L trisodium citrate dihydrate, 8.0 g/L citric acid
	// monohydrate. Molar masses from the atomic weights of Na 22.990, C 12.011, H 1.008, O 15.999:
	sodiumCitrate := 3*22.990 + 6*12.011 + 9*1.008 + 9*15.999 // Na3C6H5O7·2H2O
	citricAcid := 6*12.011 + 10*1.008 + 8*15.999              // C6H8O7·H2O
	mmol := 1000 * (22.0/sodiumCitrate + 8.0/citricAcid)
	near(t, "citrate of the formula, mmol/L", mmol, CitrateMmolPerL, 0.002)
	pack := CitrateSolution.Of(500)
	near(t, "citrate of a pack, mmol/L", pack.PerL(Citrate), mmol, 0.002)
	within(t, "citrate, mmol/L", pack.PerL(Citrate), 107, 118) // [Q] the source list, citrate in ACD-A
}

func TestIonisedCalciumIsTheRoot(t *testing.T) {
	// against bisection of the equation of the design paper, section 4, over everything a wound can bring together
	for _, calcium := range []float64{0.05, 0.3, 1, 1.7, 2.4, 3.5} {
		for _, citrate := range []float64{0, 0.2, 1, 2.5, 6, 15, 60, 113} {
			for _, protein := range []float64{0, 10, 35, 70, 90} {
				cd := calcium * (1 - 0.45*math.Min(protein, 70)/70)
				low, high := 0.0, cd
				for range 200 {
					mid := (low + high) / 2
					if 1.6*mid*mid+mid*(1+1.6*(citrate-cd))-cd < 0 {
						low = mid
					} else {
						high = mid
					}
				}
				near(t, "ionised calcium", IonisedCalcium(calcium, citrate, protein), low, 1e-12)
			}
		}
	}
	// plasma without citrate: total 2.4 mmol/L gives about 1.1–1.35 mmol/L ionised (from memory, laboratory handbooks)
	within(t, "ionised calcium of plasma, mmol/L", IonisedCalcium(2.4, 0, 70), 1.1, 1.35)
}

// clottedShare is how much of 1 L of blood, mixed and at rest, has clotted.
func clottedShare(heparinIUPerML, citrate, seconds float64) float64 {
	r := TryReservoir(ReservoirTrial{VolumeML: 1000, Hct: 0.40, ProteinGL: 70, CalciumMmolL: 2.4, HeparinIUPerML: heparinIUPerML,
		CitrateMmolL: citrate, ESRMMPerH: 10, Seconds: seconds})
	return r.ClotML / 1000
}

// halfClottedS is when half of it has.
func halfClottedS(citrate float64) float64 {
	low, high := 0.0, 7200.0
	for high-low > 1 {
		mid := (low + high) / 2
		if clottedShare(0, citrate, mid) < 0.5 {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

func TestClottingTime(t *testing.T) {
	// [S] Lee–White test, laboratory texts: whole blood clots in 5–15 min
	s := halfClottedS(0)
	t.Logf("half clotted after %.1f min", s/60)
	within(t, "half of plain blood clotted, min", s/60, 5, 15)
}

// citrateFor finds the citrate, mmol/L, that brings plasma of 2.4 mmol/L calcium and 70 g/L protein to an ionised calcium.
func citrateFor(ionised float64) float64 {
	low, high := 0.0, 50.0
	for range 100 {
		mid := (low + high) / 2
		if IonisedCalcium(2.4, mid, 70) > ionised {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

func TestIonisedCalciumThresholds(t *testing.T) {
	// [S] James & Roche, J Cardiothorac Vasc Anesth 2004;18:581–586: no clot below 0.33, normal clotting above 0.56 mmol/L.
	// 'No clot' is read as: under a hundredth within the 15 min that the longest normal clotting time lasts.
	within(t, "share clotted in 15 min at 0.33 mmol/L", clottedShare(0, citrateFor(0.33), 900), 0, 0.01)
	within(t, "half clotted at 0.56 mmol/L, min", halfClottedS(citrateFor(0.56))/60, 5, 15)
	within(t, "freedom to clot at 0.33", freedomToClot(0, 0.33), 0, 0.10)
	within(t, "freedom to clot at 0.56", freedomToClot(0, 0.56), 0.80, 1)
}

// mixture runs blood with a steady drip through the filter and gives heparin (IU/mL) and citrate (mmol/L) of the whole mixture.
func mixture(agent Solution, per100 float64) (heparin, citrate float64) {
	drops := 25 * per100 / 100 * 20 // 20 drops to the mL
	r := TryFilter(FilterTrial{BloodMLMin: 25, Hct: 0.30, ProteinGL: 50, CalciumMmolL: 1.8, DropsMin: drops, Agent: agent, Primed: true, Minutes: 60})
	return r.HeparinIUPerML * (1 - r.Hct), r.CitrateMmolL * (1 - r.Hct)
}

func TestAnticoagulantInTheMixture(t *testing.T) {
	// [S, D] UKCSAG Technical Factsheet 2: 15–20 mL per 100 mL of blood gives 3.9–5.0 IU/mL of heparin from 30 000 IU in 1 L,
	// and 14–20 mmol/L of citrate from ACD-A
	for _, per100 := range []float64{15, 20} {
		heparin, _ := mixture(HeparinSolution, per100)
		within(t, "heparin in the mixture, IU/mL", heparin, 3.9, 5.0+1e-4)
		_, citrate := mixture(CitrateSolution, per100)
		within(t, "citrate in the mixture, mmol/L", citrate, 14, 20)
	}
}

func TestDropSize(t *testing.T) {
	// [Q] ISO 8536-4:2020 §7.8: 20 drops = 1 mL ± 0.1. 60 drops/min for ten minutes are 30 mL out of the pack.
	b := newBench(t, adultCase(), 1)
	b.play(openBench(HeparinSolution, StandardBowl))
	before := b.s.Bench.Packs[0].Fluid.VolumeML()
	b.wait(600)
	drawn := before - b.s.Bench.Packs[0].Fluid.VolumeML()
	within(t, "600 drops, mL", drawn, 600/20*0.9, 600/20*1.1)
	near(t, "600 drops, mL", drawn, 30, 1e-9)
}
