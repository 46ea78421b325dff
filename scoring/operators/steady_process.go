package operators

import "rouleau/sim"

// Steady and the bowl: filling, washing, emptying.

// process runs bowl after bowl.
func (o *Steady) process(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	p := &v.Pump
	if !v.Bench.Connected[sim.OutletLine] || v.Bench.TakenDown || p.Braking {
		return false
	}
	last := v.OperationOver && v.BasinML <= 0 && !v.Rinsing && v.PoolML < 20 && (v.SwabsML-o.swabRest <= 60 || !o.habits.RinsesSwabs)
	switch {
	case p.Mode == sim.PumpFill:
		if v.ReservoirML < 15 {
			return try(sim.StopPump, sim.NoPart, 0)
		}
		return false
	case p.Mode == sim.PumpEmpty && p.NoFlow:
		return try(sim.StopPump, sim.NoPart, 0) // the bag is full, of air perhaps: the rest goes to the next one
	case p.Mode != sim.PumpIdle:
		return false
	case p.CycleOpen && p.Washed && p.WashedML >= p.WashML-1:
		if p.Spinning {
			return try(sim.StopAll, sim.NoPart, 0)
		}
		if v.Giving.Joined {
			return o.emptyJoined(v, try)
		}
		if b := &v.Bags[v.BagsUsed-1]; b.ML+b.AirML+p.HeldML > o.sheet.BagML || b.Discarded || int(v.Giving.Bag) == v.BagsUsed-1 {
			return try(sim.NewBag, sim.NoPart, 0)
		}
		return try(sim.Empty, sim.NoPart, 0)
	case p.CycleOpen && !p.Washed && p.Filled:
		full := o.reading(v) > o.habits.FillsTo-0.02
		if !full && last && v.ReservoirML < 15 && o.toppedUp(v, try) {
			return true
		}
		if full || last || v.OperationOver && v.ReservoirML < 15 && last {
			return try(sim.Wash, sim.NoPart, 0)
		}
		return v.ReservoirML > o.scale(v)*goOnFillML && o.fill(v, try)
	case p.CycleOpen && p.Washed && o.dry(v):
		if p.Spinning {
			return try(sim.StopAll, sim.NoPart, 0)
		}
		return try(sim.SendBack, sim.NoPart, 0) // better unwashed in the reservoir than in a bag
	case p.CycleOpen && p.Washed:
		return try(sim.Wash, sim.NoPart, 0) // interrupted: go on
	case o.dry(v):
		return false // nothing to wash with
	case v.ReservoirML >= o.from(v, o.habits.FillFromML) || last && v.ReservoirML >= o.scale(v)*leastFillML:
		return o.fill(v, try)
	}
	return false
}

// dry says whether there is no wash fluid left, on the hook or on the shelf.
func (o *Steady) dry(v *sim.Seen) bool {
	k := v.Bench.HookPack[sim.WashHookA]
	return o.choose(v, sim.Saline, 50) < 0 && (k < 0 || v.Bench.PackLeftML[k] < 10)
}

// fill mixes first when a clear layer has formed.
func (o *Steady) fill(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	if v.Mixing && o.habits.MixesReservoir {
		return true
	}
	if o.habits.MixesReservoir && v.ClearML > mixClearShare*v.ReservoirML {
		return try(sim.Mix, sim.NoPart, 0)
	}
	return try(sim.Fill, sim.NoPart, 0)
}
