package sim

// Whole invented cases that between them do everything a hand can do and meet everything a scenario can bring, with the
// sums checked at every tick.

import "testing"

// covered adds up over the cases of this file which acts were accepted and which events came.
type covered struct {
	acts   [verbCount]int
	events [EventLineLoose + 1]int
}

func (v *covered) add(b *bench) {
	for i, n := range b.accepted {
		v.acts[i] += n
	}
	for i := range b.c.Events {
		if b.s.Team.Fired&(1<<i) != 0 {
			v.events[b.c.Events[i].Kind]++
		}
	}
}

func TestConserveWholeCases(t *testing.T) {
	var all covered
	t.Run("careful", func(t *testing.T) { all.add(carefulCase(t)) })
	t.Run("careless", func(t *testing.T) { all.add(carelessCase(t)) })
	t.Run("child, citrate", func(t *testing.T) { all.add(childCase(t)) })
	t.Run("birth", func(t *testing.T) { all.add(birthCase(t)) })
	t.Run("circuit, pump", func(t *testing.T) { all.add(circuitCase(t)) })
	t.Run("hours", func(t *testing.T) { all.add(hoursCase(t)) })
	for v := NoVerb + 1; v < verbCount; v++ {
		if all.acts[v] == 0 {
			t.Errorf("no case does %v", v)
		}
	}
	for k := EventSay; k <= EventLineLoose; k++ {
		if all.events[k] == 0 {
			t.Errorf("no case brings event %d", k)
		}
	}
}

// carefulCase: rinsed swabs, automatic steps, a bag given back through a reaction that is seen and mended, donor cells, drugs.
func carefulCase(t *testing.T) *bench {
	c := adultCase()
	c.Patient.TransfusionHbGDL = 12.5
	c.Phases[1].FatMLPerML = 0.002
	c.Events = []EventSpec{
		{Kind: EventHeparin, At: Ticks(300), Line: -1, Value: 5000},
		{Kind: EventProtamine, At: Ticks(1500), Line: -1, Value: 20},
		{Kind: EventReaction, When: WhenGiving, Threshold: 40, Line: -1},
		{Kind: EventAskLoss, At: Ticks(1800), Line: -1, Within: Ticks(120)},
		{Kind: EventAsk, At: Ticks(2000), Line: -1, Value: 1},
		{Kind: EventRequestBlood, At: Ticks(2400), Line: -1},
	}
	b := keeping(t, c, 1)
	b.play(openBench(HeparinSolution, StandardBowl))
	b.play(automaticBowls(200, 900))
	b.play(script{
		{600, Ask, 0, float64(LetItPool)}, {700, Mix, 0, 0}, {900, SetDrip, 0, 90}, {1000, Sample, ReservoirPart, 0},
		{1020, Sample, PatientPart, 0}, {1200, Mix, 0, 0}, {1300, Ask, 0, float64(RinseSwabs)}, {1500, Ask, 0, float64(SkimAsYouGo)},
		{1850, EstimateLoss, 0, 700}, {2010, Answer, 0, 1}, {2020, Note, 0, 0}, {2030, Inspect, WashHookA, 0}})
	b.waitFor("a first bowlful in the bag", 3000, func() bool { return b.s.Bags[0].Fluid.VolumeML() > 150 })
	b.do(Ask, 0, float64(ClinicianComes))
	b.wait(31)
	for _, v := range []struct {
		do    Verb
		on    Part
		value float64
		hands float64
	}{{MixBag, Bag(0), 0, 11}, {Sample, Bag(0), 0, 11}, {Label, Bag(0), LabelComplete, 16}, {ExpelAir, Bag(0), 0, 11},
		{HandOver, Bag(0), HandoverComplete, 21}, {Identify, Bag(0), 2, 16}, {NewBag, 0, 0, 16}, {Hook, Bag(0), 1, 16}, {GiveRate, 0, 60, 60},
		{Watch, 0, 0, 6}, {GiveRate, 0, 0, 240}, {Declare, 0, float64(IncidentReaction), 0}, {GiveRate, 0, 100, 0}} {
		b.waitFor("an idle pump", 600, func() bool { return v.do != NewBag || b.s.Pump.Mode == PumpIdle && !b.s.Bowl.Spinning })
		b.do(v.do, v.on, v.value)
		b.wait(v.hands)
	}
	b.until(4501)
	b.do(GiveRate, 0, 0)
	b.do(AutoFillAt, 0, 0)
	if b.s.Bowl.Spinning || b.s.Pump.Mode != PumpIdle {
		b.do(StopAll, 0, 0)
	}
	b.waitFor("the bowl at rest", 20, func() bool { return b.s.Bowl.BrakeUntil == 0 })
	b.do(ClearLine, 0, 0)
	b.wait(11)
	b.do(TakeDown, 0, 0)
	b.wait(61)
	b.do(Reconcile, 0, 100)
	b.do(EndCase, 0, 0)
	if !b.s.Ended || b.s.Giving.GivenML < 50 || b.s.Patient.DonorUnits == 0 || b.s.Team.RinseTimes == 0 || b.s.CycleUsed < 2 {
		t.Errorf("the case did not cover what it is for: given %g mL, donor units %d, rinses %d, bowls %d", b.s.Giving.GivenML,
			b.s.Patient.DonorUnits, b.s.Team.RinseTimes, b.s.CycleUsed)
	}
	return b
}

