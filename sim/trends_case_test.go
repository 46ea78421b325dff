package sim

// Trends that must come out of whole cases, whatever the equations: the other rows of the design paper, section 11, one test each.

import "testing"

// [S] Waters, Lee & Karafa, Anesth Analg 2002;95:1312–1317: mean 57 %, 60 % modelled, all losses counted.
func TestTrendWholeCaseRecovery(t *testing.T) {
	o := playAdult(t, manner{matched: true, mixed: true, pool: true})
	within(t, "red cells back over red cells shed", o.recovery, 0.55, 0.65)
	within(t, "product haematocrit", o.productHct, 0.55, 0.65)
	if o.bowls != 3 { // the case of the design paper, section 10
		t.Errorf("%d bowls, want 3", o.bowls)
	}
}

// [S] Haynes et al., Vox Sang 2005;88:244–248: 31 % (24–39) of what a case recovers can come from washed swabs.
func TestTrendRinsedSwabsGiveMore(t *testing.T) {
	plain := playAdult(t, manner{matched: true, mixed: true, pool: true})
	rinsed := playAdult(t, manner{matched: true, mixed: true, pool: true, rinsed: true})
	within(t, "share of the recovered cells that comes from swabs", 1-plain.recovery/rinsed.recovery, 0.20, 0.39)
}

// [S] Waters et al., Anesth Analg 2007;104:684–687; Pohlmann et al., ASAIO J 2009;55:469–473; An, Choi & Ahn 2011: vacuum and
// air lyse together, rising with each; dilution lowers it.
func TestTrendVacuumAirAndDilution(t *testing.T) {
	if !(suckedLysis(t, 100, true) < suckedLysis(t, 200, true) && suckedLysis(t, 200, true) < suckedLysis(t, 300, true)) {
		t.Error("more vacuum does not lyse more")
	}
	for _, vacuum := range []float64{100, 150, 300} {
		if !(suckedLysis(t, vacuum, false) > suckedLysis(t, vacuum, true)) {
			t.Errorf("%g mmHg: skimming, with more air, does not lyse more than a pool", vacuum)
		}
	}
	if suckedLysis(t, 300, true) > suckedLysis(t, 150, false) {
		t.Error("vacuum counts for more than air") // [S] An, Choi & Ahn, Korean J Anesthesiol 2011
	}
	falls(t, "haemolysis, the more diluted", SuctionLysis(200, 0.5, 0.45), SuctionLysis(200, 0.5, 0.40), SuctionLysis(200, 0.5, 0.20), SuctionLysis(200, 0.5, 0.10))
	thin := playAdult(t, manner{matched: true, hold: true, change: func(c *Case) {
		for i := range c.Phases {
			c.Phases[i].IrrigationMLMin = 2 * c.Phases[i].BleedMLMin
		}
	}})
	plain := playAdult(t, manner{matched: true, hold: true, change: func(c *Case) {
		for i := range c.Phases {
			c.Phases[i].IrrigationMLMin = 0
		}
	}})
	if !(thin.lysed < plain.lysed) {
		t.Errorf("irrigated %g mL of cells broken, undiluted %g mL", thin.lysed, plain.lysed)
	}
}

// standing is what a reservoir of 1 L clots in hours at rest, mL, with anticoagulant at a share of the blood.
func standing(agent Solution, per100, hours float64) float64 {
	t := ReservoirTrial{VolumeML: 1000, Hct: 0.36, ProteinGL: 60, CalciumMmolL: 2.1, ESRMMPerH: 10, Seconds: 3600 * hours}
	mixed := 1 + per100/100
	t.Hct, t.ProteinGL, t.CalciumMmolL = t.Hct/mixed, t.ProteinGL/mixed, t.CalciumMmolL/mixed
	plasma := (1 - t.Hct) * mixed
	if agent == HeparinSolution {
		t.HeparinIUPerML = HeparinIUPerML * per100 / 100 / plasma
	} else {
		t.CitrateMmolL = CitrateMmolPerL * per100 / 100 / plasma
	}
	return TryReservoir(t).ClotML
}

// [S] UKCSAG Technical Factsheet 2: 15–20 mL per 100 mL of blood; [P] for hours, and citrate has more to spare.
func TestTrendEnoughAnticoagulantKeepsTheReservoirFree(t *testing.T) {
	for _, agent := range []Solution{HeparinSolution, CitrateSolution} {
		for _, per100 := range []float64{15, 20} {
			within(t, "clot in four hours of "+agent.String()+", mL", standing(agent, per100, 4), 0, 1)
		}
		case75 := playAdult(t, manner{matched: true, agent: agent, mixed: true, pool: true})
		within(t, "clot in a whole case with the drip matched, mL", case75.clotML, 0, 1)
	}
	// at a quarter of the dose citrate still holds and heparin does not
	within(t, "clot at 4 mL of citrate per 100, mL", standing(CitrateSolution, 4, 4), 0, 1)
	within(t, "clot at 4 mL of heparin per 100, mL", standing(HeparinSolution, 4, 4), 20, 1000)
}

