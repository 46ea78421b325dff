package sim

// What is missed on the bench has its physical consequence.

import (
	"math"
	"testing"
)

// setUp gives a bench with 900 mL of blood in the reservoir and everything set up, at about 40 minutes.
func setUp(t *testing.T, change func(c *Case), beside ...script) *bench {
	t.Helper()
	c := adultCase()
	c.Patient.DonorRefused = true
	if change != nil {
		change(&c)
	}
	b := newBench(t, c, 1)
	b.play(openBench(HeparinSolution, StandardBowl))
	for _, s := range beside {
		b.play(s)
	}
	b.do(SetDrip, 0, 90)
	b.waitFor("900 mL in the reservoir", 3600, func() bool { return b.s.Reservoir.Blood.VolumeML() > 900 })
	return b
}

// fillWashStop brings the bowl to washed and stopped.
func fillWashStop(b *bench) {
	b.t.Helper()
	b.do(AutoStop, 0, 1)
	b.do(Fill, 0, 0)
	b.waitFor("the interface", 600, func() bool { return b.s.Pump.Mode == PumpIdle })
	b.do(Wash, 0, 0)
	b.waitFor("the end of the wash", 600, func() bool { return b.s.Pump.Mode == PumpIdle })
	b.do(StopAll, 0, 0)
	b.waitFor("the brake", 20, func() bool { return b.s.Bowl.BrakeUntil == 0 })
}

func TestOutletOpenWithNothingConnectedLosesBlood(t *testing.T) {
	c := adultCase()
	b := newBench(t, c, 1)
	b.play(openBench(HeparinSolution, StandardBowl)[:11]) // as far as the prime and the opening of the processing set
	b.do(Clamp, OutletClamp, 1)
	b.wait(60)
	within(t, "on the floor", b.s.Field.Floor.VolumeML(), 100, 200)
	if !b.s.Alarms.On[AlarmNoFlow] && b.s.Conduct.Met[IncidentSpill] == 0 {
		t.Error("nobody could know of the spill")
	}
}

func TestSparePortOpenLosesProductAndLetsAirIn(t *testing.T) {
	b := setUp(t, func(c *Case) { c.Faults.OpenClamps[SparePort] = true })
	fillWashStop(b)
	b.do(Empty, 0, 0)
	b.waitFor("emptying", 120, func() bool { return b.s.Pump.Mode == PumpIdle })
	before, air := b.s.Bags[0].Fluid.VolumeML(), b.s.Bags[0].AirML
	b.wait(30)
	near(t, "lost in half a minute", before-b.s.Bags[0].Fluid.VolumeML(), leakPortMLMin/2, 0.01)
	near(t, "air in its place", b.s.Bags[0].AirML-air, leakPortMLMin/2, 0.01)
}

func TestSecondWashLineOpenDrawsAirAndStops(t *testing.T) {
	b := setUp(t, nil)
	b.do(Clamp, WashClampB, 1)
	b.do(AutoStop, 0, 1)
	b.do(Fill, 0, 0)
	b.waitFor("the interface", 600, func() bool { return b.s.Pump.Mode == PumpIdle })
	b.do(Wash, 0, 0)
	b.wait(10)
	if !b.happened("air_stopped_pump") || b.s.Pump.Mode != PumpIdle {
		t.Fatal("air from the open line did not stop the pump")
	}
	if why := May(&b.c, &b.s, Action{Do: Wash}); why != "clear_the_air_first" {
		t.Errorf("washing on is answered %q", why)
	}
	b.do(Clamp, WashClampB, 0)
	b.do(ClearLine, 0, 0)
	b.do(Wash, 0, 0)
}

func TestWasteDrainOpenMakesAFalseTally(t *testing.T) {
	b := setUp(t, nil)
	b.do(Clamp, WasteDrain, 1)
	fillWashStop(b)
	if w := TallyTruth(&b.s)[TallyWaste]; w != 0 {
		t.Errorf("the waste bag holds %g mL with its drain open", w)
	}
	if b.s.Field.Floor.VolumeML() < 1000 {
		t.Errorf("only %g mL are on the floor", b.s.Field.Floor.VolumeML())
	}
}

func TestOutletClosedGivesNoFlow(t *testing.T) {
	b := setUp(t, nil)
	b.do(Clamp, OutletClamp, 0)
	b.do(Fill, 0, 0)
	b.wait(5)
	if b.s.Pump.FlowMLMin != 0 || b.s.Bowl.ContentsML() != 0 || !b.s.Alarms.On[AlarmNoFlow] {
		t.Errorf("flow %g mL/min, %g mL in the bowl, alarm %v", b.s.Pump.FlowMLMin, b.s.Bowl.ContentsML(), b.s.Alarms.On[AlarmNoFlow])
	}
}

func TestLooseProductLineLosesProduct(t *testing.T) {
	b := setUp(t, func(c *Case) { c.Faults.LooseLines[ProductLine] = true })
	fillWashStop(b)
	b.do(Empty, 0, 0)
	b.waitFor("emptying", 120, func() bool { return b.s.Pump.Mode == PumpIdle })
	near(t, "half of what passed the line is lost", b.s.Field.Floor.VolumeML(), b.s.Bags[0].Fluid.VolumeML(), 0.05)
}

