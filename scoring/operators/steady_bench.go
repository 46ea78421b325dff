package operators

import "rouleau/sim"

// Steady at the bench: preparing, and supplies.

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
		if p.Solution != want || p.Expired || v.Bench.PackLeftML[i] < leastML || v.Bench.PackInStore[i] {
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
		if p.Hung && !o.habits.ChecksBench && v.Bench.PackLeftML[k] >= leastML {
			return false // taken for what it should be
		}
		if p.Solution == want && !p.Expired && v.Bench.PackLeftML[k] >= leastML {
			return false
		}
		if o.choose(v, want, leastML) < 0 && p.Solution == want && !p.Expired && v.Bench.PackLeftML[k] > 0 {
			return false // the last of it
		}
		if p.Hung && (p.Solution != want || p.Expired) {
			o.declare(v, sim.IncidentWrongFluid, try) // found in time, and worth telling all the same
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
func (o *Steady) firm(v *sim.Seen, line sim.Part, try func(sim.Verb, sim.Part, float64) bool) bool {
	if !v.Bench.Connected[line] || v.Bench.FoundLoose[line] {
		return try(sim.Connect, line, 0)
	}
	if o.habits.ChecksBench && !v.Bench.Inspected[line] {
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
			if o.hang(v, sim.AnticoagulantHook, o.anticoagulant(), o.primeML(v), try) || o.habits.ChecksBench && !b.Inspected[sim.AnticoagulantHook] && try(sim.Inspect, sim.AnticoagulantHook, 0) {
				return true
			}
		case hung:
			if o.habits.ChecksBench && clamp(v, sim.OutletClamp, false, try) || o.firm(v, sim.SuctionLine, try) || o.firm(v, sim.VacuumLine, try) {
				return true
			}
		case joined:
			if !b.VacuumTested && o.habits.TestsVacuum {
				return try(sim.TestVacuum, sim.NoPart, 0)
			}
			if v.VacuumSetMmHg != o.habits.VacuumMmHg {
				return try(sim.SetVacuum, sim.NoPart, o.habits.VacuumMmHg)
			}
		case vacuumed:
			if clamp(v, sim.DripClamp, true, try) {
				return true
			}
			if v.PrimedML < o.primeML(v)-5 && (v.VacuumMmHg > 0 || o.habits.TestsVacuum) {
				try(sim.Prime, sim.NoPart, o.primeML(v))
				return true
			}
		case primed:
			if o.habits.WarnsTeam {
				try(sim.Ask, sim.NoPart, float64(sim.TellMeWhen))
				if o.sheet.SecondSucker {
					try(sim.Ask, sim.NoPart, float64(sim.SecondSucker))
				}
			}
			if o.habits.LetsBloodPool {
				try(sim.Ask, sim.NoPart, float64(sim.LetItPool))
			}
		}
		o.prepared++
	}
	if b.Decision != sim.SetUpToProcess || v.ReservoirML < o.from(v, o.habits.OpensProcessingML) && !b.Opened[sim.ProcessingSet] && !v.OperationOver && !v.CircuitAsked {
		return false
	}
	return o.prepareProcessing(v, try)
}

func (o *Steady) prepareProcessing(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	b := &v.Bench
	if !b.Opened[sim.ProcessingSet] {
		if v.ReservoirML < 100 && !v.CircuitAsked {
			return false
		}
		return try(sim.OpenSet, sim.ProcessingSet, 0)
	}
	if o.habits.ChecksBench && (clamp(v, sim.SparePort, false, try) || clamp(v, sim.WasteDrain, false, try) || clamp(v, sim.WashClampB, false, try)) {
		return true
	}
	for _, line := range [...]sim.Part{sim.ProductLine, sim.WasteLine, sim.OutletLine} {
		if o.firm(v, line, try) {
			return true
		}
	}
	if v.Pump.Mode != sim.PumpWash && o.hang(v, sim.WashHookA, sim.Saline, o.washML(v)+litreReserveML, try) {
		return true
	}
	if o.habits.ChecksBench && !b.Inspected[sim.WashHookA] && b.HookPack[sim.WashHookA] >= 0 {
		return try(sim.Inspect, sim.WashHookA, 0)
	}
	if clamp(v, sim.WashClampA, true, try) || clamp(v, sim.OutletClamp, true, try) {
		return true
	}
	if v.Pump.WashML != o.washML(v) {
		return try(sim.SetWashVolume, sim.NoPart, o.washML(v))
	}
	if o.sheet.Rules.AutoStop && o.habits.AutomaticStop && !o.doubts && !v.Pump.AutoStop {
		return try(sim.AutoStop, sim.NoPart, 1)
	}
	return o.rates(v, try)
}

// rates sets the pump as the operator is used to.
func (o *Steady) rates(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	p, h := &v.Pump, &o.habits
	fill, wash := o.fillMLMin(v), float64(o.pace(v)*h.WashMLMin)
	return p.FillMLMin != fill && try(sim.SetFillRate, sim.NoPart, fill) ||
		p.WashMLMin != wash && try(sim.SetWashRate, sim.NoPart, wash) ||
		p.EmptyMLMin != h.EmptyMLMin && try(sim.SetEmptyRate, sim.NoPart, h.EmptyMLMin)
}

func (o *Steady) washML(v *sim.Seen) float64 {
	return float64(o.habits.WashBowls * v.Bench.Bowl.Shape().VolumeML)
}

// supplies changes packs and the waste bag before they run out.
func (o *Steady) supplies(v *sim.Seen, try func(sim.Verb, sim.Part, float64) bool) bool {
	if o.prepared >= collecting && !v.Bench.TakenDown && o.hang(v, sim.AnticoagulantHook, o.anticoagulant(), litreReserveML, try) {
		return true
	}
	if o.sendsForFluid(v, try) {
		return true
	}
	if !v.Bench.Opened[sim.ProcessingSet] || !o.wasteIsFull(v) {
		return false
	}
	if v.Pump.Mode != sim.PumpIdle {
		return v.Pump.NoFlow && try(sim.StopPump, sim.NoPart, 0)
	}
	return v.WasteML > 0 && try(sim.ChangeWaste, sim.NoPart, 0)
}
