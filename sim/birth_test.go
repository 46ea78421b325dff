package sim

// A birth, with body fluid, a second sucker, a part-filled bowl topped up from the bag, and what an RhD-negative mother needs.

import "testing"

func birthCase(t *testing.T) *bench {
	c := adultCase()
	c.Patient.RhDNegative = true
	c.Contaminants = []ContaminantSpec{
		{Name: "fluid", BoundShare: 0.05, MustDivert: true, LimitPerML: 0.1, AgentPerML: 10},
		{Name: "child's cells", BoundShare: 1},
	}
	c.Phases[1].BodyFluidMLMin, c.Phases[2].ContaminantPerML[1] = 200, 0.01
	c.Phases[2].StartTick = Ticks(14 * 60)
	c.Events = []EventSpec{{Kind: EventAgentOn, At: Ticks(600), Line: -1, Value: 0}, {Kind: EventAgentOff, At: Ticks(840), Line: -1, Value: 0}}
	b := keeping(t, c, 1)
	b.play(openBench(HeparinSolution, StandardBowl))
	b.until(300)
	b.do(Ask, 0, float64(SecondSucker))
	b.until(601)
	before := b.s.Field.SuckedML
	b.until(840)
	if came := b.s.Field.SuckedML - before; !b.s.Team.SecondInUse || came > 5 {
		t.Errorf("%g mL came to the reservoir while the second sucker was in use (%v)", came, b.s.Team.SecondInUse)
	}
	near(t, "body fluid", b.s.Field.BodyFluidML, 200*4, 0.001)
	b.waitFor("a clear field", 900, func() bool { return b.happened("back_to_first") })
	if b.s.Team.SecondInUse || b.s.Team.AgentSaid {
		t.Error("the field is clear and the surgeon has not gone back to the first sucker")
	}
	b.do(Ask, 0, float64(TestFetalBleed))
	if b.s.Team.FetalTestTick != 0 || !b.happened("test_comes_later") {
		t.Error("a test before any washed blood counts")
	}
	b.do(SetDrip, 0, 60)
	b.waitFor("enough for a bowl", 3600, func() bool { return b.s.Reservoir.Blood.VolumeML() > 900 })
	if why := May(&b.c, &b.s, Action{Do: TopUp}); why != "fill_the_bowl_first" {
		t.Errorf("topping up an empty bowl is answered %q", why)
	}
	fillWashStop(b)
	b.do(Empty, 0, 0)
	b.waitFor("emptying", 120, func() bool { return b.s.Pump.Mode == PumpIdle })
	b.wait(60)
	b.do(Fill, 0, 0)
	b.wait(30)
	b.do(StopPump, 0, 0)
	thin, bag := b.s.Bowl.FillFraction(), b.s.Bags[0].Fluid.VolumeML()
	b.do(TopUp, 0, 0)
	b.waitFor("the end of topping up", 300, func() bool { return b.s.Pump.Mode == PumpIdle })
	if full := b.s.Bowl.FillFraction(); full < thin+0.2 || b.s.Bags[0].Fluid.VolumeML() > bag-30 {
		t.Errorf("topping up filled the bowl from %.2f to %.2f, and the bag holds %.0f of %.0f mL", thin, full, b.s.Bags[0].Fluid.VolumeML(), bag)
	}
	b.wait(2)
	b.do(Wash, 0, 0)
	b.waitFor("the end of the wash", 600, func() bool { return b.s.Pump.Mode == PumpIdle })
	if why := May(&b.c, &b.s, Action{Do: TopUp}); why != "empty_the_bowl_first" && why != "bag_is_empty" {
		t.Errorf("topping up a washed bowl is answered %q", why)
	}
	b.do(StopAll, 0, 0)
	b.waitFor("the brake", 20, func() bool { return b.s.Bowl.BrakeUntil == 0 })
	b.do(Empty, 0, 0)
	b.waitFor("emptying", 120, func() bool { return b.s.Pump.Mode == PumpIdle })
	b.do(Hook, Bag(0), 1)
	b.wait(16)
	b.do(GiveRate, 0, 100)
	b.wait(30)
	b.do(Ask, 0, float64(GiveAntiD))
	b.do(Ask, 0, float64(TestFetalBleed))
	return b
}

func TestABirthKeepsItsSumsAndItsBooks(t *testing.T) {
	b := birthCase(t)
	if b.s.Team.AntiDTick == 0 || b.s.Team.FetalTestTick <= b.s.Team.AntiDTick-2 {
		t.Errorf("anti-D at %d, test at %d", b.s.Team.AntiDTick, b.s.Team.FetalTestTick)
	}
	bag := &b.s.Bags[0]
	in := 0.0
	for i := range b.s.Cycles[:b.s.CycleUsed] {
		in += b.s.Cycles[i].ProductML
	}
	// what the cycles say they brought is in the bag, given, or in the line, which was full when the bag was drawn empty
	within(t, "product on the books and not in the bag", in-bag.CameML, -1, productLineML+1)
	if share := bag.Fluid.Bound[1]; share <= 0 {
		t.Error("the child's cells were washed out")
	}
	var v Seen
	View(&b.c, &b.s, &v)
	if !v.RhDNegative || !v.AntiDAsked || !v.FetalTestAsked || !v.SecondSucker || v.SecondInUse || v.BodyFluidML != 800 {
		t.Errorf("not seen: %+v", v)
	}
}

func TestAntiDIsNotGivenWhereItIsNotNeeded(t *testing.T) {
	b := newBench(t, adultCase(), 1)
	b.do(Ask, 0, float64(GiveAntiD))
	if b.s.Team.AntiDTick != 0 || !b.happened("is_not_negative") {
		t.Error("anti-D for a patient who does not need it")
	}
}