func TestSuctionBeforeAnticoagulantClotsTheFilter(t *testing.T) {
	clot := func(prime bool) float64 {
		b := newBench(t, adultCase(), 1)
		for _, step := range openBench(HeparinSolution, StandardBowl) {
			if !prime && (step.do == Prime || step.do == SetDrip) {
				continue
			}
			b.until(step.atS)
			b.do(step.do, step.on, step.value)
		}
		b.until(25 * 60)
		return b.s.Filter.Clot.VolumeML()
	}
	if dry, primed := clot(false), clot(true); dry < 10 || primed > 0.5 {
		t.Errorf("clot in the filter: %.1f mL dry, %.2f mL primed", dry, primed)
	}
}

func TestAWrongFluidOnTheAnticoagulantHookClots(t *testing.T) {
	c := adultCase()
	c.Packs[0].Solution = Saline // on the anticoagulant's hook
	c.Packs[1].Solution = Saline
	b := newBench(t, c, 1)
	b.play(openBench(HeparinSolution, StandardBowl))
	b.until(30 * 60)
	if clot := b.s.Filter.Clot.VolumeML() + b.s.Reservoir.Clot.VolumeML(); clot < 10 {
		t.Errorf("%.2f mL of clot with saline for anticoagulant", clot)
	}
}

func TestAnUnprimedLineBringsNothingAtFirst(t *testing.T) {
	b := newBench(t, adultCase(), 1)
	for _, step := range openBench(HeparinSolution, StandardBowl) {
		if step.do != Prime {
			b.until(step.atS)
			b.do(step.do, step.on, step.value)
		}
	}
	b.do(SetDrip, 0, 60) // 3 mL/min: five minutes to fill 15 mL
	b.until(115 + 4.5*60)
	if got := b.s.Filter.Content.In[Heparin] + b.s.Reservoir.Blood.In[Heparin]; got != 0 {
		t.Errorf("%g IU arrived before the line was full", got)
	}
	b.until(115 + 7*60)
	if got := b.s.Filter.Content.In[Heparin] + b.s.Reservoir.Blood.In[Heparin]; got <= 0 {
		t.Error("nothing arrived after the line was full")
	}
}

func TestATouchedConnectionIsABreachUntilTheSetIsReplaced(t *testing.T) {
	c := adultCase()
	c.Faults.TouchChance = 1
	b := newBench(t, c, 1)
	b.play(script{{0, Decide, 0, float64(CollectOnly)}, {0, OpenSet, CollectionSet, 0}, {46, Connect, SuctionLine, 0}})
	if !b.s.Bench.Breached[CollectionSet] || !b.happened("touched") {
		t.Fatal("the touch left no trace")
	}
	b.wait(10)
	b.do(ReplaceSet, CollectionSet, 0)
	if b.s.Bench.Breached[CollectionSet] || b.s.Bench.Connected[SuctionLine] {
		t.Error("a fresh set is sterile and not connected yet")
	}
}

func TestARefusalNamesWhatToDoAndChangesNothing(t *testing.T) {
	b := setUp(t, nil)
	b.do(Fill, 0, 0)
	b.wait(30)
	for _, c := range []struct {
		a    Action
		want Reason
	}{
		{Action{Do: Empty}, "stop_the_pump_first"}, {Action{Do: OpenSet, On: ProcessingSet}, "set_is_open"},
		{Action{Do: SetDrip, Value: 9999}, "value_out_of_range"}, {Action{Do: SetVacuum, Value: math.NaN()}, "value_out_of_range"},
		{Action{Do: Hook, On: Bag(0), Value: 1}, "bag_is_empty"}, {Action{Do: Hook, On: Bag(3), Value: 1}, "no_such_bag"},
		{Action{Do: EndCase}, "operation_goes_on"}, {Action{Do: Answer, Value: 1}, "nobody_asked"}, {Action{Do: Verb(200)}, "unknown_act"},
		{Action{Do: Clamp, On: Part(250)}, "unknown_part"},
	} {
		before := b.s.Hash()
		if why := Apply(&b.c, &b.s, c.a, &b.h); why != c.want {
			t.Errorf("%v %v: %q, want %q", c.a.Do, c.a.On, why, c.want)
		}
		if b.s.Hash() != before {
			t.Errorf("%v %v was refused and changed the state", c.a.Do, c.a.On)
		}
	}
	b.do(StopPump, 0, 0)
	if why := May(&b.c, &b.s, Action{Do: Empty}); why != "bowl_is_spinning" {
		t.Errorf("emptying a spinning bowl is answered %q", why)
	}
}

func TestWhatIsFullRefusesClearly(t *testing.T) {
	b := setUp(t, nil)
	for range MaxSamples {
		b.do(Sample, ReservoirPart, 0)
		b.wait(11)
	}
	if why := May(&b.c, &b.s, Action{Do: Sample, On: ReservoirPart}); why != "no_more_samples" {
		t.Errorf("one sample too many is answered %q", why)
	}
	for range MaxBags - 1 {
		b.do(NewBag, 0, 0)
		b.wait(16)
	}
	if why := May(&b.c, &b.s, Action{Do: NewBag}); why != "no_more_bags" {
		t.Errorf("one bag too many is answered %q", why)
	}
}
