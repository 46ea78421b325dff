package sim

// Very large losses: plasma and platelets when somebody is told, and fluid that has to be sent for.

import "testing"

// hours is a case that bleeds a litre every quarter of an hour, from a patient with so much fibrinogen (g/L) and with plasma
// that takes so many minutes to thaw.
func hours(t *testing.T, fibrinogen, thawMin float64) *bench {
	c := adultCase()
	c.Patient.FibrinogenGL, c.Patient.ThawTicks = fibrinogen, Ticks(60*thawMin)
	c.Faults.StoreTicks = Ticks(15 * 60)
	c.Packs = append(c.Packs, PackSpec{Solution: Saline, VolumeML: 3000, InStore: true})
	for i := range c.Phases {
		c.Phases[i].BleedMLMin = 60
	}
	c.Events = []EventSpec{{Kind: EventLineLoose, At: Ticks(500), Line: -1, Value: float64(OutletLine)}}
	b := keeping(t, c, 1)
	b.play(openBench(HeparinSolution, StandardBowl))
	b.do(SetDrip, 0, 150)
	return b
}

// giveBack turns ml of the reservoir into given blood, so that a test need not wash for an hour.
func (b *bench) giveBack(ml float64) { b.s.Giving.GivenML += ml }

func hoursCase(t *testing.T) *bench {
	b := hours(t, 3, 20)
	b.until(300)
	b.do(Ask, 0, float64(ThinnedClotting))
	if b.s.Team.Clotting.ToldTick != 0 || !b.happened("clotting_later") {
		t.Error("telling of clotting before anything was given back counts")
	}
	if why := May(&b.c, &b.s, Action{Do: Hang, On: WashHookB, Value: 7}); why != "pack_is_in_store" {
		t.Errorf("hanging a pack that is in the store is answered %q", why)
	}
	b.do(Ask, 0, float64(SendForFluid))
	b.do(Ask, 0, float64(SendForFluid))
	near(t, "saline when it was sent for", b.s.Team.Fetching.LeftML, 6000, 0.001)
	if !b.happened("is_on_the_way") {
		t.Error("sending twice is not answered")
	}
	b.until(1190)
	if b.s.Team.Fetching.Come {
		t.Error("fluid has come at once")
	}
	b.until(1201)
	b.do(Hang, WashHookB, 7)
	b.do(Ask, 0, float64(SendForFluid))
	if !b.happened("store_is_empty") {
		t.Error("an empty store is not told of")
	}
	b.waitFor("a bowlful", 900, func() bool { return b.s.Reservoir.Blood.VolumeML() > 900 })
	b.do(Fill, 0, 0)
	b.waitFor("air from the loose line", 120, func() bool { return b.happened("air_stopped_pump") })
	near(t, "fed through the loose line", b.s.Conduct.LooseFedML, airStopsML/looseAir, 0.01)
	var v Seen
	if View(&b.c, &b.s, &v); v.Bench.FoundLoose[OutletLine] {
		t.Error("a line that works loose is seen by itself")
	}
	b.do(Inspect, OutletLine, 0)
	if View(&b.c, &b.s, &v); !v.Bench.FoundLoose[OutletLine] {
		t.Error("looking at a loose line does not find it")
	}
	b.wait(4)
	b.do(Connect, OutletLine, 0)
	b.wait(7)
	b.do(ClearLine, 0, 0)
	b.wait(11)
	b.do(Fill, 0, 0)
	b.waitFor("a stopped pump", 300, func() bool { return b.s.Bowl.FillFraction() > 0.9 || b.s.Pump.Mode == PumpIdle })
	if b.s.Conduct.LooseFedML > airStopsML/looseAir*1.01 || b.s.Bowl.AirML > 0 {
		t.Errorf("air still comes, though the line is firm: %.0f mL were fed through it loose", b.s.Conduct.LooseFedML)
	}
	return b
}

// TestPlasmaComesInTimeToWhoTells: told after a litre, the anaesthetist has plasma running before the wound oozes, and the
// fibrinogen stays higher than where nobody told.
func TestPlasmaComesInTimeToWhoTells(t *testing.T) {
	play := func(tell bool) *bench {
		b := hours(t, 3, 20)
		b.until(1500)
		b.giveBack(1000)
		if tell {
			b.do(Ask, 0, float64(ThinnedClotting))
		}
		b.until(4400)
		return b
	}
	told, untold := play(true), play(false)
	if k := &told.s.Team.Clotting; k.Doses == 0 || k.ToldAtML != 1000 || told.happened("oozes_everywhere") {
		t.Errorf("told: %+v", *k)
	}
	if got, without := told.s.Patient.Blood.PerL(Fibrinogen), untold.s.Patient.Blood.PerL(Fibrinogen); got < without+0.3 {
		t.Errorf("fibrinogen %.2f g/L where it was told, %.2f where not", got, without)
	}
	if told.s.Patient.BleedFactor > untold.s.Patient.BleedFactor || told.s.Patient.ShedML > untold.s.Patient.ShedML {
		t.Errorf("shed %.0f mL where it was told, %.0f where not", told.s.Patient.ShedML, untold.s.Patient.ShedML)
	}
	if untold.s.Patient.BleedFactor <= 1 {
		t.Error("the loss was too small to thin anything, so this test shows nothing")
	}
	// one dose by hand: 15 mL/kg of plasma for 75 kg, 2.5 g/L of fibrinogen, and what went in is what left the store
	full := donorPlasma(&told.c.Patient)
	near(t, "a dose", told.c.Patient.plasmaDoseML(), 1125, 1e-9)
	near(t, "what left the store", full.In[Fibrinogen]-told.s.Stores.Plasma.In[Fibrinogen], (full.ML-told.s.Stores.Plasma.ML)*0.0025, 1e-6)
}

// TestOozingIsNoticedLate: without being told, plasma is ordered only when the wound oozes.
func TestOozingIsNoticedLate(t *testing.T) {
	b := hours(t, 1.1, 20)
	b.until(1200)
	if !b.happened("oozes_everywhere") || b.s.Team.Clotting.Doses != 1 || b.s.Team.Clotting.LeftML > 0 {
		t.Errorf("at 20 minutes: %+v", b.s.Team.Clotting)
	}
	b.until(2000)
	if !b.happened("gives_plasma") {
		t.Error("nothing thawed in half an hour")
	}
	none := hours(t, 1.1, 0)
	none.until(1200)
	if none.s.Team.Clotting != (Clotting{}) || none.happened("oozes_everywhere") {
		t.Error("a case without plasma orders some")
	}
}