// carelessCase: what is left open runs out, wash lines draw air, a full waste bag, sterile water in wound and bowl, an
// agent in the wound, over-filling, drawing back, sending back, a leak, a lost supply, a squeezed bag, a thrown one.
func carelessCase(t *testing.T) *bench {
	c := adultCase()
	c.Faults.OpenClamps[OutletClamp], c.Faults.OpenClamps[SparePort], c.Faults.OpenClamps[WasteDrain] = true, true, true
	c.Faults.OpenClamps[WashClampB] = true
	c.Faults.LooseLines[ProductLine], c.Faults.LooseLines[VacuumLine] = true, true
	c.Faults.TouchChance, c.Faults.WasteCapacityML = 1, 1500
	c.Faults.DetectorOffset = 0.02
	c.Contaminants = []ContaminantSpec{
		{Name: "paste", Procoagulant: true, MustDivert: true, HaemostatFull: 0.1, AgentPerML: 0.3},
		{Name: "cement", BoundShare: 0.6, MustDivert: true, LimitPerML: 0.01},
	}
	c.Phases[1].BleedMLMin, c.Phases[1].Irrigation, c.Phases[1].IrrigationMLMin = 120, SterileWater, 25
	c.Phases[1].ContaminantPerML[1] = 0.05
	c.Phases[2].BleedMLMin = 40
	c.Patient.DonorRefused = true
	c.Events = []EventSpec{
		{Kind: EventAgentOn, At: Ticks(400), Line: -1, Value: 0}, {Kind: EventAgentOff, At: Ticks(1500), Line: -1, Value: 0},
		{Kind: EventVacuumLost, At: Ticks(800), Line: -1}, {Kind: EventVacuumBack, At: Ticks(900), Line: -1},
		{Kind: EventDetectorFault, At: Ticks(1000), Line: -1, Value: -0.05}, {Kind: EventTouch, At: Ticks(1100), Line: -1},
		{Kind: EventSay, At: Ticks(5), Line: 0, Who: Surgeon}, {Kind: EventPowerLost, At: Ticks(3300), Line: -1},
		{Kind: EventPowerBack, At: Ticks(3360), Line: -1}, {Kind: EventBowlLeak, At: Ticks(3000), Line: -1, Value: 40},
	}
	b := keeping(t, c, 2)
	b.play(script{
		{0, Decide, 0, float64(SetUpToProcess)}, {0, ChooseBowl, 0, float64(StandardBowl)}, {0, OpenSet, CollectionSet, 0},
		{46, Connect, SuctionLine, 0}, {53, Connect, VacuumLine, 0}, {53, SetVacuum, 0, 300}, {53, Route, 0, float64(ToReservoir)},
		{60, Clamp, DripClamp, 1}, {60, OpenSet, ProcessingSet, 0},
		// half an hour of collecting: the outlet is open and joined to nothing until minute 12
		{120, SetDrip, 0, 40}, {420, Ask, 0, float64(TellMeWhen)}, {500, Ask, 0, float64(IsAgentGone)}, {600, Ask, 0, float64(StopAgent)},
		{650, Ask, 0, float64(HoldIrrigation)}, {700, Ask, 0, float64(ResumeIrrigation)}, {720, Connect, OutletLine, 0},
		{760, Route, 0, float64(ToDiscard)}, {780, Route, 0, float64(ToReservoir)}, {790, Prime, 0, 60}})
	b.until(1200)
	b.do(SetFillRate, 0, 800)
	b.do(Fill, 0, 0)
	b.wait(70) // past the interface
	b.do(StopPump, 0, 0)
	b.do(SetWashRate, 0, 900)
	b.do(Clamp, WashClampA, 1)
	b.do(Hang, WashHookB, 4)
	b.wait(13)
	b.do(Wash, 0, 0) // half of it sterile water, half saline
	b.waitFor("air in the line", 300, func() bool { return b.happened("air_stopped_pump") || b.s.Pump.Mode == PumpIdle })
	b.do(StopAll, 0, 0)
	b.wait(16)
	b.do(ClearLine, 0, 0)
	b.wait(11)
	b.do(SetEmptyRate, 0, 600)
	b.do(Empty, 0, 0)
	b.waitFor("an emptied bowl", 60, func() bool { return b.s.Pump.Mode == PumpIdle })
	b.wait(20) // the spare port is open
	b.do(Clamp, SparePort, 0)
	b.do(DrawBack, 0, 0)
	b.waitFor("the product in the bowl", 60, func() bool { return b.s.Pump.Mode == PumpIdle })
	b.do(Clamp, OutletClamp, 1)
	b.do(SendBack, 0, 0)
	b.waitFor("the bowl in the reservoir", 60, func() bool { return b.s.Pump.Mode == PumpIdle })
	b.do(Clamp, WasteDrain, 0)
	b.do(Unhang, WashHookB, 0)
	b.wait(6)
	b.do(Inspect, ProductLine, 0)
	b.wait(4)
	b.do(Connect, ProductLine, 0)
	b.wait(7)
	for range 2 { // bowls washed too little, until the waste bag is full
		b.do(SetFillRate, 0, 600)
		b.waitFor("something to fill with", 900, func() bool { return b.s.Reservoir.Blood.VolumeML() > 500 })
		b.do(Fill, 0, 0)
		b.waitFor("a full waste bag, air or a bowlful", 200, func() bool {
			return b.s.Pump.NoFlow || b.s.Pump.Mode == PumpIdle || b.s.Bowl.FillFraction() > 0.9
		})
		if b.s.Pump.Mode != PumpIdle {
			b.do(StopPump, 0, 0)
		}
		b.do(ChangeWaste, 0, 0)
		b.do(SetWashVolume, 0, 100)
		b.do(Clamp, WashClampB, 0)
		b.wait(16)
		b.do(ClearLine, 0, 0)
		b.wait(11)
		b.do(Wash, 0, 0)
		b.waitFor("the end of the wash", 60, func() bool { return b.s.Pump.Mode == PumpIdle })
		b.do(StopAll, 0, 0)
		b.wait(16)
		b.do(Empty, 0, 0)
		b.waitFor("an emptied bowl", 60, func() bool { return b.s.Pump.Mode == PumpIdle })
	}
	b.do(Hook, Bag(0), 0)
	b.wait(16)
	b.do(GiveRate, 0, 80)
	b.wait(20)
	b.do(Squeeze, 0, 1)
	b.wait(30)
	b.do(Squeeze, 0, 0)
	b.do(GiveRate, 0, 0)
	b.do(DiscardIt, Bag(0), 0)
	b.wait(11)
	b.waitFor("the leak", 3600, func() bool { return b.s.Bowl.LeakMLMin > 0 })
	b.do(Fill, 0, 0)
	b.until(3290)
	b.do(Mix, 0, 0)
	b.until(3380)
	if b.s.Bowl.Spinning {
		b.do(StopAll, 0, 0)
		b.wait(16)
	}
	b.do(ReplaceSet, ProcessingSet, 0)
	b.wait(91)
	b.do(ReplaceSet, CollectionSet, 0)
	b.wait(91)
	b.do(Connect, SuctionLine, 0)
	b.wait(7)
	b.do(Connect, VacuumLine, 0)
	b.wait(300)
	b.do(DiscardIt, ReservoirPart, 0)
	b.wait(60)
	b.do(Hook, AnticoagulantHook, 1)
	b.wait(16)
	b.do(GiveRate, 0, 20)
	b.wait(10)
	b.do(GiveRate, 0, 0)
	b.do(Unhook, 0, 0)
	b.until(lastS(b))
	if b.s.Field.Floor.VolumeML() < 100 || b.s.Waste.CarriedAwayML == 0 || b.s.Giving.AirML == 0 || b.s.Filter.Clot.VolumeML() == 0 {
		t.Errorf("the case did not cover what it is for: floor %g mL, waste carried away %g mL, air given %g mL, clot %g mL",
			b.s.Field.Floor.VolumeML(), b.s.Waste.CarriedAwayML, b.s.Giving.AirML, b.s.Filter.Clot.VolumeML())
	}
	return b
}