// [S] UKCSAG Factsheet 2 has one drop a second as the least; in brisk bleeding it does not do with heparin, and does with citrate.
func TestTrendOneDropASecondInBriskBleeding(t *testing.T) {
	heparin := playAdult(t, manner{times: 4, mixed: true, pool: true})
	matched := playAdult(t, manner{times: 4, matched: true, mixed: true, pool: true})
	citrate := playAdult(t, manner{times: 4, mixed: true, pool: true, agent: CitrateSolution})
	within(t, "clot with heparin, one drop a second, mL", heparin.clotML, 20, 1000)
	within(t, "clot with heparin, drip matched, mL", matched.clotML, 0, 1)
	within(t, "clot with citrate, one drop a second, mL", citrate.clotML, 0, 1)
	if heparin.recovery >= matched.recovery {
		t.Errorf("clot costs nothing: recovery %.3f against %.3f", heparin.recovery, matched.recovery)
	}
}

// The drip forgotten (design paper, section 10, a rough run): clot, a blocked outlet and a poor recovery.
func TestTrendForgottenDrip(t *testing.T) {
	good := playAdult(t, manner{matched: true, mixed: true, pool: true})
	bad := playAdult(t, manner{matched: true, mixed: true, pool: true, stopDripAtS: 25 * 60})
	if bad.clotML < outletBlockML || bad.s.outletLimit() > 0 || bad.recovery > good.recovery-0.05 {
		t.Errorf("clot %g mL, outlet %g mL/min, recovery %.3f against %.3f", bad.clotML, bad.s.outletLimit(), bad.recovery, good.recovery)
	}
}

// Never mixing and skimming (the same section): a third of the reservoir clear, the lysis more than half as much again.
func TestTrendNeverMixedAndSkimmed(t *testing.T) {
	good := playAdult(t, manner{matched: true, mixed: true, pool: true})
	bad := playAdult(t, manner{matched: true})
	within(t, "clear share at its most, mixed", good.clearShare, 0, 0.15)
	within(t, "clear share at its most, never mixed", bad.clearShare, 0.25, 0.6)
	within(t, "lysis, skimmed over pooled", bad.lysed/good.lysed, 1.5, 2.5)
}

// [S] UKCSAG education workbook: calcium-containing fluid blocks citrate; it bites when irrigation is several times the blood.
// Heparin's own inhibition does not change.
func TestTrendCalciumInTheIrrigation(t *testing.T) {
	// blood with 15 mL of citrate per 100, then irrigation: the ionised calcium of the mixture
	ionised := func(irrigation Solution, times float64) float64 {
		f := plainBlood(100, 0.40, 70, 2.4, 0, 0)
		agent, fluid := CitrateSolution.Of(15), irrigation.Of(100*times)
		moveAll(&f, &agent)
		moveAll(&f, &fluid)
		return IonisedCalcium(f.PerL(Calcium), f.PerL(Citrate), f.PerL(Protein))
	}
	for _, times := range []float64{1, 2, 4, 8} {
		if ionised(BalancedCrystalloid, times) <= ionised(Saline, times) {
			t.Errorf("%g times the blood: calcium in the irrigation takes nothing from citrate's margin", times)
		}
	}
	// [S] James & Roche 2004: no clot below 0.33, normal clotting above 0.56 mmol/L
	within(t, "ionised calcium with as much irrigation as blood", ionised(BalancedCrystalloid, 1), 0, 0.33)
	within(t, "ionised calcium with twice as much", ionised(BalancedCrystalloid, 2), 0, 0.33)
	within(t, "ionised calcium with eight times as much", ionised(BalancedCrystalloid, 8), 0.56, 2)
	within(t, "the same with saline", ionised(Saline, 8), 0, 0.33)
	gh := func(ionised float64) float64 { return freedomToClot(4, ionised) / freedomToClot(0, ionised) }
	near(t, "heparin's own inhibition", gh(0.6), gh(1.3), 1e-12)
}

// [S] Merkel et al.: washed cells bring no plasma, so platelets and fibrinogen fall as loss goes on.
func TestTrendWashedCellsDiluteClotting(t *testing.T) {
	// brisk loss, everything given back as it comes: the haematocrit is held up and the clotting factors are not
	o := playAdult(t, manner{times: 3, matched: true, mixed: true, pool: true, give: true})
	p := &o.s.Patient
	if o.s.Giving.GivenML < 1000 {
		t.Fatalf("only %g mL given back", o.s.Giving.GivenML)
	}
	platelets := 1000 * p.Blood.In[Platelets] / p.Blood.VolumeML() / 250
	fibrinogen := p.Blood.PerL(Fibrinogen) / 3
	kept := p.Blood.Hct() / 0.40
	if !(platelets < kept-0.1 && fibrinogen < kept-0.1) {
		t.Errorf("of the start are left: haematocrit %.2f, platelets %.2f, fibrinogen %.2f", kept, platelets, fibrinogen)
	}
	less := playAdult(t, manner{times: 1, matched: true, mixed: true, pool: true, give: true})
	falls(t, "fibrinogen with the loss", 3, less.s.Patient.Blood.PerL(Fibrinogen), p.Blood.PerL(Fibrinogen))
	if !(p.BleedFactor > 1 && less.s.Patient.BleedFactor == 1) {
		t.Errorf("bleeding rises by %.3f after the large loss and %.3f after the small one", p.BleedFactor, less.s.Patient.BleedFactor)
	}
}
