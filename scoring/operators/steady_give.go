package operators

import "rouleau/sim"

// Steady with the product: sample, label, hand over, check, give, watch; and the tidy end.

// give offers and gives the oldest bag that holds washed cells, when they are asked for or when nothing more will come.
func (o *Steady) give(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	g := &v.Giving
	if g.Bag >= 0 && g.RateMLMin > 0 {
		if o.habits.WatchEveryS > 0 && v.Tick >= o.watched+int64(o.habits.WatchEveryS)*sim.TicksPerSecond {
			o.watched = v.Tick
			return try(sim.Watch, sim.PatientPart, 0)
		}
		return false
	}
	k := o.bagToGive(v)
	if k < 0 || o.waits(v) || o.emptiesNext(v) {
		return false
	}
	b, on := &v.Bags[k], sim.Bag(k)
	if v.Pump.Mode == sim.PumpEmpty || v.Pump.Mode == sim.PumpDrawBack || v.Pump.Mode == sim.PumpTopUp {
		return false
	}
	switch {
	case v.OperationOver && !o.cleared && k == v.BagsUsed-1 && v.Pump.Mode == sim.PumpIdle && !v.Bench.TakenDown:
		o.cleared = try(sim.ClearLine, sim.NoPart, 0) // the last of the product is in the line
		return o.cleared
	case o.habits.Samples && !o.sampled[k] && v.SampleCount < sim.MaxSamples:
		if b.MixedTick < 0 {
			return try(sim.MixBag, on, 0)
		}
		o.sampled[k] = try(sim.Sample, on, 0)
		return true
	case float64(b.LabelBits) != o.label:
		return try(sim.Label, on, o.label)
	case o.habits.ExpelsAir && b.AirML > 0:
		return try(sim.ExpelAir, on, 0)
	case float64(b.HandedBits) != o.handOver:
		return try(sim.HandOver, on, o.handOver)
	case o.habits.Checkers == 2 && !v.ClinicianCalled:
		return try(sim.Ask, sim.NoPart, float64(sim.ClinicianComes))
	case int(b.Checkers) < o.habits.Checkers:
		return (v.ClinicianHere || o.habits.Checkers == 1) && try(sim.Identify, on, float64(o.habits.Checkers))
	case int(g.Bag) != k:
		return try(sim.Hook, on, number(o.habits.UsesFilter))
	}
	o.watched = v.Tick
	return try(sim.GiveRate, sim.NoPart, o.giveMLMin())
}

// waits says whether it still hesitates to give what could be given.
func (o *Steady) waits(v *sim.Seen) bool {
	if o.giveFrom == 0 {
		o.giveFrom = max(1, v.Tick)
	}
	return v.Tick < o.giveFrom+int64(o.habits.WaitsMin*60*sim.TicksPerSecond)
}

// bagToGive is the bag to be given now, or -1: one already handed over, or the fullest reason to start.
func (o *Steady) bagToGive(v *sim.Seen) int {
	for i := range v.BagsUsed {
		k := i
		if !o.habits.MindsExpiry {
			k = v.BagsUsed - 1 - i
		}
		b := &v.Bags[k]
		if b.Discarded || b.ML <= 5 || o.suspect[k] {
			continue
		}
		wanted := v.BloodWantedTick >= 0 || v.Giving.Joined || b.HandedBits != 0
		done := v.OperationOver && !v.Pump.CycleOpen && (v.ReservoirML < o.scale(v)*leastFillML || o.dry(v))
		late := o.habits.MindsExpiry && v.Tick-b.FirstTick > 3*3600*sim.TicksPerSecond
		if wanted || done || late {
			return k
		}
	}
	return -1
}

// tidy hangs a new bag while the other is given, and when all is done clears, takes down, writes the tally and ends.
func (o *Steady) tidy(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	p := &v.Pump
	g := &v.Giving
	if g.Bag >= 0 && int(g.Bag) == v.BagsUsed-1 && !g.Joined && p.Mode == sim.PumpIdle && !v.OperationOver && v.Bench.Opened[sim.ProcessingSet] {
		return try(sim.NewBag, sim.NoPart, 0)
	}
	if !v.OperationOver || p.CycleOpen || p.Spinning || p.Mode != sim.PumpIdle || v.Rinsing || v.BasinML > 0 || v.PoolML >= 20 || v.ReservoirML >= o.scale(v)*leastFillML && !o.dry(v) && v.Bench.Decision == sim.SetUpToProcess {
		return false
	}
	if v.Bench.Opened[sim.CollectionSet] && !v.Bench.TakenDown {
		if v.Bench.Opened[sim.ProcessingSet] && !o.cleared {
			o.cleared = try(sim.ClearLine, sim.NoPart, 0)
			return o.cleared
		}
		if o.habits.Tallies {
			try(sim.EstimateLoss, sim.NoPart, o.lossML(v))
		}
		return try(sim.TakeDown, sim.NoPart, 0)
	}
	if o.bagToGive(v) >= 0 || g.RateMLMin > 0 || v.SampleCount > answered(v) {
		return false
	}
	for item, ml := range o.tally(v) {
		if o.habits.Tallies && !v.Written[item] {
			return o.do(sim.Action{Do: sim.Reconcile, Item: uint8(item), Value: ml}) == ""
		}
	}
	o.ended = try(sim.EndCase, sim.NoPart, 0)
	return o.ended
}

// answered counts the samples that the laboratory has reported.
func answered(v *sim.Seen) int {
	n := 0
	for i := range v.Samples {
		if v.Samples[i].Told {
			n++
		}
	}
	return n
}

// tally is the closing tally, read from scales and counters.
func (o *Steady) tally(v *sim.Seen) [sim.TallyItems]float64 {
	var t [sim.TallyItems]float64
	t[sim.TallyCollected] = v.TakenInML
	t[sim.TallyAnticoagulant] = v.DripML
	t[sim.TallyIrrigation] = v.IrrigationML
	t[sim.TallyProcessed] = v.Pump.FedML
	t[sim.TallyWash] = v.Pump.WashUsedML
	t[sim.TallyWaste] = v.WasteML + v.WasteAwayML
	for i := range v.BagsUsed {
		t[sim.TallyProduct] += v.Bags[i].CameML
	}
	t[sim.TallyReturned] = v.Giving.GivenML
	t[sim.TallyDiscarded] = v.DiscardedML
	return t
}
