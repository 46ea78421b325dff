package sim

// What is wrong with some blood stays wrong with it, wherever it is moved.

import "testing"

func TestABreachGoesWithTheBloodThroughReservoirAndFreshSets(t *testing.T) {
	b := setUp(t, nil)
	b.s.breach(ProcessingSet, &b.h)
	b.do(Fill, 0, 0)
	b.wait(60)
	b.do(StopAll, 0, 0)
	b.waitFor("the brake", 20, func() bool { return b.s.Bowl.BrakeUntil == 0 })
	b.do(SendBack, 0, 0)
	b.waitFor("an empty bowl", 120, func() bool { return b.s.Pump.Mode == PumpIdle })
	b.do(Clamp, OutletClamp, 0) // or the reservoir runs out while nothing is connected
	b.do(ReplaceSet, ProcessingSet, 0)
	b.wait(91)
	b.do(Connect, OutletLine, 0)
	b.wait(7)
	b.do(Clamp, OutletClamp, 1)
	fillWashStop(b)
	b.do(Empty, 0, 0)
	b.waitFor("emptying", 120, func() bool { return b.s.Pump.Mode == PumpIdle })
	if bag := &b.s.Bags[0]; bag.Flaws.BreachedML < 0.9*bag.Fluid.VolumeML() {
		t.Errorf("%.0f of %.0f mL are known to have been in an unsterile set", bag.Flaws.BreachedML, bag.Fluid.VolumeML())
	}
}

func TestDrawingBackTheRestKeepsWhatWasGivenOnTheBooks(t *testing.T) {
	b := setUp(t, nil)
	fillWashStop(b)
	b.do(Empty, 0, 0)
	b.waitFor("emptying", 120, func() bool { return b.s.Pump.Mode == PumpIdle })
	bag, first := &b.s.Bags[0], &b.s.Cycles[0]
	came, product := bag.CameML, first.ProductML
	b.do(Hook, Bag(0), 1)
	b.wait(16)
	b.do(GiveRate, 0, 100)
	b.waitFor("half the bag given", 300, func() bool { return bag.GivenML > came/2 })
	b.do(GiveRate, 0, 0)
	b.do(Unhook, 0, 0)
	b.wait(9)
	b.do(DrawBack, 0, 0)
	b.waitFor("the rest drawn back", 120, func() bool { return b.s.Pump.Mode == PumpIdle })
	near(t, "of what came, the given half stays", bag.CameML, bag.GivenML, 0.01)
	near(t, "of the cycle's product the same share", first.ProductML/product, bag.GivenML/came, 0.01)
}

func TestTellingHonestlyIsNoFalseAlarm(t *testing.T) {
	b := setUp(t, nil)
	b.do(Declare, 0, float64(IncidentAir))
	if b.s.Conduct.FalseAlarms != 1 {
		t.Fatalf("air told of without any: %d false alarms", b.s.Conduct.FalseAlarms)
	}
	b.do(Clamp, WashClampB, 1)
	b.do(AutoStop, 0, 1)
	b.do(Fill, 0, 0)
	b.waitFor("the interface", 600, func() bool { return b.s.Pump.Mode == PumpIdle })
	b.do(Wash, 0, 0)
	b.wait(10)
	b.do(Declare, 0, float64(IncidentAir))
	if b.s.Conduct.FalseAlarms != 1 {
		t.Error("air that stopped the pump was told of and counted as a false alarm")
	}
}

func TestReturnedPotassiumCitrateAndHaemoglobinAreNoticed(t *testing.T) {
	for _, c := range []struct {
		put  Solute
		much float64
		key  string
	}{{Potassium, 15, "rhythm_changes"}, {Citrate, 12, "calcium_is_low"}, {FreeHb, 8, "urine_is_dark"}} {
		b := newBench(t, adultCase(), 1)
		b.until(2)
		rate, pressure := b.s.Patient.HeartRate, b.s.Patient.PressureMmHg
		b.s.Patient.Blood.In[c.put] += c.much
		b.wait(5)
		if !b.happened(c.key) {
			t.Errorf("%s did not come", c.key)
		}
		if c.put == Potassium && (b.s.Patient.HeartRate >= rate || b.s.Patient.PressureMmHg >= pressure) {
			t.Error("potassium acts neither on rhythm nor on pressure")
		}
		if c.put == Citrate && b.s.Patient.PressureMmHg >= pressure {
			t.Error("low ionised calcium does not act on pressure")
		}
	}
}

func TestTheRegulatorGivesNothingUntilItIsTested(t *testing.T) {
	c := adultCase()
	c.Faults.NoVacuum = true
	b := newBench(t, c, 1)
	b.play(script{{0, Decide, 0, float64(CollectOnly)}, {0, OpenSet, CollectionSet, 0}, {46, Connect, SuctionLine, 0}, {53, Connect, VacuumLine, 0},
		{60, SetVacuum, 0, 120}, {60, Route, 0, float64(ToReservoir)}})
	b.wait(2)
	if v := b.s.VacuumMmHg(&b.c); v != 0 || !b.s.Alarms.On[AlarmNoVacuum] {
		t.Errorf("%g mmHg from a regulator that is not plugged in, alarm %v", v, b.s.Alarms.On[AlarmNoVacuum])
	}
	b.do(TestVacuum, 0, 0)
	if v := b.s.VacuumMmHg(&b.c); v != 120 {
		t.Errorf("%g mmHg after the test found it", v)
	}
}
