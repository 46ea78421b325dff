package sim

// What is full says so, what is refused has a reason, and a few acts whose count once went wrong.

import "testing"

// refused fails the test unless the act is refused for the reason and changes nothing.
func (b *bench) refused(v Verb, on Part, value float64, why Reason) {
	b.t.Helper()
	before := b.s
	got := Apply(&b.c, &b.s, Action{Do: v, On: on, Value: value}, &b.h)
	if got != why {
		b.t.Errorf("%.1f s: %v: reason %q, want %q", Seconds(b.s.Tick), v, got, why)
	}
	if b.s != before || b.s.Hash() != before.Hash() {
		b.t.Errorf("%v is refused and has changed the state", v)
	}
}

// washedBowl is a bench with a full, washed, stopped bowl.
func washedBowl(t testing.TB) *bench {
	b := collecting(t, 2100)
	b.do(SetWashVolume, 0, 200)
	b.do(Fill, 0, 0)
	b.waitFor("the interface", 300, func() bool { return b.s.Bowl.FillFraction() > 0.9 })
	b.do(StopPump, 0, 0)
	b.do(Wash, 0, 0)
	b.waitFor("the end of the wash", 100, func() bool { return b.s.Pump.Mode == PumpIdle })
	b.refused(Empty, 0, 0, "bowl_is_spinning")
	b.do(StopAll, 0, 0)
	b.refused(Empty, 0, 0, "bowl_is_braking")
	b.wait(16)
	return b
}

func TestFullListsRefuse(t *testing.T) {
	b := washedBowl(t)
	b.refused(Fill, 0, 0, "empty_the_bowl_first")
	b.do(Empty, 0, 0)
	b.refused(NewBag, 0, 0, "stop_the_pump_first")
	b.waitFor("an emptied bowl", 60, func() bool { return b.s.Pump.Mode == PumpIdle })
	for b.s.BagsUsed < MaxBags {
		b.do(NewBag, 0, 0)
		b.refused(NewBag, 0, 0, "hands_are_busy")
		b.wait(16)
	}
	b.refused(NewBag, 0, 0, "no_more_bags")
	for b.s.Lab.Count < MaxSamples {
		b.do(Sample, ReservoirPart, 0)
		b.wait(11)
	}
	b.refused(Sample, PatientPart, 0, "no_more_samples")
	// a bowl with cells left in it and the last record of a bowlful closed
	b.s.CycleUsed = MaxCycles
	b.s.Cycles[MaxCycles-1].DoneTick = b.s.Tick
	b.refused(Fill, 0, 0, "no_more_cycles")
	b.refused(Wash, 0, 0, "no_more_cycles")
}

func TestValuesOutOfRangeAreRefused(t *testing.T) {
	b := collecting(t, 200)
	for v := NoVerb + 1; v < verbCount; v++ {
		_, most, whole := ValueRange(v)
		b.refused(v, 0, most+1, "value_out_of_range")
		b.refused(v, 0, -2, "value_out_of_range")
		if whole && most >= 1 && v != Decide { // a range from 1 holds no half below it
			b.refused(v, 0, most-0.5, "value_must_be_whole")
		}
	}
	b.refused(verbCount, 0, 0, "unknown_act")
	b.refused(NoVerb, 0, 0, "unknown_act")
	b.refused(Clamp, partCount, 1, "unknown_part")
	b.refused(Clamp, BowlPart, 1, "not_a_clamp")
}

// What the bowl sends back has been collected once already.
func TestSendingBackIsNotCollecting(t *testing.T) {
	b := washedBowl(t)
	b.do(Route, 0, float64(ToDiscard))
	b.do(Clamp, DripClamp, 0)
	b.wait(1)
	collected, held := TallyTruth(&b.s)[TallyCollected], b.s.Reservoir.Blood.VolumeML()
	b.do(SendBack, 0, 0)
	b.waitFor("the bowl in the reservoir", 60, func() bool { return b.s.Pump.Mode == PumpIdle })
	if came := b.s.Reservoir.Blood.VolumeML() - held; came < 100 {
		t.Fatalf("only %g mL came back", came)
	}
	near(t, "collected", TallyTruth(&b.s)[TallyCollected], collected, 1e-12)
}

// Past 30 mL of clot in the filter all the clot, of filter and reservoir, holds the sucker back (design paper, section 4).
func TestClotHoldsTheSuckerBack(t *testing.T) {
	var s State
	clot := func(filter, reservoir float64) float64 {
		s.Filter.Clot.ML, s.Reservoir.Clot.ML = filter, reservoir
		return s.suckerPatency()
	}
	near(t, "29 mL in the filter, 20 in the reservoir", clot(29, 20), 1, 1e-12)
	near(t, "36 mL in the filter", clot(36, 0), 0.4, 1e-12)
	near(t, "36 mL in the filter, 12 in the reservoir", clot(36, 12), 0.2, 1e-12)
	within(t, "60 mL", clot(36, 24), 0, 0)
}

// While filling, the liquid in the bed counts as the feed's for packing (testdata/reference/README.md): a bowl that starts with
// the last one's rest of saline packs as a dry one does.
func TestPackingWhileFillingGoesByTheFeed(t *testing.T) {
	fill := func(rest *Fluid) float64 {
		b := Bowl{Kind: StandardBowl}
		b.pourBack(rest)
		var out Fluid
		var lysed float64
		for range Ticks(30) {
			in := plainBlood(300.0/60*tickS, 0.18, 20, 1, 0, 0)
			b.spin(&in, &out, flowFeed, tickS, &lysed)
		}
		return b.Packing
	}
	dry := plainBlood(0.6, 0.18, 20, 1, 0, 0)
	wet := plainBlood(0.6, 0.18, 0, 1, 0, 0)
	near(t, "packing", fill(&wet), fill(&dry), 1e-9)
}