// lastS is the end of a case in seconds.
func lastS(b *bench) float64 { return Seconds(b.c.LastTick) }

// childCase: a small patient, citrate, the paediatric bowl, calcium-containing irrigation, washing by hand without fluid.
func childCase(t *testing.T) *bench {
	c := adultCase()
	c.Patient.BloodVolumeML, c.Patient.WeightKg = ChildML(Female, 5, 18), 18
	for i := range c.Phases {
		c.Phases[i].BleedMLMin /= 4
		c.Phases[i].Irrigation = BalancedCrystalloid
	}
	b := keeping(t, c, 3)
	b.play(script{{0, Unhang, AnticoagulantHook, 0}, {6, Hang, AnticoagulantHook, 3}})
	b.wait(13)
	open := openBench(CitrateSolution, PaediatricBowl)
	for i := range open {
		open[i].atS += 20
	}
	b.play(open)
	b.until(1500)
	b.do(SetFillRate, 0, 90)
	b.do(SetWashRate, 0, 90)
	b.do(SetWashVolume, 0, 300)
	b.do(Fill, 0, 0)
	b.waitFor("a bowlful or an empty reservoir", 900, func() bool { return b.s.Bowl.FillFraction() > 0.93 || b.s.Pump.Mode == PumpIdle })
	if b.s.Pump.Mode != PumpIdle {
		b.do(StopPump, 0, 0)
	} else {
		b.do(ClearLine, 0, 0)
		b.wait(11)
	}
	b.do(Wash, 0, 0)
	b.waitFor("the end of the wash", 600, func() bool { return b.s.Pump.Mode == PumpIdle })
	b.do(StopAll, 0, 0)
	b.wait(16)
	b.do(Empty, 0, 0)
	b.waitFor("an emptied bowl", 120, func() bool { return b.s.Pump.Mode == PumpIdle })
	b.do(NewBag, 0, 0)
	b.wait(16)
	b.do(Hook, Bag(0), 1)
	b.wait(16)
	b.do(GiveRate, 0, 150)
	b.until(lastS(b))
	if b.s.Giving.GivenML < 20 {
		t.Errorf("the case did not cover what it is for: %g mL given", b.s.Giving.GivenML)
	}
	return b
}
