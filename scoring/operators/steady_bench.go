package operators

import "rouleau/sim"

// Steady at the bench: preparing, supplies, processing.

// stages of preparing
const (
	_ = iota
	opened
	hung
	joined
	vacuumed
	primed
	collecting
)

// choose finds a pack of a solution on the shelf that is not out of date and not used up.
func (o *Steady) choose(v *sim.Seen, want sim.Solution, leastML float64) int {
	for i, p := range o.sheet.Packs {
		if p.Solution != want || p.Expired || v.Bench.PackLeftML[i] < leastML {
			continue
		}
		taken := false
		for hook := sim.AnticoagulantHook; hook <= sim.WashHookB; hook++ {
			taken = taken || v.Bench.HookPack[hook] == int8(i)
		}
		if !taken {
			return i
		}
	}
	return -1
}

// hang puts the right pack on a hook, taking a wrong, old or empty one down first. It says whether it acted.
func (o *Steady) hang(v *sim.Seen, hook sim.Part, want sim.Solution, leastML float64, try func(sim.Verb, sim.Part, float64) bool) bool {
	if k := v.Bench.HookPack[hook]; k >= 0 {
		p := o.sheet.Packs[k]
		if p.Solution == want && !p.Expired && v.Bench.PackLeftML[k] >= leastML {
			return false
		}
		if o.choose(v, want, leastML) < 0 && p.Solution == want && !p.Expired && v.Bench.PackLeftML[k] > 0 {
			return false // the last of it
		}
		return try(sim.Unhang, hook, 0)
	}
	if k := o.choose(v, want, leastML); k >= 0 {
		return try(sim.Hang, hook, float64(k))
	}
	if k := o.choose(v, want, 1); k >= 0 {
		return try(sim.Hang, hook, float64(k))
	}
	return false
}

// clamp brings a clamp to where it belongs and says whether it acted.
func clamp(v *sim.Seen, on sim.Part, open bool, try func(sim.Verb, sim.Part, float64) bool) bool {
	if v.Bench.Open[on] == open {
		return false
	}
	value := 0.0
	if open {
		value = 1
	}
	return try(sim.Clamp, on, value)
}

// firm inspects a line and connects it firmly.
func firm(v *sim.Seen, line sim.Part, try func(sim.Verb, sim.Part, float64) bool) bool {
	if !v.Bench.Connected[line] || v.Bench.FoundLoose[line] {
		return try(sim.Connect, line, 0)
	}
	if !v.Bench.Inspected[line] {
		return try(sim.Inspect, line, 0)
	}
	return false
}

// prepare sets up collection step by step, then the processing set once a bowl is coming.
func (o *Steady) prepare(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	b := &v.Bench
	if b.TakenDown {
		return false
	}
	for o.prepared < collecting {
		switch o.prepared {
		case 0:
			if !b.Opened[sim.CollectionSet] {
				return try(sim.OpenSet, sim.CollectionSet, 0)
			}
		case opened:
			if o.hang(v, sim.AnticoagulantHook, o.anticoagulant(), primeML, try) || !b.Inspected[sim.AnticoagulantHook] && try(sim.Inspect, sim.AnticoagulantHook, 0) {
				return true
			}
		case hung:
			if clamp(v, sim.OutletClamp, false, try) || firm(v, sim.SuctionLine, try) || firm(v, sim.VacuumLine, try) {
				return true
			}
		case joined:
			if !b.VacuumTested {
				return try(sim.TestVacuum, sim.NoPart, 0)
			}
			if v.VacuumSetMmHg != vacuumMmHg {
				return try(sim.SetVacuum, sim.NoPart, vacuumMmHg)
			}
		case vacuumed:
			if clamp(v, sim.DripClamp, true, try) {
				return true
			}
			if v.PrimedML < primeML-5 {
				try(sim.Prime, sim.NoPart, primeML)
				return true
			}
		case primed:
			try(sim.Ask, sim.NoPart, float64(sim.TellMeWhen))
			try(sim.Ask, sim.NoPart, float64(sim.LetItPool))
		}
		o.prepared++
	}
	if b.Decision != sim.SetUpToProcess || v.ReservoirML < openProcessingML && !b.Opened[sim.ProcessingSet] && !v.OperationOver {
		return false
	}
	return o.prepareProcessing(v, try)
}

func (o *Steady) prepareProcessing(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	b := &v.Bench
	if !b.Opened[sim.ProcessingSet] {
		if v.ReservoirML < 100 {
			return false
		}
		return try(sim.OpenSet, sim.ProcessingSet, 0)
	}
	if clamp(v, sim.SparePort, false, try) || clamp(v, sim.WasteDrain, false, try) || clamp(v, sim.WashClampB, false, try) {
		return true
	}
	for _, line := range [...]sim.Part{sim.ProductLine, sim.WasteLine, sim.OutletLine} {
		if firm(v, line, try) {
			return true
		}
	}
	if v.Pump.Mode != sim.PumpWash && o.hang(v, sim.WashHookA, sim.Saline, o.washML(v)+litreReserveML, try) {
		return true
	}
	if !b.Inspected[sim.WashHookA] && b.HookPack[sim.WashHookA] >= 0 {
		return try(sim.Inspect, sim.WashHookA, 0)
	}
	if clamp(v, sim.WashClampA, true, try) || clamp(v, sim.OutletClamp, true, try) {
		return true
	}
	if v.Pump.WashML != o.washML(v) {
		return try(sim.SetWashVolume, sim.NoPart, o.washML(v))
	}
	if o.sheet.Rules.AutoStop && !v.Pump.AutoStop {
		return try(sim.AutoStop, sim.NoPart, 1)
	}
	return false
}

func (o *Steady) washML(v *sim.Seen) float64 {
	return float64(washBowls * v.Bench.Bowl.Shape().VolumeML)
}

// supplies changes packs and the waste bag before they run out.
func (o *Steady) supplies(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	if o.prepared >= collecting && !v.Bench.TakenDown && o.hang(v, sim.AnticoagulantHook, o.anticoagulant(), litreReserveML, try) {
		return true
	}
	if !v.Bench.Opened[sim.ProcessingSet] || v.WasteML < o.sheet.WasteML-wasteRoomML {
		return false
	}
	if v.Pump.Mode != sim.PumpIdle {
		return v.Pump.NoFlow && try(sim.StopPump, sim.NoPart, 0)
	}
	return v.WasteML > 0 && try(sim.ChangeWaste, sim.NoPart, 0)
}

// process runs bowl after bowl.
func (o *Steady) process(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	p := &v.Pump
	if !v.Bench.Connected[sim.OutletLine] || v.Bench.TakenDown || p.Braking {
		return false
	}
	last := v.OperationOver && v.BasinML <= 0 && !v.Rinsing && v.PoolML < 20 && v.SwabsML-o.swabRest < 60
	switch {
	case p.Mode == sim.PumpFill:
		if v.ReservoirML < 15 {
			return try(sim.StopPump, sim.NoPart, 0)
		}
		return false
	case p.Mode != sim.PumpIdle:
		return false
	case p.CycleOpen && p.Washed && p.WashedML >= p.WashML-1:
		if p.Spinning {
			return try(sim.StopAll, sim.NoPart, 0)
		}
		if b := &v.Bags[v.BagsUsed-1]; b.ML+b.AirML+p.HeldML > o.sheet.BagML || b.Discarded || int(v.Giving.Bag) == v.BagsUsed-1 {
			return try(sim.NewBag, sim.NoPart, 0)
		}
		return try(sim.Empty, sim.NoPart, 0)
	case p.CycleOpen && !p.Washed && p.Filled:
		full := p.Detector > interface_-0.02
		if full || last || v.OperationOver && v.ReservoirML < 15 && last {
			return try(sim.Wash, sim.NoPart, 0)
		}
		return v.ReservoirML > 150 && o.fill(v, try)
	case p.CycleOpen && p.Washed && o.dry(v):
		if p.Spinning {
			return try(sim.StopAll, sim.NoPart, 0)
		}
		return try(sim.SendBack, sim.NoPart, 0) // better unwashed in the reservoir than in a bag
	case p.CycleOpen && p.Washed:
		return try(sim.Wash, sim.NoPart, 0) // interrupted: go on
	case o.dry(v):
		return false // nothing to wash with
	case v.ReservoirML >= fillFromML || last && v.ReservoirML >= 120:
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
	if v.Mixing {
		return true
	}
	if v.ClearML > mixClearShare*v.ReservoirML {
		return try(sim.Mix, sim.NoPart, 0)
	}
	return try(sim.Fill, sim.NoPart, 0)
}
